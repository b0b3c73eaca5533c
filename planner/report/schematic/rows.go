package schematic

import (
	"math"
	"sort"
)

// contour is how far a part of the picture reaches at each column, in rows from
// its first run's; columns count from first.
type contour struct {
	first       int
	top, bottom []int
}

const nothing = math.MaxInt32

// cover takes rows top to bottom at the columns from x0 to x1.
func (c *contour) cover(x0, x1, top, bottom int) {
	for x := x0; x <= x1; x++ {
		for len(c.top) <= x-c.first {
			c.top, c.bottom = append(c.top, nothing), append(c.bottom, -nothing)
		}
		k := x - c.first
		c.top[k], c.bottom[k] = min(c.top[k], top), max(c.bottom[k], bottom)
	}
}

// under is the least row below which a part clears what is there already.
func (c *contour) under(o *contour) int {
	row := 1
	for k := range o.top {
		for x := k - 1; x <= k+1; x++ { // a column of air on both sides
			if at := o.first + x - c.first; at >= 0 && at < len(c.bottom) && c.bottom[at] > -nothing && o.top[k] < nothing {
				row = max(row, c.bottom[at]-o.top[k]+1)
			}
		}
	}
	return row
}

// over is the greatest row, below 0, above which it does.
func (c *contour) over(o *contour) int {
	row := -1
	for k := range o.bottom {
		for x := k - 1; x <= k+1; x++ {
			if at := o.first + x - c.first; at >= 0 && at < len(c.top) && c.top[at] < nothing && o.bottom[k] > -nothing {
				row = min(row, c.top[at]-o.bottom[k]-1)
			}
		}
	}
	return row
}

// add puts a part at a row.
func (c *contour) add(o *contour, row int) {
	for k := range o.top {
		if o.top[k] < nothing {
			c.cover(o.first+k, o.first+k, o.top[k]+row, o.bottom[k]+row)
		}
	}
}

// stack finds the levels of every system, the highest first, and from which
// stretches something goes up or down.
func (l *layout) stack() {
	for i := range l.stretches {
		s := &l.spots[l.stretches[i].first]
		b := l.blocks[s.system]
		if b.bands[s.level] == nil {
			b.bands[s.level] = &lane{}
			b.levels = append(b.levels, s.level)
		}
	}
	for _, b := range l.blocks {
		sort.SliceStable(b.levels, func(i, j int) bool { return height(b.levels[i]) > height(b.levels[j]) })
	}
	for i := range l.stretches {
		s := &l.spots[l.stretches[i].first]
		if s.parent < 0 {
			continue
		}
		p := &l.spots[s.parent]
		up := l.rank(s.system, s.level) < l.rank(p.system, p.level)
		from := &l.stretches[p.stretch]
		from.up, from.down = from.up || up, from.down || !up
	}
}

func (l *layout) rank(system int, level string) int {
	for i, name := range l.blocks[system].levels {
		if name == level {
			return i
		}
	}
	return -1
}

// place finds the rows of a stretch and where it fits into its band.
func (l *layout) place(st *stretch) {
	s := &l.spots[st.first]
	c := l.shape(st.first, st)
	b := l.blocks[s.system].bands[s.level]
	row := 0
	for k := range c.top {
		if c.top[k] == nothing {
			continue
		}
		row = max(row, -c.top[k])
		if x := c.first + k; x < len(b.low) {
			row = max(row, b.low[x]-c.top[k])
		}
	}
	s.row = row
	for k := range c.bottom {
		if c.bottom[k] == -nothing {
			continue
		}
		x := c.first + k
		for len(b.low) <= x {
			b.low = append(b.low, 0)
		}
		b.low[x] = row + c.bottom[k] + 1
		b.rows = max(b.rows, b.low[x])
	}
}

// shape lays out a run and what leaves it sideways within its stretch: the
// furthest from the plant lies next to the run, so that no line crosses another.
func (l *layout) shape(start int, st *stretch) *contour {
	c := &contour{first: int(l.spots[start].x / column)}
	level := l.spots[start].level
	var kids []int
	for i := start; i >= 0 && l.spots[i].level == level; i = l.spots[i].on {
		s := &l.spots[i]
		c.cover(int(s.x/column), int((s.x+s.width)/column), 0, 0)
		for _, k := range s.kids {
			if kid := &l.spots[k]; kid.hangs && kid.level == level && !kid.stubOnly {
				kids = append(kids, k)
			}
		}
	}
	sort.SliceStable(kids, func(i, j int) bool { return l.spots[kids[i]].x > l.spots[kids[j]].x })
	for _, k := range kids {
		part := l.shape(k, st)
		below, above := c.under(part), c.over(part)
		row := below
		if st.down && !st.up || st.up == st.down && -above < below {
			row = above
		}
		l.spots[k].row = row
		c.add(part, row)
		x := int(l.spots[k].x / column)
		c.cover(x, x, min(0, row), max(0, row))
	}
	return c
}
