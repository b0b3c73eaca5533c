package schedule

import (
	"fmt"
	"maps"
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
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
	t.unitsBeside()
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
		t.refresh()
	}
	return changed
}

// unitsBeside marks sizes that state no unit where another size of the piece is stated
// in inches, feet or centimetres: small figures are hardly in millimetres there.
func (t *table) unitsBeside() {
	odd := slices.ContainsFunc(t.specs, func(s spec) bool {
		return s.used && s.Said && s.Least > 0 && (s.Column.Unit == quantity.Inch || s.Column.Unit == quantity.Foot || s.Column.Unit.Name == "cm")
	})
	for i := range t.specs {
		t.specs[i].beside = odd && t.specs[i].used && !t.specs[i].Said && t.specs[i].Least > 0
	}
}

// bareSize is a size without a unit that would be very small in mm.
type bareSize struct {
	*spec
	cell string
}

// seeUnit takes note of whether a cell of a column that states no unit states its own.
func (t *table) seeUnit(s *spec, cell string, v float64) {
	least := 0.2 // a length; see takeoff's look at units that nobody states
	switch {
	case s.beside && s.Across:
		least = leastBeside
	case s.beside:
		least = 2 * leastBeside
	case s.Across:
		least = 0.063
	}
	switch {
	case !celltext.Digit(cell[len(cell)-1]) && quantity.SaysUnit(cell):
		t.rowUnit = true
		if !s.own {
			s.own, t.newUnit = true, true
		}
	case v > 0 && v < least:
		t.bare = append(t.bare, bareSize{s, cell})
	}
}

// doubtBare refuses sizes without a unit that would be very small in mm, where another
// cell of the row or of the column states its unit.
func (t *table) doubtBare(r *takeoff.Row) {
	for _, b := range t.bare {
		if t.rowUnit || b.own || b.beside {
			t.fault(r, b.spec, b.cell, "states no unit where others do, and would be in mm; write its unit behind it, or in the heading")
		}
	}
	t.bare, t.rowUnit = t.bare[:0], false
	if len(t.pending) == 0 || !t.pending[0].beside || quantity.SaysUnit(t.pending[0].cell) {
		return
	}
	if across := max(r.Number[own[0]], r.Number[own[1]], r.Number[own[2]]); across > 0 && across < leastBeside {
		t.fault(r, t.pending[0].spec, t.pending[0].cell, "states no unit where others do, and would be in mm; write its unit behind it, or in the heading")
	}
}

// leastBeside is a side beside sizes in another unit under which it is hardly in mm, m.
const leastBeside = 0.3

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
	return says(r.Text[own[0]]) || says(r.Text[own[2]])
}

// coverAfter holds a line on units of a sheet without a schedule against the sheets
// before it that state none.
func (info *Info) coverAfter() {
	c := info.cover
	if c == nil || c.Unit.Name == "" || c.Unit == quantity.Millimetre {
		return
	}
	for _, key := range slices.Sorted(maps.Keys(info.said)) {
		x := info.said[key]
		if x.unit.Name != "" {
			continue
		}
		info.Faults = append(info.Faults, x.at.Fault(x.typed, x.typed, "a unit in the heading",
			fmt.Sprintf("'%s' states no unit and was read in mm, and '%s' on sheet '%s' says %s; write the unit in the heading", x.typed, celltext.Shorten(c.Text), c.Sheet, c.Unit.Name)))
	}
}
