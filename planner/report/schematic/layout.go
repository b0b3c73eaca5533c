package schematic

import (
	"math"
	"unicode/utf8"

	"blankoff/planner/report"
)

// spot is where a node of the drawing lies.
type spot struct {
	node     int
	parent   int // spot, -1
	kids     []int
	on       int // the spot that goes straight on from it, -1
	level    string
	system   int     // block
	width    float64 // along x
	x        float64 // where it leaves its parent
	row      int     // below its parent's; of a stretch's first, below the band's top
	stretch  int
	hangs    bool // leaves its parent sideways
	stubOnly bool // a spigot with nothing on it
}

// stretch is what hangs together on one level: it lies in one band.
type stretch struct {
	first    int  // spot
	up, down bool // something leaves it for a higher level, for a lower one
}

// layout is a picture being made.
type layout struct {
	d         *report.Ductwork
	spots     []spot
	at        map[int]int // node to spot
	roots     []int
	stretches []stretch
	blocks    []*block
	blockOf   map[string]int
	tagged    map[int]bool // rows that show their tags, in a small picture; nil: all do
}

// block is a system's part of the picture.
type block struct {
	name   string
	levels []string
	bands  map[string]*lane
}

// lane is a level's band while it fills.
type lane struct {
	low  []int // the rows taken at each column, from the top
	rows int
	top  float64
}

func newLayout(d *report.Ductwork, nodes []int) *layout {
	l := &layout{d: d, spots: make([]spot, len(nodes)), at: make(map[int]int, len(nodes)), blockOf: map[string]int{}}
	for i, k := range nodes {
		l.at[k] = i
		l.spots[i] = spot{node: k, parent: -1, on: -1, level: d.Nodes[k].Level}
	}
	for i := range l.spots {
		s := &l.spots[i]
		n := &d.Nodes[s.node]
		if n.Up >= 0 {
			if up, ok := l.at[d.Joints[n.Up].A]; ok {
				s.parent = up
			}
		}
		if s.parent < 0 {
			l.roots = append(l.roots, i)
			s.system = l.blockFor(n.System)
			continue
		}
		p := &l.spots[s.parent]
		p.kids = append(p.kids, i)
		s.hangs = n.Side > 0
		if !s.hangs && p.on < 0 {
			p.on = i
		} else {
			s.hangs = true
		}
		if s.level == "" {
			s.level = p.level
		}
		s.system = p.system
	}
	for i := range l.spots {
		s := &l.spots[i]
		s.stubOnly = s.hangs && len(s.kids) == 0 && d.Nodes[s.node].Spigot && s.level == l.spots[s.parent].level
	}
	return l
}

func (l *layout) blockFor(system string) int {
	if b, ok := l.blockOf[system]; ok {
		return b
	}
	l.blockOf[system] = len(l.blocks)
	l.blocks = append(l.blocks, &block{name: system, bands: map[string]*lane{}})
	return len(l.blocks) - 1
}

// measure gives every node its width and its place along x, from the plant
// outward, and gathers the stretches.
func (l *layout) measure() {
	for from := 0; from < len(l.spots); {
		to := from + 1
		item := l.d.Nodes[l.spots[from].node].Item
		for to < len(l.spots) && l.d.Nodes[l.spots[to].node].Item == item {
			to++
		}
		label, least, perMetre, most := letter*float64(min(longTag, utf8.RuneCountInString(l.d.Nodes[l.spots[from].node].Tag)))+8, 20.0, 9.0, 60.0
		if l.tagged != nil {
			least, perMetre, most = 6, 3, 18
			if !l.tagged[item] {
				label = 0
			}
		}
		for i := from; i < to; i++ {
			s := &l.spots[i]
			n := &l.d.Nodes[s.node]
			s.width = snap(max(least, min(most, least-6+perMetre*n.Long), label/float64(to-from), 12*float64(l.hung(i))+8))
			if l.tagged != nil && l.hung(i) == 0 {
				s.width = snap(max(least, min(most, perMetre*n.Long), label/float64(to-from)))
			}
		}
		from = to
	}
	for i := range l.spots {
		s := &l.spots[i]
		if s.parent >= 0 {
			p := &l.spots[s.parent]
			if s.hangs {
				s.x = snap(p.x + p.width*l.share(s.parent, i))
			} else {
				s.x = p.x + p.width
			}
			if p.level == s.level {
				s.stretch = p.stretch
				continue
			}
		}
		s.stretch = len(l.stretches)
		l.stretches = append(l.stretches, stretch{first: i})
	}
}

func snap(x float64) float64 { return math.Round(x/column) * column }

// hung counts what leaves a node sideways.
func (l *layout) hung(i int) int {
	n := 0
	for _, k := range l.spots[i].kids {
		if l.spots[k].hangs {
			n++
		}
	}
	return n
}

// share is how far along its parent a node leaves it.
func (l *layout) share(parent, kid int) float64 {
	n, at := 0, 0
	for _, k := range l.spots[parent].kids {
		if l.spots[k].hangs {
			n++
			if k == kid {
				at = n
			}
		}
	}
	return float64(at) / float64(n+1)
}
