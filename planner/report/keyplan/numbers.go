package keyplan

import (
	"math"
	"slices"
	"sort"
	"strings"

	"blankoff/planner/report/schematic"
	"blankoff/takeoff/terms"
)

// spot is a blank on the drawing: where it is, how far its mark reaches across
// the duct, and what has to stand there.
type spot struct {
	x, y, half float64
	upright    bool
	text       string
}

// blanks puts the number of every blank beside its place, the rig's and the
// tapping's first, else where there is room with a leader to its place, and only
// then across a neighbour's grey line.
func (c *canvas) blanks() {
	list := c.spots()
	for _, cross := range []bool{false, true} {
		all := list
		for _, set := range []func(*spot) bool{
			func(s *spot) bool { return c.near(s, all, cross) },
			func(s *spot) bool { return len(list) <= mostLed && c.lead(s, cross) },
		} {
			var rest []spot
			for i := range list {
				if !set(&list[i]) {
					rest = append(rest, list[i])
				}
			}
			list = rest
		}
	}
	for i := range list {
		c.missing.Numbers = append(c.missing.Numbers, list[i].text)
	}
	sort.Slice(c.missing.Numbers, func(i, k int) bool { return terms.NaturalLess(c.missing.Numbers[i], c.missing.Numbers[k]) })
}

// mostLed is how many numbers without room beside their places show that the
// drawing is full.
const mostLed = 60

// spots gathers the blanks of the section.
func (c *canvas) spots() []spot {
	var out []spot
	drawn := map[string]bool{}
	add := func(x, y float64, at string, half float64, upright bool) {
		if text := c.numbers[at]; text != "" && !drawn[at] {
			drawn[at] = true
			out = append(out, spot{x: x, y: y, half: half, upright: upright, text: text})
		}
	}
	for i := range c.pic.Joints {
		m := &c.pic.Joints[i]
		add(c.x(m.X), c.y(m.Y), c.d.Joints[m.Index].At, c.weight(m.Weight)/2+1.1, m.Upright)
	}
	for i := range c.pic.Ends {
		m := &c.pic.Ends[i]
		add(c.x(m.X), c.y(m.Y), c.d.Ends[m.Index].At, 1, m.Upright)
	}
	for i := range c.pic.Rings {
		r := &c.pic.Rings[i]
		if at := c.d.Joints[r.Joint].At; c.numbers[at] != "" {
			x, y := c.ring(r)
			add(x, y, at, 1.4, true)
		}
	}
	for at, text := range c.numbers { // what the picture has no place for; sorted at last
		if !drawn[at] {
			c.missing.Numbers = append(c.missing.Numbers, text)
		}
	}
	slices.SortStableFunc(out, func(a, b spot) int { return len(strings.Fields(b.text)) - len(strings.Fields(a.text)) })
	return out
}

// ring marks the blank in the middle of a bow and returns where it is.
func (c *canvas) ring(r *schematic.Link) (x, y float64) {
	p := c.bow(r)
	x, y = p[16], p[17]
	for _, shift := range []float64{-0.75, 0.75} {
		c.Line(0.5, 0, x-1.4, y+shift, x+1.4, y+shift)
	}
	c.take(x-1.4, y-1.1, x+1.4, y+1.1, aMark)
	return x, y
}

// near sets a number beside its place, unless it is as near to another's.
func (c *canvas) near(s *spot, all []spot, cross bool) bool {
	for _, p := range c.around(s.text, numberType, s.x, s.y, s.half, s.upright) {
		r := c.reach(p, s.text, numberType)
		mine := r.gap(s.x, s.y)
		r.x0, r.x1 = r.x0-0.6, r.x1+0.6
		if c.inside(r) && c.free(r, cross) && !slices.ContainsFunc(all, func(o spot) bool {
			return (o.x != s.x || o.y != s.y) && r.gap(o.x, o.y) < mine+0.4
		}) {
			c.set(p, s.text, numberType)
			return true
		}
	}
	return false
}

// gap is how far a point is from a rectangle.
func (a rect) gap(x, y float64) float64 {
	return math.Hypot(max(a.x0-x, 0, x-a.x1), max(a.y0-y, 0, y-a.y1))
}

// slopes are the directions of leaders, degrees: never along a duct.
var slopes = []float64{35, 20, 50, 65}

// A leader is at most so long, mm; crossing a run counts as so much more.
const longestLeader, perCrossing = 60.0, 5.0

// lead sets a text where there is room for it, the shortest leader that crosses
// the fewest runs; it never crosses a text, a mark or another leader.
func (c *canvas) lead(s *spot, cross bool) bool {
	least := math.Inf(1)
	var best [2]float64
	var line [4]float64
	w, rise := c.Width(s.text, numberType), 0.72*numberType.Size*mmPerPoint
	for long := 3.0; long <= longestLeader && long < least; long++ {
		for _, slope := range slopes {
			for k := range 4 {
				dx, dy := math.Cos(slope*math.Pi/180), math.Sin(slope*math.Pi/180)
				dx, dy = dx*[]float64{1, -1, 1, -1}[k], dy*[]float64{-1, -1, 1, 1}[k]
				x, y := s.x+long*dx, s.y+long*dy
				p := [2]float64{x + 0.4, y + rise/2}
				if dx < 0 {
					p[0] = x - 0.4 - w
				}
				r := c.reach(p, s.text, numberType)
				r.x0, r.x1 = r.x0-1.4, r.x1+1.4 // no number of one beside that of another
				if !c.inside(r) || !c.free(r, cross) {
					continue
				}
				l := [4]float64{s.x + 1.2*dx, s.y + 1.2*dy, x, y}
				if n, ok := c.crossings(l, s); ok && long+perCrossing*float64(n) < least {
					least, best, line = long+perCrossing*float64(n), p, l
				}
			}
		}
	}
	if math.IsInf(least, 1) {
		return false
	}
	c.Line(0.13, 0, line[0], line[1], line[2], line[3])
	for t := 0.0; t < 1; t += 1 / max(1, math.Hypot(line[2]-line[0], line[3]-line[1])) {
		x, y := line[0]+t*(line[2]-line[0]), line[1]+t*(line[3]-line[1])
		c.take(x-0.15, y-0.15, x+0.15, y+0.15, aText)
	}
	c.set(best, s.text, numberType)
	return true
}

// crossings counts the runs that a leader crosses; it isn't ok where it meets a
// text or the mark of something else.
func (c *canvas) crossings(l [4]float64, s *spot) (n int, ok bool) {
	for i := range c.taken {
		t := &c.taken[i]
		if !t.cut(l) {
			continue
		}
		switch t.what {
		case aText:
			return 0, false
		case aMark:
			if t.gap(s.x, s.y) > 0.8 {
				return 0, false
			}
		case aRun:
			n++
		}
	}
	return n, true
}

// cut says whether a line passes through a rectangle.
func (a rect) cut(l [4]float64) bool {
	from, to := 0.0, 1.0
	for _, k := range []struct{ at, step, low, high float64 }{{l[0], l[2] - l[0], a.x0, a.x1}, {l[1], l[3] - l[1], a.y0, a.y1}} {
		if k.step == 0 {
			if k.at < k.low || k.at > k.high {
				return false
			}
			continue
		}
		t0, t1 := (k.low-k.at)/k.step, (k.high-k.at)/k.step
		from, to = max(from, min(t0, t1)), min(to, max(t0, t1))
	}
	return from <= to
}
