package blanking

// sets are groups of tests that hang together.
type sets []int

func newSets(n int) sets {
	s := make(sets, n)
	for k := range s {
		s[k] = k
	}
	return s
}

func (s sets) find(k int) int {
	for s[k] != k {
		s[k] = s[s[k]]
		k = s[k]
	}
	return k
}

// join puts two groups together; false if they were one already.
func (s sets) join(a, b int) bool {
	a, b = s.find(a), s.find(b)
	if a == b {
		return false
	}
	s[max(a, b)] = min(a, b)
	return true
}

// chained puts the paths of every visit one after the other, so that where it
// can be done the last test of a visit and the first of the next turn a blank:
// the end of a path each, and not both ends of one path among several.
func chained(groups [][][]int, across [][]edge, next [][]int) [][]int {
	out := make([][]int, len(groups))
	entry := -1
	for v, paths := range groups {
		exit, into, best := -1, -1, 0
		for _, e := range across[v] {
			if e.n > best && len(next[e.a]) < 2 && len(next[e.b]) < 2 && fits(paths, entry, e.a) {
				exit, into, best = e.a, e.b, e.n
			}
		}
		first, last, middle := []int{}, []int{}, []int{}
		for _, path := range paths {
			ends := func(k int) bool { return k >= 0 && (path[0] == k || path[len(path)-1] == k) }
			switch {
			case ends(entry):
				if path[0] != entry {
					turnRound(path)
				}
				first = path
			case ends(exit):
				if path[len(path)-1] != exit {
					turnRound(path)
				}
				last = path
			default:
				middle = append(middle, path...)
			}
		}
		out[v] = append(append(append(out[v], first...), middle...), last...)
		entry = into
	}
	return out
}

// fits reports whether a visit can begin with one test and end with another,
// both of them ends of paths.
func fits(paths [][]int, entry, exit int) bool {
	if entry < 0 || len(paths) == 1 && (len(paths[0]) == 1 || entry != exit) {
		return true
	}
	for _, path := range paths {
		a, b := path[0], path[len(path)-1]
		if (a == entry || b == entry) && (a == exit || b == exit) {
			return false
		}
	}
	return true
}
