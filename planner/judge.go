package planner

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"blankoff/planner/divide"
	"blankoff/planner/rig"
	"blankoff/planner/units"
)

// judge says of every section whether the rig can judge it, with the true
// areas, and what would help where it can't.
func (p *Plan) judge() {
	for i := range p.Sections {
		s := &p.Sections[i]
		p.place1(s)
		s.Readings = p.readings(s)
		if least := s.Scheme.MinAreaM2; least > 0 && s.Area < least {
			s.Notes = append(s.Notes, fmt.Sprintf("less than the %s that scheme %s asks of one test (%s)", p.asked(least), s.Scheme.Name, s.Scheme.MinAreaSource))
		}
		if s.Grouping {
			s.Notes = append(s.Notes, "a grouping of rows that name no neighbours; whether they hang together has to be seen on the drawing")
		}
	}
	p.pairUp()
	for i := range p.Sections {
		switch s := &p.Sections[i]; {
		case s.State == OverRange:
			s.Cures = p.overCures(s)
		case s.State.Under():
			s.Cures = p.underCures(i)
		}
	}
	p.barredCures()
}

// place1 places one section in its windows.
func (p *Plan) place1(s *Section) {
	least, most := divide.Held(s.Area, s.Exact, p.Settings.HoldBoth)
	if divide.InWindow(s.Windows, least, most) {
		s.State = InRange
		s.Rig, s.Range = p.rangeFor(s)
		return
	}
	set := p.Settings
	v := set.Rigs.Judge(s.Limit, s.TestPa, set.Headroom)
	switch {
	case most > s.Most+divide.AreaSlack:
		s.State, s.Reason = OverRange, v.Reason(set.Units)
		if v.State != "over" {
			s.Reason = fmt.Sprintf("larger than the %s asked for at most, and it can't be cut", p.asked(set.MaxArea))
		}
	case v.State == "gap":
		s.State, s.Reason = GapRange, v.Reason(set.Units)
	case v.State == "in":
		s.State = SmallArea
		s.Rig, s.Range = p.rangeFor(s)
	default:
		s.State, s.Reason = UnderRange, v.Reason(set.Units)
	}
	if s.State.Under() && s.Area < set.MinArea {
		s.Reason = strings.TrimPrefix(s.Reason+fmt.Sprintf("; area: less than the %s asked for at least", p.asked(set.MinArea)), "; ")
	}
	if s.State.Under() && s.Area == 0 {
		s.Reason = "no area in it counts, so it has no limit to be held against"
	}
}

// rangeFor is the rig and the range to set; at the very end of a window the last
// digit may fall outside, so the neighbours of the limit are asked too.
func (p *Plan) rangeFor(s *Section) (string, string) {
	for _, nudge := range []float64{1, 1 - 1e-9, 1 + 1e-9} {
		if r, name, ok := p.Settings.Rigs.RangeFor(s.Limit*nudge, s.TestPa, p.Settings.Headroom); ok {
			return r.Name, name
		}
	}
	return "", ""
}

// Reading is what a reading of the rig in a section's test would mean.
type Reading struct {
	From, To float64 // L/s; To is infinite for the last
	Means    string
	limit    float64 // of the section, shown with its own digits
}

// readings says what every reading of the rig would mean in a section's test. A
// reading is taken with the error of the range against it at both ends of what
// can be read; at the limit itself the agreed decision rule governs.
func (p *Plan) readings(s *Section) (out []Reading) {
	defer func() {
		for i := range out {
			out[i].limit = s.Limit
		}
	}()
	spans := p.rigOf(s).Readable(s.TestPa)
	if len(spans) == 0 || s.Limit <= 0 {
		return nil
	}
	low := spans[0].Low
	if s.Limit >= low {
		out = append(out, Reading{From: 0, To: low, Means: "passes; no figure can be read, only that it leaks less than the limit"})
	} else {
		out = append(out, Reading{From: 0, To: low, Means: "proves nothing: the limit lies below what can be read"})
	}
	if from, to, ok := p.rigOf(s).Lower(s.Range, s.TestPa); ok && from > low {
		defer func() {
			out = append(out, Reading{From: 0, To: from, Means: fmt.Sprintf("can't be read on range %s; change to range %s", s.Range, to)})
		}()
	}
	most := low
	for _, span := range spans {
		if span.Low > most {
			out = append(out, between(most, span.Low, s.Limit, "can't be read: it lies between the ranges"))
		}
		if s.Limit > span.Low {
			out = append(out, Reading{From: span.Low, To: math.Min(span.High, s.Limit), Means: "passes"})
		}
		if s.Limit < span.High {
			out = append(out, Reading{From: math.Max(span.Low, s.Limit), To: span.High, Means: "fails; find the leaks, seal, let it cure, test again"})
		}
		most = span.High
	}
	if s.Limit > most {
		return append(out, Reading{From: most, To: math.Inf(1), Means: "or the pressure can't be held: proves nothing, the limit lies above what can be read; look for an open end first"})
	}
	return append(out, Reading{From: most, To: math.Inf(1), Means: "or the pressure can't be held: fails; look for an open end first, no class can be stated"})
}

// rigOf is the rig that serves a section, or the first where none does.
func (p *Plan) rigOf(s *Section) *rig.Rig {
	for _, r := range p.Settings.Rigs {
		if r.Name == s.Rig {
			return r
		}
	}
	return p.Settings.Rigs[0]
}

// between is a stretch that can't be read, and what is known there all the
// same.
func between(from, to, limit float64, text string) Reading {
	switch {
	case to <= limit:
		text += ", and passes all the same"
	case from >= limit:
		text += ", and fails all the same"
	}
	return Reading{From: from, To: to, Means: text}
}

// Text is a reading in a sentence: the limit as it is shown everywhere, other
// figures cut off at three digits.
func (r Reading) Text(u units.System) string {
	show := func(q float64) string {
		if q == r.limit {
			return u.Cut(units.Flow, q)
		}
		return flow3(u, q)
	}
	from, to, unit := show(r.From), show(r.To), u.Unit(units.Flow)
	switch {
	case r.From == 0:
		return fmt.Sprintf("below %s %s: %s", to, unit, r.Means)
	case math.IsInf(r.To, 1):
		return fmt.Sprintf("above %s %s, %s", from, unit, r.Means)
	}
	return fmt.Sprintf("%s to %s %s: %s", from, to, unit, r.Means)
}

// asked writes an area that somebody asked for.
func (p *Plan) asked(m2 float64) string { return p.Settings.Units.Text(units.Area, m2, -1) }

// flow3 writes a leakage, L/s, cut off at three digits, without its unit.
func flow3(u units.System, q float64) string { return digits3(u.Of(units.Flow, q)) }

// digits3 writes a figure cut off at three digits.
func digits3(q float64) string {
	if q <= 0 {
		return "0"
	}
	scale := math.Pow(10, 2-math.Floor(math.Log10(q)))
	return strconv.FormatFloat(math.Floor(q*scale+1e-9)/scale, 'f', -1, 64)
}
