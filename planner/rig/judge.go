package rig

import (
	"fmt"

	"blankoff/planner/units"
)

// State says where a section's limit lies in the rig's windows.
type State string

// The states of a limit.
const (
	In    State = "in"    // the rig can judge it
	Under State = "under" // below the lowest window: under range
	Gap   State = "gap"   // between two windows: counts as under range
	Over  State = "over"  // above the highest window, or no window: over range
)

// Verdict is what [Rig.Judge] says of a limit.
type Verdict struct {
	State State
	Range string // to set; In only
	// Below and Above are the windows next to the limit, nil where there is
	// none. For In, both are the window it lies in.
	Below, Above *FlowWindow

	reason func(units.System) string
}

// Reason says in plain words, with figures in these units, why the state is what
// it is; it is empty for In.
func (v Verdict) Reason(u units.System) string {
	if v.reason == nil {
		return ""
	}
	return v.reason(u)
}

// Judge places a section's limit q, L/s, at a test pressure and headroom.
func (r *Rig) Judge(q, pa, headroom float64) Verdict {
	windows := r.FlowWindows(pa, headroom)
	if len(windows) == 0 {
		return Verdict{State: Over, reason: func(u units.System) string { return r.nothing(pa, headroom, u) }}
	}
	return judge(windows, q, pa, headroom, func() string {
		name, _ := r.RangeFor(q, pa, headroom)
		return name
	})
}

// judge places a limit among windows, ascending; name finds the range to set.
func judge(windows []FlowWindow, q, pa, headroom float64, name func() string) Verdict {
	var v Verdict
	for i := range windows {
		w := &windows[i]
		if w.Low <= q && q <= w.High {
			return Verdict{State: In, Range: name(), Below: w, Above: w}
		}
		if w.High < q {
			if v.Below == nil || w.High > v.Below.High {
				v.Below = w
			}
		} else if v.Above == nil {
			v.Above = w
		}
	}
	switch {
	case v.Below == nil && v.Above != nil:
		v.State = Under
	case v.Above == nil:
		v.State = Over
	default:
		v.State = Gap
	}
	v.reason = func(u units.System) string { return v.why(pa, headroom, u) }
	return v
}

// why says where a limit outside the windows lies.
func (v *Verdict) why(pa, headroom float64, u units.System) string {
	at := u.Text(units.Pressure, pa, 6)
	switch v.State {
	case Under:
		return fmt.Sprintf("below %s, the least limit that this rig can judge at %s", u.Flow(v.Above.Low), at)
	case Over:
		return fmt.Sprintf("above %s, the greatest limit that this rig can judge at %s with a headroom of %s", u.Flow(v.Below.High), at, plain(headroom))
	}
	return fmt.Sprintf("in the gap between what the ranges can judge at %s with a headroom of %s: limits up to %s and from %s",
		at, plain(headroom), u.Figure(units.Flow, v.Below.High, 4), u.Flow(v.Above.Low))
}

// nothing says why there is no window at all.
func (r *Rig) nothing(pa, headroom float64, u units.System) string {
	if !(headroom >= 1) {
		return fmt.Sprintf("headroom %s is less than 1", plain(headroom))
	}
	if spans := r.Readable(pa); len(spans) > 0 {
		return fmt.Sprintf("no range of the rig can read a limit and %s times as much at %s", plain(headroom), u.Text(units.Pressure, pa, 6))
	}
	return fmt.Sprintf("no range of the rig can be used at %s", u.Text(units.Pressure, pa, 6))
}
