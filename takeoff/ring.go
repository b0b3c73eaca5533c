package takeoff

import (
	"fmt"

	"blankoff/fittings"
)

// closeRings resolves joins: the far end of a row meets a further row.
func (n *joined) closeRings() {
	for k := range n.more {
		i, joins := int(n.more[k].line), n.more[k].joins
		l := &n.lines[i]
		if joins == "" {
			continue
		}
		host, role, named, f := n.resolve(i, "joins", joins)
		if f != nil {
			n.refuse(*f)
			continue
		}
		if !named {
			role = fittings.FarEnd
		}
		if n.lines[host].kind == fittings.Plenum {
			role = fittings.PlantEnd
		}
		if expected, message := n.cantClose(i, host, role); message != "" {
			n.refuse(wrong{i, "joins", joins, expected, message})
			continue
		}
		n.load(hang{host, role}, i)
		n.load(hang{i, fittings.FarEnd}, host)
		l.ringWith, l.ringEnd = int32(host), role
		n.lines[host].children++
	}
}

// cantClose says why the far end of row i can't meet an end of host: what was
// expected and what is wrong.
func (n *joined) cantClose(i, host int, role fittings.EndRole) (expected, message string) {
	l, h := &n.lines[i], &n.lines[host]
	if h.kind != fittings.Plenum {
		if first, ok := n.carries(hang{host, role}); ok {
			return "an end with nothing on it", fmt.Sprintf("the %s of %s already carries %s", role, n.nameText(h), n.nameText(&n.lines[first]))
		}
		if h.roles&(1<<role) == 0 && !h.unknownEnds() {
			return "an end that " + n.nameText(h) + " has: " + n.endNames(h), fmt.Sprintf("%s has no %s to join to", n.nameText(h), role)
		}
	}
	if first, ok := n.carries(hang{i, fittings.FarEnd}); ok {
		return "a far end with nothing on it", fmt.Sprintf("the far end of %s already carries %s, so it can't join another", n.nameText(l), n.nameText(&n.lines[first]))
	}
	if l.roles&(1<<fittings.FarEnd) == 0 && !l.unknownEnds() {
		return "a piece with a far end", n.nameText(l) + " has no far end to join with"
	}
	return "", ""
}

// checkQuantities refuses a quantity that has no meaning in the network:
// straights follow one another and end pieces stand side by side, but two bends
// of one row can't be placed.
func (n *joined) checkQuantities() {
	if n.several == 0 {
		return
	}
	for i := range n.lines {
		l := &n.lines[i]
		if l.quantity <= 1 || l.loose() && n.seldom(l).run == "" || l.refused {
			continue
		}
		expected, message := "1", ""
		switch {
		case l.kind == fittings.Straight, l.kind == fittings.Spigot:
		case l.sideBySide():
			if l.parent >= 0 && l.parentEnd != fittings.PlantEnd {
				message = fmt.Sprintf("%d pieces side by side can't share one end; write a row for each with the end that it hangs on", l.quantity)
			}
		default:
			message = fmt.Sprintf("where the %d pieces of %s stand in the network isn't clear; write a row for each", l.quantity, n.nameText(l))
		}
		if message != "" {
			n.refuse(wrong{i, "quantity", fmt.Sprint(l.quantity), expected, message})
		}
	}
}
