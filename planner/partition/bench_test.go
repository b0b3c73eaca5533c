package partition

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// grown is a tree of n pieces of areas from 0.2 to 8 m2, in the given unit of
// weight (units per m2), with the price of a cut from 10 to 60 minutes.
func grown(shape string, n int, unit int64, windows ...Window) Problem {
	r := rand.New(rand.NewPCG(7, uint64(n)))
	p := Problem{Parent: make([]int, n), Weight: make([]int64, n), Price: make([]int64, n)}
	for v := range n {
		p.Weight[v] = (200 + r.Int64N(7800)) * unit / 1000
		if unit > 1000 {
			p.Weight[v] += r.Int64N(unit / 1000)
		}
		p.Price[v] = 1000 + 50*r.Int64N(100)
		p.Parent[v] = hang(r, shape, v)
	}
	for _, w := range windows {
		p.Windows = append(p.Windows, Window{w.Low * unit, w.High * unit})
	}
	return p
}

// onMain is the main piece of v where every main piece and what hangs from it
// is a group of so many; a main piece hangs from the one before.
func onMain(v, group int) int {
	switch {
	case v == 0:
		return -1
	case v%group == 0:
		return v - group
	}
	return v - v%group
}

func hang(r *rand.Rand, shape string, v int) int {
	switch shape {
	case "chain":
		return v - 1
	case "random":
		return max(v-1-r.IntN(min(max(v, 1), 20)), min(v-1, 0))
	case "attach":
		if v == 0 {
			return -1
		}
		return r.IntN(v)
	case "spigots": // 40 on every main piece
		return onMain(v, 41)
	case "branches": // 40 of three pieces on every main piece
		if v%121 == 0 || v%121%3 == 1 {
			return onMain(v, 121)
		}
		return v - 1
	}
	return min(v, 1) - 1 // hub
}

var wide = []Window{{35, 117}}
var gapped = []Window{{20, 40}, {60, 130}}

// BenchmarkConfirmed solves the generated trees of 1,000 nodes.
func BenchmarkConfirmed(b *testing.B) {
	for _, c := range readConfirmed(b, "medium.json") {
		if len(c.Parent) < 1000 {
			continue
		}
		for _, aim := range []Aim{Tests, Time} {
			p := c.problem(aim)
			b.Run(fmt.Sprintf("%s/aim%d", c.Name, aim), func(b *testing.B) { solveAll(b, p) })
		}
	}
}

// BenchmarkRings solves a tree of 1,000 with links that close rings of up to
// 50 joints.
func BenchmarkRings(b *testing.B) {
	for _, links := range []int{1, 2, 5} {
		p := grown("random", 1000, 1_000_000, wide...)
		r := rand.New(rand.NewPCG(3, 4))
		for range links {
			v := 50 + r.IntN(950)
			p.Links = append(p.Links, Link{v, v - 1 - r.IntN(50), 3000})
		}
		b.Run(fmt.Sprintf("links%d", links), func(b *testing.B) { solveAll(b, p) })
	}
}

// BenchmarkHub shows what the hard case costs: the last one may stop at the
// work limit.
func BenchmarkHub(b *testing.B) {
	for _, n := range []int{100, 300, 1000, 3000} {
		p := grown("hub", n+1, 1_000_000, wide...)
		b.Run(fmt.Sprintf("branches%d", n), func(b *testing.B) { solveAll(b, p) })
	}
	p := grown("hub", 3001, 1_000_000, wide...)
	for v := range p.Weight {
		p.Weight[v] /= 10
	}
	b.Run("branches3000/light", func(b *testing.B) { solveAll(b, p) })
}

// solveAll reports the work, the score and whether it is proved best (1).
func solveAll(b *testing.B, p Problem) {
	b.ReportAllocs()
	for b.Loop() {
		s, err := Solve(p)
		if err != nil {
			b.Fatal(err)
		}
		proved := 0.0
		if s.Exhaustive {
			proved = 1
		}
		b.ReportMetric(float64(s.Work), "work")
		b.ReportMetric(proved, "proved")
	}
}

// BenchmarkSolve solves trees of several shapes, sizes and units of weight.
func BenchmarkSolve(b *testing.B) {
	for _, shape := range []string{"chain", "random", "attach", "spigots", "branches"} {
		for _, n := range []int{1000, 10_000, 100_000} {
			for _, unit := range []int64{1000, 1_000_000} {
				for i, ws := range [][]Window{wide, gapped} {
					p := grown(shape, n, unit, ws...)
					b.Run(fmt.Sprintf("%s/n%d/unit%d/windows%d", shape, n, unit, i+1), func(b *testing.B) { solveAll(b, p) })
				}
			}
		}
	}
}
