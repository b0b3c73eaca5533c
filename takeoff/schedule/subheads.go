package schedule

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"blankoff/takeoff"
)

// subheads are the sub-headings that hold for the rows below them.
type subheads struct {
	text  [2]string // system, level
	outer int       // which of the two was met first; 0 none, else its place + 1
	rows  [2]int
	sheet [2]string // what the name of the sheet gives, where no sub-heading does
	named [2]int    // rows that take it
	met   bool
	doubt doubt // of the rows below
}

// doubt is why rows can't be used because of a line above them.
type doubt struct{ said, expected, message string }

var subColumns = [2]takeoff.Column{takeoff.System, takeoff.Level}

// apply gives a row what the sub-headings above it say, where it says nothing
// itself.
func (o *subheads) apply(r *takeoff.Row) {
	if d := o.doubt; d.said != "" {
		r.Faults = append(r.Faults, r.At.Fault("", d.said, d.expected, d.message))
	}
	if !o.met {
		return
	}
	for i, c := range subColumns {
		switch {
		case r.Text[c] != "":
		case o.text[i] != "":
			r.Text[c] = o.text[i]
			o.rows[i]++
		case o.sheet[i] != "":
			r.Text[c] = o.sheet[i]
			o.named[i]++
		}
	}
}

// subheading sets the system or level of the rows below. Where both are used,
// the one that was met first is the outer one: a new one ends the inner.
func (t *table) subheading(number int, cells []string, c takeoff.Column, text string) {
	o := &t.over
	o.doubt, t.inSummary = doubt{}, false
	t.doubtSubheading(number, text)
	t.doubtMany(number, text)
	if whole := strings.Join(filledText(cells), " "); t.over.doubt.said == "" && (severalLevels.MatchString(whole) || outside.MatchString(whole) || ditto.MatchString(whole)) {
		t.doubtRows(number, whole, "rows that count once", "may say that the rows below stand for several, or don't count; write how many under quantity, and take it out of the line")
	}
	if t.noKind && t.kindTold != "" && t.namesGroup(text) { // Supply bends
		t.kindTold, t.kindSays = "", ""
	}
	i := 0
	if c == takeoff.Level {
		i = 1
	}
	if o.outer == 0 {
		o.outer = i + 1
	}
	if o.outer == i+1 {
		o.text[1-i] = ""
	}
	o.met, o.text[i] = true, text
	t.told.add("sub-headings that give the "+c.Heading()+" of the rows below", "", number)
	t.look.class(SubHeadingRow, number, cells)
	t.since[1] = t.info.handed
}

// otherUnits doubts rows below a line that names another unit than the headings.
func otherUnits(said string) doubt {
	return doubt{said, "a row in the units of the headings",
		fmt.Sprintf("'%s' above it names another unit than the headings, so the row isn't used; write the unit in the headings, or behind each size", said)}
}

// ditto begins a line that stands for the rows before it (from memory, unverified).
var ditto = regexp.MustCompile(`(?i)\bditto\b|^\s*(?:do\.|dito|idem|same as|as above|wie vor|wie oben)\b`)

// severalLevels is a line of several levels or systems.
var severalLevels = regexp.MustCompile(`(?i)\b[a-z]{1,4}-?\d+\s+(?:and|und|et|en|och|&)\s+[a-z]{1,4}-?\d+\b|\blevels?:?\s*\d+\s+and\s+\d+|\b[a-z]{1,4}-?\d+\s+(?:to|bis|t/m|till|thru)\s+[a-z]{1,4}-?\d+\b|^[a-z]\d+\s*[-–]\s*[a-z]\d+$|^[a-z]\d+(?:\s*,\s*[a-z]\d+)+$|\ball (?:floors|levels)\b|\d(?:st|nd|rd|th)\s*(?:to|-)\s*\d|\b(?:levels?|floors?|geschosse?|etagen?|niveaux?|étages?|verdieping(?:en)?|plan|plantas?|piani|piano|ahus?|systems?)\s*\d+\w*\s*(?:to|bis|t/m|till|à|al?|-|–|&|\+|and|und|et|en|och|y|e)\s*(?:levels?|floors?|ahus?|systems?)?\s*\d+`)

// numberList is figures with signs between them.
var numberList = regexp.MustCompile(`^\s*\d{1,2}\s*(?:-|–|,|&|\+|to|bis|and|und|et)\s*\d{1,2}(?:\s*[,&]\s*\d{1,2})*\s*$`)

// many says that what stands below it is there several times: 3 off, x4, typical.
var many = regexp.MustCompile(`(?i)\balso (?:level|floor)|\(\s*(?:n\.?\s*)?\d+\s*(?:off|no\.?|stück|stk|st\.?|plantas?|piani|étages?|etagen|floors?|verdiepingen|våningar)\b|\bbaugleich|\bidenti(?:cal|sch|ques?|che)\b|\blika\)|\biguales\b|\buguali\b|\b\d+\s*(?:off|nos?\b|stk|times|mal|fois|volte|veces|keer|gånger)|(?:^|[\s(,])[x×]\s*\d+\b|\b\d+\s*[x×](?:$|[\s),])|\btypical\b|\bmultipl|\bas (?:above|level|floor|system|per|unit)\b|\brepeat\b|\bwie (?:oben|geschoss|ebene|anlage|eg|og)|\bwiederhol|\bcomme (?:niveau|ci-dessus|étage)|\brépét|\bidem\b|\bsom (?:plan|våning)|\bals (?:verdieping|boven)`)

// doubtMany finds fault with a sub-heading that says how many times its rows are there.
func (t *table) doubtMany(number int, text string) {
	if !many.MatchString(text) || isSize(text) { // 600 x 400
		return
	}
	said := shorten(text)
	message := fmt.Sprintf("'%s' seems to say that the rows below stand for several; write how many under quantity, and take it out of the line", said)
	p := takeoff.Place{File: t.place.File, Sheet: t.place.Sheet, Row: number}
	t.info.Faults = append(t.info.Faults, p.Fault("", said, "how many under quantity", message))
	t.over.doubt = doubt{said, "how many under quantity", message}
}

// doubtTitle finds fault with a line above the headings that multiplies what stands
// below it.
func (t *table) doubtTitle() {
	texts := t.search.texts
	if t.place.Sheet != "" {
		texts = append(slices.Clip(texts), titleText{row: t.place.Row, text: t.place.Sheet})
	}
	for _, x := range texts {
		if sheet := x.text == t.place.Sheet; !sheet && (t.lex.StruckAnywhere(x.text) || t.lex.Struck(x.text) || outsideTitle.MatchString(x.text) || onSizes.MatchString(x.text)) {
			p, said := t.place, shorten(x.text)
			p.Row = x.row
			t.info.Faults = append(t.info.Faults, p.Fault("", said, "a title that says nothing of what counts",
				fmt.Sprintf("'%s' above the headings may say that the rows don't count, or what the sizes are of; say it in columns, or reword it", said)))
		}
		if multiplies.MatchString(x.text) || (many.MatchString(x.text) || severalLevels.MatchString(x.text) || titleCounts.MatchString(x.text)) && !isSize(x.text) {
			p, said := t.place, shorten(x.text)
			p.Row = x.row
			t.info.Faults = append(t.info.Faults, p.Fault("", said, "how many under quantity",
				fmt.Sprintf("'%s' seems to say that the rows below stand for several; write how many under quantity, and take it out of the line", said)))
		}
	}
}

var multiplies = regexp.MustCompile(`(?i)\bfor one (?:of|riser|floor|level|unit|system|ahu|house|plot)\b|\bone (?:of (?:two|three|four|five|six|seven|eight|\d+)|(?:floor|level|storey|riser|module|unit|system|house|plot|flat) (?:only|of))\b|\b(?:quantities|qty|all) (?:to be|are) (?:doubled|tripled|multiplied)\b|\bper (?:module|bay|building|block|zone|core)\b|\btyp(?:ical)?\b.*\b(?:levels?|floors?|\d+\s*(?:to|-)\s*\d+)|\btyp(?:ical)?\s*[x×]\s*\d|\bmultipl(?:y|ied|iziert|izieren|ier|icar|icare|icera)\b|\bquantit\w*\s*[x×]\s*\d|\bper (?:floor|level|storey|house|flat|plot|riser|unit|system|piano|verdieping|våning)\b|\bje (?:geschoss|etage|anlage)|\bpar (?:étage|niveau)|\bpor planta|\b(?:no\.?|number|anzahl|nombre|número|numero|antal|aantal)\s+(?:of\s+|de\s+|di\s+|van\s+)?(?:sets|floors|levels|systems|units|houses|plots|anlagen|geschosse|étages|plantas|piani|verdiepingen|våningar)\b`)

// titleCounts is a title that says how many: Qty 4, Set of 4, 4 Stück.
var titleCounts = regexp.MustCompile(`(?i)^\s*(?:qty|quantity|sets?|batch|stückzahl|anzahl|aantal|antal|cantidad|quantité|quantità)\b\W*[2-9]\d*\b|\bset of \d|^\s*[2-9]\d*\s*(?:stück|stk|off|sets?)\b`)

// replaces says of rows above that they don't count any more, in seven languages (from
// memory, unverified).
var replaces = regexp.MustCompile(`(?i)\b(?:replac(?:es|ing)|supersed(?:es|ing)|ersetzt|annule et remplace|remplace|vervangt|ersätter|sustituye|sostituisce)\b`)

// perFloor says of quantities that they are of one of several (from memory, unverified).
var perFloor = regexp.MustCompile(`(?i)\b(?:qty|quantit\w*|mengen?|quantités?|aantal\w*|antal|cantidad\w*)\b.*\b(?:per|je|par|por|pro|for one|one of)\b`)

// outsideTitle and onSizes are what titles say that bears on all rows.
var (
	outsideTitle = regexp.MustCompile(`(?i)\b(?:omissions?|existing (?:duct|ductwork|installation)|demolition|to be (?:removed|demolished|stripped)|strip[- ]?out|not in contract|abbruch|rückbau|démolition|sloop|rivning|demolición|demolizione)\b`)
	onSizes      = regexp.MustCompile(`(?i)\b(?:sizes|dimensions|dims)\b.*\b(?:clear|internal|inside|over|including|incl|outside|external)\b.*\b(?:insulation|lining|lined|liner)\b|\b(?:over|including|incl\.?) (?:the )?(?:insulation|lining)\b`)
)

// outside is what says of a line's rows that they may not count, in seven languages (from
// memory, unverified).
var outside = regexp.MustCompile(`(?i)\b(?:omissions?|omits?|deduct(?:ion)?s?|credits|removed|spares?|existing|demolition|demolish(?:ed)?|excluded|exclusions?|alternative|alternate|option(?:al)?|old (?:rev|revision|version)|copy of|already|not in contract|by others|identical|bestand|abbruch|bauseits|existants?|existantes?|démolition|bestaand|sloop|befintlig\w*|rivning|existentes?|demolición|esistent[ei]|demolizione|no ductwork|not ductwork)\b`)

// uncounted deals with a name of rows that says that they may not count, or how many times
// they do. It reports whether it is one.
func (t *table) uncounted(number int, cells []string, text string) bool {
	if many.MatchString(text) || multiplies.MatchString(text) {
		t.over.doubt = doubt{}
		t.doubtMany(number, text)
		if t.over.doubt.said == "" {
			t.doubtRows(number, text, "how many under quantity", "seems to say that the rows below stand for several; write how many under quantity, and take it out of the line")
		}
		t.look.Kept = append(t.look.Kept, number)
		t.look.class(RemarkRow, number, cells)
		return true
	}
	if t.lex.Struck(text) || t.lex.StruckEnd(text) || outside.MatchString(text) {
		t.struckBelow(number, cells, text)
		return true
	}
	return false
}

// doubtRows finds fault with a line, and with the rows below it for its sake.
func (t *table) doubtRows(number int, text, expected, trouble string) {
	said := shorten(text)
	message := fmt.Sprintf("'%s' %s", said, trouble)
	p := takeoff.Place{File: t.place.File, Sheet: t.place.Sheet, Row: number}
	t.info.Faults = append(t.info.Faults, p.Fault("", said, expected, message))
	t.over.doubt = doubt{said, expected, message}
}

// struckLine deals with a line that says the rows below it don't count. It reports
// whether it is one.
func (t *table) struckLine(number int, cells []string, text string) bool {
	if !t.lex.StruckAnywhere(text) && !t.lex.Struck(text) {
		return false
	}
	t.struckBelow(number, cells, text)
	return true
}

// struckBelow doubts the rows below a line.
func (t *table) struckBelow(number int, cells []string, text string) {
	t.doubtRows(number, text, "rows that count", "seems to say that the rows below it don't count; take them out, write out under scope, or reword the line")
	t.look.Kept = append(t.look.Kept, number)
	t.look.class(RemarkRow, number, cells)
}

// pieceAbove finds fault with a row above the headings that looks like a piece.
func (t *table) pieceAbove() {
	if t.search.piece == 0 {
		return
	}
	p := t.place
	p.Row = t.search.piece
	t.search.piece = 0
	t.info.Faults = append(t.info.Faults, p.Fault("", "", "headings above the rows",
		"this row looks like a piece, but stands above the headings, so it isn't read; put the headings above all rows"))
}
