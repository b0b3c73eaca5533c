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

// figures is the table of the largest differences, of sums where any are stated
// and of rows. What agrees or lies within the tolerance isn't in it.
func (o *view) figures(v *report.Check) {
	sums, rows := differing(v)
	most := mostRows
	if len(o.Unused) > 0 {
		most -= 2 // they stand on the same page
	}
	shown := sums[:min(len(sums), max(most/2, most-len(rows)))]
	left := len(sums) + len(rows)
	for _, g := range []struct {
		head string
		list []item
	}{{"stated totals", shown}, {"rows", rows[:min(len(rows), most-len(shown))]}} {
		if len(g.list) == 0 {
			continue
		}
		out := group{Head: g.head}
		for _, x := range g.list {
			out.Rows = append(out.Rows, x.figure)
		}
		left -= len(g.list)
		o.Groups = append(o.Groups, out)
	}
	o.RowsHead = "The figures that differ, the largest difference first"
	if left > 0 {
		o.RowsHead = "The largest differences"
		o.RowsRest = count(left, "more figure differs", "more figures differ") + fmt.Sprintf(" by more than %g %%; the workbook has them.", v.Tolerance)
	}
	if len(o.Groups) == 1 {
		o.Groups[0].Head = ""
	}
}

// unusedLine is where a line stands and what is wrong with it; what to do about it
// is told to who runs the check.
func unusedLine(f *show.Faults) string {
	wrong, _, _ := strings.Cut(f.Message, "; ")
	return strings.Join(nonempty(f.Sheet, show.RowsShort(f.Rows, 3), f.Heading), ", ") + ": " + wrong
}

// item is a line of the table and how large its difference is, m2.
type item struct {
	figure
	off float64
}

// differing are the sums and the rows that differ, the largest difference first.
func differing(v *report.Check) (sums, rows []item) {
	for i := range v.Sums {
		if x := &v.Sums[i]; x.Verdict == "differs" {
			f := figure{short(x.By+" "+x.Name, 18), show.Count(x.Rows, "row"), short(x.Typed, 14), m2(x.Area), signed(x.Difference), percent(x.Percent), short(because(x.Reason), 68)}
			sums = append(sums, item{f, math.Abs(x.Difference)})
		}
	}
	for i := range v.Rows {
		x := &v.Rows[i]
		if x.Verdict != "differs" || x.Area == nil {
			continue
		}
		kind := short(x.Kind, 14)
		if x.Tag != "" {
			kind = fmt.Sprintf("row %d: ", x.Row) + kind
		}
		f := figure{short(x.Name, 16), kind + " " + unbroken(short(strings.Join(nonempty(times(x.Quantity), x.Size), " "), 28)), short(x.Typed, 14), m2(*x.Area), signed(*x.Difference), "", short(because(x.Reason), 68)}
		if x.Percent != nil {
			f.Percent = percent(*x.Percent)
		}
		rows = append(rows, item{f, math.Abs(*x.Difference)})
	}
	for _, list := range [][]item{sums, rows} {
		slices.SortStableFunc(list, func(a, b item) int { return cmp.Compare(b.off, a.off) })
	}
	return sums, rows
}

// because is a reason away from the sentences that name the cause.
func because(reason string) string {
	switch {
	case report.ByCause(reason):
		return reason + " named on page 1"
	case reason == "":
		return "no explanation found"
	}
	return reason
}

// unused lists the lines of the list of sums that couldn't be used.
func (o *view) unused(v *report.Check) {
	faults := v.StatedFaults()
	if len(faults) == 0 {
		return
	}
	o.UnusedHead = "Lines of " + short(v.StatedFile.File, 40) + " that we couldn't use"
	all := show.Gather(faults)
	for i := range all[:min(mostUnused, len(all))] {
		o.Unused = append(o.Unused, short(unusedLine(&all[i]), 80))
	}
	if n := len(all) - mostUnused; n > 0 {
		o.Unused = append(o.Unused, fmt.Sprintf("and %d more, in the workbook", n))
	}
}

func times(n int) string {
	if n < 2 {
		return ""
	}
	return fmt.Sprintf("%d of", n)
}

func m2(v float64) string { return fmt.Sprintf("%.2f", v) }

func percent(v float64) string { return minus(show.Percent(v)) }

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
	for _, e := range list[:min(mostEffects, len(list))] {
		f := effect{Name: short(show.First(e.About()), 34), Stated: m2(e.Stated), Ours: m2(e.Area)}
		if e.Missing == "" {
			f.Test = fmt.Sprintf("%s, %g Pa %s", e.Class, e.Pa, e.Sign)
			f.LimitStated, f.Limit, f.Proves = show.Limit(e.LimitStated), show.Limit(e.Limit), "class "+e.Proves
			if e.Proves == "" {
				f.Proves = "no class"
			}
		}
		o.Effects = append(o.Effects, f)
	}
	o.effectText(list)
	if n := len(list) - mostEffects; n > 0 {
		o.EffectNotes = append(o.EffectNotes, fmt.Sprintf("The workbook has %s more.", count(n, "part", "parts")))
	}
	if len(o.Effects) > 0 {
		o.EffectNotes = append([]string{"The permitted leakage is a limit per m² times the area, so a wrong area moves it in the same proportion."}, o.EffectNotes...)
	}
}

// effectText says in sentences what changes: of the parts that it makes a
// difference to; those that it doesn't are named together.
func (o *view) effectText(list []*report.CheckEffect) {
	var same []string
	said, more, missing := 0, 0, ""
	for _, e := range list {
		name := short(e.About(), 34)
		switch {
		case e.Missing != "":
			missing = e.Missing
		case e.Favours == "" && e.Reading == 0:
			same = append(same, name)
		case said == mostSaid:
			more++
		default:
			said++
			o.EffectText = append(o.EffectText, short(show.First(name)+": "+limitsOf(e), 360))
		}
	}
	if more > 0 {
		o.EffectText = append(o.EffectText, "The workbook has "+count(more, "more part", "more parts")+" whose limit the stated area changes.")
	}
	if len(same) > 0 {
		slices.Sort(same)
		o.EffectText = append(o.EffectText, "No change to speak of in the limit of: "+show.Names(same, ", ", 4, 120)+".")
	}
	if missing != "" {
		o.EffectText = append(o.EffectText, short("A limit can't be given everywhere: "+missing+".", 200))
	}
}

// limitsOf is what the two areas permit, and what follows from it.
func limitsOf(e *report.CheckEffect) string {
	text := fmt.Sprintf("the stated %s m2 permit %s L/s, the %s m2 worked out %s L/s (class %s, %g Pa %s).", m2(e.Stated), show.Limit(e.LimitStated), m2(e.Area), show.Limit(e.Limit), e.Class, e.Pa, e.Sign)
	said := strings.Join(e.Sentences(), " ")
	return text + " " + strings.TrimPrefix(said, "The stated area is "+e.Favours+". ")
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
