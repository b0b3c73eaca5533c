package pdf

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/planner/report/card"
)

func cardOf(c *card.Card) string { return fmt.Sprintf("card %d of %d", c.Number, c.Of) }

// job is the line of the job, on every page.
func (s *sheet) job(c *card.Card) part {
	var words []word
	for _, f := range slices.Concat(c.Job, c.Head) {
		words = append(words, s.words(f.Name, style{size: 8.5, grey: true})...)
		words = append(words, s.words(s.clip(s.safe(f.Value), style{size: 8.5, bold: true}, wide/2)+" ", style{size: 8.5, bold: true})...)
	}
	lines := s.lines(words, wide, 2)
	return part{high: deep(lines) + 1.5, draw: func(y, _ float64) { s.put(left, y, lines) }}
}

// head is the section's name and where it is.
func (s *sheet) head(c *card.Card, way tight) part {
	id, tall := style{size: 38, bold: true}, 17.0
	if way.low && c.Drawings == "" {
		id.size, tall = 32, 14.8
	}
	name := s.safe(c.ID)
	for id.size > 16 && s.width(name, id) > 58 {
		id.size--
	}
	name = s.clip(name, id, 58)
	x := left + s.width(name, id) + 5
	flag := s.flag(c)
	room := right - x
	if flag != "" {
		room -= s.width(flag, flagStyle) + 9
	}
	system := style{size: 15, bold: true}
	where := [][]word{s.oneLine(c.Where, style{size: 9.5}, room)}
	if c.Drawings != "" {
		where = append(where, s.oneLine("drawing "+c.Drawings, style{size: 9.5}, room))
	}
	return part{high: tall, draw: func(y, _ float64) {
		s.line(0.9, 0, left, y+0.6, right, y+0.6)
		s.text(left, y+tall-3.4, name, id)
		s.text(x, y+7.2, s.clip(s.safe(c.System), system, room), system)
		s.put(x, y+8, where)
		if flag != "" {
			w := s.width(flag, flagStyle) + 6
			s.box(right-w, y+3.2, w, 8, 0.3, 0)
			s.text(right-w+3, y+8.7, flag, flagStyle)
		}
	}}
}

// oneLine is a text on one line, shortened if need be.
func (s *sheet) oneLine(text string, f style, room float64) []word {
	return []word{{s.clip(s.safe(text), f, room), f}}
}

var flagStyle = style{size: 12, bold: true, white: true}

// flag is what a reader has to look at: the state and the status.
func (s *sheet) flag(c *card.Card) string {
	var words []string
	for _, w := range []string{c.Flag, c.Status} {
		if w != "" {
			words = append(words, s.safe(w))
		}
	}
	return s.clip(strings.Join(words, ", "), flagStyle, 80)
}

// big are the figures to be read at arm's length: the number at 22 points at
// least.
func (s *sheet) big(c *card.Card, way tight) part {
	tall, size := 17.0, 30.0
	if way.low {
		tall, size = 14.5, 25
	}
	return part{high: tall, draw: func(y, _ float64) {
		w := wide / float64(max(1, len(c.Big)))
		for i, f := range c.Big {
			x := left + w*float64(i)
			s.box(x, y, w, tall-1, 0.5, 255)
			s.text(x+2, y+3.8, s.safe(f.Name), style{size: 8.5})
			number, unit, _ := strings.Cut(s.safe(f.Value), " ")
			large, small := style{size: size, bold: true}, style{size: 14, bold: true}
			for large.size > 22 && s.width(number, large)+s.width(" "+unit, small) > w-4 {
				large.size--
			}
			for small.size > 8.5 && s.width(number, large)+s.width(" "+unit, small) > w-4 {
				small.size -= 0.5
			}
			s.text(x+2, y+tall-3.2, number, large)
			s.text(x+2+s.width(number, large)+s.width(" ", small), y+tall-3.2, s.clip(unit, small, w-4-s.width(number, large)), small)
		}
	}}
}

// title heads a part.
func (s *sheet) title(x, y float64, text string) float64 {
	s.text(x, y+3.8, text, titleStyle)
	return y + titleHigh
}

var titleStyle = style{size: 10, bold: true}

const titleHigh = 4.9

// sentence is a text with what comes before its colon in bold.
func (s *sheet) sentence(text string, size float64) []word {
	lead, rest, ok := strings.Cut(text, ": ")
	if !ok {
		return s.words(text, style{size: size})
	}
	return append(s.words(lead+":", style{size: size, bold: true}), s.words(rest, style{size: size})...)
}

// means says what a reading means, beside the facts of the section; of the ways
// to share the width the one that is least high.
func (s *sheet) means(c *card.Card, way tight) part {
	const gap = 6.0
	var says, facts [][]word
	reads := 0.0
	for w := 88.0; w <= 120; w += 8 {
		a, b := s.says(c, way, w), s.facts(c, way, wide-w-gap)
		if reads == 0 || max(deep(a), deep(b)) < max(deep(says), deep(facts))-0.1 {
			says, facts, reads = a, b, w
		}
	}
	high := titleHigh + max(deep(says), deep(facts))
	return part{high: high + 1, draw: func(y, _ float64) {
		s.put(left, s.title(left, y, "What a reading means"), says)
		s.put(left+reads+gap, s.title(left+reads+gap, y, "The section"), facts)
		s.line(0.2, 0, left+reads+gap/2, y+1.5, left+reads+gap/2, y+high)
	}}
}

// says are the readings in so much width.
func (s *sheet) says(c *card.Card, way tight, width float64) [][]word {
	var out [][]word
	most := len(c.Readings)
	if way.list > 0 {
		most = min(most, way.list)
	}
	for _, t := range c.Readings[:most] {
		out = append(out, s.lines(s.sentence(t, way.reads), width, 4)...)
	}
	if rest := len(c.Readings) - most; rest > 0 {
		out = append(out, s.words(fmt.Sprintf("%d more, listed in plan.xlsx.", rest), style{size: way.reads}))
	}
	return out
}

// facts are the section's in so much width, but for those in the heading and
// those that are long.
func (s *sheet) facts(c *card.Card, way tight, width float64) [][]word {
	var out [][]word
	for _, f := range slices.Concat(c.Facts, c.Site) {
		if !elsewhere(f) && !s.long(f, way) {
			out = append(out, s.lines(s.fact(f, way.body), width, 0)...)
		}
	}
	if most := way.list; most > 0 && len(out) > most {
		out = out[:most]
	}
	return out
}

func (s *sheet) fact(f card.Fact, size float64) []word {
	return append(s.words(f.Name, style{size: size, grey: true}), s.words(f.Value, style{size: size})...)
}

// elsewhere says whether a fact stands in the heading or with the blanks.
func elsewhere(f card.Fact) bool {
	return f.Name == card.Drawings || f.Name == card.RigAt || f.Name == card.TapAt
}

// long says whether a fact needs the whole width.
func (s *sheet) long(f card.Fact, way tight) bool {
	return s.width(s.safe(f.Name+" "+f.Value), style{size: way.body}) > 90
}

// notes are why the rig can't judge the section and the cures, then what is to
// be known about it.
func (s *sheet) notes(c *card.Card, way tight) []part {
	var list []part
	add := func(head string, text []word) {
		if len(text) == 0 {
			return
		}
		words := append(s.words(head, style{size: way.body, bold: true}), text...)
		lines := s.lines(words, wide-5, way.words)
		list = append(list, part{high: deep(lines) + 1.6, draw: func(y, high float64) {
			s.line(1.2, 0, left+0.8, y+0.6, left+0.8, y+high-0.4)
			s.put(left+4, y, lines)
		}})
	}
	var trouble, notes []word
	for _, t := range c.Trouble {
		if cure, ok := strings.CutPrefix(t, card.Cure); ok {
			trouble, t = append(trouble, s.words("Cure:", style{size: way.body, bold: true})...), cure
		}
		trouble = append(trouble, s.words(strings.TrimSuffix(t, ".")+".", style{size: way.body})...)
	}
	for _, f := range slices.Concat(c.Facts, c.Site) {
		if elsewhere(f) || !s.long(f, way) {
			continue
		}
		notes = append(notes, s.words(upper(f.Name)+":", style{size: way.body, grey: true})...)
		notes = append(notes, s.words(strings.TrimSuffix(f.Value, ".")+".", style{size: way.body})...)
	}
	for _, t := range c.Notes {
		notes = append(notes, s.words(strings.TrimSuffix(t, ".")+".", style{size: way.body})...)
	}
	add("The rig can't judge it:", trouble)
	add("Note:", notes)
	return list
}

// perLine is more bytes than any line of pieces holds.
const perLine = 700

// pieces names the section's pieces, as many as there is room for: long tags are
// set smaller and shortened in their middle, as in the drawing, before any is left
// out.
func (s *sheet) pieces(c *card.Card, way tight) part {
	var lines [][]word
	for _, letters := range []int{40, 22, 15, 12} {
		f, names := style{size: min(way.body, 7.5)}, make([]string, len(c.PieceList))
		if letters == 40 {
			f.size = way.body
		}
		for i, name := range c.PieceList {
			names[i] = short(name, letters)
		}
		lead := s.words(fmt.Sprintf("Pieces (%d):", len(names)), style{size: way.body, bold: true})
		set := func(text string) [][]word {
			return s.lines(append(slices.Clone(lead), s.words(text, f)...), wide, 0)
		}
		fits := func(text string) bool { return len(text) < perLine*way.pieces && len(set(text)) <= way.pieces }
		lines = set(card.Listed(names, fits))
		if fits(strings.Join(names, ", ")) {
			break
		}
	}
	if len(lines) > way.pieces {
		lines = lines[:way.pieces]
		lines[way.pieces-1] = s.dotted(lines[way.pieces-1], wide)
	}
	return part{high: deep(lines) + 1.5, draw: func(y, _ float64) { s.put(left, y, lines) }}
}
