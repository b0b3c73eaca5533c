package xlsx

import (
	"fmt"
	"math"
	"strings"

	"github.com/xuri/excelize/v2"

	"blankoff/planner/report/show"
)

// column is a column of a sheet. Those for the screen only stand at the right
// end and aren't printed.
type column struct {
	head   string
	width  float64 // characters
	kind   kind
	screen bool
}

// permitted is a limit: its cell holds the value cut off, with as many decimals.
type permitted float64

// rounded is a number shown in another way than its column's.
type rounded struct {
	v    float64
	kind kind
}

// bold is a text that a reader must look at. A row whose first cell is a start
// has a rule above it; one whose first cell is a total is bold and stands outside
// the filter.
type (
	bold  string
	start string
	total string
)

// freely is a text over the cells beside it, headed a heading inside a sheet, and
// as a value of another kind than its column's.
type (
	freely string
	headed string
	as     struct {
		v    any
		kind kind
	}
)

// given is a number shown with the digits that it has.
type given float64

// formula is a cell that follows others: how, and its value now. An empty one
// only holds its value.
type formula struct {
	text string
	now  any
}

// input is a cell that may be changed.
type input struct{ v any }

// byHand is a cell to be filled in by hand on paper.
type byHand struct{}

// fill gives the rows of a sheet, one call each.
type fill func(row func(cells ...any) error) error

// sheet writes one sheet: a heading row that stays in sight, a filter, and the
// rows that fill gives. What doesn't fit into a sheet is said in its last row.
func (b *book) sheet(name string, columns []column, rows fill) error {
	return named(name, b.page(name, columns, rows, true))
}

// form writes one sheet without a filter.
func (b *book) form(name string, columns []column, rows fill) error {
	return named(name, b.page(name, columns, rows, false))
}

func named(sheet string, err error) error {
	if err != nil {
		return fmt.Errorf("sheet %s: %w", sheet, err)
	}
	return nil
}

func (b *book) page(name string, columns []column, rows fill, filter bool) error {
	for i, c := range columns {
		if c.screen && c.kind == words {
			columns[i].kind = line // what isn't printed doesn't make the rows high
		}
	}
	if err := b.setUp(name, columns); err != nil {
		return err
	}
	w, err := b.file.NewStreamWriter(name)
	if err != nil {
		return err
	}
	s := &sheet{book: b, out: w, columns: columns}
	if err := s.begin(filter); err != nil {
		return err
	}
	if err := rows(s.row); err != nil {
		return err
	}
	if s.left > 0 {
		if err := s.put([]any{fmt.Sprintf("%d more rows don't fit into a sheet; plan.json has all", s.left)}); err != nil {
			return err
		}
	}
	if s.end == 0 {
		s.end = s.at
	}
	if filter && s.end > 1 {
		// Last, because it would undo what the set-up says of the sheet.
		corner, _ := excelize.CoordinatesToCellName(len(columns), s.end)
		if err := b.file.AutoFilter(name, "A1:"+corner, nil); err != nil {
			return err
		}
	}
	return w.Flush()
}

// sheet is a sheet being written.
type sheet struct {
	book    *book
	out     *excelize.StreamWriter
	columns []column
	at      int // the last row written
	end     int // the last row before the total; 0: there is none yet
	left    int // rows that didn't fit
}

// begin sets the widths and writes the heading row.
func (s *sheet) begin(filter bool) error {
	for i, c := range s.columns {
		if err := s.out.SetColWidth(i+1, i+1, c.width); err != nil {
			return err
		}
	}
	err := s.out.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"})
	if err != nil {
		return err
	}
	heads := make([]any, len(s.columns))
	deep := 1
	for i, c := range s.columns {
		heads[i] = excelize.Cell{StyleID: s.book.styles[usual][0][heading], Value: c.head}
		deep = max(deep, linesOf(c.head, room(c.width)/boldFace))
	}
	s.at = 1
	tall := height(deep)
	if filter {
		tall += button
	}
	return s.out.SetRow("A1", heads, excelize.RowOpts{Height: tall})
}

// The cells' font is Arial at 9 points. A unit of a column's width is 7 pixels at
// 96 to the inch, of which the indent and the edges take some.
const (
	fontSize, unit, edges = 9.0, 5.25, 10.0 // points
	boldFace              = 1.08            // bold over upright
	button                = 10.0            // points below a heading for the filter's button
)

// room is what a column has for text, in sizes of the font.
func room(width float64) float64 { return (unit*width - edges) / fontSize }

// linesOf is about how many lines a text takes in a cell with so much room,
// rather too many than too few.
func linesOf(text string, room float64) int {
	lines, used := 1, 0.0
	for _, word := range strings.Fields(text) {
		n := 0.0
		for _, r := range word {
			n += letter(r)
		}
		if used > 0 && used+space+n > room {
			lines, used = lines+1, 0
		}
		if used > 0 {
			used += space
		}
		for ; n > room && room > 1; n -= room {
			lines++
		}
		used += n
	}
	return lines
}

const space = 0.28

// letter is about the width of a letter of the cells' font, in sizes of the
// font: those of its kind, rounded up.
func letter(r rune) float64 {
	switch {
	case r >= 0x2e80: // wide letters
		return 1
	case strings.ContainsRune("iljtfrI.,:;'|()[]!-/ ", r):
		return 0.34
	case strings.ContainsRune("csvkxyz", r):
		return 0.5
	case strings.ContainsRune("mwMW@%", r):
		return 0.95
	case r >= 'A' && r <= 'Z':
		return 0.73
	}
	return 0.56
}

// height is that of a row of so many lines, points. A sheet has an end to it.
func height(lines int) float64 { return min(409, 3+12*float64(lines)) }

// row writes a row. Columns past its cells are empty.
func (s *sheet) row(cells ...any) error {
	// The last row is kept for what didn't fit.
	if s.at >= s.book.last-1 {
		s.left++
		return nil
	}
	return s.put(cells)
}

func (s *sheet) put(cells []any) error {
	l := usual
	if len(cells) > 0 {
		switch cells[0].(type) {
		case start:
			l = ruled
		case total:
			l, s.end = summed, s.at
		}
	}
	s.at++
	out := make([]any, len(s.columns))
	deep := 1
	for i, c := range s.columns {
		x := cell{style: int(c.kind)}
		if i < len(cells) {
			x = read(cells[i], x.style)
		}
		if text, ok := x.v.(string); ok && c.kind != line && x.style != int(free) {
			deep = max(deep, linesOf(text, room(c.width)))
		}
		if _, ok := x.v.(byHand); ok {
			x.v, deep = nil, max(deep, 2)
		}
		out[i] = excelize.Cell{StyleID: s.book.styles[l][x.open][x.style], Value: x.v, Formula: x.formula}
	}
	name, err := excelize.CoordinatesToCellName(1, s.at)
	if err != nil {
		return err
	}
	// Not every spreadsheet program fits the height of a row to its text.
	return s.out.SetRow(name, out, excelize.RowOpts{Height: height(deep)})
}

// cell is what goes into one cell.
type cell struct {
	v       any
	style   int
	formula string
	open    int // 1: it may be changed
}

// read unwraps what a row was given for a cell.
func read(v any, style int) cell {
	switch v := v.(type) {
	case input:
		c := read(v.v, style)
		c.open = 1
		return c
	case formula:
		c := read(v.now, style)
		c.formula = v.text
		return c
	}
	c := cell{}
	c.v, c.style = valueOf(v, style)
	return c
}

// valueOf is what a cell holds, and its style where the value asks for another.
func valueOf(v any, style int) (any, int) {
	switch v := v.(type) {
	case permitted:
		return show.LimitValue(float64(v)), int(flows)
	case rounded:
		return v.v, left0 + int(v.kind)
	case freely:
		w, _ := valueOf(string(v), int(free))
		return w, int(free)
	case headed:
		return oneLine(string(v)), heading
	case as:
		w, _ := valueOf(v.v, int(v.kind))
		return w, int(v.kind)
	case given:
		return float64(v), int(plain)
	case bold:
		return valueOf(string(v), int(ticked))
	case start:
		return valueOf(string(v), int(ticked))
	case total:
		return valueOf(string(v), int(ticked))
	case float64:
		if math.IsInf(v, 0) || math.IsNaN(v) {
			return nil, style
		}
	case string:
		switch v = oneLine(v); {
		case v == "":
			return nil, style
		case !strings.ContainsRune("=+-@", rune(v[0])):
		case style == int(line), style == int(free):
			return v, int(typedLine)
		case style != heading:
			return v, int(typed)
		}
		return v, style
	}
	return v, style
}

// oneLine makes a text of a schedule safe for a cell.
func oneLine(s string) string { return strings.Join(strings.Fields(show.Safe(s)), " ") }
