package takeoff

import "blankoff/fittings"

// placeOf is where a row stands.
func placeOf(g *ledger, l *line) Place {
	s := g.sheets[l.sheet]
	return Place{s.file, s.name, int(l.row)}
}

// keep takes into a line what was measured of an item.
func keep(g *ledger, l *line, it *Item, made func(fittings.CrossSection) string) {
	l.shape, l.area, l.exact, l.joint = it.Piece.Shape, it.Area, it.Exact, it.JointLength
	g.setEnds(l, it.Ends, made)
	if l.kind == fittings.Spigot {
		m := g.rest(l)
		m.piece, m.opening = it.Piece, it.OpeningExact
	}
}

// itemOf is a row of the ledger as an Item, as far as the ledger knows it.
func itemOf(g *ledger, l *line) *Item {
	m := g.seldom(l)
	it := &Item{At: placeOf(g, l), Tag: string(g.tagOf(l)), From: string(g.fromOf(l)), Shared: &Shared{System: g.names[l.system], Level: g.names[l.level]},
		Piece: m.piece, Quantity: int(l.quantity), Scope: l.scope, Rare: &Rare{AtM: m.at, HasAt: m.hasAt, Cut: m.cut, CutExact: m.cutExact, OpeningExact: m.opening},
		Ends: g.ends(l), Area: l.area, Exact: l.exact, JointLength: l.joint,
		Parent: int(l.parent), ParentEnd: l.parentEnd, RingWith: int(l.ringWith), RingEnd: l.ringEnd,
		Refused: l.refused, childCount: l.children}
	it.Piece.Kind, it.Piece.Shape = l.kind, l.shape
	return it
}
