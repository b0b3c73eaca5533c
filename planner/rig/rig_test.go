package rig

import (
	"math"
	"strings"
	"testing"

	"blankoff/planner/tightness"
	"blankoff/planner/units"
)

// twoRanges is a rig of our own with a hole between its ranges.
func twoRanges() *Rig {
	return &Rig{Name: "trolley", Ranges: []Range{
		{Name: "low", MinLS: 0.8, MaxLS: 14, AccuracyPercent: 5, AccuracyLS: 0.1, OwnLeakLS: 0.05},
		{Name: "high", MinLS: 18, MaxLS: 180, AccuracyPercent: 4, AccuracyLS: 0.5, OwnLeakLS: 0.3},
	}}
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(b)) }

func TestErrIsTheGreater(t *testing.T) {
	r := Range{AccuracyPercent: 5, AccuracyLS: 0.3}
	// 5 % passes 0.3 L/s at 6 L/s.
	for _, tt := range []struct{ q, want float64 }{{0, 0.3}, {2, 0.3}, {6, 0.3}, {6.2, 0.31}, {100, 5}} {
		if got := r.Err(tt.q); !near(got, tt.want) {
			t.Errorf("at %g L/s: got %g, want %g", tt.q, got, tt.want)
		}
	}
}

func TestReadable(t *testing.T) {
	// By hand: low 0.8 + 0.1 to 14 - 0.7 - 0.05; high 18 + 0.72 to
	// 180 - 7.2 - 0.3.
	got := twoRanges().Readable(500)
	if len(got) != 2 || !near(got[0].Low, 0.9) || !near(got[0].High, 13.25) || !near(got[1].Low, 18.72) || !near(got[1].High, 172.5) {
		t.Fatalf("got %+v", got)
	}
	if got[0].Ranges[0] != "low" || got[1].Ranges[0] != "high" {
		t.Errorf("names: %+v", got)
	}
	for _, pa := range []float64{0, -400, math.NaN(), math.Inf(1)} {
		if got := twoRanges().Readable(pa); got != nil {
			t.Errorf("at %g Pa: got %+v, want none", pa, got)
		}
	}
}

func TestReadableJoinsRangesThatTouchOrOverlap(t *testing.T) {
	exact := func(name string, low, high float64) Range { return Range{Name: name, MinLS: low, MaxLS: high} }
	tests := []struct {
		what   string
		ranges []Range
		want   []Span
	}{
		{"touch", []Range{exact("a", 2, 15), exact("b", 15, 90)}, []Span{{2, 90, []string{"a", "b"}}}},
		{"overlap, high one first in the file", []Range{exact("b", 12, 90), exact("a", 2, 15)}, []Span{{2, 90, []string{"a", "b"}}}},
		{"one inside the other", []Range{exact("a", 2, 90), exact("b", 12, 40)}, []Span{{2, 90, []string{"a", "b"}}}},
		{"apart", []Range{exact("a", 2, 15), exact("b", 15.5, 90)}, []Span{{2, 15, []string{"a"}}, {15.5, 90, []string{"b"}}}},
		{"three, the middle one bridges", []Range{exact("a", 2, 15), exact("c", 30, 90), exact("b", 14, 31)}, []Span{{2, 90, []string{"a", "b", "c"}}}},
	}
	for _, tt := range tests {
		got := (&Rig{Ranges: tt.ranges}).Readable(400)
		if len(got) != len(tt.want) {
			t.Errorf("%s: got %+v", tt.what, got)
			continue
		}
		for i, w := range tt.want {
			if got[i].Low != w.Low || got[i].High != w.High || strings.Join(got[i].Ranges, " ") != strings.Join(w.Ranges, " ") {
				t.Errorf("%s: got %+v, want %+v", tt.what, got[i], w)
			}
		}
	}
}

func TestFlowWindows(t *testing.T) {
	// Spans 0.9 to 13.25 and 18.72 to 172.5, by hand as above; the upper ends
	// divided by 1.5.
	got := twoRanges().FlowWindows(500, 1.5)
	if len(got) != 2 || !near(got[0].Low, 0.9) || !near(got[0].High, 8.8333333333) || !near(got[1].Low, 18.72) || !near(got[1].High, 115) {
		t.Errorf("got %+v", got)
	}
	// With a headroom of 20 the low range has no room: 13.25/20 is under 0.9.
	if got := twoRanges().FlowWindows(500, 20); got != nil {
		t.Errorf("headroom 20: got %+v, want none", got)
	}
	for _, h := range []float64{0, 0.99, -1, math.NaN(), math.Inf(1)} {
		if got := twoRanges().FlowWindows(500, h); got != nil {
			t.Errorf("headroom %g: got %+v, want none", h, got)
		}
	}
}

// Round figures that many use to explain windows: a range of 10 to 200 L/s
// with no error judges class A at 400 Pa from 7.54 to 150.8 m2. Common
// practice, no source.
func TestCommonPracticeWindow(t *testing.T) {
	en, err := tightness.Lookup("EN")
	if err != nil {
		t.Fatal(err)
	}
	a, err := en.Class("A")
	if err != nil {
		t.Fatal(err)
	}
	r := &Rig{Ranges: []Range{{Name: "only", MinLS: 10, MaxLS: 200}}}
	got := r.AreaWindows(en.Limit(a, 400), 400, 1)
	if len(got) != 1 || math.Abs(got[0].Low-7.54) > 0.005 || math.Abs(got[0].High-150.8) > 0.05 {
		t.Errorf("got %+v, want 7.54 to 150.8 m2", got)
	}
}

func TestAreaWindows(t *testing.T) {
	got := twoRanges().AreaWindows(0.45, 500, 1.5)
	if len(got) != 2 || !near(got[0].Low, 2) || !near(got[0].High, 19.6296296296) || !near(got[1].Low, 41.6) || !near(got[1].High, 255.5555555556) {
		t.Errorf("got %+v", got)
	}
	if len(got) == 2 && (got[0].Ranges[0] != "low" || got[1].Ranges[0] != "high") {
		t.Errorf("names: %+v", got)
	}
	for _, limit := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if got := twoRanges().AreaWindows(limit, 500, 1.5); got != nil {
			t.Errorf("limit %g: got %+v, want none", limit, got)
		}
	}
}

func TestJudge(t *testing.T) {
	r := twoRanges() // windows 0.9 to 8.83 and 18.72 to 115 at headroom 1.5
	tests := []struct {
		q     float64
		state State
		set   string
		says  string
	}{
		{0, Under, "", "below 0.9 L/s"},
		{0.85, Under, "", "below 0.9 L/s"},
		{0.9, In, "low", ""},
		{8.8, In, "low", ""},
		{8.9, Gap, "", "up to 8.833 and from 18.72 L/s"},
		// Readable on the low range, but not once it leaks 1.5 times as much.
		{13, Gap, "", "headroom of 1.5"},
		{18.7, Gap, "", "from 18.72 L/s"},
		{18.72, In, "high", ""},
		{115, In, "high", ""},
		{116, Over, "", "above 115 L/s"},
		{1e6, Over, "", "above 115 L/s"},
	}
	for _, tt := range tests {
		got := r.Judge(tt.q, 500, 1.5)
		if got.State != tt.state || got.Range != tt.set || !strings.Contains(got.Reason(units.SI), tt.says) || (got.Reason(units.SI) == "") != (got.State == In) {
			t.Errorf("limit %g L/s: got %+v, want %s on %q: %s", tt.q, got, tt.state, tt.set, tt.says)
		}
	}
	gap := r.Judge(12, 500, 1.5)
	if gap.Below == nil || gap.Above == nil || !near(gap.Above.Low, 18.72) || gap.Below.Low != 0.9 {
		t.Errorf("neighbours of a gap: %+v", gap)
	}
	if in := r.Judge(30, 500, 1.5); in.Below == nil || in.Below != in.Above || in.Below.Low > 30 || in.Below.High < 30 {
		t.Errorf("window of a limit in it: %+v", in)
	}
	none := r.Judge(12, 500, 25)
	if none.State != Over || !strings.Contains(none.Reason(units.SI), "25 times") {
		t.Errorf("no window at all: %+v", none)
	}
	if low := r.Judge(12, 500, 0.5); low.State != Over || !strings.Contains(low.Reason(units.SI), "less than 1") {
		t.Errorf("headroom 0.5: %+v", low)
	}
}

func TestRangeFor(t *testing.T) {
	r := &Rig{Ranges: []Range{
		{Name: "wide", MinLS: 5, MaxLS: 180, AccuracyPercent: 4},
		{Name: "fine", MinLS: 0.8, MaxLS: 24, AccuracyPercent: 2},
		{Name: "coarse", MinLS: 4, MaxLS: 60, AccuracyPercent: 9},
	}}
	tests := []struct {
		what        string
		q, headroom float64
		want        string
	}{
		{"only the fine one goes so low", 1.2, 1.5, "fine"},
		{"finest of those that hold it all", 10, 1.5, "fine"},
		{"the fine one ends at 23.52, before 30", 20, 1.5, "wide"},
		{"without headroom it is enough", 20, 1, "fine"},
		{"below the wide one's 5.2 and reaching beyond the fine one: coarse alone holds it", 5.1, 9, "coarse"},
		{"no range alone holds 3 to 60: the finest that holds 3", 3, 20, "fine"},
	}
	for _, tt := range tests {
		if got, ok := r.RangeFor(tt.q, 400, tt.headroom); got != tt.want || !ok {
			t.Errorf("%s: got %q %v, want %q", tt.what, got, ok, tt.want)
		}
	}
	equal := &Rig{Ranges: []Range{
		{Name: "wide", MinLS: 2, MaxLS: 180}, {Name: "narrow", MinLS: 2, MaxLS: 60}, {Name: "narrow too", MinLS: 2, MaxLS: 60},
	}}
	if got, _ := equal.RangeFor(20, 400, 1.5); got != "narrow" {
		t.Errorf("equally fine: got %q, want the first of the lower ones", got)
	}
	for _, q := range []float64{0.1, 400, math.NaN()} {
		if got, ok := r.RangeFor(q, 400, 1.5); ok || got != "" {
			t.Errorf("%g L/s: got %q, want none", q, got)
		}
	}
}
