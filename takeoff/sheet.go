package takeoff

import (
	"math"

	"blankoff/fittings"
)

// widen adds a width to every size of a cross-section. The entry of a cone is
// such a size, that of a shoe isn't.
func widen(p *fittings.Piece, by float64) {
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
func (o *Options) outsidePiece(p *fittings.Piece) fittings.Piece {
	out := *p
	widen(&out, 2*o.Sheet)
	if v, ok := out.Sizes.Get(fittings.Throat); ok {
		out.Sizes.Set(fittings.Throat, math.Max(0, v-o.Sheet))
	}
	out.Wall = o.outside(out.Wall)
	return out
}

// outside is a cross-section by the sizes of its outside.
func (o *Options) outside(c fittings.CrossSection) fittings.CrossSection {
	for _, side := range []*float64{&c.Width, &c.Height, &c.Diameter} {
		if *side > 0 && o.Sheet > 0 {
			*side += 2 * o.Sheet
		}
	}
	return c
}

// measuredPiece is the item's piece by the sizes that were measured.
func (o *Options) measuredPiece(it *Item) fittings.Piece {
	if o.Sheet > 0 && !it.noSheet {
		return o.outsidePiece(&it.Piece)
	}
	return it.Piece
}

// Measured is the item's piece by the sizes that were measured, those of the
// outside where the thickness of the sheet is added.
func (t *Takeoff) Measured(it *Item) fittings.Piece { return t.options.measuredPiece(it) }

// noteSeries notes ends that aren't of the standard sizes. Sizes grown by a
// lining aren't those that anybody ordered.
func (b *Batch) noteSeries(it *Item) {
	if v, _ := it.Piece.Sizes.Get(fittings.Lining); v > 0 || b.totals {
		return
	}
	before := len(it.Notes)
ends:
	for _, e := range it.Ends {
		note := b.book.Faces[b.book.Face(e.CrossSection, b.seriesNote)].Note
		if note == "" {
			continue
		}
		for _, said := range it.Notes[before:] {
			if said == note {
				continue ends
			}
		}
		it.Notes = append(it.Notes, note)
	}
}
