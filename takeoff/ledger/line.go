package ledger

import (
	"blankoff/fittings"
	"blankoff/takeoff/terms"
)

// Line is what joining, openings, faults and sums need of a row. A schedule of a
// million rows has one for each, so it is small and holds no pointers; the rules
// work on lines only, whether Items are kept beside them or not.
type Line struct {
	Text       int // where its tag, and then its from, begin in the ledger's text
	TagLength  uint32
	FromLength uint32 // their lengths
	Row        int32
	Sheet      int32 // in the ledger's list
	System     int32
	Level      int32 // in the ledger's list of names
	Quantity   int32
	Parent     int32 // -1 for none
	RingWith   int32 // -1 for none
	Children   int32
	Far        int32    // item that its far end carries, -1 for none
	More       int32    // in the ledger's list of what few rows have, -1 for none
	Faces      [4]int32 // of the ends that it has, in their order, in the ledger's list

	Length, Area, Exact, Joint float64 // m, m2, m2, m

	Kind      fittings.Kind
	Shape     fittings.Shape
	Typed     fittings.Shape // before it was measured
	Scope     terms.Scope
	Roles     uint8 // a bit for each end that it has
	ParentEnd fittings.EndRole
	RingEnd   fittings.EndRole
	Notes     uint8 // before it was measured
	Refused   bool
	Given     bool   // the area was given
	Assumed   bool   // its sizes are in a unit that nobody stated
	Own       bool   // a small size or length has its unit in its cell
	Revision  uint16 // marks its revision; 0: none is told
	Named     uint8  // lines above it that name the rows below them, or end those above
	Mark      uint8  // of its row as it stands, with all its cells: another has another, as a rule
}

// More is what few rows have.
type More struct {
	Line          int32          // whose it is
	Piece         fittings.Piece // of spigots and plenums
	At            float64        // m; see HasAt
	HasAt         bool
	Run, Joins    string
	Thin          float64      // a size under which no duct is made, m; 0: it has none
	ThinDim       fittings.Dim // which it is
	Opening       float64      // of a spigot in its wall, exact, m2
	Cut, CutExact float64      // openings taken off, m2
}

// Face is a cross-section that ends have, with what is worked out once for all.
type Face struct {
	fittings.CrossSection
	Note string         // that it isn't of a series
	Size int32          // its text among the sizes of the totals; -1: not asked for yet
	Both []fittings.End // of a piece with this section at both ends, which is most; shared, so never written
}

// SideBySide reports whether a quantity of pieces over 1 stands side by side: end
// pieces do, straights follow one another.
func SideBySide(k fittings.Kind, quantity int) bool {
	switch k {
	case fittings.Spigot, fittings.Cap, fittings.Flexible:
		return quantity > 1
	}
	return false
}

// SideBySide reports whether a quantity over 1 stands side by side.
func (l *Line) SideBySide() bool { return SideBySide(l.Kind, int(l.Quantity)) }

// Loose reports whether nobody is named by the row and nobody names it.
func (l *Line) Loose() bool { return l.Parent < 0 && l.Children == 0 && l.RingWith < 0 }

// CarriesSpigots reports whether a spigot may sit in the piece's wall. Of a row
// whose kind wasn't understood nothing is known, so nothing is held against it.
func (l *Line) CarriesSpigots() bool {
	switch l.Kind {
	case fittings.Straight, fittings.Tee, fittings.Plenum:
		return true
	case fittings.NoKind:
		return l.Refused
	}
	return false
}

// UnknownEnds reports whether the ends of a piece aren't known: its row was
// refused, its area was given without sizes, or it is a spigot that is measured
// once its wall is known.
func (l *Line) UnknownEnds() bool { return l.Roles == 0 && l.Kind != fittings.Cap }
