package schedule

import (
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/quantity"
)

// bareSize is a size without a unit that would be very small in mm.
type bareSize struct {
	*columns.Spec
	cell string
}

// seeUnit takes note of whether a cell of a column that states no unit states its own.
func (t *table) seeUnit(s *columns.Spec, cell string, v float64) {
	least := 0.2 // a length; see takeoff's look at units that nobody states
	switch {
	case s.Beside && s.Across:
		least = columns.LeastBeside
	case s.Beside:
		least = 2 * columns.LeastBeside
	case s.Across:
		least = 0.063
	}
	switch {
	case !celltext.Digit(cell[len(cell)-1]) && quantity.SaysUnit(cell):
		t.rowUnit = true
		if !s.Own {
			s.Own, t.newUnit = true, true
		}
	case v > 0 && v < least:
		t.bare = append(t.bare, bareSize{s, cell})
	}
}

// doubtBare refuses sizes without a unit that would be very small in mm, where another
// cell of the row or of the column states its unit.
func (t *table) doubtBare(r *takeoff.Row) {
	for _, b := range t.bare {
		if t.rowUnit || b.Own || b.Beside {
			t.fault(r, b.Spec, b.cell, "states no unit where others do, and would be in mm; write its unit behind it, or in the heading")
		}
	}
	t.bare, t.rowUnit = t.bare[:0], false
	if len(t.pending) == 0 || !t.pending[0].Beside || quantity.SaysUnit(t.pending[0].cell) {
		return
	}
	if across := max(r.Number[columns.Own[0]], r.Number[columns.Own[1]], r.Number[columns.Own[2]]); across > 0 && across < columns.LeastBeside {
		t.fault(r, t.pending[0].Spec, t.pending[0].cell, "states no unit where others do, and would be in mm; write its unit behind it, or in the heading")
	}
}

// unitInCells reports a row that states the unit of its cross-section itself.
func (t *table) unitInCells(r *takeoff.Row) bool {
	says := quantity.SaysUnit
	if len(t.pending) > 0 {
		return says(t.pending[0].cell)
	}
	return says(r.Text[columns.Own[0]]) || says(r.Text[columns.Own[2]])
}
