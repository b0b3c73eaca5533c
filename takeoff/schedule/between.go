package schedule

import (
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

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
	"flange flanges flanged joint joints jointed joining cleat cleats drive slip tdf tdc mez gasket gaskets sealed sealant seal sealing supports hangers brackets fixings pressure class low medium high gauge " +
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
