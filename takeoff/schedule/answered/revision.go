package answered

import (
	"slices"
	"strings"

	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// OfRevisions reports a heading of the revisions of rows, and not of their drawings.
func OfRevisions(typed string) bool {
	words := headings.Tokens(typed)
	return len(words) > 0 && len(words) < 4 && revisionWords[words[0]] && !slices.ContainsFunc(words[1:], func(w string) bool {
		return !slices.Contains([]string{"no", "nr", "number", "index", "letter", "code", "id"}, w)
	})
}

// revisionWords head columns of revisions, in seven languages (from memory, unverified).
var revisionWords = wording.SetOf("rev revs revision revisie revisione version ver versie versione index ind indice issue ausgabe stand fassung anderungsindex aenderungsindex edition edicion edizione utgava andring uitgave emision emissione variant variante alternative alternativ alternatief alternativa alternativo option opcion opzione optie")

// MayBeRevision reports a cell that may be a revision, as A, P01, 2, rev B, or under a heading
// of variants name one.
func MayBeRevision(typed, cell string) bool {
	return len(cell) < 7 || len(cell) < 40 && ofVariants(typed)
}

// ofVariants reports a heading of variants.
func ofVariants(typed string) bool {
	words := headings.Tokens(typed)
	return len(words) > 0 && (strings.HasPrefix(words[0], "varia") || strings.HasPrefix(words[0], "alternati") || strings.HasPrefix(words[0], "op"))
}

// RevisionMark marks a revision: others have other marks, as a rule. It isn't 0.
func RevisionMark(cell string) (mark uint16) {
	for i := range min(len(cell), 8) {
		mark = mark*37 + uint16(cell[i]|0x20)
	}
	return max(mark, 1)
}
