package units

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"
)

// TestFactors: one of each US unit in SI as published, NIST SP 811 (2008)
// appendix B.8, seven digits (from memory, unverified).
func TestFactors(t *testing.T) {
	for _, tt := range []struct {
		q    Quantity
		want float64
		what string
	}{
		{Length, 3.048e-1, "foot to metre"},
		{Size, 2.54e-2, "inch to metre"},
		{Area, 9.290304e-2, "square foot to square metre"},
		{Flow, 4.719474e-1, "cubic foot per minute to litre per second"},
		{Pressure, 2.490889e2, "inch of water, conventional, to pascal"},
		{Force, 4.448222, "pound-force to newton"},
		{Weight, 4.535924e-1, "pound (avoirdupois) to kilogram"},
		// 4.719474e-1 over 9.290304, by hand
		{PerArea, 5.080000e-2, "cfm per 100 ft2 to L/s per m2"},
		{JointRatio, 3.280840, "1/ft to 1/m, reciprocal foot"},
	} {
		if got := US.Back(tt.q, 1); math.Abs(got/tt.want-1) > 1.5e-7 {
			t.Errorf("%s: %.8g, want %.7g", tt.what, got, tt.want)
		}
		if got := US.Of(tt.q, tt.want); math.Abs(got-1) > 1.5e-7 {
			t.Errorf("%s turned: %.9g, want 1", tt.what, got)
		}
	}
	// Water of other temperatures: 249.082 Pa at 39.2 F, 248.84 at 60 F (same
	// source). The conventional inch is neither.
	if v := US.Back(Pressure, 1); v < 249.085 {
		t.Errorf("%v Pa isn't the conventional inch", v)
	}
}

func TestParse(t *testing.T) {
	for name, want := range map[string]System{"si": SI, "us": US} {
		if got, ok := Parse(name); got != want || !ok || got.String() != name {
			t.Errorf("%s: %v %v", name, got, ok)
		}
	}
	for _, name := range []string{"", "SI", "imperial", "us "} {
		if _, ok := Parse(name); ok {
			t.Errorf("%q was taken", name)
		}
	}
}

// TestTexts: what people read, worked out by hand.
func TestTexts(t *testing.T) {
	two := 2 * US.Back(Pressure, 1)
	for _, tt := range []struct{ got, want string }{
		{SI.Area(84.568), "84.57 m2"}, {US.Area(84.568), "910.3 ft2"}, {US.Area(9), "96.88 ft2"}, {US.Area(-1e-9), "0.00 ft2"},
		{SI.Pressure(500), "500 Pa"}, {US.Pressure(500), "2.007 in. w.g."}, {US.Pressure(two), "2 in. w.g."}, {US.Pressure(400), "1.606 in. w.g."},
		{US.Pressure(200), "0.803 in. w.g."}, {US.Pressure(two / 4), "0.5 in. w.g."}, {US.Pressure(two + 0.01), "2.000 in. w.g."}, {US.Pressure(2500), "10.037 in. w.g."},
		{SI.Limit(12.299999), "12.29 L/s"}, {US.Limit(12.299999), "26.06 cfm"}, {US.Limit(US.Back(Flow, 10)), "10.00 cfm"}, {US.Limit(100), "211.8 cfm"},
		{SI.Flow(12.3456), "12.35 L/s"}, {US.Flow(12.3456), "26.16 cfm"}, {US.Flow(US.Back(Flow, 25)), "25 cfm"}, {US.Flow(12345), "26158 cfm"},
		{US.LimitPerArea(0.0508), "1.00 cfm per 100 ft2"}, {US.LimitPerArea(0.15), "2.95 cfm per 100 ft2"},
		{SI.Length(6), "6.0 m"}, {US.Length(6), "19.7 ft"}, {US.Length(0.3048), "1.0 ft"},
		{SI.Force(240), "240 N"}, {US.Force(240), "54.0 lbf"}, {US.Force(1000), "225 lbf"}, {US.Weight(24.5), "54.0 lb"},
		{SI.Thickness(0.0008), "0.8 mm"}, {US.Thickness(0.0008), "0.0315 in"}, {US.Thickness(0.000635), "0.025 in"},
		{SI.Text(Pressure, 498.17782, 5), "498.18 Pa"}, {SI.Text(Area, 10, -1), "10 m2"}, {US.Text(Area, 10, -1), "107.6 ft2"},
	} {
		if tt.got != tt.want {
			t.Errorf("got %q, want %q", tt.got, tt.want)
		}
	}
}

// TestSizes: 25.4 mm to the inch, by hand; an exact inch size stays one.
func TestSizes(t *testing.T) {
	in := func(v float64) float64 { return v * 25.4 / 1000 }
	for _, tt := range []struct{ got, want string }{
		{SI.Rectangular(0.6, 0.4), "600 x 400"}, {US.Rectangular(0.6, 0.4), "23.62 x 15.75 in"}, {US.Rectangular(in(24), in(16.5)), "24 x 16.5 in"},
		{SI.Circular(0.315), "dia 315"}, {US.Circular(0.315), "dia 12.4 in"}, {US.Circular(in(12.0625)), "dia 12.0625 in"},
		{SI.FlatOval(0.525, 0.15), "525 x 150 oval"}, {US.FlatOval(0.525, 0.15), "20.67 x 5.91 in oval"},
		{SI.Box(2, 1, 1.5), "2000 x 1000 x 1500"}, {US.Box(in(80), in(40), in(60)), "80 x 40 x 60 in"},
		{SI.Circular(in(12)), "dia 304.8"},
		{US.Reread("600 x 400"), "23.62 x 15.75 in"}, {US.Reread("dia 304.8"), "dia 12 in"}, {US.Reread("525 x 150 oval"), "20.67 x 5.91 in oval"},
		{US.Reread(""), ""}, {SI.Reread("600 x 400"), "600 x 400"}, {US.Reread("size not known"), "size not known"},
	} {
		if tt.got != tt.want {
			t.Errorf("got %q, want %q", tt.got, tt.want)
		}
	}
	for k := range 16 * 120 { // every sixteenth up to 10 ft
		x := float64(k+1) / 16
		s := strings.TrimSuffix(strings.TrimPrefix(US.Circular(in(x)), "dia "), " in")
		if v, err := strconv.ParseFloat(s, 64); err != nil || v != x {
			t.Fatalf("%v in became %s", x, s)
		}
	}
}

// TestLimitsAreNeverMore: a limit that is read in US units permits no more than
// the limit in SI, and less than one unit of its last place less.
func TestLimitsAreNeverMore(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 20000 {
		q := math.Exp(r.Float64()*16 - 8)
		for _, kind := range []Quantity{Flow, PerArea} {
			s := US.Cut(kind, q)
			v, err := strconv.ParseFloat(s, 64)
			x := q / US.Back(kind, 1)
			_, rest, _ := strings.Cut(s, ".")
			if unit := math.Pow10(-len(rest)); err != nil || v > x*(1+1e-11) || v < x-unit*(1+1e-6) {
				t.Fatalf("%v became %s, exactly %v", q, s, x)
			}
		}
	}
}

// TestFiguresTurnBack: whatever is shown is the figure within half a unit of its
// last place, and has three significant digits but for what is less than 0.1.
func TestFiguresTurnBack(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 5000 {
		v := math.Exp(r.Float64()*12 - 4)
		for q := range quantities {
			for name, s := range map[string]string{"fixed": US.Fixed(q, v), "figure": US.Figure(q, v, -1)} {
				shown, err := strconv.ParseFloat(s, 64)
				_, rest, _ := strings.Cut(s, ".")
				half := math.Pow10(-len(rest)) / 2
				if q == Size {
					half = 0.005 // noughts are taken off
				}
				if err != nil || math.Abs(shown-US.Of(q, v)) > half*(1+1e-9) {
					t.Fatalf("%s of %s: %v became %s, exactly %v", name, US.Unit(q), v, s, US.Of(q, v))
				}
			}
		}
	}
	for _, s := range []string{US.Figure(Flow, math.Inf(1), 3), SI.Figure(Flow, math.Inf(1), 3)} {
		if s != "+Inf" {
			t.Errorf("infinity became %s", s)
		}
	}
}
