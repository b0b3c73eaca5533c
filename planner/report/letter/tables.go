package letter

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// figures is the table of the largest differences: of sums where any are stated,
// and of rows.
func (o *view) figures(v *report.Check) {
	type item struct {
		figure
		off float64
	}
	var sums, rows []item
	for i := range v.Sums {
		x := &v.Sums[i]
		f := figure{short(x.By+" "+x.Name, 18), show.Count(x.Rows, "row"), short(x.Typed, 14), m2(x.Area), signed(x.Difference), percent(x.Percent), short(because(x.Reason), 68)}
		sums = append(sums, item{f, math.Inf(1)})
	}
	differ := 0
	for i := range v.Rows {
		x := &v.Rows[i]
		if x.Verdict == "agrees" || x.Area == nil {
			continue
		}
		differ++
		f := figure{short(x.Name, 14), short(x.Kind, 14) + " " + unbroken(short(strings.Join(nonempty(times(x.Quantity), x.Size), " "), 28)), short(x.Typed, 14), m2(*x.Area), signed(*x.Difference), "", short(because(x.Reason), 68)}
		if x.Percent != nil {
			f.Percent = percent(*x.Percent)
		}
		rows = append(rows, item{f, math.Abs(*x.Difference)})
	}
	slices.SortStableFunc(rows, func(a, b item) int { return cmp.Compare(b.off, a.off) })
	o.RowsOf, o.RowsHead = "row", "The largest differences"
	if len(rows) == 0 {
		o.RowsOf, o.RowsHead = "part", "The stated totals"
	}
	all := append(slices.Clone(sums[:min(len(sums), mostRows/2)]), rows...)
	if len(rows) == 0 {
		all = sums
	}
	left := len(sums) + len(rows) - min(len(all), mostRows)
	for _, x := range all[:min(mostRows, len(all))] {
		o.Rows = append(o.Rows, x.figure)
	}
	if left > 0 {
		o.RowsRest = fmt.Sprintf("%s more; the workbook check.xlsx, which goes with this letter, has every figure with its working.", count(left, "figure", "figures"))
	} else if len(o.Rows) > 0 {
		o.RowsRest = "The workbook check.xlsx, which goes with this letter, has every figure with its working."
	}
}

func because(reason string) string {
	switch reason {
	case "the cause":
		return "as above"
	case "":
		return "no explanation found"
	}
	return reason
}

func times(n int) string {
	if n < 2 {
		return ""
	}
	return fmt.Sprintf("%d of", n)
}

func m2(v float64) string { return fmt.Sprintf("%.2f", v) }

func percent(v float64) string { return minus(fmt.Sprintf("%+.1f", v)) }

func signed(v float64) string { return minus(show.Signed(v)) }

// minus writes a true minus sign.
func minus(s string) string { return strings.Replace(s, "-", "−", 1) }

// unbroken keeps a size on one line.
func unbroken(size string) string { return strings.ReplaceAll(size, " ", "\u00a0") }

// effects is what the stated areas do to the test, the largest differences first.
func (o *view) effects(v *report.Check) {
	list := make([]*report.CheckEffect, 0, len(v.Effects))
	for i := range v.Effects {
		list = append(list, &v.Effects[i])
	}
	slices.SortStableFunc(list, func(a, b *report.CheckEffect) int {
		return cmp.Compare(math.Abs(b.Stated-b.Area), math.Abs(a.Stated-a.Area))
	})
	missing := ""
	for _, e := range list[:min(mostEffects, len(list))] {
		f := effect{Name: short(show.First(e.About()), 22), Stated: m2(e.Stated), Ours: m2(e.Area)}
		if e.Missing != "" {
			missing = e.Missing
			o.Effects = append(o.Effects, f)
			continue
		}
		f.Test = fmt.Sprintf("%s, %g Pa %s", e.Class, e.Pa, e.Sign)
		f.LimitStated, f.Limit, f.Proves = show.Limit(e.LimitStated), show.Limit(e.Limit), "class "+e.Proves
		if e.Proves == "" {
			f.Proves = "no class"
		}
		o.Effects = append(o.Effects, f)
		o.EffectText = append(o.EffectText, short(f.Name+": "+strings.Join(e.Sentences(), " "), 360))
	}
	if n := len(list) - mostEffects; n > 0 {
		o.EffectText = append(o.EffectText, fmt.Sprintf("The workbook has %s more.", count(n, "part", "parts")))
	}
	if missing != "" {
		o.EffectText = append(o.EffectText, short("A limit can't be given everywhere: "+missing+".", 200))
	}
	if len(o.Effects) > 0 {
		o.EffectText = append([]string{"The permitted leakage is a limit per m² times the area, so a wrong area moves it in the same proportion."}, o.EffectText...)
	}
}

// steps goes from the stated total to ours; what doesn't fit is one step.
func (o *view) steps(r *report.Reckoning) {
	if len(r.Lines) == 0 {
		return
	}
	o.Steps = append(o.Steps, step{Text: "Stated", Running: m2(r.Stated)})
	keep := slices.Clone(r.Lines)
	if len(keep) > mostSteps {
		rest := report.ReckoningLine{Text: fmt.Sprintf("%d further steps, in the workbook", len(keep)-mostSteps+1)}
		for _, l := range keep[mostSteps-1:] {
			rest.Change += l.Change
			rest.Running = l.Running
		}
		keep = append(keep[:mostSteps-1], rest)
	}
	for i := range keep {
		l := keep[i]
		for k := range l.Names {
			l.Names = slices.Clone(l.Names)
			l.Names[k] = short(l.Names[k], 12)
		}
		o.Steps = append(o.Steps, step{Text: short(show.First(show.Step(&l)), 120), Change: signed(l.Change), Running: m2(l.Running)})
	}
	o.Steps = append(o.Steps, step{Text: "Worked out", Running: m2(r.Area), Sum: true})
}
