// Package tightness holds air-tightness schemes: how much air a duct may lose
// per square metre of its surface in each class, f = k p^n, and how far each
// class may be pressed for a test. A scheme is a data file (TOML) with the
// source of every figure and how sure it is; the built-in ones are in data/,
// and a user's own is read by [Load] from the same format.
//
// Pressures are gauge static pressures as magnitudes in Pa; the direction is a
// [Sign]. Limits are L/s per m2 of duct surface.
package tightness

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Shape is the shape of a cross-section, as far as ceilings depend on it.
type Shape string

// The shapes of duct.
const (
	Rectangular Shape = "rectangular"
	Circular    Shape = "circular"
	FlatOval    Shape = "flat-oval"
)

// Shapes lists every shape, in the order tables print them.
func Shapes() []Shape { return []Shape{Rectangular, Circular, FlatOval} }

// Sign says whether the section is blown up or sucked down.
type Sign string

// The two signs of test pressure.
const (
	Positive Sign = "positive"
	Negative Sign = "negative"
)

// ParseSign reads a sign: positive, negative, +, - (any case). It is an error
// to give anything else, an empty value included.
func ParseSign(s string) (Sign, error) {
	switch strings.ToLower(strings.TrimSpace(s)) {
	case "positive", "+":
		return Positive, nil
	case "negative", "-", "−":
		return Negative, nil
	}
	return "", fmt.Errorf("%q is not a sign of pressure: write positive or negative", s)
}

// How sure a figure is. Every figure of a built-in scheme carries one of these.
const (
	Read       = "read"        // seen in the text that owns the figure
	SecondHand = "second-hand" // another text says that the owner has it
	FromMemory = "from memory" // not verified; open the standard before relying on it
	Derived    = "derived"     // arithmetic from another figure
	NotStated  = "not stated"  // a user's own scheme that doesn't say
)

// Scheme is a set of tightness classes and the ceilings that go with them.
// Read only: [Lookup] hands the same value to everybody.
type Scheme struct {
	Name     string  // "EN"
	Title    string  // one line for people
	Exponent float64 // n of f = k p^n
	// MinAreaM2 is the least surface the scheme wants in one test, m2; 0: none.
	MinAreaM2 float64
	// Where the exponent and the least area come from, and how sure they are.
	ExponentSource, ExponentSureness string
	MinAreaSource, MinAreaSureness   string
	// FlatOvalAs is the shape whose ceilings flat-oval duct follows where no
	// ceiling names flat-oval itself.
	FlatOvalAs Shape
	// Numbered is true where any positive number is a class (leakage classes).
	Numbered bool
	// Unverified lists, in plain words, the figures that are from memory.
	Unverified []string
	Notes      []string
	Source     string
	Sureness   string

	aliases  []string
	classes  []Class // numbered schemes: the usual ones
	byShape  []byShape
	ceilings []rule
	usual    map[Sign]usualPressures
	unit     string // of k in the file
}

// Class is one tightness class. Comparable.
type Class struct {
	Name string
	// K is the limit at 1 Pa, L/s per m2 per Pa^n; 0 where the class sets none.
	K float64
	// Shape is the only shape the figure is for; empty: every shape. Flat-oval
	// follows the scheme's FlatOvalAs.
	Shape            Shape
	Note             string
	Source, Sureness string
}

// Limit is the permitted leakage k p^n at a test pressure, L/s per m2 of duct
// surface. pa is a magnitude in Pa, 0 or more; NaN for anything else.
func (s *Scheme) Limit(c Class, pa float64) float64 {
	if !(pa >= 0) {
		return math.NaN()
	}
	return c.K * math.Pow(pa, s.Exponent)
}

// Covers says whether the class's figure is meant for duct of this shape and,
// if not, why.
func (s *Scheme) Covers(c Class, shape Shape) (ok bool, why string) {
	as := shape
	if shape == FlatOval && c.Shape != FlatOval {
		as = s.FlatOvalAs
	}
	if c.Shape == "" || c.Shape == as {
		return true, ""
	}
	return false, fmt.Sprintf("class %s of %s is for %s duct, not for %s", c.Name, s.Name, c.Shape, shape)
}

// Classes lists the classes a test can be held against, loosest first as in
// the scheme's file. For a numbered scheme they are the usual ones only.
func (s *Scheme) Classes() []Class {
	out := make([]Class, 0, len(s.classes))
	for _, c := range s.classes {
		if c.K > 0 {
			out = append(out, c)
		}
	}
	return out
}

type usualPressures struct {
	pa               []float64
	source, sureness string
}

// UsualPressures are the test pressures of this sign that tables are drawn up
// for, Pa ascending, with their source and sureness; none if the scheme has
// none. They suggest; they permit nothing (see [Scheme.Ceiling]).
func (s *Scheme) UsualPressures(sign Sign) (pa []float64, source, sureness string) {
	u := s.usual[sign]
	return slices.Clone(u.pa), u.source, u.sureness
}
