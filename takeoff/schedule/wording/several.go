package wording

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
)

// What the name of a system or level may be.
const (
	IsName = iota
	IsSum
	IsSeveral
	IsStruck
	IsShape
)

// Name finds out what the name of a system or level may be, and how many are named: 0
// where that can't be told.
func Name(lex *headings.Lexicon, text string) (is, times int) {
	if text == "" || len(text) > MaxTitle || strings.ContainsAny(text[:1], "@=+-") {
		return IsName, 0
	}
	numbered := wordAndNumber(text)
	switch {
	case lex.Total(text):
		return IsSum, 0
	case Overstruck(text):
		return IsStruck, 0
	case !numbered && Many.MatchString(text):
		return IsSeveral, timesIn(text)
	case !numbered && (SeveralLevels.MatchString(text) || severalNumbers(text) || Several(text)):
		return IsSeveral, listed(text)
	case lex.Says(headings.Tokens(text), text)&(headings.Several|headings.Twice) != 0:
		return IsSeveral, 0
	case lex.StruckName(text):
		return IsStruck, 0
	case ShapeName(lex, text):
		return IsShape, 0
	}
	return IsName, 0
}

// wordAndNumber reports up to three letters but an x, and a number: AHU 01, L2. Most
// names are like that, and no pattern for several finds anything in them.
func wordAndNumber(text string) bool {
	letters := 0
	for letters < len(text) && letters < 4 && text[letters]|0x20 >= 'a' && text[letters]|0x20 <= 'z' && text[letters]|0x20 != 'x' {
		letters++
	}
	rest := text[letters:]
	if len(rest) > 1 && (rest[0] == ' ' || rest[0] == '-') {
		rest = rest[1:]
	}
	return letters > 0 && letters < 4 && rest != "" && celltext.AllDigits(rest)
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

// MayCount reports a place that TimesAt may find to stand for several: most don't.
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

// TimesAt reports a place that stands for several, and how many it says: 0 where that
// can't be told.
func TimesAt(place string) (times int, several bool) {
	if !manyAt.MatchString(place) {
		return 0, false
	}
	return timesIn(place), true
}

var manyAt = regexp.MustCompile(`(?i)\btyp(?:ical)?\b.*\d|(?:^|[\s(])[x×]\s*[2-9]\b`)

// MaxTitle is the length of a text that is looked at for what it says.
const MaxTitle = 80

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

// Multiplies says of what stands below that it is there several times, in seven languages (from
// memory, unverified).
var Multiplies = regexp.MustCompile(`(?i)\bfor one (?:of|riser|floor|level|unit|system|ahu|house|plot)\b|\bone (?:of (?:two|three|four|five|six|seven|eight|\d+)|(?:floor|level|storey|riser|module|unit|system|house|plot|flat) (?:only|of))\b|\b(?:quantities|qty|all) (?:to be|are) (?:doubled|tripled|multiplied)\b|\bper (?:module|bay|building|block|zone|core|ahu)\b|\btyp(?:ical)?\b.*\b(?:levels?|floors?|\d+\s*(?:to|-)\s*\d+)|\btyp(?:ical)?\s*[x×]\s*\d|\bmultipl(?:y|ied|iziert|izieren|ier|icar|icare|icera)\b|\bquantit\w*\s*[x×]\s*\d|\bper (?:floor|level|storey|house|flat|plot|riser|unit|system|piano|verdieping|våning)\b|\bje (?:geschoss|etage|anlage)|\bpar (?:étage|niveau)|\bpor planta|\b(?:no\.?|number|anzahl|nombre|número|numero|antal|aantal)\s+(?:of\s+|de\s+|di\s+|van\s+)?(?:sets|floors|levels|systems|units|houses|plots|anlagen|geschosse|étages|plantas|piani|verdiepingen|våningar)\b`)

// TitleCounts is a title that says how many: Qty 4, Set of 4, 4 Stück.
var TitleCounts = regexp.MustCompile(`(?i)^\s*(?:qty|quantity|sets?|off|required|batch|stückzahl|anzahl|aantal|antal|cantidad|quantité|quantità)\b\W*[2-9]\d*\b|\bset of \d|^\s*[2-9]\d*\s*(?:stück|stk|off|sets?)\b`)

// PerFloor says of quantities that they are of one of several (from memory, unverified).
var PerFloor = regexp.MustCompile(`(?i)\b(?:qty|quantit\w*|mengen?|quantités?|aantal\w*|antal|cantidad\w*)\b.*\b(?:per|je|par|por|pro|for one|one of)\b`)

// Noes are words for no, in seven languages (from memory, unverified).
var Noes = []string{"no", "n", "false", "0", "-", "–", "nein", "falsch", "non", "faux", "nee", "onwaar", "nej", "falskt", "falso", "✗", "✘"}

// ShapeName reports a name that is a shape and nothing else: flat oval, Round ducts.
func ShapeName(lex *headings.Lexicon, text string) bool {
	if len(text) > 40 || strings.ContainsAny(text, "0123456789") {
		return false
	}
	words := headings.Tokens(text)
	if n := len(words); n > 1 && slices.Contains(ductWords, words[n-1]) {
		words = words[:n-1]
	} else if n > 1 && slices.Contains(ductWords, words[0]) { // gaine ronde
		words = words[1:]
	}
	name := strings.Join(words, " ")
	_, known := lex.Exact(takeoff.Shape, name)
	_, ok := fittings.ParseShape(name)
	return known || ok
}

// ductWords are words for ducts beside a shape, in seven languages (from memory,
// unverified).
var ductWords = []string{"duct", "ducts", "ductwork", "ducting", "pieces", "kanal", "kanale", "rohr", "rohre", "gaine", "gaines", "conduit", "conduits", "kanaal", "kanalen", "kanaler", "conducto", "conductos", "canale", "canali"}

// NamesAll reports a name that may be of several: A and B, both, all.
func NamesAll(name string) bool {
	return strings.ContainsAny(name, ",;&+") || slices.ContainsFunc(headings.Tokens(name), func(w string) bool { return allWords[w] })
}

// allWords join names or stand for several, in seven languages, without accents (from memory,
// unverified).
var allWords = SetOf("and both all each every to und beide beiden alle jede jedes je bis et deux tous toutes chaque en elk elke och bada alla varje y ambos ambas todos todas cada entrambi tutti tutte ogni")

// WithoutPer takes out of a line that its rows are per storey, where each of them names its own:
// straight lengths per storey.
func WithoutPer(line string) string { return perStorey.ReplaceAllString(line, " ") }

// PerStorey reports such a line.
func PerStorey(line string) bool { return perStorey.MatchString(line) }

// perStorey is that, in seven languages (from memory, unverified).
var perStorey = regexp.MustCompile(`(?i)\b(?:(?:per|by) (?:storey|story|floor|level|verdieping|bouwlaag|våning|plan|piano)|(?:je|pro|nach) (?:geschoss|etage|ebene|stockwerk)|par (?:étage|niveau)|por (?:planta|nivel))\b`)

// AnyLevel reports a name of a level that is none, but says that each or all are meant.
func AnyLevel(text string) bool { return len(text) < 30 && anyWords[headings.Squash(text)] }

// anyWords say so, in seven languages (from memory, unverified).
var anyWords = SetOf("all each every both alllevels allfloors eachlevel eachfloor everyfloor everylevel alle jede jedes jeweils beide allegeschosse jeetage jegeschoss chaque tous toutes tousniveaux touslesniveaux chaqueniveau lesdeux elke iedere alleverdiepingen perverdieping varje alla allaplan bada cada todas todos todaslasplantas ambas ogni tutti tutte tuttiipiani entrambi")
