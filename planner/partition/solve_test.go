package partition

import (
	"encoding/json"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"testing"
)

func mustSolve(t *testing.T, p Problem) Solution {
	t.Helper()
	s, err := Solve(p)
	if err != nil {
		t.Fatalf("%v\n%+v", err, p)
	}
	if err := verify(p, s); err != nil {
		t.Fatalf("%v\n%+v", err, p)
	}
	return s
}

func TestSolveAgreesWithBruteForce(t *testing.T) {
	for _, c := range []struct {
		name            string
		cases, n, links int
		seed            uint64
	}{
		{name: "forests", cases: 5000, n: 9, links: 0, seed: 1},
		{name: "up to two links", cases: 5000, n: 8, links: 2, seed: 2},
		{name: "many links", cases: 2000, n: 6, links: 5, seed: 3},
		{name: "larger", cases: 150, n: 12, links: 3, seed: 4},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(c.seed, 2))
			for range c.cases {
				p := draw(r, 1+r.IntN(c.n), c.links)
				s := mustSolve(t, p)
				if want := brute(p); merit(p, s.Score) != merit(p, want) || !s.Exhaustive {
					t.Fatalf("score %+v, exhaustive %v, brute force %+v\n%+v", s.Score, s.Exhaustive, want, p)
				}
			}
		})
	}
}

// Small nets where nearly everything is joined to everything: most rings share
// joints, and holding one ring often closes another.
func TestNetsOfRingsAgreeWithBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(77, 1))
	price := func() int64 { return []int64{0, 1, 2, 50, 60, 70}[r.IntN(6)] }
	for range 800 {
		p := Problem{Aim: Aim(r.IntN(2)), TestPrice: r.Int64N(3)}
		for v := range 4 + r.IntN(3) {
			p.Parent = append(p.Parent, r.IntN(max(v, 1))-1+min(v, 1))
			p.Weight = append(p.Weight, 1+r.Int64N(2))
			p.Price = append(p.Price, price())
			for u := range v {
				if u != p.Parent[v] && r.IntN(3) > 0 {
					p.Links = append(p.Links, Link{v, u, price()})
				}
			}
		}
		low := r.Int64N(6)
		p.Windows = []Window{{low, low + 1 + r.Int64N(8)}}
		s := mustSolve(t, p)
		if want := brute(p); merit(p, s.Score) != merit(p, want) || !s.Exhaustive {
			t.Fatalf("score %+v, exhaustive %v, brute force %+v\n%+v", s.Score, s.Exhaustive, want, p)
		}
	}
}

// unpruned works up from the leaves and keeps every weight: for trees without
// links or bans whose pieces all fit.
type unpruned struct {
	p    Problem
	high int64
	open []map[int64]sum
}

type sum [4]int64

func (a sum) plus(b sum) sum { return sum{a[0] + b[0], a[1] + b[1], a[2] + b[2], a[3] + b[3]} }

// cut is the cost of a cut and test that of a part, in the order of merit.
func (m *unpruned) cut(v int) sum {
	if m.p.Aim == Time {
		return sum{0, 0, m.p.Price[v], 0}
	}
	return sum{0, 0, 0, m.p.Price[v]}
}

func (m *unpruned) test(w int64) sum {
	c := sum{0, 1, 1, 0}
	if m.p.Aim == Time {
		c[2] = m.p.TestPrice
	}
	for _, win := range m.p.Windows {
		if win.Low <= w && w <= win.High {
			c[1] = 0
		}
	}
	return c
}

func (m *unpruned) least(v int) sum {
	var all [][4]int64
	for w, c := range m.open[v] {
		all = append(all, c.plus(m.test(w)))
	}
	return slices.MinFunc(all, func(a, b [4]int64) int { return slices.Compare(a[:], b[:]) })
}

func (m *unpruned) solve(v int) {
	m.open[v] = map[int64]sum{m.p.Weight[v]: {}}
	for k, u := range m.p.Parent {
		if u != v {
			continue
		}
		m.solve(k)
		next := map[int64]sum{}
		put := func(w int64, c sum) {
			if old, ok := next[w]; w <= m.high && (!ok || better(c, old)) {
				next[w] = c
			}
		}
		off := m.least(k).plus(m.cut(k))
		for w, c := range m.open[v] {
			put(w, c.plus(off))
			for x, d := range m.open[k] {
				put(w+x, c.plus(d))
			}
		}
		m.open[v] = next
	}
}

// plain returns the least merit by the unpruned method.
func plain(p Problem) [4]int64 {
	m := unpruned{p: p, open: make([]map[int64]sum, len(p.Parent))}
	for _, w := range p.Windows {
		m.high = max(m.high, w.High)
	}
	total := sum{}
	for v, u := range p.Parent {
		if u < 0 {
			m.solve(v)
			total = total.plus(m.least(v))
		}
	}
	return total
}

// middling is a tree too large for brute force whose pieces all fit.
func middling(r *rand.Rand) Problem {
	p := draw(r, 1, 0)
	n := 20 + r.IntN(60)
	shape := []string{"chain", "random", "attach", "hub", "spigots"}[r.IntN(5)]
	tree := grown(shape, n, 1)
	p.Parent, p.Weight, p.Price = tree.Parent, make([]int64, n), make([]int64, n)
	for v := range n {
		p.Weight[v] = r.Int64N(30)
		p.Price[v] = r.Int64N(40)
	}
	p.Windows = append(p.Windows, Window{30 + r.Int64N(30), 60 + r.Int64N(60)})
	return p
}

func TestSolveAgreesWithUnprunedMethod(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for range 400 {
		p := middling(r)
		s := mustSolve(t, p)
		if want := plain(p); merit(p, s.Score) != want || !s.Exhaustive {
			t.Fatalf("score %+v, unpruned %v\n%+v", s.Score, want, p)
		}
	}
}

// confirmed are trees whose optima were found by other programs.
type confirmed struct {
	Name        string   `json:"name"`
	Parent      []int    `json:"parent"`
	Area        []int64  `json:"area"`
	CutCost     []*int64 `json:"cut_cost"`
	SectionCost int64    `json:"section_cost"`
	Low         int64    `json:"amin"`
	High        int64    `json:"amax"`
	Optimum     *int64   `json:"optimum"`
	SoftTests   [4]int64 `json:"soft_tests"`
	SoftTime    [3]int64 `json:"soft_time"`
}

func (c confirmed) problem(aim Aim) Problem {
	p := Problem{Parent: c.Parent, Weight: c.Area, Windows: []Window{{c.Low, c.High}}, Aim: aim, TestPrice: c.SectionCost}
	for _, x := range c.CutCost {
		price := Banned
		if x != nil {
			price = *x
		}
		p.Price = append(p.Price, price)
	}
	return p
}

func readConfirmed(t testing.TB, file string) []confirmed {
	t.Helper()
	text, err := os.ReadFile("../../testdata/partitions/" + file)
	if err != nil {
		t.Fatal(err)
	}
	var all struct {
		Cases []confirmed `json:"cases"`
	}
	if err := json.Unmarshal(text, &all); err != nil {
		t.Fatal(err)
	}
	return all.Cases
}

func TestSolveMeetsConfirmedOptima(t *testing.T) {
	for file, count := range map[string]int{"small.json": 216, "medium.json": 72} {
		cases := readConfirmed(t, file)
		if len(cases) != count {
			t.Errorf("%s has %d trees, want %d", file, len(cases), count)
		}
		for _, c := range cases {
			p := c.problem(Tests)
			s := mustSolve(t, p)
			if merit(p, s.Score) != c.SoftTests || !s.Exhaustive {
				t.Errorf("%s: aim tests %+v, want %v", c.Name, s.Score, c.SoftTests)
			}
			p = c.problem(Time)
			s = mustSolve(t, p)
			if merit(p, s.Score) != [4]int64{c.SoftTime[0], c.SoftTime[1], c.SoftTime[2]} || !s.Exhaustive {
				t.Errorf("%s: aim time %+v, want %v", c.Name, s.Score, c.SoftTime)
			}
			legal := s.Score.Over+s.Score.Under == 0
			if legal != (c.Optimum != nil) || legal && merit(p, s.Score)[2] != *c.Optimum {
				t.Errorf("%s: aim time %+v, hard limits %v", c.Name, s.Score, c.Optimum)
			}
		}
	}
}

func TestSameInputSameAnswer(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	for range 300 {
		p := draw(r, 12, 4)
		if a, b := mustSolve(t, p), mustSolve(t, p); !reflect.DeepEqual(a, b) {
			t.Fatalf("%+v and %+v\n%+v", a, b, p)
		}
	}
}
