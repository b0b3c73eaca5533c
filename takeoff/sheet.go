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
func (t *Takeoff) outsidePiece(p *fittings.Piece) fittings.Piece {
	o := *p
	widen(&o, 2*t.options.Sheet)
	if v, ok := o.Sizes.Get(fittings.Throat); ok {
		o.Sizes.Set(fittings.Throat, math.Max(0, v-t.options.Sheet))
	}
	o.Wall = t.outside(o.Wall)
	return o
}

// outside is a cross-section by the sizes of its outside.
func (t *Takeoff) outside(c fittings.CrossSection) fittings.CrossSection {
	for _, side := range []*float64{&c.Width, &c.Height, &c.Diameter} {
		if *side > 0 && t.options.Sheet > 0 {
			*side += 2 * t.options.Sheet
		}
	}
	return c
}

// measuredPiece is the item's piece by the sizes that were measured.
func (t *Takeoff) measuredPiece(it *Item) fittings.Piece {
	if t.options.Sheet > 0 && !it.noSheet {
		return t.outsidePiece(&it.Piece)
	}
	return it.Piece
}

// Measured is the item's piece by the sizes that were measured, those of the
// outside where the thickness of the sheet is added.
func (t *Takeoff) Measured(it *Item) fittings.Piece { return t.measuredPiece(it) }

// noteSeries notes ends that aren't of the standard sizes. Sizes grown by a
// lining aren't those that anybody ordered.
func (t *Takeoff) noteSeries(it *Item) {
	if v, _ := it.Piece.Sizes.Get(fittings.Lining); v > 0 {
		return
	}
	before := len(it.Notes)
ends:
	for _, e := range it.Ends {
		note, known := t.series[e.CrossSection]
		if !known {
			note = fittings.SeriesNoteIn(e.CrossSection, t.options.Written)
			t.series[e.CrossSection] = note
		}
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
