package schedule

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
	"blankoff/takeoff/terms"
)

// saysNothing reports a cell that is filled in to say that it is empty, or as the
// one above it, which is a fault where more than a name is expected.
func (t *table) saysNothing(r *takeoff.Row, s *columns.Spec, cell string) bool {
	c := s.To()
	if c == takeoff.Quantity && quantity.Nothing(cell, s.Measure) {
		t.fault(r, s, cell, "may be none or one; write how many, or take the row out")
		return true
	}
	if c != takeoff.Sign && quantity.Nothing(cell, s.Measure) { // there, - may be negative
		return true
	}
	if s.Measure == takeoff.Text && columns.Spreads(c) {
		if trouble := quantity.Above(cell, s.Measure); trouble != "" {
			t.fault(r, s, cell, trouble)
			return true
		}
	}
	s.AsIs = cell
	return false
}

// doubtMerged refuses a row over which a count or a length is merged down: it may be
// that of each row or of all together. It reports true, since the row is no fuller
// for it.
func (t *table) doubtMerged(r *takeoff.Row, s *columns.Spec, cell string) bool {
	t.fault(r, s, cell, "is merged over several rows, and may be of each or of all together; write it in each row")
	return true
}

// elsewhere are the columns into which sizes are moved that stand in other cells.
var elsewhere = slices.Concat(columns.Own[:], columns.Second[:], []takeoff.Column{takeoff.DimColumn(fittings.Length), takeoff.Quantity})

// saysElse reports a cell that holds something else than its column takes and bears on
// no area: a pressure class in words, yes or no for a day, no lining.
func (t *table) saysElse(s *columns.Spec, cell string) bool {
	switch c := s.To(); c {
	case takeoff.DuctClassPa:
		if strings.ContainsAny(cell, "0123456789#=") {
			return false
		}
	case takeoff.Ready, takeoff.Closed, takeoff.DimColumn(fittings.Lining):
		if word := strings.ToLower(cell); !slices.Contains(wording.Noes, word) && (c == takeoff.DimColumn(fittings.Lining) || !slices.Contains(wording.Yeses, word)) {
			return false
		}
	case takeoff.Joint:
		if cell == s.Heard {
			return false
		}
		if terms.KnownJoint(cell) || t.Kinds().Translate(c, cell) != cell {
			s.Heard = cell
			return false
		}
	default:
		return false
	}
	t.told.Add("cells of column '%s' that say something else, not used", s.Typed, t.Place.Row)
	return true
}
