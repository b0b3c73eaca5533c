package celltext

import (
	"slices"
	"strings"
	"unicode"

	"blankoff/takeoff/schedule/quantity"
)

// At is a cell without outer white space; cells beyond the last are blank.
func At(cells []string, i int) string {
	if i < len(cells) {
		return Trim(cells[i])
	}
	return ""
}

// Filled lists the cells that aren't blank.
func Filled(cells []string) (filled []int) {
	for i := range cells {
		if Trim(cells[i]) != "" {
			filled = append(filled, i)
		}
	}
	return filled
}

// Texts is the cells that aren't blank.
func Texts(cells []string) (out []string) {
	for _, i := range Filled(cells) {
		out = append(out, Trim(cells[i]))
	}
	return out
}

// IsRuler reports a row of nothing but strokes.
func IsRuler(cells []string, filled []int) bool {
	return !slices.ContainsFunc(filled, func(i int) bool { return len(cells[i]) < 3 || strings.Trim(cells[i], "-=_*~. \t") != "" })
}

// Labels reports a row of labels with what they stand for: System: | AHU 4 | Class: | B.
func Labels(cells []string) bool {
	ended, filled := 0, Texts(cells)
	for _, c := range filled {
		if strings.HasSuffix(c, ":") {
			ended++
		}
	}
	return ended > 0 && ended < len(filled)
}

// AllUnits reports a row of units.
func AllUnits(cells []string, filled []int) bool {
	return !slices.ContainsFunc(filled, func(i int) bool { _, ok := quantity.UnitOf(strings.Trim(Trim(cells[i]), "()[]")); return !ok })
}

// LastFilled is the number of cells up to the last filled one.
func LastFilled(cells []string) int {
	last := len(cells)
	for last > 0 && Trim(cells[last-1]) == "" {
		last--
	}
	return last
}

// IsLone reports a row of one cell that has a letter.
func IsLone(cells []string, filled []int) bool {
	return len(filled) == 1 && len(cells[filled[0]]) <= MaxWord && strings.ContainsFunc(cells[filled[0]], unicode.IsLetter)
}

// IsTitle reports a row of one cell at the left, under which none stands: a title, and
// not the upper of two heading rows.
func IsTitle(row, below []string) bool {
	return LastFilled(row) == 1 && At(below, 0) == ""
}

// HasFigure reports a row with a cell that begins with a figure: data.
func HasFigure(cells []string) bool {
	return slices.ContainsFunc(cells, func(c string) bool { c = Trim(c); return c != "" && c[0] >= '0' && c[0] <= '9' })
}

// PartedAt reports a whole number before one or two figures in the next cell: a comma for
// decimals may have parted one.
func PartedAt(cells []string, i int) bool {
	if i+1 >= len(cells) {
		return false
	}
	a, b := Trim(cells[i]), Trim(cells[i+1])
	return AllDigits(a) && AllDigits(b) && len(b) < 3
}
