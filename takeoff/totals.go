package takeoff

import "sort"

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

// sum adds the items up in the file's order and counts what became of the rows.
func (t *Takeoff) sum() {
	s := &t.Schedule
	s.RowsUsed, s.RowsExcluded, s.RowsRefused = 0, len(s.TotalRows)+s.RowsLeft, 0
	system, level, shape, size := parts{}, parts{}, parts{}, parts{}
	t.Totals = Totals{}
	var area, exact, joints Sum
	for i := range t.Items {
		it := &t.Items[i]
		switch {
		case it.Refused:
			s.RowsRefused++
			t.Totals.Refused += it.Area
			continue
		case it.Scope == Out:
			s.RowsExcluded++
			t.Totals.Out += it.Area
			t.Totals.OutExact += it.Exact
			continue
		case it.Scope == Through:
			s.RowsUsed++
			t.Totals.Through += it.Area
			t.Totals.ThroughExact += it.Exact
			continue
		}
		s.RowsUsed++
		area.Add(it.Area)
		exact.Add(it.Exact)
		joints.Add(it.JointLength)
		system.add(it.System, it)
		level.add(it.Level, it)
		shape.add(it.Piece.Shape.String(), it)
		size.add(it.SizeText(), it)
	}
	s.OutM2, s.RefusedM2 = t.Totals.Out, t.Totals.Refused
	t.Totals.Area, t.Totals.Exact, t.Totals.JointLength = area.Value(), exact.Value(), joints.Value()
	t.Totals.BySystem, t.Totals.ByLevel = system.list(), level.list()
	t.Totals.ByShape, t.Totals.BySize = shape.list(), size.list()
}

type parts map[string]*Part

func (p parts) add(name string, it *Item) {
	x := p[name]
	if x == nil {
		x = &Part{Name: name, First: it}
		p[name] = x
	}
	x.Rows++
	x.Pieces += it.Quantity
	x.Area += it.Area
	x.Exact += it.Exact
	x.JointLength += it.JointLength
}

func (p parts) list() []Part {
	l := make([]Part, 0, len(p))
	for _, x := range p {
		l = append(l, *x)
	}
	sort.Slice(l, func(i, j int) bool { return NaturalLess(l[i].Name, l[j].Name) })
	return l
}
