package rig

import (
	"fmt"
	"math"
	"sort"

	"blankoff/planner/tightness"
	"blankoff/planner/units"
)

// Fleet is the rigs that can be sent to one job. A section is judged by one of
// them alone: what one rig can't read, another doesn't add to.
type Fleet []*Rig

// FlowWindows are the windows of every rig, ascending.
func (f Fleet) FlowWindows(pa, headroom float64) []FlowWindow {
	var out []FlowWindow
	for _, r := range f {
		out = append(out, r.FlowWindows(pa, headroom)...)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Low < out[j].Low })
	return out
}

// AreaWindows are the flow windows divided by the limit per m2, ascending.
func (f Fleet) AreaWindows(limitPerM2, pa, headroom float64) []AreaWindow {
	var out []AreaWindow
	for _, r := range f {
		out = append(out, r.AreaWindows(limitPerM2, pa, headroom)...)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Low < out[j].Low })
	return out
}

// RangeFor is the rig and the range to use for a section with limit q, L/s: the
// one with the smallest error at q among the ranges that the rigs would use.
func (f Fleet) RangeFor(q, pa, headroom float64) (one *Rig, name string, ok bool) {
	least := math.Inf(1)
	for _, r := range f {
		n, can := r.RangeFor(q, pa, headroom)
		if !can {
			continue
		}
		for _, rg := range r.Ranges {
			if rg.Name == n && rg.Err(q) < least {
				one, name, ok, least = r, n, true, rg.Err(q)
			}
		}
	}
	return one, name, ok
}

// Judge places a section's limit q, L/s, at a test pressure and headroom among
// the windows of all rigs.
func (f Fleet) Judge(q, pa, headroom float64) Verdict {
	if len(f) == 1 {
		return f[0].Judge(q, pa, headroom)
	}
	windows := f.FlowWindows(pa, headroom)
	if len(windows) == 0 {
		return Verdict{State: Over, reason: func(u units.System) string {
			return fmt.Sprintf("no range of any rig can be used at %s with a headroom of %s", u.Text(units.Pressure, pa, 6), plain(headroom))
		}}
	}
	return judge(windows, q, pa, headroom, func() string {
		_, name, _ := f.RangeFor(q, pa, headroom)
		return name
	})
}

// NotesAt is what to know about the rigs at a pressure and sign; with several,
// each note names its rig.
func (f Fleet) NotesAt(pa float64, sign tightness.Sign, u units.System) []Note {
	var out []Note
	for _, r := range f {
		for _, n := range r.NotesAt(pa, sign, u) {
			if len(f) > 1 {
				n.Text = r.Name + ": " + n.Text
			}
			out = append(out, n)
		}
	}
	return out
}

// Names joins the names of the rigs.
func (f Fleet) Names() string {
	text := ""
	for i, r := range f {
		if i > 0 {
			text += "; "
		}
		text += r.Name
	}
	return text
}
