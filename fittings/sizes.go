package fittings

import (
	"math"
	"strconv"
)

// slack absorbs float noise where sizes are compared, in m.
const slack = 1e-9

// checker reads the sizes of one piece, and collects everything that is wrong
// with them.
type checker struct {
	p        *Piece
	in       Written // the units of notes
	per      float64 // units of length in a metre, where the piece is not in m; 0: 1
	lengths  bool    // whether measuring bases want the piece's runs
	used     uint32  // sizes that were asked for
	problems []Problem
	curable  []bool // per problem: a given area cures it
	notes    []string
}

// ok reports whether nothing was wrong so far.
func (c *checker) ok() bool { return len(c.problems) == 0 }

// need reads a size that the area can't do without. It's NaN where the size is
// missing or bad, so that no later comparison with it holds.
func (c *checker) need(d Dim, why string) float64 {
	v, given := c.take(d)
	if !given {
		c.add(true, Problem{Dim: d, Expected: d.allowed(), Message: "give " + d.Heading() + why})
		return math.NaN()
	}
	return v
}

// take reads a size that may be given, and whether it was. It's 0 where it isn't
// given, and NaN where it's out of range.
func (c *checker) take(d Dim) (float64, bool) {
	c.used |= 1 << d
	v, given := c.p.Sizes.Get(d)
	if !given {
		return 0, false
	}
	l, k := &dims[d], d.scale(c.scale())
	if v >= l.min*k-slack && v <= l.max*k+slack && (!l.wholeCount || v == math.Trunc(v)) {
		return v, true
	}
	c.add(false, Problem{Dim: d, Expected: d.allowed(), Message: d.Heading() + " is out of range"})
	return math.NaN(), true
}

// either reads one size that may be given under two headings.
func (c *checker) either(d, other Dim) (float64, bool) {
	v, given := c.take(d)
	w, also := c.take(other)
	if given && also && math.Abs(v-w) > c.agree() {
		c.wrong(other, d.print(v)+", as "+d.Heading(), d.Heading()+" and "+other.Heading()+" disagree: give one of them")
	}
	if !given {
		return w, also
	}
	return v, given
}

// agree is how far two statements of one size may lie apart, in m.
const agree = 0.0005

// agree is the same in the piece's unit of length.
func (c *checker) agree() float64 { return agree * c.scale() }

// scale is how many units of length there are in a metre.
func (c *checker) scale() float64 {
	if c.per == 0 {
		return 1
	}
	return c.per
}

func (c *checker) add(curable bool, p Problem) {
	c.problems = append(c.problems, p)
	c.curable = append(c.curable, curable)
}

// wrong records a size that can't be.
func (c *checker) wrong(d Dim, expected, message string) {
	c.add(false, Problem{Dim: d, Expected: expected, Message: message})
}

// refuse records a word or a combination that can't be measured exactly.
func (c *checker) refuse(word, expected, message string) {
	c.add(true, Problem{Dim: NumDims, Word: word, Expected: expected, Message: message})
}

// note records something the reader must know.
func (c *checker) note(text string) { c.notes = append(c.notes, text) }

// noteUnused names the given sizes that nothing asked for.
func (c *checker) noteUnused() {
	rest := c.p.Sizes.given &^ c.used &^ (1<<Lining | 1<<GivenArea)
	for d := Dim(0); rest != 0 && d < NumDims; d++ {
		if rest&(1<<d) == 0 {
			continue
		}
		if c.p.Kind == Straight && c.another(d) {
			c.wrong(d, "nothing", d.Heading()+" is another size than the first, and a straight has one; a reducer or a transition has two")
		} else {
			c.note(d.Heading() + " isn't used by this " + c.p.Kind.String())
		}
	}
}

// another reports a size of a second end that isn't that of the first.
func (c *checker) another(d Dim) bool {
	first, ok := map[Dim]Dim{Width2: Width, Height2: Height, Diameter2: Diameter}[d]
	if !ok {
		return false
	}
	a, given := c.p.Sizes.Get(first)
	b, _ := c.p.Sizes.Get(d)
	return !given || math.Abs(a-b) > c.agree()
}

// sectionDims names the sizes of one end.
type sectionDims struct{ width, height, diameter Dim }

var (
	nearEnd   = sectionDims{Width, Height, Diameter}
	secondEnd = sectionDims{Width2, Height2, Diameter2}
	sideEnd   = sectionDims{BranchWidth, BranchHeight, BranchDiameter}
)

// section reads the cross-section of one end. Its shape is zero where the sizes
// don't say it all.
func (c *checker) section(shape Shape, d sectionDims) CrossSection {
	before := len(c.problems)
	s := CrossSection{Shape: shape}
	switch shape {
	case Circular:
		s.Diameter = c.need(d.diameter, "")
	case Rectangular, FlatOval:
		s.Width = c.need(d.width, "")
		s.Height = c.need(d.height, "")
	}
	if len(c.problems) > before {
		return CrossSection{}
	}
	if shape == FlatOval && s.Height > s.Width+slack {
		c.wrong(d.height, "up to "+mm(s.Width)+" mm", "a flat-oval's height is its minor axis: swap "+d.width.Heading()+" and "+d.height.Heading())
		return CrossSection{}
	}
	return s
}

// inferred gives the stated shape, or the one that the given sizes leave no doubt
// about: a diameter is circular, a width and height rectangular. A flat oval is
// taken only where it is stated.
func (c *checker) inferred(stated Shape, d sectionDims, word string) Shape {
	if stated > FlatOval {
		c.refuse(word, "rectangular, circular or flat-oval", "this isn't a shape")
		return NoShape
	}
	if stated != NoShape {
		return stated
	}
	has := c.p.Sizes.Has
	round, sided := has(d.diameter), has(d.width) || has(d.height)
	switch {
	case round && !sided:
		return Circular
	case sided && !round:
		return Rectangular
	}
	message := "give " + word + ", and " + d.diameter.Heading() + " or " + d.width.Heading() + " and " + d.height.Heading()
	if round {
		message = "give " + word + ": both a diameter and sides are given"
	}
	c.refuse(word, "rectangular, circular or flat-oval", message)
	return NoShape
}

// main reads the piece's own cross-section.
func (c *checker) main() CrossSection {
	return c.section(c.inferred(c.p.Shape, nearEnd, "shape"), nearEnd)
}

// allowed is the range of a size in schedule units.
func (d Dim) allowed() string {
	l := dims[d]
	switch l.unit {
	case Metre:
		return mm(l.min) + " to " + mm(l.max) + " mm"
	case Count:
		return "a whole number from " + number(l.min) + " to " + number(l.max)
	}
	return number(l.min) + " to " + number(l.max) + " " + l.unit.String()
}

// print gives a value of the size in schedule units.
func (d Dim) print(v float64) string {
	if d.Unit() == Metre {
		return mm(v) + " mm"
	}
	return number(v) + " " + d.Unit().String()
}

// mm prints a length in whole or tenths of millimetres where that is exact
// enough.
func mm(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/10, 'f', -1, 64) }

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
