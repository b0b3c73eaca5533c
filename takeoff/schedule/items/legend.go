package items

import (
	"fmt"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/answered"
	"blankoff/takeoff/schedule/celltext"
)

// Legend is a line above the headings that says something of rows with a sign.
type Legend struct{ Sign, Said string }

// doubtSigned refuses a row with a sign of which a line above says something.
func (t *Reader) doubtSigned(r *takeoff.Row) {
	for _, x := range [...]struct {
		takeoff.Column
		cell string
	}{{takeoff.Tag, r.Text[takeoff.Tag]}, {takeoff.Kind, t.kindNow}, {takeoff.Note, r.Text[takeoff.Note]}} {
		if !answered.HasSign(x.cell, t.Legend.Sign) {
			continue
		}
		short, said := celltext.Shorten(x.cell), celltext.Shorten(t.Legend.Said)
		r.Faults = append(r.Faults, t.Place.Fault(x.Heading(), short, "a row that counts",
			fmt.Sprintf("'%s' has a %s, of which '%s' says something; if the row doesn't count take it out, or write out under scope, else take the %s off", short, t.Legend.Sign, said, t.Legend.Sign)))
		return
	}
}
