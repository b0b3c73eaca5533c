package surface

import "math"

// Breeches is a round main of radius R that splits into two legs of radius r,
// whose ends stand a length L further on and a spread E to either side of the
// main's axis.
type Breeches struct {
	R, Leg, L, E float64
}

// Area is the area of both legs. Each is an oblique frustum (R to r, shifted E
// over L) kept only on its own side of the middle plane. On the generator at
// angle p the frustum's circle has radius rho(t) = R + (r-R) t and lies on its
// own side from t0 = max(0, -R cos p / (E + (r-R) cos p)) on, so
//
//	A = 2 integral 0..2pi of sqrt(L^2 + (E cos p + r - R)^2) (1-t0) (rho(t0)+r)/2 dp
//
// It needs E >= r: otherwise the legs' ends overlap. Derived here; checked
// against a mesh.
func (b Breeches) Area() float64 { return b.area(Integrate) }

// AreaStrips is Area by n strips a quarter.
func (b Breeches) AreaStrips(n int) float64 { return b.area(StripsOf(n)) }

func (b Breeches) area(integrate integrator) float64 {
	strip := func(p float64) float64 {
		c := math.Cos(p)
		t := 0.0
		if c < 0 {
			t = math.Min(1, -b.R*c/(b.E+(b.Leg-b.R)*c))
		}
		rho := b.R + (b.Leg-b.R)*t
		return math.Hypot(b.L, b.E*c+b.Leg-b.R) * (1 - t) * (rho + b.Leg) / 2
	}
	return 4 * (integrate(strip, 0, math.Pi/2) + integrate(strip, math.Pi/2, math.Pi))
}
