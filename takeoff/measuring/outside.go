package measuring

import (
	"math"

	"blankoff/fittings"
)

// Sizes that grow by twice the lining when they are given clear of it, and by
// twice the sheet.
var acrossDuct = []fittings.Dim{
	fittings.Width, fittings.Height, fittings.Diameter,
	fittings.Width2, fittings.Height2, fittings.Diameter2,
	fittings.BranchWidth, fittings.BranchHeight, fittings.BranchDiameter,
}

// Widen adds a width, m, to every size of a cross-section. The entry of a cone is
// such a size, that of a shoe isn't.
func Widen(p *fittings.Piece, by float64) {
	for _, d := range acrossDuct {
		if v, ok := p.Sizes.Get(d); ok {
			p.Sizes.Set(d, v+by)
		}
	}
	if v, ok := p.Sizes.Get(fittings.Entry); ok && p.Style == fittings.Conical {
		p.Sizes.Set(fittings.Entry, v+by)
	}
}

// outsidePiece is a piece by the sizes of its outside: twice the sheet wider. A
// throat's radius is a sheet smaller, as long as there is one; the centre line
// stays.
func (r *Rule) outsidePiece(p *fittings.Piece) fittings.Piece {
	out := *p
	Widen(&out, 2*r.Sheet)
	if v, ok := out.Sizes.Get(fittings.Throat); ok {
		out.Sizes.Set(fittings.Throat, math.Max(0, v-r.Sheet))
	}
	out.Wall = r.Outside(out.Wall)
	return out
}

// Outside is a cross-section by the sizes of its outside.
func (r *Rule) Outside(c fittings.CrossSection) fittings.CrossSection {
	for _, side := range []*float64{&c.Width, &c.Height, &c.Diameter} {
		if *side > 0 && r.Sheet > 0 {
			*side += 2 * r.Sheet
		}
	}
	return c
}

// Measured is a piece by the sizes that are measured: those of the outside, unless
// it can be measured without the thickness of the sheet only.
func (r *Rule) Measured(p *fittings.Piece, noSheet bool) fittings.Piece {
	if r.Sheet > 0 && !noSheet {
		return r.outsidePiece(p)
	}
	return *p
}
