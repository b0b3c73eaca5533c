package takeoff

import (
	"fmt"

	"blankoff/fittings"
)

// closeRings resolves joins: the far end of a row meets a further row.
func (t *Takeoff) closeRings(taken map[hang]int) {
	for i := range t.Items {
		it := &t.Items[i]
		if it.Joins == "" {
			continue
		}
		host, role, named, f := t.resolve(i, "joins", it.Joins)
		if f != nil {
			t.fault(i, *f)
			continue
		}
		h := &t.Items[host]
		bad := func(expected, message string) {
			t.fault(i, it.At.Fault("joins", it.Joins, expected, message))
		}
		if !named {
			role = fittings.FarEnd
		}
		if h.Piece.Kind == fittings.Plenum {
			role = fittings.PlantEnd
		} else if first, ok := taken[hang{host, role}]; ok {
			bad("an end with nothing on it", fmt.Sprintf("the %s of %s already carries %s", role, h.Name(), t.Items[first].Name()))
			continue
		} else if _, ok := h.End(role); !ok && !unknownEnds(h) {
			bad("an end that "+h.Name()+" has: "+endNames(h), fmt.Sprintf("%s has no %s to join to", h.Name(), role))
			continue
		}
		if first, ok := taken[hang{i, fittings.FarEnd}]; ok {
			bad("a far end with nothing on it", fmt.Sprintf("the far end of %s already carries %s, so it can't join another", it.Name(), t.Items[first].Name()))
			continue
		}
		if _, ok := it.End(fittings.FarEnd); !ok && !unknownEnds(it) {
			bad("a piece with a far end", it.Name()+" has no far end to join with")
			continue
		}
		taken[hang{host, role}], taken[hang{i, fittings.FarEnd}] = i, host
		it.RingWith, it.RingEnd = host, role
		h.childCount++
	}
}

// checkQuantities refuses a quantity that has no meaning in the network:
// straights follow one another and end pieces stand side by side, but two bends
// of one row can't be placed.
func (t *Takeoff) checkQuantities() {
	for i := range t.Items {
		it := &t.Items[i]
		if it.Quantity <= 1 || it.Loose() || it.Refused {
			continue
		}
		expected, message := "1", ""
		switch {
		case it.Piece.Kind == fittings.Straight, it.Piece.Kind == fittings.Spigot:
		case it.SideBySide():
			if it.Parent >= 0 && it.ParentEnd != fittings.PlantEnd {
				message = fmt.Sprintf("%d pieces side by side can't share one end; write a row for each with the end that it hangs on", it.Quantity)
			}
		default:
			message = fmt.Sprintf("where the %d pieces of %s stand in the network isn't clear; write a row for each", it.Quantity, it.Name())
		}
		if message != "" {
			t.fault(i, it.At.Fault("quantity", fmt.Sprint(it.Quantity), expected, message))
		}
	}
}

// checkPositions refuses a spigot that lies beyond the ends of its wall.
func (t *Takeoff) checkPositions() {
	for i := range t.Items {
		it := &t.Items[i]
		if !it.HasAt {
			continue
		}
		if it.Piece.Kind != fittings.Spigot {
			it.Notes = append(it.Notes, "at_mm is used for spigots only")
			continue
		}
		if it.Parent < 0 || it.Refused {
			continue
		}
		host := &t.Items[it.Parent]
		if host.Piece.Kind != fittings.Straight || host.Refused {
			continue
		}
		half := t.openingLength(it) / 2
		long := host.Length() * float64(host.Quantity)
		if it.AtM < half-1e-9 || it.AtM > long-half+1e-9 {
			t.fault(i, it.At.Fault("at_mm", fmt.Sprintf("%g", it.AtM*1000), fmt.Sprintf("%g to %g mm, the centre of the spigot", half*1000, (long-half)*1000),
				fmt.Sprintf("the spigot would reach beyond the end of %s", host.Name())))
		}
	}
}

// openingLength is how far a spigot's opening reaches along the wall, as far as
// the row says, m.
func (t *Takeoff) openingLength(it *Item) float64 {
	for _, d := range []fittings.Dim{fittings.Entry, fittings.BranchDiameter, fittings.BranchWidth, fittings.Diameter, fittings.Width} {
		if v, ok := it.Piece.Sizes.Get(d); ok && (d != fittings.Entry || it.Piece.Style == fittings.Conical) {
			return v
		}
	}
	return 0
}
