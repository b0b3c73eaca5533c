// Package audit holds the areas that somebody else states against those worked
// out, and looks for the reason why they differ.
//
// The steps, in the order in which they run:
//
//  1. Each stated figure is set beside the one worked out. The digits as typed
//     tell how it was rounded.
//  2. The known mistakes, alone and in pairs, are tried on the whole list at
//     once, or on a system, a shape or a kind of it. What a row's figure would
//     have been is worked out from its piece anew, with the openings that are
//     cut in it.
//  3. A cause is weighed by what it leaves unexplained and by how much has to be
//     supposed; the simplest that does it is named, with how well it does, and
//     with every other that does it as well.
//  4. What single rows have beside that is looked for row by row.
//
// Nothing here knows of classes, pressures or tests.
package audit

import (
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/totals"
)

// DefaultTolerance is the share of an area by which a stated one may differ
// before it's called different: 1 %, an assumption and a setting.
const DefaultTolerance = 0.01

// Options are what stated areas are held against.
type Options struct {
	Tolerance float64 // share of the area worked out, 0 to 1
	Totals    []takeoff.StatedTotal
	Sections  []Section
}

// Result is what was found out about stated areas.
type Result struct {
	Takeoff  *takeoff.Takeoff
	Figures  []Figure // of rows, in the file's order
	Rows     Finding
	Groups   []Group
	Sums     Finding // of sums, where no row states an area
	Unstated []int   // rows in scope that state none, though others do
	Lines    []Line  // from the stated total to ours
	Theirs   float64 // stated in all, m2
	Ours     float64 // of what they should come to, m2
	Compared Compared
	Missed   float64 // worked out of the rows that state no area, m2
	Faults   []takeoff.Fault
}

// Check holds the stated areas of a measured schedule, and stated sums, against
// what they should be.
func Check(t *takeoff.Takeoff, o Options) *Result {
	r := &Result{Takeoff: t, Figures: figuresOf(t, o.Tolerance)}
	r.Groups, r.Faults = groupsOf(t, o.Totals, o.Sections, o.Tolerance)
	m := newMeasurer(t)
	rows := newFinder(m, r.rowTargets())
	sums := newFinder(m, r.sumTargets())
	if len(rows.targets) > 0 {
		r.Rows = rows.find()
		rows.explainRows(r.Figures, &r.Rows)
		sums.explainSums(r.Groups, r.Rows.cause())
		r.findUnstated()
	} else {
		r.Sums = sums.find()
		sums.explainSums(r.Groups, r.Sums.cause())
	}
	r.reconcile(rows)
	return r
}

// cause is what figures are measured by: the cause, or the first of several; nil
// where there is none.
func (f *Finding) cause() *Cause {
	if f.Sure == Certain || f.Sure == Likely || f.Sure == OneOfThese {
		return f.Best()
	}
	return nil
}

// Differ counts the figures and sums that differ by more than the tolerance.
func (r *Result) Differ() int {
	n := 0
	for i := range r.Figures {
		if r.Figures[i].Verdict == Differs {
			n++
		}
	}
	for i := range r.Groups {
		if r.Groups[i].Verdict == Differs {
			n++
		}
	}
	return n
}

// rowTargets are the stated figures of rows that have an area.
func (r *Result) rowTargets() []target {
	var list []target
	for i := range r.Figures {
		x := &r.Figures[i]
		if x.Verdict == NoArea {
			continue
		}
		list = append(list, target{shares: []share{{x.Item, 1}}, stated: x.Stated, rounding: x.Rounding, area: x.Area, bits: x.bits(), agrees: x.Verdict == Agrees})
	}
	zeros(list)
	return list
}

// zeros makes a figure of 0 for a piece that has an area count for more: a wrong
// figure may be anything that stands in the list, and is hardly ever nothing.
func zeros(list []target) {
	if len(list) == 0 {
		return
	}
	areas := make([]float64, len(list))
	for i := range list {
		areas[i] = list[i].area
	}
	slices.Sort(areas)
	usual := areas[len(areas)/2]
	for i := range list {
		if x := &list[i]; x.stated == 0 && !x.agrees {
			x.bits = max(x.bits, missBits(0, usual, x.rounding))
		}
	}
}

func (r *Result) sumTargets() []target {
	var list []target
	for i := range r.Groups {
		g := &r.Groups[i]
		list = append(list, target{shares: g.all, stated: g.StatedTotal.Area, rounding: g.Rounding, area: g.Worked,
			bits: missBits(g.StatedTotal.Area, g.Worked, g.Rounding), agrees: g.Verdict == Agrees, others: othersOf(r.Takeoff, g)})
	}
	return list
}

func (r *Result) findUnstated() {
	var sum totals.Sum
	for i := range r.Takeoff.Items {
		if it := &r.Takeoff.Items[i]; counted(it) && !it.HasStated {
			r.Unstated = append(r.Unstated, i)
			sum.Add(it.Area)
		}
	}
	r.Missed = sum.Value()
}
