package planner

import (
	"fmt"

	"blankoff/planner/network"
	"blankoff/takeoff"
)

// barSlips bars slip joints that are made up: a blank can't be got into them.
func (z *zoning) barSlips() {
	slips := 0
	for k := range z.net.Joints {
		j := &z.net.Joints[k]
		it := z.net.Item(j.B)
		if it.Joint != takeoff.Slip || j.Wall || j.Assumed {
			continue
		}
		slips++
		if z.d.set.SlipJoints == "made-up" && j.Barred == "" && !it.Blank.Given && !it.Blank.Must {
			j.Barred = "a made-up slip joint"
		}
	}
	if slips > 0 && z.d.set.SlipJoints == "open" {
		z.notes = append(z.notes, fmt.Sprintf("%s taken as still open; --slip-joints made-up bars them, bladder says that bladders are allowed", plural(slips, "slip joint")))
	}
}

// keepTogether bars the joints inside a group. A group that doesn't hang
// together is a fault of the rows that hang apart from its first.
func (z *zoning) keepTogether() {
	in := func(k int) string {
		if z.net.Nodes[k].State == network.Outside {
			return ""
		}
		return z.net.Item(k).Group
	}
	root := map[string]int{}
	find := z.sets(func(j *network.Joint) bool {
		same := in(j.A) != "" && in(j.A) == in(j.B)
		if same && j.Barred == "" {
			j.Barred = "kept together, group " + in(j.A)
		}
		return same
	})
	for k := range z.net.Nodes {
		group := in(k)
		if group == "" {
			continue
		}
		first, ok := root[group]
		if !ok {
			root[group] = k
			continue
		}
		if find(k) == find(first) {
			continue
		}
		n := &z.net.Nodes[k]
		if it := z.net.Item(k); z.d.refused[n.Item] == "" {
			z.d.refused[n.Item] = "group doesn't hang together"
			z.d.faults = append(z.d.faults, it.At.Fault("group", group, "pieces that hang together",
				fmt.Sprintf("%s and %s are of group %s and don't hang together; give one of them another group", it.Name(), z.net.Item(first).Name(), group)))
		}
		n.State, n.Reason = network.Outside, z.d.refused[n.Item]
	}
}

// neverUp leaves outside what can't be cut apart and is never up all together.
func (z *zoning) neverUp(cluster func(int) int, why map[int]string) {
	when := map[int]stretch{}
	for k := range z.net.Nodes {
		it := z.net.Item(k)
		if z.net.Nodes[k].State == network.Outside || !it.Ready.Given && !it.Closed.Given {
			continue
		}
		root := cluster(k)
		s, ok := when[root]
		if !ok {
			s = always()
		}
		if s = s.with(it); s.empty() && why[root] == "" {
			why[root] = fmt.Sprintf("pieces that can't be cut apart are never up together: one is closed on %s, another ready on %s", s.closedText, s.readyText)
			z.notes = append(z.notes, why[root]+" (at "+z.net.NodeText(k)+")")
		}
		when[root] = s
	}
}

// hangsOutside leaves outside what hangs on a piece that is in no section over a
// joint that can't be blanked.
func (z *zoning) hangsOutside(cluster func(int) int, why map[int]string) {
	for k := range z.net.Joints {
		j := &z.net.Joints[k]
		out, in := j.A, j.B
		if z.net.Nodes[out].State != network.Outside {
			out, in = in, out
		}
		if j.Barred == "" || z.net.Nodes[out].State != network.Outside || z.net.Nodes[in].State == network.Outside || why[cluster(in)] != "" {
			continue
		}
		why[cluster(in)] = fmt.Sprintf("it can't be blanked off from %s, which isn't in a test (%s): the joint can't be blanked (%s)",
			z.net.NodeText(out), z.net.Nodes[out].Reason, j.Barred)
		z.notes = append(z.notes, fmt.Sprintf("%s and what hangs on it over joints that can't be blanked: %s; cures: take %s into the test (scope through), or make the joint blankable (a number of minutes in blank_minutes)",
			z.net.NodeText(in), why[cluster(in)], z.net.Item(out).Name()))
	}
}
