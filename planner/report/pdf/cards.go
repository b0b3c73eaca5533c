// Package pdf writes the section cards for paper: A4 upright, one page a section
// whatever is on it, black and grey only, the three figures large enough to be
// read at arm's length, boxes to write and tick in. The words are those of
// package card. The same view gives the same bytes.
package pdf

import (
	"io"

	"blankoff/planner/report"
	"blankoff/planner/report/card"
	"blankoff/planner/report/keyplan"
)

// Cards writes the cards of a plan, in the order of its sections.
func Cards(w io.Writer, v *report.Plan) error {
	s, err := newSheet(title(v))
	if err != nil {
		return err
	}
	return s.cards(w, v)
}

func title(v *report.Plan) string {
	return "Ductwork leakage test: section cards of " + v.Schedule.File
}

func (s *sheet) cards(w io.Writer, v *report.Plan) error {
	list := card.All(v)
	for i := range list {
		s.card(v, list[i].Section, &list[i])
	}
	if len(list) == 0 {
		s.page("no sections")
		text := "The plan has no section to test."
		if why := v.Nothing(); why != "" {
			text += " " + upper(why) + "."
		}
		s.put(left, top, s.lines(s.words(s.safe(text), style{size: 14}), wide, 0))
	}
	return s.pdf.Output(w)
}

// tight says how much room the parts of a card take.
type tight struct {
	body    float64 // size of the text, points
	reads   float64 // of what the readings mean
	drawing float64 // the least height of the drawing, mm
	pen     float64 // of a line to write in, mm
	gap     float64 // between boxes to tick, mm
	pieces  int     // lines
	words   int     // lines of what the rig can't judge, and of notes
	tags    int     // lines of where a blank is in the ductwork, 0: all; its tags are shortened
	places  int     // lines of one place on site, 0: all
	list    int     // readings and facts, 0: all
	low     bool    // the heading and the three figures are lower
	dense   bool    // the drawing may be so low that runs are hard to follow
	cut     bool    // blanks are grouped, and then left out, until there is room
}

// ways are tried in this order until all is on one page: first less air, smaller
// letters and a lower drawing, shorter tags, then fewer
// pieces, and only then shorter places.
var ways = []tight{
	{body: 9.5, reads: 11, drawing: 56, pen: 9, gap: 1.2, pieces: 5, words: 20},
	{body: 9, reads: 10.5, drawing: 46, pen: 8.5, gap: 1, pieces: 4, words: 20},
	{body: 9, reads: 10, drawing: 40, pen: 8, gap: 0.8, pieces: 4, words: 20, tags: 3},
	{body: 8.5, reads: 9.5, drawing: 36, pen: 8, gap: 0.8, pieces: 4, words: 20, tags: 3},
	{body: 8.5, reads: 9, drawing: 30, pen: 7.5, gap: 0.6, pieces: 4, words: 20, tags: 2},
	{body: 8.5, reads: 8.5, drawing: 30, pen: 7, gap: 0.4, pieces: 4, words: 20, tags: 2, low: true},
	{body: 8.5, reads: 8.5, drawing: 26, pen: 7, gap: 0.4, pieces: 3, words: 14, tags: 2, low: true},
	{body: 8.5, reads: 8.5, drawing: 23, pen: 7, gap: 0.4, pieces: 1, words: 10, tags: 2, low: true, dense: true},
	{body: 8.5, reads: 8.5, drawing: 23, pen: 7, gap: 0.4, pieces: 1, words: 8, tags: 2, places: 3, low: true, dense: true},
	{body: 8.5, reads: 8.5, drawing: 23, pen: 7, gap: 0.4, pieces: 1, words: 8, tags: 2, places: 2, low: true, dense: true},
	{body: 8.5, reads: 8.5, drawing: 23, pen: 7, gap: 0.4, pieces: 1, words: 8, tags: 2, places: 2, low: true, dense: true, list: 14, cut: true},
}

// part is a piece of a page: its height, and what draws it below y in as much
// height as it is given.
type part struct {
	high float64
	draw func(y, high float64)
	grow float64 // how much higher it would like to be
}

// card writes the page of a section.
func (s *sheet) card(v *report.Plan, i int, c *card.Card) {
	name := c.ID
	if c.System != "" {
		name += " " + c.System
	}
	s.page(name)
	d := keyplan.Of(v, i, c)
	room := bottom - top - style{size: 8.5}.high() - 1
	parts := s.fit(c, d, room)
	s.spread(parts, room-high(parts))
	y := top
	for _, p := range parts {
		p.draw(y, p.high)
		y += p.high
	}
	s.foot(c)
}

// fit finds the first way in which a card is on one page, and names as many
// pieces as then have room.
func (s *sheet) fit(c *card.Card, d *keyplan.Drawing, room float64) []part {
	var parts []part
	for _, way := range ways {
		if parts = s.parts(c, d, way, room); high(parts) > room {
			continue
		}
		if d != nil && way.dense {
			room -= max(0, min(d.Least(), d.High())-way.drawing) // before pieces are named
		}
		for way.pieces++; way.pieces <= 10 && !way.cut; way.pieces++ {
			more := s.parts(c, d, way, room)
			if h := high(more); h > room || h == high(parts) {
				break
			}
			parts = more
		}
		break
	}
	return parts
}

func high(parts []part) float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p.high
	}
	return sum
}

// spread gives the room that is left to the parts that would like it, in order.
func (s *sheet) spread(parts []part, rest float64) {
	for i := range parts {
		more := min(max(0, rest), parts[i].grow)
		parts[i].high += more
		rest -= more
	}
}

// parts are those of a card from the top down.
func (s *sheet) parts(c *card.Card, d *keyplan.Drawing, way tight, room float64) []part {
	list := []part{s.job(c), s.head(c, way), s.big(c, way), s.means(c, way)}
	list = append(list, s.notes(c, way)...)
	if d != nil {
		list = append(list, s.picture(d, way))
	}
	list = append(list, s.pieces(c, way))
	below := []part{s.checks(c, way), s.cautions(c, way), s.readings(c, way), s.boxes(c.Kit, 1.3*way.pen), s.boxes(c.Signs, 1.25*way.pen), s.remarks()}
	list = append(list, s.blanks(c, way, room-high(list)-high(below)))
	return append(list, below...)
}

// foot says what the page was made from and which one it is.
func (s *sheet) foot(c *card.Card) {
	f := style{size: 8.5, grey: true}
	page := cardOf(c)
	text := s.safe(c.Foot)
	if s.lacked {
		text = "? is a letter that can't be printed. " + text
	}
	s.text(left, bottom-0.8, s.clip(text, f, wide-s.width(page, f)-6), f)
	s.toRight(right, bottom-0.8, page, f)
}
