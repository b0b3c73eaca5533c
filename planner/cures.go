package planner

import (
	"fmt"
	"math"
	"strings"

	"blankoff/planner/units"
)

// underCures says what would make section i readable, with figures.
func (p *Plan) underCures(i int) []string {
	s, u := &p.Sections[i], p.Settings.Units
	if s.Area <= 0 {
		return []string{"test it together with a neighbour, or take it out of the test (scope out)"}
	}
	var cures []string
	add := func(text string) {
		if text != "" {
			cures = append(cures, text)
		}
	}
	var cure, no string
	add(p.placeCure(i))
	if s.State != SmallArea {
		if s.Area >= p.Settings.MinArea {
			cure, no = p.pressureCure(s)
			add(cure)
		}
		if s.State == UnderRange {
			add(fmt.Sprintf("a lower measuring range: one that reads from %s %s or less, its accuracy counted", flow3(u, s.Limit), u.Unit(units.Flow)))
		} else {
			add(fmt.Sprintf("a measuring range that closes the gap: from %s to %s", flow3(u, s.Limit), upTo(u, units.Flow, s.Limit*p.Settings.Headroom)))
		}
	}
	for _, text := range p.boundaryCures(i) {
		add(text)
	}
	if s.Grouping {
		add(p.neighbourCure(i))
	} else {
		add(p.jumperCure(i))
	}
	add(no)
	if s.State == SmallArea {
		add(fmt.Sprintf("a least area (%s) of %s %s or less: the rig can judge it as it is", flag(u, "--min-area", digits3(s.Area)), digits3(u.Of(units.Area, s.Area)), u.Unit(units.Area)))
	}
	return cures
}

// placeCure asks for the places of spigots where a straight at the bound of
// section i, or in it, can't be cut inside for want of them: it costs nothing.
func (p *Plan) placeCure(i int) string {
	uncut := func(k int) bool { n := &p.Network.Nodes[k]; return n.Last > n.First }
	tags := map[string]int{}
	for _, k := range p.Sections[i].Nodes {
		if uncut(k) {
			tags[p.Network.Item(k).Name()]++
		}
	}
	for _, x := range p.cutsOf[i] {
		j := &p.Network.Joints[p.Cuts[x].Joint]
		for _, k := range []int{j.A, j.B} {
			if uncut(k) {
				tags[p.Network.Item(k).Name()]++
			}
		}
	}
	if len(tags) == 0 {
		return ""
	}
	return "at_mm for the spigots of " + strings.Join(sorted(tags), ", ") + ": costs nothing, and cuts between its pieces may then give sections of a better size"
}

// boundaryCures names the bounds of section i that were set by the schedule or
// a setting, and what lies beyond: lifting one would join the two.
func (p *Plan) boundaryCures(i int) []string {
	var cures []string
	for _, x := range p.cutsOf[i] {
		c := &p.Cuts[x]
		a, b := c.Parts[0], c.Parts[1]
		if c.Why == "" || a == b {
			continue
		}
		other := &p.Sections[a+b-i]
		text := fmt.Sprintf("lifting the boundary %s (%s) joins it to %s of %s and saves %s", p.Network.JointText(c.Joint), c.Why, other.ID, p.tenths(other.Area), p.saved(1, c.Minutes))
		if strings.Contains(c.Why, "class") || strings.Contains(c.Why, "pressure") {
			text += ": one test of both to the tighter class at the lower pressure"
		}
		cures = append(cures, text)
		if len(cures) == 3 {
			return cures
		}
	}
	return append(cures, p.scopeCures(i, 3-len(cures))...)
}

// scopeCures names pieces kept out of the test that section i ends at.
func (p *Plan) scopeCures(i, most int) []string {
	var cures []string
	for _, b := range p.Sections[i].Blanks {
		if b.Why == ForScope && len(cures) < most {
			j := &p.Network.Joints[b.Joint]
			other := j.A
			if p.sectionOf[j.A] == i {
				other = j.B
			}
			cures = append(cures, fmt.Sprintf("taking %s into the test (%s): it ends there, %s", p.Network.NodeText(other), p.Network.Item(other).Piece.Kind, b.At))
		}
	}
	return cures
}

// neighbourCure finds, for a grouping under range, other groupings of the same
// duty that would be in range together with it: whether they meet has to be
// seen on the drawing.
func (p *Plan) neighbourCure(i int) string {
	s := &p.Sections[i]
	if p.groupings == nil {
		p.groupings = map[sectionKey][]int{}
		for k := range p.Sections {
			if o := &p.Sections[k]; o.Grouping {
				p.groupings[o.key()] = append(p.groupings[o.key()], k)
			}
		}
	}
	for _, k := range p.groupings[s.key()] {
		o := &p.Sections[k]
		if k == i {
			continue
		}
		for _, w := range s.Windows {
			if a := s.Area + o.Area; a >= w.Low && a <= w.High {
				return fmt.Sprintf("one section with %s (%s), if the drawing shows that they meet: together %s", o.ID, strings.Join(o.Levels, ", "), p.tenths(a))
			}
		}
	}
	return ""
}

// overCures says what would let the rig judge a section that is too big.
func (p *Plan) overCures(s *Section) []string {
	u := p.Settings.Units
	if s.Limit <= p.greatestLimit(s) {
		return []string{fmt.Sprintf("a greatest area (%s) of %s or more", flag(u, "--max-area", fmt.Sprintf("%.1f", math.Ceil(s.Area*10-1e-9)/10)), upTo(u, units.Area, s.Area))}
	}
	cures := []string{fmt.Sprintf("a bigger rig, or two side by side, that reads up to %s at %s", upTo(u, units.Flow, s.Limit*p.Settings.Headroom), u.Pressure(s.TestPa))}
	for pa := math.Floor(s.TestPa/10) * 10; pa >= 50; pa -= 10 {
		if p.canJudge(s.Scheme.Limit(s.Class, pa)*s.Area, pa) {
			cures = append(cures, fmt.Sprintf("a test at %s, if the specifier agrees", u.Pressure(pa)))
			break
		}
	}
	return cures
}

// greatestLimit is the greatest limit that the rig can judge, L/s.
func (p *Plan) greatestLimit(s *Section) float64 {
	most := 0.0
	for _, w := range p.Settings.Rigs.FlowWindows(s.TestPa, p.Settings.Headroom) {
		most = math.Max(most, w.High)
	}
	return most
}

// barredCures names the joints inside sections over range that can't be
// blanked: making one blankable is what would split them.
func (p *Plan) barredCures() {
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

// flag names a flag of the command line; its value, which is in SI, is told where
// the sentence has another unit.
func flag(u units.System, name, value string) string {
	if u == units.SI {
		return name
	}
	return name + " " + value
}

// upTo writes a figure that has to be reached: a tenth, never less than it is.
func upTo(u units.System, q units.Quantity, v float64) string {
	return fmt.Sprintf("%.1f %s", math.Ceil(u.Of(q, v)*10-1e-9)/10, u.Unit(q))
}

// tenths writes an area, m2, to a tenth.
func (p *Plan) tenths(m2 float64) string {
	u := p.Settings.Units
	return fmt.Sprintf("%.1f %s", u.Of(units.Area, m2), u.Unit(units.Area))
}
