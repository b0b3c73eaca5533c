package columns

import (
	"slices"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// feetAndInches takes two columns of lengths beside each other, in feet and in inches, for
// one: Length ft | Length in.
func (t *Reading) feetAndInches() {
	for i := range max(0, len(t.Specs)-1) {
		s, next := &t.Specs[i], &t.Specs[i+1]
		if !s.Used || !s.isLength() || !s.Said || s.Column.Unit != quantity.Foot {
			continue
		}
		h := next.Heading
		if next.Fixed && !next.Used {
			h = t.Lex.Read(next.Typed)
		}
		if h.Verdict != headings.Known || h.Column != s.To() || !h.Said || h.Unit != quantity.Inch {
			continue
		}
		s.feet = true
		next.Used, next.Verdict = false, headings.Known // no other meaning is sought
		t.Note("columns '%s' and '%s' are read as one length in feet and inches", s.Typed, next.Typed)
		return
	}
}

// Lengths that one of several pieces has, m, where a column gives that of all. Common
// practice, no source.
const (
	leastEach = 0.3
	mostEach  = 6.5
)

// lengthOfAll takes a column of total lengths beside a quantity for those of all pieces of a
// row, where one of them is as long as pieces are.
func (t *Reading) lengthOfAll() {
	t.OfAll = slices.ContainsFunc(t.Specs, func(s Spec) bool { return s.Used && s.Heading.OfAll && s.isLength() })
	if t.OfAll || !t.Maps(takeoff.Quantity) || t.Maps(takeoff.DimColumn(fittings.Length)) {
		return
	}
	at, many := -1, -1
	for i := range t.Specs {
		s := &t.Specs[i]
		switch {
		case s.Verdict == headings.Asks && !s.Fixed && s.Ask.Runs() && t.ofTotal(s.Typed):
			if at >= 0 {
				return
			}
			at = i
		case s.Used && s.Verdict == headings.Known && s.To() == takeoff.Quantity:
			many = i
		}
	}
	if at < 0 || many < 0 {
		return
	}
	s := &t.Specs[at]
	unit := quantity.Default(takeoff.Lengths)
	if s.Heading.Said && s.Heading.Unit.Measure == takeoff.Lengths {
		unit = s.Heading.Unit
	}
	if !t.asLongEach(at, many, unit) {
		return
	}
	h := s.Heading
	h.Verdict, h.Column, h.OfAll = headings.Known, takeoff.DimColumn(fittings.Length), true
	h.Unit = unit
	s.Set(t, h)
	t.OfAll = true
	t.Note("column '%s' is read as the length of all pieces of a row together; that of each is a share of it", s.Typed)
}

// ofTotal reports a heading with a word for a total.
func (t *Reading) ofTotal(typed string) bool {
	return slices.ContainsFunc(headings.Tokens(typed), func(w string) bool {
		return t.Lex.Total(w) || slices.Contains(wholes, w) || strings.HasPrefix(w, "gesamt")
	})
}

// asLongEach reports that lengths over how many there are, as far as rows were looked at,
// are those of pieces.
func (t *Reading) asLongEach(at, many int, unit quantity.Unit) bool {
	c := quantity.Column{Unit: unit, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths), CommaFile: t.CommaFile, Decimal: t.Decimal}
	b, several := t.peek(), 0
	for _, cells := range b.cells {
		n, err := strconv.Atoi(celltext.At(cells, many))
		v, trouble := c.Number(celltext.At(cells, at))
		if err != nil || n < 2 || trouble != "" {
			continue
		}
		if several++; v/float64(n) < leastEach || v/float64(n) > mostEach {
			return false
		}
	}
	return several > 0
}
