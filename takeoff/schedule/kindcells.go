package schedule

import (
	"fmt"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// kindByCells takes the kinds from the one of several columns of descriptions, types,
// items or marks whose cells name kinds. Two that name other kinds are asked about.
func (t *table) kindByCells(b beneath) {
	if t.maps(takeoff.Kind) {
		return
	}
	var found []int
	asked := 0
	for i := range t.specs {
		s := &t.specs[i]
		share := b.share(i, t.kinds().NamesKind)
		switch describes := s.Verdict == headings.Asks && s.Ask.Describes(); {
		case s.fixed:
			continue
		case describes || s.Verdict == headings.Asks && s.Ask.Items():
			asked++
			s.kindless = share == 0 && len(b.columns[i]) > 0
			if share >= 0.5 {
				found = append(found, i)
			}
		case share == 1 && (s.used && s.Verdict == headings.Known && s.to() == takeoff.Tag || s.Verdict == headings.Unknown && wording.Describer(s.Typed)):
			found = append(found, i)
		}
	}
	switch {
	case len(found) == 0, len(found) == 1 && asked == 1 && t.specs[found[0]].Verdict == headings.Asks && t.specs[found[0]].Ask.Describes(): // a column alone is taken anyway
		return
	case len(found) > 1 && !t.sameKinds(b, found):
		a, c := &t.specs[found[0]], &t.specs[found[1]]
		t.refuse(a, "one column of kinds", fmt.Sprintf("'%s' and '%s' both name kinds of pieces, and not the same; head the one that counts kind, and the other note", a.Typed, c.Typed))
		for _, i := range found {
			t.specs[i].used, t.specs[i].Verdict, t.specs[i].settled = false, headings.Unknown, true
		}
		return
	}
	t.takeFor(&t.specs[found[0]], takeoff.Kind)
	t.note("column '%s' is read as kind, as its cells name kinds of pieces", t.specs[found[0]].Typed)
}

// sameKinds reports that the columns name the same kind on every row that was looked at.
func (t *table) sameKinds(b beneath, columns []int) bool {
	for _, row := range b.cells {
		kind := fittings.NoKind
		for _, i := range columns {
			if i >= len(row) || celltext.Trim(row[i]) == "" {
				continue
			}
			k := t.kinds().KindIn(celltext.Trim(row[i]))
			if kind != fittings.NoKind && k != fittings.NoKind && k != kind {
				return false
			}
			kind = max(kind, k)
		}
	}
	return true
}

// shapeByCells takes a column of types for the shape, where that is all that its cells
// name.
func (t *table) shapeByCells(b beneath) {
	if t.maps(takeoff.Shape) || !t.maps(takeoff.Kind) {
		return
	}
	for i := range t.specs {
		s := &t.specs[i]
		if s.Verdict == headings.Asks && !s.fixed && s.Ask.Describes() && b.share(i, t.kinds().NamesShape) == 1 {
			t.takeFor(s, takeoff.Shape)
			t.note("column '%s' is read as shape, as its cells name shapes", s.Typed)
			return
		}
	}
}
