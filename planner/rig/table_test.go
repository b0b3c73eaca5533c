package rig

import (
	"math"
	"slices"
	"strings"
	"testing"

	"blankoff/planner/tightness"
)

func scheme(t *testing.T, name string) *tightness.Scheme {
	t.Helper()
	s, err := tightness.Lookup(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestTable(t *testing.T) {
	r := &Rig{Ranges: []Range{{Name: "high", MinLS: 12, MaxLS: 180, Fan: curve()}}}
	rows, err := r.Table(TableOf{
		Scheme: scheme(t, "EN"), Classes: []string{"class a", "C"}, PressuresPa: []float64{400, 1000, 2500},
		Sign: tightness.Positive, Headroom: 1.5,
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 2*3*3 {
		t.Fatalf("got %d rows, want 18", len(rows))
	}
	// By class, then pressure, then shape. Limits: computed apart, four decimals.
	tests := []struct {
		row         int
		class       string
		shape       tightness.Shape
		pa, limit   float64
		low, high   float64 // m2; 0: nothing can be judged
		permitted   bool
		state, says string
	}{
		// The fan holds 176.7 L/s at 400 Pa and 135 at 1000; 12 L/s is the least.
		{0, "A", tightness.Rectangular, 400, 1.3265, 9.046, 88.79, true, "duct_class_pa", ""},
		{1, "A", tightness.Circular, 400, 1.3265, 9.046, 88.79, true, "", ""},
		{2, "A", tightness.FlatOval, 400, 1.3265, 9.046, 88.79, true, "duct_class_pa", ""},
		{4, "A", tightness.Circular, 1000, 2.4064, 4.987, 37.40, false, "not permitted: at most 500 Pa", ""},
		{13, "C", tightness.Circular, 1000, 0.2674, 44.88, 336.6, true, "", ""},
		{15, "C", tightness.Rectangular, 2500, 0.4850, 0, 0, false, "not permitted: at most 2000 Pa", "can be used at 2500 Pa"},
	}
	for _, tt := range tests {
		got := rows[tt.row]
		if got.Class != tt.class || got.Shape != tt.shape || got.PressurePa != tt.pa || math.Abs(got.LimitPerM2-tt.limit) > 0.00005 {
			t.Errorf("row %d: got %+v", tt.row, got)
		}
		if got.Permitted != tt.permitted || !strings.Contains(got.State, tt.state) || (tt.state == "") != (got.State == "") || !strings.Contains(got.Reason, tt.says) {
			t.Errorf("row %d: permitted %v, state %q, reason %q; want %v, %q, %q", tt.row, got.Permitted, got.State, got.Reason, tt.permitted, tt.state, tt.says)
		}
		if tt.low == 0 {
			if len(got.Areas) > 0 || got.Reason == "" {
				t.Errorf("row %d: got %+v, want no areas and a reason", tt.row, got)
			}
			continue
		}
		if len(got.Areas) != 1 || math.Abs(got.Areas[0].Low/tt.low-1) > 2e-4 || math.Abs(got.Areas[0].High/tt.high-1) > 2e-4 || got.Reason != "" {
			t.Errorf("row %d: got areas %+v, want %g to %g", tt.row, got.Areas, tt.low, tt.high)
		}
	}
}

func TestTableDefaults(t *testing.T) {
	r := twoRanges()
	for _, name := range tightness.Names() {
		s := scheme(t, name)
		for _, sign := range []tightness.Sign{tightness.Positive, tightness.Negative} {
			rows, err := r.Table(TableOf{Scheme: s, Sign: sign, Headroom: 1.5, DuctClassPa: 1000})
			if err != nil || len(rows) == 0 {
				t.Fatalf("%s %s: %d rows, %v", name, sign, len(rows), err)
			}
			for _, row := range rows {
				if row.Permitted && row.PressurePa > 1000 {
					t.Errorf("%s %s: above the duct's own pressure class: %+v", name, sign, row)
				}
			}
		}
	}
	// A class for rectangular duct only has no row for circular.
	rows, _ := r.Table(TableOf{Scheme: scheme(t, "GB50243"), Classes: []string{"low"}, PressuresPa: []float64{300}, Sign: tightness.Positive, Headroom: 1})
	var shapes []tightness.Shape
	for _, row := range rows {
		shapes = append(shapes, row.Shape)
	}
	if !slices.Equal(shapes, []tightness.Shape{tightness.Rectangular, tightness.FlatOval}) {
		t.Errorf("GB50243 low: %v", shapes)
	}
}

func TestTableRefusesEverythingWrongAtOnce(t *testing.T) {
	_, err := twoRanges().Table(TableOf{
		Scheme: scheme(t, "EN"), Classes: []string{"B", "E", "ATC4"}, PressuresPa: []float64{400, -400, math.NaN()}, Sign: "up", Headroom: 0.9,
	})
	if err == nil {
		t.Fatal("no error")
	}
	for _, want := range []string{`"E"`, `"ATC4"`, "-400 Pa", "NaN Pa", "headroom 0.9", `"up"`} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("doesn't say %s: %v", want, err)
		}
	}
	if _, err := twoRanges().Table(TableOf{Sign: tightness.Positive, Headroom: 1}); err == nil {
		t.Error("no scheme: no error")
	}
}
