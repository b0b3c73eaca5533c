package rig

import (
	"math"
	"slices"
	"sort"
)

// Span is a stretch of flows that can be read without a hole, L/s.
type Span struct {
	Low, High float64
	Ranges    []string // that make it up, lowest first
}

// FlowWindow is the limits a section may have, L/s: such a limit can be read,
// and so can everything up to headroom times it.
type FlowWindow struct{ Low, High float64 }

// AreaWindow is the areas a section may have, m2.
type AreaWindow struct {
	Low, High float64
	Ranges    []string
}

// Readable is the flows the rig can read at a test pressure, ascending: every
// range's [min + err(min), max - err(max) - own leak], cut off at what the fan
// can hold, and joined where they touch or overlap. pa is Pa, more than 0; no
// spans for anything else, or if no range can be used at that pressure.
func (r *Rig) Readable(pa float64) []Span {
	var spans []Span
	for _, one := range r.Ranges {
		if low, high, ok := one.readable(pa); ok {
			spans = append(spans, Span{Low: low, High: high, Ranges: []string{one.Name}})
		}
	}
	sort.SliceStable(spans, func(i, j int) bool { return spans[i].Low < spans[j].Low })
	var out []Span
	for _, s := range spans {
		last := len(out) - 1
		if last < 0 || s.Low > out[last].High {
			out = append(out, s)
			continue
		}
		out[last].High = math.Max(out[last].High, s.High)
		out[last].Ranges = append(out[last].Ranges, s.Ranges...)
	}
	return out
}

// judgeable pairs each span that has room for the headroom with its window.
func (r *Rig) judgeable(pa, headroom float64) (windows []FlowWindow, spans []Span) {
	if !(headroom >= 1) || math.IsInf(headroom, 0) {
		return nil, nil
	}
	for _, s := range r.Readable(pa) {
		if w := (FlowWindow{s.Low, s.High / headroom}); w.Low <= w.High {
			windows = append(windows, w)
			spans = append(spans, s)
		}
	}
	return windows, spans
}

// FlowWindows are the limits q, L/s, that a section may have at a test
// pressure, ascending: q is at least the low end of a span and q x headroom at
// most the high end of the same one. headroom is 1 or more; none for less.
func (r *Rig) FlowWindows(pa, headroom float64) []FlowWindow {
	windows, _ := r.judgeable(pa, headroom)
	return windows
}

// AreaWindows are the areas that a section may have, m2, ascending: the flow
// windows divided by the limit per m2. limitPerM2 is L/s per m2, more than 0;
// none for anything else.
func (r *Rig) AreaWindows(limitPerM2, pa, headroom float64) []AreaWindow {
	if !(limitPerM2 > 0) || math.IsInf(limitPerM2, 0) {
		return nil
	}
	windows, spans := r.judgeable(pa, headroom)
	var out []AreaWindow
	for i, w := range windows {
		out = append(out, AreaWindow{w.Low / limitPerM2, w.High / limitPerM2, slices.Clone(spans[i].Ranges)})
	}
	return out
}

// RangeFor is the range to set for a section with limit q, L/s. Among those
// that alone hold everything from q to q x headroom it is the one with the
// smallest error at q; if none does, the one with the smallest error among
// those that hold q. Ties go to the lower range, then to the order of the
// file. ok is false if q is in no window.
func (r *Rig) RangeFor(q, pa, headroom float64) (name string, ok bool) {
	if !within(r.FlowWindows(pa, headroom), q) {
		return "", false
	}
	best, bestAlone := -1, false
	for i, one := range r.Ranges {
		low, high, usable := one.readable(pa)
		if !usable || q < low || q > high {
			continue
		}
		alone := q <= high/headroom
		if best < 0 || (alone && !bestAlone) || (alone == bestAlone && one.finer(r.Ranges[best], q)) {
			best, bestAlone = i, alone
		}
	}
	if best < 0 {
		return "", false
	}
	return r.Ranges[best].Name, true
}

// finer says whether the range reads q more closely than the other.
func (r Range) finer(other Range, q float64) bool {
	if r.Err(q) != other.Err(q) {
		return r.Err(q) < other.Err(q)
	}
	return r.MaxLS < other.MaxLS
}

func within(windows []FlowWindow, q float64) bool {
	return slices.ContainsFunc(windows, func(w FlowWindow) bool { return w.Low <= q && q <= w.High })
}

// Lower is, for the range to set, the least flow that it reads at a test pressure
// and the range to change to for less; ok is false where it reads as low as any.
func (r *Rig) Lower(name string, pa float64) (from float64, to string, ok bool) {
	for _, one := range r.Ranges {
		if one.Name == name {
			from, _, ok = one.readable(pa)
		}
	}
	best := math.Inf(-1)
	for _, one := range r.Ranges {
		if low, _, usable := one.readable(pa); ok && usable && low < from && low > best {
			best, to = low, one.Name
		}
	}
	return from, to, to != ""
}
