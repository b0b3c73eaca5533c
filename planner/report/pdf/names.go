package pdf

import (
	"math"

	"blankoff/planner/report/schematic"
)

// around are the places for a text by a mark, the best first: each the left end
// of its foot.
func (c *canvas) around(text string, f style, x, y, half float64, upright bool) [][2]float64 {
	w, rise := c.width(text, f), 0.72*f.size*mmPerPoint
	under := [2]float64{x - w/2, y + half + rise + 0.5}
	over := [2]float64{x - w/2, y - half - 0.6}
	beside := [2]float64{x + half + 0.7, y + rise/2}
	before := [2]float64{x - half - 0.7 - w, y + rise/2}
	if upright {
		lower := 0.9 // below a run that is close
		return [][2]float64{beside, before, under, {beside[0], beside[1] + lower}, {before[0], before[1] + lower}, {x + 0.5, under[1]}, {x - w - 0.5, under[1]}, over}
	}
	return [][2]float64{under, over, {x - w - 0.5, under[1]}, {x + 0.5, under[1]}, beside, before}
}

// place sets a text at the first place where it meets nothing. What has to be
// there may cross a neighbour's grey line if need be, never anything else; what
// has no place is left out.
func (c *canvas) place(text string, f style, must bool, places ...[2]float64) {
	if c.tried(text, f, false, places) || must && c.tried(text, f, true, places) {
		return
	}
	c.dropped = c.dropped || must
}

func (c *canvas) tried(text string, f style, cross bool, places [][2]float64) bool {
	rise := f.size * mmPerPoint
	for _, p := range places {
		r := rect{p[0], p[1] - 0.74*rise, p[0] + c.width(text, f), p[1] + 0.2*rise, false}
		if r.x0 >= left && r.x1 <= right && r.y0 >= c.top-overDrawing && c.free(r, cross) {
			c.text(p[0], p[1], text, f)
			c.taken = append(c.taken, rect{r.x0 - 0.4, r.y0, r.x1 + 0.4, r.y1, false})
			return true
		}
	}
	return false
}

func (c *canvas) free(r rect, cross bool) bool {
	for i := range c.taken {
		if t := &c.taken[i]; t.meets(r) && !(cross && t.faint) {
			return false
		}
	}
	return true
}

// names writes the sections' names and the tags, those of the section first,
// where there is room for them.
func (c *canvas) names() {
	for _, b := range schematic.Badges(c.d, c.pic) {
		c.badge(b)
	}
	for _, own := range []bool{true, false} {
		for i := range c.pic.Labels {
			l := &c.pic.Labels[i]
			if (c.d.Nodes[l.Node].Section == c.section) != own {
				continue
			}
			f := tagStyle
			f.grey = !own
			text := c.safe(l.Text)
			x, y := c.x(l.X)-c.width(text, f)/2, c.y(l.Y)-0.2
			x = math.Min(math.Max(x, left), right-c.width(text, f))
			under := c.y(l.Y) + c.across*14 + 0.72*f.size*mmPerPoint
			var places [][2]float64
			for _, shift := range []float64{0, -0.35, 0.35, -0.6, 0.6} {
				at := x + shift*c.width(text, f)
				places = append(places, [2]float64{at, y}, [2]float64{at, under})
			}
			c.place(text, f, own, places...)
		}
	}
}

// badge names a section on its longest run: the card's own white on black, its
// neighbours' framed.
func (c *canvas) badge(b schematic.Badge) {
	f, fill := cutStyle, 255
	if b.Section == c.section {
		f.white, fill = true, 0
	}
	text := c.clip(c.ids[b.Section], f, 24)
	w, h := c.width(text, f)+1.6, 3.6
	x := math.Min(math.Max(c.x(b.X)-w/2, left), right-w)
	for _, y := range []float64{c.y(b.Y) + 0.6, c.y(b.Y) - c.across*14 - h - 0.6} {
		if r := (rect{x, y, x + w, y + h, false}); y >= c.top-overDrawing && c.free(r, false) {
			c.box(x, y, w, h, 0.25, fill)
			c.text(x+0.8, y+2.75, text, f)
			c.taken = append(c.taken, r)
			return
		}
	}
}
