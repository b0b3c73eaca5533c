package settled

import (
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// outletByCells takes columns as Outlet (mm) or Ø sortie for the size of the other end, where
// only pieces of two ends have one, or it is the size of the piece over again: a plenum's
// outlet is a spigot.
func (t *Reading) outletByCells() {
	if t.OfRefused() {
		return
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Fixed || s.Verdict != headings.Unknown && s.Verdict != headings.Near || s.Typed == "" {
			continue
		}
		h, ok := t.Lex.OfEnd(s.Typed)
		if !ok || !t.Sized() {
			continue
		}
		b := t.Peek()
		if h.Verdict == headings.Sizes && b.Share(i, celltext.IsSize) < 1 {
			if b.Share(i, celltext.IsFigure) < 1 || t.Maps(columns.Own[0]) || !t.Maps(columns.Own[2]) { // figures beside diameters
				continue
			}
			h.Verdict, h.Size, h.Column = headings.Known, headings.NoSize, columns.Second[2]
			if !h.Said {
				h.Unit = quantity.Default(takeoff.Lengths)
			}
		}
		if t.taken(h) || !t.ofTwoEnds(b, i) {
			continue
		}
		s.Set(&t.Reading, h)
		s.Settled = true
		t.Note("column '%s' is read as the size of the other end, as only pieces of two ends have one", s.Typed)
	}
}

// taken reports that another column is read so.
func (t *Reading) taken(h headings.Heading) bool {
	return slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return s.Used && (s.Verdict == headings.Sizes && s.Size == headings.SecondSize || s.Verdict == headings.Known && h.Verdict == headings.Known && s.To() == h.Column || h.Verdict == headings.Sizes && s.Sized == columns.Second)
	})
}

// ofTwoEnds reports a column that is filled for reducers and transitions, one at least; for
// other pieces it says the same as another column.
func (t *Reading) ofTwoEnds(b columns.Beneath, at int) bool {
	kind, some := t.kindAsked(), false
	if kind < 0 {
		return false
	}
	for _, cells := range b.Cells {
		cell := celltext.At(cells, at)
		if cell == "" || quantity.Nothing(cell, takeoff.Lengths) {
			continue
		}
		switch t.Kinds().KindIn(celltext.At(cells, kind)) {
		case fittings.Reducer, fittings.Transition:
			some = true
		default:
			if !slices.ContainsFunc(cells[:at], func(c string) bool { return celltext.Trim(c) == cell }) {
				return false
			}
		}
	}
	return some
}

// ductByCells takes a column headed by a word for ducts or their measures, which is no heading
// of ours, for the size where each of its cells holds a whole one and no other column does: Duct
// over 600x400.
func (t *Reading) ductByCells() {
	if t.OfRefused() {
		return
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Fixed || s.Typed == "" || s.Verdict != headings.Unknown && s.Verdict != headings.Near || !t.Lex.OfDucts(s.Typed) || t.Sized() {
			continue
		}
		b := t.Peek()
		if len(b.Columns[i]) == 0 || 10*len(b.Columns[i]) < 9*b.Rows || b.Share(i, celltext.IsSize) < 1 {
			continue
		}
		h := headings.Heading{Typed: s.Typed, Verdict: headings.Sizes, Size: headings.OwnSize}
		h.Unit, h.Said = unitBehind(s.Typed)
		s.Set(&t.Reading, h)
		s.Settled = true
		t.Note("column '%s' is read as size, as its cells hold sizes", s.Typed)
		return
	}
}
