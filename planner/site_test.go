package planner_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"blankoff/planner"
	"blankoff/planner/report"
	"blankoff/planner/rig"
)

// oneRange is a rig of made-up figures with a single range.
func oneRange(name string, low, high float64) string {
	return fmt.Sprintf("name = %q\n[[range]]\nname = \"r\"\nmin_l_s = %g\nmax_l_s = %g\naccuracy_percent = 0\naccuracy_l_s = 0\nown_leak_l_s = 0\n", name, low, high)
}

// With two rigs each section says which one serves it, and the plan says what
// either would do alone.
func TestSeveralRigs(t *testing.T) {
	small, large := oneRange("small", 0.4, 3), oneRange("large", 10, 200)
	csv := "tag,system,kind,diameter_mm,length_mm,from\nA,S1,straight,500,30000,\nB,S1,straight,500,30000,A\nC,S2,straight,200,3000,\nD,S2,straight,200,3000,C\n"
	set := classB(t, small, 400)
	set.Rigs = rig.Fleet{readRig(t, small), readRig(t, large)}
	v := planned(t, csv, set)
	serves := map[string]string{}
	for _, s := range v.Sections {
		serves[s.System] = s.Rig
		if s.UnderRange || s.OverRange {
			t.Errorf("%s: %s", s.ID, s.Reason)
		}
	}
	if serves["S1"] != "large" || serves["S2"] != "small" {
		t.Errorf("%v", serves)
	}
	if len(v.Alone) != 2 || v.Alone[0].Tests <= v.Proof.Tests || v.Alone[1].UnderRange != 1 {
		t.Errorf("alone: %+v", v.Alone)
	}
}

// What one rig can't read another doesn't add to: 0.4 to 3 and 3 to 9 L/s are
// no range from 0.4 to 9 if they belong to two rigs, but a range each.
func TestRigsAreJudgedOneByOne(t *testing.T) {
	f := rig.Fleet{readRig(t, oneRange("a", 0.4, 3)), readRig(t, oneRange("b", 3, 9))}
	for q, want := range map[float64]rig.State{1: rig.In, 2.5: rig.Gap, 3.1: rig.In, 0.3: rig.Under, 8: rig.Over} {
		if got := f.Judge(q, 400, 1.5); got.State != want {
			t.Errorf("limit %g: %s, want %s", q, got.State, want)
		}
	}
}

// Made-up slip joints can't be blanked; open ones can.
func TestSlipJoints(t *testing.T) {
	csv := "tag,kind,diameter_mm,length_mm,from,joint\nA,straight,500,3000,,\nB,straight,500,3000,A,slip\nC,straight,500,3000,B,slip\n"
	set := classB(t, siteRig, 400)
	set.MaxArea = 5
	if v := planned(t, csv, set); len(v.Cuts) != 2 {
		t.Errorf("%d cuts with open joints, want 2", len(v.Cuts))
	}
	set.SlipJoints = "made-up"
	if v := planned(t, csv, set); len(v.Cuts) != 0 || v.Proof.OverRange != 1 {
		t.Errorf("%d cuts with made-up joints, %d over range", len(v.Cuts), v.Proof.OverRange)
	}
}

// By the rule, a row without a test pressure gets the highest usual step that
// its design pressure and its ceiling allow, and never more.
func TestPressureByDesign(t *testing.T) {
	csv := "tag,kind,diameter_mm,length_mm,from,design_pa,sign\nA,straight,500,3000,,%s\nB,straight,500,3000,A,%s\n"
	for _, c := range []struct {
		row  string
		want float64
	}{
		{"650,positive", 400}, {"400,positive", 400}, {"1200,positive", 1000}, {"2500,positive", 1000}, {"700,negative", 400}, {"900,negative", 750},
	} {
		set := settings(t, siteRig)
		set.Class, set.PressureRule = "B", "design"
		v := planned(t, fmt.Sprintf(csv, c.row, c.row), set)
		if got := v.Sections[0].TestPa; got != c.want {
			t.Errorf("design %s: test at %g Pa, want %g", c.row, got, c.want)
		}
	}
	set := settings(t, siteRig)
	set.Class, set.PressureRule = "B", "design"
	p, err := planner.Make(readSchedule(t, fmt.Sprintf(csv, "150,positive", "150,positive")), set)
	if err == nil || !strings.Contains(fmt.Sprint(p.Faults), "test_pa") {
		t.Errorf("a design pressure below every step: %v %+v", err, p.Faults)
	}
}

// By the rule, rows without a test pressure get the mean operating pressure of
// their system and sign, weighed by area: 10 m of 300 Pa and 5 m of 600 Pa of one
// size make 400 Pa, and 3 m of 900 Pa with them 483 Pa. A row's own test pressure
// stays, a system that states nothing has none, and ceilings hold.
func TestPressureByOperating(t *testing.T) {
	csv := "tag,system,kind,diameter_mm,length_mm,from,operating_pa,design_pa,test_pa\n" +
		"A,S1,straight,500,10000,,300,,\nB,,straight,500,5000,A,600,,\nC,,straight,500,7000,B,,,\nD,S2,straight,500,4000,,250,,\nE,S1,straight,500,3000,C,900,,200\n"
	set := settings(t, siteRig)
	set.Class, set.PressureRule = "B", "operating"
	// E is weighed too: (10 x 300 + 5 x 600 + 3 x 900) / 18 = 483
	want := map[string]float64{"A": 483, "B": 483, "C": 483, "D": 250, "E": 200}
	v := planned(t, csv, set)
	for _, s := range v.Sections {
		for _, p := range s.Pieces {
			if s.TestPa != want[p.Tag] {
				t.Errorf("%s at %g Pa, want %g", p.Tag, s.TestPa, want[p.Tag])
			}
		}
	}
	for about, row := range map[string]string{"no test pressure": "X,S3,straight,500,4000,,,,\n", "above the ceiling": "X,S1,straight,500,60,E,,300,\n"} {
		p, err := planner.Make(readSchedule(t, csv+row), set)
		if err != nil || len(p.Faults) != 1 || !strings.Contains(p.Faults[0].Message, about) {
			t.Errorf("%s: %v %+v", about, err, p.Faults)
		}
	}
}

// A damper's flange is as good a place as a mid-run joint of the same price, and
// a better one; with a share in the job file it is cheaper too. Access adds the
// minutes of a level.
func TestNaturalPlaces(t *testing.T) {
	csv := "tag,kind,diameter_mm,length_mm,from,level\nA,straight,500,9000,,L1\nD,inline,500,300,A,L1\nB,straight,500,12000,D,L1\n"
	set := classB(t, siteRig, 400)
	set.MaxArea = 22
	v := planned(t, csv, set)
	if len(v.Cuts) != 1 || v.Cuts[0].Between[0].Tag != "D" && v.Cuts[0].Between[1].Tag != "D" {
		t.Errorf("cuts %+v", v.Cuts)
	}
	set.Prices.Natural, set.Prices.Access = 0.5, map[string]float64{"L1": 4}
	v = planned(t, csv, set)
	// half of 10 + 10 x pi x 0.5 = 12.85, and 4 for access
	if len(v.Cuts) != 1 || v.Cuts[0].Minutes != 16.85 {
		t.Errorf("cuts %+v", v.Cuts)
	}
}

// A seal class stands for another leakage class in each shape, so a section ends
// where the shape changes; the plan says what it was read as.
func TestSealClasses(t *testing.T) {
	csv := "tag,kind,width_mm,height_mm,diameter_mm,length_mm,diameter2_mm,from,duct_class_pa\nA,straight,600,400,,9000,,,750\nT,transition,600,400,,500,400,A,750\nB,straight,,,400,9000,,T,750\n"
	set := settings(t, siteRig)
	set.Scheme, set.Class, set.TestPa = "US", "seal A", 500
	v := planned(t, csv, set)
	classes := ""
	for _, s := range v.Sections {
		classes += s.Class + " "
	}
	if classes != "4 2 " || !strings.Contains(strings.Join(v.Notes, " "), "seal A was read as class 4 for rectangular duct") {
		t.Errorf("classes %s, notes %q", classes, v.Notes)
	}
}

// A person's own cuts: those of the best plan give the best plan, a part of them
// is completed to it, and others are judged beside it.
func TestOwnCuts(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	judged := 0
	for range 60 {
		m := randomModel(r, 9, features{bans: true, musts: true, scopes: true, rings: true})
		set := settings(t, gapRig)
		if m.allOut() {
			continue
		}
		best := planned(t, m.csv, set)
		if len(best.Cuts) < 2 {
			continue
		}
		for keep := range []int{0, 1, 2} {
			set.OwnCuts = nil
			for i, c := range best.Cuts {
				if keep == 0 || i%keep == 0 {
					set.OwnCuts = append(set.OwnCuts, planner.OwnCut{Tag: c.Between[0].Tag, Piece: c.Between[0].Piece, Next: c.Between[1].Tag, NextPiece: c.Between[1].Piece})
				}
			}
			p, err := planner.JudgeCuts(readSchedule(t, m.csv), set)
			if err != nil || len(p.Faults) > 0 {
				t.Fatalf("%v %v\n%s", err, p.Faults, m.csv)
			}
			v := report.Of(p)
			if v.Proof.Score != best.Proof.Score || v.OwnCuts.Best != best.Proof.Score {
				t.Fatalf("%+v with %d of the best cuts, best %+v\n%s", v.Proof.Score, len(set.OwnCuts), best.Proof.Score, m.csv)
			}
			chosen := slices.ContainsFunc(v.Cuts, func(c report.Cut) bool { return c.Why == "your cut" })
			if chosen && (p.Proof.Kind != planner.GivenCuts || strings.Contains(strings.Join(p.Proof.Sentences, " "), "fewest possible")) {
				t.Fatalf("with own cuts the proof is %s: %q", p.Proof.Kind, p.Proof.Sentences)
			}
			if len(set.OwnCuts) == len(best.Cuts) && v.OwnCuts.AsGiven != best.Proof.Score {
				t.Fatalf("as given %+v, best %+v\n%s", v.OwnCuts.AsGiven, best.Proof.Score, m.csv)
			}
			judged++
		}
	}
	if judged < 60 {
		t.Errorf("only %d cases", judged)
	}
}

// A cut that can't be made is a fault that says why.
func TestOwnCutsThatCannotBe(t *testing.T) {
	csv := "tag,kind,width_mm,height_mm,diameter_mm,length_mm,branch_length_mm,from,at_mm\nM,straight,600,400,,6000,,,\nS,spigot,,,200,,100,M,700\nD,straight,,,200,6000,,S,\n"
	for _, c := range []struct {
		cut  planner.OwnCut
		want string
	}{
		{planner.OwnCut{Tag: "M", Next: "S"}, "can't be blanked"},
		{planner.OwnCut{Tag: "M", Next: "D"}, "don't meet"},
		{planner.OwnCut{Tag: "M", Next: "X"}, "there is no 'X'"},
		{planner.OwnCut{Tag: "M", Piece: 9, Next: "M", NextPiece: 10}, "there is no 'M' piece 9"},
		{planner.OwnCut{Tag: "M", Next: "M"}, "several joints"},
	} {
		set := classB(t, siteRig, 400)
		set.OwnCuts = []planner.OwnCut{c.cut}
		p, err := planner.JudgeCuts(readSchedule(t, csv), set)
		if err != nil || len(p.Faults) != 1 || !strings.Contains(p.Faults[0].Message, c.want) {
			t.Errorf("%+v: %v %+v", c.cut, err, p.Faults)
		}
	}
}

// A piece measured through with nothing to take a class from is left outside,
// with its reason.
func TestThroughWithoutADuty(t *testing.T) {
	csv := "tag,kind,diameter_mm,length_mm,from,scope,class\nT20,,,,,,\nT21,straight,400,2269,T20,through,\nA,straight,400,3000,,,B\nB,straight,400,3000,A,,B\n"
	set := settings(t, siteRig)
	set.TestPa = 400
	p, err := planner.Make(readSchedule(t, csv), set)
	if err != nil || len(p.Sections) != 1 || !strings.Contains(fmt.Sprint(p.Outside), "no neighbour to take them from") {
		t.Errorf("%v %+v", err, p.Outside)
	}
}

// Above what the rig can read, a limit that lies higher proves nothing either
// way.
func TestReadingsOverRange(t *testing.T) {
	csv := "tag,kind,diameter_mm,length_mm,from,blank_minutes\nA,straight,1000,3000,,\nB,straight,1000,3000,A,no\n"
	v := planned(t, csv, classB(t, oneRange("small", 0.4, 3), 400))
	text := strings.Join(v.Sections[0].Readings, "; ")
	if !v.Sections[0].OverRange || !strings.Contains(text, "above 3 L/s, or the pressure can't be held: proves nothing") || strings.Contains(text, "fails") {
		t.Errorf("%s", text)
	}
}
