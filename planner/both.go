package planner

import (
	"math"

	"blankoff/planner/network"
	"blankoff/planner/partition"
)

// held is the area that a section is held to, m2: the smaller of the two for
// the lower end of the rig's range and for the permitted leakage, the larger
// for the upper end. They differ only where both bases are held.
func (s *Section) held(both bool) (low, high float64) {
	if !both {
		return s.Area, s.Area
	}
	return math.Min(s.Area, s.Exact), math.Max(s.Area, s.Exact)
}

// weighs is the area of a node by which the search weighs it, m2: on the basis,
// or exactly where that is the smaller over the patch and both are held.
func (p *patch) weighs(n *network.Node) float64 {
	if n.State != network.Tested {
		return 0
	}
	if p.byExact {
		return n.Exact
	}
	return n.Area
}

// chooseWeight takes the smaller of the two areas of a patch for its weights
// where both bases are held.
func (p *patch) chooseWeight(set Settings, net *network.Network) {
	if !set.HoldBoth {
		return
	}
	area, exact := 0.0, 0.0
	for _, k := range p.nodes {
		if n := &net.Nodes[k]; n.State == network.Tested {
			area, exact = area+n.Area, exact+n.Exact
		}
	}
	p.byExact = exact < area
}

// holds reports whether every section that lies in a window by its rounded
// weight does so by its true area, and by both areas where both bases are held.
// If not, it says by how much the upper ends would have to come in and the
// lower ones up: factors for the next try.
func (p *patch) holds(sol partition.Solution, set Settings, net *network.Network) (ok bool, in, up float64) {
	sums := make([]Section, len(sol.State))
	for x, k := range p.nodes {
		if n := &net.Nodes[k]; n.State == network.Tested {
			sums[sol.Part[x]].Area += n.Area
			sums[sol.Part[x]].Exact += n.Exact
		}
	}
	ok, in, up = true, 1, 1
	for i, s := range sol.State {
		if s.State != partition.In {
			continue
		}
		low, high := sums[i].held(set.HoldBoth)
		if p.inWindow(low, high) {
			continue
		}
		ok = false
		w := float64(s.Weight) / (unit * mm2PerM2)
		in, up = math.Min(in, w/high), math.Max(up, w/low)
	}
	return ok, in, up
}

// inWindow reports whether one window holds both areas.
func (p *patch) inWindow(low, high float64) bool {
	for _, w := range p.windows {
		if low >= w.Low-areaSlack && high <= w.High+areaSlack {
			return true
		}
	}
	return false
}
