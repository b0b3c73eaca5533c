package divide

import (
	"fmt"
	"math"

	"blankoff/planner/duty"
	"blankoff/planner/network"
	"blankoff/planner/partition"
)

// Hundredths is how many of the search's units of time a minute has.
const Hundredths = 100

const (
	mm2PerM2       = 1e6
	unit           = 2 // weights are in half mm2 and even, so that odd ones are free for bounds
	maxShrinkTries = 6
)

// Divide finds the best sections of a patch, which has to be readable, and evens
// them out. It sets Solution and AtLeast. An error is one of package partition:
// numbers beyond what it can add up.
func (p *Patch) Divide(set duty.Settings, net *network.Network) error {
	sol, err := p.solve(set, net)
	if err != nil {
		return err
	}
	p.even(&sol, set, net, p.Scheme.MinAreaM2)
	p.Solution = sol
	return nil
}

// solve divides a patch. Areas are rounded to whole mm2 for the search; should
// a true area then lie outside the window that its rounded one lies in, the
// windows are drawn in by the rounding and the search is made again. Where two
// bases are held and their areas part by more than that, the windows are drawn
// in by the ratio, and the answer is no longer proved best.
func (p *Patch) solve(set duty.Settings, net *network.Network) (partition.Solution, error) {
	p.chooseWeight(set, net)
	draw, timed := drawn{in: 1, up: 1}, p.timed(net)
	for try := 0; ; try++ {
		q := p.problem(net, draw)
		sol, err := p.search(q, timed, net)
		if err == nil && try == 0 {
			var bound partition.Score
			bound, err = partition.AreaBound(q)
			p.AtLeast = bound.Tests
		}
		if err != nil {
			return sol, fmt.Errorf("dividing system %q: %w", p.Duty.System, err)
		}
		switch {
		case set.HoldBoth && try > 0:
			sol.Exhaustive = false
			p.NotProved = "both areas were held by drawing the windows in"
		case sol.Exhaustive:
		case timed:
			p.NotProved = "not every way of parting pieces that are never up together was tried"
		case len(p.links) > 0:
			p.NotProved = "not every way of opening the rings was tried"
		default:
			p.NotProved = "the search stopped at its limit of work"
		}
		ok, in, up := p.holds(sol, set, net)
		if ok || try == maxShrinkTries {
			return sol, nil
		}
		draw.by += int64(len(p.Nodes))
		draw.in, draw.up = draw.in*in, draw.up*up
	}
}

// search finds the best division, of pieces that are up together where that
// isn't always so.
func (p *Patch) search(q partition.Problem, timed bool, net *network.Network) (partition.Solution, error) {
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
func (p *Patch) problem(net *network.Network, d drawn) partition.Problem {
	q := partition.Problem{
		Parent: p.parent, Weight: make([]int64, len(p.Nodes)), Price: make([]int64, len(p.Nodes)),
		Aim: p.aim, TestPrice: p.testPrice,
	}
	at := map[int]int{}
	for x, k := range p.Nodes {
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
	for _, w := range p.Windows {
		low, high := int64(math.Ceil(w.Low*d.up*mm2PerM2))+d.by, int64(math.Floor(w.High*d.in*mm2PerM2))-d.by
		if low <= high {
			q.Windows = append(q.Windows, partition.Window{Low: unit * low, High: unit * high})
		}
	}
	// The bound is a window that no weight can hit: weights are even.
	most := unit*(int64(math.Floor(p.Most*d.in*mm2PerM2))-d.by) + 1
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
	return int64(math.Round(j.Minutes * Hundredths))
}
