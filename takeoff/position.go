package takeoff

import (
	"fmt"
	"sort"

	"blankoff/fittings"
)

// checkPositions refuses a spigot that lies beyond the ends of its wall.
func (n *joined) checkPositions() {
	for k := range n.more {
		m := &n.more[k]
		i := int(m.line)
		l := &n.lines[i]
		if !m.hasAt {
			continue
		}
		if l.kind != fittings.Spigot {
			n.remark(i, "at_mm is used for spigots only")
			continue
		}
		if l.parent < 0 || l.refused {
			continue
		}
		host := &n.lines[l.parent]
		if host.kind != fittings.Straight || host.refused {
			continue
		}
		half := openingLength(&m.piece) / 2
		long := host.length * float64(host.quantity)
		if m.at < half-1e-9 || m.at > long-half+1e-9 {
			n.refuse(wrong{i, "at_mm", fmt.Sprintf("%g", m.at*1000), fmt.Sprintf("%g to %g mm, the centre of the spigot", half*1000, (long-half)*1000),
				fmt.Sprintf("the spigot would reach beyond the end of %s", n.nameText(host))})
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

// noteOverlaps notes spigots on one wall whose openings would overlap if they
// sat on the same side.
func noteOverlaps(in *book) {
	type reach struct {
		wall, item int
		from, to   float64
	}
	var all []reach
	for k := range in.more {
		m := &in.more[k]
		i := int(m.line)
		l := &in.lines[i]
		if l.kind == fittings.Spigot && l.parent >= 0 && !l.refused && m.hasAt {
			half := openingLength(&m.piece) / 2
			all = append(all, reach{int(l.parent), i, m.at - half, m.at + half})
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
		in.remark(b.item, fmt.Sprintf("overlaps %s along %s; right only if they sit on different sides of it", in.nameText(&in.lines[a.item]), in.nameText(&in.lines[a.wall])))
	}
}
