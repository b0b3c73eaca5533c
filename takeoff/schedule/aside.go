package schedule

import (
	"regexp"
	"slices"
	"strings"
	"unicode"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// headingsAgain takes over headings that stand again further down, as on the
// next page of a printed list.
func (t *table) headingsAgain(number int, cells []string) bool {
	if t.sameHeads(number, cells) {
		return true
	}
	if t.lowerAgain(number, cells) {
		return true
	}
	hs, ok := t.OtherHeads(cells)
	if !ok {
		return false
	}
	if t.others++; t.others > mostHeads { // no schedule: what follows is read as rows
		return false
	}
	t.Note("other headings start at row %d", number)
	t.Look.Class(told.HeadingRow, number, cells)
	return t.setHeadings([]int{number}, [][]string{cells}, hs) == nil
}

// lowerAgain takes over the lower of two heading rows that stand again with another
// lower one, as with other units: what the upper one says holds on.
func (t *table) lowerAgain(number int, cells []string) bool {
	n := len(t.repeatedAt)
	if n == 0 || t.HeadRows != 2 || t.repeatedAt[n-1] != number-1 || celltext.HasFigure(cells) {
		return false
	}
	both := headrow.Join(t.Lex, t.Heads[0], cells)
	if headrow.Score(both) < max(2, headrow.Score(headrow.Read(t.Lex, cells))) {
		return false
	}
	upper := slices.Clone(t.Heads[0])
	if t.others++; t.others > mostHeads {
		return false
	}
	t.Look.Kept = append(t.Look.Kept, number-1)
	t.Look.Class(told.HeadingRow, number, cells)
	return t.setHeadings([]int{number - 1, number}, [][]string{upper, slices.Clone(cells)}, both) == nil
}

// sameHeads takes note of one of the heading rows over again.
func (t *table) sameHeads(number int, cells []string) bool {
	if !t.Repeats(cells) {
		return false
	}
	if wording.Ends.MatchString(t.Over.Doubt.Said) { // of the page before
		t.Over.Doubt = items.Doubt{}
	}
	t.repeated, t.repeatedAt = true, append(t.repeatedAt, number)
	if t.titled {
		t.Look.Kept = append(t.Look.Kept, number) // else the title is of nothing
	}
	t.Told.Add("rows that repeat the headings", "", number)
	t.Look.Class(told.RepeatedRow, number, cells)
	return true
}

// aside deals with a row that has no kind that is known, and may not be a piece:
// a repeated heading, a total, a sub-heading, a remark. It reports whether the
// row was dealt with.
func (t *table) aside(number int, cells []string, r *takeoff.Row) bool {
	if t.sameHeads(number, cells) {
		return true
	}
	filled := celltext.Filled(cells)
	switch {
	case len(filled) == 0:
		return false
	case t.headedArea(cells, filled):
		t.underArea(number, cells, filled)
		return true
	case t.isMoney(cells, filled, r):
		t.money(number, cells, filled)
		return true
	case t.numberedHead(number, cells, filled):
		return true
	case t.isTotal(cells, filled, r) || t.isForward(cells, filled, r):
		if label := celltext.Trim(cells[filled[0]]); wording.MoreRows.MatchString(label) {
			t.moreRows(label)
		}
		t.total(number, cells, celltext.Trim(cells[filled[0]]), r)
		return true
	case t.lengthOnly(cells, filled):
		t.bareLength(r)
		return false
	case celltext.IsRuler(cells, filled):
		t.Look.Class(told.RemarkRow, number, cells)
		return true
	case t.isUnits(cells, filled):
		t.unitBelow(number, cells, strings.Join(celltext.Texts(cells), ", "))
		return true
	case t.info.handed > 0 && t.isNumberOnly(cells, filled):
		t.numberOnly(number, cells, filled)
		return true
	case t.labelled(cells, filled) && t.headsSoon() && t.mayBeBlock(cells, filled):
		t.block(number, cells, filled)
		return true
	case celltext.IsLone(cells, filled):
		return t.lone(number, cells, filled[0], celltext.Trim(cells[filled[0]]))
	}
	return t.passedBy(number, cells, filled, r)
}

// passedBy deals with a row that is aside and may be of words: a remark, what is left over, what
// is no ductwork, who signed.
func (t *table) passedBy(number int, cells []string, filled []int, r *takeoff.Row) bool {
	switch {
	case t.isRemark(cells, filled, r):
		t.remark(number, cells, celltext.Trim(cells[filled[0]]))
		return true
	case t.isSpare(cells, filled, r):
		t.spare(number, cells, r)
		return true
	case t.isApart(r):
		t.Told.Add("rows of what is no ductwork left out, the first '%s'", celltext.Shorten(r.Text[takeoff.Kind]), number)
		t.Look.Class(told.ApartRow, number, cells)
		t.info.RowsRead++
		t.info.RowsLeft++
		return true
	case t.feet < mostFeet && isPageSign(cells, filled) && t.endsHere():
		t.asFooter(number, cells, celltext.Trim(cells[filled[0]]))
		return true
	}
	return t.isSigned(cells, filled, r) && t.signed(number, cells, filled)
}

// isUnits reports a line on units that commas have parted.
func (t *table) isUnits(cells []string, filled []int) bool {
	return len(filled) > 1 && len(filled) < 5 && wording.OnUnits(t.Lex, cells)
}

// numbered deals with a row right below the headings that numbers the columns: 1, 2, 3 or
// (1), (2), (3). One of letters stands under all headings: A, B, C.
func (t *table) numbered(number int, cells []string) bool {
	numbers, lettered := celltext.NumbersColumns(cells)
	if !numbers || lettered && !slices.ContainsFunc(t.Heads, func(head []string) bool { return slices.Equal(celltext.Filled(head), celltext.Filled(cells)) }) {
		return false
	}
	t.Told.Add("rows that number the columns passed over", "", number)
	t.Look.Class(told.RemarkRow, number, cells)
	return true
}

// mayBeAside reports a row that may be no piece: it has no kind that is known, or nothing
// but words.
func (t *table) mayBeAside(r *takeoff.Row) bool {
	return t.Loud || r.Bare() && len(t.Pending) == 0 && len(r.Faults) == 0
}

// maybeAside reports a row that aside may deal with.
func (t *table) maybeAside(cells []string, r *takeoff.Row) bool {
	filled := celltext.Filled(cells)
	return t.Repeats(cells) || len(filled) > 0 && (t.headedArea(cells, filled) || t.isTotal(cells, filled, r) || t.isForward(cells, filled, r) || t.lengthOnly(cells, filled) || celltext.IsLone(cells, filled) || celltext.IsRuler(cells, filled) || t.isUnits(cells, filled) || t.isRemark(cells, filled, r) || t.isApart(r) || t.isSpare(cells, filled, r) || t.isNumberOnly(cells, filled) || t.labelled(cells, filled) || t.isMoney(cells, filled, r) || t.isNumberedHead(cells, filled) || t.isSigned(cells, filled, r) || isPageSign(cells, filled))
}

// isTotal reports a row of totals: its first words say so and it has no size of
// a cross-section, or it holds nothing but an area or a quantity and what goes with them.
func (t *table) isTotal(cells []string, filled []int, r *takeoff.Row) bool {
	for _, d := range [...]fittings.Dim{fittings.Width, fittings.Height, fittings.Diameter} {
		if text := r.Text[takeoff.DimColumn(d)]; text != "" && !t.Lex.Total(text) {
			return false
		}
	}
	for _, p := range t.Pending {
		if !t.Lex.Total(p.Cell) {
			return false
		}
	}
	if t.holdsTotal(cells, filled, r) {
		return true
	}
	text := 0
	for _, i := range filled {
		cell := celltext.Trim(cells[i])
		if unicode.IsDigit(rune(cell[0])) || cell[0] == '=' {
			continue
		}
		text++
		if text == 1 && len(cell) <= celltext.MaxWord && t.Lex.Total(cell) {
			return true
		}
	}
	if text > 0 {
		return false
	}
	area, length, measured := false, false, false
	for _, i := range filled {
		if i >= len(t.Specs) || !t.Specs[i].Used {
			return false
		}
		switch c := t.Specs[i].To(); c {
		case takeoff.StatedArea, takeoff.DimColumn(fittings.GivenArea), takeoff.Quantity:
			area = true
		case takeoff.DimColumn(fittings.Length): // with a quantity, the row goes on with the piece above
			length = true
		default:
			return false
		}
		measured = measured || t.Specs[i].Measure == takeoff.Areas
	}
	return area && (measured || !length)
}

// total keeps a row of totals, to be held against the rows above it.
func (t *table) total(number int, cells []string, label string, r *takeoff.Row) {
	if !unicode.IsLetter([]rune(label)[0]) {
		label = ""
	}
	x := takeoff.TotalRow{At: takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: number}, Label: celltext.Shorten(label), Since: t.since, Before: t.info.handed}
	for _, c := range [...]takeoff.Column{takeoff.DimColumn(fittings.GivenArea), takeoff.StatedArea} {
		if r.Has(c) {
			x.Area, x.AreaText = r.Number[c], r.Text[c]
		}
	}
	if r.Has(takeoff.Quantity) {
		x.Quantity = int(r.Number[takeoff.Quantity])
	}
	x.Whole = t.Lex.TotalName(label) && t.info.RowsLeft == 0 && t.UnitsAt == 0 && !t.Uncounted() && !carried.MatchString(label)
	for _, f := range r.Faults {
		if !unicode.IsLetter([]rune(f.Value + "0")[0]) {
			t.Found.Faults = append(t.Found.Faults, f)
		}
	}
	t.since[0] = t.info.handed
	t.Over.Named++
	t.info.RowsRead++
	t.info.TotalRows = append(t.info.TotalRows, x)
	t.Look.Class(told.TotalRow, number, cells)
}

// carried heads a sum of another page, which these rows needn't come to, in seven languages (from
// memory, unverified).
var carried = regexp.MustCompile(`(?i)forward|^(?:[bc] ?/ ?[df])\b|übertrag|uebertrag|\breport|overgebracht|transport|över(?:fört|föring)|suma (?:y sigue|anterior)|riport`)

// totalsOnTop finds the rows of totals that stand above the rows that they sum up: where the first
// of a sheet does, and others right below their sub-headings.
func (t *table) totalsOnTop() {
	rows := t.info.TotalRows[t.totals:]
	for i := range rows {
		x := &rows[i]
		if rows[0].Before > rows[0].Since[2] || x.Before != x.Since[2] && x.Before != x.Since[1] || x.Before == t.info.handed {
			continue
		}
		x.Below = [2]int{t.info.handed, t.info.handed}
		if i+1 < len(rows) {
			x.Below[0] = rows[i+1].Before
		}
	}
}

// mostHeads is how often other headings may start in a sheet.
const mostHeads = 500
