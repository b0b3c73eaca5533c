package pdf

import (
	"math"

	"blankoff/planner/report"
	"blankoff/planner/report/card"
	"blankoff/planner/report/schematic"
)

// drawing is a section with its neighbours, to be fitted into a frame: along and
// across are stretched apart from each other, since it isn't to scale, and what
// is written stays as large as it has to be.
type drawing struct {
	d       *report.Ductwork
	pic     *schematic.Picture
	section int
	ids     []string          // of all sections
	numbers map[string]string // of the blanks, by where they are
	gutter  float64           // for the names of the levels, mm
	x0, x1  float64           // of the picture
	y0, y1  float64
}

// Of a drawing, mm for each unit of the picture: at most, and of the weights.
const mostAlong, mostAcross, perWeight = 0.42, 0.26, 0.15

// margins of a drawing within its frame, mm.
const overDrawing, underDrawing, besideDrawing = 4.5, 3.0, 5.0

var (
	tagStyle   = style{size: 7.5}
	levelStyle = style{size: 8, grey: true}
	cutStyle   = style{size: 8.5, bold: true}
)

// drawingOf lays out a section with its neighbours; nil where there is nothing
// to draw, or where nobody knows how its rows hang together.
func (s *sheet) drawingOf(v *report.Plan, i int, c *card.Card) *drawing {
	if v.Drawing == nil || c.Grouping {
		return nil
	}
	d := &drawing{d: v.Drawing, pic: schematic.Small(v, i), section: i, numbers: map[string]string{}}
	if len(d.pic.Pieces) == 0 {
		return nil
	}
	for k := range v.Sections {
		d.ids = append(d.ids, s.safe(v.Sections[k].ID))
	}
	for k := range c.EveryBlank {
		b := &c.EveryBlank[k]
		d.numbers[b.At] = b.Number
		if b.Rig {
			d.numbers[b.At] += " rig"
		}
		if b.Tap {
			d.numbers[b.At] += " tapping"
		}
	}
	d.measure()
	for i := range d.pic.Bands {
		d.gutter = min(30, max(d.gutter, 3+s.width(s.safe(d.pic.Bands[i].Level), levelStyle)))
	}
	return d
}

// measure finds how far the picture reaches, without the space for names.
func (d *drawing) measure() {
	d.x0, d.x1 = math.Inf(1), 0
	for i := range d.pic.Pieces {
		for _, p := range d.pic.Pieces[i].Path {
			d.x0, d.x1 = min(d.x0, p.X), max(d.x1, p.X)
		}
	}
	d.y0, d.y1 = 0, d.pic.Height
	if len(d.pic.Systems) == 1 && len(d.pic.Bands) > 0 {
		d.y0, d.y1 = d.pic.Bands[0].Top, d.pic.Bands[len(d.pic.Bands)-1].Bottom
	}
}

// high is the height that a drawing would like, mm.
func (d *drawing) high() float64 {
	return min(84, mostAcross*(d.y1-d.y0)+overDrawing+underDrawing)
}

// canvas draws a drawing into a frame.
type canvas struct {
	*sheet
	*drawing
	top           float64
	along, across float64
	taken         []rect
	dropped       bool
}

// rect is taken by something; what is faint can be crossed.
type rect struct {
	x0, y0, x1, y1 float64
	faint          bool
}

func (a rect) meets(b rect) bool { return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1 }

// draw puts a drawing into a frame of the page's width, and says whether a tag
// had to be left out.
func (s *sheet) draw(d *drawing, y, h float64) (dropped bool) {
	c := &canvas{sheet: s, drawing: d, top: y + overDrawing}
	c.along = min(mostAlong, (wide-d.gutter-2*besideDrawing)/max(1, d.x1-d.x0))
	c.across = min(mostAcross, (h-overDrawing-underDrawing)/max(1, d.y1-d.y0))
	c.bands()
	c.runs()
	c.marks()
	c.ends()
	c.blanks()
	c.names()
	return c.dropped
}

func (c *canvas) x(x float64) float64 { return left + c.gutter + besideDrawing + c.along*(x-c.x0) }
func (c *canvas) y(y float64) float64 { return c.top + c.across*(y-c.y0) }

// weight is that of a line: thinner where the rows are close.
func (c *canvas) weight(w float64) float64 { return w * perWeight * min(1, max(0.35, c.across/0.16)) }

func (c *canvas) bands() {
	last := -10.0
	for i := range c.pic.Bands {
		b := &c.pic.Bands[i]
		y := c.y(b.Top)
		if i > 0 {
			c.line(0.15, 160, left+c.gutter, y, right, y)
			c.taken = append(c.taken, rect{left, y - 0.1, right, y + 0.1, true})
		}
		if f := levelStyle; b.Level != "" && y-last > f.high() {
			c.text(left, y+f.high(), c.clip(c.safe(b.Level), f, c.gutter), f)
			last = y
		}
	}
	if len(c.pic.Systems) > 1 {
		for i := range c.pic.Systems {
			n := &c.pic.Systems[i]
			c.place(c.clip(c.safe(n.Name), cutStyle, 60), cutStyle, true, [2]float64{left, c.y(n.Top) + cutStyle.high()})
		}
	}
}

// runs draws the neighbours first, thin and grey, then the section.
func (c *canvas) runs() {
	for _, own := range []bool{false, true} {
		for i := range c.pic.Pieces {
			p := &c.pic.Pieces[i]
			if (c.d.Nodes[p.Node].Section == c.section) != own {
				continue
			}
			w, grey := c.weight(min(p.Weight, 3)), 150
			if own {
				w, grey = c.weight(p.Weight), 0
			}
			for k := 1; k < len(p.Path); k++ {
				a, b := p.Path[k-1], p.Path[k]
				x0, y0, x1, y1 := c.x(a.X), c.y(a.Y), c.x(b.X), c.y(b.Y)
				c.line(w, grey, x0, y0, x1, y1)
				c.taken = append(c.taken, rect{min(x0, x1) - w/2, min(y0, y1) - w/2, max(x0, x1) + w/2, max(y0, y1) + w/2, !own})
			}
		}
	}
	for i := range c.pic.Rings {
		c.ring(&c.pic.Rings[i])
	}
}

// ring draws the joint that closes a ring as a bow.
func (c *canvas) ring(r *schematic.Link) {
	ax, ay, bx, by := c.x(r.From.X), c.y(r.From.Y), c.x(r.To.X), c.y(r.To.Y)
	out := min(right-1, max(ax, bx)+8)
	var points []float64
	for k := 0; k <= 16; k++ {
		t := float64(k) / 16
		points = append(points, (1-t)*(1-t)*ax+2*t*(1-t)*out+t*t*bx, (1-t)*(1-t)*ay+t*(1-t)*(ay+by)+t*t*by)
	}
	c.line(0.3, 90, points...)
}

// touches says whether a joint is one of the section's.
func (c *canvas) touches(j *report.Joint) bool {
	return c.d.Nodes[j.A].Section == c.section || c.d.Nodes[j.B].Section == c.section
}

// marks draws joints and cuts.
func (c *canvas) marks() {
	for i := range c.pic.Joints {
		m := &c.pic.Joints[i]
		j := &c.d.Joints[m.Index]
		half := c.weight(m.Weight) / 2
		grey := 0
		if !c.touches(j) {
			grey = 130
		}
		switch {
		case j.Cut > 0:
			half += 1.1
			c.bar(m, 1.5, 255, half+0.2, 0)
			c.bar(m, 0.5, grey, half, -0.75)
			c.bar(m, 0.5, grey, half, 0.75)
		case j.Fixed != "" && !j.Assumed:
			c.bar(m, 0.6, grey, half+1.1, 0)
		case j.Barred == "" && grey == 0 && c.along > 0.06:
			c.bar(m, 0.2, 255, half, 0)
		}
	}
}

// ends draws the open ends.
func (c *canvas) ends() {
	for i := range c.pic.Ends {
		x, y := c.x(c.pic.Ends[i].X), c.y(c.pic.Ends[i].Y)
		c.box(x-0.9, y-0.9, 1.8, 1.8, 0.3, 255)
		c.taken = append(c.taken, rect{x - 1, y - 1, x + 1, y + 1, false})
	}
}

// blanks puts the number of every blank beside its place.
func (c *canvas) blanks() {
	number := func(m *schematic.Mark, at string, half float64) {
		if text := c.numbers[at]; text != "" {
			c.place(text, cutStyle, true, c.around(text, cutStyle, c.x(m.X), c.y(m.Y), half, m.Upright)...)
		}
	}
	for i := range c.pic.Joints {
		m := &c.pic.Joints[i]
		number(m, c.d.Joints[m.Index].At, c.weight(m.Weight)/2+1.1)
	}
	for i := range c.pic.Ends {
		m := &c.pic.Ends[i]
		number(m, c.d.Ends[m.Index].At, 1)
	}
}

// bar draws a stroke across a line, shifted along it by mm.
func (c *canvas) bar(m *schematic.Mark, weight float64, grey int, half, shift float64) {
	x, y := c.x(m.X), c.y(m.Y)
	c.taken = append(c.taken, rect{x - weight/2, y - weight/2, x + weight/2, y + weight/2, false})
	r := &c.taken[len(c.taken)-1]
	if m.Upright {
		r.x0, r.x1, r.y0, r.y1 = x-half, x+half, r.y0+shift, r.y1+shift
		c.line(weight, grey, x-half, y+shift, x+half, y+shift)
		return
	}
	r.y0, r.y1, r.x0, r.x1 = y-half, y+half, r.x0+shift, r.x1+shift
	c.line(weight, grey, x+shift, y-half, x+shift, y+half)
}
