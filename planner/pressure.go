package planner

import (
	"fmt"
	"math"
	"slices"

	"blankoff/planner/network"
	"blankoff/planner/rig"
	"blankoff/planner/tightness"
)

// Other test pressures as cures.

// pressureCure is the lowest test pressure, in steps of 10 Pa, at which the
// section could be read, and whether its ceiling allows that; no says that none
// does.
func (p *Plan) pressureCure(s *Section) (cure, no string) {
	u := p.Settings.Units
	steps := p.stepsOf(s.Scheme)
	first := min(int(math.Ceil(s.TestPa/cureStep+0.001)), len(steps))
	for _, at := range steps[first:] {
		pa := at.pa
		if !within(at.windows, s.Class.K*at.ofOne*s.Area) {
			continue
		}
		most, known := p.ceiling(s)
		switch {
		case pa > most:
			return "", fmt.Sprintf("no pressure within the ceiling of %s would do: it would take %s", u.Pressure(most), u.Pressure(pa))
		case !known:
			return fmt.Sprintf("a test at %s, if the duct's pressure class (not stated) and the specifier allow it", u.Pressure(pa)), ""
		}
		return fmt.Sprintf("a test at %s, if the specifier agrees (ceiling %s)", u.Pressure(pa), u.Pressure(most)), ""
	}
	return "", ""
}

// The test pressures that are tried as cures, Pa.
const cureStep, highestCure = 10, 5000

// step is a test pressure with what hangs on it alone.
type step struct {
	pa      float64
	ofOne   float64 // limit per m2 of a class whose figure at 1 Pa is 1
	windows []rig.FlowWindow
}

// stepsOf are the steps of pressure under a scheme, the first at 0 Pa: one table for
// all sections.
func (p *Plan) stepsOf(s *tightness.Scheme) []step {
	if p.steps == nil {
		p.steps = map[*tightness.Scheme][]step{}
	}
	if p.steps[s] == nil {
		for pa := 0.0; pa <= highestCure; pa += cureStep {
			p.steps[s] = append(p.steps[s], step{pa, s.Limit(tightness.Class{K: 1}, pa), p.windowsAt(pa)})
		}
	}
	return p.steps[s]
}

// canJudge reports whether a rig can judge a limit q, L/s, at a test pressure.
func (p *Plan) canJudge(q, pa float64) bool { return within(p.windowsAt(pa), q) }

// windowsAt are the limits that the rigs can judge at a test pressure.
func (p *Plan) windowsAt(pa float64) []rig.FlowWindow {
	windows, ok := p.flowsAt[pa]
	if !ok {
		if p.flowsAt == nil {
			p.flowsAt = map[float64][]rig.FlowWindow{}
		}
		windows = p.Settings.Rigs.FlowWindows(pa, p.Settings.Headroom)
		p.flowsAt[pa] = windows
	}
	return windows
}

func within(windows []rig.FlowWindow, q float64) bool {
	return slices.ContainsFunc(windows, func(w rig.FlowWindow) bool { return w.Low <= q && q <= w.High })
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
		c := p.Settings.Ceiling(it, s.Scheme, s.Class, s.Sign)
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
