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

// bold is a text that a reader must look at.
type bold string

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
	if err := b.setUp(name, columns); err != nil {
		return err
	}
	w, err := b.file.NewStreamWriter(name)
	if err != nil {
		return err
	}
	s := &sheet{book: b, out: w, columns: columns}
	if err := s.begin(); err != nil {
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
	if filter && s.at > 1 {
		// Last, because it would undo what the set-up says of the sheet.
		corner, _ := excelize.CoordinatesToCellName(len(columns), s.at)
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
	left    int // rows that didn't fit
}

// begin sets the widths and writes the heading row.
func (s *sheet) begin() error {
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
		heads[i] = excelize.Cell{StyleID: s.book.styles[heading], Value: c.head}
		deep = max(deep, linesOf(c.head, 1.1*(c.width-3))) // the filter's button takes some room
	}
	s.at = 1
	return s.out.SetRow("A1", heads, excelize.RowOpts{Height: height(deep)})
}

// linesOf is about how many lines a text takes in a cell, rather too many than
// too few. A unit of width holds 1.25 letters or more of the cells' font,
// measured on its widest likely stand-in.
func linesOf(text string, width float64) int {
	lines, used := 1, 0.0
	for _, word := range strings.Fields(text) {
		n := 0.0
		for _, r := range word {
			n++
			if r >= 0x2e80 { // wide letters
				n++
			}
		}
		if used > 0 && used+1+n > width {
			lines, used = lines+1, 0
		}
		for ; n > width; n -= width {
			lines++
		}
		used += n + 1
	}
	return lines
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
	s.at++
	out := make([]any, len(s.columns))
	deep := 1
	for i, c := range s.columns {
		cell := excelize.Cell{StyleID: s.book.styles[c.kind]}
		if i < len(cells) {
			cell.Value, cell.StyleID = s.book.value(cells[i], cell.StyleID)
		}
		if text, ok := cell.Value.(string); ok && c.kind != line {
			deep = max(deep, linesOf(text, 1.25*(c.width-2)))
		}
		out[i] = cell
	}
	name, err := excelize.CoordinatesToCellName(1, s.at)
	if err != nil {
		return err
	}
	// Not every spreadsheet program fits the height of a row to its text.
	return s.out.SetRow(name, out, excelize.RowOpts{Height: height(deep)})
}

// value is what a cell holds, and its style where the value asks for another.
func (b *book) value(v any, style int) (any, int) {
	switch v := v.(type) {
	case permitted:
		return show.LimitValue(float64(v)), b.styles[decimals1+show.LimitDecimals(float64(v))-1]
	case rounded:
		return v.v, b.styles[left0+int(v.kind)]
	case bold:
		return string(v), b.styles[ticked]
	case float64:
		if math.IsInf(v, 0) || math.IsNaN(v) {
			return nil, style
		}
	case string:
		switch v = strings.Join(strings.Fields(show.Safe(v)), " "); {
		case v == "":
			return nil, style
		case strings.ContainsRune("=+-@", rune(v[0])) && style == b.styles[words]:
			return v, b.styles[typed]
		}
		return v, style
	}
	return v, style
}

// setUp makes the sheet and says how it prints: A4 on its side, one page wide,
// the heading row on every page.
func (b *book) setUp(name string, columns []column) error {
	f := b.file
	if f.SheetCount == 1 && f.GetSheetName(0) == "Sheet1" {
		if err := f.SetSheetName("Sheet1", name); err != nil {
			return err
		}
	} else if _, err := f.NewSheet(name); err != nil {
		return err
	}
	yes, wide, tall, paper, side := true, 1, 0, 9, "landscape"
	if err := f.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &yes}); err != nil {
		return err
	}
	err := f.SetPageLayout(name, &excelize.PageLayoutOptions{Size: &paper, Orientation: &side, FitToWidth: &wide, FitToHeight: &tall})
	if err != nil {
		return err
	}
	narrow, deep, edge := 0.4, 0.6, 0.3
	err = f.SetPageMargins(name, &excelize.PageLayoutMarginsOptions{Left: &narrow, Right: &narrow, Top: &narrow, Bottom: &deep, Header: &edge, Footer: &edge})
	if err != nil {
		return err
	}
	err = f.SetHeaderFooter(name, &excelize.HeaderFooterOptions{OddFooter: "&L" + b.foot + "&C&A&R&P / &N"})
	if err != nil {
		return err
	}
	err = f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: "'" + name + "'!$1:$1", Scope: name})
	if err != nil {
		return err
	}
	printed := 0
	for printed < len(columns) && !columns[printed].screen {
		printed++
	}
	if printed == len(columns) {
		return nil
	}
	end, _ := excelize.ColumnNumberToName(printed)
	return f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: "'" + name + "'!$A:$" + end, Scope: name})
}
