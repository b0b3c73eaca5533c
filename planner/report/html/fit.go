package html

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"blankoff/planner/report/card"
)

// densities are the sizes in which a card is printed: of the letters, pt; and in
// mm what doesn't change, a line, and what a row of the blanks has around its
// lines.
var densities = []struct {
	class                   string
	size, fixed, line, rule float64
}{{"", 8.6, 133, 3.9, 1}, {"dense", 7.9, 118, 3.4, 1}, {"tight", 6.9, 96, 2.85, 0.9}}

// fit says how small a card is printed so that it stays on its page, by about
// how many lines it has, and what height is left for the drawing, mm, the least
// that it should have. A page has
// 270 mm. What is too long even for the smallest letters is shortened, and says
// where all of it is.
func (c *cardView) fit(least float64) (left float64) {
	for i := range densities {
		if left = c.room(i); left >= least {
			return left
		}
	}
	for _, shorten := range []func(){c.fewerPieces, c.fewerBlanks, c.shorten} {
		if left >= sketchBare {
			break
		}
		shorten()
		left = c.room(len(densities) - 1)
	}
	return left
}

func (c *cardView) fewerPieces() {
	c.Pieces = card.Listed(c.PieceList, func(text string) bool { return utf8.RuneCountInString(text) <= 300 })
}

func (c *cardView) fewerBlanks() {
	for i := range c.Blanks {
		if b := &c.Blanks[i]; len(b.Each) > 6 {
			b.Each = append(b.Each[:5:5], fmt.Sprintf("and %d more, listed in plan.xlsx", len(b.Each)-5))
		}
	}
}

func (c *cardView) shorten() {
	c.Trouble, c.Notes, c.Pieces = short(c.Trouble, 4), short(c.Notes, 2), middle(c.Pieces, 400)
	for i := range c.Blanks {
		b := &c.Blanks[i]
		b.At, b.Where = middle(b.At, 56), middle(b.Where, 48)
	}
	for _, list := range [][]card.Fact{c.Site, c.Facts, c.Job, c.Head} {
		for i := range list {
			list[i].Value = middle(list[i].Value, 90)
		}
	}
	c.Where, c.System = middle(c.Where, 120), middle(c.System, 60)
}

// room is about what height a density leaves for the drawing, with some air for letters
// wider than these.
func (c *cardView) room(density int) float64 {
	const sketch = 18 // what fixed counts for the drawing
	d := densities[density]
	c.Density = d.class
	return 262 + sketch - d.fixed - d.line*lines(c, d.size) - d.rule*float64(len(c.Blanks))
}

// short keeps the first of a list.
func short(list []string, most int) []string {
	if len(list) <= most {
		return list
	}
	return append(list[:most-1:most-1], "and more, in plan.xlsx")
}

// middle leaves the middle of a long text out.
func middle(text string, most int) string {
	r := []rune(text)
	if len(r) <= most {
		return text
	}
	return string(r[:most/2]) + " ... " + string(r[len(r)-most/2+5:])
}

// lines is about how many lines a card's text takes in letters of a size.
func lines(c *cardView, size float64) float64 {
	const pageWide, letterWide = 186.0, 0.182 // mm; mm per pt of size
	of := func(text string, share float64) float64 {
		return max(1, math.Ceil(float64(utf8.RuneCountInString(text))*letterWide*size/(pageWide*share)))
	}
	n := 1.0
	width := 0
	for _, f := range append(c.Job, c.Head...) {
		width += utf8.RuneCountInString(f.Name+f.Value) + 4
	}
	n += math.Ceil(float64(width) * letterWide * size / pageWide)
	for _, t := range append(c.Readings, c.Trouble...) {
		n += 1.1 * of(t, 1)
	}
	for _, f := range c.Facts {
		n += of(f.Name+" "+f.Value, 0.5) / 2
	}
	for _, f := range c.Site {
		n += of(f.Name+" "+f.Value, 1)
	}
	for _, t := range c.Notes {
		n += of(t, 1)
	}
	n += of(c.Pieces, 0.97)
	for _, b := range c.Blanks {
		mark := ""
		if b.Rig || b.Tap {
			mark = " (tapping)"
		}
		n += max(of(b.At+mark, 0.205), of(b.Where, 0.187), of(b.Fixing, 0.177))
		if len(b.Each) > 0 {
			n += of(strings.Join(b.Each, "......"), 0.94) // a box before each
		}
	}
	for _, t := range c.Checks {
		n += of(t, 0.47) / 2
	}
	for _, t := range c.Cautions {
		n += of(t, 0.9)
	}
	n += 1 + of(c.Legend(), 1) // what had no room stands before the legend
	return n
}
