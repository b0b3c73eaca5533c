package partition

import "slices"

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
		u.search(most)
	} else if !u.each(func() bool { u.solve(); return s.work < s.limit }) {
		s.proved = false
	}
	s.list = append(s.list[:0], u.best...)
	for _, v := range k.nodes[1:] {
		s.lists[v] = nil
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
	before := len(s.recs)
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
// (-1 for the top). With rings still closed it is one tree of many.
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
func (u *untying) gather(before int) cost {
	s := u.s
	paid := cost{price: u.paid}
	least := none
	s.options = s.options[:0]
	for _, a := range u.best {
		s.options = append(s.options, option{a.w, a.c, record{kid: a.rec}})
	}
	for _, a := range s.list {
		c := a.c.plus(paid)
		s.options = append(s.options, option{a.w, c, record{kid: a.rec}})
		if c = c.plus(s.missed(a.w)); c.less(least) {
			least = c
		}
	}
	s.prune(u.at)
	u.best = u.best[:0]
	used := false
	for _, o := range s.options {
		u.best = append(u.best, state{o.w, o.c, o.rec.kid})
		used = used || int(o.rec.kid) >= before
	}
	if !used {
		s.recs = s.recs[:before]
	}
	return least
}

// search tries one ring at a time: with the other rings opened as they are, it
// moves the cut of one ring to each of its joints, holds the ring whole, and
// stays with the best, until nothing improves or the solves are used up.
func (u *untying) search(most int) {
	u.cutLoose()
	left := most - 1
	best := u.solve()
	for improved := true; improved; {
		improved = false
		for d := range u.edges {
			if u.mark[d] != gone || u.bought[d] {
				continue
			}
			next := u.move(d, best, &left)
			improved = improved || next.less(best)
			best = next
		}
		if left <= 0 || u.s.work >= u.s.limit {
			return
		}
	}
}

// cutLoose cuts every joint that a search from the top finds to close a ring.
func (u *untying) cutLoose() {
	u.bought = make([]bool, len(u.edges))
	_, above := u.tree()
	for e := range u.edges {
		u.mark[e] = gone
		u.paid += u.edges[e].price
	}
	for _, e := range above[1:] {
		u.mark[e] = free
		u.paid -= u.edges[e].price
	}
}

// move puts the cut d of a ring where it costs least.
func (u *untying) move(d int, best cost, left *int) cost {
	try := func() cost {
		if *left <= 0 || u.s.work >= u.s.limit {
			return none
		}
		*left--
		return u.solve()
	}
	u.mark[d] = free
	u.paid -= u.edges[d].price
	ring, to := u.ring(), d
	for _, e := range ring {
		if e == d {
			continue
		}
		u.mark[e] = gone
		u.paid += u.edges[e].price
		if c := try(); c.less(best) {
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
		if c := try(); c.less(best) {
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
