package xlsx

import (
	"fmt"
	"math"
	"strings"

	"blankoff/planner/price"
	"blankoff/planner/price/risk"
	"blankoff/planner/report/show"
)

// unitSheet writes the total divided by tests, m2 and days, the shares that add
// up to it again, and the rates of what is charged as it comes.
func unitSheet(b *billBook) error {
	v := b.v
	s, err := b.sheet(sheetUnits, true, 44, 12, 14, 16, 14, 14)
	if err != nil {
		return err
	}
	if err := s.out.SetColVisible(5, 6, false); err != nil { // the shares are worked out there
		return err
	}
	s.free(faceTitle, "The same total by unit, "+v.Currency.Code)
	s.head("per", ">quantity", ">price")
	for _, u := range v.UnitPrice {
		s.row(faceText, u.Per, b.quantity(u.Quantity, faceWhole, faceHundred), counted{b.rounded(fmt.Sprintf("total/B%d", s.at+1)), b.major(u.Price), faceMoney})
		s.name("price_per_"+u.Per, "C", s.at)
	}
	s.gap()
	s.free(faceFree, "Shares of the total by largest remainder: they add up to it again.")
	shares := map[string][]price.Part{}
	for _, u := range v.UnitPrice {
		shares[u.Per] = u.Parts
	}
	if parts := shares["test"]; len(parts) > 0 {
		s.sections(parts, shares["m2"])
	}
	if parts := shares["day"]; len(parts) > 0 {
		s.gap()
		s.days(parts)
	}
	s.gap()
	s.free(faceTitle, "Rates for more or less, and for what is charged as it comes")
	s.head("what", "unit", ">net", ">with mark-up")
	on := map[string]bool{}
	for _, l := range v.Lines {
		on[l.Key] = true
	}
	for _, r := range v.Rates {
		net := any(cellOf{b.major(r.Net), faceInMoney})
		if on[r.Key] {
			net = counted{"rate_" + r.Key, b.major(r.Net), faceMoney}
		}
		s.row(faceText, r.What, r.Unit, net, counted{fmt.Sprintf("C%d+%s", s.at+1, b.rounded(fmt.Sprintf("C%d*markup_percent/100", s.at+1))), b.major(r.Marked), faceMoney})
	}
	return s.end()
}

// minor is the total in minor units, as a formula with its value.
func (b *billBook) minor() string {
	return fmt.Sprintf("ROUND(total*%s,0)", b.scale())
}

func (b *billBook) scale() string { return fmt.Sprintf("%.0f", math.Pow10(b.v.Currency.Digits)) }

// sections shares the total out over the tests: alike, and by area.
func (s *billPage) sections(alike, byArea []price.Part) {
	b, n := s.b, len(alike)
	area := b.v.TestAreas()
	s.head("section", ">m2", ">a test", ">by m2", ">working: whole", ">remainder")
	first := s.at + 1
	last := s.at + n
	weights, rests := fmt.Sprintf("B$%d:B$%d", first, last), fmt.Sprintf("F$%d:F$%d", first, last)
	weight := func(cell string) string { return "ROUND(" + cell + "*100,0)" }
	all := fmt.Sprintf("ROUND(SUM(%s)*100,0)", weights)
	sum, whole := 0.0, 0.0
	for _, q := range area {
		whole += q.Value() * 100
	}
	for k := range alike {
		r := s.at + 1
		w := weight(fmt.Sprintf("B%d", r))
		total := float64(b.v.Total)
		floor := math.Floor(total * float64(area[k]) / whole)
		above := "0"
		if k > 0 {
			above = fmt.Sprintf("COUNTIF(F$%d:F%d,F%d)", first, r-1, r)
		}
		s.row(faceText, alike[k].Name, cellOf{area[k].Value(), faceHundred}, s.alike(k, n, first, alike[k].Amount),
			counted{fmt.Sprintf("(E%d+IF(RANK(F%d,%s)+%s<=%s-SUM(E$%d:E$%d),1,0))/%s", r, r, rests, above, b.minor(), first, last, b.scale()), b.major(byArea[k].Amount), faceMoney},
			counted{fmt.Sprintf("INT(%s*%s/%s)", b.minor(), w, all), floor, faceWhole},
			counted{fmt.Sprintf("%s*%s-E%d*%s", b.minor(), w, r, all), total*float64(area[k]) - floor*whole, faceWhole})
		sum += area[k].Value()
	}
	s.row(faceSum, "all", counted{fmt.Sprintf("SUM(B%d:B%d)", first, last), math.Round(sum*100) / 100, faceHundred},
		counted{fmt.Sprintf("SUM(C%d:C%d)", first, last), b.major(b.v.Total), faceSumMoney}, counted{fmt.Sprintf("SUM(D%d:D%d)", first, last), b.major(b.v.Total), faceSumMoney})
}

// alike is share k of n like ones.
func (s *billPage) alike(k, n, first int, m price.Money) counted {
	t := s.b.minor()
	return counted{fmt.Sprintf("(INT(%s/%d)+IF(ROW()-%d<%s-%d*INT(%s/%d),1,0))/%s", t, n, first, t, n, t, n, s.b.scale()), s.b.major(m), faceMoney}
}

func (s *billPage) days(parts []price.Part) {
	s.head("day", "", ">a day")
	first := s.at + 1
	for k, p := range parts {
		s.row(faceText, p.Name, "", s.alike(k, len(parts), first, p.Amount))
	}
	s.row(faceSum, "all", "", counted{fmt.Sprintf("SUM(C%d:C%d)", first, s.at), s.b.major(s.b.v.Total), faceSumMoney})
}

// riskSheet writes what the job may come to. It is worked out, not live.
func riskSheet(b *billBook) error {
	r := b.v.Risk
	if r == nil {
		return nil
	}
	s, err := b.sheet(sheetRisk, false, 50, 14, 14, 14, 16, 16, 24)
	if err != nil {
		return err
	}
	o := r.Outcome
	money := func(x float64) cellOf { return cellOf{b.major(price.Money(math.Round(x))), faceMoney} }
	count := func(x float64) cellOf { return cellOf{x, faceWhole} }
	s.free(faceTitle, "What it may come to with retests and visits more, at the same rates, "+b.v.Currency.Code)
	s.free(faceFree, fmt.Sprintf("Simulated: %d runs, seed %d; worked out once, it doesn't follow what is changed in the bill.", o.Runs, o.Seed))
	s.head("", ">P50", ">P80", ">P90", ">P80 from", ">to (95 %)")
	line := func(name string, q []risk.Quantile, cell func(float64) cellOf) {
		s.row(faceText, name, cell(q[0].Value), cell(q[1].Value), cell(q[2].Value), cell(q[1].Low), cell(q[1].High))
	}
	line("money", o.Money, money)
	line("days on site", o.Days, count)
	line("days, curing between visits in it", o.Elapsed, count)
	line("visits", o.Visits, count)
	line("sections that fail at first (exact)", o.Failures, count)
	s.gap()
	chance := func(what string, v float64) { s.row(faceText, what, cellOf{math.Round(v*1000) / 10, faceHundred}, "%") }
	s.row(faceText, "nothing fails, no waiting", money(float64(o.Clean)))
	s.row(faceText, "mean", money(o.Mean), "+/- "+b.v.Currency.Text(price.Money(math.Round(o.MeanError))))
	chance("the total of the bill is enough", r.Enough)
	chance("a section fails at first (exact)", o.Fail)
	chance("its pressure can't be held (exact)", o.Unheld)
	chance("none fails (exact)", o.None)
	chance("visits more than planned", o.Return)
	chance("a section still open after its last retest", o.Open)
	if o.Widened > 0 {
		chance("the sample has to be widened", o.Widened)
	}
	s.row(faceText, "retests expected (exact)", cellOf{math.Round(o.Retests*100) / 100, faceHundred})
	s.gap()
	s.levers()
	s.gap()
	s.free(faceTitle, "Supposed: "+strings.TrimSpace(r.Prior+" "+r.Title))
	s.head("figure", ">value", "basis")
	for _, f := range r.Figures {
		s.row(faceText, f.What, cellOf{f.Value, faceRight}, cellOf{f.Basis, faceOver})
	}
	return s.end()
}

// levers writes the figures that move P80 most.
func (s *billPage) levers() {
	r, b := s.b.v.Risk, s.b
	if len(r.Levers) == 0 {
		return
	}
	s.free(faceTitle, "What moves the P80 most, one figure at a time")
	s.head("figure", ">low", ">high", ">P80 at low", ">at high", ">swing", "")
	most := r.Levers[0].Swing()
	for i := range r.Levers {
		l := &r.Levers[i]
		at := func(x float64) cellOf { return cellOf{b.major(price.Money(math.Round(x))), faceMoney} }
		s.row(faceText, l.What, cellOf{l.Low, faceRight}, cellOf{l.High, faceRight}, at(l.AtLow), at(l.AtHigh), at(l.Swing()), cellOf{strings.Repeat("|", max(1, int(math.Round(40*l.Swing()/most)))), faceOver})
	}
}

// besideSheet writes other assumptions side by side.
func besideSheet(b *billBook) error {
	if len(b.v.Comparison) == 0 {
		return nil
	}
	s, err := b.sheet(sheetBeside, false, 34, 7, 8, 8, 8, 7, 11, 14, 14, 14, 14, 44)
	if err != nil {
		return err
	}
	s.free(faceTitle, "Side by side, "+b.v.Currency.Code)
	s.head("what", ">tests", ">under range", ">over range", ">visits", ">days", ">m2", ">total", ">difference", ">P80", ">P90", "note")
	for _, x := range b.v.Comparison {
		if x.Why != "" {
			s.row(faceText, x.Name, "", "", "", "", "", "", "no plan", "", "", "", x.Why)
			continue
		}
		n := func(v int) cellOf { return cellOf{v, faceWhole} }
		m := func(v price.Money) cellOf { return cellOf{b.major(v), faceMoney} }
		note := x.Note
		if x.NotPriced > len(b.v.NotPriced) {
			note = strings.Trim(show.Count(x.NotPriced, "line")+" not priced; "+note, "; ")
		}
		s.row(faceText, x.Name, n(x.Tests), n(x.UnderRange), n(x.OverRange), n(x.Visits), n(x.Days), cellOf{math.Round(x.Area*100) / 100, faceHundred},
			m(x.Total), m(x.Difference), m(price.Money(math.Round(x.P80))), m(price.Money(math.Round(x.P90))), note)
	}
	return s.end()
}
