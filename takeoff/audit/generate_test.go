package audit

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

// line is a row of a schedule as it's typed: a heading and its value.
type line map[string]string

func (l line) mm(heading string, v float64) { l[heading] = strconv.FormatFloat(v, 'f', -1, 64) }

func (l line) number(heading string) (float64, bool) {
	v, err := strconv.ParseFloat(l[heading], 64)
	return v, err == nil
}

// sizes of the trade, mm: EN 1506 diameters, a grid of sides and flat ovals.
var (
	rounds = []float64{100, 125, 160, 200, 250, 315, 400, 500, 630}
	sides  = []float64{200, 250, 300, 400, 500, 600, 800, 1000}
	ovals  = [][2]float64{{305, 150}, {385, 150}, {485, 150}, {580, 200}, {760, 200}, {845, 275}}
)

// generator makes schedules of all kinds and styles.
type generator struct {
	*rand.Rand
	lines        []line
	system, from string
}

func pick[T any](g *generator, list []T) T { return list[g.IntN(len(list))] }

// schedule makes a schedule of about n rows.
func (g *generator) schedule(n int, lined bool) []line {
	g.lines = nil
	systems := 1 + g.IntN(3)
	for s := range systems {
		g.system, g.from = fmt.Sprintf("S%d", s+1), ""
		for k := 0; k < n/systems+1; k++ {
			g.row()
		}
		if g.IntN(2) == 0 {
			g.add(line{"kind": "cap"}, g.section)
		}
	}
	if lined {
		for _, l := range g.lines {
			if k := l["kind"]; (k == "straight" || k == "reducer" || k == "bend" || k == "inline") && g.IntN(3) > 0 && l["shape"] == "rectangular" {
				l["lining_mm"], l["size_is"] = pick(g, []string{"25", "40", "50"}), pick(g, []string{"clear", "metal"})
			}
		}
	}
	return g.lines
}

// add files a row under a tag and hangs it on the row before.
func (g *generator) add(l line, more ...func(line)) line {
	for _, f := range more {
		f(l)
	}
	l["tag"], l["system"] = fmt.Sprintf("R%d", len(g.lines)+1), g.system
	end := l["kind"] == "spigot"
	if _, ok := l["from"]; !ok && g.from != "" && l["quantity"] == "" && l["kind"] != "plenum" && g.IntN(3) > 0 {
		l["from"], g.from = g.from, "" // one far end carries one piece
	}
	g.lines = append(g.lines, l)
	switch l["kind"] {
	case "cap", "flexible", "breeches":
		end = true
	}
	if !end && l["quantity"] == "" {
		g.from = l["tag"]
	}
	return l
}

// section gives a cross-section.
func (g *generator) section(l line) {
	switch g.IntN(5) {
	case 0, 1:
		l["shape"] = "rectangular"
		l.mm("width_mm", pick(g, sides))
		l.mm("height_mm", pick(g, sides[:6]))
	case 2, 3:
		l["shape"] = "circular"
		l.mm("diameter_mm", pick(g, rounds))
	default:
		o := pick(g, ovals)
		l["shape"] = "flat-oval"
		l.mm("width_mm", o[0])
		l.mm("height_mm", o[1])
	}
}

func (g *generator) several(l line) {
	if g.IntN(3) == 0 {
		l["quantity"] = strconv.Itoa(2 + g.IntN(6))
	}
}

func (g *generator) long(l line) { l.mm("length_mm", float64(300+10*g.IntN(900))) }

// row adds a row, and the spigots on a straight.
func (g *generator) row() {
	switch g.IntN(20) {
	case 0, 1, 2, 3, 4, 5:
		l := g.add(line{"kind": "straight"}, g.section, g.long, g.several)
		for range g.IntN(3) {
			g.spigot(l)
		}
	case 6, 7, 8:
		g.bend()
	case 9, 10:
		g.reducer()
	case 11:
		g.transition()
	case 12, 13:
		g.tee()
	case 14:
		l := line{"kind": "flexible", "shape": "circular"}
		l.mm("diameter_mm", pick(g, rounds[:5]))
		g.add(l, g.long, g.several)
	case 15:
		l := g.add(line{"kind": "inline"}, g.section)
		l.mm("length_mm", float64(100+50*g.IntN(20)))
	case 16:
		g.offset()
	case 17:
		g.breeches()
	case 18:
		g.add(line{"kind": "plenum", "width_mm": "900", "height_mm": "500", "length_mm": pick(g, []string{"400", "600", "1200"})})
	default:
		g.add(line{"kind": "straight"}, g.section, g.long)
	}
}

func (g *generator) spigot(host line) {
	l := line{"kind": "spigot", "from": host["tag"], "branch_length_mm": pick(g, []string{"60", "100", "150"})}
	room, _ := host.number("diameter_mm")
	if w, ok := host.number("width_mm"); ok {
		h, _ := host.number("height_mm")
		room = math.Max(w, h)
		if host["shape"] == "flat-oval" {
			room = w - h
		}
	}
	d := rounds[0]
	for _, x := range rounds[:6] {
		if x < 0.8*room && g.IntN(2) == 0 {
			d = x
		}
	}
	if d < room {
		l.mm("branch_diameter_mm", d)
		l["shape"] = "circular"
		if host["quantity"] == "" {
			g.add(l)
		}
	}
}

func (g *generator) bend() {
	l := line{"kind": "bend", "angle_deg": pick(g, []string{"30", "45", "60", "90", "90"})}
	g.section(l)
	side, round := l.number("diameter_mm")
	if !round {
		side, _ = l.number("width_mm")
	}
	style := pick(g, []string{"radius", "radius", "mitred", "gored", "square throat", "square heel"})
	if style == "square throat" && l["shape"] != "rectangular" || style == "gored" && !round {
		style = "radius"
	}
	if style == "square heel" && (l["shape"] != "rectangular" || l["angle_deg"] != "90") {
		style = "mitred"
	}
	l["style"] = style
	switch style {
	case "radius", "gored":
		if round {
			l.mm("radius_mm", side*pick(g, []float64{1, 1.5}))
		} else {
			l.mm("throat_mm", pick(g, []float64{100, 150, 200}))
		}
		if style == "gored" {
			l["gores"] = pick(g, []string{"3", "5"})
		}
	case "mitred":
		l["legs_mm"] = pick(g, []string{"0", "50", "100"})
	case "square heel":
		l["throat_mm"] = "100"
	}
	g.add(l, g.several)
}

func (g *generator) reducer() {
	l := line{"kind": "reducer", "length_mm": pick(g, []string{"200", "300", "400", "600"})}
	g.section(l)
	if d, ok := l.number("diameter_mm"); ok {
		l.mm("diameter2_mm", math.Max(80, math.Round(d*pick(g, []float64{0.63, 0.8, 0.5})/5)*5))
	} else if w, _ := l.number("width_mm"); l["shape"] == "rectangular" {
		h, _ := l.number("height_mm")
		l.mm("width2_mm", math.Max(100, w-pick(g, []float64{50, 100, 200})))
		l.mm("height2_mm", math.Max(100, h-pick(g, []float64{0, 50, 100})))
	} else {
		h, _ := l.number("height_mm")
		l.mm("width2_mm", math.Max(h, w-100))
		l.mm("height2_mm", h)
	}
	g.add(l)
}

func (g *generator) transition() {
	l := line{"kind": "transition", "length_mm": pick(g, []string{"300", "400", "500"})}
	switch g.IntN(3) {
	case 0:
		l["shape"], l["width_mm"], l["height_mm"], l["shape2"] = "rectangular", pick(g, []string{"300", "400", "600"}), "300", "circular"
		l.mm("diameter2_mm", pick(g, rounds[3:7]))
	case 1:
		o := pick(g, ovals)
		l["shape"], l["shape2"], l["diameter2_mm"] = "flat-oval", "circular", pick(g, []string{"200", "315", "400"})
		l.mm("width_mm", o[0])
		l.mm("height_mm", o[1])
	default:
		o := pick(g, ovals)
		l["shape"], l["shape2"], l["width_mm"], l["height_mm"] = "rectangular", "flat-oval", "500", "300"
		l.mm("width2_mm", o[0])
		l.mm("height2_mm", o[1])
	}
	g.add(l)
}

func (g *generator) tee() {
	l := line{"kind": pick(g, []string{"tee", "tee", "cross"}), "branch_length_mm": pick(g, []string{"60", "100", "150"}), "length_mm": "900"}
	if g.IntN(2) == 0 {
		l["shape"] = "circular"
		d := pick(g, rounds[3:])
		l.mm("diameter_mm", d)
		l.mm("branch_diameter_mm", math.Round(d*pick(g, []float64{0.5, 0.63, 0.8})))
		if l["kind"] == "tee" && g.IntN(4) == 0 {
			l["branch_angle_deg"], l["branch_length_mm"] = "45", "400"
		}
	} else {
		l["shape"] = "rectangular"
		l.mm("width_mm", pick(g, sides[3:]))
		l.mm("height_mm", pick(g, sides[3:6]))
		l["branch_width_mm"], l["branch_height_mm"] = "300", pick(g, []string{"200", "250", "300"})
		if g.IntN(3) == 0 {
			l["style"], l["entry_mm"] = "shoe", "60"
		}
	}
	g.add(l)
}

func (g *generator) offset() {
	l := line{"kind": "offset", "style": pick(g, []string{"straight", "mitred", "radius"}), "length_mm": "1500", "offset_mm": pick(g, []string{"150", "200", "300"})}
	g.section(l)
	g.add(l)
}

func (g *generator) breeches() {
	if g.IntN(2) == 0 {
		g.add(line{"kind": "breeches", "shape": "circular", "diameter_mm": "400", "branch_diameter_mm": pick(g, []string{"250", "315"}), "length_mm": "500", "offset_mm": "250"})
		return
	}
	g.add(line{"kind": "breeches", "shape": "rectangular", "width_mm": "800", "height_mm": pick(g, []string{"300", "400"}), "angle_deg": "90", "throat_mm": "100"})
}

// headings are all that the generator uses.
var headings = []string{"tag", "system", "kind", "style", "shape", "shape2", "quantity", "width_mm", "height_mm", "diameter_mm", "length_mm", "angle_deg",
	"radius_mm", "throat_mm", "legs_mm", "gores", "width2_mm", "height2_mm", "diameter2_mm", "offset_mm", "branch_width_mm", "branch_height_mm",
	"branch_diameter_mm", "branch_length_mm", "branch_angle_deg", "entry_mm", "lining_mm", "size_is", "from", "stated_area_m2"}

// csvOf types the rows.
func csvOf(lines []line) string {
	var b strings.Builder
	b.WriteString(strings.Join(headings, ",") + "\n")
	for _, l := range lines {
		for i, h := range headings {
			if i > 0 {
				b.WriteByte(',')
			}
			b.WriteString(l[h])
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// measured reads and measures rows on a basis.
func measured(tb testing.TB, lines []line, basis *fittings.Basis) *takeoff.Takeoff {
	tb.Helper()
	t := takeoff.New(takeoff.Options{Basis: basis})
	info, err := schedule.ReadFrom("made.csv", []byte(csvOf(lines)), func(r *takeoff.Row) error { t.Add(r); return nil })
	if err != nil {
		tb.Fatal(err)
	}
	t.Finish(info.Schedule, info.Faults, info.Notes)
	return t
}
