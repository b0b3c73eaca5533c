package blanking

import "sort"

// edge is two tests that share joints, and how many blanks are turned between
// them if they follow each other.
type edge struct{ a, b, n int }

// paths finds an order that turns as many blanks as it can, and a number that no
// order is above. In an order each test has at most two neighbours, so the turned
// joints form paths. Where the tests of a visit and the joints that they share
// hang together as a tree the paths are the best (by the two largest gains of
// every test, from the leaves inward); else they are taken by size, and the bound
// is the tree's, with all that closes its rings added.
func (m *model) paths() (order []int, most int) {
	inside, across := m.edges()
	next := make([][]int, len(m.counts)) // neighbours along a path
	for _, list := range inside {
		most += m.join(list, next)
	}
	groups := m.layOut(next)
	for v := range groups {
		best := 0
		for _, e := range across[v] {
			best = max(best, e.n)
		}
		most += best
	}
	for _, list := range chained(groups, across, next) {
		order = append(order, list...)
	}
	return order, most
}

// edges are the pairs that share joints, by visit, and those between a visit and
// the next.
func (m *model) edges() (inside, across [][]edge) {
	if len(m.group) == 0 {
		return nil, nil
	}
	groups := m.group[len(m.group)-1] + 1
	inside, across = make([][]edge, groups), make([][]edge, groups)
	for a, list := range m.links {
		for k := 0; k < len(list); {
			e := edge{a, list[k].to, 0}
			for ; k < len(list) && list[k].to == e.b; k++ {
				e.n += list[k].n
			}
			switch g := m.group[a]; {
			case e.b < a:
			case m.group[e.b] == g:
				inside[g] = append(inside[g], e)
			case m.group[e.b] == g+1:
				across[g] = append(across[g], e)
			}
		}
	}
	return inside, across
}

// join chooses edges of one visit for its paths and gives a bound on what they
// turn.
func (m *model) join(edges []edge, next [][]int) (most int) {
	sort.SliceStable(edges, func(i, j int) bool { return edges[i].n > edges[j].n })
	up := newSets(len(m.counts))
	var tree []edge
	ringed := map[int]bool{}
	for _, e := range edges { // a spanning tree of the largest
		if up.join(e.a, e.b) {
			tree = append(tree, e)
		} else {
			most += e.n
			ringed[e.a] = true
		}
	}
	rings := map[int]bool{}
	for a := range ringed {
		rings[up.find(a)] = true
	}
	chosen := bestOfTree(len(m.counts), tree)
	for _, e := range chosen {
		most += e.n
	}
	if len(rings) > 0 {
		kept := chosen[:0]
		for _, e := range chosen {
			if !rings[up.find(e.a)] {
				kept = append(kept, e)
			}
		}
		chosen = append(kept, greedy(edges, len(m.counts), func(e edge) bool { return rings[up.find(e.a)] })...)
	}
	for _, e := range chosen {
		next[e.a], next[e.b] = append(next[e.a], e.b), append(next[e.b], e.a)
	}
	return most
}

// greedy takes edges in their order while they form paths.
func greedy(edges []edge, n int, of func(edge) bool) (out []edge) {
	up, used := newSets(n), make([]int, n)
	for _, e := range edges {
		if of(e) && used[e.a] < 2 && used[e.b] < 2 && up.join(e.a, e.b) {
			used[e.a]++
			used[e.b]++
			out = append(out, e)
		}
	}
	return out
}

// arm is a test in a tree: the edge to the one above it, and the edges below it.
type arm struct {
	up    int // the test above, -1: none
	n     int // blanks turned with it
	below []int
	free  int // most turned below it, if it isn't joined to the one above
	held  int // if it is
}

// rooted hangs a forest up by the first test of each tree: its arms, and its tests
// with those above before those below.
func rooted(n int, tree []edge) (arms []arm, order []int) {
	by := make([][]edge, n)
	for _, e := range tree {
		by[e.a] = append(by[e.a], e)
		by[e.b] = append(by[e.b], edge{e.b, e.a, e.n})
	}
	arms, order = make([]arm, n), make([]int, 0, n)
	seen := make([]bool, n)
	for root := range n {
		if seen[root] || len(by[root]) == 0 {
			continue
		}
		seen[root], arms[root].up = true, -1
		order = append(order, root)
		for k := len(order) - 1; k < len(order); k++ {
			v := order[k]
			for _, e := range by[v] {
				if !seen[e.b] {
					seen[e.b], arms[e.b].up, arms[e.b].n = true, v, e.n
					arms[v].below = append(arms[v].below, e.b)
					order = append(order, e.b)
				}
			}
		}
	}
	return arms, order
}

// bestOfTree finds the edges of a forest that turn the most, at most two at each
// test.
func bestOfTree(n int, tree []edge) (out []edge) {
	arms, order := rooted(n, tree)
	gain := func(c int) int { return arms[c].n + arms[c].held - arms[c].free }
	for k := len(order) - 1; k >= 0; k-- {
		a := &arms[order[k]]
		sort.Ints(a.below)
		sort.SliceStable(a.below, func(i, j int) bool { return gain(a.below[i]) > gain(a.below[j]) })
		for i, c := range a.below {
			g := max(0, gain(c))
			a.free += arms[c].free
			a.held += arms[c].free
			if i < 2 {
				a.free += g
			}
			if i < 1 {
				a.held += g
			}
		}
	}
	joined := make([]bool, n)
	for _, v := range order {
		room := 2
		if joined[v] {
			room = 1
		}
		for i, c := range arms[v].below {
			if i < room && gain(c) > 0 {
				joined[c] = true
				out = append(out, edge{v, c, arms[c].n})
			}
		}
	}
	return out
}

// layOut lists the paths of every visit, by their first tests.
func (m *model) layOut(next [][]int) [][][]int {
	if len(m.group) == 0 {
		return nil
	}
	groups := make([][][]int, m.group[len(m.group)-1]+1)
	seen := make([]bool, len(next))
	for k := range next {
		if seen[k] {
			continue
		}
		path := walk(k, next)
		if len(next[k]) == 2 { // from its middle to an end, and back from there
			path = walk(path[len(path)-1], next)
		}
		if path[0] > path[len(path)-1] {
			turnRound(path)
		}
		for _, v := range path {
			seen[v] = true
		}
		groups[m.group[k]] = append(groups[m.group[k]], path)
	}
	return groups
}

// walk goes from a test along its path to an end.
func walk(from int, next [][]int) []int {
	path := []int{from}
	for prev := -1; ; {
		v := path[len(path)-1]
		to := -1
		for _, w := range next[v] {
			if w != prev {
				to = w
				break
			}
		}
		if to < 0 {
			return path
		}
		prev, path = v, append(path, to)
	}
}

func turnRound(path []int) {
	for i, j := 0, len(path)-1; i < j; i, j = i+1, j-1 {
		path[i], path[j] = path[j], path[i]
	}
}
