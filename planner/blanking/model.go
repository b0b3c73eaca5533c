package blanking

import "sort"

// count is how many blanks of a size a test has.
type count struct{ size, n int }

// link is how many blanks of a size a test has at joints that it shares with
// another test.
type link struct{ to, size, n int }

// model is the tests in the order of their visits, with what the weighing of an
// order needs. Tests are numbered in that order here.
type model struct {
	ahead  bool
	number []int // in the caller's list
	group  []int // visit, counted from 0 without gaps
	sizes  int
	fits   int
	counts [][]count // by test, by size
	links  [][]link  // by test, by the other test and size
}

func newModel(tests []Test, ahead bool) *model {
	m := &model{ahead: ahead, number: make([]int, len(tests))}
	for i := range tests {
		m.number[i] = i
	}
	sort.SliceStable(m.number, func(a, b int) bool { return tests[m.number[a]].Visit < tests[m.number[b]].Visit })
	for k, i := range m.number {
		g := 0
		if k > 0 {
			if g = m.group[k-1]; tests[i].Visit != tests[m.number[k-1]].Visit {
				g++
			}
		}
		m.group = append(m.group, g)
		per := map[int]int{}
		for _, b := range tests[i].Blanks {
			m.sizes = max(m.sizes, b.Size+1)
			per[b.Size]++
		}
		m.counts = append(m.counts, sorted(per))
		m.fits += len(tests[i].Blanks)
	}
	m.addLinks(tests)
	return m
}

func sorted(per map[int]int) []count {
	out := make([]count, 0, len(per))
	for size, n := range per {
		out = append(out, count{size, n})
	}
	sort.Slice(out, func(a, b int) bool { return out[a].size < out[b].size })
	return out
}

// addLinks finds the joints that two tests share, and how many blanks of one
// size they have there.
func (m *model) addLinks(tests []Test) {
	type side struct{ test, n int }
	at := map[Blank][]side{}
	var places []Blank
	for k, i := range m.number {
		for _, b := range tests[i].Blanks {
			list := at[b]
			if len(list) == 0 {
				places = append(places, b)
			}
			if last := len(list) - 1; last >= 0 && list[last].test == k {
				list[last].n++
				continue
			}
			at[b] = append(list, side{k, 1})
		}
	}
	m.links = make([][]link, len(m.number))
	for _, b := range places {
		for x, one := range at[b] {
			for y, other := range at[b] {
				if x != y {
					m.links[one.test] = append(m.links[one.test], link{other.test, b.Size, min(one.n, other.n)})
				}
			}
		}
	}
	for k, list := range m.links {
		m.links[k] = merged(list)
	}
}

// merged sorts links and adds up those of one test and size.
func merged(list []link) []link {
	sort.Slice(list, func(a, b int) bool {
		if list[a].to != list[b].to {
			return list[a].to < list[b].to
		}
		return list[a].size < list[b].size
	})
	out := list[:0]
	for _, l := range list {
		if last := len(out) - 1; last >= 0 && out[last].to == l.to && out[last].size == l.size {
			out[last].n += l.n
			continue
		}
		out = append(out, l)
	}
	return out
}

// shared are the links between two tests.
func (m *model) shared(a, b int) []link {
	list := m.links[a]
	from := sort.Search(len(list), func(i int) bool { return list[i].to >= b })
	to := from
	for to < len(list) && list[to].to == b {
		to++
	}
	return list[from:to]
}

// turns is how many blanks are only turned between two tests that follow each
// other.
func (m *model) turns(a, b int) int {
	n := 0
	for _, l := range m.shared(a, b) {
		n += l.n
	}
	return n
}

// each calls f with the blanks of every size that are in use at once where two
// tests follow each other and the second is made ready while the first runs.
func (m *model) each(a, b int, f func(size, n int)) {
	one, other, shared := m.counts[a], m.counts[b], m.shared(a, b)
	for len(one)+len(other) > 0 {
		var c count
		switch {
		case len(other) == 0 || len(one) > 0 && one[0].size < other[0].size:
			c, one = one[0], one[1:]
		case len(one) == 0 || other[0].size < one[0].size:
			c, other = other[0], other[1:]
		default:
			c, one, other = count{one[0].size, one[0].n + other[0].n}, one[1:], other[1:]
		}
		for len(shared) > 0 && shared[0].size <= c.size {
			if shared[0].size == c.size {
				c.n -= shared[0].n
			}
			shared = shared[1:]
		}
		f(c.size, c.n)
	}
}

// weigh is what an order needs: by size the most in use at once, and the blanks
// that are only turned.
func (m *model) weigh(order []int) (makes []int, turned int) {
	makes = m.most()
	for k := 1; k < len(order); k++ {
		turned += m.turns(order[k-1], order[k])
		if m.ahead {
			m.each(order[k-1], order[k], func(size, n int) { makes[size] = max(makes[size], n) })
		}
	}
	return makes, turned
}

// most is by size the most in one test.
func (m *model) most() []int {
	makes := make([]int, m.sizes)
	for _, list := range m.counts {
		for _, c := range list {
			makes[c.size] = max(makes[c.size], c.n)
		}
	}
	return makes
}
