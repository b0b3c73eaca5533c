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
