package show

import (
	"fmt"
	"strings"

	"blankoff/planner/report"
)

// Days are the days of a visit, in words where there is no bound.
func Days(x report.Visit) (from, to string) {
	from, to = x.Earliest, x.Latest
	if from == "" {
		from = "any day"
	}
	if to == "" {
		to = "no end"
	}
	return from, to
}

// Change says which of a person's cuts to do without.
func Change(x *report.CutChange) string {
	what := "the smallest change"
	if !x.Smallest {
		what = "a small change, not proved the smallest,"
	}
	cuts := "the cut "
	if len(x.Without) > 1 {
		cuts = "the cuts "
	}
	return fmt.Sprintf("%s that leaves %d over range and %d under range: do without %s%s", what, x.OverRange, x.UnderRange,
		cuts, strings.Join(x.Without, ", "))
}
