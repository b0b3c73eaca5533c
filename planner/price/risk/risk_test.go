package risk

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"blankoff/planner/price"
	"blankoff/planner/programme"
)

const rates = "currency = \"XTS\"\nminor_digits = 2\n[rates]\nmobilisation = 18500\ncrew_day = 36000\ntest = 5500\nretest = 9500\nwaiting_hour = 8800\nabortive_visit = 65000\n[[blank]]\nmake = 4000\nfit = 1100\n"

func ratesOf(t testing.TB, text string) *price.Rates {
	t.Helper()
	r, err := price.Load(strings.NewReader(text), "rates.toml")
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// priorOf is a prior with nothing in it but what the text says: no search, no
// waiting, no abortive visits, sections by themselves.
func priorOf(t testing.TB, text string) *Prior {
	t.Helper()
	for _, key := range []string{"search_minutes", "abortive_chance", "waiting_hours"} {
		if !strings.Contains(text, key) {
			text += key + " = 0\n"
		}
	}
	p, err := Load(strings.NewReader(text+"refit_blanks = false\n"), "prior.toml")
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// jobOf is n tests of 90 min with nothing to blank, 10 min apart, four to a day
// of 420 min.
func jobOf(t testing.TB, n int, text string) *Job {
	w := &price.Work{Visits: make([]programme.Visit, 1), Set: programme.Defaults(), Sizes: []price.Size{{Text: "dia 250", Shape: "circular", Longest: 250}}}
	for i := range n {
		w.Tests = append(w.Tests, price.Test{Test: programme.Test{ID: fmt.Sprint(i)}, Area: 50, Fits: []int{2}})
	}
	return &Job{Work: w, Rates: ratesOf(t, text), Headroom: 1.5}
}

func simulated(t testing.TB, j *Job, p *Prior, runs int, seed uint64) *Outcome {
	t.Helper()
	o, err := Simulate(j, p, runs, seed)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// choose is C(n, k) by Pascal's triangle, another route than the program's.
func choose(n, k int) float64 {
	row := []float64{1}
	for range n {
		next := make([]float64, len(row)+1)
		for i, v := range row {
			next[i] += v
			next[i+1] += v
		}
		row = next
	}
	return row[k]
}

// TestClosedForm: sections by themselves, one retest each, which always passes.
// Four tests fill the one day, so whatever fails comes back at one visit more:
// the money is that of k retests, k binomial, with k x 100 min in days of 420.
// Quantiles lie in the simulation's own intervals, the mean within four standard
// errors.
func TestClosedForm(t *testing.T) {
	p := priorOf(t, "median = 0.7\nspread = 2.1\njob_share = 0\nretest_pass = 1\nretests_most = 1\n")
	for _, n := range []int{3, 4} {
		j := jobOf(t, n, rates)
		fail := 1 - 0.5*math.Erfc(math.Log(0.7)/math.Log(2.1)/math.Sqrt2) // = P(ln r > 0)
		if got := p.Fail(); math.Abs(got-fail) > 1e-12 {
			t.Fatalf("a section fails with %g, want %g", got, fail)
		}
		clean := 18500 + 2*36000 + float64(n)*5500 + 2*4000 + 2*float64(n)*1100
		mean, money, chance := 0.0, make([]float64, n+1), make([]float64, n+1)
		for k := range n + 1 {
			chance[k] = choose(n, k) * math.Pow(fail, float64(k)) * math.Pow(1-fail, float64(n-k))
			money[k] = clean + 9500*float64(k)
			if k > 0 {
				money[k] += 18500 + 2*36000*math.Ceil(float64(k)*100/420)
			}
			mean += chance[k] * money[k]
			if got := p.Failures(n)[k]; math.Abs(got-chance[k]) > 1e-12 {
				t.Errorf("%d of %d fail with %g, want %g", k, n, got, chance[k])
			}
		}
		o := simulated(t, j, p, 20000, 1)
		if float64(o.Clean) != clean || math.Abs(o.Mean-mean) > 4*o.MeanError {
			t.Errorf("clean %d, want %g; mean %g +/- %g, want %g", o.Clean, clean, o.Mean, o.MeanError, mean)
		}
		for _, q := range o.Money {
			k, sum := 0, chance[0]
			for sum < q.Percent/100 {
				k++
				sum += chance[k]
			}
			if money[k] < q.Low || money[k] > q.High {
				t.Errorf("P%g exactly %g, simulated %g (%g to %g)", q.Percent, money[k], q.Value, q.Low, q.High)
			}
		}
		if got, want := o.None, chance[0]; math.Abs(got-want) > 1e-12 {
			t.Errorf("none fails with %g, want %g", got, want)
		}
	}
}

// TestErrorIsHonest: over many seeds the interval of P80 holds the exact value
// about as often as it says, 95 in 100. With 40 seeds fewer than 33 would come
// about once in 10 000 times; the money has steps, which only helps.
func TestErrorIsHonest(t *testing.T) {
	p := priorOf(t, "median = 0.7\nspread = 2.1\njob_share = 0\nretest_pass = 1\nretests_most = 1\nwaiting_hours = 2\n")
	j := jobOf(t, 1, rates)
	j.Work.Set.DayMinutes = 1e6 // waiting takes no days
	// One test: with chance f 9500 + 18500 + 72000 more and a second visit's
	// waiting. Waiting is at 8800 an hour, mean 2 h: the distribution
	// of the money is a mixture of an exponential and of the sum of two.
	f, clean := p.Fail(), 18500.0+72000+5500+2*4000+2*1100
	cdf := func(x float64) float64 {
		one := func(y float64) float64 { return 1 - math.Exp(-max(0, y)/17600) }
		two := func(y float64) float64 { y = max(0, y) / 17600; return 1 - math.Exp(-y)*(1+y) }
		return (1-f)*one(x-clean) + f*two(x-clean-100000)
	}
	low, high := clean, clean+1e6
	for range 60 {
		if mid := (low + high) / 2; cdf(mid) < 0.8 {
			low = mid
		} else {
			high = mid
		}
	}
	held := 0
	for seed := range uint64(40) {
		// The exact value to 2 minor units an hour's hundredth: 88.
		if q := simulated(t, j, p, 3000, seed).Money[1]; q.Low-88 <= high && high <= q.High+88 {
			held++
		}
	}
	if held < 33 {
		t.Errorf("the interval held the exact P80 %g in %d of 40", high, held)
	}
}

// TestJobTerm: what the sections have in common leaves the chance of each as it
// is and the mean number that fails, and makes the bad jobs worse.
func TestJobTerm(t *testing.T) {
	const text = "median = 0.6\nspread = 2\nretest_pass = 1\nretests_most = 1\n"
	j := jobOf(t, 20, rates)
	apart, together := priorOf(t, text+"job_share = 0\n"), priorOf(t, text+"job_share = 0.6\n")
	mean := func(p *Prior) (m, sum float64) {
		for k, c := range p.Failures(20) {
			m, sum = m+float64(k)*c, sum+c
		}
		return m, sum
	}
	for _, p := range []*Prior{apart, together} {
		m, sum := mean(p)
		if math.Abs(sum-1) > 1e-9 || math.Abs(m-20*p.Fail()) > 1e-8 || math.Abs(p.ExpectedRetests(20)-20*p.Fail()) > 1e-8 {
			t.Errorf("share %g: chances come to %g, %g fail, expected %g", p.JobShare, sum, m, 20*p.Fail())
		}
	}
	if apart.Fail() != together.Fail() {
		t.Errorf("a section fails with %g alone and %g together", apart.Fail(), together.Fail())
	}
	a, b := simulated(t, j, apart, 20000, 1), simulated(t, j, together, 20000, 1)
	if b.Money[2].Low <= a.Money[2].High || b.None <= a.None {
		t.Errorf("P90 %g apart and %g together, none fails %g and %g", a.Money[2].Value, b.Money[2].Value, a.None, b.None)
	}
	// The same mean of retests, within what 20000 runs allow: the standard error
	// is at most sqrt(20 x 20 x 1/4 / 20000) = 0.07.
	if math.Abs(a.Simulated-b.Simulated) > 0.3 || math.Abs(a.Simulated-a.Retests) > 0.3 {
		t.Errorf("%g and %g retests, exactly %g", a.Simulated, b.Simulated, a.Retests)
	}
}

// Two sections with a correlation r and a median of 1 both fail with
// 1/4 + arcsin(r) / 2 pi (Sheppard's formula for two normal variables); with all
// in common they stand or fall together.
func TestBothFail(t *testing.T) {
	for _, share := range []float64{0, 0.2, 0.5, 0.9} {
		p := priorOf(t, fmt.Sprintf("median = 1\nspread = 2\njob_share = %g\n", share))
		if got, want := p.Failures(2)[2], 0.25+math.Asin(share)/(2*math.Pi); math.Abs(got-want) > 1e-9 {
			t.Errorf("share %g: both fail with %g, want %g", share, got, want)
		}
	}
	p := priorOf(t, "median = 0.5\nspread = 2\njob_share = 1\n")
	if got, want := p.None(7), 1-p.Fail(); math.Abs(got-want) > 0.01 { // a step, which evenly spaced sums cut a little wrong
		t.Errorf("none of 7 fails with %g, want %g", got, want)
	}
}

// The table of a practice note: 0.3 then 0.1 gives 1.33 tests a section, 0.5 then
// 0.2 gives 1.63, with retests without end.
func TestExpectedTests(t *testing.T) {
	for _, tt := range []struct{ fail, again, want float64 }{{0.3, 0.1, 1.33}, {0.5, 0.2, 1.63}} {
		p := priorOf(t, fmt.Sprintf("spread = 2\nretests_most = 20\nretest_pass = %g\n", 1-tt.again))
		p.Median = math.Exp(math.Log(2) * normal.Quantile(tt.fail))
		if got := 1 + p.ExpectedRetests(1); math.Abs(got-tt.want) > 0.0051 {
			t.Errorf("%g then %g: %g tests, want %g", tt.fail, tt.again, got, tt.want)
		}
	}
}

func TestSameSeed(t *testing.T) {
	p, _ := Default()
	a, b, c := simulated(t, jobOf(t, 9, rates), p, 2000, 5), simulated(t, jobOf(t, 9, rates), p, 2000, 5), simulated(t, jobOf(t, 9, rates), p, 2000, 6)
	for k := range a.Totals {
		if a.Totals[k] != b.Totals[k] {
			t.Fatalf("run %d: %d and %d from one seed", k, a.Totals[k], b.Totals[k])
		}
	}
	if a.Mean == c.Mean || math.Abs(a.Mean-c.Mean) > 5*math.Hypot(a.MeanError, c.MeanError) {
		t.Errorf("another seed: mean %g and %g +/- %g", a.Mean, c.Mean, c.MeanError)
	}
}

func BenchmarkSimulate(b *testing.B) {
	p, _ := Default()
	j := jobOf(b, 200, rates)
	for b.Loop() {
		simulated(b, j, p, 1000, 1)
	}
}
