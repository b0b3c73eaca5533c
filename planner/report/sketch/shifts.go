package sketch

import (
	"math"

	"blankoff/fittings"
)

// shifted dimensions a shift between two axes at the right of a view, the near
// one at height a and the far one at b, the far end at x.
func (p *pen) shifted(x, a, b float64, d fittings.Dim) {
	p.line(Axis, Point{x + 8, a}, Point{x + away + 8, a})
	p.line(Axis, Point{x + 8, b}, Point{x + away + 8, b})
	p.span(Point{x + away, a}, Point{x + away, b}, -1, p.name(d))
}

// taper draws one plan of a piece with unlike ends: the near end at the left with
// its middle at height 0, the far one shifted up.
func (p *pen) taper(nearSide, farSide, off float64) (long float64) {
	long = p.px(fittings.Length)
	p.closed(Outline, Point{0, -nearSide / 2}, Point{long, -off - farSide/2}, Point{long, -off + farSide/2}, Point{0, nearSide / 2})
	p.line(Axis, Point{-12, 0}, Point{long + 12, 0})
	p.line(Axis, Point{long * 0.6, -off}, Point{long + 12, -off})
	return long
}

func drawReducer(p *pen) {
	p.notes[fittings.OffsetShift] = "shift of the far end along the width, if any"
	p.notes[fittings.OffsetShift2] = "shift of the far end along the height, if any"
	for _, v := range [...]struct {
		caption         string
		near, far       []fittings.Dim
		side, side2, by fittings.Dim
	}{
		{"from above", []fittings.Dim{fittings.Width, fittings.Diameter}, []fittings.Dim{fittings.Width2, fittings.Diameter2}, fittings.Width, fittings.Width2, fittings.OffsetShift},
		{"from the side", []fittings.Dim{fittings.Height}, []fittings.Dim{fittings.Height2}, fittings.Height, fittings.Height2, fittings.OffsetShift2},
	} {
		p.view(v.caption)
		a, b, off := p.px(v.side), p.px(v.side2), p.px(v.by)
		long := p.taper(a, b, off)
		p.dim(Point{0, a / 2}, Point{0, -a / 2}, away, p.name(v.near...))
		p.dim(Point{long, -off - b/2}, Point{long, -off + b/2}, away, p.name(v.far...))
		p.span(Point{long * 0.72, 0}, Point{long * 0.72, -off}, 1, p.name(v.by))
		p.lengthBelow(long, a/2, -off+b/2)
	}
	p.sections("near end", near, every...)
	p.sections("far end, of the same shape", far, every...)
}

// lengthBelow dimensions the length under a view whose lower corners are at
// heights a and b.
func (p *pen) lengthBelow(long, a, b float64) {
	y := math.Max(a, b)
	if y > a+clear {
		p.line(Thin, Point{0, a + clear}, Point{0, y + clear})
	}
	if y > b+clear {
		p.line(Thin, Point{long, b + clear}, Point{long, y + clear})
	}
	p.dim(Point{0, y}, Point{long, y}, -away, p.name(fittings.Length))
}

func drawTransition(p *pen) {
	p.notes[fittings.OffsetShift] = "shift of the far end along the width, if any"
	p.notes[fittings.OffsetShift2] = "shift of the far end along the height, if any"
	w, h, d := p.px(fittings.Width), p.px(fittings.Height), p.px(fittings.Diameter2)
	o, o2 := p.px(fittings.OffsetShift), p.px(fittings.OffsetShift2)
	p.view("from above")
	long := p.taper(w, d, o)
	// the flat triangle on top meets the circle at its highest point
	p.line(Thin, Point{0, -w / 2}, Point{long, -o}, Point{0, w / 2})
	p.dim(Point{0, w / 2}, Point{0, -w / 2}, away, p.name(fittings.Width))
	p.dim(Point{long, -o - d/2}, Point{long, -o + d/2}, away, p.name(fittings.Diameter2))
	p.lengthBelow(long, w/2, -o+d/2)
	p.view("along its axis, from the near end")
	p.box(Outline, 0, 0, w, h)
	// seen this way, the shift along the width goes to the right
	c := Point{w/2 + o, h/2 - o2}
	p.arc(Outline, c, d/2, 0, 360)
	for _, corner := range [...]struct{ x, y, across, up float64 }{{0, 0, 180, 90}, {w, 0, 0, 90}, {w, h, 0, -90}, {0, h, 180, -90}} {
		p.line(Thin, polar(c, d/2, corner.up), Point{corner.x, corner.y}, polar(c, d/2, corner.across))
	}
	p.line(Axis, Point{w / 2, -8}, Point{w / 2, h + 16 + away})
	p.line(Axis, Point{c.X, c.Y - d/2 - 8}, Point{c.X, h + 16 + away})
	p.line(Axis, Point{-8, h / 2}, Point{w + 16 + away, h / 2})
	p.line(Axis, Point{-8, c.Y}, Point{w + 16 + away, c.Y})
	p.dim(Point{0, h}, Point{0, 0}, away, p.name(fittings.Height))
	p.span(Point{w / 2, h + 12 + away}, Point{c.X, h + 12 + away}, -1, p.name(fittings.OffsetShift))
	p.span(Point{w + 12 + away, h / 2}, Point{w + 12 + away, c.Y}, -1, p.name(fittings.OffsetShift2))
	p.sections("near end", near, every...)
	p.sections("far end, of another shape", far, every...)
}

// offsetSizes draws the end faces of an offset and its sizes, and says what they
// mean.
func (p *pen) offsetSizes(long, off, wide float64) {
	p.notes[fittings.OffsetShift] = "shift in the plane"
	p.notes[fittings.Length] = "face to face along the axis"
	p.notes[fittings.Legs] = "straight leg at each end along the axis, if any"
	p.line(Outline, Point{0, -wide / 2}, Point{0, wide / 2})
	p.line(Outline, Point{long, -off - wide/2}, Point{long, -off + wide/2})
	p.dim(Point{0, wide / 2}, Point{0, -wide / 2}, away, p.name(fittings.Width, fittings.Diameter))
	p.line(Thin, Point{long, -off + wide/2 + clear}, Point{long, wide/2 + clear})
	p.dim(Point{0, wide / 2}, Point{long, wide / 2}, -away, p.name(fittings.Length))
	p.line(Axis, Point{-12, 0}, Point{0, 0})
	p.shifted(long, 0, -off, fittings.OffsetShift)
}

func drawRadiusOffset(p *pen) {
	p.view(planeCaption)
	long, off, wide := p.px(fittings.Length), p.px(fittings.OffsetShift), p.side()
	legs, rc := p.px(fittings.Legs), p.px(fittings.Radius)
	along := long - 2*legs
	// the straight between the arcs, and the angle of each: tan(f/2) = O/(L+s)
	s := math.Sqrt(along*along + off*off - 4*off*rc)
	f := 2 * math.Atan2(off, along+s) * 180 / math.Pi
	a, b := Point{legs, -rc}, Point{long - legs, rc - off}
	for _, side := range [...]float64{wide / 2, 0, -wide / 2} {
		weight := Outline
		if side == 0 {
			weight = Axis
		}
		// side is how far out of the first arc's centre line
		p.line(weight, Point{0, side}, Point{legs, side})
		p.arc(weight, a, rc+side, -90, f)
		p.line(weight, polar(a, rc+side, f-90), polar(b, rc-side, f+90))
		p.arc(weight, b, rc-side, f+90, -f)
		p.line(weight, Point{long - legs, side - off}, Point{long, side - off})
	}
	p.line(Thin, Point{legs, -wide / 2}, Point{legs, wide / 2})
	p.line(Thin, Point{long - legs, -off - wide/2}, Point{long - legs, -off + wide/2})
	p.offsetSizes(long, off, wide)
	p.cross(a)
	p.radius(a, rc, f*0.2-90, -1, 0.3, p.name(fittings.Radius))
	p.radius(a, rc-wide/2, f*0.8-90, 1, 0.55, p.name(fittings.Throat))
	p.notes[fittings.Radius] = "of the centre line; else two equal arcs"
	p.dim(Point{long - legs, -off - wide/2}, Point{long, -off - wide/2}, away, p.name(fittings.Legs))
	p.sections("cross-section", near, every...)
}

func drawMitredOffset(p *pen) {
	long, off, wide, legs := p.px(fittings.Length), p.px(fittings.OffsetShift), p.side(), p.px(fittings.Legs)
	// each mitre halves the turn, so that an edge breaks this far from the axis's
	k := wide / 2 * tan(math.Atan2(off, long-2*legs)*90/math.Pi)
	p.slanted(k)
	p.line(Thin, Point{legs - k, -wide / 2}, Point{legs + k, wide / 2})
	p.line(Thin, Point{long - legs - k, -off - wide/2}, Point{long - legs + k, -off + wide/2})
}

func drawStraightOffset(p *pen) {
	long, off, wide, legs := p.px(fittings.Length), p.px(fittings.OffsetShift), p.side(), p.px(fittings.Legs)
	p.slanted(0)
	p.line(Thin, Point{legs, -wide / 2}, Point{legs, wide / 2})
	p.line(Thin, Point{long - legs, -off - wide/2}, Point{long - legs, -off + wide/2})
}

// slanted draws an offset of straight sheets whose upper edge breaks k before
// the end of the leg, and its lower edge k after.
func (p *pen) slanted(k float64) {
	p.sections("cross-section", near, every...)
	p.view(planeCaption)
	long, off, wide, legs := p.px(fittings.Length), p.px(fittings.OffsetShift), p.side(), p.px(fittings.Legs)
	for _, edge := range [...]struct{ y, k float64 }{{-wide / 2, -k}, {wide / 2, k}} {
		p.line(Outline, Point{0, edge.y}, Point{legs + edge.k, edge.y}, Point{long - legs + edge.k, edge.y - off}, Point{long, edge.y - off})
	}
	p.line(Axis, Point{0, 0}, Point{legs, 0}, Point{long - legs, -off}, Point{long, -off})
	p.offsetSizes(long, off, wide)
	p.line(Thin, Point{legs, -wide/2 - clear}, Point{legs, -wide/2 - clear - 2})
	p.dim(Point{0, -wide / 2}, Point{legs, -wide / 2}, away, p.name(fittings.Legs))
}
