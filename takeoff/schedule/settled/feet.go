package settled

import (
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

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
