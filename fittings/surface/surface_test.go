package surface

import (
	"math"
	"math/rand"
	"testing"

	"gonum.org/v1/gonum/mathext"
)

func holds(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: got %.15g, want %.15g", what, got, want)
	}
}

// TestIntegrate holds integrals with known values, sharp bends among them.
func TestIntegrate(t *testing.T) {
	for _, c := range []struct {
		what       string
		f          func(float64) float64
		a, b, want float64
	}{
		{"x^2", func(x float64) float64 { return x * x }, 0, 3, 9},
		{"cos", math.Cos, 0, math.Pi / 2, 1},
		{"|x - 0.3|", func(x float64) float64 { return math.Abs(x - 0.3) }, 0, 1, (0.09 + 0.49) / 2},
		{"a bend 1e-6 wide", func(x float64) float64 { return math.Hypot(1e-6, x-0.3) }, 0, 1,
			bentLine(0.7, 1e-6) + bentLine(0.3, 1e-6)},
		{"half circle", func(x float64) float64 { return math.Sqrt(math.Max(0, 1-x*x)) }, -1, 1, math.Pi / 2},
		{"nothing", func(float64) float64 { return 0 }, 0, 1, 0},
	} {
		tol := 1e-12
		if c.what == "half circle" {
			tol = 1e-9
		}
		holds(t, c.what, Integrate(c.f, c.a, c.b), c.want, tol)
	}
	holds(t, "256 strips", Strips(math.Cos, 0, math.Pi/2, 256), 1, 2e-6)
}

// bentLine is integral 0..x of sqrt(l^2 + t^2) dt.
func bentLine(x, l float64) float64 {
	return (x*math.Hypot(x, l) + l*l*math.Asinh(x/l)) / 2
}

// TestNoiseEnds: an integrand whose rounding never settles still ends.
func TestNoiseEnds(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	calls := 0
	Integrate(func(float64) float64 { calls++; return r.Float64() }, 0, 1)
	if limit := nodes * (1 + 2*(mostHalvings+deepest+2)); calls > limit {
		t.Errorf("%d evaluations, limit %d", calls, limit)
	}
}

// TestSquashedLoft: a loft of no height covers the plan between its ends.
func TestSquashedLoft(t *testing.T) {
	square := Outline{FlatX: 1, FlatY: 1}
	for _, c := range []struct {
		what string
		f    Loft
		want float64
	}{
		{"square to circle inside", Loft{Near: square, Far: Outline{R: 0.3}, L: 1e-9}, 1 - math.Pi*0.09},
		{"square to circle, shifted", Loft{Near: square, Far: Outline{R: 0.3}, L: 1e-9, X: 0.1, Y: -0.15}, 1 - math.Pi*0.09},
		{"circle to circle, shifted", Loft{Near: Outline{R: 0.5}, Far: Outline{R: 0.2}, L: 1e-9, X: 0.2}, math.Pi * (0.25 - 0.04)},
		{"oval to oval", Loft{Near: Outline{FlatX: 1, R: 0.4}, Far: Outline{FlatX: 0.6, R: 0.2}, L: 1e-9},
			math.Pi*0.16 + 0.8 - math.Pi*0.04 - 0.24},
		{"square to square", Loft{Near: square, Far: Outline{FlatX: 0.5, FlatY: 0.4}, L: 1e-9, X: 0.2}, 1 - 0.2},
	} {
		holds(t, c.what, c.f.Area(), c.want, 1e-8)
	}
}

// TestShortLoft: a loft a millimetre long whose ends cross in plan keeps its
// figures; the trapezoid rule on a periodic integrand is the other route.
func TestShortLoft(t *testing.T) {
	for _, length := range []float64{1e-3, 0.05, 2} {
		f := Loft{Near: Outline{R: 0.3}, Far: Outline{R: 0.2}, L: length, X: 0.35}
		const n = 1 << 17
		sum := 0.0
		for i := range n {
			sum += math.Hypot(length, 0.1-0.35*math.Cos(2*math.Pi*float64(i)/n))
		}
		holds(t, "shifted cone", f.Area(), 0.25*sum*2*math.Pi/n, 1e-11)
	}
	cylinder := Loft{Near: Outline{R: 0.25}, Far: Outline{R: 0.25}, L: 1, X: 0.4}
	k2 := 0.16 / 1.16
	holds(t, "sheared cylinder by E(k)", cylinder.Area(), 2*0.5*math.Sqrt(1.16)*mathext.CompleteE(k2), 1e-12)
}

func TestSteepest(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	for range 50 {
		f := Loft{
			Near: Outline{FlatX: r.Float64(), FlatY: r.Float64(), R: r.Float64() / 2},
			Far:  Outline{FlatX: r.Float64(), FlatY: r.Float64(), R: r.Float64() / 2},
			L:    1, X: r.Float64() - 0.5, Y: r.Float64() - 0.5,
		}
		most := 0.0
		for i := range 4000 {
			for _, sx := range []float64{1, -1} {
				for _, sy := range []float64{1, -1} {
					slant := f.slant(math.Pi/2*float64(i)/3999, sx, sy)
					most = math.Max(most, math.Sqrt(slant*slant-1))
				}
			}
		}
		holds(t, "steepest", f.Steepest(), most, 1e-6)
	}
}

// TestSaddles holds the elliptic forms to the textbook's and to the integrals.
func TestSaddles(t *testing.T) {
	for _, k := range []float64{0.1, 0.5, 0.8, 0.99, 1} {
		s := Saddle{R: 1, Beta: 1.1}
		text := 4 * mathext.CompleteE(k*k) / math.Sin(1.1)
		if k < 1 {
			text -= 4 * (1 - k*k) * mathext.CompleteK(k*k) / math.Sin(1.1)
		}
		holds(t, "hole", s.RoundHole(k), text, 1e-12)
		holds(t, "hole by integral", s.roundHole(k, Integrate), text, 1e-9)
		holds(t, "branch by integral", s.roundBranch(k, 5, Integrate), s.RoundBranch(k, 5), 1e-11)
		holds(t, "hole by strips", s.RoundHoleStrips(k, 2000), text, 1e-5)
	}
	tiny := Saddle{R: 10, Beta: math.Pi / 2}
	holds(t, "a pin-prick", tiny.RoundHole(5e-4), math.Pi*25e-8, 1e-8)
	edge := Saddle{R: 0.25, Shift: 0.15, Beta: math.Pi / 2}
	holds(t, "touching the edge", edge.RoundHole(0.1), 0.046289, 1e-5)
	near := Saddle{R: 0.25, Shift: 0.15 - 1e-12, Beta: math.Pi / 2}
	holds(t, "all but touching", near.RoundHole(0.1), edge.RoundHole(0.1), 1e-6)
}

// TestHoleExceedsBore: by how much a hole exceeds pi r^2, published to a tenth of
// a per cent: 0.1, 3.5, 11 and 27 %.
func TestHoleExceedsBore(t *testing.T) {
	for k, percent := range map[float64]float64{0.1: 0.1, 0.5: 3.5, 0.8: 11, 1: 27} {
		got := 100 * (Saddle{R: 1, Beta: math.Pi / 2}.RoundHole(k)/(math.Pi*k*k) - 1)
		if math.Abs(got-percent) > 0.5 {
			t.Errorf("k %g: %.2f %%, want %g %%", k, got, percent)
		}
	}
}

// TestReach: no point of the meeting curve is further out than Reach.
func TestReach(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	for range 200 {
		s := Saddle{R: 1, Beta: 0.5 + 2*r.Float64()}
		radius := 0.1 + 0.8*r.Float64()
		s.Shift = (1 - radius) * r.Float64()
		most := 0.0
		for i := range 5000 {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / 5000)
			x := s.Shift + radius*sin
			most = math.Max(most, (math.Sqrt(1-x*x)-radius*cos*math.Cos(s.Beta))/math.Sin(s.Beta))
		}
		holds(t, "reach", s.RoundReach(radius), most, 1e-4)
		if bound := s.Reach(radius, radius); bound < most-1e-9 {
			t.Errorf("reach %g of a square branch is under the round one's %g", bound, most)
		}
	}
}

// TestConeMeets: a cone that outgrows its main has no meeting curve, a slimmer one
// has, and its foot lies on both.
func TestConeMeets(t *testing.T) {
	c := Cone{R: 0.25, Crown: 0.175, End: 0.125, Height: 0.15}
	if !c.Meets() {
		t.Error("this cone meets its main")
	}
	for i := range 9 {
		s := math.Sin(math.Pi / 2 * float64(i) / 8)
		z := c.foot(s)
		x := (c.Crown + c.slope()*(c.R-z)) * s
		holds(t, "foot on the main", x*x+z*z, c.R*c.R, 1e-12)
	}
	c.Crown = 0.2
	if c.Meets() {
		t.Error("this cone outgrows its main")
	}
}

// TestBreechesApart: legs that part at once and are as wide as the main are two
// half frusta at first; far apart and long, nearly all of both is kept.
func TestBreechesApart(t *testing.T) {
	b := Breeches{R: 0.2, Leg: 0.2, L: 100, E: 0.2}
	// Two sheared cylinders, each kept where x >= 0: mean half the girth lost
	// at the plant end and none at the far end.
	kept := 2 * 0.2 * Integrate(func(p float64) float64 {
		c := math.Cos(p)
		return math.Hypot(100, 0.2*c) * (1 - math.Max(0, -c))
	}, 0, 2*math.Pi)
	holds(t, "equal legs", b.Area(), kept, 1e-9)
}
