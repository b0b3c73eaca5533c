// Package schedule is the door of the program: it reads a duct schedule from a
// text file (commas, semicolons or tabs) or an XLSX or ODS workbook and hands on its
// rows, with every number in the program's units.
//
// Headings are known by meaning, not by spelling: case, spaces, punctuation
// and a unit at the end are free. What isn't clear is never assumed: it becomes
// a fault that names the place, the value as typed, what was expected and what
// to do.
package schedule

import (
	"fmt"
	"path/filepath"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/schedule/source"
	"blankoff/takeoff/schedule/told"
)

// Info says what was found in a schedule besides its rows.
type Info struct {
	takeoff.Schedule               // File, SHA256, RowsRead, TotalRows and RowsLeft are set
	told.Findings                  // of the file and its headings, not of rows
	Encoding         string        // of a text file
	Separator        string        // of its cells
	Decimal          string        // comma or point
	Sheets           []*told.Sheet // how each was understood; a text file is one

	units  columns.Units
	shown  shown // of a workbook
	handed int   // rows handed on
	into   *into // nil: rows are handed on one by one
}

// Options say how to read. The zero value finds everything out by itself.
type Options struct {
	Words      *headings.Lexicon // nil: those that come with the program
	Map        *mapping.Map      // nil: none
	SkipHidden bool              // leave hidden rows and sheets out
}

// decimal is the sign for decimals that the map gives, or 0.
func (o *Options) decimal() byte {
	if o.Map == nil {
		return 0
	}
	return map[string]byte{"comma": ',', "point": '.'}[o.Map.Decimal]
}

// lexicon gives the words to read by.
func (o *Options) lexicon() (*headings.Lexicon, error) {
	if o.Words != nil {
		return o.Words, nil
	}
	return headings.BuiltIn()
}

// Read reads the schedule in the file path and hands each row of data to each,
// in order. The row is used again for the next call; its strings and faults
// are safe to keep.
//
// The error says why the file can't be read at all (missing, no schedule, no
// heading row), or is the one that each returned. Everything else that is wrong
// is a fault in Info or in a row.
func Read(path string, each func(*takeoff.Row) error) (Info, error) {
	return Options{}.Read(path, each)
}

// Read is Read with options.
func (o Options) Read(path string, each func(*takeoff.Row) error) (Info, error) {
	data, err := source.Load(path)
	if err != nil {
		return Info{}, err
	}
	return o.ReadFrom(filepath.Base(path), data, each)
}

// ReadFrom reads a schedule that is in memory; name is the file's name in
// faults. The content decides the format, not the name.
func ReadFrom(name string, data []byte, each func(*takeoff.Row) error) (Info, error) {
	return Options{}.ReadFrom(name, data, each)
}

// ReadFrom is ReadFrom with options.
func (o Options) ReadFrom(name string, data []byte, each func(*takeoff.Row) error) (Info, error) {
	info := Info{}
	err := info.readAll(name, data, &o, each)
	if err == nil {
		err = info.noRows()
	}
	return info, err
}

func (info *Info) readAll(name string, data []byte, o *Options, each func(*takeoff.Row) error) error {
	info.File = name
	sum := make(chan string, 1)
	go func() {
		sum <- source.Fingerprint(data)
	}()
	err := info.read(data, o, each)
	info.SHA256 = <-sum
	return err
}

// noRows is an error where there are none.
func (info *Info) noRows() error {
	if info.RowsRead > 0 {
		return nil
	}
	return fmt.Errorf("%s has headings but no rows under them; fill in a row for each piece", info.File)
}

func (info *Info) read(data []byte, o *Options, each func(*takeoff.Row) error) error {
	if err := source.Strange(info.File, data); err != nil {
		return err
	}
	lex, err := o.lexicon()
	if err != nil {
		return err
	}
	if source.IsBook(data) {
		return info.readWorkbook(data, o, lex, each)
	}
	if len(data) > source.MostFile {
		return source.TooLarge(info.File, source.MostFile)
	}
	x, err := source.Open(info.File, data, lex)
	if err != nil {
		return err
	}
	return info.readText(x, o, lex, each)
}

// Map makes a map that reads a schedule as it was read, to be edited.
func (info *Info) Map() *mapping.Map {
	m := &mapping.Map{}
	for _, s := range info.Sheets {
		x := mapping.Sheet{Name: s.Name, HeadingRows: s.Headings, Skip: len(s.Headings) == 0 || s.Sums}
		for _, c := range s.Columns {
			y := mapping.Column{At: c.Letter, Heading: c.Typed, Is: c.Reads, Unit: c.Unit, Assumed: c.Unit != "" && c.Why == told.AssumedUnit, LengthFirst: c.LengthFirst, OfAll: c.OfAll}
			if len(s.Headings) == 1 && s.Headings[0] == 0 || c.Typed == "column "+c.Letter { // none
				y.Heading = ""
			}
			x.Columns = append(x.Columns, y)
		}
		m.Sheets = append(m.Sheets, x)
	}
	return m
}

// table turns the rows of one sheet or text file into rows of a schedule. It
// passes over what stands above the heading row, which it finds by itself.
type table struct {
	info *Info
	opt  *Options
	items.Reader
	others     int       // other headings that started further down
	fresh      bool      // no row of data since the headings
	repeated   bool      // nor since they stood again
	repeatedAt []int     // the rows in which they did
	unitsAt    int       // the last row of units
	most       int       // rows that the file may hold
	line       *unitLine // the last one
	lones      int       // rows of one cell
	feet       int       // lines looked at that may stand below the last piece
	sums       bool      // the sheet sums up others
	titled     bool      // the last row was the title of a table
	closedAt   int       // the row that ends a letter
	since      [3]int    // rows of the file before the last total, the last sub-heading, and this sheet
	totals     int       // rows of totals before this sheet
	pinned     []pinned  // comments above the rows of pieces
	row        takeoff.Row
	mark       uint8  // of the row that is offered
	joins      bool   // rows are joined by their tags, so none may stand twice anyway
	joined     []byte // its cells, of a workbook
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
	if t.sums {
		t.passSum(number, cells)
		return nil
	}
	t.Place.Row = number
	if t.TwoTables {
		return t.ofTwo(number, cells, each)
	}
	r := &t.row
	r.Reset(t.Place)
	r.Most = t.most
	worded, empty := t.Fill(r, cells, down)
	if empty && broken == "" {
		return nil
	}
	if broken == "" && (worded && (t.headingsAgain(number, cells) || t.unitRow(number, cells)) || t.Loud && (t.fresh || t.repeated || t.unitsAt == number-1) && t.numbered(number, cells) || t.mayBeAside(r) && t.aside(number, cells, r)) {
		t.KindAbove = ""
		return nil
	}
	t.repeated, t.repeatedAt, t.titled = false, nil, false
	if t.fresh {
		t.fresh = false
		if t.UnitsElsewhere() {
			r.Reset(t.Place)
			t.Fill(r, cells, down)
		}
		t.NoteUnits()
	}
	t.Settle(r, broken)
	t.Look.Class(told.PieceRow, number, cells)
	if t.Place.Sheet != "" {
		t.Look.Mark(r)
	}
	t.count(1)
	r.Mark = t.mark
	return each(r)
}

// count counts rows that are handed on.
func (t *table) count(rows int) {
	t.info.RowsRead += rows
	t.info.handed += rows
}
