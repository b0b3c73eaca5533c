package planner

import (
	"errors"
	"fmt"
	"sort"

	"blankoff/planner/network"
	"blankoff/planner/partition"
	"blankoff/takeoff"
)

// Make plans the tests of a takeoff. It fails when a setting can't be used or
// when nothing is left that could be planned; the plan is returned with its
// faults even then.
func Make(t *takeoff.Takeoff, set Settings) (*Plan, error) {
	if err := set.Check(); err != nil {
		return nil, err
	}
	d, err := newDuties(t, set)
	if err != nil {
		return nil, err
	}
	net := network.Build(t, set.Prices)
	z := newZoning(net, d)
	p := &Plan{Takeoff: t, Network: net, Settings: set, sectionOf: make([]int, len(net.Nodes))}
	for k := range p.sectionOf {
		p.sectionOf[k] = -1
	}
	p.RefusedRows = len(d.refused) // after the zoning, which may refuse more
	p.Faults = append(append(p.Faults, t.Faults...), d.faults...)
	list := patches(z)
	for i := range list {
		list[i].setWindows(set, z)
	}
	list = p.dropUnreadable(list, z)
	if err := p.divide(list, z); err != nil {
		return nil, err
	}
	p.nameSections()
	p.listCuts(z)
	p.listBlanks()
	p.listOutside()
	p.judge(z)
	p.prove(list)
	p.writeNotes(z)
	p.weigh()
	p.tryAlone()
	if len(p.Sections) == 0 {
		return p, errors.New("nothing is left to plan: " + p.whyNothing())
	}
	return p, nil
}

// Check refuses settings that can't be meant.
func (s Settings) Check() error {
	switch {
	case len(s.Rigs) == 0:
		return errors.New("a plan needs a rig: give --rig and a rig file")
	case !(s.Headroom >= 1 && s.Headroom <= 100):
		return fmt.Errorf("headroom %g: expected 1 to 100, how many times its limit a section may leak and still be read", s.Headroom)
	case !(s.MinArea >= 0 && s.MinArea <= 1e9 && s.MaxArea >= 0 && s.MaxArea <= 1e9) || s.MaxArea > 0 && s.MaxArea < s.MinArea:
		return fmt.Errorf("least area %g and greatest area %g m2: expected 0 or more, the greatest not below the least", s.MinArea, s.MaxArea)
	case !(s.TestMinutes >= 0 && s.TestMinutes <= 10000):
		return fmt.Errorf("test minutes %g: expected 0 to 10000", s.TestMinutes)
	case !(s.DuctClass >= 0 && s.DuctClass <= 100000):
		return fmt.Errorf("duct class %g: expected more than 0 and at most 100000 Pa", s.DuctClass)
	case !(s.TestPa >= 0 && s.TestPa <= 100000):
		return fmt.Errorf("test pressure %g: expected more than 0 and at most 100000 Pa, with the side in --sign", s.TestPa)
	case s.SlipJoints != "open" && s.SlipJoints != "bladder" && s.SlipJoints != "made-up":
		return fmt.Errorf("slip joints %q: expected open, bladder or made-up", s.SlipJoints)
	case s.PressureRule != "" && s.PressureRule != "design":
		return fmt.Errorf("pressure rule %q: expected design", s.PressureRule)
	case s.By != "" && s.By != "level" && s.By != "stage":
		return fmt.Errorf("by %q: expected level or stage", s.By)
	}
	return nil
}

// whyNothing says why no section could be made.
func (p *Plan) whyNothing() string {
	if len(p.Faults) > 0 {
		return fmt.Sprintf("%d faults, listed with their cures", len(p.Faults))
	}
	for _, s := range p.Outside {
		return s.Reason
	}
	return "no row is in scope"
}

// dropUnreadable leaves outside what no range of the rig can read.
func (p *Plan) dropUnreadable(list []patch, z *zoning) []patch {
	kept := list[:0]
	for _, q := range list {
		if len(q.all) > 0 {
			kept = append(kept, q)
			continue
		}
		v := p.Settings.Rigs.Judge(0, q.duty.pa, p.Settings.Headroom)
		for _, k := range q.nodes {
			z.net.Nodes[k].State = network.Outside
			z.net.Nodes[k].Reason = v.Reason
		}
		p.Notes = append(p.Notes, fmt.Sprintf("nothing at %g Pa can be tested: %s; use another rig, or another pressure if the specifier agrees", q.duty.pa, v.Reason))
	}
	for k := range z.net.Joints {
		j := &z.net.Joints[k]
		if z.net.Nodes[j.A].State == network.Outside || z.net.Nodes[j.B].State == network.Outside {
			z.must[k] = "outside"
		}
	}
	return kept
}

// divide solves every patch and makes its sections.
func (p *Plan) divide(list []patch, z *zoning) error {
	for i := range list {
		q := &list[i]
		sol, err := q.solve(p.Settings, z.net)
		if err != nil {
			return err
		}
		q.even(&sol, p.Settings, z.net, z.d.byName[q.duty.scheme].MinAreaM2)
		q.solution = sol
		first := len(p.Sections)
		for range sol.State {
			p.Sections = append(p.Sections, p.newSection(q, z))
		}
		for x, k := range q.nodes {
			s := first + sol.Part[x]
			p.sectionOf[k] = s
			p.Sections[s].Nodes = append(p.Sections[s].Nodes, k)
		}
	}
	return nil
}

func (p *Plan) newSection(q *patch, z *zoning) Section {
	s := Section{
		System: q.duty.system, Scheme: z.d.byName[q.duty.scheme], Class: q.duty.class,
		TestPa: q.duty.pa, Sign: q.duty.sign, Windows: q.windows, Most: q.most, Grouping: q.loose,
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
		sorted[to].ID = fmt.Sprintf("S%0*d", max(2, len(fmt.Sprint(len(order)))), to+1)
		for _, k := range sorted[to].Nodes {
			p.sectionOf[k] = to
		}
	}
	p.Sections = sorted
	for i := range p.Sections {
		p.fillSection(&p.Sections[i])
	}
}

// fillSection sums a section's area, lists its rows and its levels.
func (p *Plan) fillSection(s *Section) {
	levels := map[string]bool{}
	when := always()
	var area, exact takeoff.Sum
	for _, k := range s.Nodes {
		n := &p.Network.Nodes[k]
		it := p.Network.Item(k)
		if n.State == network.Tested {
			area.Add(n.Area)
			exact.Add(n.Exact)
			s.JointLength += n.JointLength
		}
		if it.Level != "" && !levels[it.Level] {
			levels[it.Level] = true
			s.Levels = append(s.Levels, it.Level)
		}
		when = when.with(it)
		s.Spans = addSpan(s.Spans, n)
	}
	sort.Slice(s.Levels, func(a, b int) bool { return takeoff.NaturalLess(s.Levels[a], s.Levels[b]) })
	s.Ready, s.Closed = when.readyText, when.closedText
	if when.empty() {
		s.Notes = append(s.Notes, "its pieces are never up together: one is closed on "+when.closedText+", another ready on "+when.readyText)
	}
	s.Area, s.Exact = area.Value(), exact.Value()
	low, _ := s.held(p.Settings.HoldBoth)
	s.Limit = s.LimitPerM2 * low
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

// weigh shows that every square metre in scope is in a section or outside.
func (p *Plan) weigh() {
	b := &p.Balance
	b.Takeoff = p.Takeoff.Totals.Area
	var in, out takeoff.Sum
	for i := range p.Sections {
		in.Add(p.Sections[i].Area)
	}
	for _, s := range p.Outside {
		out.Add(s.Area)
	}
	b.Sections, b.Outside = in.Value(), out.Value()
	b.Difference = b.Takeoff - b.Sections - b.Outside
}

// under counts the sections that count as under range, over those over it.
func (p *Plan) count() (over, under int) {
	for i := range p.Sections {
		switch s := p.Sections[i].State; {
		case s == OverRange:
			over++
		case s.Under():
			under++
		}
	}
	return over, under
}

// Partly reports whether the plan leaves something for its reader to settle:
// rows refused, sections under or over range, pieces outside, or a grouping.
func (p *Plan) Partly() bool {
	over, under := p.count()
	return len(p.Faults) > 0 || over > 0 || under > 0 || len(p.Outside) > 0 || p.Proof.Kind == Grouped
}

// Aim names an aim as the command line does.
func Aim(a partition.Aim) string {
	if a == partition.Time {
		return "time"
	}
	return "tests"
}
