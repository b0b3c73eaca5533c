package keyplan

import "blankoff/planner/report/schematic"

// around are the places for a text by a mark, the best first: each the left end
// of its foot.
func (c *canvas) around(text string, f Type, x, y, half float64, upright bool) [][2]float64 {
	w, rise := c.Width(text, f), 0.72*f.Size*mmPerPoint
	under := [2]float64{x - w/2, y + half + rise + 0.5}
	over := [2]float64{x - w/2, y - half - 0.6}
	beside := [2]float64{x + half + 0.7, y + rise/2}
	before := [2]float64{x - half - 0.7 - w, y + rise/2}
	if upright {
		lower := 0.9 // below a run that is close
		return [][2]float64{beside, before, under, {beside[0], beside[1] + lower}, {before[0], before[1] + lower}, {x + 0.5, under[1]}, {x - w - 0.5, under[1]}, over}
	}
	return [][2]float64{under, over, {x - w - 0.5, under[1]}, {x + 0.5, under[1]}, beside, before, {x - w - 0.5, over[1]}, {x + 0.5, over[1]}}
}

// place sets a text at the first place where it meets nothing. What has to be
// there may cross a neighbour's grey line if need be, never anything else.
func (c *canvas) place(text string, f Type, must bool, places ...[2]float64) bool {
	return c.tried(text, f, false, places) || must && c.tried(text, f, true, places)
}

func (c *canvas) tried(text string, f Type, cross bool, places [][2]float64) bool {
	for _, p := range places {
		if r := c.reach(p, text, f); c.inside(r) && c.free(r, cross) {
			c.set(p, text, f)
			return true
		}
	}
	return false
}

// reach is the room that a text takes, set at a place.
func (c *canvas) reach(p [2]float64, text string, f Type) rect {
	rise := f.Size * mmPerPoint
	return rect{p[0], p[1] - 0.74*rise, p[0] + c.Width(text, f), p[1] + 0.2*rise, aText}
}

func (c *canvas) inside(r rect) bool {
	return r.x0 >= 0 && r.x1 <= c.wide && r.y0 >= 0 && r.y1 <= c.high
}

func (c *canvas) set(p [2]float64, text string, f Type) {
	c.Text(p[0], p[1], text, f)
	r := c.reach(p, text, f)
	c.take(r.x0-0.4, r.y0, r.x1+0.4, r.y1, aText)
}

func (c *canvas) free(r rect, cross bool) bool {
	for i := range c.taken {
		if t := &c.taken[i]; t.meets(r) && !(cross && t.what == aFaint) {
			return false
		}
	}
	return true
}

// names writes the sections' names and the tags, those of the section first,
// where there is room for them.
func (c *canvas) names() {
	for _, b := range schematic.Badges(c.d, c.pic) {
		if c.badge(b) || b.Section == c.section {
			continue
		}
		s := spot{x: c.x(b.X), y: c.y(b.Run), text: c.clip(c.Safe(c.ids[b.Section]), numberType, 24)}
		if !c.lead(&s, false) {
			c.missing.Sections = append(c.missing.Sections, c.ids[b.Section])
		}
	}
	for _, own := range []bool{true, false} {
		for i := range c.pic.Labels {
			l := &c.pic.Labels[i]
			if (c.d.Nodes[l.Node].Section == c.section) == own && !c.tag(l, own) && own {
				c.missing.Tags++
			}
		}
	}
}

// tag writes a row's above or below it.
func (c *canvas) tag(l *schematic.Label, own bool) bool {
	f := tagType
	f.Grey = !own
	text := c.Safe(l.Text)
	w := c.Width(text, f)
	x, y := min(max(c.x(l.X)-w/2, 0), c.wide-w), c.y(l.Y)-0.2
	low := c.y(l.Y) + c.across*14 + 0.72*f.Size*mmPerPoint
	var places [][2]float64
	for _, shift := range []float64{0, -0.35, 0.35, -0.6, 0.6} {
		places = append(places, [2]float64{x + shift*w, y}, [2]float64{x + shift*w, low})
	}
	return c.place(text, f, own, places...)
}

// badge names a section on its longest run: the card's own white on black, its
// neighbours' framed.
func (c *canvas) badge(b schematic.Badge) bool {
	f, fill := numberType, 255
	if b.Section == c.section {
		f.White, fill = true, 0
	}
	text := c.clip(c.Safe(c.ids[b.Section]), f, 24)
	w, h := c.Width(text, f)+1.6, 3.6
	for _, part := range []float64{0, -0.2, 0.2, -0.4, 0.4} {
		x := min(max(c.x(b.X)-w/2+part*c.along*b.Long, 0), c.wide-w)
		for _, y := range []float64{c.y(b.Y) + 0.6, c.y(b.Y) - c.across*14 - h - 0.6} {
			if r := (rect{x, y, x + w, y + h, aText}); c.inside(r) && c.free(r, false) {
				c.Box(x, y, w, h, 0.25, fill)
				c.Text(x+0.8, y+2.75, text, f)
				c.taken = append(c.taken, r)
				return true
			}
		}
	}
	return false
}
