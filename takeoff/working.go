package takeoff

import (
	"fmt"

	"blankoff/fittings"
)

// Working is an item's area in figures that a person can redo: that of one
// piece, then what the quantity and the openings cut in it make of it. On a basis
// that makes a difference the exact area stands beside it: "centre-line: ...;
// exact: ...".
func (t *Takeoff) Working(it *Item) string {
	p := t.options.measuredPiece(it)
	exact := t.whole(it, fittings.WorkingIn(&p, nil, t.options.Written), it.EachExact, it.CutExact, it.Exact)
	b := t.options.Basis
	if b.Exact() {
		return exact
	}
	on := t.whole(it, fittings.WorkingIn(&p, b, t.options.Written), it.Each, it.Cut, it.Area)
	if on == exact {
		return exact
	}
	return b.Name + ": " + on + "; exact: " + exact
}

// whole adds to the working of one piece what makes it that of the row.
func (t *Takeoff) whole(it *Item, text string, each, cut, rest float64) string {
	if it.Quantity > 1 {
		text += fmt.Sprintf("; x %d = %s", it.Quantity, t.written(each*float64(it.Quantity)))
	}
	if cut > 0 {
		text += t.openingsWorking(int(it.index)) + "; leaves " + t.written(rest)
	}
	return text
}
