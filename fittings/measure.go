package fittings

import (
	"math"
	"strings"
)

// figure is one surface of a piece, ready to be measured.
type figure interface {
	// area is the exact area in m2.
	area() float64
	// figures is the sum that gives the area, in figures.
	figures() string
	// second is the area by another route, in words, or "" where the figures
	// can be redone on a pocket calculator.
	second() string
}

// part is a surface that counts for or against a piece.
type part struct {
	name  string
	times float64 // 1, or -1 for what is taken out; 2 where there are two
	figure
}

// built is a piece whose sizes have been read.
type built struct {
	parts   []part
	ends    []End
	opening []part // what a spigot takes out of its wall
	source  string

	runs     []stretch // the same piece as measuring bases count it, where asked for
	branches []sideStretch
}

// prism makes a piece of one constant section along a path.
func (c *checker) prism(b *built, f prism, by ruled) {
	b.parts = one(f)
	c.run(b, func() stretch { return f.stretch(c.p.Plane, by) })
}

// run adds a run for measuring bases. Measure doesn't ask for them.
func (c *checker) run(b *built, run func() stretch) {
	if c.lengths {
		b.runs = append(b.runs, run())
	}
}

// builders gives the reader of each kind.
var builders = [...]func(*checker) built{
	Straight: buildStraight, Flexible: buildStraight, Inline: buildStraight,
	Bend: buildBend, Reducer: buildReducer, Transition: buildTransition, Offset: buildOffset,
	Tee: buildTee, Cross: buildTee, Spigot: buildSpigot, Breeches: buildBreeches,
	Cap: buildCap, Plenum: buildPlenum,
}

// Measure gives the exact outside surface area of a piece, its ends, and what
// was wrong when it can't be measured: all problems at once.
//
// Either there are problems and the area is 0, or the area is finite and over 0.
// The ends are given in both cases; an end whose size isn't known has no shape.
// A given area is taken as it stands: then only impossible sizes are problems,
// not missing ones. Notes name the sizes that this kind doesn't use.
func Measure(p *Piece) (Measurement, []Problem) { return MeasureIn(p, Written{}) }

// MeasureIn is Measure with its notes in other units.
func MeasureIn(p *Piece, in Written) (Measurement, []Problem) {
	if s, area, ok := PlainStraight(p); ok {
		return Measurement{Area: area, Ends: Through(s)}, nil
	}
	c := checker{p: p, in: in}
	b := c.build()
	m := Measurement{Ends: b.ends}
	if !c.ok() {
		return m, c.problems
	}
	m.Notes = c.notes
	if area, given := p.Sizes.Get(GivenArea); given {
		m.Area = area
	} else {
		m.Area = total(b.parts)
	}
	m.Opening = total(b.opening)
	return m, nil
}

// build reads the piece. Of a piece with a given area it keeps the ends, and
// only those problems that a given area doesn't cure.
func (c *checker) build() built {
	if c.p.Kind == NoKind || int(c.p.Kind) >= len(builders) {
		c.add(false, Problem{Dim: NumDims, Word: "kind", Expected: kindNames(), Message: "say what kind of piece this is"})
		return built{}
	}
	area, given := c.take(GivenArea)
	styled := c.checkStyle()
	b := builders[c.p.Kind](c)
	if !styled {
		b.parts = nil
	}
	if !given {
		c.noteUnused()
		return b
	}
	c.keepIncurable()
	c.noteGiven(area, b)
	b.parts, b.source = nil, "given area (area_m2)"
	return b
}

// keepIncurable drops the problems that a given area cures.
func (c *checker) keepIncurable() {
	kept := c.problems[:0]
	for i, p := range c.problems {
		if !c.curable[i] {
			kept = append(kept, p)
		}
	}
	c.problems = kept
}

// noteGiven says so where a given area is far from what the sizes give.
func (c *checker) noteGiven(area float64, b built) {
	if c.p.Kind == Spigot && len(b.opening) == 0 {
		c.note("the opening of this spigot isn't known, so nothing is taken off its wall")
	}
	if len(b.parts) == 0 || !c.ok() {
		return
	}
	sizes := total(b.parts)
	if off := area/sizes - 1; off > 0.01 || off < -0.01 {
		c.note("area_m2 is taken as given; the sizes make it " + c.in.area(sizes))
	}
}

// checkStyle refuses a style that the kind doesn't have.
func (c *checker) checkStyle() bool {
	if c.p.Style == NoStyle {
		return true
	}
	styles := kinds[c.p.Kind-1].Styles
	for _, s := range styles {
		if s == c.p.Style {
			return true
		}
	}
	names := make([]string, len(styles))
	for i, s := range styles {
		names[i] = s.String()
	}
	expected := "no style"
	if len(names) > 0 {
		expected = strings.Join(names, ", ")
	}
	c.refuse("style", expected, "a "+c.p.Kind.String()+" isn't made in this style")
	return false
}

func kindNames() string {
	names := make([]string, len(kinds))
	for i := range kinds {
		names[i] = kinds[i].Name
	}
	return strings.Join(names, ", ")
}

func total(parts []part) float64 {
	sum := 0.0
	for i := range parts {
		sum += parts[i].times * parts[i].area()
	}
	return sum
}

// Working gives the area in figures that a person can redo. An integral is shown
// as its formula with the numbers put in, its value, and a second value by
// another route. It's "" for a piece that can't be measured.
func Working(p *Piece) string { return WorkingIn(p, nil, Written{}) }

// OpeningWorking gives in figures, as Working does, the opening that a spigot
// takes out of the wall it sits in. It's "" for anything else.
func OpeningWorking(p *Piece) string { return OpeningWorkingIn(p, Written{}) }

// OpeningWorkingIn is OpeningWorking in other units.
func OpeningWorkingIn(p *Piece, in Written) string {
	o := in.scaled(p)
	c := checker{p: &o, per: in.per()}
	if b := c.build(); c.ok() && len(b.opening) > 0 {
		return in.square(workingOf(b.opening))
	}
	return ""
}

// workingOf is one line a part and a total, or just the one part.
func workingOf(parts []part) string {
	if len(parts) == 1 && parts[0].times == 1 {
		return partWorking(parts[0])
	}
	lines, sum := make([]string, 0, len(parts)+1), ""
	for i, part := range parts {
		lines = append(lines, part.name+": "+partWorking(part))
		sum += joined(i, part.times) + sq(part.area())
	}
	lines = append(lines, "total: "+sum+" = "+sq(total(parts))+" m2")
	return strings.Join(lines, "; ")
}

// joined is what stands before part i in the total.
func joined(i int, times float64) string {
	s := ""
	switch {
	case times < 0:
		s = " - "
	case i > 0:
		s = " + "
	}
	if n := math.Abs(times); n != 1 {
		s += deg(n) + " x "
	}
	return s
}

func partWorking(p part) string {
	s := p.figures() + " = " + sq(p.area()) + " m2"
	if other := p.second(); other != "" {
		s += " (" + other + ")"
	}
	return s
}

// Source says where the formula for a piece comes from. It's "" for a piece that
// can't be measured.
func Source(p *Piece) string {
	c := checker{p: p}
	b := c.build()
	if !c.ok() {
		return ""
	}
	return b.source
}

// through gives the two ends of a piece with the same section at both.
// Through is the ends of a piece with the same cross-section at both.
func Through(s CrossSection) []End { return twoEnds(s, s) }

func twoEnds(plant, far CrossSection) []End {
	return []End{{Role: PlantEnd, CrossSection: plant}, {Role: FarEnd, CrossSection: far}}
}

// one makes the parts of a piece of a single surface.
func one(f figure) []part { return []part{{times: 1, figure: f}} }
