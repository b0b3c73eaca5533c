package settled

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// sideWords stand before the letter of a side of a cross-section, in seven languages (from
// memory, unverified); numberWords before a 1 and a 2.
var (
	sideWords = []string{"dim", "size", "side", "seite", "mass", "cote", "kant", "kante", "kantenlange", "seitenlange", "kantlengte", "zijde", "lado", "lato", "maat", "sida", "dimension"}

	numberWords = append([]string{"dimensions", "abmessung", "grosse", "afmeting", "afmetingen", "misura", "dimensione", "dimensioni", "medida", "dimensiones", "tamano", "taille", "matt"}, sideWords...)
)

// sidesOneTwo takes columns as Dim 1 and Dim 2 for width and height where their cells are
// single figures: a piece of one cross-section that has both, and not twice the same, has its
// sides there. Those of a reducer may be two diameters, and so may all be where a round one
// has both.
func (t *Reading) sidesOneTwo() {
	one, two := t.sideNumbered("1"), t.sideNumbered("2")
	if one < 0 || two < 0 || t.OfRefused() || !t.Maps(takeoff.DimColumn(fittings.Length)) || slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return s.Used && s.Sized == columns.Own && s.Typed != t.Specs[one].Typed
	}) {
		return
	}
	b := t.Peek()
	if b.Share(one, celltext.IsFigure) < 1 || b.Share(two, celltext.IsFigure) < 1 || !t.bothSides(b, one, two) {
		return
	}
	for i, at := range [...]int{one, two} {
		s := &t.Specs[at]
		h := t.Lex.Read([...]string{"width", "height"}[i])
		h.Typed, h.Unit, h.Said = s.Typed, quantity.Default(takeoff.Lengths), false
		if u, said := unitBehind(s.Typed); said {
			h.Unit, h.Said = u, true
		}
		s.Set(&t.Reading, h)
		s.Settled = true
	}
	t.Note("columns '%s' and '%s' are read as width and height, as pieces of one cross-section have both", t.Specs[one].Typed, t.Specs[two].Typed)
}

// bothSides reports pieces of one cross-section with two figures that aren't the same, of
// which the second isn't the length over again, and none of them round.
func (t *Reading) bothSides(b columns.Beneath, one, two int) bool {
	kind := t.kindAsked()
	if kind < 0 {
		return t.sidesByShape(b, one, two)
	}
	long := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.IsLength() })
	told := false
	for _, cells := range b.Cells {
		first, second, name := celltext.At(cells, one), celltext.At(cells, two), celltext.At(cells, kind)
		if !celltext.IsFigure(first) || !celltext.IsFigure(second) || first == "" || second == "" {
			continue
		}
		switch t.Kinds().KindIn(name) {
		case fittings.Straight, fittings.Bend, fittings.Cap:
			if t.Kinds().RoundKind(name) || t.roundRow(cells) {
				return false
			}
			told = told || first != second && second != celltext.At(cells, long)
		}
	}
	return told
}

// sidesByShape reports rows without kinds of which each says its shape: the rectangular ones have two
// figures, not the same all over, and the circular ones one.
func (t *Reading) sidesByShape(b columns.Beneath, one, two int) bool {
	told := false
	for _, cells := range b.Cells {
		first, second := celltext.At(cells, one), celltext.At(cells, two)
		if first == "" && second == "" {
			continue
		}
		switch none := second == "" || celltext.MeansNothing(second); t.rowShape(cells) {
		case fittings.Rectangular:
			if none || first == "" {
				return false
			}
			told = told || first != second
		case fittings.Circular:
			if !none {
				return false
			}
		default:
			return false
		}
	}
	return told
}

// kindAsked is the column of kinds, or the one of descriptions that will be it.
func (t *Reading) kindAsked() int {
	if at := t.KindColumn(); at >= 0 {
		return at
	}
	b := t.Peek()
	return slices.IndexFunc(t.Specs, func(s columns.Spec) bool {
		at := slices.IndexFunc(t.Specs, func(x columns.Spec) bool { return x.Typed == s.Typed })
		return !s.Fixed && !s.Used && b.Share(at, t.Kinds().NamesKind) >= 0.5
	})
}

// sideNumbered is the column headed by a word for a side or a size and a number, or -1.
func (t *Reading) sideNumbered(number string) int {
	return slices.IndexFunc(t.Specs, func(s columns.Spec) bool {
		words := headings.Tokens(s.Typed)
		if _, said := unitBehind(s.Typed); said {
			words = words[:len(words)-1]
		}
		if n := len(words); n == 0 || n > 2 || s.Fixed {
			return false
		}
		word, ok := strings.CutSuffix(strings.Join(words, ""), number)
		return ok && slices.Contains(numberWords, word)
	})
}

// unitBehind is the unit of length at the end of a heading.
func unitBehind(typed string) (quantity.Unit, bool) {
	words := headings.Tokens(typed)
	if len(words) < 2 {
		return quantity.Unit{}, false
	}
	u, ok := quantity.UnitOf(words[len(words)-1])
	return u, ok && u.Measure == takeoff.Lengths
}

// feetAndInches takes two columns of lengths, in feet and in inches, for one: Length ft |
// Length in, and where no other column is the length, Ft | In.
func (t *Reading) feetAndInches() {
	t.Feet = 0
	feet, named := t.inFeet()
	if feet < 0 {
		return
	}
	inches := t.inInches(feet, named)
	if inches < 0 {
		return
	}
	s, next := &t.Specs[feet], &t.Specs[inches]
	if !named {
		h := headings.Heading{Typed: s.Typed, Verdict: headings.Known, Column: takeoff.DimColumn(fittings.Length), Unit: quantity.Foot, Said: true}
		s.Set(&t.Reading, h)
		s.Settled = true
	}
	s.Inches, t.Feet = inches+1, feet+1
	next.Used, next.Verdict, next.Heading.Column = false, headings.Known, s.To() // no other meaning is sought
	t.Note("columns '%s' and '%s' are read as one length in feet and inches", s.Typed, next.Typed)
}

// inFeet is the column of lengths in feet, or the one headed by feet only where none is of
// lengths; -1: none.
func (t *Reading) inFeet() (at int, named bool) {
	at = slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.IsLength() && s.Said && s.Column.Unit == quantity.Foot })
	if at >= 0 || t.Maps(takeoff.DimColumn(fittings.Length)) || t.OfRefused() {
		return at, at >= 0
	}
	for i := range t.Specs {
		if u, ok := columns.UnitOnly(t.Specs[i].Typed); ok && u == quantity.Foot && !t.Specs[i].Used && !t.Specs[i].Fixed {
			if at >= 0 {
				return -1, false
			}
			at = i
		}
	}
	return at, false
}

// inInches is the one column of lengths in inches, or headed by inches only, with less than a foot
// in each cell: right behind that of feet where this is too, and never behind one that isn't used,
// of which it may be.
func (t *Reading) inInches(feet int, named bool) int {
	at, b := -1, columns.Beneath{}
	for i := range t.Specs {
		s := &t.Specs[i]
		h := s.Heading
		if s.Fixed && !s.Used {
			h = t.Lex.Read(s.Typed)
		}
		u, only := columns.UnitOnly(s.Typed)
		switch {
		case i == feet || s.Fixed && s.Used:
			continue
		case named && h.Verdict == headings.Known && h.Column == takeoff.DimColumn(fittings.Length) && h.Said && h.Unit == quantity.Inch:
		case only && u == quantity.Inch && !s.Used && (i == feet+1 || named && (i == 0 || t.Specs[i-1].Used)):
			if b.Columns == nil {
				b = t.Peek()
			}
			if !t.OfRefused() && (len(b.Columns[i]) == 0 || slices.ContainsFunc(b.Cells, func(cells []string) bool { return !underFoot(celltext.At(cells, feet), celltext.At(cells, i)) })) {
				continue
			}
		default:
			continue
		}
		if at >= 0 {
			return -1
		}
		at = i
	}
	return at
}

// underFoot reports a cell with less than a foot in inches, 6, 6 1/2, 11", or with any length
// where none stands in feet.
func underFoot(feet, inches string) bool {
	c := quantity.Column{Unit: quantity.Inch, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths)}
	v, trouble := c.Number(inches)
	return quantity.Nothing(inches, takeoff.Lengths) || inches == "" || trouble == "" && (v < 0.3048 || feet == "" || feet == "0" || celltext.MeansNothing(feet))
}

// loneSideA takes a bare A for the width where a bare H is the height and nothing else the width,
// as in Spanish (ancho): A mm | H mm | L mm.
func (t *Reading) loneSideA() {
	if t.Maps(columns.Own[0]) || !slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		words := headings.Tokens(s.Typed)
		return s.Used && s.To() == columns.Own[1] && len(words) > 0 && words[0] == "h"
	}) {
		return
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		words := headings.Tokens(s.Typed)
		if s.Used || s.Fixed || len(words) == 0 || len(words) > 2 || words[0] != "a" || !s.Heading.Said || s.Heading.Unit.Measure != takeoff.Lengths {
			continue
		}
		t.TakeFor(s, columns.Own[0])
		t.Note("column '%s' is read as width_mm, as it stands beside the height and nothing else is the width", s.Typed)
		return
	}
}
