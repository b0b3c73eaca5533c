package price

import "slices"

// Pricer prices work with more on top, over and over. It leaves out the
// allowances for retests, waiting and abortive visits, whose number comes on top.
type Pricer struct {
	list  []entry
	r     *Rates
	at    map[string]int
	visit int
	rigs  []string
}

// NewPricer makes ready to price work.
func NewPricer(w *Work, r *Rates) (*Pricer, error) {
	e := gather(w, r, 0, false)
	if e.err != nil {
		return nil, e.err
	}
	p := &Pricer{list: e.list, r: r, at: map[string]int{}}
	for i, x := range e.list {
		p.at[x.key] = i
	}
	for _, d := range w.Hired(e.p) {
		p.rigs = append(p.rigs, d.Rig)
	}
	p.visit = p.at["mobilisation"]
	return p, nil
}

// More is quantities on top of a pricer's work, line by line.
type More []Quantity

// Nothing is a More of nothing.
func (p *Pricer) Nothing() More { return make(More, len(p.list)) }

// Line is the place of a line's key in a More; -1 where the work has no such
// line.
func (p *Pricer) Line(key string) int {
	if i, ok := p.at[key]; ok {
		return i
	}
	return -1
}

// Rig is the number of a rig among the lines of hire, from 1; 0: it has none.
func (p *Pricer) Rig(name string) int { return slices.Index(p.rigs, name) + 1 }

// Rated reports whether the line of a key has a rate.
func (p *Pricer) Rated(key string) bool {
	i := p.Line(key)
	return i >= 0 && p.list[i].rate != nil
}

// Total is the total of the work and what is on top.
func (p *Pricer) Total(more More) (Money, error) {
	var sum Money
	for i := range p.list {
		x := &p.list[i]
		q := x.quantity + more[i]
		if q == 0 || x.rate == nil {
			continue
		}
		amount, err := Amount(q, *x.rate)
		if err == nil {
			sum, err = plus(sum, amount)
		}
		if err != nil {
			return 0, err
		}
	}
	t, err := totals(sum, p.r, int64(p.list[p.visit].quantity+more[p.visit])/hundred)
	return t.total, err
}

// Scaled is the same rates with that of a key (see [Rates.RateKeys]) times a
// factor, rounded to whole minor units.
func (r *Rates) Scaled(key string, factor float64) *Rates {
	o := *r
	o.Unit = map[string]Money{}
	for k, m := range r.Unit {
		if k == key {
			m = times(m, factor)
		}
		o.Unit[k] = m
	}
	if key == "hire" {
		o.Hire = slices.Clone(r.Hire)
		for i := range o.Hire {
			o.Hire[i].Day, o.Hire[i].Delivery = timesAt(o.Hire[i].Day, factor), timesAt(o.Hire[i].Delivery, factor)
		}
	}
	if key == "blanks" {
		o.Blanks = slices.Clone(r.Blanks)
		for i := range o.Blanks {
			o.Blanks[i].Make, o.Blanks[i].Fit = timesAt(o.Blanks[i].Make, factor), timesAt(o.Blanks[i].Fit, factor)
		}
		if g := r.Girth; g != nil {
			o.Girth = &GirthRate{timesAt(g.MakeBase, factor), timesAt(g.MakePerMetre, factor), timesAt(g.FitBase, factor), timesAt(g.FitPerMetre, factor)}
		}
		if a := r.Allowances.Blanks; a != nil {
			b := *a
			b.Fit, b.Make = timesAt(a.Fit, factor), timesAt(a.Make, factor)
			o.Allowances.Blanks = &b
		}
	}
	return &o
}

// RateKeys are the keys of [rates] that a rates file gives, in the order of the
// bill, with hire and blanks.
func (r *Rates) RateKeys() []string {
	var out []string
	for _, u := range units {
		if _, ok := r.Unit[u.key]; ok {
			out = append(out, u.key)
		}
	}
	if len(r.Hire) > 0 {
		out = append(out, "hire")
	}
	if len(r.Blanks) > 0 || r.Girth != nil || r.Allowances.Blanks != nil {
		out = append(out, "blanks")
	}
	return out
}

// RateName is what a key of [Rates.RateKeys] is for.
func RateName(key string) string {
	for _, u := range units {
		if u.key == key {
			return u.what
		}
	}
	switch key {
	case "hire":
		return "hire of rigs"
	case "blanks":
		return "blanks made and fitted"
	}
	return key
}
