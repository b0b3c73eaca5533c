package schedule

import (
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// sizeInKind puts the size that stands beside the kind to those of the row.
func (t *table) sizeInKind(s *columns.Spec, size string) {
	if t.inKind == nil {
		t.inKind = &columns.Spec{Heading: headings.Heading{Typed: s.Typed, Verdict: headings.Sizes, Size: headings.OwnSize}}
		t.inKind.Set(&t.Reading, t.inKind.Heading)
	}
	t.moved = true
	t.pending = append(t.pending, sizeCell{t.inKind, size})
	t.rowUnit = t.rowUnit || quantity.SaysUnit(size)
}
