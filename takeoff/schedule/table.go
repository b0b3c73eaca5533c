package schedule

import (
	"fmt"
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
)

// spec is how a column of the file is read.
type spec struct {
	headings.Heading
	quantity.Column

	// What every cell of the column is held against.
	used    bool
	lenient bool              // what it doesn't understand bears on no area
	carried bool              // its unit is that of headings before
	own     bool              // a cell of it states its own unit
	beside  bool              // it states none, and sizes beside it are in inches, feet or cm
	words   map[string]string // what its words stand for, as far as met
	last    struct{ from, to string }
	asIs    string            // a cell that means what it says
	heard   string            // a joint that is known
	count   map[string]int    // of words that stand for others
	sized   [3]takeoff.Column // width, height, diameter that a whole cross-section in the cell sets
	paired  bool              // a size goes on in the next cell
	parted  int               // a size goes on in the next two cells: the first of these

	// What was found out about its heading.
	fixed    bool   // by a map
	settled  bool   // by the cells below it
	ofUnits  bool   // it says in what quantities are
	empty    bool   // of one with more than one reading: its first cells are
	worded   bool   // or they hold words only
	figures  bool   // or figures only
	kindless bool   // none of them names a kind
	waits    bool   // so it is asked about once one is filled
	says     string // what gives the unit, where the heading doesn't

	watch watch // of one that isn't used
}

// to is the column of ours.
func (s *spec) to() takeoff.Column { return s.Heading.Column }

// table turns the rows of one sheet or text file into rows of a schedule. It
// passes over what stands above the heading row, which it finds by itself.
type table struct {
	info       *Info
	opt        *Options
	lex        *headings.Lexicon
	place      takeoff.Place // file and sheet
	specs      []spec        // empty until the heading row is found
	search     headrow.Above
	heads      [][]string // the cells of the heading rows
	others     int        // other headings that started further down
	headRows   int        // of them, without a row of units
	headRow    int        // the last of the heading rows
	fresh      bool       // no row of data since the headings
	repeated   bool       // nor since they stood again
	repeatedAt []int      // the rows in which they did
	ragged     bool       // too many cells in a row is a fault
	commaFile  bool
	suspect    bool // there may be control characters
	most       int  // rows that the file may hold
	stray      []bool
	pending    []sizeCell
	turn       struct { // an angle in the kind of the row
		*spec
		cell, angle string
	}
	doubts
	loud   bool // the row has a kind that isn't known, or none
	over   subheads
	since  [3]int // rows of the file before the last total, the last sub-heading, and this sheet
	told   told.Tally
	fixing map[int]bool // columns that a map fixes
	look   *told.Sheet
	row    takeoff.Row
	below  func(n int) [][]string // up to n rows that come next
	inKind *spec                  // how sizes in the column of kinds are read
	next   []string               // the row before these, where the headings are settled at it
}

// offer takes the next row of the file that isn't blank. broken is what is
// wrong with the row as such, or empty; down are the columns whose cell is the
// lower part of one that is merged down.
func (t *table) offer(number int, cells []string, broken string, down []int, each func(*takeoff.Row) error) error {
	if t.opt.Map.Skips(t.place.Sheet, number) {
		t.look.Class(told.SkippedRow, number, cells)
		return nil
	}
	if t.specs == nil {
		done, err := t.find(number, cells)
		if done || err != nil {
			return err
		}
	}
	t.place.Row = number
	r := &t.row
	r.Reset(t.place)
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
		if t.unitsElsewhere() {
			r.Reset(t.place)
			t.fill(r, cells, down)
		}
		t.noteUnits()
	}
	t.settle(r, broken)
	t.look.Class(told.PieceRow, number, cells)
	if t.place.Sheet != "" {
		t.look.Mark(r)
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
	n := min(len(cells), len(t.specs))
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
		s := &t.specs[i]
		if t.seldom {
			cell = s.goesOn(cell, cells[i:n])
			if t.unitsAt > 0 && s.used && s.Measure == takeoff.Count && t.inMetres(r, s, cell, cells) {
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
		if !s.used {
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
func (t *table) take(r *takeoff.Row, s *spec, cell string) bool {
	c := s.to()
	switch {
	case !celltext.Digit(cell[0]) && !celltext.Digit(cell[len(cell)-1]) && !s.plain(cell) && t.saysNothing(r, s, cell):
		return false
	case s.lenient && t.saysElse(s, cell):
		return false
	case s.Measure == takeoff.Text:
		if s.words != nil {
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
		case s.carried && v > mostCarried:
			t.fault(r, s, cell, fmt.Sprintf("would be %g m by the unit of the headings before; write the unit in the heading", v))
		case !s.Said && s.Least > 0:
			t.seeUnit(s, cell, v)
		case v >= mostAcross && s.Least > 0 && (s.Column.Unit != quantity.Millimetre || s.Across && quantity.SaysUnit(cell)):
			t.tooLarge(r, s, cell, v)
		}
		return false
	case s.sized[0] != 0 && quantity.Combined(cell):
		t.pending = append(t.pending, sizeCell{s, cell})
		return false
	}
	r.Text[c] = cell
	t.fault(r, s, cell, trouble)
	return celltext.Wordy(cell)
}

// note adds a note that names the sheet.
func (t *table) note(format string, args ...any) {
	if t.place.Sheet == "" {
		t.info.Note(format, args...)
		return
	}
	t.info.NoteOf(t.place.Sheet, fmt.Sprintf(format, args...))
}
