package partition

import (
	"cmp"
	"slices"
)

// edge is a joint between two clusters, or several side by side: they are cut
// together, so their prices are added.
type edge struct {
	a, b  int32
	price int64
}

func (e edge) other(v int32) int32 { return e.a + e.b - v }

// graph holds the clusters (nodes held together by banned joints) and the
// joints between them. A cluster above the greatest High has no joints left:
// they are all cut, and their price is in forced.
type graph struct {
	of     []int32 // cluster of each node
	weight []int64 // of each cluster
	over   []bool  // cluster above the greatest High
	edges  []edge
	start  []int32 // joints of cluster v: near[start[v]:start[v+1]]
	near   []int32
	forced int64 // price of the joints of clusters that are over
	links  bool

	up      []up  // when each cluster is there; nil: always
	moments int32 // one more than there are
}

func newGraph(p Problem, high int64) *graph {
	g := &graph{links: len(p.Links) > 0}
	g.cluster(p)
	g.addTimes(p)
	g.over = make([]bool, len(g.weight))
	for c, w := range g.weight {
		g.over[c] = w > high
	}
	g.addEdges(p)
	g.index()
	return g
}

// cluster joins nodes across banned joints; clusters are numbered in order of
// their smallest node.
func (g *graph) cluster(p Problem) {
	n := len(p.Parent)
	set := newSets(n)
	for v, u := range p.Parent {
		if u >= 0 && p.Price[v] == Banned {
			set.join(int32(v), int32(u))
		}
	}
	for _, l := range p.Links {
		if l.Price == Banned {
			set.join(int32(l.A), int32(l.B))
		}
	}
	g.of = make([]int32, n)
	number := make([]int32, n) // 1 + cluster of a set's head
	for v := range n {
		h := set.head(int32(v))
		if number[h] == 0 {
			g.weight = append(g.weight, 0)
			number[h] = int32(len(g.weight))
		}
		g.of[v] = number[h] - 1
		g.weight[g.of[v]] += p.Weight[v]
	}
}

func (g *graph) addEdges(p Problem) {
	add := func(u, v int, price int64) {
		a, b := g.of[u], g.of[v]
		switch {
		case a == b: // held together anyway
		case g.over[a] || g.over[b]:
			g.forced += price
		default:
			g.edges = append(g.edges, edge{min(a, b), max(a, b), price})
		}
	}
	for v, u := range p.Parent {
		if u >= 0 {
			add(u, v, p.Price[v])
		}
	}
	for _, l := range p.Links {
		add(l.A, l.B, l.Price)
	}
	if !g.links {
		return // clusters of a forest make a forest
	}
	slices.SortFunc(g.edges, func(x, y edge) int {
		return cmp.Or(cmp.Compare(x.a, y.a), cmp.Compare(x.b, y.b))
	})
	out := g.edges[:0]
	for _, e := range g.edges {
		if k := len(out); k > 0 && out[k-1].a == e.a && out[k-1].b == e.b {
			out[k-1].price += e.price
			continue
		}
		out = append(out, e)
	}
	g.edges = out
}

func (g *graph) index() {
	g.start = make([]int32, len(g.weight)+1)
	for _, e := range g.edges {
		g.start[e.a+1]++
		g.start[e.b+1]++
	}
	for v := range g.weight {
		g.start[v+1] += g.start[v]
	}
	g.near = make([]int32, 2*len(g.edges))
	fill := slices.Clone(g.start)
	for i, e := range g.edges {
		g.near[fill[e.a]] = int32(i)
		fill[e.a]++
		g.near[fill[e.b]] = int32(i)
		fill[e.b]++
	}
}

// sets are disjoint sets of small numbers.
type sets []int32

func newSets(n int) sets {
	s := make(sets, n)
	for i := range s {
		s[i] = int32(i)
	}
	return s
}

func (s sets) head(v int32) int32 {
	for s[v] != v {
		s[v] = s[s[v]]
		v = s[v]
	}
	return v
}

func (s sets) join(a, b int32) { s[s.head(a)] = s.head(b) }
