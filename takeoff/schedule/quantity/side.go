package quantity

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"
)

// The letters and words that say which side a figure is: width, breadth, Breite,
// breedte, bredd and base begin with w or b, height, Höhe, hauteur, hoogte and
// höjd with h. An l may be a length, and an a or d may be either side, so that
// they say nothing. From memory, unverified.
const sideWords = `w|b|h|width|height|wide|high|breite|höhe|hoehe|breit|hoch|largeur|hauteur|breedte|hoogte|bredd|höjd|ancho|alto|larghezza|altezza|base`

var (
	sideBefore = regexp.MustCompile(`(?i)^(` + sideWords + `)\.?\s*[=:]?\s*(\d.*)$`)
	sideAfter  = regexp.MustCompile(`(?i)^(\d(?:.*[\d"'.\s])?)\s*(` + sideWords + `)\.?$`)
	square     = regexp.MustCompile(`(?i)^(\d.*?)\s*\b(?:sq\.?|square)$`)
	bracketed  = regexp.MustCompile(`^.*\d.*?\s*([(\[][^)\]]*[)\]])$`)
)

// side takes the word for a side off a figure; high says which it was.
func side(t string) (figure string, said, high bool) {
	if !strings.ContainsFunc(t, unicode.IsLetter) {
		return t, false, false
	}
	word := ""
	if m := sideBefore.FindStringSubmatch(t); m != nil {
		word, figure = m[1], m[2]
	} else if m := sideAfter.FindStringSubmatch(t); m != nil {
		figure, word = strings.TrimSpace(m[1]), m[2]
	} else {
		return t, false, false
	}
	word = strings.ToLower(word)
	return figure, true, word[0] == 'h' || word[:1] == "a" && word != "ancho"
}

// sides takes the words off two figures that say which side they are: "H400" and
// "W600". swapped says that the height comes first.
func sides(a, b string) (first, second string, swapped bool, trouble string) {
	first, saidA, highA := side(a)
	second, saidB, highB := side(b)
	const form = "; write W600 x H400, or 600x400 with the width first"
	switch {
	case saidA != saidB:
		trouble = "doesn't say plainly which side each figure is" + form
	case saidA && highA == highB:
		trouble = "gives the same side twice" + form
	}
	return first, second, highA, trouble
}

// beside says what is wrong with a size that has something in brackets behind
// it, which may change what the size means: "600x400 (internal)".
func beside(t string) (trouble string) {
	m := bracketed.FindStringSubmatch(t)
	if m == nil {
		return ""
	}
	return fmt.Sprintf("holds '%s' beside the size, which may change what it means; write the size alone and the rest in a column of its own (size_is says whether sizes are clear of a lining)", m[1])
}
