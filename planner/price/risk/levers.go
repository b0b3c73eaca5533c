package risk

import (
	"math"
	"slices"

	"blankoff/planner/price"
)

// Lever is what the P80 of the money comes to where one figure is low and where
// it is high, the others as they are, by the same luck.
type Lever struct {
	Key    string  `json:"key"`
	What   string  `json:"what"`
	Low    string  `json:"low"`
	High   string  `json:"high"`
	AtLow  float64 `json:"at_low_minor"`
	AtHigh float64 `json:"at_high_minor"`
	Basis  string  `json:"basis"` // of the low and the high
}

// Swing is how far the lever moves the total.
func (l *Lever) Swing() float64 { return math.Abs(l.AtHigh - l.AtLow) }

// LeverRuns is how many runs each end of a lever has; the base of levers has as
// many.
const LeverRuns = 4000

// lever is a figure and how to change it.
type lever struct {
	key, what, unit string
	low, high       float64
	set             func(j *Job, p *Prior, v float64)
}

// Levers finds the figures that move the P80 of the money most, the greatest
// swing first, at most so many. base is the P80 with as many runs.
func Levers(j *Job, p *Prior, seed uint64, most int) (list []Lever, base float64, err error) {
	p80 := func(j *Job, p *Prior) float64 {
		s, e := ready(j, p)
		if e != nil {
			err = e
			return 0
		}
		o, e := s.simulate(LeverRuns, seed)
		if e != nil {
			err = e
			return 0
		}
		return o.Money[1].Value
	}
	base = p80(j, p)
	for _, l := range levers(j, p) {
		basis := Assumption
		if v, ok := p.lows[l.key]; ok {
			l.low, basis = v, "prior file"
		}
		if v, ok := p.highs[l.key]; ok {
			l.high, basis = v, "prior file"
		}
		one := Lever{Key: l.key, What: l.what, Low: short(l.low) + l.unit, High: short(l.high) + l.unit, Basis: basis}
		one.AtLow, one.AtHigh = l.at(j, p, l.low, p80), l.at(j, p, l.high, p80)
		list = append(list, one)
	}
	slices.SortStableFunc(list, func(a, b Lever) int {
		switch x, y := a.Swing(), b.Swing(); {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	list = slices.DeleteFunc(list, func(l Lever) bool { return l.Swing() == 0 })
	return list[:min(most, len(list))], base, err
}

// at is the money where the figure is v.
func (l *lever) at(j *Job, p *Prior, v float64, p80 func(*Job, *Prior) float64) float64 {
	job, work, prior := *j, *j.Work, *p
	job.Work = &work
	l.set(&job, &prior, v)
	return p80(&job, &prior)
}

// levers lists the figures with their usual lows and highs.
func levers(j *Job, p *Prior) []lever {
	set := &j.Work.Set
	out := []lever{
		{"median", "median of leak over limit", "", p.Median / 1.5, p.Median * 1.5, func(_ *Job, p *Prior, v float64) { p.Median = v }},
		{"spread", "spread of leak over limit", "", math.Pow(p.Spread, 0.75), math.Pow(p.Spread, 1.25), func(_ *Job, p *Prior, v float64) { p.Spread = v }},
		{"job_share", "share of the variance that is the job's", "", 0, math.Min(1, math.Max(0.6, 2*p.JobShare)), func(_ *Job, p *Prior, v float64) { p.JobShare = min(1, v) }},
		{"abortive_chance", "chance that a visit is abortive", "", p.Abortive / 2, math.Min(0.9, p.Abortive*2), func(_ *Job, p *Prior, v float64) { p.Abortive = v }},
		{"waiting_hours", "waiting in a visit", " h", p.WaitingHours / 2, p.WaitingHours * 2, func(_ *Job, p *Prior, v float64) { p.WaitingHours = v }},
		{"search_minutes", "search for leaks after a failed test", " min", p.SearchMinutes / 2, p.SearchMinutes * 2, func(_ *Job, p *Prior, v float64) { p.SearchMinutes = v }},
		{"test_minutes", "a test in place", " min", set.TestMinutes * 2 / 3, set.TestMinutes * 4 / 3, func(j *Job, _ *Prior, v float64) { j.Work.Set.TestMinutes = v }},
		{"day_minutes", "work on site in a day", " min", set.DayMinutes * 0.85, set.DayMinutes * 1.15, func(j *Job, _ *Prior, v float64) { j.Work.Set.DayMinutes = v }},
		{"cure_hours", "curing before a retest", " h", 24, 72, func(j *Job, _ *Prior, v float64) { j.Work.Set.CureHours = v }},
	}
	if p.RetestMedian > 0 {
		out = append(out, lever{"retest_median", "median of leak over limit after resealing", "", p.RetestMedian / 1.5, p.RetestMedian * 1.5, func(_ *Job, p *Prior, v float64) { p.RetestMedian = v }})
	} else {
		out = append(out, lever{"retest_pass", "chance that a retest passes", "", math.Max(0, p.Retest-0.15), math.Min(1, p.Retest+0.1), func(_ *Job, p *Prior, v float64) { p.Retest = v }})
	}
	for _, key := range j.Rates.RateKeys() {
		out = append(out, lever{"rate_" + key, "rate: " + price.RateName(key), "", 0.9, 1.1, func(j *Job, _ *Prior, v float64) { j.Rates = j.Rates.Scaled(key, v) }})
	}
	return out
}
