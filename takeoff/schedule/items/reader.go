// Package items reads the cells of one row into an item of the schedule, by how its columns are
// read, and refuses what may not be what it seems: sizes, shapes, tags, remarks, counts, cells
// beside the table. Which rows are items isn't decided here.
package items

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/settled"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/workbook"
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
	if t.moved.at > 0 {
		t.moved.lacks = celltext.At(cells, t.moved.at) == ""
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

// Reader reads the cells of a row into an item, by how the columns are read, and doubts
// what may not be what it seems.
type Reader struct {
	settled.Reading
	Ragged  bool // too many cells in a row is a fault
	Suspect bool // there may be control characters
	stray   []bool
	Pending []SizeCell
	turn    struct { // an angle in the kind of the row
		*columns.Spec
		cell, angle string
	}
	Seen
	Doubts
	Loud   bool // the row has a kind that isn't known, or none
	Over   SubHeadings
	Told   told.Tally
	InKind InKind
}

// takeSame takes the cell that stood in its column before, with its number.
func takeSame(r *takeoff.Row, s *columns.Spec, cell string) {
	if r.Text[s.To()] = cell; s.Measure != takeoff.Text {
		r.SetNumber(s.To(), s.Value)
	}
}

// take reads one cell of a column that is used. It reports a cell that should
// hold a number and starts like a word.
func (t *Reader) take(r *takeoff.Row, s *columns.Spec, cell string) bool {
	c := s.To()
	switch {
	case !celltext.Digit(cell[0]) && !celltext.Digit(cell[len(cell)-1]) && !s.Plain(cell) && t.saysNothing(r, s, cell):
		return false
	case s.Lenient && t.saysElse(s, cell):
		return false
	case s.Measure == takeoff.Text:
		switch {
		case s.Words != nil:
			cell = t.word(s, cell)
		case c != takeoff.Tag && c != takeoff.From: // no two rows have the same
			s.Same = cell
		}
		r.Text[c] = cell
		return false
	case s.Verdict == headings.Sizes:
		t.Pending = append(t.Pending, SizeCell{s, cell})
		t.rowUnit = t.rowUnit || quantity.SaysUnit(cell)
		return celltext.Wordy(cell)
	}
	v, trouble := s.Number(cell)
	if trouble != "" && s.Measure == takeoff.Count {
		v, trouble = t.inWords(s, cell, trouble)
	}
	switch {
	case trouble == "":
		r.Text[c] = cell
		r.SetNumber(c, v)
		switch {
		case s.Carried && v > columns.MostCarried:
			t.fault(r, s, cell, fmt.Sprintf("would be %g m by the unit of the headings before; write the unit in the heading", v))
		case !s.Said && s.Least > 0:
			if t.seeUnit(s, cell, v); v >= mostWide && s.Across && celltext.Digit(cell[len(cell)-1]) && s.Column.Unit == quantity.Millimetre {
				t.tooLarge(r, s, cell, v)
			}
		case v >= mostAcross && s.Least > 0 && (s.Column.Unit != quantity.Millimetre || s.Across && !strings.HasSuffix(cell, "mm") && (v >= mostWide || quantity.SaysUnit(cell))):
			t.tooLarge(r, s, cell, v)
		case t.chunked: // else the unit may change below
			s.Same, s.Value = cell, v
		}
		return false
	case s.Sized[0] != 0 && (quantity.Combined(cell) || s.Diameter && described.Slashed(cell)):
		t.Pending = append(t.Pending, SizeCell{s, cell})
		return false
	}
	r.Text[c] = cell
	t.fault(r, s, cell, trouble)
	return celltext.Wordy(cell)
}

// fit gives a cell without signs around it: "" where it says nothing, or has a fault.
func (t *Reader) fit(r *takeoff.Row, i int, s *columns.Spec, cell string) string {
	cell = celltext.Unwrap(cell)
	if cell == "" || celltext.MeansNothing(cell) && s.To() != takeoff.Sign && s.To() != takeoff.Quantity { // where - may be negative, or none
		return ""
	}
	if t.passError(s, cell) {
		return ""
	}
	if trouble := t.unfit(i, cell, s); trouble != "" {
		t.fault(r, s, cell, trouble)
		return ""
	}
	return cell
}

// mergedDown deals with a cell that is the lower part of one that is merged down.
// counts reports that it counts for the row; filled, that it makes the row one.
func (t *Reader) mergedDown(r *takeoff.Row, s *columns.Spec, cell string) (counts, filled bool) {
	switch {
	case !s.Used:
		return false, false
	case s.Doubtful():
		return false, !t.doubtMerged(r, s, cell)
	case s.Verdict != headings.Sizes && !columns.Spreads(s.To()):
		t.Told.Add("cells of column '%s' that are merged down, counted for their first row only", s.Typed, t.Place.Row)
		return false, false
	case s.Measure != takeoff.Text:
		t.Told.Add("cells of column '%s' that are merged down, taken for all their rows", s.Typed, t.Place.Row)
	}
	return true, false
}

// pieces is how many pieces a row counts for.
func pieces(r *takeoff.Row) int { return max(1, int(r.Number[takeoff.Quantity])) }

// inWords reads a quantity in words: two, zwei Stück, 2 (two). trouble is what is wrong with it
// as a number.
func (t *Reader) inWords(s *columns.Spec, cell, trouble string) (float64, string) {
	words := headings.Tokens(cell)
	if len(words) == 0 || len(words) > 2 || len(cell) > 40 || cell[0] == '(' || strings.ContainsAny(cell, "?!-–—−+~<>/*=&,;:#") || celltext.AllDigits(words[0]) && celltext.AllDigits(words[len(words)-1]) {
		return 0, trouble
	}
	n := t.Lex.Number(words[0])
	if n == 0 || words[0] == "twin" || words[0] == "due" { // one of a pair; still to come
		return 0, trouble
	}
	if len(words) == 2 {
		fields := strings.Fields(cell)
		if u, ok := quantity.UnitOf(fields[len(fields)-1]); t.Lex.Number(words[1]) != n && !(ok && u.Measure == takeoff.Count) {
			return 0, trouble
		}
	}
	t.Told.Add("quantities in words in column '%s'", s.Typed, t.Place.Row)
	return float64(n), ""
}

// Seen is what was seen in the cells of a row, and in those above it, that bears on how they
// are read.
type Seen struct {
	bare         []bareSize // of the row
	shape        shapeTold
	rowUnit      bool       // a size of the row states its own unit
	NewUnit      bool       // the first of its column did
	tallies      quantified // of its cells
	lengths      lengthsSoFar
	strays       []string // cells of the row without headings
	besides      bool     // another table beside this one was told of
	Marked       workbook.Marks
	uneven       bool // a row has as many cells as there are headings
	Long, longAt int  // cells of the first row that has more, and its number
	watched      int  // rows in which columns that aren't used were looked at
	Kindless
	others        []otherNote // of the row
	Unsure        bool        // a cell is as one above that isn't known
	chunked       bool        // it reads a chunk
	Moved         bool        // a size of the row is in another column than its cell
	total, again  totalLength // of the row: a length of all, a quantity over again
	missing       missing     // what no column gives
	several       severalIn   // a cell of the row that names several floors, flats or the like
	metred        bool        // the quantity of the row is its length
	straightSided string      // a shape that isn't circular
	moved         moved       // cells that may have
	both          both        // sides and a diameter
}
