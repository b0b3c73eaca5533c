package quantity

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"
)

// The letters and words that say which side a figure is: width, breadth, Breite,
// breedte, bredd and base begin with w or b, height, Höhe, hauteur, hoogte and
// höjd with h. A depth is the height where the other figure is a width. An l may be a
// length, and an a may be either side, so that they say nothing. From memory, unverified.
const sideWords = `w|b|h|d|depth|deep|t|tiefe|tief|profondeur|diepte|djup|width|height|wide|high|breite|höhe|hoehe|breit|hoch|largeur|hauteur|breedte|hoogte|bredd|höjd|ancho|alto|larghezza|altezza|base`

var (
	sideBefore = regexp.MustCompile(`(?i)^(` + sideWords + `)\.?\s*[=:]?\s*(\d.*)$`)
	sideAfter  = regexp.MustCompile(`(?i)^(\d(?:.*[\d"'.\s])?)\s*(` + sideWords + `)\.?$`)
	square     = regexp.MustCompile(`(?i)^(\d.*?)\s*\b(?:sq\.?|square)$`)
	bracketed  = regexp.MustCompile(`^.*\d.*?\s*([(\[][^)\]]*[)\]])$`)
)

// What the word at a figure says of it.
const (
	silent = iota
	wide
	upright
	deep // upright beside a width
)

// side takes the word for a side off a figure.
func side(t string) (figure string, says int) {
	if !strings.ContainsFunc(t, unicode.IsLetter) {
		return t, silent
	}
	word := ""
	if m := sideBefore.FindStringSubmatch(t); m != nil {
		word, figure = m[1], m[2]
	} else if m := sideAfter.FindStringSubmatch(t); m != nil {
		figure, word = strings.TrimSpace(m[1]), m[2]
	} else {
		return t, silent
	}
	word = strings.ToLower(word)
	switch {
	case word[0] == 'h' || word[0] == 'a' && word != "ancho":
		return figure, upright
	case word[0] == 'd' || word[0] == 't' || word[0] == 'p':
		return figure, deep
	}
	return figure, wide
}

// sides takes the words off two figures that say which side they are: "H400" and
// "W600". swapped says that the height comes first.
func sides(a, b string) (first, second string, swapped bool, trouble string) {
	first, saysA := side(a)
	second, saysB := side(b)
	const form = "; write W600 x H400, or 600x400 with the width first"
	switch {
	case saysA == silent && saysB == silent:
	case saysA == wide && saysB == deep, saysA == deep && saysB == wide:
	case saysA == silent || saysB == silent || saysA == deep || saysB == deep:
		trouble = "doesn't say plainly which side each figure is" + form
	case saysA == saysB:
		trouble = "gives the same side twice" + form
	}
	return first, second, saysA == upright || saysA == deep, trouble
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
