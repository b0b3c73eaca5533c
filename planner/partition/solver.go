package partition

import (
	"cmp"
	"slices"
)

// DefaultWorkLimit is the number of combinations of weights examined before
// the lists of weights are thinned, some tens of seconds on one thread.
const DefaultWorkLimit int64 = 200_000_000

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
	recs   []record
	list   []state // of the cluster at work
	kids   []int32
	roots  []int32 // record of each tree's best answer
	exact  []bool  // of each tree: proved best
	proved bool    // of the tree at work

	options []option
	gains   gains

	work, limit int64 // done, and allowed to the end of the tree at work
	solves      int   // ways of opening rings still allowed
	solved      int
}

func newSolver(p Problem, g *graph, l *layout, windows []Window) *solver {
	s := &solver{
		g: g, l: l, windows: windows, high: windows[len(windows)-1].High,
		lists: make([][]state, len(g.weight)),
		shuts: make([]shut, len(g.weight)),
		recs:  make([]record, 0, 4*len(g.weight)),
		test:  p.TestPrice,
	}
	if p.Aim == Tests {
		s.test = 1 + g.forced
		for _, e := range g.edges {
			s.test += e.price
		}
	}
	s.solves = cmp.Or(p.MaxRingSolves, defaultRingSolves)
	s.limit = cmp.Or(p.WorkLimit, DefaultWorkLimit)
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
	s.list = append(s.list[:0], state{w: s.g.weight[v], rec: s.record(record{-1, v})})
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
	for _, k := range s.kids {
		at.rest -= heaviest(s.lists[k])
		s.merge(s.lists[k], s.shuts[k], at)
		s.lists[k] = nil
	}
	for k := s.l.tops.first[v]; k >= 0; k = s.l.tops.next[k] {
		at.rest -= s.knotWeight(&s.l.knots[k])
		s.untie(&s.l.knots[k], at)
	}
	if at.how != inKnot {
		s.shuts[v] = s.shut(s.list, at.joint)
	}
	if at.how != asRoot {
		s.lists[v] = slices.Clone(s.list)
	}
}

// sortKids puts the child with the heaviest list first: what is left to merge
// then weighs least, and closing is in sight soonest.
func (s *solver) sortKids(kids []int32, lists [][]state) {
	slices.SortFunc(kids, func(a, b int32) int {
		return cmp.Or(cmp.Compare(heaviest(lists[b]), heaviest(lists[a])), cmp.Compare(a, b))
	})
}

func (s *solver) record(r record) int32 {
	s.recs = append(s.recs, r)
	return int32(len(s.recs) - 1)
}

// merge joins a child's list to the list at work: the child is cut off closed,
// where its joint may be cut, or kept.
func (s *solver) merge(kid []state, off shut, at site) {
	kid = s.afford(kid)
	s.options = s.options[:0]
	for _, a := range s.list {
		if off.ok {
			s.options = append(s.options, option{a.w, a.c.plus(off.c), record{a.rec, ^off.rec}})
		}
		for _, b := range kid {
			if a.w+b.w <= s.high {
				s.options = append(s.options, option{a.w + b.w, a.c.plus(b.c), record{a.rec, b.rec}})
			}
		}
	}
	s.prune(at)
	s.list = s.list[:0]
	for _, o := range s.options {
		s.list = append(s.list, state{o.w, o.c, s.record(o.rec)})
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
		s.list = append(s.list[:0], thin(s.list)...)
		kid = thin(kid)
	}
	return kid
}

// thin keeps the cheaper half of the places for the cheapest states, the rest
// evenly spread, and the lightest last, so that some answer stays possible.
func thin(list []state) []state {
	if len(list) <= thinTo {
		return list
	}
	const cheap = thinTo / 2
	out := slices.Clone(list[:cheap])
	rest := list[cheap:]
	for i := range thinTo - cheap - 1 {
		out = append(out, rest[i*len(rest)/(thinTo-cheap-1)])
	}
	return append(out, slices.MinFunc(list, func(a, b state) int { return cmp.Compare(a.w, b.w) }))
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
