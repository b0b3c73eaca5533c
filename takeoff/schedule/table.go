package schedule

import (
	"fmt"
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
)

// table turns the rows of one sheet or text file into rows of a schedule. It
// passes over what stands above the heading row, which it finds by itself.
type table struct {
	info *Info
	opt  *Options
	columns.Reading
	others     int   // other headings that started further down
	fresh      bool  // no row of data since the headings
	repeated   bool  // nor since they stood again
	repeatedAt []int // the rows in which they did
	ragged     bool  // too many cells in a row is a fault
	suspect    bool  // there may be control characters
	most       int   // rows that the file may hold
	stray      []bool
	pending    []sizeCell
	turn       struct { // an angle in the kind of the row
		*columns.Spec
		cell, angle string
	}
	doubts
	loud   bool // the row has a kind that isn't known, or none
	over   subheads
	since  [3]int // rows of the file before the last total, the last sub-heading, and this sheet
	told   told.Tally
	row    takeoff.Row
	inKind *columns.Spec // how sizes in the column of kinds are read
}

// offer takes the next row of the file that isn't blank. broken is what is
// wrong with the row as such, or empty; down are the columns whose cell is the
// lower part of one that is merged down.
func (t *table) offer(number int, cells []string, broken string, down []int, each func(*takeoff.Row) error) error {
	if t.ByMap.Skips(t.Place.Sheet, number) {
		t.Look.Class(told.SkippedRow, number, cells)
		return nil
	}
	if t.Specs == nil {
		done, err := t.find(number, cells)
		if done || err != nil {
			return err
		}
	}
	t.Place.Row = number
	r := &t.row
	r.Reset(t.Place)
	r.Most = t.most
	worded, empty := t.fill(r, cells, down)
	if empty && broken == "" {
		return nil
	}
	if broken == "" && (worded && (t.headingsAgain(number, cells) || t.unitRow(number, cells)) || t.loud && t.fresh && t.numbered(number, cells) || t.mayBeAside(r) && t.aside(number, cells, r)) {
		return nil
	}
	t.repeated, t.repeatedAt, t.titled = false, nil, false
	if t.fresh {
		t.fresh = false
		if t.UnitsElsewhere() {
			r.Reset(t.Place)
			t.fill(r, cells, down)
		}
		t.NoteUnits()
	}
	t.settle(r, broken)
	t.Look.Class(told.PieceRow, number, cells)
	if t.Place.Sheet != "" {
		t.Look.Mark(r)
	}
	t.count(1)
	return each(r)
}

// fill reads the cells into r. worded reports a cell that should hold a number
// and starts like a word; empty, that every cell is blank.
func (t *table) fill(r *takeoff.Row, cells []string, down []int) (worded, empty bool) {
	empty = true
	t.pending, t.loud = t.pending[:0], true
	if len(t.strays) > 0 {
		t.strays = t.strays[:0]
	}
	t.turn.angle, t.metred = "", false
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
			cell = s.GoesOn(cell, cells[i:n])
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
		if mark&celltext.Odd != 0 || t.suspect || len(cell) > celltext.MaxWord {
			if cell = t.fit(r, i, s, cell); cell == "" {
				continue
			}
		}
		worded = t.take(r, s, cell) || worded
	}
	more := t.behind(r, cells, n, empty)
	return worded, empty && !more
}

// take reads one cell of a column that is used. It reports a cell that should
// hold a number and starts like a word.
func (t *table) take(r *takeoff.Row, s *columns.Spec, cell string) bool {
	c := s.To()
	switch {
	case !celltext.Digit(cell[0]) && !celltext.Digit(cell[len(cell)-1]) && !s.Plain(cell) && t.saysNothing(r, s, cell):
		return false
	case s.Lenient && t.saysElse(s, cell):
		return false
	case s.Measure == takeoff.Text:
		if s.Words != nil {
			cell = t.word(s, cell)
		}
		r.Text[c] = cell
		return false
	case s.Verdict == headings.Sizes:
		t.pending = append(t.pending, sizeCell{s, cell})
		t.rowUnit = t.rowUnit || quantity.SaysUnit(cell)
		return celltext.Wordy(cell)
	}
	v, trouble := s.Number(cell)
	switch {
	case trouble == "":
		r.Text[c] = cell
		r.SetNumber(c, v)
		switch {
		case s.Carried && v > columns.MostCarried:
			t.fault(r, s, cell, fmt.Sprintf("would be %g m by the unit of the headings before; write the unit in the heading", v))
		case !s.Said && s.Least > 0:
			t.seeUnit(s, cell, v)
		case v >= mostAcross && s.Least > 0 && (s.Column.Unit != quantity.Millimetre || s.Across && quantity.SaysUnit(cell)):
			t.tooLarge(r, s, cell, v)
		}
		return false
	case s.Sized[0] != 0 && quantity.Combined(cell):
		t.pending = append(t.pending, sizeCell{s, cell})
		return false
	}
	r.Text[c] = cell
	t.fault(r, s, cell, trouble)
	return celltext.Wordy(cell)
}
