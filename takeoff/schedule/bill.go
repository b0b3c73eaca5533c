package schedule

import (
	"slices"

	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
)

// isBill reports the headings of a bill: a description and a quantity, with kinds of
// pieces under the description.
func (t *table) isBill(hs []headings.Heading) bool {
	at := headrow.Bill(hs)
	if at < 0 || t.below == nil {
		return false
	}
	return slices.ContainsFunc(t.below(mostBelow), func(cells []string) bool {
		return len(celltext.Filled(cells)) > 2 && t.kinds().NamesKind(celltext.At(cells, at))
	})
}
