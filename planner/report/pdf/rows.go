package pdf

import (
	"fmt"

	"blankoff/planner/report/card"
)

// The columns of the blanks, mm from the left margin, and what they are called.
var columns = []struct {
	name string
	x, w float64
}{
	{"fitted", 0, 9}, {"off", 9, 7}, {"no.", 16, 8}, {"kind", 24, 27}, {"size", 51, 27}, {"N", 78, 11}, {"fix", 89, 7}, {"at", 96, 43}, {"level, place, drawing", 139, 43},
}

// heads names the columns.
func (l *list) heads() row {
	f := style{size: 8.5, grey: true}
	return row{f.high() + 0.4, func(y float64) {
		for _, k := range columns {
			l.text(left+k.x, y+0.74*f.high(), k.name, f)
		}
		l.line(0.2, 0, left, y+f.high(), right, y+f.high())
	}}
}

func (l *list) pair(x, y float64) {
	l.tick(x+1, y)
	l.tick(x+8.5, y)
}

// bound is a cut or an end of scope.
func (l *list) bound(b *card.Blank) row {
	f := style{size: l.size}
	bold := style{size: l.size, bold: true}
	at := l.fit(b.At, f, columns[7].w-1.5)
	place := l.fit(b.Where, f, columns[8].w)
	high := max(deep(at), deep(place), f.high()) + 0.7
	return row{high, func(y float64) {
		foot := y + 0.74*f.high()
		l.pair(left, foot)
		l.cells(foot, b.Number, b.Kind, b, bold, f)
		l.put(left+columns[7].x, y, at)
		l.put(left+columns[8].x, y, place)
		l.line(0.1, 160, left, y+high-0.25, right, y+high-0.25)
	}}
}

func (l *list) fit(text string, f style, w float64) [][]word {
	return l.lines(l.words(text, f), w, l.places)
}

// cells are the columns from the number to the fixing.
func (l *list) cells(foot float64, number, kind string, b *card.Blank, bold, f style) {
	for i, c := range []struct {
		text string
		f    style
	}{{number, bold}, {kind, f}, {b.Size, bold}, {b.Force, f}, {l.mark(b.Fixing), bold}} {
		k := columns[2+i]
		l.text(left+k.x, foot, l.clip(l.safe(c.text), c.f, k.w-1), c.f)
	}
}

// group heads the open ends of one size.
func (l *list) group(g *group) []row {
	f := style{size: l.size}
	bold := style{size: l.size, bold: true}
	high := f.high() + 0.7
	return []row{{high, func(y float64) {
		foot := y + 0.2 + 0.74*f.high()
		kind := g.Kind
		if len(g.each) > 1 {
			kind += "s"
			if g.Kind == "end of scope" {
				kind = "ends of scope"
			}
		}
		l.text(left+1, foot, fmt.Sprintf("%d", len(g.each)), bold)
		l.cells(foot, "", kind, &g.Blank, bold, f)
		l.text(left+columns[7].x, foot, l.clip("each as below", f, 80), style{size: l.size, grey: true})
	}}}
}

// names lists blanks of one size in columns, each with its boxes and number, on
// so many lines at most, all where it is below 0.
func (l *list) names(each []card.Blank, most int) []row {
	f := style{size: l.size}
	widest := 0.0
	texts := make([]string, len(each))
	for i := range each {
		texts[i] = l.safe(each[i].At)
		if p := each[i].Spot(); p != "" {
			texts[i] += ", " + l.safe(p)
		}
		widest = max(widest, l.width(texts[i], f))
	}
	cols := max(1, min(3, int(wide/(widest+numbered+2))))
	if cols == 1 && len(each) > 1 {
		cols = 2
	}
	w := wide / float64(cols)
	var out []row
	for i := 0; i < len(each); i += cols {
		if most >= 0 && len(out) == most {
			return append(out, l.say(fmt.Sprintf("and %d more of this size, listed in blanks.csv", len(each)-i)))
		}
		out = append(out, row{f.high() + 0.5, func(y float64) {
			foot := y + 0.74*f.high()
			for k := i; k < min(i+cols, len(each)); k++ {
				x := left + w*float64(k-i)
				l.pair(x, foot)
				l.text(x+15, foot, each[k].Number, style{size: l.size, bold: true})
				l.text(x+numbered, foot, l.clip(texts[k], f, w-numbered-1.5), f)
			}
		}})
	}
	return out
}

// numbered is what the boxes and the number take in a column, mm.
const numbered = 21.0
