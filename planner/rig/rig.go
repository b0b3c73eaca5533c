// Package rig holds the leakage rig: its measuring ranges, how far each can be
// trusted, and what its fan can hold. From a class's limit and a test pressure
// it works out the window of duct area the rig can judge.
//
// Flows are L/s, pressures are magnitudes in Pa, areas m2. A reading close to
// the end of a range can't be told from one beyond it, so every range is
// guarded by its own error: it reads from min + err(min) to
// max - err(max) - own leak.
package rig

import (
	"math"

	"blankoff/planner/tightness"
	"blankoff/planner/units"
)

// Rig is a leakage rig with one measuring range or more.
type Rig struct {
	Name   string
	Ranges []Range // in the order of the file
}

// Range is one measuring range.
type Range struct {
	Name  string
	MinLS float64 // lowest flow it indicates, L/s, 0 or more
	MaxLS float64 // highest, L/s, more than MinLS
	// The error of a reading is the greater of AccuracyPercent of it and
	// AccuracyLS, see [Range.Err].
	AccuracyPercent float64
	AccuracyLS      float64
	OwnLeakLS       float64    // what the rig and its hose lose at test pressure, L/s
	Fan             []FanPoint // pressure ascending; none: the fan isn't checked
	Hose            *Hose      // between the fan and the duct; none: nothing is lost in it
}

// FanPoint is one point of the fan curve, net at the rig's outlet.
type FanPoint struct {
	PressurePa float64
	FlowLS     float64 // never rises with pressure
}

// Note is something a reader of the plan has to know and that stops nothing.
type Note struct {
	Range string // empty: the whole rig
	Key   string // of the rig file; empty where it isn't about one
	Text  string
}

// Err is the error of a reading q, L/s: the greater of the accuracy of reading
// and the fixed accuracy. q is L/s, 0 or more.
func (r Range) Err(q float64) float64 {
	return math.Max(q*r.AccuracyPercent/100, r.AccuracyLS)
}

// guarded is what the meter can be trusted to read, whatever the fan does.
func (r Range) guarded() (low, high float64) {
	return r.MinLS + r.Err(r.MinLS), r.MaxLS - r.Err(r.MaxLS) - r.OwnLeakLS
}

// readable is what the range can read at a pressure: guarded, and within what
// the fan can hold there through the hose. ok is false if nothing is left.
func (r Range) readable(pa float64) (low, high float64, ok bool) {
	low, high = r.guarded()
	if len(r.Fan) > 0 {
		high = math.Min(high, r.Holds(pa))
	}
	return low, high, low <= high && pa > 0 && !math.IsInf(pa, 0)
}

// FanChecked is false when any range has no fan curve; the plan then says "fan
// not checked".
func (r *Rig) FanChecked() bool {
	for _, one := range r.Ranges {
		if len(one.Fan) == 0 {
			return false
		}
	}
	return true
}

// NotesAt says what to know about the rig at a pressure and sign: ranges that
// can't be used, curves stretched below their lowest point, fans not checked. Their
// figures are in these units.
func (r *Rig) NotesAt(pa float64, sign tightness.Sign, u units.System) []Note {
	var notes []Note
	for _, one := range r.Ranges {
		if text := one.fanNote(pa, u); text != "" {
			notes = append(notes, Note{Range: one.Name, Key: "fan", Text: text})
		}
	}
	if sign == tightness.Negative && len(r.curves()) > 0 {
		notes = append(notes, Note{Key: "fan", Text: "the fan curve is taken for both signs of pressure: check that the rig pulls as well as it blows"})
	}
	return notes
}

func (r *Rig) curves() []string {
	var names []string
	for _, one := range r.Ranges {
		if len(one.Fan) > 0 {
			names = append(names, one.Name)
		}
	}
	return names
}
