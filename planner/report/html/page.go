// Package html renders a plan as one page that needs nothing else: no network,
// no script from elsewhere. It shows the ductwork as a schematic, lets other cuts
// be tried on it, plots every section in the rig's window, and prints with one
// card a page. Text of the schedule can't become markup: it goes through
// html/template or is escaped where the drawing is written.
package html

import (
	"crypto/sha256"
	_ "embed" // the page's parts
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
	"math"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/card"
	"blankoff/planner/report/schematic"
	"blankoff/planner/report/show"
)

//go:embed page.html
var pageText string

//go:embed page.css
var pageStyle string

//go:embed page.js
var pageScript string

var page = template.Must(template.New("page").Funcs(template.FuncMap{
	"limit": show.Limit, "state": show.State, "flag": show.Flag, "count": show.Count, "safe": show.Safe,
	"whole": func(x float64) string { return fmt.Sprintf("%.0f", show.Whole(x)) },
	"m2":    func(x float64) string { return fmt.Sprintf("%.2f", x) },
	"about": func(s *report.Section) string { return about(s) },
	"join":  func(l []string) string { return strings.Join(l, ", ") },
	"hours": hours, "cutno": func(i int) int { return i + 1 },
}).Parse(pageText))

// view is what the page's text is filled from.
type view struct {
	Plan    *report.Plan
	Title   string
	Policy  string // what the page may load: nothing
	Style   template.CSS
	Script  template.JS
	Data    *data
	Drawing template.HTML
	Sheets  []template.HTML // the drawing again, cut up to be printed
	Width   string
	Height  string
	Looks   []template.HTML // by section
	Plot    plot
	Sizes   []show.Size
	All     show.Size
	Cards   []cardView
	Faults  []show.Faults
	Bad     []*report.Section
	Group   string
}

type cardView struct {
	card.Card
	Drawing template.HTML
}

// Plan writes the page. The same view gives the same bytes.
func Plan(w io.Writer, v *report.Plan) error {
	pic := schematic.Of(v.Drawing, nil)
	looks := schematic.Looks(v)
	o := view{
		Plan: v, Title: "Ductwork leakage test plan", Style: template.CSS(pageStyle), Script: template.JS(pageScript),
		Data: dataOf(v, pic, looks), Width: num(pic.Width), Height: num(pic.Height), Plot: plotOf(v),
		Sizes: show.BySize(v.Sections), Faults: show.Gather(v.Faults), Group: show.Groupings(v),
	}
	o.Policy = fmt.Sprintf("default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-%s'", hash(pageScript))
	o.All = show.AllSizes(o.Sizes)
	c := canvas{v: v, pic: pic, looks: looks, focus: -1}
	o.Drawing = c.whole()
	o.Sheets = sheets(pic)
	for i := range looks {
		o.Looks = append(o.Looks, sample(looks[i]))
	}
	for i := range v.Sections {
		if s := &v.Sections[i]; s.UnderRange || s.OverRange {
			o.Bad = append(o.Bad, s)
		}
	}
	for i, one := range card.All(v) {
		o.Cards = append(o.Cards, cardView{one, cardDrawing(v, i)})
	}
	return page.Execute(w, &o)
}

// hash is that of a script as the page's policy names it.
func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return base64.StdEncoding.EncodeToString(sum[:])
}

func (c *canvas) whole() template.HTML {
	c.bands()
	c.WriteString(`<g id="planned">`)
	c.lines()
	c.marks()
	c.words()
	c.WriteString(`</g>`)
	return template.HTML(c.String())
}

// sample is a short line in a section's look, for lists.
func sample(l schematic.Look) template.HTML {
	var b strings.Builder
	fmt.Fprintf(&b, `<svg class="look" viewBox="0 0 34 10" width="34" height="10" aria-hidden="true"><path d="M0 5H34" stroke="%s" stroke-width="8"/>`, l.Colour)
	if o, ok := over(l.Pattern, 8); ok {
		fmt.Fprintf(&b, `<path d="M0 5H34" stroke="#fff" stroke-width="%s"%s/>`, num(o.width), o.dash)
	}
	b.WriteString("</svg>")
	return template.HTML(b.String())
}

// A printed sheet holds so much of the drawing at full size, A4 on its side.
const sheetWide, sheetHigh = 1020.0, 610.0

// sheets cuts the drawing up for paper: one sheet where it can be read when made
// to fit, else as many as it takes, each overlapping the one before.
func sheets(pic *schematic.Picture) []template.HTML {
	if pic.Width == 0 {
		return nil
	}
	const lap, least = 60.0, 0.62
	if k := min(sheetWide/pic.Width, sheetHigh/pic.Height); k >= least {
		return []template.HTML{sheet(0, 0, pic.Width, pic.Height, "")}
	}
	wide, high := sheetWide/least, sheetHigh/least
	across, down := int(math.Ceil((pic.Width-lap)/(wide-lap))), int(math.Ceil((pic.Height-lap)/(high-lap)))
	across, down = max(across, 1), max(down, 1)
	wide, high = (pic.Width-lap)/float64(across)+lap, (pic.Height-lap)/float64(down)+lap
	var out []template.HTML
	for y := range down {
		for x := range across {
			name := fmt.Sprintf("sheet %d of %d: row %d, column %d", len(out)+1, across*down, y+1, x+1)
			out = append(out, sheet(float64(x)*(wide-lap), float64(y)*(high-lap), wide, high, name))
		}
	}
	return out
}

func sheet(x, y, w, h float64, name string) template.HTML {
	return template.HTML(fmt.Sprintf(`<figure class="sheet"><svg viewBox="%s %s %s %s" role="img" aria-label="schematic %s"><use href="#all"/></svg><figcaption>%s</figcaption></figure>`,
		num(x), num(y), num(w), num(h), name, name))
}

// cardDrawing is a section with its neighbours, black and grey.
func cardDrawing(v *report.Plan, i int) template.HTML {
	pic := schematic.Of(v.Drawing, v.Drawing.Near(i, 2))
	c := canvas{v: v, pic: pic, focus: i}
	c.bands()
	c.lines()
	c.marks()
	c.words()
	return template.HTML(fmt.Sprintf(`<svg class="small" viewBox="0 0 %s %s" role="img" aria-label="schematic of section %s and its neighbours">%s</svg>`,
		num(pic.Width), num(pic.Height), esc(v.Sections[i].ID), c.String()))
}

// about says what a section is tested at.
func about(s *report.Section) string {
	sign := "positive"
	if s.Sign == "negative" {
		sign = "suction"
	}
	return fmt.Sprintf("class %s, %g Pa %s", s.Class, s.TestPa, sign)
}

// hours writes minutes as hours and minutes.
func hours(minutes float64) string {
	m := int(math.Round(minutes))
	if m < 60 {
		return fmt.Sprintf("%d min", m)
	}
	return fmt.Sprintf("%d h %d min", m/60, m%60)
}
