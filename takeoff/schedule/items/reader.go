// Package items reads the cells of one row into an item of the schedule, by how its columns are
// read, and refuses what may not be what it seems: sizes, shapes, tags, remarks, counts, cells
// beside the table. Which rows are items isn't decided here.
package items

import (
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
)

// begin forgets what was found in the row before.
func (t *Reader) begin(cells []string) {
	t.Pending, t.Loud, t.cells = t.Pending[:0], true, len(cells)
	if len(t.strays) > 0 {
		t.strays = t.strays[:0]
	}
	if len(t.others) > 0 {
		t.others = t.others[:0]
	}
	t.turn.angle, t.metred, t.fitted, t.several.cell, t.total.cell, t.again.cell = "", false, "", "", "", ""
	if t.InKind.row.Spec != nil {
		t.InKind.row = InKind{}.row
	}
	if t.LengthAt > 0 {
		t.lengthFilled = celltext.At(cells, t.LengthAt) != ""
	}
}

// Fill reads the cells into r. worded reports a cell that should hold a number
// and starts like a word; empty, that every cell is blank.
func (t *Reader) Fill(r *takeoff.Row, cells []string, down []int) (worded, empty bool) {
	empty = true
	t.begin(cells)
	n := min(len(cells), len(t.Specs))
	for i, cell := range cells[:n] {
		if cell == "" {
			continue
		}
		mark := celltext.Marks[cell[0]]
		if (mark|celltext.Marks[cell[len(cell)-1]])&celltext.MayBeSpace != 0 {
			if cell = celltext.Trim(cell); cell == "" {
				continue
			}
			mark = celltext.Marks[cell[0]]
		}
		s := &t.Specs[i]
		if t.Seldom {
			cell = s.GoesOn(cell, cells[:n], i)
			if t.UnitsAt > 0 && s.Used && s.Measure == takeoff.Count && t.inMetres(r, s, cell, cells) {
				empty = false
				continue
			}
		}
		if down != nil && slices.Contains(down, i) {
			counts, filled := t.mergedDown(r, s, cell)
			if empty = empty && !filled; !counts {
				continue
			}
		} else {
			empty = false
		}
		if !s.Used {
			t.unused(r, i, s, cell)
			continue
		}
		if cell == s.Same && mark&celltext.Odd == 0 { // as in most rows
			takeSame(r, s, cell)
			continue
		}
		if mark&celltext.Odd != 0 || t.Suspect || len(cell) > celltext.MaxWord {
			if cell = t.fit(r, i, s, cell); cell == "" {
				continue
			}
		}
		worded = t.take(r, s, cell) || worded
	}
	return worded, t.stillEmpty(r, cells, n, empty)
}

// stillEmpty looks at what a row has besides the n cells of its columns, and reports whether
// it is blank then.
func (t *Reader) stillEmpty(r *takeoff.Row, cells []string, n int, empty bool) bool {
	if t.Feet > 0 && t.inchesAlone(r, cells[:n]) {
		empty = false
	}
	more := t.behind(r, cells, n, empty)
	return empty && !more
}

// behind looks at a row as a whole, and at its cells behind the n that have headings.
// It reports whether one of these is filled.
func (t *Reader) behind(r *takeoff.Row, cells []string, n int, empty bool) bool {
	if t.missing.size || t.missing.length {
		t.doubtMissing(r, cells)
	}
	if t.Commas && !empty {
		t.besideMetres(r, cells)
		switch {
		case len(cells) > len(t.Specs):
			t.shifted(r, cells)
		case len(cells) == len(t.Specs) && !t.uneven:
			t.evened()
		}
	}
	for i, cell := range cells[n:] {
		if cell = celltext.Trim(cell); cell != "" {
			if t.beyond(r, n+i, cell); i == 0 && n == len(t.Specs) && !t.Ragged {
				t.secondFigure(n, &t.Extra, cell)
			}
			t.anotherTable(cells[n+i:])
			return true
		}
	}
	if len(t.strays) > 0 {
		t.anotherTable(nil)
	}
	return false
}
