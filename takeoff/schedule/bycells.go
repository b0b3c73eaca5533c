package schedule

import (
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/terms"
)

// beneath is what stands under the headings, as far as it was looked at: the cells of
// each column that say something.
type beneath struct {
	columns [][]string
	cells   [][]string // row by row
	rows    int
}

// peek gathers what stands under the headings: rows of three cells and more, up to where
// other headings start.
func (t *table) peek() beneath {
	b := t.peekAt(3)
	if b.rows == 0 { // End caps: a name and a size
		b = t.peekAt(2)
	}
	return b
}

// peekAt is peek for rows of so many cells and more.
func (t *table) peekAt(least int) (b beneath) {
	b.columns = make([][]string, len(t.specs))
	if t.below == nil {
		return b
	}
	var rows [][]string
	if t.next != nil {
		rows = append(rows, t.next)
	}
	for _, cells := range append(rows, t.below(mostBelow)...) {
		filled := celltext.Filled(cells)
		if len(filled) < least || celltext.AllUnits(cells, filled) || t.repeats(cells) || t.lex.Total(celltext.Trim(cells[filled[0]])) {
			continue
		}
		if _, other := t.otherHeads(cells); other {
			break
		}
		b.rows++
		b.cells = append(b.cells, cells)
		for _, i := range filled {
			if cell := celltext.Trim(cells[i]); i < len(b.columns) && !celltext.MeansNothing(cell) {
				b.columns[i] = append(b.columns[i], cell)
			}
		}
	}
	return b
}

// takeFor makes a column what its cells show it to be.
func (t *table) takeFor(s *spec, c takeoff.Column) {
	h := s.Heading
	if h.Verdict, h.Column = headings.Known, c; !h.Said {
		h.Unit = quantity.Default(c.Measure())
	}
	s.set(t, h)
	s.settled = true
}

// share is how many of the cells of a column are so, from 0 to 1; none are where the
// column is empty.
func (b beneath) share(i int, so func(cell string) bool) float64 {
	n := 0
	for _, cell := range b.columns[i] {
		if so(cell) {
			n++
		}
	}
	return float64(n) / max(1, float64(len(b.columns[i])))
}

// byCells settles headings with more than one reading by what stands under them.
func (t *table) byCells() {
	open := slices.ContainsFunc(t.specs, func(s spec) bool {
		return !s.fixed && (s.Verdict == headings.Asks || s.used && (s.to() == takeoff.Scope || s.to() == takeoff.Quantity))
	})
	if !open && (t.maps(takeoff.Kind) || t.opt.Map.Fixes(t.place.Sheet)) {
		return
	}
	b := t.peek()
	again := t.settledBefore()
	if b.rows == 0 {
		return
	}
	if !again {
		t.unitsByCells(b)
		t.kindByCells(b)
		t.shapeByCells(b)
		t.scopeByCells(b)
	}
	for i := range t.specs {
		s := &t.specs[i]
		if s.Verdict != headings.Asks || s.fixed {
			continue
		}
		s.empty = len(b.columns[i]) == 0
		s.worded = !s.empty && b.share(i, celltext.IsFigure) == 0 && b.share(i, celltext.IsSize) == 0
		s.figures = !s.empty && b.share(i, celltext.IsFigure) == 1
		if s.Ask.Sections() && !again && !t.sized() && b.share(i, celltext.IsSize) == 1 {
			t.takeForSize(s, headings.OwnSize)
			t.note("column '%s' is read as size, as its cells hold sizes", s.Typed)
		}
	}
	if !again {
		t.numbersByCells(b)
		t.tagByCells(b)
	}
}

// SettledMark stands between the headings of a file of refused rows and what cells that
// aren't in it settled: "refused: headings [A tag, C kind]".
const SettledMark = AddedMark + "headings ["

// settledBefore takes columns for what the file said they are of which these rows were
// refused. It reports whether this is such a file.
func (t *table) settledBefore() (again bool) {
	for i := range t.specs {
		typed := t.specs[i].Typed
		again = again || strings.HasPrefix(typed, AddedMark)
		list, ok := strings.CutPrefix(typed, SettledMark)
		if !ok {
			continue
		}
		for _, pair := range strings.Split(strings.TrimSuffix(list, "]"), ", ") {
			letter, name, _ := strings.Cut(pair, " ")
			at, lettered := mapping.Number(letter)
			c, of, known := headings.Canonical(name)
			if lettered && name == "-" && at < len(t.specs) {
				t.specs[at].used, t.specs[at].Verdict = false, headings.Unknown
			}
			if !lettered || !known || at >= len(t.specs) || t.specs[at].Verdict != headings.Asks {
				continue
			}
			if s := &t.specs[at]; of == headings.NoSize {
				t.takeFor(s, c)
			} else {
				t.takeForSize(s, of)
			}
		}
	}
	return again
}

// takeForSize makes a column one of whole cross-sections.
func (t *table) takeForSize(s *spec, of headings.SizeOf) {
	h := s.Heading
	h.Verdict, h.Size = headings.Sizes, of
	s.set(t, h)
	s.settled = true
}

// sized reports whether columns of the cross-section are known.
func (t *table) sized() bool {
	return t.maps(own[0]) || t.maps(own[2]) || slices.ContainsFunc(t.specs, func(s spec) bool { return s.used && s.Verdict == headings.Sizes && s.sized == dims(headings.OwnSize) })
}

// scopeByCells leaves out a column headed scope that says what is supplied, and not what
// is tested.
func (t *table) scopeByCells(b beneath) {
	for i := range t.specs {
		s := &t.specs[i]
		if !s.used || s.fixed || s.Verdict != headings.Known || s.to() != takeoff.Scope || len(b.columns[i]) == 0 || b.share(i, t.namesScope) > 0 || b.share(i, celltext.OfWords) < 1 {
			continue
		}
		s.used, s.Verdict, s.settled = false, headings.Unknown, true
	}
}

func (t *table) namesScope(cell string) bool {
	_, known := t.lex.Exact(takeoff.Scope, cell)
	return known || terms.KnownScope(cell) || t.lex.Struck(cell)
}

// askLate asks about a heading whose first cells are empty, once one is filled.
func (t *table) askLate(s *spec) {
	at := t.place.Row
	t.place.Row = t.headRow
	t.ask(s)
	t.place.Row = at
}
