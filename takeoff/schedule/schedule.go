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
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
)

// Info says what was found in a schedule besides its rows.
type Info struct {
	takeoff.Schedule          // File, SHA256, RowsRead, TotalRows and RowsLeft are set
	findings                  // of the file and its headings, not of rows
	Encoding         string   // of a text file
	Separator        string   // of its cells
	Decimal          string   // comma or point
	Sheets           []*Sheet // how each was understood; a text file is one

	cover  *titleText // a line on units in a sheet without a schedule
	said   map[string]saidUnit
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
	data, err := Load(path)
	if err != nil {
		return Info{}, err
	}
	return o.ReadFrom(filepath.Base(path), data, each)
}

// Load reads the file path whole. The error says why it can't be read.
func Load(path string) ([]byte, error) { return readWhole(path) }

// cause is what went wrong with a file, without its name.
func cause(err error) error {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return pe.Err
	}
	return err
}

// fingerprint is that of a file's bytes.
func fingerprint(data []byte) string {
	h := sha256.Sum256(data)
	return hex.EncodeToString(h[:])
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
		sum <- fingerprint(data)
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

// foreign lists the first bytes of files that are taken for schedules.
var foreign = []struct{ magic, what string }{
	{"\xd0\xcf\x11\xe0", "an old .xls workbook or one with a password; save it as .xlsx without a password, or as CSV"},
	{"%PDF", "a PDF; export the schedule as .xlsx or CSV"},
	{"{\\rtf", "a text document; export the schedule as .xlsx or CSV"},
	{"\x1f\x8b", "a compressed file; unpack it first"},
}

func (info *Info) read(data []byte, o *Options, each func(*takeoff.Row) error) error {
	if err := strange(info.File, data); err != nil {
		return err
	}
	lex, err := o.lexicon()
	if err != nil {
		return err
	}
	if isBook(data) {
		return info.readWorkbook(data, o, lex, each)
	}
	if len(data) > mostFile {
		return tooLarge(info.File, mostFile)
	}
	x, err := openText(info.File, data, lex)
	if err != nil {
		return err
	}
	return info.readText(x, o, lex, each)
}

// zipped is what a workbook begins with.
const zipped = "PK\x03\x04"

// strange refuses files that are taken for schedules.
func strange(name string, data []byte) error {
	for _, f := range foreign {
		if bytes.HasPrefix(data, []byte(f.magic)) {
			return fmt.Errorf("%s is %s", name, f.what)
		}
	}
	return nil
}

// findings are what was found out about a file, for the reader.
type findings struct {
	Faults []takeoff.Fault // each with its place
	Notes  []string        // what was decided or left out

	alike map[string]*ofSheets // by the text
}

// note adds a note once.
func (f *findings) note(format string, args ...any) {
	if len(f.Notes) > mostNotes {
		return
	}
	s := fmt.Sprintf(format, args...)
	if len(f.Notes) == mostNotes {
		s = "there is more to note; it is left out"
	}
	if !slices.Contains(f.Notes, s) {
		f.Notes = append(f.Notes, s)
	}
}

// ofSheets is a note and the sheets that it is of.
type ofSheets struct {
	at     int // in the notes
	sheets []string
}

// noteOf adds a note on a sheet. What is said of several sheets alike is said once.
func (f *findings) noteOf(sheet, text string) {
	if f.alike == nil {
		f.alike = map[string]*ofSheets{}
	}
	x := f.alike[text]
	if x == nil {
		before := len(f.Notes)
		if f.note("sheet '%s': %s", sheet, text); len(f.Notes) > before {
			f.alike[text] = &ofSheets{before, []string{sheet}}
		}
		return
	}
	if slices.Contains(x.sheets, sheet) {
		return
	}
	x.sheets = append(x.sheets, sheet)
	n := len(x.sheets)
	names := fmt.Sprintf("'%s' and '%s'", x.sheets[0], x.sheets[1])
	if n > 2 {
		names = fmt.Sprintf("'%s', '%s' and %d more", x.sheets[0], x.sheets[1], n-2)
	}
	f.Notes[x.at] = fmt.Sprintf("sheets %s: %s", names, text)
}
