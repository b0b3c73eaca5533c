package workbook

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"blankoff/takeoff/schedule/workbook/dress"

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

// mergedDown reads the cells that are merged down from the list of merged cells.
func mergedDown(list []byte) (out []merge, err error) {
	for {
		_, rest, ok := bytes.Cut(list, []byte(` ref=`))
		if !ok || len(rest) == 0 {
			break
		}
		ref, rest, _ := bytes.Cut(rest[1:], rest[:1]) // quoted by one sign or the other
		list = rest
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
			hidden = hidden || thin(a.Value, 0.3)
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

// blank empties the row.
func (sr *Rows) blank() {
	clear(sr.Cells)
	sr.Cells, sr.Down, sr.Over, sr.Struck, sr.Sums, sr.Unlike = sr.Cells[:0], sr.Down[:0], sr.Over[:0], sr.Struck[:0], sr.Sums[:0], sr.Unlike[:0]
	sr.Linked, sr.Paint, sr.Comments = false, dress.Painted{}, nil
}

// thin reports a row less high, in points, or a column less wide, in digits, than anybody reads.
func thin(size string, least float64) bool {
	v, err := strconv.ParseFloat(size, 64)
	return err == nil && v >= 0 && v < least
}
