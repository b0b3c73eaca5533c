package schedule

import (
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
)

// isBill reports the headings of a bill: a description and a quantity, with kinds of
// pieces under the description.
func (t *table) isBill(hs []headings.Heading) bool {
	at := t.likeBill(hs)
	if at < 0 || t.below == nil {
		return false
	}
	return slices.ContainsFunc(t.below(mostBelow), func(cells []string) bool {
		return len(celltext.Filled(cells)) > 2 && t.kinds().NamesKind(celltext.At(cells, at))
	})
}

// likeBill is the column of descriptions in headings as those of a bill, or -1.
func (t *table) likeBill(hs []headings.Heading) int {
	at, counted := -1, false
	for i, h := range hs {
		counted = counted || h.Verdict == headings.Known && h.Column == takeoff.Quantity || h.Verdict == headings.Asks && (h.Ask.Units() || h.Ask.Counts())
		if h.Verdict == headings.Asks && h.Ask.Describes() && at < 0 {
			at = i
		}
	}
	if !counted {
		return -1
	}
	return at
}
