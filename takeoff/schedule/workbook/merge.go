package workbook

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
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

// mostMerges is how many merged cells are followed.
const mostMerges = 100_000

// mergedDown finds the cells of a sheet that are merged down. The file lists
// them behind the rows, so it is looked through once before.
func mergedDown(f *zip.File) ([]merge, error) {
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	tail, err := mergeList(r)
	if err != nil {
		return nil, nil // the rows will tell that it is damaged
	}
	var out []merge
	for len(tail) > 0 && len(out) < mostMerges {
		_, rest, ok := bytes.Cut(tail, []byte(`ref="`))
		if !ok {
			break
		}
		ref, rest, _ := bytes.Cut(rest, []byte(`"`))
		tail = rest
		a, b, ok := strings.Cut(string(ref), ":")
		if !ok {
			continue
		}
		column, from, err1 := excelize.CellNameToCoordinates(a)
		_, to, err2 := excelize.CellNameToCoordinates(b)
		if err1 == nil && err2 == nil && to > from {
			out = append(out, merge{column: column - 1, from: from, to: to})
		}
	}
	slices.SortFunc(out, func(a, b merge) int { return a.from - b.from })
	return out, nil
}

// mergeList gives the list of merged cells as it stands in the sheet.
func mergeList(r io.Reader) ([]byte, error) {
	const begin, end = "<mergeCells", "</mergeCells"
	buf := make([]byte, 0, 1<<17)
	found := false
	for {
		n, err := io.ReadFull(r, buf[len(buf):cap(buf)])
		buf = buf[:len(buf)+n]
		if !found {
			if i := bytes.Index(buf, []byte(begin)); i >= 0 {
				buf, found = append(make([]byte, 0, 1<<20), buf[i:]...), true
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
				return nil, nil
			}
			buf = slices.Grow(buf, len(buf))
		case !found:
			keep := min(len(buf), len(begin)-1)
			buf = buf[:copy(buf, buf[len(buf)-keep:])]
		}
	}
}

// fillDown puts what a cell merged down says into the rows below it.
func (sr *Rows) fillDown() {
	filled := len(sr.Cells)
	live := sr.merged[:0:0]
	for i := range sr.merged {
		m := &sr.merged[i]
		switch {
		case m.from > sr.Number:
			if live == nil && i == 0 {
				return
			}
			sr.merged = append(live, sr.merged[i:]...)
			return
		case m.from == sr.Number && m.column < len(sr.Cells):
			m.text = sr.Cells[m.column]
			sr.Over = append(sr.Over, m.column)
		case m.from < sr.Number && m.to >= sr.Number && m.text != "" && filled > 0:
			for len(sr.Cells) <= m.column {
				sr.Cells = append(sr.Cells, "")
			}
			if sr.Cells[m.column] == "" {
				sr.Cells[m.column] = m.text
				sr.Down = append(sr.Down, m.column)
			}
		}
		if m.to > sr.Number {
			live = append(live, *m)
		}
	}
	sr.merged = live
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
			hidden = a.Value == "1" || a.Value == "true"
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
	sr.Cells, sr.Down, sr.Over, sr.Struck, sr.Sums = sr.Cells[:0], sr.Down[:0], sr.Over[:0], sr.Struck[:0], sr.Sums[:0]
	sr.Linked = false
}
