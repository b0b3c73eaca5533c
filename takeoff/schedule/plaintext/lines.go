package plaintext

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"strings"
)

// Lines reads the rows of a text file.
type Lines struct {
	data       []byte
	form       Form
	csv        *csv.Reader
	guard      *longRow
	start, end int64 // of the last row
	last       int   // its number
}

// Lines begins to read data.
func (f Form) Lines(data []byte) *Lines {
	g := &longRow{from: bytes.NewReader(data)}
	return &Lines{data: data, form: f, guard: g, csv: f.reader(g, true)}
}

// reader reads a file as people write them: inch marks needn't be quoted, rows
// may be of any length, and a space may follow the separator.
func (f Form) reader(from io.Reader, lazy bool) *csv.Reader {
	r := csv.NewReader(from)
	r.Comma = f.Separator
	r.LazyQuotes = lazy
	r.FieldsPerRecord = -1
	r.TrimLeadingSpace = f.spaced && f.Separator != '\t'
	r.ReuseRecord = true
	return r
}

// Next is the next row that isn't empty and the line on which it starts.
func (l *Lines) Next() (number int, cells []string, err error) {
	l.guard.allow(l.csv.InputOffset())
	cells, err = l.csv.Read()
	if err != nil {
		return l.last + 1, nil, err
	}
	l.start, l.end = l.end, l.csv.InputOffset()
	number, _ = l.csv.FieldPos(0)
	l.last = number
	return number, cells, nil
}

// Read is how far the text has been read, in bytes: to the end of the last row.
func (l *Lines) Read() int { return int(l.end) }

// Raw is the text of the last row.
func (l *Lines) Raw() []byte { return bytes.Trim(l.data[l.start:l.end], "\r\n") }

// Closed reports whether the last row reads the same whatever may follow the
// text: it isn't its last, or no quote in it can be open.
func (l *Lines) Closed() bool {
	raw := l.data[l.start:l.end]
	if l.end < int64(len(l.data)) || bytes.IndexByte(raw, '"') < 0 {
		return true
	}
	_, err := l.form.reader(bytes.NewReader(raw), false).Read()
	return err == nil
}

// Swallowed says that a cell of the last row holds what looks like whole rows of so
// many cells: a quote that is open may be closed by an inch mark further down.
func (l *Lines) Swallowed(cells []string, columns int) string {
	if !l.form.quotes {
		return ""
	}
	for _, cell := range cells {
		if strings.IndexByte(cell, '\n') < 0 {
			continue
		}
		for line := range strings.SplitSeq(cell, "\n") {
			if looksLikeRow(strings.Split(line, string(l.form.Separator)), columns) {
				return "a quote in this row holds whole rows, so one may be open; close it, or write inches as 24 in"
			}
		}
	}
	return ""
}

// looksLikeRow reports as many cells as there are headings, some of them figures.
func looksLikeRow(cells []string, columns int) bool {
	figures := 0
	for _, c := range cells {
		if c = strings.TrimSpace(c); c != "" && c[0] >= '0' && c[0] <= '9' {
			figures++
		}
	}
	return len(cells) == columns && columns > 3 && figures > 1
}

// Broken says what is wrong with the quotes of the last row. A quote that is
// never closed swallows the rows below it, so a row of several lines, and the
// last one, must read the same by the strict rules (RFC 4180).
func (l *Lines) Broken() string {
	if !l.form.quotes {
		return ""
	}
	raw := l.data[l.start:l.end]
	if n := bytes.IndexByte(raw, '\n'); (n < 0 || n == len(raw)-1) && l.end < int64(len(l.data)) || bytes.IndexByte(raw, '"') < 0 {
		return ""
	}
	_, err := l.form.reader(bytes.NewReader(raw), false).Read()
	bare := errors.Is(err, csv.ErrBareQuote) && strings.Contains(strings.TrimSpace(string(raw)), "\n")
	if errors.Is(err, csv.ErrQuote) || bare {
		return "a quote in this row isn't closed, so it may have swallowed rows below; close it, or write inches as 24 in"
	}
	return ""
}
