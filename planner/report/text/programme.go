package text

import (
	"bufio"
	"fmt"
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// jobHead writes what heads every page.
func jobHead(b *bufio.Writer, j *report.Job) {
	lines := j.Lines()
	for _, l := range lines {
		paragraph(b, fmt.Sprintf("%-10s", l.Word), l.Text)
	}
	if len(lines) > 0 {
		b.WriteString("\n")
	}
}

// programme writes how the tests fill days and visits.
func programme(b *bufio.Writer, v *report.Plan) {
	o := v.Programme
	if o == nil || len(o.Slots) == 0 {
		return
	}
	least := ""
	if o.AtLeast {
		least = "at least "
	}
	title(b, fmt.Sprintf("Programme: %s%s of work, %s a day, %s", least, show.Count(o.Days, "day"), tests(o.TestsADay), show.Count(o.CrewDays, "person day")))
	paragraph(b, "  time      ", fmt.Sprintf("%s = %s of %s min + cuts %s + capping %s + moving %s",
		hours(o.Total), show.Count(len(o.Slots), "test"), plain(o.TestMinutes), hours(o.Cuts), hours(o.Ends), hours(o.Moving)))
	if o.Parted {
		paragraph(b, "  test      ", fmt.Sprintf("set-up %s + hold %s + %s min to raise the pressure, let it steady, read and let it down", plain(o.SetUp), plain(o.Hold), plain(o.Rest)))
	}
	paragraph(b, "  retest    ", fmt.Sprintf("%s h after resealing at the earliest; sooner where only a gasket or a cap was put right", plain(o.CureHours)))
	for _, f := range o.Flags {
		paragraph(b, "  LOOK      ", f)
	}
	stays(b, v)
	programmeDays(b, o)
	paragraph(b, "  assumed   ", strings.Join(o.Assumed(), ", ")+"; give your own with --test-minutes and in a job file; plan.json says where each comes from")
}

// tests writes how many tests a day there are.
func tests(n float64) string {
	s := upTo(n, 1)
	if s == "1" {
		return "1 test"
	}
	return s + " tests"
}

// stays writes the visits with the days that they take, where the schedule tells
// days.
func stays(b *bufio.Writer, v *report.Plan) {
	if v.Visits == nil {
		return
	}
	writeTable(b, []Column{
		{Head: "visit", Align: Right}, {Head: "tests", Align: Right}, {Head: "days", Align: Right}, {Head: "first day"}, {Head: "begin by"}, {Head: "latest"}, {Head: "notice by"},
	}, func(row func(...string)) {
		for i, x := range v.Programme.Stays {
			if i == most {
				return
			}
			row(strconv.Itoa(x.Visit), strconv.Itoa(x.Tests), strconv.Itoa(x.Days), x.First, x.Begin, x.Latest, x.Notice)
		}
	})
	if n := len(v.Programme.Stays) - most; n > 0 {
		more(b, n, hasAll)
	}
}

// programmeDays writes one line a day.
func programmeDays(b *bufio.Writer, o *report.Programme) {
	writeTable(b, []Column{
		{Head: "day", Align: Right}, {Head: "on"}, {Head: "min", Align: Right}, {Head: "sections"}, {Head: "retest from"},
	}, func(row func(...string)) {
		for i, d := range o.DayList {
			if i == most {
				return
			}
			row(strconv.Itoa(d.Day), d.On, whole(d.Minutes), show.Names(d.Sections, ", ", most, 60), d.Retest)
		}
	})
	if n := len(o.DayList) - most; n > 0 {
		more(b, n, hasAll)
	}
}
