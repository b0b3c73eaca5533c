package schedule

import (
	"fmt"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// saidUnit is the unit that a sheet states for a column of lengths, or that it
// states none.
type saidUnit struct {
	at    takeoff.Place
	typed string
	unit  quantity.Unit // no name: none is stated
}

// unitsElsewhere holds the units of a sheet against those that the sheets before it
// state for the same columns: where one states cm and another nothing, nobody knows
// in what the other is. A column that states none isn't used then. It reports whether
// there is one.
func (t *table) unitsElsewhere() (changed bool) {
	if t.place.Sheet == "" {
		return false
	}
	if t.info.said == nil {
		t.info.said = map[string]saidUnit{}
	}
	for i := range t.specs {
		s := &t.specs[i]
		if !s.used || s.Measure != takeoff.Lengths || s.fixed {
			continue
		}
		key := reads(s)
		other, known := t.info.said[key]
		now := saidUnit{t.place, s.Typed, s.Column.Unit}
		now.at.Row = t.headedAt()
		if !s.Said {
			now.unit = quantity.Unit{}
		}
		switch {
		case !known:
		case other.at.Sheet == now.at.Sheet:
			continue
		case other.unit.Name == "" && s.Said && s.Column.Unit != quantity.Millimetre && s.sized == dims(headings.OwnSize):
			t.info.Faults = append(t.info.Faults, other.fault(s.Column.Unit, t.place.Sheet, "it was read in mm all the same"))
		case other.unit.Name != "" && other.unit != quantity.Millimetre && !s.Said:
			t.info.Faults = append(t.info.Faults, now.fault(other.unit, other.at.Sheet, "the column isn't used"))
			s.used, changed = false, true
		}
		if !known || now.unit.Name != "" {
			t.info.said[key] = now
		}
	}
	if changed && t.headedAt() == t.headRow {
		t.look.refresh(t)
	}
	return changed
}

// headedAt is the row of the headings.
func (t *table) headedAt() int {
	if rows := t.look.Headings; len(rows) > 0 {
		return rows[len(rows)-1]
	}
	return 0
}

// fault is that a column states no unit and another sheet states u for it.
func (x saidUnit) fault(u quantity.Unit, sheet, so string) takeoff.Fault {
	return x.at.Fault(x.typed, x.typed, "a unit in the heading",
		fmt.Sprintf("'%s' states no unit, and sheet '%s' has such a column in %s; %s, so write the unit in the heading", x.typed, sheet, u.Name, so))
}

// unitInCells reports a row that states the unit of its cross-section itself.
func (t *table) unitInCells(r *takeoff.Row) bool {
	says := quantity.SaysUnit
	if len(t.pending) > 0 {
		return says(t.pending[0].cell)
	}
	own := dims(headings.OwnSize)
	return says(r.Text[own[0]]) || says(r.Text[own[2]])
}

// ofInsulation are words of titles about what isn't a size, in seven languages (from
// memory, unverified).
var ofInsulation = []string{"insulation", "thickness", "lining", "gauge", "dammung", "dammdicke", "isolierung", "blechdicke", "isolation", "epaisseur",
	"calorifuge", "isolatie", "isolatiedikte", "plaatdikte", "isolering", "plattjocklek", "aislamiento", "espesor", "isolamento", "spessore"}
