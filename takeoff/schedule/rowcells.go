package schedule

import (
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
)

// fit gives a cell without signs around it: "" where it says nothing, or has a fault.
func (t *table) fit(r *takeoff.Row, i int, s *columns.Spec, cell string) string {
	cell = celltext.Unwrap(cell)
	if cell == "" || celltext.MeansNothing(cell) && s.To() != takeoff.Sign && s.To() != takeoff.Quantity { // where - may be negative, or none
		return ""
	}
	if trouble := t.unfit(i, cell, s); trouble != "" {
		t.fault(r, s, cell, trouble)
		return ""
	}
	return cell
}

// mergedDown deals with a cell that is the lower part of one that is merged down.
// counts reports that it counts for the row; filled, that it makes the row one.
func (t *table) mergedDown(r *takeoff.Row, s *columns.Spec, cell string) (counts, filled bool) {
	switch {
	case !s.Used:
		return false, false
	case s.Doubtful():
		return false, !t.doubtMerged(r, s, cell)
	case s.Verdict != headings.Sizes && !columns.Spreads(s.To()):
		t.told.Add("cells of column '%s' that are merged down, counted for their first row only", s.Typed, t.Place.Row)
		return false, false
	case s.Measure != takeoff.Text:
		t.told.Add("cells of column '%s' that are merged down, taken for all their rows", s.Typed, t.Place.Row)
	}
	return true, false
}

// behind looks at a row as a whole, and at its cells behind the n that have headings.
// It reports whether one of these is filled.
func (t *table) behind(r *takeoff.Row, cells []string, n int, empty bool) bool {
	if t.commas && !empty {
		t.besideMetres(r, cells)
		switch {
		case len(cells) > len(t.Specs):
			t.shifted(r, cells)
		case len(cells) == len(t.Specs) && !t.uneven:
			t.evened()
		}
	}
	for i, cell := range cells[n:] {
		if cell = celltext.Trim(cell); cell != "" {
			if t.beyond(r, n+i, cell); i == 0 && n == len(t.Specs) && !t.ragged {
				t.secondFigure(n, &t.extra, cell)
			}
			t.anotherTable(cells[n+i:])
			return true
		}
	}
	if len(t.strays) > 0 {
		t.anotherTable(nil)
	}
	return false
}
