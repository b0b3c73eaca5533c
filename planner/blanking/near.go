package blanking

import "sort"

// Limits on the work of near: orders begun from the nearest, tests up to which
// that is done, and changes tried.
const (
	nearStarts  = 4
	nearTo      = 600
	changesMost = 120_000
)

// near finds a good order where not every one can be weighed. Where the next test
// is made ready ahead, several orders are begun with (as listed, by the paths of
// turned blanks, large beside small, each time the nearest), the best is taken
// and bettered by moving tests and turning stretches round.
func (m *model) near(least, paths []int) []int {
	if !m.ahead || len(paths) < 3 {
		return paths
	}
	listed := make([]int, len(paths))
	for k := range listed {
		listed[k] = k
	}
	tries := [][]int{listed, paths, m.largeBesideSmall()}
	if len(paths) <= nearTo {
		for start := range nearStarts {
			tries = append(tries, m.nearest(least, start))
		}
	}
	var best *meter
	for _, order := range tries {
		x := newMeter(m, order, least)
		x.better(changesMost / len(tries))
		if best == nil || x.score.less(best.score, false) {
			best = x
		}
	}
	return best.order
}

// bounds are the places in an order of a test's visit.
func (m *model) bounds(group int) (from, to int) {
	from = sort.SearchInts(m.group, group)
	return from, sort.SearchInts(m.group, group+1)
}

// largeBesideSmall puts the tests of a visit in the order largest, smallest,
// second largest and so on, by their number of blanks.
func (m *model) largeBesideSmall() []int {
	order := make([]int, 0, len(m.counts))
	size := func(k int) (n int) {
		for _, c := range m.counts[k] {
			n += c.n
		}
		return n
	}
	for from := 0; from < len(m.group); {
		_, to := m.bounds(m.group[from])
		list := make([]int, 0, to-from)
		for k := from; k < to; k++ {
			list = append(list, k)
		}
		sort.SliceStable(list, func(a, b int) bool { return size(list[a]) > size(list[b]) })
		for i, j := 0, len(list)-1; i <= j; i, j = i+1, j-1 {
			order = append(order, list[i])
			if i < j {
				order = append(order, list[j])
			}
		}
		from = to
	}
	return order
}

// nearest begins with a test of the first visit and follows each with the one
// that needs the fewest more blanks, then turns the most.
func (m *model) nearest(least []int, start int) []int {
	n := len(m.counts)
	makes := append([]int(nil), least...)
	used, order := make([]bool, n), make([]int, 0, n)
	_, to := m.bounds(0)
	k := start * to / nearStarts
	for {
		used[k], order = true, append(order, k)
		if len(order) == n {
			return order
		}
		from, to := m.bounds(m.group[len(order)]) // that of the next place
		best, bestMore, bestTurn := -1, 0, 0
		for j := from; j < to; j++ {
			if used[j] {
				continue
			}
			more := 0
			m.each(k, j, func(size, n int) { more += max(0, n-makes[size]) })
			if turn := m.turns(k, j); best < 0 || more < bestMore || more == bestMore && turn > bestTurn {
				best, bestMore, bestTurn = j, more, turn
			}
		}
		m.each(k, best, func(size, n int) { makes[size] = max(makes[size], n) })
		k = best
	}
}
