// Package partition divides a weighted tree (or a tree with a few rings) into
// connected parts whose weights fall in given windows, at the least price, and
// says whether the answer is proved best. All figures are whole numbers, so
// the proof is exact.
//
// The order of merit is: fewest parts over the greatest upper limit, then
// fewest parts in no window, then either fewest parts and least price of cuts
// (aim Tests) or least price of parts and cuts together (aim Time).
package partition

import (
	"cmp"
	"fmt"
	"slices"
)

// Banned as a price says that the joint can't be cut.
const Banned int64 = -1

// Window is a closed range of weights, Low <= High.
type Window struct{ Low, High int64 }

// Link is an extra joint between nodes A and B that closes a ring. Its price
// is in hundredths of a minute, >= 0, or Banned.
type Link struct {
	A, B  int
	Price int64
}

// Aim says what is least once over and under are least.
type Aim uint8

const (
	Tests Aim = iota // fewest parts, then least price of cuts
	Time             // least price of parts and cuts together
)

// Problem is a forest of weighted nodes, extra joints and windows.
type Problem struct {
	Parent  []int    // parent of each node, -1 for a root; any order, several roots allowed
	Weight  []int64  // >= 0; the sum must be under 2^60
	Price   []int64  // of the joint to Parent, hundredths of a minute, >= 0 or Banned; ignored for roots
	Links   []Link   // joints that close rings
	Windows []Window // at least one; sorted or not, overlapping or with gaps
	// From and To are the first and the last moment at which each node is there, any
	// whole numbers (FromFirst, ToLast: without bound): the nodes of a part are all
	// there at one moment. A cluster whose nodes never are stands alone. nil: always. Trees
	// only.
	From, To  []int64
	Aim       Aim
	TestPrice int64 // of one part, hundredths of a minute, >= 0, for aim Time

	// MaxRingSolves limits the ways of opening rings that are solved in one
	// call; 0 is 20,000. Rings that share no joint are solved apart, so their
	// ways add up; only rings that share joints multiply.
	MaxRingSolves int
	// WorkLimit limits the combinations of weights examined; 0 is
	// DefaultWorkLimit. Past it the lists of weights are thinned: the answer
	// is legal, but no longer proved best.
	WorkLimit int64
}

// Score is what a division costs.
type Score struct {
	Over    int   // parts above the greatest upper limit
	Under   int   // other parts in no window, below the lowest or in a gap
	Tests   int   // parts, Over and Under included
	Minutes int64 // sum of the prices of cut joints, hundredths of a minute
}

// State says where the weight of a part lies.
type State uint8

const (
	In    State = iota // in a window
	Under              // below the lowest window
	Gap                // between two windows
	Over               // above the highest window
)

// PartState is the weight of a part and where it lies.
type PartState struct {
	Weight int64
	State  State
}

// Solution is a division into connected parts.
type Solution struct {
	Part     []int       // part of each node, numbered in order of the smallest node in it
	Cuts     []int       // nodes whose joint to the parent is cut, ascending
	CutLinks []int       // indices of the links that are cut, ascending
	Score    Score       // recounted from Part
	State    []PartState // of each part
	// Exhaustive: the score is proved least over every division. When false,
	// some rings weren't opened in every way or the work limit was met.
	Exhaustive bool
	// Bound is a proved lower bound of Score in the order of merit. It equals
	// Score when Exhaustive.
	Bound Score
	// Work is the number of combinations examined.
	Work int64
	// RingSolves is the number of ways of opening rings that were solved.
	RingSolves int
}

// Solve divides the nodes into connected parts. A joint is cut, and paid for,
// where its ends are in different parts. A node, or a cluster of nodes whose
// joints are banned, that is heavier than the greatest High stands alone and
// counts as over; no other part is heavier than the greatest High. It fails
// only on malformed input.
func Solve(p Problem) (Solution, error) {
	if err := check(p); err != nil {
		return Solution{}, err
	}
	wins := mergeWindows(p.Windows)
	g := newGraph(p, wins[len(wins)-1].High)
	s := newSolver(p, g, hangUp(g), wins)
	s.run()
	return s.solution(p), nil
}

// far is beyond every sum of weights; windows are cut off there, so that sums
// and differences stay within 64 bits.
const far = int64(1) << 60

func check(p Problem) error {
	n := len(p.Parent)
	if len(p.Weight) != n || len(p.Price) != n {
		return fmt.Errorf("%d parents, %d weights and %d prices: give one of each per node", n, len(p.Weight), len(p.Price))
	}
	if p.Aim > Time {
		return fmt.Errorf("aim %d is not known: use Tests or Time", p.Aim)
	}
	if p.TestPrice < 0 || p.MaxRingSolves < 0 || p.WorkLimit < 0 {
		return fmt.Errorf("test price %d, ring solves %d and work limit %d must be 0 or more", p.TestPrice, p.MaxRingSolves, p.WorkLimit)
	}
	if len(p.Windows) == 0 {
		return fmt.Errorf("no window of weights: give at least one")
	}
	for i, w := range p.Windows {
		if w.Low > w.High {
			return fmt.Errorf("window %d runs from %d down to %d: put the lower end first", i, w.Low, w.High)
		}
	}
	if err := checkNodes(p); err != nil {
		return err
	}
	for i, l := range p.Links {
		if l.A < 0 || l.A >= n || l.B < 0 || l.B >= n || l.A == l.B {
			return fmt.Errorf("link %d joins %d and %d: name two different nodes from 0 to %d", i, l.A, l.B, n-1)
		}
		if l.Price < Banned {
			return fmt.Errorf("link %d has price %d: give 0 or more, or Banned", i, l.Price)
		}
	}
	if err := checkTimes(p); err != nil {
		return err
	}
	return checkSums(p)
}

func checkNodes(p Problem) error {
	n := len(p.Parent)
	for v, u := range p.Parent {
		if u < -1 || u >= n || u == v {
			return fmt.Errorf("node %d has parent %d: name another node from 0 to %d, or -1", v, u, n-1)
		}
		if p.Weight[v] < 0 {
			return fmt.Errorf("node %d has weight %d: give 0 or more", v, p.Weight[v])
		}
		if u >= 0 && p.Price[v] < Banned {
			return fmt.Errorf("node %d has price %d: give 0 or more, or Banned", v, p.Price[v])
		}
	}
	mark := make([]int, n) // 0 unseen, else 1 + the node whose walk reached it first
	for v := range n {
		u := v
		for u >= 0 && mark[u] == 0 {
			mark[u] = v + 1
			u = p.Parent[u]
		}
		if u >= 0 && mark[u] == v+1 {
			return fmt.Errorf("node %d is its own ancestor: make one joint of that ring a link", u)
		}
	}
	return nil
}

// checkSums keeps every sum the solver makes within 64 bits.
func checkSums(p Problem) error {
	n := float64(len(p.Parent))
	weight, price := 0.0, 0.0
	for v := range p.Parent {
		weight += float64(p.Weight[v])
		if p.Parent[v] >= 0 {
			price += float64(max(p.Price[v], 0))
		}
	}
	for _, l := range p.Links {
		price += float64(max(l.Price, 0))
	}
	if weight >= float64(far) {
		return fmt.Errorf("weights add up to %.3g: use a coarser unit, the sum must be under 2^60", weight)
	}
	parts := n * (price + 1)
	if p.Aim == Time {
		parts = n * float64(p.TestPrice)
	}
	if parts+price >= float64(far) {
		return fmt.Errorf("prices add up to %.3g with %.0f nodes: use a coarser unit", price, n)
	}
	return nil
}

// mergeWindows sorts the windows and joins those that overlap or touch.
func mergeWindows(windows []Window) []Window {
	ws := slices.Clone(windows)
	for i := range ws {
		ws[i].Low = min(max(ws[i].Low, -far), far)
		ws[i].High = min(max(ws[i].High, -far), far)
	}
	slices.SortFunc(ws, func(a, b Window) int {
		return cmp.Or(cmp.Compare(a.Low, b.Low), cmp.Compare(a.High, b.High))
	})
	out := ws[:1]
	for _, w := range ws[1:] {
		last := &out[len(out)-1]
		if w.Low <= last.High+1 {
			last.High = max(last.High, w.High)
			continue
		}
		out = append(out, w)
	}
	return out
}
