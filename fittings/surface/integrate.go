package surface

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// nodes is the number of Gauss-Legendre nodes on one interval.
const nodes = 16

// deepest is the deepest halving of an interval. An integrand with a sharp bend
// (a short loft whose ends cross in plan) needs about 30.
const deepest = 44

// mostHalvings is the most halvings in one integral.
const mostHalvings = 4000

var nodeX, nodeW = legendreNodes()

func legendreNodes() (x, w [nodes]float64) {
	quad.Legendre{}.FixedLocations(x[:], w[:], -1, 1)
	return x, w
}

// Integrate is the integral of f from a to b by Gauss-Legendre quadrature,
// halving an interval until both halves agree with the whole to 1e-13 of the
// integral. f must be finite and is taken to be smooth but for a few points.
func Integrate(f func(float64) float64, a, b float64) float64 {
	whole := gauss(f, a, b)
	q := quadrature{f: f, slack: 1e-13 * math.Abs(whole), left: mostHalvings}
	return q.halve(a, b, whole, 0)
}

// quadrature is one run of Integrate. The budget of halvings keeps an integrand
// whose own rounding is over the slack from being halved without end.
type quadrature struct {
	f     func(float64) float64
	slack float64
	left  int
}

func (q *quadrature) halve(a, b, whole float64, depth int) float64 {
	mid := (a + b) / 2
	low, high := gauss(q.f, a, mid), gauss(q.f, mid, b)
	q.left--
	if math.Abs(low+high-whole) <= q.slack || depth == deepest || q.left <= 0 {
		return low + high
	}
	return q.halve(a, mid, low, depth+1) + q.halve(mid, b, high, depth+1)
}

func gauss(f func(float64) float64, a, b float64) float64 {
	half, mid := (b-a)/2, (a+b)/2
	sum := 0.0
	for i, x := range nodeX {
		sum += nodeW[i] * f(mid+half*x)
	}
	return sum * half
}

// Strips is the integral of f from a to b by n strips of equal width, each as
// high as f at its middle: what a person does in a spreadsheet. It's the second
// opinion that workings print.
func Strips(f func(float64) float64, a, b float64, n int) float64 {
	wide := (b - a) / float64(n)
	sum := 0.0
	for i := range n {
		sum += f(a + (float64(i)+0.5)*wide)
	}
	return sum * wide
}

// StripsOf is Strips with a fixed number of strips.
func StripsOf(n int) func(f func(float64) float64, a, b float64) float64 {
	return func(f func(float64) float64, a, b float64) float64 { return Strips(f, a, b, n) }
}
