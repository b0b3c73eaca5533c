package schedule

import (
	"fmt"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// beyond deals with a cell to the right of the last heading.
func (t *table) beyond(r *takeoff.Row, i int, cell string) {
	if !t.ragged {
		t.unheaded(i, &columns.Spec{})
		return
	}
	short := celltext.Shorten(cell)
	r.Faults = append(r.Faults, t.Place.Fault("", short, fmt.Sprintf("%d cells", len(t.Specs)),
		fmt.Sprintf("there are more cells than headings, from '%s' on; put quotes around text that holds the separator", short)))
}

// unheaded notes once that a column without a heading holds something.
func (t *table) unheaded(i int, s *columns.Spec) {
	if s.Verdict != headings.Blank || i < len(t.stray) && t.stray[i] {
		return
	}
	for len(t.stray) <= i {
		t.stray = append(t.stray, false)
	}
	t.stray[i] = true
	t.Note("column %d has no heading and isn't used", i+1)
}

// anotherTable finds fault with cells to the right of the headings, or between them,
// that look like a piece of another table.
func (t *table) anotherTable(beyond []string) {
	for _, cell := range beyond {
		if cell = celltext.Trim(cell); cell != "" {
			t.strays = append(t.strays, cell)
		}
	}
	if len(t.strays) < 4 || t.besides || !t.Kinds().LooksLikePiece(t.strays) {
		return
	}
	t.besides = true
	t.Found.Faults = append(t.Found.Faults, t.Place.Fault("", celltext.Shorten(strings.Join(t.strays, " | ")), "one table on a sheet",
		"the cells without headings look like another table beside this one, which isn't read; put it on a sheet of its own"))
}

// Sizes that hardly any piece has, m: they are in mm under a heading in another unit.
// Common practice, no source.
const (
	mostAcross = 3
	mostLong   = 200
	mostInches = 25 // long, in inches or cm
)

// tooLarge refuses a size that is so large by the unit of its heading that it is in mm.
func (t *table) tooLarge(r *takeoff.Row, s *columns.Spec, cell string, v float64) {
	if s.Across && v >= mostAcross || !s.Across && (v >= mostLong || v >= mostInches && s.Column.Unit.Name != "m" && s.Column.Unit != quantity.Foot) {
		if quantity.SaysUnit(cell) {
			t.fault(r, s, cell, fmt.Sprintf("would be %.4g m by the unit in the cell; take it out if it is another word, or write the size in mm", v))
			return
		}
		t.fault(r, s, cell, fmt.Sprintf("would be %.4g m in %s; write its unit behind it, as %s mm", v, s.Column.Unit.Name, cell))
	}
}

// fault puts a fault of a cell into its row.
func (t *table) fault(r *takeoff.Row, s *columns.Spec, cell, trouble string) {
	expected := "text"
	switch {
	case s.Verdict == headings.Sizes:
		expected = "a size in " + s.Column.Unit.Name + ", as 600x400 or Ø315"
	case s.Measure != takeoff.Text:
		expected = s.Expects()
	}
	if strings.HasPrefix(trouble, "could be ") {
		t.info.Note("where a number has two readings, decimal = 'comma' or 'point' in a map settles it for the whole file: inspect -o MAP.toml writes one, --map MAP.toml reads by it")
	}
	short := celltext.Shorten(cell)
	r.Refuse(s.To(), t.Place.Fault(s.Typed, short, expected, fmt.Sprintf("'%s' %s", short, trouble)))
}
