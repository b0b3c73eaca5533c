package audit

import (
	"math"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// measurer works out what the rows of a takeoff would come to in any way.
type measurer struct {
	t        *takeoff.Takeoff
	children [][]int                    // by item: what hangs on it
	used     []map[fittings.EndRole]int // by item: pieces on each of its ends
}

func newMeasurer(t *takeoff.Takeoff) *measurer {
	m := &measurer{t: t, children: make([][]int, len(t.Items)), used: make([]map[fittings.EndRole]int, len(t.Items))}
	take := func(i int, r fittings.EndRole) {
		if m.used[i] == nil {
			m.used[i] = map[fittings.EndRole]int{}
		}
		m.used[i][r]++
	}
	for i := range t.Items {
		it := &t.Items[i]
		if it.Parent >= 0 {
			m.children[it.Parent] = append(m.children[it.Parent], i)
			take(i, fittings.PlantEnd)
			if it.ParentEnd != fittings.PlantEnd {
				take(it.Parent, it.ParentEnd)
			}
		}
		if it.RingWith >= 0 {
			take(i, fittings.FarEnd)
			take(it.RingWith, it.RingEnd)
		}
	}
	return m
}

// area is what row i would come to in way w, m2. It reports false where its piece
// can't be measured so.
func (m *measurer) area(i int, w *way) (float64, bool) {
	it := &m.t.Items[i]
	p := m.piece(i, w)
	if w.without && isFitting(&p) {
		return 0, true
	}
	n := 1.0
	if !w.once {
		n = float64(it.Quantity)
	}
	each, _, ok := m.one(&p, w)
	if !ok {
		return 0, false
	}
	sum := each * n
	given := p.Sizes.Has(fittings.GivenArea)
	if !given && !w.face && !w.without && !w.straight {
		if w.half && halves(&p) {
			kept, cut, ok := m.halved(i, &p, w, n)
			if !ok {
				return 0, false
			}
			sum = kept/2 - cut
		} else if w.basis.Openings == fittings.Deducted {
			sum -= m.cut(i, w)
		}
	}
	if w.ends != noEnds {
		sum += m.faces(i, &p, w, n)
	}
	if !given {
		sum *= w.sizes * w.sizes
		if w.across != 1 {
			sum *= w.across
			if p.Kind == fittings.Cap || w.face {
				sum *= w.across
			}
		}
	}
	return sum * w.times, true
}

// halved is a row with its openings kept, and what they take off.
func (m *measurer) halved(i int, p *fittings.Piece, w *way, n float64) (kept, cut float64, ok bool) {
	basis := w.basis
	basis.Openings = fittings.Kept
	whole, _, wrong := fittings.AreaOn(p, &basis)
	if len(wrong) > 0 {
		return 0, 0, false
	}
	if w.basis.Openings == fittings.Kept {
		return whole * n, 0, true
	}
	net, _, wrong := fittings.AreaOn(p, &w.basis)
	return whole * n, (whole-net)*n + m.cut(i, w), len(wrong) == 0
}

// halves reports a piece whose girth is that of a rectangle throughout.
func halves(p *fittings.Piece) bool {
	switch p.Kind {
	case fittings.Transition, fittings.Cap, fittings.Plenum:
		return false
	}
	f, _ := fittings.Measure(p)
	return len(f.Ends) > 0 && f.Ends[len(f.Ends)-1].Shape == fittings.Rectangular && f.Ends[0].Shape == fittings.Rectangular
}

// one is the area of one piece as it's made, and what it takes out of its wall.
func (m *measurer) one(p *fittings.Piece, w *way) (area, opening float64, ok bool) {
	if v, given := p.Sizes.Get(fittings.GivenArea); given {
		_, opening, _ := fittings.AreaOn(p, &w.basis)
		return v, opening, true
	}
	switch {
	case w.face:
		return faceOf(p)
	case w.straight && isFitting(p):
		return straightOf(p)
	}
	area, opening, problems := fittings.AreaOn(p, &w.basis)
	return area, opening, len(problems) == 0
}

// isFitting reports what isn't duct by the metre.
func isFitting(p *fittings.Piece) bool {
	return p.Kind != fittings.Straight && p.Kind != fittings.Flexible
}

// faceOf is a piece's cross-section.
func faceOf(p *fittings.Piece) (area, opening float64, ok bool) {
	f, problems := fittings.Measure(p)
	if len(problems) > 0 {
		return 0, 0, false
	}
	if p.Kind == fittings.Plenum {
		a, _ := p.Sizes.Get(fittings.Width)
		b, _ := p.Sizes.Get(fittings.Height)
		return a * b, 0, true
	}
	end := f.Ends[0]
	if p.Kind == fittings.Spigot {
		end = f.Ends[len(f.Ends)-1]
	}
	return end.FaceArea(), 0, true
}

// straightOf is a fitting counted as a straight: the girth of its plant end x its
// length along the axis.
func straightOf(p *fittings.Piece) (area, opening float64, ok bool) {
	l, problems := fittings.MeasureLengths(p)
	if len(problems) > 0 {
		return 0, 0, false
	}
	get := func(d fittings.Dim) float64 { v, _ := p.Sizes.Get(d); return v }
	switch {
	case p.Kind == fittings.Cap:
		return 0, 0, true
	case p.Kind == fittings.Plenum:
		return 2 * (get(fittings.Width) + get(fittings.Height)) * get(fittings.Length), 0, true
	case p.Kind == fittings.Spigot && len(l.Branch) > 0:
		return l.Branch[0].Girth * l.Branch[0].FromWall, 0, true
	case len(l.Runs) == 0:
		return 0, 0, false
	}
	girth := l.Runs[0].Girth
	if f, _ := fittings.Measure(p); p.Kind == fittings.Breeches && len(f.Ends) > 0 {
		girth = f.Ends[0].Girth()
	}
	return girth * l.Runs[0].Axis, 0, true
}

// cut is what is taken off a row for the openings cut in it, as takeoff does it.
func (m *measurer) cut(i int, w *way) float64 {
	it := &m.t.Items[i]
	sum := 0.0
	for _, k := range m.children[i] {
		by := &m.t.Items[k]
		n := 1.0
		if !w.once {
			n = float64(by.Quantity)
		}
		switch p := m.piece(k, w); {
		case by.Piece.Kind == fittings.Spigot:
			// what is cut out is cut out, whatever the basis of the branch
			f, problems := fittings.Measure(&p)
			if len(problems) == 0 {
				sum += f.Opening * n
			}
		case it.Piece.Kind == fittings.Plenum:
			if f, _ := fittings.Measure(&p); len(f.Ends) > 0 {
				sum += f.Ends[0].FaceArea() * n
			}
		}
	}
	if it.Piece.Kind == fittings.Plenum && it.Parent >= 0 && it.ParentEnd != fittings.PlantEnd {
		p := m.piece(it.Parent, w)
		f, _ := fittings.Measure(&p)
		for _, e := range f.Ends {
			if e.Role == it.ParentEnd {
				sum += e.FaceArea()
			}
		}
	}
	return sum
}

// faces are the end faces that are counted with a row of n pieces.
func (m *measurer) faces(i int, p *fittings.Piece, w *way, n float64) float64 {
	if p.Kind == fittings.Cap {
		return 0
	}
	f, _ := fittings.Measure(p)
	sum := 0.0
	for _, e := range f.Ends {
		if w.ends == allEnds || e.Role != fittings.PlantEnd && m.used[i][e.Role] == 0 {
			sum += e.FaceArea()
		}
	}
	if it := &m.t.Items[i]; w.ends == openEnds && !it.SideBySide() {
		return sum // in series: one of them is last
	}
	return sum * n
}

// piece is row i's piece by the sizes that a way takes.
func (m *measurer) piece(i int, w *way) fittings.Piece {
	it := &m.t.Items[i]
	p := m.t.Measured(it)
	grow := w.grow
	if w.lining {
		l, _ := p.Sizes.Get(fittings.Lining)
		grow = -2 * l
	}
	if grow != 0 {
		widen(&p, grow)
	}
	if w.oval != asOval {
		reshape(&p, w.oval)
	}
	if w.round != 1 {
		for _, d := range diameters {
			if v, ok := p.Sizes.Get(d); ok {
				p.Sizes.Set(d, v*w.round)
			}
		}
		if v, ok := p.Sizes.Get(fittings.Entry); ok && p.Style == fittings.Conical {
			p.Sizes.Set(fittings.Entry, v*w.round)
		}
	}
	if p.Wall.Shape != fittings.NoShape && it.Parent >= 0 {
		m.wall(&p, it.Parent, w)
	}
	return p
}

// wall takes the wall of a spigot from the piece that it sits on.
func (m *measurer) wall(p *fittings.Piece, host int, w *way) {
	if w.grow == 0 && !w.lining && w.round == 1 && w.oval == asOval {
		return
	}
	h := m.piece(host, w)
	if f, _ := fittings.Measure(&h); len(f.Ends) > 0 && f.Ends[0].Shape != fittings.NoShape {
		p.Wall = f.Ends[0].CrossSection
	}
}

var (
	diameters = []fittings.Dim{fittings.Diameter, fittings.Diameter2, fittings.BranchDiameter}
	across    = []fittings.Dim{fittings.Width, fittings.Height, fittings.Width2, fittings.Height2,
		fittings.BranchWidth, fittings.BranchHeight, fittings.Diameter, fittings.Diameter2, fittings.BranchDiameter}
)

// widen adds to every size across; the inside radius of a bend gives way, its
// centre line stays.
func widen(p *fittings.Piece, by float64) {
	for _, d := range across {
		if v, ok := p.Sizes.Get(d); ok {
			p.Sizes.Set(d, math.Max(0, v+by))
		}
	}
	if v, ok := p.Sizes.Get(fittings.Entry); ok && p.Style == fittings.Conical {
		p.Sizes.Set(fittings.Entry, v+by)
	}
	if v, ok := p.Sizes.Get(fittings.Throat); ok {
		p.Sizes.Set(fittings.Throat, math.Max(0, v-by/2))
	}
}
