package keyplan

import "strings"

// The names of the levels have so much room beside the drawing, mm, and so many
// lines each.
const widestLevel, levelLines = 34.0, 3

// level is the name of a band beside it.
type level struct {
	lines []string
	y     float64 // of its upper edge
	grey  bool    // the section isn't on it
}

// lineHigh is the distance from line to line, mm.
func lineHigh(f Type) float64 { return f.Size * mmPerPoint * 1.15 }

func (l *level) high() float64 { return float64(len(l.lines)) * lineHigh(levelType) }

// levelWidth is how much room the names take, mm.
func (c *canvas) levelWidth() float64 {
	w := 0.0
	for i := range c.pic.Bands {
		for _, line := range c.wrapped(c.Safe(c.pic.Bands[i].Level), levelType, widestLevel-3) {
			w = max(w, 3+c.Width(line, levelType))
		}
	}
	return w
}

// bands parts the levels by lines and names all of them, those of the section in
// black: each at its band's top, lower or higher where bands are close.
func (c *canvas) bands() {
	var list []level
	for i := range c.pic.Bands {
		b := &c.pic.Bands[i]
		y := c.y(b.Top)
		if i > 0 {
			c.Line(0.15, 160, c.gutter, y, c.wide, y)
			c.take(0, y-0.1, c.wide, y+0.1, aFaint)
		}
		if lines := c.wrapped(c.Safe(b.Level), levelType, widestLevel-3); len(lines) > 0 {
			list = append(list, level{lines, y, !c.on(b.Top, b.Bottom)})
		}
	}
	for i := range c.apart(list) {
		l := &list[i]
		f := levelType
		f.Grey = l.grey
		for k, line := range l.lines {
			y := l.y + (float64(k)+0.8)*lineHigh(f)
			c.Text(0, y, line, f)
			c.take(0, y-0.74*lineHigh(f), c.Width(line, f), y+0.2*lineHigh(f), aText)
		}
	}
	c.systems()
}

// on says whether the section has a piece between two heights of the picture.
func (c *canvas) on(top, bottom float64) bool {
	for i := range c.pic.Pieces {
		p := &c.pic.Pieces[i]
		if y := p.Path[len(p.Path)-1].Y; c.d.Nodes[p.Node].Section == c.section && y >= top && y < bottom {
			return true
		}
	}
	return false
}

// apart shifts names so that none lies on another. Where the frame is too low for
// them, lines and then the names of levels that the section isn't on, and then
// the last, are left out.
func (c *canvas) apart(list []level) []level {
	tall := func() (sum float64) {
		for i := range list {
			sum += list[i].high()
		}
		return sum
	}
	for n := levelLines - 1; n > 0 && tall() > c.high; n-- {
		for i := range list {
			if l := &list[i]; len(l.lines) > n {
				l.lines = l.lines[:n:n]
				l.lines[n-1] = c.clip(l.lines[n-1]+" …", levelType, widestLevel-3)
			}
		}
	}
	for _, grey := range []bool{true, false} {
		for i := len(list) - 1; i >= 0 && tall() > c.high; i-- {
			if list[i].grey || !grey {
				c.missing.Levels = append(c.missing.Levels, strings.Join(list[i].lines, " "))
				list = append(list[:i], list[i+1:]...)
			}
		}
	}
	for i := 1; i < len(list); i++ {
		list[i].y = max(list[i].y, list[i-1].y+list[i-1].high())
	}
	foot := c.high
	for i := len(list) - 1; i >= 0; i-- {
		list[i].y = min(list[i].y, foot-list[i].high())
		foot = list[i].y
	}
	return list
}

// systems names them where there are several.
func (c *canvas) systems() {
	if len(c.pic.Systems) < 2 {
		return
	}
	for i := range c.pic.Systems {
		n := &c.pic.Systems[i]
		c.place(c.clip(c.Safe(n.Name), numberType, 60), numberType, true, [2]float64{0, c.y(n.Top) + lineHigh(numberType)})
	}
}

// wrapped sets a text in lines of a width, three at most.
func (c *canvas) wrapped(text string, f Type, width float64) []string {
	var out []string
	now := ""
	for _, w := range strings.Fields(text) {
		if next := strings.TrimSpace(now + " " + w); now == "" || c.Width(next, f) <= width {
			now = next
			continue
		}
		out, now = append(out, now), w
	}
	if now != "" {
		out = append(out, now)
	}
	if len(out) > levelLines {
		out = append(out[:levelLines-1], strings.Join(out[levelLines-1:], " "))
	}
	for i := range out {
		out[i] = c.clip(out[i], f, width)
	}
	return out
}

// clip shortens a text to a width, ending it in dots.
func (c *canvas) clip(text string, f Type, width float64) string {
	if c.Width(text, f) <= width {
		return text
	}
	r := []rune(text)
	for len(r) > 1 && c.Width(string(r)+"…", f) > width {
		r = r[:len(r)-1]
	}
	return strings.TrimRight(string(r), " …") + "…"
}
