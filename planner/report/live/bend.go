package live

import (
	"math"

	"blankoff/fittings"
)

// withLegs adds the straight legs at both ends to a length.
func (r row) withLegs(length *Expr) *Expr {
	if legs := r.opt(fittings.Legs); legs != nil {
		return plus(length, times(num(2), legs))
	}
	return length
}

// centre is the centre-line radius: as given, or throat plus half the side in
// the plane; nil where neither is given.
func (r row) centre(side *Expr) *Expr {
	if rc := r.opt(fittings.Radius); rc != nil {
		return rc
	}
	if throat := r.opt(fittings.Throat); throat != nil {
		return plus(throat, half(side))
	}
	return nil
}

// throat is the inside radius.
func (r row) throat(side *Expr) *Expr {
	if rc := r.opt(fittings.Radius); rc != nil {
		return minus(rc, half(side))
	}
	return r.opt(fittings.Throat)
}

// bend is the area of a bend of any style.
func (r row) bend() *Expr {
	s, ok := r.main()
	if !ok || !r.has(fittings.Angle) {
		return nil
	}
	theta := r.turn(fittings.Angle)
	side, other := s.inPlane(r.it.Piece.Plane)
	rc := r.centre(side)
	style := r.it.Piece.Style
	if style == fittings.NoStyle && r.has(fittings.Gores) {
		style = fittings.Gored
	}
	var path *Expr
	switch {
	case style == fittings.Mitred:
		path = times(side, call("TAN", half(theta)))
	case style == fittings.SquareThroat:
		path = times(half(side), theta)
	case rc == nil:
		return nil
	case style == fittings.Gored:
		mitres := minus(r.ref(fittings.Gores), num(1))
		path = times(num(2), mitres, rc, call("TAN", over(half(theta), mitres)))
	case style == fittings.SquareHeel:
		return r.squareHeel(s, side, other, theta)
	case r.reducing():
		return r.reducingBend(s, side, other, theta)
	default:
		path = times(rc, theta)
	}
	return times(s.girth(), r.withLegs(path))
}

// squareHeel is two cheeks, the heel's two sheets and the throat.
func (r row) squareHeel(s section, w, h, theta *Expr) *Expr {
	throat := r.throat(w)
	outer, tan := plus(throat, w), call("TAN", half(theta))
	sum := plus(
		times(num(2), minus(times(square(outer), tan), half(times(square(throat), theta)))),
		times(num(2), outer, tan, h),
		times(throat, theta, h))
	if r.has(fittings.Legs) {
		sum = plus(sum, times(s.girth(), num(2), r.size(fittings.Legs)))
	}
	return sum
}

// reducing reports whether the side in the plane differs at the far end.
func (r row) reducing() bool {
	far, ok := r.it.End(fittings.FarEnd)
	return ok && far.CrossSection != r.it.Ends[0].CrossSection
}

// bendEnd is a bend's far end.
func (r row) bendEnd() (section, bool) {
	s, ok := r.main()
	if !ok || !r.reducing() {
		return s, ok
	}
	if r.it.Piece.Plane == fittings.PlaneHeight {
		s.h = r.opt(fittings.Height2)
		return s, s.h != nil
	}
	s.w = r.opt(fittings.Width2)
	return s, s.w != nil
}

// reducingBend is two cheeks, a heel whose radius rho changes linearly from r1 to
// r2, and a throat of constant radius. With m the change of radius per radian the
// heel is h / (2 m) [rho sqrt(rho^2+m^2) + m^2 asinh(rho/|m|)] from r1 to r2: the
// arc of a spiral of Archimedes, mensuration; with equal ends it is h r1 theta.
func (r row) reducingBend(s section, w, h, theta *Expr) *Expr {
	far, ok := r.bendEnd()
	throat := r.throat(w)
	if !ok || throat == nil {
		return nil
	}
	w2, _ := far.inPlane(r.it.Piece.Plane)
	r1, r2 := plus(throat, w), plus(throat, w2)
	m := over(minus(r2, r1), theta)
	edge := func(rho *Expr) *Expr {
		return plus(times(rho, hypot(rho, m)), times(square(m), call("ASINH", over(rho, call("ABS", m)))))
	}
	sum := plus(
		times(theta, minus(over(plus(square(r1), times(r1, r2), square(r2)), num(3)), square(throat))),
		call("IF", m, times(over(h, times(num(2), m)), minus(edge(r2), edge(r1))), times(h, r1, theta)),
		times(h, throat, theta))
	if r.has(fittings.Legs) {
		sum = plus(sum, times(plus(s.girth(), far.girth()), r.size(fittings.Legs)))
	}
	return sum
}

// offset is the area of an offset of any style.
func (r row) offset() *Expr {
	s, ok := r.main()
	if !ok || !r.has(fittings.Length) || !r.has(fittings.OffsetShift) {
		return nil
	}
	along, shift := r.size(fittings.Length), call("ABS", r.size(fittings.OffsetShift))
	if r.has(fittings.Legs) {
		along = minus(along, times(num(2), r.size(fittings.Legs)))
	}
	side, other := s.inPlane(r.it.Piece.Plane)
	switch r.it.Piece.Style {
	case fittings.Mitred:
		return times(s.girth(), r.withLegs(hypot(along, shift)))
	case fittings.StraightSided:
		if s.shape != fittings.Rectangular {
			return nil // an elliptic integral
		}
		sum := plus(times(num(2), side, along), times(num(2), other, hypot(along, shift)))
		if r.has(fittings.Legs) {
			sum = plus(sum, times(s.girth(), num(2), r.size(fittings.Legs)))
		}
		return sum
	}
	return times(s.girth(), r.withLegs(r.doubleArc(side, along, shift)))
}

// doubleArc is two arcs with a straight between, 2 Rc theta + s with
// s = sqrt(L^2 + O^2 - 4 O Rc) and tan(theta/2) = O / (L + s). Where no radius is
// given the arcs meet: Rc = (L^2 + O^2) / (4 O), s = 0.
func (r row) doubleArc(side, along, shift *Expr) *Expr {
	both := plus(square(along), square(shift))
	rc := r.centre(side)
	if rc == nil {
		widest := over(both, times(num(4), shift))
		return times(num(4), widest, call("ATAN", over(shift, along)))
	}
	straight := call("SQRT", call("MAX", num(0), minus(both, times(num(4), shift, rc))))
	return plus(times(num(4), rc, call("ATAN", over(shift, plus(along, straight)))), straight)
}

// reducer is the sheet between two parallel ends of one shape: four faces of a
// rectangular one, a cone of a round one without a shift.
func (r row) reducer() *Expr {
	near, ok := r.main()
	far, too := r.end2()
	if !ok || !too || !r.has(fittings.Length) || near.shape == fittings.FlatOval {
		return nil
	}
	l := r.size(fittings.Length)
	x, y := r.opt(fittings.OffsetShift), r.opt(fittings.OffsetShift2)
	if near.shape == fittings.Circular {
		if r.shifted(fittings.OffsetShift) || r.shifted(fittings.OffsetShift2) {
			return nil
		}
		return cone(near.d, far.d, l)
	}
	faces := func(near, far, side, side2, shift *Expr) *Expr {
		plan, mean := half(minus(side, side2)), half(plus(near, far))
		if shift == nil {
			return times(plus(near, far), hypot(l, plan))
		}
		return times(mean, plus(hypot(l, minus(plan, shift)), hypot(l, plus(plan, shift))))
	}
	return plus(faces(near.w, far.w, near.h, far.h, y), faces(near.h, far.h, near.w, far.w, x))
}

func (r row) shifted(d fittings.Dim) bool {
	v, _ := r.it.Piece.Sizes.Get(d)
	return math.Abs(v) > 0
}

// end2 is the far end of a reducer by the sizes that are measured.
func (r row) end2() (section, bool) {
	return r.read(r.it.Piece.Shape, fittings.Width2, fittings.Height2, fittings.Diameter2)
}

// cone is pi (d1+d2)/2 sqrt(l^2 + ((d1-d2)/2)^2).
func cone(d1, d2, l *Expr) *Expr {
	return times(half(pi()), plus(d1, d2), hypot(l, half(minus(d1, d2))))
}
