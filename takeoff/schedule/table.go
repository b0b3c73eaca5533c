package schedule

import (
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/told"
)

// table turns the rows of one sheet or text file into rows of a schedule. It
// passes over what stands above the heading row, which it finds by itself.
type table struct {
	info *Info
	opt  *Options
	items.Reader
	others     int       // other headings that started further down
	fresh      bool      // no row of data since the headings
	repeated   bool      // nor since they stood again
	repeatedAt []int     // the rows in which they did
	unitsAt    int       // the last row of units
	most       int       // rows that the file may hold
	line       *unitLine // the last one
	lones      int       // rows of one cell
	sums       bool      // the sheet sums up others
	titled     bool      // the last row was the title of a table
	closedAt   int       // the row that ends a letter
	since      [3]int    // rows of the file before the last total, the last sub-heading, and this sheet
	totals     int       // rows of totals before this sheet
	pinned     []pinned  // comments above the rows of pieces
	row        takeoff.Row
}

// offer takes the next row of the file that isn't blank. broken is what is
// wrong with the row as such, or empty; down are the columns whose cell is the
// lower part of one that is merged down.
func (t *table) offer(number int, cells []string, broken string, down []int, each func(*takeoff.Row) error) error {
	if t.ByMap.Skips(t.Place.Sheet, number) {
		t.Look.Class(told.SkippedRow, number, cells)
		return nil
	}
	if t.Specs == nil {
		done, err := t.find(number, cells)
		if done || err != nil {
			return err
		}
	}
	if t.sums {
		t.passSum(number, cells)
		return nil
	}
	t.Place.Row = number
	if t.TwoTables {
		return t.ofTwo(number, cells, each)
	}
	r := &t.row
	r.Reset(t.Place)
	r.Most = t.most
	worded, empty := t.Fill(r, cells, down)
	if empty && broken == "" {
		return nil
	}
	if broken == "" && (worded && (t.headingsAgain(number, cells) || t.unitRow(number, cells)) || t.Loud && (t.fresh || t.repeated || t.unitsAt == number-1) && t.numbered(number, cells) || t.mayBeAside(r) && t.aside(number, cells, r)) {
		t.KindAbove = ""
		return nil
	}
	t.repeated, t.repeatedAt, t.titled = false, nil, false
	if t.fresh {
		t.fresh = false
		if t.UnitsElsewhere() {
			r.Reset(t.Place)
			t.Fill(r, cells, down)
		}
		t.NoteUnits()
	}
	t.Settle(r, broken)
	t.Look.Class(told.PieceRow, number, cells)
	if t.Place.Sheet != "" {
		t.Look.Mark(r)
	}
	t.count(1)
	return each(r)
}

// count counts rows that are handed on.
func (t *table) count(rows int) {
	t.info.RowsRead += rows
	t.info.handed += rows
}
