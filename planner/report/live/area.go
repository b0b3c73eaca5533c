package live

import (
	"math"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// Why a cell holds a value and not a formula.
const (
	ByIntegration = "by integration: value, not a formula"
	ByBasis       = "on the basis: value, not a formula"
	NotFollowed   = "value, not a formula"
)

// agree is how far a formula may be from the takeoff, relative.
const agree = 1e-9

// checked gives the formula if it gives the figure of the takeoff.
func checked(e *Expr, it, host *takeoff.Item, sheet, want float64) *Expr {
	if e == nil {
		return nil
	}
	got := e.Value(Figure(it, host, sheet))
	if !(math.Abs(got-want) <= agree*math.Max(1, math.Abs(want))) {
		return nil
	}
	return e
}

// Area is the exact area of one piece of the row, m2, openings cut in it not
// taken off. host is the row that it hangs on, nil for none; sheet is the
// thickness of the sheet, mm. Without a formula the word says why.
func Area(it, host *takeoff.Item, sheet float64) (*Expr, string) {
	if it.Piece.Sizes.Has(fittings.GivenArea) {
		return checked(of(fittings.GivenArea), it, host, sheet, it.EachExact), NotFollowed
	}
	e := rowOf(it).area(host)
	if e == nil {
		return nil, ByIntegration
	}
	return checked(e, it, host, sheet, it.EachExact), NotFollowed
}

// Opening is what one spigot takes out of its wall, m2, exactly.
func Opening(it, host *takeoff.Item, sheet float64) (*Expr, string) {
	r := rowOf(it)
	j, ok := r.junction()
	if !ok || it.Piece.Kind != fittings.Spigot {
		return nil, NotFollowed
	}
	opening, _ := j.surfaces(wallOf(r, host))
	if opening == nil {
		return nil, ByIntegration
	}
	return checked(opening, it, host, sheet, it.OpeningExact), NotFollowed
}

// Face is the area of the opening at an end of the row, m2, by the sizes of the
// outside: what a plenum loses where something joins it.
func Face(it *takeoff.Item, role fittings.EndRole, sheet float64) *Expr {
	s, ok := row{it: it}.end(role)
	if !ok {
		return nil
	}
	e, _ := it.End(role)
	c := e.CrossSection
	for _, side := range []*float64{&c.Width, &c.Height, &c.Diameter} {
		if *side > 0 {
			*side += 2 * sheet / 1000
		}
	}
	return checked(s.grown().face(), it, nil, sheet, c.FaceArea())
}

// Sides are the sizes of an end in mm, by the sizes of the metal: width and
// height, or the diameter alone.
type Sides struct {
	Shape                   fittings.Shape
	Width, Height, Diameter *Expr
}

// End gives the sizes of an end of the row as formulas, and whether they could be
// given.
func End(it *takeoff.Item, role fittings.EndRole) (Sides, bool) {
	s, ok := row{it: it}.end(role)
	e, known := it.End(role)
	if it.Piece.Kind == fittings.Plenum {
		e.CrossSection, known = plenumFace(it), true
	}
	if !ok || !known || s.shape != e.Shape {
		return Sides{}, false
	}
	out := Sides{Shape: s.shape}
	for _, side := range []struct {
		from *Expr
		want float64
		to   **Expr
	}{{s.w, e.Width, &out.Width}, {s.h, e.Height, &out.Height}, {s.d, e.Diameter, &out.Diameter}} {
		if side.from == nil {
			continue
		}
		mm := inMM(side.from)
		if checked(mm, it, nil, 0, side.want*1000) == nil {
			return Sides{}, false
		}
		*side.to = mm
	}
	return out, true
}

func plenumFace(it *takeoff.Item) fittings.CrossSection {
	w, _ := it.Piece.Sizes.Get(fittings.Width)
	h, _ := it.Piece.Sizes.Get(fittings.Height)
	return fittings.CrossSection{Shape: fittings.Rectangular, Width: w, Height: h}
}

// inMM turns a length in m to mm; one that was turned to m is turned back.
func inMM(e *Expr) *Expr {
	if e.op == '/' && e.args[1].op == 'l' {
		return e.args[0]
	}
	return times(e, inLength())
}

// Girth is the girth of the row's end towards the plant, m, by the sizes of the
// metal.
func Girth(it *takeoff.Item) *Expr {
	s, ok := row{it: it}.end(fittings.PlantEnd)
	if !ok || len(it.Ends) == 0 {
		return nil
	}
	return checked(s.girth(), it, nil, 0, it.Ends[0].Girth())
}

func rowOf(it *takeoff.Item) row { return row{it: it, outside: true, skin: !it.WithoutSheet()} }

// area finds the formula for the kind; nil where there is none.
func (r row) area(host *takeoff.Item) *Expr {
	switch p := &r.it.Piece; p.Kind {
	case fittings.Straight, fittings.Flexible, fittings.Inline:
		return r.along(r.opt(fittings.Length))
	case fittings.Bend:
		return r.bend()
	case fittings.Reducer:
		return r.reducer()
	case fittings.Offset:
		return r.offset()
	case fittings.Tee, fittings.Cross:
		return r.tee()
	case fittings.Spigot:
		if j, ok := r.junction(); ok {
			_, side := j.surfaces(wallOf(r, host))
			return side
		}
	case fittings.Breeches:
		return r.breeches()
	case fittings.Cap:
		return r.cap()
	case fittings.Plenum:
		return r.plenum()
	}
	return nil
}

// along is girth x length.
func (r row) along(length *Expr) *Expr {
	s, ok := r.main()
	if !ok || length == nil {
		return nil
	}
	return times(s.girth(), length)
}

// cap is a face, or a spherical cap: pi (d^2/4 + h^2).
func (r row) cap() *Expr {
	s, ok := r.main()
	switch {
	case !ok:
		return nil
	case r.it.Piece.Style != fittings.Dished:
		return s.face()
	case !r.has(fittings.Rise) || s.d == nil:
		return nil
	}
	return times(pi(), plus(over(square(s.d), num(4)), square(r.size(fittings.Rise))))
}

// plenum is the six faces of a box.
func (r row) plenum() *Expr {
	s, ok := r.main()
	l := r.opt(fittings.Length)
	if !ok || l == nil || s.w == nil {
		return nil
	}
	return times(num(2), plus(times(s.w, s.h), times(s.w, l), times(s.h, l)))
}
