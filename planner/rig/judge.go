package rig

import (
	"fmt"
	"strconv"
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
	State  State
	Reason string // in plain words; empty for In
	Range  string // to set; In only
	// Below and Above are the windows next to the limit, nil where there is
	// none. For In, both are the window it lies in.
	Below, Above *FlowWindow
}

// Judge places a section's limit q, L/s, at a test pressure and headroom.
func (r *Rig) Judge(q, pa, headroom float64) Verdict {
	windows := r.FlowWindows(pa, headroom)
	if len(windows) == 0 {
		return Verdict{State: Over, Reason: r.nothing(pa, headroom)}
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
		v.Reason = fmt.Sprintf("below %s L/s, the least limit that this rig can judge at %s Pa", short(v.Above.Low), plain(pa))
	case v.Above == nil:
		v.State = Over
		v.Reason = fmt.Sprintf("above %s L/s, the greatest limit that this rig can judge at %s Pa with a headroom of %s", short(v.Below.High), plain(pa), plain(headroom))
	default:
		v.State = Gap
		v.Reason = fmt.Sprintf("in the gap between what the ranges can judge at %s Pa with a headroom of %s: limits up to %s and from %s L/s",
			plain(pa), plain(headroom), short(v.Below.High), short(v.Above.Low))
	}
	return v
}

// nothing says why there is no window at all.
func (r *Rig) nothing(pa, headroom float64) string {
	if !(headroom >= 1) {
		return fmt.Sprintf("headroom %s is less than 1", plain(headroom))
	}
	if spans := r.Readable(pa); len(spans) > 0 {
		return fmt.Sprintf("no range of the rig can read a limit and %s times as much at %s Pa", plain(headroom), plain(pa))
	}
	return fmt.Sprintf("no range of the rig can be used at %s Pa", plain(pa))
}

// short writes a flow with the digits that mean something.
func short(v float64) string { return strconv.FormatFloat(v, 'g', 4, 64) }
