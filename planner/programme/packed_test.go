package programme

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

// TestPacked looks that days that are packed hold every test once, are not too
// long and are fewer than in the order given.
func TestPacked(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	fewer := 0
	for range 2000 {
		set := Defaults()
		set.TestMinutes, set.DayMinutes = 90, 420
		var tests []Test
		minutes := map[string]float64{}
		for i := range 1 + r.IntN(12) {
			x := Test{ID: fmt.Sprint("S", i), Cuts: float64(r.IntN(100)), Ends: float64(r.IntN(150)), Level: fmt.Sprint(r.IntN(3))}
			tests = append(tests, x)
			minutes[x.ID] = x.Cuts + x.Ends + set.TestMinutes
		}
		p := Make(tests, make([]Visit, 1), set)
		days := p.Packed()
		if days == nil {
			continue
		}
		fewer++
		seen := map[string]bool{}
		for _, d := range days {
			sum := -set.Move // at least; TestPackedDaysHoldWhenLaidOut counts the ways as they are
			for _, id := range d {
				if seen[id] {
					t.Fatalf("%s is packed twice: %v", id, days)
				}
				seen[id] = true
				sum += minutes[id] + set.Move
			}
			if sum > set.DayMinutes+1e-9 {
				t.Fatalf("a day of %g min: %v", sum, days)
			}
		}
		if len(seen) != len(tests) || len(days) >= len(p.Days) {
			t.Fatalf("%d of %d tests in %d days, %d in the order given", len(seen), len(tests), len(days), len(p.Days))
		}
	}
	if fewer < 100 {
		t.Errorf("only %d of 2000 programmes take fewer days when packed", fewer)
	}
	t.Logf("%d of 2000 programmes take fewer days when packed", fewer)
}

// TestPackedByHand: three tests of 200 and three of 110 min in place; in turn they
// take a day for each of the long ones and more, packed one of each fills a day.
func TestPackedByHand(t *testing.T) {
	set := Defaults()
	set.TestMinutes, set.DayMinutes, set.Move, set.MoveLevel = 100, 330, 10, 10
	var tests []Test
	for i, ends := range []float64{100, 100, 100, 10, 10, 10} {
		tests = append(tests, Test{ID: fmt.Sprint("S", i+1), Ends: ends})
	}
	p := Make(tests, make([]Visit, 1), set)
	if len(p.Days) != 4 || fmt.Sprint(p.Packed()) != "[[S1 S4] [S2 S5] [S3 S6]]" {
		t.Errorf("%d days, packed %v; want 4 and [[S1 S4] [S2 S5] [S3 S6]]", len(p.Days), p.Packed())
	}
}

// TestFirstDay holds the first day with room against a look at every day.
func TestFirstDay(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 7))
	for range 300 {
		var f filled
		var days []float64
		for range 80 {
			need := float64(1 + r.IntN(60))
			want := 0
			for want < len(days) && days[want]+need > 100 {
				want++
			}
			at := f.first(func(minutes float64) bool { return minutes+need <= 100 })
			if at != want {
				t.Fatalf("%g min on day %d of %v, want %d", need, at, days, want)
			}
			if at == len(days) {
				days = append(days, 0)
				f.open(0)
			}
			days[at] += need
			f.fill(at, need)
		}
	}
}

// BenchmarkPacked packs tests of which each fills a day: four times as many should
// take little more than four times as long.
func BenchmarkPacked(b *testing.B) {
	for _, n := range []int{25_000, 100_000} {
		set := Defaults()
		set.TestMinutes, set.DayMinutes = 300, 420
		p := Make(make([]Test, n), make([]Visit, 1), set)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				p.Packed()
			}
		})
	}
}

// What is said to fit into fewer days does: laid out in that order, by the same rules,
// the tests take no more days.
func TestPackedDaysHoldWhenLaidOut(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 9))
	fewer := 0
	for range 3000 {
		set := Defaults()
		set.DayMinutes = float64(300 + r.IntN(200))
		var tests []Test
		for i := range 2 + r.IntN(12) {
			tests = append(tests, Test{ID: fmt.Sprint("S", i), Cuts: float64(r.IntN(100)), Ends: float64(r.IntN(200)), Level: fmt.Sprint(r.IntN(4))})
		}
		p := Make(tests, make([]Visit, 1), set)
		days := p.Packed()
		if days == nil {
			continue
		}
		fewer++
		var again []Test
		for _, id := range slices.Compact(slices.Concat(days...)) { // one that takes more than a day is on each
			again = append(again, tests[slices.IndexFunc(tests, func(x Test) bool { return x.ID == id })])
		}
		if n := len(Make(again, make([]Visit, 1), set).Days); n > len(days) {
			t.Fatalf("%v is said to take %d days and takes %d, of %g min; in turn %d: %+v", days, len(days), n, set.DayMinutes, len(p.Days), tests)
		}
	}
	if fewer < 100 {
		t.Errorf("only %d programmes take fewer days when packed", fewer)
	}
}
