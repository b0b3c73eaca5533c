package xlsx

import (
	"fmt"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// jobLines are what the job file says, at the head of the summary.
func jobLines(v *report.Plan) (lines [][2]any) {
	for _, l := range v.Job.Lines() {
		lines = append(lines, [2]any{l.Word, l.Text})
	}
	return lines
}

// programme writes the tests in their order, one a row, with the day of each.
func programme(b *book, v *report.Plan) error {
	o := v.Programme
	if o == nil || len(o.Slots) == 0 {
		return nil
	}
	return b.sheet("programme", []column{
		{head: "visit", width: 6, kind: whole}, {head: "day", width: 5, kind: whole}, {head: "on", width: 11}, {head: "section", width: 9}, {head: "rig on level", width: 12},
		{head: "moving min", width: 8, kind: whole}, {head: "cuts min", width: 8, kind: whole}, {head: "open ends min", width: 9, kind: whole},
		{head: "set-up min", width: 8, kind: whole}, {head: "hold min", width: 8, kind: whole}, {head: "rest min", width: 8, kind: whole}, {head: "all min", width: 8, kind: whole},
		{head: "retest from", width: 11}, {head: "began", width: 8, kind: box}, {head: "ended", width: 8, kind: box}, {head: "result", width: 12, kind: box},
	}, func(row func(...any) error) error {
		day := 0
		for i := range o.Slots {
			s := &o.Slots[i]
			var on any = s.Day
			if s.Day == day {
				on = nil
			}
			if err := row(s.Visit, on, s.On, s.Section, s.Level, s.Move, s.Cuts, s.Ends, s.SetUp, s.Hold, s.Rest, s.Minutes, s.Retest, nil, nil, nil); err != nil {
				return err
			}
			day = s.Day
		}
		n := float64(len(o.Slots))
		return row(total("all"), o.Days, nil, nil, nil, o.Moving, o.Cuts, o.Ends, n*o.SetUp, n*o.Hold, n*o.Rest, o.Total)
	})
}

// days writes what the programme comes to, its visits, and what it was laid out
// with.
func days(b *book, v *report.Plan) error {
	o := v.Programme
	if o == nil || len(o.Slots) == 0 {
		return nil
	}
	least := ""
	if o.AtLeast {
		least = ", at least"
	}
	columns := []column{{head: "Days and visits", width: 30, kind: label}, {head: "", width: 98, kind: value}}
	return b.form("days and visits", columns, func(row func(...any) error) error {
		lines := [][2]any{
			{"days of work" + least, o.Days}, {"person days" + least, fmt.Sprintf("%d, with a crew of %d", o.CrewDays, o.Crew)}, {"tests a day", rounded{o.TestsADay, hundred}},
			{"all minutes", rounded{o.Total, whole}},
		}
		for _, s := range o.Stays {
			lines = append(lines, [2]any{fmt.Sprintf("visit %d", s.Visit), stay(&s)})
		}
		for _, f := range o.Flags {
			lines = append(lines, [2]any{"LOOK", bold(f)})
		}
		for _, x := range o.Left {
			lines = append(lines, [2]any{"not in the programme", x.Section + ": " + x.Why})
		}
		if v.Job != nil {
			for _, d := range v.Job.Register {
				lines = append(lines, [2]any{"drawing " + d.Number, d.Title + "; " + show.Count(d.Pieces, "row") + " of the schedule"})
			}
		}
		for _, f := range o.Figures {
			lines = append(lines, [2]any{f.What, strings.TrimPrefix(f.Value+"; "+f.Basis, "; ")})
		}
		for _, l := range lines {
			if err := row(l[0], l[1]); err != nil {
				return err
			}
		}
		return nil
	})
}

// stay says what a visit is.
func stay(s *report.ProgrammeStay) string {
	text := show.Count(s.Tests, "test") + ", " + show.Count(s.Days, "day")
	for _, x := range [][2]string{{", first day ", s.First}, {", begin by ", s.Begin}, {", latest ", s.Latest}, {", notice by ", s.Notice}} {
		if x[1] != "" {
			text += x[0] + x[1]
		}
	}
	return text
}
