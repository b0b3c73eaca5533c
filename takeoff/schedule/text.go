package schedule

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/plaintext"
	"blankoff/takeoff/schedule/source"
	"blankoff/takeoff/schedule/workbook"
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
		if !t.joins {
			t.mark = celltext.Mark(lines.Raw())
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

// Walk hands on the cells of every row of a schedule as they stand, sheet by
// sheet. The cells are used again for the next row.
func (o Options) Walk(name string, data []byte, each func(sheet string, number int, cells []string, m workbook.Marks) error) error {
	lex, err := o.lexicon()
	if err != nil {
		return err
	}
	if !source.IsBook(data) {
		x, err := source.Open(name, data, lex)
		if err != nil {
			return err
		}
		lines := x.Form.Lines(x.Data)
		for {
			number, cells, err := lines.Next()
			if err == io.EOF {
				return nil
			}
			if err == nil {
				err = each("", number, cells, workbook.Marks{})
			}
			if err != nil {
				return err
			}
		}
	}
	w, err := workbook.Open(data)
	if err != nil {
		return err
	}
	for _, s := range w.Sheets {
		if err := walkSheet(w, s, each); err != nil {
			return err
		}
	}
	return nil
}

func walkSheet(w *workbook.File, s workbook.Sheet, each func(sheet string, number int, cells []string, m workbook.Marks) error) error {
	r, err := w.Rows(s)
	if err != nil {
		return err
	}
	defer r.Close()
	for {
		err := r.Next()
		if err == io.EOF {
			return nil
		}
		if err == nil {
			err = each(s.Name, r.Number, r.Cells, r.Marks())
		}
		if err != nil {
			return err
		}
	}
}

// Into reads the schedule in the file path into a takeoff: what Read and
// Takeoff.Add give one after the other, with text files read and measured on all
// cores, and large ones not held in memory. told, if not nil, is told now and then how many rows
// were read, and how many the file may hold, or 0 where that isn't known. The
// error may be that of Takeoff.Hopeless.
func (o Options) Into(path string, t *takeoff.Takeoff, told func(rows, most int)) (Info, error) {
	lex, err := o.lexicon()
	if err != nil {
		return Info{}, err
	}
	if v := source.Surveyed(path, lex); v != nil {
		to := newInto(t, told)
		info := Info{into: to}
		info.File = filepath.Base(path)
		err := info.readText(&v.Text, &o, lex, to.add)
		sum, changed := v.Close()
		if info.SHA256 = sum; changed != nil {
			err = changed
		}
		return info, to.end(&info, err)
	}
	data, err := source.Load(path)
	if err != nil {
		return Info{}, err
	}
	return o.IntoFrom(filepath.Base(path), data, t, told)
}

// IntoFrom is Into for a schedule that is in memory; see ReadFrom.
func (o Options) IntoFrom(name string, data []byte, t *takeoff.Takeoff, told func(rows, most int)) (Info, error) {
	to := newInto(t, told)
	info := Info{into: to}
	err := info.readAll(name, data, &o, to.add)
	return info, to.end(&info, err)
}

// into is a takeoff that is read into.
type into struct {
	takeoff *takeoff.Takeoff
	told    func(rows, most int)
	rows    int
}

func newInto(t *takeoff.Takeoff, told func(int, int)) *into {
	if told == nil {
		told = func(int, int) {}
	}
	return &into{takeoff: t, told: told}
}

// end ends the reading, with an error or without.
func (o *into) end(info *Info, err error) error {
	info.into = nil
	if err == nil {
		err = info.noRows()
	}
	if err == nil {
		err = o.takeoff.Gather()
	}
	return err
}

// add takes one row.
func (o *into) add(r *takeoff.Row) error {
	o.takeoff.Add(r)
	if o.rows++; o.rows%1000 == 0 {
		o.told(o.rows, r.Most)
	}
	return o.takeoff.Hopeless()
}

// take takes the rows of a batch.
func (o *into) take(b *takeoff.Batch, most int) error {
	o.rows += b.Len()
	o.takeoff.Take(b)
	o.told(o.rows, most)
	return o.takeoff.Hopeless()
}
