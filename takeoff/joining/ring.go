package joining

import (
	"fmt"

	"blankoff/fittings"
)

// closeRings resolves joins: the far end of a row meets a further row.
func (n *joined) closeRings() {
	for k := range n.More {
		i, joins := int(n.More[k].Line), n.More[k].Joins
		l := &n.Lines[i]
		if joins == "" {
			continue
		}
		host, role, named, f := n.resolve(i, "joins", joins)
		if f != nil {
			n.RefuseFor(*f)
			continue
		}
		if !named {
			role = fittings.FarEnd
		}
		if n.Lines[host].Kind == fittings.Plenum {
			role = fittings.PlantEnd
		}
		if expected, message := n.cantClose(i, host, role); message != "" {
			n.Refuse(i, "joins", joins, expected, message)
			continue
		}
		n.load(hang{host, role}, i)
		n.load(hang{i, fittings.FarEnd}, host)
		l.RingWith, l.RingEnd = int32(host), role
		n.Lines[host].Children++
	}
}

// cantClose says why the far end of row i can't meet an end of host: what was
// expected and what is wrong.
func (n *joined) cantClose(i, host int, role fittings.EndRole) (expected, message string) {
	l, h := &n.Lines[i], &n.Lines[host]
	if h.Kind != fittings.Plenum {
		if first, ok := n.carries(hang{host, role}); ok {
			return "an end with nothing on it", fmt.Sprintf("the %s of %s already carries %s", role, n.NameText(h), n.NameText(&n.Lines[first]))
		}
		if h.Roles&(1<<role) == 0 && !h.UnknownEnds() {
			return "an end that " + n.NameText(h) + " has: " + n.endNames(h), fmt.Sprintf("%s has no %s to join to", n.NameText(h), role)
		}
	}
	if first, ok := n.carries(hang{i, fittings.FarEnd}); ok {
		return "a far end with nothing on it", fmt.Sprintf("the far end of %s already carries %s, so it can't join another", n.NameText(l), n.NameText(&n.Lines[first]))
	}
	if l.Roles&(1<<fittings.FarEnd) == 0 && !l.UnknownEnds() {
		return "a piece with a far end", n.NameText(l) + " has no far end to join with"
	}
	return "", ""
}

// checkQuantities refuses a quantity that has no meaning in the network:
// straights follow one another and end pieces stand side by side, but two bends
// of one row can't be placed.
func (n *joined) checkQuantities() {
	if n.Several == 0 {
		return
	}
	for i := range n.Lines {
		l := &n.Lines[i]
		if l.Quantity <= 1 || l.Loose() && n.Seldom(l).Run == "" || l.Refused {
			continue
		}
		expected, message := "1", ""
		switch {
		case l.Kind == fittings.Straight, l.Kind == fittings.Spigot:
		case l.SideBySide():
			if l.Parent >= 0 && l.ParentEnd != fittings.PlantEnd {
				message = fmt.Sprintf("%d pieces side by side can't share one end; write a row for each with the end that it hangs on", l.Quantity)
			}
		default:
			message = fmt.Sprintf("where the %d pieces of %s stand in the network isn't clear; write a row for each", l.Quantity, n.NameText(l))
		}
		if message != "" {
			n.Refuse(i, "quantity", fmt.Sprint(l.Quantity), expected, message)
		}
	}
}
