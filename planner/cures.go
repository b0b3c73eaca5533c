package planner

import (
	"fmt"
	"math"
	"strings"

	"blankoff/planner/tightness"
	"blankoff/takeoff"
)

func shapeOf(it *takeoff.Item) tightness.Shape {
	return tightness.Shape(it.Piece.Shape.String())
}

// underCures says what would make section i readable, with figures.
func (p *Plan) underCures(i int) []string {
	s := &p.Sections[i]
	if s.Area <= 0 {
		return []string{"test it together with a neighbour, or take it out of the test (scope out)"}
	}
	need := math.Inf(1)
	for _, w := range s.Windows {
		if w.Low > s.Area {
			need = math.Min(need, w.Low)
		}
	}
	var cures []string
	add := func(text string) {
		if text != "" {
			cures = append(cures, text)
		}
	}
	if s.State != SmallArea {
		add(p.pressureCure(s))
		if s.State == UnderRange {
			add(fmt.Sprintf("a lower measuring range: one that reads from %s L/s or less, its accuracy counted", flow(s.Limit)))
		} else {
			add(fmt.Sprintf("a measuring range that closes the gap: from %s to %s L/s", flow(s.Limit), flow(s.Limit*p.Settings.Headroom)))
		}
	}
	for _, text := range p.boundaryCures(i) {
		add(text)
	}
	add(p.jumperCure(i, need))
	return cures
}

// pressureCure is the lowest test pressure, in steps of 10 Pa, at which the
// section could be read, and whether its ceiling allows that.
func (p *Plan) pressureCure(s *Section) string {
	most, known := p.ceiling(s)
	readable := func(pa float64) bool {
		q := s.Scheme.Limit(s.Class, pa) * s.Area
		return p.Settings.Rig.Judge(q, pa, p.Settings.Headroom).State == "in"
	}
	const step, highest = 10, 5000
	for pa := math.Ceil(s.TestPa/step+0.001) * step; pa <= highest; pa += step {
		if !readable(pa) {
			continue
		}
		switch {
		case pa > most:
			return fmt.Sprintf("(no pressure within the ceiling of %g Pa would do; it would take %g Pa)", most, pa)
		case !known:
			return fmt.Sprintf("a test at %g Pa, if the duct's pressure class (not stated) and the specifier allow it", pa)
		}
		return fmt.Sprintf("a test at %g Pa, if the specifier agrees (ceiling %g Pa)", pa, most)
	}
	return ""
}

// boundaryCures names the bounds of section i that were set by the schedule or
// a setting, and what lies beyond: lifting one would join the two.
func (p *Plan) boundaryCures(i int) []string {
	var cures []string
	for _, c := range p.Cuts {
		j := p.Network.Joints[c.Joint]
		a, b := p.sectionOf[j.A], p.sectionOf[j.B]
		if a != i && b != i || c.Why == "" || a == b {
			continue
		}
		other := &p.Sections[a+b-i]
		text := fmt.Sprintf("lifting the boundary %s (%s) joins it to %s of %.1f m2", p.Network.JointText(c.Joint), c.Why, other.ID, other.Area)
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
			cures = append(cures, "taking the piece into the test that it ends at: "+b.At)
		}
	}
	return cures
}

// jumperCure finds like sections under range that would be readable together
// with section i, joined by a jumper hose: the fewest, then the first.
func (p *Plan) jumperCure(i int, need float64) string {
	s := &p.Sections[i]
	if math.IsInf(need, 1) {
		return ""
	}
	most := need
	for _, w := range s.Windows {
		if w.Low <= need && need <= w.High {
			most = w.High
		}
	}
	var like []int
	for k := range p.Sections {
		o := &p.Sections[k]
		if k != i && o.State.Under() && o.System == s.System && o.Scheme == s.Scheme && o.Class == s.Class && o.TestPa == s.TestPa && o.Sign == s.Sign {
			like = append(like, k)
		}
	}
	sum := s.Area
	var names []string
	for _, k := range like { // one alone first
		if a := sum + p.Sections[k].Area; a >= need && a <= most {
			return jumper([]string{p.Sections[k].ID}, a)
		}
	}
	for _, k := range like {
		if sum+p.Sections[k].Area > most {
			continue
		}
		sum += p.Sections[k].Area
		names = append(names, p.Sections[k].ID)
		if sum >= need {
			return jumper(names, sum)
		}
		if len(names) == 4 {
			break
		}
	}
	return ""
}

func jumper(names []string, sum float64) string {
	return fmt.Sprintf("a jumper hose to %s: together %.1f m2 in one test", strings.Join(names, " and "), sum)
}

// overCures says what would let the rig judge a section that is too big.
func (p *Plan) overCures(s *Section) []string {
	cures := []string{fmt.Sprintf("a bigger rig, or two side by side, that reads %s to %s L/s at %g Pa", flow(s.Limit), flow(s.Limit*p.Settings.Headroom), s.TestPa)}
	for pa := math.Floor(s.TestPa/10) * 10; pa >= 50; pa -= 10 {
		q := s.Scheme.Limit(s.Class, pa) * s.Area
		if p.Settings.Rig.Judge(q, pa, p.Settings.Headroom).State == "in" {
			cures = append(cures, fmt.Sprintf("a test at %g Pa, if the specifier agrees", pa))
			break
		}
	}
	return cures
}

// flow writes a flow with as many digits as mean something.
func flow(q float64) string {
	switch {
	case q >= 100:
		return fmt.Sprintf("%.0f", q)
	case q >= 1:
		return fmt.Sprintf("%.1f", q)
	}
	return fmt.Sprintf("%.2f", q)
}
