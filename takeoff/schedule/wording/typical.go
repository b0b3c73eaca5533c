package wording

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"blankoff/takeoff/schedule/celltext"
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
	if onAll.MatchString(headings.Plain(line)) {
		return true
	}
	words := slices.DeleteFunc(headings.Tokens(line), func(w string) bool { return harmlessBelow[w] })
	if lex.Says(words, line)&(headings.Doubt|headings.Out) == 0 {
		return false
	}
	return namesItem.MatchString(line) || strings.ContainsAny(line[:1], "*†‡") || len(line) <= MaxTitle && slices.ContainsFunc(words, func(w string) bool { return (w[0] < '0' || w[0] > '9') && lex.Number(w) > 1 })
}

// onAll says that a length or a share comes on top of sizes, or goes off them, in text without
// accents, in seven languages (from memory, unverified).
var onAll = regexp.MustCompile(`(?i)\b(?:add|adds|deduct|increase\w*|zuzuglich|zuschlag|addieren|abzuglich|abziehen|ajout\w*|dedui\w*|major\w*|toevoegen|optellen|aftrekken|laggs? till|dra av|anadir|sumar|restar|descontar|aggiung\w*|detrarre)\b[^.;]{0,40}\b\d+(?:[.,]\d+)? ?(?:mm|cm|m|%|in|inch|inches)(?:$|[\s,.;)])[^.;]{0,20}\b(?:every|all|each|length\w*|lang\w*|jede\w*|alle\w*|longueur\w*|chaque|toutes?|tous|elke|lengte\w*|varje|alla|langd\w*|cada|todas?|todos?|longitud\w*|ogni|tutt[eio]|lunghezz\w*)\b`)

// mostLine is how long a line is that Changes looks at, bytes.
const mostLine = 200

// namesItem names a row by its number, in seven languages (from memory, unverified).
var namesItem = regexp.MustCompile(`(?i)(?:\b(?:items?|rows?|lines?|pieces?|tags?|marks?|pos(?:ition(?:en)?)?|zeilen?|lignes?|postes?|rep(?:ère)?s?|regels?|posten|rader|rad|poster|detalj|filas?|partidas?|piezas?|righe|riga|voc[ei]|pezz[oi])\b|(?:^|[:;,*–-]\s*)(?:(?:la|el|il|le|the|de|het|den|die|der)\s+)?(?:n[ro]s?\b|n[°º]|n\.))\.?\s*#?[a-z]{0,3}-?\d{1,4}\b`)

// DoubtfulKind reports a kind with signs around it: ~~straight~~, -straight, straight?,
// or struck out letter by letter.
func DoubtfulKind(kind string) bool {
	switch kind[0] {
	case '~', '-', '/', '(', '[', '?', '*':
		return true
	}
	return kind[len(kind)-1] == '?' || len(kind) > 2 && kind[1] == 0xcc && Overstruck(kind)
}

// Summary begins a list that sums up the pieces, in seven languages (from memory,
// unverified).
var Summary = regexp.MustCompile(`(?i)\bsummary\b|zusammenfassung|\bübersicht\b|récapitulatif|samenvatting|\boverzicht\b|sammanfattning|\bresumen\b|\briepilogo\b`)

// CopyTitle is the title of a list that stands there for somebody else once more, in seven languages
// (from memory, unverified).
var CopyTitle = regexp.MustCompile(`(?i)\b(?:(?:workshop|office|site|file|store|client|second|2nd|shop|fabricator)s?'?s? copy|copy (?:for|of)|duplicate|reprint|re-?issued?|repeat of|again for|kopie|duplikat|abschrift|zweitschrift|copie|duplicata|double pour|afschrift|duplicaat|kopia|avskrift|dubblett|copia|duplicado|duplicato|doppione)\b`)

// PageLine numbers a page, in seven languages (from memory, unverified).
var PageLine = regexp.MustCompile(`(?i)^(?:sheet|page|blatt|seite|feuille|blad|pagina|página|hoja|foglio|sida)\s*(?:no\.?|nr\.?)?\s*\d+(?:\s*(?:of|von|sur|de|van|av|di|/)\s*\d+)?$`)

// NumbersPage reports a cell that numbers a page, as PageLine does: Page 2 of 3.
func NumbersPage(cell string) bool {
	cell = celltext.Trim(cell)
	return len(cell) > 5 && len(cell) < 30 && celltext.Digit(cell[len(cell)-1]) && strings.IndexByte("spbfhSPBFH", cell[0]) >= 0 && PageLine.MatchString(cell)
}

// AsOther says that a sheet is as another (from memory, unverified).
var AsOther = regexp.MustCompile(`(?i)^\s*(?:same as|as|like|identical to|wie|identisch|comme|identique|als|som|como|come|igual)\b.*\b(?:level|floor|sheet|geschoss|ebene|etage|niveau|étage|verdieping|plan|planta|piano|\d+)\b`)

// ListSheet is the name of a sheet of words to choose from (from memory, unverified).
var ListSheet = regexp.MustCompile(`(?i)^(?:drop[ -]?downs?|lists?|look[ -]?ups?|validation|auswahl(?:listen?)?|listes?|lijsten|listor|listas|elenchi)$`)

// Ditto begins a line that stands for the rows before it (from memory, unverified).
var Ditto = regexp.MustCompile(`(?i)\bditto\b|^\s*(?:do\.|dito|idem|same as|as above|wie vor|wie oben)\b`)

// Replaces says of rows above that they don't count any more, in seven languages (from
// memory, unverified).
var Replaces = regexp.MustCompile(`(?i)\b(?:replac(?:es|ing)|supersed(?:es|ing)|ersetzt|annule et remplace|remplace|vervangt|ersätter|sustituye|sostituisce)\b`)

// OutsideTitle and OnSizes are what titles say that bears on all rows.
var (
	OutsideTitle = regexp.MustCompile(`(?i)\b(?:omissions?|existing (?:duct|ductwork|installation)|demolition|to be (?:removed|demolished|stripped)|strip[- ]?out|not in contract|abbruch|rückbau|démolition|sloop|rivning|demolición|demolizione)\b`)
	OnSizes      = regexp.MustCompile(`(?i)\b(?:sizes|dimensions|dims)\b.*\b(?:clear|internal|inside|over|includ\w*|incl|outside|external)\b.*\b(?:insulation|lining|lined|liner)\b|\b(?:over|includ\w*|incl\.?) (?:the )?(?:insulation|lining)\b`)
)

// Outside is what says of a line's rows that they may not count, in seven languages (from
// memory, unverified).
var Outside = regexp.MustCompile(`(?i)\b(?:omissions?|omits?|deduct(?:ion)?s?|credits|removed|spares?|left[- ]?overs?|in stock|surplus|restposten|restbestand|existing|demolition|demolish(?:ed)?|excluded|exclusions?|alternative|alternate|option(?:al)?|old (?:rev|revision|version)|copy of|already|not in contract|by others|identical|bestand|abbruch|bauseits|existants?|existantes?|démolition|bestaand|sloop|befintlig\w*|rivning|existentes?|demolición|esistent[ei]|demolizione|no ductwork|not ductwork)\b`)

// MoreRows is a line that adds pieces to the rows, or a total for several floors, in seven
// languages (from memory, unverified).
var MoreRows = regexp.MustCompile(`(?i)^\s*(?:plus|add|and|also|further|additional|extra|zusätzlich|dazu|weitere|plus encore|en plus|más|inoltre|più|extra|tevens|dessutom)\s+(?:another\s+)?(?:\d+|two|three|four|zwei|drei|deux|trois|dos|tres|due|tre|twee|drie|två)\s+(?:\S+\s+)?(?:more|off|no|nos|of|such|weitere|stück|autres|más|altri|meer|stuks|till|st)\b|\b(?:total|sum|summe|totaal|totale|summa)\b.*\b(?:for|für|pour|voor|para|per|för|x|×)\s*(?:[2-9]|\d\d)\s*(?:floors?|levels?|storeys?|systems?|ahus?|units?|houses?|flats?|geschosse|etagen|anlagen|étages|niveaux|verdiepingen|plantas|piani|våningar)\b`)

// Ends says that a list ends at it, in seven languages (from memory, unverified).
var Ends = regexp.MustCompile(`(?i)^\W*(?:end of (?:the )?(?:schedule|list|table|take-?off|measure(?:ment)?s?)|list ends|ende der (?:liste|aufstellung|tabelle)|listenende|fin de (?:la )?liste|fin du (?:tableau|métré)|einde (?:van de )?(?:lijst|staat)|slut på (?:listan|lista)|listan slut|fin de (?:la )?(?:lista|tabla)|fine (?:della )?(?:lista|tabella|elenco)|fine dell'elenco)\W*$`)

// Earlier is a line above rows of an earlier state, in seven languages (from memory,
// unverified).
var Earlier = regexp.MustCompile(`(?i)^\W*(?:old|previous|former|as before|alt|altbestand|alter stand|bisher|vorher|ancien(?:ne)?s?|précédent|oud|oude|vorige|gammal|gammalt|tidigare|antiguo|viejo|anterior|vecchio|precedente)\b\W*(?:rev\w*|revision|version|qty|list|items|rows)?\W*$`)

// Reserved are words of rows that keep a number and stand for nothing, in seven languages
// (from memory, unverified).
var Reserved = []string{"not used", "unused", "not in use", "reserved", "spare", "spare number", "number not used", "vacant", "nicht belegt", "unbelegt", "nicht verwendet", "frei", "reserviert", "reserve", "non utilisé", "non utilisée", "libre", "réservé",
	"niet gebruikt", "gereserveerd", "vrij", "används ej", "reserverad", "no usado", "no utilizado", "reservado", "non usato", "non utilizzato", "riservato", "libero"}

// closings are the words that end a letter, in seven languages (from memory, unverified).
var closings = strings.Split("regards,kindregards,bestregards,withregards,withkindregards,manythanks,thanks,thankyou,cheers,best,allthebest,bestwishes,yourssincerely,yoursfaithfully,sincerely,br,kr,rgds,"+
	"gruss,grusse,vielegrusse,bestegrusse,schonegrusse,mfg,mitfreundlichengrussen,mitfreundlichemgruss,freundlichegrusse,mitbestengrussen,danke,bestendank,vielendank,lg,vg,"+
	"cordialement,biencordialement,bienavous,merci,salutations,sinceressalutations,bonnereception,"+
	"groet,groeten,groetjes,metvriendelijkegroet,metvriendelijkegroeten,vriendelijkegroet,vriendelijkegroeten,mvg,bedankt,dank,"+
	"halsningar,medvanlighalsning,medvanligahalsningar,vanligahalsningar,vanligen,mvh,tack,"+
	"saludos,unsaludo,saludoscordiales,uncordialsaludo,atentamente,gracias,muchasgracias,"+
	"saluti,cordialisaluti,distintisaluti,unsaluto,grazie,cordialmente", ",")

// Closes reports a line of nothing but the words that end a letter: Kind regards,
func Closes(text string) bool {
	return len(text) < 50 && !celltext.HasDigit(text) && slices.Contains(closings, headings.Squash(text))
}

// Signs reports a line that may be the name of who wrote a letter: up to four words that all
// begin large.
func Signs(text string) bool {
	words := strings.Fields(text)
	return len(words) > 0 && len(words) <= 4 && len(text) < 50 && !celltext.HasDigit(text) && !slices.ContainsFunc(words, func(w string) bool {
		return !unicode.IsUpper([]rune(w)[0]) || strings.ContainsAny(w, ":;=?!()")
	})
}
