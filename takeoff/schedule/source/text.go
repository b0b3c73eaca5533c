package source

import (
	"bytes"
	"fmt"
	"slices"

	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/plaintext"
)

// Text is a text file and how it is written.
type Text struct {
	Source
	Form     plaintext.Form
	Encoding string
	Note     string // what was decided, if anything was
	Comma    bool   // decimals are written with one
	Lines    int
}

// Open decodes a text file and finds out how it is written.
func Open(name string, data []byte, lex *headings.Lexicon) (*Text, error) {
	x := &Text{}
	var err error
	if data, x.Encoding, x.Note, err = plaintext.Decode(data); err != nil {
		return nil, fmt.Errorf("%s can't be read as text: %w; save it as CSV in UTF-8", name, err)
	}
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, fmt.Errorf("%s is empty; `blankoff template -o FILE.xlsx` writes a workbook to fill in", name)
	}
	data = plaintext.OneLineEnd(data)
	if parted, spaced := plaintext.Spaced(data); spaced && headrow.Form(data, lex).Separator != '\t' {
		data = parted
		if x.Note != "" {
			x.Note += "; "
		}
		x.Note += "the columns are parted by spaces, two and more"
	}
	x.Source = Source{Data: data, Size: len(data)}
	x.Form = headrow.Form(data, lex)
	x.Comma, x.Lines = x.Form.CommaDecimals(data), bytes.Count(data, Newline)
	return x, nil
}

// Newline ends a line.
var Newline = []byte{'\n'}

// mostAhead is how far a text is looked at for them, in bytes.
const mostAhead = 1 << 16

// RowsFrom gives up to n rows of a text from a place on.
func (x *Text) RowsFrom(from, n int) (rows [][]string) {
	to := min(from+mostAhead, x.Size)
	data, err := x.Read(from, to, nil)
	if err != nil { // it will be met again when the rows are read
		return nil
	}
	if to < x.Size {
		data = data[:bytes.LastIndexByte(data, '\n')+1]
	}
	next := x.Form.Lines(data)
	for len(rows) < n {
		_, cells, err := next.Next()
		if err != nil {
			break
		}
		rows = append(rows, slices.Clone(cells))
	}
	return rows
}
