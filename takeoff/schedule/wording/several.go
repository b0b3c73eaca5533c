package wording

import (
	"regexp"
	"strconv"
	"strings"

	"blankoff/takeoff/schedule/headings"
)

// What the name of a system or level may be.
const (
	IsName = iota
	IsSum
	IsSeveral
)

// Name finds out what the name of a system or level may be.
func Name(lex *headings.Lexicon, text string) int {
	switch {
	case text == "" || len(text) > MaxTitle || strings.ContainsAny(text[:1], "@=+-"):
	case lex.Total(text):
		return IsSum
	case SeveralLevels.MatchString(text), severalNumbers(text), Many.MatchString(text), Several(text):
		return IsSeveral
	}
	return IsName
}

// severalNumbers reports a list or a range of levels without a word: 1-5, 2, 3, 4.
func severalNumbers(text string) bool {
	if !NumberList.MatchString(text) {
		return false
	}
	last := -1
	for _, figures := range strings.FieldsFunc(text, func(r rune) bool { return r < '0' || r > '9' }) {
		n, _ := strconv.Atoi(figures)
		if n <= last || len(figures) > 1 && figures[0] == '0' {
			return false
		}
		last = n
	}
	return true
}

// MayCount reports a place that manyAt may find to stand for several: most don't.
func MayCount(text string) bool {
	if len(text) > MaxTitle {
		return false
	}
	for i := range len(text) {
		if c := text[i] | 0x20; c == 'x' || c == 'y' || text[i] == "×"[0] {
			return true
		}
	}
	return false
}

// ManyAt is a place that stands for several.
var ManyAt = regexp.MustCompile(`(?i)\btyp(?:ical)?\b.*\d|(?:^|[\s(])[x×]\s*[2-9]\b`)

// MaxTitle is the length of a text that is looked at for what it says.
const MaxTitle = 80

// What a remark may say.
const (
	OfSizes  = 1 << iota // sizes, units or lengths
	OfCounts             // that there are others than the row says
	OfMany               // how many there are
)

// Remark finds out what a remark says.
func Remark(note string) (of uint8) {
	if (strings.ContainsAny(note, "0123456789") || strings.Contains(note, " in ")) && figured.MatchString(note) {
		of |= OfSizes
	}
	if countNoted.MatchString(note) {
		of |= OfCounts
	}
	if manyNoted.MatchString(note) {
		of |= OfMany
	}
	return of
}

// figured is a remark on sizes (from memory, unverified).
var figured = regexp.MustCompile(`(?i)\d{2,4}\s*[x×]\s*\d{2,4}|[øØ⌀]\s*\d{2,4}|\b(?:in (?:cm|inch(?:es)?|feet)|actual|lining|lined|\d+\s*(?:mm|cm|m) (?:long|wide|high)|\d{2,4} (?:long|wide|high)|length|sided)\b`)

// manyNoted is a remark that says how many: 4 off, x4 typical.
var manyNoted = regexp.MustCompile(`(?i)\btyp(?:ical)?\b.{0,12}\d|\bas (?:above|below|before)\s*[x×]|\bqty\s*[:=]?\s*[2-9]|^(?:two|three|four|five|six|[2-9]) (?:of these|required|reqd|no\b|st\b)|^\(?(?:[x×]\s*[1-9]\d{0,2}\b|[1-9]\d{0,2}\s*(?:off|no\.?s?|nr|x|×|stk|pcs)\b)`)

// countNoted is a remark that changes how many there are, in seven languages (from memory,
// unverified).
var countNoted = regexp.MustCompile(`(?i)\b(?:\d+|one|two) (?:deleted|omitted|entfällt|supprimée?s?|of these deleted)\b|^(?:less|minus|plus) \d|\bqty\b.*(?:should|to be|wrong|now|\d)|\b(?:make|now|need|reduced to|only|nur|noch|solo|endast|nog) \d+ ?(?:off|no|nos|more|stück|stk|stuks|st|uds?|pz|pcs)\b|\breduced to \d|\bneed \d+ more\b|\b\d+ (?:off )?only\b|\bau lieu de \d|\b(?:per|each|every) (?:floor|system|level|storey|riser)\b|\bje (?:etage|geschoss|anlage)\b|\bpar (?:étage|niveau)|\bper (?:verdieping|våning|piano)|\bpor planta\b|\btypical all\b|\bboth risers\b|\bsize tbc\b`)

// Doubled says of rows above that there are more of them (from memory, unverified).
var Doubled = regexp.MustCompile(`(?i)\b(?:all|rows|items|quantities|above)\b.*(?:[x×]\s*\d|\b(?:doubled?|twice|tripled?)\b)`)

// Yeses are words for yes, in seven languages (from memory, unverified).
var Yeses = []string{"yes", "y", "x", "ja", "j", "oui", "si", "sí", "sì", "true", "done", "tbc", "tba"}

// SeveralLevels is a line of several levels or systems.
var SeveralLevels = regexp.MustCompile(`(?i)\b[a-z]{1,4}-?\d+\s+(?:and|und|et|en|och|&)\s+[a-z]{1,4}-?\d+\b|\blevels?:?\s*\d+\s+and\s+\d+|\b[a-z]{1,4}-?\d+\s+(?:to|bis|t/m|till|thru)\s+[a-z]{1,4}-?\d+\b|^[a-z]\d+\s*[-–]\s*[a-z]\d+$|^[a-z]\d+(?:\s*,\s*[a-z]\d+)+$|\ball (?:floors|levels)\b|\d(?:st|nd|rd|th)\s*(?:to|-)\s*\d|\b(?:levels?|floors?|geschosse?|etagen?|niveaux?|étages?|verdieping(?:en)?|plan|plantas?|piani|piano|ahus?|systems?)\s*\d+\w*\s*(?:to|bis|t/m|till|à|al?|-|–|&|\+|and|und|et|en|och|y|e)\s*(?:levels?|floors?|ahus?|systems?)?\s*\d+`)

// NumberList is figures with signs between them.
var NumberList = regexp.MustCompile(`^\s*\d{1,2}\s*(?:-|–|,|&|\+|to|bis|and|und|et)\s*\d{1,2}(?:\s*[,&]\s*\d{1,2})*\s*$`)

// Many says that what stands below it is there several times: 3 off, x4, typical.
var Many = regexp.MustCompile(`(?i)\balso (?:level|floor)|\(\s*(?:n\.?\s*)?\d+\s*(?:off|no\.?|stück|stk|st\.?|plantas?|piani|étages?|etagen|floors?|verdiepingen|våningar)\b|\bbaugleich|\bidenti(?:cal|sch|ques?|che)\b|\blika\)|\biguales\b|\buguali\b|\b\d+\s*(?:off|nos?\b|stk|times|mal|fois|volte|veces|keer|gånger)|(?:^|[\s(,])[x×]\s*\d+\b|\b\d+\s*[x×](?:$|[\s),])|\btypical\b|\bmultipl|\bas (?:above|level|floor|system|per|unit)\b|\brepeat\b|\bwie (?:oben|geschoss|ebene|anlage|eg|og)|\bwiederhol|\bcomme (?:niveau|ci-dessus|étage)|\brépét|\bidem\b|\bsom (?:plan|våning)|\bals (?:verdieping|boven)`)

var Multiplies = regexp.MustCompile(`(?i)\bfor one (?:of|riser|floor|level|unit|system|ahu|house|plot)\b|\bone (?:of (?:two|three|four|five|six|seven|eight|\d+)|(?:floor|level|storey|riser|module|unit|system|house|plot|flat) (?:only|of))\b|\b(?:quantities|qty|all) (?:to be|are) (?:doubled|tripled|multiplied)\b|\bper (?:module|bay|building|block|zone|core)\b|\btyp(?:ical)?\b.*\b(?:levels?|floors?|\d+\s*(?:to|-)\s*\d+)|\btyp(?:ical)?\s*[x×]\s*\d|\bmultipl(?:y|ied|iziert|izieren|ier|icar|icare|icera)\b|\bquantit\w*\s*[x×]\s*\d|\bper (?:floor|level|storey|house|flat|plot|riser|unit|system|piano|verdieping|våning)\b|\bje (?:geschoss|etage|anlage)|\bpar (?:étage|niveau)|\bpor planta|\b(?:no\.?|number|anzahl|nombre|número|numero|antal|aantal)\s+(?:of\s+|de\s+|di\s+|van\s+)?(?:sets|floors|levels|systems|units|houses|plots|anlagen|geschosse|étages|plantas|piani|verdiepingen|våningar)\b`)

// TitleCounts is a title that says how many: Qty 4, Set of 4, 4 Stück.
var TitleCounts = regexp.MustCompile(`(?i)^\s*(?:qty|quantity|sets?|batch|stückzahl|anzahl|aantal|antal|cantidad|quantité|quantità)\b\W*[2-9]\d*\b|\bset of \d|^\s*[2-9]\d*\s*(?:stück|stk|off|sets?)\b`)

// PerFloor says of quantities that they are of one of several (from memory, unverified).
var PerFloor = regexp.MustCompile(`(?i)\b(?:qty|quantit\w*|mengen?|quantités?|aantal\w*|antal|cantidad\w*)\b.*\b(?:per|je|par|por|pro|for one|one of)\b`)

// Noes are words for no, in seven languages (from memory, unverified).
var Noes = []string{"no", "n", "false", "0", "-", "–", "nein", "falsch", "non", "faux", "nee", "onwaar", "nej", "falskt", "falso"}
