// Package terms holds the words of a schedule that aren't about the piece itself:
// whether it is in the test, how it is joined and blanked, on which side and when it
// is tested; and how tags are put in order and sizes are written.
package terms

import "strings"

// Scope says whether a piece takes part in the test.
type Scope uint8

// The scopes. A piece in Through stays in the test and its area isn't counted;
// one that is Out breaks the section and is blanked on both sides.
const (
	In Scope = iota
	Out
	Through
)

// String gives the schedule's word.
func (s Scope) String() string { return [...]string{"in", "out", "through"}[s] }

// Joint says how a piece is joined to the piece towards the plant.
type Joint uint8

// The joints. A welded joint can't be blanked.
const (
	UnstatedJoint Joint = iota
	Flanged
	Slip
	Welded
)

// String gives the schedule's word.
func (j Joint) String() string { return [...]string{"", "flanged", "slip", "welded"}[j] }

// Blank is what blank_minutes says of the joint to from.
type Blank struct {
	Never bool    // "no": the joint can't be blanked
	Must  bool    // "must": the joint has to be blanked
	Given bool    // Minutes was given
	Price float64 // minutes, the whole price of a cut there, both sides, both tests
}

// Fold reduces a word to lower-case letters and digits, so that case, spaces
// and punctuation don't matter.
func Fold(s string) string {
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

var scopes = map[string]Scope{
	"": In, "in": In, "yes": In, "test": In, "intest": In,
	"out": Out, "no": Out, "excluded": Out, "notintest": Out,
	"through": Through, "measuredthrough": Through, "areaexcluded": Through,
}

var joints = map[string]Joint{
	"": UnstatedJoint, "flanged": Flanged, "flange": Flanged,
	"slip": Slip, "sliponjoint": Slip, "slipjoint": Slip, "spigotandsocket": Slip, "push": Slip,
	"welded": Welded, "weld": Welded,
}

// ParseScope reads the scope of a piece; "" is in.
func ParseScope(s string) (Scope, bool) { v, ok := scopes[Fold(s)]; return v, ok }

// ParseJoint reads how a piece is joined; "" isn't stated.
func ParseJoint(s string) (Joint, bool) { v, ok := joints[Fold(s)]; return v, ok }

// KnownScope reports a word for what is in the test.
func KnownScope(s string) bool { _, ok := ParseScope(s); return ok }

// KnownJoint reports a word for a way of joining pieces.
func KnownJoint(s string) bool { _, ok := ParseJoint(s); return ok }

// ParseSign reads the sign of the test pressure; "" stays "".
func ParseSign(s string) (string, bool) {
	switch Fold(s) {
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

// MostMinutes is the greatest price of a blank; more is a slip of the pen.
const MostMinutes = 10000

// ParseBlank reads blank_minutes: a number, no, must, or must and a number.
func ParseBlank(s string, number func(string) (float64, bool)) (Blank, bool) {
	if s == "" { // most rows
		return Blank{}, true
	}
	w := strings.ToLower(strings.TrimSpace(s))
	switch w {
	case "":
		return Blank{}, true
	case "no", "never":
		return Blank{Never: true}, true
	case "must":
		return Blank{Must: true}, true
	}
	var b Blank
	if rest, ok := strings.CutPrefix(w, "must"); ok {
		b.Must, w = true, strings.TrimSpace(rest)
	}
	v, ok := number(w)
	if !ok || v < 0 || v > MostMinutes {
		return Blank{}, false
	}
	b.Given, b.Price = true, v
	return b, true
}
