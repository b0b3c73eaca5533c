package partition

import (
	"cmp"
	"math/bits"
	"slices"
)

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
	var branches []branch
	for _, v := range s.l.order {
		total[v] += s.g.weight[v]
		own, whole, prices, branches = own[:0], whole[:0], prices[:0], branches[:0]
		for k := s.l.kids.first[v]; k >= 0; k = s.l.kids.next[k] {
			total[v] += total[k]
			own = append(own, s.g.weight[k])
			prices = append(prices, s.l.joint[k])
			branches = append(branches, branch{s.g.weight[k], s.l.joint[k]})
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
		t.Minutes += max(cheapest(prices, cuts), leastCut(branches, s.high-s.g.weight[v]))
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

// branch is a cluster that hangs from another, with the price of the joint.
type branch struct{ weight, price int64 }

// leastCut bounds the price of cutting off branches until the others fit in
// room. At any rate per weight, the branches' sum of the lesser of price and
// rate x weight is at most the price of those cut plus rate x room. The rate
// taken is that of the branch at which the room is full when the dearest by
// weight are kept; which one it is doesn't matter to the proof.
func leastCut(branches []branch, room int64) int64 {
	slices.SortFunc(branches, func(a, b branch) int {
		return cmp.Compare(float64(b.price)/float64(b.weight), float64(a.price)/float64(a.weight))
	})
	left, full := room, 0
	for full < len(branches) && branches[full].weight <= left {
		left -= branches[full].weight
		full++
	}
	if full == len(branches) {
		return 0
	}
	last := branches[full] // heavier than nothing, or it would fit
	var sum wide128
	for _, b := range branches {
		byPrice, byWeight := times(b.price, last.weight), times(b.weight, last.price)
		if byWeight.less(byPrice) {
			byPrice = byWeight
		}
		sum = sum.plus(byPrice)
	}
	most := times(room, last.price)
	if sum.less(most) {
		return 0
	}
	sum = sum.minus(most)
	// The sum is at most all prices x last.weight, so the ratio fits.
	q, r := bits.Div64(sum.high, sum.low, uint64(last.weight))
	return int64(q) + int64(min(r, 1))
}

// wide128 is a whole number of 128 bits: a price times a weight is beyond 64.
type wide128 struct{ high, low uint64 }

func times(a, b int64) (p wide128) {
	p.high, p.low = bits.Mul64(uint64(a), uint64(b))
	return p
}

func (a wide128) less(b wide128) bool {
	return a.high < b.high || a.high == b.high && a.low < b.low
}

func (a wide128) plus(b wide128) wide128 {
	low, carry := bits.Add64(a.low, b.low, 0)
	high, _ := bits.Add64(a.high, b.high, carry)
	return wide128{high, low}
}

func (a wide128) minus(b wide128) wide128 {
	low, borrow := bits.Sub64(a.low, b.low, 0)
	high, _ := bits.Sub64(a.high, b.high, borrow)
	return wide128{high, low}
}
