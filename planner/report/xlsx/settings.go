package xlsx

import (
	"fmt"

	"github.com/xuri/excelize/v2"

	"blankoff/fittings"
	"blankoff/planner/report"
	"blankoff/planner/rig"
	"blankoff/planner/tightness"
	"blankoff/planner/units"
	"blankoff/takeoff/measuring"
)

// settingsTable is the sheet settings: its rows, and where each table stands on
// it, so that others can follow.
type settingsTable struct {
	u       units.System
	rows    [][]any
	names   [][2]string    // name and cell of every setting
	classes [2]int         // rows of the classes
	each    map[string]int // by scheme: the row of a scheme whose classes are numbers
	ranges  []rangeRow     // every range of every rig
	first   []int          // by rig: its first range; one past the last at the end
}

// rangeRow is one measuring range on the sheet settings.
type rangeRow struct {
	at   int    // row
	fan  [2]int // rows of its fan curve's stretches, 0: no curve
	hose bool
}

// put adds a row and gives its number.
func (t *settingsTable) put(cells ...any) int {
	t.rows = append(t.rows, cells)
	return len(t.rows) + 1 // after the heading row
}

// newSettings lays the sheet out.
func newSettings(v *report.Plan) *settingsTable {
	t := &settingsTable{u: v.Units, each: map[string]int{}}
	for i, text := range howTo {
		if i == 0 {
			t.put(input{"may be changed"}, freely(text))
			continue
		}
		t.put(nil, freely(text))
	}
	t.put()
	t.values(v)
	t.put()
	t.classTable(v.Schemes)
	t.put()
	t.rigTables(v.Rigs)
	return t
}

var howTo = []string{
	"A shaded cell with a dark frame may be changed: here, sizes and quantities on takeoff, class, test pressure and sign on sections.",
	"Areas, limits, ranges, states, forces, totals and the minutes of tests follow.",
	"What doesn't follow: where the cuts are, which blanks there are and their minutes, whether a class may be tested at a pressure,",
	"workings, cures and readings in words. Only a new plan finds those; 'as planned' says where words no longer hold.",
	"A piece whose area is an integral holds a value: 'how the area follows' on takeoff says so, and its sizes aren't shaded.",
}

// values are the settings by name.
func (t *settingsTable) values(v *report.Plan) {
	s := &v.Settings
	t.put(headed("setting"), headed("value"), headed("name in formulas"))
	add := func(what string, value any, name, about string) {
		t.name(name, t.put(what, value, t.u.Rename(name), freely(about)))
	}
	add("headroom", input{s.Headroom}, "headroom", "how many times its limit a section may leak and still be read, 1 or more")
	add("minutes of one test", input{as{s.TestMinutes, minutes}}, "test_minutes", "")
	add("a section at least", input{as{s.MinArea, squareM}}, "min_area_m2", "a smaller one counts as under range; 0: no bound")
	add("a section at most", input{as{s.MaxArea, squareM}}, "max_area_m2", "0: no bound")
	add("thickness of the sheet", input{as{s.Sheet, millimetres}}, "sheet_mm", "added twice to every size across; values that don't follow keep it as it was")
	pl := func(shape fittings.Shape) float64 {
		if s.PieceLength > 0 {
			return s.PieceLength * 1000
		}
		return measuring.UsualLength(shape) * 1000
	}
	add("straights made in, rectangular", as{pl(fittings.Rectangular), millimetres}, "piece_rect_mm", "another length moves the cuts: make a new plan")
	add("straights made in, circular and flat-oval", as{pl(fittings.Circular), millimetres}, "piece_round_mm", "")
	add("held to both areas", as{boolean(s.HoldBoth), whole}, "hold_both", "1: the larger of exact and basis at the rig's upper end, the smaller at its lower end and for the limit")
	for _, w := range [][3]string{{"scheme where none is given", s.Scheme, "scheme"}, {"class where none is given", or(s.Class, "none"), "class"}, {"sign where none is given", s.Sign, "sign"}, {"aim", s.Aim, "aim"}, {"basis of areas", s.Basis, "basis"}} {
		add(w[0], w[1], "default_"+w[2], "")
	}
	add("test pressure where none is given", as{s.TestPa, pascals}, "default_test_pa", "0: none; the pressures of the sections are on their sheet")
	t.factors()
}

// name gives the value in a row a name, which ends in its unit.
func (t *settingsTable) name(si string, row int) {
	t.names = append(t.names, [2]string{t.u.Rename(si), fmt.Sprintf("settings!$B$%d", row)})
}

// classTable is the classes of the schemes used: limit = k p^n.
func (t *settingsTable) classTable(schemes []*tightness.Scheme) {
	t.put(headed("scheme"), headed("class"), headed(t.kHead()), headed("exponent n"), headed("key"), headed("source"))
	for _, s := range schemes {
		if s.Numbered {
			// k goes with the number of the class
			if c, err := s.Class("1"); err == nil {
				t.each[s.Name] = t.put(s.Name, "each 1", input{as{t.k(s, c.K), full}}, input{as{s.Exponent, full}}, nil, freely(s.Source+"; "+s.Sureness))
			}
			continue
		}
		for _, c := range s.Classes() {
			n := len(t.rows) + 2
			row := t.put(s.Name, c.Name, input{as{t.k(s, c.K), full}}, input{as{s.Exponent, full}}, formula{fmt.Sprintf(`A%d&"|"&B%d`, n, n), s.Name + "|" + c.Name},
				freely(c.Source+"; "+c.Sureness))
			if t.classes[0] == 0 {
				t.classes[0] = row
			}
			t.classes[1] = row
		}
	}
}

// rigTables are the measuring ranges, and the fan curves by stretches.
func (t *settingsTable) rigTables(rigs rig.Fleet) {
	t.put(headed("rig"), headed("range"), t.flowHead("from L/s"), t.flowHead("to L/s"), headed("accuracy, %"), t.flowHead("accuracy, L/s"), t.flowHead("own leak L/s"),
		t.head(units.Length, "hose m"), t.head(units.Size, "hose mm"), headed("friction"), headed(t.hoseHead()), t.flowHead("reads from L/s"), t.flowHead("reads to L/s"))
	for _, r := range rigs {
		t.first = append(t.first, len(t.ranges))
		for _, g := range r.Ranges {
			t.ranges = append(t.ranges, rangeRow{at: t.rangeLine(r, &g), hose: g.Hose != nil})
		}
	}
	t.first = append(t.first, len(t.ranges))
	k := 0
	for _, r := range rigs {
		for i := range r.Ranges {
			t.ranges[k].fan = t.fanLines(r, &r.Ranges[i])
			k++
		}
	}
}

func (t *settingsTable) rangeLine(r *rig.Rig, g *rig.Range) int {
	n := len(t.rows) + 2
	err := func(q string) string { return fmt.Sprintf("MAX(%s%d*E%d/100,F%d)", q, n, n, n) }
	low := g.MinLS + g.Err(g.MinLS)
	high := g.MaxLS - g.Err(g.MaxLS) - g.OwnLeakLS
	q := func(ls float64) any { return input{t.flow(ls)} }
	cells := []any{r.Name, g.Name, q(g.MinLS), q(g.MaxLS), input{g.AccuracyPercent}, q(g.AccuracyLS), q(g.OwnLeakLS), nil, nil, nil, nil,
		formula{fmt.Sprintf("C%d+%s", n, err("C")), t.flow(low)}, formula{fmt.Sprintf("D%d-%s-G%d", n, err("D"), n), t.flow(high)}}
	if h := g.Hose; h != nil {
		cells[7], cells[8], cells[9] = input{turn(t.u, units.Length, h.LengthM)}, input{turn(t.u, units.Size, h.DiameterM*1000)}, input{h.Friction}
		cells[10] = t.hose(h, n)
	}
	return t.put(cells...)
}

// fanLines are the stretches of a fan curve between its points, with a level one
// below the first.
func (t *settingsTable) fanLines(r *rig.Rig, g *rig.Range) (rows [2]int) {
	if len(g.Fan) == 0 {
		return rows
	}
	t.put()
	t.put(headed("fan of rig"), headed("range"), t.head(units.Pressure, "from Pa"), t.head(units.Pressure, "to Pa"), t.flowHead("L/s there"), t.flowHead("to L/s"), headed(t.slopeHead()))
	first := g.Fan[0]
	n := len(t.rows) + 2
	pa := func(v float64) float64 { return turn(t.u, units.Pressure, v) }
	slope := func(n int, now float64) any {
		return formula{fmt.Sprintf("IF(D%d=C%d,0,(F%d-E%d)/(D%d-C%d))", n, n, n, n, n, n), now}
	}
	rows[0] = t.put(r.Name, g.Name, 0.0, input{pa(first.PressurePa)}, formula{fmt.Sprintf("F%d", n), t.flow(first.FlowLS)}, input{t.flow(first.FlowLS)}, slope(n, 0))
	for i, p := range g.Fan[1:] {
		n++
		q := g.Fan[i]
		t.put(r.Name, g.Name, formula{fmt.Sprintf("D%d", n-1), pa(q.PressurePa)}, input{pa(p.PressurePa)}, formula{fmt.Sprintf("F%d", n-1), t.flow(q.FlowLS)}, input{t.flow(p.FlowLS)},
			slope(n, (t.flow(p.FlowLS)-t.flow(q.FlowLS))/(pa(p.PressurePa)-pa(q.PressurePa))))
	}
	rows[1] = n
	return rows
}

// settingsSheet writes the settings and gives them their names.
func settingsSheet(b *book, v *report.Plan) error {
	t := b.follow.settings
	columns := []column{{head: "Settings", width: 30}, {head: v.Schedule.File, width: 15, kind: plain}, {width: 17, kind: plain}}
	for range 10 {
		columns = append(columns, column{width: 9.5, kind: plain})
	}
	err := b.form("settings", columns, func(row func(...any) error) error {
		for _, cells := range t.rows {
			if err := row(framed(cells, len(columns))...); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	for _, n := range t.names {
		if err := b.file.SetDefinedName(&excelize.DefinedName{Name: n[0], RefersTo: n[1]}); err != nil {
			return fmt.Errorf("name %s: %w", n[0], err)
		}
	}
	return nil
}

// framed leaves the frames off the cells of a row that hold nothing.
func framed(cells []any, n int) []any {
	out := make([]any, n)
	for i := range out {
		out[i] = freely("")
		if i < len(cells) && cells[i] != nil {
			out[i] = cells[i]
		}
	}
	return out
}

// limitPerM2 is a section's limit per m2 as a formula over its row: k p^n.
func (t *settingsTable) limitPerM2(scheme string, c map[string]string, row int) string {
	class, pa := fmt.Sprintf("%s%d", c["class"], row), fmt.Sprintf("%s%d", c["test Pa"], row)
	if at := t.each[scheme]; at > 0 {
		return fmt.Sprintf("IFERROR(VALUE(%s),0)*settings!$C$%d*%s^settings!$D$%d", class, at, pa, at)
	}
	if t.classes[0] == 0 {
		return ""
	}
	col := func(letter string) string {
		return fmt.Sprintf("settings!$%s$%d:$%s$%d", letter, t.classes[0], letter, t.classes[1])
	}
	at := fmt.Sprintf(`MATCH(%s%d&"|"&%s,%s,0)`, c["scheme"], row, class, col("E"))
	return fmt.Sprintf("IFERROR(INDEX(%s,%s)*%s^INDEX(%s,%s),0)", col("C"), at, pa, col("D"), at)
}
