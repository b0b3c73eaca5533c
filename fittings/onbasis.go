package fittings

import "math"

// AreaOn gives the area of a piece on a measuring basis, and the opening that a
// spigot takes out of its wall on it (0 where openings are kept), m2. Problems
// are those of Measure, and a bend measured to an intersection that isn't there.
// With no basis, or the exact choice of every switch, the area is Measure's. A
// basis never changes a given area. The area may be 0: of a cap or an in-line
// piece that isn't counted.
func AreaOn(p *Piece, basis *Basis) (area, opening float64, problems []Problem) {
	if basis.Exact() {
		m, problems := Measure(p)
		return m.Area, m.Opening, problems
	}
	b, problems := buildOn(p, basis)
	if len(problems) > 0 {
		return 0, 0, problems
	}
	if given, ok := p.Sizes.Get(GivenArea); ok {
		return given, total(b.opening), nil
	}
	return total(b.parts), total(b.opening), nil
}

// WorkingOn gives the area on a basis in figures that a person can redo, as
// Working does. It's "" for a piece that can't be measured on it.
func WorkingOn(p *Piece, basis *Basis) string { return WorkingIn(p, basis, Written{}) }

// WorkingIn is WorkingOn in other units; with no basis it is Working. The sum is
// that of a piece whose sizes are in those units, so that it can be redone.
func WorkingIn(p *Piece, basis *Basis, in Written) string {
	o := in.scaled(p)
	c := checker{p: &o, per: in.per(), lengths: !basis.Exact()}
	b := c.build()
	problems := c.problems
	if len(problems) == 0 && !basis.Exact() {
		b, problems = b.putOn(&o, basis)
	}
	if len(problems) > 0 {
		return ""
	}
	if given, ok := o.Sizes.Get(GivenArea); ok {
		return in.square("given area = " + sq(given) + " m2")
	}
	if len(b.parts) == 0 {
		return in.square("a " + p.Kind.String() + " isn't counted = 0.000 m2")
	}
	return in.square(workingOf(b.parts))
}

// buildOn reads a piece and puts it on a basis.
func buildOn(p *Piece, basis *Basis) (built, []Problem) {
	c := checker{p: p, lengths: true}
	b := c.build()
	if !c.ok() {
		return built{}, c.problems
	}
	return b.putOn(p, basis)
}

// putOn puts a piece that was read on a basis.
func (b built) putOn(p *Piece, basis *Basis) (built, []Problem) {
	if basis.Openings == Kept {
		b.opening = nil
	}
	if p.Sizes.Has(GivenArea) {
		return b, nil
	}
	switch p.Kind {
	case Cap:
		if basis.Caps == CapsOut {
			b.parts = nil
		}
	case Inline:
		if basis.Inlines == Excluded {
			b.parts = nil
		}
	case Tee, Cross, Spigot:
		b.branchesOn(basis)
	default:
		if problem, ok := b.runsOn(basis, p.Kind); !ok {
			return built{}, []Problem{problem}
		}
	}
	return b, nil
}

// branchesOn puts the branches of a tee, cross or spigot on a basis. The main
// comes first, openings count against the piece, and the rest is branches.
func (b *built) branchesOn(basis *Basis) {
	var parts []part
	times := 1.0
	for i, part := range b.parts {
		main := i == 0 && len(b.runs) > 0
		switch {
		case main, part.times < 0 && basis.Openings == Deducted:
			parts = append(parts, part)
		case part.times > 0 && basis.BranchFrom == FromSaddle:
			parts = append(parts, part)
		case part.times > 0:
			times = part.times
		}
	}
	if basis.BranchFrom != FromSaddle {
		parts = append(parts, part{"branch", times, b.branches[0].on(basis)})
	}
	b.parts = parts
}

// on is a branch from the main's face or axis.
func (s sideStretch) on(basis *Basis) figure {
	along := path(level(s.collar))
	if basis.BranchFrom == FromAxis {
		along = s.fromAxis()
	}
	foot := s.branch
	if s.style == Conical {
		foot = s.foot()
	}
	return around(foot, s.branch, along, basis.TaperGirth)
}

// around is a girth x a length, of the girth that the basis takes.
func around(near, far CrossSection, along path, girth TaperGirth) figure {
	switch {
	case near == far:
		return prism{near, along}
	case girth != LargerGirth:
		return meanPrism{near, far, along}
	case near.Girth() < far.Girth():
		return prism{far, along}
	}
	return prism{near, along}
}

// meanPrism is the mean of two girths x a length.
type meanPrism struct {
	near, far CrossSection
	path      path
}

func (f meanPrism) area() float64 { return (f.near.Girth() + f.far.Girth()) / 2 * f.path.length() }
func (f meanPrism) figures() string {
	return "(" + f.near.girthFigures() + " + " + f.far.girthFigures() + ") / 2 x " + f.path.figures()
}
func (f meanPrism) second() string { return "" }

// runsOn puts the runs of a piece on a basis. All runs of a piece are alike.
func (b *built) runsOn(basis *Basis, kind Kind) (Problem, bool) {
	if len(b.runs) == 0 || b.runs[0].exactOn(basis) {
		return Problem{}, true
	}
	s := b.runs[0]
	along := s.along(basis)
	if along == nil {
		at := Problem{Dim: Angle, Expected: "up to " + deg(steepest) + " degrees"}
		if kind == Offset {
			at = Problem{Dim: OffsetShift, Expected: "a shift and length whose arcs turn up to " + deg(steepest) + " degrees"}
		}
		at.Message = "the centre lines of this piece meet too far off, or not at all: choose a basis other than " + basis.Name + ", or give area_m2"
		return at, false
	}
	name := ""
	if len(b.runs) > 1 {
		name = "legs"
	}
	b.parts = []part{{name, float64(len(b.runs)), around(s.near, s.far, along, basis.TaperGirth)}}
	return Problem{}, true
}

// exactOn reports whether a basis gives the run its exact area.
func (s stretch) exactOn(basis *Basis) bool {
	switch s.by {
	case asBend:
		return basis.BendLength == CentreLine && (s.swept || basis.TaperGirth == Faces)
	case asTaper:
		return basis.TaperGirth == Faces
	}
	return true
}

// along is the length that a basis takes; nil where there is none.
func (s stretch) along(basis *Basis) path {
	switch {
	case s.by == asTaper && basis.TaperLength == Axial, s.by == asBend && basis.BendLength == CentreLine:
		return s.axis
	case s.by == asBend && basis.BendLength == ToIntersection:
		return s.meeting
	}
	return s.edge
}

// FaceWorking is the face area in figures: "0.600 x 0.400 = 0.240 m2".
func (c CrossSection) FaceWorking() string { return c.FaceWorkingIn(Written{}) }

// FaceWorkingIn is FaceWorking in other units.
func (c CrossSection) FaceWorkingIn(in Written) string {
	c = c.scaled(in.per())
	if c.Shape == NoShape || math.IsNaN(c.FaceArea()) {
		return ""
	}
	return in.square(c.faceFigures() + " = " + sq(c.FaceArea()) + " m2")
}
