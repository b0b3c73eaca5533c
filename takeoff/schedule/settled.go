package schedule

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// describedKinds takes the kinds from the one column of descriptions or types
// where no column is headed as the kind: each of its words still has to be
// understood.
func (t *table) describedKinds() {
	var found, items []*spec
	for i := range t.specs {
		s := &t.specs[i]
		if s.used && s.Verdict == headings.Known && s.to() == takeoff.Kind {
			return
		}
		if s.Verdict == headings.Asks && s.Ask.Describes() {
			found = append(found, s)
		}
		if s.Verdict == headings.Asks && s.Ask.Items() && !s.kindless {
			items = append(items, s)
		}
	}
	if len(found) == 0 {
		found = items
	}
	if len(found) != 1 {
		return
	}
	t.takeFor(found[0], takeoff.Kind)
	found[0].settled = len(items) > 0 // else the heading says it
	t.note("column '%s' is read as kind, as no other column is headed so", found[0].Typed)
}

// spanishWords are headings that no French schedule has.
var spanishWords = []string{"ancho", "anchura", "alto", "altura", "longitud", "largo", "tipo", "cantidad", "pieza", "conducto"}

// spanishName takes nombre for a name where the other headings are Spanish, and not for
// the French how many.
func (t *table) spanishName() {
	spanish := slices.ContainsFunc(t.specs, func(s spec) bool {
		return slices.ContainsFunc(headings.Tokens(s.Typed), func(w string) bool { return slices.Contains(spanishWords, w) })
	})
	for i := range t.specs {
		if s := &t.specs[i]; spanish && s.used && !s.fixed && s.Verdict == headings.Known && headings.Squash(s.Typed) == "nombre" {
			s.used, s.Verdict = false, headings.Unknown
		}
	}
}

// areaBesideSizes takes a column headed area, with a unit, for figures to check
// where the sizes are given too: nothing says that its areas are of each and not
// of the whole row, and sizes give the area anyway.
func (t *table) areaBesideSizes() {
	sized := t.maps(takeoff.DimColumn(fittings.Length)) && slices.ContainsFunc(t.specs, func(s spec) bool {
		return s.used && (s.Verdict == headings.Sizes || s.to() == takeoff.DimColumn(fittings.Width) || s.to() == takeoff.DimColumn(fittings.Diameter))
	})
	if !sized {
		return
	}
	stated := t.maps(takeoff.StatedArea)
	t.areaOfAll()
	for i := range t.specs {
		s := &t.specs[i]
		asked := s.Verdict == headings.Asks && s.Ask.OnAreas() && (s.Heading.Said && s.Heading.Unit.Measure == takeoff.Areas || s.figures && t.metric())
		named := s.used && s.Verdict == headings.Known && s.to() == takeoff.DimColumn(fittings.GivenArea) &&
			!strings.EqualFold(s.Typed, s.to().Heading()) && headings.Tokens(s.Typed)[0] == "area"
		if s.fixed || asked && stated || !asked && !named {
			continue
		}
		if stated {
			t.refuse(s, "stated_area_m2 or area_m2", "'"+s.Typed+"' stands beside sizes and a stated area, so it isn't used; write area_m2 if it gives the area of each instead of the sizes")
			continue
		}
		said := s.Heading.Said
		t.takeFor(s, takeoff.StatedArea)
		s.settled = !said
		t.note("column '%s' is read as stated_area_m2, figures to check, as the sizes are there too; write area_m2 for areas of each, given instead of sizes", s.Typed)
	}
}

// areaOfAll leaves out a column of areas of each piece where another gives those of
// whole rows, which are what a stated area is held against.
func (t *table) areaOfAll() {
	total, each := -1, -1
	for i := range t.specs {
		s := &t.specs[i]
		if s.fixed || !(s.Verdict == headings.Asks && s.Ask.OnAreas()) && !(s.used && s.Verdict == headings.Known && s.to() == takeoff.DimColumn(fittings.GivenArea)) {
			continue
		}
		switch whole := slices.ContainsFunc(headings.Tokens(s.Typed), func(w string) bool { return t.lex.Total(w) || slices.Contains(wholes, w) }); {
		case whole && total >= 0, !whole && each >= 0:
			return
		case whole:
			total = i
		default:
			each = i
		}
	}
	if total < 0 || each < 0 {
		return
	}
	t.specs[each].used, t.specs[each].Verdict = false, headings.Unknown
}

// wholes are more words for a sum in a heading (from memory, unverified).
var wholes = []string{"gesamtflache", "totale", "totales", "totala", "totaal", "totaux"}

// metric reports sizes in mm, cm or m.
func (t *table) metric() bool {
	return !slices.ContainsFunc(t.specs, func(s spec) bool {
		return s.used && s.Measure == takeoff.Lengths && (s.Column.Unit == quantity.Inch || s.Column.Unit == quantity.Foot)
	})
}
