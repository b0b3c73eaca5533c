package xlsx

import (
	"fmt"
	"io"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// Plan writes a plan as a workbook. The same view gives the same bytes.
func Plan(w io.Writer, v *report.Plan) error {
	b, err := newBook(footText(v.Schedule.File), v.Units)
	if err != nil {
		return err
	}
	b.head = footText(v.Job.Head())
	defer b.file.Close()
	b.follow = newLinks(v)
	for _, write := range []func(*book, *report.Plan) error{
		summary, sections, outOfRange, readings, windowSheet, pieces, cuts, blanks, sizes, moves, untested, programme, days, kit, takeoffSheet, settingsSheet, notes,
	} {
		if err := write(b, v); err != nil {
			return err
		}
	}
	return b.write(w)
}

// footText makes a text safe for a page's foot, where & gives orders; it may
// hold 255 characters with everything else that stands there.
func footText(s string) string {
	var out strings.Builder
	n := 0
	for _, r := range s {
		if n++; n > 80 {
			out.WriteString("...")
			break
		}
		switch {
		case r == '&':
			out.WriteString("&&")
		case r < ' ':
			out.WriteByte(' ')
		default:
			out.WriteRune(r)
		}
	}
	return out.String()
}

// summary says what the plan comes to and what it was made for.
func summary(b *book, v *report.Plan) error {
	columns := []column{{head: "Ductwork leakage test plan", width: 30, kind: label}, {head: v.Schedule.File, width: 98, kind: value}}
	return b.form("summary", columns, func(row func(...any) error) error {
		for _, part := range [][][2]any{jobLines(v), summaryResult(b.follow), sampleLines(v), {{"prepared by", byHand{}}, {"date", byHand{}}}, summarySettings(v), summaryBalance(b.follow)} {
			for _, line := range part {
				if err := row(line[0], line[1]); err != nil {
					return err
				}
			}
		}
		for i, s := range v.Proof.Sentences {
			head := ""
			if i == 0 {
				head = lowered(show.ProofTitle(v, &b.follow.tested))
			}
			if err := row(head, s); err != nil {
				return err
			}
		}
		return nil
	})
}

func summaryResult(l *links) [][2]any {
	v := l.v
	p := &l.tested
	t := l.totals()
	lines := [][2]any{{"tests", t.tests.as(float64(p.Tests), whole)}, {"sections over range", l.countState("OVER RANGE*", p.OverRange)}, {"sections under range", l.countState("UNDER RANGE*", p.UnderRange)}}
	if text := show.Beyond(v, p); text != "" {
		lines = append([][2]any{{"to be tested", or(v.Nothing(), show.Tests(v, p))}, {"all of the plan", text}}, lines...)
	}
	if g := show.Groupings(v); g != "" {
		lines = append(lines, [2]any{"groupings", bold(g)})
	}
	if n := v.Schedule.RowsRefused; n > 0 {
		lines = append(lines, [2]any{"rows", bold(fmt.Sprintf("%d of %s REFUSED", n, show.Count(v.Schedule.RowsRead, "row")))})
	}
	for _, x := range v.Voids() {
		lines = append(lines, [2]any{"of the earlier plan", bold(x)})
	}
	if n := len(v.Mismatches); n > 0 {
		lines = append(lines, [2]any{"mismatches", n})
	}
	sizes := show.AllSizes(show.Sizes(v))
	return append(lines, [][2]any{
		{"cuts", p.Cuts},
		{"blanks to fit, in all tests", inGroupings(v, t.blanks, float64(sizes.Fits()), whole)},
		{"greatest force on a blank", inGroupings(v, t.force, sizes.MostForce, newtons)},
		{"tested", t.tested.as(p.Area, squareM)},
		{"tests and cuts", t.minutes.as(p.Total, minutes)},
		{"of which cuts", t.cuts.as(p.Minutes, minutes)},
		{"capping open ends, apart", inGroupings(v, t.ends, p.EndMinutes, minutes)},
	}...)
}

// inGroupings says of a figure that it isn't known for groupings.
func inGroupings(v *report.Plan, f figure, now float64, k kind) any {
	switch {
	case show.Groupings(v) == "":
		return f.as(now, k)
	case now == 0:
		return "not known for groupings"
	}
	if is := &quantities[k]; is.has {
		now = turn(v.Units, is.q, now)
	}
	return fmt.Sprintf("%.0f, not known for groupings", show.Whole(now))
}

func summarySettings(v *report.Plan) [][2]any {
	s, u := &v.Settings, v.Units
	aim := "fewest tests"
	if s.Aim == "time" {
		aim = "least time"
	}
	lines := [][2]any{
		{"schedule", v.Schedule.File}, {"sha256 of the schedule", v.Schedule.SHA256},
		{"rig", s.Rig}, {"headroom", formula{"headroom", s.Headroom}}, {"aim", aim}, {"minutes of one test", formula{"test_minutes", s.TestMinutes}},
		{"scheme where none is given", s.Scheme}, {"class where none is given", or(s.Class, "none")},
	}
	if s.TestPa > 0 {
		lines = append(lines, [2]any{headIn(u, units.Pressure, "test pressure where none is given, Pa"), turn(u, units.Pressure, s.TestPa)})
	}
	lines = append(lines, [2]any{"sign where none is given", s.Sign})
	if s.MinArea > 0 {
		lines = append(lines, [2]any{headIn(u, units.Area, "a section at least, m2"), formula{u.Rename("min_area_m2"), turn(u, units.Area, s.MinArea)}})
	}
	if s.MaxArea > 0 {
		lines = append(lines, [2]any{headIn(u, units.Area, "a section at most, m2"), formula{u.Rename("max_area_m2"), turn(u, units.Area, s.MaxArea)}})
	}
	if s.PieceLength > 0 {
		lines = append(lines, [2]any{headIn(u, units.Length, "straights made in, m"), turn(u, units.Length, s.PieceLength)})
	}
	if s.By != "" {
		lines = append(lines, [2]any{"sections end at every change of", s.By})
	}
	if s.PressureRule != "" {
		lines = append(lines, [2]any{"test pressure of rows without one", show.PressureRule(s.PressureRule)})
	}
	lines = append(lines, [2]any{"basis of areas", s.Basis + ". " + v.Measured})
	if s.HoldBoth {
		lines = append(lines, [2]any{"held to", "this basis and the exact area: the larger at the rig's upper end, the smaller at its lower end and for the limit"})
	}
	for _, a := range v.Alone {
		lines = append(lines, [2]any{"rig " + a.Rig + " alone", fmt.Sprintf("%s, %d under range, %d over range, %s not tested", show.Count(a.Tests, "test"), a.UnderRange, a.OverRange, u.Area(a.Left))})
	}
	if c := v.OwnCuts; c != nil {
		for _, x := range []struct {
			name string
			s    report.Score
		}{{"your cuts as given", c.AsGiven}, {"your cuts completed (this plan)", c.Completed}, {"the best without your cuts", c.Best}} {
			lines = append(lines, [2]any{x.name, fmt.Sprintf("%s, %d under range, %d over range, cuts %.0f min", show.Count(x.s.Tests, "test"), x.s.UnderRange, x.s.OverRange, x.s.BlankMinutes)})
		}
		if x := c.Change; x != nil {
			lines = append(lines, [2]any{"change", show.Change(x)})
		}
	}
	return append(lines, summaryVisits(v)...)
}

// summaryVisits is when the sections can be tested.
func summaryVisits(v *report.Plan) (lines [][2]any) {
	if v.Visits == nil {
		return nil
	}
	if on := v.Settings.On; on != "" {
		lines = append(lines, [2]any{"can be tested on " + on, strings.Join(v.Visits.Now, ", ")})
	}
	for i, x := range v.Visits.List {
		from, to := show.Days(x)
		lines = append(lines, [2]any{fmt.Sprintf("visit %d, %s to %s", i+1, from, to), strings.Join(x.Sections, ", ")})
	}
	if len(v.Visits.Missed) > 0 {
		lines = append(lines, [2]any{"MISSED, no day is left", strings.Join(v.Visits.Missed, ", ")})
	}
	return lines
}

func summaryBalance(l *links) [][2]any {
	v := l.v
	a := &v.Balance
	t := l.totals()
	return [][2]any{
		{"rows", show.Rows(&v.Schedule)},
		{"faults", len(v.Faults)},
		{"takeoff", t.takeoff.as(a.Takeoff, squareM)},
		{"of which in sections", t.sections.as(a.Sections, squareM)},
		{"of which outside", t.outside.as(a.Outside, squareM)},
		{headIn(v.Units, units.Area, "difference, m2"), t.difference.as(show.DifferenceIn(v.Units, a.Difference), plain)},
	}
}

func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}
