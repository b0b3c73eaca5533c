package xlsx

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// column is a column of a sheet. Those for the screen only stand at the right
// end and aren't printed.
type column struct {
	head   string
	width  float64 // characters
	kind   kind
	screen bool
	alarm  bool // bold where it isn't "in range"
}

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
	if err := s.alarms(name); err != nil {
		return err
	}
	return w.Flush()
}

// alarms puts what a reader must look at in bold, also after a change.
func (s *sheet) alarms(name string) error {
	for i, c := range s.columns {
		if !c.alarm || s.end < 2 {
			continue
		}
		style, err := s.book.file.NewConditionalStyle(&excelize.Style{Font: &excelize.Font{Bold: true}})
		if err != nil {
			return err
		}
		letter, _ := excelize.ColumnNumberToName(i + 1)
		err = s.book.file.SetConditionalFormat(name, rangeOf("", letter, [2]int{2, s.end}), []excelize.ConditionalFormatOptions{
			{Type: "formula", Criteria: fmt.Sprintf(`AND(%s2<>"",LEFT(%s2,2)<>"in")`, letter, letter), Format: &style},
		})
		if err != nil {
			return err
		}
	}
	return nil
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
		if err := s.out.SetColWidth(i+1, i+1, s.book.width(c)); err != nil {
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
		head := c.headIn(s.book.units)
		heads[i] = excelize.Cell{StyleID: s.book.styles[usual][0][heading], Value: head}
		deep = max(deep, linesOf(head, room(s.book.width(c))/boldFace))
	}
	s.at = 1
	tall := height(deep)
	if filter {
		tall += button
	}
	return s.out.SetRow("A1", heads, excelize.RowOpts{Height: tall})
}

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
		x := cell{style: int(quantities[c.kind].like)}
		if i < len(cells) {
			x = s.book.read(cells[i], int(c.kind))
		}
		if text, ok := x.v.(string); ok && c.kind != line && x.style != int(free) {
			deep = max(deep, linesOf(text, room(s.book.width(c))))
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
