package schedule

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"blankoff/takeoff"
)

const (
	maxSearch  = 100   // rows in which the heading row is looked for
	maxColumns = 1000  // columns of a schedule
	maxCell    = 32767 // bytes in a cell, as in a workbook
)

// spec is how a column of the file is read.
type spec struct {
	heading
	used      bool
	measure   takeoff.Measure
	max       float64 // in the program's unit
	signed    bool    // may be negative
	diameter  bool    // may carry a diameter sign
	commaFile bool    // cells are parted by semicolons
}

// table turns the rows of one sheet or text file into rows of a schedule. It
// passes over what stands above the heading row, which it finds by itself.
type table struct {
	info      *Info
	place     takeoff.Place // file and sheet
	specs     []spec        // empty until the heading row is found
	above     []int         // rows above the heading row
	first     string        // the first of them, as text
	fresh     bool          // no row of data since the headings
	rows      int           // rows handed on
	ragged    bool          // too many cells in a row is a fault
	commaFile bool
	suspect   bool // there may be control characters
	noHeading bool // looked long enough
	heads     int  // headings that followed the first
	repeats   int  // of these
	stray     []bool
	row       takeoff.Row
}

// offer takes the next row of the file that isn't blank. broken is what is
// wrong with the row as such, or empty.
func (t *table) offer(number int, cells []string, broken string, each func(*takeoff.Row) error) error {
	if t.specs == nil {
		return t.search(number, cells)
	}
	t.place.Row = number
	r := &t.row
	r.Reset(t.place)
	worded, empty := t.fill(r, cells)
	if empty && broken == "" {
		return nil
	}
	if worded && (t.headingsAgain(number, cells) || t.unitRow(number, cells)) {
		return nil
	}
	if broken != "" {
		r.Faults = append(r.Faults, t.place.Fault("", "", "quotes in pairs", broken))
	}
	if t.fresh {
		t.fresh = false
		t.noteUnits()
	}
	t.rows++
	t.info.RowsRead++
	return each(r)
}

// fill reads the cells into r. worded reports a cell that should hold a number
// and starts like a word; empty, that every cell is blank.
func (t *table) fill(r *takeoff.Row, cells []string) (worded, empty bool) {
	empty = true
	n := min(len(cells), len(t.specs))
	for i, cell := range cells[:n] {
		if cell == "" {
			continue
		}
		if cell = trim(cell); cell == "" {
			continue
		}
		empty = false
		s := &t.specs[i]
		if !s.used {
			t.unheaded(i, s)
			continue
		}
		if odd(cell[0]) || t.suspect || len(cell) > maxCell {
			if cell = unwrap(cell); cell == "" {
				continue
			}
			if meansNothing(cell) && s.column != takeoff.Sign { // where - may be negative
				continue
			}
			if trouble := t.unfit(cell); trouble != "" {
				t.fault(r, s, cell, trouble)
				continue
			}
		}
		r.Text[s.column] = cell
		if s.measure == takeoff.Text {
			continue
		}
		if v, trouble := s.number(cell); trouble == "" {
			r.SetNumber(s.column, v)
		} else {
			t.fault(r, s, cell, trouble)
			worded = worded || unicode.IsLetter(rune(cell[0]))
		}
	}
	for i, cell := range cells[n:] {
		if cell = trim(cell); cell != "" {
			empty = false
			t.beyond(r, n+i, cell)
			break
		}
	}
	return worded, empty
}

// fault puts a fault of a cell into its row.
func (t *table) fault(r *takeoff.Row, s *spec, cell, trouble string) {
	expected := "text"
	if s.measure != takeoff.Text {
		expected = s.expects()
	}
	short := shorten(cell)
	r.Refuse(s.column, t.place.Fault(s.typed, short, expected, fmt.Sprintf("'%s' %s", short, trouble)))
}

// expects says what a cell of the column should hold.
func (s *spec) expects() string {
	what := map[takeoff.Measure]string{takeoff.Lengths: "a length", takeoff.Areas: "an area",
		takeoff.Degrees: "an angle", takeoff.Pressure: "a pressure", takeoff.Minutes: "a time"}[s.measure]
	switch {
	case s.measure == takeoff.Count:
		return "a whole number"
	case s.signed:
		return what + " in " + s.unit.name
	}
	return what + " in " + s.unit.name + ", not negative"
}

// beyond deals with a cell to the right of the last heading.
func (t *table) beyond(r *takeoff.Row, i int, cell string) {
	if !t.ragged {
		t.unheaded(i, &spec{})
		return
	}
	short := shorten(cell)
	r.Faults = append(r.Faults, t.place.Fault("", short, fmt.Sprintf("%d cells", len(t.specs)),
		fmt.Sprintf("there are more cells than headings, from '%s' on; put quotes around text that holds the separator", short)))
}

// unheaded notes once that a column without a heading holds something.
func (t *table) unheaded(i int, s *spec) {
	if s.verdict != blank || i < len(t.stray) && t.stray[i] {
		return
	}
	for len(t.stray) <= i {
		t.stray = append(t.stray, false)
	}
	t.stray[i] = true
	t.note("column %d has no heading and isn't used", i+1)
}

// note adds a note that names the sheet.
func (t *table) note(format string, args ...any) {
	if t.place.Sheet != "" {
		format = "sheet '%s': " + format
		args = append([]any{t.place.Sheet}, args...)
	}
	t.info.note(format, args...)
}

// headingsAgain takes over headings that stand again further down, as on the
// next page of a printed list.
func (t *table) headingsAgain(number int, cells []string) bool {
	for _, cell := range cells {
		if cell = trim(cell); cell != "" && cell[0] >= '0' && cell[0] <= '9' {
			return false
		}
	}
	if isHeadingRow(cells) < 2 {
		return false
	}
	same := true
	for i, cell := range cells {
		same = same && i < len(t.specs) && shorten(trim(cell)) == t.specs[i].typed
	}
	if same && t.repeats < mostRepeats {
		t.repeats++
		t.note("row %d repeats the headings", number)
		return true
	}
	if t.heads++; same || t.heads > mostHeads { // no schedule: what follows is read as rows
		return false
	}
	t.note("other headings start at row %d", number)
	return t.setHeadings(number, cells) == nil
}

// unitRow takes the units from a row of units right below the headings.
func (t *table) unitRow(number int, cells []string) bool {
	if !t.fresh {
		return false
	}
	found := make([]unit, len(t.specs))
	for i, cell := range cells {
		if cell = trim(cell); cell == "" || meansNothing(cell) {
			continue
		}
		u, ok := unitOf(strings.Trim(cell, "()[]"))
		if !ok || i >= len(t.specs) {
			return false
		}
		s := t.specs[i]
		if s.used && (u.measure != s.measure || s.said && u != s.unit) {
			return false
		}
		found[i] = u
	}
	for i, u := range found {
		if s := &t.specs[i]; s.used && u.num != 0 {
			s.unit, s.said = u, true
		}
	}
	t.note("row %d gives the units", number)
	t.fresh = false
	t.noteUnits()
	return true
}

// trim cuts outer white space.
func trim(s string) string {
	if s != "" && (s[0] <= ' ' || s[0] >= utf8.RuneSelf || s[len(s)-1] <= ' ' || s[len(s)-1] >= utf8.RuneSelf) {
		return strings.TrimSpace(s)
	}
	return s
}

// odd reports a first byte that may start a cell that isn't text or a number.
func odd(c byte) bool { return c == '#' || c == '=' || c == '-' || c == 0xe2 || c == 'n' || c == 'N' }

// unwrap takes off the sign and quotes by which some programs keep a
// spreadsheet from changing text: ="007".
func unwrap(cell string) string {
	inner, wrapped := strings.CutPrefix(cell, `="`)
	if inner, closed := strings.CutSuffix(inner, `"`); wrapped && closed && !strings.Contains(inner, `"`) {
		return trim(inner)
	}
	return cell
}

// meansNothing reports a cell that is filled in to say that it is empty.
func meansNothing(cell string) bool {
	return cell == "-" || cell == "–" || cell == "—" || strings.EqualFold(cell, "n/a")
}

var errorCells = []string{"#REF!", "#VALUE!", "#DIV/0!", "#N/A", "#NAME?", "#NUM!", "#NULL!", "#SPILL!", "#CALC!", "#GETTING_DATA", "#####"}

// unfit says why a cell can't be used whatever its column.
func (t *table) unfit(cell string) string {
	switch {
	case len(cell) > maxCell:
		return "is too long for a cell; shorten it"
	case cell[0] == '=':
		return "is a formula without a result; open the file in a spreadsheet program and save it, or type the value"
	case cell[0] == '#' && slices.ContainsFunc(errorCells, func(e string) bool { return strings.HasPrefix(cell, e) }):
		return "is an error of the spreadsheet; mend the formula or type the value"
	case t.suspect && strings.ContainsFunc(cell, unreadable):
		return "holds a character that can't be read; type the cell anew"
	}
	return ""
}

func unreadable(r rune) bool {
	return r == utf8.RuneError || unicode.IsControl(r) && r != '\n' && r != '\r' && r != '\t'
}
