package schedule

import (
	"fmt"
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
	"blankoff/takeoff/schedule/workbook"
	"blankoff/takeoff/schedule/workbook/dress"
)

// shown is how rows of a workbook are coloured, and what lines say of colours.
type shown struct {
	rows    []paintedRows
	legends []legend
	looked  int // lines of the sheet that were looked at
}

// paintedRows are rows of pieces of one sheet that are coloured alike.
type paintedRows struct {
	sheet      string
	font, fill dress.Colour
	rows       []int
}

// legend is a line that says of a colour that rows of it don't count.
type legend struct {
	at         takeoff.Place
	text       string
	names      []string     // colours that it names
	font, fill dress.Colour // its own
}

// How much of it is kept: rows of one colour, colours, lines that are looked at on a sheet, and
// legends.
const (
	mostPainted = 200
	mostColours = 100
	mostLines   = 200
	mostLegends = 20
)

// piece takes in the colours of a row of a piece.
func (s *shown) piece(sheet string, p dress.Painted, row int) {
	if p.Font == 0 && p.Fill == 0 {
		return
	}
	at := slices.IndexFunc(s.rows, func(x paintedRows) bool { return x.sheet == sheet && x.font == p.Font && x.fill == p.Fill })
	if at < 0 {
		if len(s.rows) >= mostColours {
			return
		}
		at = len(s.rows)
		s.rows = append(s.rows, paintedRows{sheet: sheet, font: p.Font, fill: p.Fill})
	}
	if x := &s.rows[at]; len(x.rows) < mostPainted {
		x.rows = append(x.rows, row)
	}
}

// line takes in a row of few cells that is no piece.
func (s *shown) line(lex *headings.Lexicon, at takeoff.Place, row int, cells []string, p dress.Painted) {
	if s.looked++; s.looked > mostLines || len(s.legends) >= mostLegends {
		return
	}
	texts := celltext.Texts(cells)
	if len(texts) == 0 || len(texts) > 3 {
		return
	}
	text := texts[0]
	for _, more := range texts[1:] {
		text += " " + more
	}
	fill, beside := p.Fill, p.Fill == 0 && p.Swatch != 0
	if beside {
		fill = p.Swatch
	}
	at.Row = row
	for _, part := range wording.Legends(text) {
		names := wording.Colours(part)
		if (len(names) > 0 || p.Font != 0 || fill != 0) && wording.ColourLegend(lex, part, beside) {
			s.legends = append(s.legends, legend{at, celltext.Shorten(part), names, p.Font, fill})
		}
	}
}

// of reports rows in the colour of a legend.
func (l *legend) of(x *paintedRows) bool {
	if l.font != 0 && l.font == x.font || l.fill != 0 && l.fill == x.fill {
		return true
	}
	named := func(c dress.Colour, ground bool) bool {
		r, g, b := c.Parts()
		return c != 0 && wording.Named(l.names, r, g, b, ground)
	}
	return named(x.font, false) || named(x.fill, true)
}

// doubtColours finds fault with rows in a colour of which a line says that they don't count.
func (info *Info) doubtColours(s *shown) {
	for i := range s.rows {
		x := &s.rows[i]
		at := slices.IndexFunc(s.legends, func(l legend) bool { return l.of(x) })
		if at < 0 {
			continue
		}
		l := &s.legends[at]
		for _, row := range x.rows {
			p := takeoff.Place{File: info.File, Sheet: x.sheet, Row: row}
			info.Faults = append(info.Faults, p.Fault("", l.text, "a row that counts",
				fmt.Sprintf("the row has a colour of which '%s' (sheet '%s', row %d) seems to say that it doesn't count; take the row out, write out under scope, or take the colour off", l.text, l.at.Sheet, l.at.Row)))
		}
	}
}

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
