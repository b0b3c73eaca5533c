package described

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
)

// LooksSized reports a row that may be a piece though no known headings stand above it: a
// kind with figures, a cross-section and a number, or three numbers of which two may be
// sides. Rows of grilles, fans and the like aren't.
func (k Kinds) LooksSized(cells []string) bool {
	sizes, numbers, sides := 0, 0, 0
	for _, cell := range cells {
		cell = celltext.Trim(cell)
		switch {
		case cell == "" || len(cell) > wording.MaxTitle:
		case !celltext.HasDigit(cell):
			if k.Lex.Apart(cell) {
				return false
			}
		case quantity.Combined(cell):
			sizes++
		default:
			if v, err := strconv.ParseFloat(strings.Replace(cell, ",", ".", 1), 64); err == nil && v > 0 {
				numbers++
				if mayBeSide(v) {
					sides++
				}
			} else if sizeWithin.MatchString(cell) && k.NamesGroup(cell) {
				return true
			}
		}
	}
	return sizes == 1 && numbers > 0 || sizes == 0 && numbers > 2 && sides > 1
}

// sizeWithin is a cross-section in a description.
var sizeWithin = regexp.MustCompile(`\d{2,4}\s*[xX×*]\s*\d{2,4}`)

// NoDuctwork reports the name of a sheet of grilles, fans and the like, or of sums.
func (k Kinds) NoDuctwork(name string) bool {
	return wording.Summary.MatchString(name) || slices.ContainsFunc(headings.Tokens(name), func(w string) bool { return len(w) > 2 && (k.Lex.Apart(w) || slices.Contains(otherThings, w)) })
}

// mayBeSide reports a side as most are, mm.
func mayBeSide(v float64) bool { return v >= 100 && v <= 3000 && math.Mod(v, 50) == 0 }
