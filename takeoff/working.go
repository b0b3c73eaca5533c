package takeoff

import (
	"fmt"

	"blankoff/fittings"
)

// Working is an item's area in figures that a person can redo: that of one
// piece, then what the quantity and the openings cut in it make of it.
func (t *Takeoff) Working(it *Item) string {
	text := fittings.Working(&it.Piece)
	if it.Quantity > 1 {
		text += fmt.Sprintf("; x %d = %.3f m2", it.Quantity, it.Each*float64(it.Quantity))
	}
	if it.Cut > 0 {
		text += fmt.Sprintf("; less openings %.3f m2 = %.3f m2", it.Cut, it.Area)
	}
	return text
}
