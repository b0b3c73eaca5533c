package items

import (
	"fmt"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/columns"
)

// mostEven is how many rows below the headings are looked at whether they have a cell for each.
const mostEven = 20

// seeEven finds out whether the rows of a text file have as many cells as there are headings,
// all but a few: then one that has fewer may lack a cell in the middle.
func (t *Reader) seeEven() {
	t.even = false
	if !t.Ragged || t.Below == nil || len(t.Specs) < 3 {
		return
	}
	full, rows := 0, 0
	for _, cells := range t.Below(mostEven) {
		if len(cells) > 1 {
			rows++
		}
		if len(cells) == len(t.Specs) {
			full++
		}
	}
	if t.Next != nil {
		rows++
		if len(t.Next) == len(t.Specs) {
			full++
		}
	}
	t.even = full > 0 && 2*full >= rows
}

// tellShort says of a row with fewer cells than headings that it has, where it is refused, or
// is shorter than pieces are: its figures may stand under the wrong headings.
func (t *Reader) tellShort(r *takeoff.Row) {
	said := fmt.Sprintf("this row has %d cells and the headings %d, so its figures may stand under the wrong ones", t.cells, len(t.Specs))
	long := takeoff.DimColumn(fittings.Length)
	switch {
	case len(r.Faults) > 0:
		f := &r.Faults[0]
		f.Message += "; " + said
	case r.Has(long) && r.Number[long] < columns.LeastSide:
		r.Refuse(long, t.Place.Fault(long.Heading(), r.Text[long], "a cell for each heading", said+"; put in the one that lacks"))
	}
}
