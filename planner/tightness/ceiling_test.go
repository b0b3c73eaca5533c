package tightness

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// ask stands for a ceiling that isn't known until the duct's pressure class is
// stated.
const ask = -1

var ceilingTests = []struct {
	scheme, class string
	shape         Shape
	sign          Sign
	ductClass     float64
	want          float64
}{
	// EN 12237 circular (from memory; A to C as DW/144, second-hand).
	{"EN", "A", Circular, Positive, 0, 500}, {"EN", "B", Circular, Positive, 0, 1000},
	{"EN", "C", Circular, Positive, 0, 2000}, {"EN", "D", Circular, Positive, 0, 2000},
	{"EN", "A", Circular, Negative, 0, 500}, {"EN", "B", Circular, Negative, 0, 750},
	{"EN", "C", Circular, Negative, 0, 750}, {"EN", "D", Circular, Negative, 0, 750},
	// EN 1507 rectangular (German hand-out on DIN EN 1507:2006, second-hand):
	// positive from the pressure class for every tightness class.
	{"EN", "A", Rectangular, Positive, 0, ask}, {"EN", "D", Rectangular, Positive, 0, ask},
	{"EN", "A", Rectangular, Positive, 400, 400}, {"EN", "A", Rectangular, Positive, 1000, 1000},
	{"EN", "B", Rectangular, Positive, 2000, 2000}, {"EN", "C", Rectangular, Positive, 400, 400},
	{"EN", "A", Rectangular, Negative, 0, 200}, {"EN", "B", Rectangular, Negative, 0, 500},
	{"EN", "C", Rectangular, Negative, 0, 750}, {"EN", "D", Rectangular, Negative, 0, 750},
	// Above the highest pressure class the standard provides for nothing.
	{"EN", "C", Rectangular, Positive, 3000, 2000},
	// A stated pressure class caps, whatever the tightness class permits.
	{"EN", "C", Circular, Positive, 400, 400}, {"EN", "C", Rectangular, Negative, 400, 400},
	{"EN", "B", Circular, Positive, 2000, 1000}, {"EN", "B", Circular, Negative, 2000, 750},
	{"EN", "A", Rectangular, Positive, 500, 500},
	// Flat-oval follows rectangular.
	{"EN", "A", FlatOval, Positive, 0, ask}, {"EN", "A", FlatOval, Positive, 1000, 1000}, {"EN", "A", FlatOval, Negative, 0, 200},
	// EN 16798-3 names no ceilings.
	{"EN16798", "ATC4", Circular, Positive, 0, ask}, {"EN16798", "ATC4", Rectangular, Negative, 600, 600},
	// DW/144 class table (method statement, second-hand; D from memory).
	{"UK", "A", Rectangular, Positive, 0, 500}, {"UK", "B", Circular, Positive, 0, 1000},
	{"UK", "C", FlatOval, Positive, 0, 2000}, {"UK", "D", Rectangular, Positive, 0, 2000},
	{"UK", "A", Circular, Negative, 0, 500}, {"UK", "B", Rectangular, Negative, 0, 750},
	{"UK", "C", Rectangular, Negative, 0, 750}, {"UK", "D", Circular, Negative, 0, 750},
	{"UK", "C", Rectangular, Positive, 1000, 1000},
	// Guide to the SMACNA procedure (second-hand): the duct's pressure class.
	{"US", "6", Rectangular, Positive, 0, ask}, {"US", "2.5", Circular, Negative, 0, ask},
	{"US", "6", Rectangular, Positive, 3 * InchWaterPa, 3 * InchWaterPa},
	// GB 50243 (from memory).
	{"GB50243", "low", Rectangular, Positive, 0, 500}, {"GB50243", "medium", Rectangular, Positive, 0, 1500},
	{"GB50243", "high", Rectangular, Positive, 0, 2500}, {"GB50243", "medium circular", Circular, Negative, 0, 1000},
}

func TestCeilings(t *testing.T) {
	for _, tt := range ceilingTests {
		s, c := class(t, tt.scheme, tt.class)
		got := s.Ceiling(c, tt.shape, tt.sign, tt.ductClass)
		if tt.want == ask {
			if got.Known || got.Pa != 0 || !strings.Contains(got.Reason, "duct_class_pa") {
				t.Errorf("%s %s %s %s: got %+v, want it unknown and asked for", tt.scheme, tt.class, tt.shape, tt.sign, got)
			}
			continue
		}
		if !got.Known || got.Pa != tt.want {
			t.Errorf("%s %s %s %s, duct class %g: got %+v, want %g", tt.scheme, tt.class, tt.shape, tt.sign, tt.ductClass, got, tt.want)
		}
		if got.Source == "" || got.Sureness == "" || !strings.Contains(got.Reason, "at most "+Words(nil).say(tt.want)) {
			t.Errorf("%s %s %s %s: no source, or a reason that doesn't say it: %+v", tt.scheme, tt.class, tt.shape, tt.sign, got)
		}
	}
}

// Whatever the scheme, a stated pressure class is never passed, and stating a
// stronger duct never lowers the ceiling.
func TestStatedDuctClassAlwaysCaps(t *testing.T) {
	for _, name := range Names() {
		s, _ := Lookup(name)
		for _, c := range s.Classes() {
			for _, shape := range Shapes() {
				for _, sign := range []Sign{Positive, Negative} {
					before := 0.0
					for _, duct := range []float64{1, 125, 400, 500, 750, 1000, 2000, 2500, 6000} {
						got := s.Ceiling(c, shape, sign, duct)
						if !got.Known || got.Pa > duct || got.Pa < before {
							t.Errorf("%s %s %s %s, duct %g Pa: %+v after %g Pa", name, c.Name, shape, sign, duct, got, before)
						}
						before = got.Pa
					}
				}
			}
		}
	}
}

func TestCeilingReasons(t *testing.T) {
	s, b := class(t, "EN", "B")
	tests := []struct {
		shape Shape
		duct  float64
		want  string
	}{
		{Circular, 0, "class B, circular, positive: at most 1000 Pa"},
		{Circular, 400, "class B, circular, positive: at most 400 Pa, the duct's own pressure class"},
		{Circular, 1000, "class B, circular, positive: at most 1000 Pa"},
		{Rectangular, 3, "class B, rectangular, positive: at most 3 Pa, the duct's own pressure class (the scheme's pressure classes are 400, 1000 or 2000 Pa); if pressure class 3 was meant, state 2000 Pa"},
		{Rectangular, 4, "class B, rectangular, positive: at most 4 Pa, the duct's own pressure class (the scheme's pressure classes are 400, 1000 or 2000 Pa)"},
		{Rectangular, 1000, "class B, rectangular, positive: at most 1000 Pa, the duct's own pressure class"},
		{Rectangular, 0, "class B, rectangular, positive: the ceiling is the duct's pressure class, which isn't stated: state it (duct_class_pa: 400, 1000 or 2000 Pa)"},
		{Rectangular, 2, "class B, rectangular, positive: at most 2 Pa, the duct's own pressure class (the scheme's pressure classes are 400, 1000 or 2000 Pa); if pressure class 2 was meant, state 1000 Pa"},
	}
	for _, tt := range tests {
		if got := s.Ceiling(b, tt.shape, Positive, tt.duct).Reason; got != tt.want {
			t.Errorf("%s, duct class %g:\n got %s\nwant %s", tt.shape, tt.duct, got, tt.want)
		}
	}
	inWG := func(pa float64) (string, string) { return strconv.FormatFloat(pa/249.0889, 'f', 3, 64), "in. w.g." }
	if got, want := s.CeilingIn(inWG, b, Rectangular, Positive, 0).Reason, "state it under a heading with its unit: 1.606, 4.015 or 8.029 in. w.g."; !strings.HasSuffix(got, want) {
		t.Errorf("a heading in Pa asks for another unit: %s", got)
	}
	for _, duct := range []float64{-400, math.NaN()} {
		if got := s.Ceiling(b, Rectangular, Positive, duct); got.Known {
			t.Errorf("duct class %g taken as stated: %+v", duct, got)
		}
	}
}

func TestPermits(t *testing.T) {
	s, b := class(t, "EN", "B")
	round, unknown := s.Ceiling(b, Circular, Positive, 0), s.Ceiling(b, Rectangular, Positive, 0)
	us, six := class(t, "US", "6")
	tests := []struct {
		what string
		c    Ceiling
		pa   float64
		ok   bool
		says string
	}{
		{"at the ceiling", round, 1000, true, ""},
		{"over it", round, 1001, false, "not permitted: at most 1000 Pa"},
		{"pressure class not stated", unknown, 1000, true, "duct_class_pa"},
		{"above every pressure class", unknown, 2500, false, "at most 2000 Pa"},
		{"no pressure class known at all", us.Ceiling(six, Circular, Positive, 0), 9000, true, "duct_class_pa"},
		// 3 in. w.g. reached by another way of rounding is still 3 in. w.g.
		{"a last digit off", us.Ceiling(six, Circular, Positive, 747.26673), math.Nextafter(747.26673, 800), true, ""},
		{"a hair over", us.Ceiling(six, Circular, Positive, 747.26673), 747.267, false, "not permitted: at most 747.2667 Pa"},
	}
	for _, tt := range tests {
		ok, why := tt.c.Permits(tt.pa)
		if ok != tt.ok || !strings.Contains(why, tt.says) || (tt.says == "" && why != "") {
			t.Errorf("%s: got %v %q, want %v %q", tt.what, ok, why, tt.ok, tt.says)
		}
	}
}
