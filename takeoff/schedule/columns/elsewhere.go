package columns

import (
	"fmt"
	"maps"
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
)

// Units are those that the sheets of a file stated so far.
type Units struct {
	Cover *headrow.Line       // a line on units in a sheet without a schedule
	Kinds bool                // a table has a column of kinds
	said  map[string]saidUnit // by what a column is read as
}

// saidUnit is the unit that a sheet states for a column of lengths, or that it
// states none.
type saidUnit struct {
	at    takeoff.Place
	typed string
	unit  quantity.Unit // no name: none is stated
}

// UnitsElsewhere holds the units of a sheet against those that the sheets before it
// state for the same columns: where one states cm and another nothing, nobody knows
// in what the other is. A column that states none isn't used then. It reports whether
// there is one.
func (t *Reading) UnitsElsewhere() (changed bool) {
	t.unitsBeside()
	if t.Place.Sheet == "" {
		return false
	}
	if t.Units.said == nil {
		t.Units.said = map[string]saidUnit{}
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Measure != takeoff.Lengths || s.Fixed {
			continue
		}
		key := reads(s)
		other, known := t.Units.said[key]
		now := saidUnit{t.Place, s.Typed, s.Column.Unit}
		now.at.Row = t.headedAt()
		if !s.Said {
			now.unit = quantity.Unit{}
		}
		switch {
		case !known:
		case other.at.Sheet == now.at.Sheet:
			continue
		case other.unit.Name == "" && s.Said && s.Column.Unit != quantity.Millimetre && s.Sized == Dims(headings.OwnSize):
			t.Found.Faults = append(t.Found.Faults, other.fault(s.Column.Unit, t.Place.Sheet, "it was read in mm all the same"))
		case other.unit.Name != "" && other.unit != quantity.Millimetre && !s.Said:
			t.Found.Faults = append(t.Found.Faults, now.fault(other.unit, other.at.Sheet, "the column isn't used"))
			s.Used, changed = false, true
		}
		if !known || now.unit.Name != "" {
			t.Units.said[key] = now
		}
	}
	if changed && t.headedAt() == t.HeadRow {
		t.Refresh()
	}
	return changed
}

// unitsBeside marks sizes that state no unit where another size of the piece is stated
// in inches, feet or centimetres: small figures are hardly in millimetres there.
func (t *Reading) unitsBeside() {
	odd := slices.ContainsFunc(t.Specs, func(s Spec) bool {
		return s.Used && s.Said && s.Least > 0 && (s.Column.Unit == quantity.Inch || s.Column.Unit == quantity.Foot || s.Column.Unit.Name == "cm")
	})
	for i := range t.Specs {
		t.Specs[i].Beside = odd && t.Specs[i].Used && !t.Specs[i].Said && t.Specs[i].Least > 0
	}
}

// LeastBeside is a side beside sizes in another unit under which it is hardly in mm, m.
const LeastBeside = 0.3

// headedAt is the row of the headings.
func (t *Reading) headedAt() int {
	if rows := t.Look.Headings; len(rows) > 0 {
		return rows[len(rows)-1]
	}
	return 0
}

// fault is that a column states no unit and another sheet states u for it.
func (x saidUnit) fault(u quantity.Unit, sheet, so string) takeoff.Fault {
	return x.at.Fault(x.typed, x.typed, "a unit in the heading",
		fmt.Sprintf("'%s' states no unit, and sheet '%s' has such a column in %s; %s, so write the unit in the heading", x.typed, sheet, u.Name, so))
}

// CoverAfter holds a line on units of a sheet without a schedule against the sheets
// before it that state none.
func (u *Units) CoverAfter(found *told.Findings) {
	c := u.Cover
	if c == nil || c.Unit.Name == "" || c.Unit == quantity.Millimetre {
		return
	}
	for _, key := range slices.Sorted(maps.Keys(u.said)) {
		x := u.said[key]
		if x.unit.Name != "" {
			continue
		}
		found.Faults = append(found.Faults, x.at.Fault(x.typed, x.typed, "a unit in the heading",
			fmt.Sprintf("'%s' states no unit and was read in mm, and '%s' on sheet '%s' says %s; write the unit in the heading", x.typed, celltext.Shorten(c.Text), c.Sheet, c.Unit.Name)))
	}
}
