package schedule

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/plaintext"
)

// text is a text file and how it is written.
type text struct {
	source
	form     plaintext.Form
	encoding string
	note     string // what was decided, if anything was
	comma    bool   // decimals are written with one
	lines    int
}

// openText decodes a text file and finds out how it is written.
func openText(name string, data []byte, lex *headings.Lexicon) (*text, error) {
	x := &text{}
	var err error
	if data, x.encoding, x.note, err = plaintext.Decode(data); err != nil {
		return nil, fmt.Errorf("%s can't be read as text: %w; save it as CSV in UTF-8", name, err)
	}
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, fmt.Errorf("%s is empty; `blankoff template -o FILE.xlsx` writes a workbook to fill in", name)
	}
	data = plaintext.OneLineEnd(data)
	x.source = source{data: data, size: len(data)}
	x.form = formOf(data, lex)
	x.comma, x.lines = x.form.CommaDecimals(data), bytes.Count(data, newline)
	return x, nil
}

var newline = []byte{'\n'}

// formOf finds out how a text is written, by its heading row.
func formOf(data []byte, lex *headings.Lexicon) plaintext.Form {
	return plaintext.FormOf(data, maxSearch, func() func(int, []string) int {
		t := &table{lex: lex}
		return t.trial
	})
}

// trial scores a row as the heading row, by itself or below the row before.
func (t *table) trial(_ int, cells []string) int {
	if len(cells) < 2 {
		return 0
	}
	alone := t.readCells(cells)
	best := score(alone)
	if best == 0 && !celltext.HasFigure(cells) && t.likeBill(alone) >= 0 {
		best = 1
	}
	if last := t.search.last; last != nil && !celltext.HasFigure(cells) {
		best = max(best, score(t.joinRows(last, cells)))
	}
	t.search.last = append(t.search.last[:0:0], cells...)
	return best
}

// readText reads a text file: every line goes to the table.
func (info *Info) readText(x *text, o *Options, lex *headings.Lexicon, each func(*takeoff.Row) error) error {
	if x.note != "" {
		info.note("%s", x.note)
	}
	t := info.begin("", o, lex)
	t.ragged, t.commaFile, t.most, t.commas = true, x.comma, x.lines, x.form.Separator == ','
	info.Encoding, info.Separator = x.encoding, string(x.form.Separator)
	info.Decimal = decimalWord(o, t.commaFile)
	read := t.readLines
	if info.into != nil {
		read = t.inChunks
	}
	if err := read(x, each); err != nil {
		return err
	}
	if err := t.end(); err != nil {
		return err
	}
	if t.specs == nil {
		return noHeadingRow(t.place.String(), len(t.search.above), t.search.first)
	}
	info.unmet(o, []string{""})
	return nil
}

// readLines reads the lines of a text file one after the other.
func (t *table) readLines(x *text, each func(*takeoff.Row) error) error {
	t.suspect = plaintext.Controls(x.data)
	lines := x.form.Lines(x.data)
	t.below = func(n int) [][]string { return x.rowsFrom(lines.Read(), n) }
	for !t.search.failed {
		number, cells, err := lines.Next()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return t.info.unread(number, err)
		}
		if err := t.offer(number, cells, t.broken(lines, cells), nil, each); err != nil {
			return err
		}
	}
	return nil
}

// broken says what is wrong with the quotes of the last row.
func (t *table) broken(lines *plaintext.Lines, cells []string) string {
	if wrong := lines.Broken(); wrong != "" {
		return wrong
	}
	heads := t.search.held // while they wait for the row below
	if len(t.heads) > 0 {
		heads = t.heads[0]
	}
	columns := len(heads)
	for columns > 0 && strings.HasPrefix(celltext.Trim(heads[columns-1]), AddedMark) {
		columns--
	}
	return lines.Swallowed(cells, columns)
}

// unread is the error of a row at which reading a text file ends.
func (info *Info) unread(row int, err error) error {
	return fmt.Errorf("%s, row %d: %w", info.File, row, err)
}

// decimalWord says how decimals are written.
func decimalWord(o *Options, comma bool) string {
	if comma && o.decimal() != '.' || o.decimal() == ',' {
		return "comma"
	}
	return "point"
}

// noHeadingRow is the error of a file without a heading row.
func noHeadingRow(where string, rows int, first string) error {
	return fmt.Errorf("%s has no heading row in its first %d rows (the first reads '%s'); "+
		"a heading row names kind or a size (width_mm, height_mm, diameter_mm, length_mm) and at least one more column, as tag or quantity; "+
		"`blankoff template -o FILE.xlsx` writes a workbook with all headings, and a map file (--map) says where they are", where, rows, first)
}
