package schedule

import (
	"fmt"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/quantity"
)

// inMetres takes the quantity of a row for its length, where the column of units says so.
func (t *table) inMetres(r *takeoff.Row, s *columns.Spec, cell string, cells []string) bool {
	u, ok := quantity.UnitOf(celltext.At(cells, t.UnitsAt))
	if !ok || u.Measure != takeoff.Lengths || u.Name != "m" && u != quantity.Foot || s.To() != takeoff.Quantity {
		return false
	}
	length := quantity.Column{Unit: u, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths), Least: columns.LeastSide, CommaFile: t.CommaFile, Decimal: t.Decimal}
	v, trouble := length.Number(cell)
	if trouble != "" {
		t.fault(r, s, cell, trouble)
		return true
	}
	c := takeoff.DimColumn(fittings.Length)
	r.Text[c] = cell
	r.SetNumber(c, v)
	r.Text[takeoff.Quantity] = "1"
	r.SetNumber(takeoff.Quantity, 1)
	t.metred, t.moved = true, true
	t.told.Add("quantities in "+u.Name+" in column '%s', taken for the length of a straight", s.Typed, t.Place.Row)
	return true
}

// doubtMetred refuses a row that is measured in metres and isn't a straight.
func (t *table) doubtMetred(r *takeoff.Row) {
	k, _, _, ok := fittings.ParseDescription(r.Text[takeoff.Kind])
	if ok && k != fittings.Straight && k != fittings.Flexible {
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.Quantity.Heading(), r.Text[takeoff.DimColumn(fittings.Length)], "how many pieces there are",
			fmt.Sprintf("a %s is counted in pieces, and the row counts it in metres; write how many there are, and its sizes", k)))
	}
}
