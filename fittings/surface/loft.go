package surface

import "math"

// Outline is the outline of an end: a rectangle with rounded corners. A
// rectangle has R = 0, a circle no flats, a flat oval no flat along Y.
type Outline struct {
	FlatX float64 // straight part along the width
	FlatY float64 // straight part along the height
	R     float64 // corner radius
}

// Loft is the developable sheet between two parallel outlines a distance L
// apart, the second shifted by X along the width and Y along the height.
type Loft struct {
	Near, Far Outline
	L, X, Y   float64
}

// Area is the lateral area of the loft.
//
// Every ruling of a developable sheet joins points with parallel tangents. So a
// piece of edge ds1 on one end and ds2 on the other, both with outward normal
// (cos t, sin t), bound a plane trapezoid of height sqrt(L^2 + D(t)^2), where
// D(t) = h1(t) - h2(t) - X cos t - Y sin t is the plan distance between the
// tangents (h: distance of a tangent from its outline's centre). Straight edges
// give plane trapezoids or triangles, corners oblique cones:
//
//	A = sum of 4 edges   (f1+f2)/2 sqrt(L^2 + D^2)
//	  + sum of 4 corners (r1+r2)/2 integral 0..pi/2 of sqrt(L^2 + D(t)^2) dt
//
// It covers rectangular tapers, round and flat-oval reducers, rectangle to
// round, rectangle to oval, oval to round and straight-sided offsets. Derived
// from the definition of a developable sheet (mensuration).
func (f Loft) Area() float64 { return f.Edges() + f.Corners(Integrate) }

// Edges is the area of the plane parts.
func (f Loft) Edges() float64 {
	sum := 0.0
	for _, sign := range [...]float64{1, -1} {
		sum += (f.Near.FlatX + f.Far.FlatX) / 2 * math.Hypot(f.L, f.PlanY(sign))
		sum += (f.Near.FlatY + f.Far.FlatY) / 2 * math.Hypot(f.L, f.PlanX(sign))
	}
	return sum
}

// PlanX is the plan distance between the edges whose normal is +X (sign 1) or
// -X (sign -1).
func (f Loft) PlanX(sign float64) float64 {
	return f.Near.FlatX/2 + f.Near.R - f.Far.FlatX/2 - f.Far.R - sign*f.X
}

// PlanY is PlanX for the edges whose normal is +Y or -Y.
func (f Loft) PlanY(sign float64) float64 {
	return f.Near.FlatY/2 + f.Near.R - f.Far.FlatY/2 - f.Far.R - sign*f.Y
}

// Steepest is the greatest plan distance between parallel tangents: of a quarter
// in which D(t) = d + p cos t + q sin t it's at an end, or at t = atan2(q, p).
func (f Loft) Steepest() float64 {
	most := 0.0
	for _, sx := range [...]float64{1, -1} {
		most = math.Max(most, math.Max(math.Abs(f.PlanX(sx)), math.Abs(f.PlanY(sx))))
		for _, sy := range [...]float64{1, -1} {
			p := (f.Near.FlatX-f.Far.FlatX)/2 - sx*f.X
			q := (f.Near.FlatY-f.Far.FlatY)/2 - sy*f.Y
			if f.Near.R+f.Far.R > 0 && p*q > 0 {
				most = math.Max(most, math.Abs(f.Near.R-f.Far.R+math.Copysign(math.Hypot(p, q), p)))
			}
		}
	}
	return most
}

// Corners is the area of the four cones, with the given integrator.
func (f Loft) Corners(integrate func(func(float64) float64, float64, float64) float64) float64 {
	mean := (f.Near.R + f.Far.R) / 2
	if mean == 0 {
		return 0
	}
	if f.Cylindrical() {
		return mean * 2 * math.Pi * math.Hypot(f.L, f.Near.R-f.Far.R)
	}
	sum := 0.0
	for _, sx := range [...]float64{1, -1} {
		for _, sy := range [...]float64{1, -1} {
			sum += integrate(func(t float64) float64 { return f.slant(t, sx, sy) }, 0, math.Pi/2)
		}
	}
	return mean * sum
}

// Cylindrical reports whether the corners are right cones or cylinders, whose
// slant is the same all round.
func (f Loft) Cylindrical() bool {
	return f.X == 0 && f.Y == 0 && f.Near.FlatX == f.Far.FlatX && f.Near.FlatY == f.Far.FlatY
}

// slant is the height of the trapezoid at normal angle t in the corner on side
// sx, sy.
func (f Loft) slant(t, sx, sy float64) float64 {
	sin, cos := math.Sincos(t)
	d := f.Near.R - f.Far.R +
		((f.Near.FlatX-f.Far.FlatX)/2-sx*f.X)*cos +
		((f.Near.FlatY-f.Far.FlatY)/2-sy*f.Y)*sin
	return math.Hypot(f.L, d)
}
