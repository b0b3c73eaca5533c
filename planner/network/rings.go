package network

import (
	"fmt"
	"maps"
	"slices"
	"sort"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// Ring is a closed way through the network.
type Ring struct {
	Nodes []int // in order round the ring, beginning with the smallest
}

// addRings adds the joints that close rings, and names the rings.
func (n *Network) addRings() {
	items := n.Takeoff.Items
	order := make([]int, 0)
	for i := range items {
		if items[i].RingWith >= 0 && n.nodesOf[i][1] > 0 {
			order = append(order, i)
		}
	}
	sortItems(n, order)
	for _, i := range order {
		it := &items[i]
		j := Joint{A: n.nodesOf[it.RingWith][1] - 1, B: n.nodesOf[i][1] - 1, Ring: true}
		if e, ok := it.End(fittings.FarEnd); ok {
			j.FaceB = e.CrossSection
		}
		if e, ok := items[it.RingWith].End(it.RingEnd); ok && it.RingEnd != fittings.PlantEnd {
			j.FaceA = e.CrossSection
		}
		n.use(i, fittings.FarEnd)
		n.use(it.RingWith, it.RingEnd)
		n.finishJoint(&j, &takeoff.Item{Joint: it.Joint, Shared: it.Shared, Piece: it.Piece, Rare: it.Rare})
		n.Joints = append(n.Joints, j)
	}
	n.findRings()
}

// findRings finds a basis of the rings: one for every link beyond those of a tree
// that reaches all, breadth first from the smallest node, so that rings are short
// and the same every time. Only the nodes on the ways between the ends of the
// closing joints are looked at: the rest is trees.
func (n *Network) findRings() {
	links := map[int][]int{}
	link := func(a, b int) {
		if a != b && !slices.Contains(links[a], b) {
			links[a], links[b] = append(links[a], b), append(links[b], a)
		}
	}
	for k := range n.Joints {
		j := &n.Joints[k]
		if !j.Ring {
			continue
		}
		path := n.Path(j.A, j.B)
		for x := 1; x < len(path); x++ {
			link(path[x-1], path[x])
		}
		link(j.A, j.B)
	}
	nodes := slices.Sorted(maps.Keys(links))
	up := map[int]int{}
	for _, root := range nodes {
		if _, seen := up[root]; !seen {
			up[root] = -1
			reach(root, links, up)
		}
	}
	for _, a := range nodes {
		for _, b := range links[a] {
			if a < b && up[a] != b && up[b] != a {
				n.Rings = append(n.Rings, Ring{wayRound(a, b, up)}.turned())
			}
		}
	}
	sort.Slice(n.Rings, func(a, b int) bool { return lessInts(n.Rings[a].Nodes, n.Rings[b].Nodes) })
	for _, r := range n.Rings {
		n.Notes = append(n.Notes, "ring: "+n.RingText(r))
	}
}

// reach fills in from where each node is reached, breadth first from root.
func reach(root int, links map[int][]int, up map[int]int) {
	for list := []int{root}; len(list) > 0; list = list[1:] {
		next := links[list[0]]
		slices.Sort(next)
		for _, v := range next {
			if _, seen := up[v]; !seen {
				up[v] = list[0]
				list = append(list, v)
			}
		}
	}
}

// wayRound is the way from a to b over where both are reached from.
func wayRound(a, b int, up map[int]int) []int {
	at := map[int]int{}
	var left []int
	for v := a; v >= 0; v = up[v] {
		at[v] = len(left)
		left = append(left, v)
	}
	var right []int
	for v := b; ; v = up[v] {
		if k, both := at[v]; both {
			slices.Reverse(right)
			return append(left[:k+1], right...)
		}
		right = append(right, v)
	}
}

// turned puts a ring in its one canonical order.
func (r Ring) turned() Ring {
	best := 0
	for i, v := range r.Nodes {
		if v < r.Nodes[best] {
			best = i
		}
	}
	m := len(r.Nodes)
	at := func(i int) int { return r.Nodes[((best+i)%m+m)%m] }
	step := 1
	if m > 2 && at(-1) < at(1) {
		step = -1
	}
	out := make([]int, m)
	for i := range out {
		out[i] = at(i * step)
	}
	return Ring{out}
}

func lessInts(a, b []int) bool {
	for i := 0; i < len(a) && i < len(b); i++ {
		if a[i] != b[i] {
			return a[i] < b[i]
		}
	}
	return len(a) < len(b)
}

// RingText names a ring by its rows: "T1 > D4 > B2 > T1".
func (n *Network) RingText(r Ring) string {
	var names []string
	for _, v := range r.Nodes {
		if name := n.Item(v).Name(); len(names) == 0 || names[len(names)-1] != name {
			names = append(names, name)
		}
	}
	const most = 12
	if len(names) > most {
		names = append(append(names[:most-1:most-1], fmt.Sprintf("(%d more)", len(names)-most)), names[len(names)-1])
	}
	return strings.Join(append(names, names[0]), " > ")
}

// Path is the way from node a to node b through the tree, both included, or
// nil if they aren't in the same tree.
func (n *Network) Path(a, b int) []int {
	var left, right []int
	for a != b {
		// Parents have smaller numbers than their children, so the larger of
		// the two is never an ancestor of the other.
		if a > b {
			left = append(left, a)
			a = n.parent(a)
		} else {
			right = append(right, b)
			b = n.parent(b)
		}
		if a < 0 || b < 0 {
			return nil
		}
	}
	path := append(left, a)
	for i := len(right) - 1; i >= 0; i-- {
		path = append(path, right[i])
	}
	return path
}

// parent is the node towards the plant, -1 at a plant end.
func (n *Network) parent(v int) int {
	if up := n.Nodes[v].Up; up >= 0 {
		return n.Joints[up].A
	}
	return -1
}
