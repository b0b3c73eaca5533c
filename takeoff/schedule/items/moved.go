package items

import (
	"fmt"
	"math"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
)

// seeEven finds out whether the rows of a text file have as many cells as there are headings,
// all but a few: then one that has fewer may lack a cell in the middle.
func (t *Reader) seeEven() {
	t.even = false
	if !t.Ragged || t.Below == nil || len(t.Specs) < 3 {
		return
	}
	full, rows := 0, 0
	for _, cells := range t.Below(mostEven) {
		if len(cells) > 1 {
			rows++
		}
		if len(cells) == len(t.Specs) {
			full++
		}
	}
	if t.Next != nil {
		rows++
		if len(t.Next) == len(t.Specs) {
			full++
		}
	}
	t.even = full > 0 && 2*full >= rows
}

// tellShort says of a row with fewer cells than headings that it has, where it is refused, or
// is shorter than pieces are: its figures may stand under the wrong headings.
func (t *Reader) tellShort(r *takeoff.Row) {
	said := fmt.Sprintf("this row has %d cells and the headings %d, so its figures may stand under the wrong ones", t.cells, len(t.Specs))
	long := takeoff.DimColumn(fittings.Length)
	switch {
	case len(r.Faults) > 0:
		f := &r.Faults[0]
		f.Message += "; " + said
	case r.Has(long) && r.Number[long] < columns.LeastSide:
		r.Refuse(long, t.Place.Fault(long.Heading(), r.Text[long], "a cell for each heading", said+"; put in the one that lacks"))
	}
}

// seeAll takes a row of a piece into what all rows together may show.
func (t *Reader) seeAll(r *takeoff.Row) {
	if r.Has(length) {
		t.lengths.add(r)
	}
	if t.moved.at > 0 {
		t.seeMoved(r)
	}
	if t.both.may {
		t.seeBoth(r)
	}
}

// moved is what is kept to find rows of which all cells behind one that lacks stand one to the
// left: the last column is empty there, and filled in all others.
type moved struct {
	at      int  // the last column with a heading; 0: none is looked at
	lacks   bool // the row that is read is empty there
	filled  int  // rows that aren't
	lacking int
	odd     []oddRow
	tallest float64 // of those that are filled
	most    float64 // the largest quantity of these
}

// oddRow is a row that is empty there.
type oddRow struct {
	row                             int
	width, height, length, quantity float64
}

// mostOdd is how many of them are kept, leastFilled how many rows are filled, and mostLacking the
// share of them that may lack it. Common practice, no source.
const (
	mostOdd     = 50
	leastFilled = 5
	mostLacking = 0.05
)

// watchMoved finds the last column.
func (t *Reader) watchMoved() {
	n := len(t.Specs) - 1
	for n > 0 && t.Specs[n].Verdict == headings.Blank {
		n--
	}
	t.moved = moved{}
	if s := &t.Specs[max(n, 0)]; n > 3 && !(s.Used && s.To() == takeoff.Note) && !t.remarksHead(s) {
		t.moved.at = n
	}
}

// seeMoved takes in a row of a piece.
func (t *Reader) seeMoved(r *takeoff.Row) {
	m := &t.moved
	height, quantity := r.Number[columns.Own[1]], r.Number[takeoff.Quantity]
	if !m.lacks {
		m.filled++
		m.tallest, m.most = max(m.tallest, height), max(m.most, quantity)
		return
	}
	if m.lacking++; len(m.odd) < mostOdd && len(r.Faults) == 0 && r.Has(length) && r.Has(takeoff.Quantity) {
		m.odd = append(m.odd, oddRow{r.At.Row, r.Number[columns.Own[0]], height, r.Number[length], quantity})
	}
}

// merge adds what was found further down.
func (m *moved) merge(below *moved) {
	m.filled, m.lacking = m.filled+below.filled, m.lacking+below.lacking
	m.tallest, m.most = max(m.tallest, below.tallest), max(m.most, below.most)
	m.odd = append(m.odd, below.odd[:min(len(below.odd), mostOdd-len(m.odd))]...)
}

// isOdd reports sizes and a quantity that are more likely those of the columns behind: a flat
// duct shorter than it is high, one twice as high as any other, or many more than of any other.
func (m *moved) isOdd(x oddRow) bool {
	across, least := max(x.width, x.height), min(x.width, x.height)
	flat := least > 0 && across >= 4*least && x.length < across
	high := x.height > 0 && x.height >= 2*m.tallest && x.length < x.height
	return flat || high || x.quantity >= 10 && x.quantity > 2*m.most
}

// toldMoved finds fault with such rows.
func (t *Reader) toldMoved() {
	m := t.moved
	t.moved = moved{at: m.at}
	if m.filled < leastFilled || float64(m.lacking) > math.Max(1, mostLacking*float64(m.filled)) {
		return
	}
	for _, x := range m.odd {
		if m.isOdd(x) {
			p := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: x.row}
			last := nameAt(&t.Specs[m.at], m.at)
			t.Found.Faults = append(t.Found.Faults, p.Fault(last, "", "a cell for each heading",
				fmt.Sprintf("'%s' is empty here only, and the sizes are unlike those of other rows, so a cell may be missing and those behind it stand one to the left; put it in, or fill in '%s'", last, last)))
		}
	}
}
