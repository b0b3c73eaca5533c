package live

import (
	"blankoff/fittings"
	"blankoff/takeoff"
)

// teeOn is the main, less its openings where they are deducted, and its branches
// from where the basis has them begin.
func (r row) teeOn(b *fittings.Basis) *Expr {
	s, ok := r.main()
	j, too := r.junction()
	if !ok || !too || !r.has(fittings.Length) {
		return nil
	}
	w := wall{known: true}
	if s.shape == fittings.Circular {
		w.radius = half(s.d)
	}
	rest := r.branchOn(j, w, b, func() *Expr { return r.depth(s, r.it.Ends[0].CrossSection) })
	if rest == nil {
		return nil
	}
	if b.Openings == fittings.Deducted {
		opening, _ := j.surfaces(w)
		if opening == nil {
			return nil
		}
		rest = minus(rest, opening)
	}
	if r.it.Piece.Kind == fittings.Cross {
		rest = times(num(2), rest)
	}
	return plus(times(s.girth(), r.size(fittings.Length)), rest)
}

// branchOn is a branch as it is, or its girth times its length from the main's
// face or axis; depth is half of what a flat main is deep, nil for a panel.
func (r row) branchOn(j junction, w wall, b *fittings.Basis, depth func() *Expr) *Expr {
	if b.BranchFrom == fittings.FromSaddle {
		_, side := j.surfaces(w)
		return side
	}
	long := j.collar
	switch {
	case !w.known:
		return nil
	case b.BranchFrom != fittings.FromAxis:
	case w.radius != nil:
		at := w.radius
		if j.shift != nil {
			at = call("SQRT", call("MAX", num(0), minus(square(w.radius), square(j.shift))))
		}
		long = plus(j.overSin(at), j.collar)
	default:
		if d := depth(); d != nil {
			long = plus(j.overSin(d), j.collar)
		}
	}
	girth := j.branch.girth()
	if j.style == fittings.Conical {
		girth = around(section{shape: fittings.Circular, d: j.entry}.girth(), girth, b)
	}
	return times(girth, long)
}

// depth is half the shorter side of a section.
func (r row) depth(s section, c fittings.CrossSection) *Expr {
	if c.Width < c.Height {
		return half(s.w)
	}
	return half(s.h)
}

// hostDepth is the same of the wall that a spigot sits in; nil for a panel.
func (r row) hostDepth(host *takeoff.Item) *Expr {
	if r.it.Piece.WallFlat || host == nil {
		return nil
	}
	s, ok := row{it: host, host: true}.end(fittings.PlantEnd)
	if !ok || s.w == nil {
		return nil
	}
	if r.skin {
		s = s.grown()
	}
	return r.depth(s, r.it.Piece.Wall)
}
