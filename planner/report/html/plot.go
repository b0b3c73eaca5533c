package html

import (
	"fmt"
	"math"
	"strings"

	"html/template"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// plot shows every section's limit among what the rig can read, on one axis of
// flow that is logarithmic: equal steps are equal ratios.
type plot struct {
	low, high float64 // decades, in the units shown
	turn      float64 // of one L/s
	Axis      template.HTML
	Rows      []plotRow
}

type plotRow struct {
	ID, Limit, State string
	Bad              bool
	Bar              template.HTML
}

// plotEdge is room for half of the last figure on the axis, on a phone too.
const plotWide, plotHigh, plotEdge = 560.0, 18.0, 24.0

func plotOf(v *report.Plan) plot {
	p := plot{low: math.Inf(1), high: math.Inf(-1), turn: v.Units.Of(units.Flow, 1)}
	take := func(q float64) {
		q *= p.turn
		if q > 0 && !math.IsInf(q, 0) {
			p.low, p.high = min(p.low, q), max(p.high, q)
		}
	}
	for i := range v.Sections {
		take(v.Sections[i].Limit)
		take(v.Sections[i].Limit * v.Settings.Headroom)
		for _, s := range v.Drawing.Readable[i] {
			take(s.Low)
			take(s.High)
		}
	}
	if math.IsInf(p.low, 1) {
		return p
	}
	p.low, p.high = math.Pow(10, math.Floor(math.Log10(p.low)+1e-9)), math.Pow(10, math.Ceil(math.Log10(p.high)-1e-9))
	if p.low == p.high {
		p.high *= 10
	}
	p.Axis = p.axis()
	for i := range v.Sections {
		s := &v.Sections[i]
		p.Rows = append(p.Rows, plotRow{s.ID, v.Units.Cut(units.Flow, s.Limit), show.State(s) + mark(", ", s.NotTested), s.UnderRange || s.OverRange, p.bar(v, i)})
	}
	return p
}

// x is where a flow, L/s, lies along the axis.
func (p *plot) x(q float64) float64 { return p.along(q * p.turn) }

// along is where a figure of the axis lies.
func (p *plot) along(q float64) float64 {
	q = min(max(q, p.low), p.high)
	return plotEdge + (plotWide-2*plotEdge)*math.Log10(q/p.low)/math.Log10(p.high/p.low)
}

// ticks are the decades, and their halves and doubles where there are few.
func (p *plot) ticks() []float64 {
	var out []float64
	few := p.high/p.low <= 1e3*1.001
	for d := p.low; d <= p.high*1.001; d *= 10 {
		out = append(out, d)
		if few && d < p.high*0.999 {
			out = append(out, 2*d, 5*d)
		}
	}
	return out
}

// figure writes a tick, in full: 10000, not 1e+04.
func figure(q float64) string {
	return units.Plain(q, max(0, -int(math.Floor(math.Log10(q)+1e-9))))
}

func (p *plot) axis() template.HTML {
	var b strings.Builder
	fmt.Fprintf(&b, `<svg class="bar" viewBox="0 0 %g 22" width="%g" height="22" aria-hidden="true">`, plotWide, plotWide)
	for _, q := range p.ticks() {
		fmt.Fprintf(&b, `<text x="%s" y="12">%s</text><path class="grid" d="M%s 15V22"/>`, num(p.along(q)), figure(q), num(p.along(q)))
	}
	b.WriteString("</svg>")
	return template.HTML(b.String())
}

// bar draws one section: what can be read at its pressure as a pale band, its
// limit as a stroke, and up to headroom times the limit as a thick line.
func (p *plot) bar(v *report.Plan, i int) template.HTML {
	s := &v.Sections[i]
	var b strings.Builder
	fmt.Fprintf(&b, `<svg class="bar" viewBox="0 0 %g %g" width="%g" height="%g" role="img" aria-label="%s">`, plotWide, plotHigh, plotWide, plotHigh,
		esc(fmt.Sprintf("limit %s, %s", v.Units.Limit(s.Limit), show.State(s))))
	for _, r := range v.Drawing.Readable[i] {
		fmt.Fprintf(&b, `<rect class="reads" x="%s" y="2" width="%s" height="14"/>`, num(p.x(r.Low)), num(max(1, p.x(r.High)-p.x(r.Low))))
	}
	for _, q := range p.ticks() {
		fmt.Fprintf(&b, `<path class="grid" d="M%s 0V18"/>`, num(p.along(q)))
	}
	if s.Limit > 0 {
		class := "span"
		if s.UnderRange || s.OverRange {
			class = "span bad"
		}
		x := p.x(s.Limit)
		fmt.Fprintf(&b, `<path class="%s" d="M%s 9H%s"/><path class="limit" d="M%s 2V16"/>`, class, num(x), num(p.x(s.Limit*v.Settings.Headroom)), num(x))
		if s.UnderRange || s.OverRange {
			fmt.Fprintf(&b, `<path class="cross" d="M%s 4l10 10m0 -10l-10 10"/>`, num(x-5))
		}
	}
	b.WriteString("</svg>")
	return template.HTML(b.String())
}
