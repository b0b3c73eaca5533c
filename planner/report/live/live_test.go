package live

import (
	"math"
	"testing"

	"blankoff/fittings"
	"blankoff/planner/report/internal/testview"
	"blankoff/takeoff"
	"blankoff/takeoff/bases"
)

func everyKind(t *testing.T, o takeoff.Options) *takeoff.Takeoff {
	t.Helper()
	k, err := testview.Read(testview.EveryKind, o)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range k.Faults {
		t.Errorf("row %d, %s: %s", f.Row, f.Heading, f.Message)
	}
	return k
}

func hostOf(k *takeoff.Takeoff, it *takeoff.Item) *takeoff.Item {
	if it.Parent < 0 {
		return nil
	}
	return &k.Items[it.Parent]
}

// TestEveryKindFollows: every kind and style whose area is in closed form has a
// formula, with the sheet's thickness and without, and no other has.
func TestEveryKindFollows(t *testing.T) {
	for _, sheet := range []float64{0, 0.0008} {
		k := everyKind(t, takeoff.Options{Sheet: sheet})
		for i := range k.Items {
			it := &k.Items[i]
			e, why := Area(it, hostOf(k, it), sheet*1000)
			if got := e != nil; got != testview.Follows(it.Tag) {
				t.Errorf("sheet %g, %s (%s %s): has a formula: %v (%s)", sheet, it.Tag, it.Piece.Kind, it.Piece.Style, got, why)
			}
			if it.Piece.Kind == fittings.Spigot {
				if e, why := Opening(it, hostOf(k, it), sheet*1000); (e != nil) != testview.Follows(it.Tag) {
					t.Errorf("sheet %g, opening of %s: %s", sheet, it.Tag, why)
				}
			}
		}
	}
}

// TestFollowsAChange: with any size changed the formula gives what the geometry
// gives for the changed piece, exactly and on every basis.
func TestFollowsAChange(t *testing.T) {
	for _, b := range bases.BuiltIn() {
		k := everyKind(t, takeoff.Options{Basis: &b})
		tried := 0
		for i := range k.Items {
			it := &k.Items[i]
			host := hostOf(k, it)
			e, why := AreaOn(it, host, 0, &b)
			if e == nil {
				if testview.Follows(it.Tag) {
					t.Errorf("%s, %s: %s", b.Name, it.Tag, why)
				}
				continue
			}
			for _, v := range e.Vars() {
				if v.Dim == SheetMM || v.Dim == fittings.Lining || v.Dim == fittings.Gores {
					continue
				}
				tried++
				checkChange(t, it, host, e, v, &b)
			}
		}
		if tried < 100 {
			t.Errorf("%s: %d changes tried", b.Name, tried)
		}
	}
}

func checkChange(t *testing.T, it, host *takeoff.Item, e *Expr, v Var, b *fittings.Basis) {
	t.Helper()
	p := it.Piece
	raw, _ := Raw(it, v.Dim)
	by := 1.02
	if v.Dim == fittings.Width && p.Plane == fittings.PlaneHeight {
		by = 0.98
	}
	if v.Host {
		raw, _ = Raw(host, v.Dim)
		for d, side := range map[fittings.Dim]*float64{fittings.Width: &p.Wall.Width, fittings.Height: &p.Wall.Height, fittings.Diameter: &p.Wall.Diameter} {
			if d == v.Dim {
				*side *= by
			}
		}
	} else {
		s, _ := p.Sizes.Get(v.Dim)
		p.Sizes.Set(v.Dim, s+raw*(by-1)*perUnit(v.Dim))
	}
	want, _, problems := fittings.AreaOn(&p, b)
	if len(problems) > 0 {
		t.Errorf("%s, %s, %s: %s", b.Name, it.Tag, v.Dim.Heading(), problems[0].Message)
		return
	}
	figure := Figure(it, host, 0)
	got := e.Value(func(x Var) float64 {
		if x == v {
			return raw * by
		}
		return figure(x)
	})
	if math.Abs(got-want) > 1e-9*want {
		t.Errorf("%s, %s with %s x %g: %v m2, want %v", b.Name, it.Tag, v.Dim.Heading(), by, got, want)
	}
}

func perUnit(d fittings.Dim) float64 {
	if d.Unit() == fittings.Metre {
		return 0.001
	}
	return 1
}

// TestText: brackets stand where a spreadsheet needs them.
func TestText(t *testing.T) {
	name := func(v Var) string {
		return map[fittings.Dim]string{fittings.Width: "A1", fittings.Height: "B1", SheetMM: "sheet_mm"}[v.Dim]
	}
	w, h := of(fittings.Width), of(fittings.Height)
	for want, e := range map[string]*Expr{
		"A1-(B1-2)":              minus(w, minus(h, num(2))),
		"A1/(B1*2)":              over(w, times(h, num(2))),
		"(A1+B1)^2":              square(plus(w, h)),
		"2*(A1+2*sheet_mm)/1000": times(num(2), over(plus(w, times(num(2), of(SheetMM))), inLength())),
		"SQRT(A1^2+(B1/2)^2)":    hypot(w, half(h)),
		"MAX(0,A1-B1)*PI()":      times(call("MAX", num(0), minus(w, h)), pi()),
		"A1-B1+0.5":              plus(minus(w, h), num(0.5)),
		"(A1^2)^2":               square(square(w)),
	} {
		if got := e.Text(MM, name); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}
