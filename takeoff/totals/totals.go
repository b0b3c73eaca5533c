// Package totals sums a takeoff up: by system, level, shape and size, against what the
// schedule's own rows of totals give, and its joints against what is usual.
package totals

import (
	"sort"

	"blankoff/fittings"
	"blankoff/takeoff/ledger"
	"blankoff/takeoff/terms"
)

// Part is a share of the totals under one heading.
type Part struct {
	Name        string
	Size        terms.Size // of its rows, where they are parted by size
	Rows        int
	Pieces      int
	Area        float64 // on the basis, m2
	Exact       float64 // m2
	JointLength float64 // m
}

// Totals are the sums of a takeoff. Only what is in scope counts in Area and in
// the parts; the rest is told apart. Area, Through and Out are on the basis, and
// each has its exact value beside it.
type Totals struct {
	Area         float64 // in scope, m2
	Through      float64 // in the test, area not counted, m2
	Out          float64 // not in the test, m2
	Exact        float64
	ThroughExact float64
	OutExact     float64
	Refused      float64 // of refused rows whose area could be worked out, m2; counted nowhere else
	JointLength  float64 // installation joints in scope, m; longitudinal seams apart, see SeamsApart
	BySystem     []Part
	ByLevel      []Part
	ByShape      []Part
	BySize       []Part
}

// Tally is what became of the rows.
type Tally struct {
	Used, Out int
	Refused   []int // the rows that were refused, in the file's order
}

// Of adds the rows up in the file's order and counts what became of them. The parts by
// shape and size are added up beside the rest.
func Of(g *ledger.Ledger) (t Totals, n Tally) {
	sections := make(chan [2][]Part)
	go func() {
		shape, size := bySection(g)
		sections <- [2][]Part{shape, size}
	}()
	system, level := parts{of: make([]*Part, len(g.Names))}, parts{of: make([]*Part, len(g.Names))}
	var area, exact, joints Sum
	for i := range g.Lines {
		l := &g.Lines[i]
		switch {
		case l.Refused:
			n.Refused = append(n.Refused, i)
			t.Refused += l.Area
			continue
		case l.Scope == terms.Out:
			n.Out++
			t.Out += l.Area
			t.OutExact += l.Exact
			continue
		case l.Scope == terms.Through:
			n.Used++
			t.Through += l.Area
			t.ThroughExact += l.Exact
			continue
		}
		n.Used++
		area.Add(l.Area)
		exact.Add(l.Exact)
		joints.Add(l.Joint)
		system.add(l.System, l)
		level.add(l.Level, l)
	}
	t.Area, t.Exact, t.JointLength = area.Value(), exact.Value(), joints.Value()
	name := func(k int) string { return g.Names[k] }
	t.BySystem, t.ByLevel = system.list(name), level.list(name)
	found := <-sections
	t.ByShape, t.BySize = found[0], found[1]
	return t, n
}

// bySection adds up the rows in scope by shape and by size.
func bySection(g *ledger.Ledger) (byShape, bySize []Part) {
	shape, size := parts{of: make([]*Part, fittings.FlatOval+1)}, parts{}
	sizes := map[string]int32{}
	for i := range g.Lines {
		l := &g.Lines[i]
		if l.Refused || l.Scope == terms.Out || l.Scope == terms.Through {
			continue
		}
		shape.add(int32(l.Shape), l)
		if k := sizeOf(g, l, sizes); size.add(k, l) {
			size.of[k].Size = g.SizeOf(l)
		}
	}
	byShape = shape.list(func(k int) string { return fittings.Shape(k).String() })
	return byShape, size.list(func(k int) string { return size.of[k].Size.Text() })
}

// sizeOf is the number of a row's size among those met so far. Sizes that are
// written alike are one.
func sizeOf(g *ledger.Ledger, l *ledger.Line, sizes map[string]int32) int32 {
	f := ledger.Face{Size: -1}
	if l.Roles != 0 && l.Kind != fittings.Plenum {
		if f = g.Faces[l.Faces[0]]; f.Size >= 0 {
			return f.Size
		}
	}
	text := g.SizeOf(l).Text()
	k, ok := sizes[text]
	if !ok {
		k = int32(len(sizes))
		sizes[text] = k
	}
	if l.Roles != 0 && l.Kind != fittings.Plenum {
		g.Faces[l.Faces[0]].Size = k
	}
	return k
}

// parts are the parts of the totals under one heading, by number.
type parts struct{ of []*Part }

// add adds a row to part k and reports whether it is the first.
func (p *parts) add(k int32, l *ledger.Line) (first bool) {
	for int(k) >= len(p.of) {
		p.of = append(p.of, nil)
	}
	x := p.of[k]
	if first = x == nil; first {
		x = &Part{}
		p.of[k] = x
	}
	x.Rows++
	x.Pieces += int(l.Quantity)
	x.Area += l.Area
	x.Exact += l.Exact
	x.JointLength += l.Joint
	return first
}

// list gives the parts that there are, by name.
func (p *parts) list(name func(k int) string) []Part {
	l := []Part{}
	for k, x := range p.of {
		if x != nil {
			x.Name = name(k)
			l = append(l, *x)
		}
	}
	sort.Slice(l, func(i, j int) bool { return terms.NaturalLess(l[i].Name, l[j].Name) })
	return l
}
