package partition

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"testing"
	"time"
)

// heapInUse is the memory held by the heap, in MB: what lives and what waits
// for the collector.
func heapInUse() float64 {
	sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}, {Name: "/memory/classes/heap/unused:bytes"}}
	metrics.Read(sample)
	return float64(sample[0].Value.Uint64()+sample[1].Value.Uint64()) / 1e6
}

// timed runs f and returns how long it took and the most that the heap held
// beyond what it held before, looked at every millisecond.
func timed(f func()) (took time.Duration, peakMB float64) {
	runtime.GC()
	debug.FreeOSMemory()
	before := heapInUse()
	stop, peak := make(chan struct{}), make(chan float64)
	go func() {
		most := before
		tick := time.NewTicker(time.Millisecond)
		defer tick.Stop()
		for {
			select {
			case <-tick.C:
				most = max(most, heapInUse())
			case <-stop:
				peak <- max(most, heapInUse())
				return
			}
		}
	}()
	begin := time.Now()
	f()
	took = time.Since(begin)
	close(stop)
	return took, <-peak - before
}

// BenchmarkGrowth solves systems of 1,000, 10,000 and 100,000 pieces in one
// run, three times each, and reports the best of the three in ms, the growth
// from 10,000 to 100,000, and the most memory held at 100,000. Weights are in
// 1e-3 m2; windows2 has a gap between its two windows.
func BenchmarkGrowth(b *testing.B) {
	for _, shape := range []string{"chain", "random", "attach", "spigots", "branches"} {
		for i, ws := range [][]Window{wide, gapped} {
			b.Run(fmt.Sprintf("%s/windows%d", shape, i+1), func(b *testing.B) { grow(b, shape, ws) })
		}
	}
}

func grow(b *testing.B, shape string, windows []Window) {
	least := map[int]time.Duration{}
	mostMB, proved := 0.0, 1.0
	for b.Loop() {
		for _, n := range []int{1000, 10_000, 100_000} {
			p := grown(shape, n, 1000, windows...)
			for range 3 {
				var s Solution
				var err error
				took, mb := timed(func() { s, err = Solve(p) })
				if err != nil {
					b.Fatal(err)
				}
				if old, ok := least[n]; !ok || took < old {
					least[n] = took
				}
				if !s.Exhaustive {
					proved = 0
				}
				mostMB = max(mostMB, mb)
			}
		}
	}
	ms := func(n int) float64 { return float64(least[n].Microseconds()) / 1000 }
	b.ReportMetric(ms(1000), "ms-1000")
	b.ReportMetric(ms(10_000), "ms-10000")
	b.ReportMetric(ms(100_000), "ms-100000")
	b.ReportMetric(ms(100_000)/ms(10_000), "growth")
	b.ReportMetric(mostMB, "MB")
	b.ReportMetric(proved, "proved")
	b.ReportMetric(0, "ns/op")
}

// BenchmarkBeyondReach solves hubs whose branches weigh more than one part may,
// too many to be proved: it stops at the work limit and says so.
func BenchmarkBeyondReach(b *testing.B) {
	for _, h := range hubs {
		b.Run(h.name, func(b *testing.B) {
			p := h.problem()
			var s Solution
			took, mb := time.Duration(0), 0.0
			for b.Loop() {
				var err error
				took, mb = timed(func() { s, err = Solve(p) })
				if err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(took.Seconds(), "s")
			b.ReportMetric(mb, "MB")
			b.ReportMetric(float64(s.Work)/1e6, "Mwork")
			b.ReportMetric(float64(s.Score.Under), "under")
			b.ReportMetric(float64(s.Bound.Under), "under-bound")
			b.ReportMetric(float64(s.Score.Tests), "tests")
			b.ReportMetric(float64(s.Bound.Tests), "tests-bound")
			b.ReportMetric(float64(s.Score.Minutes), "minutes")
			b.ReportMetric(float64(s.Bound.Minutes), "minutes-bound")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// hub is many branches on one cluster.
type hub struct {
	name     string
	branches int
	lighter  int64 // by this factor than 0.2 to 8 m2
	unit     int64
	windows  []Window
	aim      Aim
}

var hubs = []hub{
	{"heavy3000", 3000, 1, 1_000_000, wide, Tests},
	{"light3000", 3000, 10, 1_000_000, wide, Tests},
	{"light3000/time", 3000, 10, 1_000_000, wide, Time},
	{"light3000/unit1000", 3000, 10, 1000, wide, Tests},
	{"light3000/windows2", 3000, 10, 1_000_000, gapped, Tests},
	{"light30000", 30_000, 10, 1_000_000, wide, Tests},
	{"feather30000", 30_000, 100, 1_000_000, wide, Tests},
	{"heavy100000", 100_000, 1, 1_000_000, wide, Tests},
}

func (h hub) problem() Problem {
	p := grown("hub", h.branches+1, h.unit, h.windows...)
	p.Aim, p.TestPrice = h.aim, 9000
	for v := range p.Weight {
		p.Weight[v] /= h.lighter
	}
	return p
}

// A hub of thousands of light branches is beyond the default work limit: the
// answer is legal and says how far from the best it can be at most.
func TestHubBeyondTheDefaultLimit(t *testing.T) {
	p := hubs[1].problem()
	s := mustSolve(t, p)
	if s.Exhaustive || s.Work > DefaultWorkLimit {
		t.Errorf("exhaustive %v after work %d", s.Exhaustive, s.Work)
	}
	if b := s.Bound; b.Over != 0 || b.Under != s.Score.Under || b.Tests != s.Score.Tests || b.Minutes > s.Score.Minutes || b.Minutes < s.Score.Minutes*95/100 {
		t.Errorf("score %+v, bound %+v", s.Score, b)
	}
}
