package items

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/schedule/quantity"
)

// beyond deals with a cell to the right of the last heading.
func (t *Reader) beyond(r *takeoff.Row, i int, cell string) {
	if t.Straights {
		t.seeFitting(cell, "-")
	}
	if !t.Ragged {
		t.unheaded(i, &columns.Spec{})
		t.others = append(t.others, otherNote{"column " + mapping.Letter(i), cell})
		return
	}
	short := celltext.Shorten(cell)
	r.Faults = append(r.Faults, t.Place.Fault("", short, fmt.Sprintf("%d cells", len(t.Specs)),
		fmt.Sprintf("there are more cells than headings, from '%s' on; put quotes around text that holds the separator", short)))
}

// unheaded notes once that a column without a heading holds something.
func (t *Reader) unheaded(i int, s *columns.Spec) {
	if s.Verdict != headings.Blank || i < len(t.stray) && t.stray[i] {
		return
	}
	for len(t.stray) <= i {
		t.stray = append(t.stray, false)
	}
	t.stray[i] = true
	t.Note("column %d has no heading and isn't used", i+1)
}

// anotherTable finds fault with cells to the right of the headings, or between them,
// that look like a piece of another table.
func (t *Reader) anotherTable(beyond []string) {
	for _, cell := range beyond {
		if cell = celltext.Trim(cell); cell != "" {
			t.strays = append(t.strays, cell)
		}
	}
	if len(t.strays) == 2 && !t.besides && celltext.IsFigure(t.strays[1]) && t.Lex.Counts(t.strays[0]) && t.strays[1] != "1" { // No. of flats | 12
		t.besides = true
		t.Found.Faults = append(t.Found.Faults, t.Place.Fault("", celltext.Shorten(strings.Join(t.strays, " ")), "how many under quantity",
			fmt.Sprintf("'%s' stands beside the rows, which may be there so many times; write how many under quantity, and take it out", celltext.Shorten(strings.Join(t.strays, " ")))))
	}
	if len(t.strays) < 4 || t.besides || !t.Kinds().LooksLikePiece(t.strays) {
		return
	}
	t.besides = true
	t.Found.Faults = append(t.Found.Faults, t.Place.Fault("", celltext.Shorten(strings.Join(t.strays, " | ")), "one table on a sheet",
		"the cells without headings look like another table beside this one, which isn't read; put it on a sheet of its own"))
}

// Sizes that hardly any piece has, m: they are in mm under a heading in another unit.
// Common practice, no source.
const (
	mostAcross = 3
	mostWide   = 5 // in mm: a figure too many
	mostLong   = 200
	mostInches = 25 // long, in inches or cm
)

// tooLarge refuses a size that is so large by the unit of its heading that it is in mm.
func (t *Reader) tooLarge(r *takeoff.Row, s *columns.Spec, cell string, v float64) {
	if s.Column.Unit == quantity.Millimetre && s.Across && !quantity.SaysUnit(cell) {
		t.fault(r, s, cell, fmt.Sprintf("would be %.4g m across, and may have a figure too many; correct it, or write mm behind it", v))
		return
	}
	if s.Across && v >= mostAcross || !s.Across && (v >= mostLong || v >= mostInches && s.Column.Unit.Name != "m" && s.Column.Unit != quantity.Foot) {
		if quantity.SaysUnit(cell) {
			t.fault(r, s, cell, fmt.Sprintf("would be %.4g m by the unit in the cell; take it out if it is another word, or write the size in mm", v))
			return
		}
		t.fault(r, s, cell, fmt.Sprintf("would be %.4g m in %s; write its unit behind it, as %s mm", v, s.Column.Unit.Name, cell))
	}
}

// fault puts a fault of a cell into its row.
func (t *Reader) fault(r *takeoff.Row, s *columns.Spec, cell, trouble string) {
	expected := "text"
	switch {
	case s.Verdict == headings.Sizes:
		expected = "a size in " + s.Column.Unit.Name + ", as 600x400 or Ø315"
	case s.Measure != takeoff.Text:
		expected = s.Expects()
	}
	if strings.HasPrefix(trouble, "could be ") {
		t.Found.Note("where a number has two readings, decimal = 'comma' or 'point' in a map settles it for the whole file: inspect -o MAP.toml writes one, --map MAP.toml reads by it")
	}
	short := celltext.Shorten(cell)
	r.Refuse(s.To(), t.Place.Fault(s.Typed, short, expected, fmt.Sprintf("'%s' %s", short, trouble)))
}

// shifted refuses a row of more cells than headings, all that is too much blank, where
// a comma for decimals may have moved the rest: other rows have another number of
// cells, or a whole number of metres stands before one or two figures.
func (t *Reader) shifted(r *takeoff.Row, cells []string) {
	n := len(t.Specs)
	if celltext.LastFilled(cells) > n {
		return // told as such
	}
	if t.Long == 0 {
		t.Long, t.longAt = len(cells), t.Place.Row
	}
	switch {
	case t.parted(cells[:n]):
		t.longAt = 0 // told now
	case len(cells) == t.Long && !t.uneven:
		return
	}
	r.Faults = append(r.Faults, t.shiftedAt(t.Place.Row, len(cells)))
}

// evened finds fault with the rows so far that had more cells than headings, once one
// hasn't.
func (t *Reader) evened() {
	if t.uneven = true; t.longAt > 0 {
		t.Found.Faults = append(t.Found.Faults, t.shiftedAt(t.longAt, t.Long))
	}
}

func (t *Reader) shiftedAt(row, cells int) takeoff.Fault {
	at := t.Place
	at.Row = row
	return at.Fault("", fmt.Sprintf("%d cells", cells), fmt.Sprintf("%d cells, as there are headings", len(t.Specs)),
		fmt.Sprintf("there are %d cells under %d headings, and not on every row: a comma for decimals may have parted a number; put quotes around it, or take the blank cells at the end off", cells, len(t.Specs)))
}

// parted reports a whole number in metres before one or two figures by themselves.
func (t *Reader) parted(cells []string) bool {
	for i := range len(cells) - 1 {
		if t.Metres(i) && celltext.PartedAt(cells, i) {
			return true
		}
	}
	return false
}

// besideMetres refuses a row in which figures stand where text is expected, behind a
// whole number of metres.
func (t *Reader) besideMetres(r *takeoff.Row, cells []string) {
	for _, i := range t.Beside {
		if celltext.PartedAt(cells, i) {
			both := celltext.Trim(cells[i]) + "," + celltext.Trim(cells[i+1])
			r.Faults = append(r.Faults, t.Place.Fault(t.Specs[i].Typed, both, "quotes around a number with a comma",
				fmt.Sprintf("'%s' stands in two cells and may be one number; put quotes around it, or take the second cell out", both)))
		}
	}
}

// totalLength is a cell of the length of all pieces of a row, which isn't used.
type totalLength struct {
	of   *columns.Spec
	cell string
}

// totalIn is the unit of a heading of the length of all pieces of a row, beside that of
// each.
func (t *Reader) totalIn(s *columns.Spec) (u quantity.Unit) {
	h := t.Lex.Read(s.Typed)
	if s.Used || h.Verdict != headings.Asks || !h.Ask.Runs() || !h.Said || h.Unit.Measure != takeoff.Lengths || !t.OfTotal(s.Typed) || !t.Maps(takeoff.DimColumn(fittings.Length)) {
		return u
	}
	return h.Unit
}

// A total length may be rounded by so much, m, or by this share.
const (
	roundedBy    = 0.06
	roundedShare = 0.02
)

// doubtTotal refuses a straight whose total length isn't its length times how many.
func (t *Reader) doubtTotal(r *takeoff.Row) {
	c := takeoff.DimColumn(fittings.Length)
	column := quantity.Column{Unit: t.total.of.Watch.TotalIn, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths), CommaFile: t.CommaFile, Decimal: t.Decimal}
	v, trouble := column.Number(t.total.cell)
	k, _, _, _ := fittings.ParseDescription(r.Text[takeoff.Kind])
	if trouble != "" || v <= 0 || k != fittings.Straight || !r.Has(c) || r.Number[c] <= 0 {
		return
	}
	n := float64(pieces(r))
	if off := math.Abs(v - n*r.Number[c]); off <= roundedBy || off <= roundedShare*v {
		return
	}
	short := celltext.Shorten(t.total.cell)
	r.Faults = append(r.Faults, t.Place.Fault(t.total.of.Typed, short, "the length of each, times how many",
		fmt.Sprintf("'%s' isn't %.4g times the length of the row; correct one, write how many under quantity, or take the column out", short, n)))
}

// otherNote is a cell of a second column of remarks, which isn't used.
type otherNote struct{ heading, cell string }

// lengthsSoFar are the lengths of the rows of a table, to find out whether the last one is
// that of all others together.
type lengthsSoFar struct {
	rows, tagged int
	each, all    float64 // sums of the lengths, and of those of all pieces, m
	last         struct {
		row         int
		length, all float64
		tagged, one bool
	}
}

var length = takeoff.DimColumn(fittings.Length)

// add takes in a row.
func (l *lengthsSoFar) add(r *takeoff.Row) {
	v, many := r.Number[length], 1.0
	if r.Has(takeoff.Quantity) {
		many = r.Number[takeoff.Quantity]
	}
	tagged := r.Text[takeoff.Tag] != ""
	if l.rows++; tagged {
		l.tagged++
	}
	l.each += v
	l.all += v * many
	l.last.row, l.last.length, l.last.all, l.last.tagged, l.last.one = r.At.Row, v, v*many, tagged, many == 1
}

// merge adds what was found further down.
func (l *lengthsSoFar) merge(below *lengthsSoFar) {
	if below.rows > 0 {
		l.last = below.last
	}
	l.rows, l.tagged, l.each, l.all = l.rows+below.rows, l.tagged+below.tagged, l.each+below.each, l.all+below.all
}

// How many rows there have to be above one that sums them up, and how long it is, m: where it
// is the only one without a tag, and where it isn't. Common practice, no source.
const (
	fewSummed, shortSum = 3, 3
	manySummed, longSum = 6, 6
)

// sumsUp reports that the last row is as long as all others together.
func (l *lengthsSoFar) sumsUp() bool {
	x, others := &l.last, l.rows-1
	untagged := !x.tagged && l.tagged == others && others >= fewSummed && x.length >= shortSum
	if !x.one || !untagged && (others < manySummed || x.length < longSum) {
		return false
	}
	return math.Abs(l.all-x.all-x.length) < 5e-4 || math.Abs(l.each-2*x.length) < 5e-4
}

// doubtLast finds fault with a last row that is as long as all others together.
func (t *Reader) doubtLast() {
	l := t.lengths
	t.lengths = lengthsSoFar{}
	if !l.sumsUp() {
		return
	}
	p := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: l.last.row}
	t.Found.Faults = append(t.Found.Faults, p.Fault(length.Heading(), fmt.Sprintf("%.4g m", l.last.length), "each piece once",
		fmt.Sprintf("the last row is as long as the %d rows above it together, so it may be their total; take it out, or write total before it", l.rows-1)))
}

// countsElse reports a heading with a word for how many that counts something else than pieces:
// how much of it is in one (kg/Stk), or things at the ducts (hangers pcs); and one whose cells are
// no figures (required on site).
func (t *Reader) countsElse(at int) bool {
	typed := t.Specs[at].Typed
	before, _, per := strings.Cut(typed, "/")
	before = celltext.Trim(before)
	if u, ok := quantity.UnitOf(before); per && (ok && u.Measure != takeoff.Count || t.Lex.Uncounted(before)) {
		return true
	}
	if slices.ContainsFunc(headings.Tokens(typed), t.Lex.Apart) {
		return true
	}
	cells := t.Peek().Columns[at]
	return len(cells) > 2 && !slices.ContainsFunc(cells, celltext.IsFigure)
}

// timesing refuses a row beside which it stands how many times it counts, as surveyors write it,
// and reports whether it does: 2/, 2/3/.
func (t *Reader) timesing(r *takeoff.Row, s *columns.Spec, cell string) bool {
	if len(cell) > 8 || strings.Trim(cell, "0123456789/") != "" {
		return false
	}
	r.Faults = append(r.Faults, t.Place.Fault(s.Typed, cell, "how many under quantity",
		fmt.Sprintf("'%s' seems to say how many times the row counts; write how many under quantity, and take it out", cell)))
	return true
}
