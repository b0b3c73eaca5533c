package items

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
)

// missing is what no column gives of the pieces, though columns that aren't used may.
type missing struct{ size, length bool }

// seeMissing finds out whether no column gives sizes, or lengths.
func (t *Reader) seeMissing() {
	gives := func(d ...fittings.Dim) bool {
		return slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
			return s.Used && (s.Verdict == headings.Sizes || s.Verdict == headings.Known && slices.ContainsFunc(d, func(d fittings.Dim) bool { return s.To() == takeoff.DimColumn(d) }))
		})
	}
	long := slices.ContainsFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.Size == headings.LongSize })
	t.missing = missing{size: !gives(fittings.Width, fittings.Height, fittings.Diameter, fittings.GivenArea),
		length: !long && t.UnitsAt == 0 && !t.Maps(takeoff.DimColumn(fittings.Length)) && !t.Maps(takeoff.DimColumn(fittings.GivenArea))}
}

// doubtMissing refuses a row of which no column gives the size or the length, where columns
// that aren't used hold figures: these are the cause.
func (t *Reader) doubtMissing(r *takeoff.Row, cells []string) {
	if t.Loud || len(r.Faults) > 0 {
		return
	}
	kind, _, _, _ := fittings.ParseDescription(r.Text[takeoff.Kind])
	what, write, c := "", "", takeoff.DimColumn(fittings.Width)
	switch {
	case t.missing.size && len(t.Pending) == 0 && kind != fittings.Inline && kind != fittings.NoKind:
		what, write = "size", "size, or width_mm and height_mm, or diameter_mm"
	case t.missing.length && kind == fittings.Straight && r.Text[takeoff.DimColumn(fittings.Length)] == "":
		what, write, c = "length", "length_mm, with quantity", takeoff.DimColumn(fittings.Length)
	default:
		return
	}
	var names []string
	for i, cell := range cells[:min(len(cells), len(t.Specs))] {
		s := &t.Specs[i]
		if cell = celltext.Trim(cell); s.Used || s.Typed == "" || cell == "" || !celltext.Digit(cell[0]) || s.OfUnits ||
			slices.ContainsFunc(headings.Tokens(s.Typed), t.Lex.Unused) || len(names) > 3 {
			continue
		}
		if s.Verdict != headings.Unknown || s.Fixed && t.meant(s) != headings.Unknown { // said at the heading
			return
		}
		names = append(names, "'"+s.Typed+"'")
	}
	if len(names) == 0 {
		return
	}
	are := "isn't"
	if len(names) > 1 {
		are = "aren't"
	}
	r.Refuse(c, t.Place.Fault(what, "", write, fmt.Sprintf("no column gives the %s, and %s %s used; rename what holds it to %s", what, strings.Join(names, ", "), are, write)))
}

// meant is what became of a heading without a map.
func (t *Reader) meant(s *columns.Spec) headings.Verdict {
	if over, low, two := strings.Cut(s.Typed, " / "); two {
		return t.Lex.Under(over, low).Verdict
	}
	return t.Lex.Read(s.Typed).Verdict
}
