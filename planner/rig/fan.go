package rig

import (
	"fmt"
	"math"
	"strconv"

	"blankoff/planner/units"
)

// Hose joins the rig to the duct; the fan has to overcome it as well.
type Hose struct {
	LengthM   float64
	DiameterM float64
	Friction  float64 // Darcy friction factor
}

const (
	// airDensity is reference air at 20 C and 101 325 Pa, kg/m3.
	airDensity = 1.2
	// defaultFriction goes for a smooth-bored flexible hose: an assumption,
	// no source.
	defaultFriction = 0.03
	// hoseEnds is the loss at both ends in velocity pressures: 0.5 into a
	// sharp-edged pipe and 1 out into a still space. Textbook values, from
	// memory.
	hoseEnds = 0.5 + 1.0
)

// Loss is the pressure lost in the hose at a flow, Pa: (f l/d + 1.5) rho v2/2,
// the 1.5 being its two ends. q is L/s, 0 or more.
func (h Hose) Loss(q float64) float64 {
	bore := math.Pi / 4 * h.DiameterM * h.DiameterM
	v := q / 1000 / bore
	return (h.Friction*h.LengthM/h.DiameterM + hoseEnds) * airDensity / 2 * v * v
}

// FanFlow is what the fan delivers against a pressure at its outlet, L/s:
// linear between the points of the curve, the flow of the lowest point below
// it (the fan can give that much or more), and ok = false above the highest,
// because nothing is known there. ok is false without a curve.
func (r Range) FanFlow(pa float64) (q float64, ok bool) {
	n := len(r.Fan)
	if n == 0 || !(pa <= r.Fan[n-1].PressurePa) {
		return 0, false
	}
	if pa <= r.Fan[0].PressurePa {
		return r.Fan[0].FlowLS, true
	}
	i := 1
	for r.Fan[i].PressurePa < pa {
		i++
	}
	a, b := r.Fan[i-1], r.Fan[i]
	share := (pa - a.PressurePa) / (b.PressurePa - a.PressurePa)
	return a.FlowLS + share*(b.FlowLS-a.FlowLS), true
}

// Holds is the greatest flow at which the fan still holds the test pressure in
// the duct, L/s: the greatest q for which the fan delivers q against the test
// pressure and the loss of the hose at q. It is 0 above the curve, and +Inf
// without a curve, since the fan is then not checked.
func (r Range) Holds(pa float64) float64 {
	if len(r.Fan) == 0 {
		return math.Inf(1)
	}
	top, ok := r.FanFlow(pa)
	if !ok || r.Hose == nil {
		return top
	}
	can := func(q float64) bool {
		flow, ok := r.FanFlow(pa + r.Hose.Loss(q))
		return ok && flow >= q
	}
	if can(top) {
		return top
	}
	// The fan gives less and the hose costs more as q grows, so there is one
	// crossing. low always can, high never.
	low, high := 0.0, top
	for range 200 {
		mid := low + (high-low)/2
		if mid <= low || mid >= high {
			break
		}
		if can(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// fanNote says what to know about the fan at a pressure; empty if nothing.
func (r Range) fanNote(pa float64, u units.System) string {
	n := len(r.Fan)
	if n == 0 {
		return "fan not checked: no fan curve in the rig file"
	}
	at := func(pa float64) string { return u.Text(units.Pressure, pa, 6) }
	flow := func(q float64) string { return u.Text(units.Flow, q, 6) }
	first, last := r.Fan[0], r.Fan[n-1]
	switch {
	case pa > last.PressurePa:
		return fmt.Sprintf("can't be used at %s: the fan curve ends at %s", at(pa), at(last.PressurePa))
	case pa < first.PressurePa:
		return fmt.Sprintf("the fan curve begins at %s: at %s the fan is taken to deliver no more than there, %s",
			at(first.PressurePa), at(pa), flow(first.FlowLS))
	}
	if low, _ := r.guarded(); r.Holds(pa) < low/100 {
		return fmt.Sprintf("can't be used at %s: the fan, through its hose, holds next to nothing there (its curve ends at %s)", at(pa), at(last.PressurePa))
	} else if r.Holds(pa) < low {
		return fmt.Sprintf("can't be used at %s: the fan holds %s there and the meter needs %s", at(pa), flow(r.Holds(pa)), flow(low))
	}
	return ""
}

// plain writes a number for people, to six figures at most.
func plain(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
