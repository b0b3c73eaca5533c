package blanking_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"blankoff/planner/blanking"
)

// random makes a plan's tests: sections of a random tree, with a ring now and
// then, their cuts and their open ends.
func random(r *rand.Rand, n, sizes, visits int) []blanking.Test {
	tests := make([]blanking.Test, n)
	place := 0
	put := func(k, size, place int) {
		tests[k].Blanks = append(tests[k].Blanks, blanking.Blank{Size: size, Place: place})
	}
	for k := range tests {
		tests[k].Visit = 3 * r.IntN(visits)
		for range r.IntN(4) {
			put(k, r.IntN(sizes), place)
			place++
		}
		joints := 0
		if k > 0 && r.IntN(8) > 0 {
			joints = 1
		}
		for r.IntN(7) == 0 {
			joints++
		}
		for range joints {
			a := r.IntN(k + 1) // the same section on both sides now and then
			size, other := r.IntN(sizes), r.IntN(sizes)
			if r.IntN(5) > 0 {
				other = size
			}
			put(a, size, place)
			put(k, other, place)
			place++
		}
	}
	return tests
}

// cost counts an order by hand: a store of blanks for every size, taken from and
// given back test by test.
func cost(tests []blanking.Test, order []int, ahead bool) (makes map[int]int, moves int) {
	makes = map[int]int{}
	fits, turned := 0, 0
	for at, t := range order {
		use := map[int]int{}
		for _, b := range tests[t].Blanks {
			use[b.Size]++
			fits++
		}
		if at > 0 {
			prev := slices.Clone(tests[order[at-1]].Blanks)
			for _, b := range tests[t].Blanks {
				if i := slices.Index(prev, b); i >= 0 {
					prev = slices.Delete(prev, i, i+1)
					turned++
				}
			}
			if ahead {
				for _, b := range prev {
					use[b.Size]++
				}
			}
		}
		for size, n := range use {
			makes[size] = max(makes[size], n)
		}
	}
	made := 0
	for _, n := range makes {
		made += n
	}
	return makes, fits - made - turned
}

func made(makes map[int]int) (n int) {
	for _, k := range makes {
		n += k
	}
	return n
}

// permute calls f with every order that keeps to the visits, in the order of the
// list.
func permute(tests []blanking.Test, f func([]int)) {
	var order []int
	used := make([]bool, len(tests))
	var next func()
	next = func() {
		if len(order) == len(tests) {
			f(order)
			return
		}
		for k := range tests {
			first := !used[k]
			for j := range tests {
				first = first && (used[j] || tests[j].Visit >= tests[k].Visit)
			}
			if first {
				used[k], order = true, append(order, k)
				next()
				used[k], order = false, order[:len(order)-1]
			}
		}
	}
	next()
}

// TestOrderIsBest holds the order against every permutation: blanks to be made,
// then moves, then the first in the order of the list.
func TestOrderIsBest(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	for try := range 6000 {
		tests := random(r, r.IntN(7), 1+r.IntN(4), 1+r.IntN(3)*(try%2))
		if try%40 == 0 {
			tests = random(r, 7, 1+r.IntN(4), 1)
		}
		ahead := r.IntN(2) == 0
		bestMade, bestMoves := -1, 0
		var best []int
		permute(tests, func(order []int) {
			makes, moves := cost(tests, order, ahead)
			if m := made(makes); bestMade < 0 || m < bestMade || m == bestMade && moves < bestMoves {
				bestMade, bestMoves, best = m, moves, slices.Clone(order)
			}
		})
		p := blanking.Least(tests, ahead)
		if p.Made() != bestMade || p.Moves != bestMoves || !slices.Equal(p.Order, best) || !p.Proved {
			t.Fatalf("%v ahead %v: %v makes %d moves %d proved %v; best is %v with %d and %d", tests, ahead, p.Order, p.Made(), p.Moves, p.Proved, best, bestMade, bestMoves)
		}
		check(t, tests, ahead, p)
	}
}

// check holds what every plan has to keep: its own figures by another count, the
// visits, the bounds, and every blank's way.
func check(t *testing.T, tests []blanking.Test, ahead bool, p blanking.Plan) {
	t.Helper()
	seen := slices.Clone(p.Order)
	slices.Sort(seen)
	for k, v := range seen {
		if k != v || len(seen) != len(tests) {
			t.Fatalf("order %v of %d tests", p.Order, len(tests))
		}
	}
	for k := 1; k < len(p.Order); k++ {
		if tests[p.Order[k]].Visit < tests[p.Order[k-1]].Visit {
			t.Fatalf("order %v goes back to an earlier visit", p.Order)
		}
	}
	makes, moves := cost(tests, p.Order, ahead)
	for size, n := range p.Makes {
		if makes[size] != n {
			t.Fatalf("size %d: makes %d, counted %d", size, n, makes[size])
		}
	}
	if made(makes) != p.Made() || moves != p.Moves || p.Fits-p.Made()-p.Turned != p.Moves {
		t.Fatalf("fits %d makes %d turned %d moves %d, counted %d and %d", p.Fits, p.Made(), p.Turned, p.Moves, made(makes), moves)
	}
	if p.LeastMakes > p.Made() || p.LeastMoves > p.Moves || p.Proved != (p.LeastMakes == p.Made() && p.LeastMoves == p.Moves) {
		t.Fatalf("makes %d >= %d, moves %d >= %d, proved %v", p.Made(), p.LeastMakes, p.Moves, p.LeastMoves, p.Proved)
	}
	checkMoving(t, tests, ahead, p)
}

// checkMoving follows every blank: it is never at two places at once.
func checkMoving(t *testing.T, tests []blanking.Test, ahead bool, p blanking.Plan) {
	t.Helper()
	at := make([]int, len(tests))
	for k, v := range p.Order {
		at[v] = k
	}
	served, numbers, count := map[[2]int]bool{}, map[int]int{}, map[blanking.How]int{}
	for _, x := range p.Moving {
		if numbers[x.Size]++; numbers[x.Size] != x.No {
			t.Fatalf("size %d: no. %d comes as the %dth", x.Size, x.No, numbers[x.Size])
		}
		for k, s := range x.Steps {
			b := tests[s.Test].Blanks[s.Blank]
			if key := [2]int{s.Test, s.Blank}; b.Size != x.Size || served[key] {
				t.Fatalf("%+v serves %v twice or in another size", x, key)
			} else {
				served[key] = true
			}
			count[s.How]++
			if (k == 0) != (s.How == blanking.Fit) {
				t.Fatalf("%+v: step %d", x, k)
			}
			if k == 0 {
				continue
			}
			before := x.Steps[k-1]
			gap := at[s.Test] - at[before.Test]
			same := b.Place == tests[before.Test].Blanks[before.Blank].Place
			least := 1
			if ahead && s.How == blanking.Move {
				least = 2
			}
			if gap < least || s.How == blanking.Turn && (gap != 1 || !same) {
				t.Fatalf("%+v: step %d, %d tests on", x, k, gap)
			}
		}
	}
	for size, n := range p.Makes {
		if numbers[size] != n {
			t.Fatalf("size %d: %d numbers for %d made", size, numbers[size], n)
		}
	}
	if len(served) != p.Fits || count[blanking.Fit] != p.Made() || count[blanking.Turn] != p.Turned || count[blanking.Move] != p.Moves {
		t.Fatalf("%v for fits %d makes %d turned %d moves %d", count, p.Fits, p.Made(), p.Turned, p.Moves)
	}
}

// TestFourteen holds what the exact search finds against many shuffled orders.
func TestFourteen(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	for range 6 {
		tests := random(r, 14, 5, 1)
		for _, ahead := range []bool{false, true} {
			p := blanking.Least(tests, ahead)
			check(t, tests, ahead, p)
			if !p.Proved {
				t.Errorf("14 tests, ahead %v: not proved", ahead)
			}
			for range 500 {
				makes, moves := cost(tests, r.Perm(14), ahead)
				if m := made(makes); m < p.Made() || m == p.Made() && moves < p.Moves {
					t.Fatalf("ahead %v: a shuffled order has %d and %d, fewer than %d and %d", ahead, m, moves, p.Made(), p.Moves)
				}
			}
		}
	}
}

// TestManyTests holds plans beyond the exact search to their own bounds.
func TestManyTests(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 17))
	for try := range 150 {
		tests := random(r, 15+r.IntN(60), 1+r.IntN(9), 1+try%4)
		for _, ahead := range []bool{false, true} {
			check(t, tests, ahead, blanking.Least(tests, ahead))
		}
	}
}

// TestTrunk: a trunk of sections one after the other is tested along it, and
// every cut's blank is turned, whatever the order in which they are listed.
func TestTrunk(t *testing.T) {
	for _, n := range []int{5, 14, 40, 500} {
		tests := make([]blanking.Test, n)
		r := rand.New(rand.NewPCG(1, uint64(n)))
		name := r.Perm(n)
		for k := range n {
			at := &tests[name[k]]
			if k > 0 {
				at.Blanks = append(at.Blanks, blanking.Blank{Size: 0, Place: k})
			}
			if k+1 < n {
				at.Blanks = append(at.Blanks, blanking.Blank{Size: 0, Place: k + 1})
			}
		}
		p := blanking.Least(tests, false)
		check(t, tests, false, p)
		if p.Turned != n-1 || p.Made() != 2 || !p.Proved {
			t.Errorf("%d sections in a row: %d turned, %d made, proved %v", n, p.Turned, p.Made(), p.Proved)
		}
	}
}

// TestStarBeyondExact: twenty branches on one main: the main shares a joint with
// each, and can follow one and be followed by one.
func TestStarBeyondExact(t *testing.T) {
	tests := make([]blanking.Test, 21)
	for k := 1; k <= 20; k++ {
		b := blanking.Blank{Size: k % 3, Place: k}
		tests[0].Blanks, tests[k].Blanks = append(tests[0].Blanks, b), append(tests[k].Blanks, b)
	}
	p := blanking.Least(tests, false)
	if p.Turned != 2 || !p.Proved || p.Fits != 40 || p.Made() != 20 || p.Moves != 18 {
		t.Errorf("fits %d makes %d turned %d moves %d proved %v", p.Fits, p.Made(), p.Turned, p.Moves, p.Proved)
	}
}

// TestAheadOrder: two large and two small sections of one size; made ready ahead,
// the large ones mustn't follow each other.
func TestAheadOrder(t *testing.T) {
	tests := make([]blanking.Test, 4)
	place := 0
	for k, n := range []int{5, 5, 1, 1} {
		for range n {
			tests[k].Blanks = append(tests[k].Blanks, blanking.Blank{Size: 0, Place: place})
			place++
		}
	}
	if p := blanking.Least(tests, true); p.Made() != 6 || !p.Proved || !slices.Equal(p.Order, []int{0, 2, 1, 3}) {
		t.Errorf("%v makes %d", p.Order, p.Made())
	}
	if p := blanking.Least(tests, false); p.Made() != 5 || !slices.Equal(p.Order, []int{0, 1, 2, 3}) {
		t.Errorf("one after the other: %v makes %d", p.Order, p.Made())
	}
}

// TestSameWhateverTheNames: other numbers for sizes and places change nothing;
// another list of the tests neither makes nor moves; a test without blanks never
// needs more.
func TestSameWhateverTheNames(t *testing.T) {
	r := rand.New(rand.NewPCG(23, 29))
	for try := range 400 {
		tests, ahead := random(r, 1+r.IntN(10), 4, 1+try%2), r.IntN(2) == 0
		p := blanking.Least(tests, ahead)
		other, shuffled := make([]blanking.Test, len(tests)), make([]blanking.Test, len(tests))
		for k, to := range r.Perm(len(tests)) {
			other[k].Visit = 10*tests[k].Visit + 4
			for _, b := range tests[k].Blanks {
				other[k].Blanks = append(other[k].Blanks, blanking.Blank{Size: 3 - b.Size, Place: 1000 - b.Place})
			}
			shuffled[to] = tests[k]
		}
		if q := blanking.Least(other, ahead); !slices.Equal(q.Order, p.Order) || q.Made() != p.Made() || q.Moves != p.Moves {
			t.Fatalf("renamed: %v %d %d, was %v %d %d", q.Order, q.Made(), q.Moves, p.Order, p.Made(), p.Moves)
		}
		if q := blanking.Least(shuffled, ahead); q.Made() != p.Made() || q.Moves != p.Moves {
			t.Fatalf("shuffled: %d %d, was %d %d", q.Made(), q.Moves, p.Made(), p.Moves)
		}
		more := append(slices.Clone(tests), blanking.Test{Visit: 1000})
		if q := blanking.Least(more, ahead); q.Made() > p.Made() || q.Made() == p.Made() && q.Moves > p.Moves || !ahead && q.Moves != p.Moves {
			t.Fatalf("with an empty test: %d %d, was %d %d", q.Made(), q.Moves, p.Made(), p.Moves)
		}
	}
}

func BenchmarkLeast(b *testing.B) {
	for _, n := range []int{14, 60, 500, 5000} {
		for _, ahead := range []bool{false, true} {
			b.Run(fmt.Sprintf("%d/ahead=%v", n, ahead), func(b *testing.B) {
				tests := random(rand.New(rand.NewPCG(1, uint64(n))), n, 12, 1)
				for b.Loop() {
					blanking.Least(tests, ahead)
				}
			})
		}
	}
}
