package takeoff

import (
	"fmt"

	"blankoff/fittings"
)

// closeRings resolves joins: the far end of a row meets a further row.
func (t *Takeoff) closeRings() {
	for k := range t.more {
		i, joins := int(t.more[k].line), t.more[k].joins
		l := &t.lines[i]
		if joins == "" {
			continue
		}
		host, role, named, f := t.resolve(i, "joins", joins)
		if f != nil {
			t.fault(i, *f)
			continue
		}
		if !named {
			role = fittings.FarEnd
		}
		if t.lines[host].kind == fittings.Plenum {
			role = fittings.PlantEnd
		}
		if expected, message := t.cantClose(i, host, role); message != "" {
			t.fault(i, t.at(l).Fault("joins", joins, expected, message))
			continue
		}
		t.load(hang{host, role}, i)
		t.load(hang{i, fittings.FarEnd}, host)
		l.ringWith, l.ringEnd = int32(host), role
		t.lines[host].children++
	}
}

// cantClose says why the far end of row i can't meet an end of host: what was
// expected and what is wrong.
func (t *Takeoff) cantClose(i, host int, role fittings.EndRole) (expected, message string) {
	l, h := &t.lines[i], &t.lines[host]
	if h.kind != fittings.Plenum {
		if first, ok := t.carries(hang{host, role}); ok {
			return "an end with nothing on it", fmt.Sprintf("the %s of %s already carries %s", role, t.nameText(h), t.nameText(&t.lines[first]))
		}
		if h.roles&(1<<role) == 0 && !h.unknownEnds() {
			return "an end that " + t.nameText(h) + " has: " + t.endNames(h), fmt.Sprintf("%s has no %s to join to", t.nameText(h), role)
		}
	}
	if first, ok := t.carries(hang{i, fittings.FarEnd}); ok {
		return "a far end with nothing on it", fmt.Sprintf("the far end of %s already carries %s, so it can't join another", t.nameText(l), t.nameText(&t.lines[first]))
	}
	if l.roles&(1<<fittings.FarEnd) == 0 && !l.unknownEnds() {
		return "a piece with a far end", t.nameText(l) + " has no far end to join with"
	}
	return "", ""
}

// checkQuantities refuses a quantity that has no meaning in the network:
// straights follow one another and end pieces stand side by side, but two bends
// of one row can't be placed.
func (t *Takeoff) checkQuantities() {
	if t.several == 0 {
		return
	}
	for i := range t.lines {
		l := &t.lines[i]
		if l.quantity <= 1 || l.loose() && t.seldom(l).run == "" || l.refused {
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
			message = fmt.Sprintf("where the %d pieces of %s stand in the network isn't clear; write a row for each", l.quantity, t.nameText(l))
		}
		if message != "" {
			t.fault(i, t.at(l).Fault("quantity", fmt.Sprint(l.quantity), expected, message))
		}
	}
}

// checkPositions refuses a spigot that lies beyond the ends of its wall.
func (t *Takeoff) checkPositions() {
	for k := range t.more {
		m := &t.more[k]
		i := int(m.line)
		l := &t.lines[i]
		if !m.hasAt {
			continue
		}
		if l.kind != fittings.Spigot {
			t.remark(i, "at_mm is used for spigots only")
			continue
		}
		if l.parent < 0 || l.refused {
			continue
		}
		host := &t.lines[l.parent]
		if host.kind != fittings.Straight || host.refused {
			continue
		}
		half := openingLength(&m.piece) / 2
		long := host.length * float64(host.quantity)
		if m.at < half-1e-9 || m.at > long-half+1e-9 {
			t.fault(i, t.at(l).Fault("at_mm", fmt.Sprintf("%g", m.at*1000), fmt.Sprintf("%g to %g mm, the centre of the spigot", half*1000, (long-half)*1000),
				fmt.Sprintf("the spigot would reach beyond the end of %s", t.nameText(host))))
		}
	}
}

// openingLength is how far a spigot's opening reaches along the wall, as far as
// the row says, m.
func openingLength(p *fittings.Piece) float64 {
	for _, d := range []fittings.Dim{fittings.Entry, fittings.BranchDiameter, fittings.BranchWidth, fittings.Diameter, fittings.Width} {
		if v, ok := p.Sizes.Get(d); ok && (d != fittings.Entry || p.Style == fittings.Conical) {
			return v
		}
	}
	return 0
}
