package keyplan

import (
	"blankoff/planner/report"
	"blankoff/planner/report/schematic"
)

// canvas is a drawing being fitted into its frame.
type canvas struct {
	Pen
	*Drawing
	wide, high    float64
	gutter        float64 // for the names of the levels
	along, across float64
	taken         []rect
	missing       Missing
}

// What takes room: text, which nothing may cross; marks; the section's own runs;
// and what is faint, which a number may cross if need be.
const (
	aText = iota
	aMark
	aRun
	aFaint
)

// rect is taken by something.
type rect struct {
	x0, y0, x1, y1 float64
	what           int
}

func (a rect) meets(b rect) bool { return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1 }

func (c *canvas) take(x0, y0, x1, y1 float64, what int) {
	c.taken = append(c.taken, rect{x0, y0, x1, y1, what})
}

func (c *canvas) x(x float64) float64 { return c.gutter + beside + c.along*(x-c.x0) }
func (c *canvas) y(y float64) float64 { return over + c.across*(y-c.y0) }

// weight is that of a line: thinner where the rows are close.
func (c *canvas) weight(w float64) float64 { return w * perWeight * min(1, max(0.35, c.across/0.16)) }

// runs draws the neighbours first, thin and grey, then the section.
func (c *canvas) runs() {
	for _, own := range []bool{false, true} {
		for i := range c.pic.Pieces {
			p := &c.pic.Pieces[i]
			if (c.d.Nodes[p.Node].Section == c.section) != own {
				continue
			}
			w, grey, what := c.weight(min(p.Weight, 3)), 150, aFaint
			if own {
				w, grey, what = c.weight(p.Weight), 0, aRun
			}
			for k := 1; k < len(p.Path); k++ {
				a, b := p.Path[k-1], p.Path[k]
				x0, y0, x1, y1 := c.x(a.X), c.y(a.Y), c.x(b.X), c.y(b.Y)
				c.Line(w, grey, x0, y0, x1, y1)
				c.take(min(x0, x1)-w/2, min(y0, y1)-w/2, max(x0, x1)+w/2, max(y0, y1)+w/2, what)
			}
		}
	}
	for i := range c.pic.Rings {
		c.Line(0.3, 90, c.bow(&c.pic.Rings[i])...)
	}
}

// bow is the joint that closes a ring.
func (c *canvas) bow(r *schematic.Link) []float64 {
	ax, ay, bx, by := c.x(r.From.X), c.y(r.From.Y), c.x(r.To.X), c.y(r.To.Y)
	out := min(c.wide-1, max(ax, bx)+8)
	var points []float64
	for k := 0; k <= 16; k++ {
		t := float64(k) / 16
		points = append(points, (1-t)*(1-t)*ax+2*t*(1-t)*out+t*t*bx, (1-t)*(1-t)*ay+t*(1-t)*(ay+by)+t*t*by)
	}
	return points
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

// bar draws a stroke across a line, shifted along it by mm.
func (c *canvas) bar(m *schematic.Mark, weight float64, grey int, half, shift float64) {
	x, y := c.x(m.X), c.y(m.Y)
	if m.Upright {
		c.take(x-half, y-weight/2+shift, x+half, y+weight/2+shift, aMark)
		c.Line(weight, grey, x-half, y+shift, x+half, y+shift)
		return
	}
	c.take(x-weight/2+shift, y-half, x+weight/2+shift, y+half, aMark)
	c.Line(weight, grey, x+shift, y-half, x+shift, y+half)
}

// ends draws the open ends.
func (c *canvas) ends() {
	for i := range c.pic.Ends {
		x, y := c.x(c.pic.Ends[i].X), c.y(c.pic.Ends[i].Y)
		c.Box(x-0.9, y-0.9, 1.8, 1.8, 0.3, 255)
		c.take(x-1, y-1, x+1, y+1, aMark)
	}
}
