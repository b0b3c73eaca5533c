package takeoff

import (
	"blankoff/fittings"
	"blankoff/takeoff/ledger"
	"blankoff/takeoff/terms"
)

// Item is one row of the schedule. There may be a million: what takes one byte
// stands together.
type Item struct {
	At       Place
	Tag      string
	*Shared         // what it has in common with its neighbours; never nil
	OnSite   string // the place column: room, gridline
	Piece    fittings.Piece
	Quantity int
	Blank    terms.Blank

	Class  string
	TestPa float64 // Pa; 0 is not given
	Sign   string  // positive, negative or ""
	From   string  // as typed
	*Rare          // what most rows don't give; never nil

	Parent   int // item towards the plant, -1 for none
	RingWith int // item that its far end meets as well, -1 for none

	Ends        []fittings.End // may be shared with other rows: read, never written
	Each        float64        // area of one on the basis, openings not yet taken off, m2
	Area        float64        // area of the whole row on the basis, less Cut, m2
	EachExact   float64        // the same two as they are exactly, whatever the basis
	Exact       float64
	JointLength float64 // installation joints of the whole row, m
	Notes       []string

	Scope     terms.Scope
	Joint     terms.Joint
	ParentEnd fittings.EndRole // the end of Parent that it hangs on; PlantEnd: its side wall
	RingEnd   fittings.EndRole // the end of RingWith that it meets
	Refused   bool
	Clear     bool // its sizes were given clear of a lining; those of Piece are of the metal

	noSheet    bool  // measured without the thickness of the sheet
	index      int32 // among the takeoff's items
	childCount int32
}

// Shared is what rows next to each other mostly have alike: one for all of them,
// read and never written.
type Shared struct {
	System, Level, Drawing string
}

// Rare is what most rows of a schedule don't give or don't have: a row that has any
// of it has one of its own.
type Rare struct {
	Note                             string
	Scheme                           string
	DesignPa, DuctClass, OperatingPa float64 // Pa; OperatingPa: what it works at, on the mean; 0 is not given
	Stage, Group                     string
	Ready, Closed                    terms.Moment // from when and until when it can be tested
	Joins, Run                       string       // as typed

	EndMinutes float64 // price of capping its open end; see HasEnd
	AtM        float64 // a spigot's centre from the plant end of its wall, m; see HasAt
	Stated     float64 // stated area, m2; see HasStated
	StatedText string  // the stated area as typed: its digits tell how it was rounded
	HasEnd     bool
	HasAt      bool
	HasStated  bool

	Opening      float64 // what one takes out of the wall that it sits in, on the basis, m2
	Cut          float64 // openings taken off this row on the basis, m2; 0 where they are kept
	OpeningExact float64 // the same two as they are exactly, whatever the basis
	CutExact     float64
}

// nothingRare is that of the rows that give none of it: read, never written.
var nothingRare = &Rare{}

// rareOf is a row's own Rare where it gives any of it, or that of all others. The lengths are
// added up, as that is one question for all of them.
func rareOf(r *Row) *Rare {
	t := &r.Text
	words := len(t[Note]) + len(t[Scheme]) + len(t[Stage]) + len(t[Group]) + len(t[Ready]) + len(t[Closed]) + len(t[Joins]) + len(t[Run])
	figures := len(t[DesignPa]) + len(t[DuctClassPa]) + len(t[OperatingPa]) + len(t[EndMinutes]) + len(t[At]) + len(t[StatedArea])
	if words+figures == 0 && r.has&seldom == 0 {
		return nothingRare
	}
	return &Rare{Note: t[Note], Scheme: t[Scheme], Stage: t[Stage], Group: t[Group], Joins: t[Joins], Run: t[Run], StatedText: t[StatedArea]}
}

// own is the item's own Rare, to write to.
func (it *Item) own() *Rare {
	if it.Rare == nothingRare {
		it.Rare = &Rare{}
	}
	return it.Rare
}

// Name is the tag, or the place of a row without one.
func (it *Item) Name() string { return ledger.RowName(it.Tag, it.At.Sheet, it.At.Row) }

// End returns the end with the given role, and whether the piece has it.
func (it *Item) End(r fittings.EndRole) (fittings.End, bool) {
	for _, e := range it.Ends {
		if e.Role == r {
			return e, true
		}
	}
	return fittings.End{}, false
}

// Length is the scheduled length of one piece of the row along its axis, m, or
// 0 where it has none.
func (it *Item) Length() float64 {
	v, _ := it.Piece.Sizes.Get(fittings.Length)
	return v
}

// SideBySide reports whether a quantity over 1 stands side by side: end pieces
// do, straights follow one another.
func (it *Item) SideBySide() bool { return ledger.SideBySide(it.Piece.Kind, it.Quantity) }

// Loose reports whether nobody is named by the row and nobody names it. A row that is
// a run by itself isn't loose.
func (it *Item) Loose() bool {
	return it.Parent < 0 && it.childCount == 0 && it.RingWith < 0 && it.Run == ""
}

// WithoutSheet reports whether it was measured without the thickness of the
// sheet, because a piece of its outside sizes can't be measured.
func (it *Item) WithoutSheet() bool { return it.noSheet }

// Children is the number of rows that hang on this one.
func (it *Item) Children() int { return int(it.childCount) }

// Size is that of the item's end towards the plant, or of its only end; of a plenum
// of known sides it is the box.
func (it *Item) Size() terms.Size {
	if it.Piece.Kind == fittings.Plenum {
		if z, ok := terms.BoxOf(&it.Piece); ok {
			return z
		}
	}
	if len(it.Ends) == 0 {
		return terms.Size{}
	}
	return terms.Size{Section: it.Ends[0].CrossSection}
}

// SizeText is its size in mm.
func (it *Item) SizeText() string { return it.Size().Text() }

// SizeIn is its size in the units that a reader asked for.
func (it *Item) SizeIn(in terms.Sizes) string { return it.Size().In(in) }

// placeOf is where a row stands.
func placeOf(g *ledger.Ledger, l *ledger.Line) Place {
	s := g.Sheets[l.Sheet]
	return Place{s.File, s.Name, int(l.Row)}
}

// keep takes into a line what was measured of an item.
func keep(g *ledger.Ledger, l *ledger.Line, it *Item, made func(fittings.CrossSection) string) {
	l.Shape, l.Area, l.Exact, l.Joint = it.Piece.Shape, it.Area, it.Exact, it.JointLength
	g.SetEnds(l, it.Ends, made)
	if l.Kind == fittings.Spigot {
		m := g.Rest(l)
		m.Piece, m.Opening = it.Piece, it.OpeningExact
	}
}

// itemOf is a row of the ledger as an Item, as far as the ledger knows it.
func itemOf(g *ledger.Ledger, l *ledger.Line) *Item {
	m := g.Seldom(l)
	it := &Item{At: placeOf(g, l), Tag: string(g.TagOf(l)), From: string(g.FromOf(l)), Shared: &Shared{System: g.Names[l.System], Level: g.Names[l.Level]},
		Piece: m.Piece, Quantity: int(l.Quantity), Scope: l.Scope, Rare: &Rare{AtM: m.At, HasAt: m.HasAt, Cut: m.Cut, CutExact: m.CutExact, OpeningExact: m.Opening},
		Ends: g.Ends(l), Area: l.Area, Exact: l.Exact, JointLength: l.Joint,
		Parent: int(l.Parent), ParentEnd: l.ParentEnd, RingWith: int(l.RingWith), RingEnd: l.RingEnd,
		Refused: l.Refused, childCount: l.Children}
	it.Piece.Kind, it.Piece.Shape = l.Kind, l.Shape
	return it
}
