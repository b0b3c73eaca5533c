package live

import (
	"math"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// Raw is a size as the schedule's canonical column has it: mm, degrees, pieces or
// m2, before a lining is added. The noise of turning units is cut at a millionth
// of a mm. It reports whether the row gives the size.
func Raw(it *takeoff.Item, d fittings.Dim) (float64, bool) {
	v, given := it.Piece.Sizes.Get(d)
	if !given || d.Unit() != fittings.Metre {
		return v, given
	}
	if it.Clear {
		lining, _ := it.Piece.Sizes.Get(fittings.Lining)
		switch {
		case across(it, d):
			v -= 2 * lining
		case d == fittings.Throat:
			v += lining
		}
	}
	return math.Round(v*1e9) / 1e6, true
}

// across reports whether a size lies across the duct, so that a lining and the
// sheet widen it.
func across(it *takeoff.Item, d fittings.Dim) bool {
	switch d {
	case fittings.Width, fittings.Height, fittings.Diameter,
		fittings.Width2, fittings.Height2, fittings.Diameter2,
		fittings.BranchWidth, fittings.BranchHeight, fittings.BranchDiameter:
		return true
	case fittings.Entry:
		return it.Piece.Style == fittings.Conical
	}
	return false
}

// Figure gives the figures of a row, of its host (nil: none) and the thickness
// of the sheet, mm.
func Figure(it, host *takeoff.Item, sheet float64) func(Var) float64 {
	return func(v Var) float64 {
		from := it
		switch {
		case v.Dim == SheetMM:
			return sheet
		case v.Host:
			from = host
		}
		if from == nil {
			return math.NaN()
		}
		raw, given := Raw(from, v.Dim)
		if !given {
			return math.NaN()
		}
		return raw
	}
}

// row reads the sizes of one row as formulas.
type row struct {
	it      *takeoff.Item
	host    bool // it is the host of the row that the formula is of
	outside bool // sizes across the duct are those of the outside
	skin    bool // and the sheet was added: it could be
}

func (r row) has(d fittings.Dim) bool { return r.it.Piece.Sizes.Has(d) }

func (r row) ref(d fittings.Dim) *Expr { return &Expr{op: 'v', v: Var{Host: r.host, Dim: d}} }

// size is a size in m.
func (r row) size(d fittings.Dim) *Expr {
	e := r.ref(d)
	lining := r.it.Clear && r.has(fittings.Lining)
	sheet := r.outside && r.skin
	switch {
	case across(r.it, d):
		if lining {
			e = plus(e, times(num(2), r.ref(fittings.Lining)))
		}
		if sheet {
			e = plus(e, times(num(2), of(SheetMM)))
		}
	case d == fittings.Throat:
		if lining {
			e = minus(e, r.ref(fittings.Lining))
		}
		if sheet {
			e = call("MAX", num(0), minus(e, of(SheetMM)))
		}
	}
	return over(e, inLength())
}

// opt is a size in m, or nil where the row doesn't give it.
func (r row) opt(d fittings.Dim) *Expr {
	if !r.has(d) {
		return nil
	}
	return r.size(d)
}

// turn is an angle in radians.
func (r row) turn(d fittings.Dim) *Expr { return call("RADIANS", r.ref(d)) }

// section is a cross-section as formulas, in m.
type section struct {
	shape   fittings.Shape
	w, h, d *Expr
}

// girth is 2(a+b), pi d, or pi m + 2(M-m).
func (s section) girth() *Expr {
	switch s.shape {
	case fittings.Circular:
		return times(pi(), s.d)
	case fittings.FlatOval:
		return plus(times(pi(), s.h), times(num(2), minus(s.w, s.h)))
	}
	return times(num(2), plus(s.w, s.h))
}

// face is ab, pi d^2/4, or pi m^2/4 + m(M-m).
func (s section) face() *Expr {
	switch s.shape {
	case fittings.Circular:
		return times(over(pi(), num(4)), square(s.d))
	case fittings.FlatOval:
		return plus(times(over(pi(), num(4)), square(s.h)), times(s.h, minus(s.w, s.h)))
	}
	return times(s.w, s.h)
}

// grown is the section of the outside, twice the sheet wider.
func (s section) grown() section {
	add := func(e *Expr) *Expr {
		if e == nil {
			return nil
		}
		return plus(e, over(times(num(2), of(SheetMM)), inLength()))
	}
	return section{s.shape, add(s.w), add(s.h), add(s.d)}
}

// inPlane is the side in the plane of a bend or offset, and the other side.
func (s section) inPlane(p fittings.Plane) (side, other *Expr) {
	switch {
	case s.shape == fittings.Circular:
		return s.d, s.d
	case p == fittings.PlaneHeight:
		return s.h, s.w
	}
	return s.w, s.h
}

// read reads a section from three columns; ok is false where one is missing.
func (r row) read(shape fittings.Shape, w, h, d fittings.Dim) (s section, ok bool) {
	s = section{shape: shape}
	switch shape {
	case fittings.Circular:
		s.d = r.opt(d)
		return s, s.d != nil
	case fittings.Rectangular, fittings.FlatOval:
		s.w, s.h = r.opt(w), r.opt(h)
		return s, s.w != nil && s.h != nil
	}
	return s, false
}

// main is the row's own section.
func (r row) main() (section, bool) {
	if r.it.Piece.Kind == fittings.Spigot {
		return r.branch()
	}
	shape := r.it.Piece.Shape
	if shape == fittings.NoShape && r.it.Piece.Kind == fittings.Plenum {
		shape = fittings.Rectangular
	}
	return r.read(shape, fittings.Width, fittings.Height, fittings.Diameter)
}

// branch is the section of a tee's, cross's or spigot's branch; a spigot's may
// stand under its own sizes.
func (r row) branch() (section, bool) {
	names := [3]fittings.Dim{fittings.BranchWidth, fittings.BranchHeight, fittings.BranchDiameter}
	if r.it.Piece.Kind == fittings.Spigot {
		for i, own := range [3]fittings.Dim{fittings.Width, fittings.Height, fittings.Diameter} {
			if r.has(own) && !r.has(names[i]) {
				names[i] = own
			}
		}
	}
	role := fittings.BranchEnd
	if r.it.Piece.Kind == fittings.Spigot {
		role = fittings.FarEnd
	}
	e, _ := r.it.End(role)
	return r.read(e.Shape, names[0], names[1], names[2])
}

// end is the section of an end, by the sizes of the metal without the sheet.
func (r row) end(role fittings.EndRole) (section, bool) {
	k := r.it.Piece.Kind
	switch {
	case k == fittings.Spigot && role == fittings.PlantEnd:
		return r.foot()
	case k == fittings.Spigot, role == fittings.PlantEnd:
		return r.main()
	case role == fittings.FarEnd && (k == fittings.Reducer || k == fittings.Transition):
		e, _ := r.it.End(role)
		return r.read(e.Shape, fittings.Width2, fittings.Height2, fittings.Diameter2)
	case role == fittings.FarEnd && k == fittings.Bend:
		return r.bendEnd()
	case role == fittings.FarEnd:
		return r.main()
	case k == fittings.Breeches:
		return r.leg()
	}
	return r.branch()
}

// foot is a spigot's opening: wider where it is conical or a shoe.
func (r row) foot() (section, bool) {
	s, ok := r.branch()
	if !ok {
		return s, false
	}
	switch entry := r.opt(fittings.Entry); {
	case entry == nil:
	case r.it.Piece.Style == fittings.Conical:
		s.d = entry
	case r.it.Piece.Style == fittings.Shoe:
		s.w = plus(s.w, entry)
	}
	return s, true
}
