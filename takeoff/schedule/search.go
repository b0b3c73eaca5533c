package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/schedule/quantity"
)

// search is how far the heading row was looked for.
type search struct {
	above  []int  // rows above the heading row
	first  string // the first of them, as text
	texts  []titleText
	last   []string // the cells of the row before, where it may be the upper of two heading rows
	lastAt int
	held   []string // a heading row whose lower row may follow
	heldAt int
	failed bool // looked long enough
	piece  int  // the first row that looks like one, though no headings stand above it; 0: none
}

// mostTitle is how many cells of a row above the headings are looked at.
const mostTitle = 40

// titleText is a row above the headings as text.
type titleText struct {
	row   int
	text  string
	sheet string // of a cover, else empty
	unit  quantity.Unit
	among bool // it stands among the rows
}

// find takes a row while the headings aren't known. done is false where the row
// is the first below them.
func (t *table) find(number int, cells []string) (done bool, err error) {
	f := &t.search
	if f.failed {
		return true, nil
	}
	if t.opt.Map.Fixes(t.place.Sheet) {
		return t.findFixed(number, cells)
	}
	if f.held != nil {
		return t.complete(number, cells)
	}
	if celltext.Labels(cells) {
		t.passOver(number, cells)
		return true, nil
	}
	alone := t.readCells(cells)
	best := score(alone)
	if best == 0 && t.isBill(alone) {
		best = 1
	}
	if f.last != nil && f.lastAt == number-1 && !celltext.IsTitle(f.last, cells) && !celltext.Labels(f.last) {
		if both := t.joinRows(f.last, cells); score(both) > best && (celltext.LastFilled(f.last) > 1 || sure(both) > sure(alone)) {
			f.drop()
			return true, t.setHeadings([]int{f.lastAt, number}, [][]string{f.last, cells}, both)
		}
	}
	if best > 0 {
		f.held, f.heldAt = slices.Clone(cells), number
		return true, nil
	}
	t.passOver(number, cells)
	return true, nil
}

// complete decides whether the row below a heading row belongs to it.
func (t *table) complete(number int, cells []string) (done bool, err error) {
	f := &t.search
	held, at := f.held, f.heldAt
	f.held = nil
	alone := t.readCells(held)
	if !celltext.HasFigure(cells) && len(celltext.Filled(cells)) > 1 {
		if both := t.joinRows(held, cells); score(both) > score(alone) {
			return true, t.setHeadings([]int{at, number}, [][]string{held, cells}, both)
		}
	}
	t.next = cells
	err = t.setHeadings([]int{at}, [][]string{held}, alone)
	t.next = nil
	return false, err
}

// flush takes a heading row below which nothing stands.
func (t *table) flush() error {
	f := &t.search
	if f.held == nil {
		return nil
	}
	held := f.held
	f.held = nil
	return t.setHeadings([]int{f.heldAt}, [][]string{held}, t.readCells(held))
}

// passOver keeps a row above the headings.
func (t *table) passOver(number int, cells []string) {
	f := &t.search
	text := strings.Join(strings.Fields(strings.Join(cells, " ")), " ")
	f.last = nil
	if text == "" {
		return
	}
	if f.above = append(f.above, number); f.first == "" {
		f.first = celltext.Shorten(text)
	}
	f.texts = append(f.texts, titleText{row: number, text: text})
	if len(cells) <= maxColumns {
		f.last, f.lastAt = slices.Clone(cells), number
	}
	if f.piece == 0 && t.kinds().LooksLikePiece(cells[:min(len(cells), mostTitle)]) {
		f.piece = number
	}
	f.failed = len(f.above) >= maxSearch
	t.look.class(TitleRow, number, cells)
}

// quoted is the first rows above the headings as text.
func (f *search) quoted() string {
	out := "'" + f.first + "'"
	for i, x := range f.texts[min(1, len(f.texts)):] {
		if i == mostQuoted {
			break
		}
		out += ", '" + celltext.Shorten(x.text) + "'"
	}
	return out
}

// drop takes the last row out of those above the headings.
func (f *search) drop() {
	n := len(f.above) - 1
	f.above, f.texts = f.above[:n], f.texts[:n]
	if n == 0 {
		f.first = ""
	}
}

// readCells reads a row as headings.
func (t *table) readCells(cells []string) []headings.Heading {
	out := make([]headings.Heading, 0, min(len(cells), maxColumns))
	for i, cell := range cells {
		if i >= maxColumns {
			break
		}
		if len(cell) > 100 {
			out = append(out, headings.Heading{Typed: celltext.Shorten(celltext.Trim(cell)), Verdict: headings.Unknown})
			continue
		}
		out = append(out, t.lex.Read(celltext.Shorten(celltext.Trim(cell))))
	}
	return out
}

// findFixed takes the heading rows that a map fixes, by their numbers or by
// their headings.
func (t *table) findFixed(number int, cells []string) (done bool, err error) {
	m := t.opt.Map.For(t.place.Sheet)
	f := &t.search
	n := len(m.HeadingRows)
	switch {
	case n == 0:
		if !m.HasAll(cells) {
			t.passOver(number, cells)
			return true, nil
		}
		return true, t.setFixed(m, []int{number}, [][]string{cells})
	case m.HeadingRows[0] == 0:
		return false, t.setFixed(m, []int{0}, [][]string{nil})
	case number < m.HeadingRows[n-1]:
		t.passOver(number, cells)
		return true, nil
	case number > m.HeadingRows[n-1]:
		return true, fmt.Errorf("%s: the map says that row %d holds headings, but it is blank; mend heading_rows in the map", t.place, m.HeadingRows[n-1])
	case n == 2 && f.last != nil && f.lastAt == m.HeadingRows[0]:
		f.drop()
		return true, t.setFixed(m, m.HeadingRows, [][]string{slices.Clone(f.last), cells})
	}
	return true, t.setFixed(m, m.HeadingRows[n-1:], [][]string{cells})
}

// setFixed makes the columns what the map says. A column of the map that isn't
// there is a fault.
func (t *table) setFixed(m *mapping.Sheet, rows []int, heads [][]string) error {
	typed := mapping.Joined(heads, maxColumns)
	hs := make([]headings.Heading, len(typed))
	for i := range hs {
		hs[i] = headings.Heading{Typed: celltext.Shorten(typed[i]), Verdict: headings.Unknown}
		if typed[i] == "" {
			hs[i].Verdict = headings.Blank
		}
	}
	fixed := map[int]bool{}
	at := takeoff.Place{File: t.place.File, Sheet: t.place.Sheet, Row: rows[0]}
	for _, c := range m.Columns {
		i := c.Seek(typed)
		if i < 0 || i >= maxColumns || fixed[i] {
			name := c.Heading
			if name == "" {
				name = c.At
			}
			t.info.Faults = append(t.info.Faults, at.Fault(name, name, "a column that the map names",
				fmt.Sprintf("the map names column '%s', which isn't there or stands there twice; mend the map or the heading", name)))
			continue
		}
		for len(hs) <= i {
			hs = append(hs, headings.Heading{})
		}
		h, err := c.Read()
		if err != nil {
			return err
		}
		h.Typed = hs[i].Typed
		if h.Typed == "" {
			h.Typed = "column " + mapping.Letter(i)
		}
		if fixed[i] = true; c.Is == "" {
			h = headings.Heading{Typed: h.Typed, Verdict: hs[i].Verdict}
		}
		hs[i] = h
	}
	t.fixing = fixed
	return t.setHeadings(rows, heads, hs)
}
