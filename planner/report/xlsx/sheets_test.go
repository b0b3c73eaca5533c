package xlsx

import (
	"fmt"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/planner/report"
	"blankoff/planner/report/internal/testview"
	"blankoff/planner/units"
)

func cellsOf(t *testing.T, f *excelize.File, sheet string) [][]string {
	t.Helper()
	rows, err := f.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// TestOutOfRange: sections over range come first, every cure has a line of its
// own, and a plan without such sections has no such sheet.
func TestOutOfRange(t *testing.T) {
	v := testview.Small()
	rows := cellsOf(t, opened(t, written(t, v)), "out of range")
	var got []string
	for _, r := range rows[1:] {
		got = append(got, r[0]+"|"+r[2]+"|"+r[6])
	}
	want := []string{
		"S03|OVER RANGE|a bigger rig", "S02|UNDER RANGE|a test at 750 Pa, if the specifier agrees",
		"S02||a jumper hose to S01: together 151.1 m2 in one test",
		"||", // until what they were planned for is changed
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got %q, want %q", got, want)
	}
	v.Sections = v.Sections[:1]
	if list := opened(t, written(t, v)).GetSheetList(); strings.Contains(strings.Join(list, ","), "out of range") {
		t.Errorf("sheets %v", list)
	}
}

// TestTotalStandsApart: the sum of the sections is the last row and the filter
// doesn't reach it.
func TestTotalStandsApart(t *testing.T) {
	v := testview.Big(40)
	v.Proof.Tests = 40
	f := opened(t, written(t, v))
	rows := cellsOf(t, f, "sections")
	last := rows[len(rows)-1]
	want := 0.0
	for _, s := range v.Sections {
		want += s.Area
	}
	if len(rows) != 42 || last[0] != "40 tests" || last[7] != fmt.Sprintf("%.2f m2", want) || last[11] != "200" {
		t.Errorf("last of %d rows: %q, want 40 tests, %.2f m2 and 200 blanks", len(rows), last, want)
	}
	for _, n := range f.GetDefinedName() {
		if n.Name == "_xlnm._FilterDatabase" && n.Scope == "sections" && !strings.HasSuffix(n.RefersTo, "$41") {
			t.Errorf("the filter reaches %s", n.RefersTo)
		}
	}
}

// TestGroupingIsNotNought: what isn't known of a grouping isn't shown as 0.
func TestGroupingIsNotNought(t *testing.T) {
	v := testview.Small()
	v.Sections[0].Blanks, v.Proof.EndMinutes = nil, 0
	v.Sections = v.Sections[:1]
	f := opened(t, written(t, v))
	rows := cellsOf(t, f, "sections")
	if rows[1][11] != "?" || !strings.Contains(rows[1][10], "grouping") {
		t.Errorf("section: %q", rows[1])
	}
	told := map[string]string{}
	for _, r := range cellsOf(t, f, "summary") {
		if len(r) > 1 {
			told[r[0]] = r[1]
		}
	}
	if told["groupings"] != "a GROUPING" || told["capping open ends, apart"] != "not known for groupings" || told["blanks to fit, in all tests"] != "not known for groupings" {
		t.Errorf("summary: %q", told)
	}
}

// TestRefusedRows stand after the items, with why and without figures.
func TestRefusedRows(t *testing.T) {
	v := testview.Small()
	v.Takeoff.Refused = []report.Item{{Tag: "R1", Row: 9, Kind: "straight", Quantity: 1, Scope: "in", Area: 5, Notes: []string{"length_mm: give length_mm"}}}
	rows := cellsOf(t, opened(t, written(t, v)), "takeoff")
	r := rows[len(rows)-1]
	if r[1] != "refused" || r[2] != "R1" || r[10] != "" || r[13] != "length_mm: give length_mm" {
		t.Errorf("%q", r)
	}
	if s := rows[3][1]; s != "excluded" {
		t.Errorf("a row out of scope is %q", s)
	}
}

// TestRowHeights: what isn't printed makes no row high, and what is printed on
// one line takes the height of one.
func TestRowHeights(t *testing.T) {
	v := testview.Big(12)
	for i := range v.Sections {
		s := &v.Sections[i]
		s.Cures, s.Notes, s.Places = []string{testview.Long, testview.Long}, []string{testview.Long}, []string{testview.Long}
	}
	for i := range v.Cuts {
		v.Cuts[i].Between[0].Tag = testview.Long
	}
	for i := range v.Takeoff.Items {
		v.Takeoff.Items[i].Notes, v.Takeoff.Items[i].From = []string{testview.Long}, testview.Long
	}
	f := opened(t, written(t, v))
	for _, sheet := range []string{"sections", "cuts", "takeoff"} {
		for row := 2; row <= 12; row++ {
			h, err := f.GetRowHeight(sheet, row)
			if err != nil || h != height(1) {
				t.Errorf("%s, row %d is %g points high, want %g; %v", sheet, row, h, height(1), err)
			}
		}
	}
}

// TestPrintedText: on A4 on its side no sheet that is worked from prints its text
// below 8 points, with a unit of width of 7 pixels at 96 to the inch.
func TestPrintedText(t *testing.T) {
	for _, u := range []units.System{units.SI, units.US} {
		v := testview.Small()
		v.Units = u
		checkPrinted(t, v)
	}
}

func checkPrinted(t *testing.T, v *report.Plan) {
	t.Helper()
	const paper = 297 / 25.4 * 72 // points
	f := opened(t, written(t, v))
	areas := map[string]string{}
	for _, n := range f.GetDefinedName() {
		if n.Name == "_xlnm.Print_Area" {
			areas[n.Scope] = n.RefersTo[strings.LastIndex(n.RefersTo, "$")+1:]
		}
	}
	for _, sheet := range f.GetSheetList() {
		last := len(cellsOf(t, f, sheet)[0])
		if end, ok := areas[sheet]; ok {
			n, err := excelize.ColumnNameToNumber(end)
			if err != nil {
				t.Fatal(err)
			}
			last = n
		}
		sum := 0.0
		for c := 1; c <= last; c++ {
			name, _ := excelize.ColumnNumberToName(c)
			w, err := f.GetColWidth(sheet, name)
			if err != nil {
				t.Fatal(err)
			}
			sum += w * 7 * 72 / 96
		}
		m, err := f.GetPageMargins(sheet)
		if err != nil {
			t.Fatal(err)
		}
		scale := min(1, (paper-72*(*m.Left+*m.Right))/sum)
		if pt := scale * fontSize; pt < 8 {
			t.Errorf("%s prints at %.1f points", sheet, pt)
		}
		foot, err := f.GetHeaderFooter(sheet)
		if err != nil || foot.OddFooter != "&Lnorth && south.csv&C&A&Rpage &P of &N" {
			t.Errorf("%s: foot %+v, %v", sheet, foot, err)
		}
	}
}

// TestLinesOf against lines counted by hand in a cell of 20 units: 105 points
// less the edges, in Arial at 9 points.
func TestLinesOf(t *testing.T) {
	for text, want := range map[string]int{
		"": 1, "planned": 1, "plant room, A2": 1, "change of class, test pressure": 2, "between SA-202 branch and SA-230, workshop wall": 3,
		"長い名前長い名前長い名前長い名前": 2,
	} {
		if got := linesOf(text, room(20)); got != want {
			t.Errorf("%q takes %d lines, want %d", text, got, want)
		}
	}
}

// What is printed of the sheet windows has no more digits than the plan: the limit is
// that of the sections, cut off; all digits are for the screen.
func TestWindowsPrintNoMoreDigits(t *testing.T) {
	v := planned(t, jobs(t)["every kind"])
	f := opened(t, written(t, v))
	windows, sections := cellsOf(t, f, "windows"), cellsOf(t, f, "sections")
	if len(windows) < 2 || windows[0][4] != "limit L/s, cut off" || sections[0][8] != windows[0][4] {
		t.Fatalf("%q %q", windows[0], sections[0])
	}
	for i := range windows[1:] {
		if got, want := windows[i+1][4], sections[i+1][8]; got != want || !strings.HasSuffix(got, " L/s") {
			t.Errorf("%s: %s on windows, %s on sections", sections[i+1][0], got, want)
		}
	}
	columns := newWindow(v, newSettings(v)).heads
	for _, c := range columns {
		if !c.screen && (c.kind == full || c.kind == perM2 || c.kind == flowsFull) {
			t.Errorf("%s is printed with all its digits", c.head)
		}
	}
}

// A limit keeps its zeros, so that 6.00 L/s is told alike everywhere.
func TestLimitsKeepTheirZeros(t *testing.T) {
	v := testview.Small()
	v.Sections[0].Limit = 6.001
	if rows := cellsOf(t, opened(t, written(t, v)), "sections"); rows[1][8] != "6.00 L/s" {
		t.Errorf("%q", rows[1][8])
	}
}
