package wording

import (
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// mostUnitCells is how many cells a comma may have made of a line on units.
const mostUnitCells = 4

// OnUnits reports a row of a few cells of which each says in which unit sizes or lengths
// are: a line on units that commas have parted, and no headings. Lengths in cm | sizes in
// mm; (sizes in inches | lengths in feet).
func OnUnits(lex *headings.Lexicon, cells []string) bool {
	texts := celltext.Texts(cells)
	if len(texts) < 2 || len(texts) > mostUnitCells || slices.ContainsFunc(texts, func(text string) bool { return len(text) > MaxTitle }) {
		return false
	}
	if _, in, ok := strings.Cut(texts[0], "("); ok && !strings.Contains(in, ")") && strings.HasSuffix(texts[len(texts)-1], ")") {
		texts[0] = in
	}
	if len(texts) > 2 && !unitsOf(lex, texts[0]) {
		if v := lex.Read(celltext.Shorten(texts[0])).Verdict; v == headings.Known || v == headings.Sizes || v == headings.Asks {
			return false
		}
		texts = texts[1:] // the name of the job
	}
	several := false // one of them names more than one figure, as no heading does
	for _, text := range texts {
		if !unitsOf(lex, text) {
			return false
		}
		several = several || !slices.ContainsFunc(headings.Tokens(text), func(w string) bool { return slices.Contains(ofOne, w) })
	}
	return several
}

// unitsOf reports a text that says in which unit something is: sizes in mm.
func unitsOf(lex *headings.Lexicon, text string) bool {
	if len(text) > MaxTitle {
		return false
	}
	words := headings.Tokens(text)
	if len(words) > 6 || !namesUnit(words) {
		return false
	}
	of := slices.IndexFunc(words, func(w string) bool {
		return lex.Dimension(w) || slices.Contains(measures, w) || slices.Contains(ofSections, w) || slices.Contains(ofLengths, w) && w != "l"
	})
	return of == 0 || of == 1
}

// namesUnit reports words that end in a unit of length, but for a bracket.
func namesUnit(words []string) bool {
	n := len(words) - 1
	if n < 1 {
		return false
	}
	u, ok := quantity.UnitOf(words[n])
	return ok && u.Measure == takeoff.Lengths && words[n] != "l"
}

// OfLengths reads a line of lengths, and of nothing else, in metres or feet: Lengths in m.
func OfLengths(lex *headings.Lexicon, text string) (u quantity.Unit, ok bool) {
	if len(text) > MaxTitle {
		return u, false
	}
	words := headings.Tokens(text)
	if len(words) > 3 || !namesUnit(words) || !slices.Contains(ofLengths, words[0]) || lex.Dimension(words[0]) {
		return u, false
	}
	u, _ = quantity.UnitOf(words[len(words)-1])
	return u, u.Name == "m" || u == quantity.Foot
}

// ofOne are words of measures that head a column as well as they begin a line, in seven
// languages (from memory, unverified).
var ofOne = []string{"length", "lange", "longueur", "lengte", "langd", "longitud", "lunghezza", "dim", "dimension", "misura", "medida", "measure", "section", "querschnitt", "seccion", "sezione", "doorsnede"}

// ofSections are words for cross-sections in such a line, in seven languages (from memory,
// unverified).
var ofSections = []string{"section", "sections", "querschnitt", "querschnitte", "hohen", "seccion", "secciones", "sezione", "sezioni", "doorsnede", "doorsneden", "afmetingen", "tvarsnitt", "largeurs", "hauteurs", "breedtes", "hoogtes", "bredder", "hojder", "anchos", "altos", "larghezze", "altezze"}

// PinnedUnit is the one unit of lengths that a short text names: inches throughout, in cm.
func PinnedUnit(text string) (u quantity.Unit, ok bool) {
	words := headings.Tokens(text)
	if len(words) > 6 || OnInsulation(text) {
		return u, false
	}
	for i, w := range words {
		x, unit := quantity.UnitOf(w)
		if !unit || x.Measure != takeoff.Lengths || w == "in" && len(words) > 1 || len(w) == 1 && w != "m" || i > 0 && strings.Trim(words[i-1], "0123456789") == "" {
			continue
		}
		if ok && x != u {
			return quantity.Unit{}, false
		}
		u, ok = x, true
	}
	return u, ok
}
