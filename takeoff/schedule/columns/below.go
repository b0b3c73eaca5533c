package columns

import (
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
)

// Beneath is what stands under the headings, as far as it was looked at: the cells of
// each column that say something.
type Beneath struct {
	Columns [][]string
	Cells   [][]string // row by row
	Rows    int
}

// Share is how many of the cells of a column are so, from 0 to 1; none are where the
// column is empty.
func (b Beneath) Share(i int, so func(cell string) bool) float64 {
	n := 0
	for _, cell := range b.Columns[i] {
		if so(cell) {
			n++
		}
	}
	return float64(n) / max(1, float64(len(b.Columns[i])))
}

// Peek gathers what stands under the headings: rows of three cells and more, up to where
// other headings start.
func (t *Reading) Peek() Beneath {
	b := t.PeekAt(3)
	if b.Rows == 0 { // End caps: a name and a size
		b = t.PeekAt(2)
	}
	return b
}

// PeekAt is Peek for rows of so many cells and more.
func (t *Reading) PeekAt(least int) (b Beneath) {
	b.Columns = make([][]string, len(t.Specs))
	if t.Below == nil {
		return b
	}
	var rows [][]string
	if t.Next != nil {
		rows = append(rows, t.Next)
	}
	for _, cells := range append(rows, t.Below(MostBelow)...) {
		filled := celltext.Filled(cells)
		if len(filled) < least || celltext.AllUnits(cells, filled) || t.Repeats(cells) || t.Lex.Total(celltext.Trim(cells[filled[0]])) {
			continue
		}
		if _, other := t.OtherHeads(cells); other {
			break
		}
		b.Rows++
		b.Cells = append(b.Cells, cells)
		for _, i := range filled {
			if cell := celltext.Trim(cells[i]); i < len(b.Columns) && !celltext.MeansNothing(cell) {
				b.Columns[i] = append(b.Columns[i], cell)
			}
		}
	}
	return b
}

// MostBelow is how many rows below the headings are looked at to settle what a
// heading leaves open.
const MostBelow = 40

// TakeFor makes a column what its cells show it to be.
func (t *Reading) TakeFor(s *Spec, c takeoff.Column) {
	h := s.Heading
	if h.Verdict, h.Column = headings.Known, c; !h.Said {
		h.Unit = quantity.Default(c.Measure())
		if u, only := UnitOnly(h.Typed); only && u.Measure == c.Measure() { // Ft
			h.Unit, h.Said = u, true
		}
	}
	s.Set(t, h)
	s.Settled = true
}

// SettledMark stands between the headings of a file of refused rows and what cells that
// aren't in it settled: "refused: headings [A tag, C kind]".
const SettledMark = AddedMark + "headings ["

// OfRefused reports the headings of a file of refused rows: those between them are missing.
func (t *Reading) OfRefused() bool {
	return slices.ContainsFunc(t.Specs, func(s Spec) bool { return strings.HasPrefix(s.Typed, AddedMark) })
}

// TakeForSize makes a column one of whole cross-sections.
func (t *Reading) TakeForSize(s *Spec, of headings.SizeOf) {
	h := s.Heading
	h.Verdict, h.Size = headings.Sizes, of
	s.Set(t, h)
	s.Settled = true
}

// Sized reports whether columns of the cross-section are known.
func (t *Reading) Sized() bool {
	return t.Maps(Own[0]) || t.Maps(Own[2]) || slices.ContainsFunc(t.Specs, func(s Spec) bool { return s.Used && s.Verdict == headings.Sizes && s.Sized == Dims(headings.OwnSize) })
}

// AskLate asks about a heading whose first cells are empty, once one is filled.
func (t *Reading) AskLate(s *Spec) {
	s.Waits = false
	at := t.Place.Row
	t.Place.Row = t.HeadRow
	t.ask(s)
	t.Place.Row = at
}

// mostLooked is how many cells are looked at whether they are headings again: after so
// many, only rows that begin with one.
const mostLooked = 100_000

// OtherHeads reads a row as headings that start anew; ok is false where it is no
// such row.
func (t *Reading) OtherHeads(cells []string) (hs []headings.Heading, ok bool) {
	if celltext.HasFigure(cells) {
		return nil, false
	}
	if t.looked += len(cells); t.looked > mostLooked && !headrow.Begins(t.Lex, cells) {
		return nil, false
	}
	hs = headrow.Read(t.Lex, cells)
	filled := 0
	for _, h := range hs {
		if h.Verdict != headings.Blank {
			filled++
		}
	}
	n, asked := headrow.Score(hs), 0
	for _, h := range hs {
		if h.Verdict == headings.Asks {
			asked++
		}
	}
	return hs, n >= 2 && 2*(n+asked) > filled && !wording.OnUnits(t.Lex, cells)
}

// Repeats reports one of the heading rows over again.
func (t *Reading) Repeats(cells []string) bool {
	return slices.ContainsFunc(t.Heads, func(head []string) bool {
		for i := range max(len(head), len(cells)) {
			if celltext.At(head, i) != celltext.At(cells, i) {
				return false
			}
		}
		return true
	})
}

// IsBill reports the headings of a bill: a description and a quantity, with kinds of
// pieces under the description, or under a heading that nobody knows.
func (t *Reading) IsBill(hs []headings.Heading) bool {
	if t.Below == nil || !headrow.Counted(hs) {
		return false
	}
	bill := headrow.Bill(hs)
	rows, named := 0, make([]int, len(hs))
	for _, cells := range t.Below(MostBelow) {
		if len(celltext.Filled(cells)) < 3 {
			continue
		}
		rows++
		for i, h := range hs {
			if (bill && headrow.Describes(h) || !bill && (h.Verdict == headings.Unknown || h.Verdict == headings.Near)) && t.Kinds().NamesKind(celltext.At(cells, i)) {
				named[i]++
			}
		}
	}
	return slices.ContainsFunc(named, func(n int) bool { return n > 0 && (bill || 10*n >= 9*rows) })
}

// HeadsBelow reports that headings stand in the row that comes next.
func (t *Reading) HeadsBelow() bool {
	if t.Below == nil {
		return false
	}
	next := t.Below(1)
	if len(next) == 0 {
		return false
	}
	_, other := t.OtherHeads(next[0])
	return other || t.Repeats(next[0])
}

// PiecesBelow reports rows of three cells and more among those that come next.
func (t *Reading) PiecesBelow() bool {
	return t.Below == nil || slices.ContainsFunc(t.Below(MostBelow), func(cells []string) bool { return len(celltext.Filled(cells)) > 2 })
}
