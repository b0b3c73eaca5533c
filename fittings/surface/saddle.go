package surface

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Saddle is a branch that meets a round main. Its axis crosses the main's at
// distance Shift (0 for a centred branch) and angle Beta.
type Saddle struct {
	R     float64 // radius of the main
	Shift float64 // of the branch's axis off the main's, >= 0
	Beta  float64 // angle between the axes, radians, over 0 and under pi
}

// RoundHole is the area that a round branch of radius r <= R - Shift cuts out
// of the main.
//
// Centred, with k = r/R: 4 R^2 [E(k) - (1-k^2) K(k)] / sin(beta), which is
// written 4 r^2 B(k) / sin(beta) with the associate integral
// B = integral 0..pi/2 of cos^2 t / sqrt(1 - k^2 sin^2 t) dt, because the first
// form loses all its figures when k is small. Equal sizes: 4 R^2 / sin(beta).
// Off centre by y0: integral y0-r..y0+r of 2 sqrt(r^2-(y-y0)^2) /
// sqrt(1 - y^2/R^2) dy / sin(beta).
//
// Source: intersection of cylinders, standard mensuration; checked against a
// mesh.
func (s Saddle) RoundHole(r float64) float64 {
	if s.Shift == 0 {
		k := math.Min(1, r/s.R)
		return 4 * r * r * mathext.CompleteB(k*k) / math.Sin(s.Beta)
	}
	return s.roundHole(r, Integrate)
}

// RoundHoleStrips is RoundHole by n strips across the branch.
func (s Saddle) RoundHoleStrips(r float64, n int) float64 {
	return s.roundHole(r, StripsOf(n))
}

// roundHole integrates with y = y0 + r sin p, so that the ends of the interval
// are smooth even where the branch touches the main's edge.
func (s Saddle) roundHole(r float64, integrate integrator) float64 {
	f := func(p float64) float64 {
		c := math.Cos(p)
		y := s.height(r, p)
		if y == 0 {
			return 0
		}
		return 2 * r * r * c * c * s.R / y
	}
	return integrate(f, -math.Pi/2, math.Pi/2) / math.Sin(s.Beta)
}

// height is sqrt(R^2 - (y0 + r sin p)^2), with the difference taken so that it
// keeps its figures near the main's edge.
func (s Saddle) height(r, p float64) float64 {
	up, down := math.Sin((math.Pi/2-p)/2), math.Sin((math.Pi/2+p)/2)
	gapUp := math.Max(0, s.R-s.Shift-r) + 2*r*up*up
	gapDown := math.Max(0, s.R+s.Shift-r) + 2*r*down*down
	return math.Sqrt(gapUp * gapDown)
}

// RoundBranch is the area of a round branch of radius r from the main to its
// free end, which stands a distance S from the main's axis along the branch's.
//
// Centred: 2 pi r S - 4 r R E(k) / sin(beta), k = r/R. Off centre by y0:
// 2 pi r S - r integral 0..2pi of sqrt(R^2 - (y0 + r sin p)^2) dp / sin(beta).
func (s Saddle) RoundBranch(r, S float64) float64 {
	if s.Shift == 0 {
		k := math.Min(1, r/s.R)
		return 2*math.Pi*r*S - 4*r*s.R*mathext.CompleteE(k*k)/math.Sin(s.Beta)
	}
	return s.roundBranch(r, S, Integrate)
}

// RoundBranchStrips is RoundBranch by n strips along the branch.
func (s Saddle) RoundBranchStrips(r, S float64, n int) float64 {
	return s.roundBranch(r, S, StripsOf(n))
}

func (s Saddle) roundBranch(r, S float64, integrate integrator) float64 {
	f := func(p float64) float64 { return s.height(r, p) }
	under := integrate(f, -math.Pi/2, math.Pi/2)
	return 2 * r * (math.Pi*S - under/math.Sin(s.Beta))
}

// SlotHole is the area between two lines along the main at -h/2 and +h/2 from
// the branch's axis, a length w apart along the branch's own width:
// w R [asin((y0+h/2)/R) - asin((y0-h/2)/R)] / sin(beta). It's the whole hole of
// a rectangular branch w x h, and the straight part of a flat-oval one.
func (s Saddle) SlotHole(w, h float64) float64 {
	return w * s.R * (s.arc(h/2) - s.arc(-h/2)) / math.Sin(s.Beta)
}

// arc is the angle of the point on the main's wall that lies y off the branch's
// axis.
func (s Saddle) arc(y float64) float64 {
	return math.Asin(clampOne((s.Shift + y) / s.R))
}

// SideFaces is the area of the two sides of a rectangular or flat-oval branch
// that run along the main, w wide and h apart:
// sum over both of w [S - sqrt(R^2 - (y0 +/- h/2)^2) / sin(beta)].
func (s Saddle) SideFaces(w, h, S float64) float64 {
	sum := 0.0
	for _, y := range [...]float64{s.Shift + h/2, s.Shift - h/2} {
		sum += w * (S - math.Sqrt(math.Max(0, (s.R-y)*(s.R+y)))/math.Sin(s.Beta))
	}
	return sum
}

// EndFaces is the area of the two sides of a rectangular branch that lie across
// the main, h wide: 2 [h S - integral y0-h/2..y0+h/2 of sqrt(R^2 - y^2) dy /
// sin(beta)], with the circle's own integral in closed form.
func (s Saddle) EndFaces(h, S float64) float64 {
	under := s.segment(s.Shift+h/2) - s.segment(s.Shift-h/2)
	return 2 * (h*S - under/math.Sin(s.Beta))
}

// segment is integral 0..y of sqrt(R^2 - t^2) dt.
func (s Saddle) segment(y float64) float64 {
	return (y*math.Sqrt(math.Max(0, (s.R-y)*(s.R+y))) + s.R*s.R*math.Asin(clampOne(y/s.R))) / 2
}

// Reach is the furthest that the meeting curve of a branch gets along the
// branch's axis from the main's: the least S that leaves the free end clear of
// the main. The branch is half wide along the main and out to halfAcross off its
// own axis.
func (s Saddle) Reach(half, halfAcross float64) float64 {
	y := math.Max(0, s.Shift-halfAcross)
	top := math.Sqrt(math.Max(0, s.R*s.R-y*y))
	return (top + half*math.Abs(math.Cos(s.Beta))) / math.Sin(s.Beta)
}

// RoundReach is Reach for a round branch, whose furthest point off centre and at
// an angle is found on a fine grid.
func (s Saddle) RoundReach(r float64) float64 {
	if s.Shift == 0 || s.Beta == math.Pi/2 {
		return s.Reach(r, r)
	}
	const steps = 1440
	furthest := 0.0
	for i := range steps {
		p := -math.Pi/2 + math.Pi*float64(i)/steps
		reach := s.height(r, p) + r*math.Cos(p)*math.Abs(math.Cos(s.Beta))
		furthest = math.Max(furthest, reach)
	}
	return furthest / math.Sin(s.Beta)
}

type integrator = func(f func(float64) float64, a, b float64) float64

func clampOne(x float64) float64 { return math.Max(-1, math.Min(1, x)) }
