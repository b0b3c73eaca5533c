package takeoff

import (
	"blankoff/fittings"
	"blankoff/takeoff/terms"
)

// Sizes that grow by twice the lining when they are given clear of it, and by
// twice the sheet.
var acrossDuct = []fittings.Dim{
	fittings.Width, fittings.Height, fittings.Diameter,
	fittings.Width2, fittings.Height2, fittings.Diameter2,
	fittings.BranchWidth, fittings.BranchHeight, fittings.BranchDiameter,
}

// readLining turns sizes that are given clear of an inside lining into the
// sizes of the metal, because the area is that of the outside: a clear width w
// with lining t is w + 2t of metal.
func (b *Batch) readLining(it *Item, r *Row) {
	s := &it.Piece.Sizes
	lining, given := s.Get(fittings.Lining)
	word := terms.Fold(r.Text[SizeIs])
	switch word {
	case "", "clear", "metal":
	default:
		b.fault(it, it.At.Fault("size_is", r.Text[SizeIs], "clear or metal", "say whether the sizes are clear of the lining or of the metal"))
		return
	}
	if !given || lining == 0 {
		return
	}
	if word == "" {
		b.fault(it, it.At.Fault("size_is", "", "clear or metal",
			"there is a lining, so size_is has to say whether the sizes are clear of it or of the metal"))
		return
	}
	if word == "metal" {
		it.Notes = append(it.Notes, "lined; sizes are of the metal, so the lining changes no area")
		return
	}
	it.Clear = true
	widen(&it.Piece, 2*lining)
	if v, ok := s.Get(fittings.Throat); ok {
		s.Set(fittings.Throat, v-lining)
	}
	it.Notes = append(it.Notes, "sizes are clear of the lining; the area is that of the metal outside it")
}
