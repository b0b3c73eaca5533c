package schedule

import (
	"fmt"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
)

// shifted refuses a row of more cells than headings, all that is too much blank, where
// a comma for decimals may have moved the rest: other rows have another number of
// cells, or a whole number of metres stands before one or two figures.
func (t *table) shifted(r *takeoff.Row, cells []string) {
	n := len(t.Specs)
	if celltext.LastFilled(cells) > n {
		return // told as such
	}
	if t.long == 0 {
		t.long, t.longAt = len(cells), t.Place.Row
	}
	switch {
	case t.parted(cells[:n]):
		t.longAt = 0 // told now
	case len(cells) == t.long && !t.uneven:
		return
	}
	r.Faults = append(r.Faults, t.shiftedAt(t.Place.Row, len(cells)))
}

// evened finds fault with the rows so far that had more cells than headings, once one
// hasn't.
func (t *table) evened() {
	if t.uneven = true; t.longAt > 0 {
		t.Found.Faults = append(t.Found.Faults, t.shiftedAt(t.longAt, t.long))
	}
}

func (t *table) shiftedAt(row, cells int) takeoff.Fault {
	at := t.Place
	at.Row = row
	return at.Fault("", fmt.Sprintf("%d cells", cells), fmt.Sprintf("%d cells, as there are headings", len(t.Specs)),
		fmt.Sprintf("there are %d cells under %d headings, and not on every row: a comma for decimals may have parted a number; put quotes around it, or take the blank cells at the end off", cells, len(t.Specs)))
}

// parted reports a whole number in metres before one or two figures by themselves.
func (t *table) parted(cells []string) bool {
	for i := range len(cells) - 1 {
		if t.Metres(i) && celltext.PartedAt(cells, i) {
			return true
		}
	}
	return false
}

// besideMetres refuses a row in which figures stand where text is expected, behind a
// whole number of metres.
func (t *table) besideMetres(r *takeoff.Row, cells []string) {
	for _, i := range t.Beside {
		if celltext.PartedAt(cells, i) {
			both := celltext.Trim(cells[i]) + "," + celltext.Trim(cells[i+1])
			r.Faults = append(r.Faults, t.Place.Fault(t.Specs[i].Typed, both, "quotes around a number with a comma",
				fmt.Sprintf("'%s' stands in two cells and may be one number; put quotes around it, or take the second cell out", both)))
		}
	}
}
