package pdf

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/planner/report/card"
)

// The columns of the blanks, mm from the left margin, and what they are called.
type column struct {
	name string
	x, w float64
}

var columns = []column{
	{"fitted", 0, 9}, {"off", 9, 6}, {"no.", 15, 7}, {"kind", 22, 23}, {"size", 45, 23}, {"force", 68, 14}, {"fix", 82, 5}, {"at", 87, 50}, {"level, place, drawing", 137, 45},
}

// The columns by their number.
const (
	colNumber = 2 + iota
	colKind
	colSize
	colForce
	colFix
	colAt
	colPlace
)

// share gives what the places of the bounds don't need of their column to the
// column of where they are, and what sizes need more than theirs, so that none
// takes two lines, from that.
func (l *list) share(blanks []card.Blank) {
	l.columns, l.first = slices.Clone(columns), map[string]string{}
	for i := range l.bounds {
		b := &l.bounds[i]
		if at := card.Place(b.Level, b.Place); l.first[at] == "" {
			l.first[at] = b.Number
		}
	}
	need := l.width(columns[colPlace].name, style{size: 8.5})
	for i := range l.bounds[:min(len(l.bounds), mostRows)] {
		need = max(need, l.width(l.safe(l.where(&l.bounds[i])), style{size: l.size})+1.5)
	}
	if rest := columns[colPlace].w - need; rest > 0 {
		l.columns[colAt].w += rest
		l.columns[colPlace].x += rest
		l.columns[colPlace].w -= rest
	}
	size := l.columns[colSize].w
	for i := range blanks[:min(len(blanks), mostSizes)] {
		size = max(size, l.width(blanks[i].Size, style{size: l.size, bold: true})+1.8)
	}
	more := min(size-l.columns[colSize].w, mostMore)
	l.columns[colSize].w += more
	l.columns[colForce].x += more
	l.columns[colFix].x += more
	l.columns[colAt].x += more
	l.columns[colAt].w -= more
}

// mostSizes is how many sizes are measured; mostMore is what they may take, mm.
const mostSizes, mostMore = 200, 12

// heads names the columns.
func (l *list) heads() row {
	f := style{size: 8.5, grey: true}
	return row{f.high() + 0.4, func(y float64) {
		for _, k := range l.columns {
			l.text(left+k.x, y+0.74*f.high(), k.name, f)
		}
		l.line(0.2, 0, left, y+f.high(), right, y+f.high())
	}}
}

// pair is the two boxes of a blank: fitted, and off again.
func (l *list) pair(x, foot float64) {
	l.tick(x+1, foot)
	l.tick(x+8.5, foot)
}

// cells are the texts of a line, by column.
type cells map[int][][]word

func (l *list) fit(col int, text string, f style, most int) [][]word {
	return l.lines(l.words(text, f), l.columns[col].w-1, most)
}

// squeezed sets where a blank goes; where that has no room, long tags are
// shortened in their middle first, so that both ends of a joint can be read.
func (l *list) squeezed(col int, text string, f style, most int) [][]word {
	w := l.columns[col].w - 1
	return l.within(text, w, most, func(text string) []word { return l.words(text, f) })
}

// shorter is how many letters long tags are shortened to, step by step.
var shorter = []int{22, 18, 15, 12}

// within sets a text in lines of a width, so many at most if that is over 0: long
// tags are shortened in their middle before its end is cut.
func (s *sheet) within(text string, width float64, most int, words func(string) []word) [][]word {
	lines := s.lines(words(text), width, 0)
	for _, letters := range shorter {
		if most == 0 || len(lines) <= most {
			return lines
		}
		lines = s.lines(words(short(text, letters)), width, 0)
	}
	return s.lines(words(short(text, shorter[len(shorter)-1])), width, most)
}

// short shortens every word of a text to so many letters.
func short(text string, most int) string {
	words := strings.Fields(text)
	for i, w := range words {
		words[i] = middle(w, most)
	}
	return strings.Join(words, " ")
}

// middle shortens a text to so many letters, taking them from its middle.
func middle(text string, most int) string {
	r := []rune(text)
	if len(r) <= most {
		return text
	}
	head := most / 2
	return string(r[:head]) + "…" + string(r[len(r)-(most-head-1):])
}

// cells sets what a line of the list says. A size is never cut short.
func (l *list) cells(number, kind string, b *card.Blank) cells {
	f, bold := style{size: l.size}, style{size: l.size, bold: true}
	return cells{
		colNumber: l.fit(colNumber, number, bold, 1), colKind: l.fit(colKind, kind, f, 2), colSize: l.fit(colSize, b.Size, bold, 0),
		colForce: l.fit(colForce, b.Force, f, 0), colFix: l.fit(colFix, l.mark(b.Fixing), bold, 1),
	}
}

func (c cells) high() float64 {
	most := 0.0
	for _, lines := range c {
		most = max(most, deep(lines))
	}
	return most
}

func (l *list) set(c cells, y float64) {
	for k := range l.columns {
		l.put(left+l.columns[k].x, y, c[k])
	}
}

// bound is a cut, an end of scope, or an open end that is alone of its size.
func (l *list) bound(b *card.Blank) row {
	f := style{size: l.size}
	c := l.cells(b.Number, b.Kind, b)
	c[colAt], c[colPlace] = l.squeezed(colAt, b.At, f, l.tags), l.squeezed(colPlace, l.where(b), f, l.places)
	if no := l.first[card.Place(b.Level, b.Place)]; len(c[colPlace]) > 1 && no != "" && no != b.Number { // said once in full
		c[colPlace] = l.squeezed(colPlace, card.Place("as blank "+no, l.other(b)), f, l.places)
	}
	high := c.high() + 0.7
	return row{high, func(y float64) {
		l.pair(left, y+0.3+0.74*f.high())
		l.set(c, y+0.15)
		l.line(0.1, 160, left, y+high-0.1, right, y+high-0.1)
	}}
}

// where is the place of a blank, without the drawing that heads the card.
func (l *list) where(b *card.Blank) string { return card.Place(b.Level, b.Place, l.other(b)) }

// other is the drawing of a blank, unless it heads the card.
func (l *list) other(b *card.Blank) string {
	if b.Drawing == l.drawing {
		return ""
	}
	return b.Drawing
}

// group heads the open ends of one size.
func (l *list) group(g *group, named bool) row {
	f := style{size: l.size, grey: true}
	kind := g.Kind + "s"
	if g.Kind == "end of scope" {
		kind = "ends of scope"
	}
	c := l.cells("", fmt.Sprintf("%d %s", len(g.each), kind), &g.Blank)
	if at := card.Lead(g.each); !named {
		c[colAt] = l.fit(colAt, "each listed in blanks.csv", f, 1)
	} else {
		c[colAt], c[colPlace] = l.fit(colAt, at+" each of", f, 1), l.squeezed(colPlace, sameSpot(g.each), f, l.places)
	}
	return row{c.high() + 0.5, func(y float64) {
		if !named { // ticked together
			l.pair(left, y+0.3+0.74*f.high())
		}
		l.set(c, y+0.2)
	}}
}

// inRoom is an entry in so much room.
func (l *list) inRoom(b *card.Blank, lead, spot string, f style, room float64) string {
	text := l.entry(b, lead, spot)
	for _, most := range shorter {
		if l.width(text, f) <= room {
			break
		}
		text = short(l.entry(b, lead, spot), most)
	}
	return l.clip(text, f, room)
}

// sameSpot is where all of some blanks are, if that is one place.
func sameSpot(each []card.Blank) string {
	for i := range each {
		if each[i].Spot() != each[0].Spot() {
			return ""
		}
	}
	return each[0].Spot()
}

// entry is a blank under its size: its place without how they all begin, and
// without the spot that they all share.
func (l *list) entry(b *card.Blank, lead, spot string) string {
	text := l.safe(strings.TrimPrefix(strings.TrimPrefix(b.At, lead), " "))
	if p := b.Spot(); p != spot {
		text += ", " + l.safe(p)
	}
	return text
}

// across is how many blanks of a size stand side by side: three, or two where
// their places are long.
func (l *list) across(groups []group) int {
	widest := 0.0
	for i := range groups[:min(len(groups), mostRows)] {
		g := &groups[i]
		lead, spot := card.Lead(g.each), sameSpot(g.each)
		for k := range g.each[:min(len(g.each), 3*mostRows)] {
			widest = max(widest, l.width(short(l.entry(&g.each[k], lead, spot), shorter[1]), style{size: l.size}))
		}
	}
	if wide/3 > widest+numbered+2 {
		return 3
	}
	return 2
}

// names lists blanks of one size in so many columns, each with its boxes and
// number.
func (l *list) names(each []card.Blank, cols int) []row {
	f := style{size: l.size}
	lead, spot, w := card.Lead(each), sameSpot(each), wide/float64(cols)
	var out []row
	for i := 0; i < len(each); i += cols {
		out = append(out, row{f.high() + 0.5, func(y float64) {
			foot := y + 0.74*f.high()
			for k := i; k < min(i+cols, len(each)); k++ {
				x := left + w*float64(k-i)
				l.pair(x, foot)
				l.text(x+14, foot, each[k].Number, style{size: l.size, bold: true})
				l.text(x+numbered, foot, l.inRoom(&each[k], lead, spot, f, w-numbered-1.5), f)
			}
		}})
	}
	return out
}

// numbered is what the boxes and the number take in a column, mm.
const numbered = 20.0
