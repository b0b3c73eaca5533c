package sketch

import (
	"math"

	"blankoff/fittings"
)

// junction is a branch on its main, px: the main's axis level through the
// origin, the branch above it, leaning to the right at an angle under 90.
type junction struct {
	style fittings.Style
	main  struct {
		long, wide, half float64 // half: from the axis to the wall's crown
		round            bool
		other            bool // the main is another piece (a spigot's)
		panel            bool // a plenum's wall, without an axis
	}
	along, across float64 // sides of the branch along and across the main
	round         bool    // the branch
	collar, angle float64
	shift, entry  float64
}

func (p *pen) junction() junction {
	j := junction{style: p.drawing.Style, collar: p.px(fittings.BranchLength), shift: p.px(fittings.BranchShift), entry: p.px(fittings.Entry), angle: 90}
	if p.sizes.Has(fittings.BranchAngle) {
		j.angle = p.number(fittings.BranchAngle)
	}
	j.along, j.across = p.px(fittings.BranchWidth), p.px(fittings.BranchHeight)
	if j.round = p.sizes.Has(fittings.BranchDiameter); j.round {
		j.along = p.px(fittings.BranchDiameter)
		j.across = j.along
	}
	m := &j.main
	m.long, m.wide, m.half = p.px(fittings.Length), p.px(fittings.Width), p.px(fittings.Height)/2
	if m.round = p.sizes.Has(fittings.Diameter); m.round {
		m.wide = p.px(fittings.Diameter)
		m.half = m.wide / 2
	}
	if p.drawing.Kind == fittings.Spigot {
		piece, _ := ParseRow(p.drawing.Row)
		m.other, m.panel, m.round = true, piece.WallFlat, !piece.WallFlat
		m.long, m.wide = j.along*2.4+j.entry, piece.Wall.Diameter*p.scale
		m.half = m.wide / 2
		if m.panel {
			m.half, m.wide = 40, m.long
		}
	}
	return j
}

// wall is the height of the main's wall above its axis, y across.
func (j junction) wall(y float64) float64 {
	if !j.main.round {
		return j.main.half
	}
	return math.Sqrt(math.Max(0, j.main.half*j.main.half-y*y))
}

// foot is how far along the branch's axis the wall lies from the main's axis.
func (j junction) foot() float64 { return j.wall(j.shift) / math.Sin(j.angle*math.Pi/180) }

// at is a point in the elevation: so far along the branch's axis and beside it,
// to the left.
func (j junction) at(along, beside float64) Point {
	return polar(polar(Point{}, along, j.angle), beside, j.angle+90)
}

// saddle is the side of the curve in which a branch meets its wall that the
// elevation shows, from its left to its right end.
func (j junction) saddle() []Point {
	const steps = 36
	points := make([]Point, 0, steps+1)
	for i := range steps + 1 {
		sin, cos := math.Sincos(math.Pi * float64(i) / steps)
		if j.style == fittings.Conical {
			points = append(points, j.coneFoot(sin, cos))
			continue
		}
		r := j.along / 2
		z := j.wall(j.shift + j.across/2*sin)
		tilt := j.angle * math.Pi / 180
		points = append(points, j.at((z-r*cos*math.Cos(tilt))/math.Sin(tilt), r*cos))
	}
	return points
}

// coneFoot is where one line of a cone meets the wall. The cone has the diameter
// of its entry at the crown and goes on widening below it.
func (j junction) coneFoot(sin, cos float64) Point {
	slope := (j.entry - j.along) / 2 / j.collar
	r := j.entry / 2
	for range 60 {
		r = j.entry/2 + slope*(j.main.half-j.wall(r*sin))
	}
	return Point{-r * cos, -j.wall(r * sin)}
}

// crown is where the branch's left (1) or right (-1) side is at the height of
// the main's crown, which is hidden behind the branch from there.
func (j junction) crown(foot Point, side float64) float64 {
	if j.style != fittings.StraightSided {
		return foot.X
	}
	tilt := j.angle * math.Pi / 180
	return j.at((j.main.half-side*j.along/2*math.Cos(tilt))/math.Sin(tilt), side*j.along/2).X
}
