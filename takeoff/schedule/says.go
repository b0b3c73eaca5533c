package schedule

import (
	"maps"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
	"blankoff/takeoff/terms"
)

// plain reports a cell that is known to mean what it says.
func (s *spec) plain(cell string) bool {
	if cell == s.asIs || cell == s.last.from {
		return true
	}
	_, met := s.words[cell]
	return met
}

// saysNothing reports a cell that is filled in to say that it is empty, or as the
// one above it, which is a fault where more than a name is expected.
func (t *table) saysNothing(r *takeoff.Row, s *spec, cell string) bool {
	c := s.to()
	if c == takeoff.Quantity && quantity.Nothing(cell, s.Measure) {
		t.fault(r, s, cell, "may be none or one; write how many, or take the row out")
		return true
	}
	if c != takeoff.Sign && quantity.Nothing(cell, s.Measure) { // there, - may be negative
		return true
	}
	if s.Measure == takeoff.Text && spreads(c) {
		if trouble := quantity.Above(cell, s.Measure); trouble != "" {
			t.fault(r, s, cell, trouble)
			return true
		}
	}
	s.asIs = cell
	return false
}

// doubtful reports a column whose cells merged down may be of each row or of all.
func (s *spec) doubtful() bool {
	return s.Verdict == headings.Known && (s.to() == takeoff.Quantity || s.to() == takeoff.DimColumn(fittings.Length))
}

// doubtMerged refuses a row over which a count or a length is merged down: it may be
// that of each row or of all together. It reports true, since the row is no fuller
// for it.
func (t *table) doubtMerged(r *takeoff.Row, s *spec, cell string) bool {
	t.fault(r, s, cell, "is merged over several rows, and may be of each or of all together; write it in each row")
	return true
}

// spreads reports columns whose cell counts for all rows that it is merged over:
// what a piece is, where it belongs and how large it is across, not how many there
// are or how long.
func spreads(c takeoff.Column) bool {
	switch c {
	case takeoff.Kind, takeoff.Style, takeoff.DimColumn(fittings.Width), takeoff.DimColumn(fittings.Height), takeoff.DimColumn(fittings.Diameter), takeoff.System, takeoff.Level, takeoff.PlaceOnSite, takeoff.Drawing, takeoff.Shape, takeoff.Scheme, takeoff.Class, takeoff.TestPa,
		takeoff.DesignPa, takeoff.OperatingPa, takeoff.DuctClassPa, takeoff.Sign, takeoff.Scope, takeoff.Stage, takeoff.Ready, takeoff.Closed, takeoff.Group:
		return true
	}
	return false
}

// touched are the columns that reading a row may fill.
func (t *table) touched() []takeoff.Column {
	seen := map[takeoff.Column]bool{takeoff.Kind: true, takeoff.System: true, takeoff.Level: true, takeoff.Shape: true, takeoff.Shape2: true, takeoff.DimColumn(fittings.Angle): true}
	for i := range t.specs {
		s := &t.specs[i]
		seen[s.to()] = true
		for _, c := range s.sized {
			seen[c] = true
		}
		if s.Verdict == headings.Sizes {
			for _, c := range dims(headings.SecondSize) {
				seen[c] = true
			}
		}
	}
	return slices.Sorted(maps.Keys(seen))
}

// elsewhere are the columns into which sizes are moved that stand in other cells.
var elsewhere = slices.Concat(own[:], second[:], []takeoff.Column{takeoff.DimColumn(fittings.Length), takeoff.Quantity})

// saysElse reports a cell that holds something else than its column takes and bears on
// no area: a pressure class in words, yes or no for a day, no lining.
func (t *table) saysElse(s *spec, cell string) bool {
	switch c := s.to(); c {
	case takeoff.DuctClassPa:
		if strings.ContainsAny(cell, "0123456789#=") {
			return false
		}
	case takeoff.Ready, takeoff.Closed, takeoff.DimColumn(fittings.Lining):
		if word := strings.ToLower(cell); !slices.Contains(wording.Noes, word) && (c == takeoff.DimColumn(fittings.Lining) || !slices.Contains(wording.Yeses, word)) {
			return false
		}
	case takeoff.Joint:
		if cell == s.heard {
			return false
		}
		if terms.KnownJoint(cell) || t.kinds().Translate(c, cell) != cell {
			s.heard = cell
			return false
		}
	default:
		return false
	}
	t.told.Add("cells of column '%s' that say something else, not used", s.Typed, t.place.Row)
	return true
}
