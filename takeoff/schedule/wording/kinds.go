// Package wording knows what the words in a cell, a name, a remark or a line of a schedule
// say: a kind, a shape, a unit, that there are several, or that something doesn't count. It
// reads text only; what follows from it the reader decides.
package wording

import (
	"regexp"
	"strings"
	"unicode"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// Kinds knows what words stand for that name kinds of pieces.
type Kinds struct {
	Lex         *headings.Lexicon
	Millimetres func() bool // nothing says that sizes are in another unit
}

// Translate finds what a word stands for: "" where it isn't known, and an angle
// before a bar where the cell gives one, as in "90° bend".
func (k Kinds) Translate(c takeoff.Column, cell string) string {
	if c == takeoff.Kind && (DoubtfulKind(cell) || strings.Contains(cell, SizeMark)) {
		return ""
	}
	if w, ok := k.Lex.Exact(c, cell); ok {
		if headings.Squash(w) == headings.Squash(cell) {
			return cell
		}
		return w
	}
	if c == takeoff.Joint { // 30 mm flange
		for _, word := range headings.Tokens(cell) {
			if w, ok := k.Lex.Exact(c, word); ok {
				return w
			}
		}
	}
	if c != takeoff.Kind {
		return cell
	}
	if _, _, _, ok := fittings.ParseDescription(cell); ok {
		return cell
	}
	if w, ok := k.Lex.Word(c, cell); ok {
		return w
	}
	if m := angled.FindStringSubmatch(cell); m != nil {
		if w := k.Translate(c, celltext.Trim(m[2]+m[3])); w != "" && !strings.Contains(w, "|") {
			return strings.Replace(m[1]+m[4], ",", ".", 1) + "|" + w
		}
	}
	if !strings.ContainsAny(cell, "0123456789") {
		return ""
	}
	if m := turned.FindStringSubmatch(cell); m != nil { // Bend 90, Bend (90°)
		w := k.Translate(c, celltext.Trim(m[2]+m[3]))
		if kind, _, _, ok := fittings.ParseDescription(w); ok && kind == fittings.Bend {
			return m[1] + m[4] + "|" + w
		}
	}
	return k.kindAndSize(cell)
}

// kindAndSize parts a cell as "Straight duct 600x400" or "Ø315 spiral duct" into the
// kind and, behind a mark, the size. It is "" where it isn't one. Two sizes are those of
// both ends, so the piece has to have two. A figure that stands by itself before the size
// may be a number of the piece, how many there are or thousands: such a cell isn't parted.
func (k Kinds) kindAndSize(cell string) string {
	words := strings.Fields(strings.Trim(cell, " .;"))
	if len(words) < 2 || len(words) > 9 || len(cell) > 100 || !strings.ContainsFunc(words[0], unicode.IsLetter) && !strings.ContainsFunc(words[len(words)-1], unicode.IsLetter) {
		return ""
	}
	for i := 1; i < len(words); i++ {
		for _, parts := range [...][2][]string{{words[:i], words[i:]}, {words[i:], words[:i]}} {
			kind := strings.Trim(strings.Join(parts[0], " "), " ,;:-–()[]")
			size := strings.Trim(strings.Join(parts[1], " "), " ,;:-–()[]")
			if !celltext.HasDigit(size) || strings.TrimLeft(kind, "0123456789.,") == "" || celltext.LoneFigures(parts[1]) || !k.kindWord(parts[0]) {
				continue
			}
			w := k.Translate(takeoff.Kind, kind)
			if w == "" || strings.Contains(w, SizeMark) {
				continue
			}
			if size, ok := k.sizeOfKind(w, size); ok {
				return w + SizeMark + size
			}
		}
	}
	return ""
}

// KindIn is the kind that a cell names.
func (k Kinds) KindIn(cell string) fittings.Kind {
	if !k.NamesKind(cell) {
		return fittings.NoKind
	}
	w, _, _ := strings.Cut(k.Translate(takeoff.Kind, cell), SizeMark)
	kind, _, _, _ := fittings.ParseDescription(w[strings.LastIndexByte(w, '|')+1:])
	return kind
}

// NamesShape reports a cell that names a shape.
func (k Kinds) NamesShape(cell string) bool {
	_, known := k.Lex.Exact(takeoff.Shape, cell)
	_, shape := fittings.ParseShape(cell)
	return known || shape
}

// NamesKind reports a cell that names a kind of piece, and not only a shape.
func (k Kinds) NamesKind(cell string) bool {
	if len(cell) > celltext.MaxWord || strings.TrimLeft(cell, "0123456789.,") == "" {
		return false
	}
	if k.NamesShape(cell) || len(headings.Tokens(cell)) == 1 && (RoundWord.MatchString(cell) || RectWord.MatchString(cell)) {
		return false
	}
	return k.Translate(takeoff.Kind, cell) != ""
}

// SizeMark parts a kind from the size that stood beside it in the cell.
const SizeMark = "\x1f"

// kindWord reports words of which one may be of a kind: most cells that aren't parted end
// here, before anything is tried.
func (k Kinds) kindWord(words []string) bool {
	for _, w := range words {
		if _, known := k.Lex.Word(takeoff.Kind, w); known {
			return true
		}
	}
	return false
}

// sizeOfKind reads what stands beside a kind as its size: a circular one may be a figure
// alone.
func (k Kinds) sizeOfKind(w, size string) (string, bool) {
	kind, _, shape, ok := fittings.ParseDescription(w[strings.LastIndexByte(w, '|')+1:])
	if !ok || !quantity.SaysUnit(size) && !k.Millimetres() {
		return "", false
	}
	c := quantity.Column{Unit: quantity.Millimetre, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths)}
	if v, trouble := c.Number(size); trouble == "" && shape == fittings.Circular && v >= 0.06 {
		size = "Ø" + size
	}
	found, trouble := c.Sizes(size)
	return size, trouble == "" && (len(found) == 1 || kind == fittings.Reducer || kind == fittings.Transition)
}

var angled = regexp.MustCompile(`(?i)^(?:(\d{1,3}(?:[.,]\d+)?)\s*(?:°|deg\.?|grad|degrees?)\s*(.+)|(.+?)\s*(\d{1,3}(?:[.,]\d+)?)\s*(?:°|deg\.?|grad|degrees?))$`)

// turned is a bend beside a usual angle that has no sign, or stands in brackets.
var turned = regexp.MustCompile(`(?i)^(?:\(?(15|22\.5|30|45|60|75|90)\s*°?\)?[\s-]+(\D+)|(\D+?)[\s-]*\(?(15|22\.5|30|45|60|75|90)\s*(?:°|deg\.?)?\)?)$`)
