package headings

import (
	"strings"

	"blankoff/takeoff/schedule/quantity"
)

// bothTongues settles a heading that says the same twice, as in two languages: Breite / Width
// (mm), Länge (Length). Each part has to be known by itself, and to mean the same.
func (l *Lexicon) bothTongues(h *Heading) bool {
	parts := strings.FieldsFunc(h.Typed, func(r rune) bool { return r == '/' || r == '|' || r == '\n' || r == '(' || r == '[' })
	if len(parts) < 2 || len(parts) > 4 {
		return false
	}
	var found []Heading
	var u quantity.Unit
	said := false
	for _, part := range parts {
		part = strings.Trim(part, " )]-–")
		words := Tokens(part)
		if len(words) == 0 {
			return false
		}
		if x, ok := quantity.UnitOf(strings.Join(words, "")); ok && len(found) > 0 && part == strings.ToLower(part) {
			if said && x != u {
				return false
			}
			u, said = x, true
			continue
		}
		one := Heading{Typed: part}
		if _, ok := l.settle(&one, words); !ok || one.Verdict != Known && one.Verdict != Sizes && one.Verdict != Asks {
			return false
		}
		if one.Said && one.Verdict != Asks && !strings.Contains(part, "_") {
			if said && one.Unit != u {
				return false
			}
			u, said = one.Unit, true
		}
		found = append(found, one)
	}
	if len(found) < 2 {
		return false
	}
	first := found[0]
	for _, x := range found[1:] {
		if x.Verdict != first.Verdict || x.Column != first.Column || x.Size != first.Size || x.Ask != first.Ask {
			return false
		}
	}
	if said && first.Verdict != Asks {
		if first.Verdict == Known && !takes(first.Column, u) || first.Verdict == Sizes && u.Measure != quantity.Millimetre.Measure {
			return false
		}
		first.Unit, first.Said = u, true
	}
	first.Typed = h.Typed
	*h = first
	return true
}
