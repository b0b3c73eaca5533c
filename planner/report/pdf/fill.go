package pdf

import (
	"blankoff/planner/report/card"
)

// tick draws a box to tick, its foot at y.
func (s *sheet) tick(x, y float64) { s.box(x, y-tickSide+0.3, tickSide, tickSide, 0.3, 255) }

const tickSide = 2.8

// checks are ticked before the pressure is raised, in two columns.
func (s *sheet) checks(c *card.Card, way tight) part {
	const gap = 5.0
	col := (wide - gap) / 2
	half := (len(c.Checks) + 1) / 2
	set := make([][][]word, len(c.Checks))
	depth := [2]float64{}
	for i, t := range c.Checks {
		set[i] = s.lines(s.words(t, style{size: way.body}), col-5, 2)
		depth[i/max(1, half)] += deep(set[i]) + way.gap
	}
	return part{high: titleHigh + max(depth[0], depth[1]) + 1, draw: func(y, _ float64) {
		from := s.title(left, y, "Before the pressure is raised")
		at := from
		for i := range set {
			x := left
			if i >= half {
				x += col + gap
			}
			if i == half {
				at = from
			}
			s.tick(x, at+style{size: way.body}.high()-0.8)
			at = s.put(x+5, at, set[i]) + way.gap
		}
	}}
}

// cautions stand next to what they are about: the raising of the pressure.
func (s *sheet) cautions(c *card.Card, way tight) part {
	var words []word
	for _, t := range c.Cautions {
		words = append(words, s.words(t, style{size: way.body, bold: true})...)
	}
	lines := s.lines(words, wide-5, 5)
	return part{high: deep(lines) + 2, draw: func(y, h float64) {
		s.line(1.2, 0, left+0.8, y+0.8, left+0.8, y+h-0.8)
		s.put(left+4, y+0.4, lines)
	}}
}

// readings is the table that is filled in at each test.
func (s *sheet) readings(c *card.Card, way tight) part {
	f := style{size: 8.5}
	heads := append(append([]string{"test"}, c.Boxes...), "passes", "fails", "no class")
	rows := []string{"first", "again"}
	widths := s.shares(heads, rows, f)
	set, head := make([][][]word, len(heads)), 0.0
	for i, t := range heads {
		set[i] = s.lines(s.words(t, f), widths[i]-1.6, 2)
		head = max(head, deep(set[i])+1.2)
	}
	high := titleHigh + head + way.pen*float64(len(rows)) + 1.5
	return part{high: high, grow: 2 * float64(len(rows)), draw: func(y, h float64) {
		y0 := s.title(left, y, "Readings")
		pen := (h - titleHigh - head - 1.5) / float64(len(rows))
		x := left
		for i := range heads {
			s.box(x, y0, widths[i], head, 0.25, 235)
			s.put(x+0.8, y0+0.3, set[i])
			for k, name := range rows {
				at := y0 + head + pen*float64(k)
				s.box(x, at, widths[i], pen, 0.25, 255)
				switch {
				case i == 0:
					s.text(x+1, at+pen/2+1.2, name, f)
				case i >= len(heads)-3:
					s.tick(x+widths[i]/2-tickSide/2, at+pen/2+tickSide/2-0.3)
				}
			}
			x += widths[i]
		}
	}}
}

// shares parts the page's width by how wide the heads are; the first column holds
// the rows' names whole.
func (s *sheet) shares(heads, rows []string, f style) []float64 {
	out, sum := make([]float64, len(heads)), 0.0
	for _, t := range rows {
		out[0] = max(out[0], s.width(t, f)+2.5)
	}
	for i, t := range heads[1:] {
		out[i+1] = s.width(s.safe(t), f)
		sum += out[i+1]
	}
	for i := range heads[1:] {
		out[i+1] += (wide - out[0] - sum) / float64(len(heads)-1)
	}
	return out
}

// boxes are frames to write in, side by side, each under its name.
func (s *sheet) boxes(names []string, high float64) part {
	f := style{size: 8.5}
	w := wide / float64(max(1, len(names)))
	return part{high: high, grow: 2, draw: func(y, h float64) {
		for i, t := range names {
			x := left + w*float64(i)
			s.box(x, y, w, h, 0.25, 255)
			s.put(x+1, y+0.2, s.lines(s.words(t, f), w-2, 2))
		}
	}}
}

// remarks takes what is left of the page.
func (s *sheet) remarks() part {
	return part{grow: 300, draw: func(y, h float64) {
		if h < 7 {
			return
		}
		s.box(left, y, wide, h-1, 0.25, 255)
		s.put(left+1, y+0.2, s.lines(s.words("leaks found, repairs, remarks", style{size: 8.5}), wide-2, 1))
	}}
}
