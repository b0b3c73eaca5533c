package planner_test

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"slices"
	"testing"
	"time"

	"blankoff/fittings"
	"blankoff/planner"
	"blankoff/takeoff"
)

// line is a row of a made-up schedule: a circular piece, m.
type line struct {
	tag, kind, from  string
	diameter, length float64
	at               float64 // along the piece that it sits on
	branch           float64 // diameter of a tee's branch
}

// tag is that of the k-th of its sort; nothing comes before the first.
func tag(sort string, k int) string {
	if k < 0 {
		return ""
	}
	return fmt.Sprint(sort, k)
}

// job is a made-up system, group by group.
type job struct {
	name   string
	pieces int // of a group
	group  func(k int) []line
}

var jobs = []job{
	// A main of straights of four pieces each.
	{"main", 4, func(k int) []line {
		return []line{{tag: tag("M", k), kind: "straight", from: tag("M", k-1), diameter: 0.5, length: 12}}
	}},
	// Tees that fork and fork again, with a straight of three pieces before each.
	{"tees", 4, func(k int) []line {
		from := tag("T", (k-1)>>1)
		if k > 0 && k%2 == 0 {
			from += "/branch"
		}
		return []line{
			{tag: tag("D", k), kind: "straight", from: from, diameter: 0.4, length: 9},
			{tag: tag("T", k), kind: "tee", from: tag("D", k), diameter: 0.4, length: 0.6, branch: 0.4},
		}
	}},
	// A straight of two pieces with 40 spigots, each with a straight on it.
	{"spigots", 82, func(k int) []line {
		out := []line{{tag: tag("M", k), kind: "straight", from: tag("M", k-1), diameter: 0.8, length: 6}}
		for i := range 40 {
			s := fmt.Sprintf("M%d-%d", k, i)
			out = append(out,
				line{tag: s, kind: "spigot", from: tag("M", k), diameter: 0.1, length: 0.05, at: 0.1 + 0.145*float64(i)},
				line{tag: s + "d", kind: "straight", from: s, diameter: 0.1, length: 1 + 0.05*float64(i)})
		}
		return out
	}},
}

// measured is the takeoff of a job of some n pieces.
func (j job) measured(n int) *takeoff.Takeoff {
	t := takeoff.New(takeoff.Options{})
	var r takeoff.Row
	rows := 0
	for k := range n / j.pieces {
		for _, l := range j.group(k) {
			rows++
			r.Reset(takeoff.Place{File: j.name, Row: rows})
			r.Text[takeoff.Tag], r.Text[takeoff.Kind], r.Text[takeoff.From] = l.tag, l.kind, l.from
			r.Text[takeoff.System], r.Text[takeoff.Level] = "Supply 1", tag("Level ", 10*k*j.pieces/n)
			r.Text[takeoff.Shape], r.Text[takeoff.Class] = "circular", "B"
			r.SetNumber(takeoff.TestPa, 400)
			put := func(d fittings.Dim, v float64) {
				if v > 0 {
					r.SetNumber(takeoff.DimColumn(d), v)
				}
			}
			if put(fittings.Length, l.length); l.kind == "spigot" {
				put(fittings.BranchDiameter, l.diameter)
				put(fittings.BranchLength, l.length)
				r.SetNumber(takeoff.At, l.at)
			} else {
				put(fittings.Diameter, l.diameter)
				put(fittings.BranchDiameter, l.branch)
				put(fittings.BranchLength, l.branch/4)
			}
			t.Add(&r)
		}
	}
	t.Finish(takeoff.Schedule{File: j.name, RowsRead: rows, RowsUsed: rows}, nil, nil)
	return t
}

// heapInUse is the memory held by the heap, in MB: what lives and what waits
// for the collector.
func heapInUse() float64 {
	sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}, {Name: "/memory/classes/heap/unused:bytes"}}
	metrics.Read(sample)
	return float64(sample[0].Value.Uint64()+sample[1].Value.Uint64()) / 1e6
}

// peakHeap is the most that the heap held while f ran beyond what it held
// before, looked at every millisecond, in MB.
func peakHeap(f func()) float64 {
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
	f()
	close(stop)
	return <-peak - before
}

// wideRig reads sections of 35 to 117 m2 in class B at 400 Pa: 0.44 L/s per m2
// by k p^0.65, with half as much again to be readable. Figures of our own.
const wideRig = `name = "one range"
[[range]]
name = "only"
min_l_s = 15
max_l_s = 80
accuracy_percent = 2
accuracy_l_s = 0.2
own_leak_l_s = 0.5
`

// run is one plan from rows to sections.
type run struct{ takeoff, plan time.Duration }

func (r run) whole() time.Duration { return r.takeoff + r.plan }

// BenchmarkMake measures and plans systems of 10,000 and 100,000 pieces from
// rows in memory, three times each in one run, and reports the best of the
// three in seconds, the growth, and the most memory held at 100,000. The second
// rig can judge small sections only and has a hole between its ranges, so that
// there are many more sections, and many of them under range.
func BenchmarkMake(b *testing.B) {
	for _, j := range jobs {
		b.Run(j.name+"/wide", func(b *testing.B) { grow(b, j, settings(b, wideRig)) })
		b.Run(j.name+"/gap", func(b *testing.B) { grow(b, j, settings(b, gapRig)) })
	}
}

func grow(b *testing.B, j job, set planner.Settings) {
	runs := map[int][]run{}
	mostMB := 0.0
	var p *planner.Plan
	for b.Loop() {
		for _, n := range []int{10_000, 100_000} {
			for range 3 {
				var r run
				var err error
				mostMB = max(mostMB, peakHeap(func() {
					begin := time.Now()
					t := j.measured(n)
					r.takeoff = time.Since(begin)
					p, err = planner.Make(t, set)
					r.plan = time.Since(begin) - r.takeoff
				}))
				if err != nil || len(p.Faults) > 0 {
					b.Fatal(err, p.Faults)
				}
				runs[n] = append(runs[n], r)
			}
		}
	}
	best := func(n int) run {
		return slices.MinFunc(runs[n], func(x, y run) int { return int(x.whole() - y.whole()) })
	}
	small, large := best(10_000), best(100_000)
	b.ReportMetric(small.whole().Seconds(), "s-10000")
	b.ReportMetric(large.whole().Seconds(), "s-100000")
	b.ReportMetric(large.plan.Seconds(), "s-100000-plan")
	b.ReportMetric(float64(large.whole())/float64(small.whole()), "growth")
	b.ReportMetric(float64(large.plan)/float64(small.plan), "growth-plan")
	b.ReportMetric(mostMB, "MB")
	b.ReportMetric(float64(len(p.Network.Nodes)), "nodes")
	b.ReportMetric(float64(len(p.Sections)), "sections")
	b.ReportMetric(float64(p.Proof.Score.Under), "under")
	b.ReportMetric(0, "ns/op")
}
