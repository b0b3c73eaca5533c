package fittings

import (
	"fmt"
	"math"
	"math/rand"
	"testing"
)

func between(r *rand.Rand, low, high float64) float64 { return low + (high-low)*r.Float64() }

func randomSection(r *rand.Rand, shape Shape) CrossSection {
	s := CrossSection{Shape: shape}
	switch shape {
	case Circular:
		s.Diameter = between(r, 0.1, 1)
	case Rectangular:
		s.Width, s.Height = between(r, 0.1, 1.2), between(r, 0.1, 1.2)
	default:
		s.Height = between(r, 0.1, 0.5)
		s.Width = s.Height + between(r, 0.02, 0.8)
	}
	return s
}

func setSection(p *Piece, s CrossSection, d sectionDims) {
	if s.Shape == Circular {
		p.Sizes.Set(d.diameter, s.Diameter)
		return
	}
	p.Sizes.Set(d.width, s.Width)
	p.Sizes.Set(d.height, s.Height)
}

func TestLoftsAgainstMesh(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for _, shapes := range [][2]Shape{
		{Circular, Circular}, {Rectangular, Rectangular}, {FlatOval, FlatOval}, {Rectangular, Circular},
		{Circular, Rectangular}, {FlatOval, Circular}, {Rectangular, FlatOval}, {FlatOval, Rectangular}, {Circular, FlatOval},
	} {
		for range 12 {
			near, far := randomSection(r, shapes[0]), randomSection(r, shapes[1])
			length, ex, ey := between(r, 0.2, 1.5), between(r, -0.4, 0.4), between(r, -0.4, 0.4)
			p := &Piece{Kind: Transition, Shape: near.Shape, Shape2: far.Shape}
			if near.Shape == far.Shape {
				p.Kind = Reducer
			}
			setSection(p, near, nearEnd)
			setSection(p, far, secondEnd)
			p.Sizes.Set(Length, length)
			p.Sizes.Set(OffsetShift, ex)
			p.Sizes.Set(OffsetShift2, ey)
			what := fmt.Sprintf("%v to %v, %.3f long, %.3f and %.3f off", near, far, length, ex, ey)
			closeTo(t, what, measuredPiece(t, p, what).Area, meshLoft(near, far, length, ex, ey), 1e-7)
		}
	}
}

func TestBranchesAgainstMesh(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	for _, shape := range []Shape{Circular, Rectangular, FlatOval} {
		for i := range 12 {
			main := CrossSection{Shape: Circular, Diameter: between(r, 0.3, 1.2)}
			branch, radius := CrossSection{Shape: shape}, main.Diameter/2
			across := main.Diameter * between(r, 0.2, 0.85)
			branch.Diameter, branch.Height, branch.Width = across, across, across*between(r, 1.1, 2)
			shift, angle := 0.0, 90.0
			if i%2 == 1 {
				shift = between(r, 0, 0.9) * (radius - across/2)
			}
			if i%4 >= 2 {
				angle = between(r, 35, 145)
			}
			collar := 3 * main.Diameter
			p := &Piece{Kind: Spigot, Shape: shape, Wall: main}
			setSection(p, branch, sideEnd)
			for d, v := range map[Dim]float64{BranchLength: collar, BranchAngle: angle, BranchShift: shift} {
				p.Sizes.Set(d, v)
			}
			what := fmt.Sprintf("%v on %v, %.1f degrees, %.3f off", branch, main, angle, shift)
			m := measuredPiece(t, p, what)
			hole, side := meshBranch(branch, radius, shift, angle*math.Pi/180, collar)
			closeTo(t, "opening of "+what, m.Opening, hole, 1e-6)
			closeTo(t, "branch of "+what, m.Area, side, 1e-6)
		}
	}
}

// TestEqualTeeAgainstMesh is the tee whose branch is as wide as its main, where
// the meeting curve has corners.
func TestEqualTeeAgainstMesh(t *testing.T) {
	m := measured(t, "kind=spigot, diameter_mm=400, length_mm=300, from=circular 400")
	branch := CrossSection{Shape: Circular, Diameter: 0.4}
	hole, side := meshBranch(branch, 0.2, 0, math.Pi/2, 0.3)
	closeTo(t, "opening", m.Opening, hole, 1e-4)
	closeTo(t, "branch", m.Area, side, 1e-6)
}

// TestConesAgainstMesh finds the meeting curve of a conical branch by halving,
// and meshes both sheets.
func TestConesAgainstMesh(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	met := 0
	for range 16 {
		radius := between(r, 0.15, 0.6)
		end := radius * between(r, 0.3, 0.6)
		crown, height := end*between(r, 1.02, 1.3), radius*between(r, 0.3, 1)
		reach := func(z float64) float64 { return crown + (crown-end)/height*(radius-z) }
		foot := func(p float64) float64 {
			return halved(radius, func(z float64) bool { return math.Hypot(reach(z)*math.Sin(p), z) < radius })
		}
		side := refined(64, func(n int) float64 {
			return grid(4*n, 1, func(u, v float64) point {
				p := 2 * math.Pi * u
				z := foot(p) + v*(radius+height-foot(p))
				return point{reach(z) * math.Sin(p), z, reach(z) * math.Cos(p)}
			})
		})
		hole := refined(32, func(n int) float64 {
			return grid(4*n, n, func(u, v float64) point {
				p := 2 * math.Pi * u
				rho := v * reach(foot(p))
				x := rho * math.Sin(p)
				return point{x, math.Sqrt(radius*radius - x*x), rho * math.Cos(p)}
			})
		})
		p := &Piece{Kind: Spigot, Style: Conical, Wall: CrossSection{Shape: Circular, Diameter: 2 * radius}}
		for d, v := range map[Dim]float64{BranchDiameter: 2 * end, Entry: 2 * crown, BranchLength: height} {
			p.Sizes.Set(d, v)
		}
		what := fmt.Sprintf("cone %.3f to %.3f, %.3f high on %.3f", 2*crown, 2*end, height, 2*radius)
		m, problems := Measure(p)
		if len(problems) > 0 {
			continue // the cone outgrows the main
		}
		met++
		closeTo(t, "opening of "+what, m.Opening, hole, 1e-6)
		closeTo(t, "branch of "+what, m.Area, side, 1e-6)
	}
	if met < 8 {
		t.Errorf("only %d of 16 cones met their main", met)
	}
}

// TestBreechesAgainstMesh cuts each generator of a leg at the middle plane by
// halving, and meshes what is left.
func TestBreechesAgainstMesh(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	for range 12 {
		main := between(r, 0.15, 0.5)
		leg := main * between(r, 0.5, 1)
		length, e := between(r, 0.3, 1.2), leg*between(r, 1.02, 2)
		at := func(p, t float64) point {
			rho := main + (leg-main)*t
			return point{e*t + rho*math.Cos(p), rho * math.Sin(p), length * t}
		}
		start := func(p float64) float64 {
			if math.Cos(p) >= 0 {
				return 0
			}
			return halved(1, func(t float64) bool { return at(p, t)[0] < 0 })
		}
		want := 2 * refined(64, func(n int) float64 {
			return grid(4*n, 1, func(u, v float64) point {
				p := 2 * math.Pi * u
				return at(p, start(p)+v*(1-start(p)))
			})
		})
		p := &Piece{Kind: Breeches}
		for d, v := range map[Dim]float64{Diameter: 2 * main, BranchDiameter: 2 * leg, Length: length, OffsetShift: e} {
			p.Sizes.Set(d, v)
		}
		what := fmt.Sprintf("breeches %.3f to %.3f, %.3f long, %.3f apart", 2*main, 2*leg, length, e)
		closeTo(t, what, measuredPiece(t, p, what).Area, want, 1e-6)
	}
}
