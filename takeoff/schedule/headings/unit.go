package headings

import (
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/quantity"
)

// unitAtEnd understands the last k words as a unit. L (m) isn't the running metre.
func unitAtEnd(words []string, k int) (quantity.Unit, bool) {
	u, ok := quantity.UnitOf(strings.Join(words[len(words)-k:], ""))
	return u, ok && (k == 1 || u.Measure != takeoff.Lengths || len(words[len(words)-k]) > 1)
}

// measured settles a heading of a length that ends in its unit: "dia (m)" isn't
// diam, whose unit nobody says.
func (l *Lexicon) measured(h *Heading, words []string) bool {
	n := len(words) - 1
	if n < 1 {
		return false
	}
	u, ok := quantity.UnitOf(words[n])
	if !ok || u.Measure != takeoff.Lengths {
		return false
	}
	try := Heading{Typed: h.Typed, Unit: u, Said: true, InchesToo: h.InchesToo}
	if !l.means(&try, strings.Join(words[:n], "")) || try.Verdict != Sizes && (try.Verdict != Known || try.Column.Measure() != takeoff.Lengths) {
		return false
	}
	*h = try
	return true
}

// glued parts a unit from the word that it is written to: "widthmm".
func glued(word string) (rest string, u quantity.Unit, ok bool) {
	for _, s := range [...]string{"mm", "cm", "deg", "kpa", "pa", "m2"} {
		if rest, ok = strings.CutSuffix(word, s); ok && len(rest) > 1 {
			u, ok = quantity.UnitOf(s)
			return rest, u, ok
		}
	}
	return word, u, false
}

// canonicalUnit takes the unit from a canonical heading, which ends in it.
func (h *Heading) canonicalUnit(name string) {
	h.Unit = quantity.Default(h.Column.Measure())
	h.Said = name == Squash(h.Column.Heading())
}

// takes reports whether a heading of column c may say unit u.
func takes(c takeoff.Column, u quantity.Unit) bool {
	if c == takeoff.BlankMinutes {
		return u == quantity.Minute
	}
	return u.Measure == c.Measure() && c.Measure() != takeoff.Text
}
