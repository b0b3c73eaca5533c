package pdf

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/planner/report/card"
)

// row is a line of the list of blanks.
type row struct {
	high float64
	draw func(y float64)
}

// list is the blanks of a section as they are set out: cuts and ends of scope
// each on a line, open ends under their size in columns.
type list struct {
	*sheet
	size    float64 // of the text
	tags    int     // lines of where one is in the ductwork
	places  int     // lines of one place
	columns []column
	first   map[string]string // by place, the number of its first blank
	drawing string            // that heads the card
	bounds  []card.Blank
	lined   []row // the bounds set out
	groups  []group
	marks   map[string]string // a letter for each way of fixing
	fixes   []string
}

// group is blanks of one size, kind, force and fixing, and how it is set out:
// its head, without the names under it and with them, and the names.
type group struct {
	card.Blank
	each  []card.Blank
	head  [2]row
	names []row
	cols  int
}

// blanks lists the blanks with boxes to tick. Where the way is to cut, it does
// so until they need no more than the room.
func (s *sheet) blanks(c *card.Card, way tight, room float64) part {
	l := &list{sheet: s, size: way.body, tags: way.tags, places: way.places, drawing: c.Drawings, marks: map[string]string{}}
	for _, b := range c.EveryBlank {
		if l.mark(b.Fixing); b.Kind != card.OpenEnd {
			l.bounds = append(l.bounds, b)
		}
	}
	l.share(c.EveryBlank)
	title := fmt.Sprintf("Blanks: %d at cuts and bounds, %d at open ends", c.Cuts, c.Ends)
	if c.Grouping {
		title = "Blanks: those between the rows of a grouping aren't known; write them in"
	}
	fixing, rig := s.lines(l.fixing(), wide, 3), l.connections(c)
	fixed := titleHigh + deep(rig) + deep(fixing) + 1
	var rows []row
	switch {
	case way.cut:
		rows = l.fitted(c, room-fixed)
	case len(l.bounds) > mostRows:
		return part{high: 1e6}
	default:
		l.groups = l.gather(c, func(b *card.Blank) bool { return b.Kind == card.OpenEnd })
		rows = l.rows(-1, 0)
	}
	if c.Grouping && !way.cut {
		rows = l.toWrite(rows, way.pen)
	}
	return part{high: fixed + tall(rows), draw: func(y, _ float64) {
		s.line(0.2, 0, left, y+0.2, right, y+0.2)
		y = s.put(left, s.title(left, y, title), rig)
		for _, r := range rows {
			r.draw(y)
			y += r.high
		}
		s.put(left, y, fixing)
	}}
}

// connections says where the air goes in and where the pressure is read.
func (l *list) connections(c *card.Card) [][]word {
	var out [][]word
	for _, f := range c.Site {
		if f.Name != card.RigAt && f.Name != card.TapAt {
			continue
		}
		lead := l.words(upper(c.At(f))+":", style{size: l.size, bold: true})
		out = append(out, l.within(f.Value+".", wide, l.places, func(text string) []word {
			return append(slices.Clone(lead), l.words(text, style{size: l.size})...)
		})...)
	}
	return out
}

func upper(text string) string { return strings.ToUpper(text[:1]) + text[1:] }

func tall(rows []row) float64 {
	sum := 0.0
	for _, r := range rows {
		sum += r.high
	}
	return sum
}

// toWrite adds lines to write blanks into, under the heads of the list.
func (l *list) toWrite(rows []row, pen float64) []row {
	if len(rows) == 0 {
		rows = []row{l.heads()}
	}
	for range 4 {
		rows = append(rows, row{pen - 1, func(y float64) {
			l.pair(left, y+pen/2+0.8)
			l.line(0.1, 160, left, y+pen-1.1, right, y+pen-1.1)
		}})
	}
	return rows
}

// mostRows is more lines than any page holds.
const mostRows = 70

// fitted sets as much out as there is room for: fewer open ends by name, then
// cuts and bounds by size too, then fewer sizes.
func (l *list) fitted(c *card.Card, room float64) []row {
	for pass := range 2 {
		if pass == 0 && len(l.bounds) > mostRows {
			continue
		}
		if pass == 1 {
			l.bounds, l.lined = nil, nil
		}
		l.groups = l.gather(c, func(b *card.Blank) bool { return pass == 1 || b.Kind == card.OpenEnd })
		for names := 40; names >= 0; names-- {
			if rows := l.rows(names, 0); tall(rows) <= room {
				return rows
			}
		}
	}
	for n := min(len(l.groups)-1, mostRows); n > 1; n-- {
		if rows := l.rows(0, n); tall(rows) <= room {
			return rows
		}
	}
	return l.rows(0, 1)
}

// gather groups the blanks that are wanted, in the order in which they come, and
// sets each group out.
func (l *list) gather(c *card.Card, want func(*card.Blank) bool) []group {
	var out []group
	at := map[card.Alike]int{}
	for i := range c.EveryBlank {
		b := &c.EveryBlank[i]
		if !want(b) {
			continue
		}
		k, ok := at[b.Alike()]
		if !ok {
			k = len(out)
			at[b.Alike()] = k
			out = append(out, group{Blank: card.Blank{Size: b.Size, Kind: b.Group(), Force: b.Force, Fixing: b.Fixing}})
		}
		out[k].each = append(out[k].each, *b)
	}
	cols := l.across(out)
	for i := range out[:min(len(out), mostRows)] {
		g := &out[i]
		if len(g.each) == 1 {
			g.head[0] = l.bound(&g.each[0])
			g.head[1] = g.head[0]
			continue
		}
		g.head[0], g.head[1] = l.group(g, false), l.group(g, true)
		g.cols, g.names = cols, l.names(g.each, cols)
	}
	return out
}

// mark gives a way of fixing its letter.
func (l *list) mark(fixing string) string {
	if m, ok := l.marks[fixing]; ok {
		return m
	}
	m := string(rune('A' + len(l.fixes)))
	l.marks[fixing], l.fixes = m, append(l.fixes, fixing)
	return m
}

// fixing says what the letters stand for.
func (l *list) fixing() []word {
	if len(l.fixes) == 0 {
		return nil
	}
	words := l.words("Fixing:", style{size: l.size, bold: true})
	for i, f := range l.fixes {
		end := ";"
		if i == len(l.fixes)-1 {
			end = "."
		}
		words = append(words, l.words(l.marks[f], style{size: l.size, bold: true})...)
		words = append(words, l.words(f+end, style{size: l.size})...)
	}
	return words
}

// rows puts the list together, with so many lines of names under each size, all
// where it is below 0, and so many sizes, all where it is 0.
func (l *list) rows(names, sizes int) []row {
	if len(l.bounds)+len(l.groups) == 0 {
		return nil
	}
	out := []row{l.heads()}
	if l.lined == nil {
		for i := range l.bounds {
			l.lined = append(l.lined, l.bound(&l.bounds[i]))
		}
	}
	out = append(out, l.lined...)
	if sizes == 0 || sizes > len(l.groups) {
		sizes = len(l.groups)
	}
	if sizes > mostRows {
		return []row{{high: 1e6}}
	}
	for i := range l.groups[:sizes] {
		g := &l.groups[i]
		switch n := len(g.names); {
		case names < 0 || n <= names:
			out = append(append(out, g.head[1]), g.names...)
		case names < 2: // a line that only counts them is no use
			out = append(out, g.head[0])
		default:
			out = append(append(append(out, g.head[1]), g.names[:names-1]...), l.say(fmt.Sprintf("%d more of this size, each listed in blanks.csv", len(g.each)-g.cols*(names-1))))
		}
	}
	if rest := len(l.groups) - sizes; rest > 0 {
		out = append(out, l.say(fmt.Sprintf("%d more sizes, each listed in blanks.csv", rest)))
	}
	return out
}

func (l *list) say(text string) row {
	f := style{size: l.size, grey: true}
	return row{f.high(), func(y float64) { l.text(left+10, y+0.74*f.high(), l.clip(text, f, wide-10), f) }}
}
