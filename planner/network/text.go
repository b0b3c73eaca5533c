package network

import (
	"fmt"

	"blankoff/fittings"
)

// NodeText names a node for somebody with a drawing in hand: "D12" or
// "D12 piece 4 of 12".
func (n *Network) NodeText(k int) string {
	d := &n.Nodes[k]
	name := n.Item(k).Name()
	switch {
	case d.Of <= 1:
		return name
	case d.First == d.Last:
		return fmt.Sprintf("%s piece %d of %d", name, d.First, d.Of)
	case d.First == 1 && d.Last == d.Of:
		return fmt.Sprintf("%s (%d pieces)", name, d.Of)
	}
	return fmt.Sprintf("%s pieces %d to %d of %d", name, d.First, d.Last, d.Of)
}

// JointText says where a joint is: "D12 after piece 4 of 12, 6.0 m from its
// plant end", or "between T3 branch and D4".
func (n *Network) JointText(k int) string {
	j := &n.Joints[k]
	a, b := n.Item(j.A), n.Item(j.B)
	switch {
	case j.Inside:
		d := &n.Nodes[j.A]
		return fmt.Sprintf("%s after piece %d of %d, %s from its plant end", a.Name(), d.Last, d.Of, n.lengthText(d.Start+d.Long))
	case j.Wall:
		return fmt.Sprintf("in the wall of %s at %s", n.NodeText(j.A), b.Name())
	case j.Ring:
		return fmt.Sprintf("between the far end of %s and %s (closes a ring)", b.Name(), a.Name())
	}
	from := a.Name()
	switch b.ParentEnd {
	case fittings.BranchEnd:
		from += " branch"
	case fittings.BranchEnd2:
		from += " branch2"
	}
	return "between " + from + " and " + b.Name()
}

func (n *Network) lengthText(m float64) string {
	if n.Lengths != nil {
		return n.Lengths(m)
	}
	return fmt.Sprintf("%.1f m", m)
}

// EndText says where an open end is: "far end of D9".
func (n *Network) EndText(e *OpenEnd) string {
	name := n.Item(e.Node).Name()
	if d := &n.Nodes[e.Node]; d.Of > 1 && n.Item(e.Node).SideBySide() {
		name = fmt.Sprintf("%s no. %d of %d", name, d.First, d.Of)
	}
	if n.Item(e.Node).Piece.Kind == fittings.Spigot {
		return "free end of " + name
	}
	return e.Role.String() + " of " + name
}
