package takeoff

import (
	"blankoff/fittings"
	"blankoff/takeoff/ledger"
)

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
