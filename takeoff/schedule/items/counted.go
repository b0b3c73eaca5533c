package items

import (
	"fmt"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// ToldCounts finds fault with columns that aren't used and seem to hold counts, where
// no column says how many there are.
func (t *Reader) ToldCounts() {
	t.toldQuantities()
	t.doubtLast()
	for i := range t.Specs {
		s := &t.Specs[i]
		w := &s.Watch
		sure := s.Verdict == headings.Asks && w.Most > 1
		if !w.Counts || w.Filled == 0 || w.Others > w.Filled || !sure && (5*w.Others > w.Filled || 2*w.Filled < t.watched || w.Most < 2 || w.Least > 5 || !w.Gaps && w.Filled > 1 && !t.Maps(takeoff.Tag)) {
			continue
		}
		name := s.Typed
		if name == "" {
			name = fmt.Sprintf("column %d", i+1)
		}
		at := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: t.HeadRow}
		t.Found.Faults = append(t.Found.Faults, at.Fault(name, s.Typed, "quantity, or another heading",
			fmt.Sprintf("'%s' holds whole numbers and no column says how many there are, so every row from row %d on was taken for one piece; write quantity if that is what it is, or take the column out", name, t.HeadRow+1)))
	}
	t.watched = 0
}

// quantified is how many rows say how many pieces they stand for, and how many don't.
type quantified struct{ with, without, first, last int }

func (c *quantified) add(r *takeoff.Row) {
	switch {
	case r.Text[takeoff.Quantity] != "":
		c.with++
	case !r.Refused(takeoff.Quantity):
		c.merge(quantified{0, 1, r.At.Row, r.At.Row})
	}
}

// merge adds what was counted further down.
func (c *quantified) merge(below quantified) {
	if c.without == 0 {
		c.first = below.first
	}
	if below.without > 0 {
		c.last = below.last
	}
	c.with, c.without = c.with+below.with, c.without+below.without
}

// toldQuantities tells of rows without a figure under quantity, where others have one.
func (t *Reader) toldQuantities() {
	c := t.tallies
	t.tallies = quantified{}
	switch {
	case c.with == 0 || c.without == 0:
	case c.without == 1:
		t.Note("1 row has no figure under quantity, and counts as one piece: row %d", c.first)
	default:
		t.Note("%d rows have no figure under quantity, and each counts as one piece: in rows %d to %d", c.without, c.first, c.last)
	}
}
