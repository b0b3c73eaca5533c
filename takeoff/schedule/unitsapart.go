package schedule

import (
	"regexp"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// ofLengths are words for lengths in a line on units, in seven languages (from memory,
// unverified).
var ofLengths = []string{"length", "lengths", "lange", "langen", "longueur", "longueurs", "lengte", "lengtes", "langd", "langder", "longitud", "longitudes", "lunghezza", "lunghezze", "l"}

// unitsApart reads a line of two units, one for lengths and one for the rest: sizes in mm,
// lengths in m.
func unitsApart(text string) (across, along quantity.Unit, ok bool) {
	var parts []string
	before := ""
	for _, part := range partUnits.Split(text, -1) { // W and H in mm is one
		before += " " + part
		if words := headings.Tokens(part); slices.ContainsFunc(words[min(1, len(words)):], func(w string) bool { u, ok := quantity.UnitOf(w); return ok && u.Measure == takeoff.Lengths }) {
			parts, before = append(parts, before), ""
		}
	}
	if len(parts) != 2 || before != "" {
		return across, along, false
	}
	for _, part := range parts {
		words := headings.Tokens(part)
		var u quantity.Unit
		n := 0
		for i, w := range words {
			if x, unit := quantity.UnitOf(w); unit && x.Measure == takeoff.Lengths && w != "l" && (w != "in" || i == len(words)-1 && i > 0) {
				u, n = x, n+1
			}
		}
		if n != 1 || len(words) > 6 || slices.ContainsFunc(words, func(w string) bool { return slices.Contains(nots, w) || slices.Contains(ofInsulation, w) }) {
			return across, along, false
		}
		if slices.ContainsFunc(words, func(w string) bool { return slices.Contains(ofLengths, w) }) {
			along = u
		} else {
			across = u
		}
	}
	return across, along, across.Name != "" && along.Name != "" && across != along
}

// partUnits parts a line of two units.
var partUnits = regexp.MustCompile(`(?i)\s*[,;/]\s*|\s+(?:and|und|et|en|och|y|e)\s+`)

// takeUnits takes the units of a line for columns that give none.
func (t *table) takeUnits(text string, across, along quantity.Unit) {
	var names []string
	for i := range t.specs {
		s := &t.specs[i]
		if !s.used || s.Said || s.Measure != takeoff.Lengths {
			continue
		}
		u := across
		if s.Verdict == headings.Known && s.to() == takeoff.DimColumn(fittings.Length) {
			u = along
		}
		s.Column.Unit, s.Column.Stated, s.Said, s.says = u, true, true, "a line above the headings"
		names = append(names, "'"+s.Typed+"' in "+u.Name)
	}
	if len(names) > 0 {
		t.note("'%s' above the headings gives the units of %s", shorten(text), strings.Join(names, ", "))
	}
}
