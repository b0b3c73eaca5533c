package fittings

import "math"

// Run is a stretch of duct as the trade's measuring bases count it: a girth times
// a length. The bases differ in which girth and which length they take.
type Run struct {
	Girth    float64 // at the plant end, m
	FarGirth float64 // at the far end, m
	// Axis is the centre line: an arc by its arc, a taper from face to face; m.
	Axis float64
	// Intersection is the length to where the centre lines meet, m. It's 0 where
	// they don't (a bend of 180 degrees).
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
	l := Lengths{Runs: b.runs, Branch: b.branches}
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

// run is a constant section along a path.
func (f prism) run(plane Plane) Run {
	g := f.section.Girth()
	return Run{Girth: g, FarGirth: g, Axis: f.path.length(), Intersection: f.path.intersection(), Outer: f.path.outer(inPlane(f.section, plane))}
}

// run is a sheet between parallel ends.
func (f loft) run(near, far CrossSection) Run {
	return Run{Girth: near.Girth(), FarGirth: far.Girth(), Axis: f.L, Intersection: f.L, Outer: math.Hypot(f.L, f.Steepest())}
}

// bendRun is a bend whose heel isn't a plain arc: its centre line has the mean
// radius, its heel the given length.
func bendRun(near, far CrossSection, meanRadius, angle, legs, heel float64) Run {
	mean := arc{meanRadius, angle}
	return Run{Girth: near.Girth(), FarGirth: far.Girth(), Axis: mean.length() + 2*legs,
		Intersection: withLegs{mean, legs}.intersection(), Outer: heel + 2*legs}
}

func (l level) intersection() float64   { return float64(l) }
func (l level) outer(_ float64) float64 { return float64(l) }

func (a arc) intersection() float64 {
	if a.angle >= 180 {
		return 0
	}
	return 2 * a.radius * math.Tan(rad(a.angle)/2)
}
func (a arc) outer(side float64) float64 { return (a.radius + side/2) * rad(a.angle) }

func (m mitre) intersection() float64   { return m.length() }
func (m mitre) outer(_ float64) float64 { return 2 * m.length() }

func (g gored) intersection() float64 { return arc{g.radius, g.angle}.intersection() }
func (g gored) outer(side float64) float64 {
	return gored{g.radius + side/2, g.angle, g.mitres}.length()
}

func (s slope) intersection() float64   { return s.length() }
func (s slope) outer(_ float64) float64 { return s.length() }

// The edges of a double arc are as long as its centre line: what the first arc
// adds the second takes off.
func (d doubleArc) outer(_ float64) float64 { return d.length() }
func (d doubleArc) intersection() float64 {
	return 4*d.radius*math.Tan(rad(d.angle())/2) + d.straight()
}

func (w withLegs) intersection() float64 {
	if l := w.path.intersection(); l > 0 {
		return l + 2*w.legs
	}
	return 0
}
func (w withLegs) outer(side float64) float64 { return w.path.outer(side) + 2*w.legs }

// branchRun is a branch on a wall of the given section.
func (j junction) branchRun(wall CrossSection) BranchRun {
	opening, _ := j.surfaces()
	depth := j.wallAt()
	if j.roundOf == 0 {
		depth = math.Min(wall.Width, wall.Height) / 2 / math.Sin(rad(j.angle))
	}
	return BranchRun{Girth: j.branch.Girth(), FromWall: j.collar, FromAxis: depth + j.collar, Opening: total(opening)}
}
