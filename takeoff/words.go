package takeoff

import (
	"strings"

	"blankoff/fittings"
)

// fold reduces a word to lower-case letters and digits, so that case, spaces
// and punctuation don't matter.
func fold(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '+', r > 127:
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return -1
	}, s)
}

var scopes = map[string]ScopeWord{
	"": In, "in": In, "yes": In, "test": In, "intest": In,
	"out": Out, "no": Out, "excluded": Out, "notintest": Out,
	"through": Through, "measuredthrough": Through, "areaexcluded": Through,
}

var joints = map[string]JointWord{
	"": UnstatedJoint, "flanged": Flanged, "flange": Flanged,
	"slip": Slip, "sliponjoint": Slip, "slipjoint": Slip, "spigotandsocket": Slip, "push": Slip,
	"welded": Welded, "weld": Welded,
}

// lately is what words were understood as: most words of a column stand on many
// rows, often one below the other.
type lately[T any] struct {
	word string // the last
	is   T
	ok   bool
	met  map[string]T
}

// of understands a word, by read where it is met for the first time.
func (l *lately[T]) of(word string, read func(string) (T, bool)) (T, bool) {
	if l.ok && word == l.word {
		return l.is, true
	}
	if l.is, l.ok = l.met[word]; l.ok {
		l.word = word
		return l.is, true
	}
	l.word = strings.Clone(word) // it may be part of a long text
	if l.is, l.ok = read(l.word); l.ok {
		if l.met == nil || len(l.met) > mostFiled {
			l.met = map[string]T{}
		}
		l.met[l.word] = l.is
	}
	return l.is, l.ok
}

func parseScope(s string) (ScopeWord, bool) { v, ok := scopes[fold(s)]; return v, ok }
func parseJoint(s string) (JointWord, bool) { v, ok := joints[fold(s)]; return v, ok }

// KnownScope reports a word for what is in the test.
func KnownScope(s string) bool { _, ok := parseScope(s); return ok }

// KnownJoint reports a word for a way of joining pieces.
func KnownJoint(s string) bool { _, ok := parseJoint(s); return ok }

// described is what a description says of a piece.
type described struct {
	kind  fittings.Kind
	style fittings.Style
	shape fittings.Shape
}

func parseDescription(s string) (d described, ok bool) {
	d.kind, d.style, d.shape, ok = fittings.ParseDescription(s)
	return d, ok
}

// ParseSign reads the sign of the test pressure; "" stays "".
func ParseSign(s string) (string, bool) {
	switch fold(s) {
	case "":
		if strings.TrimSpace(s) == "-" {
			return "negative", true
		}
		return "", strings.TrimSpace(s) == ""
	case "positive", "pos", "+", "over", "overpressure":
		return "positive", true
	case "negative", "neg", "suction", "under", "underpressure":
		return "negative", true
	}
	return "", false
}

// parseBlank reads blank_minutes: a number, no, must, or must and a number.
func parseBlank(s string, number func(string) (float64, bool)) (BlankRule, bool) {
	w := strings.ToLower(strings.TrimSpace(s))
	switch w {
	case "":
		return BlankRule{}, true
	case "no", "never":
		return BlankRule{Never: true}, true
	case "must":
		return BlankRule{Must: true}, true
	}
	var b BlankRule
	if rest, ok := strings.CutPrefix(w, "must"); ok {
		b.Must, w = true, strings.TrimSpace(rest)
	}
	v, ok := number(w)
	if !ok || v < 0 || v > maxMinutes {
		return BlankRule{}, false
	}
	b.Given, b.Price = true, v
	return b, true
}

// NaturalLess orders tags as people do: D2 before D10.
func NaturalLess(a, b string) bool {
	i, j := 0, 0
	for i < len(a) && j < len(b) {
		if digit(a[i]) && digit(b[j]) {
			x, ni := digits(a, i)
			y, nj := digits(b, j)
			if len(x) != len(y) {
				return len(x) < len(y)
			}
			if x != y {
				return x < y
			}
			i, j = ni, nj
			continue
		}
		if a[i] != b[j] {
			return a[i] < b[j]
		}
		i++
		j++
	}
	if len(a)-i != len(b)-j {
		return len(a)-i < len(b)-j
	}
	return a < b // equal but for leading zeros
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// digits returns the number at s[i:] without leading zeros, and where it ends.
func digits(s string, i int) (string, int) {
	j := i
	for j < len(s) && digit(s[j]) {
		j++
	}
	return strings.TrimLeft(s[i:j], "0"), j
}
