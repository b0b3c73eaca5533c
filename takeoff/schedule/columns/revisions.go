package columns

import (
	"blankoff/takeoff/schedule/answered"
	"blankoff/takeoff/schedule/celltext"
)

// Revises reports a column of the revisions of rows. Figures that go up from row to row number
// the rows.
func (t *Reading) Revises(i int) bool {
	if !answered.OfRevisions(t.Specs[i].Typed) {
		return false
	}
	cells := t.Peek().Columns[i]
	numbers := len(cells) > 1
	for _, cell := range cells {
		if !answered.MayBeRevision(t.Specs[i].Typed, cell) {
			return false
		}
		numbers = numbers && celltext.IsFigure(cell)
	}
	return !numbers || !celltext.NumbersRows(cells)
}
