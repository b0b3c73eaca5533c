package report

import (
	"math"
	"strings"

	"blankoff/planner/effect"
	"blankoff/planner/job"
	"blankoff/planner/units"
	"blankoff/takeoff"
	"blankoff/takeoff/audit"
	"blankoff/takeoff/terms"
)

// CheckAsk is what a check is made with, beside the schedule.
type CheckAsk struct {
	Flags     effect.Flags
	Reading   float64 // L/s, of everything stated; 0: none
	Tolerance float64 // share
	Assumed   bool    // the tolerance is only the default
	Stated    *StatedFile
	Notes     []string
	Faults    []takeoff.Fault
	Job       *job.Job
}

// OfCheck builds the view of a check.
func OfCheck(r *audit.Result, a CheckAsk) *Check {
	t := r.Takeoff
	v := &Check{
		Schedule: t.Schedule, StatedFile: a.Stated, Basis: basisName(t), Measured: measured(t, units.SI),
		Tolerance: 100 * a.Tolerance, Assumed: a.Assumed, Rows: []CheckRow{}, Sums: []CheckSum{}, Effects: []CheckEffect{}, Unstated: []UnstatedRow{},
		Notes: append(list(a.Notes), t.Notes...), Faults: append(append(list(t.Faults), a.Faults...), r.Faults...),
	}
	for i := range r.Figures {
		v.addRow(r, &r.Figures[i])
	}
	for i := range r.Groups {
		v.addSum(r, &r.Groups[i])
	}
	v.Agrees = v.Counts.Differ == 0
	v.Reason = reasonOf(r)
	v.compare(r)
	v.addEffects(r, a)
	v.Reckoning = Reckoning{Stated: r.Theirs, Area: r.Ours, Lines: []ReckoningLine{}, Difference: r.Ours - r.Theirs}
	for _, l := range r.Lines {
		v.Reckoning.Lines = append(v.Reckoning.Lines, ReckoningLine{l.Words, list(l.Names), l.Change, l.Running})
		v.Reckoning.Difference = r.Ours - l.Running
	}
	v.Result = v.resultSentence()
	v.Ask = v.askFor(r)
	if a.Job != nil {
		v.Job = headOf(*a.Job)
	}
	return v
}

// count files a verdict.
func (c *CheckCounts) count(v audit.Verdict, explained bool) {
	c.Stated++
	switch v {
	case audit.Agrees:
		c.Agree++
	case audit.Near:
		c.Within++
	case audit.NoArea:
		c.NoArea++
	default:
		if c.Differ++; !explained {
			c.Unknown++
		}
	}
}

func (v *Check) addRow(r *audit.Result, x *audit.Figure) {
	t := r.Takeoff
	it := &t.Items[x.Item]
	row := CheckRow{
		Tag: it.Tag, Name: it.Name(), Sheet: it.At.Sheet, Row: it.At.Row, System: it.System, Kind: it.Piece.Kind.String(), Size: it.SizeText(),
		Quantity: it.Quantity, Stated: x.Stated, Typed: it.StatedText, Rounding: x.Rounding, Verdict: string(x.Verdict),
	}
	if x.Verdict != audit.NoArea {
		area, diff := x.Area, x.Difference()
		row.Area, row.Difference, row.Working = &area, &diff, t.Working(it)
		if area > 0 {
			share := 100 * diff / area
			row.Percent = &share
		}
		row.Reason = rowReason(r, x)
	}
	v.Counts.count(x.Verdict, row.Reason != "")
	v.Rows = append(v.Rows, row)
}

// rowReason says why a row differs, as far as known.
func rowReason(r *audit.Result, x *audit.Figure) string {
	switch best := r.Rows.Best(); {
	case x.Verdict == audit.Agrees && (x.Fits || best == nil):
		return ""
	case x.Fits && best != nil:
		return r.Rows.Words()
	}
	return slipText(x.Slips)
}

// slipText is what a figure has, or may have.
func slipText(slips []audit.Slip) string {
	var words []string
	for _, s := range slips {
		words = append(words, s.Words)
	}
	return strings.Join(words, ", or ")
}

func (v *Check) addSum(r *audit.Result, g *audit.Group) {
	s := CheckSum{
		By: g.By, Name: g.Name, Rows: g.Rows, Stated: g.Area, Typed: g.Text, Rounding: g.Rounding, Area: g.Worked,
		Difference: g.Difference(), Verdict: string(g.Verdict), Reason: slipText(g.Slips),
	}
	if g.Worked > 0 {
		s.Percent = 100 * s.Difference / g.Worked
	}
	switch {
	case g.Verdict == audit.Agrees:
	case g.Own:
		s.Reason = ownRows
	case g.Fits:
		s.Reason = foundOf(r).Words()
	}
	s.Flag = frenchFlag(g)
	v.Counts.count(g.Verdict, s.Reason != "")
	v.Sums = append(v.Sums, s)
}

// foundOf is what was found out: about rows, or about sums where no row states
// an area.
func foundOf(r *audit.Result) *audit.Finding {
	if len(r.Figures) == 0 {
		return &r.Sums
	}
	return &r.Rows
}

func reasonOf(r *audit.Result) Reason {
	f := foundOf(r)
	out := Reason{Sure: string(f.Sure), Causes: []Cause{}, More: f.More, Alike: []string{}}
	for i := range f.Alike {
		out.Alike = append(out.Alike, f.Alike[i].Text())
	}
	for i := range f.Causes {
		c := &f.Causes[i]
		one := Cause{Text: c.Text(), Hits: c.Hits, Of: c.Of, Tells: c.Tells, Breaks: c.Breaks}
		for _, p := range c.Parts {
			one.Keys = append(one.Keys, p.Key)
		}
		out.Causes = append(out.Causes, one)
	}
	if out.Sentence = out.words(); f.Single && out.Sentence != "" {
		out.Sentence += " The totals take in so many rows that only single causes were tried."
	}
	return out
}

// part is what is tested in one go, as far as areas are stated for it.
type part struct {
	by, name         string
	stated, area, on float64
	rows             []int
	unstated         int
}

// partsOf are the stated sums; without any, the systems of the stated rows.
func partsOf(r *audit.Result) []part {
	var parts []part
	for i := range r.Groups {
		g := &r.Groups[i]
		parts = append(parts, part{by: g.By, name: g.Name, stated: g.Area, area: g.Worked, on: g.Reading, rows: g.Items})
	}
	if len(parts) == 0 {
		at := map[string]int{}
		for i := range r.Figures {
			x := &r.Figures[i]
			it := &r.Takeoff.Items[x.Item]
			if x.Verdict == audit.NoArea || it.Scope != terms.In {
				continue
			}
			k, ok := at[it.System]
			if !ok {
				k, at[it.System] = len(parts), len(parts)
				parts = append(parts, part{by: "system", name: it.System})
			}
			parts[k].stated, parts[k].area, parts[k].rows = parts[k].stated+x.Stated, parts[k].area+x.Area, append(parts[k].rows, x.Item)
		}
		for _, i := range r.Unstated {
			if k, ok := at[r.Takeoff.Items[i].System]; ok {
				parts[k].unstated++
			}
		}
	}
	return parts
}

// addEffects says what the stated areas do to the test of each sum; without sums,
// of each system.
func (v *Check) addEffects(r *audit.Result, a CheckAsk) {
	parts := partsOf(r)
	for _, p := range parts {
		if len(parts) == 1 && p.on == 0 {
			p.on = a.Reading
		}
		o := CheckEffect{By: p.by, Name: p.name, Stated: p.stated, Area: p.area, Rows: len(p.rows), Unstated: p.unstated, Others: len(parts) > 1}
		d, err := effect.DutyOf(r.Takeoff, p.rows, a.Flags)
		if err != nil || p.area <= 0 {
			if o.Missing = "nothing is worked out for it"; err != nil {
				o.Missing = err.Error()
			}
			v.Effects = append(v.Effects, o)
			continue
		}
		e := effect.Of(d, p.stated, p.area, p.on)
		o.Scheme, o.Class, o.Pa, o.Sign = d.Scheme.Name, d.Class.Name, d.Pa, d.Sign
		o.PerM2, o.LimitStated, o.Limit, o.Proves, o.Favours = e.PerM2, e.LimitStated, e.LimitTrue, e.Proves, e.Favours(math.Min(a.Tolerance, 0.01))
		o.Source = d.Class.Source + " (" + d.Class.Sureness + ")"
		if p.on > 0 {
			o.Reading, o.BreakEven, o.PassStated, o.Pass = p.on, e.BreakEven, e.Passes(p.stated), e.Passes(p.area)
		}
		v.Effects = append(v.Effects, o)
	}
	if a.Reading > 0 && len(parts) > 1 {
		v.Notes = append(v.Notes, "the reading isn't used: there are several systems or sections, so a column reading_l_s in the list of stated areas has to say whose it is")
	}
}
