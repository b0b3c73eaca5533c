package quantity

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"
	"testing/quick"

	"blankoff/takeoff"
)

// asColumn makes a column as its heading would.
func asColumn(t testing.TB, heading string) *Column {
	t.Helper()
	c := map[string]Column{
		"width_mm": {Unit: Millimetre}, "Width (in)": {Unit: Inch}, "Width (m)": {Unit: metre(t, "m")}, "Width (cm)": {Unit: metre(t, "cm")},
		"length_mm": {Unit: Millimetre}, "Length (in)": {Unit: Inch}, "diameter_mm": {Unit: Millimetre, Diameter: true},
		"offset_mm": {Unit: Millimetre, Signed: true}, "offset2_mm": {Unit: Millimetre, Signed: true}, "branch_shift_mm": {Unit: Millimetre, Signed: true},
		"angle_deg": {Measure: takeoff.Degrees}, "quantity": {Measure: takeoff.Count}, "gores": {Measure: takeoff.Count},
		"test_pa": {Measure: takeoff.Pressure}, "Test pressure (in wg)": {Measure: takeoff.Pressure, Unit: metre(t, "in wg")},
		"Design (kPa)": {Measure: takeoff.Pressure, Unit: metre(t, "kPa")}, "area_m2": {Measure: takeoff.Areas},
		"stated_area_m2": {Measure: takeoff.Areas}, "Stated area (sq ft)": {Measure: takeoff.Areas, Unit: metre(t, "sq ft")},
		"end_minutes": {Measure: takeoff.Minutes},
	}[heading]
	if c.Measure == takeoff.Text {
		c.Measure = takeoff.Lengths
	}
	if c.Unit.num == 0 {
		c.Unit = Default(c.Measure)
	}
	c.Max = Largest(c.Measure)
	return &c
}

// metre is any unit by its name.
func metre(t testing.TB, name string) Unit {
	t.Helper()
	u, ok := UnitOf(name)
	if !ok {
		t.Fatalf("%q isn't a unit", name)
	}
	return u
}

func TestNumbers(t *testing.T) {
	tests := []struct {
		heading, cell string
		want          float64
	}{
		{"width_mm", "600", 0.6}, {"width_mm", "600.5", 0.6005}, {"width_mm", ".5", 0.0005}, {"width_mm", "5.", 0.005},
		{"width_mm", "+600", 0.6}, {"width_mm", "0600", 0.6}, {"width_mm", "0", 0}, {"width_mm", "1.5e3", 1.5},
		{"width_mm", "600 mm", 0.6}, {"width_mm", "600mm", 0.6}, {"width_mm", "60 cm", 0.6}, {"width_mm", "0.6 m", 0.6},
		{"width_mm", "24 in", 0.6096}, {"width_mm", `24"`, 0.6096}, {"width_mm", "24”", 0.6096}, {"width_mm", "24''", 0.6096}, {"width_mm", "24 in.", 0.6096},
		{"width_mm", "2 ft", 0.6096}, {"width_mm", "2'", 0.6096}, {"width_mm", `2'-6"`, 0.762}, {"width_mm", `2' 6"`, 0.762}, {"width_mm", "2 ft 6 in", 0.762},
		{"width_mm", `2'-6 1/2"`, 0.7747}, {"width_mm", `24 1/2"`, 0.6223}, {"Width (in)", "24-1/2", 0.6223}, {"Width (in)", "1/2", 0.0127}, {"Width (in)", "24½", 0.6223},
		{"Width (in)", "24", 0.6096}, {"Width (in)", "600 mm", 0.6}, {"Width (m)", "0.6", 0.6}, {"Width (cm)", "60", 0.6},
		{"width_mm", "1,5", 0.0015}, {"width_mm", "0,125", 0.000125}, {"width_mm", "1,50", 0.0015}, {"width_mm", "1234,567", 1.234567},
		{"length_mm", "1,500.5", 1.5005}, {"length_mm", "1.500,5", 1.5005}, {"length_mm", "1,500,000", 1500}, {"length_mm", "1.500.000", 1500},
		{"length_mm", "1.500", 0.0015}, {"length_mm", "1 500", 1.5}, {"length_mm", "12\u202f500 mm", 12.5}, {"length_mm", "1'500", 1.5}, {"length_mm", "1'500.5", 1.5005},
		{"length_mm", "1 500,5", 1.5005}, {"Length (in)", "2'", 0.6096}, {"diameter_mm", "dia 315", 0.315}, {"diameter_mm", "DN315", 0.315}, {"diameter_mm", "315 dia.", 0.315},
		{"diameter_mm", `Ø12"`, 0.3048}, {"width_mm", "24 Zoll", 0.6096}, {"width_mm", "2 pulgadas", 0.0508},
		{"offset_mm", "-300", -0.3}, {"offset2_mm", "−300", -0.3}, {"branch_shift_mm", "-12 in", -0.3048}, {"offset_mm", "- 300", -0.3},
		{"diameter_mm", "Ø300", 0.3}, {"diameter_mm", "ø 300 mm", 0.3},
		{"angle_deg", "90°", 90}, {"angle_deg", "22.5 deg", 22.5}, {"angle_deg", "90", 90},
		{"quantity", "2", 2}, {"quantity", "2 no.", 2}, {"quantity", "2.0", 2}, {"quantity", "3 off", 3}, {"gores", "5", 5},
		{"test_pa", "400", 400}, {"test_pa", "400 Pa", 400}, {"test_pa", "0.4 kPa", 400}, {"test_pa", "2 in. w.g.", 498.1778}, {"test_pa", "4 mbar", 400},
		{"Test pressure (in wg)", "1", 249.0889}, {"Design (kPa)", "1.5", 1500},
		{"area_m2", "12.5", 12.5}, {"stated_area_m2", "100 ft2", 9.290304}, {"stated_area_m2", "1 sq. ft", 0.09290304},
		{"end_minutes", "15", 15}, {"end_minutes", "15 min", 15},
	}
	for _, tt := range tests {
		v, trouble := asColumn(t, tt.heading).Number(tt.cell)
		if trouble != "" || math.Abs(v-tt.want) > 1e-15*max(1, math.Abs(tt.want)) {
			t.Errorf("%s %q = %v %q, want %v", tt.heading, tt.cell, v, trouble, tt.want)
		}
	}
}

func TestNumbersRefused(t *testing.T) {
	const digits = "isn't a number"
	tests := []struct{ heading, cell, says string }{
		{"width_mm", "1,500", "could be 1500 or 1.5;"}, {"width_mm", "12,500", "could be 12500 or 12.5;"}, {"width_mm", "1,000", "could be 1000 or 1;"},
		{"width_mm", "-300", "can't be negative"}, {"width_mm", "−300", "can't be negative"}, {"width_mm", "-0", "can't be negative"},
		{"offset_mm", "-1,500", "could be 1500 or 1.5;"},
		{"width_mm", "NaN", digits}, {"width_mm", "nan", digits}, {"width_mm", "Inf", digits}, {"width_mm", "-inf", digits}, {"width_mm", "Infinity", digits},
		{"width_mm", "0x1F", digits}, {"width_mm", "1_000", digits}, {"width_mm", "1e99", "too large"}, {"width_mm", "1e400", "too large"}, {"width_mm", "99999999999999999999", "too large"},
		{"width_mm", "600x400", digits}, {"width_mm", "600 400", digits}, {"width_mm", "abc", digits}, {"width_mm", "600?", digits},
		{"width_mm", ".", digits}, {"width_mm", ",", digits}, {"width_mm", "1,", digits}, {"width_mm", ",5", digits}, {"width_mm", "1.2.3", digits}, {"width_mm", "1,2,3", digits},
		{"width_mm", "12,34,567", digits}, {"width_mm", "--3", digits}, {"width_mm", "(300)", digits}, {"width_mm", "mm", digits}, {"width_mm", "1/2", "fractions are for inches"},
		{"width_mm", "24 1/0 in", "isn't a number"}, {"width_mm", `2'-13"`, "isn't feet and inches"}, {"width_mm", "5 kg", digits}, {"width_mm", "5 Pa", "doesn't fit"},
		{"area_m2", "5 m", "doesn't fit"}, {"test_pa", "400 mm", "doesn't fit"}, {"quantity", "2.5", "whole number"}, {"quantity", "2 m", "doesn't fit"}, {"quantity", "-2", "can't be negative"},
		{"angle_deg", "-90", "can't be negative"}, {"test_pa", "-400", "can't be negative"}, {"width_mm", "Ø300", digits}, {"width_mm", "2026-03-01", digits},
	}
	for _, tt := range tests {
		if v, trouble := asColumn(t, tt.heading).Number(tt.cell); !strings.Contains(trouble, tt.says) {
			t.Errorf("%s %q = %v %q, want a fault with %q", tt.heading, tt.cell, v, trouble, tt.says)
		}
	}
}

// In a file whose cells are parted by semicolons the comma is for decimals, and
// a point may part thousands.
func TestSemicolonNumbers(t *testing.T) {
	s := *asColumn(t, "width_mm")
	s.CommaFile = true
	for cell, want := range map[string]float64{"1,5": 0.0015, "600": 0.6, "12.5": 0.0125, "0.125": 0.000125, "1.500,5": 1.5005} {
		if v, trouble := s.Number(cell); trouble != "" || v != want {
			t.Errorf("%q = %v %q, want %v", cell, v, trouble, want)
		}
	}
	for _, cell := range []string{"1.500", "1,500"} {
		if _, trouble := s.Number(cell); !strings.Contains(trouble, "could be 1500 or 1.5;") {
			t.Errorf("%q: %q, want both readings", cell, trouble)
		}
	}
}

// A size in inches gives the very float64 that its millimetres give:
// 24 in is 609.6 mm (1 in = 25.4 mm exactly).
func TestInchesEqualMillimetres(t *testing.T) {
	mm, in := asColumn(t, "width_mm"), asColumn(t, "Width (in)")
	for n := range 20000 {
		inches := strconv.FormatFloat(float64(n)/8, 'f', -1, 64)
		thousandths := n * 3175 // of a mm: an eighth of an inch is 3.175 mm
		a, bad1 := in.Number(inches)
		b, bad2 := mm.Number(fmt.Sprintf("%d.%03d", thousandths/1000, thousandths%1000))
		if bad1 != "" || bad2 != "" || a != b {
			t.Fatalf("%s in: %v m by inches, %v m by millimetres %s%s", inches, a, b, bad1, bad2)
		}
	}
	if v, _ := in.Number("24"); math.Abs(v-0.6096) > 1e-15 {
		t.Errorf("24 in = %v m", v)
	}
}

// Every decimal that a person may type reads as strconv reads it, to one
// rounding of the unit.
func TestDecimalsAgainstStrconv(t *testing.T) {
	s := asColumn(t, "length_mm")
	check := func(mant uint32, dec uint8) bool {
		typed := strconv.FormatFloat(float64(mant)/math.Pow(10, float64(dec%7)), 'f', int(dec%7), 64)
		want, _ := strconv.ParseFloat(typed+"e-3", 64)
		v, trouble := s.Number(typed)
		if want > 1e4 {
			return strings.Contains(trouble, "too large")
		}
		return trouble == "" && v == want
	}
	if err := quick.Check(check, &quick.Config{MaxCount: 20000}); err != nil {
		t.Error(err)
	}
}

// Numbers with more digits than a float64 holds are rounded once or twice, not
// spoilt: against exact fractions.
func TestLongNumbers(t *testing.T) {
	factors := map[string]*big.Rat{"length_mm": big.NewRat(1, 1000), "Length (in)": big.NewRat(254, 10000), "Stated area (sq ft)": big.NewRat(9290304, 100000000)}
	for heading, factor := range factors {
		s := asColumn(t, heading)
		for _, typed := range []string{"123456.78901234", "12345.6789012345", "1234.5678901234567", "0.123456789012345678", "99999.9999999999", "0.00000000000000000001234"} {
			r, ok := new(big.Rat).SetString(typed)
			want, _ := r.Mul(r, factor).Float64()
			v, trouble := s.Number(typed)
			if !ok || trouble != "" || math.Abs(v-want) > 4e-16*want {
				t.Errorf("%s %s = %v %s, want %v", heading, typed, v, trouble, want)
			}
		}
	}
}
