package schedule

import (
	"fmt"
	"io"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/plaintext"
	"blankoff/takeoff/schedule/source"
)

// readText reads a text file: every line goes to the table.
func (info *Info) readText(x *source.Text, o *Options, lex *headings.Lexicon, each func(*takeoff.Row) error) error {
	if x.Note != "" {
		info.Note("%s", x.Note)
	}
	t := info.begin("", o, lex)
	t.Ragged, t.CommaFile, t.most, t.Commas = true, x.Comma, x.Lines, x.Form.Separator == ','
	info.Encoding, info.Separator = x.Encoding, string(x.Form.Separator)
	info.Decimal = decimalWord(o, t.CommaFile)
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
	if t.Specs == nil {
		return noHeadingRow(t.Place.String(), len(t.Search.Rows), t.Search.First)
	}
	info.unmet(o, []string{""})
	info.units = columns.Units{}
	return nil
}

// readLines reads the lines of a text file one after the other.
func (t *table) readLines(x *source.Text, each func(*takeoff.Row) error) error {
	t.Suspect = plaintext.Controls(x.Data)
	lines := x.Form.Lines(x.Data)
	t.Below = func(n int) [][]string { return x.RowsFrom(lines.Read(), n) }
	for !t.Search.Failed {
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
	heads := t.Search.Held // while they wait for the row below
	if len(t.Heads) > 0 {
		heads = t.Heads[0]
	}
	n := len(heads)
	for n > 0 && strings.HasPrefix(celltext.Trim(heads[n-1]), columns.AddedMark) {
		n--
	}
	return lines.Swallowed(cells, n)
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
