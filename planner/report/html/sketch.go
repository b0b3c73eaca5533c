package html

import (
	"fmt"
	"html/template"
	"math"
	"strings"
	"unicode"

	"blankoff/planner/report/keyplan"
	"blankoff/planner/report/show"
)

// A card's drawing is as wide as the page's text, mm. Before it gets lower than
// sketchLeast the card's letters are made smaller, and before it gets lower than
// sketchBare its text shorter.
const sketchWide, sketchLeast, sketchBare = 186.0, 30.0, 14.0

// sketch writes a card's drawing as SVG in mm, so that in print its letters are as
// large as they are meant to be, and on a screen larger.
type sketch struct{ strings.Builder }

func (s *sketch) add(format string, args ...any) { fmt.Fprintf(s, format, args...) }

// hundredth writes mm with two decimals at most.
func hundredth(x float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", x), "0"), ".")
}

// grey is a colour from 0, black, to 255.
func grey(g int) string { return fmt.Sprintf("#%02x%02x%02x", g, g, g) }

// Line and the others draw.
func (s *sketch) Line(weight float64, g int, points ...float64) {
	var b strings.Builder
	for i := 0; i+1 < len(points); i += 2 {
		fmt.Fprintf(&b, "%c%s %s", "ML"[min(i, 1)], hundredth(points[i]), hundredth(points[i+1]))
	}
	s.add(`<path d="%s" stroke="%s" stroke-width="%s"/>`, b.String(), grey(g), hundredth(weight))
}

func (s *sketch) Box(x, y, w, h, weight float64, fill int) {
	s.add(`<rect x="%s" y="%s" width="%s" height="%s" stroke="#000" stroke-width="%s" fill="%s"/>`, hundredth(x), hundredth(y), hundredth(w), hundredth(h), hundredth(weight), grey(fill))
}

func (s *sketch) Text(x, y float64, text string, f keyplan.Type) {
	g := 0
	switch {
	case f.White:
		g = 255
	case f.Grey:
		g = 80
	}
	weight := ""
	if f.Bold {
		weight = ` font-weight="700"`
	}
	s.add(`<text x="%s" y="%s" font-size="%s" fill="%s"%s>%s</text>`, hundredth(x), hundredth(y), hundredth(f.Size*25.4/72), grey(g), weight, esc(text))
}

// Width is about that of a text in the usual fonts without serifs, rather too
// wide: the reader's font isn't known.
func (s *sketch) Width(text string, f keyplan.Type) float64 {
	ems := 0.0
	for _, r := range text {
		switch {
		case strings.ContainsRune("ijlI.,:;'|!()[]/ ftr-", r):
			ems += 0.36
		case strings.ContainsRune("mwMW@%…", r):
			ems += 0.94
		case r >= 0x2e80:
			ems++
		case unicode.IsUpper(r):
			ems += 0.71
		default:
			ems += 0.58
		}
	}
	if f.Bold {
		ems *= 1.06
	}
	return ems * f.Size * 25.4 / 72
}

// Safe is a text without what steers a screen.
func (s *sketch) Safe(text string) string { return show.Safe(text) }

// draw puts the section's drawing on its card, as high as there is room for.
func (c *cardView) draw(d *keyplan.Drawing) {
	if d == nil {
		c.fit(0)
		return
	}
	room := c.fit(min(d.High(), sketchLeast))
	c.High = math.Round(min(d.High(), max(room, sketchBare)))
	var s sketch
	m := d.Draw(&s, sketchWide, c.High)
	c.Missing = m.Text()
	c.Drawing = template.HTML(fmt.Sprintf(`<svg viewBox="0 0 %g %g" role="img" aria-label="schematic of section %s and its neighbours">%s</svg>`,
		sketchWide, c.High, esc(c.ID), s.String()))
}
