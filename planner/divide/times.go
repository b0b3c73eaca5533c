package divide

import (
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

// timeWork bounds the nodes that are looked at while sections are kept to
// pieces that are up together.
const timeWork = 3_000_000

// timedSearch finds the best division whose sections have a time at which all
// of their pieces are up. A division that has none is mended by cutting the way
// between two pieces that are never up together: one joint of it after the
// other is cut, with those before it kept. Every way is tried while the work
// allows, so the answer is the best; past that it isn't proved.
type timedSearch struct {
	p     *Patch
	net   *network.Network
	q     partition.Problem
	work  int
	found bool
	best  partition.Solution
	cost  partition.Score
}

// solveTimed is partition.Solve for a patch whose pieces aren't all up together.
func (p *Patch) solveTimed(q partition.Problem, net *network.Network) (partition.Solution, error) {
	s := &timedSearch{p: p, net: net, q: q}
	if err := s.try(nil, nil); err != nil {
		return partition.Solution{}, err
	}
	if !s.found { // nothing was left to cut; what hangs together is told on the section
		sol, err := partition.Solve(q)
		sol.Exhaustive = false
		return sol, err
	}
	if s.work >= timeWork || len(p.links) > 0 {
		s.best.Exhaustive = false
	}
	s.best.Score = s.cost
	if s.best.Exhaustive {
		s.best.Bound = s.cost
	}
	return s.best, nil
}

// try solves the patch with some joints cut and some kept.
func (s *timedSearch) try(cut, kept []int) error {
	if s.found && s.work >= timeWork {
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
	cost := sol.Score
	cost.Minutes += forced
	if s.found && !s.cheaper(cost, s.cost) {
		return nil
	}
	way, clash := s.conflict(sol, q)
	if !clash {
		s.found, s.best, s.cost = true, sol, cost
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

// conflict finds two pieces of one section that are never up together, and the
// joints between them that may still be cut; without one there is no way on from
// here. Rings are left as they are: cutting one joint of a ring parts nothing.
func (s *timedSearch) conflict(sol partition.Solution, q partition.Problem) (way []int, clash bool) {
	if len(s.p.links) > 0 {
		return nil, false
	}
	latest, first := make([]int, len(sol.State)), make([]int, len(sol.State))
	for i := range latest {
		latest[i], first[i] = -1, -1
	}
	item := func(x int) *takeoff.Item { return s.net.Item(s.p.Nodes[x]) }
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
		for u != v { // parents come before their children
			if u < v {
				u, v = v, u
			}
			if q.Price[u] != partition.Banned {
				way = append(way, u)
			}
			u = q.Parent[u]
		}
		return way, true
	}
	return nil, false
}
