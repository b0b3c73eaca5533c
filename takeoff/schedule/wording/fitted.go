package wording

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// fittingNames are words for pieces that aren't straights, or for no ductwork, that no
// kind is called by, in seven languages (from memory, unverified).
var fittingNames = []string{"fitting", "fittings", "formteil", "formteile", "formstuck", "formstucke", "formstueck", "formstuecke", "raccord", "raccords", "hulpstuk", "hulpstukken",
	"accesorio", "accesorios", "accessori", "speciali", "accessoire", "accessoires", "accessory", "accessories", "detaljer", "elbows",
	"pipe", "pipes", "pipework", "cable", "cables", "tray", "trays", "trunking", "hangers", "weights", "summary", "totals"}

// otherSense are words for kinds that mean something else as often.
var otherSense = []string{"cross", "fond", "boden", "lock", "tapa", "registre", "abzweig", "derivacion", "derivation", "piquage", "kors", "kreuz", "croix", "versatz", "knee", "stub", "collar", "saddle", "plan"}

// NamesFitting reports a text with a word for a piece that is no straight, or for
// fittings as such: cut beside bend, Bends and reducers.
func (k Kinds) NamesFitting(text string) bool {
	if len(text) > 200 {
		text = text[:200]
	}
	words := headings.Tokens(text)
	for i := 0; i < len(words); i++ {
		if slices.Contains(fittingNames, words[i]) || len(words[i]) > 3 && k.Lex.Apart(words[i]) {
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

// named is the kind that words are the whole name of.
func (k Kinds) named(words []string) fittings.Kind {
	name := strings.Join(words, " ")
	if len(words) == 1 {
		if places, _ := k.Lex.Place(name); len(name) < 4 || len(places) > 0 || slices.Contains(otherSense, name) {
			return fittings.NoKind
		}
	}
	for _, one := range [...]string{name, strings.TrimSuffix(name, "s")} {
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
