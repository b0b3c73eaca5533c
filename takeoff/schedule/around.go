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
	"blankoff/takeoff/schedule/wording"
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

// mostBetween is how many rows a title block among the rows has, as the head of a printed page.
const mostBetween = 3

// mayBeBlock reports a row of words with a label, as in a title block: Project: School | Sheet
// 2 of 3. None of it says where the rows below belong, in which unit they are, that they don't
// count or stand for several.
func (t *table) mayBeBlock(cells []string, filled []int) bool {
	return t.labelled(cells, filled) && !slices.ContainsFunc(filled, func(i int) bool {
		text := celltext.Trim(cells[i])
		places, _ := t.Lex.Place(text)
		return len(text) > 100 || celltext.IsFigure(text) || celltext.IsSize(text) || t.doubtful(text) || t.Kinds().NamesKind(text) || len(places) > 0 && places[0] != "note" && places[0] != "dimension"
	})
}

// labelled reports a row of words with a label, or with the number of a page.
func (t *table) labelled(cells []string, filled []int) bool {
	return t.Loud && len(filled) <= 6 && slices.ContainsFunc(filled, func(i int) bool {
		return strings.Contains(cells[i], ":") || len(filled) > 1 && wording.NumbersPage(cells[i])
	})
}

// doubtful reports a text that may say that rows don't count, stand for several, or are in
// another unit.
func (t *table) doubtful(text string) bool {
	_, unit := wording.StatedUnit(t.Lex, text)
	return unit || t.Lex.StruckAnywhere(text) || t.Lex.Struck(text) || t.Lex.StruckEnd(text) || wording.Outside.MatchString(text) || wording.OutsideTitle.MatchString(text) ||
		wording.OnSizes.MatchString(text) || wording.Earlier.MatchString(text) || wording.Replaces.MatchString(text) || wording.Ditto.MatchString(text) || wording.Many.MatchString(text) ||
		wording.Several(text) || wording.Multiplies.MatchString(text) || wording.Doubled.MatchString(text) || wording.PerFloor.MatchString(text) || wording.TitleCounts.MatchString(text) || wording.SeveralLevels.MatchString(text) || wording.Changes(t.Lex, text)
}

// headsSoon reports that the same headings stand again within the next few rows, with nothing
// but such rows before them.
func (t *table) headsSoon() bool {
	if t.Below == nil {
		return false
	}
	below := t.Below(mostBetween)
	at := slices.IndexFunc(below, t.Repeats) // few lines have any below, so that is asked first
	return at >= 0 && !slices.ContainsFunc(below[:at], func(cells []string) bool { return !t.mayBeBlock(cells, celltext.Filled(cells)) })
}

// block passes over a row of a title block.
func (t *table) block(number int, cells []string, filled []int) {
	t.Told.Add("rows of a title block above headings that stand again, passed over, the first '%s'", celltext.Shorten(celltext.Trim(cells[filled[0]])), number)
	t.Look.Kept = append(t.Look.Kept, number)
	t.Look.Class(told.RemarkRow, number, cells)
}

// isNumberOnly reports a row with nothing but its number under the heading of tags, as where
// a form is numbered further than it is filled in. Where rows are joined, it may be meant.
func (t *table) isNumberOnly(cells []string, filled []int) bool {
	if len(filled) != 1 || filled[0] >= len(t.Specs) || t.Maps(takeoff.From) || t.Maps(takeoff.Run) {
		return false
	}
	s, text := &t.Specs[filled[0]], celltext.Trim(cells[filled[0]])
	if _, whole := celltext.Count(text); !whole || len(text) > 4 {
		return false
	}
	return s.Used && s.Verdict == headings.Known && s.To() == takeoff.Tag || s.Verdict == headings.Asks && s.Ask.Items()
}

// numberOnly passes over such a row.
func (t *table) numberOnly(number int, cells []string, filled []int) {
	t.Told.Add("rows with nothing but a number passed over, the first '%s'", celltext.Trim(cells[filled[0]]), number)
	t.Look.Class(told.RemarkRow, number, cells)
}

// goesOn are words with which a description goes on in the next row, and that bear on no area
// (from memory, unverified).
var goesOn = strings.Fields("and with c w of in on to as per the both ends all complete incl including galvanised galvanized galv gi steel sheet stainless ss mild aluminium " +
	"flange flanges flanged joint joints jointed joining cleat cleats drive slip tdf tdc gasket gaskets sealed sealant seal sealing supports hangers brackets fixings pressure class low medium high gauge " +
	"a b c d supply extract exhaust fresh air spec specification mit und verzinkt flansch flanschen avec et brides galvanise galvanisee")

// wraps reports a lone text under the heading of kinds, right below a piece, that goes on with
// its description in small letters: galvanised with flanges.
func (t *table) wraps(at int, text string) bool {
	if at == 0 || at != t.KindColumn() || t.KindAbove == "" || text[0] < 'a' || text[0] > 'z' || len(text) > 100 {
		return false
	}
	return !slices.ContainsFunc(headings.Tokens(text), func(w string) bool { return !slices.Contains(goesOn, w) }) && !t.doubtful(text)
}

// wrapped passes over such a row.
func (t *table) wrapped(number int, cells []string, text string) {
	t.Told.Add("rows that go on with the description above them passed over, the first '%s'", celltext.Shorten(text), number)
	t.Look.Kept = append(t.Look.Kept, number)
	t.Look.Class(told.RemarkRow, number, cells)
}

// mostBelowEnd is how many rows the name below the end of a letter may stand behind it.
const mostBelowEnd = 3

// closed passes over the words that end a letter, below the last piece, and the name of who
// wrote it: Kind regards.
func (t *table) closed(number int, cells []string, text string) bool {
	name := t.closedAt > 0 && number-t.closedAt <= mostBelowEnd && wording.Signs(text) && !t.doubtful(text) && !t.Kinds().NamesGroup(text) && !t.Lex.Apart(text)
	if !name && !wording.Closes(text) || t.PiecesBelow() {
		return false
	}
	t.closedAt = number
	notes := t.InNotes
	t.remark(number, cells, text)
	t.InNotes = notes // what stands below may be more than a name
	return true
}
