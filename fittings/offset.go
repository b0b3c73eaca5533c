package fittings

import "math"

// slope is the path of a mitred offset between its legs: sqrt(L^2 + O^2), L and
// O measured between the mitres.
type slope struct{ along, across float64 }

func (s slope) length() float64 { return math.Hypot(s.along, s.across) }
func (s slope) figures() string {
	return "sqrt(" + fig(s.along) + "^2 + " + fig(s.across) + "^2)"
}

// doubleArc is the path of a radius offset: two arcs of centre-line radius Rc
// with a straight between, 2 Rc theta + s, where
// s = sqrt(L^2 + O^2 - 4 O Rc) and theta = atan2(O - 2 Rc, L) + asin(2 Rc / d),
// d^2 = L^2 + (O - 2 Rc)^2. The greatest radius (L^2 + O^2)/(4 O) leaves no
// straight, and theta = 2 atan(O/L).
type doubleArc struct{ along, across, radius float64 }

// widest is the greatest centre-line radius that fits.
func (d doubleArc) widest() float64 {
	return (d.along*d.along + d.across*d.across) / (4 * d.across)
}

func (d doubleArc) straight() float64 {
	return math.Sqrt(math.Max(0, d.along*d.along+d.across*d.across-4*d.across*d.radius))
}

// angle is theta in degrees.
func (d doubleArc) angle() float64 {
	// The half-angle form has no cancellation: tan(theta/2) = O / (L + s).
	return 2 * math.Atan2(d.across, d.along+d.straight()) * 180 / math.Pi
}

func (d doubleArc) length() float64 { return 2*d.radius*rad(d.angle()) + d.straight() }

func (d doubleArc) figures() string {
	s := d.straight()
	sum := fig(d.along)
	if s > 0 {
		sum += " + " + fig(s)
	}
	arcs := "2 x " + fig(d.radius) + " x 2 x atan(" + fig(d.across) + " / (" + sum + ")) x pi / 180"
	if s == 0 {
		return arcs
	}
	return "(" + arcs + " + " + fig(s) + ")"
}

// buildOffset reads an offset of any style: a parallel shift O over a length L
// from face to face along the axis, legs included.
func buildOffset(c *checker) built {
	s := c.main()
	c.checkSameEnds(s, "an offset keeps its size: say kind reducer with offset_mm, or give area_m2")
	b := built{ends: Through(s), source: "Pappus: girth x centre-line arcs"}
	length := c.need(Length, " (face to face along the axis)")
	shift := math.Abs(c.need(OffsetShift, ""))
	legs, _ := c.take(Legs)
	if shift < leastSide {
		c.wrong(OffsetShift, mm(leastSide)+" mm and more, either way", "an offset without a shift is a straight")
	}
	if 2*legs > length-leastSide {
		c.wrong(Legs, "0 to "+mm((length-leastSide)/2)+" mm", "the legs are longer than the offset")
	}
	along := length - 2*legs
	switch c.p.Style {
	case StraightSided:
		b.source = "mensuration: sheared prism, complete elliptic integral where curved"
		if c.ok() {
			// bases count it by its centre line, as if it were mitred
			c.run(&b, func() stretch {
				run := prism{s, withLegs{slope{along, shift}, legs}}.stretch(c.p.Plane, asTaper)
				run.swept = false
				return run
			})
			b.parts = c.sheared(s, along, shift, legs)
		}
	case Mitred:
		b.source = "truncated prisms: girth x centre line"
		if c.ok() {
			c.noteShortLegs(s, along, shift, legs)
			c.prism(&b, prism{s, withLegs{slope{along, shift}, legs}}, asBend)
		}
	default:
		f := c.doubleArc(inPlane(s, c.p.Plane), along, shift)
		if c.ok() {
			c.prism(&b, prism{s, withLegs{f, legs}}, asBend)
		}
	}
	return b
}

// checkSameEnds refuses a piece whose far end is another size.
func (c *checker) checkSameEnds(s CrossSection, cure string) {
	if s.Shape == NoShape {
		return
	}
	for _, d := range [...]struct {
		dim  Dim
		side float64
	}{{Width2, s.Width}, {Height2, s.Height}, {Diameter2, s.Diameter}} {
		if d.side == 0 {
			continue // not a side of this shape
		}
		if v, given := c.take(d.dim); given && math.Abs(v-d.side) > slack {
			c.add(true, Problem{Dim: d.dim, Expected: "the same as the near end, or area_m2",
				Message: cure})
		}
	}
}

// sheared is a straight-sided offset: the near end pushed sideways to the far.
func (c *checker) sheared(s CrossSection, along, shift, legs float64) []part {
	x, y := shift, 0.0
	if c.p.Plane == PlaneHeight {
		x, y = 0, shift
	}
	f := newLoft(s, s, along, x, y)
	if legs == 0 {
		return one(f)
	}
	return []part{{"offset", 1, f}, {"legs", 1, prism{s, level(2 * legs)}}}
}

// noteShortLegs says so where a mitre plane runs past the end face.
func (c *checker) noteShortLegs(s CrossSection, along, shift, legs float64) {
	least := inPlane(s, c.p.Plane) / 2 * math.Tan(math.Atan2(shift, along)/2)
	if legs < least-slack {
		c.note("the mitre runs past the end face: legs_mm under " + c.in.size(least))
	}
}

// doubleArc reads the radius of a radius offset; with none given the two arcs
// meet.
func (c *checker) doubleArc(w, along, shift float64) doubleArc {
	f := doubleArc{along: along, across: shift}
	rc, given := c.centreRadius(w)
	widest := f.widest()
	if !given {
		rc = widest
	}
	allowed := mm(w/2) + " to " + mm(widest) + " mm"
	switch {
	case widest < w/2-slack:
		c.wrong(OffsetShift, "a shift and length whose arcs have a centre-line radius of at least "+mm(w/2)+" mm",
			"the arcs are tighter than half the side in the plane: say style mitred or straight, or give more length")
	case rc > widest+slack:
		c.wrong(Radius, allowed, "this radius doesn't fit in the length")
	}
	f.radius = math.Min(rc, widest)
	return f
}
