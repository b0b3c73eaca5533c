package tightness

import (
	"math"
	"strings"
	"testing"
)

// class is the class of a built-in scheme, or the test ends.
func class(t *testing.T, scheme, name string) (*Scheme, Class) {
	t.Helper()
	s, err := Lookup(scheme)
	if err != nil {
		t.Fatal(err)
	}
	c, err := s.Class(name)
	if err != nil {
		t.Fatal(err)
	}
	return s, c
}

// Worked examples printed in publications. within is half of the last digit
// printed, or more where the source is known to round before it is done.
func TestLimitsMatchPublishedExamples(t *testing.T) {
	const (
		form   = "filled DW/143 test form in a contractor's method statement (read)"
		record = "EN 1751 component test record printing DW/144 limits (read)"
		design = "US Bureau of Reclamation HVAC design guide, p. 14 (read)"
	)
	perCfm100 := CfmLS / (100 * SquareFootM2) // L/s per m2 in one cfm per 100 ft2
	tests := []struct {
		source, scheme, class string
		pa, area              float64 // area 0: the limit per m2
		unit                  float64 // L/s, or L/s per m2, in one printed unit
		published, within     float64
	}{
		{form, "UK", "A", 250, 0, 1, 0.977, 0.0005},
		{form, "UK", "A", 250, 8.7, 1, 8.50, 0.05}, // printed 8.5
		// The record cuts 1.3265 to 1.326, it doesn't round.
		{record, "EN", "A", 400, 0, 1, 1.326, 0.001},
		{record, "EN", "B", 400, 0, 1, 0.442, 0.0005},
		{record, "UK", "B", 1000, 0, 1, 0.802, 0.0005},
		{record, "UK", "C", 1000, 0, 1, 0.267, 0.0005},
		{record, "UK", "D", 1000, 0, 1, 0.089, 0.0005},
		{record, "UK", "C", 2000, 0, 1, 0.42, 0.005},
		{record, "UK", "D", 2000, 0, 1, 0.14, 0.005},
		{design, "US", "6", 2.5 * InchWaterPa, 0, perCfm100, 10.9, 0.05},
		// The guide multiplies its rounded 10.9 by 8 and prints 87.2 cfm; the
		// exact figure is 87.08, and that is what a program must give.
		{design, "US", "6", 2.5 * InchWaterPa, 800 * SquareFootM2, CfmLS, 87.08, 0.005},
		// Coarse rounding upwards: a Finnish project note citing D2/SFS 4699
		// (second-hand) prints 0.45 for 0.4422.
		{"Finnish project note (second-hand)", "EN", "B", 400, 0, 1, 0.45, 0.01},
	}
	for _, tt := range tests {
		s, c := class(t, tt.scheme, tt.class)
		got := s.Limit(c, tt.pa) / tt.unit
		if tt.area > 0 {
			got *= tt.area
		}
		if math.Abs(got-tt.published) > tt.within {
			t.Errorf("%s class %s at %g Pa, area %g m2: got %.5g, published %.5g, %s", tt.scheme, tt.class, tt.pa, tt.area, got, tt.published, tt.source)
		}
	}
}

// Figures that are printed but wrong. They stay here so that nobody "mends"
// the program to match them.
func TestPublishedSlipsAreNotMatched(t *testing.T) {
	tests := []struct {
		slip, scheme, class    string
		pa, published, correct float64
	}{
		{"Finnish project note (second-hand): labels three limits class A; 1.8 at 500 Pa fits no class", "EN", "A", 500, 1.8, 1.5335},
		{"Finnish project note (second-hand): class C at 500 Pa printed 0.18, rounded twice", "EN", "C", 500, 0.18, 0.1704},
		{"web table of a duct supplier (second-hand): 0.27 for the third class, which is an air handling unit's", "EN", "C", 1, 0.27, 0.003},
	}
	for _, tt := range tests {
		s, c := class(t, tt.scheme, tt.class)
		got := s.Limit(c, tt.pa)
		if math.Abs(got-tt.correct) > 0.00005 || math.Abs(got-tt.published) < 0.005 {
			t.Errorf("%s class %s at %g Pa: got %.5g, want %.5g and not %.5g: %s", tt.scheme, tt.class, tt.pa, got, tt.correct, tt.published, tt.slip)
		}
	}
}

// The limit table worked out apart from this program, to four decimals.
func TestLimitTable(t *testing.T) {
	classes := []string{"ATC6", "ATC5", "ATC4", "ATC3", "ATC2", "ATC1"}
	table := []struct {
		pa   float64
		want [6]float64
	}{
		{50, [6]float64{0.8583, 0.3433, 0.1144, 0.0381, 0.0127, 0.0042}},
		{100, [6]float64{1.3468, 0.5387, 0.1796, 0.0599, 0.0200, 0.0066}},
		{125, [6]float64{1.5570, 0.6228, 0.2076, 0.0692, 0.0231, 0.0076}},
		{160, [6]float64{1.8280, 0.7312, 0.2437, 0.0812, 0.0271, 0.0089}},
		{200, [6]float64{2.1134, 0.8453, 0.2818, 0.0939, 0.0313, 0.0103}},
		{250, [6]float64{2.4432, 0.9773, 0.3258, 0.1086, 0.0362, 0.0119}},
		{300, [6]float64{2.7506, 1.1003, 0.3668, 0.1223, 0.0408, 0.0134}},
		{400, [6]float64{3.3162, 1.3265, 0.4422, 0.1474, 0.0491, 0.0162}},
		{500, [6]float64{3.8338, 1.5335, 0.5112, 0.1704, 0.0568, 0.0187}},
		{600, [6]float64{4.3162, 1.7265, 0.5755, 0.1918, 0.0639, 0.0211}},
		{700, [6]float64{4.7711, 1.9084, 0.6361, 0.2120, 0.0707, 0.0233}},
		{750, [6]float64{4.9899, 1.9960, 0.6653, 0.2218, 0.0739, 0.0244}},
		{800, [6]float64{5.2037, 2.0815, 0.6938, 0.2313, 0.0771, 0.0254}},
		{900, [6]float64{5.6177, 2.2471, 0.7490, 0.2497, 0.0832, 0.0275}},
		{1000, [6]float64{6.0159, 2.4064, 0.8021, 0.2674, 0.0891, 0.0294}},
		{1200, [6]float64{6.7729, 2.7091, 0.9030, 0.3010, 0.1003, 0.0331}},
		{1250, [6]float64{6.9550, 2.7820, 0.9273, 0.3091, 0.1030, 0.0340}},
		{1500, [6]float64{7.8300, 3.1320, 1.0440, 0.3480, 0.1160, 0.0383}},
		{1600, [6]float64{8.1655, 3.2662, 1.0887, 0.3629, 0.1210, 0.0399}},
		{1800, [6]float64{8.8152, 3.5261, 1.1754, 0.3918, 0.1306, 0.0431}},
		{2000, [6]float64{9.4400, 3.7760, 1.2587, 0.4196, 0.1399, 0.0462}},
		{2500, [6]float64{10.9135, 4.3654, 1.4551, 0.4850, 0.1617, 0.0534}},
	}
	for _, row := range table {
		for i, name := range classes {
			s, c := class(t, "EN16798", name)
			if got := s.Limit(c, row.pa); math.Abs(got-row.want[i]) > 0.00005001 {
				t.Errorf("%s at %g Pa: got %.6f, want %.4f", name, row.pa, got, row.want[i])
			}
		}
	}
}

// Another road to the power: f/k raised to 20 is p raised to 13, since 0.65 is
// 13/20.
func TestExponentByWholePowers(t *testing.T) {
	for _, scheme := range Names() {
		s, _ := Lookup(scheme)
		for _, c := range s.Classes() {
			for _, pa := range []float64{1, 12.5, 400, 2000} {
				left, right := 1.0, 1.0
				for range 20 {
					left *= s.Limit(c, pa) / c.K
				}
				for range 13 {
					right *= pa
				}
				if math.Abs(left/right-1) > 1e-12 {
					t.Errorf("%s %s at %g Pa: (f/k)^20 is %g, p^13 is %g", scheme, c.Name, pa, left, right)
				}
			}
		}
	}
}

func TestLimitAtTheEdges(t *testing.T) {
	s, c := class(t, "EN", "B")
	if got := s.Limit(c, 0); got != 0 {
		t.Errorf("at 0 Pa: got %g, want 0", got)
	}
	for _, pa := range []float64{-400, math.NaN(), math.Inf(-1)} {
		if got := s.Limit(c, pa); !math.IsNaN(got) {
			t.Errorf("at %g Pa: got %g, want NaN", pa, got)
		}
	}
}

func TestClassSteps(t *testing.T) {
	// Swedish VVS AMA practice (second-hand): each class is three times as
	// tight as the one before. A loose text that calls C a tenth of A is not
	// matched: it is a ninth.
	for _, scheme := range []string{"EN", "UK"} {
		for _, pair := range [][2]string{{"A", "B"}, {"B", "C"}, {"C", "D"}} {
			s, loose := class(t, scheme, pair[0])
			_, tight := class(t, scheme, pair[1])
			if got := s.Limit(loose, 400) / s.Limit(tight, 400); math.Abs(got-3) > 1e-12 {
				t.Errorf("%s %s over %s: got %g, want 3", scheme, pair[0], pair[1], got)
			}
		}
	}
	// The French default is 2.5 times class A (read), which is ATC6.
	en, a := class(t, "EN", "A")
	atc, six := class(t, "EN16798", "ATC6")
	if got := atc.Limit(six, 80) / en.Limit(a, 80); math.Abs(got-2.5) > 1e-12 {
		t.Errorf("ATC6 over A: got %g, want 2.5", got)
	}
	// EN 16798-3 renames A to D as ATC5 to ATC2 (second-hand).
	for _, pair := range [][2]string{{"A", "ATC5"}, {"B", "ATC4"}, {"C", "ATC3"}, {"D", "ATC2"}} {
		_, product := class(t, "EN", pair[0])
		_, system := class(t, "EN16798", pair[1])
		if product.K != system.K {
			t.Errorf("%s has k %g, %s has %g: want the same", pair[0], product.K, pair[1], system.K)
		}
	}
}

// ASHRAE Fundamentals 2021 ch. 21 (read): eq. 37 turns 3 % of a design flow of
// 10 L/s per m2 into a class. At 125 Pa the text prints 0.13 and says "about
// three times" 0.004: a decimal slip, 0.0130 is meant.
func TestClassFromShareOfFlow(t *testing.T) {
	s, one := class(t, "US", "1")
	for _, tt := range []struct{ pa, k, within float64 }{{750, 0.004, 0.0005}, {125, 0.0130, 0.00005}} {
		allowed := 0.03 * 10
		k := allowed / s.Limit(one, tt.pa) * one.K
		if math.Abs(k-tt.k) > tt.within {
			t.Errorf("3 %% of 10 L/s per m2 at %g Pa: k is %.5f, want %.4f", tt.pa, k, tt.k)
		}
	}
	// ASHRAE 2012 as cited in a paper of 2014 (read): class 3 at 10 in. w.g.
	// and 2 cfm per ft2 loses 6.7 % of the flow, at 0.5 in. w.g. and 5 cfm per
	// ft2 0.4 %.
	_, three := class(t, "US", "3")
	for _, tt := range []struct{ inches, cfmPerFt2, percent float64 }{{10, 2, 6.7}, {0.5, 5, 0.4}} {
		flow := tt.cfmPerFt2 * CfmLS / SquareFootM2
		if got := 100 * s.Limit(three, tt.inches*InchWaterPa) / flow; math.Abs(got-tt.percent) > 0.05 {
			t.Errorf("class 3 at %g in. w.g.: got %.3f %% of flow, want %.1f", tt.inches, got, tt.percent)
		}
	}
}

// ASHRAE Fundamentals 2021 ch. 21 example 7 (SI transcription, read). Its table
// 8 prints classes 0.003, 0.006 and 0.004 with one figure and allowables that
// match neither them nor the unrounded eq. 39 (11.36, 15.15, 17.03, 4.55 and
// 22.70 L/s); they are held to 6 % only.
func TestAshraeExampleRoughly(t *testing.T) {
	text := "name = \"example 7\"\n[exponent]\nvalue = 0.65\n[[class]]\nname = \"s1\"\nk = 0.003\n[[class]]\nname = \"s2\"\nk = 0.006\n[[class]]\nname = \"s3\"\nk = 0.004\n"
	s, err := Load(strings.NewReader(text), "example.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		class               string
		area, pa, printedLS float64
	}{{"s1", 46.5, 750, 10}, {"s2", 62, 250, 14}, {"s3", 69.7, 500, 15}, {"s2", 18.6, 250, 4}, {"s2", 92.9, 250, 20}, {"s2", 111.5, 250, 24}} {
		c, _ := s.Class(tt.class)
		if got := s.Limit(c, tt.pa) * tt.area; math.Abs(got/tt.printedLS-1) > 0.06 {
			t.Errorf("%g m2 at %g Pa: got %.2f L/s, printed %g", tt.area, tt.pa, got, tt.printedLS)
		}
	}
}

// GB 50243-2002 as quoted in supervision rules (second-hand): 0.1056, 0.0352
// and 0.0117 m3/h per m2, some 8.6 and 8.3 % above EN A, B and C.
func TestChineseClassesAreNotTheEuropeanOnes(t *testing.T) {
	for _, tt := range []struct {
		gb, en  string
		percent float64
	}{{"low", "A", 8.6}, {"medium", "B", 8.6}, {"high", "C", 8.3}} {
		_, gb := class(t, "GB50243", tt.gb)
		_, en := class(t, "EN", tt.en)
		if got := 100 * (gb.K/en.K - 1); math.Abs(got-tt.percent) > 0.06 {
			t.Errorf("%s over %s: got %.2f %% more, want %.1f", tt.gb, tt.en, got, tt.percent)
		}
	}
}
