package workbook

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// merge is a cell that is merged down over others of its column.
type merge struct {
	column, from, to int // column from 0, rows from 1
	text             string
}

// What cells merged down may be: so many of them, and so many cells below that say
// what they say.
const (
	mostMerges = 100_000
	mostFilled = 5_000_000
)

var errMerges = limit(fmt.Sprintf("has more than %d merged cells; take the merging off, or copy the values to a new workbook", mostMerges))

// mergedDown finds the cells of a sheet that are merged down. The file lists
// them behind the rows, so it is looked through once before.
func mergedDown(f *zip.File) ([]merge, error) {
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	tail, err := mergeList(r)
	if errors.As(err, new(limit)) {
		return nil, err
	}
	if err != nil {
		return nil, nil // the rows will tell that it is damaged
	}
	var out []merge
	for {
		_, rest, ok := bytes.Cut(tail, []byte(` ref=`))
		if !ok || len(rest) == 0 {
			break
		}
		ref, rest, _ := bytes.Cut(rest[1:], rest[:1]) // quoted by one sign or the other
		tail = rest
		a, b, ok := strings.Cut(string(ref), ":")
		if !ok {
			continue
		}
		column, from, err1 := excelize.CellNameToCoordinates(a)
		_, to, err2 := excelize.CellNameToCoordinates(b)
		if err1 == nil && err2 == nil && to > from && column <= mostKept {
			out = append(out, merge{column: column - 1, from: from, to: to})
		}
		if len(out) > mostMerges {
			return nil, errMerges
		}
	}
	slices.SortStableFunc(out, func(a, b merge) int { return a.from - b.from })
	return out, nil
}

// mergeList gives the list of merged cells as it stands in the sheet.
func mergeList(r io.Reader) ([]byte, error) {
	const begin, end = "mergeCells", "mergeCells>"
	buf := make([]byte, 0, 1<<17)
	found := false
	for {
		n, err := io.ReadFull(r, buf[len(buf):cap(buf)])
		buf = buf[:len(buf)+n]
		if !found {
			if i := tagAt(buf, begin); i >= 0 {
				buf, found = append(make([]byte, 0, 1<<20), buf[i+len(begin):]...), true
			}
		}
		if found {
			if i := bytes.Index(buf, []byte(end)); i >= 0 {
				return buf[:i], nil
			}
		}
		switch {
		case err == io.EOF || errors.Is(err, io.ErrUnexpectedEOF):
			return nil, nil
		case err != nil:
			return nil, err
		case found && len(buf) == cap(buf):
			if len(buf) > 64*mostMerges {
				return nil, errMerges
			}
			buf = slices.Grow(buf, len(buf))
		case !found:
			keep := min(len(buf), len(begin))
			buf = buf[:copy(buf, buf[len(buf)-keep:])]
		}
	}
}

// tagAt finds where a tag's name begins, which may have a prefix; -1: nowhere.
func tagAt(b []byte, name string) int {
	for from := 0; ; {
		i := bytes.Index(b[from:], []byte(name))
		if i < 0 {
			return -1
		}
		if from += i; from > 0 && (b[from-1] == '<' || b[from-1] == ':') {
			return from
		}
		from += len(name)
	}
}

// below are the cells merged down that reach to the row being read.
type below struct {
	columns []int           // that have any, in order
	of      map[int][]merge // by column, the one begun first in front
	filled  int             // cells so far that say what one above says
}

// add takes in a cell that is merged down over the rows below this one.
func (b *below) add(m merge) {
	if b.of == nil {
		b.of = map[int][]merge{}
	}
	at, known := slices.BinarySearch(b.columns, m.column)
	if !known {
		b.columns = slices.Insert(b.columns, at, m.column)
	}
	b.of[m.column] = append(b.of[m.column], m)
}

// fill puts what cells merged down say into a row below them. Where several lie over
// each other, which no spreadsheet program makes, the one begun first counts.
func (sr *Rows) fill(b *below) error {
	ended := false
	for _, c := range b.columns {
		live := b.of[c]
		for len(live) > 0 && live[0].to < sr.Number {
			live = live[1:]
		}
		b.of[c] = live
		if len(live) == 0 {
			ended = true
			continue
		}
		for len(sr.Cells) <= c {
			sr.Cells = append(sr.Cells, "")
		}
		if sr.Cells[c] == "" {
			sr.Cells[c] = live[0].text
			sr.Down = append(sr.Down, c)
			if b.filled++; b.filled > mostFilled {
				return limit("has cells merged down over more rows and columns than a schedule has; take the merging off")
			}
		}
	}
	if ended {
		b.columns = slices.DeleteFunc(b.columns, func(c int) bool { return len(b.of[c]) == 0 })
	}
	return nil
}

// fillDown fills in a row of an XLSX file, and begins with the cells that are merged
// down from it.
func (sr *Rows) fillDown() error {
	if err := sr.fill(&sr.below); err != nil {
		return err
	}
	for len(sr.merged) > 0 && sr.merged[0].from <= sr.Number {
		m := sr.merged[0]
		sr.merged = sr.merged[1:]
		if m.from == sr.Number && m.column < len(sr.Cells) {
			sr.Over = append(sr.Over, m.column)
			if m.text = sr.Cells[m.column]; m.text != "" {
				sr.below.add(m)
			}
		}
	}
	return nil
}

// hideColumns keeps which columns are hidden.
func (sr *Rows) hideColumns(e xml.StartElement) {
	from, to, hidden := 0, 0, false
	for _, a := range e.Attr {
		switch a.Name.Local {
		case "min":
			from, _ = strconv.Atoi(a.Value)
		case "max":
			to, _ = strconv.Atoi(a.Value)
		case "hidden":
			hidden = hidden || a.Value == "1" || a.Value == "true"
		case "width":
			hidden = hidden || nought(a.Value)
		}
	}
	if hidden && from >= 1 {
		sr.hide(from-1, to-from+1)
	}
}

// hide marks n columns from one on as hidden.
func (sr *Rows) hide(from, n int) {
	for i := from; i < min(from+n, mostKept); i++ {
		for len(sr.HiddenColumns) <= i {
			sr.HiddenColumns = append(sr.HiddenColumns, false)
		}
		sr.HiddenColumns[i] = true
	}
}

// isSubtotal reports a formula that sums up what is shown above it.
func isSubtotal(formula string) bool {
	f := strings.ToUpper(strings.TrimPrefix(formula, "of:="))
	return strings.HasPrefix(f, "SUBTOTAL(") || strings.HasPrefix(f, "AGGREGATE(")
}

// blank empties the row.
func (sr *Rows) blank() {
	clear(sr.Cells)
	sr.Cells, sr.Down, sr.Over, sr.Struck, sr.Sums, sr.Unlike = sr.Cells[:0], sr.Down[:0], sr.Over[:0], sr.Struck[:0], sr.Sums[:0], sr.Unlike[:0]
	sr.Linked, sr.Comments = false, nil
}
