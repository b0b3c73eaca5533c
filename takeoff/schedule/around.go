package schedule

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/told"
)

// holdsTotal reports a row with a word for a total in a cell of its own, behind the name of
// a system, and no figure but an area or a quantity: EF-1 | Total | 9.60.
func (t *table) holdsTotal(cells []string, filled []int, r *takeoff.Row) bool {
	named := false
	for _, i := range filled {
		cell := celltext.Trim(cells[i])
		switch {
		case len(cell) <= celltext.MaxWord && t.Lex.TotalName(cell):
			named = true
		case i >= len(t.Specs) || !t.Specs[i].Used:
			return false
		default:
			switch t.Specs[i].To() {
			case takeoff.System, takeoff.Level, takeoff.StatedArea, takeoff.DimColumn(fittings.GivenArea), takeoff.Quantity:
			default:
				return false
			}
		}
	}
	return named && r.Text[takeoff.Kind] == ""
}

// forward is the foot or the head of a page that carries a sum on.
var forward = regexp.MustCompile(`(?i)^[cb]/(?:f|fwd|forward|d|o)\.?$`)

// isForward reports such a row without sizes: c/f | 4500.
func (t *table) isForward(cells []string, filled []int, r *takeoff.Row) bool {
	at := slices.IndexFunc(filled, func(i int) bool { return len(cells[i]) < 12 && forward.MatchString(celltext.Trim(cells[i])) })
	return at >= 0 && !slices.ContainsFunc(filled[at+1:], func(i int) bool { return strings.ContainsFunc(cells[i], unicode.IsLetter) }) && !r.Has(takeoff.DimColumn(fittings.Width)) && !r.Has(takeoff.DimColumn(fittings.Diameter))
}

// lengthOnly reports a row with nothing but a length, or one and a quantity.
func (t *table) lengthOnly(cells []string, filled []int) bool {
	long := false
	for _, i := range filled {
		if i >= len(t.Specs) || !t.Specs[i].Used || t.Specs[i].Verdict != headings.Known || !celltext.IsFigure(celltext.Trim(cells[i])) {
			return false
		}
		c := t.Specs[i].To()
		if long = long || c == takeoff.DimColumn(fittings.Length); c != takeoff.DimColumn(fittings.Length) && c != takeoff.Quantity {
			return false
		}
	}
	return long
}

// bareLength refuses such a row: it may be a sum, or go on with the piece above.
func (t *table) bareLength(r *takeoff.Row) {
	text := r.Text[takeoff.DimColumn(fittings.Length)]
	r.Refuse(takeoff.Kind, t.Place.Fault(takeoff.Kind.Heading(), text, "a piece, or a total with its name",
		fmt.Sprintf("'%s' stands in a row without a kind and a size; write Total before it if it sums up rows, or fill in the piece", text)))
}

// headedArea reports a sub-heading with the area of the rows below it: Level 1 | 8.4.
func (t *table) headedArea(cells []string, filled []int) bool {
	if len(filled) != 2 {
		return false
	}
	at := filled[1]
	if at >= len(t.Specs) || !t.Specs[at].Used || t.Specs[at].To() != takeoff.StatedArea && t.Specs[at].To() != takeoff.DimColumn(fittings.GivenArea) || !celltext.IsFigure(celltext.Trim(cells[at])) {
		return false
	}
	text := celltext.Trim(cells[filled[0]])
	if len(text) > celltext.MaxWord {
		return false
	}
	places, _ := t.Lex.Place(text)
	return len(places) == 1 && (places[0] == "system" || places[0] == "level")
}

// underArea takes a sub-heading with the area of the rows below it.
func (t *table) underArea(number int, cells []string, filled []int) {
	text := celltext.Trim(cells[filled[0]])
	places, rest := t.Lex.Place(text)
	c := takeoff.System
	if places[0] == "level" {
		c = takeoff.Level
	}
	t.subheading(number, cells, c, rest)
	t.Told.Add("areas beside sub-headings, not used, the first '%s'", celltext.Shorten(celltext.Trim(cells[filled[1]])), number)
}

// numberedNote is a line of notes that are numbered: 1) All sizes are internal.
var numberedNote = regexp.MustCompile(`^\(?\d{1,2}[.)]\)?\s*\pL[\pL'’]*(?:[\s,]+[^\s]+){2,}`)

// isNumbered reports a numbered note below the rows.
func (t *table) isNumbered(text string) bool {
	return numberedNote.MatchString(text) && !t.Lex.StruckAnywhere(text) && !t.PiecesBelow()
}

// sumsUp reports a sheet that sums up those before it: its name or a title says so, and
// nothing says what kind its pieces are of, how long or how many each is.
func (t *table) sumsUp() bool {
	if t.Place.Sheet == "" || t.info.handed == 0 || t.ByMap.Fixes(t.Place.Sheet) || !t.NoKind || t.KindTold != "" || t.Maps(takeoff.Quantity) {
		return false
	}
	if slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return s.Used && s.Verdict == headings.Known && s.To() == takeoff.DimColumn(fittings.Length) && t.Lex.Read(s.Typed).Verdict != headings.Asks // Total length
	}) {
		return false
	}
	titles := []string{t.Place.Sheet}
	for _, x := range t.Search.Texts {
		titles = append(titles, x.Text)
	}
	return told.SumsUp(titles)
}

// passSum passes over a row of a sheet that sums up others.
func (t *table) passSum(number int, cells []string) {
	t.Told.Add("rows of a list that seems to sum up other sheets and names no kinds of pieces, passed over", "", number)
	t.Look.Class(told.RemarkRow, number, cells)
}

// ofTwo refuses a row of two tables that stand side by side, up to headings that start anew.
func (t *table) ofTwo(number int, cells []string, each func(*takeoff.Row) error) error {
	if len(celltext.Filled(cells)) == 0 || t.headingsAgain(number, cells) {
		return nil
	}
	r := &t.row
	r.Reset(t.Place)
	r.Most = t.most
	t.RefuseBoth(r)
	t.Look.Class(told.PieceRow, number, cells)
	t.count(1)
	return each(r)
}

// partedBy finds the sign that parts a text into as many cells as there are headings.
func (t *table) partedBy(text string) (sign string, ok bool) {
	for _, sign := range [...]string{";", ",", "|", "\t"} {
		if n := strings.Count(text, sign); n > 2 && n+1 >= len(t.Specs)-1 && n < len(t.Specs)+2 {
			return strings.Replace(sign, "\t", "tab", 1), true
		}
	}
	return "", false
}
