package partition

import "slices"

// solution rebuilds the division from the records and recounts its score.
func (s *solver) solution(p Problem) Solution {
	part := s.rebuild()
	out := Solution{Work: s.work, RingSolves: s.solved}
	out.number(p, s.g.of, part)
	for k := range out.State {
		out.State[k].State = place(s.windows, out.State[k].Weight)
	}
	for v, u := range p.Parent {
		if u >= 0 && out.Part[u] != out.Part[v] {
			out.Cuts = append(out.Cuts, v)
		}
	}
	for i, l := range p.Links {
		if out.Part[l.A] != out.Part[l.B] {
			out.CutLinks = append(out.CutLinks, i)
		}
	}
	s.score(&out, part)
	return out
}

// number numbers the parts in order of their smallest nodes and weighs them.
func (out *Solution) number(p Problem, of, part []int32) {
	out.Part = make([]int, len(p.Parent))
	number := make([]int, len(part)) // 1 + number of a part in the answer
	for v, c := range of {
		k := &number[part[c]]
		if *k == 0 {
			out.State = append(out.State, PartState{})
			*k = len(out.State)
		}
		out.Part[v] = *k - 1
		out.State[*k-1].Weight += p.Weight[v]
	}
}

// score counts the score and its bound tree by tree. A tree that isn't proved
// best by the search is so when its score meets its bound.
func (s *solver) score(out *Solution, part []int32) {
	tree := s.treeOf()
	tally := make([]Score, len(s.l.ends))
	counted := make([]bool, len(out.State))
	for v, k := range out.Part {
		if !counted[k] {
			counted[k] = true
			tally[tree[s.g.of[v]]].count(out.State[k].State)
		}
	}
	for _, e := range s.g.edges {
		if part[e.a] != part[e.b] {
			tally[tree[e.a]].Minutes += e.price
		}
	}
	bounds := tally
	if slices.Contains(s.exact, false) {
		bounds = treeBounds(s.g, tree, s.crowdBounds(tree), s.windows)
	}
	out.Exhaustive = true
	out.Score.Minutes, out.Bound.Minutes = s.g.forced, s.g.forced
	for i, t := range tally {
		out.Score.add(t)
		if !s.exact[i] && bounds[i] != t {
			out.Exhaustive = false
			t = bounds[i]
		}
		out.Bound.add(t)
	}
}

// rebuild walks the records from the roots down and returns a part number for
// each cluster.
func (s *solver) rebuild() []int32 {
	type step struct{ rec, part int32 }
	part := make([]int32, len(s.g.weight))
	parts := int32(0)
	var todo []step
	for _, r := range s.roots {
		todo = append(todo, step{r, parts})
		parts++
	}
	for len(todo) > 0 {
		t := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		r := s.recs.at(t.rec)
		for ; r.prev >= 0; r = s.recs.at(r.prev) {
			if r.kid >= 0 {
				todo = append(todo, step{r.kid, t.part})
				continue
			}
			todo = append(todo, step{^r.kid, parts})
			parts++
		}
		part[r.kid] = t.part
	}
	return part
}

// treeOf numbers the tree of each cluster.
func (s *solver) treeOf() []int32 {
	tree := make([]int32, len(s.g.weight))
	begin := 0
	for i, end := range s.l.ends {
		for _, v := range s.l.order[begin:end] {
			tree[v] = int32(i)
		}
		begin = end
	}
	return tree
}

// place says where a weight lies among sorted windows.
func place(windows []Window, w int64) State {
	switch {
	case inWindow(windows, w, w):
		return In
	case w > windows[len(windows)-1].High:
		return Over
	case w < windows[0].Low:
		return Under
	}
	return Gap
}

func (t *Score) count(where State) {
	t.Tests++
	switch where {
	case Over:
		t.Over++
	case Under, Gap:
		t.Under++
	}
}

func (t *Score) add(u Score) {
	t.Over += u.Over
	t.Under += u.Under
	t.Tests += u.Tests
	t.Minutes += u.Minutes
}

// AreaBound is a lower bound of the score that can be checked by hand. What is
// over by itself stands alone, and all its joints are cut. Every tree that is
// left, of weight W, needs at least ceil(W / greatest High) parts, one at the
// least, and one joint fewer than that, the cheapest ones; one part is under
// where no number k of parts has k x lowest Low <= W <= k x greatest High.
// It fails on the same input as Solve.
func AreaBound(p Problem) (Score, error) {
	if err := check(p); err != nil {
		return Score{}, err
	}
	wins := mergeWindows(p.Windows)
	g := newGraph(p, wins[len(wins)-1].High)
	set := newSets(len(g.weight))
	for _, e := range g.edges {
		set.join(e.a, e.b)
	}
	tree := make([]int32, len(g.weight))
	for c := range tree {
		tree[c] = set.head(int32(c))
	}
	out := Score{Minutes: g.forced}
	for _, b := range treeBounds(g, tree, make([]Score, len(tree)), wins) {
		out.add(b)
	}
	return out, nil
}

// treeBounds bounds the score of each tree by weight alone; known is a bound
// from elsewhere that it may build on. Numbers that no cluster has get nothing.
func treeBounds(g *graph, tree []int32, known []Score, windows []Window) []Score {
	out := make([]Score, len(known))
	weight := make([]int64, len(known))
	some := make([]bool, len(known))
	prices := make([][]int64, len(known))
	for c, w := range g.weight {
		if g.over[c] {
			out[tree[c]] = Score{Over: 1, Tests: 1}
			continue
		}
		weight[tree[c]] += w
		some[tree[c]] = true
	}
	for _, e := range g.edges {
		prices[tree[e.a]] = append(prices[tree[e.a]], e.price)
	}
	low, high := windows[0].Low, windows[len(windows)-1].High
	for i := range out {
		if !some[i] {
			continue
		}
		k := int64(1)
		if weight[i] > high { // high is 1 or more, or the clusters would be over
			k = (weight[i]-1)/high + 1
		}
		if low > weight[i]/k {
			out[i].Under = 1
		}
		out[i].Under = max(out[i].Under, known[i].Under)
		out[i].Tests = max(int(k), known[i].Tests)
		out[i].Minutes = max(cheapest(prices[i], out[i].Tests-1), known[i].Minutes)
	}
	return out
}

// cheapest sorts prices and adds up the k least.
func cheapest(prices []int64, k int) int64 {
	slices.Sort(prices)
	sum := int64(0)
	for _, price := range prices[:k] {
		sum += price
	}
	return sum
}

// crowdBounds bounds the score of each tree where many children hang by single
// joints from one cluster. Of their own weights only so many fit beside it, so
// the joints of the others are cut. Of the whole branches below them that are
// lighter than the lowest Low only so many fit whole; each of the others holds
// a part that is under. None is counted twice: all that hangs from a cluster
// inside a light branch fits beside it.
func (s *solver) crowdBounds(tree []int32) []Score {
	out := make([]Score, len(s.l.ends))
	total := make([]int64, len(s.g.weight)) // weight of a cluster and all below
	var own, whole, prices []int64
	for _, v := range s.l.order {
		total[v] += s.g.weight[v]
		own, whole, prices = own[:0], whole[:0], prices[:0]
		for k := s.l.kids.first[v]; k >= 0; k = s.l.kids.next[k] {
			total[v] += total[k]
			own = append(own, s.g.weight[k])
			prices = append(prices, s.l.joint[k])
			if total[k] < s.windows[0].Low {
				whole = append(whole, total[k])
			}
		}
		for k := s.l.tops.first[v]; k >= 0; k = s.l.tops.next[k] {
			for _, w := range s.l.knots[k].nodes[1:] {
				total[v] += total[w]
			}
		}
		t := &out[tree[v]]
		cuts := crowd(own, s.high-s.g.weight[v])
		t.Tests += cuts
		t.Minutes += cheapest(prices, cuts)
		t.Under += crowd(whole, s.high-s.g.weight[v])
	}
	for i := range out {
		out[i].Tests = 1 + max(out[i].Tests, out[i].Under) // and the part of the root
	}
	return out
}

// crowd counts how many of the weights can't be among those that fit in room.
func crowd(weights []int64, room int64) int {
	slices.Sort(weights)
	for i, w := range weights {
		if room -= w; room < 0 {
			return len(weights) - i
		}
	}
	return 0
}
