package audit

import (
	"slices"

	"blankoff/takeoff/totals"
)

// Line is a step from the stated total to the one worked out.
type Line struct {
	Words   string
	Names   []string // rows, systems or sections that it concerns
	Change  float64  // m2
	Running float64  // m2
}

// Compared is what is stated and what is worked out of the same rows, or of the
// same sums.
type Compared struct {
	By           string // row, system, section or schedule
	Count        int
	Stated, Area float64 // m2
	Left         int     // rows that state an area and have none of ours
	LeftStated   float64 // m2
}

// reckoning gathers the steps.
type reckoning struct {
	supposed bool // the cause is only one of several
	lines    []Line
	sums     []totals.Sum
}

// words are those of the line of a mistake.
func (k *reckoning) words(m made) string {
	text := Part{m.Key, m.Words, m.scope}.Text()
	if k.supposed {
		return "supposed: " + text
	}
	return text
}

// add puts a change to a line; names of one line are gathered.
func (k *reckoning) add(words, name string, change float64) {
	i := slices.IndexFunc(k.lines, func(l Line) bool { return l.Words == words })
	if i < 0 {
		i = len(k.lines)
		k.lines, k.sums = append(k.lines, Line{Words: words}), append(k.sums, totals.Sum{})
	}
	if k.sums[i].Add(change); name != "" {
		k.lines[i].Names = append(k.lines[i].Names, name)
	}
}

// reconcile finds the steps from the stated total to ours. They add up exactly:
// each change is from one figure of a row to the next.
func (r *Result) reconcile(f *finder) {
	k := &reckoning{supposed: r.Rows.Sure == OneOfThese || r.Sums.Sure == OneOfThese}
	var theirs totals.Sum
	switch {
	case len(r.Figures) > 0:
		r.compareRows()
		r.stepRows(k, f, &theirs)
		r.Ours = r.Takeoff.Totals.Area
	case len(r.Groups) > 0:
		r.Ours = r.stepSums(k, f, &theirs)
	default:
		return
	}
	r.Theirs = theirs.Value()
	running := theirs
	for i := range k.lines {
		running.Add(k.sums[i].Value())
		k.lines[i].Change, k.lines[i].Running = k.sums[i].Value(), running.Value()
	}
	for _, l := range k.lines {
		if l.Change != 0 {
			r.Lines = append(r.Lines, l)
		}
	}
}

// The words of lines that aren't causes.
const (
	lineRounding = "rounding"
	lineSmall    = "differences within the tolerance, not explained"
	lineOpen     = "not explained"
	lineRefused  = "rows that have no area of ours"
	lineScope    = "rows that are not in scope"
	lineUnstated = "rows that state no area"
)

// compareRows adds up both sides of the rows that have both.
func (r *Result) compareRows() {
	var stated, area, left totals.Sum
	c := Compared{By: "row"}
	for i := range r.Figures {
		x := &r.Figures[i]
		if x.Verdict == NoArea {
			c.Left++
			left.Add(x.Stated)
			continue
		}
		c.Count++
		stated.Add(x.Stated)
		area.Add(x.Area)
	}
	c.Stated, c.Area, c.LeftStated = stated.Value(), area.Value(), left.Value()
	r.Compared = c
}

func (r *Result) stepRows(k *reckoning, f *finder, theirs *totals.Sum) {
	cause := r.Rows.cause()
	var made []made
	if cause != nil {
		made = cause.guess.made
		for _, m := range made {
			k.add(k.words(m), "", 0)
		}
	}
	for i := range r.Figures {
		x := &r.Figures[i]
		it := &r.Takeoff.Items[x.Item]
		theirs.Add(x.Stated)
		switch {
		case x.Verdict == NoArea:
			k.add(lineRefused, it.Name(), -x.Stated)
			continue
		case x.Fits:
			k.add(lineRounding, "", x.Under-x.Stated)
			f.unmake(k, made, []share{{x.Item, 1}}, it.Name(), x.Under, x.Area)
		case len(x.Slips) > 0:
			k.add(slipWords(x.Slips), it.Name(), x.Area-x.Stated)
		case x.Verdict == Differs:
			k.add(lineOpen, it.Name(), x.Area-x.Stated)
		default:
			k.add(lineSmall, it.Name(), x.Area-x.Stated)
		}
		if !counted(it) {
			k.add(lineScope, it.Name(), -x.Area)
		}
	}
	for _, i := range r.Unstated {
		k.add(lineUnstated, r.Takeoff.Items[i].Name(), r.Takeoff.Items[i].Area)
	}
	last(k, lineRounding)
}

// slipWords is what a row has, or may have.
func slipWords(list []Slip) string {
	if len(list) == 1 {
		return list[0].Words
	}
	words := ""
	for i, s := range list {
		if i > 0 {
			words += ", or "
		}
		words += s.Words
	}
	return words
}

// unmake takes the mistakes of a cause out of a figure one after another, the
// last one first.
func (f *finder) unmake(k *reckoning, list []made, shares []share, name string, under, right float64) {
	now := under
	for i := len(list) - 1; i >= 0; i-- {
		next := right
		if i > 0 {
			v, ok := f.predict(list[:i], shares)
			if !ok {
				v = now
			}
			next = v
		}
		if next != now {
			k.add(k.words(list[i]), name, next-now)
		}
		now = next
	}
	k.add(lineRounding, "", right-now)
}

// last moves a line to the end.
func last(k *reckoning, words string) {
	i := slices.IndexFunc(k.lines, func(l Line) bool { return l.Words == words })
	if i < 0 {
		return
	}
	l, s := k.lines[i], k.sums[i]
	k.lines = append(slices.Delete(k.lines, i, i+1), l)
	k.sums = append(slices.Delete(k.sums, i, i+1), s)
}

// stepSums steps over stated sums of one sort, so that nothing counts twice, and
// gives what they should come to.
func (r *Result) stepSums(k *reckoning, f *finder, theirs *totals.Sum) float64 {
	var ours totals.Sum
	by := ""
	for _, want := range []string{"schedule", "section", "system"} {
		if slices.ContainsFunc(r.Groups, func(g Group) bool { return g.By == want }) {
			by = want
		}
	}
	cause := r.Sums.cause()
	var made []made
	if cause != nil {
		made = cause.guess.made
		for _, m := range made {
			k.add(k.words(m), "", 0)
		}
	}
	for i := range r.Groups {
		g := &r.Groups[i]
		if g.By != by {
			continue
		}
		name, stated := g.Name, g.StatedTotal.Area
		theirs.Add(stated)
		ours.Add(g.Worked)
		r.Compared.Count++
		switch {
		case g.Fits:
			k.add(lineRounding, "", g.Under-stated)
			f.unmake(k, made, g.all, name, g.Under, g.Worked)
		case g.Verdict == Agrees:
			k.add(lineRounding, "", g.Worked-stated)
		case len(g.Slips) > 0:
			k.add(slipWords(g.Slips), name, g.Worked-stated)
		case g.Verdict == Differs:
			k.add(lineOpen, name, g.Worked-stated)
		default:
			k.add(lineSmall, name, g.Worked-stated)
		}
	}
	last(k, lineRounding)
	r.Compared.By, r.Compared.Stated, r.Compared.Area = by, theirs.Value(), ours.Value()
	return ours.Value()
}
