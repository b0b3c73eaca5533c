package show

import (
	"fmt"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/units"
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

// LimitChange says that a section is held to another limit than before.
func LimitChange(x report.Limit) string { return LimitChangeIn(units.SI, x) }

// LimitChangeIn is LimitChange in other units.
func LimitChangeIn(u units.System, x report.Limit) string {
	said := ""
	if x.Status == "passed" || x.Status == "tested" {
		said = "; its reading was judged by the old one: judge it again, or test again if the pressure changed"
	}
	return fmt.Sprintf("%s: its limit was %s and is %s%s", x.ID, u.Limit(x.Was), u.Cut(units.Flow, x.Is), said)
}
