package takeoff

import (
	"fmt"
	"sort"

	"blankoff/fittings"
)

// shortStraight is a length under which a straight is hardly made, m; in a
// schedule where most straights are shorter, metres were taken for mm. Common
// practice, no source.
const shortStraight = 0.05

// checkLengths refuses straights whose lengths look like metres read as mm. One
// sliver among many is left alone: models of real buildings hold them.
func (t *Takeoff) checkLengths() {
	straights, short := 0, 0
	odd := func(l *line) bool { return l.length > 0 && l.length < shortStraight }
	for i := range t.lines {
		if l := &t.lines[i]; l.kind == fittings.Straight && l.length > 0 {
			straights++
			if odd(l) {
				short++
			}
		}
	}
	if 2*short <= straights {
		return
	}
	for i := range t.lines {
		if l := &t.lines[i]; l.kind == fittings.Straight && odd(l) {
			t.fault(i, t.at(l).Fault("length_mm", fmt.Sprintf("%g", l.length*1000), "a length in mm",
				fmt.Sprintf("a straight of %g mm is hardly made, and most here are as short: if lengths are in m, say so in the heading, as length_m", l.length*1000)))
		}
	}
}

// noteOverlaps notes spigots on one wall whose openings would overlap if they
// sat on the same side.
func (t *Takeoff) noteOverlaps() {
	type reach struct {
		wall, item int
		from, to   float64
	}
	var all []reach
	for k := range t.more {
		m := &t.more[k]
		i := int(m.line)
		l := &t.lines[i]
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
		t.remark(b.item, fmt.Sprintf("overlaps %s along %s; right only if they sit on different sides of it", t.nameText(&t.lines[a.item]), t.nameText(&t.lines[a.wall])))
	}
}
