package fittings

import (
	"math"
	"strings"

	"blankoff/fittings/surface"
)

// loft is the developable sheet between two parallel ends: a taper, a reducer, a
// change of shape, or a straight-sided offset. Its formula is at
// surface.Loft.Area.
type loft struct{ surface.Loft }

func newLoft(near, far CrossSection, length, x, y float64) loft {
	return loft{surface.Loft{Near: outline(near), Far: outline(far), L: length, X: x, Y: y}}
}

func outline(s CrossSection) surface.Outline {
	switch s.Shape {
	case Circular:
		return surface.Outline{R: s.Diameter / 2}
	case FlatOval:
		return surface.Outline{FlatX: math.Max(0, s.Width-s.Height), R: s.Height / 2}
	}
	return surface.Outline{FlatX: s.Width, FlatY: s.Height}
}

func (f loft) area() float64 { return f.Area() }

// figures is the plane faces and then the corners. Corners that are right cones
// have a closed form; others are an integral over the angle t of the normal.
func (f loft) figures() string {
	terms := append(f.edgeFigures(f.Near.FlatX, f.Far.FlatX, f.PlanY), f.edgeFigures(f.Near.FlatY, f.Far.FlatY, f.PlanX)...)
	if mean := f.Near.R + f.Far.R; mean > 0 {
		terms = append(terms, f.cornerFigures()...)
	}
	return strings.Join(terms, " + ")
}

// edgeFigures is a pair of opposite plane faces.
func (f loft) edgeFigures(near, far float64, plan func(float64) float64) []string {
	if near+far == 0 {
		return nil
	}
	wide := "(" + fig(near) + " + " + fig(far) + ")"
	if near == 0 || far == 0 {
		wide = fig(near + far)
	}
	slant := func(sign float64) string {
		return "sqrt(" + fig(f.L) + "^2 + " + fig(math.Abs(plan(sign))) + "^2)"
	}
	if one, other := slant(1), slant(-1); one != other {
		return []string{wide + " / 2 x " + one, wide + " / 2 x " + other}
	}
	return []string{wide + " x " + slant(1)}
}

// cornerFigures is the cones at the corners. A round reducer is one integral all
// the way round, because only the size of its shift matters.
func (f loft) cornerFigures() []string {
	mean := "(" + fig(f.Near.R) + " + " + fig(f.Far.R) + ")"
	slant := "sqrt(" + fig(f.L) + "^2 + (" + less(f.Near.R, f.Far.R)
	if f.Cylindrical() {
		return []string{"pi x " + mean + " x " + slant + ")^2)"}
	}
	if f.Near.FlatX+f.Far.FlatX+f.Near.FlatY+f.Far.FlatY == 0 {
		return []string{mean + " / 2 x integral over t from 0 to 2 x pi of " + slant + times(-math.Hypot(f.X, f.Y), "cos(t)") + ")^2)"}
	}
	var terms []string
	xs, ys := signs(f.X), signs(f.Y)
	for _, sx := range xs {
		for _, sy := range ys {
			alike := float64(4 / len(xs) / len(ys))
			p := (f.Near.FlatX-f.Far.FlatX)/2 - sx*f.X
			q := (f.Near.FlatY-f.Far.FlatY)/2 - sy*f.Y
			terms = append(terms, deg(alike)+" x "+mean+" / 2 x integral over t from 0 to pi / 2 of "+
				slant+times(p, "cos(t)")+times(q, "sin(t)")+")^2)")
		}
	}
	return terms
}

// times prints a further term v x what with its sign, or nothing for 0.
func times(v float64, what string) string {
	switch s := fig(v); {
	case s == "0.000":
		return ""
	case s[0] == '-':
		return " - " + s[1:] + " x " + what
	default:
		return " + " + s + " x " + what
	}
}

// signs is both sides where a shift makes them differ.
func signs(shift float64) []float64 {
	if shift == 0 {
		return []float64{1}
	}
	return []float64{1, -1}
}

func (f loft) second() string {
	if f.Near.R+f.Far.R == 0 || f.Cylindrical() {
		return ""
	}
	return "t in radians, " + byStrips(f.Edges()+f.Corners(surface.StripsOf(strips)))
}

// buildReducer reads a change of size: both ends of one shape, parallel and not
// turned.
func buildReducer(c *checker) built {
	shape := c.inferred(c.p.Shape, nearEnd, "shape")
	near := c.section(shape, nearEnd)
	c.checkSameShape(shape)
	far := c.section(shape, secondEnd)
	b := built{ends: twoEnds(near, far), source: "mensuration: developable sheet between parallel ends"}
	return c.lofted(b)
}

// checkSameShape refuses a reducer whose far end is given as another shape.
func (c *checker) checkSameShape(shape Shape) {
	sided := c.p.Sizes.Has(Width2) || c.p.Sizes.Has(Height2)
	round := c.p.Sizes.Has(Diameter2)
	other := shape == Circular && sided && !round || (shape == Rectangular || shape == FlatOval) && round && !sided
	if other || c.p.Shape2 != NoShape && shape != NoShape && c.p.Shape2 != shape {
		c.refuse("kind", "transition", "a reducer keeps its shape: a change of shape is a transition")
	}
}

// buildTransition reads a change of shape.
func buildTransition(c *checker) built {
	shape := c.inferred(c.p.Shape, nearEnd, "shape")
	near := c.section(shape, nearEnd)
	shape2 := c.inferred(c.p.Shape2, secondEnd, "shape2")
	if shape != NoShape && shape2 == shape {
		c.refuse("shape2", "a shape other than "+shape.String(),
			"both ends are "+shape.String()+": say what shape2 is, or that the kind is reducer")
		shape2 = NoShape
	}
	far := c.section(shape2, secondEnd)
	b := built{ends: twoEnds(near, far), source: "mensuration: developable sheet between parallel ends (rulings join parallel tangents)"}
	return c.lofted(b)
}

// lofted adds the sheet between two ends.
func (c *checker) lofted(b built) built {
	length := c.need(Length, "")
	x, _ := c.take(OffsetShift)
	y, _ := c.take(OffsetShift2)
	if c.ok() {
		near, far := b.ends[0].CrossSection, b.ends[1].CrossSection
		f := newLoft(near, far, length, x, y)
		b.parts = one(f)
		c.run(&b, func() stretch { return f.stretch(near, far) })
	}
	return b
}
