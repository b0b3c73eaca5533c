package text

import (
	"bufio"
	"fmt"
	"strconv"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// ownCuts sets a person's own cuts beside the best plan.
func ownCuts(b *bufio.Writer, c *report.OwnCuts) {
	if c == nil {
		return
	}
	title(b, "Your cuts: "+show.Count(c.Given, "cut")+" used")
	writeTable(b, []Column{
		{Head: ""}, {Head: "tests", Align: Right}, {Head: "under range", Align: Right}, {Head: "over range", Align: Right}, {Head: "cuts min", Align: Right}, {Head: "all min", Align: Right},
	}, func(row func(...string)) {
		line := func(name string, s report.Score) {
			row(name, strconv.Itoa(s.Tests), strconv.Itoa(s.UnderRange), strconv.Itoa(s.OverRange), fixed(s.BlankMinutes, 0), fixed(s.TotalMinutes, 0))
		}
		line("as given, no others", c.AsGiven)
		line("completed (this plan)", c.Completed)
		line("the best without them", c.Best)
	})
	if x := c.Change; x != nil {
		paragraph(b, "  change    ", show.Change(x))
	}
	list(b, "Added to complete yours", c.Added, most, hasAll)
	list(b, "The best plan does without", c.Dropped, most, hasAll)
	list(b, "and has instead", c.Instead, most, hasAll)
}

// alone writes what each of several rigs would do alone, beside the plan.
func alone(b *bufio.Writer, v *report.Plan) {
	if len(v.Alone) == 0 {
		return
	}
	u := v.Units
	title(b, "Rigs: what each would do alone")
	writeTable(b, []Column{
		{Head: "rig", Max: 40}, {Head: "tests", Align: Right}, {Head: "under range", Align: Right}, {Head: "over range", Align: Right}, {Head: "cuts min", Align: Right}, {Head: "not tested " + u.Unit(units.Area), Align: aligned(u)},
	}, func(row func(...string)) {
		line := func(name string, tests, under, over int, minutes, left float64) {
			row(name, strconv.Itoa(tests), strconv.Itoa(under), strconv.Itoa(over), fixed(minutes, 0), area(u, left))
		}
		p := &v.Proof
		line("all of them (this plan)", p.Tests, p.UnderRange, p.OverRange, p.BlankMinutes, v.Balance.Outside)
		for _, a := range v.Alone {
			line(a.Rig, a.Tests, a.UnderRange, a.OverRange, a.BlankMinutes, a.Left)
		}
	})
}

// sample writes which sections are tested where a share is asked for.
func sample(b *bufio.Writer, v *report.Plan) {
	if v.Sample == nil {
		return
	}
	title(b, show.SampleTitle(v))
	for _, l := range show.SampleLines(v) {
		paragraph(b, fmt.Sprintf("  %-10s", l.Word), l.Text)
	}
	list(b, "Notes on the sample", v.Sample.Notes, 0, "")
}

// kept writes what became of an earlier plan.
func kept(b *bufio.Writer, v *report.Plan, t *report.Tested) {
	k, u := v.Kept, v.Units
	if k == nil {
		return
	}
	head := "Since the earlier plan"
	if !t.All() {
		head += ", all of its sections counted"
	}
	title(b, head)
	line := func(word string, ids []string) {
		if len(ids) > 0 {
			paragraph(b, word, some(ids, 30))
		}
	}
	line("  stay      ", k.Stay)
	line("  new       ", k.New)
	line("  no more   ", k.Moved)
	for _, x := range k.Void {
		paragraph(b, "  VOID      ", fmt.Sprintf("%s (%s): %s, %s", x.ID, x.Status, x.Piece, x.Why))
	}
	for _, x := range k.Limits {
		paragraph(b, "  LIMIT     ", show.LimitChangeIn(u, x))
	}
	if !k.Proved {
		paragraph(b, "            ", "whether fewer sections could move wasn't tried to the end")
	}
	b.WriteString("\n")
	writeTable(b, []Column{
		{Head: ""}, {Head: "tests", Align: Right}, {Head: "under range", Align: Right}, {Head: "over range", Align: Right}, {Head: "cuts", Align: Right}, {Head: "cuts min", Align: Right}, {Head: "blanks", Align: Right}, {Head: u.Unit(units.Area) + " in tests", Align: aligned(u)}, {Head: "limits " + u.Unit(units.Flow), Align: aligned(u)},
	}, func(row func(...string)) {
		line := func(name string, s report.Sums) {
			row(name, strconv.Itoa(s.Tests), strconv.Itoa(s.Under), strconv.Itoa(s.Over), strconv.Itoa(s.Cuts), fixed(s.Minutes, 0), strconv.Itoa(s.Blanks), area(u, s.Area), u.Cut(units.Flow, s.Limit))
		}
		line("before", k.Before)
		line("now", k.Now)
	})
	keptChanges(b, k, u)
}

// keptChanges lists what came, went or changed in the schedule.
func keptChanges(b *bufio.Writer, k *report.Kept, u units.System) {
	var changes []string
	for _, c := range k.Changes {
		text := fmt.Sprintf("%s %s: ", c.What, c.Tag)
		switch c.What {
		case "added":
			text += c.Is
		case "gone":
			text += c.Was
		default:
			text += c.Was
			if c.Is != c.Was {
				text += " to " + c.Is
			}
		}
		changes = append(changes, fmt.Sprintf("%s, %+.2f %s", text, u.Of(units.Area, c.Area), u.Unit(units.Area)))
	}
	list(b, "Changes in the schedule since", changes, most, hasAll)
}

// visits writes when the sections can be tested.
func visits(b *bufio.Writer, v *report.Plan) {
	s := v.Visits
	if s == nil {
		return
	}
	title(b, "Visits: "+show.Count(len(s.List), "visit")+", no plan of these sections has fewer")
	ids := func(head string, list []string) {
		if len(list) > 0 {
			paragraph(b, head, show.Names(list, ", ", most, 0))
		}
	}
	if on := v.Settings.On; on != "" {
		now := "nothing"
		if len(s.Now) > 0 {
			now = show.Names(s.Now, ", ", most, 0)
		}
		paragraph(b, "  now       ", "on "+on+": "+now)
	}
	if s.First != "" {
		paragraph(b, "  first     ", s.First+" is hidden first: after "+s.Closed)
	}
	ids("  later     ", s.Later)
	ids("  MISSED    ", s.Missed)
	ids("  done      ", s.Done)
	if len(s.List) == 0 {
		return
	}
	writeTable(b, []Column{{Head: "visit", Align: Right}, {Head: "from", Max: 10}, {Head: "to", Max: 10}, {Head: "tests", Align: Right}, {Head: "sections"}}, func(row func(...string)) {
		for i, x := range s.List {
			from, to := show.Days(x)
			row(strconv.Itoa(i+1), from, to, strconv.Itoa(len(x.Sections)), show.Names(x.Sections, ", ", most, 60))
		}
	})
}
