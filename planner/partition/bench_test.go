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
		if v%41 == 0 {
			return v - 41*min(v, 1) - (1 - min(v, 1))
		}
		return v - v%41
	case "branches": // 40 of three pieces on every main piece
		if v%121 == 0 {
			return v - 121*min(v, 1) - (1 - min(v, 1))
		}
		if v%121%3 == 1 {
			return v - v%121
		}
		return v - 1
	}
	return min(v, 1) - 1 // hub
}

var wide = []Window{{35, 117}}
var gapped = []Window{{20, 40}, {60, 130}}

func BenchmarkSolve(b *testing.B) {
	for _, shape := range []string{"chain", "random", "attach", "spigots", "branches"} {
		for _, n := range []int{1000, 10_000, 100_000} {
			for _, unit := range []int64{1000, 1_000_000} {
				for i, ws := range [][]Window{wide, gapped} {
					p := grown(shape, n, unit, ws...)
					b.Run(fmt.Sprintf("%s/n%d/unit%d/windows%d", shape, n, unit, i+1), func(b *testing.B) {
						b.ReportAllocs()
						for b.Loop() {
							s, err := Solve(p)
							if err != nil || !s.Exhaustive {
								b.Fatal(err, s.Exhaustive, s.Work)
							}
							b.ReportMetric(float64(s.Work), "work")
						}
					})
				}
			}
		}
	}
}
