package settled

import (
	"slices"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
)

// numbersByCells takes a column headed units, or No behind the sizes, for how many there
// are, where its figures don't just number the rows, or the tags do.
func (t *Reading) numbersByCells(b columns.Beneath) {
	if t.Maps(takeoff.Quantity) {
		return
	}
	found, sizes := -1, false
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Used && s.Measure == takeoff.Lengths {
			sizes = true
		}
		if s.Verdict != headings.Asks || s.Fixed || !s.Ask.Units() && (!sizes && !described.OfPieces(s.Typed) || !s.Ask.Counts()) {
			continue
		}
		if headings.Squash(s.Typed) == "amount" { // of money
			continue
		}
		if share := b.Share(i, counts); share < 0.5 || share < 1 && !s.Ask.Units() && !t.Maps(takeoff.Tag) {
			continue
		}
		if found >= 0 {
			return
		}
		found = i
	}
	if found < 0 || !described.OfPieces(t.Specs[found].Typed) && (celltext.NumbersRows(b.Columns[found]) && !t.Maps(takeoff.Tag) || celltext.NamesPieces(b.Columns[found])) {
		return
	}
	t.TakeFor(&t.Specs[found], takeoff.Quantity)
	t.Note("column '%s' is read as quantity, as it holds whole numbers", t.Specs[found].Typed)
}

// tagByCells takes the one column of items or references for the tags, where none of its
// cells names a kind and none stands there twice.
func (t *Reading) tagByCells(b columns.Beneath) {
	if t.Maps(takeoff.Tag) {
		return
	}
	found := -1
	for i := range t.Specs {
		s := &t.Specs[i]
		switch {
		case s.Verdict != headings.Asks || s.Fixed || !s.Ask.Items() && !s.Ask.Counts():
		case found >= 0 && t.Specs[found].Ask.Items() != s.Ask.Items(): // an item before a number
			if s.Ask.Items() {
				found = i
			}
		case found >= 0:
			return
		default:
			found = i
		}
	}
	if found < 0 || b.Rows < 2 && !t.Specs[found].Ask.Items() || b.Share(found, t.Kinds().NamesKind) > 0 {
		return
	}
	rows := len(b.Columns[found])
	if gaps := t.Specs[found].Ask.Items() && 4*rows >= 3*b.Rows && celltext.NumbersRows(b.Columns[found]); rows < b.Rows && !gaps { // a row without a number may be a total
		return
	}
	if s := &t.Specs[found]; s.Ask.Counts() && (!celltext.NumbersRows(b.Columns[found]) || described.OfPieces(s.Typed) || slices.ContainsFunc(t.Specs[:found], func(x columns.Spec) bool { return x.Used && x.Measure == takeoff.Lengths })) {
		return // it may be how many there are
	}
	cells := slices.Sorted(slices.Values(b.Columns[found]))
	if len(slices.Compact(cells)) < rows {
		return
	}
	t.TakeFor(&t.Specs[found], takeoff.Tag)
	t.Note("column '%s' is read as tag, as each of its cells is another", t.Specs[found].Typed)
}

// numbersItems reports tags that are item numbers, each of them once, alone or several in a
// cell. Those of two nodes or of a system and a piece are others: 1-2, 2-3.
func (t *Reading) numbersItems() bool {
	for i := range t.Specs {
		if s := &t.Specs[i]; !s.Used || s.Verdict != headings.Known || s.To() != takeoff.Tag {
			continue
		}
		met, alone := map[int]bool{}, false
		for _, cell := range t.Peek().Columns[i] {
			numbers := wording.SeveralNumbers(cell)
			if n, ok := celltext.Count(cell); ok {
				numbers, alone = []int{n}, true
			}
			for _, n := range numbers {
				if met[n] {
					return false
				}
				met[n] = true
			}
		}
		return alone
	}
	return false
}

// endsByCells takes columns headed inlet and outlet for the sizes of both ends, where their
// cells hold whole sizes and no other column does.
func (t *Reading) endsByCells() {
	in, out := t.headedAs("inlet"), t.headedAs("outlet")
	if in < 0 || out < 0 || t.Sized() {
		return
	}
	b := t.Peek()
	if len(b.Columns[in]) == 0 || b.Share(in, celltext.IsSize) < 1 || b.Share(out, celltext.IsSize) < 1 && len(b.Columns[out]) > 0 {
		return
	}
	t.TakeForSize(&t.Specs[in], headings.OwnSize)
	t.TakeForSize(&t.Specs[out], headings.SecondSize)
	t.Note("columns '%s' and '%s' are read as the sizes of both ends, as their cells hold sizes", t.Specs[in].Typed, t.Specs[out].Typed)
}

// headedAs is the one column that isn't known and is headed by a word alone, or with a unit.
func (t *Reading) headedAs(word string) int {
	return slices.IndexFunc(t.Specs, func(s columns.Spec) bool {
		words := headings.Tokens(s.Typed)
		return !s.Fixed && (s.Verdict == headings.Unknown || s.Verdict == headings.Near) && len(words) > 0 && words[0] == word && (len(words) == 1 || len(words) == 2 && s.Heading.Said)
	})
}

// unitsByCells takes a column as the Spanish ud for that of units, where its cells are units
// and no numbers.
func (t *Reading) unitsByCells(b columns.Beneath) {
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Fixed || s.Verdict != headings.Known || s.To() != takeoff.Quantity || len(b.Columns[i]) == 0 {
			continue
		}
		unit := func(cell string) bool { _, ok := quantity.UnitOf(cell); return ok }
		if b.Share(i, celltext.IsCount) == 0 && b.Share(i, unit) == 1 {
			h := t.Lex.Read("unit")
			h.Typed = s.Typed
			s.Set(&t.Reading, h)
			s.Settled = true
		}
	}
}

// EmptyCounts reports a column of quantities in which nothing stands.
func (t *Reading) EmptyCounts() bool {
	at := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.Verdict == headings.Known && s.To() == takeoff.Quantity })
	b := t.Peek()
	return b.Rows > 1 && len(b.Columns[at]) == 0
}

// shapeByCells takes a column of types for the shape, where that is all that its cells
// name.
func (t *Reading) shapeByCells(b columns.Beneath) {
	if t.Maps(takeoff.Shape) || !t.Maps(takeoff.Kind) {
		return
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		kinds := s.Used && s.Verdict == headings.Known && s.To() == takeoff.Kind && len(b.Columns[i]) > 1 && b.Share(i, t.Kinds().NamesKind) == 0
		if (s.Verdict == headings.Asks && s.Ask.Describes() || kinds) && !s.Fixed && b.Share(i, t.Kinds().NamesShape) == 1 {
			t.TakeFor(s, takeoff.Shape)
			t.Note("column '%s' is read as shape, as its cells name shapes", s.Typed)
			return
		}
	}
}

// Lengths that one of several pieces has, m, where a column gives that of all. Common
// practice, no source.
const (
	leastEach = 0.3
	mostEach  = 6.5
)

// lengthOfAll takes a column of total lengths beside a quantity for those of all pieces of a
// row, where one of them is as long as pieces are.
func (t *Reading) lengthOfAll() {
	t.OfAll = slices.ContainsFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.Heading.OfAll && s.IsLength() })
	if t.OfAll || !t.Maps(takeoff.Quantity) || t.Maps(takeoff.DimColumn(fittings.Length)) {
		return
	}
	at, many := -1, -1
	for i := range t.Specs {
		s := &t.Specs[i]
		switch {
		case s.Verdict == headings.Asks && !s.Fixed && s.Ask.Runs() && t.OfTotal(s.Typed):
			if at >= 0 {
				return
			}
			at = i
		case s.Used && s.Verdict == headings.Known && s.To() == takeoff.Quantity:
			many = i
		}
	}
	if at < 0 || many < 0 {
		return
	}
	s := &t.Specs[at]
	unit := quantity.Default(takeoff.Lengths)
	if s.Heading.Said && s.Heading.Unit.Measure == takeoff.Lengths {
		unit = s.Heading.Unit
	}
	if !t.asLongEach(at, many, unit) {
		return
	}
	h := s.Heading
	h.Verdict, h.Column, h.OfAll = headings.Known, takeoff.DimColumn(fittings.Length), true
	h.Unit = unit
	s.Set(&t.Reading, h)
	t.OfAll = true
	t.Note("column '%s' is read as the length of all pieces of a row together; that of each is a share of it", s.Typed)
}

// OfTotal reports a heading with a word for a total.
func (t *Reading) OfTotal(typed string) bool {
	return slices.ContainsFunc(headings.Tokens(typed), func(w string) bool {
		return t.Lex.Total(w) || slices.Contains(wholes, w) || strings.HasPrefix(w, "gesamt")
	})
}

// asLongEach reports that lengths over how many there are, as far as rows were looked at,
// are those of pieces.
func (t *Reading) asLongEach(at, many int, unit quantity.Unit) bool {
	c := quantity.Column{Unit: unit, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths), CommaFile: t.CommaFile, Decimal: t.Decimal}
	b, several := t.Peek(), 0
	for _, cells := range b.Cells {
		n, err := strconv.Atoi(celltext.At(cells, many))
		v, trouble := c.Number(celltext.At(cells, at))
		if err != nil || n < 2 || trouble != "" {
			continue
		}
		if several++; v/float64(n) < leastEach || v/float64(n) > mostEach {
			return false
		}
	}
	return several > 0
}

// NoCount reports a column headed as if it says how many whose cells can't: all of them are words,
// as the names of buildings, or with another column they make up the length, as modules do.
func (t *Reading) NoCount(at int) bool {
	b := t.Peek()
	if len(b.Columns[at]) == 0 {
		return false
	}
	if b.Share(at, func(c string) bool {
		return celltext.HasDigit(c) || wording.NamesAll(c) || t.Lex.Number(headings.Squash(c)) > 0
	}) == 0 {
		return true
	}
	long := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.IsLength() })
	return long >= 0 && t.Maps(takeoff.Quantity) && slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		of := slices.IndexFunc(t.Specs, func(x columns.Spec) bool { return x.Typed == s.Typed })
		return !s.Used && s.Typed != "" && of != at && makesUp(b.Cells, at, of, long)
	})
}

// makesUp reports that two columns multiplied are a third on every row.
func makesUp(rows [][]string, a, b, product int) bool {
	some := false
	for _, cells := range rows {
		x, errX := strconv.ParseFloat(celltext.At(cells, a), 64)
		y, errY := strconv.ParseFloat(celltext.At(cells, b), 64)
		z, errZ := strconv.ParseFloat(celltext.At(cells, product), 64)
		if errX != nil || errY != nil || errZ != nil || x*y != z {
			return false
		}
		some = true
	}
	return some
}
