package risk

import (
	"math"
	"math/rand/v2"
	"strconv"

	"gonum.org/v1/gonum/stat/distuv"

	"blankoff/planner/price"
)

// luck is everything that is drawn for one run, whatever the prior says, so that
// runs under other figures go by the same luck.
type luck struct {
	job     float64
	section []float64 // how leaky each is among all sections with the same job's term, 0 to 1
	retest  []float64 // Most for each section
	abort   []float64 // for each visit
	wait    []float64 // the same, mean 1
}

// extra is the visits that a run may have beyond those laid out.
func (s *site) extra() int { return s.prior.Most + 1 }

// draw draws the luck of a run.
func (s *site) draw(l *luck, seed, run uint64) {
	src := rand.NewPCG(seed, run)
	z, u, e := distuv.Normal{Sigma: 1, Src: src}, distuv.Uniform{Max: 1, Src: src}, distuv.Exponential{Rate: 1, Src: src}
	l.job = z.Rand()
	l.section = fill(l.section, s.n, u.Rand)
	l.retest = fill(l.retest, s.n*s.prior.Most, u.Rand)
	visits := len(s.stages) + s.extra()*(len(s.stages)-s.plans+1)
	l.abort = fill(l.abort, visits, u.Rand)
	l.wait = fill(l.wait, visits, e.Rand)
}

func fill(to []float64, n int, draw func() float64) []float64 {
	to = to[:0]
	for range n {
		to = append(to, draw())
	}
	return to
}

// course is what becomes of a job in one run.
type course struct {
	s       *site
	l       *luck
	g       given
	more    price.More
	days    int // on site
	elapsed int // with curing between the visits of one round and the next
	visits  int
	retests int
	failed  int // at first
	unheld  int
	open    int // not settled after Most retests
	widened bool
	waits   []wait
	fitLine []int
}

// wait is a section that waits for its retest.
type wait struct {
	*one
	day     int // on which it can be tested, of the visit in which it failed
	attempt int // of its retest, from 1
}

// run goes through a job.
func (c *course) run() {
	c.reset()
	batchFailed := false
	for i := range c.s.stages {
		st := &c.s.stages[i]
		if st.batch > 0 && (i == 0 || st.batch != c.s.stages[i-1].batch) {
			if !batchFailed {
				break
			}
			batchFailed, c.widened = false, true
		}
		if st.on != nil {
			for k, q := range st.on {
				c.more[k] += q
			}
			c.elapsed += max(0, c.s.cure-1)
		}
		if c.visit(st) > 0 {
			batchFailed = true
		}
	}
	for len(c.waits) > 0 {
		c.comeBack()
	}
}

func (c *course) reset() {
	clear(c.more)
	c.days, c.elapsed, c.visits, c.retests, c.failed, c.unheld, c.open = 0, 0, 0, 0, 0, 0, 0
	c.widened = false
	c.waits = c.waits[:0]
	c.g = c.s.prior.at(c.l.job, c.s.job.Headroom)
	if c.fitLine == nil {
		for k := range c.s.job.Work.Sizes {
			c.fitLine = append(c.fitLine, c.s.pricer.Line("fit_"+strconv.Itoa(k+1)))
		}
	}
}

// visit makes a visit that is laid out, and says how many of its tests failed.
func (c *course) visit(st *stage) int {
	minutes := c.arrive()
	rigs := uint64(0)
	earlier := c.waits
	c.waits = nil
	for _, w := range earlier { // they have cured since
		rigs |= 1 << w.rig
		minutes += w.minutes
		if c.again(w, 1) {
			minutes += c.s.prior.SearchMinutes
		}
	}
	failed := 0
	for i := range st.tests {
		t := &st.tests[i]
		rigs |= 1 << t.rig
		leak := c.l.section[t.number]
		if leak < 1-c.g.first {
			continue
		}
		failed++
		if leak >= 1-c.g.unheld {
			c.unheld++
		}
		minutes += c.s.prior.SearchMinutes
		c.waits = append(c.waits, wait{t, t.day + c.s.cure, 1})
	}
	c.failed += failed
	minutes += c.within(st.days)
	c.stay(st.days, minutes-st.spare, rigs)
	return failed
}

// within tests again in the same visit what has cured by its last day, and gives
// the minutes of that.
func (c *course) within(last int) float64 {
	minutes := 0.0
	for k := 0; k < len(c.waits); {
		w := c.waits[k]
		if w.day > last {
			k++
			continue
		}
		c.waits = append(c.waits[:k], c.waits[k+1:]...)
		minutes += w.minutes
		if c.again(w, w.day) {
			minutes += c.s.prior.SearchMinutes
		}
	}
	return minutes
}

// again tests a section again on a day and says whether it failed again.
func (c *course) again(w wait, day int) bool {
	c.retests++
	put(c.more, c.s.line.retest, 1)
	if c.s.prior.Refit && !c.s.job.Work.OwnBlanks {
		for k, n := range w.Fits {
			put(c.more, c.fitLine[k], n)
		}
	}
	if c.l.retest[w.number*c.s.prior.Most+w.attempt-1] >= c.g.again {
		return false
	}
	if w.attempt == c.s.prior.Most {
		c.open++
		return true
	}
	c.waits = append(c.waits, wait{w.one, day + c.s.cure, w.attempt + 1})
	return true
}

// comeBack makes a visit more for everything that waits.
func (c *course) comeBack() {
	minutes := c.arrive()
	put(c.more, c.s.line.visit, 1)
	c.elapsed += max(0, c.s.cure-1)
	round := c.waits
	c.waits = nil
	rigs := uint64(0)
	for _, w := range round {
		rigs |= 1 << w.rig
		minutes += w.minutes
		if c.again(w, 1) {
			minutes += c.s.prior.SearchMinutes
		}
	}
	day := c.s.job.Work.Set.DayMinutes
	put(c.more, c.s.line.crew, c.s.job.Work.Set.Crew)
	c.onHire(rigs, 1, 1)
	c.stay(1, minutes-day, rigs)
}

// arrive begins a visit: it may be abortive, and there is waiting. It gives the
// minutes waited.
func (c *course) arrive() float64 {
	k := min(c.visits, len(c.l.abort)-1)
	c.visits++
	if c.l.abort[k] < c.s.prior.Abortive {
		put(c.more, c.s.line.abort, 1)
		c.days++
		c.elapsed++
	}
	hours, _ := price.Measured(c.s.prior.WaitingHours * c.l.wait[k])
	if c.s.line.wait >= 0 {
		c.more[c.s.line.wait] += hours
	}
	return 60 * hours.Value()
}

// stay ends a visit of so many days; minutes beyond them take days more.
func (c *course) stay(days int, over float64, rigs uint64) {
	more := 0
	if over > 1e-9 {
		more = int(math.Ceil(over/c.s.job.Work.Set.DayMinutes - 1e-9))
		put(c.more, c.s.line.crew, more*c.s.job.Work.Set.Crew)
		c.onHire(rigs, more, 0)
	}
	c.days += days + more
	c.elapsed += days + more
}

// onHire keeps the rigs of a set on site for days more.
func (c *course) onHire(rigs uint64, days, visits int) {
	for rig := 1; rig < 64; rig++ {
		if rigs>>rig&1 == 1 {
			c.s.hire(c.more, rig, days, visits)
		}
	}
}
