package partition

// A ring that isn't wholly in one part is cut at two joints or more. A knot is
// solved over every way of opening it: each way makes some joints gone (cut
// and paid for, or left out because their ends are held together), holds some,
// and leaves the rest free in a tree.
const (
	free uint8 = iota // the tree decides
	held              // not cut
	gone
)

// opening is a knot being opened.
type opening struct {
	*knot
	s    *solver
	mark []uint8 // of each joint
	paid int64   // price of the joints that are gone and cut
}

// each calls yield with every way of opening the knot that needs looking at,
// until yield returns false. It finds a ring with free joints f1..fk and tries:
// f1 cut; f1 held and f2 cut; ... ; all held. Cutting only fk is never better
// than holding it.
func (o *opening) each(yield func() bool) bool {
	ring := o.ring()
	if ring == nil {
		return yield()
	}
	more, done := true, false
	for i, e := range ring {
		o.mark[e] = gone
		if i == len(ring)-1 || o.together(e) {
			more, done = o.each(yield), true
		} else {
			o.paid += o.edges[e].price
			more = o.each(yield)
			o.paid -= o.edges[e].price
			o.mark[e] = held
			done = o.tooHeavy()
		}
		if done || !more {
			break
		}
	}
	for _, e := range ring {
		o.mark[e] = free
	}
	return more
}

// ring finds a ring among the joints that aren't gone and returns its free
// joints, in order round the ring from a heavy place; nil if there is no ring.
func (o *opening) ring() []int {
	n := len(o.nodes)
	near := o.near()
	by := make([]int, n)
	from := make([]int32, n)
	depth := make([]int, n)
	queue := []int32{0}
	depth[0], by[0] = 1, -1
	for i := 0; i < len(queue); i++ {
		v := queue[i]
		for _, e := range near[v] {
			w := o.edges[e].other(v)
			if e == by[v] {
				continue
			}
			if depth[w] > 0 {
				return o.around(e, by, from, depth)
			}
			depth[w], by[w], from[w] = depth[v]+1, e, v
			queue = append(queue, w)
		}
	}
	return nil
}

// near lists the joints that aren't gone at each node.
func (o *opening) near() [][]int {
	near := make([][]int, len(o.nodes))
	for i, e := range o.edges {
		if o.mark[i] != gone {
			near[e.a] = append(near[e.a], i)
			near[e.b] = append(near[e.b], i)
		}
	}
	return near
}

// around follows the ring that joint e closes.
func (o *opening) around(e int, by []int, from []int32, depth []int) []int {
	a, b := o.edges[e].a, o.edges[e].b
	var left, right []int
	for a != b {
		if depth[a] >= depth[b] {
			left = append(left, by[a])
			a = from[a]
		} else {
			right = append(right, by[b])
			b = from[b]
		}
	}
	ring := append([]int{e}, right...)
	for i := len(left) - 1; i >= 0; i-- {
		ring = append(ring, left[i])
	}
	out := ring[:0]
	for _, e := range ring {
		if o.mark[e] == free {
			out = append(out, e)
		}
	}
	return out
}

// holding gathers the nodes that held joints keep together.
func (o *opening) holding() sets {
	set := newSets(len(o.nodes))
	for i, e := range o.edges {
		if o.mark[i] == held {
			set.join(e.a, e.b)
		}
	}
	return set
}

// together reports whether the ends of joint e are held together.
func (o *opening) together(e int) bool {
	set := o.holding()
	return set.head(o.edges[e].a) == set.head(o.edges[e].b)
}

// tooHeavy reports whether some nodes held together exceed the greatest High.
func (o *opening) tooHeavy() bool {
	set := o.holding()
	sum := make([]int64, len(o.nodes))
	for i, v := range o.nodes {
		h := set.head(int32(i))
		if sum[h] += o.s.g.weight[v]; sum[h] > o.s.high {
			return true
		}
	}
	return false
}
