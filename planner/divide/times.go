package divide

import (
	"slices"

	"blankoff/planner/duty"
	"blankoff/planner/network"
	"blankoff/planner/partition"
	"blankoff/takeoff"
)

// timed reports whether the pieces of a patch differ in when they are up.
func (p *Patch) timed(net *network.Network) bool {
	s := duty.Always()
	for _, k := range p.Nodes {
		s = s.With(net.Item(k))
	}
	return s.Empty()
}

// timeWork bounds the nodes that are looked at while ways of parting pieces are tried
// one by one.
const timeWork = 1_000_000

// timedSearch finds the best division whose sections have a time at which all
// of their pieces are up. A division that has none is mended by cutting the way
// between two pieces that are never up together: one joint of it after the
// other is cut, with those before it kept. Every way is tried while the work
// allows, so the answer is the best; past that stands the best division found.
type timedSearch struct {
	p     *Patch
	net   *network.Network
	q     partition.Problem
	work  int
	left  bool // left off: not every way was tried
	loose bool // a search that was built on wasn't finished
	found bool
	best  partition.Solution
	cost  partition.Score
	bound partition.Score // with nothing parted, so that no way costs less
}

// solveTimed is partition.Solve for a patch whose pieces aren't all up together. Where
// ways of parting them are too many to be tried one by one, all are weighed at once, by
// package partition: it gives another division of those that are as good.
func (p *Patch) solveTimed(q partition.Problem, net *network.Network) (partition.Solution, error) {
	if !p.canPart(q, net) { // what hangs together is told on the section
		sol, err := partition.Solve(q)
		sol.Exhaustive = false
		return sol, err
	}
	s := &timedSearch{p: p, net: net, q: q}
	if err := s.try(nil, nil); err != nil {
		return partition.Solution{}, err
	}
	if s.left {
		return s.atOnce()
	}
	s.best.Score, s.best.Bound = s.cost, s.bound
	if s.best.Exhaustive = !s.loose && len(p.links) == 0; s.best.Exhaustive {
		s.best.Bound = s.cost
	}
	return s.best, nil
}

// canPart reports whether what hangs together over joints that can't be blanked is
// up together. Rings are left as they are.
func (p *Patch) canPart(q partition.Problem, net *network.Network) bool {
	if len(p.links) > 0 {
		return true
	}
	when, top := make([]duty.When, len(p.Nodes)), make([]int, len(p.Nodes))
	for x, k := range p.Nodes { // parents come before their children
		top[x] = x
		if q.Parent[x] >= 0 && q.Price[x] == partition.Banned {
			top[x] = top[q.Parent[x]]
		} else {
			when[x] = duty.Always()
		}
		c := &when[top[x]]
		if *c = c.With(net.Item(k)); c.Empty() {
			return false
		}
	}
	return true
}

// atOnce weighs all ways. What was found before stands if it is better, which it can
// only be where that isn't proved the best.
func (s *timedSearch) atOnce() (partition.Solution, error) {
	q := s.q
	q.From, q.To = s.moments()
	sol, err := partition.Solve(q)
	if err != nil || !s.found || sol.Exhaustive || !s.cheaper(s.cost, sol.Score) {
		return sol, err
	}
	bound := sol.Bound
	sol = s.best
	sol.Score, sol.Bound, sol.Exhaustive = s.cost, bound, false
	return sol, nil
}

// moments numbers the times of the pieces in their order.
func (s *timedSearch) moments() (from, to []int64) {
	var all []float64
	n := len(s.p.Nodes)
	for x := range n {
		if it := s.item(x); it.Ready.Given {
			all = append(all, it.Ready.Value)
		}
		if it := s.item(x); it.Closed.Given {
			all = append(all, it.Closed.Value)
		}
	}
	slices.Sort(all)
	from, to = make([]int64, n), make([]int64, n)
	for x := range n {
		from[x], to[x] = partition.FromFirst, partition.ToLast
		if it := s.item(x); it.Ready.Given {
			k, _ := slices.BinarySearch(all, it.Ready.Value)
			from[x] = int64(k)
		}
		if it := s.item(x); it.Closed.Given {
			k, _ := slices.BinarySearch(all, it.Closed.Value)
			to[x] = int64(k)
		}
	}
	return from, to
}

func (s *timedSearch) item(x int) *takeoff.Item { return s.net.Item(s.p.Nodes[x]) }

// try solves the patch with some joints cut and some kept. It leaves off past the
// limit of work, or at once where there are so many to part that it would come to it.
func (s *timedSearch) try(cut, kept []int) error {
	if s.left = s.left || s.work >= timeWork; s.left {
		return nil
	}
	s.work += len(s.p.Nodes)
	q := s.q
	q.Parent, q.Price = append([]int(nil), q.Parent...), append([]int64(nil), q.Price...)
	var forced int64
	for _, x := range kept {
		q.Price[x] = partition.Banned
	}
	for _, x := range cut {
		forced += q.Price[x]
		q.Parent[x], q.Price[x] = -1, 0
	}
	sol, err := partition.Solve(q)
	if err != nil {
		return err
	}
	if len(cut)+len(kept) == 0 {
		s.bound = sol.Bound
	}
	cost := sol.Score
	cost.Minutes += forced
	if s.found && !s.cheaper(cost, s.cost) {
		s.loose = s.loose || !sol.Exhaustive
		return nil
	}
	way, clashes := s.conflict(sol, q)
	if clashes == 0 {
		s.found, s.best, s.cost, s.loose = true, sol, cost, s.loose || !sol.Exhaustive
		return nil
	}
	if s.left = len(cut) == 0 && clashes*len(s.p.Nodes) >= timeWork; s.left {
		return nil
	}
	for i, x := range way {
		if err := s.try(append(cut[:len(cut):len(cut)], x), append(kept[:len(kept):len(kept)], way[:i]...)); err != nil {
			return err
		}
	}
	return nil
}

// cheaper compares two costs by the aim.
func (s *timedSearch) cheaper(a, b partition.Score) bool {
	if a.Over != b.Over {
		return a.Over < b.Over
	}
	if a.Under != b.Under {
		return a.Under < b.Under
	}
	if s.p.aim == partition.Time {
		return int64(a.Tests)*s.p.testPrice+a.Minutes < int64(b.Tests)*s.p.testPrice+b.Minutes
	}
	if a.Tests != b.Tests {
		return a.Tests < b.Tests
	}
	return a.Minutes < b.Minutes
}

// conflict counts the sections with two pieces that are never up together, and gives
// the joints between those of the first that may still be cut; without one there is no
// way on from here. Rings are left as they are: cutting one joint of a ring parts
// nothing.
func (s *timedSearch) conflict(sol partition.Solution, q partition.Problem) (way []int, clashes int) {
	if len(s.p.links) > 0 {
		return nil, 0
	}
	latest, first := make([]int, len(sol.State)), make([]int, len(sol.State))
	for i := range latest {
		latest[i], first[i] = -1, -1
	}
	item := s.item
	for x, part := range sol.Part {
		if m := item(x).Ready; m.Given && (latest[part] < 0 || m.Value > item(latest[part]).Ready.Value) {
			latest[part] = x
		}
		if m := item(x).Closed; m.Given && (first[part] < 0 || m.Value < item(first[part]).Closed.Value) {
			first[part] = x
		}
	}
	for part := range sol.State {
		u, v := latest[part], first[part]
		if u < 0 || v < 0 || item(u).Ready.Value <= item(v).Closed.Value {
			continue
		}
		if clashes++; clashes > 1 {
			continue
		}
		for u != v { // parents come before their children
			if u < v {
				u, v = v, u
			}
			if q.Price[u] != partition.Banned {
				way = append(way, u)
			}
			u = q.Parent[u]
		}
	}
	return way, clashes
}
