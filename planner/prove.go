package planner

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"blankoff/planner/divide"
	"blankoff/planner/duty"
	"blankoff/planner/partition"
	"blankoff/planner/units"
	"blankoff/takeoff/terms"
)

// prove adds up what the searches proved.
func (p *Plan) prove(list []divide.Patch) {
	pr := &p.Proof
	pr.Aim, pr.Kind = p.Settings.Aim, Optimal
	bySystem, yours := map[string]*SystemProof{}, p.hasOwnCuts()
	for i := range list {
		q := &list[i]
		kind := Optimal
		switch {
		case q.Loose:
			kind = Grouped
		case !q.Solution.Exhaustive:
			kind = GivenCuts
			if !slices.Contains(pr.notProved, q.NotProved) {
				pr.notProved = append(pr.notProved, q.NotProved)
			}
		case yours:
			kind = GivenCuts
		}
		s := bySystem[q.Duty.System]
		if s == nil {
			s = &SystemProof{System: q.Duty.System, Kind: Optimal}
			bySystem[q.Duty.System] = s
		}
		s.Kind, pr.Kind = weaker(s.Kind, kind), weaker(pr.Kind, kind)
		s.Score, s.Bound = plus(s.Score, q.Solution.Score), plus(s.Bound, q.Solution.Bound)
		s.AtLeast += q.AtLeast
		pr.Score, pr.Bound = plus(pr.Score, q.Solution.Score), plus(pr.Bound, q.Solution.Bound)
	}
	for _, s := range bySystem {
		pr.BySystem = append(pr.BySystem, *s)
	}
	sort.Slice(pr.BySystem, func(a, b int) bool {
		return terms.NaturalLess(pr.BySystem[a].System, pr.BySystem[b].System)
	})
	var forced, all int64
	for _, c := range p.Cuts {
		minutes := int64(math.Round(c.Minutes * divide.Hundredths))
		all += minutes
		if c.Why != "" {
			forced += minutes
		}
	}
	pr.BlankMinutes = float64(all) / divide.Hundredths
	pr.Score.Minutes += forced
	pr.Bound.Minutes += forced
	pr.Score.Over, pr.Score.Under = p.count()
	pr.Score.Tests = len(p.Sections)
	pr.TotalMinutes = float64(len(p.Sections))*p.Settings.TestMinutes + pr.BlankMinutes
	pr.Sentences = p.sentences()
}

// hasOwnCuts reports whether a person's own cuts are among the plan's.
func (p *Plan) hasOwnCuts() bool {
	return slices.ContainsFunc(p.Cuts, func(c Cut) bool { return c.Why == duty.YourCut })
}

func plus(a, b partition.Score) partition.Score {
	return partition.Score{Over: a.Over + b.Over, Under: a.Under + b.Under, Tests: a.Tests + b.Tests, Minutes: a.Minutes + b.Minutes}
}

func weaker(a, b string) string {
	switch {
	case a == Grouped || b == Optimal:
		return a
	case b == Grouped || a == Optimal:
		return b
	}
	return a // both given cuts
}

// sentences say in plain words what was proved.
func (p *Plan) sentences() []string {
	pr := &p.Proof
	tests := plural(pr.Score.Tests, "test")
	var out []string
	switch {
	case pr.Kind == Grouped:
		out = append(out, tests+". Part of the schedule names no neighbours, so there it is the best grouping in that order, not a proof; join the rows with from, ^ or run to get one.")
	case len(pr.notProved) > 0:
		out = append(out, fmt.Sprintf("%s, the best found; it isn't proved best because %s. At least %s whatever is tried.", tests, strings.Join(pr.notProved, " and "), plural(pr.Bound.Tests, "test")))
	case pr.Kind == GivenCuts:
		out = append(out, fmt.Sprintf("%s, the best that can be had with your cuts: %s. What the best plan without them comes to stands beside yours.", tests, p.rangeWords()))
	case pr.Aim == partition.Time:
		out = append(out, fmt.Sprintf("%s, %.0f min in all: %s, and so the least time possible.", tests, pr.TotalMinutes, p.rangeWords()))
	default:
		out = append(out, fmt.Sprintf("%s, fewest possible: %s, and so no plan has fewer tests or, with as many, less blanking time.", tests, p.rangeWords()))
	}
	if pr.Kind == Optimal {
		atLeast := 0
		for _, s := range pr.BySystem {
			atLeast += s.AtLeast
		}
		switch {
		case pr.Score.Tests <= 1:
		case atLeast == pr.Score.Tests:
			out = append(out, fmt.Sprintf("%d can't be: between the boundaries that the schedule sets, the area alone asks for %s of at most the largest size that the rig can judge.", pr.Score.Tests-1, plural(atLeast, "section")))
		default:
			out = append(out, fmt.Sprintf("Between the boundaries that the schedule sets, the area alone asks for %d at least; the rest follows from where the joints are and from avoiding sections under range. Every choice of joints was weighed.", atLeast))
		}
	}
	if n := p.Takeoff.Schedule.RowsRefused + p.RefusedRows; n > 0 {
		out = append(out, fmt.Sprintf("This holds for what could be used: %s refused, and the plan will change once that is mended.", plural2(n, "row was", "rows were")))
	}
	return append(out, "Areas were rounded to "+rounding(p.Settings.Units)+" for the search and the result was checked again with the unrounded areas.")
}

// rounding is one mm2, to which the search rounds areas.
func rounding(u units.System) string {
	if u == units.SI {
		return "whole mm2"
	}
	return fmt.Sprintf("about %.5f %s", u.Of(units.Area, 1e-6), u.Unit(units.Area))
}

// rangeWords says how many sections the rig can't judge, as the first thing
// that was made least.
func (p *Plan) rangeWords() string {
	over, under := p.count()
	var parts []string
	if over > 0 {
		parts = append(parts, plural(over, "section")+" over range")
	}
	if under > 0 {
		parts = append(parts, plural(under, "section")+" under range")
	}
	if len(parts) == 0 {
		return "every section is in the rig's range"
	}
	return strings.Join(parts, " and ") + ", which no cuts can better"
}

func plural2(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func plural(n int, word string) string { return units.Count(n, word) }
