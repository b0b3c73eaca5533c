package schedule

import (
	"regexp"
	"slices"
	"strings"
	"unicode"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// endsHere reports that no piece stands below, or none before headings start anew: what stands
// here can't be a sub-heading.
func (t *table) endsHere() bool {
	if t.Below == nil {
		return false
	}
	for _, cells := range t.Below(columns.MostBelow) {
		filled := celltext.Filled(cells)
		if len(filled) < 2 {
			continue
		}
		if t.Repeats(cells) {
			return true
		}
		if _, other := t.OtherHeads(cells); other {
			return true
		}
		if t.mayBePiece(cells, filled) {
			return false
		}
	}
	return true
}

// mayBePiece reports a row of two cells and more that may be a piece: it begins with no word for a
// total, and has figures, or a size or a kind.
func (t *table) mayBePiece(cells []string, filled []int) bool {
	first := celltext.Trim(cells[filled[0]])
	if t.Lex.Total(first) || wording.Money(first) {
		return false
	}
	if len(filled) == 2 {
		return slices.ContainsFunc(filled, func(i int) bool {
			text := celltext.Trim(cells[i])
			return celltext.IsSize(text) && !celltext.IsFigure(text) || t.Kinds().NamesKind(text)
		})
	}
	return slices.ContainsFunc(filled, func(i int) bool { return celltext.HasDigit(cells[i]) })
}

// general begins a line that is of all pieces, in seven languages (from memory, unverified).
var general = []string{"all", "alle", "allen", "aller", "alla", "samtliche", "samtliga", "toutes", "tous", "tout", "todos", "todas", "todo", "tutti", "tutte", "ductwork", "kanale", "kanaler", "kanalen", "luftkanale", "gaines", "conductos", "canali", "condotte", "ducts"}

// isPlain reports a text that names no piece, and bears on no row. Prose that names neither ducts
// nor a system or a level is plain if no list of words says that it bears on rows: it is told, to be
// read.
func (t *table) isPlain(text string) bool {
	if len(text) > mostFoot {
		return false
	}
	words, kinds := headings.Tokens(text), t.Kinds()
	isGeneral := func(w string) bool { return slices.Contains(general, w) }
	places, _ := t.Lex.Place(text)
	prose := len(words) > 2 && !celltext.HasDigit(text) && len(places) == 0 && !slices.ContainsFunc(words, isGeneral) && !kinds.NamesFitting(text) && !slices.ContainsFunc(words, kinds.NamesKind)
	sure, maybe := t.bearsOn(text)
	if sure || maybe && !prose || wording.Loose(text) {
		return false
	}
	if len(words) > 1 && isGeneral(words[0]) || len(words) > 3 && !celltext.HasDigit(text) && slices.ContainsFunc(words, isGeneral) {
		return true
	}
	if !prose && !wording.Topic(t.Lex, text) || kinds.KindIn(text) != fittings.NoKind || wording.ShapeName(t.Lex, text) {
		return false
	}
	return !kinds.NamesFitting(text) || len(words) > 3 && !celltext.HasDigit(text) && t.Lex.Harmless(words)
}

// bearsOn reports a text that may say that rows don't count, stand for several, or are in another
// unit, or that holds a size. What others make bears on nothing, if it is no duct: fire dampers by
// others.
func (t *table) bearsOn(text string) (sure, maybe bool) {
	text = wording.WithoutLegal(text)
	words := headings.Tokens(text)
	if byOthers.MatchString(text) && len(words) < 8 && t.Lex.NamesThing(words) && !t.Kinds().NamesFitting(text) && !slices.ContainsFunc(words, func(w string) bool {
		return slices.Contains(general, w) || t.Kinds().NamesKind(w) || t.Kinds().NamesKind(strings.TrimSuffix(w, "s"))
	}) {
		text = byOthers.ReplaceAllString(text, "")
	}
	sure, maybe = wording.Bears(t.Lex, text)
	return sure || t.doubtful(text) || wording.Running.MatchString(text) || wording.MoreRows.MatchString(text) || wording.StrikesItems.MatchString(text), maybe
}

// byOthers says that others make something (from memory, unverified).
var byOthers = regexp.MustCompile(`(?i)\s*\b(?:by others|bauseits|durch andere|par d'autres|door derden|av annan|av andra|por otros|da altri)\b`)

// footer passes over a lone text below the last piece that is no piece and bears on none: all
// parts galvanised, NOT FOR RESALE.
func (t *table) footer(number int, cells []string, text string) bool {
	if t.feet++; t.feet > mostFeet || t.info.handed == 0 {
		return false
	}
	if _, parted := t.partedBy(text); parted || !t.isPlain(text) || !t.endsHere() {
		return false
	}
	t.asFooter(number, cells, text)
	return true
}

// mostFoot is how long such a line is at most, bytes.
const mostFoot = 400

// mostFeet is how many lines are looked at that may stand below the last piece.
const mostFeet = 1000

// asFooter takes a row for a remark, below which may stand more than remarks.
func (t *table) asFooter(number int, cells []string, text string) {
	notes := t.InNotes
	t.remark(number, cells, text)
	t.InNotes = notes
}

// isSigned reports a row of a few texts that are no figures of a piece, as who made the list and
// when: aufgestellt: 14.03.2025 | i.A. Brenner.
func (t *table) isSigned(cells []string, filled []int, r *takeoff.Row) bool {
	if !t.Loud || t.isSized(r) || len(filled) < 2 || len(filled) > 6 || t.info.handed == 0 || !strings.ContainsFunc(cells[filled[0]], unicode.IsLetter) {
		return false
	}
	return !slices.ContainsFunc(filled, func(i int) bool {
		text := celltext.Trim(cells[i])
		return !isDate(text) && (!strings.ContainsFunc(text, unicode.IsLetter) || celltext.IsSize(text) || celltext.Digit(text[0]))
	})
}

// isSized reports a row with a size: most pieces are told by that.
func (t *table) isSized(r *takeoff.Row) bool {
	sized := func(p items.SizeCell) bool { return celltext.HasDigit(p.Cell) && !isDate(p.Cell) }
	return slices.ContainsFunc(t.Pending, sized) || r.Has(takeoff.DimColumn(fittings.Width)) || r.Has(takeoff.DimColumn(fittings.Diameter)) || r.Has(takeoff.DimColumn(fittings.Length))
}

// isDate reports a day: 14.03.2025, 2025-03-14.
func isDate(text string) bool { return dated.MatchString(text) }

var dated = regexp.MustCompile(`^(?:\d{1,2}[./-]\d{1,2}[./-](?:\d{2}|\d{4})?|\d{4}-\d{2}-\d{2})(?:,? \d{1,2}[:.]\d{2})?$`)

// signed passes over such a row below the last piece.
func (t *table) signed(number int, cells []string, filled []int) bool {
	if t.feet++; t.feet > mostFeet {
		return false
	}
	whole := strings.Join(celltext.Texts(cells), " ")
	parted := celltext.HasDigit(whole) || !t.isPlain(whole) // else a sentence that commas have parted
	for _, i := range filled {
		if text := celltext.Trim(cells[i]); parted && !isDate(text) && !t.isPlain(text) {
			return false
		}
	}
	if !t.endsHere() {
		return false
	}
	t.asFooter(number, cells, strings.Join(celltext.Texts(cells), " "))
	return true
}

// pageSign is the number of a page without a word: 1/2, - 2 -.
var pageSign = regexp.MustCompile(`^(?:[-–(]\s*\d{1,3}\s*[-–)]|\d{1,2}\s*/\s*\d{1,2})$`)

// isPageSign reports a row of nothing else.
func isPageSign(cells []string, filled []int) bool {
	return len(filled) == 1 && len(cells[filled[0]]) < 12 && pageSign.MatchString(celltext.Trim(cells[filled[0]]))
}

// isMoney reports a row of a sum of money or a weight, with nothing that may be of a piece: Net |
// 368.50. What stands in columns that are used is no more than its name, or a count of one.
func (t *table) isMoney(cells []string, filled []int, r *takeoff.Row) bool {
	if len(filled) > 6 || t.isSized(r) {
		return false
	}
	named, bare := false, len(filled) == 1
	for _, i := range filled {
		text := celltext.Trim(cells[i])
		used := i < len(t.Specs) && t.Specs[i].Used
		switch {
		case wording.Money(text):
			named = true
		case !wording.Amount(text):
			return false
		case !used:
		case unicode.IsDigit([]rune(text)[len([]rune(text))-1]) && !(text == "1" && t.Specs[i].To() == takeoff.Quantity):
			return false
		}
		bare = bare && !used && i < len(t.Specs) && wording.Money(t.Specs[i].Typed)
	}
	return named && (len(filled) > 1 || strings.Contains(cells[filled[0]], "%")) || bare // VAT 20%
}

// money passes over such a row.
func (t *table) money(number int, cells []string, filled []int) {
	t.Told.Add("lines of prices or weights passed over, the first '%s'", celltext.Shorten(strings.Join(celltext.Texts(cells), " ")), number)
	t.Look.Class(told.RemarkRow, number, cells)
}

// itemNumber is the number of an item of a bill: 1, 1.1, 01.02.
var itemNumber = regexp.MustCompile(`^\d{1,3}(?:\.\d{1,4})*\.?$`)

// isNumberedHead reports a row of the number of an item and a text.
func (t *table) isNumberedHead(cells []string, filled []int) bool {
	return len(filled) == 2 && itemNumber.MatchString(celltext.Trim(cells[filled[0]])) && len(cells[filled[1]]) <= celltext.MaxWord && strings.ContainsFunc(cells[filled[1]], unicode.IsLetter)
}

// numberedHead takes such a row for the heading of the items below it, whose numbers go on from
// its own: 1.1 above 1.1.1.
func (t *table) numberedHead(number int, cells []string, filled []int) bool {
	if !t.isNumberedHead(cells, filled) || t.Below == nil {
		return false
	}
	own := strings.TrimSuffix(celltext.Trim(cells[filled[0]]), ".") + "."
	below := t.Below(mostBetween)
	at := slices.IndexFunc(below, func(c []string) bool { return len(celltext.Filled(c)) > 0 })
	if at < 0 || !strings.HasPrefix(celltext.At(below[at], filled[0]), own) || strings.TrimSuffix(celltext.At(below[at], filled[0]), ".") == strings.TrimSuffix(own, ".") {
		return false
	}
	text := celltext.Trim(cells[filled[1]])
	places, rest := t.placeOf(text)
	switch {
	case t.saysOfRows(number, cells, text):
	case len(places) == 1 && places[0] == "system":
		t.subheading(number, cells, takeoff.System, rest)
	case len(places) == 1 && places[0] == "level":
		t.subheading(number, cells, takeoff.Level, rest)
	default:
		t.group(number, cells, text)
	}
	return true
}
