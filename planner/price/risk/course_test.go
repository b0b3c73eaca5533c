package risk

import (
	"math"
	"slices"
	"testing"

	"blankoff/planner/price"
	"blankoff/planner/programme"
)

// fails is a prior by which every section fails at first.
const fails = "median = 1000\nspread = 1.01\n"

// ran runs a job once and gives its course.
func ran(t *testing.T, j *Job, p *Prior) *course {
	t.Helper()
	s, err := ready(j, p)
	if err != nil {
		t.Fatal(err)
	}
	c := &course{s: s, l: &luck{}, more: s.pricer.Nothing()}
	s.draw(c.l, 1, 0)
	c.run()
	return c
}

// TestCourses are worked by hand: everything fails, and every retest passes or
// none does. Four tests of 100 min (the first 90) fill a day of 420.
func TestCourses(t *testing.T) {
	for _, tt := range []struct {
		what                           string
		tests                          int
		prior                          string
		cure                           float64
		visits, days, elapsed, retests int
		open                           int
		crew                           price.Quantity // on top, of two people
	}{
		// One day; all four come back after curing two days: days 1 and 3.
		{"one round", 4, "retest_pass = 1\n", 48, 2, 2, 3, 4, 0, 200},
		// Six days of tests; curing of two days: what fails on days 1 to 4 is
		// tested on days 3 to 6, with no minutes left (each day has 30), so the
		// 16 retests take 1600 min less 6 x 30 + 10 of the first day, 4 days
		// more. What fails on days 5 and 6, eight of them, comes back: two days.
		{"within the visit", 24, "retest_pass = 1\n", 48, 2, 6 + 4 + 2, 6 + 4 + 1 + 2, 24, 0, 1200},
		// Three rounds, and then they are handed back: days 1, 3, 5, 7.
		{"never passes", 4, "retest_pass = 0\nretests_most = 3\n", 48, 4, 4, 7, 12, 4, 600},
		// Put right and cured at once, each is tested again on the day itself;
		// 400 min more take a day more.
		{"no curing", 4, "retest_pass = 1\n", 0, 1, 2, 2, 4, 0, 200},
		// Searching an hour for each takes the day's 30 min and 210 more.
		{"search", 4, "retest_pass = 1\nsearch_minutes = 60\n", 48, 2, 3, 4, 4, 0, 400},
	} {
		j := jobOf(t, tt.tests, rates)
		j.Work.Set.CureHours = tt.cure
		c := ran(t, j, priorOf(t, fails+tt.prior))
		if c.visits != tt.visits || c.days != tt.days || c.elapsed != tt.elapsed || c.retests != tt.retests || c.open != tt.open || c.failed != tt.tests {
			t.Errorf("%s: %d visits, %d days (%d), %d retests, %d open; want %d, %d (%d), %d, %d", tt.what, c.visits, c.days, c.elapsed, c.retests, c.open, tt.visits, tt.days, tt.elapsed, tt.retests, tt.open)
		}
		if got := c.more[c.s.line.crew]; got != tt.crew {
			t.Errorf("%s: %s crew days more, want %s", tt.what, got.Text(), tt.crew.Text())
		}
	}
}

// A later visit that is planned takes what failed at the one before: no visit
// more for it.
func TestLaterVisit(t *testing.T) {
	j := jobOf(t, 2, rates)
	j.Work.Visits = make([]programme.Visit, 2)
	j.Work.Tests[1].Visit = 1
	c := ran(t, j, priorOf(t, fails+"retest_pass = 1\n"))
	if c.visits != 3 || c.retests != 2 || c.more[c.s.line.visit] != 100 {
		t.Errorf("%d visits, %d retests, %s visits more; want 3, 2, 1", c.visits, c.retests, c.more[c.s.line.visit].Text())
	}
}

// Blanks are fitted again for a retest, two for each section.
func TestRefit(t *testing.T) {
	j := jobOf(t, 4, rates)
	p := priorOf(t, fails+"retest_pass = 1\n")
	p.Refit = true
	if c := ran(t, j, p); c.more[c.s.pricer.Line("fit_1")] != 800 {
		t.Errorf("%s fits more, want 8", c.more[c.s.pricer.Line("fit_1")].Text())
	}
	j.Work.OwnBlanks = true
	if c := ran(t, j, p); c.more[c.s.pricer.Line("fit_1")] != 0 {
		t.Error("the client's own blanks are fitted by the crew")
	}
}

// TestWidened: a sample of one of five, then one more, then the other three, all
// of which fail and pass once they are tested again. What it comes to is by hand:
//
//	visits   1 of the plan, 2 of the stages, 1 for what failed at the last
//	tests    5, retests 5
//	days     1 + 1 + 1 + 1; the third has 3 tests and the second's retest: 290 +
//	         100 = 390 of 420 min
func TestWidened(t *testing.T) {
	all := jobOf(t, 5, rates)
	j := jobOf(t, 5, rates)
	j.Work.Tests = j.Work.Tests[:1]
	j.Later = [][]price.Test{all.Work.Tests[1:2], all.Work.Tests[2:]}
	p := priorOf(t, fails+"retest_pass = 1\n")
	c := ran(t, j, p)
	total, err := c.s.pricer.Total(c.more)
	want := price.Money(4*18500 + 4*2*36000 + 5*5500 + 5*9500 + 10*1100 + 2*4000)
	if err != nil || !c.widened || c.visits != 4 || c.days != 4 || c.retests != 5 || total != want {
		t.Errorf("widened %v, %d visits, %d days, %d retests, %d (%v); want 4, 4, 5, %d", c.widened, c.visits, c.days, c.retests, total, err, want)
	}
	p.Widen = false
	if c = ran(t, j, p); c.widened || c.retests != 1 {
		t.Errorf("not to be widened: %v, %d retests", c.widened, c.retests)
	}
	good := priorOf(t, "median = 0.001\nspread = 1.01\n")
	if c = ran(t, j, good); c.widened || c.visits != 1 || c.retests != 0 {
		t.Error("a sample that passes was widened")
	}
}

// Waiting and abortive visits come by their own rates.
func TestWaitingAndAbortive(t *testing.T) {
	j := jobOf(t, 4, rates)
	good := "median = 0.001\nspread = 1.01\n"
	p := priorOf(t, good)
	p.WaitingHours, p.Abortive = 2, 0.25
	o := simulated(t, j, p, 20000, 3)
	// Mean of waiting 2 x 8800, of abortive visits a quarter of 65000; waiting
	// over 30 min takes days more: exp(-0.25) of a day of two people and, past
	// each 420 min more, another.
	days := 0.0
	for k := range 20 {
		days += math.Exp(-(30 + 420*float64(k)) / 120)
	}
	want := float64(o.Clean) + 2*8800 + 0.25*65000 + days*2*36000
	if math.Abs(o.Mean-want) > 4*o.MeanError {
		t.Errorf("mean %g +/- %g, want %g", o.Mean, o.MeanError, want)
	}
}

func TestLevers(t *testing.T) {
	p, err := Default()
	if err != nil {
		t.Fatal(err)
	}
	list, base, err := Levers(jobOf(t, 8, rates), p, 1, 5)
	if err != nil || len(list) != 5 || base <= 0 {
		t.Fatalf("%d levers from %g (%v)", len(list), base, err)
	}
	if !slices.IsSortedFunc(list, func(a, b Lever) int { return int(math.Copysign(1, b.Swing()-a.Swing())) }) {
		t.Errorf("not by swing: %+v", list)
	}
	if list[0].Key != "median" || list[0].AtLow >= base || list[0].AtHigh <= base {
		t.Errorf("first lever %+v, base %g", list[0], base)
	}
	for _, l := range list {
		if l.Basis != Assumption {
			t.Errorf("%s: %q", l.Key, l.Basis)
		}
	}
	// The firm's own bounds are taken and said.
	own, err := Load(stringsReader("[low]\nmedian = 0.59\n[high]\nmedian = 0.61\n"), "prior.toml")
	if err != nil {
		t.Fatal(err)
	}
	list, _, _ = Levers(jobOf(t, 8, rates), own, 1, 99)
	k := slices.IndexFunc(list, func(l Lever) bool { return l.Key == "median" })
	if k <= 0 || list[k].Basis != "prior file" || list[k].Low != "0.59" {
		t.Errorf("lever %d: %+v", k, list)
	}
}
