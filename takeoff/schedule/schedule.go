// Package schedule is the door of the program: it reads a duct schedule from a
// text file (commas, semicolons or tabs) or an XLSX workbook and hands on its
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
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"blankoff/takeoff"
)

// Info says what was found in a schedule besides its rows.
type Info struct {
	takeoff.Schedule                 // File, SHA256 and RowsRead are set
	Faults           []takeoff.Fault // faults of the file and its headings, not of rows
	Notes            []string        // what was decided or left out, for the reader

	into *into // nil: rows are handed on one by one
}

// maxFile is the largest file that is read, in bytes.
const maxFile = 1 << 30

// Read reads the schedule in the file path and hands each row of data to each,
// in order. The row is used again for the next call; its strings and faults
// are safe to keep.
//
// The error says why the file can't be read at all (missing, no schedule, no
// heading row), or is the one that each returned. Everything else that is wrong
// is a fault in Info or in a row.
func Read(path string, each func(*takeoff.Row) error) (Info, error) { return read(path, each, nil) }

func read(path string, each func(*takeoff.Row) error, to *into) (Info, error) {
	name := filepath.Base(path)
	st, err := os.Stat(path)
	if err == nil && st.IsDir() {
		return Info{}, fmt.Errorf("%s is a folder; name a schedule file (CSV or XLSX)", path)
	}
	if err == nil && st.Size() > maxFile {
		return Info{}, fmt.Errorf("%s is larger than %d MiB; split the schedule", path, maxFile>>20)
	}
	var data []byte
	if err == nil {
		data, err = readWhole(path, st.Size())
	}
	if err != nil {
		var pe *fs.PathError
		if errors.As(err, &pe) {
			err = pe.Err
		}
		return Info{}, fmt.Errorf("can't read %s: %w", path, err)
	}
	return readFrom(name, data, each, to)
}

// ReadFrom reads a schedule that is in memory; name is the file's name in
// faults. The content decides the format, not the name.
func ReadFrom(name string, data []byte, each func(*takeoff.Row) error) (Info, error) {
	return readFrom(name, data, each, nil)
}

func readFrom(name string, data []byte, each func(*takeoff.Row) error, to *into) (Info, error) {
	info := Info{into: to}
	info.File = name
	if to != nil {
		each = to.add
	}
	sum := make(chan string, 1)
	go func() {
		h := sha256.Sum256(data)
		sum <- hex.EncodeToString(h[:])
	}()
	err := info.read(data, each)
	info.SHA256, info.into = <-sum, nil
	if err == nil && info.RowsRead == 0 {
		err = fmt.Errorf("%s has headings but no rows under them; fill in a row for each piece", name)
	}
	return info, err
}

// foreign lists the first bytes of files that are taken for schedules.
var foreign = []struct{ magic, what string }{
	{"\xd0\xcf\x11\xe0", "an old .xls workbook or one with a password; save it as .xlsx without a password, or as CSV"},
	{"%PDF", "a PDF; export the schedule as .xlsx or CSV"},
	{"{\\rtf", "a text document; export the schedule as .xlsx or CSV"},
	{"\x1f\x8b", "a compressed file; unpack it first"},
}

func (info *Info) read(data []byte, each func(*takeoff.Row) error) error {
	for _, f := range foreign {
		if bytes.HasPrefix(data, []byte(f.magic)) {
			return fmt.Errorf("%s is %s", info.File, f.what)
		}
	}
	if bytes.HasPrefix(data, []byte("PK\x03\x04")) {
		return info.readWorkbook(data, each)
	}
	return info.readText(data, each)
}

// note adds a note once.
func (info *Info) note(format string, args ...any) {
	s := fmt.Sprintf(format, args...)
	if !slices.Contains(info.Notes, s) {
		info.Notes = append(info.Notes, s)
	}
}

// shorten makes text fit for a message: not too long, and without characters
// that would upset a terminal.
func shorten(s string) string {
	const most = 80
	if len(s) > most {
		s = strings.ToValidUTF8(s[:most], "") + "…"
	}
	if !strings.ContainsFunc(s, unicode.IsControl) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '\n' || r == '\r' || r == '\t':
			b.WriteByte(' ')
		case unicode.IsControl(r):
			fmt.Fprintf(&b, "\\x%02x", r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
