package show

import (
	"testing"

	"blankoff/planner/report"
	"blankoff/planner/report/internal/testview"
	"blankoff/planner/units"
)

func TestWay(t *testing.T) {
	m := &report.BlankMoves{No: 2, Steps: []report.BlankStep{
		{Section: "S03", How: "fit"}, {Section: "S07", How: "move"}, {Section: "S08", How: "turn"}, {Section: "S11", How: "move"},
	}}
	for most, want := range map[int]string{9: "S03, then S07, turned for S08, then S11", 4: "S03, then S07, turned for S08, then S11", 2: "S03, then S07 and 2 more"} {
		if got := Way(m, most); got != want {
			t.Errorf("at most %d: %q, want %q", most, got, want)
		}
	}
}

func TestNeedsAndWorth(t *testing.T) {
	b := &report.Blanking{Fits: 59, Makes: 30, Moves: 25, Turned: 4, LeastMakes: 30, LeastMoves: 25, Proved: true}
	if got := Needs(b); got != "30 makes for 59 fits; 25 moves, 4 more only turned at their joint" {
		t.Error(got)
	}
	for _, tt := range []struct {
		makes, moves int
		want         string
	}{
		{30, 24, "no order needs fewer makes; whether fewer moves would do isn't proved: at least 24"},
		{28, 20, "not proved the best: every order needs at least 28 makes, and with no more than these at least 20 moves"},
	} {
		b.LeastMakes, b.LeastMoves, b.Proved = tt.makes, tt.moves, false
		if got := OrderWorth(b); got != tt.want {
			t.Errorf("%q, want %q", got, tt.want)
		}
	}
}

func TestUntestedSum(t *testing.T) {
	u := testview.Small().Untested
	want := "2 joints, 4.5 m of joint, stay untested; overlapping would test 1 of them (1.3 m) for 12 min, 1 more blank and 3.8 m2 tested twice; 1 can't be: change of class"
	if got := UntestedSum(u); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	u.Blanks, u.Minutes = -1, -0.2
	if got, want := overlapCost(&u.OverlapCost, units.SI), "0 min, 1 blank fewer and 3.8 m2 tested twice"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	one := &report.Untested{Joints: 1, Metres: 3.2, List: u.List[1:]}
	if got := UntestedSum(one); got != "1 joint, 3.2 m of joint, stays untested; 1 can't be: change of class" {
		t.Error(got)
	}
	for _, why := range []string{"a", "b", "c", "d"} {
		one.List, one.Joints = append(one.List, report.UntestedJoint{Why: why}), one.Joints+1
	}
	if got := UntestedSum(one); got != "5 joints, 3.2 m of joint, stay untested; 5 can't be, for the reasons listed" {
		t.Error(got)
	}
}
