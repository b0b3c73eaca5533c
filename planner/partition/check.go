package partition

import (
	"cmp"
	"fmt"
	"slices"
)

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
