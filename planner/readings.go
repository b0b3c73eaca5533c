package planner

import (
	"fmt"
	"math"
	"strconv"

	"blankoff/planner/rig"
)

// Reading is what a reading of the rig in a section's test would mean.
type Reading struct {
	From, To float64 // L/s; To is infinite for the last
	Means    string
}

// readings says what every reading of the rig would mean in a section's test. A
// reading is taken with the error of the range against it at both ends of what
// can be read; at the limit itself the agreed decision rule governs.
func (p *Plan) readings(s *Section) []Reading {
	spans := p.rigOf(s).Readable(s.TestPa)
	if len(spans) == 0 || s.Limit <= 0 {
		return nil
	}
	var out []Reading
	low := spans[0].Low
	if s.Limit >= low {
		out = append(out, Reading{0, low, "passes; no figure can be read, only that it leaks less than the limit"})
	} else {
		out = append(out, Reading{0, low, "proves nothing: the limit lies below what can be read"})
	}
	most := low
	for _, span := range spans {
		if span.Low > most {
			out = append(out, between(most, span.Low, s.Limit, "can't be read: it lies between the ranges"))
		}
		if s.Limit > span.Low {
			out = append(out, Reading{span.Low, math.Min(span.High, s.Limit), "passes"})
		}
		if s.Limit < span.High {
			out = append(out, Reading{math.Max(span.Low, s.Limit), span.High, "fails; find the leaks, seal, let it cure, test again"})
		}
		most = span.High
	}
	return append(out, Reading{most, math.Inf(1), "or the pressure can't be held: fails; look for an open end first, no class can be stated"})
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
	return Reading{from, to, text}
}

// Text is a reading in a sentence with figures, limits rounded down and what
// has to be read rounded to three digits.
func (r Reading) Text() string {
	switch {
	case r.From == 0:
		return fmt.Sprintf("below %s L/s: %s", digits3(r.To), r.Means)
	case math.IsInf(r.To, 1):
		return fmt.Sprintf("above %s L/s, %s", digits3(r.From), r.Means)
	}
	return fmt.Sprintf("%s to %s L/s: %s", digits3(r.From), digits3(r.To), r.Means)
}

// digits3 writes a flow cut off at three digits.
func digits3(q float64) string {
	if q <= 0 {
		return "0"
	}
	scale := math.Pow(10, 2-math.Floor(math.Log10(q)))
	return strconv.FormatFloat(math.Floor(q*scale+1e-9)/scale, 'f', -1, 64)
}
