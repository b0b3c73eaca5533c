package fittings

import (
	"math"
	"slices"
	"strings"
)

// Series is a series of standard sizes. It serves notes only: no size is refused
// for not being in one.
type Series struct {
	Name     string // as a note says it
	Sizes    []int  // mm, ascending
	Source   string
	Sureness string // read, second-hand, from memory
}

// The series of sizes that are known here, one for each shape.
var (
	circularSeries = Series{"EN 1506 series",
		[]int{63, 80, 100, 125, 150, 160, 200, 250, 300, 315, 355, 400, 450, 500, 560, 630, 710, 800, 900, 1000, 1120, 1250},
		"EN 1506: basic sizes, and additional ones to 450, as quoted by the Dutch association of duct makers' quality manual ch. 2.1.3; 560, 710, 900 and 1120 as non-preferred sizes in a Polish maker's table",
		"second-hand"}
	rectangularSeries = Series{"usual series of sides",
		[]int{100, 150, 200, 250, 300, 400, 500, 600, 800, 1000, 1200, 1400, 1600, 1800, 2000},
		"the sides of ASHRAE Fundamentals 2021 (SI) ch. 21 Table 3; that EN 1505 has the same grid is from memory, unverified",
		"second-hand"}
	ovalSeries = Series{"usual series of minor axes",
		[]int{70, 100, 125, 150, 175, 200, 250, 275, 300, 325, 350, 375, 400, 450, 500, 550, 600},
		"the minor axes of ASHRAE Fundamentals 2021 (SI) ch. 21 Table 4", "second-hand"}
)

// SeriesOf gives the series of standard sizes for a shape: diameters, sides, or
// minor axes of a flat oval. NoShape has none.
func SeriesOf(shape Shape) Series {
	s := Series{}
	switch shape {
	case Rectangular:
		s = rectangularSeries
	case Circular:
		s = circularSeries
	case FlatOval:
		s = ovalSeries
	}
	s.Sizes = slices.Clone(s.Sizes)
	return s
}

// SeriesNote says that a cross-section isn't of the standard sizes, and which are
// nearest: "dia 330 isn't in the EN 1506 series, nearest 315 and 355". It's ""
// for one that is, and for one that isn't metric: a size that isn't a whole mm,
// or is whole inches in multiples of five (127 mm).
func SeriesNote(c CrossSection) string { return SeriesNoteIn(c, Written{}) }

// SeriesNoteIn is SeriesNote in other units.
func SeriesNoteIn(c CrossSection, in Written) string {
	var notes []string
	add := func(s *Series, what string, size float64) {
		if text := s.note(what, size, in); text != "" && !slices.Contains(notes, text) {
			notes = append(notes, text)
		}
	}
	metric := true
	switch c.Shape {
	case Circular:
		metric = isMetric(c.Diameter)
		add(&circularSeries, "dia", c.Diameter)
	case Rectangular:
		metric = isMetric(c.Width) && isMetric(c.Height)
		add(&rectangularSeries, "side", c.Width)
		add(&rectangularSeries, "side", c.Height)
	case FlatOval:
		metric = isMetric(c.Height)
		add(&ovalSeries, "minor axis", c.Height)
	}
	if !metric {
		return ""
	}
	return strings.Join(notes, "; ")
}

// isMetric reports whether a size in m is likely to be metric.
func isMetric(size float64) bool {
	mm := math.Round(size * 1000)
	return math.Abs(size*1000-mm) < 1e-6 && math.Mod(mm, 127) != 0
}

// note is what SeriesNote says of one size in m.
func (s *Series) note(what string, size float64, in Written) string {
	mm := int(math.Round(size * 1000))
	at, found := slices.BinarySearch(s.Sizes, mm)
	if found {
		return ""
	}
	text := what + " " + in.size(size) + " isn't in the " + s.Name
	switch {
	case at == 0:
		return text + ", which begins at " + in.size(float64(s.Sizes[0])/1000)
	case at == len(s.Sizes):
		return text + ", which ends at " + in.size(float64(s.Sizes[at-1])/1000)
	}
	return text + ", nearest " + in.size(float64(s.Sizes[at-1])/1000) + " and " + in.size(float64(s.Sizes[at])/1000)
}
