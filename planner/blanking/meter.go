package blanking

// score is what an order needs, the less the better: blanks to be made; places in
// the order where as many of a size are in use as ever, where that is more than
// the least; and blanks turned, where more is better.
type score struct{ made, tight, turned int }

// less compares two scores; tight says whether tight places count.
func (s score) less(o score, tight bool) bool {
	switch {
	case s.made != o.made:
		return s.made < o.made
	case tight && s.tight != o.tight:
		return s.tight < o.tight
	}
	return s.turned > o.turned
}

// meter keeps count of what an order needs while it is changed.
type meter struct {
	m     *model
	order []int
	least []int
	in    [][]int // by size and number in use: at how many places of the order
	top   []int   // by size
	score score
	loose bool // tight places count no more
}

func newMeter(m *model, order, least []int) *meter {
	x := &meter{m: m, order: append([]int(nil), order...), least: least, in: make([][]int, m.sizes), top: make([]int, m.sizes)}
	for size, n := range m.most() {
		x.in[size] = make([]int, 2*n+1)
	}
	for k := 1; k < len(order); k++ {
		x.count(order[k-1], order[k], 1)
	}
	return x
}

// count adds a neighbourhood of the order, or with -1 takes it away.
func (x *meter) count(a, b, by int) {
	x.score.turned += by * x.m.turns(a, b)
	x.m.each(a, b, func(size, n int) {
		in, top := x.in[size], x.top[size]
		x.drop(size)
		in[n] += by
		top = max(top, n)
		for top > 0 && in[top] == 0 {
			top--
		}
		x.top[size] = top
		x.score.made += top
		if top > x.least[size] {
			x.score.tight += in[top]
		}
	})
}

// drop takes a size out of the score.
func (x *meter) drop(size int) {
	top := x.top[size]
	x.score.made -= top
	if top > x.least[size] {
		x.score.tight -= x.in[size][top]
	}
}

// change is neighbourhoods to be given up and to be made.
type change struct{ old, new [][2]int }

// try makes a change in the counts and takes it back unless it is for the better.
func (x *meter) try(c change) bool {
	was := x.score
	for _, e := range c.old {
		x.count(e[0], e[1], -1)
	}
	for _, e := range c.new {
		x.count(e[0], e[1], 1)
	}
	if x.score.less(was, !x.loose) {
		return true
	}
	for _, e := range c.new {
		x.count(e[0], e[1], -1)
	}
	for _, e := range c.old {
		x.count(e[0], e[1], 1)
	}
	return false
}

// better tries changes where the order is tight and where tests that share a
// joint are apart, until none helps or so many were tried: first to have fewer
// tight places, then only to turn more.
func (x *meter) better(tries int) {
	for went := true; (went || !x.loose) && tries > 0; {
		x.loose, went = !went, false
		for at := 0; at < len(x.order) && tries > 0; at++ {
			if x.worth(at) && x.improve(at, &tries) {
				went = true
			}
		}
	}
}

// worth reports whether the test at a place is worth moving.
func (x *meter) worth(at int) bool {
	v, tight := x.order[at], false
	isTight := func(k int) bool {
		if k < 0 || k >= len(x.order) {
			return false
		}
		x.m.each(v, x.order[k], func(size, n int) { tight = tight || n == x.top[size] && n > x.least[size] })
		return tight
	}
	if isTight(at-1) || isTight(at+1) {
		return true
	}
	for _, l := range x.m.links[v] {
		if (at == 0 || x.order[at-1] != l.to) && (at+1 == len(x.order) || x.order[at+1] != l.to) {
			return true
		}
	}
	return false
}

// improve moves the test at a place, or turns a stretch that begins or ends with
// it round, if that is for the better.
func (x *meter) improve(at int, tries *int) bool {
	from, to := x.m.bounds(x.m.group[x.order[at]])
	for k := from; k < to && *tries > 0; k++ {
		if k == at {
			continue
		}
		*tries -= 2
		if x.try(x.moved(at, k)) {
			v := x.order[at]
			if k < at {
				copy(x.order[k+1:at+1], x.order[k:at])
			} else {
				copy(x.order[at:k], x.order[at+1:k+1])
			}
			x.order[k] = v
			return true
		}
		lo, hi := min(at, k), max(at, k)
		if x.try(x.turned(lo, hi)) {
			turnRound(x.order[lo : hi+1])
			return true
		}
	}
	return false
}

// moved is the change of taking the test at a place to another place.
func (x *meter) moved(at, to int) (c change) {
	o := x.order
	left, right := to-1, to // it comes to stand between these
	if to > at {
		left, right = to, to+1
	}
	c.old, c.new = x.beside(c.old, at-1, at), x.beside(c.new, at-1, at+1)
	c.old = x.beside(c.old, at, at+1)
	c.old = x.beside(c.old, left, right)
	if left >= 0 {
		c.new = append(c.new, [2]int{o[left], o[at]})
	}
	if right < len(o) {
		c.new = append(c.new, [2]int{o[at], o[right]})
	}
	return c
}

// turned is the change of turning a stretch round.
func (x *meter) turned(lo, hi int) (c change) {
	o := x.order
	if lo > 0 {
		c.old, c.new = append(c.old, [2]int{o[lo-1], o[lo]}), append(c.new, [2]int{o[lo-1], o[hi]})
	}
	if hi+1 < len(o) {
		c.old, c.new = append(c.old, [2]int{o[hi], o[hi+1]}), append(c.new, [2]int{o[lo], o[hi+1]})
	}
	return c
}

// beside adds the neighbourhood of two places, if there are both.
func (x *meter) beside(list [][2]int, a, b int) [][2]int {
	if a < 0 || b >= len(x.order) {
		return list
	}
	return append(list, [2]int{x.order[a], x.order[b]})
}
