package risk

import (
	"cmp"
	"math"
	"slices"

	"blankoff/planner/price"
)

// Runs is how many runs a simulation has unless it is asked for others.
const Runs = 20000

// Quantile is a value that isn't passed with a chance, and the interval in which
// its order statistics put it, 95 %. Money in minor units.
type Quantile struct {
	Percent float64 `json:"percent"`
	Value   float64 `json:"value"`
	Low     float64 `json:"low"`
	High    float64 `json:"high"`
}

// Error is the standard error of the value, taken from its interval.
func (q Quantile) Error() float64 { return (q.High - q.Low) / (2 * sure) }

// sure is the quantile of the normal distribution for an interval of 95 %.
var sure = normal.Quantile(0.975)

// Outcome is what a job may come to.
type Outcome struct {
	Runs      int         `json:"runs"`
	Seed      uint64      `json:"seed"`
	Money     []Quantile  `json:"money_minor"` // P50, P80, P90
	Mean      float64     `json:"mean_minor"`
	MeanError float64     `json:"mean_error_minor"`
	Days      []Quantile  `json:"days_on_site"`
	Elapsed   []Quantile  `json:"days_from_first_test_to_last"` // gaps between planned visits not counted
	Visits    []Quantile  `json:"visits"`
	Clean     price.Money `json:"nothing_fails_minor"` // the bill without allowances
	Return    float64     `json:"chance_of_more_visits"`
	Open      float64     `json:"chance_of_a_section_not_settled"`
	Widened   float64     `json:"chance_that_the_sample_is_widened"`
	Fail      float64     `json:"chance_that_a_section_fails"` // exact, like the following
	Unheld    float64     `json:"chance_that_pressure_isnt_held"`
	None      float64     `json:"chance_that_none_fails"`
	Failures  []Quantile  `json:"sections_that_fail"` // exact
	Retests   float64     `json:"retests_expected"`   // exact, of the tests planned; a sample that is widened not counted
	Simulated float64     `json:"retests_simulated"`  // all
	sorted    []float64
	Totals    []price.Money `json:"-"` // run by run
}

// percents are the quantiles that are given.
var percents = []float64{50, 80, 90}

// Simulate runs a job so many times. The error is that of an amount that can't
// be counted.
func Simulate(j *Job, p *Prior, runs int, seed uint64) (*Outcome, error) {
	s, err := ready(j, p)
	if err != nil {
		return nil, err
	}
	o, err := s.simulate(runs, seed)
	if err == nil {
		o.exact(p, len(j.Work.Tests), j.Headroom)
	}
	return o, err
}

// simulate goes through a job so many times.
func (s *site) simulate(runs int, seed uint64) (o *Outcome, err error) {
	o = &Outcome{Runs: runs, Seed: seed}
	if o.Clean, err = s.pricer.Total(s.pricer.Nothing()); err != nil {
		return nil, err
	}
	c := &course{s: s, l: &luck{}, more: s.pricer.Nothing()}
	days, elapsed, visits := make([]float64, runs), make([]float64, runs), make([]float64, runs)
	o.Totals = make([]price.Money, runs)
	for k := range runs {
		s.draw(c.l, seed, uint64(k))
		c.run()
		if o.Totals[k], err = s.pricer.Total(c.more); err != nil {
			return nil, err
		}
		days[k], elapsed[k], visits[k] = float64(c.days), float64(c.elapsed), float64(c.visits)
		o.count(c)
	}
	o.sorted = make([]float64, runs)
	for k, m := range o.Totals {
		o.sorted[k] = float64(m)
	}
	o.Money, o.Days, o.Elapsed, o.Visits = quantiles(o.sorted), quantiles(days), quantiles(elapsed), quantiles(visits)
	o.average()
	return o, nil
}

// count counts what became of a run.
func (o *Outcome) count(c *course) {
	part := 1 / float64(o.Runs)
	if c.visits > c.s.plans {
		o.Return += part
	}
	if c.open > 0 {
		o.Open += part
	}
	if c.widened {
		o.Widened += part
	}
	o.Simulated += part * float64(c.retests)
}

// exact adds what needs no simulation.
func (o *Outcome) exact(p *Prior, n int, headroom float64) {
	o.Fail, o.Unheld, o.None, o.Retests = p.Fail(), p.Unheld(headroom), p.None(n), p.ExpectedRetests(n)
	chances := p.Failures(n)
	for _, pc := range percents {
		sum, k := chances[0], 0
		for k < n && sum < pc/100-1e-12 {
			k++
			sum += chances[k]
		}
		o.Failures = append(o.Failures, Quantile{pc, float64(k), float64(k), float64(k)})
	}
}

// average gives the mean of money and its standard error.
func (o *Outcome) average() {
	n, sum := float64(o.Runs), 0.0
	for _, v := range o.sorted {
		sum += v
	}
	o.Mean = sum / n
	dev := 0.0
	for _, v := range o.sorted {
		dev += (v - o.Mean) * (v - o.Mean)
	}
	if n > 1 {
		o.MeanError = math.Sqrt(dev / (n - 1) / n)
	}
}

// Within is the chance that the money stays within an amount, and its standard
// error.
func (o *Outcome) Within(m price.Money) (chance, err float64) {
	n := float64(o.Runs)
	k, _ := slices.BinarySearchFunc(o.sorted, float64(m)+0.5, cmp.Compare)
	chance = float64(k) / n
	return chance, math.Sqrt(chance * (1 - chance) / n)
}

// quantiles sorts values and reads the quantiles off with their intervals.
func quantiles(v []float64) []Quantile {
	slices.Sort(v)
	n := float64(len(v))
	at := func(k float64) float64 { return v[min(len(v)-1, max(0, int(k)))] }
	var out []Quantile
	for _, pc := range percents {
		p := pc / 100
		half := sure * math.Sqrt(n*p*(1-p))
		out = append(out, Quantile{pc, at(math.Ceil(n*p) - 1), at(math.Floor(n*p-half) - 1), at(math.Ceil(n*p+half) - 1)})
	}
	return out
}
