package partition

// solution rebuilds the division from the records and recounts its score.
func (s *solver) solution(p Problem) Solution {
	part := s.rebuild()
	out := Solution{Part: make([]int, len(p.Parent)), Exhaustive: true, Work: s.work, RingSolves: s.solved}
	number := make([]int, len(s.g.weight)) // 1 + number of a part in the answer
	tally := make([]Score, len(s.l.ends))
	tree := s.treeOf()
	for v, c := range s.g.of {
		k := part[c]
		if number[k] == 0 {
			out.State = append(out.State, PartState{})
			number[k] = len(out.State)
		}
		out.Part[v] = number[k] - 1
		out.State[number[k]-1].Weight += p.Weight[v]
	}
	counted := make([]bool, len(out.State))
	for v, k := range out.Part {
		if !counted[k] {
			counted[k] = true
			out.State[k].State = place(s.windows, out.State[k].Weight)
			tally[tree[s.g.of[v]]].count(out.State[k].State)
		}
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
	for _, e := range s.g.edges {
		if part[e.a] != part[e.b] {
			tally[tree[e.a]].Minutes += e.price
		}
	}
	out.Score.Minutes, out.Bound.Minutes = s.g.forced, s.g.forced
	bounds := []Score(nil)
	for i, t := range tally {
		out.Score.add(t)
		if !s.exact[i] {
			if bounds == nil {
				bounds = treeBounds(s.g, tree, s.crowdBounds(tree), s.windows)
			}
			t = bounds[i]
			out.Exhaustive = false
		}
		out.Bound.add(t)
	}
	return out
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
		r := s.recs[t.rec]
		for ; r.prev >= 0; r = s.recs[r.prev] {
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
