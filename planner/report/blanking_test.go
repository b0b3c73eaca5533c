package report_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"blankoff/planner"
	"blankoff/planner/report"
	"blankoff/planner/rig"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

const heads = "tag,system,kind,width_mm,height_mm,length_mm,from,ready,closed\n"

// planOf plans a schedule with a rig that reads 10 to 20 m2 in class B at 400 Pa.
func planOf(t *testing.T, csv string) *planner.Plan {
	t.Helper()
	r, _, err := rig.Load(strings.NewReader("name = \"r\"\n[[range]]\nname = \"a\"\nmin_l_s = 4.43\nmax_l_s = 8.84\n"), "rig.toml")
	if err != nil {
		t.Fatal(err)
	}
	tk := takeoff.New(takeoff.Options{})
	info, err := schedule.ReadFrom("test.csv", []byte(csv), func(r *takeoff.Row) error { tk.Add(r); return nil })
	if err != nil {
		t.Fatal(err)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	set := planner.Defaults()
	set.Rigs, set.Class, set.TestPa, set.Headroom = rig.Fleet{r}, "B", 400, 1
	p, err := planner.Make(tk, set)
	if err != nil {
		t.Fatalf("%v: %v", err, p.Faults)
	}
	return p
}

// duct is 15 m2 of 600 x 400: six pieces and a half of 1.5 m, 2 m of girth.
func duct(tag, system, from, ready, closed string) string {
	return fmt.Sprintf("%s,%s,straight,600,400,7500,%s,%s,%s\n", tag, system, from, ready, closed)
}

// Three sections in a row of one size: an end, two cuts and an end: 6 fits. Two
// of them in one test at most: 2 makes. Both cuts are turned: 2 moves are left.
func TestBlankingOfARow(t *testing.T) {
	p := planOf(t, heads+duct("A", "S", "", "", "")+duct("B", "S", "A", "", "")+duct("C", "S", "B", "", ""))
	b := report.Of(p).Blanking
	if b.Fits != 6 || b.Makes != 2 || b.Turned != 2 || b.Moves != 2 || !b.Proved || !slices.Equal(b.Order, []string{"S01", "S02", "S03"}) {
		t.Errorf("%+v", b)
	}
	if len(b.Sizes) != 1 || b.Sizes[0].Text != "600 x 400" || b.Sizes[0].Fits != 6 || b.Sizes[0].Makes != 2 {
		t.Errorf("%+v", b.Sizes)
	}
	for _, m := range b.Moving {
		for _, s := range m.Steps {
			if s.How == "turn" && !strings.Contains(s.At, "piece") && !strings.HasPrefix(s.At, "between") {
				t.Errorf("turned at %s", s.At)
			}
		}
	}
	p.Settings.Ahead = true // 2 + 2 less the one that is turned
	if b = report.Of(p).Blanking; b.Makes != 3 || !b.Ahead || !b.Proved {
		t.Errorf("ahead: %+v", b)
	}
}

// What lies the other way round is the same blank.
func TestBlankingUpright(t *testing.T) {
	p := planOf(t, heads+"A,S,straight,600,400,3750,,,\nA2,S,straight,600,400,3750,A,,\nB,T,straight,400,600,3750,,,\nB2,T,straight,400,600,3750,B,,\n")
	if b := report.Of(p).Blanking; len(b.Sizes) != 1 || b.Makes != 2 || b.Fits != 4 || b.Moves != 2 || len(b.Moving) != 2 {
		t.Errorf("%+v", b)
	}
}

// The order keeps to the visits, though the joint between A and B is then turned
// in another test than the next one.
func TestBlankingKeepsToVisits(t *testing.T) {
	p := planOf(t, heads+duct("A", "S", "", "5", "9")+duct("B", "S", "A", "1", "3")+duct("C", "S", "B", "1", "9"))
	v := report.Of(p)
	if len(v.Visits.List) != 2 || !slices.Equal(v.Visits.List[0].Sections, []string{"S02", "S03"}) {
		t.Fatalf("%+v", v.Visits)
	}
	if b := v.Blanking; !slices.Equal(b.Order, []string{"S03", "S02", "S01"}) || b.Turned != 2 || !b.Proved {
		t.Errorf("%+v", b)
	}
}

// What is tested already is left out of the order, and its blanks with it.
func TestBlankingLeavesOutWhatIsTested(t *testing.T) {
	p := planOf(t, heads+duct("A", "S", "", "", "")+duct("B", "S", "A", "", "")+duct("C", "S", "B", "", ""))
	p.Sections[1].Status = "passed"
	b := report.Of(p).Blanking
	if !slices.Equal(b.Order, []string{"S01", "S03"}) || b.Fits != 4 || b.Turned != 0 || b.Moves != 2 || !slices.Equal(b.LeftOut, []string{"S02"}) {
		t.Errorf("%+v", b)
	}
	for i := range p.Sections {
		p.Sections[i].Status = "tested"
	}
	if report.Of(p).Blanking != nil {
		t.Error("an order of no tests")
	}
}

// Of loose rows no inner blank is known.
func TestBlankingOfGroupings(t *testing.T) {
	loose := "E,L,straight,600,400,3750,,,\nF,L,straight,600,400,3750,,,\n"
	if v := report.Of(planOf(t, heads+loose)); v.Blanking != nil || v.Untested != nil {
		t.Errorf("%+v %+v", v.Blanking, v.Untested)
	}
	v := report.Of(planOf(t, heads+duct("A", "S", "", "", "")+duct("B", "S", "A", "", "")+loose))
	if b := v.Blanking; len(b.Groupings) != 1 || len(b.Order) != 2 || slices.Contains(b.Order, b.Groupings[0]) {
		t.Errorf("%+v", b)
	}
}

// The joint of the cut between two straights of 15 m2 is 2 m; a piece of 1.5 m is
// 3 m2 and its other joint costs what the cut's blank did.
func TestUntestedJoint(t *testing.T) {
	v := report.Of(planOf(t, heads+duct("A", "S", "", "", "")+duct("B", "S", "A", "", ""))).Untested
	if v.Joints != 1 || v.Metres != 2 || v.Overlaps != 1 || v.Blanks != 0 || v.Minutes != 0 || v.Area < 2.99 || v.Area > 3.01 || len(v.List) != 1 {
		t.Fatalf("%+v", v)
	}
	if j := v.List[0]; j.Cut != 1 || j.Size != "600 x 400" || len(j.Takes) != 1 || j.Section == "" || j.Why != "" {
		t.Errorf("%+v", j)
	}
	if v := report.Of(planOf(t, heads+"A,S,straight,600,400,3750,,,\nA2,S,straight,600,400,3750,A,,\n")); v.Untested != nil {
		t.Errorf("%+v", v.Untested)
	}
}
