package schedule

import (
	"fmt"

	"blankoff/takeoff"
)

// subheads are the sub-headings that hold for the rows below them.
type subheads struct {
	text  [2]string // system, level
	outer int       // which of the two was met first; 0 none, else its place + 1
	rows  [2]int
	met   bool
	doubt string // names a unit in which nothing is read: the rows below are in doubt
}

var subColumns = [2]takeoff.Column{takeoff.System, takeoff.Level}

// apply gives a row what the sub-headings above it say, where it says nothing
// itself.
func (o *subheads) apply(r *takeoff.Row) {
	if o.doubt != "" {
		r.Faults = append(r.Faults, r.At.Fault("", o.doubt, "a row in the units of the headings", fmt.Sprintf("'%s' above it names another unit than the headings, so the row isn't used; write the unit in the headings, or behind each size", o.doubt)))
	}
	if !o.met {
		return
	}
	for i, c := range subColumns {
		if o.text[i] != "" && r.Text[c] == "" {
			r.Text[c] = o.text[i]
			o.rows[i]++
		}
	}
}

// subheading sets the system or level of the rows below. Where both are used,
// the one that was met first is the outer one: a new one ends the inner.
func (t *table) subheading(number int, cells []string, c takeoff.Column, text string) {
	o := &t.over
	o.doubt = ""
	t.doubtSubheading(number, text)
	i := 0
	if c == takeoff.Level {
		i = 1
	}
	if o.outer == 0 {
		o.outer = i + 1
	}
	if o.outer == i+1 {
		o.text[1-i] = ""
	}
	o.met, o.text[i] = true, text
	t.told.add("sub-headings that give the "+c.Heading()+" of the rows below", "", number)
	t.look.class(SubHeadingRow, number, cells)
	t.since[1] = t.info.handed
}
