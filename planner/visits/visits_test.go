package visits_test

import (
	"math"
	"math/bits"
	"math/rand/v2"
	"testing"

	"blankoff/planner/visits"
)

// TestVisitsAreFewest holds the visits against every choice of days.
func TestVisitsAreFewest(t *testing.T) {
	const days = 10
	r := rand.New(rand.NewPCG(41, 5))
	for try := range 4000 {
		from := math.Inf(-1)
		if try%2 == 0 {
			from = float64(r.IntN(days))
		}
		w := make([]visits.Window, r.IntN(9))
		for i := range w {
			w[i] = visits.Window{Ready: math.Inf(-1), Closed: math.Inf(1)}
			if r.IntN(5) > 0 {
				w[i].Ready = float64(r.IntN(days))
			}
			if r.IntN(4) > 0 {
				w[i].Closed = float64(r.IntN(days))
			}
		}
		got, missed := visits.Least(w, from)
		want, lost := fewest(w, from, days)
		if len(got) != want || len(missed) != lost {
			t.Fatalf("%v from %g: %d visits and %d missed, expected %d and %d", w, from, len(got), len(missed), want, lost)
		}
		check(t, w, from, got, missed)
	}
}

// fewest tries every set of days.
func fewest(w []visits.Window, from float64, days int) (visits, lost int) {
	best := math.MaxInt
	for set := range 1 << days {
		kept := 0
		for _, x := range w {
			for d := range days {
				if set>>d&1 == 1 && float64(d) >= math.Max(x.Ready, from) && float64(d) <= x.Closed {
					kept++
					break
				}
			}
		}
		if n := bits.OnesCount(uint(set)); len(w)-kept < lost || set == 0 || len(w)-kept == lost && n < best {
			lost, best = len(w)-kept, n
		}
	}
	return best, lost
}

// check holds every test to be in exactly one visit that suits it, or missed.
func check(t *testing.T, w []visits.Window, from float64, list []visits.Visit, missed []int) {
	t.Helper()
	times := make([]int, len(w))
	for _, v := range list {
		if len(v.Tests) == 0 || v.Earliest > v.Latest || v.Earliest < from {
			t.Fatalf("%v from %g: visit %v", w, from, v)
		}
		for _, i := range v.Tests {
			times[i]++
			if v.Earliest < w[i].Ready || v.Latest > w[i].Closed {
				t.Fatalf("%v: visit %v doesn't suit test %d", w, v, i)
			}
		}
	}
	for _, i := range missed {
		times[i]++
	}
	for i, n := range times {
		if n != 1 {
			t.Fatalf("%v: test %d stands in %d places", w, i, n)
		}
	}
}
