package described

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// fittingNames are words for pieces that aren't straights, and otherThings for no ductwork,
// that no kind is called by, in seven languages (from memory, unverified).
var (
	fittingNames = []string{"tee", "tees", "fitting", "fittings", "formteil", "formteile", "formstuck", "formstucke", "formstueck", "formstuecke", "raccord", "raccords", "hulpstuk", "hulpstukken",
		"accesorio", "accesorios", "accessori", "speciali", "accessoire", "accessoires", "accessory", "accessories", "detaljer", "elbows", "curve", "gomiti", "riduzioni"}
	otherThings = []string{"pipe", "pipes", "pipework", "cable", "cables", "tray", "trays", "trunking", "weights", "summary", "totals", "rohrleitungen", "tuyauterie", "tuberia", "tubazioni", "leidingen"}
)

// otherSense are words for kinds that mean something else as often.
var otherSense = []string{"cross", "fond", "boden", "lock", "tapa", "registre", "abzweig", "derivacion", "derivation", "piquage", "kors", "kreuz", "croix", "versatz", "knee", "stub", "collar", "saddle", "plan",
	"abzweigung", "abzweigungen", "kreuzung", "kruis", "kryss", "cruces", "croci", "crociera", "derivaciones", "canvas", "lona", "overgang"}

// NamesFitting reports a text with a word for a piece that is no straight, or for
// fittings as such: cut beside bend, Bends and reducers.
func (k Kinds) NamesFitting(text string) bool {
	if len(text) > 200 {
		text = text[:200]
	}
	words := headings.Tokens(text)
	for i := 0; i < len(words); i++ {
		if slices.Contains(fittingNames, words[i]) || strings.HasPrefix(words[i], "formteil") || strings.HasPrefix(words[i], "formst") {
			return true
		}
		for n := min(4, len(words)-i); n > 0; n-- {
			kind := k.named(words[i : i+n])
			if kind == fittings.NoKind {
				continue
			}
			if kind != fittings.Straight {
				return true
			}
			i += n - 1
			break
		}
	}
	return false
}

// fittingCodes are short forms of fittings as offices number them: BD90, RED (common practice,
// no source; from memory, unverified).
var fittingCodes = []string{"bd", "bnd", "bend", "el", "elb", "elbow", "ell", "red", "rdc", "rdr", "tee", "tpr", "taper", "trans", "trn", "trf", "ofs", "ofst", "offs", "sqr", "s2r", "ecap", "vcd", "mfd", "bog", "etg", "wye"}

// OfColours reports a heading of colours, among which red is one.
func OfColours(heading string) bool {
	return slices.ContainsFunc(headings.Tokens(heading), func(w string) bool {
		return slices.Contains([]string{"colour", "color", "ral", "farbe", "couleur", "kleur", "colore", "farg"}, w)
	})
}

// FittingCode reports a cell that is short for a fitting, with a number or without: BD90, RED.
func FittingCode(cell string) bool {
	if len(cell) < 2 || len(cell) > 9 {
		return false
	}
	for i := range len(cell) {
		if c := cell[i]; c >= 'a' && c <= 'z' { // a word
			return false
		}
	}
	word := strings.TrimRight(cell, "0123456789")
	if len(cell)-len(word) > 3 { // a height above the ground
		return false
	}
	word = strings.TrimRight(word, "-_ /")
	return len(word) > 1 && slices.Contains(fittingCodes, strings.ToLower(word))
}

// OfOthers reports a title of fittings, or of what isn't ductwork: Grille schedule. What may
// be a part of the ductwork isn't: Delivery note.
func (k Kinds) OfOthers(title string) bool {
	return k.OfOtherThings(title) || wording.Summary.MatchString(title) || slices.ContainsFunc(headings.Tokens(title), func(w string) bool { return len(w) > 3 && k.Lex.Apart(w) && !k.Lex.Part(w) })
}

// OfOtherThings reports a heading of fittings, or of pipes and the like.
func (k Kinds) OfOtherThings(heading string) bool {
	return k.NamesFitting(heading) || slices.ContainsFunc(headings.Tokens(heading), func(w string) bool { return slices.Contains(otherThings, w) })
}

// named is the kind that words are the whole name of, one or several.
func (k Kinds) named(words []string) fittings.Kind {
	name := strings.Join(words, " ")
	for _, ending := range [...]string{"", "s", "e", "en", "n", "es", "ar"} {
		one, ends := strings.CutSuffix(name, ending)
		if !ends || len(words) == 1 && len(one) < 4 {
			continue
		}
		if places, _ := k.Lex.Place(one); len(words) == 1 && (len(places) > 0 || slices.Contains(otherSense, one)) {
			return fittings.NoKind
		}
		w, known := k.Lex.Exact(takeoff.Kind, one)
		if !known {
			w = one
		}
		if kind, _, _, ok := fittings.ParseDescription(w); ok {
			return kind
		}
	}
	return fittings.NoKind
}
