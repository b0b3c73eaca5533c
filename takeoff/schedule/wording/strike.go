package wording

import (
	"regexp"
	"strings"

	"blankoff/takeoff/schedule/celltext"
)

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
	OnSizes      = regexp.MustCompile(`(?i)\b(?:sizes|dimensions|dims)\b.*\b(?:clear|internal|inside|over|including|incl|outside|external)\b.*\b(?:insulation|lining|lined|liner)\b|\b(?:over|including|incl\.?) (?:the )?(?:insulation|lining)\b`)
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
