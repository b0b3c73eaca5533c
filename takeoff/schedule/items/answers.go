package items

import (
	"fmt"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/mapping"
)

// says refuses a row for what a cell says of it in a column that isn't used.
func (t *Reader) says(r *takeoff.Row, s *columns.Spec, at int, cell string) {
	name, short := s.Typed, celltext.Shorten(cell)
	if name == "" {
		name = "column " + mapping.Letter(at)
	}
	expected, trouble := "a row that counts", ""
	switch s.Watch.Keeps {
	case "answered":
		trouble = "may say that the row doesn't count; take the row out, or write out under scope; take the column out if it says something else"
	case "altered":
		expected, trouble = "how many under quantity", "may change how many there are; write how many in all under quantity, and take the column out"
	case "times":
		expected, trouble = "how many under quantity", "may say that there are more or less than the row counts; write how many under quantity, and take the column out"
	case "replaces":
		expected, trouble = "rows that count", "may say that the row takes the place of another; take out what doesn't count any more, and the column"
	default:
		t.strike(r, s.Typed, cell)
		return
	}
	r.Faults = append(r.Faults, t.Place.Fault(name, short, expected, fmt.Sprintf("'%s' in '%s' %s", short, name, trouble)))
}
