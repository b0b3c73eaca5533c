package risk

import (
	"math"
	"strconv"

	"blankoff/planner/price"
	"blankoff/planner/programme"
)

// Job is what is put at risk: the tests of the plan and their rates.
type Job struct {
	Work     *price.Work
	Rates    *price.Rates
	Headroom float64
	// Later are the tests that come on top, stage by stage, each where one of the
	// stage before fails: a sample that is widened.
	Later [][]price.Test
}

// site is a job made ready for run after run.
type site struct {
	job    *Job
	prior  *Prior
	pricer *price.Pricer
	stages []stage // the first are the planned visits
	plans  int     // how many of them are planned
	n      int     // tests of all stages
	cure   int     // days
	line   struct{ visit, crew, test, m2, section, retest, wait, abort int }
}

// stage is one visit: a planned one, or that of a stage of the sample.
type stage struct {
	tests []one
	days  int
	spare float64 // minutes that its days have left
	on    price.More
	batch int // 0 the plan, then the stages of the sample
}

// one is a test in its place.
type one struct {
	*price.Test
	number  int // among all
	day     int // of its visit, from 1
	minutes float64
	rig     int
}

// ready lays a job out.
func ready(j *Job, p *Prior) (*site, error) {
	pricer, err := price.NewPricer(j.Work, j.Rates)
	if err != nil {
		return nil, err
	}
	s := &site{job: j, prior: p, pricer: pricer, cure: int(math.Ceil(j.Work.Set.CureHours / 24))}
	for key, at := range map[string]*int{
		"mobilisation": &s.line.visit, "crew_day": &s.line.crew, "test": &s.line.test, "test_m2": &s.line.m2,
		"report_section": &s.line.section, "retest": &s.line.retest, "waiting_hour": &s.line.wait, "abortive_visit": &s.line.abort,
	} {
		*at = pricer.Line(key)
	}
	s.plan(j.Work.Tests, j.Work.Lay())
	s.plans = len(s.stages)
	if p.Widen {
		most := j.Work.Needs()
		for k, tests := range j.Later {
			s.later(k+1, tests, most)
		}
	}
	return s, nil
}

// plan adds the visits of a programme.
func (s *site) plan(tests []price.Test, p *programme.Programme) {
	begins := map[int]int{} // the first day of each visit
	for i := range p.Days {
		if d := &p.Days[i]; begins[d.Visit] == 0 {
			begins[d.Visit] = d.Number
		}
	}
	for v := range p.Stays {
		if p.Stays[v].Days == 0 {
			continue
		}
		st := stage{days: p.Stays[v].Days}
		for i := range p.Days {
			if p.Days[i].Visit == v {
				st.spare += max(0, p.Settings.DayMinutes-p.Days[i].Minutes)
			}
		}
		for i := range p.Slots {
			if x := &p.Slots[i]; x.Visit == v {
				st.tests = append(st.tests, s.one(&tests[i], x.Last-begins[v]+1))
			}
		}
		s.stages = append(s.stages, st)
	}
}

// one numbers a test and says how long it takes again.
func (s *site) one(t *price.Test, day int) one {
	set := &s.job.Work.Set
	o := one{Test: t, number: s.n, day: day, minutes: set.TestMinutes + set.Move, rig: s.pricer.Rig(t.Rig)}
	if s.prior.Refit && !s.job.Work.OwnBlanks {
		o.minutes += t.Cuts + t.Ends
	}
	s.n++
	return o
}

// later adds a stage of the sample: a visit of its own, with all that it costs.
func (s *site) later(batch int, tests []price.Test, most []int) {
	w := s.job.Work
	p := w.Stage(tests)
	before := len(s.stages)
	s.plan(tests, p)
	for i := before; i < len(s.stages); i++ {
		st := &s.stages[i]
		st.batch, st.on = batch, s.pricer.Nothing()
		put(st.on, s.line.visit, 1)
		put(st.on, s.line.crew, st.days*w.Set.Crew)
		put(st.on, s.line.test, len(tests))
		put(st.on, s.line.section, len(tests))
		if q, ok := price.Measured(price.Area(tests)); ok {
			st.on[s.line.m2] += q
		}
		for _, d := range price.Rigs(tests, p) {
			s.hire(st.on, s.pricer.Rig(d.Rig), d.Days, 1)
		}
		makes := w.Makes(tests)
		for k, n := range w.Fits(tests) {
			put(st.on, s.pricer.Line("fit_"+strconv.Itoa(k+1)), n)
			put(st.on, s.pricer.Line("make_"+strconv.Itoa(k+1)), max(0, makes[k]-most[k]))
			most[k] = max(most[k], makes[k])
		}
	}
}

// put adds a whole number to a line, if the work has it.
func put(m price.More, line, n int) {
	if line >= 0 {
		m[line] += price.Of(n)
	}
}

func (s *site) hire(m price.More, rig, days, visits int) {
	if rig == 0 {
		return
	}
	put(m, s.pricer.Line("hire_day_"+strconv.Itoa(rig)), days)
	put(m, s.pricer.Line("hire_delivery_"+strconv.Itoa(rig)), visits)
}
