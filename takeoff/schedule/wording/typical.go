package wording

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"blankoff/takeoff/schedule/headings"
)

// Several reports a line, or the name of a sheet, that stands for several floors, flats or
// the like, in seven languages: Regelgeschoss, 1.-5. OG, Étages 1 à 5, Wohnung Typ A, 12
// Stück.
func Several(text string) bool {
	if len(text) > MaxTitle {
		return false
	}
	text = headings.Plain(text)
	return typicalFloor.MatchString(text) || floorRange.MatchString(text) || asFloor.MatchString(text) ||
		ofType.MatchString(text) && countBehind.MatchString(text)
}

// What Several looks for, in text without accents (from memory, unverified). A floor of
// which there are several; floors from one to another; a floor that is as another; how many
// there are of a type of flat or room.
var (
	typicalFloor = regexp.MustCompile(`\b(?:regel|normal|standard|typen)(?:geschosse?|etagen?|stockwerke?)\b|\b(?:etages?|niveaux?) (?:courants?|types?|standards?)\b|\bplantas? tipo\b|\bpiano tipo\b|\bpiani tipo\b|\btype ?verdieping(?:en)?\b|\bstandaardverdieping(?:en)?\b|\b(?:typ|normal|standard)(?:plan|vaning)(?:en)?\b|\bstandard (?:floor|level|storey)s?\b`)
	floorRange   = regexp.MustCompile(`\b\d+\.?\s*(?:-|–|/|\+|&|,|bis|und|u\.|bis zum)\s*\d+\.?\s*(?:og|ug|obergeschosse?|untergeschosse?|geschosse?|etagen?|stock)\b|` +
		`\b(?:etages?|niveaux?|r ?\+)\s*\+?\d+\s*(?:a|au|-|–|et)\s*(?:r\s*\+?)?\d+\b|\bdu (?:r\+)?\d+\w*\s+au (?:r\+)?\d+\w* (?:etage|niveau)|` +
		`\b\d+e?\s*(?:t/m|tot|-|–|en)\s*\d+e? verdieping|\bverdieping(?:en)?\s*\d+e?\s*(?:t/m|tot|-|–|en|,)\s*\d+|\bvaning(?:ar)?\s*\d+\s*(?:till|-|–|och)\s*\d+\b|\bplan\s*\d+\s*(?:till|och)\s*\d+\b|` +
		`\bplantas?\s*\d+.?\s*(?:a|al|-|–|y)\s*(?:la\s*)?\d+|\b\d+.?\s*(?:a|-|–)\s*\d+.? plantas?\b|\b(?:da|dal) (?:piano )?\d+.?\s*(?:a|al) (?:piano )?\d+|\bpian[oi]\s*\d+.?\s*(?:a|al|-|–|e)\s*\d+`)
	asFloor = regexp.MustCompile(`\b(?:wie|identisch mit|gleich wie|comme|identique (?:a|au)|als|zoals|gelijk aan|som|lika som|como|igual (?:que|a)|come|uguale a|identico a)\s+(?:(?:le|la|l|el|het|de|il|lo)\s+)?(?:\d+\w{0,2}\.?\s*)?(?:og|ug|eg|dg|kg|rdc|r ?\+ ?\d+|obergeschoss|erdgeschoss|geschoss|etage|niveau|verdieping|begane grond|vaning|planta|piano|pb)\b|\bsom plan\b`)
	ofType  = regexp.MustCompile(`\b(?:typ[eo]?s?|tipos?)\b`)
)

// countBehind is a count at the end of a line.
var countBehind = regexp.MustCompile(`[,;:(x–-]\s*\d+\s*(?:x|stuck|stk|st|pieces|pces|pcs|off|nos?|stuks|styck|unidades|uds?|pezzi|pz|mal|fois|wohnungen|zimmer|logements|chambres|appartements|woningen|lagenheter|viviendas|appartamenti)\.?\)?\s*$`)

// ofMany are headings of things of which a row may be for several, in seven languages (from
// memory, unverified).
var ofMany = map[string]bool{"flat": true, "flats": true, "apartment": true, "apartments": true, "apt": true, "house": true, "houses": true, "plot": true, "plots": true, "unit": true, "floors": true, "levels": true, "storeys": true, "riser": true, "risers": true,
	"wohnung": true, "wohnungen": true, "haus": true, "hauser": true, "geschosse": true, "etagen": true, "logement": true, "logements": true, "appartement": true, "appartements": true, "etages": true, "niveaux": true,
	"woning": true, "woningen": true, "verdiepingen": true, "lagenhet": true, "lagenheter": true, "vaningar": true, "vivienda": true, "viviendas": true, "plantas": true, "appartamento": true, "appartamenti": true, "piani": true}

// HeadsMany reports the heading of flats, houses or floors.
func HeadsMany(heading string) bool {
	words := headings.Tokens(heading)
	return len(words) > 0 && len(words) < 4 && ofMany[words[0]]
}

// RangeCount is how many a range of numbers is: 12 of 1-12. It is 0 for anything else.
func RangeCount(text string) int {
	m := anyRange.FindStringSubmatch(text)
	if m == nil {
		return 0
	}
	first, _ := strconv.Atoi(m[1])
	last, _ := strconv.Atoi(m[2])
	if last <= first || strings.HasPrefix(m[1], "0") && len(m[1]) > 1 && len(m[1]) != len(m[2]) {
		return 0
	}
	return last - first + 1
}

var anyRange = regexp.MustCompile(`^\s*(\d{1,3})\s*(?:-|–|to|bis|a|à|t/m|till)\s*(\d{1,3})\s*$`)

// StrikesItems is a remark that some of the rows don't count, in seven languages (from
// memory, unverified).
var StrikesItems = regexp.MustCompile(`(?i)\b(?:items?|rows?|lines?|pieces?|tags?|pos(?:ition(?:en)?)?\.?|zeilen?|lignes?|rep(?:ère)?s?|regels?|rader|filas?|righe)\s+[a-z]{0,3}-?\d+\b.*(?:deleted|omitted|removed|not required|cancelled|entf(?:ällt|allen)|gestrichen|supprimée?s?|annulée?s?|vervall(?:t|en)|utgår|suprimid[ao]s?|eliminat[aei])\b`)

// Changes reports a line above, among or below rows that may say of some of them that they
// don't count, or of all that there are more: it names an item or a number in words,
// and says more than lists of words know. 4 is already in the other job;
// one floor is shown, there are four alike.
func Changes(lex *headings.Lexicon, line string) bool {
	if len(line) > mostLine || line == "" {
		return false
	}
	words := headings.Tokens(line)
	if lex.Says(words, line)&(headings.Doubt|headings.Out) == 0 {
		return false
	}
	return namesItem.MatchString(line) || strings.ContainsAny(line[:1], "*†‡") || len(line) <= MaxTitle && slices.ContainsFunc(words, func(w string) bool { return (w[0] < '0' || w[0] > '9') && lex.Number(w) > 1 })
}

// mostLine is how long a line is that Changes looks at, bytes.
const mostLine = 200

// namesItem names a row by its number, in seven languages (from memory, unverified).
var namesItem = regexp.MustCompile(`(?i)(?:\b(?:items?|rows?|lines?|pieces?|tags?|marks?|pos(?:ition(?:en)?)?|zeilen?|lignes?|postes?|rep(?:ère)?s?|regels?|posten|rader|rad|poster|detalj|filas?|partidas?|piezas?|righe|riga|voc[ei]|pezz[oi])\b|(?:^|[:;,*–-]\s*)(?:(?:la|el|il|le|the|de|het|den|die|der)\s+)?(?:n[ro]s?\b|n[°º]|n\.))\.?\s*#?[a-z]{0,3}-?\d{1,4}\b`)
