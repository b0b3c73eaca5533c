package partition

// knot is a set of rings that share joints, and the cluster (the top) from
// which it hangs. Clusters and joints have local numbers; the top is 0.
type knot struct {
	nodes []int32 // cluster of each local number
	edges []edge  // between local numbers
}

// hanging says how each cluster hangs in its tree once a root is chosen.
type hanging uint8

const (
	asRoot hanging = iota
	byJoint
	inKnot
)

// layout is the graph hung up by one cluster per tree: below every cluster its
// children by single joints and the knots whose top it is.
type layout struct {
	order []int32   // clusters, lower ones first, tree after tree
	ends  []int     // end of each tree in order; its last cluster is the root
	how   []hanging // of each cluster
	joint []int64   // price of the joint above, for byJoint
	kids  tails     // children by single joints
	knots []knot
	tops  tails // knots of each top
}

// tails are lists of numbers chained in two slices.
type tails struct{ first, next []int32 }

func newTails(heads, items int) tails {
	t := tails{make([]int32, heads), make([]int32, items)}
	for i := range t.first {
		t.first[i] = -1
	}
	return t
}

func (t *tails) add(head, item int32) {
	t.next[item] = t.first[head]
	t.first[head] = item
}

// climber walks the graph depth first and splits it into single joints and
// knots (the blocks of the graph): a joint whose lower side reaches no higher
// cluster by another way closes a block.
type climber struct {
	g       *graph
	l       *layout
	seen    []int32 // order of arrival, 0 unseen
	low     []int32 // earliest arrival reached from below
	above   []int32 // joint by which it was reached, -1 for a root
	at      []int32 // next joint to look at
	clock   int32
	path    []int32
	pending []int32 // joints not yet in a block
	topOf   []int32 // top of each knot
}

func hangUp(g *graph) *layout {
	n := len(g.weight)
	l := &layout{
		order: make([]int32, 0, n),
		how:   make([]hanging, n),
		joint: make([]int64, n),
		kids:  newTails(n, n),
	}
	c := &climber{g: g, l: l, seen: make([]int32, n), low: make([]int32, n), above: make([]int32, n), at: make([]int32, n)}
	copy(c.at, g.start)
	for r := range int32(n) {
		if c.seen[r] == 0 {
			c.climb(r)
			l.ends = append(l.ends, len(l.order))
		}
	}
	l.tops = newTails(n, len(l.knots))
	for i := len(l.knots) - 1; i >= 0; i-- {
		l.tops.add(c.topOf[i], int32(i))
	}
	return l
}

func (c *climber) arrive(v, by int32) {
	c.clock++
	c.seen[v], c.low[v], c.above[v] = c.clock, c.clock, by
	c.path = append(c.path, v)
}

func (c *climber) climb(root int32) {
	c.arrive(root, -1)
	for len(c.path) > 0 {
		v := c.path[len(c.path)-1]
		if c.at[v] == c.g.start[v+1] {
			c.leave(v)
			continue
		}
		e := c.g.near[c.at[v]]
		c.at[v]++
		if e == c.above[v] {
			continue
		}
		w := c.g.edges[e].other(v)
		switch {
		case c.seen[w] == 0:
			c.pending = append(c.pending, e)
			c.arrive(w, e)
		case c.seen[w] < c.seen[v]:
			c.pending = append(c.pending, e)
			c.low[v] = min(c.low[v], c.seen[w])
		}
	}
}

func (c *climber) leave(v int32) {
	c.path = c.path[:len(c.path)-1]
	c.l.order = append(c.l.order, v)
	e := c.above[v]
	if e < 0 {
		return
	}
	u := c.g.edges[e].other(v)
	c.low[u] = min(c.low[u], c.low[v])
	if c.low[v] < c.seen[u] {
		return
	}
	k := len(c.pending) - 1
	for c.pending[k] != e {
		k--
	}
	block := c.pending[k:]
	c.pending = c.pending[:k]
	if len(block) == 1 {
		c.l.how[v], c.l.joint[v] = byJoint, c.g.edges[e].price
		c.l.kids.add(u, v)
		return
	}
	c.addKnot(u, block)
}

func (c *climber) addKnot(top int32, block []int32) {
	k := knot{nodes: []int32{top}}
	local := map[int32]int32{top: 0}
	number := func(v int32) int32 {
		if i, ok := local[v]; ok {
			return i
		}
		local[v] = int32(len(k.nodes))
		k.nodes = append(k.nodes, v)
		c.l.how[v] = inKnot
		return local[v]
	}
	for _, i := range block {
		e := c.g.edges[i]
		a, b := number(e.a), number(e.b)
		k.edges = append(k.edges, edge{a, b, e.price})
	}
	c.l.knots = append(c.l.knots, k)
	c.topOf = append(c.topOf, top)
}
