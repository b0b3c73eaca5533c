package html

import (
	"fmt"
	"html/template"
	"math"
	"strings"

	"blankoff/planner/report/schematic"
)

// A printed sheet holds so much of the drawing at full size, A4 on its side, and
// has the names of the levels beside it.
const sheetWide, sheetHigh, sheetNames = 1040.0, 640.0, 104.0

// leaf is a part of a system's drawing on a sheet of its own.
type leaf struct {
	system     int
	col, row   int
	x, y, w, h float64
	number     int // from 1, of all sheets; 0: left out
}

func (l *leaf) holds(p schematic.Point) bool {
	return p.X >= l.x && p.X <= l.x+l.w && p.Y >= l.y && p.Y <= l.y+l.h
}

// sheets cuts the drawing up for paper, system by system: one sheet where it can
// be read when made to fit, else as many as it takes, each overlapping the one
// before, without those that would add nothing. Where there are several, a map of
// them comes first.
func (c *canvas) sheets() (list []template.HTML, whole template.HTML) {
	var leaves []leaf
	for i := range c.pic.Systems {
		leaves = append(leaves, cutUp(c.pic, i)...)
	}
	n := 0
	for i := range leaves {
		if leaves[i].number != 0 {
			n++
			leaves[i].number = n
		}
	}
	for i := range leaves {
		if leaves[i].number > 0 {
			list = append(list, c.sheet(leaves, i, n))
		}
	}
	if n > 1 {
		whole = c.overview(leaves)
	}
	return list, whole
}

// cutUp parts a system into leaves, row by row.
func cutUp(pic *schematic.Picture, system int) []leaf {
	const lap, least = 60.0, 0.72
	s := pic.Systems[system]
	points := inked(pic, system)
	width := 0.0
	for _, p := range points {
		width = max(width, p.X)
	}
	width, height := width+20, s.Bottom-s.Top
	k := max(least, min(1, sheetWide/width, sheetHigh/height))
	across, down := parts(width, sheetWide/k, lap), parts(height, sheetHigh/k, lap)
	if across > 1 { // room for the names
		across = parts(width, sheetWide/k-sheetNames, lap)
	}
	wide, high := (width-lap)/float64(across)+lap, (height-lap)/float64(down)+lap
	var out []leaf
	for y := range down {
		for x := range across {
			out = append(out, leaf{system, x + 1, y + 1, float64(x) * (wide - lap), s.Top + float64(y)*(high-lap), wide, high, 1})
		}
	}
	leaveOut(out, points)
	return out
}

// parts is how many sheets of one length cover a whole, each overlapping the one
// before.
func parts(whole, one, lap float64) int { return max(1, int(math.Ceil((whole-lap)/(one-lap)-1e-9))) }

// inked are points along all lines of a system, close enough to say where
// something is drawn.
func inked(pic *schematic.Picture, system int) []schematic.Point {
	const step = 6
	s := pic.Systems[system]
	var out []schematic.Point
	for i := range pic.Pieces {
		path := pic.Pieces[i].Path
		if y := path[len(path)-1].Y; y < s.Top || y > s.Bottom {
			continue
		}
		out = append(out, path[0])
		for k := 1; k < len(path); k++ {
			a, b := path[k-1], path[k]
			n := max(1, math.Ceil(math.Hypot(b.X-a.X, b.Y-a.Y)/step))
			for t := 1.0; t <= n; t++ {
				out = append(out, schematic.Point{X: a.X + (b.X-a.X)*t/n, Y: a.Y + (b.Y-a.Y)*t/n})
			}
		}
	}
	return out
}

// leaveOut drops leaves whose lines are all on others that stay, the last first.
func leaveOut(leaves []leaf, points []schematic.Point) {
	times := make([]int, len(points))
	for k, p := range points {
		for i := range leaves {
			if leaves[i].holds(p) {
				times[k]++
			}
		}
	}
	for i := len(leaves) - 1; i >= 0; i-- {
		l, needed := &leaves[i], false
		for k, p := range points {
			needed = needed || times[k] == 1 && l.holds(p)
		}
		if needed {
			continue
		}
		l.number = 0
		for k, p := range points {
			if l.holds(p) {
				times[k]--
			}
		}
	}
}

// sheet is a leaf with the names of its levels, and where it goes on.
func (c *canvas) sheet(leaves []leaf, i, of int) template.HTML {
	l := &leaves[i]
	name := or(c.pic.Systems[l.system].Name, "no system")
	var names, beside string
	left := 0.0
	if of > 1 {
		name += fmt.Sprintf(": sheet %d of %d", l.number, of)
	}
	if on, parted := goesOn(leaves, i); parted {
		left = sheetNames
		name += fmt.Sprintf(", column %d, row %d%s", l.col, l.row, on)
		names = c.levels(l)
		beside = fmt.Sprintf(`<path d="M%s 0V%s" stroke="#bbb" stroke-width="1"/>`, num(left), num(l.h))
		if l.col == 1 { // the drawing's own names
			left, names, beside = 0, c.above(l), ""
		}
	}
	return template.HTML(fmt.Sprintf(`<figure class="sheet"><figcaption>%s</figcaption><svg viewBox="0 0 %s %s" preserveAspectRatio="xMinYMin" role="img" aria-label="schematic, %s"><svg x="%s" y="0" width="%s" height="%s" viewBox="%s %s %s %s"><use href="#system-%d"/></svg><g class="lines">%s%s</g></svg></figure>`,
		esc(name), num(l.w+left), num(l.h), esc(name), num(left), num(l.w), num(l.h), num(l.x), num(l.y), num(l.w), num(l.h), l.system, names, beside))
}

// goesOn says on which sheets the drawing goes on, and whether its system is on
// several.
func goesOn(leaves []leaf, i int) (text string, parted bool) {
	l := &leaves[i]
	var on []string
	for _, d := range []struct {
		word     string
		col, row int
	}{{"right", 1, 0}, {"below", 0, 1}, {"left", -1, 0}, {"above", 0, -1}} {
		for k := range leaves {
			o := &leaves[k]
			if k == i || o.system != l.system || o.number == 0 {
				continue
			}
			parted = true
			if o.col == l.col+d.col && o.row == l.row+d.row {
				on = append(on, fmt.Sprintf("%s on sheet %d", d.word, o.number))
			}
		}
	}
	if len(on) == 0 {
		return "", parted
	}
	return "; continues " + strings.Join(on, ", "), parted
}

// levels names those that a leaf shows part of, at its left side.
func (c *canvas) levels(l *leaf) string {
	var b strings.Builder
	for i := range c.pic.Bands {
		n := &c.pic.Bands[i]
		if s := c.pic.Systems[l.system]; n.Level == "" || n.Top < s.Top || n.Bottom > s.Bottom+1 || n.Bottom < l.y+18 || n.Top > l.y+l.h-18 {
			continue
		}
		fmt.Fprintf(&b, `<text class="level" x="8" y="%s">%s</text>`, num(max(n.Top-l.y, 0)+16), esc(schematic.Tag(n.Level)))
	}
	return b.String()
}

// above names the level that has its own name on the sheet above.
func (c *canvas) above(l *leaf) string {
	for i := range c.pic.Bands {
		if n := &c.pic.Bands[i]; l.row > 1 && n.Level != "" && n.Top < l.y && n.Bottom > l.y+18 {
			return fmt.Sprintf(`<text class="level" x="8" y="16">%s</text>`, esc(n.Level))
		}
	}
	return ""
}

// overview is the whole drawing, small, with the sheets and their numbers.
func (c *canvas) overview(leaves []leaf) template.HTML {
	var b strings.Builder
	p := c.pic
	fmt.Fprintf(&b, `<svg class="overview" viewBox="0 0 %s %s" preserveAspectRatio="xMinYMin" role="img" aria-label="the whole drawing with the numbers of its sheets">`, num(p.Width), num(p.Height))
	for i := range p.Systems {
		fmt.Fprintf(&b, `<use href="#system-%d"/>`, i)
	}
	size := max(p.Width/40, p.Height/20, 16)
	for i := range leaves {
		l := &leaves[i]
		if l.number == 0 {
			continue
		}
		fmt.Fprintf(&b, `<rect x="%s" y="%s" width="%s" height="%s" fill="none" stroke="#000" stroke-width="%s" stroke-dasharray="%s"/>`, num(l.x), num(l.y), num(min(l.w, p.Width-l.x)), num(l.h), num(size/12), num(size/4))
		fmt.Fprintf(&b, `<text x="%s" y="%s" font-size="%s" font-weight="700" text-anchor="middle" stroke="#fff" stroke-width="%s" paint-order="stroke">%d</text>`, num(l.x+min(l.w, p.Width-l.x)/2), num(l.y+l.h/2+size/3), num(size), num(size/5), l.number)
	}
	b.WriteString("</svg>")
	return template.HTML(b.String())
}
