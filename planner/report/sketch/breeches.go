package sketch

import "blankoff/fittings"

// drawBreeches has two forms: a round main whose legs are oblique cones, each
// kept on its own side of the middle, and a rectangular main of two bends.
func drawBreeches(p *pen) {
	p.notes[fittings.OffsetShift] = "circular: of each leg's end from the main's axis"
	p.notes[fittings.Length] = "circular: along the main's axis"
	p.notes[fittings.BranchDiameter] = "circular: of each leg"
	p.notes[fittings.Angle], p.notes[fittings.Radius] = "rectangular: of each leg", "rectangular: of each leg's centre line"
	p.view("circular, square to its plane")
	R, r := p.px(fittings.Diameter)/2, p.px(fittings.BranchDiameter)/2
	long, off := p.px(fittings.Length), p.px(fittings.OffsetShift)
	// the inner edge of a leg runs from the main's other side, and the legs part
	// where it crosses the middle
	crotch := Point{long * R / (R + off - r), 0}
	p.line(Outline, Point{0, -R}, Point{0, R})
	p.line(Thin, Point{0, 0}, crotch)
	for _, side := range [...]float64{-1, 1} {
		p.line(Outline, Point{0, side * R}, Point{long, side * (off + r)}, Point{long, side * (off - r)}, crotch)
		p.line(Axis, Point{0, 0}, Point{long, side * off})
	}
	p.line(Axis, Point{-14, 0}, Point{long + away + 14, 0})
	p.dim(Point{0, R}, Point{0, -R}, away, p.name(fittings.Diameter))
	p.dim(Point{long, off - r}, Point{long, off + r}, away, p.name(fittings.BranchDiameter))
	p.line(Axis, Point{long, -off}, Point{long + away + 8, -off})
	p.span(Point{long + away, 0}, Point{long + away, -off}, -1, p.name(fittings.OffsetShift))
	p.line(Thin, Point{0, R + clear}, Point{0, off + r + clear})
	p.dim(Point{0, off + r}, Point{long, off + r}, -away, p.name(fittings.Length))
	p.twinBend()
	p.sections("main", near, fittings.Rectangular, fittings.Circular)
}

// twinBend is a rectangular main that divides into two bends of half its width.
func (p *pen) twinBend() {
	p.view("rectangular, square to its plane")
	p.sizes.Set(fittings.Width, 0.8)
	p.sizes.Set(fittings.Height, 0.4)
	p.sizes.Set(fittings.Throat, 0.25)
	p.sizes.Set(fittings.Angle, 90)
	p.sizes.Set(fittings.Legs, 0.13)
	p.scale *= 0.6
	half, t, legs := p.px(fittings.Width)/2, p.px(fittings.Throat), p.px(fittings.Legs)
	for _, side := range [...]float64{-1, 1} {
		c := Point{0, side * (half + t)}
		for _, r := range [...]float64{t, t + half} {
			p.arc(Outline, c, r, side*90, -side*90)
			p.line(Outline, Point{-legs, side * (half + t - r)}, Point{0, side * (half + t - r)})
			p.line(Outline, Point{r, c.Y}, Point{r, c.Y + side*legs})
		}
		p.line(Outline, Point{-legs, 0}, Point{-legs, side * half})
		p.line(Outline, Point{t, c.Y + side*legs}, Point{t + half, c.Y + side*legs})
		p.line(Thin, Point{0, 0}, Point{0, side * half})
		p.line(Thin, Point{t, c.Y}, Point{t + half, c.Y})
		p.arc(Axis, c, t+half/2, side*90, -side*90)
	}
	c := Point{0, -half - t}
	p.cross(c)
	p.dim(Point{-legs, half}, Point{-legs, -half}, away, p.name(fittings.Width))
	p.radius(c, t+half/2, -20, -1, 0.78, p.name(fittings.Radius))
	p.radius(c, t, -47, -1, 0.5, p.name(fittings.Throat))
	p.dim(Point{-legs, -half}, Point{0, -half}, away, p.name(fittings.Legs))
	c.Y = -c.Y
	p.line(Thin, Point{0, half}, c, Point{t, c.Y})
	p.angle(c, 0.45*t, 90, -90, p.name(fittings.Angle))
}
