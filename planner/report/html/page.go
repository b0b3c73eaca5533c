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
	"regexp"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/card"
	"blankoff/planner/report/keyplan"
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
	"state": show.State, "flag": show.Flag, "count": show.Count, "many": show.Many, "why": show.Why, "safe": show.Safe, "prose": prose,
	"whole": func(x float64) string { return fmt.Sprintf("%.0f", show.Whole(x)) },
	"m2":    func(x float64) string { return fmt.Sprintf("%.2f", x) },
	"one":   func(x float64) string { return fmt.Sprintf("%.1f", x) },
	"needs": show.Needs, "ways": show.Ways, "worth": show.OrderWorth, "untested": show.UntestedSum,
	"way":    func(m *report.BlankMoves) string { return show.Way(m, 40) },
	"moving": moving,
	"join":   func(l []string) string { return show.Safe(strings.Join(l, ", ")) },
	"hours":  show.Hours, "cutno": func(i int) int { return i + 1 },
}).Parse(pageText))

// view is what the page's text is filled from.
type view struct {
	shown
	Plan    *report.Plan
	Tested  report.Tested
	Beyond  string    // what all would come to, where not all is tested
	Nothing string    // why nothing is tested
	Sides   []string  // on which sides each cut is blanked
	Spent   []float64 // minutes of these sides
	Sample  []show.Line
	Heads   map[string]string
	Title   string
	Policy  string // what the page may load: nothing
	Style   template.CSS
	Script  template.JS
	Data    *data
	Drawing template.HTML
	Sheets  []template.HTML // the drawing again, cut up to be printed
	Map     template.HTML   // where they lie on the whole; empty where there is one
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
	Large   bool // too large for a drawing and for cards on one page
}

// mostDrawn is the number of pieces up to which a page draws the ductwork and holds
// the cards: beyond it, it would take a browser too long to open.
const mostDrawn = 30_000

type cardView struct {
	card.Card
	Drawing template.HTML
	High    float64 // of the drawing, mm
	Missing string  // what had no room in it
	Density string  // how small it is printed, so that it stays on a page
}

// Legend says how to read the drawing.
func (c *cardView) Legend() string { return keyplan.Legend }

// Plan writes the page. The same view gives the same bytes.
func Plan(w io.Writer, v *report.Plan) error {
	large := len(v.Drawing.Nodes) > mostDrawn
	pic := &schematic.Picture{}
	if !large {
		pic = schematic.Of(v.Drawing)
	}
	looks := schematic.Looks(v)
	o := view{
		shown: shown{v.Units},
		Plan:  v, Title: "Ductwork leakage test plan", Style: template.CSS(pageStyle + margins(v)), Script: template.JS(pageScript),
		Data: dataOf(v, pic, looks), Width: num(pic.Width), Height: num(pic.Height), Plot: plotOf(v),
		Sizes: show.Sizes(v), Faults: show.Gather(v.Faults), Group: show.Groupings(v),
	}
	o.Policy = fmt.Sprintf("default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-%s'", hash(pageScript))
	o.All = show.AllSizes(o.Sizes)
	o.said(v)
	c := canvas{v: v, pic: pic, looks: looks}
	o.Drawing = c.whole()
	o.Sheets, o.Map = c.sheets()
	for i := range looks {
		o.Looks = append(o.Looks, sample(looks[i]))
	}
	for i := range v.Sections {
		if s := &v.Sections[i]; s.UnderRange || s.OverRange {
			o.Bad = append(o.Bad, s)
		}
	}
	o.Large = large
	if large {
		return page.Execute(w, &o)
	}
	for _, one := range card.All(v) {
		c := cardView{Card: one}
		c.draw(keyplan.Of(v, one.Section, &one))
		o.Cards = append(o.Cards, c)
	}
	return page.Execute(w, &o)
}

// said puts in words what is tested, and how it was chosen.
func (o *view) said(v *report.Plan) {
	o.Tested = v.Tested()
	o.Beyond, o.Nothing = show.Beyond(v, &o.Tested), v.Nothing()
	sides, spent := show.Sides(v), v.TestedMinutes()
	for i := range v.Cuts {
		o.Sides, o.Spent = append(o.Sides, sides(&v.Cuts[i])), append(o.Spent, spent(&v.Cuts[i]))
	}
	o.Heads = map[string]string{"cuts": show.CutsTitle(v), "proof": show.ProofTitle(v, &o.Tested)}
	if v.Sample != nil {
		o.Sample, o.Heads["sample"] = show.SampleLines(v), show.SampleTitle(v)
	}
}

// hash is that of a script as the page's policy names it.
func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return base64.StdEncoding.EncodeToString(sum[:])
}

// whole draws everything, a group a system, so that a printed sheet can show one.
func (c *canvas) whole() template.HTML {
	all := c.pic
	for i := range all.Systems {
		c.pic = all.Part(i)
		c.add(`<g id="system-%d" class="lines">`, i)
		c.bands()
		c.outside()
		c.WriteString(`<g class="planned">`)
		c.lines()
		c.marks()
		c.WriteString(`</g>`)
		c.ends()
		c.tags()
		c.WriteString(`<g class="planned">`)
		c.badges()
		c.WriteString(`</g></g>`)
	}
	c.pic = all
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

// option is one of the command's, as sentences name it.
var option = regexp.MustCompile(`\B--[a-z][a-z-]*`)

// prose is a sentence in which no line breaks inside an option.
func prose(text string) template.HTML {
	return template.HTML(option.ReplaceAllString(esc(text), `<span class="option">$0</span>`))
}

// moving are the blanks that go to more than one place.
func moving(b *report.Blanking) (list []*report.BlankMoves) {
	for i := range b.Moving {
		if m := &b.Moving[i]; len(m.Steps) > 1 {
			list = append(list, m)
		}
	}
	return list
}

// margins puts the job at the head and the schedule at the foot of every printed
// page; a card has both on itself.
func margins(v *report.Plan) string {
	foot := v.Schedule.File
	if len(v.Schedule.SHA256) >= 16 {
		foot += ", sha256 " + v.Schedule.SHA256[:16]
	}
	return fmt.Sprintf(`@page { @top-left { content: "%s"; font: 8pt sans-serif; } @bottom-left { content: "%s"; font: 8pt sans-serif; } @bottom-right { content: "page " counter(page) " of " counter(pages); font: 8pt sans-serif; } }
@page card { @top-left { content: none; } @bottom-left { content: none; } @bottom-right { content: none; } }
`, cssText(v.Job.Head()), cssText(foot))
}

// cssText is a text inside a CSS string: all but letters and digits escaped.
func cssText(s string) string {
	var b strings.Builder
	for _, r := range show.Safe(s) {
		if r == ' ' || r < 0x80 && (r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z') {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, "\\%06x ", r) // the space ends the number
		}
	}
	return b.String()
}
