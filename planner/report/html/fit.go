package html

import (
	"math"
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
// how many lines it has; the drawing takes what is left. A page has 270 mm. What
// is too long even for the smallest letters is shortened, and says where all of
// it is.
func (c *cardView) fit() {
	for _, d := range densities {
		c.Density = d.class
		if d.fixed+d.line*lines(c, d.size)+d.rule*float64(len(c.Blanks)) <= 255 { // some air for letters wider than these
			return
		}
	}
	c.Trouble, c.Notes = short(c.Trouble, 4), short(c.Notes, 2)
	c.Pieces = middle(c.Pieces, 300)
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
	const pageWide, letterWide = 186.0, 0.205 // mm; mm per pt of size
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
	}
	for _, t := range c.Checks {
		n += of(t, 0.47) / 2
	}
	for _, t := range c.Cautions {
		n += of(t, 1) * 0.7
	}
	return n
}
