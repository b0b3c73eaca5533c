package takeoff

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff/joining"
)

// Working is an item's area in figures that a person can redo: that of one
// piece, then what the quantity and the openings cut in it make of it. On a basis
// that makes a difference the exact area stands beside it: "centre-line: ...;
// exact: ...".
func (t *Takeoff) Working(it *Item) string {
	p := t.Measured(it)
	exact := t.whole(it, fittings.WorkingIn(&p, nil, t.options.Written), it.EachExact, it.CutExact, it.Exact)
	b := t.options.Basis
	if b.Exact() {
		return exact
	}
	on := t.whole(it, fittings.WorkingIn(&p, b, t.options.Written), it.Each, it.Cut, it.Area)
	if on == exact {
		return exact
	}
	return b.Name + ": " + on + "; exact: " + exact
}

// whole adds to the working of one piece what makes it that of the row.
func (t *Takeoff) whole(it *Item, text string, each, cut, rest float64) string {
	if it.Quantity > 1 {
		text += fmt.Sprintf("; x %d = %s", it.Quantity, t.written(each*float64(it.Quantity)))
	}
	if cut > 0 {
		text += t.openingsWorking(int(it.index)) + "; leaves " + t.written(rest)
	}
	return text
}

// mostOpenings is how many kinds of opening a working spells out.
const mostOpenings = 8

// openingsWorking is the openings cut in item i in figures, like ones together.
func (t *Takeoff) openingsWorking(i int) string {
	first := sort.Search(len(t.cuts), func(k int) bool { return t.cuts[k].Wall >= i })
	var alike []likeOpenings
	at := map[string]int{}
	for _, c := range t.cuts[first:] {
		if c.Wall != i {
			break
		}
		figures := t.cutFigures(c)
		k, ok := at[figures]
		if !ok {
			k, at[figures] = len(alike), len(alike)
			alike = append(alike, likeOpenings{figures: figures})
		}
		alike[k].add(t.Items[c.By].Name(), c)
	}
	var text strings.Builder
	rest := likeOpenings{}
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
func (t *Takeoff) cutFigures(c joining.Opening) string {
	by := &t.Items[c.By]
	if by.Piece.Kind == fittings.Spigot {
		p := t.Measured(by)
		return fittings.OpeningWorkingIn(&p, t.options.Written)
	}
	if by.Parent == c.Wall && len(by.Ends) > 0 {
		return t.rule.Outside(by.Ends[0].CrossSection).FaceWorkingIn(t.options.Written)
	}
	e, _ := by.End(t.Items[c.Wall].ParentEnd) // a plenum on an end of by
	return t.rule.Outside(e.CrossSection).FaceWorkingIn(t.options.Written)
}

// likeOpenings are like openings in one wall.
type likeOpenings struct {
	figures string
	names   []string
	count   int
	area    float64 // of all, m2
}

func (o *likeOpenings) add(name string, c joining.Opening) {
	o.names = append(o.names, name)
	o.count += c.Times
	o.area += c.Area * float64(c.Times)
}

// openingsText is the openings in a working: "; less opening of SP1: ...".
func (t *Takeoff) openingsText(o *likeOpenings) string {
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
