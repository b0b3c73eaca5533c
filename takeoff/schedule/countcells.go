package schedule

import (
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
)

// numbersByCells takes a column headed units, or No behind the sizes, for how many there
// are, where its figures don't just number the rows, or the tags do.
func (t *table) numbersByCells(b beneath) {
	if t.maps(takeoff.Quantity) {
		return
	}
	found, sizes := -1, false
	for i := range t.specs {
		s := &t.specs[i]
		if s.used && s.Measure == takeoff.Lengths {
			sizes = true
		}
		if s.Verdict != headings.Asks || s.fixed || !s.Ask.Units() && (!sizes && !wording.OfPieces(s.Typed) || !s.Ask.Counts()) {
			continue
		}
		if headings.Squash(s.Typed) == "amount" { // of money
			continue
		}
		if share := b.share(i, celltext.IsCount); share < 0.5 || share < 1 && !s.Ask.Units() && !t.maps(takeoff.Tag) {
			continue
		}
		if found >= 0 {
			return
		}
		found = i
	}
	if found < 0 || !wording.OfPieces(t.specs[found].Typed) && (celltext.NumbersRows(b.columns[found]) && !t.maps(takeoff.Tag) || celltext.NamesPieces(b.columns[found])) {
		return
	}
	t.takeFor(&t.specs[found], takeoff.Quantity)
	t.note("column '%s' is read as quantity, as it holds whole numbers", t.specs[found].Typed)
}

// tagByCells takes the one column of items or references for the tags, where none of its
// cells names a kind and none stands there twice.
func (t *table) tagByCells(b beneath) {
	if t.maps(takeoff.Tag) {
		return
	}
	found := -1
	for i := range t.specs {
		s := &t.specs[i]
		switch {
		case s.Verdict != headings.Asks || s.fixed || !s.Ask.Items() && !s.Ask.Counts():
		case found >= 0 && t.specs[found].Ask.Items() != s.Ask.Items(): // an item before a number
			if s.Ask.Items() {
				found = i
			}
		case found >= 0:
			return
		default:
			found = i
		}
	}
	if found < 0 || b.rows < 2 && !t.specs[found].Ask.Items() || len(b.columns[found]) < b.rows || b.share(found, t.kinds().NamesKind) > 0 {
		return
	}
	if s := &t.specs[found]; s.Ask.Counts() && (!celltext.NumbersRows(b.columns[found]) || wording.OfPieces(s.Typed) || slices.ContainsFunc(t.specs[:found], func(x spec) bool { return x.used && x.Measure == takeoff.Lengths })) {
		return // it may be how many there are
	}
	cells := slices.Sorted(slices.Values(b.columns[found]))
	if len(slices.Compact(cells)) < b.rows {
		return
	}
	t.takeFor(&t.specs[found], takeoff.Tag)
	t.note("column '%s' is read as tag, as each of its cells is another", t.specs[found].Typed)
}

// unitsByCells takes a column as the Spanish ud for that of units, where its cells are units
// and no numbers.
func (t *table) unitsByCells(b beneath) {
	for i := range t.specs {
		s := &t.specs[i]
		if !s.used || s.fixed || s.Verdict != headings.Known || s.to() != takeoff.Quantity || len(b.columns[i]) == 0 {
			continue
		}
		unit := func(cell string) bool { _, ok := quantity.UnitOf(cell); return ok }
		if b.share(i, celltext.IsCount) == 0 && b.share(i, unit) == 1 {
			h := t.lex.Read("unit")
			h.Typed = s.Typed
			s.set(t, h)
			s.settled = true
		}
	}
}

// emptyCounts reports a column of quantities in which nothing stands.
func (t *table) emptyCounts() bool {
	at := slices.IndexFunc(t.specs, func(s spec) bool { return s.used && s.Verdict == headings.Known && s.to() == takeoff.Quantity })
	b := t.peek()
	return b.rows > 1 && len(b.columns[at]) == 0
}
