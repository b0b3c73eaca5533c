package takeoff

import (
	"sort"

	"blankoff/fittings"
	"blankoff/takeoff/terms"
)

// Part is a share of the totals under one heading.
type Part struct {
	Name        string
	First       *Item // of its rows, in the file's order
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

// sum adds the rows up in the file's order and counts what became of them.
func (t *Takeoff) sum() {
	s := &t.Schedule
	s.RowsUsed, s.RowsExcluded, s.RowsRefused = 0, len(s.TotalRows)+s.RowsLeft, 0
	system, level := parts{of: make([]*Part, len(t.names))}, parts{of: make([]*Part, len(t.names))}
	shape, size := parts{of: make([]*Part, fittings.FlatOval+1)}, parts{}
	sizes := map[string]int32{}
	t.Totals = Totals{}
	var area, exact, joints Sum
	for i := range t.lines {
		l := &t.lines[i]
		switch {
		case l.refused:
			s.RowsRefused++
			t.Refused = append(t.Refused, t.at(l))
			t.Totals.Refused += l.area
			continue
		case l.scope == terms.Out:
			s.RowsExcluded++
			t.Totals.Out += l.area
			t.Totals.OutExact += l.exact
			continue
		case l.scope == terms.Through:
			s.RowsUsed++
			t.Totals.Through += l.area
			t.Totals.ThroughExact += l.exact
			continue
		}
		s.RowsUsed++
		area.Add(l.area)
		exact.Add(l.exact)
		joints.Add(l.joint)
		system.add(t, l.system, i)
		level.add(t, l.level, i)
		shape.add(t, int32(l.shape), i)
		size.add(t, t.sizeOf(l, sizes), i)
	}
	s.OutM2, s.RefusedM2 = t.Totals.Out, t.Totals.Refused
	t.Totals.Area, t.Totals.Exact, t.Totals.JointLength = area.Value(), exact.Value(), joints.Value()
	name := func(k int) string { return t.names[k] }
	t.Totals.BySystem, t.Totals.ByLevel = system.list(name), level.list(name)
	t.Totals.ByShape = shape.list(func(k int) string { return fittings.Shape(k).String() })
	t.Totals.BySize = size.list(func(k int) string { return size.of[k].First.SizeText() })
}

// sizeOf is the number of a row's size among those met so far. Sizes that are
// written alike are one.
func (t *Takeoff) sizeOf(l *line, sizes map[string]int32) int32 {
	f := face{size: -1}
	if l.roles != 0 && l.kind != fittings.Plenum {
		if f = t.faces[l.faces[0]]; f.size >= 0 {
			return f.size
		}
	}
	text := t.item(l).SizeText()
	k, ok := sizes[text]
	if !ok {
		k = int32(len(sizes))
		sizes[text] = k
	}
	if l.roles != 0 && l.kind != fittings.Plenum {
		t.faces[l.faces[0]].size = k
	}
	return k
}

// parts are the parts of the totals under one heading, by number.
type parts struct{ of []*Part }

func (p *parts) add(t *Takeoff, k int32, i int) {
	for int(k) >= len(p.of) {
		p.of = append(p.of, nil)
	}
	x := p.of[k]
	if x == nil {
		x = &Part{First: t.full(i)}
		p.of[k] = x
	}
	l := &t.lines[i]
	x.Rows++
	x.Pieces += int(l.quantity)
	x.Area += l.area
	x.Exact += l.exact
	x.JointLength += l.joint
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
