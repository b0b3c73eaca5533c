package xlsx

import (
	"fmt"
	"math"

	"blankoff/planner/rig"
	"blankoff/planner/tightness"
	"blankoff/planner/units"
)

// What the sheet settings holds in US units: k at 1 in. w.g., which is the
// leakage class of the US scheme; flows in cfm; and the two figures that a formula
// needs where the units don't go with each other.

const (
	pushName  = "push_at_1_in_wg"
	speedName = "speed_at_1_in_wg"
)

// airHalved is half the density of air that the loss of a hose is worked out
// with, kg/m3; see [rig.Hose.Loss].
const airHalved = 1.2 / 2

// factors are those two figures.
func (t *settingsTable) factors() {
	if t.u != units.US {
		return
	}
	u := t.u
	// m/s, and m/s in 1 ft/min
	speed := math.Sqrt(u.Back(units.Pressure, 1)/airHalved) / (u.Back(units.Length, 1) / 60)
	for _, x := range []struct {
		what  string
		v     float64
		name  string
		about string
	}{
		{"push of 1 in. w.g., lbf per ft2", u.Of(units.Force, u.Back(units.Pressure, 1)*u.Back(units.Area, 1)), pushName, "a conventional inch of water; not to be changed"},
		{"air with a velocity pressure of 1 in. w.g., ft/min", speed, speedName, "air of 0.0749 lb per cubic foot, for the loss of a hose; not to be changed"},
	} {
		t.name(x.name, t.put(x.what, as{x.v, full}, x.name, freely(x.about)))
	}
}

// push turns a pressure times an area to a force.
func (l *links) push() string {
	if l.v.Units == units.US {
		return "*" + pushName
	}
	return ""
}

// k is the limit of a class at a pressure of 1, per area.
func (t *settingsTable) k(s *tightness.Scheme, k float64) float64 {
	if t.u != units.US {
		return k
	}
	return turn(t.u, units.PerArea, k*math.Pow(t.u.Back(units.Pressure, 1), s.Exponent))
}

func (t *settingsTable) kHead() string {
	return "k, " + t.u.Unit(units.PerArea) + " at 1 " + t.u.Unit(units.Pressure)
}

func (t *settingsTable) hoseHead() string {
	if t.u == units.US {
		return "hose in. w.g. per cfm2"
	}
	return "hose Pa per (L/s)2"
}

func (t *settingsTable) slopeHead() string {
	return t.u.Unit(units.Flow) + " per " + t.u.Unit(units.Pressure)
}

// head is a heading inside the sheet.
func (t *settingsTable) head(q units.Quantity, si string) headed { return headed(headIn(t.u, q, si)) }

func (t *settingsTable) flowHead(si string) headed { return t.head(units.Flow, si) }

// flow is a flow in the units of the sheet.
func (t *settingsTable) flow(ls float64) float64 { return turn(t.u, units.Flow, ls) }

// turned is a range with its flows in the units of the sheet.
func (t *settingsTable) turned(g rig.Range) rig.Range {
	for _, q := range []*float64{&g.MinLS, &g.MaxLS, &g.AccuracyLS, &g.OwnLeakLS} {
		*q = t.flow(*q)
	}
	return g
}

// hose is what a hose loses at a flow of 1, in row n: (f l/d + 1.5) rho v2/2, the
// 1.5 being its two ends. In US units v is held against the speed whose rho v2/2
// is 1 in. w.g.
func (t *settingsTable) hose(h *rig.Hose, n int) any {
	if t.u == units.US {
		now := t.u.Of(units.Pressure, h.Loss(t.u.Back(units.Flow, 1)))
		return formula{fmt.Sprintf("(J%d*H%d/(I%d/12)+1.5)*(1/(PI()/4*(I%d/12)^2)/%s)^2", n, n, n, n, speedName), now}
	}
	return formula{fmt.Sprintf("(J%d*H%d/(I%d/1000)+1.5)*1.2/2*(0.001/(PI()/4*(I%d/1000)^2))^2", n, n, n, n), h.Loss(1)}
}
