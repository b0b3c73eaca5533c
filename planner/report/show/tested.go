package show

import (
	"fmt"
	"math"
	"strings"

	"blankoff/planner/report"
)

// Tests is how many tests there are, and of how many sections where that isn't
// all: "9 tests", "2 tests of 9 planned sections".
func Tests(v *report.Plan, t *report.Tested) string {
	if t.All() {
		return Count(t.Tests, "test")
	}
	return Count(t.Tests, "test") + " of " + Count(len(v.Sections), "planned section")
}

// Beyond names once what all of the sections would come to, and which of them
// aren't tested and why; "" where all are.
func Beyond(v *report.Plan, t *report.Tested) string {
	if t.All() {
		return ""
	}
	p := &v.Proof
	state := ""
	if p.OverRange+p.UnderRange > 0 {
		state = fmt.Sprintf(", %d over and %d under range", p.OverRange, p.UnderRange)
	}
	time := Hours(p.TotalMinutes)
	if p.EndMinutes > 0 {
		time += " and " + Hours(p.EndMinutes) + " of capping"
	}
	return fmt.Sprintf("%s, %s%s, %s: %s if all were tested; no test here of %s", Count(len(v.Sections), "section"), v.Units.Area(v.Balance.Sections), state, Count(len(v.Cuts), "cut"), time, Left(t))
}

// Left names the sections that aren't tested, by reason.
func Left(t *report.Tested) string {
	var parts []string
	for i := range t.Left {
		l := &t.Left[i]
		parts = append(parts, Names(l.Sections, ", ", 12, 0)+": "+l.Why)
	}
	return strings.Join(parts, "; ")
}

// ProofTitle heads what is said of how good a plan is: that is always said of all
// its sections.
func ProofTitle(v *report.Plan, t *report.Tested) string {
	if t.All() {
		return "How good the plan is"
	}
	return "How good the plan of all " + Count(len(v.Sections), "section") + " is"
}

// CutsTitle heads the cuts.
func CutsTitle(v *report.Plan) string {
	if t := v.Tested(); t.All() {
		return "Cuts: blank off both sides of these joints"
	}
	return "Cuts: blank off both sides of these joints, or only what is said beside them"
}

// Why says why the rig can't judge a section, and that it isn't tested where it
// isn't.
func Why(s *report.Section) string {
	if s.NotTested == "" {
		return s.Reason
	}
	return s.Reason + "; " + s.NotTested
}

// Sides says on which sides a cut is blanked: "" for both, "S02 only", "not
// blanked".
func Sides(v *report.Plan) func(c *report.Cut) string {
	of := v.TestedSides()
	return func(c *report.Cut) string {
		sides := of(c)
		switch {
		case len(sides) == 0 && c.Parts[0] != "":
			return "not blanked"
		case len(sides) == 1 && c.Parts[0] != c.Parts[1]:
			return sides[0] + " only"
		}
		return ""
	}
}

// Hours writes minutes as hours and minutes.
func Hours(minutes float64) string {
	m := int(math.Round(minutes))
	switch {
	case m < 60:
		return fmt.Sprintf("%d min", m)
	case m%60 == 0:
		return fmt.Sprintf("%d h", m/60)
	}
	return fmt.Sprintf("%d h %d min", m/60, m%60)
}
