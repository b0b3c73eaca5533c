package fittings

import "math"

func rad(degrees float64) float64 { return degrees * math.Pi / 180 }

// withLegs adds a straight leg at each end to a path.
type withLegs struct {
	path
	legs float64
}

func (w withLegs) length() float64 { return w.path.length() + 2*w.legs }
func (w withLegs) figures() string {
	if w.legs == 0 {
		return w.path.figures()
	}
	return "(" + w.path.figures() + " + 2 x " + fig(w.legs) + ")"
}

// arc is a circular path: Rc theta.
type arc struct{ radius, angle float64 }

func (a arc) length() float64 { return a.radius * rad(a.angle) }
func (a arc) figures() string { return fig(a.radius) + " x pi x " + deg(a.angle) + " / 180" }

// mitre is the path of a mitred bend with no legs: W tan(theta/2), W the side in
// the plane.
type mitre struct{ side, angle float64 }

func (m mitre) length() float64 { return m.side * math.Tan(rad(m.angle)/2) }
func (m mitre) figures() string { return fig(m.side) + " x tan(" + deg(m.angle) + " / 2)" }

// gored is the path of a bend of N mitres, the end pieces half as long:
// 2 N Rc tan(theta/2N). A bend of n pieces has N = n - 1.
type gored struct{ radius, angle, mitres float64 }

func (g gored) length() float64 {
	return 2 * g.mitres * g.radius * math.Tan(rad(g.angle)/2/g.mitres)
}
func (g gored) figures() string {
	return "2 x " + deg(g.mitres) + " x " + fig(g.radius) + " x tan(" + deg(g.angle) + " / (2 x " + deg(g.mitres) + "))"
}

// steepest is the sharpest single mitre that is taken, degrees. Beyond it the
// heel runs away. Common practice, no source.
const steepest = 170.0

// inPlane gives a section's side in the plane of a bend or offset, NaN where the
// section isn't known.
func inPlane(s CrossSection, p Plane) float64 {
	switch {
	case s.Shape == NoShape:
		return math.NaN()
	case s.Shape == Circular:
		return s.Diameter
	case p == PlaneHeight:
		return s.Height
	}
	return s.Width
}

// centreRadius reads the centre-line radius of a bend whose in-plane side is w,
// from radius_mm or throat_mm: Rc = throat + w/2.
func (c *checker) centreRadius(w float64) (radius float64, given bool) {
	radius, given = c.take(Radius)
	throat, also := c.take(Throat)
	if given && also && math.Abs(throat+w/2-radius) > c.agree() {
		c.wrong(Radius, mm(throat+w/2)+" mm, throat plus half the side in the plane",
			"radius_mm (centre line) and throat_mm (inside) disagree: give one of them")
	}
	if !given {
		return throat + w/2, also
	}
	if radius < w/2-slack {
		c.wrong(Radius, leastRadius(w), "the centre-line radius is less than half the side in the plane")
	}
	return math.Max(radius, w/2), true
}

// leastRadius is the range of a centre-line radius.
func leastRadius(w float64) string {
	if math.IsNaN(w) {
		return "at least half the side in the plane"
	}
	return mm(w/2) + " to " + mm(mostRun) + " mm"
}

// needRadius is centreRadius where the area can't do without.
func (c *checker) needRadius(w float64) float64 {
	rc, given := c.centreRadius(w)
	if !given {
		c.add(true, Problem{Dim: Radius, Expected: leastRadius(w), Message: "give radius_mm (centre line) or throat_mm (inside)"})
	}
	return rc
}

// bendStyle gives the style of a bend, radius by default. The number of gores
// says that a bend of no stated style is gored.
func (c *checker) bendStyle() Style {
	style := c.p.Style
	if style == NoStyle && c.p.Sizes.Has(Gores) {
		c.note("taken as gored, because gores is given")
		return Gored
	}
	if style == NoStyle {
		return RadiusStyle
	}
	return style
}

// buildBend reads a bend of any style.
func buildBend(c *checker) built {
	s := c.main()
	far, reducing := c.secondSize(s)
	b := built{ends: twoEnds(s, far), source: "Pappus: girth x centre-line arc"}
	angle := c.need(Angle, "")
	legs, _ := c.take(Legs)
	style, w := c.bendStyle(), inPlane(s, c.p.Plane)
	if reducing && style != RadiusStyle {
		c.refuse("style", "radius", "only a radius bend may change its size: give area_m2")
	}
	c.checkSquare(style, s.Shape)
	var f path
	switch style {
	case RadiusStyle:
		rc := c.needRadius(w)
		if reducing && c.ok() {
			return c.reducingBend(b, rc-w/2, angle, legs)
		}
		f = arc{rc, angle}
	case Mitred:
		c.checkMitre(angle, 1)
		b.source = "truncated prisms: girth x (legs + side x tan of half the angle)"
		f = mitre{w, angle}
	case Gored:
		n := c.need(Gores, " (pieces, ends counted)")
		c.checkMitre(angle, n-1)
		b.source = "truncated prisms: girth x tangent polygon of the centre line"
		f = gored{c.needRadius(w), angle, n - 1}
	case SquareThroat:
		c.zeroThroat()
		f = arc{w / 2, angle}
	case SquareHeel:
		c.checkMitre(angle, 1)
		return c.squareHeelBend(b, c.needRadius(w)-w/2, angle, legs)
	}
	if c.ok() {
		c.prism(&b, prism{s, withLegs{f, legs}}, asBend)
	}
	return b
}

// checkSquare refuses a square throat or heel on anything but a rectangle.
func (c *checker) checkSquare(style Style, shape Shape) {
	if (style == SquareThroat || style == SquareHeel) && (shape == Circular || shape == FlatOval) {
		c.refuse("style", "radius, mitred, gored", "only a rectangular bend has a square throat or heel")
	}
}

// zeroThroat refuses a throat or radius that contradicts a square throat.
func (c *checker) zeroThroat() {
	if throat, _ := c.take(Throat); throat > c.agree() {
		c.wrong(Throat, "0 mm", "a square throat has no radius: leave throat_mm empty, or say style radius")
	}
}

// checkMitre refuses mitres that are too sharp.
func (c *checker) checkMitre(angle, mitres float64) {
	if angle/mitres > steepest+slack {
		c.wrong(Angle, deg(dims[Angle].min)+" to "+deg(math.Min(180, steepest*mitres))+" degrees", "a mitre can't be this sharp")
	}
}

// secondSize reads the far end of a bend. Only the side in the plane of a
// rectangular bend may change.
func (c *checker) secondSize(s CrossSection) (far CrossSection, reducing bool) {
	far = s
	if s.Shape == NoShape {
		return far, false
	}
	for _, end := range [...]struct {
		dim     Dim
		side    *float64
		inPlane bool
	}{{Width2, &far.Width, c.p.Plane == PlaneWidth}, {Height2, &far.Height, c.p.Plane == PlaneHeight}, {Diameter2, &far.Diameter, false}} {
		if *end.side == 0 {
			continue // not a side of this shape
		}
		v, given := c.take(end.dim)
		switch {
		case !given || !(math.Abs(v-*end.side) > slack):
		case end.inPlane && s.Shape == Rectangular:
			*end.side, reducing = v, true
		default:
			c.refuseReducing(end.dim)
		}
	}
	return far, reducing
}

func (c *checker) refuseReducing(d Dim) {
	c.add(true, Problem{Dim: d, Expected: "the same as the near end, or area_m2",
		Message: "only the side in the plane of a rectangular bend or nothing may change: give a reducer of its own, or area_m2"})
}

// reducingBend is a rectangular radius bend whose side in the plane changes: two
// cheeks, a heel whose radius changes linearly, a throat of constant radius. Legs
// have the girth of their own end.
func (c *checker) reducingBend(b built, throat, angle, legs float64) built {
	near, far := b.ends[0].CrossSection, b.ends[1].CrossSection
	w1, w2, h := near.Width, far.Width, near.Height
	if c.p.Plane == PlaneHeight {
		w1, w2, h = near.Height, far.Height, near.Width
	}
	r1, r2 := throat+w1, throat+w2
	b.source = "mensuration: cheeks, linear heel, throat"
	b.parts = []part{
		{"cheeks", 1, cheeks{r1, r2, throat, angle}},
		{"heel", 1, heel{r1, r2, h, angle}},
		{"throat", 1, curvedStrip{h, arc{throat, angle}}},
	}
	c.run(&b, func() stretch {
		return heeled(near, far, throat+(w1+w2)/4, angle, legs, arc{math.Max(r1, r2), angle})
	})
	if legs > 0 {
		b.parts = append(b.parts, part{"leg", 1, prism{near, level(legs)}}, part{"leg", 1, prism{far, level(legs)}})
	}
	return b
}

func (c *checker) squareHeelBend(b built, throat, angle, legs float64) built {
	if !c.ok() {
		return b
	}
	s := b.ends[0].CrossSection
	w, h := s.Width, s.Height
	if c.p.Plane == PlaneHeight {
		w, h = h, w
	}
	b.source = "mensuration: cheeks, square heel, radius throat"
	b.parts = []part{{"bend", 1, squareHeel{w, h, throat, angle}}}
	c.run(&b, func() stretch {
		return heeled(s, s, throat+w/2, angle, legs, tangents{throat + w, angle})
	})
	if legs > 0 {
		b.parts = append(b.parts, part{"legs", 1, prism{s, withLegs{level(0), legs}}})
	}
	return b
}
