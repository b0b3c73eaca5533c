package xlsx

import "strings"

// The cells' font is Arial at 9 points. A unit of a column's width is 7 pixels at
// 96 to the inch, of which the indent and the edges take some.
const (
	fontSize, unit, edges = 9.0, 5.25, 10.0 // points
	boldFace              = 1.08            // bold over upright
	button                = 10.0            // points below a heading for the filter's button
)

// room is what a column has for text, in sizes of the font.
func room(width float64) float64 { return (unit*width - edges) / fontSize }

// linesOf is about how many lines a text takes in a cell with so much room,
// rather too many than too few.
func linesOf(text string, room float64) int {
	lines, used := 1, 0.0
	for _, word := range strings.Fields(text) {
		n := 0.0
		for _, r := range word {
			n += letter(r)
		}
		if used > 0 && used+space+n > room {
			lines, used = lines+1, 0
		}
		if used > 0 {
			used += space
		}
		for ; n > room && room > 1; n -= room {
			lines++
		}
		used += n
	}
	return lines
}

const space = 0.28

// letter is about the width of a letter of the cells' font, in sizes of the
// font: those of its kind, rounded up.
func letter(r rune) float64 {
	switch {
	case r >= 0x2e80: // wide letters
		return 1
	case strings.ContainsRune("iljtfrI.,:;'|()[]!-/ ", r):
		return 0.34
	case strings.ContainsRune("csvkxyz", r):
		return 0.5
	case strings.ContainsRune("mwMW@%", r):
		return 0.95
	case r >= 'A' && r <= 'Z':
		return 0.73
	}
	return 0.56
}

// height is that of a row of so many lines, points. A sheet has an end to it.
func height(lines int) float64 { return min(409, 3+12*float64(lines)) }
