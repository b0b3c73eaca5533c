package live

import (
	"blankoff/fittings"
	"blankoff/takeoff"
)

// junction is a branch on a wall, with its sizes as formulas.
type junction struct {
	branch section
	style  fittings.Style
	sin    *Expr // sine of the angle between the axes; nil at 90 degrees
	shift  *Expr // off the main's axis; nil for none
	collar *Expr
	entry  *Expr // conical, shoe
}

// junction reads how a branch stands on its wall.
func (r row) junction() (junction, bool) {
	s, ok := r.branch()
	j := junction{branch: s, style: r.it.Piece.Style, collar: r.opt(fittings.BranchLength), entry: r.opt(fittings.Entry)}
	if j.collar == nil && r.it.Piece.Kind == fittings.Spigot {
		j.collar = r.opt(fittings.Length)
	}
	for _, d := range []fittings.Dim{fittings.BranchAngle, fittings.Angle} {
		if r.has(d) {
			j.sin = call("SIN", r.turn(d))
			break
		}
	}
	if r.has(fittings.BranchShift) {
		j.shift = call("ABS", r.size(fittings.BranchShift))
	}
	if j.style != fittings.Conical && j.style != fittings.Shoe {
		j.style = fittings.StraightSided
	} else if j.entry == nil {
		return j, false
	}
	return j, ok && j.collar != nil
}

// wall is what a branch stands on.
type wall struct {
	known  bool
	radius *Expr // of a round main; nil on a flat wall
}

// wallOf is the wall of a spigot, by the sizes of the row that it hangs on.
func wallOf(r row, host *takeoff.Item) wall {
	switch p := &r.it.Piece; {
	case p.WallFlat, p.Wall.Shape == fittings.Rectangular, p.Wall.Shape == fittings.FlatOval:
		return wall{known: true}
	case host == nil:
		return wall{}
	}
	h := row{it: host, host: true}
	s, ok := h.end(fittings.PlantEnd)
	if !ok || s.shape != fittings.Circular {
		return wall{}
	}
	if r.skin {
		s = s.grown()
	}
	return wall{known: true, radius: half(s.d)}
}

// overSin divides by the sine of the branch's angle.
func (j junction) overSin(e *Expr) *Expr {
	if j.sin == nil {
		return e
	}
	return over(e, j.sin)
}

// surfaces are the opening in the wall and the branch itself; nil where they are
// integrals.
func (j junction) surfaces(w wall) (opening, side *Expr) {
	b := j.branch
	switch {
	case !w.known:
		return nil, nil
	case w.radius != nil && b.shape == fittings.Rectangular && j.style == fittings.StraightSided:
		return j.onRound(w.radius)
	case w.radius != nil:
		return nil, nil
	case j.style == fittings.Conical:
		return section{shape: fittings.Circular, d: j.entry}.face(), cone(j.entry, b.d, j.collar)
	case j.style == fittings.Shoe:
		t, l := j.entry, j.collar
		return times(plus(b.w, t), b.h),
			plus(times(num(2), b.w, l), square(t), times(b.h, l), times(b.h, minus(l, t)), times(b.h, t, call("SQRT", num(2))))
	}
	return j.overSin(b.face()), times(b.girth(), j.collar)
}

// onRound is a straight rectangular branch w x h on a round main of radius R, off
// its axis by y0: the slot w R (asin(b/R) - asin(a/R)) / sin(beta) with a, b = y0
// -+ h/2; two sides along the main, w (S - sqrt(R^2 - y^2) / sin(beta)) at a and
// b; two across it, 2 (h S - integral of sqrt(R^2 - t^2) / sin(beta)), where that
// is (t sqrt(R^2 - t^2) + R^2 asin(t/R)) / 2. S = sqrt(R^2 - y0^2) / sin(beta) +
// collar is the free end's distance. Mensuration.
func (j junction) onRound(radius *Expr) (opening, side *Expr) {
	w, h, R := j.branch.w, j.branch.h, radius
	height := func(y *Expr) *Expr {
		return call("SQRT", call("MAX", num(0), minus(square(R), square(y))))
	}
	turn := func(y *Expr) *Expr { return call("ASIN", over(y, R)) }
	if j.shift == nil { // both sides are alike
		y := half(h)
		free := plus(j.overSin(R), j.collar)
		under := plus(times(y, height(y)), times(square(R), turn(y)))
		return j.overSin(times(num(2), w, R, turn(y))),
			plus(times(num(2), w, minus(free, j.overSin(height(y)))), times(num(2), minus(times(h, free), j.overSin(under))))
	}
	a, b := minus(j.shift, half(h)), plus(j.shift, half(h))
	free := plus(j.overSin(height(j.shift)), j.collar)
	upTo := func(y *Expr) *Expr { return plus(times(y, height(y)), times(square(R), turn(y))) }
	return j.overSin(times(w, R, minus(turn(b), turn(a)))),
		plus(times(w, minus(free, j.overSin(height(a)))), times(w, minus(free, j.overSin(height(b)))),
			minus(times(num(2), h, free), j.overSin(minus(upTo(b), upTo(a)))))
}

// tee is the main, less its openings, and its branches.
func (r row) tee() *Expr {
	s, ok := r.main()
	j, too := r.junction()
	if !ok || !too || !r.has(fittings.Length) {
		return nil
	}
	w := wall{known: true}
	if s.shape == fittings.Circular {
		w.radius = half(s.d)
	}
	opening, side := j.surfaces(w)
	if opening == nil {
		return nil
	}
	rest := minus(side, opening)
	if r.it.Piece.Kind == fittings.Cross {
		rest = times(num(2), rest)
	}
	return plus(times(s.girth(), r.size(fittings.Length)), rest)
}

// leg is the section of a leg of breeches.
func (r row) leg() (section, bool) {
	s, ok := r.main()
	if !ok {
		return s, false
	}
	if s.shape == fittings.Circular {
		s.d = r.opt(fittings.BranchDiameter)
		if s.d == nil {
			s.d = r.opt(fittings.Diameter2)
		}
		return s, s.d != nil
	}
	if r.it.Piece.Plane == fittings.PlaneHeight {
		s.h = half(s.h)
	} else {
		s.w = half(s.w)
	}
	return s, true
}

// breeches are two radius bends of half the side; round ones are an integral.
func (r row) breeches() *Expr {
	s, ok := r.leg()
	if !ok || s.shape != fittings.Rectangular || !r.has(fittings.Angle) {
		return nil
	}
	side, _ := s.inPlane(r.it.Piece.Plane)
	rc := r.centre(side)
	if rc == nil {
		return nil
	}
	return times(num(2), s.girth(), r.withLegs(times(rc, r.turn(fittings.Angle))))
}
