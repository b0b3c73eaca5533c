package partition

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

func TestMalformedInputIsRefused(t *testing.T) {
	good := func() Problem {
		return Problem{
			Parent: []int{-1, 0, 1}, Weight: []int64{1, 2, 3}, Price: []int64{0, 4, Banned},
			Links: []Link{{0, 2, 5}}, Windows: []Window{{1, 9}},
		}
	}
	for _, c := range []struct {
		name, want string
		spoil      func(*Problem)
	}{
		{"no window", "no window", func(p *Problem) { p.Windows = nil }},
		{"window upside down", "window 1 runs from 5 down to 4", func(p *Problem) { p.Windows = append(p.Windows, Window{5, 4}) }},
		{"weight missing", "3 parents, 2 weights", func(p *Problem) { p.Weight = p.Weight[:2] }},
		{"price missing", "2 prices", func(p *Problem) { p.Price = p.Price[:2] }},
		{"negative weight", "node 1 has weight -2", func(p *Problem) { p.Weight[1] = -2 }},
		{"negative price", "node 1 has price -2", func(p *Problem) { p.Price[1] = -2 }},
		{"parent out of range", "node 2 has parent 3", func(p *Problem) { p.Parent[2] = 3 }},
		{"own parent", "node 2 has parent 2", func(p *Problem) { p.Parent[2] = 2 }},
		{"ring of parents", "node 0 is its own ancestor", func(p *Problem) { p.Parent[0] = 2 }},
		{"link out of range", "link 0 joins 0 and 3", func(p *Problem) { p.Links[0].B = 3 }},
		{"link to itself", "link 0 joins 0 and 0", func(p *Problem) { p.Links[0].B = 0 }},
		{"negative link price", "link 0 has price -7", func(p *Problem) { p.Links[0].Price = -7 }},
		{"unknown aim", "aim 2", func(p *Problem) { p.Aim = 2 }},
		{"negative test price", "test price -1", func(p *Problem) { p.TestPrice = -1 }},
		{"negative work limit", "work limit -1", func(p *Problem) { p.WorkLimit = -1 }},
		{"weights too large", "weights add up", func(p *Problem) { p.Weight[0] = math.MaxInt64 }},
		{"prices too large", "prices add up", func(p *Problem) { p.Price[1] = math.MaxInt64 / 4 }},
		{"test price too large", "prices add up", func(p *Problem) { p.Aim, p.TestPrice = Time, math.MaxInt64/4 }},
	} {
		p := good()
		c.spoil(&p)
		if _, err := Solve(p); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want %q", c.name, err, c.want)
		}
		if _, err := AreaBound(p); err == nil {
			t.Errorf("%s: AreaBound takes it", c.name)
		}
	}
	p := good()
	p.Price[0] = -99 // a root has no joint above
	if _, err := Solve(p); err != nil {
		t.Errorf("price of a root: %v", err)
	}
}

var byHand = []struct {
	name   string
	p      Problem
	part   []int
	score  Score
	states []PartState
}{
	{name: "nothing", p: Problem{Windows: []Window{{1, 2}}}, part: []int{}},
	{
		name:  "one piece, far too big, open upper limit",
		p:     Problem{Parent: []int{-1}, Weight: []int64{9}, Price: []int64{0}, Windows: []Window{{math.MinInt64, math.MaxInt64}}},
		part:  []int{0},
		score: Score{Tests: 1}, states: []PartState{{9, In}},
	},
	{
		name: "three in a row, the dear joint is spared",
		p: Problem{
			Parent: []int{-1, 0, 1}, Weight: []int64{5, 5, 5}, Price: []int64{0, 7, 3}, Windows: []Window{{5, 10}},
		},
		part: []int{0, 0, 1}, score: Score{Tests: 2, Minutes: 3}, states: []PartState{{10, In}, {5, In}},
	},
	{
		name: "a plenum over the limit stands alone and parts its neighbours",
		p: Problem{
			Parent: []int{-1, 0, 1}, Weight: []int64{4, 20, 6}, Price: []int64{0, 7, 3}, Windows: []Window{{5, 10}},
		},
		part: []int{0, 1, 2}, score: Score{Over: 1, Under: 1, Tests: 3, Minutes: 10},
		states: []PartState{{4, Under}, {20, Over}, {6, In}},
	},
	{
		name: "a part in the gap counts as under",
		p: Problem{
			Parent: []int{-1, 0}, Weight: []int64{3, 3}, Price: []int64{0, Banned}, Windows: []Window{{8, 10}, {1, 4}},
		},
		part: []int{0, 0}, score: Score{Under: 1, Tests: 1}, states: []PartState{{6, Gap}},
	},
	{
		name: "a ring of four is cut twice, at its cheapest pair that fits",
		p: Problem{
			Parent: []int{-1, 0, 1, 2}, Weight: []int64{5, 5, 5, 5}, Price: []int64{0, 9, 2, 8}, Windows: []Window{{5, 15}},
			Links: []Link{{3, 0, 1}},
		},
		part: []int{0, 0, 1, 1}, score: Score{Tests: 2, Minutes: 3}, states: []PartState{{10, In}, {10, In}},
	},
	{
		name: "a ring whose link can't be cut is held at that joint",
		p: Problem{
			Parent: []int{-1, 0, 1, 2}, Weight: []int64{5, 5, 5, 5}, Price: []int64{0, 9, 2, 8}, Windows: []Window{{5, 15}},
			Links: []Link{{3, 0, Banned}},
		},
		part: []int{0, 0, 1, 0}, score: Score{Tests: 2, Minutes: 10}, states: []PartState{{15, In}, {5, In}},
	},
}

func TestCasesByHand(t *testing.T) {
	for _, c := range byHand {
		t.Run(c.name, func(t *testing.T) {
			s := mustSolve(t, c.p)
			if !slices.Equal(s.Part, c.part) || s.Score != c.score || !slices.Equal(s.State, c.states) {
				t.Errorf("parts %v score %+v states %v, want %v %+v %v", s.Part, s.Score, s.State, c.part, c.score, c.states)
			}
		})
	}
}

// Bounds that are used when the answer isn't proved best must hold for every
// division, so each figure of them holds for the best one.
func TestBoundsHold(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	holds := func(b, s Score) bool {
		return b.Over <= s.Over && b.Under <= s.Under && b.Tests <= s.Tests && b.Minutes <= s.Minutes
	}
	tight := 0
	for range 4000 {
		p := draw(r, 1+r.IntN(9), 2)
		best := brute(p)
		byArea, err := AreaBound(p)
		if err != nil || !holds(byArea, best) {
			t.Fatalf("by weight alone %+v, brute force %+v, %v\n%+v", byArea, best, err, p)
		}
		wins := mergeWindows(p.Windows)
		g := newGraph(p, wins[len(wins)-1].High)
		s := newSolver(p, g, hangUp(g), wins)
		tree := s.treeOf()
		bound := Score{Minutes: g.forced}
		for _, b := range treeBounds(g, tree, s.crowdBounds(tree), wins) {
			bound.add(b)
		}
		if !holds(bound, best) || !holds(byArea, bound) {
			t.Fatalf("bound %+v, by weight alone %+v, brute force %+v\n%+v", bound, byArea, best, p)
		}
		if bound == best {
			tight++
		}
	}
	if tight < 1000 {
		t.Errorf("the bound is met in %d of 4000 cases only", tight)
	}
}

// The least price of cutting off branches until the others fit, by trying all
// choices, is never below its bound, and not far above it.
func TestLeastCutHolds(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 10))
	for _, scale := range []int64{1, 1 << 52} {
		bound, sum := 0.0, 0.0
		for range 500 {
			branches := make([]branch, 1+r.IntN(12))
			total := int64(0)
			for i := range branches {
				branches[i] = branch{r.Int64N(20) * scale, r.Int64N(9) * scale}
				total += branches[i].weight
			}
			room := r.Int64N(total + 1)
			least := int64(math.MaxInt64)
			for cut := range 1 << len(branches) {
				weight, price := int64(0), int64(0)
				for i, b := range branches {
					if cut>>i&1 == 1 {
						price += b.price
					} else {
						weight += b.weight
					}
				}
				if weight <= room {
					least = min(least, price)
				}
			}
			got := leastCut(slices.Clone(branches), room)
			if got > least {
				t.Fatalf("bound %d, least %d: %v in %d", got, least, branches, room)
			}
			bound, sum = bound+float64(got), sum+float64(least)
		}
		if bound < 0.75*sum {
			t.Errorf("the bounds add up to %.3g, the least prices to %.3g", bound, sum)
		}
	}
}

// With next to no work or ring solves allowed the answers stay legal, and
// their bounds stay below the optimum.
func TestTightLimitsLeaveLegalAnswers(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	unproved := 0
	for range 300 {
		p := middling(r)
		want := plain(p)
		p.WorkLimit = 1
		s := mustSolve(t, p)
		if better(merit(p, s.Score), want) || better(want, merit(p, s.Bound)) || s.Exhaustive && merit(p, s.Score) != want {
			t.Fatalf("score %+v bound %+v exhaustive %v, unpruned %v\n%+v", s.Score, s.Bound, s.Exhaustive, want, p)
		}
		if !s.Exhaustive {
			unproved++
		}
	}
	if unproved < 20 {
		t.Errorf("only %d of 300 met the work limit", unproved)
	}
	missed, unproved := 0, 0
	for range 3000 {
		p := draw(r, 2+r.IntN(6), 5)
		want := merit(p, brute(p))
		p.MaxRingSolves = 1 + r.IntN(10)
		s := mustSolve(t, p)
		if better(merit(p, s.Score), want) || better(want, merit(p, s.Bound)) || s.Exhaustive && merit(p, s.Score) != want {
			t.Fatalf("score %+v bound %+v exhaustive %v, brute force %v\n%+v", s.Score, s.Bound, s.Exhaustive, want, p)
		}
		if !s.Exhaustive {
			unproved++
		}
		if merit(p, s.Score) != want {
			missed++
		}
	}
	t.Logf("rings: %d unproved, %d of them missed the optimum", unproved, missed)
	if unproved < 40 || missed > unproved/2 {
		t.Errorf("rings: %d unproved, %d missed the optimum", unproved, missed)
	}
}

func TestHubOfHeavyBranchesStops(t *testing.T) {
	p := grown("hub", 3001, 1_000_000, Window{35, 117})
	for v := range p.Weight {
		p.Weight[v] /= 10
	}
	p.WorkLimit = 1_000_000
	s := mustSolve(t, p)
	if s.Exhaustive || s.Work > p.WorkLimit {
		t.Errorf("exhaustive %v after work %d", s.Exhaustive, s.Work)
	}
	if s.Bound.Under < s.Score.Under*98/100 || s.Bound.Tests < s.Score.Tests*98/100 {
		t.Errorf("score %+v, bound %+v is no use", s.Score, s.Bound)
	}
}

// A tree that meets the work limit doesn't spoil the proof of the others.
func TestWorkIsSharedByTree(t *testing.T) {
	hub := grown("hub", 1500, 1000, Window{35, 117})
	for v := range hub.Weight {
		hub.Weight[v] /= 10
	}
	p := grown("chain", 1500, 1000, Window{35, 117})
	alone := mustSolve(t, p)
	for v := range hub.Parent {
		u := hub.Parent[v]
		if u >= 0 {
			u += 1500
		}
		p.Parent = append(p.Parent, u)
		p.Weight = append(p.Weight, hub.Weight[v])
		p.Price = append(p.Price, hub.Price[v])
	}
	p.WorkLimit = 4 * alone.Work
	s := mustSolve(t, p)
	part := slices.Max(s.Part[:1500]) + 1
	if s.Exhaustive || part != alone.Score.Tests {
		t.Errorf("exhaustive %v; the chain has %d parts beside a hub, %d alone", s.Exhaustive, part, alone.Score.Tests)
	}
}
