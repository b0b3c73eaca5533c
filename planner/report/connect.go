package report

import (
	"fmt"
	"math"
	"strconv"

	"blankoff/fittings"
	"blankoff/planner"
	"blankoff/takeoff"
)

// addConnections says of every section where the rig and the tapping go, and
// what one end left open would leak.
func (v *Plan) addConnections(p *planner.Plan) {
	for i, c := range p.Connections(p.HoseDiameter()) {
		s := &v.Sections[i]
		s.RigAt, s.RigLevel, s.TapAt = c.RigAt, c.Level, c.TapAt
		if c.Rig >= 0 {
			face := p.Sections[i].Blanks[c.Rig].Face
			if face.Shape == fittings.Rectangular && face.Width < face.Height { // one plate serves both ways round
				face.Width, face.Height = face.Height, face.Width
			}
			s.RigFace = faceOf(face).Text
		}
		face, ok := p.Sections[i].SmallestOpening()
		if !ok {
			continue
		}
		s.OpenEndFlow = planner.OpenEndFlow(face, p.Sections[i].TestPa)
		s.OpenEnd = fmt.Sprintf("one %s end left open would leak about %s L/s (sharp-edged orifice, discharge coefficient 0.61)", takeoff.SizeText(face), about(s.OpenEndFlow))
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
