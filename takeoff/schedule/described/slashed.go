package described

import (
	"regexp"
	"strconv"
	"strings"

	"blankoff/fittings"
)

// Sides writes a size as 600/400 as width and height, where it is that of a straight, which
// can't have two diameters; word is what the row calls it.
func (k Kinds) Sides(word string, shape fittings.Shape, size string) string {
	m := slashed.FindStringSubmatch(size)
	if m == nil || shape == fittings.Circular || pipeWord.MatchString(word) {
		return size
	}
	a, _ := strconv.Atoi(m[1])
	b, _ := strconv.Atoi(m[2])
	if max(a, b) > 8*min(a, b) { // perhaps a diameter and a length
		return size
	}
	return m[1] + "x" + m[2] + m[3]
}

// Diameters writes a size as 400/315 as two diameters.
func Diameters(size string) string {
	if m := slashed.FindStringSubmatch(size); m != nil {
		return "Ø" + m[1] + m[3] + "/Ø" + m[2] + m[3]
	}
	return size
}

// Slashed reports a size of two whole figures with a stroke between them.
func Slashed(size string) bool {
	return len(size) < 20 && strings.ContainsAny(size, "/-–") && slashed.MatchString(size)
}

// SlashWithin reports a size of two whole figures with a stroke between them among other
// words.
func SlashWithin(cell string) bool {
	return strings.Contains(cell, "/") && slashWithin.MatchString(cell)
}

var slashWithin = regexp.MustCompile(`\b\d{2,4} ?/ ?\d{2,4}\b`)

var (
	slashed  = regexp.MustCompile(`^\s*(\d{2,4})\s*[/–-]\s*(\d{2,4})(\s*mm)?\s*$`)
	pipeWord = regexp.MustCompile(`(?i)\b(?:\w*rohre?|tubes?|pipes?|\w*buis|\w*rör|tubos?|tubi)\b`)
)
