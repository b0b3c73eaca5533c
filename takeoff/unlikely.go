package takeoff

import (
	"fmt"
	"strings"

	"blankoff/fittings"
)

// shortStraight is a length under which a straight is hardly made, m; in a
// schedule where most straights are shorter, metres were taken for mm. Common
// practice, no source.
const shortStraight = 0.05

// checkLengths refuses straights whose lengths look like metres read as mm. One
// sliver among many is left alone: models of real buildings hold them.
func (b *book) checkLengths() {
	if 2*b.short <= b.straights {
		b.noteSlivers()
		return
	}
	for i := range b.lines {
		if l := &b.lines[i]; l.kind == fittings.Straight && l.length > 0 && l.length < shortStraight {
			b.refuse(wrong{i, "length_mm", fmt.Sprintf("%g", l.length*1000), "a length in mm",
				fmt.Sprintf("a straight of %g mm is hardly made, and most here are as short: if lengths are in m, say so in the heading, as length_m", l.length*1000)})
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
func (b *book) checkUnits() {
	if b.narrow == 0 {
		return
	}
	narrow, all := make([]int, len(b.sheets)), make([]int, len(b.sheets))
	for i := range b.lines {
		if l := &b.lines[i]; l.assumed && !l.refused && !l.given {
			all[l.sheet]++
			if b.isNarrow(l) {
				narrow[l.sheet]++
			}
		}
	}
	for i := range b.lines {
		l := &b.lines[i]
		if !l.assumed || l.refused || l.given || 2*narrow[l.sheet] <= all[l.sheet] {
			continue
		}
		heading, value := "width_mm", 0.0
		if c, ok := b.first(l); ok && c.Diameter > 0 {
			heading, value = "diameter_mm", c.Diameter
		} else if ok {
			value = c.Width
		}
		b.refuse(wrong{i, heading, fmt.Sprintf("%g", value*1000), "a unit in the headings",
			"no unit is stated, and in mm most pieces here would be smaller than ducts are; state it in the headings, as width_cm or width_mm"})
	}
}

// sliver is a length under which a straight among longer ones is looked at twice,
// m: 4.5 may be metres.
const sliver = 0.02

// noteSlivers notes straights so short that their length may be in metres.
func (b *book) noteSlivers() {
	if b.short == 0 {
		return
	}
	var names []string
	for i := range b.lines {
		l := &b.lines[i]
		if l.kind == fittings.Straight && !l.refused && l.length > 0 && l.length < sliver {
			b.remark(i, fmt.Sprintf("only %g mm long; if that is %g m, write it in mm", l.length*1000, l.length*1000))
			names = append(names, b.nameText(l))
		}
	}
	if n := len(names); n > 0 {
		more := ""
		if n > 3 {
			names, more = names[:3], fmt.Sprintf(" and %d more", n-3)
		}
		b.note(fmt.Sprintf("straights of less than %g mm: %s%s; where a length was typed in m, write it in mm", sliver*1000, strings.Join(names, ", "), more))
	}
}
