package blanking

import "container/heap"

// store is the blanks that are free, by size: those not in use for one step, or for
// two where the blanks of two tests that follow each other are in use at once.
type store struct {
	gap  int
	at   int         // the step
	used [][]int     // by size and blank: the step at which it was last in use
	free []numbers   // by size; also some that were taken since
	late [][]nowUsed // taken at this step, and at the one or two before it
}

// nowUsed is a blank that was taken.
type nowUsed struct{ size, no int }

func newStore(sizes int, ahead bool) *store {
	s := &store{gap: 1, used: make([][]int, sizes), free: make([]numbers, sizes)}
	if ahead {
		s.gap = 2
	}
	s.late = make([][]nowUsed, s.gap+1)
	return s
}

// reach goes to a step; steps are reached one after the other, from 0. What was last
// taken as many steps ago as the gap is free again.
func (s *store) reach(step int) {
	s.at = step
	for _, b := range s.late[(step+1)%len(s.late)] {
		if s.is(b.size, b.no) {
			heap.Push(&s.free[b.size], b.no)
		}
	}
	s.late[step%len(s.late)] = s.late[step%len(s.late)][:0]
}

// is reports whether a blank is free.
func (s *store) is(size, no int) bool { return s.used[size][no] <= s.at-s.gap }

// lowest is the lowest number of a size that is free, or that of a blank more; it is
// to be taken then.
func (s *store) lowest(size int) int {
	for list := &s.free[size]; list.Len() > 0; {
		if no := heap.Pop(list).(int); s.is(size, no) {
			return no
		}
	}
	return len(s.used[size])
}

// take takes a blank, or makes the one more.
func (s *store) take(size, no int) {
	if no == len(s.used[size]) {
		s.used[size] = append(s.used[size], s.at)
	}
	s.used[size][no] = s.at
	k := s.at % len(s.late)
	s.late[k] = append(s.late[k], nowUsed{size, no})
}

// numbers is a heap with the lowest number on top.
type numbers []int

func (n numbers) Len() int           { return len(n) }
func (n numbers) Less(i, j int) bool { return n[i] < n[j] }
func (n numbers) Swap(i, j int)      { n[i], n[j] = n[j], n[i] }
func (n *numbers) Push(x any)        { *n = append(*n, x.(int)) }
func (n *numbers) Pop() any {
	old := *n
	x := old[len(old)-1]
	*n = old[:len(old)-1]
	return x
}
