package rig

import (
	"math"
	"testing"
)

func TestOtherPressure(t *testing.T) {
	en := scheme(t, "EN")
	b, _ := en.Class("B")
	c, _ := en.Class("C")
	// One range of 12 to 180 L/s without error and fan. The exact pressure is
	// (flow / (k x area))^(1/0.65); the next round one is worked out from it.
	r := &Rig{Ranges: []Range{{Name: "high", MinLS: 12, MaxLS: 180}}}
	tests := []struct {
		what                   string
		classK, area, pa, ceil float64
		want                   float64 // 0: none
	}{
		// (12/(0.003 x 60))^(1/0.65) = 639.8 Pa
		{"under range: raise it", 0.003, 60, 400, 2000, 640},
		{"under range, but the ceiling is in the way", 0.003, 60, 400, 600, 0},
		// (180/1.5/(0.009 x 300))^(1/0.65) = 342.8 Pa
		{"over range: lower it", 0.009, 300, 400, 1000, 340},
		{"over range from an odd pressure", 0.009, 300, 403, 1000, 340},
		{"above the ceiling: come down under it", 0.009, 30, 1200, 1000, 1000},
		{"both neighbours would do: the lower", 0.009, 30, 405, 1000, 400},
		{"not the pressure it has", 0.009, 30, 400, 1000, 390},
		{"nothing helps a very small one", 0.003, 2, 400, 2000, 0},
	}
	for _, tt := range tests {
		class := b
		if tt.classK == c.K {
			class = c
		}
		got, ok := r.OtherPressure(en, class, tt.area, tt.pa, tt.ceil, 1.5)
		if got != tt.want || ok != (tt.want > 0) {
			t.Errorf("%s: got %g %v, want %g", tt.what, got, ok, tt.want)
		}
	}
	for _, pa := range []float64{0, -5, math.NaN()} {
		if got, ok := r.OtherPressure(en, b, 30, pa, 1000, 1.5); ok {
			t.Errorf("from %g Pa: got %g", pa, got)
		}
	}
	if got, ok := r.OtherPressure(en, b, 30, 400, math.Inf(1), 1.5); ok {
		t.Errorf("no ceiling: got %g", got)
	}
}

// Of all the pressures on the 10 Pa grid that work none is nearer.
func TestOtherPressureIsTheNearest(t *testing.T) {
	en := scheme(t, "EN")
	b, _ := en.Class("B")
	weak := &Rig{Ranges: []Range{{Name: "high", MinLS: 12, MaxLS: 180, Fan: curve()}}}
	for _, area := range []float64{20, 45, 80, 150, 260, 500} {
		for _, pa := range []float64{55, 200, 444, 900, 1600} {
			got, ok := weak.OtherPressure(en, b, area, pa, 1900, 1.5)
			best := math.Inf(1)
			for p := 10.0; p <= 1900; p += 10 {
				if p != pa && weak.Judge(area*en.Limit(b, p), p, 1.5).State == In {
					best = math.Min(best, math.Abs(p-pa))
				}
			}
			if ok != !math.IsInf(best, 1) || (ok && math.Abs(got-pa) != best) {
				t.Errorf("%g m2 at %g Pa: got %g %v, the nearest is %g away", area, pa, got, ok, best)
			}
		}
	}
}
