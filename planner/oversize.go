package planner

import (
	"fmt"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// A schedule makes so many pieces at most, and so many more for each of its rows.
// Real ones make one to twenty a row; beyond, a length or a quantity is a slip.
const (
	somePieces = 100_000
	rowPieces  = 50
)

// Oversize is an error for a schedule that makes more pieces than anybody fits; it
// names the row that makes most.
func Oversize(t *takeoff.Takeoff) error {
	all, most, at := 0.0, 0.0, -1
	for i := range t.Items {
		it := &t.Items[i]
		if it.Refused {
			continue
		}
		n := float64(it.Quantity)
		if it.Piece.Kind == fittings.Straight {
			n *= it.Length()/t.PieceLength(it) + 1
		}
		if all += n; n > most {
			most, at = n, i
		}
	}
	if at < 0 || all <= somePieces+rowPieces*float64(len(t.Items)) {
		return nil
	}
	it := &t.Items[at]
	return fmt.Errorf("the schedule makes about %.0f pieces of duct in %s, %s alone about %.0f (%g m long, quantity %d); correct the length or the quantity, or give a longer --piece-length",
		all, plural(len(t.Items), "row"), it.Name(), most, it.Length(), it.Quantity)
}
