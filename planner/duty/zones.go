package duty

import (
	"slices"
	"strings"

	"blankoff/planner/network"
	"blankoff/takeoff"
)

// outside is why a section ends at the bounds of what is in no test.
const outside = "outside"

// Zones are a network with what bounds its sections: the duty of every node,
// and for every joint whether a section has to end there.
type Zones struct {
	Net     *network.Network
	Rows    *Rows
	of      []int32  // by node: its duty
	Must    []string // by joint: why a section ends there, "" if it needn't
	Adopted int      // rows that took the system of the row they hang on
	Slips   int      // slip joints that were taken as still open
	Notes   []string // what was left outside, and the cures

	open []int // nodes measured through whose duty is their neighbour's
}

// Mark gives every node its duty and marks the joints at which a section has to
// end. It writes to the network what can't be blanked and what is left outside,
// and to the rows those whose group or own cut is at fault.
func Mark(net *network.Network, d *Rows) *Zones {
	z := &Zones{Net: net, Rows: d, of: make([]int32, len(net.Nodes)), Must: make([]string, len(net.Joints))}
	z.assign()
	z.barSlips()
	z.keepTogether()
	z.markMust()
	z.applyOwn()
	z.keepSections()
	z.settleBarred()
	z.barOthers()
	return z
}

// Duty is how a node is tested.
func (z *Zones) Duty(k int) *Duty { return &z.Rows.list[z.of[k]] }

// setDuty says how a node is tested.
func (z *Zones) setDuty(k int, o Duty) { z.of[k] = z.Rows.file(o) }

// assign gives every node its duty. A row without a system has that of the row
// that it hangs on; a piece that is only measured through has what is missing
// from there too.
func (z *Zones) assign() {
	items := z.Net.Takeoff.Items
	for k := range z.Net.Nodes {
		n := &z.Net.Nodes[k]
		if why, bad := z.Rows.refused[n.Item]; bad && n.State != network.Outside {
			n.State, n.Reason = network.Outside, why
		}
		it := &items[n.Item]
		o := z.Rows.list[z.Rows.of[n.Item]]
		o.System = it.System
		o.By = z.by(it)
		if n.Up >= 0 && !z.Net.Joints[n.Up].Assumed {
			up := z.Duty(z.Net.Joints[n.Up].A)
			if o.System == "" && up.System != "" {
				o.System = up.System
				if n.First == 1 {
					z.Adopted++
				}
			}
			if o.open() { // measured through: what is missing is that of its neighbour
				o.Scheme, o.Class, o.Pa = up.Scheme, up.Class, up.Pa
				z.open = append(z.open, k)
			}
			if o.By == "" || z.Net.Joints[n.Up].Barred != "" {
				o.By = up.By
			}
		}
		z.setDuty(k, o)
	}
	for k := len(z.Net.Nodes) - 1; k >= 0; k-- { // a plant end measured through has its child's
		up := z.Net.Nodes[k].Up
		if up < 0 {
			continue
		}
		if a := z.Net.Joints[up].A; z.Duty(a).open() {
			o, own := *z.Duty(a), z.Duty(k)
			o.Scheme, o.Class, o.Pa = own.Scheme, own.Class, own.Pa
			z.setDuty(a, o)
		}
	}
	z.settleOpen()
	z.leaveOpen()
}

// open reports whether a duty lacks its class or its pressure.
func (o Duty) open() bool { return o.Class.K == 0 || o.Pa == 0 }

// settleOpen lets each piece that is measured through without a duty of its own
// go with the neighbour from which it costs most to be cut, so that the cuts at
// its other joints are the cheapest.
func (z *Zones) settleOpen() {
	if len(z.open) == 0 {
		return
	}
	type ask struct {
		duty Duty
		cost float64 // of being cut from every neighbour of that duty
	}
	asks := map[int][]ask{}
	for _, k := range z.open {
		asks[k] = nil
	}
	for k := range z.Net.Joints {
		j := &z.Net.Joints[k]
		for _, side := range [2][2]int{{j.A, j.B}, {j.B, j.A}} {
			v, o := side[0], *z.Duty(side[1])
			list, open := asks[v]
			if !open || o.open() || z.Net.Nodes[side[1]].State == network.Outside {
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
		best, most := *z.Duty(k), -1.0
		for _, a := range asks[k] {
			if a.cost > most {
				best, most = a.duty, a.cost
			}
		}
		own := z.Duty(k)
		best.System, best.By, best.Sign = own.System, own.By, own.Sign
		z.setDuty(k, best)
	}
}

// leaveOpen leaves outside what is measured through and has neither a class and
// a pressure of its own nor a neighbour to take them from.
func (z *Zones) leaveOpen() {
	for k := range z.Net.Nodes {
		if n := &z.Net.Nodes[k]; n.State != network.Outside && z.Duty(k).open() {
			n.State, n.Reason = network.Outside, "no class or test pressure of its own, and no neighbour to take them from"
		}
	}
}

// cutCost is the price of a cut at a joint, minutes; of one that can't be
// blanked it is beyond any price.
func (z *Zones) cutCost(j *network.Joint) float64 {
	if j.Barred != "" {
		return 1e12
	}
	return j.Minutes
}

func (z *Zones) by(it *takeoff.Item) string {
	switch z.Rows.set.By {
	case "level":
		return it.Level
	case "stage":
		return it.Stage
	}
	return ""
}

// markMust marks the joints at which a section has to end.
func (z *Zones) markMust() {
	for k := range z.Net.Joints {
		j := &z.Net.Joints[k]
		a, b := &z.Net.Nodes[j.A], &z.Net.Nodes[j.B]
		switch {
		case a.State == network.Outside || b.State == network.Outside:
			z.Must[k] = outside
		default:
			z.Must[k] = z.difference(j.A, j.B)
			if z.Must[k] == "" && !j.Ring {
				z.Must[k] = apart(z.Net.Item(j.A), z.Net.Item(j.B))
			}
			if z.Must[k] == "" && j.Must {
				z.Must[k] = "must"
			}
		}
	}
}

// difference says what the duties of two nodes don't share.
func (z *Zones) difference(x, y int) string {
	if z.of[x] == z.of[y] {
		return ""
	}
	a, b := z.Duty(x), z.Duty(y)
	var what []string
	add := func(differs bool, word string) {
		if differs {
			what = append(what, word)
		}
	}
	add(a.System != b.System, "system")
	add(a.Scheme != b.Scheme, "scheme")
	add(a.Class.Name != b.Class.Name, "class")
	add(a.Pa != b.Pa, "test pressure")
	add(a.Sign != b.Sign, "sign")
	add(a.By != b.By, "level or stage")
	if len(what) == 0 {
		return ""
	}
	return "change of " + strings.Join(what, ", ")
}

// EndOutside lets a section end at every joint of a node that is outside. Call
// it when more nodes were left outside after Mark.
func (z *Zones) EndOutside() {
	for k := range z.Net.Joints {
		j := &z.Net.Joints[k]
		if z.Net.Nodes[j.A].State == network.Outside || z.Net.Nodes[j.B].State == network.Outside {
			z.Must[k] = outside
		}
	}
}

// sameWord compares two words without regard to case and spaces.
func sameWord(a, b string) bool {
	return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b))
}
