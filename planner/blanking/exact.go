package blanking

import "math/bits"

// labelWork is how many times two labels may be compared, all in all.
const labelWork = 20_000_000

// found is what the exact search found: how many blanks more than the least have
// to be made, and the most that can be turned with as few.
type found struct{ over, turned int }

// label is the worth of one way to make the tests of a set, its first one given:
// by size, how many blanks more than the least are in use at once, and how many
// are turned.
type label struct {
	turned int32
	next   int32 // of the same set and first test; -1: none
}

// search finds the best of all orders. It goes over sets of tests that are left,
// by the first of them, and keeps every label that no other is as good as. The
// blanks above the least are allowed one by one, so that labels stay few.
type search struct {
	m      *model
	n      int
	wide   int // sizes that can be over the least at all
	left   int // work
	most   int // blanks over the least
	over   [][]uint16
	turns  [][]int32
	later  []uint32 // by group: the tests of later ones
	head   []int32  // by set and first test
	labels []label
	vecs   []uint16
	now    []uint16
}

// exact finds the best order, the first among equals. done is false where there
// are too many tests or the work limit was met; found.over then still is a number
// of blanks over the least that every order needs.
func (m *model) exact(least []int) (order []int, f found, done bool) {
	n := len(m.counts)
	if n == 0 {
		return nil, f, true
	}
	if n > exactTo {
		return nil, f, false
	}
	s := &search{m: m, n: n, left: labelWork, head: make([]int32, n<<n)}
	s.settle(least)
	for ; s.left > 0; s.most++ {
		if !s.run() {
			break
		}
		if order, f.turned = s.best(); order != nil {
			f.over = s.most
			return order, f, true
		}
	}
	f.over = s.most // fewer were all tried in vain
	return nil, f, false
}

// settle works out for every pair of tests what following each other means.
func (s *search) settle(least []int) {
	m := s.m
	at := make([]int, m.sizes)
	pairs := func(f func(i, j, size, n int)) {
		if !m.ahead {
			return
		}
		for i := range s.n {
			for j := range s.n {
				if i != j {
					m.each(i, j, func(size, n int) { f(i, j, size, n-least[size]) })
				}
			}
		}
	}
	pairs(func(_, _, size, n int) {
		if n > 0 && at[size] == 0 {
			s.wide++
			at[size] = s.wide
		}
	})
	s.over, s.turns = make([][]uint16, s.n*s.n), make([][]int32, s.n)
	for i := range s.n {
		s.turns[i] = make([]int32, s.n)
		for j := range s.n {
			s.over[i*s.n+j] = make([]uint16, s.wide)
			s.turns[i][j] = int32(m.turns(i, j))
		}
	}
	pairs(func(i, j, size, n int) {
		if n > 0 {
			s.over[i*s.n+j][at[size]-1] = uint16(min(n, 1<<16-1))
		}
	})
	s.later = make([]uint32, m.group[s.n-1]+1)
	for i, g := range m.group {
		for v := range g {
			s.later[v] |= 1 << i
		}
	}
	s.now = make([]uint16, s.wide)
}

// firsts are the tests with which a set may begin: those of its earliest visit.
func (s *search) firsts(set uint32) uint32 {
	return set &^ s.later[s.m.group[bits.TrailingZeros32(set)]]
}

// whole reports whether a set can be what is left: with a visit, all later ones.
func (s *search) whole(set uint32) bool {
	later := s.later[s.m.group[bits.TrailingZeros32(set)]]
	return set&later == later
}

// run fills the labels of every set; false where the work limit was met.
func (s *search) run() bool {
	s.labels, s.vecs = s.labels[:0], s.vecs[:0]
	for k := range s.head {
		s.head[k] = -1
	}
	for set := uint32(1); set < 1<<s.n; set++ {
		if !s.whole(set) {
			continue
		}
		for f := s.firsts(set); f != 0; f &= f - 1 {
			i := bits.TrailingZeros32(f)
			rest := set &^ (1 << i)
			if rest == 0 {
				clear(s.now)
				s.put(set, i, 0)
				continue
			}
			for r := s.firsts(rest); r != 0; r &= r - 1 {
				s.extend(set, i, rest, bits.TrailingZeros32(r))
			}
		}
		if s.left <= 0 {
			return false
		}
	}
	return true
}

// extend puts test i before every way to make the rest that begins with j.
func (s *search) extend(set uint32, i int, rest uint32, j int) {
	for k := s.head[int(rest)*s.n+j]; k >= 0; k = s.labels[k].next {
		if s.left--; s.join(s.now, s.vecs[int(k)*s.wide:], i, j) <= s.most {
			s.put(set, i, s.labels[k].turned+s.turns[i][j])
		}
	}
}

// join raises a label's blanks by those where i is followed by j, into to, and
// counts them.
func (s *search) join(to, vec []uint16, i, j int) int {
	n := 0
	for x, o := range s.over[i*s.n+j] {
		to[x] = max(vec[x], o)
		n += int(to[x])
	}
	return n
}

// put keeps the label s.now unless another is as good, and drops those that it
// is better than.
func (s *search) put(set uint32, i int, turned int32) {
	at := &s.head[int(set)*s.n+i]
	for prev := at; *prev >= 0; {
		k := *prev
		s.left--
		less, more := true, true
		for x, v := range s.vecs[int(k)*s.wide : int(k)*s.wide+s.wide] {
			less, more = less && v <= s.now[x], more && v >= s.now[x]
		}
		switch was := s.labels[k].turned; {
		case less && was >= turned:
			return
		case more && was <= turned:
			*prev = s.labels[k].next
		default:
			prev = &s.labels[k].next
		}
	}
	s.labels = append(s.labels, label{turned, *at})
	s.vecs = append(s.vecs, s.now...)
	*at = int32(len(s.labels) - 1)
}

// best reads the best order off the labels, the first among equals; nil where
// there is none.
func (s *search) best() (order []int, turned int) {
	all := uint32(1)<<s.n - 1
	most := int32(-1)
	for i := range s.n {
		for k := s.head[int(all)*s.n+i]; k >= 0; k = s.labels[k].next {
			most = max(most, s.labels[k].turned)
		}
	}
	if most < 0 {
		return nil, 0
	}
	past, next := make([]uint16, s.wide), make([]uint16, s.wide)
	last, done := -1, int32(0)
	for left := all; left != 0; {
		for f := s.firsts(left); f != 0; f &= f - 1 {
			j := bits.TrailingZeros32(f)
			copy(next, past)
			t := done
			if last >= 0 {
				s.join(next, past, last, j)
				t += s.turns[last][j]
			}
			if s.reaches(left, j, next, most-t) {
				copy(past, next)
				order, last, done, left = append(order, j), j, t, left&^(1<<j)
				break
			}
		}
	}
	return order, int(most)
}

// reaches reports whether some way to make a set, its first test given, turns as
// many as are wanted without more blanks than are allowed.
func (s *search) reaches(set uint32, i int, past []uint16, want int32) bool {
	for k := s.head[int(set)*s.n+i]; k >= 0; k = s.labels[k].next {
		n := 0
		for x, v := range s.vecs[int(k)*s.wide : int(k)*s.wide+s.wide] {
			n += int(max(v, past[x]))
		}
		if n <= s.most && s.labels[k].turned >= want {
			return true
		}
	}
	return false
}
