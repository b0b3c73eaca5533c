package partition

import (
	"fmt"
	"math/rand/v2"
	"slices"
)

// merit is the order of merit as a list, for either aim.
func merit(p Problem, s Score) [4]int64 {
	if p.Aim == Time {
		return [4]int64{int64(s.Over), int64(s.Under), int64(s.Tests)*p.TestPrice + s.Minutes}
	}
	return [4]int64{int64(s.Over), int64(s.Under), int64(s.Tests), s.Minutes}
}

func better(a, b [4]int64) bool {
	for i := range a {
		if a[i] != b[i] {
			return a[i] < b[i]
		}
	}
	return false
}

// joints lists all joints of a problem: those to parents, then the links.
func joints(p Problem) []Link {
	var js []Link
	for v, u := range p.Parent {
		if u >= 0 {
			js = append(js, Link{v, u, p.Price[v]})
		}
	}
	return append(js, p.Links...)
}

// flood numbers the parts that the joints not cut hold together.
func flood(n int, js []Link, cut func(int) bool) ([]int, int) {
	near := make([][]int, n)
	for i, j := range js {
		if !cut(i) {
			near[j.A] = append(near[j.A], j.B)
			near[j.B] = append(near[j.B], j.A)
		}
	}
	part := make([]int, n)
	for v := range part {
		part[v] = -1
	}
	parts := 0
	for v := range part {
		if part[v] >= 0 {
			continue
		}
		part[v] = parts
		for todo := []int{v}; len(todo) > 0; {
			u := todo[0]
			todo = todo[1:]
			for _, w := range near[u] {
				if part[w] < 0 {
					part[w] = parts
					todo = append(todo, w)
				}
			}
		}
		parts++
	}
	return part, parts
}

// judge scores a division from scratch, straight from the rules. legal is
// false when a part other than a lone cluster exceeds the greatest High.
func judge(p Problem, part []int, parts int) (s Score, legal bool) {
	js := joints(p)
	cluster, _ := flood(len(part), js, func(i int) bool { return js[i].Price != Banned })
	weight := make([]int64, parts)
	lone := make([]bool, parts)
	first := make([]int, parts)
	for k := range first {
		first[k] = -1
	}
	for v, k := range part {
		weight[k] += p.Weight[v]
		if first[k] < 0 {
			first[k], lone[k] = v, true
		}
		lone[k] = lone[k] && cluster[v] == cluster[first[k]]
	}
	high := p.Windows[0].High
	for _, w := range p.Windows {
		high = max(high, w.High)
	}
	for k, w := range weight {
		s.Tests++
		in := false
		for _, win := range p.Windows {
			in = in || win.Low <= w && w <= win.High
		}
		switch {
		case w > high && !lone[k], !lone[k] && !together(p, part, k):
			return s, false
		case w > high:
			s.Over++
		case !in:
			s.Under++
		}
	}
	for _, j := range js {
		if part[j.A] != part[j.B] {
			if j.Price == Banned {
				return s, false
			}
			s.Minutes += j.Price
		}
	}
	return s, true
}

// together reports whether the nodes of part k are all there at one moment.
func together(p Problem, part []int, k int) bool {
	if p.From == nil {
		return true
	}
	from, to := int64(FromFirst), int64(ToLast)
	for v := range part {
		if part[v] == k {
			from, to = max(from, p.From[v]), min(to, p.To[v])
		}
	}
	return from <= to
}

// brute tries every set of joints as the cuts.
func brute(p Problem) Score {
	js := joints(p)
	var best Score
	found := false
	for cuts := range 1 << len(js) {
		part, parts := flood(len(p.Parent), js, func(i int) bool { return cuts>>i&1 == 1 })
		s, legal := judge(p, part, parts)
		if legal && (!found || better(merit(p, s), merit(p, best))) {
			best, found = s, true
		}
	}
	return best
}

// verify checks a solution from scratch and returns what is wrong with it.
func verify(p Problem, s Solution) error {
	n := len(p.Parent)
	if len(s.Part) != n {
		return fmt.Errorf("%d nodes have a part, want %d", len(s.Part), n)
	}
	js := joints(p)
	isCut := make([]bool, len(js))
	var cuts, cutLinks []int
	for i, j := range js {
		isCut[i] = s.Part[j.A] != s.Part[j.B]
		if isCut[i] && i >= len(js)-len(p.Links) {
			cutLinks = append(cutLinks, i-len(js)+len(p.Links))
		} else if isCut[i] {
			cuts = append(cuts, j.A)
		}
	}
	part, parts := flood(n, js, func(i int) bool { return isCut[i] })
	if !slices.Equal(part, s.Part) { // flood numbers by smallest node too
		return fmt.Errorf("parts don't hang together: %v, the cuts leave %v", s.Part, part)
	}
	if !slices.Equal(cuts, s.Cuts) || !slices.Equal(cutLinks, s.CutLinks) {
		return fmt.Errorf("cuts %v and links %v, want %v and %v", s.Cuts, s.CutLinks, cuts, cutLinks)
	}
	score, legal := judge(p, part, parts)
	if !legal || score != s.Score {
		return fmt.Errorf("score %+v, recounted %+v, legal %v", s.Score, score, legal)
	}
	if s.Exhaustive && s.Bound != s.Score || better(merit(p, s.Score), merit(p, s.Bound)) {
		return fmt.Errorf("bound %+v against score %+v, exhaustive %v", s.Bound, s.Score, s.Exhaustive)
	}
	return verifyStates(p, s, parts)
}

func verifyStates(p Problem, s Solution, parts int) error {
	if len(s.State) != parts {
		return fmt.Errorf("%d part states, want %d", len(s.State), parts)
	}
	sums := make([]int64, parts)
	for v, k := range s.Part {
		sums[k] += p.Weight[v]
	}
	for k, st := range s.State {
		below, above, in := false, false, false
		for _, w := range p.Windows {
			in = in || w.Low <= sums[k] && sums[k] <= w.High
			below = below || sums[k] < w.Low
			above = above || sums[k] > w.High
		}
		want := Gap
		switch {
		case in:
			want = In
		case !above:
			want = Under
		case !below:
			want = Over
		}
		if st.Weight != sums[k] || st.State != want {
			return fmt.Errorf("part %d is %+v, want weight %d state %d", k, st, sums[k], want)
		}
	}
	return nil
}

// draw makes a random small problem of any kind with at most so many links.
func draw(r *rand.Rand, n, links int) Problem {
	p := Problem{Parent: make([]int, n), Weight: make([]int64, n), Price: make([]int64, n)}
	top := []int64{3, 10, 30, 1000}[r.IntN(4)]
	shape, bans := r.IntN(4), r.IntN(4)
	dear := []int64{1, 4, 50}[r.IntN(3)]
	name := r.Perm(n) // parents may come after their children
	price := func() int64 {
		if r.IntN(8) < bans {
			return Banned
		}
		return r.Int64N(dear)
	}
	for i, v := range name {
		p.Weight[v] = r.Int64N(top)
		p.Parent[v] = -1
		if i == 0 || r.IntN(12) == 0 {
			continue
		}
		p.Parent[v] = name[[]int{r.IntN(i), i - 1, 0, max(0, i-1-r.IntN(3))}[shape]]
		p.Price[v] = price()
	}
	for range max(0, r.IntN(2*links+1)-links) {
		a, b := r.IntN(n), r.IntN(n)
		if a != b {
			p.Links = append(p.Links, Link{a, b, price()})
		}
	}
	for range 1 + r.IntN(3) {
		low := r.Int64N(3 * top)
		p.Windows = append(p.Windows, Window{low, low + r.Int64N(1+top*int64(1+r.IntN(2)))})
	}
	if r.IntN(2) == 0 { // a test may cost nothing
		p.Aim, p.TestPrice = Time, r.Int64N(60)*int64(r.IntN(4))/3
	}
	return p
}
