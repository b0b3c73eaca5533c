package live

import (
	"blankoff/fittings"
	"blankoff/takeoff"
)

// AreaOn is Area on a measuring basis. Only pieces that every basis measures by
// their exact area, and runs of constant section along their centre line, have a
// formula; of others the word says that the value doesn't follow.
func AreaOn(it, host *takeoff.Item, sheet float64, b *fittings.Basis) (*Expr, string) {
	e, why := Area(it, host, sheet)
	if b.Exact() || it.Piece.Sizes.Has(fittings.GivenArea) {
		return e, why
	}
	switch p := &it.Piece; p.Kind {
	case fittings.Straight, fittings.Flexible, fittings.Plenum:
		return e, why
	case fittings.Inline:
		if b.Inlines == fittings.Excluded {
			return nil, "isn't counted on the basis"
		}
		return e, why
	case fittings.Cap:
		if b.Caps == fittings.CapsOut {
			return nil, "isn't counted on the basis"
		}
		return e, why
	case fittings.Bend, fittings.Breeches:
		swept := p.Style != fittings.SquareHeel && !(p.Kind == fittings.Bend && rowOf(it).reducing()) && p.Shape != fittings.Circular || p.Kind == fittings.Bend && p.Shape == fittings.Circular
		if swept && b.BendLength == fittings.CentreLine {
			return checked(e, it, host, sheet, it.Each), ByBasis
		}
	case fittings.Offset:
		if p.Style != fittings.StraightSided && b.BendLength == fittings.CentreLine {
			return checked(e, it, host, sheet, it.Each), ByBasis
		}
	case fittings.Reducer:
		if b.TaperGirth == fittings.Faces {
			return checked(e, it, host, sheet, it.Each), ByBasis
		}
	}
	return nil, ByBasis
}
