package pdf

import (
	"blankoff/planner/report/keyplan"
)

// pen draws a drawing of the ductwork into a frame of a page; a mute one only
// measures.
type pen struct {
	*sheet
	y    float64 // of the frame's upper edge
	mute bool
}

func (p pen) Line(weight float64, grey int, points ...float64) {
	if p.mute {
		return
	}
	at := make([]float64, len(points))
	for i := range points {
		at[i] = points[i] + []float64{left, p.y}[i%2]
	}
	p.line(weight, grey, at...)
}

func (p pen) Box(x, y, w, h, weight float64, fill int) {
	if !p.mute {
		p.box(left+x, p.y+y, w, h, weight, fill)
	}
}

func (p pen) Text(x, y float64, text string, f keyplan.Type) {
	if !p.mute {
		p.text(left+x, p.y+y, text, styleOf(f))
	}
}

func (p pen) Width(text string, f keyplan.Type) float64 { return p.width(text, styleOf(f)) }

func (p pen) Safe(text string) string { return p.safe(text) }

func styleOf(f keyplan.Type) style { return style{f.Size, f.Bold, f.Grey, f.White} }

// picture is the drawing with how to read it, and what had no room in it. A second
// line for that is taken from the drawing.
func (s *sheet) picture(d *keyplan.Drawing, way tight) part {
	least := min(way.drawing, d.High())
	if !way.dense {
		least = min(max(least, d.Least()), d.High())
	}
	f := style{size: 8, grey: true}
	one := f.high() + 1
	return part{high: least + one, grow: d.High() - least, draw: func(y, h float64) {
		s.line(0.2, 0, left, y+0.2, right, y+0.2)
		legend := func(room float64) [][]word {
			m := d.Draw(pen{s, y + 0.4, true}, wide, room)
			return s.lines(append(s.words(m.Text(), style{size: 8, bold: true}), s.words(keyplan.Legend, f)...), wide, 2)
		}
		lines := legend(h - one)
		if len(lines) > 1 {
			lines = legend(h - one - f.high())
		}
		room := h - 1 - deep(lines)
		d.Draw(pen{s, y + 0.4, false}, wide, room)
		s.put(left, y+0.4+room, lines)
	}}
}
