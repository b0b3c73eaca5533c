package schedule

import (
	"regexp"
	"strings"
	"unicode"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// sizeMark parts a kind from the size that stood beside it in the cell.
const sizeMark = "\x1f"

// kindAndSize parts a cell as "Straight duct 600x400" or "Ø315 spiral duct" into the
// kind and, behind a mark, the size. It is "" where it isn't one. Two sizes are those of
// both ends, so the piece has to have two. A figure that stands by itself before the size
// may be a number of the piece, how many there are or thousands: such a cell isn't parted.
func (t *table) kindAndSize(s *spec, cell string) string {
	words := strings.Fields(strings.Trim(cell, " .;"))
	if len(words) < 2 || len(words) > 9 || len(cell) > 100 || !strings.ContainsFunc(words[0], unicode.IsLetter) && !strings.ContainsFunc(words[len(words)-1], unicode.IsLetter) {
		return ""
	}
	for i := 1; i < len(words); i++ {
		for _, parts := range [...][2][]string{{words[:i], words[i:]}, {words[i:], words[:i]}} {
			kind := strings.Trim(strings.Join(parts[0], " "), " ,;:-–()[]")
			size := strings.Trim(strings.Join(parts[1], " "), " ,;:-–()[]")
			if !digitIn(size) || strings.TrimLeft(kind, "0123456789.,") == "" || loneFigures(parts[1]) || !t.kindWord(parts[0]) {
				continue
			}
			w := t.translate(s, kind)
			if w == "" || strings.Contains(w, sizeMark) {
				continue
			}
			if size, ok := t.sizeOfKind(w, size); ok {
				return w + sizeMark + size
			}
		}
	}
	return ""
}

// kindWord reports words of which one may be of a kind: most cells that aren't parted end
// here, before anything is tried.
func (t *table) kindWord(words []string) bool {
	for _, w := range words {
		if _, known := t.lex.Word(takeoff.Kind, w); known {
			return true
		}
	}
	return false
}

// loneFigures reports words of a size of which one is a figure and the next begins with
// one: 1 600x400.
func loneFigures(words []string) bool {
	for i := range len(words) - 1 {
		if strings.Trim(words[i], "0123456789.,") == "" && words[i+1] != "" && digit(words[i+1][0]) {
			return true
		}
	}
	return false
}

// sizeOfKind reads what stands beside a kind as its size: a circular one may be a figure
// alone.
func (t *table) sizeOfKind(w, size string) (string, bool) {
	k, _, shape, ok := fittings.ParseDescription(w[strings.LastIndexByte(w, '|')+1:])
	if !ok || !quantity.SaysUnit(size) && !t.millimetres() {
		return "", false
	}
	c := quantity.Column{Unit: quantity.Millimetre, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths)}
	if v, trouble := c.Number(size); trouble == "" && shape == fittings.Circular && v >= 0.06 {
		size = "Ø" + size
	}
	found, trouble := c.Sizes(size)
	return size, trouble == "" && (len(found) == 1 || k == fittings.Reducer || k == fittings.Transition)
}

func digitIn(s string) bool { return strings.ContainsAny(s, "0123456789") }

// millimetres reports that nothing says that sizes are in another unit.
func (t *table) millimetres() bool {
	for i := range t.specs {
		if s := &t.specs[i]; s.used && s.Measure == takeoff.Lengths && s.Column.Unit != quantity.Millimetre && s.Column.Unit.Name != "m" {
			return false
		}
	}
	for _, x := range t.search.texts {
		if u, says := statedUnit(t.lex, x.text); says && u != quantity.Millimetre {
			return false
		}
	}
	return true
}

var angled = regexp.MustCompile(`(?i)^(?:(\d{1,3}(?:[.,]\d+)?)\s*(?:°|deg\.?|grad|degrees?)\s*(.+)|(.+?)\s*(\d{1,3}(?:[.,]\d+)?)\s*(?:°|deg\.?|grad|degrees?))$`)

// turned is a bend beside a usual angle that has no sign, or stands in brackets.
var turned = regexp.MustCompile(`(?i)^(?:\(?(15|22\.5|30|45|60|75|90)\s*°?\)?[\s-]+(\D+)|(\D+?)[\s-]*\(?(15|22\.5|30|45|60|75|90)\s*(?:°|deg\.?)?\)?)$`)

// translate finds what a word stands for: "" where it isn't known, and an angle
// before a bar where the cell gives one, as in "90° bend".
func (t *table) translate(s *spec, cell string) string {
	c := s.to()
	if c == takeoff.Kind && (doubtfulKind(cell) || strings.Contains(cell, sizeMark)) {
		return ""
	}
	if w, ok := t.lex.Exact(c, cell); ok {
		if headings.Squash(w) == headings.Squash(cell) {
			return cell
		}
		return w
	}
	if c == takeoff.Joint { // 30 mm flange
		for _, word := range headings.Tokens(cell) {
			if w, ok := t.lex.Exact(c, word); ok {
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
	if w, ok := t.lex.Word(c, cell); ok {
		return w
	}
	if m := angled.FindStringSubmatch(cell); m != nil {
		one := *s
		if w := t.translate(&one, trim(m[2]+m[3])); w != "" && !strings.Contains(w, "|") {
			return strings.Replace(m[1]+m[4], ",", ".", 1) + "|" + w
		}
	}
	if !strings.ContainsAny(cell, "0123456789") {
		return ""
	}
	if m := turned.FindStringSubmatch(cell); m != nil { // Bend 90, Bend (90°)
		one := *s
		w := t.translate(&one, trim(m[2]+m[3]))
		if k, _, _, ok := fittings.ParseDescription(w); ok && k == fittings.Bend {
			return m[1] + m[4] + "|" + w
		}
	}
	return t.kindAndSize(s, cell)
}

// sizeInKind puts the size that stands beside the kind to those of the row.
func (t *table) sizeInKind(s *spec, size string) {
	if t.inKind == nil {
		t.inKind = &spec{Heading: headings.Heading{Typed: s.Typed, Verdict: headings.Sizes, Size: headings.OwnSize}}
		t.inKind.set(t, t.inKind.Heading)
	}
	t.moved = true
	t.pending = append(t.pending, sizeCell{t.inKind, size})
	t.rowUnit = t.rowUnit || quantity.SaysUnit(size)
}
