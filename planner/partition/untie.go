package partition

import (
	"cmp"
	"slices"
)

// none is dearer than any answer.
var none = cost{under: far}

// knotWeight is the most that a knot can add to its top.
func (s *solver) knotWeight(k *knot) int64 {
	w := int64(0)
	for _, v := range k.nodes[1:] {
		w += heaviest(s.lists[v])
	}
	return w
}

// untie merges a knot into the list of its top: the best of all ways of
// opening it, or of those that were tried when they are too many.
func (s *solver) untie(k *knot, at site) {
	u := &untying{s: s, at: at, top: slices.Clone(s.list)}
	u.opening = opening{knot: k, s: s, mark: make([]uint8, len(k.edges))}
	ways := 0
	most := min(s.solves-s.solved, 1+int(max(s.limit-s.work, 0)/int64(2*len(k.nodes))))
	u.each(func() bool {
		ways++
		return ways <= most
	})
	if ways > most {
		s.proved = false
		u.search((most + 1) / 2) // leave some for other knots
	} else if !u.each(func() bool { u.solve(); return s.work < s.limit }) {
		s.proved = false
	}
	s.list = append(s.list[:0], u.best...)
	for _, v := range k.nodes[1:] {
		s.drop(v)
	}
}

// untying gathers the lists of the ways of opening one knot.
type untying struct {
	opening
	s      *solver
	at     site
	top    []state // list of the top before the knot
	best   []state // of all ways so far
	bought []bool  // in a search: joint left out because its ring is held whole
}

// solve works up the tree that the opening leaves, joins the outcome to the
// best and returns the least cost of closing the top at once.
func (u *untying) solve() cost {
	s, n := u.s, len(u.nodes)
	s.solved++
	before := s.recs.n
	lists := make([][]state, n)
	shuts := make([]shut, n)
	order, above := u.tree()
	kids := make([][]int32, n)
	for i := n - 1; i >= 0; i-- {
		v := order[i]
		at := site{how: inKnot}
		s.list = append(s.list[:0], s.lists[u.nodes[v]]...)
		switch {
		case v == 0:
			at = u.at
			s.list = append(s.list[:0], u.top...)
		case u.mark[above[v]] == free:
			at = site{how: byJoint, joint: u.edges[above[v]].price}
		}
		for _, k := range kids[v] {
			at.rest += heaviest(lists[k])
		}
		s.sortKids(kids[v], lists)
		for _, k := range kids[v] {
			at.rest -= heaviest(lists[k])
			s.merge(lists[k], shuts[k], at)
		}
		if v == 0 {
			break
		}
		if at.how == byJoint {
			shuts[v] = s.shut(s.list, at.joint)
		}
		lists[v] = slices.Clone(s.list)
		p := u.edges[above[v]].other(v)
		kids[p] = append(kids[p], v)
	}
	return u.gather(before)
}

// tree lists the nodes of the knot from the top down and the joint above each
// (-1 for the top).
func (u *untying) tree() (order []int32, above []int) {
	near := u.near()
	above = make([]int, len(u.nodes))
	for i := range above {
		above[i] = -1
	}
	order = []int32{0}
	for i := 0; i < len(order); i++ {
		v := order[i]
		for _, e := range near[v] {
			if w := u.edges[e].other(v); w != 0 && above[w] < 0 {
				above[w] = e
				order = append(order, w)
			}
		}
	}
	return order, above
}

// gather joins the list just made at the top to the best of all ways so far.
func (u *untying) gather(before int32) cost {
	s := u.s
	paid := cost{price: u.paid}
	least := none
	s.clear()
	for _, a := range u.best {
		s.options = append(s.options, option{w: a.w, c: a.c, rec: record{kid: a.rec}})
	}
	s.ends = append(s.ends, len(s.options))
	for _, a := range s.list {
		c := a.c.plus(paid)
		s.options = append(s.options, option{w: a.w, c: c, rec: record{kid: a.rec}})
		if c = c.plus(s.missed(a.w)); c.less(least) {
			least = c
		}
	}
	s.ends = append(s.ends, len(s.options))
	s.prune(u.at)
	u.best = u.best[:0]
	used := false
	for _, o := range s.options {
		u.best = append(u.best, state{w: o.w, c: o.c, rec: o.rec.kid})
		used = used || o.rec.kid >= before
	}
	if !used {
		s.recs.n = before
	}
	return least
}

// search tries one ring at a time: with the other rings opened as they are, it
// moves the cut of one ring to each of its joints, holds the ring whole, and
// stays with the best, until nothing improves. It starts from several openings
// and stops when the solves are used up.
func (u *untying) search(most int) {
	const starts = 8
	left := most
	for i := range starts {
		u.start(i)
		best := u.try(&left)
		for improved := true; improved; {
			improved = false
			for d := range u.edges {
				if u.mark[d] == gone && !u.bought[d] {
					next := u.move(d, best, &left)
					improved = improved || next.less(best)
					best = next
				}
			}
		}
	}
}

// try solves the knot as it is opened now, if that is still allowed.
func (u *untying) try(left *int) cost {
	if len(u.best) > 0 && (*left <= 0 || u.s.work >= u.s.limit) {
		return none
	}
	*left--
	return u.solve()
}

// start opens the knot at the cheapest joints (start 0), or keeps the joints
// that come first when counting from another one (the other starts).
func (u *untying) start(i int) {
	n := len(u.edges)
	order := make([]int, n)
	for j := range order {
		order[j] = (j + i*n/8) % n
	}
	if i == 0 {
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(u.edges[b].price, u.edges[a].price) })
	}
	u.bought = make([]bool, n)
	u.paid = 0
	set := newSets(len(u.nodes))
	for _, e := range order {
		a, b := u.edges[e].a, u.edges[e].b
		u.mark[e] = free
		if set.head(a) == set.head(b) {
			u.mark[e] = gone
			u.paid += u.edges[e].price
		}
		set.join(a, b)
	}
}

// move puts the cut d of a ring where it costs least.
func (u *untying) move(d int, best cost, left *int) cost {
	u.mark[d] = free
	u.paid -= u.edges[d].price
	ring, to := u.ring(), d
	for _, e := range ring {
		if e == d {
			continue
		}
		u.mark[e] = gone
		u.paid += u.edges[e].price
		if c := u.try(left); c.less(best) {
			best, to = c, e
		}
		u.mark[e] = free
		u.paid -= u.edges[e].price
	}
	for _, e := range ring {
		u.mark[e] = held
	}
	u.mark[d] = gone
	if !u.tooHeavy() {
		if c := u.try(left); c.less(best) {
			u.bought[d] = true
			return c
		}
	}
	for _, e := range ring {
		u.mark[e] = free
	}
	u.mark[to] = gone
	u.paid += u.edges[to].price
	return best
}
