package divide

import (
	"blankoff/planner/duty"
	"blankoff/planner/network"
	"blankoff/planner/partition"
)

// evenWork bounds the nodes that are looked at while sections are evened out.
const evenWork = 20_000_000

// evener shifts cuts between neighbouring sections of a patch to joints of the
// same price, which changes nothing of what was proved, so that first fewer
// sections are smaller than the scheme asks for, then more cuts are at natural
// places, and then sizes are alike.
type evener struct {
	p       *Patch
	net     *network.Network
	q       partition.Problem
	sol     *partition.Solution
	least   int64   // area that the scheme asks for of one test, in the search's unit
	nodes   [][]int // by part, ascending
	below   []int64 // scratch: weight hanging on a node inside the merged part
	work    int
	changed bool
}

// even evens out the sections of a patch. Patches with rings, with an answer
// that isn't proved, or held to both bases, or whose pieces aren't all up
// together, are left as they are.
func (p *Patch) even(sol *partition.Solution, set duty.Settings, net *network.Network, leastM2 float64) {
	if len(p.links) > 0 || set.HoldBoth || p.timed(net) || len(sol.State) < 2 {
		return
	}
	e := &evener{p: p, net: net, q: p.problem(net, drawn{in: 1, up: 1}), sol: sol,
		least: int64(leastM2 * mm2PerM2 * unit), nodes: make([][]int, len(sol.State)), below: make([]int64, len(p.Nodes))}
	for x, part := range sol.Part {
		e.nodes[part] = append(e.nodes[part], x)
	}
	for e.changed = true; e.changed && e.work < evenWork; {
		e.changed = false
		for x := range p.Nodes {
			if up := p.parent[x]; up >= 0 && sol.Part[up] != sol.Part[x] {
				e.shift(x)
			}
		}
	}
}

// in reports whether a weight lies in a window.
func (e *evener) in(w int64) bool {
	for _, win := range e.q.Windows {
		if w >= win.Low && w <= win.High {
			return true
		}
	}
	return false
}

// shift moves the cut above node x to the joint of the same price that parts
// the two sections best.
func (e *evener) shift(x int) {
	a, b := e.sol.Part[e.p.parent[x]], e.sol.Part[x]
	if e.sol.State[a].State != partition.In || e.sol.State[b].State != partition.In {
		return
	}
	merged := merge(e.nodes[a], e.nodes[b])
	e.work += len(merged)
	total := e.sol.State[a].Weight + e.sol.State[b].Weight
	for _, v := range merged {
		e.below[v] = e.q.Weight[v]
	}
	inside := func(v int) bool { return e.sol.Part[v] == a || e.sol.Part[v] == b }
	best, bestAt := e.value(e.sol.State[a].Weight, e.sol.State[b].Weight, x), x
	for i := len(merged) - 1; i > 0; i-- { // children come after their parents
		v := merged[i]
		up := e.p.parent[v]
		if up < 0 || !inside(up) {
			continue
		}
		e.below[up] += e.below[v]
		w := e.below[v]
		if e.q.Price[v] != e.q.Price[x] || !e.in(w) || !e.in(total-w) {
			continue
		}
		if val := e.value(w, total-w, v); val.less(best) {
			best, bestAt = val, v
		}
	}
	if bestAt != x {
		e.part(merged, bestAt, a, b)
		e.changed = true
	}
}

// merge joins two ascending lists.
func merge(a, b []int) []int {
	out := make([]int, 0, len(a)+len(b))
	for len(a) > 0 && len(b) > 0 {
		if a[0] < b[0] {
			out, a = append(out, a[0]), a[1:]
		} else {
			out, b = append(out, b[0]), b[1:]
		}
	}
	return append(append(out, a...), b...)
}

// evenness is what a pair of sections is judged by, least first.
type evenness struct {
	small int   // sections smaller than the scheme asks for
	inRun int   // 1 where the cut isn't at a natural place
	apart int64 // difference of the two
}

func (a evenness) less(b evenness) bool {
	if a.small != b.small {
		return a.small < b.small
	}
	if a.inRun != b.inRun {
		return a.inRun < b.inRun
	}
	return a.apart < b.apart
}

// value judges two sections of weights u and v that are parted above node x.
func (e *evener) value(u, v int64, x int) (o evenness) {
	for _, w := range [2]int64{u, v} {
		if w < e.least {
			o.small++
		}
	}
	if k := e.p.up[x]; k < 0 || !e.net.Joints[k].Natural {
		o.inRun = 1
	}
	o.apart = max(u-v, v-u)
	return o
}

// part parts the merged nodes at the joint above node x: what hangs below it
// becomes part b, the rest part a.
func (e *evener) part(merged []int, x, a, b int) {
	var above, under []int
	var weight int64
	hangs := map[int]bool{x: true}
	for _, v := range merged {
		if v != x && hangs[e.p.parent[v]] {
			hangs[v] = true
		}
		if hangs[v] {
			under, weight = append(under, v), weight+e.q.Weight[v]
		} else {
			above = append(above, v)
		}
	}
	total := e.sol.State[a].Weight + e.sol.State[b].Weight
	for _, v := range under {
		e.sol.Part[v] = b
	}
	for _, v := range above {
		e.sol.Part[v] = a
	}
	e.nodes[a], e.nodes[b] = above, under
	e.sol.State[a].Weight, e.sol.State[b].Weight = total-weight, weight
}
