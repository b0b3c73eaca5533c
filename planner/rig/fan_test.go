package rig

import (
	"math"
	"strings"
	"testing"

	"blankoff/planner/tightness"
	"blankoff/planner/units"
)

// curve is a fan of our own invention.
func curve() []FanPoint {
	return []FanPoint{{200, 190}, {800, 150}, {1600, 90}, {2200, 20}}
}

func TestFanFlow(t *testing.T) {
	r := Range{Fan: curve()}
	tests := []struct {
		pa, want float64
		ok       bool
	}{
		{50, 190, true}, // below the curve: its lowest point, no more
		{200, 190, true}, {500, 170, true}, {800, 150, true}, {1200, 120, true}, {1900, 55, true}, {2200, 20, true},
		{2200.1, 0, false}, {math.Inf(1), 0, false}, {math.NaN(), 0, false},
	}
	for _, tt := range tests {
		if got, ok := r.FanFlow(tt.pa); !near(got, tt.want) || ok != tt.ok {
			t.Errorf("at %g Pa: got %g %v, want %g %v", tt.pa, got, ok, tt.want, tt.ok)
		}
	}
	if _, ok := (Range{}).FanFlow(400); ok {
		t.Error("a flow without a curve")
	}
}

func TestFanCutsTheRange(t *testing.T) {
	r := &Rig{Ranges: []Range{{Name: "high", MinLS: 12, MaxLS: 180, Fan: curve()}}}
	tests := []struct {
		pa   float64
		high float64 // 0: can't be used
	}{
		{400, 176.6666666667}, {800, 150}, {1600, 90}, {2200, 20}, {2201, 0}, {100, 180},
	}
	for _, tt := range tests {
		got := r.Readable(tt.pa)
		if tt.high == 0 {
			if got != nil {
				t.Errorf("at %g Pa: got %+v, want none", tt.pa, got)
			}
			continue
		}
		if len(got) != 1 || got[0].Low != 12 || !near(got[0].High, tt.high) {
			t.Errorf("at %g Pa: got %+v, want 12 to %g", tt.pa, got, tt.high)
		}
	}
	over := r.Judge(30, 2400, 1.5)
	if over.State != Over || over.Reason(units.SI) != "no range of the rig can be used at 2400 Pa" {
		t.Errorf("above the curve: %+v", over)
	}
}

// The hole between two ranges can come from the fan alone: the low range's
// weak fan ends before the high range begins.
func TestWeakFanOpensAGap(t *testing.T) {
	r := &Rig{Ranges: []Range{
		{Name: "low", MinLS: 0.8, MaxLS: 14, Fan: []FanPoint{{300, 14}, {900, 6}}},
		{Name: "high", MinLS: 12, MaxLS: 180},
	}}
	if got := r.Readable(300); len(got) != 1 {
		t.Errorf("at 300 Pa: got %+v, want one span", got)
	}
	got := r.Readable(750) // 14 - 8 x 450/600 = 8
	if len(got) != 2 || !near(got[0].High, 8) {
		t.Errorf("at 750 Pa: got %+v, want a hole from 8 to 12", got)
	}
	if v := r.Judge(10, 750, 1); v.State != Gap {
		t.Errorf("10 L/s at 750 Pa: %+v, want a gap", v)
	}
}

// 5 m of 100 mm hose at 150 L/s, worked by hand: 19.10 m/s, velocity pressure
// 218.9 Pa, three of them (0.03 x 50 along it, 1.5 at its ends): 657 Pa, with
// the assumed friction factor. No published figure was found.
func TestHoseLoss(t *testing.T) {
	h := Hose{LengthM: 5, DiameterM: 0.1, Friction: 0.03}
	if got := h.Loss(150); math.Abs(got-657) > 1 {
		t.Errorf("got %.1f Pa, want 657", got)
	}
	if got := h.Loss(75) / h.Loss(150); !near(got, 0.25) {
		t.Errorf("half the flow costs %g, want a quarter", got)
	}
	if h.Loss(0) != 0 {
		t.Error("a loss without flow")
	}
	// No length: the two ends only.
	if got := (Hose{DiameterM: 0.1, Friction: 0.03}).Loss(150) / h.Loss(150); !near(got, 0.5) {
		t.Errorf("ends cost %g of the whole, want half", got)
	}
}

// Second opinion on the bisection: walk up in small steps until the fan can't
// give the flow against test pressure and hose together.
func TestHoldsThroughHose(t *testing.T) {
	r := Range{Fan: curve(), Hose: &Hose{LengthM: 5, DiameterM: 0.1, Friction: 0.03}}
	for _, pa := range []float64{100, 200, 500, 800, 1250, 1600, 2000, 2190} {
		got, walked := r.Holds(pa), 0.0
		for q := 0.0; ; q += 0.001 {
			// The curve worked out point to point, not by FanFlow.
			need, have := pa+r.Hose.Loss(q), math.Inf(-1)
			switch {
			case need <= 200:
				have = 190
			case need <= 800:
				have = 190 - (need-200)/15
			case need <= 1600:
				have = 150 - (need-800)*0.075
			case need <= 2200:
				have = 90 - (need-1600)*7/60
			}
			if have < q {
				break
			}
			walked = q
		}
		if math.Abs(got-walked) > 0.0011 {
			t.Errorf("at %g Pa: got %.4f L/s, walked to %.4f", pa, got, walked)
		}
		if free, _ := (Range{Fan: curve()}).FanFlow(pa); got > free {
			t.Errorf("at %g Pa: %.3f through the hose, %.3f without", pa, got, free)
		}
	}
	if got := r.Holds(2300); got != 0 {
		t.Errorf("above the curve: got %g", got)
	}
	if got := (Range{Hose: r.Hose}).Holds(400); !math.IsInf(got, 1) {
		t.Errorf("without a curve: got %g, want no bound", got)
	}
}

// A hose so wide and short that it costs nothing changes nothing.
func TestWideHoseCostsNothing(t *testing.T) {
	bare := Range{Fan: curve()}
	wide := Range{Fan: curve(), Hose: &Hose{LengthM: 0.1, DiameterM: 5, Friction: 0.03}}
	for pa := 50.0; pa < 2200; pa += 70 {
		if a, b := bare.Holds(pa), wide.Holds(pa); math.Abs(a-b) > 0.001 {
			t.Errorf("at %g Pa: %g bare, %g through a wide hose", pa, a, b)
		}
	}
}

// TestNotesInUS: 300 Pa is 1.2044 in. w.g., 14 L/s is 29.664 cfm, 0.85 L/s 1.801.
func TestNotesInUS(t *testing.T) {
	r := &Rig{Ranges: []Range{{Name: "low", MinLS: 0.85, MaxLS: 14, Fan: []FanPoint{{300, 14}, {900, 0.5}}}}}
	for pa, want := range map[float64]string{
		100:  "the fan curve begins at 1.204 in. w.g.: at 0.401 in. w.g. the fan is taken to deliver no more than there, 29.66 cfm",
		1200: "can't be used at 4.818 in. w.g.: the fan curve ends at 3.613 in. w.g.",
		895:  "can't be used at 3.593 in. w.g.: the fan holds 1.298 cfm there and the meter needs 1.801 cfm", // 0.6125 L/s
	} {
		if got := r.NotesAt(pa, tightness.Positive, units.US); len(got) != 1 || got[0].Text != want {
			t.Errorf("at %g Pa: %+v, want %s", pa, got, want)
		}
	}
}

func TestNotesAt(t *testing.T) {
	r := &Rig{Ranges: []Range{
		{Name: "low", MinLS: 0.8, MaxLS: 14, Fan: []FanPoint{{300, 14}, {900, 0.5}}},
		{Name: "high", MinLS: 12, MaxLS: 180},
	}}
	tests := []struct {
		pa   float64
		sign tightness.Sign
		says []string
	}{
		{500, tightness.Positive, []string{"high: fan not checked"}},
		{100, tightness.Positive, []string{"low: the fan curve begins at 300 Pa", "high: fan not checked"}},
		{1200, tightness.Positive, []string{"low: can't be used at 1200 Pa: the fan curve ends at 900 Pa", "high: fan not checked"}},
		{895, tightness.Positive, []string{"low: can't be used at 895 Pa: the fan holds", "high: fan not checked"}},
		{500, tightness.Negative, []string{"high: fan not checked", ": the fan curve is taken for both signs"}},
	}
	for _, tt := range tests {
		got := r.NotesAt(tt.pa, tt.sign, units.SI)
		if len(got) != len(tt.says) {
			t.Errorf("at %g Pa %s: got %+v", tt.pa, tt.sign, got)
			continue
		}
		for i, n := range got {
			if !strings.HasPrefix(n.Range+": "+n.Text, tt.says[i]) {
				t.Errorf("at %g Pa %s: got %+v, want %s", tt.pa, tt.sign, n, tt.says[i])
			}
		}
	}
	if r.FanChecked() {
		t.Error("fan checked though the high range has no curve")
	}
	r.Ranges[1].Fan = curve()
	if !r.FanChecked() {
		t.Error("fan not checked though every range has a curve")
	}
}
