package schedule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
	"blankoff/takeoff/schedule/workbook"
)

// hidden is what is kept of the rows of a sheet to find out whether hidden ones count.
type hidden struct {
	numbers []int // of hidden rows
	rows    []hiddenRow
	first   []telling // of the first row that isn't hidden
	seen    int       // rows that aren't hidden
	tags    []tagged  // of these
	group   grouped
	last    int // row
}

// tagged is the mark of a tag and the row that it stands on.
type tagged struct {
	mark uint64
	row  int32
}

// hiddenRow is a hidden row of a piece.
type hiddenRow struct {
	number int
	mark   uint64 // of its tag; 0: it has none
	tag    string
	cells  []string
}

// telling is a cell that the title of its sheet names: block A.
type telling struct {
	column int
	cell   string
}

// mostGap is how many rows may lie between two of pieces: some pages.
const mostGap = 150

// mostHidden is how many hidden rows are looked at, and mostTagged of how many rows tags are
// kept.
const (
	mostHidden = 200
	mostTagged = 200_000
)

// markOf is the mark of a row's tag with what it is among; 0 where it has none.
func markOf(r *takeoff.Row) uint64 {
	if r.Text[takeoff.Tag] == "" {
		return 0
	}
	h := uint64(14695981039346656037) // FNV-1a
	for _, c := range [...]takeoff.Column{takeoff.Tag, takeoff.System, takeoff.Level, takeoff.Drawing} {
		for i := range len(r.Text[c]) {
			h = (h ^ uint64(r.Text[c][i])) * 1099511628211
		}
		h = (h ^ 0xff) * 1099511628211
	}
	return max(h, 1)
}

// see takes in a row of a piece that was read.
func (h *hidden) see(t *table, x *sheetRow) {
	h.group.see(t, t.partOf(x))
	if h.last > 0 && x.number-h.last > mostGap {
		t.Found.Faults = append(t.Found.Faults, t.Place.Fault("", "", "rows that stand together",
			fmt.Sprintf("this row stands %d rows below the one before it, where nobody may look, and may be left over; take it out, or move it up", x.number-h.last)))
	}
	h.last = x.number
	mark := markOf(&t.row)
	if x.hidden {
		if len(h.rows) < mostHidden {
			h.rows = append(h.rows, hiddenRow{x.number, mark, t.row.Text[takeoff.Tag], slices.Clone(x.cells)})
		}
		return
	}
	if mark != 0 && len(h.tags) < mostTagged {
		h.tags = append(h.tags, tagged{mark, int32(x.number)})
	}
	if h.seen++; h.seen == 1 {
		h.first = t.namedAbove(x.cells)
		return
	}
	if len(h.first) > 0 {
		h.first = slices.DeleteFunc(h.first, func(y telling) bool { return celltext.At(x.cells, y.column) != y.cell })
	}
}

// sorted puts the tags in order, and reports how many rows have one that stands on another
// too.
func (h *hidden) sorted() (again int) {
	slices.SortStableFunc(h.tags, func(a, b tagged) int { return cmp.Compare(a.mark, b.mark) })
	for i := 1; i < len(h.tags); i++ {
		if h.tags[i].mark == h.tags[i-1].mark {
			again++
		}
	}
	return again
}

// namedAbove are the cells of a row that the title or the name of the sheet names.
func (t *table) namedAbove(cells []string) (out []telling) {
	titles := []string{" " + strings.Join(headings.Tokens(t.Place.Sheet), " ") + " "}
	for _, x := range t.Search.Texts {
		titles = append(titles, " "+strings.Join(headings.Tokens(x.Text), " ")+" ")
	}
	for i := range cells {
		cell := celltext.At(cells, i)
		if len(cell) < 3 || len(cell) > 60 || celltext.IsFigure(cell) {
			continue
		}
		words := " " + strings.Join(headings.Tokens(cell), " ") + " "
		if len(words) > 4 && slices.ContainsFunc(titles, func(title string) bool { return strings.Contains(title, words) }) {
			out = append(out, telling{i, cell})
		}
	}
	return out
}

// doubtHidden finds fault with hidden rows that seem not to count: an older one of a piece
// that isn't hidden, or one of something else than the title of the sheet says.
func (t *table) doubtHidden(h *hidden) {
	h.group.end(t)
	if len(h.rows) == 0 {
		return
	}
	p := t.Place
	few := 3*len(h.rows) <= h.seen && 10*h.sorted() <= h.seen
	for _, x := range h.rows {
		p.Row = x.number
		at, known := slices.BinarySearchFunc(h.tags, x.mark, func(y tagged, mark uint64) int { return cmp.Compare(y.mark, mark) })
		if known && few && x.mark != 0 {
			t.Found.Faults = append(t.Found.Faults, p.Fault(takeoff.Tag.Heading(), celltext.Shorten(x.tag), "a row that counts",
				fmt.Sprintf("this row is hidden and has the tag of row %d, which isn't, so it may be an older one of the same piece; take it out, or show it again", h.tags[at].row)))
			continue
		}
		for _, y := range h.first {
			if cell := celltext.At(x.cells, y.column); cell != "" && cell != y.cell {
				t.Found.Faults = append(t.Found.Faults, p.Fault("", celltext.Shorten(cell), "a row that counts",
					fmt.Sprintf("this row is hidden, and '%s' isn't '%s', which the title names and all rows say that aren't hidden; take it out, or show it again", celltext.Shorten(cell), celltext.Shorten(y.cell))))
				break
			}
		}
	}
}

// doubtPrinted finds fault with what is printed on each page of a schedule, if it says that the rows
// stand for several, or don't count.
func (t *table) doubtPrinted(texts []string) {
	p := t.Place
	p.Row = t.HeadRow
	for _, text := range texts {
		if t.Specs != nil && (wording.Many.MatchString(text) && !celltext.IsSize(text) || wording.Several(text) || t.Lex.Struck(text)) {
			t.Found.Faults = append(t.Found.Faults, p.Fault("", celltext.Shorten(text), "rows that count once",
				fmt.Sprintf("'%s', which is printed on each page, may say that the rows stand for several, or don't count; write how many under quantity, and take it out of the page", celltext.Shorten(text))))
		}
	}
}

// part is what of a row bears on whether it sums up others.
type part struct {
	row, level int
	section    [3]float64
	length     float64 // of all its pieces, m
}

// partOf is that of the row last read.
func (t *table) partOf(x *sheetRow) part {
	r := &t.row
	y := part{row: x.number, level: x.level}
	for i, d := range [...]fittings.Dim{fittings.Width, fittings.Height, fittings.Diameter} {
		y.section[i] = r.Number[takeoff.DimColumn(d)]
	}
	y.length = r.Number[takeoff.DimColumn(fittings.Length)]
	if r.Has(takeoff.Quantity) {
		y.length *= r.Number[takeoff.Quantity]
	}
	return y
}

// grouped is a group of rows below others while it is read.
type grouped struct {
	before, inside part // the row before it; the rows of it, with the section of the first
	rows           int
	mixed          bool // of more than one section
}

// see takes in a row of a piece. A row that a group lies below, or above, may hold what the
// group holds together.
func (g *grouped) see(t *table, y part) {
	if y.level > g.before.level {
		if g.rows++; g.rows == 1 {
			g.inside = y
			return
		}
		g.mixed = g.mixed || g.inside.section != y.section
		g.inside.length += y.length
		return
	}
	if g.rows > 0 && !g.end(t) {
		g.doubt(t, y)
	}
	*g = grouped{before: y}
}

// end ends a group, and reports whether the row before it sums it up.
func (g *grouped) end(t *table) bool { return g.doubt(t, g.before) }

// doubt finds fault with a row that sums up the group.
func (g *grouped) doubt(t *table, y part) bool {
	if g.rows < 2 || g.mixed || y.row == 0 || y.section != g.inside.section || y.length <= 0 || !nearly(y.length, g.inside.length) {
		return false
	}
	p := t.Place
	p.Row = y.row
	t.Found.Faults = append(t.Found.Faults, p.Fault("", "", "each piece once",
		fmt.Sprintf("this row is as long as the %d rows together that are grouped with it, from row %d on, and of the same size, so it may sum them up; take it out, or the rows of the group", g.rows, g.inside.row)))
	return true
}

// nearly reports two lengths that are one, m.
func nearly(a, b float64) bool { return a-b < 5e-4 && b-a < 5e-4 }

// sheetRow is a row of a sheet.
type sheetRow struct {
	number, level  int
	hidden, linked bool
	cells          []string
	marks          workbook.Marks
}

// sheetRows reads the rows of a sheet, and looks ahead.
type sheetRows struct {
	*workbook.Rows
	ahead []sheetRow
	err   error // that ends what was looked at
}

// next is the next row. Its cells are used again for the one after it.
func (s *sheetRows) next() (sheetRow, error) {
	if len(s.ahead) > 0 {
		x := s.ahead[0]
		s.ahead = s.ahead[1:]
		return x, nil
	}
	if s.err == nil {
		s.err = s.Next()
	}
	return sheetRow{s.Number, s.Level, s.Hidden, s.Linked, s.Cells, s.Marks()}, s.err
}

// below gives up to n rows that come next.
func (s *sheetRows) below(n int) (rows [][]string) {
	s.Cells, s.Down, s.Over, s.Struck, s.Sums, s.Unlike, s.Comments = nil, nil, nil, nil, nil, nil, nil // those of the row before are still in use
	for s.err == nil && len(s.ahead) < n {
		if s.err = s.Next(); s.err != nil {
			break
		}
		s.ahead = append(s.ahead, sheetRow{s.Number, s.Level, s.Hidden, s.Linked, slices.Clone(s.Cells), s.Marks().Clone()})
	}
	for _, x := range s.ahead[:min(n, len(s.ahead))] {
		rows = append(rows, x.cells)
	}
	return rows
}
