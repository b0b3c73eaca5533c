package text

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"blankoff/planner/price"
	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// Bill writes a priced plan.
func Bill(w io.Writer, v *report.Bill) error {
	b := bufio.NewWriter(w)
	billHead(b, v)
	if v.Nothing != "" {
		besides(b, v)
		return b.Flush()
	}
	billLines(b, v)
	unitPrices(b, v)
	riskOf(b, v)
	levers(b, v)
	besides(b, v)
	b.WriteString("\n")
	terms(b, v)
	return b.Flush()
}

// billHead says in one line what the bill comes to, and what it was made of.
func billHead(b *bufio.Writer, v *report.Bill) {
	c := &v.Counts
	first := fmt.Sprintf("%s for %s of %s m2 in %s, %s", v.Currency.Full(v.Total), show.Count(c.Tests, "test"), area(units.SI, c.Area), show.Count(c.Days, "day"), show.Count(c.Visits, "visit"))
	if v.Nothing != "" {
		first = "nothing to price, " + v.Currency.Full(v.Total) + " for 0 tests: " + v.Nothing
	}
	if n := len(v.NotPriced); n > 0 {
		first += fmt.Sprintf(", %s NOT PRICED", show.Count(n, "line"))
	}
	if c.Groupings > 0 {
		first += ", a GROUPING"
	}
	if n := v.Schedule.RowsRefused; n > 0 {
		first += fmt.Sprintf(", %d of %s REFUSED", n, show.Count(v.Schedule.RowsRead, "row"))
	}
	if r := v.Risk; r != nil {
		first += "; with retests and visits more, P80 " + v.Currency.Text(price.Money(r.Outcome.Money[1].Value))
	}
	paragraph(b, "", first)
	b.WriteString("\n")
	jobHead(b, v.Job)
	paragraph(b, "schedule  ", v.Schedule.File+", rows: "+show.RowsIn(units.SI, &v.Schedule))
	if v.RatesName != "" {
		paragraph(b, "rates     ", v.RatesName)
	}
	paragraph(b, "rig       ", v.Settings.Rig)
	paragraph(b, "fingerprint  ", fmt.Sprintf("%s = schedule %s + settings and rates %s", v.Fingerprint.Short(), firstOf(v.Fingerprint.Schedule), firstOf(v.Fingerprint.Settings)))
	paragraph(b, "money     ", v.Currency.Code+"; "+v.Rounding)
	for _, l := range v.Look {
		paragraph(b, "LOOK      ", l)
	}
}

func firstOf(s string) string { return s[:min(16, len(s))] }

// billLines writes the bill itself.
func billLines(b *bufio.Writer, v *report.Bill) {
	title(b, "Bill, "+v.Currency.Code)
	money := v.Currency.Text
	writeTable(b, []Column{
		{Head: "no", Align: Right}, {Head: "what", Max: 48}, {Head: "quantity", Align: Point}, {Head: "unit"}, {Head: "rate", Align: Right}, {Head: "amount", Align: Right}, {Head: "from"},
	}, func(row func(...string)) {
		in := price.Money(0)
		for i, l := range v.Lines {
			rate := money(l.Rate)
			if l.Rate == 0 {
				rate = "included"
			}
			row(strconv.Itoa(l.No), l.What, l.Quantity.Text(), l.Unit, rate, money(l.Amount), l.From)
			if in += l.Amount; i == len(v.Lines)-1 || v.Lines[i+1].Group != l.Group {
				row("", "sum: "+l.Group, "", "", "", money(in), "")
				in = 0
			}
		}
		row("", "sum", "", "", "", money(v.Subtotal), "")
		if v.MarkupPct > 0 {
			row("", "mark-up", v.MarkupPct.Text(), "%", "", money(v.Markup), "of the sum")
		}
		if v.ToMinimum > 0 {
			row("", "to the minimum charge", "", "", money(v.Minimum), money(v.ToMinimum), "minimum of "+v.MinimumOf)
		}
		row("", "TOTAL", "", "", "", money(v.Total), "without taxes")
	})
	for _, n := range v.NotPriced {
		paragraph(b, "  NOT PRICED  ", fmt.Sprintf("%s, %s: write %s", n.What, show.Quantity(n.Quantity, n.Unit), n.Cure))
	}
}

// unitPrices writes the total divided three ways, and the rates of what is
// charged as it comes.
func unitPrices(b *bufio.Writer, v *report.Bill) {
	title(b, "The same total by unit")
	writeTable(b, []Column{{Head: "per"}, {Head: "quantity", Align: Point}, {Head: "price", Align: Right}, {Head: "shares that add up to the total"}}, func(row func(...string)) {
		for _, u := range v.UnitPrice {
			row(u.Per, u.Quantity.Text(), v.Currency.Text(u.Price), shares(&u, v.Currency))
		}
	})
	if len(v.Rates) == 0 {
		return
	}
	title(b, "Rates for more or less, and for what is charged as it comes")
	writeTable(b, []Column{{Head: "what", Max: 50}, {Head: "unit"}, {Head: "net", Align: Right}, {Head: "with mark-up", Align: Right}}, func(row func(...string)) {
		for _, r := range v.Rates {
			row(r.What, r.Unit, v.Currency.Text(r.Net), v.Currency.Text(r.Marked))
		}
	})
}

// shares writes the parts of a total: equal ones counted, others named.
func shares(u *price.UnitPrice, c price.Currency) string {
	if u.Per == "m2" {
		var out []string
		for _, p := range u.Parts {
			out = append(out, p.Name+" "+c.Text(p.Amount))
		}
		return show.Names(out, ", ", 4, 0)
	}
	var out []string
	for i := 0; i < len(u.Parts); {
		k := i
		for k < len(u.Parts) && u.Parts[k].Amount == u.Parts[i].Amount {
			k++
		}
		out = append(out, fmt.Sprintf("%d x %s", k-i, c.Text(u.Parts[i].Amount)))
		i = k
	}
	return strings.Join(out, ", ")
}

// Terms writes the assumptions and exclusions of a bill, ready to paste.
func Terms(w io.Writer, v *report.Bill) error {
	b := bufio.NewWriter(w)
	for _, l := range v.Job.Lines() {
		paragraph(b, "", l.Word+": "+l.Text)
	}
	if len(v.Job.Lines()) > 0 {
		b.WriteString("\n")
	}
	paragraph(b, "", fmt.Sprintf("Ductwork leakage tests: %s, taxes not in it", v.Currency.Full(v.Total)))
	paragraph(b, "", fmt.Sprintf("Fingerprint %s (schedule %s)", v.Fingerprint.Short(), firstOf(v.Fingerprint.Schedule)))
	b.WriteString("\n")
	terms(b, v)
	return b.Flush()
}

// terms writes assumptions and exclusions.
func terms(b *bufio.Writer, v *report.Bill) {
	for i, part := range []struct {
		head string
		list []string
	}{{"Assumptions", v.Assumptions}, {"Not in the price", v.Exclusions}} {
		if i > 0 {
			b.WriteString("\n")
		}
		b.WriteString(part.head + "\n")
		for k, line := range part.list {
			paragraph(b, fmt.Sprintf("  %2d  ", k+1), line)
		}
	}
}
