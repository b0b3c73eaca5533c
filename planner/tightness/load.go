package tightness

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// Bounds of what a scheme's file may hold; beyond them a unit has slipped.
const (
	minK, maxK          = 1e-6, 10    // L/s per m2 per Pa^n; known classes: 0.00033 to 0.0675
	minExponent         = 0.5         // free orifice
	maxExponent         = 1           // laminar seepage
	minPa, maxPa        = 1, 100_000  // a ceiling
	minFloor, maxFloor  = 1e-3, 10000 // least area of a test, m2
	expectedK           = "a limit at the pressure its unit names, more than 0, in the unit of k_unit (0.000001 to 10 L/s per m2 per Pa^n)"
	expectedPa          = "a pressure in Pa, 1 to 100000"
	expectedPaAscending = "a list of pressures in Pa, 1 to 100000, ascending"
)

var surenesses = []string{Read, SecondHand, FromMemory, Derived, NotStated}

// Load reads a scheme of the user's own from TOML, in the format of the
// built-in ones; name is the file's and appears in faults. Every fault is
// found in one go: unknown keys, values of the wrong type or out of range,
// classes named twice, ceilings that contradict each other, a name that a
// built-in scheme has. The error is a [Faults].
func Load(r io.Reader, name string) (*Scheme, error) {
	s, err := read(r, name)
	if err != nil {
		return nil, err
	}
	if other := find(s.Name); other != nil {
		return nil, Faults{{File: name, Key: "name", Value: quote(s.Name), Problem: "a built-in scheme has this name", Expected: "another"}}
	}
	return s, nil
}

func read(r io.Reader, file string) (*Scheme, error) {
	t, err := ReadTable(r, file)
	if err != nil {
		return nil, err
	}
	t.Only("name", "also", "title", "notes", "unverified", "k_unit", "numbered", "flat_oval_as",
		"source", "sureness", "exponent", "min_area", "class", "by_shape", "ceiling", "usual_pressures")
	t.Require("name", "a short name for the scheme")
	s := &Scheme{
		Name: t.Text("name"), Title: t.Text("title"), Numbered: t.Truth("numbered"),
		Unverified: t.Texts("unverified"), Notes: t.Texts("notes"), aliases: t.Texts("also"),
		FlatOvalAs: Rectangular, unit: unitLS, Exponent: 0.65,
		usual: map[Sign]usualPressures{},
	}
	s.Source, s.Sureness = origin(t, "the user's own scheme "+strconv.Quote(s.Name), NotStated)
	if v := oneOf(t, "flat_oval_as", string(Rectangular), string(Circular)); v != "" {
		s.FlatOvalAs = Shape(v)
	}
	if v := oneOf(t, "k_unit", units()...); v != "" {
		s.unit = v
	}
	s.readExponent(t)
	s.readFloor(t)
	s.readClasses(t)
	s.readByShape(t)
	s.readCeilings(t)
	s.readUsual(t)
	if err := t.Err(); err != nil {
		return nil, err
	}
	return s, nil
}

// origin is the source and sureness of a table, those of the scheme if it has
// none of its own.
func origin(t *Table, source, sureness string) (string, string) {
	if v := t.Text("source"); v != "" {
		source = v
	}
	if v := oneOf(t, "sureness", surenesses...); v != "" {
		sureness = v
	}
	return source, sureness
}

func oneOf(t *Table, key string, allowed ...string) string {
	v := t.Text(key)
	if v != "" && !slices.Contains(allowed, v) {
		t.Fault(key, "one of \""+strings.Join(allowed, "\", \"")+"\"")
		return ""
	}
	return v
}

func (s *Scheme) readExponent(t *Table) {
	t.Require("exponent", "a table [exponent] with value, 0.65 in every scheme known")
	e := t.Table("exponent")
	if e == nil {
		return
	}
	e.Only("value", "source", "sureness")
	e.Require("value", "a number from 0.5 to 1")
	if v, ok := e.Number("value", minExponent, maxExponent, "a number from 0.5 to 1"); ok {
		s.Exponent = v
	}
	s.ExponentSource, s.ExponentSureness = origin(e, s.Source, s.Sureness)
}

func (s *Scheme) readFloor(t *Table) {
	f := t.Table("min_area")
	if f == nil {
		return
	}
	f.Only("m2", "source", "sureness")
	f.Require("m2", "an area in m2, more than 0")
	s.MinAreaM2, _ = f.Number("m2", minFloor, maxFloor, "an area in m2, more than 0")
	s.MinAreaSource, s.MinAreaSureness = origin(f, s.Source, s.Sureness)
}

func (s *Scheme) readClasses(t *Table) {
	t.Require("class", "at least one [[class]]")
	factor, _ := kFactor(s.unit, s.Exponent)
	seen := map[string]bool{}
	for _, c := range t.Tables("class") {
		name := c.Text("name")
		if name != "" {
			c.At = fmt.Sprintf("class %q", name)
		}
		c.Only("name", "k", "no_limit", "shape", "note", "source", "sureness")
		c.Require("name", "a name for the class")
		key := classKey(name)
		if v, ok := classNumber(name); s.Numbered && ok {
			key = strconv.FormatFloat(v, 'f', -1, 64)
			name = key
		}
		if c.Has("name") && (key == "" || seen[key]) {
			c.Fault("name", "a name with a letter or digit that no other class has")
		}
		seen[key] = true
		class := Class{Name: name, Note: c.Text("note")}
		class.Source, class.Sureness = origin(c, s.Source, s.Sureness)
		class.Shape = Shape(oneOf(c, "shape", shapeNames()...))
		class.K = s.readK(c, factor)
		s.classes = append(s.classes, class)
	}
	if t.Err() == nil && len(s.Classes()) == 0 {
		t.Fault("class", "at least one class that sets a limit")
	}
}

// readK is the class's k in L/s per m2 per Pa^n. A numbered scheme's classes
// are their own k; a class may say that it has none.
func (s *Scheme) readK(c *Table, factor float64) float64 {
	if s.Numbered {
		v, ok := classNumber(c.Text("name"))
		if k := v * factor; !ok || k < minK || k > maxK {
			c.Fault("name", "the class's number, since the scheme is numbered")
		}
		if c.Has("k") || c.Has("no_limit") {
			c.Problem("k", "not used", "neither k nor no_limit where numbered = true")
		}
		return v * factor
	}
	if c.Truth("no_limit") {
		if c.Has("k") {
			c.Fault("k", "no k beside no_limit = true")
		}
		return 0
	}
	c.Require("k", expectedK)
	k, _ := c.Number("k", minK/factor, maxK/factor, expectedK)
	return k * factor
}

func shapeNames() []string {
	var out []string
	for _, s := range Shapes() {
		out = append(out, string(s))
	}
	return out
}

func (s *Scheme) readCeilings(t *Table) {
	taken := map[string]string{}
	for _, c := range t.Tables("ceiling") {
		c.Only("classes", "shapes", "sign", "pa", "duct_class", "duct_classes_pa", "source", "sureness")
		r := rule{classes: c.Texts("classes")}
		r.source, r.sureness = origin(c, s.Source, s.Sureness)
		c.Require("sign", "positive or negative")
		r.sign = Sign(oneOf(c, "sign", string(Positive), string(Negative)))
		for i, name := range r.classes {
			known := slices.IndexFunc(s.classes, func(k Class) bool { return classKey(k.Name) == classKey(name) })
			if known < 0 || s.Numbered {
				c.Fault("classes", "classes of this scheme, or no classes key where it goes for all")
				break
			}
			r.classes[i] = s.classes[known].Name
		}
		for _, shape := range c.Texts("shapes") {
			if !slices.Contains(shapeNames(), shape) {
				c.Fault("shapes", "rectangular, circular or flat-oval")
				break
			}
			r.shapes = append(r.shapes, Shape(shape))
		}
		r.readPressure(c)
		s.noClash(c, r, taken)
		s.ceilings = append(s.ceilings, r)
	}
}

// readPressure takes exactly one of a fixed ceiling, the duct's own pressure
// class, and the same with the pressure classes listed.
func (r *rule) readPressure(c *Table) {
	n := 0
	for _, key := range []string{"pa", "duct_class", "duct_classes_pa"} {
		if c.Has(key) {
			n++
		}
	}
	if n != 1 {
		c.Problem("pa", "missing or contradicted", "exactly one of pa, duct_class = true, duct_classes_pa")
	}
	r.pa, _ = c.Number("pa", minPa, maxPa, expectedPa)
	r.ductClasses = c.Numbers("duct_classes_pa", minPa, maxPa, expectedPaAscending)
	if c.Has("duct_class") && !c.Truth("duct_class") {
		c.Fault("duct_class", "true, or pa with a number")
	}
}

// noClash refuses a second ceiling for the same class, shape and sign.
func (s *Scheme) noClash(c *Table, r rule, taken map[string]string) {
	for _, class := range append([]Class{{}}, s.classes...) {
		for _, shape := range Shapes() {
			if !r.covers(class.Name, shape, r.sign) {
				continue
			}
			key := fmt.Sprint(class.Name, "/", shape, "/", r.sign)
			if at := taken[key]; at != "" && at != c.At {
				c.Problem("classes", "the same class, shape and sign as "+at, "one ceiling for each")
				return
			}
			taken[key] = c.At
		}
	}
}

func (s *Scheme) readUsual(t *Table) {
	for _, u := range t.Tables("usual_pressures") {
		u.Only("sign", "pa", "source", "sureness")
		u.Require("sign", "positive or negative")
		u.Require("pa", expectedPaAscending)
		sign := Sign(oneOf(u, "sign", string(Positive), string(Negative)))
		if len(s.usual[sign].pa) > 0 {
			u.Fault("sign", "one [[usual_pressures]] for each sign")
		}
		p := usualPressures{pa: u.Numbers("pa", minPa, maxPa, expectedPaAscending)}
		p.source, p.sureness = origin(u, s.Source, s.Sureness)
		s.usual[sign] = p
	}
}
