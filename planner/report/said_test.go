package report_test

import (
	"math"
	"strings"
	"testing"

	"blankoff/planner/report"
	"blankoff/planner/sampling"
	"blankoff/planner/tightness"
	"blankoff/planner/units"
)

// A joint of 400 x 600 has one size wherever it is told: its longer side first, for
// the cut, both blanks, the place of the rig and the untested joint.
func TestOneSizeOfACut(t *testing.T) {
	for u, want := range map[units.System]string{units.SI: "600 x 400", units.US: "23.62 x 15.75 in"} {
		p := planOf(t, heads+"A,S,straight,400,600,7500,,,\nB,S,straight,400,600,7500,A,,\n")
		p.Settings.Units = u
		v := report.Of(p)
		if len(v.Cuts) == 0 {
			t.Fatal("no cut")
		}
		told := []string{v.Cuts[0].Text, v.Untested.List[0].Shown, v.Drawing.Joints[0].Size}
		for i := range v.Sections {
			s := &v.Sections[i]
			told = append(told, s.RigFace)
			for _, b := range s.Blanks {
				told = append(told, b.Text)
			}
			for _, at := range []string{s.RigAt, s.TapAt, s.OpenEnd} {
				if !strings.Contains(at, want) {
					t.Errorf("%s: %q doesn't say %s", s.ID, at, want)
				}
			}
		}
		for i, x := range told {
			if x != want {
				t.Errorf("no. %d: %q, want %q", i, x, want)
			}
		}
		if b := v.Sections[0].Blanks[0]; b.Width != 400 || b.Height != 600 {
			t.Errorf("the sides of the JSON are those of the schedule: %+v", b.Face)
		}
	}
}

// The trade's word for a sucked duct is negative; suction is a side of the fan.
func TestCautionsSayNegative(t *testing.T) {
	p := planOf(t, heads+duct("A", "S", "", "", ""))
	for _, sign := range []tightness.Sign{tightness.Positive, tightness.Negative} {
		p.Sections[0].Sign = sign
		all := strings.Join(report.Of(p).Cautions, "\n")
		if strings.Contains(strings.ToLower(all), "suction") || !strings.Contains(strings.ToLower(all), "negative pressure") {
			t.Errorf("%v:\n%s", sign, all)
		}
	}
}

// The minutes beside the cuts of a sample add up to those of what is tested: whole
// where both sides are, half on one, none on neither.
func TestMinutesOfCutsOfASample(t *testing.T) {
	p := planOf(t, heads+duct("A", "S", "", "", "")+duct("B", "S", "A", "", "")+duct("C", "S", "B", "", "")+duct("D", "S", "C", "", ""))
	for seed := range uint64(12) {
		for _, percent := range []float64{25, 50, 75, 100} {
			v := report.Of(p)
			if err := v.AddSample(p, report.SampleAsk{Ask: sampling.Ask{Percent: percent, Seed: seed}}); err != nil {
				t.Fatal(err)
			}
			sum, spent := 0.0, v.TestedMinutes()
			for i := range v.Cuts {
				sum += spent(&v.Cuts[i])
			}
			if want := v.Tested().Minutes; math.Abs(sum-want) > 1e-9 || want == 0 {
				t.Errorf("seed %d, %g %%: the cuts come to %g min, what is tested to %g", seed, percent, sum, want)
			}
		}
	}
}
