package partition

import (
	"cmp"
	"slices"
)

// DefaultWorkLimit is the number of combinations of weights examined before
// the lists of weights are thinned: 2 to 4 seconds on one thread of 2025, and
// three times what the hardest system of 100,000 pieces met so far took to prove.
const DefaultWorkLimit int64 = 60_000_000

const (
	defaultRingSolves = 20_000
	thinTo            = 16 // states left in a thinned list
)

// solver works up from the leaves. At each cluster it keeps a list of the
// weights its open part can have, with the least cost of each.
type solver struct {
	g       *graph
	l       *layout
	windows []Window
	high    int64
	test    int64 // price of a part; for aim Tests more than all cuts together

	lists  [][]state // of finished clusters not yet merged into another
	shuts  []shut
	recs   ledger
	list   []state // of the cluster at work
	kids   []int32
	roots  []int32 // record of each tree's best answer
	exact  []bool  // of each tree: proved best
	proved bool    // of the tree at work

	options []option // in runs, each in ascending order
	ends    []int    // where each run ends
	other   []option // room for joining the runs
	kid     []state  // room for a child's list
	gains   gains
	views   []view // where nodes come and go
	viewOf  map[up]int
	rest    []up      // by child of the cluster at work
	free    [][]state // lists no longer wanted, to be used again

	work, limit int64 // done, and allowed to the end of the tree at work
	solves      int   // ways of opening rings still allowed
	solved      int
}

func newSolver(p Problem, g *graph, l *layout, windows []Window) *solver {
	s := &solver{
		g: g, l: l, windows: windows, high: windows[len(windows)-1].High,
		lists: make([][]state, len(g.weight)),
		shuts: make([]shut, len(g.weight)),
		test:  p.TestPrice,
		recs:  newLedger(len(g.weight)),
	}
	if g.up != nil {
		s.viewOf = map[up]int{}
	}
	if p.Aim == Tests {
		s.test = 1 + g.forced
		for _, e := range g.edges {
			s.test += e.price
		}
	}
	s.solves = cmp.Or(p.MaxRingSolves, defaultRingSolves)
	s.limit = min(cmp.Or(p.WorkLimit, DefaultWorkLimit), 1<<30) // records are numbered in 32 bits
	return s
}

// run solves the trees one after another. Each may use its share of the work
// by its number of clusters, and what the earlier ones left over.
func (s *solver) run() {
	total, begin := s.limit, 0
	for _, end := range s.l.ends {
		share := float64(end-begin) / float64(len(s.l.order)-begin)
		s.limit = s.work + int64(share*float64(max(total-s.work, 0)))
		s.proved = true
		for _, v := range s.l.order[begin:end] {
			s.cluster(v)
		}
		root := s.l.order[end-1]
		s.roots = append(s.roots, s.shuts[root].rec)
		s.exact = append(s.exact, s.proved)
		begin = end
	}
}

// cluster makes the list of cluster v from those of the clusters below it.
func (s *solver) cluster(v int32) {
	s.list = append(s.list[:0], state{w: s.g.weight[v], rec: s.recs.add(record{-1, v}), up: s.upOf(v)})
	s.kids = s.kids[:0]
	at := site{joint: s.l.joint[v], how: s.l.how[v]}
	for k := s.l.kids.first[v]; k >= 0; k = s.l.kids.next[k] {
		s.kids = append(s.kids, k)
		at.rest += heaviest(s.lists[k])
	}
	for k := s.l.tops.first[v]; k >= 0; k = s.l.tops.next[k] {
		at.rest += s.knotWeight(&s.l.knots[k])
	}
	s.sortKids(s.kids, s.lists)
	if s.timed() {
		s.restUp()
	}
	for i, k := range s.kids {
		if at.rest -= heaviest(s.lists[k]); s.timed() {
			at.up = s.rest[i]
		}
		s.merge(s.lists[k], s.shuts[k], at)
		s.drop(k)
	}
	for k := s.l.tops.first[v]; k >= 0; k = s.l.tops.next[k] {
		at.rest -= s.knotWeight(&s.l.knots[k])
		s.untie(&s.l.knots[k], at)
	}
	if at.how != inKnot {
		s.shuts[v] = s.shut(s.list, at.joint)
	}
	if at.how != asRoot {
		s.lists[v] = s.copyOf(s.list)
	}
}

// copyOf copies a list into room that is no longer wanted, if the latest fits.
func (s *solver) copyOf(list []state) []state {
	if n := len(s.free); n > 0 && cap(s.free[n-1]) >= len(list) {
		room := s.free[n-1]
		s.free = s.free[:n-1]
		return append(room[:0], list...)
	}
	return slices.Clone(list)
}

// drop gives up the list of cluster v.
func (s *solver) drop(v int32) {
	s.free = append(s.free, s.lists[v])
	s.lists[v] = nil
}

// sortKids puts the child with the heaviest list first: what is left to merge
// then weighs least, and closing is in sight soonest.
func (s *solver) sortKids(kids []int32, lists [][]state) {
	slices.SortFunc(kids, func(a, b int32) int {
		return cmp.Or(cmp.Compare(heaviest(lists[b]), heaviest(lists[a])), cmp.Compare(a, b))
	})
}

// merge joins a child's list to the list at work: the child is cut off closed,
// where its joint may be cut, or kept.
func (s *solver) merge(kid []state, off shut, at site) {
	kid = s.afford(kid)
	s.kid = append(s.kid[:0], kid...)
	if off.ok {
		cut := state{c: off.c, rec: ^off.rec}
		i, _ := slices.BinarySearchFunc(s.kid, cut, dearer)
		s.kid = slices.Insert(s.kid, i, cut)
	}
	s.clear()
	if len(s.list) >= len(s.kid) {
		for _, b := range s.kid {
			for _, a := range s.list {
				s.offer(a, b)
			}
			s.ends = append(s.ends, len(s.options))
		}
	} else {
		for _, a := range s.list {
			for _, b := range s.kid {
				s.offer(a, b)
			}
			s.ends = append(s.ends, len(s.options))
		}
	}
	s.prune(at)
	s.list = s.list[:0]
	for _, o := range s.options {
		s.list = append(s.list, state{o.w, o.c, s.recs.add(o.rec), o.up})
	}
}

func (s *solver) clear() { s.options, s.ends = s.options[:0], s.ends[:0] }

// offer adds the option of state a with b of a child, unless it is too heavy or
// the two are never there at one time.
func (s *solver) offer(a, b state) {
	if u := a.up.with(b.up); a.w+b.w <= s.high && u.at(s.g.moments) || b.rec < 0 {
		s.options = append(s.options, option{a.w + b.w, a.c.plus(b.c), record{a.rec, b.rec}, u})
	}
}

// afford counts the work of a merge. Past the limit it thins both lists first.
func (s *solver) afford(kid []state) []state {
	need := int64(len(s.list)) * int64(len(kid)+1)
	if s.work+need <= s.limit {
		s.work += need
		return kid
	}
	if len(s.list) > thinTo || len(kid) > thinTo {
		s.proved = false
		s.list = thin(s.list)
		kid = thin(slices.Clone(kid))
	}
	return kid
}

// thin keeps the cheapest states of a list, some evenly spread over the rest
// and the lightest, so that some answer stays possible.
func thin(list []state) []state {
	if len(list) <= thinTo {
		return list
	}
	const cheap, spread = thinTo / 2, thinTo/2 - 1
	lightest := 0
	for i, a := range list {
		if a.w < list[lightest].w {
			lightest = i
		}
	}
	kept, next := 0, 0
	for i, a := range list {
		even := i >= cheap+next*(len(list)-cheap)/spread
		if even {
			next++
		}
		if i < cheap || even || i == lightest {
			list[kept] = a
			kept++
		}
	}
	return list[:kept]
}

// shut closes the part of a list in the cheapest way.
func (s *solver) shut(list []state, joint int64) shut {
	best := shut{}
	for _, a := range list {
		c := a.c.plus(s.missed(a.w))
		if !best.ok || c.less(best.c) {
			best = shut{c, a.rec, true}
		}
	}
	best.c.price += s.test + joint
	return best
}

func heaviest(list []state) int64 {
	w := int64(0)
	for _, a := range list {
		w = max(w, a.w)
	}
	return w
}
