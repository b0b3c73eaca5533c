package wording

import (
	"regexp"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// Words for shapes in lines above the headings, in names of sheets and in remarks, in
// seven languages (from memory, unverified).
var (
	OvalWord  = regexp.MustCompile(`(?i)\b(?:flat[\s-]*)?oval(?:e|i|es|er|rohre?|kan[aä]le?|e kanaler)?\b|\bflachoval`)
	RoundWord = regexp.MustCompile(`(?i)\b(?:round|circular|circulaires?|circolari?|circulares?|spiral(?:ly)?|spiro\w*|rund\w*|ronde?|wickelfalz\w*)\b`)
	RoundNote = regexp.MustCompile(`(?i)^\s*(?:round|circular|spiral|circulaire|rund|rond|redondo|tondo|cirkulär|[øØ⌀]\s*\d+)(?:\s*(?:duct|kanal|gaine|kanaal|rohr|conducto|canale))?\s*$`)
	RectWord  = regexp.MustCompile(`(?i)\b(?:rect\w*|rechteck\w*|rechthoekig\w*|rektangul\w*|rettangol\w*|square)\b`)
)

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
