package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/quantity"
)

// carryUnits goes on with the units of the headings before, where they stand anew
// and name none. Headings of other columns begin another table, of which nobody
// knows the units: there, a column that isn't in mm before is asked about.
func (t *table) carryUnits(before []spec) {
	same := slices.Equal(readsOf(before), readsOf(t.specs))
	var names []string
	other := func(u quantity.Unit) bool {
		return slices.ContainsFunc(t.specs, func(s spec) bool {
			return s.used && s.Said && s.Measure == takeoff.Lengths && s.Across && s.Column.Unit != u
		})
	}
	for i := range t.specs {
		s := &t.specs[i]
		b := alikeIn(before, s)
		if b == nil || b.Column.Unit == s.Column.Unit {
			continue
		}
		if !same || other(b.Column.Unit) && b.Column.Unit.Name != "m" {
			t.refuse(s, "a unit in the heading", fmt.Sprintf("'%s' states no unit, and in the headings before it is in %s; those are of other columns, so this one isn't used; write the unit in the heading", s.Typed, b.Column.Unit.Name))
			continue
		}
		s.Column.Unit, s.Said, s.says, s.carried = b.Column.Unit, true, byRow, true
		names = append(names, "'"+s.Typed+"' in "+s.Column.Unit.Name)
	}
	if len(names) > 0 {
		t.note("the headings at row %d give no unit and are read as those before: %s", t.place.Row, strings.Join(names, ", "))
	}
}

// mostCarried is a length that no piece has, m: its unit isn't that of the headings
// before.
const mostCarried = 50

// alikeIn is the column of the headings before that is the same and states a unit, for
// one of lengths that states none.
func alikeIn(before []spec, s *spec) *spec {
	if !s.used || s.Said || s.Measure != takeoff.Lengths {
		return nil
	}
	for k := range before {
		if b := &before[k]; b.used && b.Said && b.Measure == takeoff.Lengths && reads(b) == reads(s) {
			return b
		}
	}
	return nil
}

// readsOf are the columns that are read, in the order of their names.
func readsOf(specs []spec) (names []string) {
	for i := range specs {
		if specs[i].used {
			names = append(names, reads(&specs[i]))
		}
	}
	slices.Sort(names)
	return names
}

// unitLine is a line on units among the rows.
type unitLine struct {
	headrow.Line
	unit           quantity.Unit
	faults, handed int // of the file before it
}

// takeLine takes a line on units right above headings for one of these, and back
// what was said of it.
func (t *table) takeLine() bool {
	l := t.line
	t.line = nil
	if l == nil || l.handed != t.info.handed || len(t.info.Faults) < l.faults {
		return false
	}
	t.info.Faults = t.info.Faults[:l.faults]
	t.over.doubt = doubt{}
	t.search.Texts = []headrow.Line{l.Line}
	return true
}
