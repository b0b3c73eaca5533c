package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/told"
)

// setHeadings maps the columns of the heading rows once for all rows below them.
func (t *table) setHeadings(rows []int, heads [][]string, hs []headings.Heading) error {
	for _, cells := range heads {
		if last := celltext.LastFilled(cells); last > headrow.MaxColumns {
			return fmt.Errorf("%s has %d columns; a schedule has at most %d", t.Place, last, headrow.MaxColumns)
		}
	}
	if f := &t.Search; len(f.Rows) > 0 {
		t.Note("%s above the headings passed over: %s", told.RowsWord(f.Rows), f.Quoted())
		f.Rows = nil
	}
	t.Place.Row = rows[0]
	if len(rows) > 1 {
		t.Note("rows %d and %d are read as one heading row", rows[0], rows[1])
	}
	lined := t.takeLine()
	t.toldCounts()
	t.noteCounts()
	t.inSummary = false
	if t.fresh = true; !t.titled {
		t.over.doubt = doubt{}
	}
	t.Heads, t.extra, t.inKind = nil, columns.Spec{}, nil
	for _, cells := range heads {
		t.Heads = append(t.Heads, slices.Clone(cells))
	}
	t.HeadRows, t.HeadRow = len(t.Heads), rows[len(rows)-1]
	for _, h := range hs {
		t.CommaFile = t.CommaFile || strings.HasSuffix(h.Typed, columns.CommaMark)
	}
	t.Lex.Neighbours(hs)
	before := t.Specs
	t.Specs = make([]columns.Spec, len(hs))
	for i, h := range hs {
		t.Specs[i].Set(&t.Reading, h)
		t.Specs[i].Fixed = t.Fixing[i]
	}
	t.SettleAll(before, rows[0], lined)
	t.watchUnused()
	t.tellAbove()
	t.Describe(rows)
	return nil
}

// tellAbove finds out what the lines above the headings say of the rows below.
func (t *table) tellAbove() {
	t.tellKind()
	if t.others == 0 || t.titled {
		t.tellShape()
	}
	if t.others == 0 {
		t.headedBy()
		t.doubtTitle()
		t.pieceAbove()
	}
}
