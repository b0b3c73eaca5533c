package schedule

import (
	"fmt"
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
	"blankoff/takeoff/schedule/workbook"
)

// pinned are the comments on the cells of a row above those of pieces.
type pinned struct {
	row      int
	comments []workbook.Comment
}

// mostPinnedAbove is how many rows with comments are kept until the headings are known.
const mostPinnedAbove = 20

// keepPinned keeps the comments on a row that may hold headings.
func (t *table) keepPinned(row int, comments []workbook.Comment) {
	if len(comments) > 0 && len(t.pinned) < mostPinnedAbove {
		t.pinned = append(t.pinned, pinned{row, slices.Clone(comments)})
	}
}

// doubtPinned finds fault with comments on headings that say of the rows below what their
// cells don't: another unit, or how many times they count. Others are told, to be read.
func (t *table) doubtPinned(rows []int) {
	for _, p := range t.pinned {
		for _, c := range p.comments {
			if slices.Contains(rows, p.row) {
				t.doubtPinnedOn(p.row, c)
			}
		}
	}
	t.pinned = nil
}

// doubtPinnedOn looks at one comment.
func (t *table) doubtPinnedOn(row int, c workbook.Comment) {
	on, short := t.pinnedTo(c.Column), celltext.Shorten(c.Text)
	at := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: row}
	fault := func(expected, trouble string) {
		t.Found.Faults = append(t.Found.Faults, at.Fault(on, short, expected, fmt.Sprintf("'%s' %s", short, trouble)))
	}
	if u, ok := wording.PinnedUnit(c.Text); ok {
		if name := t.inAnother(c.Column, u); name != "" {
			fault("the unit in the heading", fmt.Sprintf("seems to give the unit of sizes, and '%s' is read in another; write the unit in each heading, as width_%s", name, u.Name))
		}
		return
	}
	switch of := wording.Remark(t.Lex, c.Text).Of; {
	case of&(wording.OfCounts|wording.OfMany|wording.OfSum|wording.OfPart|wording.OfDoubt) != 0:
		fault("a heading that says it all", "seems to say more of the rows below than their cells do; write it there, or in the heading, or take the comment off")
	case of == wording.OfElse:
		t.Told.AddToRead("comments on headings with words that no list here knows; read them, as the rows below count as they stand, the first '%s'", short, row)
	}
}

// pinnedTo names the comment on the heading of a column.
func (t *table) pinnedTo(column int) string {
	if column < len(t.Specs) && t.Specs[column].Typed != "" {
		return fmt.Sprintf(items.CommentOn+" on '%s'", t.Specs[column].Typed)
	}
	return items.CommentOn
}

// inAnother is the heading of sizes that are read in another unit than u: that of the column,
// or, if it holds no sizes, any.
func (t *table) inAnother(column int, u quantity.Unit) string {
	specs := t.Specs
	if column < len(specs) && specs[column].Used && specs[column].Measure == takeoff.Lengths {
		specs = specs[column : column+1]
	}
	for i := range specs {
		if s := &specs[i]; s.Used && s.Measure == takeoff.Lengths && s.Column.Unit != u {
			return s.Typed
		}
	}
	return ""
}
