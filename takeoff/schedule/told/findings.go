package told

import (
	"fmt"
	"slices"

	"blankoff/takeoff"
)

// mostNotes is how much is noted of a file.
const mostNotes = 200

// Findings are what was found out about a file, for the reader.
type Findings struct {
	Faults []takeoff.Fault // each with its place
	Notes  []string        // what was decided or left out

	alike map[string]*ofSheets // by the text
}

// Note adds a note once.
func (f *Findings) Note(format string, args ...any) {
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

// NoteOf adds a note on a sheet. What is said of several sheets alike is said once.
func (f *Findings) NoteOf(sheet, text string) {
	if f.alike == nil {
		f.alike = map[string]*ofSheets{}
	}
	x := f.alike[text]
	if x == nil {
		before := len(f.Notes)
		if f.Note("sheet '%s': %s", sheet, text); len(f.Notes) > before {
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

// Forget drops what is only kept while sheets are read.
func (f *Findings) Forget() { f.alike = nil }
