package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// byRow is what a unit is from that a row of units gives.
const byRow = "a row below the headings"

// unitRow takes the units from a row of units right below the headings, or below
// where they stand again. A unit that isn't understood, or is another than its
// heading says, leaves the column unusable.
func (t *table) unitRow(number int, cells []string) bool {
	if !t.fresh && !t.repeated {
		return false
	}
	found, odd := t.unitsIn(cells)
	if found == nil {
		return false
	}
	for i, u := range found {
		switch s := &t.specs[i]; {
		case !s.used || u.Name == "" || s.fixed && !t.repeated:
		case s.Said && s.says != byRow && !s.fixed && u != s.Column.Unit:
			odd = append(odd, i)
		default:
			s.Column.Unit, s.Column.Stated, s.Said, s.says = u, true, true, byRow
		}
	}
	for _, i := range odd {
		s, cell := &t.specs[i], celltext.Shorten(celltext.At(cells, i))
		s.used = false
		t.info.Faults = append(t.info.Faults, t.place.Fault(s.Typed, cell, "the unit of the column, as "+s.Column.Unit.Name,
			fmt.Sprintf("'%s' in the row of units isn't %s, in which '%s' would be read, so the column isn't used; write the unit in the heading", cell, s.Column.Unit.Name, s.Typed)))
	}
	t.look.Kept = append(t.look.Kept, t.repeatedAt...) // they are read by this row's units
	t.note("row %d gives the units", number)
	t.look.Class(told.UnitRow, number, cells)
	if !t.repeated { // the first ones stay
		t.refresh()
	}
	t.heads = append(t.heads[:t.headRows:t.headRows], slices.Clone(cells))
	t.fresh, t.repeated = false, false
	t.unitsElsewhere()
	t.noteUnits()
	t.beforeText()
	return true
}

// unitsAbove takes the units from a row of units right above the headings, for
// columns that say none.
func (t *table) unitsAbove(row int) {
	f := &t.search
	if f.Last == nil || f.LastAt != row-1 {
		return
	}
	loud := t.loud
	t.loud = true
	found, odd := t.unitsIn(f.Last)
	t.loud = loud
	if found == nil || len(odd) > 0 {
		return
	}
	took := false
	for i, u := range found {
		if s := &t.specs[i]; s.used && !s.Said && u.Name != "" {
			s.Column.Unit, s.Column.Stated, s.Said, s.says, took = u, true, true, "a row above the headings", true
		}
	}
	if took {
		t.note("row %d gives the units", f.LastAt)
	}
}

// unitsIn reads a row of units, by column; found is nil for a row that isn't one:
// with an amount, a kind of piece, or more words under numbers than units. odd are
// the columns of numbers under which some other word stands.
func (t *table) unitsIn(cells []string) (found []quantity.Unit, odd []int) {
	found = make([]quantity.Unit, len(t.specs))
	units := 0
	for i, cell := range cells {
		if cell = celltext.Trim(cell); cell == "" || celltext.MeansNothing(cell) || slices.ContainsFunc(t.heads, func(head []string) bool { return celltext.At(head, i) == cell }) {
			continue // or a heading that is merged down
		}
		u, isUnit := wording.UnitWord(cell)
		if !isUnit && strings.ContainsAny(cell, "0123456789") {
			return nil, nil
		}
		if i >= len(t.specs) || !t.specs[i].used {
			continue
		}
		switch s := &t.specs[i]; {
		case s.to() == takeoff.Kind && !t.loud:
			return nil, nil
		case s.Measure == takeoff.Text, s.Measure == takeoff.Count: // text, pieces
		case isUnit && u.Measure == s.Measure:
			found[i] = u
			units++
		default:
			odd = append(odd, i)
		}
	}
	if units == 0 || len(odd) > units {
		return nil, nil
	}
	return found, odd
}
