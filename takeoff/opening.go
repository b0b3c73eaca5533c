package takeoff

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"blankoff/fittings"
)

// cutIn is an opening cut in a wall.
type cutIn struct {
	wall, by int     // items
	area     float64 // of one, exact, m2
	times    int
}

// takeOffOpenings takes off each wall the openings that are cut in it: of
// spigots, and of whatever else hangs on the walls of a plenum.
func (t *Takeoff) takeOffOpenings() {
	if len(t.more) == 0 { // neither spigots nor plenums
		return
	}
	o := &t.options
	for i := range t.lines {
		l := &t.lines[i]
		if l.parent < 0 {
			continue
		}
		wall := int(l.parent)
		host := &t.lines[wall]
		switch {
		case l.kind == fittings.Spigot:
			t.cut(wall, i, t.seldom(l).opening, int(l.quantity))
		case host.kind == fittings.Plenum:
			if c, ok := t.first(l); ok {
				t.cut(wall, i, o.outside(c).FaceArea(), int(l.quantity))
			}
		}
		if l.kind == fittings.Plenum {
			if c, ok := t.end(host, l.parentEnd); ok && l.parentEnd != fittings.PlantEnd {
				t.cut(i, wall, o.outside(c).FaceArea(), 1)
			}
		}
	}
	sort.SliceStable(t.cuts, func(a, b int) bool { return t.cuts[a].wall < t.cuts[b].wall })
	for i := range t.lines {
		t.deduct(i)
	}
}

// cut records an opening of the given area in a wall; a basis may keep it.
func (t *Takeoff) cut(wall, by int, area float64, times int) {
	if area == 0 {
		return
	}
	if !t.options.TotalsOnly {
		t.cuts = append(t.cuts, cutIn{wall, by, area, times})
	}
	m := t.rest(&t.lines[wall])
	m.cutExact += area * float64(times)
	if b := t.options.Basis; b == nil || b.Openings == fittings.Deducted {
		m.cut = m.cutExact
	}
}

// deduct takes its openings off row i.
func (t *Takeoff) deduct(i int) {
	l := &t.lines[i]
	if l.refused || t.seldom(l).cutExact == 0 {
		return
	}
	m := t.rest(l)
	if l.given {
		t.remark(i, "the area was given, so openings cut in it were not taken off")
		m.cut, m.cutExact = 0, 0
		return
	}
	cut, wall := m.cutExact, l.exact
	if m.cut > 0 && m.cut >= l.area {
		cut, wall = m.cut, l.area
	}
	if cut >= wall {
		t.fault(i, t.at(l).Fault("area_m2", "", "openings smaller than the wall",
			fmt.Sprintf("the openings cut in %s (%.3f m2) are larger than its surface (%.3f m2); check the sizes of what joins it", t.nameText(l), cut, wall)))
		return
	}
	l.area -= m.cut
	l.exact -= m.cutExact
}

// mostOpenings is how many kinds of opening a working spells out.
const mostOpenings = 8

// openingsWorking is the openings cut in item i in figures, like ones together.
func (t *Takeoff) openingsWorking(i int) string {
	first := sort.Search(len(t.cuts), func(k int) bool { return t.cuts[k].wall >= i })
	var alike []openings
	at := map[string]int{}
	for _, c := range t.cuts[first:] {
		if c.wall != i {
			break
		}
		figures := t.cutFigures(c)
		k, ok := at[figures]
		if !ok {
			k, at[figures] = len(alike), len(alike)
			alike = append(alike, openings{figures: figures})
		}
		alike[k].add(t.Items[c.by].Name(), c)
	}
	var text strings.Builder
	rest := openings{}
	for k, o := range alike {
		if k < mostOpenings {
			text.WriteString(t.openingsText(&o))
			continue
		}
		rest.count += o.count
		rest.area += o.area
	}
	if rest.count > 0 {
		fmt.Fprintf(&text, "; less %d further openings: %s", rest.count, t.written(rest.area))
	}
	return text.String()
}

// cutFigures is one opening in figures.
func (t *Takeoff) cutFigures(c cutIn) string {
	by := &t.Items[c.by]
	if by.Piece.Kind == fittings.Spigot {
		p := t.options.measuredPiece(by)
		return fittings.OpeningWorkingIn(&p, t.options.Written)
	}
	if by.Parent == c.wall && len(by.Ends) > 0 {
		return t.options.outside(by.Ends[0].CrossSection).FaceWorkingIn(t.options.Written)
	}
	e, _ := by.End(t.Items[c.wall].ParentEnd) // a plenum on an end of by
	return t.options.outside(e.CrossSection).FaceWorkingIn(t.options.Written)
}

// openings are like openings in one wall.
type openings struct {
	figures string
	names   []string
	count   int
	area    float64 // of all, m2
}

func (o *openings) add(name string, c cutIn) {
	o.names = append(o.names, name)
	o.count += c.times
	o.area += c.area * float64(c.times)
}

// openingsText is the openings in a working: "; less opening of SP1: ...".
func (t *Takeoff) openingsText(o *openings) string {
	names := o.names
	if len(names) > 4 {
		names = append(append([]string(nil), names[:3]...), strconv.Itoa(len(o.names)-3)+" more")
	}
	of := strings.Join(names, ", ")
	if o.count == 1 {
		return "; less opening of " + of + ": " + o.figures
	}
	return fmt.Sprintf("; less %d openings of %s: each %s; x %d = %s", o.count, of, o.figures, o.count, t.written(o.area))
}

// written writes an area, m2, in the units of workings.
func (t *Takeoff) written(m2 float64) string {
	w := t.options.Written
	if w.Metres == 0 {
		return area(m2) + " m2"
	}
	return area(m2/(w.Metres*w.Metres)) + " " + w.Area
}

// area writes an area: three decimals where they say it all, else six.
func area(v float64) string {
	s := strconv.FormatFloat(v, 'f', 6, 64)
	return strings.TrimSuffix(s, "000")
}
