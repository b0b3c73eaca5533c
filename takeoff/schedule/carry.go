package schedule

import (
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/quantity"
)

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
	if l == nil || l.handed != t.info.handed || len(t.Found.Faults) < l.faults {
		return false
	}
	t.Found.Faults = t.Found.Faults[:l.faults]
	t.over.doubt = doubt{}
	t.Search.Texts = []headrow.Line{l.Line}
	return true
}
