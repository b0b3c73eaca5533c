package blanking

import (
	"math/rand/v2"
	"testing"
)

// plant is sections that each hang on one before, with blanks on their other
// ends.
func plant(r *rand.Rand, n, sizes, visits, rings, place int) []Test {
	tests := make([]Test, n)
	for k := range tests {
		tests[k].Visit = r.IntN(visits)
		for range r.IntN(5) {
			place++
			tests[k].Blanks = append(tests[k].Blanks, Blank{r.IntN(sizes), place})
		}
		joints := min(k, 1)
		if k > 1 && rings > 0 && r.IntN(n/rings+1) == 0 {
			joints++
		}
		for range joints {
			place++
			a, b := r.IntN(k), Blank{r.IntN(sizes), place}
			tests[a].Blanks, tests[k].Blanks = append(tests[a].Blanks, b), append(tests[k].Blanks, b)
		}
	}
	return tests
}

// TestNearAgainstExact holds what is done beyond the exact search against it on
// plans that are small enough for both: never better, the bounds never worse, and
// in most cases as good.
func TestNearAgainstExact(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 37))
	tries, same, bound := [2]int{}, [2]int{}, [2]int{}
	for try := range 600 {
		ahead, which := try%2 == 1, try%2
		tests := plant(r, 4+r.IntN(6), 1+r.IntN(3), 1+try/2%3, try/6%2, 0)
		m := newModel(tests, ahead)
		least := m.leastMakes()
		order, f, done := m.exact(least)
		if !done {
			t.Fatal("the exact search met its limit")
		}
		paths, most := m.paths()
		near := m.near(least, paths)
		makes, turned := m.weigh(near)
		made := sum(makes)
		if made < sum(least)+f.over || made == sum(least)+f.over && turned > f.turned || most < f.turned {
			t.Fatalf("%v: near %v has %d made and %d turned, exact %v %d and %d, at most %d", tests, near, made, turned, order, sum(least)+f.over, f.turned, most)
		}
		tries[which]++
		if made == sum(least)+f.over && turned == f.turned {
			same[which]++
		}
		if f.over == 0 && most == f.turned {
			bound[which]++
		}
	}
	t.Logf("of %v as good %v, bound met %v", tries, same, bound)
	if 100*same[0] < 95*tries[0] || 100*same[1] < 90*tries[1] || 100*bound[0] < 75*tries[0] {
		t.Errorf("of %v only %v are as good as the exact, and the bound is met by %v", tries, same, bound)
	}
}

// TestTreesBeyondExact: trees that share no joint turn what each of them turns
// alone, and that is known to be the most however many they are.
func TestTreesBeyondExact(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 43))
	for range 60 {
		var all []Test
		want := 0
		for len(all) <= exactTo {
			one := plant(r, 3+r.IntN(7), 3, 1, 0, 1000*len(all))
			want += Least(one, false).Turned
			all = append(all, one...)
		}
		r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
		if p := Least(all, false); p.Turned != want || !p.Proved {
			t.Fatalf("%d tests turn %d, proved %v; their trees turn %d", len(all), p.Turned, p.Proved, want)
		}
	}
}

// TestMeter: the count that is kept while an order is changed is that of the
// order in the end, and no change makes it worse.
func TestMeter(t *testing.T) {
	r := rand.New(rand.NewPCG(47, 53))
	for try := range 120 {
		m := newModel(plant(r, 3+r.IntN(40), 1+r.IntN(4), 1+try%3, 1, 0), true)
		order := make([]int, len(m.counts))
		for k := range order {
			order[k] = k
		}
		x := newMeter(m, order, m.leastMakes())
		was := x.score
		x.better(20000)
		makes, turned := m.weigh(x.order)
		if x.score.made != sum(makes) || x.score.turned != turned || was.less(x.score, false) {
			t.Fatalf("%+v after %+v; the order has %d and %d", x.score, was, sum(makes), turned)
		}
	}
}
