package columns

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
)

// isLength reports the column of lengths along the duct.
func (s *Spec) isLength() bool {
	return s.Verdict == headings.Known && s.To() == takeoff.DimColumn(fittings.Length)
}

// lengthsOnly takes a line on lengths in metres or feet for those along the duct, where
// the sizes across would be far too large by it: Lengths in m, over 600 x 400.
func (t *Reading) lengthsOnly(text string) bool {
	u, ok := wording.OfLengths(t.Lex, text)
	if !ok || !slices.ContainsFunc(t.Specs, func(s Spec) bool { return s.Used && (!s.Said || s.Column.Unit == u) && s.isLength() }) {
		return false
	}
	b, across := t.peek(), 0
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Said || s.Measure != takeoff.Lengths || !s.Across {
			continue
		}
		if across += len(b.columns[i]); b.share(i, tooLargeAcross) < 1 {
			return false
		}
	}
	if across == 0 {
		return false
	}
	t.takeUnits(text, quantity.Unit{}, u)
	return true
}

// tooLargeAcross reports a cell with a figure that is no size in metres or feet.
func tooLargeAcross(cell string) bool {
	from := strings.IndexAny(cell, "0123456789")
	if from < 0 {
		return false
	}
	to := from
	for to < len(cell) && celltext.Digit(cell[to]) {
		to++
	}
	n, err := strconv.Atoi(cell[from:to])
	return err == nil && n >= 20
}

// apartAgainst finds fault with a line of two units that headings contradict.
func (t *Reading) apartAgainst(row int, text string, across, along quantity.Unit) {
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || !s.Said || s.Fixed || s.Says != "" || s.Measure != takeoff.Lengths {
			continue
		}
		u := quantity.Unit{}
		switch {
		case s.isLength():
			u = along
		case s.Sized == Own:
			u = across
		}
		if u.Name == "" || s.Column.Unit == u {
			continue
		}
		p, said := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: row}, celltext.Shorten(text)
		t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "the units that the headings name",
			fmt.Sprintf("'%s' says %s, and '%s' says %s, in which it is read; correct the line or the heading", said, u.Name, s.Typed, s.Column.Unit.Name)))
		return
	}
}

// takeUnits takes the units of a line for columns that give none: those across the duct and
// along it.
func (t *Reading) takeUnits(text string, across, along quantity.Unit) {
	var names []string
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Said || s.Measure != takeoff.Lengths {
			continue
		}
		u := across
		if s.isLength() {
			u = along
		}
		if u.Name == "" {
			continue
		}
		s.Column.Unit, s.Column.Stated, s.Said, s.Says = u, true, true, "a line above the headings"
		names = append(names, "'"+s.Typed+"' in "+u.Name)
	}
	if len(names) > 0 {
		t.Note("'%s' above the headings gives the units of %s", celltext.Shorten(text), strings.Join(names, ", "))
	}
}
