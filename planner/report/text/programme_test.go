package text

import (
	"strings"
	"testing"

	"blankoff/planner/report"
	"blankoff/planner/report/internal/testview"
)

// TestProgramme: visits with their days and notice, what was assumed and what the
// job file says, and what has no place.
func TestProgramme(t *testing.T) {
	v := testview.Small()
	v.Job = &report.Job{Project: "school\x1b[2J", Revision: "B", Client: ""}
	v.Visits = &report.Visits{List: []report.Visit{{Earliest: "2026-03-04", Latest: "2026-03-06", Sections: []string{"S01", "S02"}}}}
	v.Programme = &report.Programme{
		TestMinutes: 90, SetUp: 30, Hold: 15, Rest: 45, Parted: true, Tests: 180, Cuts: 60.4, Ends: 30, Moving: 10, Total: 280.4, Days: 1, Crew: 2, CrewDays: 2, TestsADay: 2, CureHours: 48,
		Slots:   []report.Slot{{Section: "S01"}, {Section: "S02"}},
		DayList: []report.ProgrammeDay{{Day: 1, Visit: 1, On: "2026-03-04", Minutes: 280.4, Sections: []string{"S01", "S02"}, Retest: "2026-03-06"}},
		Stays:   []report.ProgrammeStay{{Visit: 1, Tests: 2, Days: 1, First: "2026-03-04", Begin: "2026-03-06", Latest: "2026-03-06", Notice: "2026-02-27"}},
		Left:    []report.LeftTest{{Section: "S03", Why: "not in the sample"}}, Flags: []string{"look here"},
		Figures: []report.Figure{{What: "set-up", Value: "30 min", Basis: "assumption"}, {What: "hold", Value: "15 min", Basis: "job file; and more"}, {What: "days", Value: "", Basis: "follow"}},
	}
	text := planText(t, v)
	if !strings.HasPrefix(text, "project   school?[2J\ndrawings  revision B\n\n3 tests") {
		t.Errorf("%.200q", text)
	}
	wants(t, text,
		"Programme: 1 day of work, 2 tests a day, 2 person days\n", "4 h 40 min = 2 tests of 90 min + cuts 1 h + capping 30 min + moving 10 min\n",
		"set-up 30 + hold 15 + 45 min", "  LOOK      look here\n", "  assumed   set-up 30 min; give")
	fields := strings.Join(strings.Fields(text), " ")
	wants(t, fields, "visit tests days first day begin by latest notice by 1 2 1 2026-03-04 2026-03-06 2026-03-06 2026-02-27", "day on min sections retest from 1 2026-03-04 280 S01, S02 2026-03-06")
	v.Programme.Slots = nil
	if text := planText(t, v); strings.Contains(text, "Programme") {
		t.Error("a programme without tests")
	}
}
