// Package measuring measures pieces as a takeoff is set to: exactly and on a
// measuring basis, with the thickness of the sheet, in pieces of a length. It knows
// nothing of rows.
package measuring

import "blankoff/fittings"

// Rule is how pieces are measured.
type Rule struct {
	PieceLength float64          // into which straights are made, m; 0: the usual
	Basis       *fittings.Basis  // nil means exact
	Sheet       float64          // thickness that is added to the sizes, m
	Written     fittings.Written // the units of notes and workings
}

// Areas are the areas of one piece, openings not yet taken off, m2.
type Areas struct {
	Each, Exact           float64 // on the basis, and as it is exactly
	Opening, OpeningExact float64 // what it takes out of the wall that it sits in
	NoSheet               bool    // measured without the thickness of the sheet, with which it can't be
}

// Areas works out the areas of a piece by its outside surface; m is its
// measurement at the sizes that the row gives. The problems are those of the basis.
func (r *Rule) Areas(p *fittings.Piece, m *fittings.Measurement) (a Areas, problems []fittings.Problem) {
	if r.Sheet == 0 && r.Basis == nil { // as a rule
		return Areas{Each: m.Area, Exact: m.Area, Opening: m.Opening, OpeningExact: m.Opening}, nil
	}
	a.Exact, a.OpeningExact = m.Area, m.Opening
	if r.Sheet > 0 {
		out := r.outsidePiece(p)
		if grown, wrong := fittings.Measure(&out); len(wrong) == 0 {
			a.Exact, a.OpeningExact = grown.Area, grown.Opening
		} else {
			a.NoSheet = true
		}
	}
	a.Each, a.Opening = a.Exact, a.OpeningExact
	if !r.Basis.Exact() {
		on := r.Measured(p, a.NoSheet)
		a.Each, a.Opening, problems = fittings.AreaOn(&on, r.Basis)
	}
	return a, problems
}

// JointLength is the length of the installation joints that are charged to so many
// pieces, in m; girth is that of their plant end. Each piece is charged with the joint
// at its plant end, so that the rows of a schedule add up to every joint once. A
// straight made of several pieces has one for each.
func (r *Rule) JointLength(p *fittings.Piece, quantity int, girth float64) float64 {
	if p.Kind == fittings.Straight {
		length, _ := p.Sizes.Get(fittings.Length)
		quantity *= fittings.NumberOfPieces(p.Shape, length, r.Length(p.Shape))
	}
	return float64(quantity) * girth
}

// Length is the length into which straights of shape s are made, m.
func (r *Rule) Length(s fittings.Shape) float64 {
	if r.PieceLength > 0 {
		return r.PieceLength
	}
	return UsualLength(s)
}

// UsualLength is the usual length of a straight piece, m: 1.5 rectangular, 3
// circular and flat-oval. Common practice; makers' lists give 1500 mm for rectangular
// and 3000 mm for spiral-seamed duct.
func UsualLength(s fittings.Shape) float64 {
	if s == fittings.Rectangular {
		return fittings.RectangularPieceLength
	}
	return fittings.RoundPieceLength
}
