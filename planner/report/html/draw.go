package html

import (
	"fmt"
	"html"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/schematic"
	"blankoff/planner/report/show"
)

// canvas writes a picture as SVG. Text of the schedule is escaped.
type canvas struct {
	strings.Builder
	v     *report.Plan
	pic   *schematic.Picture
	looks []schematic.Look
}

// num writes a length with a tenth at most.
func num(x float64) string { return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64) }

func (c *canvas) add(format string, args ...any) { fmt.Fprintf(c, format, args...) }

func esc(s string) string { return html.EscapeString(show.Safe(s)) }

// bands draws the levels behind everything.
func (c *canvas) bands() {
	p := c.pic
	for i := range p.Bands {
		b := &p.Bands[i]
		if b.Shaded {
			c.add(`<rect class="band" x="0" y="%s" width="%s" height="%s"/>`, num(b.Top), num(p.Width), num(b.Bottom-b.Top))
		}
		if b.Level != "" {
			c.add(`<text class="level" x="8" y="%s">%s</text>`, num(b.Top+16), esc(b.Level))
		}
	}
	for i := range p.Systems {
		s := &p.Systems[i]
		name := or(s.Name, "no system")
		if c.loose() {
			name += ": rows that name no neighbours, in the order of the schedule"
		}
		c.add(`<text class="system" x="8" y="%s">%s</text>`, num(s.Top+18), esc(name))
	}
}

// loose reports whether rows stand here whose neighbours aren't known.
func (c *canvas) loose() bool {
	for i := range c.pic.Joints {
		if c.v.Drawing.Joints[c.pic.Joints[i].Index].Assumed {
			return true
		}
	}
	return false
}

// path is a piece's line.
func path(points []schematic.Point) string {
	var b strings.Builder
	for i, p := range points {
		b.WriteByte("ML"[min(i, 1)])
		b.WriteString(num(p.X) + " " + num(p.Y))
	}
	return b.String()
}

// outside draws what is in no section.
func (c *canvas) outside() {
	c.group(-1, c.strokes())
}

// lines draws the pieces, section by section.
func (c *canvas) lines() {
	drawn := c.strokes()
	for s := range c.v.Sections {
		c.group(s, drawn)
	}
}

// strokes is the pieces' lines by section and weight.
func (c *canvas) strokes() map[int]map[float64]*strings.Builder {
	drawn := map[int]map[float64]*strings.Builder{}
	for i := range c.pic.Pieces {
		p := &c.pic.Pieces[i]
		s, w := c.v.Drawing.Nodes[p.Node].Section, math.Round(p.Weight*2)/2
		if drawn[s] == nil {
			drawn[s] = map[float64]*strings.Builder{}
		}
		if drawn[s][w] == nil {
			drawn[s][w] = &strings.Builder{}
		}
		drawn[s][w].WriteString(path(p.Path))
	}
	return drawn
}

// group draws a section.
func (c *canvas) group(s int, drawn map[int]map[float64]*strings.Builder) {
	if drawn[s] == nil {
		return
	}
	c.open(s)
	for _, w := range slices.Sorted(maps.Keys(drawn[s])) {
		c.stroke(s, w, drawn[s][w].String())
	}
	c.WriteString("</g>")
}

// open begins the group of a section.
func (c *canvas) open(s int) {
	if s < 0 {
		c.WriteString(`<g class="outside">`)
		return
	}
	x := &c.v.Sections[s]
	c.add(`<g class="sec%s" id="line-%d" data-s="%d" tabindex="0" role="button" aria-label="%s">`, left(x), s, s, esc(fmt.Sprintf("Section %s, %s, %s, limit %s, %s%s", x.ID, x.System, c.v.Units.Area(x.Area), c.v.Units.Limit(x.Limit), show.State(x), mark(", ", x.NotTested))))
}

// stroke draws a section's lines of one weight with its colour and pattern.
func (c *canvas) stroke(s int, w float64, d string) {
	if s < 0 {
		c.add(`<path d="%s" stroke="#bbb" stroke-width="%s"/>`, d, num(min(w, 3)))
		return
	}
	l := c.looks[s]
	c.add(`<path d="%s" stroke="%s" stroke-width="%s"/>`, d, l.Colour, num(w))
	if o, ok := over(l.Pattern, w); ok {
		c.add(`<path d="%s" stroke="#fff" stroke-width="%s"%s/>`, d, num(o.width), o.dash)
	}
}

type overlay struct {
	width float64
	dash  string
}

// over is the white line that makes a pattern of a section's line.
func over(pattern int, w float64) (overlay, bool) {
	switch pattern {
	case 1:
		return overlay{0.34 * w, ""}, true
	case 2:
		return overlay{w, ` stroke-dasharray="2 7"`}, true
	case 3:
		return overlay{0.5 * w, ` stroke-dasharray="0 8" stroke-linecap="round"`}, true
	case 4:
		return overlay{w, ` stroke-dasharray="4 16"`}, true
	case 5:
		return overlay{0.4 * w, ` stroke-dasharray="10 6"`}, true
	}
	return overlay{}, false
}

// across is a stroke across a line, shifted along it.
func across(m *schematic.Mark, half, shift float64) string {
	if m.Upright {
		return fmt.Sprintf("M%s %sH%s", num(m.X-half), num(m.Y+shift), num(m.X+half))
	}
	return fmt.Sprintf("M%s %sV%s", num(m.X+shift), num(m.Y-half), num(m.Y+half))
}

// marks draws joints, cuts and open ends.
func (c *canvas) marks() {
	var ticks, halos, cuts strings.Builder
	for i := range c.pic.Joints {
		m := &c.pic.Joints[i]
		j := &c.v.Drawing.Joints[m.Index]
		half := m.Weight/2 + 6
		switch {
		case j.Cut > 0:
			halos.WriteString(across(m, half, 0))
			cuts.WriteString(across(m, half, -2.5) + across(m, half, 2.5))
		case j.Fixed != "" && !j.Assumed:
			cuts.WriteString(across(m, half, 0))
		case j.Barred == "":
			ticks.WriteString(across(m, m.Weight/2, 0))
		}
	}
	for _, p := range []struct {
		class string
		d     string
	}{{"tick", ticks.String()}, {"halo", halos.String()}, {"cut", cuts.String()}} {
		if p.d != "" {
			c.add(`<path class="%s" d="%s"/>`, p.class, p.d)
		}
	}
	c.cutNumbers()
}

// cutNumbers names the cuts.
func (c *canvas) cutNumbers() {
	for i := range c.pic.Joints {
		m := &c.pic.Joints[i]
		n := c.v.Drawing.Joints[m.Index].Cut
		if n == 0 {
			continue
		}
		x, y := m.X-2, m.Y+m.Weight/2+16
		if m.Upright {
			x, y = m.X+m.Weight/2+9, m.Y+4
		}
		c.add(`<text class="cutno" x="%s" y="%s">%d</text>`, num(x), num(y), n)
	}
}

// ends draws the openings with nothing on them, and the links that close rings.
func (c *canvas) ends() {
	for i := range c.pic.Ends {
		m := &c.pic.Ends[i]
		c.add(`<rect class="end" x="%s" y="%s" width="6" height="6"/>`, num(m.X-3), num(m.Y-3))
	}
	for i := range c.pic.Rings {
		r := &c.pic.Rings[i]
		c.add(`<path class="ring" d="M%s %sQ%s %s %s %s"/>`, num(r.From.X), num(r.From.Y), num(max(r.From.X, r.To.X)+40), num((r.From.Y+r.To.Y)/2), num(r.To.X), num(r.To.Y))
	}
}

// tags names the rows.
func (c *canvas) tags() {
	for i := range c.pic.Labels {
		l := &c.pic.Labels[i]
		c.add(`<text class="tag" x="%s" y="%s">%s</text>`, num(l.X), num(l.Y), esc(l.Text))
	}
}

// badges names the sections on their longest runs.
func (c *canvas) badges() {
	for _, b := range schematic.Badges(c.v.Drawing, c.pic) {
		s := &c.v.Sections[b.Section]
		id := s.ID
		w := 7*float64(len(id)) + 8
		c.add(`<g class="badge%s"><rect x="%s" y="%s" width="%s" height="15" rx="3"/><text x="%s" y="%s">%s</text></g>`,
			left(s), num(b.X-w/2), num(b.Y), num(w), num(b.X), num(b.Y+11.5), esc(id))
	}
}

func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}
