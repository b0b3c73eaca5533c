package partition

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// drawTimes gives nodes random first and last moments; some have none.
func drawTimes(r *rand.Rand, p *Problem) {
	n := len(p.Parent)
	p.From, p.To = make([]int64, n), make([]int64, n)
	most := []int64{3, 8, 30}[r.IntN(3)]
	for v := range n {
		p.From[v], p.To[v] = FromFirst, ToLast
		if r.IntN(3) > 0 {
			p.From[v] = r.Int64N(most) - 2
		}
		if r.IntN(3) > 0 {
			p.To[v] = max(p.From[v], -2) + r.Int64N(1+most/2)
		}
		if r.IntN(40) == 0 { // never there by itself
			p.From[v], p.To[v] = 5, 4
		}
	}
}

// TestTimesAgreeWithBruteForce holds divisions whose nodes come and go against every
// way to cut.
func TestTimesAgreeWithBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 6))
	dearer := 0
	for range 20_000 {
		p := draw(r, 1+r.IntN(9), 0)
		drawTimes(r, &p)
		s := mustSolve(t, p)
		want := brute(p)
		if merit(p, s.Score) != merit(p, want) || !s.Exhaustive {
			t.Fatalf("score %+v, exhaustive %v, brute force %+v\n%+v", s.Score, s.Exhaustive, want, p)
		}
		p.From, p.To = nil, nil
		if better(merit(p, brute(p)), merit(p, want)) {
			dearer++
		}
	}
	if dearer < 2000 {
		t.Errorf("times made only %d divisions dearer", dearer)
	}
}

// TestTimesWithinLimit: past the limit of work the parts are still all there at one
// moment, and the bound holds.
func TestTimesWithinLimit(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 6))
	short := 0
	for range 400 {
		p := draw(r, 12+r.IntN(3), 0)
		for v := range p.Weight { // many different sums
			p.Weight[v] = 1 + r.Int64N(1000)
		}
		p.Windows = []Window{{1500, 2500}, {3000, 6000}}
		drawTimes(r, &p)
		want := brute(p)
		p.WorkLimit = 1 + r.Int64N(20)
		s := mustSolve(t, p)
		if better(merit(p, s.Score), merit(p, want)) || better(merit(p, want), merit(p, s.Bound)) {
			t.Fatalf("score %+v, bound %+v, brute force %+v\n%+v", s.Score, s.Bound, want, p)
		}
		if !s.Exhaustive {
			short++
		}
	}
	if short < 5 {
		t.Errorf("only %d answers weren't proved", short)
	}
}

// TestTimesChangeNothing: moments that all nodes share are as good as none.
func TestTimesChangeNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 6))
	for range 500 {
		p := draw(r, 1+r.IntN(40), 0)
		want := mustSolve(t, p)
		p.From, p.To = make([]int64, len(p.Parent)), make([]int64, len(p.Parent))
		for v := range p.From {
			p.From[v], p.To[v] = r.Int64N(5), 4+r.Int64N(5)
		}
		if s := mustSolve(t, p); s.Score != want.Score {
			t.Fatalf("score %+v, without moments %+v\n%+v", s.Score, want.Score, p)
		}
	}
}

// BenchmarkTimes divides trees in which every node is there for six moments of its
// own: four times as many should take little more than four times as long.
func BenchmarkTimes(b *testing.B) {
	for _, shape := range []string{"chain", "random"} {
		for _, n := range []int{2500, 10_000} {
			p := grown(shape, n, 1000, Window{25, 80})
			p.From, p.To = make([]int64, n), make([]int64, n)
			for v := range n {
				p.From[v], p.To[v] = int64(v), int64(v+5)
			}
			b.Run(fmt.Sprint(shape, n), func(b *testing.B) {
				var s Solution
				for b.Loop() {
					s, _ = Solve(p)
				}
				b.ReportMetric(float64(s.Work), "work")
			})
		}
	}
}
