package partition

import (
	"fmt"
	"math"
	"slices"
)

// FromFirst and ToLast are the moments of nodes that are there from the first on or
// to the last: see Problem.
const (
	FromFirst = math.MinInt64
	ToLast    = math.MaxInt64
)

// up is when the nodes of a part are all there, by the rank of moments: the last
// of them comes with the moment ready, counted from 1, and the first of them goes
// with the moment hidden, counted from 1 at the end. 0 bounds nothing.
type up struct{ ready, hidden int32 }

// with is when both are there.
func (a up) with(b up) up { return up{max(a.ready, b.ready), max(a.hidden, b.hidden)} }

// holds reports whether a is there whenever b is.
func (a up) holds(b up) bool { return a.ready <= b.ready && a.hidden <= b.hidden }

// at reports whether there is such a moment at all, of so many and one.
func (a up) at(moments int32) bool { return a.ready+a.hidden <= moments }

func checkTimes(p Problem) error {
	switch n := len(p.Parent); {
	case p.From == nil && p.To == nil:
		return nil
	case len(p.From) != n || len(p.To) != n:
		return fmt.Errorf("%d nodes, %d first and %d last moments: give one of each per node, or none", n, len(p.From), len(p.To))
	case len(p.Links) > 0:
		return fmt.Errorf("moments and %d links: with moments, trees only", len(p.Links))
	}
	return nil
}

// addTimes ranks the moments and finds when every cluster is there. A cluster that
// is there at no moment can be in no part with another.
func (g *graph) addTimes(p Problem) {
	if p.From == nil {
		return
	}
	var all []int64
	for v := range p.From {
		if p.From[v] != FromFirst {
			all = append(all, p.From[v])
		}
		if p.To[v] != ToLast {
			all = append(all, p.To[v])
		}
	}
	slices.Sort(all)
	all = slices.Compact(all)
	g.up, g.moments = make([]up, len(g.weight)), int32(len(all)+1)
	for v, c := range g.of {
		var u up
		if p.From[v] != FromFirst {
			k, _ := slices.BinarySearch(all, p.From[v])
			u.ready = int32(1 + k)
		}
		if p.To[v] != ToLast {
			k, _ := slices.BinarySearch(all, p.To[v])
			u.hidden = int32(len(all) - k)
		}
		g.up[c] = g.up[c].with(u)
	}
}

// timed reports whether nodes come and go.
func (s *solver) timed() bool { return s.g.up != nil }

// restUp finds, for every child, when all is there that those after it can add.
func (s *solver) restUp() {
	s.rest = slices.Grow(s.rest[:0], len(s.kids))[:len(s.kids)]
	var all up
	for i, k := range slices.Backward(s.kids) {
		s.rest[i] = all
		for _, a := range s.lists[k] {
			all = all.with(a.up)
		}
	}
}

// view is what options have done that are there whenever the options of one time
// are: only they can stand for those.
type view struct {
	up         up
	gains      gains
	behind     int   // how many kept ones are a whole under cheaper, of any time
	leastUnder int64 // least weight of those that are there
}

// mostViews is the number of times that are told apart at one cluster. Beyond it
// options are left out and the answer isn't proved.
const mostViews = 1000

// pruneTimed is prune where nodes come and go. One option stands for another only
// if it is there whenever that one is: then it is there with whatever completes
// the other.
func (s *solver) pruneTimed(at site) {
	later, bounded := s.closeLater(at)
	if bounded {
		s.dropDear(later, at)
	}
	s.joinRuns()
	s.views = s.views[:0]
	clear(s.viewOf)
	kept, late := s.options[:0], false
	for _, o := range s.options {
		if bounded && !late && later.less(o.c) {
			late = true
			for i := range s.views {
				s.addLater(&s.views[i].gains, at)
			}
		}
		v := s.viewFor(o.up, kept, late, at)
		if v == nil {
			s.proved = false
			continue
		}
		for v.behind < len(kept) && !o.c.less(kept[v.behind].c.plus(oneUnder)) {
			if k := &kept[v.behind]; k.up.holds(v.up) {
				v.leastUnder = min(v.leastUnder, k.w)
			}
			v.behind++
		}
		if o.w >= v.leastUnder || !v.gains.addState(s.windows, o.w) {
			continue
		}
		kept = append(kept, o)
		s.work += int64(len(s.views))
		for i := range s.views {
			if w := &s.views[i]; w != v && o.up.holds(w.up) {
				w.gains.addState(s.windows, o.w)
			}
		}
	}
	s.options = kept
}

// viewFor is the view of a time, made of what is kept when it is first asked for;
// nil where there are too many.
func (s *solver) viewFor(u up, kept []option, late bool, at site) *view {
	if k, ok := s.viewOf[u]; ok {
		return &s.views[k]
	}
	n := len(s.views)
	if n == mostViews {
		return nil
	}
	if n == cap(s.views) {
		s.views = append(s.views, view{})
	}
	s.views = s.views[:n+1]
	v := &s.views[n]
	v.up, v.gains, v.behind, v.leastUnder = u, v.gains[:0], 0, far
	s.viewOf[u] = n
	s.work += int64(len(kept))
	for i := range kept {
		if kept[i].up.holds(u) {
			v.gains.addState(s.windows, kept[i].w)
		}
	}
	if late {
		s.addLater(&v.gains, at)
	}
	return v
}

// addLater adds the later weights with which closing here in the end is in a
// window.
func (s *solver) addLater(g *gains, at site) {
	for _, win := range s.windows {
		if lo := max(win.Low, 0) + at.rest; lo <= win.High {
			g.add(lo, win.High)
		}
	}
}

// upOf is when a cluster is there.
func (s *solver) upOf(v int32) up {
	if !s.timed() {
		return up{}
	}
	return s.g.up[v]
}
