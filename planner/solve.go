package planner

import (
	"fmt"
	"math"

	"blankoff/planner/network"
	"blankoff/planner/partition"
	"blankoff/planner/rig"
)

const (
	mm2PerM2       = 1e6
	hundredths     = 100 // of a minute
	unit           = 2   // weights are in half mm2 and even, so that odd ones are free for bounds
	areaSlack      = 1e-9
	maxShrinkTries = 6
)

// patch is a stretch of the network inside which any blankable joint may be
// cut: one duty, no must, nothing outside.
type patch struct {
	nodes   []int
	links   []int // joints that close rings, of the network
	up      []int // joint by which each node hangs in the patch, -1
	parent  []int // position in nodes, -1
	duty    duty
	windows []rig.AreaWindow // what can be judged and is wanted
	all     []rig.AreaWindow // before --min-area and --max-area
	byExact bool             // weighed exactly and not on the basis
	most    float64          // no section may be larger unless it can't be cut, m2
	loose   bool

	solution  partition.Solution
	aim       partition.Aim
	testPrice int64
	atLeast   int // tests that the area alone asks for
}

// patches finds the stretches, in the order of their first node.
func patches(z *zoning) []patch {
	adj := adjacency(z)
	seen := make([]bool, len(z.net.Nodes))
	var out []patch
	for k := range z.net.Nodes {
		if !seen[k] && z.net.Nodes[k].State != network.Outside {
			out = append(out, grow(z, k, seen, adj))
		}
	}
	return out
}

// adjacency lists, for every node, the joints at which a section needn't end.
func adjacency(z *zoning) [][]int32 {
	count := make([]int32, len(z.net.Nodes)+1)
	each := func(f func(node, joint int)) {
		for k := range z.net.Joints {
			if z.must[k] == "" {
				f(z.net.Joints[k].A, k)
				f(z.net.Joints[k].B, k)
			}
		}
	}
	each(func(node, _ int) { count[node+1]++ })
	for i := 1; i < len(count); i++ {
		count[i] += count[i-1]
	}
	flat := make([]int32, count[len(count)-1])
	next := append([]int32(nil), count...)
	each(func(node, joint int) {
		flat[next[node]] = int32(joint)
		next[node]++
	})
	out := make([][]int32, len(z.net.Nodes))
	for i := range out {
		out[i] = flat[count[i]:count[i+1]]
	}
	return out
}

// grow walks a patch from its first node, breadth first.
func grow(z *zoning, first int, seen []bool, adj [][]int32) patch {
	p := patch{nodes: []int{first}, up: []int{-1}, parent: []int{-1}, duty: z.duty[first], loose: z.net.Loose(first)}
	at := map[int]int{first: 0}
	seen[first] = true
	used := map[int32]bool{}
	for x := 0; x < len(p.nodes); x++ {
		v := p.nodes[x]
		for _, k := range adj[v] {
			if used[k] {
				continue
			}
			used[k] = true
			j := &z.net.Joints[k]
			w := j.A + j.B - v
			if _, in := at[w]; in {
				p.links = append(p.links, int(k))
				continue
			}
			at[w] = len(p.nodes)
			seen[w] = true
			p.nodes = append(p.nodes, w)
			p.up = append(p.up, int(k))
			p.parent = append(p.parent, x)
		}
	}
	return p
}

// setWindows finds the areas that the rig can judge for the patch.
func (p *patch) setWindows(set Settings, z *zoning) {
	s := z.d.byName[p.duty.scheme]
	limit := s.Limit(p.duty.class, p.duty.pa)
	p.all = set.Rigs.AreaWindows(limit, p.duty.pa, set.Headroom)
	p.aim, p.testPrice = set.Aim, int64(math.Round(set.TestMinutes*hundredths))
	p.windows, p.most = clip(p.all, set.MinArea, set.MaxArea)
}

// clip narrows windows to areas of at least low and at most high (0: no bound),
// and gives the greatest area that a section may have: it may lie in a hole
// between windows, where a section is under range and not over it.
func clip(all []rig.AreaWindow, low, high float64) (out []rig.AreaWindow, most float64) {
	for _, w := range all {
		most = math.Max(most, w.High)
	}
	if high > 0 {
		most = math.Min(most, high)
	}
	for _, w := range all {
		w.Low, w.High = math.Max(w.Low, low), math.Min(w.High, most)
		if w.Low <= w.High {
			out = append(out, w)
		}
	}
	return out, most
}

// solve divides a patch. Areas are rounded to whole mm2 for the search; should
// a true area then lie outside the window that its rounded one lies in, the
// windows are drawn in by the rounding and the search is made again. Where two
// bases are held and their areas part by more than that, the windows are drawn
// in by the ratio, and the answer is no longer proved best.
func (p *patch) solve(set Settings, net *network.Network) (partition.Solution, error) {
	p.chooseWeight(set, net)
	draw, timed := drawn{in: 1, up: 1}, p.timed(net)
	for try := 0; ; try++ {
		q := p.problem(net, draw)
		sol, err := p.search(q, timed, net)
		if err == nil && try == 0 {
			var bound partition.Score
			bound, err = partition.AreaBound(q)
			p.atLeast = bound.Tests
		}
		if err != nil {
			return sol, fmt.Errorf("dividing system %q: %w", p.duty.system, err)
		}
		if set.HoldBoth && try > 0 {
			sol.Exhaustive = false
		}
		ok, in, up := p.holds(sol, set, net)
		if ok || try == maxShrinkTries {
			return sol, nil
		}
		draw.by += int64(len(p.nodes))
		draw.in, draw.up = draw.in*in, draw.up*up
	}
}

// search finds the best division, of pieces that are up together where that
// isn't always so.
func (p *patch) search(q partition.Problem, timed bool, net *network.Network) (partition.Solution, error) {
	if timed {
		return p.solveTimed(q, net)
	}
	return partition.Solve(q)
}

// drawn says by how much the windows are drawn in: by mm2, and by factors at
// the upper and the lower ends.
type drawn struct {
	by     int64
	in, up float64
}

// problem states the patch in whole numbers.
func (p *patch) problem(net *network.Network, d drawn) partition.Problem {
	q := partition.Problem{
		Parent: p.parent, Weight: make([]int64, len(p.nodes)), Price: make([]int64, len(p.nodes)),
		Aim: p.aim, TestPrice: p.testPrice,
	}
	at := map[int]int{}
	for x, k := range p.nodes {
		if len(p.links) > 0 {
			at[k] = x
		}
		q.Weight[x] = unit * int64(math.Round(p.weighs(&net.Nodes[k])*mm2PerM2))
		if x > 0 && p.up[x] >= 0 {
			q.Price[x] = price(&net.Joints[p.up[x]])
		}
	}
	for _, k := range p.links {
		j := &net.Joints[k]
		q.Links = append(q.Links, partition.Link{A: at[j.A], B: at[j.B], Price: price(j)})
	}
	for _, w := range p.windows {
		low, high := int64(math.Ceil(w.Low*d.up*mm2PerM2))+d.by, int64(math.Floor(w.High*d.in*mm2PerM2))-d.by
		if low <= high {
			q.Windows = append(q.Windows, partition.Window{Low: unit * low, High: unit * high})
		}
	}
	// The bound is a window that no weight can hit: weights are even.
	most := unit*(int64(math.Floor(p.most*d.in*mm2PerM2))-d.by) + 1
	q.Windows = append(q.Windows, partition.Window{Low: max(most, 1), High: max(most, 1)})
	return q
}

func price(j *network.Joint) int64 {
	switch {
	case j.Assumed:
		return 0
	case j.Barred != "":
		return partition.Banned
	}
	return int64(math.Round(j.Minutes * hundredths))
}
