package schedule

import (
	"fmt"
	"regexp"
	"strconv"
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
	commas        bool   // they are parted by commas, and so may decimals be
	uneven        bool   // a row has as many cells as there are headings
	beside        []int  // columns in metres before text
	long, longAt  int    // cells of the first row that has more, and its number
	watched       int    // rows in which columns that aren't used were looked at
	assumed       bool   // nobody stated the unit of cross-sections
	noKind        bool   // no column says the kind
	kindTold      string // so this is it
	kindSays      string // as a title says
	chunked       bool   // it reads a chunk
	inSummary     bool   // they sum up the pieces
	moved         bool   // a size of the row is in another column than its cell
	seldom        bool   // there are quantities in metres, or sizes over several cells
	metred        bool   // the quantity of the row is its length
	unitsAt       int    // column of the units of quantities; 0: none
	straightSided string // a shape that isn't circular
	orDiameter    bool   // a column holds widths or diameters
	titled        bool   // the last row was the title of a table
}

// settle completes a row whose cells have been read.
func (t *table) settle(r *takeoff.Row, broken string) {
	t.inNotes, t.inSummary = false, false
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
	if v := r.Number[throat]; v > 0 && v < leastThroat && r.Has(throat) {
		r.Faults = append(r.Faults, t.place.Fault(throat.Heading(), r.Text[throat], "a radius in mm",
			fmt.Sprintf("a throat of %.4g mm is hardly made: if '%s' is a part of the width, write the radius in mm, else 0", v*1000, r.Text[throat])))
	}
	if note := r.Text[takeoff.Note]; note != "" && (strings.ContainsAny(note, "0123456789") || strings.Contains(note, " in ")) && figured.MatchString(note) {
		t.told.add("remarks with sizes, units or lengths, which aren't read, the first '%s'", shorten(note), r.At.Row)
	}
	if !t.chunked { // a chunk looks at each name once
		t.doubtAreas(r)
	}
	if p := r.Text[takeoff.PlaceOnSite]; mayCount(p) && r.Number[takeoff.Quantity] <= 1 && manyAt.MatchString(p) {
		r.Faults = append(r.Faults, t.place.Fault(takeoff.PlaceOnSite.Heading(), shorten(p), "how many under quantity",
			fmt.Sprintf("'%s' seems to say how many there are, and the row counts for one; write how many under quantity, or reword it", shorten(p))))
	}
	tag, note := r.Text[takeoff.Tag], r.Text[takeoff.Note]
	if note == "" && plainTag(tag) {
		return // most rows
	}
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
	case note != "" && r.Number[takeoff.Quantity] <= 1 && manyNoted.MatchString(note):
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Note.Heading(), shorten(note), "how many under quantity",
			fmt.Sprintf("'%s' seems to say how many there are, and the row counts for one; write how many under quantity, or reword it", shorten(note))))
	case r.Number[takeoff.Quantity] <= 1 && (severalTags(tag) || tag != "" && r.Text[takeoff.Quantity] == "" && rangeOfNumbers(tag)):
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Tag.Heading(), shorten(tag), "one piece, or how many under quantity",
			fmt.Sprintf("'%s' seems to name several pieces, and the row counts for one; write how many under quantity, or a row for each", shorten(tag))))
	}
}

// throat is the column of inside radii.
var throat = takeoff.DimColumn(fittings.Throat)

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

// Tags that name several pieces: D11x2, D40 (x3), 2no, D6/D7, D18+19, D23..25, D16a-c.
var (
	timesInTag = regexp.MustCompile(`(?i)^[a-z]{0,4}[-. ]?\d+[a-z]?[x×*][1-9]\d?$|(?:\s[x×*]\s*|\([x×*]\s*)[1-9]\d?\)?$|^[1-9]\d?\s*[x×*]\s*[a-z]{1,4}[-. ]?\d*$|\s[1-9]\d?[x×]\)?$|[\s(][1-9]\d?\s*(?:off|nos?|nr|stk|pcs)\)?$|\btyp(?:ical)?\.?\)?$|\bpairs?$|\bl\.?h\.?\s*/\s*r\.?h\b`)
	listOfTags = regexp.MustCompile(`(?i)^([a-z]+)(\d+)\s*(?:/|\+|,|&|\.\.\.?|~|\bund\b|\bet\b|\ben\b|\boch\b|\by\b|\bthru\b|\band\b)\s*([a-z]*)(\d+)`)
	lettered   = regexp.MustCompile(`(?i)^[a-z]+\d+a\s*[-–/]\s*[b-z]$`)
)

// rangeOfNumbers reports figures as 40-42, where nothing says how many there are.
func rangeOfNumbers(tag string) bool {
	m := numberRange.FindStringSubmatch(tag)
	if m == nil || len(m[1]) != len(m[2]) {
		return false
	}
	first, _ := strconv.Atoi(m[1])
	last, _ := strconv.Atoi(m[2])
	return last > first && last < first+20
}

var numberRange = regexp.MustCompile(`^\s*(\d{1,4})\s*[-–~]\s*(\d{1,4})\s*$`)

// severalTags reports a tag as A1-A4, A5 to A7 or A20 (x3).
func severalTags(tag string) bool {
	if len(tag) > maxTitle {
		return false
	}
	if m := listOfTags.FindStringSubmatch(tag); m != nil && (m[3] == "" && len(m[4]) == len(m[2]) && m[4] > m[2] && (len(m[2]) > 1 || !strings.Contains(tag, "/")) || // S1/2 is piece 2 of system 1
		strings.EqualFold(m[1], m[3]) && m[2] != m[4]) {
		return true
	}
	if timesInTag.MatchString(tag) || lettered.MatchString(tag) {
		return true
	}
	at := 0
	for at < len(tag) && tag[at] != ' ' && tag[at] != '-' && tag[at] != '(' && tag[at] != '.' && tag[at] < 0x80 {
		at++
	}
	if at == 0 || at == len(tag) {
		return false
	}
	if open := strings.IndexByte(tag[at:], '('); open >= 0 {
		in := strings.ToLower(strings.Trim(tag[at+open:], "() "))
		return len(in) > 1 && (in[0] == 'x' && allDigits(in[1:]) || in[len(in)-1] == 'x' && allDigits(in[:len(in)-1]))
	}
	next := at
	for next < len(tag) && (tag[next] == ' ' || tag[next] == '-' || tag[next] == '.') {
		next++
	}
	if next == len(tag) || digit(tag[next]) {
		return false // most tags
	}
	before, from := cutDigits(strings.TrimRight(tag[:at], ",&"))
	if strings.ContainsAny(tag[at-1:], ",&") && before != "" && from != "" {
		next, second := cutDigits(strings.TrimLeft(tag[at:], " ,&"))
		return next == before && second != "" || strings.Contains(tag[at:], before)
	}
	rest := strings.TrimLeft(tag[at:], " -.–…")
	for _, word := range [...]string{"to ", "bis ", "t/m ", "à ", "till ", "al ", "hasta "} {
		rest = strings.TrimPrefix(rest, word)
	}
	if before == "" || from == "" || !strings.HasPrefix(rest, before) {
		return false
	}
	after, to := cutDigits(rest)
	first, _ := strconv.Atoi(from)
	last, err := strconv.Atoi(to)
	return err == nil && after == before && last > first+1 // N1-N2 is a duct between two nodes
}

func allDigits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// cutDigits parts the figures at the end of a name from what is before them.
func cutDigits(name string) (before, figures string) {
	n := len(name)
	for n > 0 && digit(name[n-1]) {
		n--
	}
	return name[:n], name[n:]
}
