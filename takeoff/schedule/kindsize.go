package schedule

import (
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// sizeMark parts a kind from the size that stood beside it in the cell.
const sizeMark = "\x1f"

// kindAndSize parts a cell as "Straight duct 600x400" or "Ø315 spiral duct" into the
// kind and, behind a mark, the size. It is "" where it isn't one. Two sizes are those of
// both ends, so the piece has to have two.
func (t *table) kindAndSize(s *spec, cell string) string {
	words := strings.Fields(strings.Trim(cell, " .;"))
	if len(words) > 12 || !strings.ContainsAny(cell, "xX×*Øø⌀∅") && !strings.Contains(strings.ToLower(cell), "dia") {
		return ""
	}
	for i := 1; i < len(words); i++ {
		for _, parts := range [...][2][]string{{words[:i], words[i:]}, {words[i:], words[:i]}} {
			kind := strings.Trim(strings.Join(parts[0], " "), " ,;:-–()[]")
			size := strings.Trim(strings.Join(parts[1], " "), " ,;:-–()[]")
			if !strings.ContainsAny(size, "0123456789") || strings.TrimLeft(kind, "0123456789.,") == "" || strings.ContainsAny(kind, "xX×Ø") && strings.ContainsAny(kind, "0123456789") {
				continue
			}
			c := quantity.Column{Unit: quantity.Millimetre, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths)}
			found, trouble := c.Sizes(size)
			if trouble != "" || !quantity.SaysUnit(size) && !t.millimetres() {
				continue
			}
			w := t.translate(s, kind)
			if w == "" || strings.Contains(w, sizeMark) {
				continue
			}
			_, of, _ := strings.Cut("|"+w, "|")
			if k, _, _, ok := fittings.ParseDescription(of[strings.LastIndex(of, "|")+1:]); !ok || len(found) == 2 && k != fittings.Reducer && k != fittings.Transition {
				continue
			}
			return w + sizeMark + size
		}
	}
	return ""
}

// sizeInKind puts the size that stands beside the kind to those of the row.
func (t *table) sizeInKind(s *spec, size string) {
	if t.inKind == nil {
		t.inKind = &spec{Heading: headings.Heading{Typed: s.Typed, Verdict: headings.Sizes, Size: headings.OwnSize}}
		t.inKind.set(t, t.inKind.Heading)
	}
	t.pending = append(t.pending, sizeCell{t.inKind, size})
	t.rowUnit = t.rowUnit || quantity.SaysUnit(size)
}

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
