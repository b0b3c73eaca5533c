package planner_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"blankoff/planner"
	"blankoff/planner/report"
)

// A rig of made-up figures: two ranges that overlap, with a fan curve.
const siteRig = `name = "site rig"
[[range]]
name = "high"
min_l_s = 12
max_l_s = 180
accuracy_percent = 3
accuracy_l_s = 0.2
own_leak_l_s = 0.2
fan = [{pressure_pa = 100, flow_l_s = 220}, {pressure_pa = 500, flow_l_s = 190}, {pressure_pa = 1500, flow_l_s = 60}]
[[range]]
name = "low"
min_l_s = 0.8
max_l_s = 14
accuracy_percent = 3
accuracy_l_s = 0.03
own_leak_l_s = 0.02
fan = [{pressure_pa = 100, flow_l_s = 20}, {pressure_pa = 2000, flow_l_s = 15}]
`

// mainWithBranches is a rectangular main with a spigot and a run of round duct
// every three metres.
func mainWithBranches(n int, at bool) string {
	var b strings.Builder
	b.WriteString("tag,system,level,kind,width_mm,height_mm,diameter_mm,length_mm,branch_length_mm,from,at_mm,duct_class_pa\n")
	fmt.Fprintf(&b, "M1,S1,L1,straight,800,500,,%d,,,,1000\n", 3000*n)
	for i := range n {
		place := ""
		if at {
			place = fmt.Sprint(3000*i + 700)
		}
		fmt.Fprintf(&b, "SP%d,S1,L1,spigot,,,250,,100,M1,%s,1000\n", i+1, place)
		fmt.Fprintf(&b, "D%d,S1,L1,straight,,,250,9000,,SP%d,,1000\n", i+1, i+1)
	}
	return b.String()
}

func classB(t testing.TB, rig string, pa float64) planner.Settings {
	set := settings(t, rig)
	set.Class, set.TestPa = "B", pa
	return set
}

// 24 in is 609.6 mm: the same schedule in exact inches gives the same plan.
func TestInchesGiveTheSamePlan(t *testing.T) {
	mm := "tag,kind,width_mm,height_mm,length_mm,from\nA,straight,609.6,406.4,22860,\nB,straight,508,406.4,22860,A\n"
	in := "tag,kind,width (in),height (in),length (in),from\nA,straight,24,16,900,\nB,straight,20,16,900,A\n"
	set := classB(t, siteRig, 400)
	set.MaxArea = 70
	a, b := planned(t, mm, set), planned(t, in, set)
	if len(a.Sections) < 2 || shape(a) != shape(b) {
		t.Errorf("mm:\n%s\ninches:\n%s", shape(a), shape(b))
	}
}

// A straight written as two at a joint costs the same.
func TestStraightWrittenAsTwo(t *testing.T) {
	heads := "tag,kind,width_mm,height_mm,length_mm,from\n"
	set := classB(t, siteRig, 400)
	one := planned(t, heads+"A,straight,1000,800,60000,\nB,straight,600,400,30000,A\n", set)
	two := planned(t, heads+"A,straight,1000,800,24000,\nA2,straight,1000,800,36000,A\nB,straight,600,400,30000,A2\n", set)
	if one.Proof.Score != two.Proof.Score || one.Proof.Tests < 2 {
		t.Errorf("one straight %+v, two %+v", one.Proof.Score, two.Proof.Score)
	}
}

// Other tags in the same order cost the same.
func TestTagsAreOnlyNames(t *testing.T) {
	set := classB(t, siteRig, 400)
	set.MaxArea = 60
	csv := mainWithBranches(12, true)
	a := planned(t, csv, set)
	b := planned(t, strings.NewReplacer("\nM1,", "\nPlant/main,", ",M1,", ",Plant/main,", "SP", "X-").Replace(csv), set)
	if a.Proof.Score != b.Proof.Score || a.Proof.Tests < 2 {
		t.Errorf("%+v and %+v", a.Proof.Score, b.Proof.Score)
	}
}

// A straight with spigots of unknown place isn't cut inside, and the plan says
// so; with places it is.
func TestSpigotsOfUnknownPlace(t *testing.T) {
	set := classB(t, siteRig, 400)
	set.MaxArea = 60
	known, unknown := planned(t, mainWithBranches(10, true), set), planned(t, mainWithBranches(10, false), set)
	inside := func(v *report.Plan) (n int) {
		for _, c := range v.Cuts {
			if c.Between[0].Tag == "M1" && c.Between[1].Tag == "M1" {
				n++
			}
		}
		return n
	}
	if inside(known) == 0 || inside(unknown) != 0 {
		t.Errorf("cuts inside the main: %d with places, %d without", inside(known), inside(unknown))
	}
	said := false
	for _, it := range unknown.Takeoff.Items {
		for _, note := range it.Notes {
			said = said || strings.Contains(note, "at_mm")
		}
	}
	if !said {
		t.Error("the plan doesn't say why the main isn't cut")
	}
	// The same duct either way: 30 m of 800 x 500 and ten runs of d250.
	if math.Abs(known.TakeoffM2-unknown.TakeoffM2) > 1e-9 {
		t.Errorf("areas differ: %g and %g", known.TakeoffM2, unknown.TakeoffM2)
	}
}

// A cut inside a straight can be found on site.
func TestCutInsideAStraightHasItsPlace(t *testing.T) {
	set := classB(t, siteRig, 400)
	set.MaxArea = 70
	v := planned(t, "tag,kind,width_mm,height_mm,length_mm,from\nD12,straight,1000,1000,45000,\nD13,straight,1000,1000,3000,D12\n", set)
	for _, c := range v.Cuts {
		if !strings.Contains(c.At, "D12 after piece ") || !strings.Contains(c.At, " m from its plant end") {
			t.Errorf("cut %q", c.At)
		}
	}
	if len(v.Cuts) == 0 {
		t.Error("180 m2 weren't cut")
	}
}

// Force on a blank is test pressure times the area of the opening: 400 Pa on
// 0.6 x 0.4 m is 96 N.
func TestForceOnBlanks(t *testing.T) {
	v := planned(t, "tag,kind,width_mm,height_mm,length_mm,from\nD1,straight,600,400,9000,\nD2,straight,600,400,9000,D1\n", classB(t, siteRig, 400))
	for _, b := range v.Sections[0].Blanks {
		if math.Abs(b.Force-96) > 1e-9 || b.Why != "open end" {
			t.Errorf("blank %+v", b)
		}
	}
	if n := len(v.Sections[0].Blanks); n != 2 {
		t.Errorf("%d blanks on a straight, want 2", n)
	}
}

// Loose rows are grouped and the plan says that it is a grouping; a system that
// is joined keeps its proof.
func TestLooseRowsAreAGrouping(t *testing.T) {
	v := planned(t, `tag,system,level,kind,diameter_mm,length_mm,from
A1,S1,L1,straight,500,12000,
A2,S1,L1,straight,500,12000,A1
B1,S2,L1,straight,500,30000,
B2,S2,L1,straight,500,30000,
B3,S2,L2,straight,500,30000,
`, classB(t, siteRig, 400))
	kinds := map[string]string{}
	for _, s := range v.Proof.BySystem {
		kinds[s.System] = s.Kind
	}
	if kinds["S1"] != planner.Optimal || kinds["S2"] != planner.Grouped || v.Proof.Kind != planner.Grouped {
		t.Errorf("proofs %v, all %s", kinds, v.Proof.Kind)
	}
	for _, s := range v.Sections {
		if s.System == "S2" && (!s.Grouping || len(s.Levels) != 1) {
			t.Errorf("%s: grouping %v, levels %v", s.ID, s.Grouping, s.Levels)
		}
	}
}

// Mismatched openings are reported.
func TestMismatchIsReported(t *testing.T) {
	v := planned(t, "tag,kind,width_mm,height_mm,length_mm,from\nA,straight,600,400,9000,\nB,straight,500,400,9000,A\n", classB(t, siteRig, 400))
	if len(v.Mismatches) != 1 || !strings.Contains(v.Mismatches[0], "600 x 400 meets 500 x 400") {
		t.Errorf("mismatches %q", v.Mismatches)
	}
}

// A ring is named and may be left uncut where it fits one section.
func TestRing(t *testing.T) {
	csv := `tag,kind,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,from,joins
T1,tee,400,1000,400,200,,
A,straight,400,9000,,,T1,
B,straight,400,9000,,,T1/branch,A
`
	v := planned(t, csv, classB(t, siteRig, 400))
	named := false
	for _, n := range v.Notes {
		named = named || strings.Contains(n, "ring: ")
	}
	if !named {
		t.Errorf("the ring isn't named: %q", v.Notes)
	}
	if len(v.Sections) != 1 || len(v.Cuts) != 0 {
		t.Errorf("%d sections, %d cuts for a ring that fits one section", len(v.Sections), len(v.Cuts))
	}
	set := classB(t, siteRig, 400)
	set.MaxArea = 15
	if v = planned(t, csv, set); len(v.Cuts) < 2 || v.Proof.Kind != planner.Optimal {
		t.Errorf("a ring in two sections has %d cuts, proof %s", len(v.Cuts), v.Proof.Kind)
	}
}

// A change of class at a joint that can't be blanked is named with its cures,
// and what hangs together there is left outside.
func TestClassChangeAtAWall(t *testing.T) {
	v := planned(t, `tag,kind,width_mm,height_mm,diameter_mm,length_mm,branch_length_mm,from,at_mm,class,test_pa
M1,straight,800,500,,12000,,,,B,400
S1,spigot,,,250,,100,M1,700,C,400
D1,straight,,,250,30000,,S1,,C,400
`, settings(t, siteRig))
	text := fmt.Sprint(v.Outside, v.Notes)
	for _, want := range []string{"change of class", "can't be blanked", "tighter class C", "piece by piece"} {
		if !strings.Contains(text, want) {
			t.Errorf("nothing said of %q: %s", want, text)
		}
	}
	if len(v.Outside) != 2 || math.Abs(v.Balance.Difference) > 1e-9 {
		t.Errorf("outside %+v, balance %+v", v.Outside, v.Balance)
	}
}

// What the tests need and nobody gave is a fault, said once.
func TestNothingIsGuessed(t *testing.T) {
	csv := "tag,kind,diameter_mm,length_mm\nA,straight,500,9000\nB,straight,500,9000\n"
	for _, c := range []struct {
		name    string
		set     func(*planner.Settings)
		heading string
	}{
		{"no class anywhere", func(s *planner.Settings) { s.TestPa = 400 }, "class"},
		{"no pressure anywhere", func(s *planner.Settings) { s.Class = "B" }, "test_pa"},
	} {
		set := settings(t, siteRig)
		c.set(&set)
		p, err := planner.Make(readSchedule(t, csv), set)
		if err == nil || p == nil || len(p.Faults) != 1 || p.Faults[0].Heading != c.heading {
			t.Errorf("%s: error %v, faults %+v", c.name, err, p.Faults)
		}
	}
}

// Above a ceiling is refused with the value that is allowed: EN 12237 circular,
// class B, 1000 Pa; the duct's own class and design pressure cap as well.
func TestCeilings(t *testing.T) {
	for _, c := range []struct{ row, allowed string }{
		{"A,straight,,,500,9000,1500,,", "1000"},
		{"A,straight,600,400,,9000,600,,500", "500"},
		{"A,straight,600,400,,9000,600,550,", "550"},
	} {
		csv := "tag,kind,width_mm,height_mm,diameter_mm,length_mm,test_pa,design_pa,duct_class_pa\n" + c.row + "\n"
		set := settings(t, siteRig)
		set.Class = "B"
		p, err := planner.Make(readSchedule(t, csv), set)
		if err == nil || len(p.Faults) != 1 || !strings.Contains(p.Faults[0].Expected, c.allowed) || p.Faults[0].Heading != "test_pa" {
			t.Errorf("%s: error %v, faults %+v", c.row, err, p.Faults)
		}
	}
}

// A section under range has cures with figures.
func TestCures(t *testing.T) {
	csv := "tag,system,kind,diameter_mm,length_mm,from\nA,S1,straight,200,1500,\nB,S2,straight,200,1200,\n"
	v := planned(t, csv, classB(t, siteRig, 200))
	for _, s := range v.Sections {
		text := strings.Join(s.Cures, "; ")
		if !s.UnderRange || !strings.Contains(text, "1000 Pa") || !strings.Contains(text, "L/s") {
			t.Errorf("%s: under %v, cures %q", s.ID, s.UnderRange, text)
		}
	}
	csv = "tag,kind,diameter_mm,length_mm,from,blank_minutes\nA,straight,200,1500,,\nB,straight,200,1200,A,must\n"
	v = planned(t, csv, classB(t, siteRig, 200))
	if text := strings.Join(v.Sections[0].Cures, "; "); !strings.Contains(text, "lifting the boundary") {
		t.Errorf("cures %q", text)
	}
}

// Sections end at levels where that is asked for; a spigot stays with its wall.
func TestByLevel(t *testing.T) {
	set := classB(t, siteRig, 400)
	csv := `tag,level,kind,diameter_mm,length_mm,branch_length_mm,from,at_mm
R,L1,straight,500,9000,,,
U,L2,straight,500,9000,,R,
S,L3,spigot,250,,100,U,1500
D,L3,straight,250,9000,,S,
`
	if v := planned(t, csv, set); len(v.Sections) != 1 {
		t.Errorf("%d sections without --by", len(v.Sections))
	}
	set.By = "level"
	v := planned(t, csv, set)
	if len(v.Sections) != 3 {
		t.Errorf("%d sections by level, want 3", len(v.Sections))
	}
	for _, p := range v.Sections[1].Pieces {
		if p.Tag == "S" {
			return
		}
	}
	t.Errorf("the spigot isn't with its wall: %+v", v.Sections)
}

// A group is kept together where it hangs together, and is a fault where it
// doesn't.
func TestGroups(t *testing.T) {
	heads := "tag,kind,diameter_mm,length_mm,from,group\n"
	set := classB(t, siteRig, 400)
	set.MaxArea = 8
	together := planned(t, heads+"A,straight,500,3000,,\nB,straight,500,3000,A,g\nC,straight,500,3000,B,g\nD,straight,500,3000,C,\n", set)
	for _, c := range together.Cuts {
		if c.Between[0].Tag == "B" && c.Between[1].Tag == "C" {
			t.Error("a group was cut")
		}
	}
	if together.Proof.OverRange != 1 { // 9.4 m2 that can't be cut, at most 8 wanted
		t.Errorf("%d over range, want 1", together.Proof.OverRange)
	}
	p, err := planner.Make(readSchedule(t, heads+"A,straight,500,3000,,g\nB,straight,500,3000,A,\nC,straight,500,3000,B,g\n"), set)
	if err != nil || len(p.Faults) != 1 || p.Faults[0].Heading != "group" || p.RefusedRows != 1 {
		t.Errorf("error %v, faults %+v", err, p.Faults)
	}
}

// A greatest area inside the hole between two ranges: a section there is under
// range, in the gap, and not over range, and isn't cut up for it.
func TestMaxAreaInTheGap(t *testing.T) {
	// 8.04 m2 at class B and 400 Pa: the limit 3.6 L/s lies between 1.9 and 5.2.
	csv := "tag,kind,diameter_mm,length_mm,from,blank_minutes\nA,straight,800,1600,,\nB,straight,800,1600,A,no\n"
	set := classB(t, gapRig, 400)
	set.MaxArea = 11
	v := planned(t, csv, set)
	if s := v.Sections[0]; len(v.Sections) != 1 || !s.UnderRange || s.OverRange || !strings.Contains(s.Reason, "gap") {
		t.Errorf("%+v", v.Sections)
	}
	// 7.54 m2 in pieces that may be cut: one section in the gap is better than
	// several below the range.
	csv = "tag,kind,diameter_mm,length_mm,from\nA,straight,800,1000,\nB,straight,800,1000,A\nC,straight,800,1000,B\n"
	if v = planned(t, csv, set); v.Proof.UnderRange+v.Proof.OverRange > 1 {
		t.Errorf("%+v", v.Proof.Score)
	}
}

// Cuts inside a straight are priced as joints between rows are.
func TestInsideCutsCostTheSame(t *testing.T) {
	set := classB(t, siteRig, 400)
	set.MaxArea = 10
	one := planned(t, "tag,kind,diameter_mm,length_mm,from\nA,straight,200,24000,\nZ,straight,200,3000,A\n", set)
	two := planned(t, "tag,kind,diameter_mm,length_mm,from\nA,straight,200,12000,\nB,straight,200,12000,A\nZ,straight,200,3000,B\n", set)
	if one.Proof.Score != two.Proof.Score {
		t.Errorf("%+v and %+v", one.Proof.Score, two.Proof.Score)
	}
}

// Among plans that cost the same, sections aren't smaller than the scheme asks
// for, and they are alike in size: 90 m2 in four, none over 30, is 22.5 each.
func TestSectionsAreEven(t *testing.T) {
	set := classB(t, siteRig, 400)
	set.MaxArea = 29
	v := planned(t, "tag,kind,width_mm,height_mm,length_mm,from\nA,straight,600,400,45000,\nB,cap,600,400,,A\n", set)
	if len(v.Sections) != 4 {
		t.Fatalf("%d sections", len(v.Sections))
	}
	for _, s := range v.Sections {
		if s.Area < 20 || s.Area > 25 {
			t.Errorf("%s has %.1f m2", s.ID, s.Area)
		}
	}
}

// What a reading means: a section in range, and one under it.
func TestReadings(t *testing.T) {
	set := classB(t, gapRig, 400)
	// 1.88 m2 of class B at 400 Pa may lose 0.83 L/s, and 0.85 is the least that can be read.
	v := planned(t, "tag,kind,diameter_mm,length_mm,from\nA,straight,300,1000,\nB,straight,300,1000,A\n", set)
	if text := strings.Join(v.Sections[0].Readings, "; "); !strings.Contains(text, "proves nothing") || strings.Contains(text, "passes") {
		t.Errorf("%s", text)
	}
	// 3.77 m2 may lose 1.66 L/s.
	v = planned(t, "tag,kind,diameter_mm,length_mm,from\nA,straight,300,2000,\nB,straight,300,2000,A\n", set)
	text := strings.Join(v.Sections[0].Readings, "\n")
	for _, want := range []string{"below 0.85 L/s: passes; no figure", "0.85 to 1.66 L/s: passes", "1.66 to 2.92 L/s: fails", "2.92 to 5.15 L/s: can't be read", "above 13.4 L/s"} {
		if !strings.Contains(text, want) {
			t.Errorf("nothing of %q in:\n%s", want, text)
		}
	}
}
