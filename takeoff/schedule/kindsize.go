package schedule

import (
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
)

// kinds are the words for kinds in this table.
func (t *table) kinds() wording.Kinds { return wording.Kinds{Lex: t.lex, Millimetres: t.millimetres} }

// millimetres reports that nothing says that sizes are in another unit.
func (t *table) millimetres() bool {
	for i := range t.specs {
		if s := &t.specs[i]; s.used && s.Measure == takeoff.Lengths && s.Column.Unit != quantity.Millimetre && s.Column.Unit.Name != "m" {
			return false
		}
	}
	for _, x := range t.search.Texts {
		if u, says := wording.StatedUnit(t.lex, x.Text); says && u != quantity.Millimetre {
			return false
		}
	}
	return true
}

// sizeInKind puts the size that stands beside the kind to those of the row.
func (t *table) sizeInKind(s *spec, size string) {
	if t.inKind == nil {
		t.inKind = &spec{Heading: headings.Heading{Typed: s.Typed, Verdict: headings.Sizes, Size: headings.OwnSize}}
		t.inKind.set(t, t.inKind.Heading)
	}
	t.moved = true
	t.pending = append(t.pending, sizeCell{t.inKind, size})
	t.rowUnit = t.rowUnit || quantity.SaysUnit(size)
}
