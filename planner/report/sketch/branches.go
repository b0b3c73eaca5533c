package sketch

import (
	"math"

	"blankoff/fittings"
)

func drawBranched(p *pen) {
	j := p.junction()
	p.branchNotes(j)
	p.view("from the side")
	p.elevation(j)
	p.view("along the main")
	if j.main.panel {
		p.fig.Caption = "from its end"
	}
	p.alongMain(j)
	shapes := every
	switch j.style {
	case fittings.Conical:
		shapes = every[1:2]
	case fittings.Shoe:
		shapes = every[:1]
	}
	if !j.main.other {
		p.sections("main", near, every...)
	}
	p.sections("branch (width along the main)", branch, shapes...)
}

func (p *pen) branchNotes(j junction) {
	p.notes[fittings.Length] = "of the main"
	p.notes[fittings.Entry] = "extra entry on one side, at 45 degrees"
	if j.style == fittings.Conical {
		p.notes[fittings.Entry] = "diameter at the wall; at the crown of a round main"
	}
	p.also[fittings.BranchAngle] = []fittings.Dim{fittings.Angle}
	if j.main.other {
		p.also[fittings.BranchWidth] = []fittings.Dim{fittings.Width}
		p.also[fittings.BranchHeight] = []fittings.Dim{fittings.Height}
		p.also[fittings.BranchDiameter] = []fittings.Dim{fittings.Diameter}
		p.also[fittings.BranchLength] = []fittings.Dim{fittings.Length}
	}
}

// elevation is the view square to both axes.
func (p *pen) elevation(j junction) {
	m := &j.main
	foot := j.saddle()
	left, right := foot[0], foot[len(foot)-1]
	start := len(p.fig.Lines)
	p.branchSides(j, foot)
	branchLines := p.fig.Lines[start:len(p.fig.Lines):len(p.fig.Lines)]
	crown := [2]float64{j.crown(left, 1), j.crown(right, -1)}
	p.mainSides(j, crown)
	from := 0.0
	if m.panel || j.style == fittings.Conical {
		from = j.foot() - 12
	}
	p.line(Axis, j.at(from, 0), j.at(j.foot()+j.collar+12, 0))
	p.branchSizes(j)
	depth := m.half + away
	if p.drawing.Kind == fittings.Cross {
		for _, l := range branchLines {
			p.line(l.Weight, mirrored(l.Points)...)
		}
		end := j.at(j.foot()+j.collar+12, 0)
		p.line(Axis, Point{}, Point{end.X, -end.Y})
		depth += j.collar + 12
	}
	if !m.other {
		p.dim(Point{-m.long / 2, m.half}, Point{m.long / 2, m.half}, m.half-depth, p.name(fittings.Length))
		p.dim(Point{-m.long / 2, m.half}, Point{-m.long / 2, -m.half}, away, p.name(fittings.Height, fittings.Diameter))
	}
}

func mirrored(points []Point) []Point {
	out := make([]Point, len(points))
	for i, q := range points {
		out[i] = Point{q.X, -q.Y}
	}
	return out
}

// mainSides draws the main, its walls parted between the sides of the branch.
func (p *pen) mainSides(j junction, parted [2]float64) {
	m := &j.main
	weight := Outline
	if m.other {
		weight = Hidden
	}
	walls := []float64{-1, 1}
	if m.panel {
		walls = walls[:1]
	}
	for _, side := range walls {
		if side > 0 && p.drawing.Kind != fittings.Cross {
			p.line(weight, Point{-m.long / 2, m.half}, Point{m.long / 2, m.half})
			continue
		}
		p.line(weight, Point{-m.long / 2, side * m.half}, Point{parted[0], side * m.half})
		p.line(weight, Point{parted[1], side * m.half}, Point{m.long / 2, side * m.half})
	}
	if m.panel {
		p.word(Point{m.long/2 - 24, -m.half + 14}, "wall")
		return
	}
	if !m.other {
		p.line(weight, Point{-m.long / 2, -m.half}, Point{-m.long / 2, m.half})
		p.line(weight, Point{m.long / 2, -m.half}, Point{m.long / 2, m.half})
	} else {
		p.word(Point{-m.long/2 + 44, m.half - 14}, "main's wall")
	}
	p.line(Axis, Point{-m.long/2 - 12, 0}, Point{m.long/2 + 12, 0})
}

// branchSides draws the branch from its foot to its free end.
func (p *pen) branchSides(j junction, foot []Point) {
	end := j.foot() + j.collar
	a, b := j.at(end, j.along/2), j.at(end, -j.along/2)
	if j.style == fittings.Shoe {
		level := -j.main.half
		p.line(Outline, Point{a.X - j.entry, level}, Point{a.X, level - j.entry}, a, b, Point{b.X, level})
		p.line(Outline, Point{a.X - j.entry, level}, Point{b.X, level})
		return
	}
	p.line(Outline, foot[0], a, b, foot[len(foot)-1])
	p.line(Outline, foot...)
}

// branchSizes draws the letters of the branch in the elevation.
func (p *pen) branchSizes(j junction) {
	end := j.foot() + j.collar
	a, b := j.at(end, j.along/2), j.at(end, -j.along/2)
	across := []fittings.Dim{fittings.BranchWidth, fittings.BranchDiameter}
	reach := j.along/2 + away
	switch j.style {
	case fittings.Conical:
		across, reach = across[1:], j.entry/2+away
		crown := -j.main.half
		p.dim(Point{-j.entry / 2, crown}, Point{j.entry / 2, crown}, -away-10, p.name(fittings.Entry))
	case fittings.Shoe:
		across = across[:1]
		crown := -j.main.half
		p.dim(Point{a.X - j.entry, crown}, Point{a.X, crown}, -away, p.name(fittings.Entry))
	case fittings.StraightSided:
		const near = 44.0
		if !j.main.panel {
			p.angle(Point{}, near, 0, j.angle, p.name(fittings.BranchAngle))
		}
	}
	p.dim(a, b, away, p.name(across...))
	if j.angle < 90 {
		p.dim(j.at(j.foot(), 0), j.at(end, 0), reach, p.name(fittings.BranchLength))
		return
	}
	p.dim(Point{b.X, -j.foot()}, b, -reach+j.along/2, p.name(fittings.BranchLength))
}

// alongMain is the view along the main's axis.
func (p *pen) alongMain(j junction) {
	m := &j.main
	weight := Outline
	if m.other {
		weight = Hidden
	}
	switch {
	case m.panel:
		p.line(weight, Point{-m.wide / 2, -m.half}, Point{m.wide / 2, -m.half})
	case m.round:
		p.arc(weight, Point{}, m.half, 0, 360)
	default:
		p.box(weight, -m.wide/2, -m.half, m.wide, 2*m.half)
	}
	if !m.panel {
		p.line(Axis, Point{-m.wide/2 - 12, 0}, Point{m.wide/2 + 12, 0})
	}
	start := len(p.fig.Lines)
	top := p.endOn(j)
	lines := p.fig.Lines[start:len(p.fig.Lines):len(p.fig.Lines)]
	depth := m.half + away
	if p.drawing.Kind == fittings.Cross {
		for _, l := range lines {
			if l.Weight != Axis {
				p.fig.Lines = append(p.fig.Lines, Line{l.Weight, mirrored(l.Points), l.Closed})
			}
		}
		p.line(Axis, Point{j.shift, 0}, Point{j.shift, 10 - top})
		depth += j.collar + 12
	}
	if p.sizes.Has(fittings.BranchShift) {
		p.line(Axis, Point{0, 0}, Point{0, top - away - 10})
		p.span(Point{0, top - away}, Point{j.shift, top - away}, 1, p.name(fittings.BranchShift))
	}
	across := []fittings.Dim{fittings.BranchHeight, fittings.BranchDiameter}
	switch j.style {
	case fittings.Conical:
		across = across[1:]
	case fittings.Shoe:
		across = across[:1]
	}
	p.dim(Point{j.shift - j.across/2, top}, Point{j.shift + j.across/2, top}, p.heightOff(), p.name(across...))
	if !m.other {
		p.dim(Point{-m.wide / 2, m.half}, Point{m.wide / 2, m.half}, m.half-depth, p.name(fittings.Width, fittings.Diameter))
	}
}

// heightOff keeps the branch's height clear of its shift.
func (p *pen) heightOff() float64 {
	if p.sizes.Has(fittings.BranchShift) {
		return further + 8
	}
	return away
}

// endOn draws the branch as seen along the main, and gives the height of its
// highest edge.
func (p *pen) endOn(j junction) (top float64) {
	sin, cos := math.Sincos(j.angle * math.Pi / 180)
	end, lean := (j.foot()+j.collar)*sin, j.along/2*cos
	top = -end - lean
	wide := j.across / 2
	footWide := wide
	if j.style == fittings.Conical {
		last := j.coneFoot(1, 0)
		footWide = math.Sqrt(math.Max(0, j.main.half*j.main.half-last.Y*last.Y))
	}
	for _, side := range [...]float64{-1, 1} {
		y := j.shift + side*footWide
		p.line(Outline, Point{y, -j.wall(y)}, Point{j.shift + side*wide, -end})
	}
	switch {
	case lean < 1e-9:
		p.line(Outline, Point{j.shift - wide, top}, Point{j.shift + wide, top})
	case j.round:
		var face []Point
		for f := 0.0; f < 360; f += 6 {
			s, c := math.Sincos(f * math.Pi / 180)
			face = append(face, Point{j.shift + wide*c, -end + lean*s})
		}
		p.closed(Outline, face...)
	default:
		p.box(Outline, j.shift-wide, top, 2*wide, 2*lean)
	}
	from := 0.0
	if j.main.panel {
		from = -j.main.half + 12
	}
	reach := 10.0
	if j.shift != 0 {
		reach += away
	}
	p.line(Axis, Point{j.shift, from}, Point{j.shift, top - reach})
	return top
}
