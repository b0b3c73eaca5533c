package items

import (
	"fmt"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/mapping"
)

// answersNo refuses a row that says no in a column of yes and no that nobody knows.
func (t *Reader) answersNo(r *takeoff.Row, s *columns.Spec, at int, cell string) {
	name := s.Typed
	if name == "" {
		name = "column " + mapping.Letter(at)
	}
	short := celltext.Shorten(cell)
	r.Faults = append(r.Faults, t.Place.Fault(name, short, "a row that counts",
		fmt.Sprintf("'%s' in '%s' may say that the row doesn't count; take the row out, or write out under scope; take the column out if it says something else", short, name)))
}
