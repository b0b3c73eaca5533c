package sketch

import "blankoff/fittings"

// model is how one kind and style is drawn.
type model struct {
	kind  fittings.Kind
	style fittings.Style
	row   string  // what it is drawn from
	scale float64 // px per m
	draw  func(*pen)
}

const (
	boxedTee = "width_mm=600, height_mm=400, length_mm=800, branch_width_mm=300, branch_height_mm=300, branch_length_mm=150"
	coneOn   = "diameter_mm=500, length_mm=700, "
	cone     = "branch_diameter_mm=250, entry_mm=330, branch_length_mm=150"
)

var models = [...]model{
	{fittings.Straight, 0, "kind=straight, width_mm=600, height_mm=400, length_mm=1500", 180, drawStraight},
	{fittings.Bend, fittings.RadiusStyle,
		"kind=bend, width_mm=500, height_mm=300, throat_mm=200, angle_deg=90, legs_mm=100", 270, drawRadiusBend},
	{fittings.Bend, fittings.Mitred,
		"kind=bend, style=mitred, width_mm=600, height_mm=400, angle_deg=90, legs_mm=100", 320, drawMitredBend},
	{fittings.Bend, fittings.Gored,
		"kind=bend, style=gored, diameter_mm=315, radius_mm=315, angle_deg=90, gores=5, legs_mm=50", 480, drawGoredBend},
	{fittings.Bend, fittings.SquareThroat,
		"kind=bend, style=square throat, width_mm=600, height_mm=400, angle_deg=90, legs_mm=100", 320, drawSquareThroat},
	{fittings.Bend, fittings.SquareHeel,
		"kind=bend, style=square heel, width_mm=500, height_mm=300, throat_mm=200, angle_deg=90, legs_mm=100", 280, drawSquareHeel},
	{fittings.Reducer, 0,
		"kind=reducer, width_mm=600, height_mm=400, width2_mm=400, height2_mm=250, length_mm=500, offset_mm=90, offset2_mm=70", 320, drawReducer},
	{fittings.Transition, 0,
		"kind=transition, width_mm=600, height_mm=400, diameter2_mm=400, length_mm=500, offset_mm=60, offset2_mm=40", 300, drawTransition},
	{fittings.Offset, fittings.RadiusStyle,
		"kind=offset, width_mm=400, height_mm=300, length_mm=1200, offset_mm=400, radius_mm=400, legs_mm=100", 240, drawRadiusOffset},
	{fittings.Offset, fittings.Mitred,
		"kind=offset, style=mitred, width_mm=400, height_mm=300, length_mm=1000, offset_mm=400, legs_mm=150", 280, drawMitredOffset},
	{fittings.Offset, fittings.StraightSided,
		"kind=offset, style=straight, width_mm=600, height_mm=400, length_mm=800, offset_mm=300, legs_mm=100", 260, drawStraightOffset},
	{fittings.Tee, fittings.StraightSided, "kind=tee, " + boxedTee + ", branch_angle_deg=60, branch_shift_mm=80", 300, drawBranched},
	{fittings.Tee, fittings.Conical, "kind=tee, style=conical, " + coneOn + cone, 340, drawBranched},
	{fittings.Tee, fittings.Shoe, "kind=tee, style=shoe, " + boxedTee + ", entry_mm=100, branch_shift_mm=80", 300, drawBranched},
	{fittings.Cross, fittings.StraightSided,
		"kind=cross, diameter_mm=500, length_mm=600, branch_diameter_mm=250, branch_length_mm=150, branch_angle_deg=70, branch_shift_mm=60", 340, drawBranched},
	{fittings.Cross, fittings.Conical, "kind=cross, style=conical, " + coneOn + cone, 340, drawBranched},
	{fittings.Cross, fittings.Shoe, "kind=cross, style=shoe, " + boxedTee + ", entry_mm=100, branch_shift_mm=80", 300, drawBranched},
	{fittings.Spigot, fittings.StraightSided,
		"kind=spigot, branch_diameter_mm=200, branch_length_mm=150, branch_angle_deg=60, branch_shift_mm=60, from=" + roundMain + "500", 400, drawBranched},
	{fittings.Spigot, fittings.Conical, "kind=spigot, style=conical, " + cone + ", from=" + roundMain + "500", 340, drawBranched},
	{fittings.Spigot, fittings.Shoe,
		"kind=spigot, style=shoe, branch_width_mm=300, branch_height_mm=300, branch_length_mm=150, entry_mm=100, from=a plenum", 340, drawBranched},
	{fittings.Breeches, 0, "kind=breeches, diameter_mm=400, branch_diameter_mm=315, length_mm=500, offset_mm=250", 300, drawBreeches},
	{fittings.Cap, fittings.Flat, "kind=cap, diameter_mm=315", 420, drawCap},
	{fittings.Cap, fittings.Dished, "kind=cap, style=dished, diameter_mm=500, rise_mm=100", 300, drawCap},
	{fittings.Plenum, 0, "kind=plenum, width_mm=1000, height_mm=800, length_mm=500", 190, drawPlenum},
	{fittings.Flexible, 0, "kind=flexible, diameter_mm=200, length_mm=1000", 280, drawFlexible},
	{fittings.Inline, 0, "kind=inline, width_mm=500, height_mm=300, length_mm=200", 300, drawInline},
}

var every = []fittings.Shape{fittings.Rectangular, fittings.Circular, fittings.FlatOval}

// side is the larger or only side that the near end shows.
func (p *pen) side() float64 {
	if p.sizes.Has(fittings.Diameter) {
		return p.px(fittings.Diameter)
	}
	return p.px(fittings.Width)
}

// run draws a straight duct seen from the side, its near end at the left, and
// its length and width.
func (p *pen) run() (long, wide float64) {
	long, wide = p.px(fittings.Length), p.side()
	p.box(Outline, 0, 0, long, wide)
	p.line(Axis, Point{-12, wide / 2}, Point{long + 12, wide / 2})
	p.dim(Point{0, wide}, Point{long, wide}, -away, p.name(fittings.Length))
	p.dim(Point{0, wide}, Point{0, 0}, away, p.name(fittings.Width, fittings.Diameter))
	return long, wide
}

func drawStraight(p *pen) {
	p.view("from above")
	p.run()
	p.sections("cross-section", near, every...)
}

func drawFlexible(p *pen) {
	p.view("from above, extended to its full length")
	p.notes[fittings.Length] = "extended"
	long, wide := p.run()
	p.fig.Lines[0] = Line{Weight: Thin, Points: []Point{{0, 0}, {0, wide}}} // not a plain box
	p.line(Thin, Point{long, 0}, Point{long, wide})
	const ribs, deep = 20, 6.0
	pitch := long / ribs
	var upper, lower []Point
	for i := range ribs {
		x := float64(i) * pitch
		upper = append(upper, Point{x, 0}, Point{x + pitch/2, deep})
		lower = append(lower, Point{x, wide}, Point{x + pitch/2, wide - deep})
		p.line(Thin, Point{x + pitch/2, deep}, Point{x + pitch/2, wide - deep})
	}
	p.line(Outline, append(upper, Point{long, 0})...)
	p.line(Outline, append(lower, Point{long, wide})...)
	p.sections("cross-section", near, every...)
}

func drawInline(p *pen) {
	p.view("from above: a damper, attenuator or the like")
	long, wide := p.run()
	const flange = 6.0
	for _, x := range [...]float64{0, long} {
		p.line(Outline, Point{x, -flange}, Point{x, wide + flange})
	}
	middle := Point{long / 2, wide / 2}
	p.line(Thin, polar(middle, wide*0.2, 60), polar(middle, -wide*0.2, 60))
	p.arc(Thin, middle, 3, 0, 360)
	p.sections("cross-section", near, every...)
}

func drawCap(p *pen) {
	wide := p.side()
	p.view("from the side, on the end of its duct")
	const skirt, duct = 14.0, 70.0
	for _, y := range [...]float64{0, wide} {
		p.line(Hidden, Point{-duct, y}, Point{0, y})
		in := y + 4 - 8*y/wide
		p.line(Thin, Point{-skirt, in}, Point{0, in})
	}
	p.line(Axis, Point{-duct - 8, wide / 2}, Point{p.px(fittings.Rise) + 16, wide / 2})
	p.line(Outline, Point{0, 0}, Point{0, wide})
	rise := p.px(fittings.Rise)
	if rise > 0 {
		// a sphere through the rim: rho = (d^2/4 + rise^2) / (2 rise)
		rho := (wide*wide/4 + rise*rise) / (2 * rise)
		half := direction(Point{}, Point{rho - rise, -wide / 2})
		p.arc(Outline, Point{rise - rho, wide / 2}, rho, -half, 2*half)
		p.fig.Lines[len(p.fig.Lines)-1].Weight = Thin // the rim
		p.line(Thin, Point{clear, wide}, Point{rise, wide})
		p.dim(Point{0, wide}, Point{rise, wide}, -away, p.name(fittings.Rise))
		p.dim(Point{-duct, wide}, Point{-duct, 0}, away, p.name(fittings.Diameter))
		p.sections("cross-section", near, fittings.Circular)
		return
	}
	p.dim(Point{-duct, wide}, Point{-duct, 0}, away, p.name(fittings.Width, fittings.Diameter))
	p.sections("cross-section", near, every...)
}

// drawPlenum is a box in oblique projection, depths at half scale.
func drawPlenum(p *pen) {
	w, h, l := p.px(fittings.Width), p.px(fittings.Height), p.px(fittings.Length)
	p.view("oblique view, the length at half scale")
	back := polar(Point{}, l/2, 45)
	up := func(x, y float64) Point { return Point{x + back.X, y + back.Y} }
	p.box(Outline, 0, 0, w, h)
	p.line(Outline, Point{0, 0}, up(0, 0), up(w, 0), Point{w, 0})
	p.line(Outline, up(w, 0), up(w, h), Point{w, h})
	p.line(Hidden, Point{0, h}, up(0, h), up(0, 0))
	p.line(Hidden, up(0, h), up(w, h))
	p.dim(Point{0, h}, Point{w, h}, -away, p.name(fittings.Width))
	p.dim(Point{0, h}, Point{0, 0}, away, p.name(fittings.Height))
	p.dim(Point{w, h}, up(w, h), -away, p.name(fittings.Length))
}
