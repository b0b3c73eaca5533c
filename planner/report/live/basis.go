package live

import (
	"blankoff/fittings"
	"blankoff/takeoff"
)

// AreaOn is Area on a measuring basis: a girth times a length, as the basis takes
// them. Only what needs an integral has no formula.
func AreaOn(it, host *takeoff.Item, sheet float64, b *fittings.Basis) (*Expr, string) {
	if b.Exact() || it.Piece.Sizes.Has(fittings.GivenArea) {
		return Area(it, host, sheet)
	}
	e := rowOf(it).areaOn(host, b)
	if e == nil {
		return nil, ByBasis
	}
	return checked(e, it, host, sheet, it.Each), ByBasis
}

// areaOn finds the formula for the kind on a basis; nil where there is none.
func (r row) areaOn(host *takeoff.Item, b *fittings.Basis) *Expr {
	switch r.it.Piece.Kind {
	case fittings.Bend:
		return r.bendOn(b)
	case fittings.Offset:
		return r.offsetOn(b)
	case fittings.Reducer, fittings.Transition:
		return r.taperOn(b)
	case fittings.Breeches:
		return r.breechesOn(b)
	case fittings.Tee, fittings.Cross:
		return r.teeOn(b)
	case fittings.Spigot:
		if j, ok := r.junction(); ok {
			return r.branchOn(j, wallOf(r, host), b, func() *Expr { return r.hostDepth(host) })
		}
		return nil
	case fittings.Cap:
		if b.Caps == fittings.CapsOut {
			return num(0)
		}
	case fittings.Inline:
		if b.Inlines == fittings.Excluded {
			return num(0)
		}
	}
	return r.area(host)
}

// around is the girth that a basis takes of two ends.
func around(near, far *Expr, b *fittings.Basis) *Expr {
	if b.TaperGirth == fittings.LargerGirth {
		return call("MAX", near, far)
	}
	return half(plus(near, far))
}

// bendOn is a bend by its centre line, its outer edge, or to where the centre
// lines meet.
func (r row) bendOn(b *fittings.Basis) *Expr {
	s, ok := r.main()
	if !ok || !r.has(fittings.Angle) {
		return nil
	}
	style := r.it.Piece.Style
	reducing := r.reducing()
	plainly := style != fittings.SquareHeel && !reducing
	if b.BendLength == fittings.CentreLine && (plainly || b.TaperGirth == fittings.Faces) {
		return r.bend()
	}
	far, _ := r.bendEnd()
	side, _ := s.inPlane(r.it.Piece.Plane)
	path := r.bendPath(s, far, side, b)
	switch {
	case path == nil:
		return nil
	case reducing:
		return times(around(s.girth(), far.girth(), b), r.withLegs(path))
	}
	return times(s.girth(), r.withLegs(path))
}

// bendPath is the length of a bend without its legs.
func (r row) bendPath(s, far section, side *Expr, b *fittings.Basis) *Expr {
	theta := r.turn(fittings.Angle)
	tan := call("TAN", half(theta))
	outer := b.BendLength == fittings.OuterEdge
	style := r.it.Piece.Style
	if style == fittings.NoStyle && r.has(fittings.Gores) {
		style = fittings.Gored
	}
	rc := r.centre(side)
	switch {
	case style == fittings.Mitred && outer:
		return times(num(2), side, tan)
	case style == fittings.Mitred:
		return times(side, tan)
	case style == fittings.SquareThroat:
		rc = half(side)
	case rc == nil:
		return nil
	case style == fittings.SquareHeel && outer:
		return times(num(2), plus(r.throat(side), side), tan)
	}
	edge := plus(rc, half(side))
	if r.reducing() {
		side2, _ := far.inPlane(r.it.Piece.Plane)
		throat := r.throat(side)
		rc, edge = plus(throat, over(plus(side, side2), num(4))), plus(throat, call("MAX", side, side2))
	}
	switch {
	case b.BendLength == fittings.ToIntersection:
		return times(num(2), rc, tan)
	case outer && style == fittings.Gored:
		mitres := minus(r.ref(fittings.Gores), num(1))
		return times(num(2), mitres, edge, call("TAN", over(half(theta), mitres)))
	case outer:
		return times(edge, theta)
	}
	return times(rc, theta)
}

// offsetOn is an offset by its centre line, which is as long as its edges, or to
// where the centre lines meet.
func (r row) offsetOn(b *fittings.Basis) *Expr {
	s, ok := r.main()
	if !ok || !r.has(fittings.Length) || !r.has(fittings.OffsetShift) {
		return nil
	}
	along, shift := r.size(fittings.Length), call("ABS", r.size(fittings.OffsetShift))
	if r.has(fittings.Legs) {
		along = minus(along, times(num(2), r.size(fittings.Legs)))
	}
	switch style := r.it.Piece.Style; {
	case style == fittings.StraightSided && b.TaperGirth != fittings.Faces:
		return times(s.girth(), r.withLegs(hypot(along, shift)))
	case style == fittings.StraightSided, style == fittings.Mitred, b.BendLength != fittings.ToIntersection:
		return r.offset()
	}
	// tan(theta/2) = O / (L + s), twice for both bends
	both := plus(square(along), square(shift))
	side, _ := s.inPlane(r.it.Piece.Plane)
	rc := r.centre(side)
	if rc == nil {
		return times(s.girth(), r.withLegs(over(both, along)))
	}
	straight := call("SQRT", call("MAX", num(0), minus(both, times(num(4), shift, rc))))
	return times(s.girth(), r.withLegs(plus(over(times(num(4), rc, shift), plus(along, straight)), straight)))
}

// taperOn is a girth times the length along the axis or along the largest slant.
func (r row) taperOn(b *fittings.Basis) *Expr {
	near, ok := r.main()
	far, too := r.end(fittings.FarEnd)
	switch {
	case !ok || !too || !r.has(fittings.Length):
		return nil
	case b.TaperGirth == fittings.Faces:
		return r.area(nil)
	}
	girth, l := around(near.girth(), far.girth(), b), r.size(fittings.Length)
	if r.it.Piece.Kind == fittings.Transition {
		far = section{} // its slant isn't written out
	}
	switch {
	case b.TaperLength == fittings.Axial:
		return times(girth, l)
	case near.shape == fittings.Circular && far.shape == near.shape:
		return times(girth, hypot(l, plus(half(call("ABS", minus(near.d, far.d))), hypot(r.shift(fittings.OffsetShift), r.shift(fittings.OffsetShift2)))))
	case near.shape == fittings.Rectangular && far.shape == near.shape:
		plan := func(a, b *Expr, d fittings.Dim) *Expr {
			return plus(half(call("ABS", minus(a, b))), call("ABS", r.shift(d)))
		}
		return times(girth, hypot(l, call("MAX", plan(near.w, far.w, fittings.OffsetShift), plan(near.h, far.h, fittings.OffsetShift2))))
	}
	return nil
}

func (r row) shift(d fittings.Dim) *Expr {
	if e := r.opt(d); e != nil {
		return e
	}
	return num(0)
}

// breechesOn is two legs, each a taper or a bend.
func (r row) breechesOn(b *fittings.Basis) *Expr {
	s, ok := r.main()
	leg, too := r.leg()
	switch {
	case !ok || !too:
		return nil
	case s.shape == fittings.Circular:
		if b.TaperGirth == fittings.Faces || !r.has(fittings.Length) || !r.has(fittings.OffsetShift) {
			return nil
		}
		out := call("ABS", r.size(fittings.OffsetShift))
		if b.TaperLength != fittings.Axial {
			out = plus(out, half(minus(s.d, leg.d)))
		}
		return times(num(2), around(s.girth(), leg.girth(), b), hypot(r.size(fittings.Length), out))
	case !r.has(fittings.Angle):
		return nil
	}
	side, _ := leg.inPlane(r.it.Piece.Plane)
	rc, theta := r.centre(side), r.turn(fittings.Angle)
	if rc == nil {
		return nil
	}
	path := times(rc, theta)
	switch b.BendLength {
	case fittings.OuterEdge:
		path = times(plus(rc, half(side)), theta)
	case fittings.ToIntersection:
		path = times(num(2), rc, call("TAN", half(theta)))
	}
	return times(num(2), leg.girth(), r.withLegs(path))
}
