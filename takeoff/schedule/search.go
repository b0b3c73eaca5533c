package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// find takes a row while the headings aren't known. done is false where the row
// is the first below them.
func (t *table) find(number int, cells []string) (done bool, err error) {
	f := &t.Search
	if f.Failed {
		return true, nil
	}
	if t.ByMap.Fixes(t.Place.Sheet) {
		return t.findFixed(number, cells)
	}
	if f.Held != nil {
		return t.complete(number, cells)
	}
	alone := headrow.Read(t.Lex, cells)
	if t.noHeads(cells) || celltext.Labels(cells) && !headrow.AllKnown(alone) {
		t.passOver(number, cells)
		return true, nil
	}
	best := headrow.Score(alone)
	if best == 0 && (t.IsBill(alone) || t.IsList(alone)) {
		best = 1
	}
	if f.Last != nil && f.LastAt == number-1 && !celltext.IsTitle(f.Last, cells) && !celltext.Labels(f.Last) && !t.unitsOver(f.Last, cells) && !headrow.Pairs(t.Lex, f.Last, alone) {
		if both := headrow.Join(t.Lex, f.Last, cells); headrow.Score(both) > best && (celltext.LastFilled(f.Last) > 1 || headrow.Sure(both) > headrow.Sure(alone)) {
			f.Drop()
			return true, t.setHeadings([]int{f.LastAt, number}, [][]string{f.Last, cells}, both)
		}
	}
	if best > 0 {
		f.Held, f.HeldAt = slices.Clone(cells), number
		return true, nil
	}
	t.passOver(number, cells)
	return true, nil
}

// noHeads reports a row above the headings that numbers the columns, or has labels with what
// they say.
func (t *table) noHeads(cells []string) bool {
	numbers, _ := celltext.NumbersColumns(cells)
	return numbers || headrow.Labelled(t.Lex, cells)
}

// complete decides whether the row below a heading row belongs to it.
func (t *table) complete(number int, cells []string) (done bool, err error) {
	f := &t.Search
	held, at := f.Held, f.HeldAt
	f.Held = nil
	if t.unitsOver(held, cells) {
		t.passOver(at, held)
		return t.find(number, cells)
	}
	alone := headrow.Read(t.Lex, held)
	if !celltext.HasFigure(cells) && len(celltext.Filled(cells)) > 1 {
		if both := headrow.Join(t.Lex, held, cells); headrow.Score(both) > headrow.Score(alone) {
			return true, t.setHeadings([]int{at, number}, [][]string{held, cells}, both)
		}
	}
	t.Next = cells
	err = t.setHeadings([]int{at}, [][]string{held}, alone)
	t.Next = nil
	return false, err
}

// unitsOver reports a line on units in several cells above a heading row.
func (t *table) unitsOver(line, cells []string) bool {
	filled, below := celltext.Filled(line), celltext.Filled(cells)
	return len(below) > 1 && filled[0] <= below[0] && wording.OnUnits(t.Lex, line) && !celltext.HasFigure(cells) && headrow.Score(headrow.Read(t.Lex, cells)) > 0
}

// flush takes a heading row below which nothing stands.
func (t *table) flush() error {
	f := &t.Search
	if f.Held == nil {
		return nil
	}
	held := f.Held
	f.Held = nil
	return t.setHeadings([]int{f.HeldAt}, [][]string{held}, headrow.Read(t.Lex, held))
}

// passOver keeps a row above the headings.
func (t *table) passOver(number int, cells []string) {
	f := &t.Search
	text := strings.Join(strings.Fields(strings.Join(cells, " ")), " ")
	f.Last = nil
	if text == "" {
		return
	}
	if f.Rows = append(f.Rows, number); f.First == "" {
		f.First = celltext.Shorten(text)
	}
	f.Texts = append(f.Texts, t.linesOf(number, cells, text)...)
	if len(cells) <= headrow.MaxColumns && !t.noHeads(cells) {
		f.Last, f.LastAt = slices.Clone(cells), number
	}
	first := cells[:min(len(cells), headrow.MostTitle)]
	if f.Piece == 0 && t.Kinds().LooksLikePiece(first) {
		f.Piece = number
	}
	if t.Place.Sheet != "" && t.Kinds().LooksSized(first) {
		f.Sized = append(f.Sized, number)
	}
	f.Failed = len(f.Rows) >= headrow.MaxSearch
	t.Look.Class(told.TitleRow, number, cells)
}

// linesOf is a row above the headings as a line, or as one for each of its labels.
func (t *table) linesOf(number int, cells []string, text string) (out []headrow.Line) {
	if headrow.Labelled(t.Lex, cells) {
		for parts := range slices.Chunk(celltext.Texts(cells), 2) {
			out = append(out, headrow.Line{Row: number, Text: strings.Join(parts, " ")})
		}
		return out
	}
	line := headrow.Line{Row: number, Text: text}
	if wording.OnUnits(t.Lex, cells) {
		line.Parts = strings.Join(celltext.Texts(cells), ", ")
	}
	return append(out, line)
}

// findFixed takes the heading rows that a map fixes, by their numbers or by
// their headings.
func (t *table) findFixed(number int, cells []string) (done bool, err error) {
	m := t.ByMap.For(t.Place.Sheet)
	f := &t.Search
	n := len(m.HeadingRows)
	switch {
	case n == 0:
		if !m.HasAll(cells) && !m.HasAll(celltext.Unnumbered(cells)) {
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
		return true, fmt.Errorf("%s: the map says that row %d holds headings, but it is blank; mend heading_rows in the map", t.Place, m.HeadingRows[n-1])
	case n == 2 && f.Last != nil && f.LastAt == m.HeadingRows[0]:
		f.Drop()
		return true, t.setFixed(m, m.HeadingRows, [][]string{slices.Clone(f.Last), cells})
	}
	return true, t.setFixed(m, m.HeadingRows[n-1:], [][]string{cells})
}

// setFixed makes the columns what the map says. A column of the map that isn't
// there is a fault.
func (t *table) setFixed(m *mapping.Sheet, rows []int, heads [][]string) error {
	typed := mapping.Joined(heads, headrow.MaxColumns)
	bare := make([][]string, len(heads))
	for i := range heads {
		bare[i] = celltext.Unnumbered(heads[i])
	}
	unnumbered := mapping.Joined(bare, headrow.MaxColumns)
	hs := make([]headings.Heading, len(typed))
	for i := range hs {
		hs[i] = headings.Heading{Typed: celltext.Shorten(unnumbered[i]), Verdict: headings.Unknown}
		if typed[i] == "" {
			hs[i].Verdict = headings.Blank
		}
	}
	fixed := map[int]bool{}
	at := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: rows[0]}
	for _, c := range m.Columns {
		i := c.Seek(typed)
		if i < 0 {
			i = c.Seek(unnumbered)
		}
		if i < 0 || i >= headrow.MaxColumns || fixed[i] {
			name := c.Heading
			if name == "" {
				name = c.At
			}
			t.Found.Faults = append(t.Found.Faults, at.Fault(name, name, "a column that the map names",
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
		h.InchesToo = h.Unit == quantity.Foot && t.Lex.Read(h.Typed).InchesToo
		if h.Typed == "" {
			h.Typed = "column " + mapping.Letter(i)
		}
		if fixed[i] = true; c.Is == "" {
			h = headings.Heading{Typed: h.Typed, Verdict: hs[i].Verdict}
		}
		hs[i] = h
	}
	t.Fixing = fixed
	return t.setHeadings(rows, heads, hs)
}

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
	t.ToldCounts()
	t.NoteCounts()
	t.InSummary = false
	if t.fresh = true; !t.titled {
		t.Over.Doubt = items.Doubt{}
	}
	t.Heads, t.Extra = nil, columns.Spec{}
	t.InKind.Anew()
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
		t.Specs[i].Set(&t.Reading.Reading, h)
		t.Specs[i].Fixed = t.Fixing[i]
	}
	if t.SettleAll(before, rows[0], lined); !t.TwoTables {
		t.WatchUnused()
		t.tellAbove()
		t.doubtPinned(rows)
	}
	t.joins = t.joinsRows()
	t.sums = t.sumsUp()
	t.Look.Sums = t.Look.Sums || t.sums
	t.Describe(rows)
	return nil
}

// joinsRows reports that the first rows say what they hang on.
func (t *table) joinsRows() bool {
	i := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.Verdict == headings.Known && s.To() == takeoff.From })
	return i >= 0 && t.Below != nil && len(t.Peek().Columns[i]) > 0
}

// tellAbove finds out what the lines above the headings say of the rows below.
func (t *table) tellAbove() {
	t.Plain = !t.Maps(takeoff.Kind) && t.OnlyStraights()
	t.Once = t.OnceNamed()
	t.TellKind()
	if t.others == 0 || t.titled {
		t.TellShape()
	}
	if t.others == 0 {
		t.headedBy()
		t.doubtTitle()
		t.pieceAbove()
	}
}
