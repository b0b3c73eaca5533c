package items

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
	"blankoff/takeoff/terms"
)

// saysNothing reports a cell that is filled in to say that it is empty, or as the
// one above it, which is a fault where more than a name is expected.
func (t *Reader) saysNothing(r *takeoff.Row, s *columns.Spec, cell string) bool {
	c := s.To()
	if c == takeoff.Kind && quantity.Ditto(cell) {
		t.kindAsAbove(r, s, cell)
		return true
	}
	if c == takeoff.Quantity && quantity.Nothing(cell, s.Measure) {
		t.fault(r, s, cell, "may be none or one; write how many, or take the row out")
		return true
	}
	if c != takeoff.Sign && quantity.Nothing(cell, s.Measure) { // there, - may be negative
		return true
	}
	if s.Measure == takeoff.Text && columns.Spreads(c) {
		if trouble := quantity.Above(cell, s.Measure); trouble != "" {
			t.fault(r, s, cell, trouble)
			return true
		}
	}
	s.AsIs = cell
	return false
}

// doubtMerged refuses a row over which a count or a length is merged down: it may be
// that of each row or of all together. It reports true, since the row is no fuller
// for it.
func (t *Reader) doubtMerged(r *takeoff.Row, s *columns.Spec, cell string) bool {
	t.fault(r, s, cell, "is merged over several rows, and may be of each or of all together; write it in each row")
	return true
}

// Elsewhere are the columns into which sizes are moved that stand in other cells.
var Elsewhere = slices.Concat(columns.Own[:], columns.Second[:], []takeoff.Column{takeoff.DimColumn(fittings.Length), takeoff.DimColumn(fittings.Throat), takeoff.Quantity})

// saysElse reports a cell that holds something else than its column takes and bears on
// no area: a pressure class in words, yes or no for a day, no lining.
func (t *Reader) saysElse(s *columns.Spec, cell string) bool {
	switch c := s.To(); c {
	case takeoff.DuctClassPa:
		if strings.ContainsAny(cell, "0123456789#=") {
			return false
		}
	case takeoff.Ready, takeoff.Closed, takeoff.DimColumn(fittings.Lining):
		if word := strings.ToLower(cell); !slices.Contains(wording.Noes, word) && (c == takeoff.DimColumn(fittings.Lining) || !slices.Contains(wording.Yeses, word)) {
			return false
		}
	case takeoff.Joint:
		if cell == s.Heard {
			return false
		}
		if terms.KnownJoint(cell) || t.Kinds().Translate(c, cell) != cell {
			s.Heard = cell
			return false
		}
	default:
		return false
	}
	t.Told.Add("cells of column '%s' that say something else, not used", s.Typed, t.Place.Row)
	return true
}

// bareSize is a size without a unit that would be very small in mm.
type bareSize struct {
	*columns.Spec
	cell string
}

// seeUnit takes note of whether a cell of a column that states no unit states its own.
func (t *Reader) seeUnit(s *columns.Spec, cell string, v float64) {
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
			s.Own, t.NewUnit = true, true
		}
	case v > 0 && v < least:
		t.bare = append(t.bare, bareSize{s, cell})
	}
}

// doubtBare refuses sizes without a unit that would be very small in mm, where another
// cell of the row or of the column states its unit.
func (t *Reader) doubtBare(r *takeoff.Row) {
	for _, b := range t.bare {
		if t.rowUnit || b.Own || b.Beside {
			t.fault(r, b.Spec, b.cell, "states no unit where others do, and would be in mm; write its unit behind it, or in the heading")
		}
	}
	t.bare, t.rowUnit = t.bare[:0], false
	if len(t.Pending) == 0 || !t.Pending[0].Beside || quantity.SaysUnit(t.Pending[0].Cell) {
		return
	}
	if across := max(r.Number[columns.Own[0]], r.Number[columns.Own[1]], r.Number[columns.Own[2]]); across > 0 && across < columns.LeastBeside {
		t.fault(r, t.Pending[0].Spec, t.Pending[0].Cell, "states no unit where others do, and would be in mm; write its unit behind it, or in the heading")
	}
}

// unitInCells reports a row that states the unit of its cross-section itself.
func (t *Reader) unitInCells(r *takeoff.Row) bool {
	says := quantity.SaysUnit
	if len(t.Pending) > 0 {
		return says(t.Pending[0].Cell)
	}
	return says(r.Text[columns.Own[0]]) || says(r.Text[columns.Own[2]])
}

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

// severalIn is a cell of a column of flats, houses or floors that names several of them.
type severalIn struct {
	of   *columns.Spec
	cell string
}

// seeSeveral looks at a cell of a column of flats, houses or floors.
func (t *Reader) seeSeveral(s *columns.Spec, cell string) {
	if celltext.Digit(cell[0]) && wording.RangeCount(cell) > 0 {
		t.several = severalIn{s, cell}
	}
}

// doubtSeveral refuses a row that stands for several flats, houses or floors, and whose
// quantity isn't one of all of them.
func (t *Reader) doubtSeveral(r *takeoff.Row) {
	x := t.several
	t.several = severalIn{}
	if n := wording.RangeCount(x.cell); t.Loud || n == 0 || int(r.Number[takeoff.Quantity])%n == 0 && r.Has(takeoff.Quantity) {
		return
	}
	r.Faults = append(r.Faults, t.Place.Fault(x.of.Typed, celltext.Shorten(x.cell), "how many under quantity",
		fmt.Sprintf("'%s' in '%s' seems to name several, and the row may count for each; write how many in all under quantity, or a row for each", celltext.Shorten(x.cell), x.of.Typed)))
}
