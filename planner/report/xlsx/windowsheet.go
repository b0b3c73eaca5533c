package xlsx

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/rig"
)

// windowSheet writes where every section's limit lies in what the rigs can read.
func windowSheet(b *book, v *report.Plan) error {
	if len(v.Rigs) == 0 || len(v.Sections) == 0 {
		return nil
	}
	w := b.follow.window
	c := b.follow.onSections
	return b.sheet("windows", w.heads, func(row func(...any) error) error {
		for i := range v.Sections {
			s := &v.Sections[i]
			n := i + 2
			from := func(head string) string { return "sections!" + c[head] + strconv.Itoa(n) }
			area, exact := from("area m2"), from("exact area m2")
			least, most := formula{area, s.Area}, formula{area, s.Area}
			if v.Settings.HoldBoth {
				least = formula{fmt.Sprintf("IF(hold_both=1,MIN(%s,%s),%s)", area, exact, area), math.Min(s.Area, s.ExactArea)}
				most = formula{fmt.Sprintf("IF(hold_both=1,MAX(%s,%s),%s)", area, exact, area), math.Max(s.Area, s.ExactArea)}
			}
			cells := []any{formula{from("section"), s.ID}, formula{from("test Pa"), s.TestPa}, least, most,
				formula{from("limit L/s, cut off"), permitted(s.Limit)}, formula{w.state(n), stateNow(v, s)}, formula{w.toSet(n), show.Range(v, s)}, formula{from("limit L/s per m2"), s.LimitPerM2}}
			if err := row(append(cells, w.cells(v, s, n)...)...); err != nil {
				return err
			}
		}
		return nil
	})
}

// cells are the blocks of a section's row.
func (w *window) cells(v *report.Plan, s *report.Section, row int) []any {
	now := w.now(v, s)
	cells := make([]any, w.n*len(blockNames))
	for j := range w.n {
		texts := w.rangeCells(j, row)
		for k, block := range blockNames {
			if texts[block] != "" {
				cells[k*w.n+j] = formula{texts[block], now[block][j]}
			}
		}
	}
	for r := range w.rigs() {
		if w.rigs() > 1 {
			cells = append(cells, formula{w.bestCell(r, row), w.least(r, now[mayErr])})
		}
	}
	return cells
}

// least is what bestCell gives.
func (w *window) least(r int, errs []float64) float64 {
	least := slices.Min(errs[w.t.first[r]:w.t.first[r+1]])
	if least >= 1e6 && least < 1e99 {
		least -= 1e6
	}
	return least
}

// now works the blocks out as the formulas do.
func (w *window) now(v *report.Plan, s *report.Section) map[string][]float64 {
	m := map[string][]float64{}
	for _, block := range blockNames {
		m[block] = make([]float64, w.n)
	}
	var ranges []rig.Range
	for _, r := range v.Rigs {
		for _, g := range r.Ranges {
			m[holds][len(ranges)] = w.t.flow(g.Holds(s.TestPa))
			ranges = append(ranges, w.t.turned(g))
		}
	}
	low, high := m[readsFrom], m[readsTo]
	for j, g := range ranges {
		low[j], high[j] = g.MinLS+g.Err(g.MinLS), g.MaxLS-g.Err(g.MaxLS)-g.OwnLeakLS
		if len(g.Fan) > 0 {
			high[j] = math.Min(high[j], m[holds][j])
		}
		if !(high[j] >= low[j] && s.TestPa > 0) {
			high[j] = -1
		}
	}
	for j := range ranges {
		m[beginsAt][j] = w.begins(j, low, high)
	}
	for j := range ranges {
		m[judgesFrom][j], m[judgesTo][j] = w.judges(j, low, high, m[beginsAt], v.Settings.Headroom)
	}
	for j := range ranges {
		m[mayErr][j] = w.errs(j, ranges, m, w.t.flow(s.Limit), v.Settings.Headroom)
	}
	return m
}

// begins is where flows read without a hole begin at range j, -1 for not there.
func (w *window) begins(j int, low, high []float64) float64 {
	from, to := w.rigOf(j)
	if high[j] < 0 {
		return -1
	}
	for i := from; i < to; i++ {
		if low[i] < low[j] && high[i] >= low[j] {
			return -1
		}
	}
	return low[j]
}

// judges is the limits that can be judged where flows read without a hole end at
// range j, -1 for not there.
func (w *window) judges(j int, low, high, begins []float64, headroom float64) (least, most float64) {
	from, to := w.rigOf(j)
	if high[j] < 0 {
		return -1, -1
	}
	least = math.Inf(-1)
	for i := from; i < to; i++ {
		if low[i] <= high[j] && high[i] > high[j] {
			return -1, -1
		}
		if begins[i] <= high[j] {
			least = math.Max(least, begins[i])
		}
	}
	if headroom >= 1 && least <= high[j]/headroom {
		return least, high[j] / headroom
	}
	return least, -1
}

// errs is how far a reading of q on range j may be off; see errorCell.
func (w *window) errs(j int, ranges []rig.Range, m map[string][]float64, q, headroom float64) float64 {
	from, to := w.rigOf(j)
	in := false
	for i := from; i < to; i++ {
		in = in || m[judgesFrom][i] <= q && m[judgesTo][i] >= q
	}
	high := m[readsTo][j]
	if !in || high < 0 || q < m[readsFrom][j] || q > high {
		return 1e99
	}
	e := ranges[j].Err(q) + ranges[j].MaxLS*1e-10
	if q > high/headroom {
		e += 1e6
	}
	return e
}

// stateNow is the state in the words of the formula.
func stateNow(v *report.Plan, s *report.Section) string {
	verdict := v.Rigs.Judge(s.Limit, s.TestPa, v.Settings.Headroom).State
	switch {
	case s.OverRange:
		return "OVER RANGE"
	case !s.UnderRange:
		return "in range"
	case verdict == rig.In:
		return "UNDER RANGE, area"
	case verdict == rig.Gap:
		return "UNDER RANGE, gap"
	}
	return "UNDER RANGE"
}
