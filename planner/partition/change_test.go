package partition

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// rehung is the same joints and nodes under other numbers, with other joints
// called links and other roots.
func rehung(r *rand.Rand, p Problem) Problem {
	n := len(p.Parent)
	to := r.Perm(n)
	js := joints(p)
	r.Shuffle(len(js), func(i, j int) { js[i], js[j] = js[j], js[i] })
	q := p
	q.Parent, q.Weight, q.Price, q.Links = make([]int, n), make([]int64, n), make([]int64, n), nil
	near := make([][]Link, n)
	set := newSets(n)
	for v := range n {
		q.Parent[to[v]], q.Weight[to[v]] = -1, p.Weight[v]
	}
	for _, j := range js {
		j.A, j.B = to[j.A], to[j.B]
		if set.head(int32(j.A)) == set.head(int32(j.B)) {
			q.Links = append(q.Links, j)
			continue
		}
		set.join(int32(j.A), int32(j.B))
		near[j.A] = append(near[j.A], j)
		near[j.B] = append(near[j.B], j)
	}
	seen := make([]bool, n)
	for _, root := range r.Perm(n) {
		if seen[root] {
			continue
		}
		seen[root] = true
		for todo := []int{root}; len(todo) > 0; todo = todo[1:] {
			for _, j := range near[todo[0]] {
				if w := j.A + j.B - todo[0]; !seen[w] {
					seen[w], q.Parent[w], q.Price[w] = true, todo[0], j.Price
					todo = append(todo, w)
				}
			}
		}
	}
	return q
}

// halved writes one node as two at a joint that can't be cut.
func halved(r *rand.Rand, p Problem) Problem {
	v := r.IntN(len(p.Parent))
	half := p.Weight[v] / 2
	p.Parent = append(slices.Clone(p.Parent), v)
	p.Weight = append(slices.Clone(p.Weight), half)
	p.Weight[v] -= half
	p.Price = append(slices.Clone(p.Price), Banned)
	for w, u := range p.Parent[:len(p.Parent)-1] {
		if u == v && r.IntN(2) == 0 {
			p.Parent[w] = len(p.Parent) - 1
		}
	}
	return p
}

// coarser is the same in another unit of weight.
func coarser(_ *rand.Rand, p Problem) Problem {
	p.Weight, p.Windows = slices.Clone(p.Weight), slices.Clone(p.Windows)
	for v := range p.Weight {
		p.Weight[v] *= 1_000_000
	}
	for i, w := range p.Windows {
		p.Windows[i] = Window{w.Low * 1_000_000, w.High * 1_000_000}
	}
	slices.Reverse(p.Windows)
	return p
}

// sideBySide writes a joint as two beside each other that share its price.
func sideBySide(r *rand.Rand, p Problem) Problem {
	p.Price, p.Links = slices.Clone(p.Price), slices.Clone(p.Links)
	for v, u := range p.Parent {
		if u >= 0 && p.Price[v] > 0 {
			share := r.Int64N(p.Price[v])
			p.Price[v] -= share
			p.Links = append(p.Links, Link{v, u, share})
			break
		}
	}
	return p
}

func TestWritingItOtherwiseKeepsTheScore(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 10))
	for name, change := range map[string]func(*rand.Rand, Problem) Problem{
		"rehung": rehung, "halved": halved, "coarser": coarser, "side by side": sideBySide,
	} {
		for range 500 {
			p := draw(r, 2+r.IntN(25), 2)
			q := change(r, p)
			a, b := mustSolve(t, p), mustSolve(t, q)
			if merit(p, a.Score) != merit(p, b.Score) || !a.Exhaustive || !b.Exhaustive {
				t.Fatalf("%s: %+v became %+v\n%+v\n%+v", name, a.Score, b.Score, p, q)
			}
		}
	}
}

func TestMoreFreedomIsNeverWorse(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 11))
	for range 1500 {
		p := draw(r, 2+r.IntN(25), 2)
		a := mustSolve(t, p)
		q := p
		low := r.Int64N(50)
		q.Windows = append(slices.Clone(p.Windows), Window{low, low + r.Int64N(30)})
		if b := mustSolve(t, q); better(merit(p, a.Score), merit(p, b.Score)) {
			t.Fatalf("another window: %+v became %+v\n%+v\n%+v", a.Score, b.Score, p, q)
		}
		q = p
		q.Price = slices.Clone(p.Price)
		for v := range q.Price {
			if q.Price[v] > 0 {
				q.Price[v] /= 2
			}
		}
		if b := mustSolve(t, q); better(merit(p, a.Score), merit(p, b.Score)) {
			t.Fatalf("lower prices: %+v became %+v\n%+v", a.Score, b.Score, p)
		}
	}
}

func TestForestsAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 12))
	for range 500 {
		p := draw(r, 1+r.IntN(20), 1)
		q := draw(r, 1+r.IntN(20), 1)
		q.Windows, q.Aim, q.TestPrice = p.Windows, p.Aim, p.TestPrice
		both, n := p, len(p.Parent)
		both.Parent, both.Links = slices.Clone(p.Parent), slices.Clone(p.Links)
		both.Weight, both.Price = slices.Concat(p.Weight, q.Weight), slices.Concat(p.Price, q.Price)
		for _, u := range q.Parent {
			if u >= 0 {
				u += n
			}
			both.Parent = append(both.Parent, u)
		}
		for _, l := range q.Links {
			both.Links = append(both.Links, Link{l.A + n, l.B + n, l.Price})
		}
		sum := mustSolve(t, p).Score
		sum.add(mustSolve(t, q).Score)
		if s := mustSolve(t, both); merit(p, s.Score) != merit(p, sum) {
			t.Fatalf("together %+v, one by one %+v\n%+v\n%+v", s.Score, sum, p, q)
		}
	}
}

// Long chains and wide trees keep to the rules, rings and bans among them.
func TestLargeAnswersAreLegal(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 13))
	for _, shape := range []string{"chain", "random", "attach", "spigots", "branches"} {
		p := grown(shape, 100_000, 1_000_000, gapped...)
		for v := range p.Price {
			if r.IntN(10) == 0 {
				p.Price[v] = Banned
			}
		}
		for range 5 {
			a := r.IntN(99_000)
			p.Links = append(p.Links, Link{a, a + 1 + r.IntN(30), 2000})
		}
		if s := mustSolve(t, p); !s.Exhaustive {
			t.Errorf("%s: not proved best after work %d and %d ring solves", shape, s.Work, s.RingSolves)
		}
	}
}
