package schedule

import (
	"fmt"
	"regexp"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// doubts is what the table keeps to find out what may not be what it seems.
type doubts struct {
	line          *unitLine  // the last one
	bare          []bareSize // of the row
	shape         shapeTold
	extra         spec       // of the column behind the last heading
	inNotes       bool       // only notes since the last row of pieces
	rowUnit       bool       // a size of the row states its own unit
	newUnit       bool       // the first of its column did
	counted       bool       // a column says how many there are
	tallies       quantified // of its cells
	strays        []string   // cells of the row without headings
	besides       bool       // another table beside this one was told of
	marked        Marks
	commas        bool             // they are parted by commas, and so may decimals be
	uneven        bool             // a row has as many cells as there are headings
	beside        []int            // columns in metres before text
	long, longAt  int              // cells of the first row that has more, and its number
	watched       int              // rows in which columns that aren't used were looked at
	assumed       bool             // nobody stated the unit of cross-sections
	noKind        bool             // no column says the kind
	kindTold      string           // so this is it
	kindSays      string           // as a title says
	remarks       map[string]uint8 // what remarks say
	areas         map[string]int   // what names of systems and levels are; of rows read one by one
	chunked       bool             // it reads a chunk
	looked        int              // cells that were looked at whether they are headings
	lones         int              // rows of one cell
	inSummary     bool             // they sum up the pieces
	moved         bool             // a size of the row is in another column than its cell
	seldom        bool             // there are quantities in metres, or sizes over several cells
	metred        bool             // the quantity of the row is its length
	unitsAt       int              // column of the units of quantities; 0: none
	straightSided string           // a shape that isn't circular
	orDiameter    bool             // a column holds widths or diameters
	titled        bool             // the last row was the title of a table
}

// settle completes a row whose cells have been read.
func (t *table) settle(r *takeoff.Row, broken string) {
	if t.inNotes = false; t.inSummary {
		r.Faults = append(r.Faults, t.place.Fault("", "", "a row of a piece",
			"this row stands below a line that begins a summary, and may sum up pieces above; take it out, or put headings above it if it is a piece of its own"))
	}
	beside := len(t.pending) > 0 && t.pending[0].spec == t.inKind
	if len(t.pending) > 0 {
		t.takeSizes(r)
	}
	if t.turn.angle != "" {
		t.takeAngle(r)
	}
	if t.noKind {
		t.nameKind(r)
	}
	t.sizesByShape(r)
	if t.metred {
		t.doubtMetred(r)
	}
	if broken != "" {
		r.Faults = append(r.Faults, t.place.Fault("", "", "quotes in pairs", broken))
	}
	if len(t.bare) > 0 || len(t.pending) > 0 || t.rowUnit {
		t.doubtBare(r)
	}
	if t.shape.told || r.Text[takeoff.Note] != "" {
		t.doubtShape(r)
	}
	t.doubtRow(r)
	if t.counted && !t.loud {
		t.tallies.add(r)
	}
	t.watched++
	r.Assumed = (t.assumed || beside) && !t.unitInCells(r)
	t.over.apply(r)
}

// count counts rows that are handed on.
func (t *table) count(rows int) {
	t.info.RowsRead += rows
	t.info.handed += rows
}

// doubtRow refuses a row that may not be what it seems: one struck out, a total with
// the sizes of a piece, or several pieces under one tag.
func (t *table) doubtRow(r *takeoff.Row) {
	if kind := r.Text[takeoff.Kind]; kind != "" && doubtfulKind(kind) {
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Kind.Heading(), shorten(kind), "a kind of piece",
			fmt.Sprintf("'%s' may be struck out or in doubt; write the kind by itself, or take the row out", shorten(kind))))
	}
	t.doubtCells(r)
	if t.loud {
		return
	}
	note, p := r.Text[takeoff.Note], r.Text[takeoff.PlaceOnSite]
	if note != "" || r.Has(throat) || !t.chunked || mayCount(p) {
		t.doubtWords(r, note, p)
	}
	tag := r.Text[takeoff.Tag]
	if note == "" && plainTag(tag) {
		return // most rows
	}
	t.doubtName(r, tag, note)
}

// doubtName refuses a row whose tag or remark says that it doesn't count, is a total or
// stands for several.
func (t *table) doubtName(r *takeoff.Row, tag, note string) {
	switch {
	case tag != "" && (strings.HasPrefix(tag, "~~") || t.lex.StruckWithin(tag) || t.lex.Struck(tag) || t.lex.StruckEnd(tag)):
		t.strike(r, takeoff.Tag.Heading(), tag)
	case note != "" && t.lex.Struck(note):
		t.strike(r, takeoff.Note.Heading(), note)
	case tag != "" && (t.lex.TotalName(tag) || len(tag) <= maxTitle && !strings.ContainsAny(tag[:1], "@=+-") && t.lex.Total(tag)), note != "" && tag == "" && t.lex.Total(note):
		word := tag
		if tag == "" {
			word = note
		}
		r.Faults = append(r.Faults, t.place.Fault("", shorten(word), "a piece, or a total without kind and size",
			fmt.Sprintf("'%s' seems to head a total, and the row has the kind and the size of a piece; leave them empty, or take the row out", shorten(word))))
	case note != "" && t.saysOf(note)&ofCounts != 0:
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Note.Heading(), shorten(note), "how many under quantity",
			fmt.Sprintf("'%s' seems to change how many there are; write how many under quantity, or reword it", shorten(note))))
	case note != "" && r.Number[takeoff.Quantity] <= 1 && t.saysOf(note)&ofMany != 0:
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Note.Heading(), shorten(note), "how many under quantity",
			fmt.Sprintf("'%s' seems to say how many there are, and the row counts for one; write how many under quantity, or reword it", shorten(note))))
	case r.Number[takeoff.Quantity] <= 1 && !plainTag(tag) && (severalTags(tag) || tag != "" && r.Text[takeoff.Quantity] == "" && rangeOfNumbers(tag)):
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Tag.Heading(), shorten(tag), "one piece, or how many under quantity",
			fmt.Sprintf("'%s' seems to name several pieces, and the row counts for one; write how many under quantity, or a row for each", shorten(tag))))
	}
}

// doubtWords looks at what else the words of a row say, and at a throat that is no radius.
func (t *table) doubtWords(r *takeoff.Row, note, p string) {
	if v := r.Number[throat]; v > 0 && v < leastThroat && r.Has(throat) {
		r.Faults = append(r.Faults, t.place.Fault(throat.Heading(), r.Text[throat], "a radius in mm",
			fmt.Sprintf("a throat of %.4g mm is hardly made: if '%s' is a part of the width, write the radius in mm, else 0", v*1000, r.Text[throat])))
	}
	if note != "" && t.saysOf(note)&ofSizes != 0 {
		t.told.add("remarks with sizes, units or lengths, which aren't read, the first '%s'", shorten(note), r.At.Row)
	}
	if !t.chunked { // a chunk looks at each name once
		t.doubtAreas(r)
	}
	if mayCount(p) && r.Number[takeoff.Quantity] <= 1 && manyAt.MatchString(p) {
		r.Faults = append(r.Faults, t.place.Fault(takeoff.PlaceOnSite.Heading(), shorten(p), "how many under quantity",
			fmt.Sprintf("'%s' seems to say how many there are, and the row counts for one; write how many under quantity, or reword it", shorten(p))))
	}
}

// throat is the column of inside radii.
var throat = takeoff.DimColumn(fittings.Throat)

// What a remark may say.
const (
	ofSizes  = 1 << iota // sizes, units or lengths
	ofCounts             // that there are others than the row says
	ofMany               // how many there are
)

// saysOf finds out what a remark says; most stand on many rows.
func (t *table) saysOf(note string) (of uint8) {
	if len(note) > maxRemark {
		return 0
	}
	of, met := t.remarks[note]
	if met {
		return of
	}
	if (strings.ContainsAny(note, "0123456789") || strings.Contains(note, " in ")) && figured.MatchString(note) {
		of |= ofSizes
	}
	if countNoted.MatchString(note) {
		of |= ofCounts
	}
	if manyNoted.MatchString(note) {
		of |= ofMany
	}
	if t.remarks == nil || len(t.remarks) > mostMet {
		t.remarks = map[string]uint8{}
	}
	t.remarks[strings.Clone(note)] = of
	return of
}

// maxRemark is the length of a remark that is looked at for what it says, bytes.
const maxRemark = 200

// leastThroat is a throat that hardly any bend has but one of 0, m. Common practice, no
// source.
const leastThroat = 0.01

// figured is a remark on sizes (from memory, unverified).
var figured = regexp.MustCompile(`(?i)\d{2,4}\s*[x×]\s*\d{2,4}|[øØ⌀]\s*\d{2,4}|\b(?:in (?:cm|inch(?:es)?|feet)|actual|lining|lined|\d+\s*(?:mm|cm|m) (?:long|wide|high)|\d{2,4} (?:long|wide|high)|length|sided)\b`)

// What plainTag thinks of a byte.
const (
	otherByte = iota // no part of a plain name
	figureByte
	letterByte
	dashByte
	crossByte // an x, which may be a sign
)

var tagBytes = func() (of [256]uint8) {
	for c := range of {
		switch {
		case digit(byte(c)), c == '_':
			of[c] = figureByte
		case c|0x20 == 'x':
			of[c] = crossByte
		case c|0x20 >= 'a' && c|0x20 <= 'z':
			of[c] = letterByte
		case c == '-', c == '.':
			of[c] = dashByte
		}
	}
	return of
}()

// plainTag reports a tag of letters, figures and dashes that ends in a figure and has
// none but figures behind dashes: it is nothing but a name.
func plainTag(tag string) bool {
	before, letters, dashes := uint8(figureByte), tag == "", false
	for i := range len(tag) {
		b := tagBytes[tag[i]]
		if b == otherByte || b >= letterByte && b != dashByte && before == dashByte || b == dashByte && before == dashByte || b == crossByte && before == figureByte && i > 0 {
			return false
		}
		before, letters, dashes = b, letters || b == letterByte || b == crossByte, dashes || b == dashByte
	}
	return tag == "" || digit(tag[len(tag)-1]) && (letters || !dashes)
}

// doubtfulKind reports a kind with signs around it: ~~straight~~, -straight, straight?
func doubtfulKind(kind string) bool {
	switch kind[0] {
	case '~', '-', '/', '(', '[', '?', '*':
		return true
	}
	return kind[len(kind)-1] == '?'
}

// manyNoted is a remark that says how many: 4 off, x4 typical.
var manyNoted = regexp.MustCompile(`(?i)\btyp(?:ical)?\b.{0,12}\d|\bas (?:above|below|before)\s*[x×]|\bqty\s*[:=]?\s*[2-9]|^(?:two|three|four|five|six|[2-9]) (?:of these|required|reqd|no\b|st\b)|^\(?(?:[x×]\s*[1-9]\d{0,2}\b|[1-9]\d{0,2}\s*(?:off|no\.?s?|nr|x|×|stk|pcs)\b)`)

// countNoted is a remark that changes how many there are, in seven languages (from memory,
// unverified).
var countNoted = regexp.MustCompile(`(?i)\b(?:\d+|one|two) (?:deleted|omitted|entfällt|supprimée?s?|of these deleted)\b|^(?:less|minus|plus) \d|\bqty\b.*(?:should|to be|wrong|now|\d)|\b(?:make|now|need|reduced to|only|nur|noch|solo|endast|nog) \d+ ?(?:off|no|nos|more|stück|stk|stuks|st|uds?|pz|pcs)\b|\breduced to \d|\bneed \d+ more\b|\b\d+ (?:off )?only\b|\bau lieu de \d|\b(?:per|each|every) (?:floor|system|level|storey|riser)\b|\bje (?:etage|geschoss|anlage)\b|\bpar (?:étage|niveau)|\bper (?:verdieping|våning|piano)|\bpor planta\b|\btypical all\b|\bboth risers\b|\bsize tbc\b`)

// doubtCells refuses a row with a cell that is struck out, sums up others, or is a
// count or a length merged over rows below it.
func (t *table) doubtCells(r *takeoff.Row) {
	used := func(i int) *spec {
		if i < len(t.specs) && t.specs[i].used {
			return &t.specs[i]
		}
		return nil
	}
	for _, i := range t.marked.Struck {
		if s := used(i); s != nil {
			r.Faults = append(r.Faults, t.place.Fault(s.Typed, "", "a row that counts",
				fmt.Sprintf("the cell of '%s' is struck out; take the row out, write out under scope, or take the line through it off", s.Typed)))
			break
		}
	}
	for _, i := range t.marked.Sums {
		if s := used(i); s != nil && s.Measure != takeoff.Text {
			r.Faults = append(r.Faults, t.place.Fault(s.Typed, "", "a figure of one row",
				fmt.Sprintf("the cell of '%s' is a subtotal by its formula, and the row has the kind of a piece; leave kind and size empty, or type the value", s.Typed)))
			break
		}
	}
	for _, i := range t.marked.Over {
		if s := used(i); s != nil && s.doubtful() {
			t.doubtMerged(r, s, r.Text[s.to()])
		}
	}
}
