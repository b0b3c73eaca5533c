package takeoff

import (
	"blankoff/takeoff/totals"
	"fmt"
	"strings"
)

// mostTotals is how many rows of totals are told one by one.
const mostTotals = 200

// reconcile holds every row of totals against the rows above it: those since the
// total before, since the last sub-heading, and all of its sheet. The nearest
// is told with both figures.
func (t *Takeoff) reconcile() {
	if len(t.Schedule.TotalRows) == 0 {
		return
	}
	sums := totals.RunningOf(&t.book.Ledger)
	for i, x := range t.Schedule.TotalRows {
		if i == mostTotals {
			t.Notes = append(t.Notes, fmt.Sprintf("%d more rows of totals are no pieces either; they aren't held against the rows above them", len(t.Schedule.TotalRows)-i))
			return
		}
		name := "a row of totals"
		if x.Label != "" {
			name = "'" + x.Label + "'"
		}
		name = fmt.Sprintf("%s: %s is a total and no piece", strings.TrimPrefix(x.At.String(), x.At.File+", "), name)
		if said := sums.Against(totals.Given{Before: x.Before, Since: x.Since, Area: x.Area, AreaText: x.AreaText, Quantity: x.Quantity}); said != "" {
			name += "; " + said
		}
		t.Notes = append(t.Notes, name)
	}
}
