package items

import (
	"fmt"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/wording"
)

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
