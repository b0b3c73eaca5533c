package untested

import (
	"math"
	"slices"
	"sort"

	"blankoff/planner/divide"
	"blankoff/planner/duty"
	"blankoff/planner/network"
)

// work is a plan with what has been taken in so far.
type work struct {
	ask   Ask
	part  []int         // by node: its section, -1: none
	at    network.Lists // by node: its joints
	ends  map[int][]int // by node: its open ends
	fixed map[int]bool  // joints that stay blanked inside a larger section too
	taken []map[int]bool
	cost  []Cost      // by section, of all that it has taken in
	when  []duty.When // by section
}

func newWork(ask Ask) *work {
	n := len(ask.Sections)
	x := &work{
		ask: ask, part: make([]int, len(ask.Net.Nodes)), at: jointsAt(ask.Net), ends: map[int][]int{}, fixed: map[int]bool{},
		taken: make([]map[int]bool, n), cost: make([]Cost, n), when: make([]duty.When, n),
	}
	for k := range x.part {
		x.part[k] = -1
	}
	for s := range ask.Sections {
		x.when[s] = duty.Always()
		for _, k := range ask.Sections[s].Nodes {
			x.part[k], x.when[s] = s, x.when[s].With(ask.Net.Item(k))
		}
	}
	for i := range ask.Net.OpenEnds {
		k := ask.Net.OpenEnds[i].Node
		x.ends[k] = append(x.ends[k], i)
	}
	for _, c := range ask.Cuts {
		x.fixed[c.Joint] = x.never(c) != ""
	}
	return x
}

// jointsAt lists the joints of every node.
func jointsAt(net *network.Network) network.Lists {
	return network.ListsOf(len(net.Nodes), func(pair func(node, joint int)) {
		for k := range net.Joints {
			if j := &net.Joints[k]; !j.Assumed && j.A != j.B {
				pair(j.A, k)
				pair(j.B, k)
			}
		}
	})
}

// side is one way to test a joint.
type side struct {
	by    int
	takes []int // nodes beyond those taken in before
	whole Cost  // of all that the section then takes in
	more  Cost  // over what it had taken in before
	why   string
}

// sideOf looks at a cut from one of its sides; why says why it can't be done.
func (x *work) sideOf(c Cut, by int) side {
	j := &x.ask.Net.Joints[c.Joint]
	s, over := c.Parts[by], j.B
	if x.part[j.B] == s {
		over = j.A
	}
	o := side{by: s}
	all := map[int]bool{}
	for k := range x.taken[s] {
		all[k] = true
	}
	for _, k := range x.cluster(over) {
		if !all[k] {
			all[k] = true
			o.takes = append(o.takes, k)
		}
	}
	var exact float64
	o.whole, exact = x.costOf(s, all)
	was := x.cost[s]
	o.more = Cost{o.whole.Blanks - was.Blanks, o.whole.Minutes - was.Minutes, o.whole.Area - was.Area}
	o.why = x.cant(s, all, o.whole.Area, exact)
	return o
}

// cluster is a piece and what hangs on it over joints that can't be blanked.
func (x *work) cluster(from int) []int {
	list, seen := []int{from}, map[int]bool{from: true}
	for i := 0; i < len(list); i++ {
		for _, k := range x.at.Of(list[i]) {
			j := &x.ask.Net.Joints[k]
			to := j.A + j.B - list[i]
			if j.Barred == "" || duty.OnlyKept(j.Barred) || seen[to] || x.part[to] != x.part[from] {
				continue
			}
			seen[to] = true
			list = append(list, to)
		}
	}
	sort.Ints(list)
	return list
}

// costOf is what a section's test costs more with nodes of other sections in it:
// half a cut's whole price for a blank on one side of a joint.
func (x *work) costOf(s int, taken map[int]bool) (c Cost, exact float64) {
	nodes := make([]int, 0, len(taken))
	for k := range taken {
		nodes = append(nodes, k)
	}
	sort.Ints(nodes)
	add := func(blanks int, minutes float64) { c.Blanks, c.Minutes = c.Blanks+blanks, c.Minutes+minutes }
	for _, k := range nodes {
		if n := &x.ask.Net.Nodes[k]; n.State == network.Tested {
			c.Area, exact = c.Area+n.Area, exact+n.Exact
		}
		for _, joint := range x.at.Of(k) {
			i := int(joint)
			j := &x.ask.Net.Joints[i]
			to, face := j.B, j.FaceA
			if to == k {
				to, face = j.A, j.FaceB
			}
			switch inside := taken[to] || x.part[to] == s; {
			case inside && x.fixed[i]:
				add(1, j.Minutes/2)
			case x.part[to] == s:
				add(-1, -j.Minutes/2) // the section's own falls away
			case inside:
			case x.part[to] < 0:
				add(1, x.ask.Prices.End(face, x.ask.Net.Item(k).Level))
			default:
				add(1, j.Minutes/2)
			}
		}
		for _, i := range x.ends[k] {
			add(1, x.ask.Net.OpenEnds[i].Minutes)
		}
	}
	return c, exact
}

// cant says why a section can't take in so much, or "".
func (x *work) cant(s int, taken map[int]bool, area, exact float64) string {
	sec := &x.ask.Sections[s]
	if sec.Status != "" && sec.Status != "failed" {
		return sec.ID + " is " + sec.Status
	}
	when := x.when[s]
	for k := range taken {
		when = when.With(x.ask.Net.Item(k))
	}
	if when.Empty() {
		return "the pieces are never up together: one is closed on " + when.ClosedText + ", another ready on " + when.ReadyText
	}
	low, high := divide.Held(sec.Area+area, sec.Exact+exact, x.ask.HoldBoth)
	if divide.InWindow(sec.Windows, low, high) {
		return ""
	}
	return x.outOfRange(s, low, high)
}

// outOfRange says how a larger section would be out of range.
func (x *work) outOfRange(s int, low, high float64) string {
	sec := &x.ask.Sections[s]
	least, most := math.Inf(1), 0.0
	for _, w := range sec.Windows {
		least, most = min(least, w.Low), max(most, w.High)
	}
	with := ""
	if len(x.taken[s]) > 0 {
		with = " with its other overlaps"
	}
	switch {
	case high > most && sec.Area > most:
		return sec.ID + " is over range as it is"
	case high > most:
		return sec.ID + with + " would be over range"
	case low < least:
		return sec.ID + with + " would still be under range"
	}
	return sec.ID + with + " would lie between two ranges"
}

// cheapestFirst are the joints that might be tested, in the order of what their
// cheaper side costs alone.
func (x *work) cheapestFirst(list []Joint) (order []int) {
	alone := make([]side, len(list))
	for k := range list {
		if list[k].Why == "" {
			order, alone[k] = append(order, k), x.cheaper(x.ask.Cuts[k])
		}
	}
	sort.SliceStable(order, func(a, b int) bool { return alone[order[a]].before(alone[order[b]]) })
	return order
}

// before puts what can be done before what can't, then the cheaper first.
func (o side) before(p side) bool {
	switch {
	case (o.why == "") != (p.why == ""):
		return o.why == ""
	case o.more.Minutes != p.more.Minutes:
		return o.more.Minutes < p.more.Minutes
	case o.more.Blanks != p.more.Blanks:
		return o.more.Blanks < p.more.Blanks
	}
	return o.more.Area < p.more.Area
}

// cheaper is the better of the two sides of a cut; where neither can be done it
// says why of both.
func (x *work) cheaper(c Cut) side {
	a, b := x.sideOf(c, 0), x.sideOf(c, 1)
	if a.why != "" && b.why != "" {
		if a.why != b.why {
			a.why += ", and " + b.why
		}
		return a
	}
	if b.before(a) {
		return b
	}
	return a
}

// choose tests a joint by its cheaper side, or says why it can't be.
func (x *work) choose(j *Joint) {
	o := x.cheaper(x.ask.Cuts[j.Cut])
	if j.Why = o.why; o.why != "" {
		return
	}
	j.By, j.Takes, j.Cost = o.by, slices.Clip(o.takes), o.more
	if x.taken[o.by] == nil {
		x.taken[o.by] = map[int]bool{}
	}
	for _, k := range o.takes {
		x.taken[o.by][k] = true
	}
	x.cost[o.by] = o.whole
}
