package planner

import (
	"fmt"
	"math"

	"blankoff/fittings"
	"blankoff/planner/network"
	"blankoff/planner/units"
	"blankoff/takeoff/terms"
)

// Where the rig is joined to a section and where its pressure is read. Common
// practice, no source: the air goes in near the middle of the area, and the
// pressure is read away from it.

// Connection is where the rig and the pressure tapping of one test go.
type Connection struct {
	Rig    int     // blank of the section through which the air goes in; -1: it has none
	RigAt  string  // the same in words
	Level  string  // of the rig
	Tap    int     // blank of the section with the tapping; -1: a test hole
	TapAt  string  // in words
	Metres float64 // from the one to the other along the axes
}

// ways is a spanning tree of one section's pieces, by their order in it. A ring
// is opened at one of its joints.
type ways struct {
	nodes  []int       // parents before children
	at     map[int]int // node to its order
	parent []int
	edge   []float64 // to the parent, from middle to middle, m
}

// Connections finds, for every section, where the rig and the tapping go. hose is
// the greatest diameter of the hoses in use, m; 0: not known.
func (p *Plan) Connections(hose float64) []Connection {
	links := p.linksInside()
	out := make([]Connection, len(p.Sections))
	for i := range p.Sections {
		s := &p.Sections[i]
		if s.Grouping {
			out[i] = Connection{Rig: -1, Tap: -1, RigAt: "not known for a grouping", TapAt: "not known for a grouping"}
			continue
		}
		w := p.waysOf(s, &links)
		out[i] = p.connect(s, w, hose)
	}
	return out
}

// waysOf walks a section from its first piece, breadth first.
func (p *Plan) waysOf(s *Section, links *network.Lists) *ways {
	nodes := p.Network.Nodes
	n := len(s.Nodes)
	w := &ways{at: make(map[int]int, n), nodes: make([]int, 0, n), parent: make([]int, 0, n), edge: make([]float64, 0, n)}
	add := func(k, parent int, edge float64) {
		w.at[k] = len(w.nodes)
		w.nodes, w.parent, w.edge = append(w.nodes, k), append(w.parent, parent), append(w.edge, edge)
	}
	add(s.Nodes[0], -1, 0)
	for x := 0; x < len(w.nodes); x++ {
		v := w.nodes[x]
		for _, n := range links.Of(v) {
			if k := int(n); !w.has(k) {
				add(k, x, (nodes[v].Long+nodes[k].Long)/2)
			}
		}
	}
	return w
}

func (w *ways) has(node int) bool { _, ok := w.at[node]; return ok }

// offCentre is how far every piece is from the area of the section: the mean of
// the ways from its middle to all of it, weighed by area, m.
func (p *Plan) offCentre(w *ways) []float64 {
	n := len(w.nodes)
	area, mean := make([]float64, n), make([]float64, n)
	for x, k := range w.nodes {
		area[x] = p.Network.Nodes[k].Area
	}
	for x := n - 1; x > 0; x-- { // children come after their parents
		area[w.parent[x]] += area[x]
		mean[0] += area[x] * w.edge[x]
	}
	for x := 1; x < n; x++ {
		mean[x] = mean[w.parent[x]] + w.edge[x]*(area[0]-2*area[x])
	}
	for x := range mean {
		mean[x] /= math.Max(area[0], math.SmallestNonzeroFloat64)
	}
	return mean
}

// from is the way from the middle of one piece to that of every other, m.
func (w *ways) from(start int) []float64 {
	far := make([]float64, len(w.nodes))
	for x := range far {
		far[x] = -1
	}
	far[start] = 0
	for x, up := start, w.parent[start]; up >= 0; x, up = up, w.parent[up] {
		far[up] = far[x] + w.edge[x]
	}
	for x := range far {
		if far[x] < 0 {
			far[x] = far[w.parent[x]] + w.edge[x]
		}
	}
	return far
}

// connect chooses the places of one section.
func (p *Plan) connect(s *Section, w *ways, hose float64) Connection {
	c := Connection{Rig: -1, Tap: -1}
	mean := p.offCentre(w)
	level := mostBlanks(s)
	for i := range s.Blanks {
		if c.Rig < 0 || p.easier(s, i, c.Rig, w, mean, level, hose) {
			c.Rig = i
		}
	}
	if c.Rig < 0 {
		c.RigAt, c.TapAt = "it has no opening: agree on a hole for the hose with whoever closes it", "a test hole, away from the hose"
		return c
	}
	rig := &s.Blanks[c.Rig]
	start := w.at[rig.Node]
	far := w.from(start)
	c.Level = rig.Level
	c.RigAt = p.placeOf(rig)
	if d := hoseRoom(rig.Face); hose > 0 && rig.Known && d < hose {
		c.RigAt += fmt.Sprintf("; narrower than the hose of %s, so it takes a reducing adapter", p.across(hose))
	}
	for i := range s.Blanks {
		b := &s.Blanks[i]
		if i == c.Rig || b.Joint >= 0 && b.Joint == rig.Joint {
			continue
		}
		if m := p.between(w, far, rig.Node, b.Node); c.Tap < 0 || m > c.Metres+1e-9 {
			c.Tap, c.Metres = i, m
		}
	}
	if c.Tap >= 0 {
		c.TapAt = fmt.Sprintf("%s, %s along the ductwork from the rig", p.placeOf(&s.Blanks[c.Tap]), p.along(c.Metres))
		return c
	}
	last := start
	for x := range far {
		if far[x] > far[last]+1e-9 {
			last = x
		}
	}
	c.Metres = p.between(w, far, rig.Node, w.nodes[last])
	c.TapAt = fmt.Sprintf("a test hole in %s, %s along the ductwork from the rig; plug it afterwards", p.Network.NodeText(w.nodes[last]), p.along(c.Metres))
	return c
}

// between is the way from an opening of one piece to one of another, m: out of
// the middle of each to its end, or through the one that carries both.
func (p *Plan) between(w *ways, far []float64, a, b int) float64 {
	nodes := p.Network.Nodes
	return far[w.at[b]] + (nodes[a].Long+nodes[b].Long)/2
}

// easier reports whether a section's blank i is a better place for the rig than
// its blank o: wide enough for the hose, no larger than two can carry a plate for
// (1 m2: assumption, no source), without a neighbour to be kept off or at
// a natural place, on the level with most blanks, nearest to the middle of the
// area, largest. Where all is alike the first stays.
func (p *Plan) easier(s *Section, i, o int, w *ways, mean []float64, level string, hose float64) bool {
	a, b := &s.Blanks[i], &s.Blanks[o]
	for _, is := range []func(*Blank) bool{
		func(x *Blank) bool { return x.Known && hoseRoom(x.Face) >= hose },
		func(x *Blank) bool { return x.Face.FaceArea() <= mostPlate },
		func(x *Blank) bool { return x.Why != ForCut || p.Network.Joints[x.Joint].Natural },
		func(x *Blank) bool { return x.Level == level },
	} {
		if is(a) != is(b) {
			return is(a)
		}
	}
	const near = 0.01 // m
	if d := mean[w.at[a.Node]] - mean[w.at[b.Node]]; math.Abs(d) > near {
		return d < 0
	}
	return a.Face.FaceArea() > b.Face.FaceArea()+1e-9
}

// mostBlanks is the level with most of a section's blanks, the first of several.
func mostBlanks(s *Section) (level string) {
	count, most := map[string]int{}, 0
	for i := range s.Blanks {
		count[s.Blanks[i].Level]++
	}
	for i := range s.Blanks {
		if n := count[s.Blanks[i].Level]; n > most {
			level, most = s.Blanks[i].Level, n
		}
	}
	return level
}

// hoseRoom is the diameter of the largest hose that fits an opening, m.
func hoseRoom(c fittings.CrossSection) float64 {
	if c.Shape == fittings.Circular {
		return c.Diameter
	}
	return math.Min(c.Width, c.Height)
}

// along is a length to the whole metre or foot.
func (p *Plan) along(m float64) string {
	u := p.Settings.Units
	return fmt.Sprintf("%.0f %s", u.Of(units.Length, m), u.Unit(units.Length))
}

// across is a diameter.
func (p *Plan) across(m float64) string {
	u := p.Settings.Units
	return u.Figure(units.Size, m, 4) + " " + u.Unit(units.Size)
}

// placeOf names a blank for whoever joins a hose or a tube to it.
func (p *Plan) placeOf(b *Blank) string {
	text := b.At
	size := OpeningText(b.Face, p.Settings.Units)
	for _, more := range []string{size, b.Level, b.OnSite} {
		if more != "" {
			text += ", " + more
		}
	}
	return text
}

const (
	mostPlate = 1.0 // m2
	// dischargeCoefficient is that of a sharp-edged orifice (textbook value).
	dischargeCoefficient = 0.61
	// airDensity is reference air at 20 C and 101 325 Pa, kg/m3.
	airDensity = 1.2
)

// OpenEndFlow is what one end left open would leak at a test pressure, L/s: that
// of a sharp-edged orifice, Cd A sqrt(2 p / rho). p is Pa, a magnitude.
func OpenEndFlow(face fittings.CrossSection, pa float64) float64 {
	return 1000 * dischargeCoefficient * face.FaceArea() * math.Sqrt(2*math.Abs(pa)/airDensity)
}

// SmallestOpening is the smallest opening of a section that has to be closed; ok
// is false where none is known.
func (s *Section) SmallestOpening() (face fittings.CrossSection, ok bool) {
	for i := range s.Blanks {
		if b := &s.Blanks[i]; b.Known && (!ok || b.Face.FaceArea() < face.FaceArea()) {
			face, ok = b.Face, true
		}
	}
	return face, ok
}

// HoseDiameter is the greatest diameter of the hoses of the rigs, m; 0 where no
// rig file has one.
func (p *Plan) HoseDiameter() float64 {
	d := 0.0
	for _, r := range p.Settings.Rigs {
		for i := range r.Ranges {
			if h := r.Ranges[i].Hose; h != nil {
				d = math.Max(d, h.DiameterM)
			}
		}
	}
	return d
}

// OpeningText writes the size of an opening, a rectangle with its longer side first
// whichever way it lies: one blank and one plate serve both ways round.
func OpeningText(c fittings.CrossSection, u units.System) string {
	if c.Shape == fittings.Rectangular && c.Width < c.Height {
		c.Width, c.Height = c.Height, c.Width
	}
	return terms.SizeIn(c, u)
}
