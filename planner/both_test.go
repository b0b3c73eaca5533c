package planner_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"blankoff/planner"
	"blankoff/planner/report"
	"blankoff/takeoff"
	"blankoff/takeoff/bases"
	"blankoff/takeoff/schedule"
)

// onBasis plans a schedule that is measured on a basis.
func onBasis(t *testing.T, csv, basis string, set planner.Settings) *report.Plan {
	t.Helper()
	b, err := bases.Lookup(basis)
	if err != nil {
		t.Fatal(err)
	}
	tk := takeoff.New(takeoff.Options{Basis: b})
	info, err := schedule.ReadFrom("test.csv", []byte(csv), func(r *takeoff.Row) error {
		tk.Add(r)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	p, err := planner.Make(tk, set)
	if err != nil || len(p.Faults) > 0 {
		t.Fatalf("%v %+v", err, p.Faults)
	}
	return report.Of(p)
}

// bends is a run of straights and bends; measured to the intersection a bend of
// radius 1.5 d is 27 % larger than it is.
func bends(n int) string {
	var b strings.Builder
	b.WriteString("tag,kind,diameter_mm,length_mm,angle_deg,radius_mm,from\nA0,straight,400,3000,,,\n")
	for i := 1; i <= n; i++ {
		fmt.Fprintf(&b, "B%d,bend,400,,90,600,A%d\nA%d,straight,400,1500,,,B%d\n", i, i-1, i, i)
	}
	return b.String()
}

// The plan on a basis uses its areas, with the exact ones beside them, and the
// joints straddled by openings stay barred on a basis that keeps openings in.
func TestPlanOnABasis(t *testing.T) {
	csv := bends(12)
	set := classB(t, siteRig, 400)
	exact, to := onBasis(t, csv, "exact", set), onBasis(t, csv, "to-intersection", set)
	if math.Abs(exact.TakeoffM2-to.ExactM2) > 1e-9 {
		t.Errorf("exactly %g, on the basis exactly %g", exact.TakeoffM2, to.ExactM2)
	}
	// Twelve bends: girth pi 0.4, length 2 x 0.6 instead of 0.6 pi/2 each.
	if got, want := to.TakeoffM2-to.ExactM2, 12*math.Pi*0.4*0.6*(2-math.Pi/2); math.Abs(got-want) > 1e-9 {
		t.Errorf("the basis adds %g m2, want %g", got, want)
	}
	if to.Balance.Difference > 1e-9 || exact.Balance.Difference > 1e-9 {
		t.Error("the balance is out")
	}
}

// Held to both, the limit goes by the smaller area and the rig's upper end by
// the larger.
func TestHeldToBothBases(t *testing.T) {
	csv := bends(24)
	set := classB(t, gapRig, 400)
	set.HoldBoth = true
	v := onBasis(t, csv, "to-intersection", set)
	windows := gapWindows("B", set.Headroom)
	for _, s := range v.Sections {
		low, high := math.Min(s.Area, s.ExactArea), math.Max(s.Area, s.ExactArea)
		if want := s.LimitPerM2 * low; math.Abs(s.Limit-want) > 1e-9 {
			t.Errorf("%s: limit %g, want %g", s.ID, s.Limit, want)
		}
		in := false
		for _, w := range windows {
			in = in || low >= w.low-1e-9 && high <= w.high+1e-9
		}
		if in == (s.UnderRange || s.OverRange) {
			t.Errorf("%s: %g to %g m2, in a window %v, under %v, over %v", s.ID, low, high, in, s.UnderRange, s.OverRange)
		}
	}
	if len(v.Sections) < 3 {
		t.Errorf("only %d sections", len(v.Sections))
	}
}
