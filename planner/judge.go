package planner

import (
	"fmt"
	"math"
	"strings"

	"blankoff/planner/network"
)

// judge says of every section whether the rig can judge it, with the true
// areas, and what would help where it can't.
func (p *Plan) judge(z *zoning) {
	for i := range p.Sections {
		s := &p.Sections[i]
		p.place1(s)
		s.Readings = p.readings(s)
		if least := s.Scheme.MinAreaM2; least > 0 && s.Area < least {
			s.Notes = append(s.Notes, fmt.Sprintf("less than the %g m2 that scheme %s asks of one test (%s)", least, s.Scheme.Name, s.Scheme.MinAreaSource))
		}
		if s.Grouping {
			s.Notes = append(s.Notes, "a grouping of rows that name no neighbours; whether they hang together has to be seen on the drawing")
		}
	}
	p.pairUp()
	for i := range p.Sections {
		switch s := &p.Sections[i]; {
		case s.State == OverRange:
			s.Cures = p.overCures(s)
		case s.State.Under():
			s.Cures = p.underCures(i)
		}
	}
	p.barredNotes(z)
}

// place1 places one section in its windows.
func (p *Plan) place1(s *Section) {
	least, most := s.held(p.Settings.HoldBoth)
	for _, w := range s.Windows {
		if least >= w.Low-areaSlack && most <= w.High+areaSlack {
			s.State = InRange
			s.Rig, s.Range = p.rangeFor(s)
			return
		}
	}
	set := p.Settings
	v := set.Rigs.Judge(s.Limit, s.TestPa, set.Headroom)
	switch {
	case most > s.Most+areaSlack:
		s.State, s.Reason = OverRange, v.Reason
		if v.State != "over" {
			s.Reason = fmt.Sprintf("larger than the %g m2 asked for at most, and it can't be cut", set.MaxArea)
		}
	case v.State == "gap":
		s.State, s.Reason = GapRange, v.Reason
	case v.State == "in":
		s.State = SmallArea
		s.Rig, s.Range = p.rangeFor(s)
	default:
		s.State, s.Reason = UnderRange, v.Reason
	}
	if s.State.Under() && s.Area < set.MinArea {
		s.Reason = strings.TrimPrefix(s.Reason+fmt.Sprintf("; area: less than the %g m2 asked for at least", set.MinArea), "; ")
	}
	if s.State.Under() && s.Area == 0 {
		s.Reason = "no area in it counts, so it has no limit to be held against"
	}
}

// rangeFor is the rig and the range to set; at the very end of a window the last
// digit may fall outside, so the neighbours of the limit are asked too.
func (p *Plan) rangeFor(s *Section) (string, string) {
	for _, nudge := range []float64{1, 1 - 1e-9, 1 + 1e-9} {
		if r, name, ok := p.Settings.Rigs.RangeFor(s.Limit*nudge, s.TestPa, p.Settings.Headroom); ok {
			return r.Name, name
		}
	}
	return "", ""
}

// barredNotes names the joints inside sections over range that can't be
// blanked: making one blankable is what would split them.
func (p *Plan) barredNotes(*zoning) {
	for k := range p.Network.Joints {
		j := &p.Network.Joints[k]
		s := p.sectionOf[j.A]
		if j.Barred == "" || s < 0 || s != p.sectionOf[j.B] || p.Sections[s].State != OverRange {
			continue
		}
		if c := &p.Sections[s]; len(c.Cures) < 6 {
			c.Cures = append(c.Cures, fmt.Sprintf("make the joint %s blankable (%s)", p.Network.JointText(k), j.Barred))
		}
	}
	for i := range p.Sections {
		s := &p.Sections[i]
		if s.State != OverRange {
			continue
		}
		for _, k := range s.Nodes {
			if n := &p.Network.Nodes[k]; n.Last > n.First {
				s.Cures = append(s.Cures, fmt.Sprintf("give at_mm for the spigots of %s, so that it can be cut between its pieces", p.Network.Item(k).Name()))
			}
		}
	}
}

// ceiling is the lowest known ceiling of a section's pieces, Pa, and whether
// every piece's is known.
func (p *Plan) ceiling(s *Section) (pa float64, known bool) {
	pa, known = math.Inf(1), true
	for _, k := range s.Nodes {
		it := p.Network.Item(k)
		if p.Network.Nodes[k].State == network.Outside || it.Piece.Shape.String() == "" {
			continue
		}
		c := s.Scheme.Ceiling(s.Class, shapeOf(it), s.Sign, ductClass(it, p.Settings))
		if it.DesignPa > 0 {
			pa = math.Min(pa, it.DesignPa)
		}
		switch {
		case c.Known:
			pa = math.Min(pa, c.Pa)
		case c.Highest > 0:
			pa, known = math.Min(pa, c.Highest), false
		default:
			known = false
		}
	}
	return pa, known
}
