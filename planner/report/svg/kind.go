// Package svg writes drawings as self-contained SVG files: black lines on white,
// text in a generic letter, no script and nothing from elsewhere, so that they
// print in grey and open in any browser.
package svg

import (
	"bufio"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/planner/report/sketch"
)

// The page, px.
const (
	pageWidth = 760.0
	margin    = 24.0
	between   = 40.0 // two figures
	lineHigh  = 18.0
)

// Kind writes the drawing of one kind in one style (NoStyle: the kind's default)
// with a legend of its letters. A style that the kind doesn't have is an error.
func Kind(w io.Writer, k fittings.KindInfo, style fittings.Style) error {
	d, ok := sketch.Of(k.Kind, style)
	if !ok {
		return fmt.Errorf("there is no drawing of %s in style %q", k.Name, style)
	}
	p := &page{y: margin}
	p.text(margin, p.y+14, 16, "start", bold, d.Name())
	p.y += 34
	p.flow(slices.Concat(d.Views, d.Sections))
	p.legend(&d)
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, `<svg xmlns="http://www.w3.org/2000/svg" width="%s" height="%s" viewBox="0 0 %s %s" role="img" aria-labelledby="title desc" font-family="sans-serif">`+"\n",
		px(pageWidth), px(p.y), px(pageWidth), px(p.y))
	fmt.Fprintf(b, "<title id=\"title\">%s</title>\n<desc id=\"desc\">%s</desc>\n", escape(d.Name()), escape(describe(k, &d)))
	fmt.Fprintf(b, "<rect width=\"%s\" height=\"%s\" fill=\"white\"/>\n", px(pageWidth), px(p.y))
	b.WriteString(p.body.String())
	b.WriteString("</svg>\n")
	return b.Flush()
}

// describe is the drawing in words, for a reader who can't see it.
func describe(k fittings.KindInfo, d *sketch.Drawing) string {
	words := make([]string, 0, len(d.Legend)+1)
	for _, m := range d.Legend {
		words = append(words, m.Letter+" is "+meaning(m))
	}
	views := make([]string, 0, len(d.Views))
	for i := range d.Views {
		views = append(views, d.Views[i].Caption)
	}
	return k.Doc + " Views: " + strings.Join(views, "; ") + ". Letters: " + strings.Join(words, "; ") + "."
}

func meaning(m sketch.Mark) string {
	text := strings.Join(m.Headings, " or ")
	if m.Note != "" {
		text += " (" + m.Note + ")"
	}
	return text
}

// page is a sheet that is filled from the top.
type page struct {
	body strings.Builder
	y    float64
}

// flow sets figures side by side, in rows.
func (p *page) flow(figures []sketch.Figure) {
	for len(figures) > 0 {
		n, wide := 0, -between
		for n < len(figures) {
			more := figureWidth(&figures[n]) + between
			if n > 0 && wide+more > pageWidth-2*margin {
				break
			}
			wide, n = wide+more, n+1
		}
		p.row(figures[:n])
		figures = figures[n:]
	}
}

func figureWidth(f *sketch.Figure) float64 {
	least, most := f.Bounds()
	return math.Max(most.X-least.X, sketch.TextWidth(f.Caption, sketch.WordSize))
}

// row sets figures side by side, each under its caption.
func (p *page) row(figures []sketch.Figure) {
	high, x := 0.0, margin
	for i := range figures {
		least, most := figures[i].Bounds()
		high = math.Max(high, most.Y-least.Y)
	}
	for i := range figures {
		f := &figures[i]
		least, _ := f.Bounds()
		p.text(x, p.y+10, sketch.WordSize, "start", "", f.Caption)
		p.figure(f, x-least.X, p.y+22-least.Y)
		x += figureWidth(f) + between
	}
	p.y += 22 + high + 26
}

// styles of the weights.
var styles = [...]string{
	sketch.Outline: `stroke-width="1.8"`,
	sketch.Thin:    `stroke-width="0.7"`,
	sketch.Axis:    `stroke-width="0.7" stroke-dasharray="12 3 2 3"`,
	sketch.Hidden:  `stroke-width="1" stroke-dasharray="5 3"`,
}

// figure draws a figure moved by x and y.
func (p *page) figure(f *sketch.Figure, x, y float64) {
	p.body.WriteString(`<g fill="none" stroke="black" stroke-linejoin="round" stroke-linecap="round">` + "\n")
	for _, l := range f.Lines {
		fmt.Fprintf(&p.body, "<path d=\"%s\" %s/>\n", linePath(l, x, y), styles[l.Weight])
	}
	for _, a := range f.Arcs {
		if a.Sweep == 360 {
			fmt.Fprintf(&p.body, "<circle cx=\"%s\" cy=\"%s\" r=\"%s\" %s/>\n", px(a.Centre.X+x), px(a.Centre.Y+y), px(a.R), styles[a.Weight])
			continue
		}
		fmt.Fprintf(&p.body, "<path d=\"%s\" %s/>\n", arcPath(a, x, y), styles[a.Weight])
	}
	p.body.WriteString("</g>\n")
	for _, a := range f.Arrows {
		fmt.Fprintf(&p.body, "<path d=\"%s\"/>\n", linePath(sketch.Line{Points: a.Corners(), Closed: true}, x, y))
	}
	for _, l := range f.Labels {
		p.text(l.At.X+x, l.At.Y+y+l.Size()*0.33, l.Size(), "middle", face(l.Dim), l.Text)
	}
}

func linePath(l sketch.Line, x, y float64) string {
	var b strings.Builder
	for i, q := range l.Points {
		b.WriteString([]string{"L", "M"}[min(1, max(0, 1-i))])
		b.WriteString(px(q.X+x) + " " + px(q.Y+y))
	}
	if l.Closed {
		b.WriteString("Z")
	}
	return b.String()
}

func arcPath(a sketch.Arc, x, y float64) string {
	points := a.Points()
	from, to := points[0], points[len(points)-1]
	large, clockwise := 0, 0
	if math.Abs(a.Sweep) > 180 {
		large = 1
	}
	if a.Sweep < 0 {
		clockwise = 1
	}
	return fmt.Sprintf("M%s %sA%s %s 0 %d %d %s %s", px(from.X+x), px(from.Y+y), px(a.R), px(a.R), large, clockwise, px(to.X+x), px(to.Y+y))
}

// legend lists the letters, the columns they stand for and the sizes drawn.
func (p *page) legend(d *sketch.Drawing) {
	columns := [...]float64{margin, margin + 56, margin + 340}
	head := func(i int, text string) { p.text(columns[i], p.y+12, sketch.WordSize, "start", "", text) }
	head(0, "letter")
	head(1, "column")
	head(2, "as drawn, and note")
	p.y += lineHigh
	fmt.Fprintf(&p.body, "<path d=\"M%s %sL%s %s\" stroke=\"black\" stroke-width=\"0.7\"/>\n", px(margin), px(p.y), px(pageWidth-margin), px(p.y))
	for _, m := range d.Legend {
		p.text(columns[0], p.y+14, sketch.LetterSize, "start", letterFace, m.Letter)
		p.text(columns[1], p.y+14, 12, "start", "", strings.Join(m.Headings, " or "))
		p.text(columns[2], p.y+14, 12, "start", "", strings.TrimPrefix(strings.Join([]string{m.Drawn, m.Note}, "; "), "; "))
		p.y += lineHigh
	}
	p.y += margin
}

// Faces of text. Letters are in a serif italic, so that an l is one.
const (
	bold       = ` font-weight="bold"`
	letterFace = ` font-family="serif" font-style="italic" font-weight="bold"`
)

func face(letter bool) string {
	if letter {
		return letterFace
	}
	return ""
}

func (p *page) text(x, y, size float64, anchor, face, text string) {
	text = strings.TrimSuffix(text, "; ")
	if text == "" {
		return
	}
	if anchor != "start" {
		face += ` text-anchor="` + anchor + `"`
	}
	fmt.Fprintf(&p.body, "<text x=\"%s\" y=\"%s\" font-size=\"%s\"%s>%s</text>\n", px(x), px(y), px(size), face, escape(text))
}

func escape(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s)) // a Builder takes everything
	return b.String()
}

// px prints a length to a hundredth.
func px(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100+0, 'f', -1, 64)
}
