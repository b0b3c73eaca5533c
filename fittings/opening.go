package fittings

import (
	"math"

	"blankoff/fittings/surface"
)

// junction is a branch on a wall, with its sizes read.
type junction struct {
	branch  CrossSection
	style   Style
	angle   float64 // between the axes, degrees
	shift   float64 // off the main's axis, >= 0; m
	collar  float64 // along the branch's axis from the main's wall, m
	entry   float64 // conical: diameter at the wall; shoe: extra entry; m
	roundOf float64 // radius of a round main; 0 on a flat wall
}

// surfaces gives the opening that the branch cuts in its wall, and the branch
// itself.
func (j junction) surfaces() (opening, side []part) {
	switch {
	case j.roundOf > 0 && j.style == Conical:
		cone := surface.Cone{R: j.roundOf, Crown: j.entry / 2, End: j.branch.Diameter / 2, Height: j.collar}
		return []part{{"opening", 1, coneHole{cone}}}, []part{{"branch", 1, coneSide{cone}}}
	case j.roundOf > 0:
		return j.onRound()
	case j.style == Conical:
		wide := CrossSection{Shape: Circular, Diameter: j.entry}
		return []part{{"opening", 1, face{wide}}}, []part{{"branch", 1, newLoft(wide, j.branch, j.collar, 0, 0)}}
	case j.style == Shoe:
		f := shoe{j.branch.Width, j.branch.Height, j.collar, j.entry}
		wide := CrossSection{Shape: Rectangular, Width: f.w + f.t, Height: f.h}
		return []part{{"opening", 1, face{wide}}}, []part{{"branch", 1, f}}
	}
	return []part{{"opening", 1, slantedFace{j.branch, j.angle}}}, []part{{"branch", 1, prism{j.branch, level(j.collar)}}}
}

// onRound is a straight branch on a round main. A rectangular one is made of two
// sides along the main and two across it; a flat-oval one of its round part and
// two sides along the main.
func (j junction) onRound() (opening, side []part) {
	s := saddle{surface.Saddle{R: j.roundOf, Shift: j.shift, Beta: rad(j.angle)}, j.angle, j.collar}
	b := j.branch
	switch b.Shape {
	case Circular:
		return []part{{"opening", 1, roundHole{s, b.Diameter / 2}}}, []part{{"branch", 1, roundSide{s, b.Diameter / 2}}}
	case FlatOval:
		opening, side = []part{{"opening, round part", 1, roundHole{s, b.Height / 2}}}, []part{{"branch, round part", 1, roundSide{s, b.Height / 2}}}
		if flat := b.Width - b.Height; flat > 0 {
			opening = append(opening, part{"opening, straight part", 1, slotHole{s, flat, b.Height}})
			side = append(side, part{"branch, straight part", 1, alongSides{s, flat, b.Height}})
		}
		return opening, side
	}
	return []part{{"opening", 1, slotHole{s, b.Width, b.Height}}},
		[]part{{"branch along the main", 1, alongSides{s, b.Width, b.Height}}, {"branch across the main", 1, acrossSides{s, b.Height}}}
}

// wallAt is how far along the branch's axis the main's wall lies from the main's
// axis: sqrt(R^2 - y0^2) / sin(beta).
func (j junction) wallAt() float64 {
	return math.Sqrt(math.Max(0, j.roundOf*j.roundOf-j.shift*j.shift)) / math.Sin(rad(j.angle))
}

// slantedFace is what a branch at an angle cuts out of a flat wall:
// its face area / sin(beta).
type slantedFace struct {
	section CrossSection
	angle   float64
}

func (f slantedFace) area() float64   { return f.section.FaceArea() / math.Sin(rad(f.angle)) }
func (f slantedFace) figures() string { return f.section.faceFigures() + overSin(f.angle) }
func (f slantedFace) second() string  { return "" }

// overSin prints the division by the sine of a branch angle, nothing at 90.
func overSin(angle float64) string {
	if angle == 90 {
		return ""
	}
	return " / sin(" + deg(angle) + ")"
}

// shoe is a w x h branch of length l on a flat wall with a 45 degree entry t on
// one side: 2wl + t^2 + hl + h(l-t) + h t sqrt(2). It cuts out (w+t) h.
type shoe struct{ w, h, l, t float64 }

func (f shoe) area() float64 {
	return 2*f.w*f.l + f.t*f.t + f.h*f.l + f.h*(f.l-f.t) + f.h*f.t*math.Sqrt2
}
func (f shoe) figures() string {
	w, h, l, t := fig(f.w), fig(f.h), fig(f.l), fig(f.t)
	return "2 x " + w + " x " + l + " + " + t + "^2 + " + h + " x " + l + " + " + h + " x (" + l + " - " + t + ") + " + h + " x " + t + " x sqrt(2)"
}
func (f shoe) second() string { return "" }

// saddle is a branch on a round main, with what its figures need.
type saddle struct {
	surface.Saddle
	angle, collar float64
}

// free is S, the free end's distance from the main's axis along the branch's.
func (s saddle) free() float64 {
	return math.Sqrt(math.Max(0, s.R*s.R-s.Shift*s.Shift))/math.Sin(s.Beta) + s.collar
}

func (s saddle) freeFigures() string {
	wall := fig(s.R)
	if s.Shift != 0 {
		wall = "sqrt(" + fig(s.R) + "^2 - " + fig(s.Shift) + "^2)"
	}
	return "(" + wall + overSin(s.angle) + " + " + fig(s.collar) + ")"
}

// roundHole is what a round branch cuts out of a round main
// (surface.Saddle.RoundHole).
type roundHole struct {
	saddle
	r float64
}

func (f roundHole) area() float64 { return f.RoundHole(f.r) }
func (f roundHole) figures() string {
	r, R := fig(f.r), fig(f.R)
	if f.Shift == 0 {
		return "4 x " + r + "^2 x integral over t from 0 to pi / 2 of (cos(t)^2 / sqrt(1 - (" + r + " / " + R + ")^2 x sin(t)^2))" + overSin(f.angle)
	}
	return "2 x " + r + "^2 x integral over t from -pi / 2 to pi / 2 of (cos(t)^2 / sqrt(1 - ((" + fig(f.Shift) + " + " + r + " x sin(t)) / " + R + ")^2))" + overSin(f.angle)
}
func (f roundHole) second() string {
	return "t in radians, " + byStrips(f.RoundHoleStrips(f.r, strips))
}

// roundSide is a round branch on a round main (surface.Saddle.RoundBranch).
type roundSide struct {
	saddle
	r float64
}

func (f roundSide) area() float64 { return f.RoundBranch(f.r, f.free()) }
func (f roundSide) figures() string {
	r, R := fig(f.r), fig(f.R)
	cylinder := "2 x pi x " + r + " x " + f.freeFigures() + " - "
	if f.Shift == 0 {
		return cylinder + "4 x " + r + " x " + R + " x integral over t from 0 to pi / 2 of sqrt(1 - (" + r + " / " + R + ")^2 x sin(t)^2)" + overSin(f.angle)
	}
	return cylinder + "2 x " + r + " x integral over t from -pi / 2 to pi / 2 of sqrt(" + R + "^2 - (" + fig(f.Shift) + " + " + r + " x sin(t))^2)" + overSin(f.angle)
}
func (f roundSide) second() string {
	return "t in radians, " + byStrips(f.RoundBranchStrips(f.r, f.free(), strips))
}

// slotHole is what the straight sides of a branch cut out of a round main
// (surface.Saddle.SlotHole).
type slotHole struct {
	saddle
	w, h float64
}

func (f slotHole) area() float64 { return f.SlotHole(f.w, f.h) }
func (f slotHole) figures() string {
	return fig(f.w) + " x " + fig(f.R) + " x (asin(" + fig(f.Shift+f.h/2) + " / " + fig(f.R) + ") - asin(" +
		signed(f.Shift-f.h/2) + " / " + fig(f.R) + ")) x pi / 180" + overSin(f.angle)
}
func (f slotHole) second() string { return "" }

// alongSides is the two sides of a branch along a round main
// (surface.Saddle.SideFaces).
type alongSides struct {
	saddle
	w, h float64
}

func (f alongSides) area() float64 { return f.SideFaces(f.w, f.h, f.free()) }
func (f alongSides) figures() string {
	side := func(y float64) string {
		return fig(f.w) + " x (" + f.freeFigures() + " - sqrt(" + fig(f.R) + "^2 - " + fig(math.Abs(y)) + "^2)" + overSin(f.angle) + ")"
	}
	if f.Shift == 0 {
		return "2 x " + side(f.h/2)
	}
	return side(f.Shift+f.h/2) + " + " + side(f.Shift-f.h/2)
}
func (f alongSides) second() string { return "" }

// acrossSides is the two sides of a rectangular branch across a round main
// (surface.Saddle.EndFaces).
type acrossSides struct {
	saddle
	h float64
}

func (f acrossSides) area() float64 { return f.EndFaces(f.h, f.free()) }
func (f acrossSides) figures() string {
	return "2 x (" + fig(f.h) + " x " + f.freeFigures() + " - integral over t from " + signed(f.Shift-f.h/2) + " to " +
		fig(f.Shift+f.h/2) + " of sqrt(" + fig(f.R) + "^2 - t^2)" + overSin(f.angle) + ")"
}
func (f acrossSides) second() string {
	under := surface.Strips(func(t float64) float64 { return math.Sqrt(math.Max(0, f.R*f.R-t*t)) }, f.Shift-f.h/2, f.Shift+f.h/2, strips)
	return byStrips(2 * (f.h*f.free() - under/math.Sin(f.Beta)))
}

// coneHole is what a conical branch cuts out of a round main
// (surface.Cone.Hole).
type coneHole struct{ surface.Cone }

func (f coneHole) area() float64 { return f.Hole() }
func (f coneHole) figures() string {
	R := fig(f.R)
	return "4 x integral over t from 0 to pi / 2 of (" + R + " x (" + fig(f.Crown) + " + m x (" + R + " - z))^2 / (" + R + " + z)) with " + footFigures(f.Cone)
}
func (f coneHole) second() string { return "t in radians, " + byStrips(f.HoleStrips(strips)) }

// coneSide is a conical branch on a round main (surface.Cone.Area).
type coneSide struct{ surface.Cone }

func (f coneSide) area() float64 { return f.Area() }
func (f coneSide) figures() string {
	top := fig(f.R + f.Height)
	return "4 x sqrt(1 + m^2) x integral over t from 0 to pi / 2 of ((" + top + " - z) x (" + fig(f.End) + " + m x (" + top + " - z) / 2)) with " + footFigures(f.Cone)
}
func (f coneSide) second() string { return "t in radians, " + byStrips(f.AreaStrips(strips)) }

// footFigures says where the cone meets the main.
func footFigures(c surface.Cone) string {
	R := fig(c.R)
	return "m = (" + fig(c.Crown) + " - " + fig(c.End) + ") / " + fig(c.Height) +
		", a = " + fig(c.Crown) + " + m x " + R +
		", z = (m x a x sin(t)^2 + sqrt(" + R + "^2 x (1 + m^2 x sin(t)^2) - a^2 x sin(t)^2)) / (1 + m^2 x sin(t)^2)"
}
