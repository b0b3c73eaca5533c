package columns

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
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

// IsLength reports the column of lengths along the duct.
func (s *Spec) IsLength() bool {
	return s.Verdict == headings.Known && s.To() == takeoff.DimColumn(fittings.Length)
}

// lengthsOnly takes a line on lengths in metres or feet for those along the duct, where
// the sizes across would be far too large by it: Lengths in m, over 600 x 400.
func (t *Reading) lengthsOnly(line headrow.Line) bool {
	u, ok := wording.OfLengths(t.Lex, line.Whole())
	if !ok || !slices.ContainsFunc(t.Specs, func(s Spec) bool { return s.Used && (!s.Said || s.Column.Unit == u) && s.IsLength() }) {
		return false
	}
	b, across := t.Peek(), 0
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Said || s.Measure != takeoff.Lengths || !s.Across {
			continue
		}
		if across += len(b.Columns[i]); b.Share(i, tooLargeAcross) < 1 {
			return false
		}
	}
	if across == 0 {
		return false
	}
	t.takeUnits(line, quantity.Unit{}, u)
	return true
}

// tooLargeAcross reports a cell with a figure that is no size in metres or feet.
func tooLargeAcross(cell string) bool {
	from := strings.IndexAny(cell, "0123456789")
	if from < 0 {
		return false
	}
	to := from
	for to < len(cell) && celltext.Digit(cell[to]) {
		to++
	}
	n, err := strconv.Atoi(cell[from:to])
	return err == nil && n >= 20
}

// apartAgainst finds fault with a line of two units that headings contradict.
func (t *Reading) apartAgainst(row int, text string, across, along quantity.Unit) {
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || !s.Said || s.Fixed || s.Says != "" || s.Measure != takeoff.Lengths {
			continue
		}
		u := quantity.Unit{}
		switch {
		case s.IsLength():
			u = along
		case s.Sized == Own:
			u = across
		}
		if u.Name == "" || s.Column.Unit == u {
			continue
		}
		p, said := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: row}, celltext.Shorten(text)
		t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "the units that the headings name",
			fmt.Sprintf("'%s' says %s, and '%s' says %s, in which it is read; correct the line or the heading", said, u.Name, s.Typed, s.Column.Unit.Name)))
		return
	}
}

// takeUnits takes the units of a line for columns that give none: those across the duct and
// along it.
func (t *Reading) takeUnits(line headrow.Line, across, along quantity.Unit) {
	var names []string
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Said || s.Measure != takeoff.Lengths {
			continue
		}
		u := across
		if s.IsLength() {
			u = along
		}
		if u.Name == "" {
			continue
		}
		s.Column.Unit, s.Column.Stated, s.Said, s.Says = u, true, true, saidBy(line.Row)
		names = append(names, "'"+s.Typed+"' in "+u.Name)
	}
	if len(names) > 0 {
		t.Note("'%s' %s gives the units of %s", celltext.Shorten(line.Whole()), whereSaid(line.Row), strings.Join(names, ", "))
	}
}
