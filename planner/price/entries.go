package price

import (
	"fmt"
	"math"
	"strconv"

	"blankoff/planner/programme"
)

// unit is a rate of [rates].
type unit struct{ key, group, what, unit string }

// Groups of the bill, in its order.
const (
	onSite     = "site"
	testing    = "tests"
	blanks     = "blanks"
	reporting  = "report"
	allowances = "allowances"
	sums       = "provisional sums"
)

// Groups lists the groups of a bill in their order.
func Groups() []string { return []string{onSite, testing, blanks, reporting, allowances, sums} }

var units = []unit{
	{"mobilisation", onSite, "mobilisation: travel, setting up, clearing away", "visit"},
	{"crew_day", onSite, "crew on site", "person day"},
	{"test", testing, "leakage test of a section, in place", "test"},
	{"test_m2", testing, "ductwork tested", "m2"},
	{"report", reporting, "report", "report"},
	{"report_section", reporting, "record of a section in the report", "section"},
	{"retest", allowances, "retest of a section", "test"},
	{"waiting_hour", allowances, "waiting on site", "h"},
	{"abortive_visit", allowances, "abortive visit: the site isn't ready", "visit"},
	{"overtime_hour", allowances, "overtime", "h"},
}

// entry is a line to be, with or without a rate.
type entry struct {
	unit
	quantity Quantity
	rate     *Money
	from     string // where the quantity comes from
	basis    string
	cure     string // what to write to have it priced; "" where its rate is left out on purpose
}

// Bases of a quantity.
const (
	FromPlan      = "plan"
	FromAllowance = "allowance"
	FromSum       = "provisional sum"
)

// entries gathers the lines of a bill.
type entries struct {
	w    *Work
	r    *Rates
	p    *programme.Programme
	list []entry
	err  error
}

func (e *entries) add(u unit, q Quantity, rate *Money, from, basis, cure string) {
	e.list = append(e.list, entry{u, q, rate, from, basis, cure})
}

// rated adds a line of [rates].
func (e *entries) rated(key string, q Quantity, from, basis string) {
	for _, u := range units {
		if u.key == key {
			var rate *Money
			if m, ok := e.r.Unit[key]; ok {
				rate = &m
			}
			e.add(u, q, rate, from, basis, key+" in [rates]")
			return
		}
	}
}

// uncured leaves the last entry out of what isn't priced if another rate
// stands for it.
func (e *entries) uncured(other string) {
	last := &e.list[len(e.list)-1]
	if _, ok := e.r.Unit[other]; ok || last.rate != nil {
		last.cure = ""
	}
}

// measured turns a measure into a quantity.
func (e *entries) measured(v float64, of string) Quantity {
	q, ok := Measured(v)
	if !ok && e.err == nil {
		e.err = fmt.Errorf("%s of %g can't be priced", of, v)
	}
	return q
}

// gather lists every line of a bill. Without allowances (risk counts them
// itself) those of retests, waiting and abortive visits are 0.
func gather(w *Work, r *Rates, expectedRetests float64, allow bool) *entries {
	e := &entries{w: w, r: r, p: w.Lay()}
	e.site()
	n := len(w.Tests)
	e.rated("test", Of(n), "sections tested", FromPlan)
	e.uncured("test_m2")
	e.rated("test_m2", e.measured(Area(w.Tests), "an area"), "their area", FromPlan)
	e.uncured("test")
	e.blanks()
	e.rated("report", Of(min(n, 1)), "one for the job", FromPlan)
	e.uncured("report_section")
	e.rated("report_section", Of(n), "one a test", FromPlan)
	e.uncured("report")
	e.allow(expectedRetests, allow)
	for i, s := range r.Provisional {
		if n == 0 { // nothing is priced
			break
		}
		amount := s.Amount
		e.add(unit{"provisional_" + strconv.Itoa(i+1), sums, s.What, "sum"}, Of(1), &amount, "rates file", FromSum, "")
	}
	return e
}

// site adds what goes with visits and days.
func (e *entries) site() {
	e.rated("mobilisation", Of(Stays(e.p)), "visits planned", FromPlan)
	days, crew := len(e.p.Days), e.w.Set.Crew
	e.rated("crew_day", Of(days*crew), fmt.Sprintf("%s x crew of %d", inDays(days), crew), FromPlan)
	for i, d := range e.w.Hired(e.p) {
		name := d.Rig
		h := e.r.hireOf(d.Rig)
		day, delivery, cure := (*Money)(nil), (*Money)(nil), "a [[hire]] for rig "+strconv.Quote(d.Rig)
		if h != nil {
			day, delivery, cure = h.Day, h.Delivery, ""
		}
		n := strconv.Itoa(i + 1)
		e.add(unit{"hire_day_" + n, onSite, "hire of " + name, "day"}, Of(d.Days), day, "first test to last", FromPlan, cure)
		e.add(unit{"hire_delivery_" + n, onSite, "delivery and return, " + name, "visit"}, Of(d.Visits), delivery, "visits", FromPlan, "")
	}
}

func inDays(n int) string {
	if n == 1 {
		return "1 day"
	}
	return strconv.Itoa(n) + " days"
}

// hireOf finds what a rig costs; nil where the file doesn't say.
func (r *Rates) hireOf(rig string) *Hire {
	var any *Hire
	for i := range r.Hire {
		switch r.Hire[i].Rig {
		case rig:
			return &r.Hire[i]
		case "":
			any = &r.Hire[i]
		}
	}
	return any
}

// blanks adds the blanks by size, makes first, and the user's allowance for
// those that no plan knows.
func (e *entries) blanks() {
	fits, makes := e.w.Fits(e.w.Tests), e.w.Needs()
	for i, s := range e.w.Sizes {
		m, _ := e.rateOf(s)
		e.add(unit{"make_" + strconv.Itoa(i+1), blanks, "blank made " + s.Text, "blank"}, Of(makes[i]), m, "in use at once", FromPlan, "a [[blank]] with make, or [blank_girth]")
	}
	for i, s := range e.w.Sizes {
		_, f := e.rateOf(s)
		e.add(unit{"fit_" + strconv.Itoa(i+1), blanks, "blank fitted " + s.Text, "fit"}, Of(fits[i]), f, "ends, all tests", FromPlan, "a [[blank]] with fit, or [blank_girth]")
	}
	a := e.r.Allowances.Blanks
	if a == nil || e.w.OwnBlanks || e.w.Groupings() == 0 {
		return
	}
	const from = "allowance: not known for groupings"
	e.add(unit{"make_allowed", blanks, "blanks made, provisional", "blank"}, a.Makes, a.Make, from, FromAllowance, "blank_make in [allowances]")
	e.add(unit{"fit_allowed", blanks, "blanks fitted, provisional", "fit"}, a.Fits, a.Fit, from, FromAllowance, "blank_fit in [allowances]")
}

// rateOf finds the rates of a size. Those by girth are rounded to a whole minor
// unit, halves away from zero.
func (e *entries) rateOf(s Size) (make, fit *Money) {
	for _, b := range e.r.Blanks {
		if (b.Shape == "" || b.Shape == s.Shape) && s.Longest <= b.UpTo && (s.Longest > 0 || math.IsInf(b.UpTo, 1)) {
			return b.Make, b.Fit
		}
	}
	g := e.r.Girth
	if g == nil || s.Girth <= 0 {
		return nil, nil
	}
	by := func(base, metre *Money) *Money {
		if base == nil && metre == nil {
			return nil
		}
		m := value(base) + Money(math.Round(float64(value(metre))*s.Girth))
		return &m
	}
	return by(g.MakeBase, g.MakePerMetre), by(g.FitBase, g.FitPerMetre)
}

// allow adds the allowances of the rates file.
func (e *entries) allow(expected float64, allow bool) {
	a := e.r.Allowances
	var retests Quantity
	from := "no allowance: charged as it comes"
	switch {
	case !allow:
	case a.RetestsExpected:
		retests, from = e.measured(expected, "an expected number of retests"), "expected number"
	case a.RetestsPercent != nil:
		v, err := scaled(*a.RetestsPercent, int64(len(e.w.Tests)), hundred)
		if err != nil && e.err == nil {
			e.err = err
		}
		retests, from = Quantity(v), fmt.Sprintf("allowance, %s %% of tests", Quantity(*a.RetestsPercent).Text())
	}
	e.rated("retest", retests, from, FromAllowance)
	for _, x := range []struct {
		key    string
		q      Quantity
		always bool
	}{{"waiting_hour", a.WaitingHours, false}, {"abortive_visit", a.AbortiveVisits, false}, {"overtime_hour", a.OvertimeHours, true}} {
		if !allow && !x.always || len(e.w.Tests) == 0 {
			x.q = 0
		}
		from := "allowance"
		if x.q == 0 {
			from = "no allowance: charged as it comes"
		}
		e.rated(x.key, x.q, from, FromAllowance)
	}
}
