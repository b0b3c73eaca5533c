package fittings

import (
	"math"

	"blankoff/fittings/surface"
)

// Run is a stretch of duct as the trade's measuring bases count it: a girth times
// a length. The bases differ in which girth and which length they take.
type Run struct {
	Girth    float64 // at the plant end, m
	FarGirth float64 // at the far end, m
	// Axis is the centre line: an arc by its arc, a taper from face to face; m.
	Axis float64
	// Intersection is the length to where the centre lines meet, m. It's 0 where
	// they don't: a bend of more than 170 degrees, where they meet too far off or
	// not at all.
	Intersection float64
	// Outer is the longest edge: the heel of a bend, the largest slant of a
	// taper; m.
	Outer float64
}

// LargerGirth is the greater of both girths, m.
func (r Run) LargerGirth() float64 { return math.Max(r.Girth, r.FarGirth) }

// MeanGirth is the mean of both girths, m.
func (r Run) MeanGirth() float64 { return (r.Girth + r.FarGirth) / 2 }

// BranchRun is a branch as measuring bases count it.
type BranchRun struct {
	Girth float64 // m
	// FromWall is the branch's length from the main's wall, FromAxis from the
	// main's axis, both along the branch's; m. On a rectangular or flat-oval
	// main the branch is taken to stand on the longer side.
	FromWall, FromAxis float64
	Opening            float64 // what it takes out of the wall, m2
}

// Lengths is what measuring bases need to count a piece.
type Lengths struct {
	Runs   []Run       // the piece itself; none of a spigot, cap or plenum
	Branch []BranchRun // of a tee, cross or spigot
	Faces  float64     // area of a cap or of a plenum's faces, m2
	Given  float64     // a given area, m2: no basis changes it
}

// MeasureLengths gives the girths and lengths of a piece, for areas by a
// measuring basis instead of the exact ones that Measure gives. Problems are
// those of Measure.
func MeasureLengths(p *Piece) (Lengths, []Problem) {
	c := checker{p: p, lengths: true}
	b := c.build()
	if !c.ok() {
		return Lengths{}, c.problems
	}
	if area, given := p.Sizes.Get(GivenArea); given {
		return Lengths{Given: area}, nil
	}
	var l Lengths
	for _, s := range b.runs {
		l.Runs = append(l.Runs, s.run())
	}
	for _, s := range b.branches {
		l.Branch = append(l.Branch, s.run())
	}
	for _, part := range b.parts {
		switch f := part.figure.(type) {
		case face, dome, box:
			if p.Kind == Cap || p.Kind == Plenum {
				l.Faces += f.area()
			}
		}
	}
	return l, nil
}

// ruled says which switch of a measuring basis rules a stretch.
type ruled uint8

const (
	byLength ruled = iota // girth x length on every basis
	asBend
	asTaper
)

// stretch is a run with what its figures need.
type stretch struct {
	near, far CrossSection
	axis      path
	meeting   path // nil where the centre lines don't meet
	edge      path
	by        ruled
	swept     bool // girth x axis is the exact area
}

func (s stretch) run() Run {
	r := Run{Girth: s.near.Girth(), FarGirth: s.far.Girth(), Axis: s.axis.length(), Outer: s.edge.length()}
	if s.meeting != nil {
		r.Intersection = s.meeting.length()
	}
	return r
}

// stretch is a constant section along a path.
func (f prism) stretch(plane Plane, by ruled) stretch {
	return stretch{near: f.section, far: f.section, axis: f.path, meeting: f.path.intersection(),
		edge: f.path.outer(inPlane(f.section, plane)), by: by, swept: true}
}

// stretch is a sheet between parallel ends.
func (f loft) stretch(near, far CrossSection) stretch {
	return stretch{near: near, far: far, axis: level(f.L), meeting: level(f.L), edge: slope{f.L, f.Steepest()}, by: asTaper}
}

// heeled is a bend whose heel isn't a plain arc: its centre line has the mean
// radius, its heel the given path.
func heeled(near, far CrossSection, meanRadius, angle, legs float64, heel path) stretch {
	mean := withLegs{arc{meanRadius, angle}, legs}
	return stretch{near: near, far: far, axis: mean, meeting: mean.intersection(), edge: withLegs{heel, legs}, by: asBend}
}

// tangents is the way round a bend by the intersection of two lines at radius R:
// 2 R tan(theta/2).
type tangents struct{ radius, angle float64 }

func (t tangents) length() float64 { return 2 * t.radius * math.Tan(rad(t.angle)/2) }
func (t tangents) figures() string {
	return "2 x " + fig(t.radius) + " x tan(" + deg(t.angle) + " / 2)"
}
func (t tangents) intersection() path      { return t }
func (t tangents) outer(side float64) path { return tangents{t.radius + side/2, t.angle} }

func (l level) intersection() path   { return l }
func (l level) outer(_ float64) path { return l }

func (a arc) intersection() path {
	if a.angle > steepest+slack {
		return nil
	}
	return tangents(a)
}
func (a arc) outer(side float64) path { return arc{a.radius + side/2, a.angle} }

// The heel of a mitred bend is its whole side further out than its throat.
func (m mitre) intersection() path   { return m }
func (m mitre) outer(_ float64) path { return tangents{m.side, m.angle} }

func (g gored) intersection() path      { return arc{g.radius, g.angle}.intersection() }
func (g gored) outer(side float64) path { return gored{g.radius + side/2, g.angle, g.mitres} }

func (s slope) intersection() path   { return s }
func (s slope) outer(_ float64) path { return s }

// doubleTangents is a double arc by the intersections of its centre lines.
type doubleTangents struct{ doubleArc }

func (d doubleTangents) length() float64 {
	return 4*d.radius*math.Tan(rad(d.angle())/2) + d.straight()
}
func (d doubleTangents) figures() string {
	return "(4 x " + fig(d.radius) + " x tan(" + deg(d.angle()) + " / 2) + " + fig(d.straight()) + ")"
}

// The edges of a double arc are as long as its centre line: what the first arc
// adds the second takes off.
func (d doubleArc) outer(_ float64) path { return d }
func (d doubleArc) intersection() path {
	if d.angle() > steepest+slack {
		return nil
	}
	return doubleTangents{d}
}

func (w withLegs) intersection() path {
	if p := w.path.intersection(); p != nil {
		return withLegs{p, w.legs}
	}
	return nil
}
func (w withLegs) outer(side float64) path { return withLegs{w.path.outer(side), w.legs} }

// sideStretch is a branch with what its figures need.
type sideStretch struct {
	junction
	wall CrossSection // no shape: a panel, which has no axis
}

func (s sideStretch) run() BranchRun {
	opening, _ := s.surfaces()
	return BranchRun{Girth: s.branch.Girth(), FromWall: s.collar, FromAxis: s.fromAxis().length(), Opening: total(opening)}
}

// fromAxis is the branch from its main's axis.
func (s sideStretch) fromAxis() path {
	switch {
	case s.roundOf > 0:
		return reach{s.wallAt() + s.collar, saddle{surface.Saddle{R: s.roundOf, Shift: s.shift}, s.angle, s.collar}.freeFigures()}
	case s.wall.Shape == NoShape:
		return level(s.collar)
	}
	depth := math.Min(s.wall.Width, s.wall.Height)
	return reach{depth/2/math.Sin(rad(s.angle)) + s.collar, "(" + fig(depth) + " / 2" + overSin(s.angle) + " + " + fig(s.collar) + ")"}
}

// reach is a straight path whose length is a sum.
type reach struct {
	long float64
	sum  string
}

func (r reach) length() float64      { return r.long }
func (r reach) figures() string      { return r.sum }
func (r reach) intersection() path   { return r }
func (r reach) outer(_ float64) path { return r }
