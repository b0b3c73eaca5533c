package joining

import (
	"fmt"
	"sort"

	"blankoff/fittings"
	"blankoff/takeoff/ledger"
)

// Opening is an opening cut in a wall.
type Opening struct {
	Wall, By int     // items
	Area     float64 // of one, exact, m2
	Times    int
}

// Deduction is how openings are taken off their walls.
type Deduction struct {
	Outside func(fittings.CrossSection) fittings.CrossSection // a section by the sizes that are measured
	Kept    bool                                              // the areas on the basis keep them
	List    bool                                              // each is listed
}

// openings are taken off their walls.
type openings struct {
	*ledger.Book
	Deduction
	cuts []Opening
}

// TakeOff takes off each wall the openings that are cut in it: of spigots, and of
// whatever else hangs on the walls of a plenum. It lists them by wall, if asked to.
func TakeOff(b *ledger.Book, how Deduction) []Opening {
	o := openings{Book: b, Deduction: how}
	if len(o.More) == 0 { // neither spigots nor plenums
		return nil
	}
	for i := range o.Lines {
		l := &o.Lines[i]
		if l.Parent < 0 {
			continue
		}
		wall := int(l.Parent)
		host := &o.Lines[wall]
		switch {
		case l.Kind == fittings.Spigot:
			o.cut(wall, i, o.Seldom(l).Opening, int(l.Quantity))
		case host.Kind == fittings.Plenum:
			if c, ok := o.First(l); ok {
				o.cut(wall, i, o.Outside(c).FaceArea(), int(l.Quantity))
			}
		}
		if l.Kind == fittings.Plenum {
			if c, ok := o.End(host, l.ParentEnd); ok && l.ParentEnd != fittings.PlantEnd {
				o.cut(i, wall, o.Outside(c).FaceArea(), 1)
			}
		}
	}
	sort.SliceStable(o.cuts, func(a, b int) bool { return o.cuts[a].Wall < o.cuts[b].Wall })
	for i := range o.Lines {
		o.deduct(i)
	}
	return o.cuts
}

// cut records an opening of the given area in a wall; a basis may keep it.
func (o *openings) cut(wall, by int, area float64, times int) {
	if area == 0 {
		return
	}
	if o.List {
		o.cuts = append(o.cuts, Opening{wall, by, area, times})
	}
	m := o.Rest(&o.Lines[wall])
	m.CutExact += area * float64(times)
	if !o.Kept {
		m.Cut = m.CutExact
	}
}

// deduct takes its openings off row i.
func (o *openings) deduct(i int) {
	l := &o.Lines[i]
	if l.Refused || o.Seldom(l).CutExact == 0 {
		return
	}
	m := o.Rest(l)
	if l.Given {
		o.Remark(i, "the area was given, so openings cut in it were not taken off")
		m.Cut, m.CutExact = 0, 0
		return
	}
	cut, wall := m.CutExact, l.Exact
	if m.Cut > 0 && m.Cut >= l.Area {
		cut, wall = m.Cut, l.Area
	}
	if cut >= wall {
		o.Refuse(i, "area_m2", "", "openings smaller than the wall",
			fmt.Sprintf("the openings cut in %s (%.3f m2) are larger than its surface (%.3f m2); check the sizes of what joins it", o.NameText(l), cut, wall))
		return
	}
	l.Area -= m.Cut
	l.Exact -= m.CutExact
}
