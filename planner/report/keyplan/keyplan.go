// Package keyplan makes the small drawing of a section and its neighbours that
// stands on the section's card: black and grey, fitted into a frame along and
// across apart from each other, since it isn't to scale, while what is written
// stays as large as it has to be. The numbers of the blanks, the rig and the
// tapping come first, beside their place or at the end of a leader; tags give way.
// It works out places only; a pen of the writer draws.
package keyplan

import (
	"fmt"
	"math"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/card"
	"blankoff/planner/report/schematic"
)

// Type is how a text is set: its size in points.
type Type struct {
	Size              float64
	Bold, Grey, White bool
}

// Pen draws on paper or on a screen. Lengths are in mm from the upper left corner
// of the frame, greys from 0, black, to 255, white.
type Pen interface {
	Line(weight float64, grey int, points ...float64)
	Box(x, y, w, h, weight float64, fill int)
	Text(x, y float64, text string, f Type) // its left end and its foot
	Width(text string, f Type) float64
	Safe(text string) string // as it can be set
}

// Drawing is a section with its neighbours, to be fitted into a frame.
type Drawing struct {
	d       *report.Ductwork
	pic     *schematic.Picture
	section int
	ids     []string          // of all sections
	numbers map[string]string // of the blanks, by where they are
	x0, x1  float64           // of the picture
	y0, y1  float64
}

// Missing is what had no room.
type Missing struct {
	Numbers  []string // of blanks
	Levels   []string
	Sections []string // neighbours
	Tags     int      // pieces of the section
}

// Text names what is missing; empty where nothing is.
func (m *Missing) Text() string {
	var out []string
	add := func(one, more string, list []string) {
		switch n := len(list); {
		case n == 1:
			out = append(out, one+" "+list[0])
		case n > mostNamed:
			out = append(out, fmt.Sprintf("%s %s and %d more", more, strings.Join(list[:mostNamed-1], ", "), n-mostNamed+1))
		case n > 0:
			out = append(out, more+" "+strings.Join(list, ", "))
		}
	}
	add("number", "numbers", m.Numbers)
	add("level", "levels", m.Levels)
	add("section", "sections", m.Sections)
	switch {
	case m.Tags == 1:
		out = append(out, "a tag")
	case m.Tags > 1:
		out = append(out, fmt.Sprintf("%d tags", m.Tags))
	}
	if len(out) == 0 {
		return ""
	}
	return "No room for: " + strings.Join(out, "; ") + "."
}

// mostNamed is how many of a kind are named as missing.
const mostNamed = 24

// Legend says how to read a drawing.
const Legend = "Not to scale. Black: this section; grey: neighbours. Two bars: cut; one: end of the test; square: open end; numbers: blanks."

// Of a drawing, mm for each unit of the picture: at most, and of the weights.
const mostAlong, mostAcross, perWeight = 0.42, 0.26, 0.15

// margins of a drawing within its frame, mm.
const over, under, beside = 4.5, 3.0, 5.0

// most is the height that no drawing needs more than, mm.
const most = 84.0

// closest is how near rows may lie to each other, mm. An assumption: looked at.
const closest = 2.0

const mmPerPoint = 25.4 / 72

var (
	tagType    = Type{Size: 7.5}
	levelType  = Type{Size: 8}
	numberType = Type{Size: 8.5, Bold: true}
)

// Of lays out a section with its neighbours; nil where there is nothing to draw,
// or where nobody knows how its rows hang together.
func Of(v *report.Plan, i int, c *card.Card) *Drawing {
	if v.Drawing == nil || c.Grouping {
		return nil
	}
	d := &Drawing{d: v.Drawing, pic: schematic.Small(v, i), section: i, numbers: map[string]string{}}
	if len(d.pic.Pieces) == 0 {
		return nil
	}
	for k := range v.Sections {
		d.ids = append(d.ids, v.Sections[k].ID)
	}
	for k := range c.EveryBlank {
		b := &c.EveryBlank[k]
		if d.numbers[b.At] != "" { // both sides of a cut
			d.numbers[b.At] += ", "
		}
		d.numbers[b.At] += b.Number
		if b.Rig {
			d.numbers[b.At] += " rig"
		}
		if b.Tap {
			d.numbers[b.At] += " tapping"
		}
	}
	d.measure()
	return d
}

// measure finds how far the picture reaches, without the space for names.
func (d *Drawing) measure() {
	d.x0, d.x1 = math.Inf(1), 0
	for i := range d.pic.Pieces {
		for _, p := range d.pic.Pieces[i].Path {
			d.x0, d.x1 = min(d.x0, p.X), max(d.x1, p.X)
		}
	}
	d.y0, d.y1 = 0, d.pic.Height
	if len(d.pic.Systems) == 1 && len(d.pic.Bands) > 0 {
		d.y0, d.y1 = d.pic.Bands[0].Top, d.pic.Bands[len(d.pic.Bands)-1].Bottom
	}
}

// High is the height that the drawing would like, mm.
func (d *Drawing) High() float64 { return min(most, mostAcross*(d.y1-d.y0)+over+under) }

// Least is the height below which its runs lie too close to be followed, mm; not
// more than half of what the card has to hold besides.
func (d *Drawing) Least() float64 { return min(44, over+under+closest*(d.y1-d.y0)/44) }

// Draw puts the drawing into a frame, and says what had no room.
func (d *Drawing) Draw(pen Pen, wide, high float64) Missing {
	c := &canvas{Pen: pen, Drawing: d, wide: wide, high: high}
	c.gutter = c.levelWidth()
	c.along = min(mostAlong, (wide-c.gutter-2*beside)/max(1, d.x1-d.x0))
	c.across = min(mostAcross, (high-over-under)/max(1, d.y1-d.y0))
	c.bands()
	c.runs()
	c.marks()
	c.ends()
	c.blanks()
	c.names()
	return c.missing
}
