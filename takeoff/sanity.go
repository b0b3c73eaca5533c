package takeoff

import (
	"fmt"
	"sort"
	"strings"

	"blankoff/fittings"
)

// shortStraight is a length under which a straight is hardly made, m; in a
// schedule where most straights are shorter, metres were taken for mm. Common
// practice, no source.
const shortStraight = 0.05

// checkLengths refuses straights whose lengths look like metres read as mm. One
// sliver among many is left alone: models of real buildings hold them.
func (t *Takeoff) checkLengths() {
	if 2*t.short <= t.straights {
		t.noteSlivers()
		return
	}
	for i := range t.lines {
		if l := &t.lines[i]; l.kind == fittings.Straight && l.length > 0 && l.length < shortStraight {
			t.fault(i, t.at(l).Fault("length_mm", fmt.Sprintf("%g", l.length*1000), "a length in mm",
				fmt.Sprintf("a straight of %g mm is hardly made, and most here are as short: if lengths are in m, say so in the heading, as length_m", l.length*1000)))
		}
	}
}

// Cross-sections under which hardly any duct is made, m: the series of EN 1505:1997
// begins at sides of 100 mm, that of EN 1506:2007 at diameters of 63 mm (from memory,
// unverified). Most straights are longer than stubby too (common practice, no source).
const (
	leastWide  = 0.1
	leastRound = 0.063
	stubby     = 0.2
	stubbiest  = 0.125
	small      = 0.25 // a section across which a stubby straight is in doubt
)

// isNarrow reports a piece in a unit that nobody stated, of a size that hardly any has.
func (g *ledger) isNarrow(l *line) bool {
	if !l.assumed || l.given {
		return false
	}
	c, ok := g.first(l)
	return ok && max(c.Width, c.Height) < leastWide && c.Diameter < leastRound ||
		ok && l.kind == fittings.Straight && l.length > 0 && (l.length < stubbiest || l.length < stubby && max(c.Width, c.Height, c.Diameter) < small)
}

// checkUnits refuses the pieces of a sheet in a unit that nobody stated, where most
// of them would be narrower or shorter than ducts are: it is another unit.
func (t *Takeoff) checkUnits() {
	if t.narrow == 0 {
		return
	}
	narrow, all := make([]int, len(t.places)), make([]int, len(t.places))
	for i := range t.lines {
		if l := &t.lines[i]; l.assumed && !l.refused && !l.given {
			all[l.place]++
			if t.isNarrow(l) {
				narrow[l.place]++
			}
		}
	}
	for i := range t.lines {
		l := &t.lines[i]
		if !l.assumed || l.refused || l.given || 2*narrow[l.place] <= all[l.place] {
			continue
		}
		heading, value := "width_mm", 0.0
		if c, ok := t.first(l); ok && c.Diameter > 0 {
			heading, value = "diameter_mm", c.Diameter
		} else if ok {
			value = c.Width
		}
		t.fault(i, t.at(l).Fault(heading, fmt.Sprintf("%g", value*1000), "a unit in the headings",
			"no unit is stated, and in mm most pieces here would be smaller than ducts are; state it in the headings, as width_cm or width_mm"))
	}
}

// sliver is a length under which a straight among longer ones is looked at twice,
// m: 4.5 may be metres.
const sliver = 0.02

// noteSlivers notes straights so short that their length may be in metres.
func (t *Takeoff) noteSlivers() {
	if t.short == 0 {
		return
	}
	var names []string
	for i := range t.lines {
		l := &t.lines[i]
		if l.kind == fittings.Straight && !l.refused && l.length > 0 && l.length < sliver {
			t.remark(i, fmt.Sprintf("only %g mm long; if that is %g m, write it in mm", l.length*1000, l.length*1000))
			names = append(names, t.nameText(l))
		}
	}
	if n := len(names); n > 0 {
		more := ""
		if n > 3 {
			names, more = names[:3], fmt.Sprintf(" and %d more", n-3)
		}
		t.Notes = append(t.Notes, fmt.Sprintf("straights of less than %g mm: %s%s; where a length was typed in m, write it in mm", sliver*1000, strings.Join(names, ", "), more))
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
