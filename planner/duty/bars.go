package duty

import (
	"fmt"

	"blankoff/planner/network"
	"blankoff/takeoff/terms"
)

// barSlips bars slip joints that are made up: a blank can't be got into them.
func (z *Zones) barSlips() {
	for k := range z.Net.Joints {
		j := &z.Net.Joints[k]
		it := z.Net.Item(j.B)
		if it.Joint != terms.Slip || j.Wall || j.Assumed {
			continue
		}
		if z.Rows.set.SlipJoints == "open" {
			z.Slips++
		}
		if z.Rows.set.SlipJoints == "made-up" && j.Barred == "" && !it.Blank.Given && !it.Blank.Must {
			j.Barred = "a made-up slip joint"
		}
	}
}

// keepTogether bars the joints inside a group. A group that doesn't hang
// together is a fault of the rows that hang apart from its first.
func (z *Zones) keepTogether() {
	in := func(k int) string {
		if z.Net.Nodes[k].State == network.Outside {
			return ""
		}
		return z.Net.Item(k).Group
	}
	root := map[string]int{}
	find := z.sets(func(j *network.Joint) bool {
		same := in(j.A) != "" && in(j.A) == in(j.B)
		if same && j.Barred == "" {
			j.Barred = "kept together, group " + in(j.A)
		}
		return same
	})
	for k := range z.Net.Nodes {
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
		n := &z.Net.Nodes[k]
		if it := z.Net.Item(k); z.Rows.refused[n.Item] == "" {
			z.Rows.refused[n.Item] = "group doesn't hang together"
			z.Rows.Faults = append(z.Rows.Faults, it.At.Fault("group", group, "pieces that hang together",
				fmt.Sprintf("%s and %s are of group %s and don't hang together; give one of them another group", it.Name(), z.Net.Item(first).Name(), group)))
		}
		n.State, n.Reason = network.Outside, z.Rows.refused[n.Item]
	}
}

// settleBarred leaves outside what hangs together over joints that can't be
// blanked although a section would have to end there. The joints round it are
// blanked instead.
func (z *Zones) settleBarred() {
	cluster := z.sets(func(j *network.Joint) bool { return j.Barred != "" })
	why := map[int]string{}
	for k := range z.Net.Joints {
		j := &z.Net.Joints[k]
		if z.Must[k] == "" || z.Must[k] == outside || j.Barred == "" {
			continue
		}
		root := cluster(j.A)
		text := fmt.Sprintf("%s at the joint of %s and %s, which can't be blanked (%s)",
			z.Must[k], z.Net.NodeText(j.A), z.Net.NodeText(j.B), j.Barred)
		if why[root] == "" {
			why[root] = text
			z.Notes = append(z.Notes, text+z.cures(j))
		}
	}
	z.neverUp(cluster, why)
	z.hangsOutside(cluster, why)
	if len(why) == 0 {
		return
	}
	for k := range z.Net.Nodes {
		if text := why[cluster(k)]; text != "" && z.Net.Nodes[k].State != network.Outside {
			z.Net.Nodes[k].State, z.Net.Nodes[k].Reason = network.Outside, text
		}
	}
	z.EndOutside()
}

// neverUp leaves outside what can't be cut apart and is never up all together.
func (z *Zones) neverUp(cluster func(int) int, why map[int]string) {
	when := map[int]When{}
	for k := range z.Net.Nodes {
		it := z.Net.Item(k)
		if z.Net.Nodes[k].State == network.Outside || !it.Ready.Given && !it.Closed.Given {
			continue
		}
		root := cluster(k)
		s, ok := when[root]
		if !ok {
			s = Always()
		}
		if s = s.With(it); s.Empty() && why[root] == "" {
			why[root] = fmt.Sprintf("pieces that can't be cut apart are never up together: one is closed on %s, another ready on %s", s.ClosedText, s.ReadyText)
			z.Notes = append(z.Notes, why[root]+" (at "+z.Net.NodeText(k)+")")
		}
		when[root] = s
	}
}

// hangsOutside leaves outside what hangs on a piece that is in no section over a
// joint that can't be blanked.
func (z *Zones) hangsOutside(cluster func(int) int, why map[int]string) {
	for k := range z.Net.Joints {
		j := &z.Net.Joints[k]
		out, in := j.A, j.B
		if z.Net.Nodes[out].State != network.Outside {
			out, in = in, out
		}
		if j.Barred == "" || z.Net.Nodes[out].State != network.Outside || z.Net.Nodes[in].State == network.Outside || why[cluster(in)] != "" {
			continue
		}
		why[cluster(in)] = fmt.Sprintf("it can't be blanked off from %s, which isn't in a test (%s): the joint can't be blanked (%s)",
			z.Net.NodeText(out), z.Net.Nodes[out].Reason, j.Barred)
		cure := fmt.Sprintf("take %s into the test (scope through)", z.Net.Item(out).Name())
		if z.Rows.isRefused(z.Net.Nodes[out].Item) {
			cure = fmt.Sprintf("mend what %s is refused for", z.Net.Item(out).Name())
		}
		z.Notes = append(z.Notes, fmt.Sprintf("%s and what hangs on it over joints that can't be blanked: %s; cures: %s, or make the joint blankable (a number of minutes in blank_minutes)",
			z.Net.NodeText(in), why[cluster(in)], cure))
	}
}

// cures says what would help where a section should end at a joint that can't
// be blanked.
func (z *Zones) cures(j *network.Joint) string {
	a, b := *z.Duty(j.A), *z.Duty(j.B)
	if a == b {
		return "; cures: make the joint blankable (a number of minutes in blank_minutes), or let the section go on over it"
	}
	if a.System != b.System {
		return "; cures: make the joint blankable (a number of minutes in blank_minutes), or give both rows the same system"
	}
	tight, low := a.Class.Name, a.Pa
	if b.Class.K < a.Class.K {
		tight = b.Class.Name
	}
	if b.Pa < a.Pa {
		low = b.Pa
	}
	return fmt.Sprintf("; cures: one test of both at the lower pressure %s to the tighter class %s (put them on both rows), a limit summed piece by piece if the specifier agrees, or a joint that can be blanked (a number of minutes in blank_minutes)", z.Rows.set.Units.Pressure(low), tight)
}

// sets groups the nodes over the joints that bind, and returns the group of a
// node.
func (z *Zones) sets(binds func(*network.Joint) bool) func(int) int {
	up := make([]int, len(z.Net.Nodes))
	for k := range up {
		up[k] = k
	}
	find := func(k int) int {
		for up[k] != k {
			up[k] = up[up[k]]
			k = up[k]
		}
		return k
	}
	for k := range z.Net.Joints {
		j := &z.Net.Joints[k]
		if !binds(j) {
			continue
		}
		if a, b := find(j.A), find(j.B); a < b {
			up[b] = a
		} else {
			up[a] = b
		}
	}
	return find
}
