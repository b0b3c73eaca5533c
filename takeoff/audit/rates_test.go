package audit

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sort"
	"strings"
	"testing"
)

// trial is a schedule whose stated areas have mistakes planted in them.
type trial struct {
	lines   []line
	keys    []string
	outlier []bool
}

// stateAreas types figures into a schedule, rounded to 1, 2 or 3 digits, and
// spoils a few of them.
func (tr *trial) stateAreas(r *rand.Rand, figures, right []float64, outliers int) {
	digits := 1 + r.IntN(3)
	mixed := r.IntN(3) == 0
	tr.outlier = make([]bool, len(figures))
	for range outliers {
		tr.outlier[r.IntN(len(figures))] = true
	}
	for i, l := range tr.lines {
		v := figures[i]
		if math.IsNaN(v) {
			v = right[i]
		}
		if tr.outlier[i] {
			v *= 0.3 + 1.4*r.Float64()
		}
		d := digits
		if mixed {
			d = 1 + r.IntN(3)
		}
		l["stated_area_m2"] = fmt.Sprintf("%.*f", d, v)
	}
}

// planted makes a trial in which every mistake changes some figure that is
// stated.
func planted(t *testing.T, seed uint64, keys []string, lined bool) (*trial, bool) {
	r := rand.New(rand.NewPCG(seed, uint64(len(keys))))
	g := &generator{Rand: r}
	tr := &trial{lines: g.schedule(12+r.IntN(24), lined), keys: keys}
	right := plant(t, tr.lines)
	tr.stateAreas(r, plant(t, tr.lines, keys...), right, r.IntN(1+len(tr.lines)/12))
	return tr, true
}

// telling says whether the planted mistakes can be told from every other
// hypothesis as simple or simpler: none gives the same figures within rounding
// on all the rows that weren't spoilt. It's told by trying all of them in full.
func (tr *trial) telling(t *testing.T) bool {
	tk := measured(t, tr.lines, nil)
	figures := figuresOf(tk, DefaultTolerance)
	f := newFinder(newMeasurer(tk), nil)
	want := slices.Clone(tr.keys)
	slices.Sort(want)
	fits := func(list []made) bool {
		for k := range figures {
			x := &figures[k]
			if tr.outlier[x.Item] {
				continue
			}
			v, ok := f.predict(list, []share{{x.Item, 1}})
			if !ok {
				v = x.Area
			}
			if !x.holds(v) {
				return false
			}
		}
		return true
	}
	if fits(nil) {
		return false // they change nothing that is stated
	}
	for i := range f.list {
		a := made{&f.list[i], Scope{}}
		if k := a.Key; !(len(want) == 1 && want[0] == k) && fits([]made{a}) {
			return false
		}
		if len(want) < 2 {
			continue
		}
		for k := range f.list[:i] {
			b := made{&f.list[k], Scope{}}
			if !a.goesWith(b.Mistake) || slices.Contains(want, a.Key) && slices.Contains(want, b.Key) {
				continue
			}
			if fits([]made{b, a}) {
				return false
			}
		}
	}
	return true
}

// tally counts what was named.
type tally struct {
	tried, told          int // planted; that can be told apart
	right, listed, other int // of those: named; named among several; not named
	byRow                int // named not for the list, but on each of the rows that have it
	certain, falsely     int // said to be certain; and wrong
	missed               map[string]int
}

func (c *tally) count(tr *trial, r *Result, told bool, seed uint64) {
	want := slices.Clone(tr.keys)
	slices.Sort(want)
	named := func(x *Cause) bool {
		var keys []string
		for _, p := range x.Parts {
			if p.Scope == (Scope{}) {
				keys = append(keys, p.Key)
			}
		}
		slices.Sort(keys)
		return slices.Equal(keys, want)
	}
	best := r.Rows.Best()
	ok := best != nil && named(best)
	if r.Rows.Sure == Certain {
		c.certain++
		strange := slices.ContainsFunc(best.Parts, func(p Part) bool { return !slices.Contains(tr.keys, p.Key) })
		if strange || !ok && told {
			c.falsely++
		}
	}
	if !told {
		return
	}
	c.told++
	switch {
	case ok && r.Rows.Sure != OneOfThese:
		c.right++
		return
	case slices.ContainsFunc(r.Rows.Causes, func(x Cause) bool { return named(&x) }):
		c.listed++
	case r.Rows.Sure != OneOfThese && tr.byRow(r):
		c.byRow++
	default:
		c.other++
	}
	said := map[bool]string{true: "WRONG ", false: ""}[r.Rows.Sure == Certain] + string(r.Rows.Sure)
	if best != nil {
		said += ": " + best.Text()
	}
	c.missed[fmt.Sprintf("%v (%d figures, seed %d): %s", tr.keys, len(r.Figures), seed, said)]++
}

// byRow reports whether what is named for the list, if anything is, was planted, and
// what else was planted is named on every row that has it.
func (tr *trial) byRow(r *Result) bool {
	var parts []Part
	if best := r.Rows.Best(); best != nil {
		parts = best.Parts
	}
	for _, p := range parts {
		if !slices.Contains(tr.keys, p.Key) || p.Scope != (Scope{}) {
			return false
		}
	}
	for i := range r.Figures {
		x := &r.Figures[i]
		if tr.outlier[x.Item] || x.Fits {
			continue
		}
		if !slices.ContainsFunc(x.Slips, func(s Slip) bool { return slices.Contains(tr.keys, s.Key) }) {
			return false
		}
	}
	return true
}

func (c *tally) log(t *testing.T, what string) {
	t.Helper()
	t.Logf("%s: %d schedules, %d can be told apart; named %d (%.1f %%), named on each of its rows instead %d, listed among several %d, not named %d; certain %d, of them wrong %d",
		what, c.tried, c.told, c.right, 100*float64(c.right)/float64(c.told), c.byRow, c.listed, c.other, c.certain, c.falsely)
	var list []string
	for m := range c.missed {
		list = append(list, m)
	}
	sort.Strings(list)
	if testing.Verbose() && len(list) > 0 {
		t.Log("not named:\n" + strings.Join(list, "\n"))
	}
}

// TestSingleMistakes plants every mistake alone.
func TestSingleMistakes(t *testing.T) {
	c := tally{missed: map[string]int{}}
	for seed := range uint64(440) {
		lined := seed%2 == 0
		keys := plantable(lined)
		tr, _ := planted(t, seed, []string{keys[int(seed/2)%len(keys)]}, lined)
		c.tried++
		c.count(tr, Check(measured(t, tr.lines, nil), Options{Tolerance: DefaultTolerance}), tr.telling(t), seed)
	}
	c.log(t, "single mistakes")
	if c.told < 300 || float64(c.right) < 0.98*float64(c.told) || c.falsely > 0 {
		t.Errorf("want 98 %% of at least 300 named, and none falsely certain")
	}
}

// TestPairs plants mistakes two at a time.
func TestPairs(t *testing.T) {
	c := tally{missed: map[string]int{}}
	r := rand.New(rand.NewPCG(5, 5))
	for seed := uint64(0); c.tried < 360; seed++ {
		lined := seed%2 == 0
		keys := plantable(lined)
		pair := []string{keys[r.IntN(len(keys))], keys[r.IntN(len(keys))]}
		if f := newFinder(newMeasurer(measured(t, []line{{"kind": "cap", "diameter_mm": "200", "shape": "circular", "lining_mm": map[bool]string{true: "25"}[lined], "size_is": map[bool]string{true: "metal"}[lined]}}, nil)), nil); !goTogether(f, pair) {
			continue
		}
		tr, _ := planted(t, seed+10000, pair, lined)
		c.tried++
		c.count(tr, Check(measured(t, tr.lines, nil), Options{Tolerance: DefaultTolerance}), tr.telling(t), seed+10000)
	}
	c.log(t, "pairs")
	if c.told < 300 || float64(c.right) < 0.90*float64(c.told) || c.falsely > 0 {
		t.Errorf("want 90 %% of at least 300 named, and none falsely certain")
	}
}

func goTogether(f *finder, pair []string) bool {
	list, ok := f.called(pair)
	return ok && len(list) == 2
}

// TestCleanSchedules are silent: figures that are only rounded raise nothing.
func TestCleanSchedules(t *testing.T) {
	for seed := range uint64(1000) {
		tr, _ := planted(t, seed+50000, nil, seed%2 == 0)
		right := plant(t, tr.lines)
		r := rand.New(rand.NewPCG(seed, 3))
		tr.stateAreas(r, right, right, 0)
		res := Check(measured(t, tr.lines, nil), Options{Tolerance: DefaultTolerance})
		if res.Differ() > 0 || res.Rows.Sure != NothingDiffers || len(res.Figures) != len(tr.lines) {
			t.Fatalf("seed %d: %d of %d figures differ, %s", seed, res.Differ(), len(res.Figures), res.Rows.Sure)
		}
	}
}

// TestNoCause: figures out of thin air have no cause, however many there are.
func TestNoCause(t *testing.T) {
	for seed := range uint64(12) {
		r := rand.New(rand.NewPCG(seed, 9))
		g := &generator{Rand: r}
		lines := g.schedule(10+r.IntN(60), false)
		for _, l := range lines {
			l["stated_area_m2"] = fmt.Sprintf("%.*f", 1+r.IntN(3), 0.1+8*r.Float64())
		}
		if f := Check(measured(t, lines, nil), Options{Tolerance: DefaultTolerance}).Rows; f.Sure != NoCause {
			t.Errorf("seed %d, %d figures: %s, %+v", seed, len(lines), f.Sure, f.Best().Text())
		}
	}
}
