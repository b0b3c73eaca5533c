package blanking

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// TestStore holds the lowest free blank against a look at every blank, over random
// takings of free blanks and of those in use at the step before.
func TestStore(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for round := range 200 {
		gap := 1 + round%2
		s := newStore(2, gap == 2)
		last := [2][]int{}
		for step := range 60 {
			s.reach(step)
			for size := range last {
				for no, used := range last[size] { // some stay at their joint
					if used == step-1 && r.IntN(3) == 0 {
						s.take(size, no)
						last[size][no] = step
					}
				}
				for range r.IntN(4) {
					want := 0
					for want < len(last[size]) && last[size][want] > step-gap {
						want++
					}
					no := s.lowest(size)
					if no != want {
						t.Fatalf("round %d, step %d: blank %d of %v, want %d", round, step, no, last[size], want)
					}
					s.take(size, no)
					if no == len(last[size]) {
						last[size] = append(last[size], 0)
					}
					last[size][no] = step
				}
			}
		}
	}
}

// BenchmarkMoving follows the blanks of one test with many, all of one size: four
// times as many should take little more than four times as long.
func BenchmarkMoving(b *testing.B) {
	for _, n := range []int{25_000, 100_000} {
		test := Test{}
		for k := range n {
			test.Blanks = append(test.Blanks, Blank{Place: k})
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				moving([]Test{test}, []int{0}, 1, false)
			}
		})
	}
}
