package partition

import "slices"

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
	for _, b := range treeBounds(g, tree, len(tree), wins) {
		out.add(b)
	}
	return out, nil
}

// treeBounds bounds the score of each tree by weight alone; numbers that no
// cluster has get nothing.
func treeBounds(g *graph, tree []int32, trees int, windows []Window) []Score {
	out := make([]Score, trees)
	weight := make([]int64, trees)
	some := make([]bool, trees)
	prices := make([][]int64, trees)
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
		out[i].Tests = int(k)
		if low > weight[i]/k {
			out[i].Under = 1
		}
		slices.Sort(prices[i])
		for _, price := range prices[i][:k-1] {
			out[i].Minutes += price
		}
	}
	return out
}
