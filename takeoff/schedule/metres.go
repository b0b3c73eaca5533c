package schedule

import (
	"fmt"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// quantityUnits finds the column that says what quantities are counted in, as in a bill,
// where none gives lengths: a quantity in m is the length of a straight.
func (t *table) quantityUnits() {
	t.unitsAt = 0
	bill := !t.maps(takeoff.DimColumn(fittings.Length)) && t.maps(takeoff.Quantity)
	for i := range t.specs {
		s := &t.specs[i]
		h := s.Heading
		if s.fixed && !s.used { // a map says that it isn't used
			if h = t.lex.Read(s.Typed); h.Verdict == headings.Known && h.Column == takeoff.Quantity { // ud, of units
				h = t.lex.Read("unit")
			}
		}
		if s.ofUnits = h.Verdict == headings.Asks && h.Ask.Units(); s.ofUnits && i > 0 && bill {
			t.unitsAt = i
		}
	}
}

// inMetres takes the quantity of a row for its length, where the column of units says so.
func (t *table) inMetres(r *takeoff.Row, s *spec, cell string, cells []string) bool {
	u, ok := quantity.UnitOf(celltext.At(cells, t.unitsAt))
	if !ok || u.Measure != takeoff.Lengths || u.Name != "m" && u != quantity.Foot || s.to() != takeoff.Quantity {
		return false
	}
	length := quantity.Column{Unit: u, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths), Least: leastSide, CommaFile: t.commaFile, Decimal: t.opt.decimal()}
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
	t.told.Add("quantities in "+u.Name+" in column '%s', taken for the length of a straight", s.Typed, t.place.Row)
	return true
}

// doubtMetred refuses a row that is measured in metres and isn't a straight.
func (t *table) doubtMetred(r *takeoff.Row) {
	k, _, _, ok := fittings.ParseDescription(r.Text[takeoff.Kind])
	if ok && k != fittings.Straight && k != fittings.Flexible {
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Quantity.Heading(), r.Text[takeoff.DimColumn(fittings.Length)], "how many pieces there are",
			fmt.Sprintf("a %s is counted in pieces, and the row counts it in metres; write how many there are, and its sizes", k)))
	}
}
