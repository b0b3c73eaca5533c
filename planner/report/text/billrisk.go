package text

import (
	"bufio"
	"fmt"
	"math"
	"strconv"
	"strings"

	"blankoff/planner/price"
	"blankoff/planner/price/risk"
	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// riskOf writes what the job may come to.
func riskOf(b *bufio.Writer, v *report.Bill) {
	r := v.Risk
	if r == nil {
		return
	}
	o, money := r.Outcome, func(x float64) string { return v.Currency.Text(price.Money(math.Round(x))) }
	title(b, "What it may come to with retests and visits more, at the same rates")
	writeTable(b, []Column{{Head: ""}, {Head: "P50", Align: Right}, {Head: "P80", Align: Right}, {Head: "P90", Align: Right}, {Head: "P80 lies between"}}, func(row func(...string)) {
		line := func(name string, q []risk.Quantile, write func(float64) string) {
			row(name, write(q[0].Value), write(q[1].Value), write(q[2].Value), write(q[1].Low)+" and "+write(q[1].High))
		}
		count := func(x float64) string { return strconv.Itoa(int(x)) }
		line("money, "+v.Currency.Code, o.Money, money)
		line("days on site", o.Days, count)
		line("days, curing between visits in it", o.Elapsed, count)
		line("visits", o.Visits, count)
		row("sections that fail at first", count(o.Failures[0].Value), count(o.Failures[1].Value), count(o.Failures[2].Value), "exact")
	})
	lacks := ""
	if more := o.Money[1].Value - float64(v.Total); more > 0 {
		lacks = "; for P80 it lacks " + money(more)
	}
	paragraph(b, "  ", fmt.Sprintf("nothing fails, no waiting: %s; mean %s (standard error %s); the total of the bill is enough in %s (standard error %s)%s",
		v.Currency.Text(o.Clean), money(o.Mean), money(o.MeanError), percent(r.Enough), percent(r.EnoughErr), lacks))
	paragraph(b, "  ", fmt.Sprintf("a section fails at first: %s, its pressure can't be held: %s; none fails: %s; retests expected: %.2f (all exact)",
		percent(o.Fail), percent(o.Unheld), percent(o.None), o.Retests))
	paragraph(b, "  ", fmt.Sprintf("visits more than planned: %s; a section still open after its last retest: %s%s", percent(o.Return), percent(o.Open), widened(o)))
	paragraph(b, "  ", fmt.Sprintf("%d runs, seed %d; between: where the order statistics put P80, 95 %%; P80 of money has a standard error of %s", o.Runs, o.Seed, money(o.Money[1].Error())))
	if len(r.Unpriced) > 0 {
		paragraph(b, "  NOT PRICED  ", "in the risk, for want of a rate: "+strings.Join(r.Unpriced, ", "))
	}
	supposed(b, r)
}

// percent writes a chance.
func percent(v float64) string {
	if v > 0 && v < 0.001 {
		return "under 0.1 %"
	}
	return upTo(100*v, 1) + " %"
}

func widened(o *risk.Outcome) string {
	if o.Widened == 0 {
		return ""
	}
	return "; the sample has to be widened: " + percent(o.Widened)
}

// supposed writes the prior, and what past results made of it.
func supposed(b *bufio.Writer, r *report.Risk) {
	name := "prior " + r.Prior
	if r.Title != "" {
		name += " (" + r.Title + ")"
	}
	by := map[string][]string{}
	var order []string
	for _, f := range r.Figures {
		if by[f.Basis] == nil {
			order = append(order, f.Basis)
		}
		by[f.Basis] = append(by[f.Basis], f.What+" "+f.Value)
	}
	paragraph(b, "  supposed  ", name)
	for _, basis := range order {
		paragraph(b, "  - ", basis+": "+strings.Join(by[basis], ", "))
	}
	p := r.Past
	if p == nil {
		return
	}
	paragraph(b, "  results   ", fmt.Sprintf("%s, %d with a leak; %d passed at first (%s); they count for %s sections", show.Count(p.Results, "result"), p.Ratios, p.Passed, percent(float64(p.Passed)/float64(p.Results)), upTo(p.Counts, 1)))
	for _, line := range []struct {
		name string
		f    risk.Figures
	}{{"before", p.Before}, {"after", p.After}} {
		paragraph(b, "  - ", fmt.Sprintf("%s: median %s, spread %s, a section fails: %s", line.name, upTo(line.f.Median, 3), upTo(line.f.Spread, 2), percent(line.f.Fail)))
	}
	paragraph(b, "  - ", fmt.Sprintf("the results alone: median %s, spread %s; %s", upTo(p.Median, 3), upTo(p.Spread, 2), p.Method))
	for _, n := range p.Notes {
		paragraph(b, "  LOOK      ", n)
	}
}

// barWidth is the length of the longest bar.
const barWidth = 20

// levers writes the figures that move P80 most, with a bar for the swing.
func levers(b *bufio.Writer, v *report.Bill) {
	r := v.Risk
	if r == nil || len(r.Levers) == 0 {
		return
	}
	title(b, fmt.Sprintf("What moves the P80 most: one figure at a time, from %s", v.Currency.Text(price.Money(math.Round(r.LeverBase)))))
	most := r.Levers[0].Swing()
	writeTable(b, []Column{{Head: "figure", Max: 40}, {Head: "low", Align: Right}, {Head: "high", Align: Right}, {Head: "P80 at low", Align: Right}, {Head: "at high", Align: Right}, {Head: "swing"}}, func(row func(...string)) {
		for i := range r.Levers {
			l := &r.Levers[i]
			text := func(x float64) string { return v.Currency.Text(price.Money(math.Round(x))) }
			row(l.What, l.Low, l.High, text(l.AtLow), text(l.AtHigh), strings.Repeat("#", max(1, int(math.Round(barWidth*l.Swing()/most)))))
		}
	})
	paragraph(b, "  ", fmt.Sprintf("by the same luck in %d runs; rates are times 0.9 and 1.1; lows and highs that the prior file doesn't give are assumptions, no source", r.LeverRuns))
}

// besides writes other assumptions side by side.
func besides(b *bufio.Writer, v *report.Bill) {
	if len(v.Comparison) == 0 {
		return
	}
	title(b, "Side by side, "+v.Currency.Code)
	writeTable(b, []Column{
		{Head: "what", Max: 34}, {Head: "tests", Align: Right}, {Head: "under range", Align: Right}, {Head: "visits", Align: Right}, {Head: "days", Align: Right}, {Head: "m2", Align: Right},
		{Head: "total", Align: Right}, {Head: "difference", Align: Right}, {Head: "P80", Align: Right}, {Head: "P90", Align: Right},
	}, func(row func(...string)) {
		for i := range v.Comparison {
			x := &v.Comparison[i]
			if x.Why != "" {
				row(x.Name, "no plan")
				continue
			}
			difference := ""
			if i > 0 {
				difference = v.Currency.Text(x.Difference)
				if x.Difference > 0 {
					difference = "+" + difference
				}
			}
			text := func(x float64) string { return v.Currency.Text(price.Money(math.Round(x))) }
			row(x.Name, strconv.Itoa(x.Tests), strconv.Itoa(x.UnderRange), strconv.Itoa(x.Visits), strconv.Itoa(x.Days), area(units.SI, x.Area), v.Currency.Text(x.Total), difference, text(x.P80), text(x.P90))
		}
	})
	for i := range v.Comparison {
		switch x := &v.Comparison[i]; {
		case x.Why != "":
			paragraph(b, "  - ", x.Name+": "+x.Why)
		default:
			notes := []string{}
			if x.NotPriced > len(v.NotPriced) {
				notes = append(notes, show.Count(x.NotPriced, "line")+" not priced")
			}
			if x.OverRange > 0 {
				notes = append(notes, fmt.Sprintf("%d over range", x.OverRange))
			}
			if x.Note != "" {
				notes = append(notes, x.Note)
			}
			if len(notes) > 0 {
				paragraph(b, "  - ", x.Name+": "+strings.Join(notes, "; "))
			}
		}
	}
}
