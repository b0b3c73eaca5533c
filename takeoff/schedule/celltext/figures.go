package celltext

import (
	"strconv"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/quantity"
)

// IsSize reports a cell that holds a whole cross-section.
func IsSize(cell string) bool {
	c := quantity.Column{Unit: quantity.Millimetre, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths)}
	_, trouble := c.Sizes(cell)
	return trouble == ""
}

// OfWords reports a cell of several words.
func OfWords(cell string) bool { return len(strings.Fields(cell)) > 1 }

// IsFigure reports a number.
func IsFigure(cell string) bool { return strings.Trim(cell, "0123456789., ") == "" }

// NamesPieces reports figures of three digits and more that are all different, as numbers
// of pieces are.
func NamesPieces(cells []string) bool {
	seen := map[string]bool{}
	for _, c := range cells {
		if n, _ := Count(c); n < 100 || seen[c] {
			return false
		}
		seen[c] = true
	}
	return true
}

// IsCount reports a small whole number.
func IsCount(cell string) bool { n, ok := Count(cell); return ok && n > 0 && n < 500 }

// NumbersRows reports figures that may number rows or drawings: none stands there twice,
// and each is larger than the one before.
func NumbersRows(cells []string) bool {
	if len(cells) < 2 {
		return true
	}
	last := -1
	for _, c := range cells {
		n, _ := Count(c)
		if n <= last {
			return false
		}
		last = n
	}
	return true
}

// LoneFigures reports words of a size of which one is a figure and the next begins with
// one: 1 600x400.
func LoneFigures(words []string) bool {
	for i := range len(words) - 1 {
		if strings.Trim(words[i], "0123456789.,") == "" && words[i+1] != "" && Digit(words[i+1][0]) {
			return true
		}
	}
	return false
}

// HasDigit reports a text with a figure in it.
func HasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }

// HasWord reports a text with three letters next to each other, or one beyond ASCII.
func HasWord(s string) bool {
	run := 0
	for i := range len(s) {
		switch c := s[i] | 0x20; {
		case s[i] >= 0x80:
			return true
		case c >= 'a' && c <= 'z':
			if run++; run > 2 {
				return true
			}
		default:
			run = 0
		}
	}
	return false
}

// FirstWord is the text up to the first space.
func FirstWord(s string) string {
	word, _, _ := strings.Cut(s, " ")
	return word
}

// Digit reports a byte that is one.
func Digit(c byte) bool { return c >= '0' && c <= '9' }

// AllDigits reports a whole number without a sign.
func AllDigits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// CutDigits parts the figures at the end of a name from what is before them.
func CutDigits(name string) (before, figures string) {
	n := len(name)
	for n > 0 && Digit(name[n-1]) {
		n--
	}
	return name[:n], name[n:]
}

// Count reads a cell that may be a count: 4, 4.00, 4 no.
func Count(cell string) (int, bool) {
	end := 0
	for end < len(cell) && Digit(cell[end]) {
		end++
	}
	n, err := strconv.Atoi(cell[:end])
	if err != nil || n > 999 {
		return 0, false
	}
	rest := strings.TrimLeft(cell[end:], "0.,")
	if len(cell[end:])-len(rest) == 1 { // 4. or 4,
		return 0, false
	}
	if rest = Trim(rest); rest == "" || strings.EqualFold(rest, "x") {
		return n, true
	}
	u, ok := quantity.UnitOf(rest)
	return n, ok && u.Measure == takeoff.Count
}
