package blanking

import "sort"

// leastMakes is by size a number of blanks that every order needs: the most in
// one test, and where the next test is made ready ahead, more.
func (m *model) leastMakes() []int {
	least := m.most()
	n := len(m.counts)
	if !m.ahead || n < 2 {
		return least
	}
	few := m.fewest()
	for i := range m.counts { // a test has at least one neighbour
		for _, c := range m.counts[i] {
			least[c.size] = max(least[c.size], m.besideFewest(i, c, few))
		}
	}
	m.crowd(least)
	return least
}

// two are the two smallest numbers of blanks of a size in the tests of a visit,
// and whose the smallest is.
type two struct{ first, second, whose int }

// fewest finds the two smallest numbers of every size in every visit. Sizes that
// a test of the visit lacks aren't listed but where only one lacks it.
func (m *model) fewest() []map[int]two {
	groups := m.group[len(m.group)-1] + 1
	in, list := make([]int, groups), make([]map[int][]count, groups)
	for i, counts := range m.counts {
		g := m.group[i]
		if in[g]++; list[g] == nil {
			list[g] = map[int][]count{}
		}
		for _, c := range counts {
			list[g][c.size] = append(list[g][c.size], count{i, c.n})
		}
	}
	few := make([]map[int]two, groups)
	for g, sizes := range list {
		few[g] = map[int]two{}
		for size, have := range sizes {
			if in[g]-len(have) > 1 {
				continue // two tests without: the smallest are nought
			}
			sort.SliceStable(have, func(a, b int) bool { return have[a].n < have[b].n })
			t := two{first: have[0].n, second: many, whose: have[0].size}
			switch {
			case in[g] > len(have):
				t = two{first: 0, second: t.first, whose: -1} // whoever lacks it
			case len(have) > 1:
				t.second = have[1].n
			}
			few[g][size] = t
		}
	}
	return few
}

const many = 1 << 30

// besideFewest is the fewest blanks of a size in use at once where test i
// follows or comes before some other test.
func (m *model) besideFewest(i int, c count, few []map[int]two) int {
	best, g := many, m.group[i]
	for v := max(0, g-1); v <= g+1 && v < len(few); v++ {
		t, listed := few[v][c.size]
		switch {
		case !listed:
			best = min(best, c.n)
		case t.whose == i:
			best = min(best, c.n+t.second)
		default:
			best = min(best, c.n+t.first)
		}
	}
	for k := 0; k < len(m.links[i]); {
		to := m.links[i][k].to
		if d := m.group[to] - g; d >= -1 && d <= 1 {
			m.each(i, to, func(size, n int) {
				if size == c.size {
					best = min(best, n)
				}
			})
		}
		for k < len(m.links[i]) && m.links[i][k].to == to {
			k++
		}
	}
	if best >= many {
		return c.n
	}
	return best
}

// crowd raises the least by this: of more than half of all tests two follow each
// other in every order.
func (m *model) crowd(least []int) {
	have, turn := make([][]int, m.sizes), make([]int, m.sizes)
	for i, list := range m.counts {
		for _, c := range list {
			have[c.size] = append(have[c.size], c.n)
		}
		for _, l := range m.links[i] {
			turn[l.size] = max(turn[l.size], l.n)
		}
	}
	k := (len(m.counts)+1)/2 + 1
	for size, list := range have {
		if len(list) >= k {
			sort.Sort(sort.Reverse(sort.IntSlice(list)))
			least[size] = max(least[size], list[k-1]+list[k-2]-turn[size])
		}
	}
}
