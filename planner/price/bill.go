package price

import (
	"strconv"

	"blankoff/planner/programme"
)

// MarshalJSON writes a quantity as a number.
func (q Quantity) MarshalJSON() ([]byte, error) {
	return strconv.AppendFloat(nil, q.Value(), 'f', -1, 64), nil
}

// Line is a line of a bill. Money in minor units.
type Line struct {
	No       int      `json:"no"`
	Key      string   `json:"key"`
	Group    string   `json:"group"`
	What     string   `json:"what"`
	Quantity Quantity `json:"quantity"`
	Unit     string   `json:"unit"`
	Rate     Money    `json:"rate_minor"`
	Amount   Money    `json:"amount_minor"`
	From     string   `json:"from"`
	Basis    string   `json:"basis"` // plan, allowance, provisional sum
}

// NotPriced is a quantity without a rate.
type NotPriced struct {
	What     string   `json:"what"`
	Quantity Quantity `json:"quantity"`
	Unit     string   `json:"unit"`
	Cure     string   `json:"write"` // what to write into the rates file
}

// Rate is a rate for what is charged as it comes.
type Rate struct {
	Key    string `json:"key"`
	What   string `json:"what"`
	Unit   string `json:"unit"`
	Net    Money  `json:"net_minor"`
	Marked Money  `json:"with_markup_minor"`
}

// Part is a part of the total.
type Part struct {
	Name   string `json:"name"`
	Amount Money  `json:"amount_minor"`
}

// UnitPrice is the total divided by a quantity, and the same total shared out so
// that it adds up again.
type UnitPrice struct {
	Per      string   `json:"per"`
	Quantity Quantity `json:"quantity"`
	Price    Money    `json:"price_minor"` // rounded, halves away from zero
	Parts    []Part   `json:"shares"`      // by largest remainder
}

// Bill is a priced plan.
type Bill struct {
	Currency  Currency    `json:"currency"`
	Lines     []Line      `json:"lines"`
	Subtotal  Money       `json:"subtotal_minor"`
	MarkupPct Quantity    `json:"markup_percent"`
	Markup    Money       `json:"markup_minor"`
	Minimum   Money       `json:"minimum_minor"`
	MinimumOf string      `json:"minimum_of"`
	ToMinimum Money       `json:"to_minimum_minor"` // what makes it up to the minimum
	Total     Money       `json:"total_minor"`
	NotPriced []NotPriced `json:"not_priced"`
	Rates     []Rate      `json:"rates_as_it_comes"`
	UnitPrice []UnitPrice `json:"unit_prices"`
	Rounding  string      `json:"rounding"`

	Programme *programme.Programme `json:"-"`
}

// Rounding is the rule of every bill.
const Rounding = "quantities are rounded to hundredths, each line and the mark-up once to whole minor units, halves away from zero; everything else is adding up"

// Make prices work. Of retests, expected are taken where the rates file asks for
// the expected number.
func Make(w *Work, r *Rates, expectedRetests float64) (*Bill, error) {
	e := gather(w, r, expectedRetests, true)
	if e.err != nil {
		return nil, e.err
	}
	b := &Bill{Currency: r.Currency, Lines: []Line{}, NotPriced: []NotPriced{}, Rates: []Rate{}, MarkupPct: Quantity(r.Markup), Rounding: Rounding, Programme: e.p}
	for _, x := range e.list {
		switch {
		case x.quantity == 0:
		case x.rate != nil:
			amount, err := Amount(x.quantity, *x.rate)
			if err != nil {
				return nil, err
			}
			b.Lines = append(b.Lines, Line{len(b.Lines) + 1, x.key, x.group, x.what, x.quantity, x.unit.unit, *x.rate, amount, x.from, x.basis})
		case x.cure != "":
			b.NotPriced = append(b.NotPriced, NotPriced{x.what, x.quantity, x.unit.unit, x.cure})
		}
	}
	if err := b.sum(e); err != nil {
		return nil, err
	}
	return b, b.divide(e)
}

// sum adds the bill up.
func (b *Bill) sum(e *entries) (err error) {
	for _, l := range b.Lines {
		if b.Subtotal, err = plus(b.Subtotal, l.Amount); err != nil {
			return err
		}
	}
	visits := int64(Stays(e.p))
	t, err := totals(b.Subtotal, e.r, visits)
	if err != nil {
		return err
	}
	b.Markup, b.Minimum, b.ToMinimum, b.Total = t.markup, t.minimum, t.topUp, t.total
	if b.Minimum > 0 {
		b.MinimumOf = "the job"
		if t.byTrip {
			b.MinimumOf = strconv.FormatInt(visits, 10) + " visits"
			if visits == 1 {
				b.MinimumOf = "a visit"
			}
		}
	}
	for _, u := range units {
		m, ok := e.r.Unit[u.key]
		if !ok || u.key == "report" {
			continue
		}
		more, err := scaled(int64(m), e.r.Markup, hundred*hundred)
		if err != nil {
			return err
		}
		b.Rates = append(b.Rates, Rate{u.key, u.what, u.unit, m, m + Money(more)})
	}
	return nil
}

// sumUp is what follows from a subtotal.
type sumUp struct {
	markup, minimum, topUp, total Money
	byTrip                        bool
}

// totals marks a subtotal up and makes it up to the minimum charge; without a
// visit there is none.
func totals(subtotal Money, r *Rates, visits int64) (sumUp, error) {
	var s sumUp
	m, err := scaled(int64(subtotal), r.Markup, hundred*hundred)
	if err != nil {
		return s, err
	}
	s.markup = Money(m)
	if s.total, err = plus(subtotal, s.markup); err != nil {
		return s, err
	}
	trips, err := scaled(int64(r.MinimumTrip), visits, 1)
	if err != nil {
		return s, err
	}
	if visits == 0 {
		return s, nil
	}
	s.minimum, s.byTrip = max(r.Minimum, Money(trips)), Money(trips) > r.Minimum
	s.topUp = max(0, s.minimum-s.total)
	s.total += s.topUp
	return s, nil
}

// divide divides the total by tests, by area and by days.
func (b *Bill) divide(e *entries) error {
	b.UnitPrice = []UnitPrice{}
	tests, days := e.w.Tests, e.p.Days
	names, one, areas := make([]string, len(tests)), make([]int64, len(tests)), make([]int64, len(tests))
	for i := range tests {
		q, _ := Measured(tests[i].Area)
		names[i], one[i], areas[i] = tests[i].ID, 1, int64(q)
	}
	dayNames, dayOne := make([]string, len(days)), make([]int64, len(days))
	for i := range days {
		dayNames[i], dayOne[i] = "day "+strconv.Itoa(i+1), 1
	}
	for _, u := range []struct {
		per     string
		q       Quantity
		names   []string
		weights []int64
	}{{"test", Of(len(tests)), names, one}, {"m2", e.measured(Area(tests), "an area"), names, areas}, {"day", Of(len(days)), dayNames, dayOne}} {
		if u.q <= 0 {
			continue
		}
		price, err := scaled(int64(b.Total), hundred, int64(u.q))
		if err != nil {
			return err
		}
		o := UnitPrice{Per: u.per, Quantity: u.q, Price: Money(price), Parts: []Part{}}
		for i, m := range Share(b.Total, u.weights) {
			o.Parts = append(o.Parts, Part{u.names[i], m})
		}
		b.UnitPrice = append(b.UnitPrice, o)
	}
	return e.err
}
