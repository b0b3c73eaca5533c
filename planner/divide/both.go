package divide

import (
	"math"

	"blankoff/planner/duty"
	"blankoff/planner/network"
	"blankoff/planner/partition"
	"blankoff/planner/rig"
)

// AreaSlack is by how much an area may be outside a window before it counts as
// outside, m2: the noise of adding it up.
const AreaSlack = 1e-9

// Held is the area that a section is held to, m2: the smaller of the two for
// the lower end of the rig's range and for the permitted leakage, the larger
// for the upper end. Its area on the basis is area, its exact one exact; they
// are told apart only where both bases are held.
func Held(area, exact float64, both bool) (low, high float64) {
	if !both {
		return area, area
	}
	return math.Min(area, exact), math.Max(area, exact)
}

// InWindow reports whether one window holds both areas, m2, but for AreaSlack.
func InWindow(windows []rig.AreaWindow, low, high float64) bool {
	for _, w := range windows {
		if low >= w.Low-AreaSlack && high <= w.High+AreaSlack {
			return true
		}
	}
	return false
}

// weighs is the area of a node by which the search weighs it, m2: on the basis,
// or exactly where that is the smaller over the patch and both are held.
func (p *Patch) weighs(n *network.Node) float64 {
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
func (p *Patch) chooseWeight(set duty.Settings, net *network.Network) {
	if !set.HoldBoth {
		return
	}
	area, exact := 0.0, 0.0
	for _, k := range p.Nodes {
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
func (p *Patch) holds(sol partition.Solution, set duty.Settings, net *network.Network) (ok bool, in, up float64) {
	sums := make([]struct{ area, exact float64 }, len(sol.State))
	for x, k := range p.Nodes {
		if n := &net.Nodes[k]; n.State == network.Tested {
			sums[sol.Part[x]].area += n.Area
			sums[sol.Part[x]].exact += n.Exact
		}
	}
	ok, in, up = true, 1, 1
	for i, s := range sol.State {
		if s.State != partition.In {
			continue
		}
		low, high := Held(sums[i].area, sums[i].exact, set.HoldBoth)
		if InWindow(p.Windows, low, high) {
			continue
		}
		ok = false
		w := float64(s.Weight) / (unit * mm2PerM2)
		in, up = math.Min(in, w/high), math.Max(up, w/low)
	}
	return ok, in, up
}
