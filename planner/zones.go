package planner

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/planner/network"
	"blankoff/takeoff"
)

// zoning decides, for every node, its duty, and for every joint whether a
// section has to end there.
type zoning struct {
	net     *network.Network
	d       *duties
	duty    []duty   // by node
	must    []string // by joint: why a section ends there, "" if it needn't
	open    []int    // nodes measured through whose duty is their neighbour's
	adopted int      // rows that took the system of the row they hang on
	notes   []string
}

func newZoning(net *network.Network, d *duties) *zoning {
	z := &zoning{net: net, d: d, duty: make([]duty, len(net.Nodes)), must: make([]string, len(net.Joints))}
	z.assign()
	z.barSlips()
	z.keepTogether()
	z.markMust()
	z.applyOwn()
	z.settleBarred()
	z.barOthers()
	return z
}

// assign gives every node its duty. A row without a system has that of the row
// that it hangs on; a piece that is only measured through has what is missing
// from there too.
func (z *zoning) assign() {
	items := z.net.Takeoff.Items
	for k := range z.net.Nodes {
		n := &z.net.Nodes[k]
		if why, bad := z.d.refused[n.Item]; bad && n.State != network.Outside {
			n.State, n.Reason = network.Outside, why
		}
		it := &items[n.Item]
		o := z.d.of[n.Item]
		o.system = it.System
		o.by = z.by(it)
		if n.Up >= 0 && !z.net.Joints[n.Up].Assumed {
			up := z.duty[z.net.Joints[n.Up].A]
			if o.system == "" && up.system != "" {
				o.system = up.system
				if n.First == 1 {
					z.adopted++
				}
			}
			if o.open() { // measured through: what is missing is that of its neighbour
				o.scheme, o.class, o.pa = up.scheme, up.class, up.pa
				z.open = append(z.open, k)
			}
			if o.by == "" || z.net.Joints[n.Up].Barred != "" {
				o.by = up.by
			}
		}
		z.duty[k] = o
	}
	for k := len(z.net.Nodes) - 1; k >= 0; k-- { // a plant end measured through has its child's
		up := z.net.Nodes[k].Up
		if up < 0 {
			continue
		}
		if a := &z.duty[z.net.Joints[up].A]; a.open() {
			a.scheme, a.class, a.pa = z.duty[k].scheme, z.duty[k].class, z.duty[k].pa
		}
	}
	z.settleOpen()
}

// open reports whether a duty lacks its class or its pressure.
func (o duty) open() bool { return o.class.K == 0 || o.pa == 0 }

// settleOpen lets each piece that is measured through without a duty of its own
// go with the neighbour from which it costs most to be cut, so that the cuts at
// its other joints are the cheapest.
func (z *zoning) settleOpen() {
	if len(z.open) == 0 {
		return
	}
	type ask struct {
		duty duty
		cost float64 // of being cut from every neighbour of that duty
	}
	asks := map[int][]ask{}
	for _, k := range z.open {
		asks[k] = nil
	}
	for k := range z.net.Joints {
		j := &z.net.Joints[k]
		for _, side := range [2][2]int{{j.A, j.B}, {j.B, j.A}} {
			v, o := side[0], z.duty[side[1]]
			list, open := asks[v]
			if !open || z.net.Nodes[side[1]].State == network.Outside {
				continue
			}
			x := slices.IndexFunc(list, func(a ask) bool { return a.duty == o })
			if x < 0 {
				x, list = len(list), append(list, ask{duty: o})
			}
			list[x].cost += z.cutCost(j)
			asks[v] = list
		}
	}
	for _, k := range z.open {
		best, most := z.duty[k], -1.0
		for _, a := range asks[k] {
			if a.cost > most {
				best, most = a.duty, a.cost
			}
		}
		best.system, best.by, best.sign = z.duty[k].system, z.duty[k].by, z.duty[k].sign
		z.duty[k] = best
	}
}

// cutCost is the price of a cut at a joint, minutes; of one that can't be
// blanked it is beyond any price.
func (z *zoning) cutCost(j *network.Joint) float64 {
	if j.Barred != "" {
		return 1e12
	}
	return j.Minutes
}

func (z *zoning) by(it *takeoff.Item) string {
	switch z.d.set.By {
	case "level":
		return it.Level
	case "stage":
		return it.Stage
	}
	return ""
}

// markMust marks the joints at which a section has to end.
func (z *zoning) markMust() {
	for k := range z.net.Joints {
		j := &z.net.Joints[k]
		a, b := &z.net.Nodes[j.A], &z.net.Nodes[j.B]
		switch {
		case a.State == network.Outside || b.State == network.Outside:
			z.must[k] = "outside"
		default:
			z.must[k] = difference(z.duty[j.A], z.duty[j.B])
			if z.must[k] == "" && !j.Ring {
				z.must[k] = apart(z.net.Item(j.A), z.net.Item(j.B))
			}
			if z.must[k] == "" && j.Must {
				z.must[k] = "must"
			}
		}
	}
}

// difference says what two duties don't share.
func difference(a, b duty) string {
	var what []string
	add := func(differs bool, word string) {
		if differs {
			what = append(what, word)
		}
	}
	add(a.system != b.system, "system")
	add(a.scheme != b.scheme, "scheme")
	add(a.class.Name != b.class.Name, "class")
	add(a.pa != b.pa, "test pressure")
	add(a.sign != b.sign, "sign")
	add(a.by != b.by, "level or stage")
	if len(what) == 0 {
		return ""
	}
	return "change of " + strings.Join(what, ", ")
}

// settleBarred leaves outside what hangs together over joints that can't be
// blanked although a section would have to end there. The joints round it are
// blanked instead.
func (z *zoning) settleBarred() {
	cluster := z.sets(func(j *network.Joint) bool { return j.Barred != "" })
	why := map[int]string{}
	for k := range z.net.Joints {
		j := &z.net.Joints[k]
		if z.must[k] == "" || z.must[k] == "outside" || j.Barred == "" {
			continue
		}
		root := cluster(j.A)
		text := fmt.Sprintf("%s at the joint of %s and %s, which can't be blanked (%s)",
			z.must[k], z.net.NodeText(j.A), z.net.NodeText(j.B), j.Barred)
		if why[root] == "" {
			why[root] = text
			z.notes = append(z.notes, text+z.cures(j))
		}
	}
	z.neverUp(cluster, why)
	z.hangsOutside(cluster, why)
	if len(why) == 0 {
		return
	}
	for k := range z.net.Nodes {
		if text := why[cluster(k)]; text != "" && z.net.Nodes[k].State != network.Outside {
			z.net.Nodes[k].State, z.net.Nodes[k].Reason = network.Outside, text
		}
	}
	for k := range z.net.Joints {
		j := &z.net.Joints[k]
		if z.net.Nodes[j.A].State == network.Outside || z.net.Nodes[j.B].State == network.Outside {
			z.must[k] = "outside"
		}
	}
}

// cures says what would help where a section should end at a joint that can't
// be blanked.
func (z *zoning) cures(j *network.Joint) string {
	a, b := z.duty[j.A], z.duty[j.B]
	if a == b {
		return "; cures: make the joint blankable (a number of minutes in blank_minutes), or let the section go on over it"
	}
	if a.system != b.system {
		return "; cures: make the joint blankable (a number of minutes in blank_minutes), or give both rows the same system"
	}
	tight, low := a.class.Name, a.pa
	if b.class.K < a.class.K {
		tight = b.class.Name
	}
	if b.pa < a.pa {
		low = b.pa
	}
	return fmt.Sprintf("; cures: one test of both at the lower pressure %g Pa to the tighter class %s (put them on both rows), a limit summed piece by piece if the specifier agrees, or a joint that can be blanked (a number of minutes in blank_minutes)", low, tight)
}

// sets groups the nodes over the joints that bind, and returns the group of a
// node.
func (z *zoning) sets(binds func(*network.Joint) bool) func(int) int {
	up := make([]int, len(z.net.Nodes))
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
	for k := range z.net.Joints {
		j := &z.net.Joints[k]
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

// sameWord compares two words without regard to case and spaces.
func sameWord(a, b string) bool {
	return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b))
}
