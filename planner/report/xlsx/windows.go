package xlsx

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"blankoff/planner/report"
	"blankoff/planner/units"
)

// The sheet windows places every section's limit in what the rigs can read at
// its test pressure, as package rig does, in formulas. Of each range it has: what
// the fan holds; how far it reads there, -1 where it can't be used; where the
// flows begin that are read without a hole, -1 where another range reaches below;
// and the limits from and to which it can be judged, -1 where another range
// reaches further or the headroom has no room. Last, by how much a reading may be
// off, for the range to set.

// window is the layout of the sheet windows.
type window struct {
	t      *settingsTable
	blocks map[string]int // first column of each block, one column a range
	n      int            // ranges
	named  bool           // a range is set with the name of its rig
	heads  []column
}

func newWindow(v *report.Plan, t *settingsTable) *window {
	w := &window{t: t, blocks: map[string]int{}, n: len(t.ranges), named: len(v.Alone) > 0, heads: []column{
		{head: "section", width: 9}, {head: "test Pa", width: 9, kind: pascals}, {head: "area, lower end m2", width: 12, kind: squareM}, {head: "area, upper end m2", width: 12, kind: squareM}, {head: "limit L/s, cut off", width: 11, kind: flows},
		{head: "state", width: 18, alarm: true}, {head: "range to set", width: 20}, {head: "limit L/s per m2", width: 14, kind: perM2, screen: true},
	}}
	several := len(v.Rigs) > 1
	for _, block := range blockNames {
		w.blocks[block] = len(w.heads) + 1
		for _, r := range v.Rigs {
			for _, g := range r.Ranges {
				name := g.Name
				if several {
					name = r.Name + ": " + name
				}
				w.heads = append(w.heads, column{head: headIn(t.u, units.Flow, block) + name, width: 12, kind: full, screen: true})
			}
		}
	}
	if several {
		w.blocks[best] = len(w.heads) + 1
		for _, r := range v.Rigs {
			w.heads = append(w.heads, column{head: headIn(t.u, units.Flow, best) + r.Name, width: 12, kind: full, screen: true})
		}
	}
	return w
}

// blockNames are the blocks, in the order of the sheet.
var blockNames = []string{holds, readsFrom, readsTo, beginsAt, judgesFrom, judgesTo, mayErr}

const (
	holds, readsFrom, readsTo      = "fan holds L/s, ", "reads from L/s, ", "reads to L/s, "
	beginsAt, judgesFrom, judgesTo = "begins at L/s, ", "judges from L/s, ", "judges to L/s, "
	mayErr                         = "error L/s, "
	best                           = "least error L/s, " // one column a rig, where there are several
)

// cell is the cell of range j in a block, and span that of ranges from to to-1.
func (w *window) cell(block string, j, row int) string {
	name, _ := excelize.CoordinatesToCellName(w.blocks[block]+j, row)
	return name
}

func (w *window) span(block string, from, to, row int) string {
	return w.cell(block, from, row) + ":" + w.cell(block, to-1, row)
}

func (w *window) all(block string, row int) string { return w.span(block, 0, w.n, row) }

// set is a cell of a range's row on the sheet settings.
func (w *window) set(letter string, j int) string {
	return fmt.Sprintf("settings!$%s$%d", letter, w.t.ranges[j].at)
}

// fan is what the fan holds, through its hose where there is one: on each
// stretch of the curve q = q0 + s (p - p0) against the test pressure P and the
// hose's c q^2 gives s c q^2 - q + K = 0 with K = q0 + s (P - p0), so that
// q = 2 K / (1 + sqrt(1 - 4 s c K)), up to where the stretch ends. The greatest q
// of all stretches is held.
func (w *window) fan(j, row int) string {
	g := w.t.ranges[j]
	if g.fan[0] == 0 {
		return ""
	}
	col := func(letter string) string {
		return fmt.Sprintf("settings!$%s$%d:$%s$%d", letter, g.fan[0], letter, g.fan[1])
	}
	p := fmt.Sprintf("$B%d", row)
	C, D, E, slope := col("C"), col("D"), col("E"), col("G")
	k := fmt.Sprintf("(%s+(%s-%s)*%s)", E, p, C, slope)
	if !g.hose {
		return fmt.Sprintf("SUMPRODUCT((%s>%s)*(%s<=%s)*%s)", p, C, p, D, k)
	}
	c := w.set("K", j)
	up := func(x string) string { return fmt.Sprintf("SQRT(((%s-%s)+ABS(%s-%s))/2/%s)", x, p, x, p, c) } // sqrt of what is over 0
	disc := fmt.Sprintf("(1-4*%s*%s*%s)", slope, c, k)
	q := fmt.Sprintf("(2*%s/(1+SQRT((%s+ABS(%s))/2)))", k, disc, disc)
	least := fmt.Sprintf("((%s+%s-ABS(%s-%s))/2)", q, up(D), q, up(D)) // the smaller of both
	return fmt.Sprintf("SUMPRODUCT(MAX((%s>=%s)*%s))", least, up(C), least)
}

// any says that a condition holds for one of the ranges from to to-1; each is
// given the cell of a range in a block.
func (w *window) any(from, to, row int, condition func(cell func(block string) string) string) string {
	var terms []string
	for j := from; j < to; j++ {
		terms = append(terms, condition(func(block string) string { return w.cell(block, j, row) }))
	}
	return "OR(" + strings.Join(terms, ",") + ")"
}

// judged says that limits from least to most are in one of the windows.
func (w *window) judged(from, to, row int, least, most string) string {
	return w.any(from, to, row, func(c func(string) string) string {
		return fmt.Sprintf("AND(%s<=%s,%s>=%s)", c(judgesFrom), least, c(judgesTo), most)
	})
}

// rangeCells are the formulas of one range, block by block.
func (w *window) rangeCells(j, row int) map[string]string {
	from, to := w.rigOf(j)
	low, high, judge := w.cell(readsFrom, j, row), w.cell(readsTo, j, row), w.cell(judgesFrom, j, row)
	most := w.set("M", j)
	if w.t.ranges[j].fan[0] > 0 {
		most = fmt.Sprintf("MIN(%s,%s)", most, w.cell(holds, j, row))
	}
	below := w.any(from, to, row, func(c func(string) string) string {
		return fmt.Sprintf("AND(%s<%s,%s>=%s)", c(readsFrom), low, c(readsTo), low)
	})
	further := w.any(from, to, row, func(c func(string) string) string {
		return fmt.Sprintf("AND(%s<=%s,%s>%s)", c(readsFrom), high, c(readsTo), high)
	})
	var begins []string
	for i := from; i < to; i++ {
		b := w.cell(beginsAt, i, row)
		begins = append(begins, fmt.Sprintf("IF(%s<=%s,%s,-1)", b, high, b))
	}
	return map[string]string{
		holds:      w.fan(j, row),
		readsFrom:  w.set("L", j),
		readsTo:    fmt.Sprintf("IF(AND(%s>=%s,$B%d>0),%s,-1)", most, low, row, most),
		beginsAt:   fmt.Sprintf("IF(OR(%s<0,%s),-1,%s)", high, below, low),
		judgesFrom: fmt.Sprintf("IF(OR(%s<0,%s),-1,MAX(%s))", high, further, strings.Join(begins, ",")),
		judgesTo:   fmt.Sprintf("IF(OR(%s<0,headroom<1),-1,IF(%s*headroom<=%s,%s/headroom,-1))", judge, judge, high, high),
		mayErr:     w.errorCell(j, row),
	}
}

// errorCell is how far a reading at the limit may be off, 1E+99 where the range
// isn't to be used. One that doesn't hold the headroom alone comes after those
// that do; of two with the same error, the lower comes first.
func (w *window) errorCell(j, row int) string {
	from, to := w.rigOf(j)
	q := fmt.Sprintf("$C%d*$H%d", row, row) + perArea(w.t.u)
	low, high := w.cell(readsFrom, j, row), w.cell(readsTo, j, row)
	return fmt.Sprintf("IF(OR(%s<0,%s<%s,%s>%s,NOT(%s)),1E+99,MAX(%s*%s/100,%s)+%s*1E-10+IF(%s<=%s/headroom,0,1E+6))",
		high, q, low, q, high, w.judged(from, to, row, q, q), q, w.set("E", j), w.set("F", j), w.set("D", j), q, high)
}

// rigOf is the ranges of range j's rig.
func (w *window) rigOf(j int) (from, to int) {
	for r := 0; r+1 < len(w.t.first); r++ {
		if j >= w.t.first[r] && j < w.t.first[r+1] {
			return w.t.first[r], w.t.first[r+1]
		}
	}
	return 0, w.n
}

// state says where the section lies; areas may be off by 1e-9 m2, the noise of
// adding them up.
func (w *window) state(row int) string {
	least, most, per := fmt.Sprintf("$C%d", row), fmt.Sprintf("$D%d", row), fmt.Sprintf("$H%d", row)+perArea(w.t.u)
	noise := w.noise()
	smallest, largest := w.t.u.Rename("min_area_m2"), w.t.u.Rename("max_area_m2")
	small := least + "<" + smallest + "-" + noise
	large := "AND(" + largest + ">0," + most + ">" + largest + "+" + noise + ")"
	q := least + "*" + per
	in := w.judged(0, w.n, row, "("+least+"+"+noise+")*"+per, "("+most+"-"+noise+")*"+per)
	under := w.any(0, w.n, row, func(c func(string) string) string {
		return fmt.Sprintf("AND(%s>=0,%s<%s)", c(judgesTo), c(judgesTo), q)
	})
	above := w.any(0, w.n, row, func(c func(string) string) string {
		return fmt.Sprintf("AND(%s>=0,%s>%s)", c(judgesTo), c(judgesFrom), q)
	})
	return fmt.Sprintf(`IF(%s<=0,"plan again: no such class",IF(AND(NOT(%s),NOT(%s),%s),"in range",IF(OR(%s,(%s-%s)*%s>MAX(%s)),"OVER RANGE",`+
		`IF(%s,"UNDER RANGE, area",IF(AND(%s,%s),"UNDER RANGE, gap","UNDER RANGE")))))`,
		per, small, large, in, large, most, noise, per, w.all(judgesTo, row), w.judged(0, w.n, row, q, q), under, above)
}

// noise is what an area may be off: a hundredth of a mm2 and less.
func (w *window) noise() string {
	if w.t.u == units.US {
		return "1E-8"
	}
	return "1E-9"
}

// bestCell is the error of the range that a rig would use, without the mark of
// one that doesn't hold the headroom alone.
func (w *window) bestCell(r, row int) string {
	least := "MIN(" + w.span(mayErr, w.t.first[r], w.t.first[r+1], row) + ")"
	return fmt.Sprintf("IF(%s>=1E+99,1E+99,IF(%s>=1E+6,%s-1E+6,%s))", least, least, least, least)
}

// toSet is the range with the smallest error; of several rigs, of the smallest of
// what each would use.
func (w *window) toSet(row int) string {
	name := func(r int) string {
		from, to := w.t.first[r], w.t.first[r+1]
		errs := w.span(mayErr, from, to, row)
		var names []string
		for j := from; j < to; j++ {
			text := w.set("B", j)
			if w.named {
				text = w.set("A", j) + `&": "&` + text
			}
			names = append(names, text)
		}
		return fmt.Sprintf("CHOOSE(MATCH(MIN(%s),%s,0),%s)", errs, errs, strings.Join(names, ","))
	}
	if w.rigs() == 1 {
		return fmt.Sprintf(`IF(MIN(%s)>=1E+99,"",%s)`, w.all(mayErr, row), name(0))
	}
	all := w.span(best, 0, w.rigs(), row)
	var names []string
	for r := range w.rigs() {
		names = append(names, name(r))
	}
	return fmt.Sprintf(`IF(MIN(%s)>=1E+99,"",CHOOSE(MATCH(MIN(%s),%s,0),%s))`, all, all, all, strings.Join(names, ","))
}

func (w *window) rigs() int { return len(w.t.first) - 1 }
