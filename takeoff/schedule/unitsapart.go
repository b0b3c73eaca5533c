package schedule

import (
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

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
		t.note("'%s' above the headings gives the units of %s", celltext.Shorten(text), strings.Join(names, ", "))
	}
}
