package planner

import (
	"fmt"
	"sort"

	"blankoff/fittings"
	"blankoff/planner/divide"
	"blankoff/planner/duty"
	"blankoff/planner/network"
	"blankoff/takeoff/terms"
	"blankoff/takeoff/totals"
)

// The parts of a plan: sections, cuts, blanks, what is outside, the balance.

// newSection is a section of a patch, still without pieces.
func newSection(q *divide.Patch) Section {
	s := Section{
		System: q.Duty.System, Scheme: q.Scheme, Class: q.Duty.Class,
		TestPa: q.Duty.Pa, Sign: q.Duty.Sign, Windows: q.Windows, Most: q.Most, Grouping: q.Loose,
	}
	s.LimitPerM2 = s.Scheme.Limit(s.Class, s.TestPa)
	return s
}

// nameSections puts the sections in the order of their first nodes, which is
// from the plant outward, and names them.
func (p *Plan) nameSections() {
	for i := range p.Sections {
		sort.Ints(p.Sections[i].Nodes)
	}
	order := make([]int, len(p.Sections))
	for i := range order {
		order[i] = i
	}
	sort.Slice(order, func(a, b int) bool {
		return p.Sections[order[a]].Nodes[0] < p.Sections[order[b]].Nodes[0]
	})
	sorted := make([]Section, len(order))
	for to, from := range order {
		sorted[to] = p.Sections[from]
		for _, k := range sorted[to].Nodes {
			p.sectionOf[k] = to
		}
	}
	p.Sections = sorted
	old := map[string]string{}
	for _, k := range p.Settings.Old {
		old[k.Key()] = k.ID
	}
	number := max(p.Settings.NextID, 1)
	for i := range p.Sections {
		s := &p.Sections[i]
		p.fillSection(s)
		if len(old) > 0 {
			s.ID = old[p.keyOf(s)]
		}
		if s.ID == "" {
			s.ID = fmt.Sprintf("S%0*d", max(2, len(fmt.Sprint(len(order)))), number)
			number++
		}
	}
}

// fillSection sums a section's area and lists its levels.
func (p *Plan) fillSection(s *Section) {
	when := duty.Always()
	var area, exact totals.Sum
	levels, level := map[string]bool{"": true}, ""
	for _, k := range s.Nodes {
		n := &p.Network.Nodes[k]
		it := p.Network.Item(k)
		if n.State == network.Tested {
			area.Add(n.Area)
			exact.Add(n.Exact)
			s.JointLength += n.JointLength
		}
		if it.Level != level && !levels[it.Level] {
			level = it.Level
			levels[level] = true
			s.Levels = append(s.Levels, level)
		}
		when = when.With(it)
	}
	sort.Slice(s.Levels, func(a, b int) bool { return terms.NaturalLess(s.Levels[a], s.Levels[b]) })
	s.Ready, s.Closed = when.ReadyText, when.ClosedText
	if when.Empty() {
		s.Notes = append(s.Notes, "its pieces are never up together: one is closed on "+when.ClosedText+", another ready on "+when.ReadyText)
	}
	s.Area, s.Exact = area.Value(), exact.Value()
	low, _ := divide.Held(s.Area, s.Exact, p.Settings.HoldBoth)
	s.Limit = s.LimitPerM2 * low
}

// Spans lists the rows of a section, or the stretches of them that lie in it.
func (p *Plan) Spans(s *Section) []Span {
	list := make([]Span, 0, p.rowsIn(s.Nodes))
	for _, k := range s.Nodes {
		list = addSpan(list, &p.Network.Nodes[k])
	}
	return list
}

// rowsIn is how many rows a list of nodes comes from, where those of a row stand
// next to each other.
func (p *Plan) rowsIn(nodes []int) int {
	rows := 0
	for x, k := range nodes {
		if x == 0 || p.Network.Nodes[k].Item != p.Network.Nodes[nodes[x-1]].Item {
			rows++
		}
	}
	return rows
}

// addSpan adds a node to the stretches of a list, joining it to the last one
// where it goes on from there.
func addSpan(list []Span, n *network.Node) []Span {
	counted, exact := 0.0, 0.0
	if n.State == network.Tested {
		counted, exact = n.Area, n.Exact
	}
	if last := len(list) - 1; last >= 0 && list[last].Item == n.Item && list[last].To+1 == n.First && list[last].Reason == n.Reason {
		list[last].To = n.Last
		list[last].Area += counted
		list[last].Exact += exact
		list[last].Own += n.Area
		return list
	}
	return append(list, Span{Item: n.Item, From: n.First, To: n.Last, Of: n.Of, Area: counted, Exact: exact, Own: n.Area, Reason: n.Reason})
}

// listCuts lists the joints that are blanked between two sections, and sums
// the joint lengths inside each section.
func (p *Plan) listCuts(z *duty.Zones) {
	net := p.Network
	p.cutsOf = make([][]int, len(p.Sections))
	for k := range net.Joints {
		j := &net.Joints[k]
		a, b := p.sectionOf[j.A], p.sectionOf[j.B]
		switch {
		case a < 0 || b < 0:
			continue
		case a == b && z.Must[k] == "":
			p.addJoint(&p.Sections[a], j)
			continue
		case j.Assumed:
			continue
		}
		for _, s := range once(a, b) {
			p.cutsOf[s] = append(p.cutsOf[s], len(p.Cuts))
		}
		p.Cuts = append(p.Cuts, Cut{
			Joint: k, Parts: [2]int{a, b}, A: p.place(j.A, j, true), B: p.place(j.B, j, false),
			Face: j.Face(), Minutes: j.Minutes, Why: z.Must[k],
		})
	}
}

// addJoint adds a joint inside a section to its joint length. Between loose
// rows no joint is known; each is charged with its own end.
func (p *Plan) addJoint(s *Section, j *network.Joint) {
	if !j.Assumed {
		s.JointLength += j.Face().Girth()
	} else if it := p.Network.Item(j.B); len(it.Ends) > 0 {
		s.JointLength += it.Ends[0].Girth()
	}
}

// place is one side of a joint: the last piece of the side nearer the plant, the
// first of the other. A joint that closes a ring is at the far ends of both; one
// in a wall is on the piece in which it lies.
func (p *Plan) place(k int, j *network.Joint, nearer bool) Place {
	n := &p.Network.Nodes[k]
	piece := n.First
	switch {
	case j.Ring, nearer && !j.Wall:
		piece = n.Last
	case nearer && n.Last > n.First: // 0 where nobody can say on which piece
		piece = p.Network.PieceAt(n.Item, p.Network.Item(j.B))
	}
	return Place{Item: n.Item, Piece: piece, Of: n.Of}
}

// SidesOf is the two sides of a joint, the nearer to the plant first.
func (p *Plan) SidesOf(joint int) [2]Place {
	j := &p.Network.Joints[joint]
	return [2]Place{p.place(j.A, j, true), p.place(j.B, j, false)}
}

// listBlanks lists every end that has to be closed in each section's test.
func (p *Plan) listBlanks() {
	net := p.Network
	for _, c := range p.Cuts {
		j := &net.Joints[c.Joint]
		p.addBlank(j.A, c.Joint, j.FaceA, ForCut, j.Minutes/2)
		p.addBlank(j.B, c.Joint, j.FaceB, ForCut, j.Minutes/2)
	}
	for k := range net.Joints {
		j := &net.Joints[k]
		if j.Assumed {
			continue
		}
		a, b := p.sectionOf[j.A], p.sectionOf[j.B]
		if a >= 0 && b < 0 {
			p.addBlank(j.A, k, j.FaceA, ForScope, p.Settings.Prices.End(j.FaceA, p.Network.Item(j.A).Level))
		} else if b >= 0 && a < 0 {
			p.addBlank(j.B, k, j.FaceB, ForScope, p.Settings.Prices.End(j.FaceB, p.Network.Item(j.B).Level))
		}
	}
	for i := range net.OpenEnds {
		e := &net.OpenEnds[i]
		s := p.sectionOf[e.Node]
		if s < 0 {
			continue
		}
		p.append(s, e.Node, Blank{At: net.EndText(e), Why: ForEnd, Face: e.Face, Minutes: e.Minutes, Joint: -1, Role: e.Role})
	}
}

func (p *Plan) addBlank(node, joint int, face fittings.CrossSection, why BlankWhy, minutes float64) {
	p.append(p.sectionOf[node], node, Blank{At: p.Network.JointText(joint), Why: why, Face: face, Minutes: minutes, Joint: joint})
}

// append adds a blank on a node's end to a section, with the force on it and
// where on site it is.
func (p *Plan) append(s, node int, b Blank) {
	it := p.Network.Item(node)
	b.Node, b.Level, b.OnSite, b.Drawing = node, it.Level, it.OnSite, it.Drawing
	b.Known = b.Face.Shape != fittings.NoShape
	b.Force = p.Sections[s].TestPa * b.Face.FaceArea()
	p.Sections[s].Blanks = append(p.Sections[s].Blanks, b)
	if b.Why != ForCut {
		p.Proof.EndMinutes += b.Minutes
	}
}

// listOutside lists what is in scope but in no section, and what is out of
// scope, each with its reason.
func (p *Plan) listOutside() {
	for k := range p.Network.Nodes {
		n := p.Network.Nodes[k]
		it := p.Network.Item(k)
		switch {
		case n.State == network.Through && p.sectionOf[k] >= 0:
			n.Reason = "measured through; area not counted"
			p.Excluded = addSpan(p.Excluded, &n)
		case n.State != network.Outside:
		case it.Scope == terms.Out && !it.Refused:
			p.Excluded = addSpan(p.Excluded, &n)
		default:
			if !it.Refused && it.Scope == terms.In {
				n.State = network.Tested // its area counts, outside
			}
			p.Outside = addSpan(p.Outside, &n)
		}
	}
	for i := range p.Takeoff.Items { // refused and joined to nothing
		if it := &p.Takeoff.Items[i]; it.Refused && !p.Network.Has(i) {
			p.Outside = append(p.Outside, Span{Item: i, From: 1, To: it.Quantity, Of: it.Quantity, Reason: "row refused"})
		}
	}
}

// weigh shows that every square metre in scope is in a section or outside.
func (p *Plan) weigh() {
	b := &p.Balance
	b.Takeoff = p.Takeoff.Totals.Area
	var in, out totals.Sum
	for i := range p.Sections {
		in.Add(p.Sections[i].Area)
	}
	for _, s := range p.Outside {
		out.Add(s.Area)
	}
	b.Sections, b.Outside = in.Value(), out.Value()
	b.Difference = b.Takeoff - b.Sections - b.Outside
}
