package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/planner/report"
)

const jobText = `project = "north & south school"
reference = "N-7"
revision = "B"
hold = 20
witness = "the engineer"
notice_days = 6
[register]
L0 = "ground floor, B"
[programme]
day_minutes = 400
move_level = 25
`

// planOf makes a plan and reads its JSON back.
func planOf(t *testing.T, line string) *report.Plan {
	t.Helper()
	code, stdout, stderr := typed(t, line+" --format json")
	var v report.Plan
	if err := json.Unmarshal([]byte(stdout), &v); err != nil || code == exitFailed || code == exitMisuse {
		t.Fatalf("%s\nexit %d, %v\n%s", line, code, err, stderr)
	}
	return &v
}

// dated turns the days of a campaign into dates.
func dated(csvText string) string {
	lines := strings.Split(csvText, "\n")
	for i, line := range lines {
		cells := strings.Split(line, ",")
		if i == 0 || len(cells) < 14 {
			continue
		}
		for _, k := range []int{12, 13} {
			cells[k] = fmt.Sprintf("2026-03-%02s", cells[k])
		}
		lines[i] = strings.Join(cells, ",")
	}
	return strings.Join(lines, "\n")
}

// TestProgrammeTiesUp: tests, cuts, capping and moving come to what the proof says
// and moving on top, with and without a job file, with days and without.
func TestProgrammeTiesUp(t *testing.T) {
	days, _ := campaign(3)
	site(t, map[string]string{"days.csv": days, "dates.csv": dated(days), "job.toml": jobText, "good.csv": goodSchedule})
	for _, line := range []string{
		"plan good.csv --rig rig.toml", "plan days.csv --rig rig.toml", "plan dates.csv --rig rig.toml --job job.toml", "plan days.csv --rig rig.toml --job job.toml --test-minutes 120 --aim time",
	} {
		v := planOf(t, line)
		o, pr := v.Programme, &v.Proof
		if len(o.Left) > 0 || len(o.Slots) != pr.Tests {
			t.Fatalf("%s: %d tests of %d, left %v", line, len(o.Slots), pr.Tests, o.Left)
		}
		moving, all, byDay := 0.0, 0.0, 0.0
		for _, s := range o.Slots {
			moving += s.Move
			all += s.Move + s.Cuts + s.Ends + s.SetUp + s.Hold + s.Rest
		}
		for _, d := range o.DayList {
			byDay += d.Minutes
		}
		for what, sum := range map[string]float64{"the proof and moving": pr.TotalMinutes + pr.EndMinutes + moving, "the parts of the tests": all, "the days": byDay} {
			if math.Abs(sum-o.Total) > 1e-6 {
				t.Errorf("%s: %s come to %g min, the programme to %g", line, what, sum, o.Total)
			}
		}
		if o.CrewDays != o.Days*o.Crew || math.Abs(o.TestsADay*float64(o.Days)-float64(pr.Tests)) > 1e-9 {
			t.Errorf("%s: %d days of a crew of %d, %d person days, %g tests a day", line, o.Days, o.Crew, o.CrewDays, o.TestsADay)
		}
	}
}

// TestVisitsHaveDates: every visit begins on its first day, notice is six calendar
// days before it, and no test comes before its section is up.
func TestVisitsHaveDates(t *testing.T) {
	days, _ := campaign(3)
	site(t, map[string]string{"dates.csv": dated(days), "job.toml": jobText})
	v := planOf(t, "plan dates.csv --rig rig.toml --job job.toml")
	o := v.Programme
	if len(o.Stays) != len(v.Visits.List) || len(o.Stays) < 2 {
		t.Fatalf("%d visits, %d in the programme", len(v.Visits.List), len(o.Stays))
	}
	ready := map[string]string{}
	for _, s := range v.Sections {
		ready[s.ID] = s.Ready
	}
	for i, s := range o.Stays {
		var first, notice int
		fmt.Sscanf(s.First, "2026-03-%d", &first)
		if n, _ := fmt.Sscanf(s.Notice, "2026-03-%d", &notice); n == 0 {
			fmt.Sscanf(s.Notice, "2026-02-%d", &notice)
			notice -= 28
		}
		if s.First != v.Visits.List[i].Earliest || first-notice != 6 {
			t.Errorf("visit %d on %s, notice by %s; its sections are up on %s", s.Visit, s.First, s.Notice, v.Visits.List[i].Earliest)
		}
	}
	for i, s := range o.Slots {
		if s.On < ready[s.Section] || s.Retest <= s.On || !slices.Contains(v.Visits.List[s.Visit-1].Sections, s.Section) {
			t.Errorf("%+v, ready on %s", s, ready[s.Section])
		}
		if i > 0 && (s.Day < o.Slots[i-1].Day || s.Visit < o.Slots[i-1].Visit) {
			t.Errorf("%s comes before %s", s.Section, o.Slots[i-1].Section)
		}
	}
}

// TestLeftOutOfProgramme: what is passed or not in the sample takes no time, and
// is named.
func TestLeftOutOfProgramme(t *testing.T) {
	days, _ := campaign(3)
	site(t, map[string]string{"days.csv": days})
	v := planOf(t, "plan days.csv --rig rig.toml --sample 20")
	if o := v.Programme; len(o.Slots) != len(v.Sample.IDs) || len(o.Left) != len(v.Sections)-len(v.Sample.IDs) || o.Left[0].Why != "not in the sample" {
		t.Errorf("%d tests for a sample of %d, left out %v", len(o.Slots), len(v.Sample.IDs), o.Left)
	}
	v.Sections[0].Status = "passed"
	writeJSON(t, "old.json", v)
	w := planOf(t, "plan days.csv --rig rig.toml --keep old.json")
	if o := w.Programme; len(o.Left) != 1 || o.Left[0].Section != v.Sections[0].ID || !strings.Contains(o.Left[0].Why, "passed") {
		t.Errorf("left out %v", o.Left)
	}
}

// TestTimesOfTheJob: a set-up and a hold that the job file asks for have to fit
// into a test; those that it doesn't ask for are only told apart where they fit.
func TestTimesOfTheJob(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule, "job.toml": "hold = 70\n"})
	code, _, stderr := typed(t, "plan good.csv --rig rig.toml --job job.toml")
	if code != exitMisuse || !strings.Contains(stderr, "--test-minutes 100") || !strings.Contains(stderr, "hold of 70") {
		t.Errorf("exit %d: %s", code, stderr)
	}
	if code, _, stderr := typed(t, "plan good.csv --rig rig.toml --job job.toml --test-minutes 100"); code != exitDone {
		t.Errorf("exit %d: %s", code, stderr)
	}
	v := planOf(t, "plan good.csv --rig rig.toml --test-minutes 40")
	if o := v.Programme; o.Parted || o.SetUp+o.Hold != 0 || len(o.Flags) != 1 || !strings.Contains(o.Flags[0], "--test-minutes") {
		t.Errorf("%+v", o)
	}
}

// TestJobHeadsEveryPage: text, JSON and every sheet of the workbook.
func TestJobHeadsEveryPage(t *testing.T) {
	site(t, map[string]string{"good.csv": strings.ReplaceAll(strings.Replace(goodSchedule, ",test_pa", ",test_pa,drawing", 1), ",400\n", ",400,L1\n"), "job.toml": jobText})
	code, stdout, stderr := typed(t, "plan good.csv --rig rig.toml --job job.toml -o pack")
	if code != exitDone || !strings.HasPrefix(stdout, "project   north & south school\nreference N-7\ndrawings  revision B\nwitness   the engineer\n\n1 test") {
		t.Fatalf("exit %d: %s\n%.300s", code, stderr, stdout)
	}
	if !strings.Contains(stdout, "register of the job file doesn't: L1") || !strings.Contains(stdout, "no row of the schedule names: L0") {
		t.Error("the register isn't held against the schedule")
	}
	f, err := excelize.OpenFile("pack/plan.xlsx")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, name := range f.GetSheetList() {
		if h, err := f.GetHeaderFooter(name); err != nil || h.OddHeader != "&Lnorth && south school, N-7, drawings rev. B" {
			t.Errorf("sheet %s: %v, %+v", name, err, h)
		}
	}
	for _, want := range []string{"programme", "days and visits", "kit"} {
		if !slices.Contains(f.GetSheetList(), want) {
			t.Errorf("no sheet %s", want)
		}
	}
	for name, heading := range map[string]string{"programme.csv": "visit", "kit.csv": "group"} {
		file, err := os.Open("pack/" + name)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(file).ReadAll()
		file.Close()
		if err != nil || len(rows) < 2 || rows[0][0] != heading {
			t.Errorf("%s: %v, %v", name, err, rows)
		}
	}
}

// TestKit: one blank of every size at least, one adapter plate to a section, a
// spare where a size is fitted more than four times, and no more.
func TestKit(t *testing.T) {
	days, _ := campaign(3)
	site(t, map[string]string{"days.csv": days, "job.toml": "witness = \"the engineer\"\n[access]\nL2 = 7\n"})
	v := planOf(t, "plan days.csv --rig rig.toml --job job.toml --slip-joints bladder")
	fits, plates := map[string]int{}, map[string]int{}
	for _, s := range v.Sections {
		if s.RigAt == "" || s.TapAt == "" || strings.Split(s.RigAt, ",")[0] == strings.Split(s.TapAt, ",")[0] || s.OpenEndFlow <= 0 {
			t.Errorf("%s: rig %q, tapping %q, %g L/s", s.ID, s.RigAt, s.TapAt, s.OpenEndFlow)
		}
		plates[s.RigFace]++
		for _, b := range s.Blanks {
			fits[fmt.Sprintf("dia %g", b.Diameter)]++
		}
	}
	spare := 0
	for size, n := range fits {
		if n > 4 {
			spare++
		}
		if line := kitLine(v, "blank "+size); line == nil || line.Number < 1 || !strings.Contains(line.Why, fmt.Sprint(n)) {
			t.Errorf("blank %s is fitted %d times; %+v", size, n, line)
		}
	}
	for _, k := range v.Kit {
		if strings.HasPrefix(k.What, "spare") {
			spare--
		}
	}
	if spare != 0 {
		t.Errorf("%d spares too few", spare)
	}
	for size, n := range plates {
		if line := kitLine(v, "adapter plate "+size); line == nil || !strings.Contains(line.Why, fmt.Sprint(n)) {
			t.Errorf("the rig goes to %s in %d sections; %+v", size, n, line)
		}
	}
	for _, want := range []string{"made-up rig", "certificates", "bladders", "notice to the witness", "smoke", "supply"} {
		if kitLine(v, want) == nil {
			t.Errorf("no %s in %+v", want, v.Kit)
		}
	}
	if line := kitLine(v, "way up on L2"); line == nil || !strings.Contains(line.Why, "7 min more") {
		t.Errorf("%+v", line)
	}
}

// kitLine is the first line of the kit that begins so.
func kitLine(v *report.Plan, what string) *report.KitLine {
	for i := range v.Kit {
		if strings.HasPrefix(v.Kit[i].What, what) {
			return &v.Kit[i]
		}
	}
	return nil
}
