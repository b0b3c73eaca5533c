package schedule

import (
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
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
		if s.Verdict != headings.Asks || s.fixed || !s.Ask.Units() && (!sizes && !ofPieces(s.Typed) || !s.Ask.Counts()) {
			continue
		}
		if headings.Squash(s.Typed) == "amount" { // of money
			continue
		}
		if share := b.share(i, isCount); share < 0.5 || share < 1 && !s.Ask.Units() && !t.maps(takeoff.Tag) {
			continue
		}
		if found >= 0 {
			return
		}
		found = i
	}
	if found < 0 || !ofPieces(t.specs[found].Typed) && (numbersRows(b.columns[found]) && !t.maps(takeoff.Tag) || namesPieces(b.columns[found])) {
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
	if found < 0 || b.rows < 2 && !t.specs[found].Ask.Items() || len(b.columns[found]) < b.rows || b.share(found, t.namesKind) > 0 {
		return
	}
	if s := &t.specs[found]; s.Ask.Counts() && (!numbersRows(b.columns[found]) || ofPieces(s.Typed) || slices.ContainsFunc(t.specs[:found], func(x spec) bool { return x.used && x.Measure == takeoff.Lengths })) {
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
		if b.share(i, isCount) == 0 && b.share(i, unit) == 1 {
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

// isFigure reports a number.
func isFigure(cell string) bool { return strings.Trim(cell, "0123456789., ") == "" }

// ofPieces reports a heading of pieces, which are counted.
func ofPieces(typed string) bool {
	return slices.ContainsFunc(headings.Tokens(typed), func(w string) bool {
		return slices.Contains([]string{"pieces", "pcs", "pieza", "piezas", "pezzi", "stuck", "stuks"}, w)
	})
}

// namesPieces reports figures of three digits and more that are all different, as numbers
// of pieces are.
func namesPieces(cells []string) bool {
	seen := map[string]bool{}
	for _, c := range cells {
		if n, _ := countIn(c); n < 100 || seen[c] {
			return false
		}
		seen[c] = true
	}
	return true
}

// isCount reports a small whole number.
func isCount(cell string) bool { n, ok := countIn(cell); return ok && n > 0 && n < 500 }

// numbersRows reports figures that may number rows or drawings: none stands there twice,
// and each is larger than the one before.
func numbersRows(cells []string) bool {
	if len(cells) < 2 {
		return true
	}
	last := -1
	for _, c := range cells {
		n, _ := countIn(c)
		if n <= last {
			return false
		}
		last = n
	}
	return true
}
