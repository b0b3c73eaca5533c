package takeoff

import (
	"fmt"
	"sort"

	"blankoff/fittings"
)

// cutIn is an opening cut in a wall.
type cutIn struct {
	wall, by int     // items
	area     float64 // of one, exact, m2
	times    int
}

// openings is openings and how they are taken off their walls.
type openings struct {
	*book
	outside func(fittings.CrossSection) fittings.CrossSection // by the sizes that are measured
	kept    bool                                              // by the basis, whose areas keep them
	list    bool                                              // each is listed
	cuts    []cutIn
}

// takeOff takes off each wall the openings that are cut in it: of spigots, and of
// whatever else hangs on the walls of a plenum. It lists them by wall, if asked to.
func (o *openings) takeOff() []cutIn {
	if len(o.more) == 0 { // neither spigots nor plenums
		return nil
	}
	for i := range o.lines {
		l := &o.lines[i]
		if l.parent < 0 {
			continue
		}
		wall := int(l.parent)
		host := &o.lines[wall]
		switch {
		case l.kind == fittings.Spigot:
			o.cut(wall, i, o.seldom(l).opening, int(l.quantity))
		case host.kind == fittings.Plenum:
			if c, ok := o.first(l); ok {
				o.cut(wall, i, o.outside(c).FaceArea(), int(l.quantity))
			}
		}
		if l.kind == fittings.Plenum {
			if c, ok := o.end(host, l.parentEnd); ok && l.parentEnd != fittings.PlantEnd {
				o.cut(i, wall, o.outside(c).FaceArea(), 1)
			}
		}
	}
	sort.SliceStable(o.cuts, func(a, b int) bool { return o.cuts[a].wall < o.cuts[b].wall })
	for i := range o.lines {
		o.deduct(i)
	}
	return o.cuts
}

// cut records an opening of the given area in a wall; a basis may keep it.
func (o *openings) cut(wall, by int, area float64, times int) {
	if area == 0 {
		return
	}
	if o.list {
		o.cuts = append(o.cuts, cutIn{wall, by, area, times})
	}
	m := o.rest(&o.lines[wall])
	m.cutExact += area * float64(times)
	if !o.kept {
		m.cut = m.cutExact
	}
}

// deduct takes its openings off row i.
func (o *openings) deduct(i int) {
	l := &o.lines[i]
	if l.refused || o.seldom(l).cutExact == 0 {
		return
	}
	m := o.rest(l)
	if l.given {
		o.remark(i, "the area was given, so openings cut in it were not taken off")
		m.cut, m.cutExact = 0, 0
		return
	}
	cut, wall := m.cutExact, l.exact
	if m.cut > 0 && m.cut >= l.area {
		cut, wall = m.cut, l.area
	}
	if cut >= wall {
		o.refuse(wrong{i, "area_m2", "", "openings smaller than the wall",
			fmt.Sprintf("the openings cut in %s (%.3f m2) are larger than its surface (%.3f m2); check the sizes of what joins it", o.nameText(l), cut, wall)})
		return
	}
	l.area -= m.cut
	l.exact -= m.cutExact
}
