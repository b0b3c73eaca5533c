package fittings

import (
	"slices"
	"strings"
)

// plain strips a word to its lower-case letters and figures, so that case,
// spaces, hyphens and punctuation don't matter.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		}
		return -1
	}, s)
}

// ParseKind finds the kind that a word of the schedule names: the canonical name
// or an alias, singular or plural.
func ParseKind(s string) (Kind, bool) {
	word := plain(s)
	if k, ok := kindWords[word]; ok {
		return k, true
	}
	k, ok := kindWords[strings.TrimSuffix(word, "s")]
	return k, ok
}

var kindWords = func() map[string]Kind {
	words := map[string]Kind{}
	for _, info := range kinds {
		words[plain(info.Name)] = info.Kind
		for _, alias := range info.Aliases {
			words[plain(alias)] = info.Kind
		}
	}
	return words
}()

// String gives the kind's canonical name, or "" for NoKind.
func (k Kind) String() string {
	if k == NoKind || int(k) > len(kinds) {
		return ""
	}
	return kinds[k-1].Name
}

var styleNames = [...]string{
	NoStyle: "", RadiusStyle: "radius", Mitred: "mitred", Gored: "gored",
	SquareThroat: "square throat", SquareHeel: "square heel", StraightSided: "straight",
	Conical: "conical", Shoe: "shoe", Flat: "flat", Dished: "dished",
}

// String gives the style as the schedule writes it, or "" for NoStyle.
func (s Style) String() string {
	if int(s) >= len(styleNames) {
		return ""
	}
	return styleNames[s]
}

// styleWords holds the trade's other words for each style.
var styleWords = map[string]Style{
	"radius": RadiusStyle, "radiused": RadiusStyle, "smooth": RadiusStyle, "swept": RadiusStyle,
	"mitred": Mitred, "mitered": Mitred, "mitre": Mitred, "miter": Mitred,
	"gored": Gored, "segmented": Gored, "segment": Gored, "lobsterback": Gored,
	"squarethroat": SquareThroat, "squarethroatradiusheel": SquareThroat,
	"squareheel": SquareHeel, "radiusthroatsquareheel": SquareHeel,
	"straight": StraightSided, "straightsided": StraightSided, "plain": StraightSided,
	"conical": Conical, "cone": Conical, "tapered": Conical,
	"shoe": Shoe, "45shoe": Shoe, "45entry": Shoe,
	"flat":   Flat,
	"dished": Dished, "domed": Dished,
}

// ParseStyle finds the style that a word names.
func ParseStyle(s string) (Style, bool) {
	style, ok := styleWords[plain(s)]
	return style, ok
}

var shapeWords = map[string]Shape{
	"rectangular": Rectangular, "rectangle": Rectangular, "rect": Rectangular, "square": Rectangular,
	"circular": Circular, "circle": Circular, "circ": Circular, "round": Circular, "rnd": Circular,
	"flatoval": FlatOval, "oval": FlatOval,
}

// ParseShape finds the shape that a word names: rectangular (rect, square),
// circular (round), flat-oval (oval).
func ParseShape(s string) (Shape, bool) {
	shape, ok := shapeWords[plain(s)]
	return shape, ok
}

// ParsePlane finds the plane that a word names: width or height.
func ParsePlane(s string) (Plane, bool) {
	switch plain(s) {
	case "width", "w":
		return PlaneWidth, true
	case "height", "h":
		return PlaneHeight, true
	}
	return PlaneWidth, false
}

// String gives the plane as the schedule writes it.
func (p Plane) String() string {
	if p == PlaneHeight {
		return "height"
	}
	return "width"
}

// mostWords is more than a kind with its style and shape has.
const mostWords = 12

// ParseDescription reads a kind that is written with its style and shape:
// "mitred bend", "flat oval duct", "eccentric reducer". Every word has to be
// understood, the style has to be one of the kind's, and nothing may be said
// twice; a description that also gives a size or an angle isn't understood.
func ParseDescription(s string) (k Kind, style Style, shape Shape, ok bool) {
	if k, ok = ParseKind(s); ok {
		return k, NoStyle, NoShape, true
	}
	words := strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '-' || r == ',' || r == '/' })
	if len(words) > mostWords {
		return NoKind, NoStyle, NoShape, false
	}
	for i := 0; i < len(words); i++ {
		for n := min(2, len(words)-i); n > 0; n-- {
			part := strings.Join(words[i:i+n], " ")
			if v, is := ParseShape(part); is && shape == NoShape {
				shape = v
			} else if v, is := ParseStyle(part); is && style == NoStyle {
				style = v
			} else {
				continue
			}
			words = append(words[:i:i], words[i+n:]...)
			i--
			break
		}
	}
	k, ok = ParseKind(strings.Join(words, " "))
	info, _ := k.Info()
	if !ok || style != NoStyle && !slices.Contains(info.Styles, style) {
		return NoKind, NoStyle, NoShape, false
	}
	return k, style, shape, true
}
