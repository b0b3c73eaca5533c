// Package wording knows what the words in a name, a tag, a remark or a line of a schedule say:
// a unit, that there are several, or that something doesn't count. It reads text only; what
// follows from it the reader decides.
package wording

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// What a remark may say.
const (
	OfSizes   = 1 << iota // sizes, units or lengths
	OfCounts              // that there are others than the row says
	OfMany                // how many there are
	OfOut                 // that the row doesn't count
	OfSum                 // that it is a total
	OfPart                // that there is less of it
	OfNew                 // a size that takes the place of the row's
	OfUnsized             // that its size isn't settled
	OfOpen                // that something isn't
	OfUnit                // the unit of the row
	OfDoubt               // something of the row, it can't be told what
	OfElse                // something that no list of words knows
)

// Said is what a remark says.
type Said struct {
	Of    uint16
	Times int           // of OfMany; 0: it can't be told
	New   [2]float64    // the figures of OfNew as typed; 0: none
	Unit  quantity.Unit // of OfUnit
}

// Remark finds out what a remark says.
func Remark(lex *headings.Lexicon, note string) (x Said) {
	if note != "" && strings.IndexByte("}])|", note[0]) >= 0 { // } x3 beside rows
		note = strings.TrimLeft(note, "}])| ")
	}
	words := headings.Tokens(note)
	figures := strings.ContainsAny(note, "0123456789")
	if (figures || strings.Contains(note, " in ")) && figured.MatchString(note) {
		x.Of |= OfSizes
	}
	if oneOf(words, countWords) && countNoted.MatchString(note) || note != "" && (note[0] == '+' || note[0] == '-') && moreNoted.MatchString(note) {
		x.Of |= OfCounts
	}
	says := lex.Says(words, note)
	if head := clause(note); head != "" && !headings.Agreed(words) && len(head) < len(note) && !strings.ContainsAny(head[:1], "@=+-") { // should be 5, see RFI 12
		says |= lex.Says(headings.Tokens(head), head)
	}
	for _, m := range meant {
		if says&m.says != 0 {
			x.Of |= m.of
		}
	}
	if times, many := noteTimes(lex, words, note, figures); many {
		x.Of, x.Times = x.Of|OfMany, times
	} else if says&headings.Twice != 0 {
		x.Of, x.Times = x.Of|OfMany, 2
	}
	if says&headings.Instead != 0 && !OnInsulation(note) {
		if x.New = lastSize(note); x.New[0] > 0 {
			x.Of |= OfNew
		}
	}
	if m := sizedNoted.FindStringSubmatch(note); m != nil && x.Of&OfNew == 0 && len(words) < 7 && !lex.NamesThing(words) && !OnInsulation(note) {
		x.Of |= OfNew
		x.New[0], _ = strconv.ParseFloat(m[1], 64)
	}
	if len(words) == 0 && note != "" && strings.Trim(note, "? ") == "" {
		x.Of |= OfOpen
	}
	if u, ok := remarkUnit(lex, words, note); ok {
		x.Of, x.Unit = x.Of|OfUnit, u
	}
	switch {
	case x.Of&^OfSizes != 0:
	case says&headings.Doubt != 0:
		x.Of |= OfDoubt
	case x.Of == 0 && !lex.Harmless(words):
		x.Of = OfElse
	}
	return x
}

// clause is the part of a remark before the first sign that parts it.
func clause(note string) string {
	if end := strings.IndexAny(note, ",;"); end > 0 {
		note = note[:end]
	}
	note, _, _ = strings.Cut(note, " - ")
	note, _, _ = strings.Cut(note, " – ")
	return note
}

// meant is what the words of remarks come to.
var meant = [...]struct {
	says headings.Says
	of   uint16
}{{headings.Several, OfCounts}, {headings.Out, OfOut}, {headings.Sum, OfSum}, {headings.Part, OfPart}, {headings.Unsized, OfUnsized}, {headings.Open, OfOpen}}

// noteTimes is how many a remark names, and whether it names any; see Said.
func noteTimes(lex *headings.Lexicon, words []string, note string, figures bool) (times int, many bool) {
	if len(words) == 0 {
		return 0, false
	}
	first := words[0]
	if celltext.Digit(first[0]) || first[0] == 'x' || lex.Number(first) > 0 || oneOf(words, manyWords) {
		if at := manyNoted.FindStringIndex(note); at != nil && !quantity.Combined(note) && !detailNoted.MatchString(note) {
			if times = timesIn(note[at[0]:]); times == 0 && !timesNoted.MatchString(note) {
				times = lex.Number(first) // two of these
			}
			return times, true
		}
	}
	if figures && levelsNoted.MatchString(note) {
		return listed(note), true
	}
	return 0, false
}

// oneOf reports words of which one is in a list.
func oneOf(words []string, list map[string]bool) bool {
	return slices.ContainsFunc(words, func(w string) bool { return list[w] })
}

// Words without which countNoted and manyNoted match nothing.
var (
	countWords = SetOf("deleted omitted entfallt supprime supprimee supprimes supprimees less minus plus qty make now need reduced only nur noch solo endast nog lieu per each every je jede jedem jeden jeder jedes par chaque elke varje ogni por cada typical both")
	manyWords  = SetOf("typ typical as qty")
)

// SetOf is the set of the words of a text.
func SetOf(words string) map[string]bool {
	of := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		of[w] = true
	}
	return of
}

// remarkUnit is the unit that a remark gives for the sizes of its row: inches, sizes in cm.
func remarkUnit(lex *headings.Lexicon, words []string, note string) (u quantity.Unit, ok bool) {
	if len(note) > MaxTitle || !slices.ContainsFunc(words, lengthUnit) || OnInsulation(note) {
		return u, false
	}
	if m := LoneUnit.FindStringSubmatch(note); m != nil {
		return quantity.UnitOf(m[1] + m[2] + m[3])
	}
	if u, ok = quantity.UnitOf(note); ok && u.Measure == takeoff.Lengths && (len(note) > 2 || note == "mm") {
		return u, true
	}
	u, ok = StatedUnit(lex, note)
	return u, ok && u.Name != ""
}

// lengthUnit reports a word for a unit of length.
func lengthUnit(word string) bool {
	u, ok := quantity.UnitOf(word)
	return ok && u.Measure == takeoff.Lengths
}

// lastSize is the last size of a remark, as typed: 700 and 400 of 700x400, 1350; one in metres
// in mm. Zeros where it has none.
func lastSize(note string) (size [2]float64) {
	if m := metresNoted.FindStringSubmatch(note); m != nil {
		size[0], _ = strconv.ParseFloat(m[1]+"."+m[2], 64)
		size[0] *= 1000
	}
	for _, m := range sizeNoted.FindAllStringSubmatch(note, -1) {
		size[0], _ = strconv.ParseFloat(m[1], 64)
		size[1], _ = strconv.ParseFloat("0"+m[2], 64)
	}
	return size
}

// detailNoted is a remark that names a drawing of something typical.
var detailNoted = regexp.MustCompile(`(?i)\btyp(?:ical)?\W+(?:detail|section|sketch|drawing|dwg|note|fixing|support|hanger|bracket)`)

// moreNoted is a remark as +1 or -1.
var moreNoted = regexp.MustCompile(`^[+-]\s*\d{1,2}\W*$`)

// sizeNoted is a size in a remark.
var sizeNoted = regexp.MustCompile(`(\d{2,5}(?:\.\d+)?)(?:\s*(?:mm)?\s*[xX×*]\s*(\d{2,5}))?`)

// sizedNoted is a side or a length in a remark, in seven languages (from memory, unverified).
var sizedNoted = regexp.MustCompile(`(?i)\b(\d{3,4}) ?(?:mm )?(?:breit|hoch|lang|wide|high|deep|long|breed|hoog|diep|bred|brett|hög|högt|lång|långt|de large|de haut|de long|de ancho|de alto|de largo|di larghezza|di altezza|di lunghezza|largo|lungo|alto)(?:$|[\s.,;])`)

// metresNoted is a length in metres in a remark.
var metresNoted = regexp.MustCompile(`\b(\d{1,2})[.,](\d{1,3}) ?m\b`)

// levelsNoted is a remark that names several levels: L1 to L5, levels 2 and 3 (from memory,
// unverified).
var levelsNoted = regexp.MustCompile(`(?i)^(?:(?:for|on|at|all|typ\w*|f[üu]r|pour|voor|f[öo]r|para|per)\s+)?(?:(?:(?:levels?|lvls?|floors?|storeys?|geschosse?|etagen?|niveaux?|[ée]tages?|verdieping(?:en)?|plan|våningar|plantas?|pian[oi]|og|ug)\s*l?|l)\d+\s*(?:to|bis|t/m|till|thru|through|à|a|al|-|–|&|\+|,|and|und|et|en|och|y|e)\s*(?:(?:levels?|lvls?|floors?|storeys?|geschosse?|etagen?|niveaux?|[ée]tages?|verdieping(?:en)?|plan|våningar|plantas?|pian[oi]|og|ug)\s*)?l?\d+|\d+(?:st|nd|rd|th|\.)?\s*(?:to|bis|t/m|till|thru|through|à|a|al|-|–|&|\+|,|and|und|et|en|och|y|e)\s*\d+(?:st|nd|rd|th|\.)?\s*(?:levels?|lvls?|floors?|storeys?|geschosse?|etagen?|niveaux?|[ée]tages?|verdieping(?:en)?|plan|våningar|plantas?|pian[oi]|og|ug))\W*$`)

// figured is a remark on sizes (from memory, unverified).
var figured = regexp.MustCompile(`(?i)\d{2,4}\s*[x×]\s*\d{2,4}|[øØ⌀]\s*\d{2,4}|\b[LWHB]\s*=\s*\d|\b(?:in (?:cm|inch(?:es)?|feet)|actual|lining|lined|\d+\s*(?:mm|cm|m) (?:long|wide|high)|\d{2,4} (?:long|wide|high)|length|sided)\b`)

// manyNoted is a remark that says how many: 4 off, x4 typical.
var manyNoted = regexp.MustCompile(`(?i)\btyp(?:ical)?\b.{0,12}\d|\bas (?:above|below|before)\s*[x×]|\bqty\s*[:=]?\s*[2-9]|^(?:two|three|four|five|six|[2-9]) (?:of these|required|reqd|no\b|st\b)|^\(?(?:[x×]\s*[1-9]\d{0,2}\b|[1-9]\d{0,2}\s*(?:off|no\.?s?|nr|x|×|stk|pcs)\b)`)

// countNoted is a remark that changes how many there are, in seven languages (from memory,
// unverified).
var countNoted = regexp.MustCompile(`(?i)\b(?:\d+|one|two) (?:deleted|omitted|entfällt|supprimée?s?|of these deleted)\b|^(?:less|minus|plus) \d|\bqty\b.*(?:should|to be|wrong|now|\d)|\b(?:make|now|need|reduced to|only|nur|noch|solo|endast|nog) \d+ ?(?:off|no|nos|more|stück|stk|stuks|st|uds?|pz|pcs)\b|\breduced to \d{1,2}\b|\bneed \d+ more\b|\b\d+ (?:off )?only\b|\bau lieu de \d|\b(?:per|each|every) (?:floor|system|level|storey|riser)\b|\b(?:je|jede[mnrs]?) (?:etage|geschoss|stockwerk|anlage)\b|\b(?:par|chaque) (?:étage|niveau)|\b(?:per|elke|varje|ogni) (?:verdieping|woonlaag|våning|plan|piano)\b|\b(?:por|cada) planta\b|\btypical all\b|\bboth risers\b`)
