package report

import (
	"fmt"
	"math"
	"strconv"

	"blankoff/planner"
	"blankoff/planner/units"
)

// addConnections says of every section where the rig and the tapping go, and
// what one end left open would leak.
func (v *Plan) addConnections(p *planner.Plan) {
	for i, c := range p.Connections(p.HoseDiameter()) {
		s := &v.Sections[i]
		s.RigAt, s.RigLevel, s.TapAt = c.RigAt, c.Level, c.TapAt
		if c.Rig >= 0 {
			s.RigFace = planner.OpeningText(p.Sections[i].Blanks[c.Rig].Face, p.Settings.Units)
		}
		face, ok := p.Sections[i].SmallestOpening()
		if !ok {
			continue
		}
		u := p.Settings.Units
		s.OpenEndFlow = planner.OpenEndFlow(face, p.Sections[i].TestPa)
		s.OpenEnd = fmt.Sprintf("one %s end left open would leak about %s %s (sharp-edged orifice, discharge coefficient 0.61)", faceOf(face, u).Text, about(u.Of(units.Flow, s.OpenEndFlow)), u.Unit(units.Flow))
	}
}

// about writes a figure to two digits that mean something.
func about(v float64) string {
	if v <= 0 {
		return "0"
	}
	step := math.Pow10(int(math.Floor(math.Log10(v))) - 1)
	return strconv.FormatFloat(math.Round(v/step)*step, 'f', max(0, -int(math.Round(math.Log10(step)))), 64)
}
