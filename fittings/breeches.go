package fittings

import (
	"math"

	"blankoff/fittings/surface"
)

// twoLegs is a round main that splits in two (surface.Breeches).
type twoLegs struct{ surface.Breeches }

func (f twoLegs) area() float64 { return f.Area() }
func (f twoLegs) figures() string {
	R, r, L, e := fig(f.R), fig(f.Leg), fig(f.L), fig(f.E)
	slant := "sqrt(" + L + "^2 + (" + e + " x cos(t) + " + r + " - " + R + ")^2)"
	return "4 x integral over t from 0 to pi / 2 of (" + slant + " x (" + R + " + " + r + ") / 2)" +
		" + 4 x integral over t from pi / 2 to pi of (" + slant + " x (1 - u) x (" + R + " + (" + r + " - " + R + ") x u + " + r + ") / 2)" +
		" with u = -" + R + " x cos(t) / (" + e + " + (" + r + " - " + R + ") x cos(t))"
}
func (f twoLegs) second() string { return "t in radians, " + byStrips(f.AreaStrips(strips)) }

// buildBreeches reads a main that divides into two like legs. It has no far end:
// its ends are the plant end and the two legs.
func buildBreeches(c *checker) built {
	shape := c.inferred(c.p.Shape, nearEnd, "shape")
	if shape == FlatOval {
		c.refuse("shape", "circular or rectangular, or area_m2", "flat-oval breeches have no exact area here: give area_m2")
	}
	s := c.section(shape, nearEnd)
	if shape == Circular {
		return c.roundBreeches(s)
	}
	return c.twinBend(s)
}

func breechesEnds(main, leg CrossSection) []End {
	return []End{{PlantEnd, main}, {BranchEnd, leg}, {BranchEnd2, leg}}
}

// roundBreeches has legs of one diameter, each shifted offset_mm.
func (c *checker) roundBreeches(s CrossSection) built {
	leg := CrossSection{Shape: Circular}
	d, given := c.either(BranchDiameter, Diameter2)
	leg.Diameter = d
	if !given {
		d = c.need(BranchDiameter, " (of each leg)")
	}
	if math.IsNaN(d) {
		leg = CrossSection{}
	}
	b := built{ends: breechesEnds(s, leg), source: "two oblique frusta, each on its own side of the middle: own derivation, checked against a mesh"}
	length := c.need(Length, " (along the main's axis)")
	e := math.Abs(c.need(OffsetShift, " (of each leg's end from the main's axis)"))
	if s.Shape == Circular && d > s.Diameter+slack {
		c.wrong(BranchDiameter, mm(leastSide)+" to "+mm(s.Diameter)+" mm", "a leg is wider than the main")
	}
	if e < d/2-slack {
		c.wrong(OffsetShift, mm(d/2)+" mm and more", "the legs' ends overlap")
	}
	if c.ok() {
		f := surface.Breeches{R: s.Diameter / 2, Leg: d / 2, L: length, E: math.Max(e, d/2)}
		b.parts = one(twoLegs{f})
		axis := slope{length, f.E}
		for range 2 {
			c.run(&b, func() stretch {
				return stretch{near: s, far: leg, axis: axis, meeting: axis, edge: slope{length, f.E + f.R - f.Leg}, by: asTaper}
			})
		}
	}
	return b
}

// twinBend is a rectangular main that divides into two radius bends, each half as
// wide in the plane.
func (c *checker) twinBend(s CrossSection) built {
	leg := s
	if c.p.Plane == PlaneHeight {
		leg.Height /= 2
	} else {
		leg.Width /= 2
	}
	b := built{ends: breechesEnds(s, leg), source: "two radius bends of half the side, Pappus"}
	for _, d := range [...]struct {
		dim  Dim
		side float64
	}{{BranchWidth, leg.Width}, {BranchHeight, leg.Height}} {
		if v, given := c.take(d.dim); given && s.Shape == Rectangular && math.Abs(v-d.side) > c.agree() {
			c.add(true, Problem{Dim: d.dim, Expected: mm(d.side) + " mm, or area_m2",
				Message: "rectangular breeches are measured as two radius bends of half the side: give area_m2 for other legs"})
		}
	}
	angle := c.need(Angle, " (of each leg)")
	legs, _ := c.take(Legs)
	rc := c.needRadius(inPlane(leg, c.p.Plane))
	if c.ok() {
		f := prism{leg, withLegs{arc{rc, angle}, legs}}
		b.parts = []part{{"two bends", 2, f}}
		for range 2 {
			c.run(&b, func() stretch { return f.stretch(c.p.Plane, asBend) })
		}
	}
	return b
}
