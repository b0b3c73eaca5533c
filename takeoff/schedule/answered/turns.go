package answered

import (
	"strings"

	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// HeadTurns is what the heading of a column that isn't used says that its cells do: "altered"
// where a figure with a sign changes how many there are, "replaces" where a cell names a row
// that this one takes the place of, "times" where yes says that there are more or less of it
// than the row says, "added" where a figure comes on top of a size or a count or goes off it,
// "dated" where a day says that the row doesn't count any more; else nothing.
func HeadTurns(lex *headings.Lexicon, typed string) string {
	words := headings.Tokens(typed)
	whole := strings.Join(words, "")
	switch {
	case len(words) == 0 || len(words) > 4:
		return ""
	case wording.Replaces.MatchString(typed) && lex.Keeps(typed) == "" || whole == "insteadof":
		return "replaces"
	case timesHeads[whole]:
		return "times"
	case lex.Keeps(typed) == "status" && dayWords[words[0]] != dayWords[words[len(words)-1]] && lex.StruckAnywhere(typed):
		return "dated"
	case addedWords[words[0]] && (len(words) == 1 || len(words) == 2 && lengthUnits[words[1]]):
		return "added"
	case alteredWords[words[0]] || alteredWords[words[len(words)-1]]:
		return "altered"
	}
	return ""
}

// Signed figures change how many there are: +2, -1.
func signedFigure(cell string) bool {
	rest, ok := strings.CutPrefix(strings.Replace(cell, "−", "-", 1), "-")
	if !ok {
		rest, ok = strings.CutPrefix(cell, "+")
	}
	return ok && len(rest) < 4 && celltext.AllDigits(rest) && strings.Trim(rest, "0") != ""
}

// Turns reports a cell that does what the heading says; see HeadTurns.
func Turns(does, cell string) bool {
	switch does {
	case "altered":
		return signedFigure(cell)
	case "added":
		return celltext.IsFigure(cell) && strings.Trim(cell, "0.,+-") != ""
	case "times":
		return Marks(cell)
	case "dated":
		return celltext.Digit(cell[0]) && len(cell) > 4
	case "replaces":
		a := AnswerOf(cell)
		return a != No && a != Nought && !celltext.MeansNothing(cell)
	}
	return false
}

// Words of such headings, in seven languages (from memory, unverified).
var (
	alteredWords = wording.SetOf("change changes delta diff difference correction adj adjust adjustment variance variation extra add addition less more korrektur anderung differenz mehr minder zugang abgang nachtrag ecart ajout verschil correctie meerwerk minderwerk andring skillnad tillagg diferencia ajuste correccion variazione differenza rettifica aggiunta")
	addedWords   = wording.SetOf("add adding deduct deduction minus plus subtract zuschlag zugabe abzug ajout deduire aftrek toeslag avdrag tillagg anadir deducir suplemento detrazione aggiunta")
	lengthUnits  = wording.SetOf("mm cm m in ft length lange longueur lengte langd longitud lunghezza")
	timesHeads   = wording.SetOf("bothsides eachside double doubled twice half halb halbe doppelt doppel beidseitig demi moitie lesdeuxcotes dubbel beidezijden halve halv bada dubbelt doble mitad amboslados doppio meta entrambiilati")
	dayWords     = wording.SetOf("date on day am datum le dato den fecha el data il op")
)
