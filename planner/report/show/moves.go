package show

import (
	"fmt"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/units"
)

// Needs says what the blanks come to in the order of the tests: "30 makes for 59
// fits; 25 moves, 4 more only turned at their joint".
func Needs(b *report.Blanking) string {
	text := fmt.Sprintf("%s for %s; %s", Count(b.Makes, "make"), Count(b.Fits, "fit"), Count(b.Moves, "move"))
	if b.Turned > 0 {
		text += fmt.Sprintf(", %d more only turned at their joint", b.Turned)
	}
	return text
}

// OrderWorth says how good the order of the tests is.
func OrderWorth(b *report.Blanking) string {
	switch {
	case b.Proved:
		return "no order needs fewer makes, and none with as few needs fewer moves"
	case b.LeastMakes == b.Makes:
		return fmt.Sprintf("no order needs fewer makes; whether fewer moves would do isn't proved: at least %d", b.LeastMoves)
	}
	return fmt.Sprintf("not proved the best: every order needs at least %s, and with no more than these at least %s",
		Count(b.LeastMakes, "make"), Count(b.LeastMoves, "move"))
}

// Ways says how tests follow each other.
func Ways(b *report.Blanking) string {
	if b.Ahead {
		return "each test is made ready while the one before it runs"
	}
	return "one test after the other"
}

// Way is the tests that a blank goes through, at most so many of them: "S03, then
// S07, turned for S08".
func Way(m *report.BlankMoves, atMost int) string {
	var text strings.Builder
	for k, s := range m.Steps {
		switch {
		case k == 0:
		case k == atMost:
			return text.String() + fmt.Sprintf(" and %d more", len(m.Steps)-k)
		case s.How == "turn":
			text.WriteString(", turned for ")
		default:
			text.WriteString(", then ")
		}
		text.WriteString(s.Section)
	}
	return text.String()
}

// UntestedSum says how many joints stay untested and what overlapping the
// sections would cost.
func UntestedSum(u *report.Untested) string {
	stay := "stay"
	if u.Joints == 1 {
		stay = "stays"
	}
	parts := []string{fmt.Sprintf("%s, %s of joint, %s untested", Count(u.Joints, "joint"), tenths(u.Units, units.Length, u.Metres), stay)}
	if u.Overlaps > 0 {
		parts = append(parts, fmt.Sprintf("overlapping would test %d of them (%s) for %s", u.Overlaps, tenths(u.Units, units.Length, u.Tested), overlapCost(&u.OverlapCost, u.Units)))
	}
	order, many := []string{}, map[string]int{}
	for i := range u.List {
		if why := u.List[i].Why; why != "" {
			if many[why]++; many[why] == 1 {
				order = append(order, why)
			}
		}
	}
	const atMost = 3
	if len(order) > atMost {
		return strings.Join(append(parts, fmt.Sprintf("%d can't be, for the reasons listed", u.Joints-u.Overlaps)), "; ")
	}
	for _, why := range order {
		parts = append(parts, fmt.Sprintf("%d can't be: %s", many[why], why))
	}
	return strings.Join(parts, "; ")
}

// tenths writes a figure with one decimal and its unit.
func tenths(u units.System, q units.Quantity, v float64) string {
	return fmt.Sprintf("%.1f %s", u.Of(q, v), u.Unit(q))
}

// overlapCost writes what an overlap costs.
func overlapCost(c *report.OverlapCost, u units.System) string {
	blanks := Count(c.Blanks, "more blank")
	switch {
	case c.Blanks == 0:
		blanks = "no more blanks"
	case c.Blanks < 0:
		blanks = Count(-c.Blanks, "blank") + " fewer"
	}
	return fmt.Sprintf("%.0f min, %s and %s tested twice", Whole(c.Minutes)+0, blanks, tenths(u, units.Area, c.Area))
}
