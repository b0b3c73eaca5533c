package joining

import (
	"fmt"
	"sort"

	"blankoff/fittings"
	"blankoff/takeoff/ledger"
)

// checkPositions refuses a spigot that lies beyond the ends of its wall.
func (n *joined) checkPositions() {
	for k := range n.More {
		m := &n.More[k]
		i := int(m.Line)
		l := &n.Lines[i]
		if !m.HasAt {
			continue
		}
		if l.Kind != fittings.Spigot {
			n.Remark(i, "at_mm is used for spigots only")
			continue
		}
		if l.Parent < 0 || l.Refused {
			continue
		}
		host := &n.Lines[l.Parent]
		if host.Kind != fittings.Straight || host.Refused {
			continue
		}
		half := openingLength(&m.Piece) / 2
		long := host.Length * float64(host.Quantity)
		if m.At < half-1e-9 || m.At > long-half+1e-9 {
			n.Refuse(i, "at_mm", fmt.Sprintf("%g", m.At*1000), fmt.Sprintf("%g to %g mm, the centre of the spigot", half*1000, (long-half)*1000),
				fmt.Sprintf("the spigot would reach beyond the end of %s", n.NameText(host)))
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

// NoteOverlaps notes spigots on one wall whose openings would overlap if they
// sat on the same side.
func NoteOverlaps(in *ledger.Book) {
	type reach struct {
		wall, item int
		from, to   float64
	}
	var all []reach
	for k := range in.More {
		m := &in.More[k]
		i := int(m.Line)
		l := &in.Lines[i]
		if l.Kind == fittings.Spigot && l.Parent >= 0 && !l.Refused && m.HasAt {
			half := openingLength(&m.Piece) / 2
			all = append(all, reach{int(l.Parent), i, m.At - half, m.At + half})
		}
	}
	sort.SliceStable(all, func(a, b int) bool {
		if all[a].wall != all[b].wall {
			return all[a].wall < all[b].wall
		}
		return all[a].from < all[b].from
	})
	for k := 1; k < len(all); k++ {
		a, b := all[k-1], all[k]
		if a.wall != b.wall || b.from >= a.to-1e-9 {
			continue
		}
		in.Remark(b.item, fmt.Sprintf("overlaps %s along %s; right only if they sit on different sides of it", in.NameText(&in.Lines[a.item]), in.NameText(&in.Lines[a.wall])))
	}
}
