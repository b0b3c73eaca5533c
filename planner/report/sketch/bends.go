package sketch

import (
	"math"
	"strconv"

	"blankoff/fittings"
)

// A bend is seen square to its plane. It comes from the left, its near end and
// first leg level, and turns up round the origin: a point at angle f of the turn
// lies at direction f - 90 from the centre.

const planeCaption = "square to the plane (plane height: h for w)"

// inPlane is the letters of the side in the plane.
func (p *pen) inPlane() string {
	if p.drawing.Style == fittings.SquareThroat || p.drawing.Style == fittings.SquareHeel {
		return p.name(fittings.Width) // rectangular only
	}
	return p.name(fittings.Width, fittings.Diameter)
}

// turn is the geometry of a bend in px.
type turn struct{ throat, wide, angle, legs float64 }

func (p *pen) turn() turn {
	t := turn{wide: p.side(), angle: p.number(fittings.Angle), legs: p.px(fittings.Legs)}
	switch {
	case p.sizes.Has(fittings.Throat):
		t.throat = p.px(fittings.Throat)
	case p.sizes.Has(fittings.Radius):
		t.throat = p.px(fittings.Radius) - t.wide/2
	}
	return t
}

// on is a point at radius r and angle f of the turn.
func (t turn) on(r, f float64) Point { return polar(Point{}, r, f-90) }

// leg is that point moved along the leg at the end of the turn (f = angle) or,
// against the run, at its start (f = 0).
func (t turn) leg(r, f float64) Point {
	if f == 0 {
		return polar(t.on(r, 0), -t.legs, 0)
	}
	return polar(t.on(r, f), t.legs, f)
}

// ends draws both end faces and the legs, and the sizes of the near end.
func (p *pen) ends(t turn) {
	in, out := t.throat, t.throat+t.wide
	for _, f := range [...]float64{0, t.angle} {
		p.line(Outline, t.on(in, f), t.leg(in, f), t.leg(out, f), t.on(out, f))
		if t.legs > 0 {
			p.line(Thin, t.on(in, f), t.on(out, f))
		}
	}
	p.dim(t.leg(out, 0), t.leg(in, 0), away, p.inPlane())
	if t.legs > 0 {
		p.dim(t.leg(in, 0), t.on(in, 0), away, p.name(fittings.Legs))
	}
}

// centreLine draws the axis of legs and arc.
func (p *pen) centreLine(t turn) {
	rc := t.throat + t.wide/2
	p.line(Axis, polar(t.leg(rc, 0), -10, 0), t.on(rc, 0))
	p.arc(Axis, Point{}, rc, -90, t.angle)
	p.line(Axis, t.on(rc, t.angle), polar(t.leg(rc, t.angle), 10, t.angle))
}

// outerAngle dimensions the angle of the turn outside the heel.
func (p *pen) outerAngle(t turn) {
	out := t.throat + t.wide
	for _, f := range [...]float64{0, t.angle} {
		p.line(Thin, t.on(out+clear, f), t.on(out+away+beyond, f))
	}
	p.angle(Point{}, out+away, -90, t.angle, p.name(fittings.Angle))
}

func (p *pen) radii(t turn) {
	p.cross(Point{})
	p.radius(Point{}, t.throat+t.wide/2, -t.angle*0.22, -1, 0.74, p.name(fittings.Radius))
	p.radius(Point{}, t.throat, -t.angle*0.52, -1, 0.5, p.name(fittings.Throat))
}

func drawRadiusBend(p *pen) {
	p.view(planeCaption)
	t := p.turn()
	p.ends(t)
	p.arc(Outline, Point{}, t.throat, -90, t.angle)
	p.arc(Outline, Point{}, t.throat+t.wide, -90, t.angle)
	p.centreLine(t)
	p.radii(t)
	p.outerAngle(t)
	drawReducingBend(p, t)
	p.sections("cross-section", near, every...)
}

// drawReducingBend has a throat of constant radius and a heel whose radius
// changes in proportion to the angle.
func drawReducingBend(p *pen, t turn) {
	p.sizes.Set(fittings.Width2, 0.35)
	p.notes[fittings.Width2] = "of the far end, rectangular, plane width"
	p.notes[fittings.Height2] = "of the far end, rectangular, plane height"
	p.view("rectangular, changing its size in the plane")
	t.legs = 0
	out, end := t.throat+t.wide, t.throat+p.px(fittings.Width2)
	var heel []Point
	for i := range 31 {
		share := float64(i) / 30
		heel = append(heel, t.on(out+(end-out)*share, t.angle*share))
	}
	p.line(Outline, heel...)
	p.arc(Outline, Point{}, t.throat, -90, t.angle)
	p.line(Outline, t.on(t.throat, 0), t.on(out, 0))
	p.line(Outline, t.on(t.throat, t.angle), t.on(end, t.angle))
	p.dim(t.on(out, 0), t.on(t.throat, 0), away, p.name(fittings.Width))
	p.dim(t.on(t.throat, t.angle), t.on(end, t.angle), away, p.name(fittings.Width2, fittings.Height2))
	p.cross(Point{})
	p.radius(Point{}, t.throat, -t.angle*0.5, 1, 0.55, p.name(fittings.Throat))
}

// drawGoredBend is made of straight gores that touch the circles of the bend,
// the end ones half as long.
func drawGoredBend(p *pen) {
	p.view(planeCaption)
	t := p.turn()
	n := p.number(fittings.Gores)
	half := t.angle / (n - 1) / 2
	var in, out []Point
	p.ends(t)
	in, out = append(in, t.on(t.throat, 0)), append(out, t.on(t.throat+t.wide, 0))
	for f := half; f < t.angle; f += 2 * half {
		stretch := 1 / math.Cos(half*math.Pi/180)
		a, b := t.on(t.throat*stretch, f), t.on((t.throat+t.wide)*stretch, f)
		in, out = append(in, a), append(out, b)
		p.line(Outline, a, b)
	}
	p.line(Outline, append(in, t.on(t.throat, t.angle))...)
	p.line(Outline, append(out, t.on(t.throat+t.wide, t.angle))...)
	p.centreLine(t)
	for i := range int(n) {
		f := math.Max(half/2, math.Min(float64(i)*2*half, t.angle-half/2))
		p.word(t.on(t.throat+t.wide*0.8, f), strconv.Itoa(i+1))
	}
	p.radii(t)
	p.outerAngle(t)
	p.letter(t.on(t.throat+t.wide+away*2.6, t.angle*0.2), p.name(fittings.Gores)+" = "+strconv.Itoa(int(n)))
	p.sections("cross-section", near, every...)
}

func drawSquareThroat(p *pen) {
	p.view(planeCaption)
	t := p.turn()
	p.ends(t)
	p.arc(Outline, Point{}, t.wide, -90, t.angle)
	p.centreLine(t)
	p.outerAngle(t)
	p.sections("cross-section", near, fittings.Rectangular)
}

// corner is where the sheets at radius r of both ends would meet.
func (t turn) corner(r float64) Point {
	return polar(t.on(r, 0), r*tan(t.angle/2), 0)
}

// innerAngle dimensions the angle of the turn where the axes meet.
func (p *pen) innerAngle(t turn) {
	rc := t.throat + t.wide/2
	at := t.corner(rc)
	p.line(Axis, polar(t.leg(rc, 0), -10, 0), at, polar(t.leg(rc, t.angle), 10, t.angle))
	p.line(Thin, at, polar(at, 56, 0))
	p.angle(at, 44, 0, t.angle, p.name(fittings.Angle))
}

func drawMitredBend(p *pen) {
	p.view(planeCaption)
	t := p.turn()
	p.ends(t)
	// the mitre runs from the throat's corner to the heel's
	p.line(Outline, t.on(t.wide, 0), t.corner(t.wide), t.on(t.wide, t.angle))
	p.fig.Lines = withoutJoints(p.fig.Lines)
	p.line(Thin, Point{}, t.corner(t.wide))
	p.innerAngle(t)
	p.sections("cross-section", near, every...)
}

// withoutJoints drops the lines where legs meet the bend, which has none.
func withoutJoints(lines []Line) []Line {
	kept := lines[:0]
	for i, l := range lines {
		if joint := i < 4 && l.Weight == Thin; !joint {
			kept = append(kept, l)
		}
	}
	return kept
}

func drawSquareHeel(p *pen) {
	p.view(planeCaption)
	t := p.turn()
	p.ends(t)
	out := t.throat + t.wide
	p.arc(Outline, Point{}, t.throat, -90, t.angle)
	p.line(Outline, t.on(out, 0), t.corner(out), t.on(out, t.angle))
	p.innerAngle(t)
	p.arc(Axis, Point{}, t.throat+t.wide/2, -90, t.angle)
	p.radii(t)
	p.sections("cross-section", near, fittings.Rectangular)
}
