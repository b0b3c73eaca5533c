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
	for i := range t.Items {
		it := &t.Items[i]
		if it.Parent < 0 {
			continue
		}
		host := &t.Items[it.Parent]
		switch {
		case it.Piece.Kind == fittings.Spigot:
			t.cut(it.Parent, i, it.OpeningExact, it.Quantity)
		case host.Piece.Kind == fittings.Plenum && len(it.Ends) > 0:
			t.cut(it.Parent, i, t.outside(it.Ends[0].CrossSection).FaceArea(), it.Quantity)
		}
		if it.Piece.Kind == fittings.Plenum {
			if e, ok := host.End(it.ParentEnd); ok && it.ParentEnd != fittings.PlantEnd {
				t.cut(i, it.Parent, t.outside(e.CrossSection).FaceArea(), 1)
			}
		}
	}
	sort.SliceStable(t.cuts, func(a, b int) bool { return t.cuts[a].wall < t.cuts[b].wall })
	for i := range t.Items {
		t.deduct(i)
	}
}

// cut records an opening of the given area in a wall; a basis may keep it.
func (t *Takeoff) cut(wall, by int, area float64, times int) {
	if area == 0 {
		return
	}
	t.cuts = append(t.cuts, cutIn{wall, by, area, times})
	it := &t.Items[wall]
	it.CutExact += area * float64(times)
	if b := t.options.Basis; b == nil || b.Openings == fittings.Deducted {
		it.Cut = it.CutExact
	}
}

// deduct takes its openings off item i.
func (t *Takeoff) deduct(i int) {
	it := &t.Items[i]
	if it.Refused || it.CutExact == 0 {
		return
	}
	if it.Piece.Sizes.Has(fittings.GivenArea) {
		it.Notes = append(it.Notes, "the area was given, so openings cut in it were not taken off")
		it.Cut, it.CutExact = 0, 0
		return
	}
	cut, wall := it.CutExact, it.Exact
	if it.Cut > 0 && it.Cut >= it.Area {
		cut, wall = it.Cut, it.Area
	}
	if cut >= wall {
		t.fault(i, it.At.Fault("area_m2", "", "openings smaller than the wall",
			fmt.Sprintf("the openings cut in %s (%.3f m2) are larger than its surface (%.3f m2); check the sizes of what joins it", it.Name(), cut, wall)))
		return
	}
	it.Area -= it.Cut
	it.Exact -= it.CutExact
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
		p := t.measuredPiece(by)
		return fittings.OpeningWorkingIn(&p, t.options.Written)
	}
	if by.Parent == c.wall && len(by.Ends) > 0 {
		return t.outside(by.Ends[0].CrossSection).FaceWorkingIn(t.options.Written)
	}
	e, _ := by.End(t.Items[c.wall].ParentEnd) // a plenum on an end of by
	return t.outside(e.CrossSection).FaceWorkingIn(t.options.Written)
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
