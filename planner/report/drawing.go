package report

import (
	"slices"

	"blankoff/fittings"
	"blankoff/planner"
	"blankoff/planner/network"
	"blankoff/planner/rig"
)

// Ductwork is the ductwork as it hangs together, for whoever draws it or tries
// other cuts on it: nodes from the plant outward, parents before children.
type Ductwork struct {
	Nodes  []Node
	Joints []Joint
	Ends   []End
	// By section: the areas that the rigs can judge, m2, the greatest area that it
	// may have, m2, and the limits that they can judge, L/s.
	Windows  [][]rig.AreaWindow
	Most     []float64
	Flows    [][]rig.FlowWindow
	Readable [][]rig.Span // what can be read there at all, of all rigs, L/s

	next  [][]int // by node, its joints
	open  [][]int // by node, its open ends
	parts [][]int // by section, its nodes
}

// Node is a piece, or a run of pieces that can't be cut apart.
type Node struct {
	Tag, Text, Kind, Size, Level, System, Place string

	Item    int     // of the takeoff: nodes of one row follow each other
	First   bool    // the first of its row
	Spigot  bool    // sits in a side wall
	Side    int     // 0: goes straight on from its parent, else a branch of it
	Girth   float64 // m
	Long    float64 // m
	Area    float64 // counted, m2
	Exact   float64 // counted, exactly, m2
	Section int     // among the sections, -1 for none
	Through bool    // in the test, its area not counted
	Up      int     // joint towards the plant, -1 for none
	Piece   int     // number of its last piece, for a list of cuts; 0: not said
}

// Joint is where two nodes meet.
type Joint struct {
	A, B    int // nodes; A is the nearer to the plant
	At      string
	Size    string
	Metres  float64 // girth of the opening
	Minutes float64 // price of a cut, both sides and both tests
	Barred  string  // why it can't be blanked
	Fixed   string  // why a section has to end here whatever is tried
	Cut     int     // number of the cut, from 1; 0: none
	Assumed bool    // between loose rows
	Ring    bool    // closes a ring
	Sides   [2]Side // as a list of cuts names it
}

// End is an opening with nothing on it.
type End struct {
	Node    int
	Role    fittings.EndRole
	At      string
	Size    string
	Minutes float64
}

// drawingOf gathers the network behind a plan.
func drawingOf(p *planner.Plan) *Ductwork {
	n := p.Network
	d := &Ductwork{Nodes: make([]Node, len(n.Nodes)), Joints: make([]Joint, len(n.Joints))}
	for k := range n.Nodes {
		d.Nodes[k] = nodeOf(p, k)
	}
	for k := range n.Joints {
		d.Joints[k] = jointOf(p, k)
	}
	for i := range p.Cuts {
		c := &p.Cuts[i]
		j := &d.Joints[c.Joint]
		j.Cut = i + 1
		if c.Why != "" && c.Why != "your cut" {
			j.Fixed = c.Why
		}
	}
	for i := range n.OpenEnds {
		e := &n.OpenEnds[i]
		d.Ends = append(d.Ends, End{Node: e.Node, Role: e.Role, At: n.EndText(e), Size: faceOf(e.Face, p.Settings.Units).Text, Minutes: e.Minutes})
	}
	for i := range p.Sections {
		s := &p.Sections[i]
		d.Windows, d.Most = append(d.Windows, s.Windows), append(d.Most, s.Most)
		d.Flows = append(d.Flows, p.Settings.Rigs.FlowWindows(s.TestPa, p.Settings.Headroom))
		var spans []rig.Span
		for _, r := range p.Settings.Rigs {
			spans = append(spans, r.Readable(s.TestPa)...)
		}
		d.Readable = append(d.Readable, spans)
	}
	d.join(len(p.Sections))
	return d
}

func nodeOf(p *planner.Plan, k int) Node {
	n, it := &p.Network.Nodes[k], p.Network.Item(k)
	o := Node{
		Tag: it.Name(), Text: p.Network.NodeText(k), Kind: it.Piece.Kind.String(), Size: it.SizeIn(p.Settings.Units), Level: it.Level, System: it.System, Place: it.OnSite,
		Item: n.Item, First: n.First == 1, Long: n.Long, Section: p.SectionOf(k), Through: n.State == network.Through, Up: n.Up,
	}
	if n.State == network.Tested {
		o.Area, o.Exact = n.Area, n.Exact
	}
	for _, e := range it.Ends {
		o.Girth = max(o.Girth, e.Girth())
	}
	if n.Of > 1 && n.First == n.Last {
		o.Piece = n.Last
	}
	if n.Up >= 0 {
		j := &p.Network.Joints[n.Up]
		o.Spigot = j.Wall
		if !j.Inside && !j.Assumed && it.ParentEnd != fittings.FarEnd {
			o.Side = 1
			if it.ParentEnd == fittings.BranchEnd2 {
				o.Side = 2
			}
		}
	}
	return o
}

func jointOf(p *planner.Plan, k int) Joint {
	n := p.Network
	j := &n.Joints[k]
	o := Joint{
		A: j.A, B: j.B, At: n.JointText(k), Size: faceOf(j.Face(), p.Settings.Units).Text, Metres: j.Face().Girth(), Minutes: j.Minutes,
		Barred: j.Barred, Assumed: j.Assumed, Ring: j.Ring,
	}
	a, b := p.SectionOf(j.A), p.SectionOf(j.B)
	if a < 0 || b < 0 {
		o.Fixed = "the end of what is tested"
	}
	for i, x := range p.SidesOf(k) {
		o.Sides[i] = Side{Tag: n.Takeoff.Items[x.Item].Name(), Piece: x.Piece}
	}
	return o
}

// Connect lists what is joined to what in a view's ductwork, for Near. Of does it.
func (v *Plan) Connect() { v.Drawing.join(len(v.Sections)) }

// join lists what is joined to each node, and the nodes of each section.
func (d *Ductwork) join(sections int) {
	d.next, d.open, d.parts = make([][]int, len(d.Nodes)), make([][]int, len(d.Nodes)), make([][]int, sections)
	for k := range d.Joints {
		if j := &d.Joints[k]; !j.Assumed && j.A != j.B {
			d.next[j.A], d.next[j.B] = append(d.next[j.A], k), append(d.next[j.B], k)
		}
	}
	for k := range d.Ends {
		d.open[d.Ends[k].Node] = append(d.open[d.Ends[k].Node], k)
	}
	for k := range d.Nodes {
		if s := d.Nodes[k].Section; s >= 0 {
			d.parts[s] = append(d.parts[s], k)
		}
	}
}

// JointsOf are the joints of a node, EndsOf its open ends, in ascending order.
func (d *Ductwork) JointsOf(node int) []int { return d.next[node] }
func (d *Ductwork) EndsOf(node int) []int   { return d.open[node] }

// Near lists a section's nodes and those within so many joints of them, in
// ascending order.
func (d *Ductwork) Near(section, joints int) []int {
	front := slices.Clone(d.parts[section])
	seen := map[int]bool{}
	list := slices.Clone(front)
	for _, k := range front {
		seen[k] = true
	}
	for range joints {
		var more []int
		for _, k := range front {
			for _, j := range d.next[k] {
				if m := d.Joints[j].A + d.Joints[j].B - k; !seen[m] {
					seen[m] = true
					more = append(more, m)
				}
			}
		}
		list, front = append(list, more...), more
	}
	slices.Sort(list)
	return list
}
