package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
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
		share := b.share(i, t.namesKind)
		switch describes := s.Verdict == headings.Asks && s.Ask.Describes(); {
		case s.fixed:
			continue
		case describes || s.Verdict == headings.Asks && s.Ask.Items():
			asked++
			s.kindless = share == 0 && len(b.columns[i]) > 0
			if share >= 0.5 {
				found = append(found, i)
			}
		case share == 1 && (s.used && s.Verdict == headings.Known && s.to() == takeoff.Tag || s.Verdict == headings.Unknown && describer(s.Typed)):
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

// describers are words of headings that may stand over what a piece is, in seven
// languages (from memory, unverified).
var describers = []string{"name", "part", "piece", "element", "elemento", "elément", "category", "article", "artikel", "component", "composant", "onderdeel", "nom", "nome", "namn", "naam", "denominazione", "designation", "object", "objekt"}

func describer(typed string) bool {
	return slices.ContainsFunc(headings.Tokens(typed), func(w string) bool { return slices.Contains(describers, w) })
}

// sameKinds reports that the columns name the same kind on every row that was looked at.
func (t *table) sameKinds(b beneath, columns []int) bool {
	for _, row := range b.cells {
		kind := fittings.NoKind
		for _, i := range columns {
			if i >= len(row) || trim(row[i]) == "" {
				continue
			}
			k := t.kindIn(trim(row[i]))
			if kind != fittings.NoKind && k != fittings.NoKind && k != kind {
				return false
			}
			kind = max(kind, k)
		}
	}
	return true
}

// kindIn is the kind that a cell names.
func (t *table) kindIn(cell string) fittings.Kind {
	if !t.namesKind(cell) {
		return fittings.NoKind
	}
	one := spec{Heading: headings.Heading{Verdict: headings.Known, Column: takeoff.Kind}}
	w, _, _ := strings.Cut(t.translate(&one, cell), sizeMark)
	k, _, _, _ := fittings.ParseDescription(w[strings.LastIndexByte(w, '|')+1:])
	return k
}

// shapeByCells takes a column of types for the shape, where that is all that its cells
// name.
func (t *table) shapeByCells(b beneath) {
	if t.maps(takeoff.Shape) || !t.maps(takeoff.Kind) {
		return
	}
	for i := range t.specs {
		s := &t.specs[i]
		if s.Verdict == headings.Asks && !s.fixed && s.Ask.Describes() && b.share(i, t.namesShape) == 1 {
			t.takeFor(s, takeoff.Shape)
			t.note("column '%s' is read as shape, as its cells name shapes", s.Typed)
			return
		}
	}
}

func (t *table) namesShape(cell string) bool {
	_, known := t.lex.Exact(takeoff.Shape, cell)
	_, shape := fittings.ParseShape(cell)
	return known || shape
}

// namesKind reports a cell that names a kind of piece, and not only a shape.
func (t *table) namesKind(cell string) bool {
	if len(cell) > maxWord || strings.TrimLeft(cell, "0123456789.,") == "" {
		return false
	}
	if t.namesShape(cell) || len(headings.Tokens(cell)) == 1 && (roundWord.MatchString(cell) || rectWord.MatchString(cell)) {
		return false
	}
	kind := spec{Heading: headings.Heading{Verdict: headings.Known, Column: takeoff.Kind}}
	return t.translate(&kind, cell) != ""
}
