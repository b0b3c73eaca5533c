package fittings

import "math"

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

// halved finds where a condition that holds at 0 stops holding, up to high.
func halved(high float64, holds func(float64) bool) float64 {
	low := 0.0
	for range 60 {
		if mid := (low + high) / 2; holds(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
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
	meshed := func(n int, hole bool) float64 {
		var ring [][2]float64
		for i := range 4 * n {
			across, along := outline(i/n, float64(i%n)/float64(n))
			ring = append(ring, [2]float64{across, along})
		}
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
