package fittings

import (
	"fmt"
	"math"
	"math/rand"
	"testing"
)

// The second opinion of this file knows no formula of areas: it puts points on
// the surfaces in space, joins them by flat triangles and adds those up, at two
// finenesses, and takes out the error of second order.

type point [3]float64

func minus(a, b point) point { return point{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func triangle(a, b, c point) float64 {
	u, v := minus(b, a), minus(c, a)
	x, y, z := u[1]*v[2]-u[2]*v[1], u[2]*v[0]-u[0]*v[2], u[0]*v[1]-u[1]*v[0]
	return math.Sqrt(x*x+y*y+z*z) / 2
}

// grid is the area of a surface given by points over the unit square.
func grid(n, m int, at func(u, v float64) point) float64 {
	sum := 0.0
	previous := make([]point, m+1)
	row := make([]point, m+1)
	for i := range n + 1 {
		for j := range m + 1 {
			row[j] = at(float64(i)/float64(n), float64(j)/float64(m))
			if i > 0 && j > 0 {
				sum += triangle(previous[j-1], previous[j], row[j-1]) + triangle(previous[j], row[j-1], row[j])
			}
		}
		previous, row = row, previous
	}
	return sum
}

// refined is Richardson's extrapolation of a mesh whose error is of second order
// in 1/n, over three finenesses.
func refined(n int, mesh func(n int) float64) float64 {
	a, b, c := mesh(n), mesh(2*n), mesh(4*n)
	ab, bc := b+(b-a)/3, c+(c-b)/3
	return bc + (bc-ab)/15
}

// meshOutline gives the point of a section's outline whose outward normal is at
// angle t of the quarter q: right-hand quarters first.
func meshOutline(s CrossSection, q int, t float64) (x, y float64) {
	a := (float64(q) + t) * math.Pi / 2
	sx, sy := 1.0, 1.0
	if q == 1 || q == 2 {
		sx = -1
	}
	if q >= 2 {
		sy = -1
	}
	switch s.Shape {
	case Circular:
		return s.Diameter / 2 * math.Cos(a), s.Diameter / 2 * math.Sin(a)
	case FlatOval:
		return sx*(s.Width-s.Height)/2 + s.Height/2*math.Cos(a), s.Height / 2 * math.Sin(a)
	}
	return sx * s.Width / 2, sy * s.Height / 2
}

// meshLoft is a sheet between parallel ends whose rulings join points of the same
// normal.
func meshLoft(near, far CrossSection, length, ex, ey float64) float64 {
	return refined(128, func(n int) float64 {
		var ring [][2]point
		for q := range 4 {
			for i := range n + 1 {
				x1, y1 := meshOutline(near, q, float64(i)/float64(n))
				x2, y2 := meshOutline(far, q, float64(i)/float64(n))
				ring = append(ring, [2]point{{x1, y1, 0}, {x2 + ex, y2 + ey, length}})
			}
		}
		sum := 0.0
		for i := range ring {
			a, b := ring[i], ring[(i+1)%len(ring)]
			sum += triangle(a[0], a[1], b[0]) + triangle(a[1], b[0], b[1])
		}
		return sum
	})
}

// meshBranch is a branch on a round main along z: the points of its outline are
// sent along its axis onto the main. It gives the hole and the branch.
func meshBranch(s CrossSection, radius, shift, beta, collar float64) (hole, side float64) {
	sin, cos := math.Sincos(beta)
	free := math.Sqrt(radius*radius-shift*shift)/sin + collar
	// across, along: position in the plane square to the branch's axis.
	at := func(across, along, s float64) point {
		return point{shift + across, s*sin + along*cos, s*cos - along*sin}
	}
	foot := func(across, along float64) float64 {
		x := shift + across
		return (math.Sqrt(math.Max(0, radius*radius-x*x)) - along*cos) / sin
	}
	outline := func(q int, u float64) (across, along float64) {
		if s.Shape == Rectangular {
			along, across = meshSide(s, q, u)
			return across, along
		}
		// crowd the points where a branch touches the edge of its main
		along, across = meshOutline(s, q, u*u*(3-2*u))
		return across, along
	}
	edges := func(n int, each func(q int, u float64)) {
		for q := range 4 {
			for i := range n {
				each(q, float64(i)/float64(n))
			}
		}
	}
	meshed := func(n int, hole bool) float64 {
		var ring [][2]float64
		edges(n, func(q int, u float64) {
			across, along := outline(q, u)
			ring = append(ring, [2]float64{across, along})
		})
		if !hole {
			sum := 0.0
			for i := range ring {
				a, b := ring[i], ring[(i+1)%len(ring)]
				a0, a1 := at(a[0], a[1], foot(a[0], a[1])), at(a[0], a[1], free)
				b0, b1 := at(b[0], b[1], foot(b[0], b[1])), at(b[0], b[1], free)
				sum += triangle(a0, a1, b0) + triangle(a1, b0, b1)
			}
			return sum
		}
		return grid(len(ring), n, func(u, v float64) point {
			p := ring[int(math.Round(u*float64(len(ring))))%len(ring)]
			v = v * (2 - v) // crowd towards the rim
			return at(p[0]*v, p[1]*v, foot(p[0]*v, p[1]*v))
		})
	}
	return refined(32, func(n int) float64 { return meshed(n, true) }), refined(128, func(n int) float64 { return meshed(n, false) })
}

// meshSide walks the four sides of a rectangle.
func meshSide(s CrossSection, q int, u float64) (x, y float64) {
	w, h := s.Width/2, s.Height/2
	switch q {
	case 0:
		return w, h * (2*u - 1)
	case 1:
		return w * (1 - 2*u), h
	case 2:
		return -w, h * (1 - 2*u)
	}
	return w * (2*u - 1), -h
}

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
			low, high := 0.0, radius
			for range 60 {
				mid := (low + high) / 2
				if x := reach(mid) * math.Sin(p); x*x+mid*mid < radius*radius {
					low = mid
				} else {
					high = mid
				}
			}
			return low
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
		if _, problems := Measure(p); len(problems) > 0 {
			continue // the cone outgrows the main
		}
		met++
		m := measuredPiece(t, p, what)
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
			low, high := 0.0, 1.0
			for range 60 {
				if mid := (low + high) / 2; at(p, mid)[0] < 0 {
					low = mid
				} else {
					high = mid
				}
			}
			return high
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

// TestBendsAgainstMesh sweeps the outline of a section round an axis, or along
// the tangent polygon of a gored bend, and meshes the reducing bend's sheets.
func TestBendsAgainstMesh(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for _, shape := range []Shape{Circular, Rectangular, FlatOval} {
		for range 4 {
			s := randomSection(r, shape)
			angle, gores := between(r, 20, 120), float64(3+r.Intn(4))
			w := inPlane(s, PlaneWidth)
			rc := w/2 + between(r, 0, 0.6)
			theta := angle * math.Pi / 180
			swept := refined(16, func(n int) float64 {
				sum := 0.0
				for q := range 4 {
					sum += grid(n, n, func(u, v float64) point {
						x, y := meshWalk(s, q, v)
						return point{(rc + x) * math.Cos(theta*u), (rc + x) * math.Sin(theta*u), y}
					})
				}
				return sum
			})
			mitres := gores - 1
			segments := refined(64, func(n int) float64 {
				// a whole piece between two mitre planes, square to its axis in the middle
				half := math.Tan(theta / 2 / mitres)
				sum := 0.0
				for q := range 4 {
					sum += grid(1, n, func(u, v float64) point {
						x, y := meshWalk(s, q, v)
						return point{x, y, (2*u - 1) * (rc + x) * half}
					})
				}
				return mitres * sum
			})
			for style, want := range map[Style]float64{RadiusStyle: swept, Gored: segments} {
				p := &Piece{Kind: Bend, Style: style, Shape: shape}
				setSection(p, s, nearEnd)
				p.Sizes.Set(Angle, angle)
				p.Sizes.Set(Radius, rc)
				if style == Gored {
					p.Sizes.Set(Gores, gores)
				}
				what := fmt.Sprintf("%v bend of %v, %.1f degrees, radius %.3f", style, s, angle, rc)
				closeTo(t, what, measuredPiece(t, p, what).Area, want, 1e-6)
			}
		}
	}
}

// meshWalk walks a section's outline by quarters, sides included.
func meshWalk(s CrossSection, q int, u float64) (x, y float64) {
	if s.Shape == Rectangular {
		return meshSide(s, q, u)
	}
	if s.Shape == Circular {
		return meshOutline(s, q, u)
	}
	flat := CrossSection{Shape: FlatOval, Width: s.Width, Height: s.Height}
	switch q {
	case 0: // right-hand end
		return meshOutline(flat, []int{3, 0}[min(1, int(2*u))], 2*u-float64(min(1, int(2*u))))
	case 1: // top, from right to left
		return (s.Width - s.Height) * (0.5 - u), s.Height / 2
	case 2:
		return meshOutline(flat, []int{1, 2}[min(1, int(2*u))], 2*u-float64(min(1, int(2*u))))
	}
	return (s.Width - s.Height) * (u - 0.5), -s.Height / 2
}

func TestReducingAndSquareHeelBendsAgainstMesh(t *testing.T) {
	r := rand.New(rand.NewSource(6))
	for range 8 {
		w1, w2, h, throat := between(r, 0.2, 0.9), between(r, 0.2, 0.9), between(r, 0.1, 0.8), between(r, 0, 0.4)
		angle := between(r, 15, 130)
		theta := angle * math.Pi / 180
		heel := func(u float64) float64 { return throat + w1 + (w2-w1)*u }
		corner := func(u float64) float64 { // outer sheets of a square heel, in polar form
			return (throat + w1) / math.Cos(math.Min(u, 1-u)*theta)
		}
		sheets := func(outer func(u float64) float64) float64 {
			return refined(64, func(n int) float64 {
				at := func(rho, u, z float64) point {
					return point{rho * math.Cos(theta*u), rho * math.Sin(theta*u), z}
				}
				cheek := grid(n, n, func(u, v float64) point { return at(throat+v*(outer(u)-throat), u, 0) })
				back := grid(n, 1, func(u, v float64) point { return at(outer(u), u, h*v) })
				front := grid(n, 1, func(u, v float64) point { return at(throat, u, h*v) })
				return 2*cheek + back + front
			})
		}
		p := &Piece{Kind: Bend}
		for d, v := range map[Dim]float64{Width: w1, Height: h, Width2: w2, Throat: throat, Angle: angle} {
			p.Sizes.Set(d, v)
		}
		what := fmt.Sprintf("bend %.3f to %.3f x %.3f, throat %.3f, %.1f degrees", w1, w2, h, throat, angle)
		closeTo(t, "reducing "+what, measuredPiece(t, p, what).Area, sheets(heel), 1e-7)
		p = &Piece{Kind: Bend, Style: SquareHeel}
		for d, v := range map[Dim]float64{Width: w1, Height: h, Throat: throat, Angle: angle} {
			p.Sizes.Set(d, v)
		}
		closeTo(t, "square heel "+what, measuredPiece(t, p, what).Area, sheets(corner), 1e-7)
	}
}
