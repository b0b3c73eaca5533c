package schedule

import (
	"fmt"
	"slices"

	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/told"
)

// unitRow takes the units from a row of units right below the headings, or below
// where they stand again. A unit that isn't understood, or is another than its
// heading says, leaves the column unusable.
func (t *table) unitRow(number int, cells []string) bool {
	if !t.fresh && !t.repeated {
		return false
	}
	found, odd := t.UnitsIn(cells, t.loud)
	if found == nil {
		return false
	}
	for i, u := range found {
		switch s := &t.Specs[i]; {
		case !s.Used || u.Name == "" || s.Fixed && !t.repeated:
		case s.Said && s.Says != columns.ByRow && !s.Fixed && u != s.Column.Unit:
			odd = append(odd, i)
		default:
			s.Column.Unit, s.Column.Stated, s.Said, s.Says = u, true, true, columns.ByRow
		}
	}
	for _, i := range odd {
		s, cell := &t.Specs[i], celltext.Shorten(celltext.At(cells, i))
		s.Used = false
		t.Found.Faults = append(t.Found.Faults, t.Place.Fault(s.Typed, cell, "the unit of the column, as "+s.Column.Unit.Name,
			fmt.Sprintf("'%s' in the row of units isn't %s, in which '%s' would be read, so the column isn't used; write the unit in the heading", cell, s.Column.Unit.Name, s.Typed)))
	}
	t.Look.Kept = append(t.Look.Kept, t.repeatedAt...) // they are read by this row's units
	t.Note("row %d gives the units", number)
	t.Look.Class(told.UnitRow, number, cells)
	if !t.repeated { // the first ones stay
		t.Refresh()
	}
	t.Heads = append(t.Heads[:t.HeadRows:t.HeadRows], slices.Clone(cells))
	t.fresh, t.repeated = false, false
	t.UnitsElsewhere()
	t.NoteUnits()
	t.BeforeText()
	return true
}
