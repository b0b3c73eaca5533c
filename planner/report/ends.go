package report

import (
	"blankoff/fittings"
	"blankoff/planner"
)

// blankEnd finds the end whose sizes a blank has: its own row's at the joint or
// open end, else that of the row on the other side.
func blankEnd(p *planner.Plan, b *planner.Blank) EndOf {
	item := p.Network.Nodes[b.Node].Item
	if b.Joint < 0 {
		return ends(p, b.Face, at{item, b.Role})
	}
	mine, other := sides(p, b.Joint)
	if p.Network.Joints[b.Joint].B == b.Node {
		mine, other = other, mine
	}
	return ends(p, b.Face, mine, other)
}

// cutEnd finds the end whose sizes a cut has: the larger of both sides.
func cutEnd(p *planner.Plan, c *planner.Cut) EndOf {
	a, b := sides(p, c.Joint)
	return ends(p, c.Face, a, b)
}

type at struct {
	item int
	role fittings.EndRole
}

// sides are the ends that meet at a joint: A's and B's.
func sides(p *planner.Plan, joint int) (a, b at) {
	j := &p.Network.Joints[joint]
	ia, ib := p.Network.Nodes[j.A].Item, p.Network.Nodes[j.B].Item
	it := &p.Takeoff.Items[ib]
	switch b = (at{ib, fittings.PlantEnd}); {
	case j.Inside:
		return at{ia, fittings.PlantEnd}, b
	case j.Wall: // the opening is as big as what sits in it
		return b, b
	case j.Ring && it.RingWith == ia:
		return at{ia, it.RingEnd}, at{ib, fittings.FarEnd}
	}
	return at{ia, it.ParentEnd}, b
}

// ends gives the first end that has the sizes of the face.
func ends(p *planner.Plan, face fittings.CrossSection, try ...at) EndOf {
	for _, t := range try {
		it := &p.Takeoff.Items[t.item]
		if e, ok := it.End(t.role); ok && e.CrossSection == face && face.Shape != fittings.NoShape {
			return EndOf{it, t.role}
		}
	}
	return EndOf{}
}
