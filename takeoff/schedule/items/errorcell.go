package items

import (
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
)

// isError reports a cell that shows an error of the spreadsheet.
func isError(cell string) bool {
	return (cell[0] == '#' || cell[0] == 'E') && slices.ContainsFunc(celltext.ErrorCells, func(e string) bool { return strings.HasPrefix(cell, e) })
}

// passError passes over an error of the spreadsheet in a column that bears on no area of
// ours, as figures to check or remarks. It reports whether it did.
func (t *Reader) passError(s *columns.Spec, cell string) bool {
	switch s.To() {
	case takeoff.StatedArea, takeoff.Note, takeoff.PlaceOnSite, takeoff.Drawing:
	default:
		return false
	}
	if t.Loud || s.Sized[0] != 0 || !isError(cell) { // a total is held against the rows
		return false
	}
	t.Told.Add("errors of the spreadsheet in column '%s', not used", s.Typed, t.Place.Row)
	return true
}
