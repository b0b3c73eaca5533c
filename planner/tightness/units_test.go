package tightness

import (
	"math"
	"testing"
)

func TestUnitDefinitions(t *testing.T) {
	tests := []struct {
		what             string
		got, want, close float64
	}{
		{"1 in. w.g. in Pa (conventional inch of water)", InchWaterPa, 249.08891, 1e-9},
		{"1 in. w.g. in Pa as ASHRAE Journal, September 2012 prints it (read)", InchWaterPa, 249, 0.5},
		// 1 ft is 304.8 mm, so 1 ft3 is 28.316846592 L, and 60 s a minute.
		{"1 cfm in L/s", CfmLS, 28.316846592 / 60, 1e-12},
		{"1 ft2 in m2", SquareFootM2, 0.09290304, 1e-15},
		// ASHRAE Journal, September 2012 (read) rounds to 1 L/s per 20 m2; a US
		// local code (read) prints 0.0001 m3/s per m2, twice too much.
		{"1 cfm per 100 ft2 in L/s per m2", CfmLS / (100 * SquareFootM2), 0.0508, 1e-12},
	}
	for _, tt := range tests {
		if math.Abs(tt.got-tt.want) > tt.close {
			t.Errorf("%s: got %.12g, want %.12g", tt.what, tt.got, tt.want)
		}
	}
}

// Figures worked out apart from this program, see each line.
func TestLeakageClassesInMetric(t *testing.T) {
	byClass := map[string]float64{ // k, L/s per m2 per Pa^0.65, by hand from 0.0508 / 249.089^0.65
		"2": 0.002814, "3": 0.004220, "4": 0.005627, "6": 0.008441, "8": 0.011254,
		"12": 0.016882, "16": 0.022509, "24": 0.033763, "48": 0.067527,
	}
	for name, want := range byClass {
		if _, c := class(t, "US", name); math.Abs(c.K-want) > 0.0000005 {
			t.Errorf("leakage class %s: k is %.7f, want %.6f", name, c.K, want)
		}
	}
	s, one := class(t, "US", "1")
	if math.Abs(one.K-0.00140680) > 0.000000005 {
		t.Errorf("leakage class 1: k is %.8f, want 0.00140680", one.K)
	}
	// EN classes as leakage classes, by hand.
	for name, want := range map[string]float64{"A": 19.2, "B": 6.40, "C": 2.13, "D": 0.711} {
		if _, c := class(t, "EN", name); math.Abs(c.K/one.K/want-1) > 0.002 {
			t.Errorf("class %s: leakage class %.4f, want %.4g", name, c.K/one.K, want)
		}
	}
	// In its own units the class is the limit: CL x 1^0.65 at 1 in. w.g.
	for _, name := range []string{"5", "2.5", "0.75", "17.3"} {
		_, c := class(t, "US", name)
		perCfm := s.Limit(c, InchWaterPa) / (CfmLS / (100 * SquareFootM2))
		if want, _ := classNumber(name); math.Abs(perCfm/want-1) > 1e-12 {
			t.Errorf("leakage class %s at 1 in. w.g.: got %.9g cfm per 100 ft2", name, perCfm)
		}
	}
}
