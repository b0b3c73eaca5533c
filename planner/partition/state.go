package partition

import (
	"cmp"
	"math/bits"
	"slices"
)

// cost is what a division of the nodes below has cost: parts under first,
// then the price of parts and cuts.
type cost struct{ under, price int64 }

func (c cost) plus(d cost) cost { return cost{c.under + d.under, c.price + d.price} }

func (c cost) less(d cost) bool {
	return c.under < d.under || c.under == d.under && c.price < d.price
}

// dearer orders states by cost, then weight.
func dearer(a, b state) int {
	switch {
	case a.c.less(b.c):
		return -1
	case b.c.less(a.c):
		return 1
	}
	return cmp.Compare(a.w, b.w)
}

var oneUnder = cost{under: 1}

// state is a weight that the open part at a cluster can have, the least cost
// that reaches it (parts closed below and their cuts) and how it was reached.
type state struct {
	w   int64
	c   cost
	rec int32
	up  up
}

// record is one step of how a state was reached: the state before it at the
// same cluster (-1: the step is the cluster itself, number kid) and the state
// of the child that was kept (kid) or closed and cut off (^kid).
type record struct{ prev, kid int32 }

// ledger holds the records in blocks, so that growing copies nothing. A block has
// 2^shift of them.
type ledger struct {
	blocks [][]record
	n      int32
	shift  uint8
}

// newLedger makes its blocks no larger than a few clusters need: a schedule may
// have a hundred thousand systems of one piece.
func newLedger(clusters int) ledger {
	const least, most = 2, 12
	return ledger{shift: uint8(min(max(bits.Len(uint(clusters)), least), most))}
}

func (l *ledger) add(r record) int32 {
	if int(l.n) == len(l.blocks)<<l.shift {
		l.blocks = append(l.blocks, make([]record, 1<<l.shift))
	}
	l.blocks[l.n>>l.shift][l.n&(1<<l.shift-1)] = r
	l.n++
	return l.n - 1
}

func (l *ledger) at(i int32) record { return l.blocks[i>>l.shift][i&(1<<l.shift-1)] }

// option is a state not yet chosen to be kept.
type option struct {
	w   int64
	c   cost
	rec record
	up  up
}

// shut is the least cost of closing the part of a cluster and cutting the
// joint above it.
type shut struct {
	c   cost
	rec int32
	ok  bool // false: the joint above isn't to be cut
}

// site says what lies around a merge.
type site struct {
	rest  int64 // the most that what is not yet merged below can add
	up    up    // when all of that is there
	joint int64 // price of the joint above, for byJoint
	how   hanging
}

// gains is the set of later weights that bring some kept state into a window,
// as disjoint ranges in ascending order.
type gains []Window

// add widens the set by lo..hi and reports whether that added anything.
func (g *gains) add(lo, hi int64) bool {
	s := *g
	i, _ := slices.BinarySearchFunc(s, lo, func(r Window, lo int64) int {
		return cmp.Compare(r.High, lo-1) // first range that ends at lo-1 or later
	})
	if i < len(s) && s[i].Low <= lo && hi <= s[i].High {
		return false
	}
	j := i
	for j < len(s) && s[j].Low <= hi+1 {
		lo, hi = min(lo, s[j].Low), max(hi, s[j].High)
		j++
	}
	if i == j {
		*g = slices.Insert(s, i, Window{lo, hi})
		return true
	}
	s[i] = Window{lo, hi}
	*g = slices.Delete(s, i+1, j)
	return true
}

// addState adds the later weights that bring weight w into a window.
func (g *gains) addState(windows []Window, w int64) bool {
	added := false
	for _, win := range windows {
		if win.High >= w && g.add(max(win.Low-w, 0), win.High-w) {
			added = true
		}
	}
	return added
}

// missed is one under when a part of weight w is in no window.
func (s *solver) missed(w int64) cost {
	if inWindow(s.windows, w, w) {
		return cost{}
	}
	return oneUnder
}

// inWindow reports whether lo..hi lies in one window.
func inWindow(windows []Window, lo, hi int64) bool {
	for _, win := range windows {
		if win.Low <= lo && hi <= win.High {
			return true
		}
	}
	return false
}

// closeLater returns the least cost of closing here in the end, whatever the
// rest below will add: of the options that fit with all of the rest, cost and
// part and joint, and one under unless every outcome is in a window.
func (s *solver) closeLater(at site) (cost, bool) {
	best, ok := cost{}, false
	if at.how == inKnot {
		return best, false
	}
	for i := range s.options {
		o := &s.options[i]
		if o.w+at.rest > s.high || ok && !o.c.less(best) || !o.up.with(at.up).at(s.g.moments) {
			continue
		}
		c := o.c
		if !inWindow(s.windows, o.w, o.w+at.rest) {
			c.under++
		}
		if !ok || c.less(best) {
			best, ok = c, true
		}
	}
	best.price += s.test + at.joint
	return best, ok
}

// prune sorts s.options by cost and keeps those that can still be part of a
// best answer. An option is completed by a later weight x (the rest below and
// what comes from above), the same for all of them. It goes when cheaper
// options do as well for every x:
//
//   - when x brings it into a window, some cheaper one is brought into a
//     window too: the gains of the cheaper ones cover its own. They then cover
//     the x that fills it to the greatest High, so one of the cheaper is no
//     heavier, fits whatever x is, and is at worst under where this one is;
//   - or a lighter one is cheaper by a whole under.
//
// Closing here in the end (cost "later") stands beside them: what is above
// then weighs x less at most the rest, so it fits for every x and is in a
// window when x is in [Low+rest, High]. It counts only against dearer options,
// so never against the one that it is made of. At a root nothing comes from
// above, so later is the whole cost and everything dearer goes.
func (s *solver) prune(at site) {
	if s.timed() {
		s.pruneTimed(at)
		return
	}
	later, bounded := s.closeLater(at)
	if bounded {
		s.dropDear(later, at)
	}
	s.joinRuns()
	s.gains = s.gains[:0]
	kept := s.options[:0]
	leastUnder := far // least weight kept that is a whole under cheaper
	behind := 0
	for _, o := range s.options {
		if bounded && later.less(o.c) {
			bounded = false
			s.addLater(&s.gains, at)
		}
		for behind < len(kept) && !o.c.less(kept[behind].c.plus(oneUnder)) {
			leastUnder = min(leastUnder, kept[behind].w)
			behind++
		}
		if o.w >= leastUnder {
			continue
		}
		if s.gains.addState(s.windows, o.w) {
			kept = append(kept, o)
		}
	}
	s.options = kept
}

// dropDear drops what is dearer than closing here by a whole under (at a root,
// dearer at all: nothing comes after).
func (s *solver) dropDear(later cost, at site) {
	limit := later.plus(oneUnder)
	if at.how == asRoot {
		limit = later
		limit.price -= s.test
		limit.price++
	}
	kept, begin := 0, 0
	for i, end := range s.ends {
		for _, o := range s.options[begin:end] {
			if !o.c.less(limit) {
				break
			}
			s.options[kept] = o
			kept++
		}
		begin, s.ends[i] = end, kept
	}
	s.options = s.options[:kept]
}

// joinRuns merges the ascending runs of s.options into one.
func (s *solver) joinRuns() {
	for len(s.ends) > 1 {
		s.other = s.other[:0]
		begin, runs := 0, 0
		for i := 0; i < len(s.ends); i += 2 {
			mid, end := s.ends[i], s.ends[min(i+1, len(s.ends)-1)]
			s.other = joinTwo(s.other, s.options[begin:mid], s.options[mid:end])
			s.ends[runs] = len(s.other)
			begin, runs = end, runs+1
		}
		s.ends = s.ends[:runs]
		s.options, s.other = s.other, s.options
	}
}

func joinTwo(out, a, b []option) []option {
	for len(a) > 0 && len(b) > 0 {
		x, y := &a[0], &b[0]
		if y.c.less(x.c) || y.c == x.c && y.w < x.w {
			out = append(out, *y)
			b = b[1:]
			continue
		}
		out = append(out, *x)
		a = a[1:]
	}
	return append(append(out, a...), b...)
}
