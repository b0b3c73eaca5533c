package report

import (
	"fmt"

	"blankoff/planner"
	"blankoff/planner/tightness"
)

// cautions are the usual ones where a test can hurt someone or harm the duct.
// Common practice, no source, where none is named.
func cautions(p *planner.Plan, v *Plan) []string {
	u := p.Settings.Units
	most, where, at, negative := 0.0, "", "", false
	for i := range p.Sections {
		s := &p.Sections[i]
		if v.Sections[i].NotTested != "" {
			continue
		}
		if n, face := s.MostForce(); n > most {
			most, where, at = n, s.ID, "the "+faceOf(face, p.Settings.Units).Text
		}
		if s.Grouping {
			if n, face := p.Widest(s); n > most {
				most, where, at = n, s.ID+", where the blanks aren't known yet", "a "+faceOf(face, p.Settings.Units).Text
			}
		}
		negative = negative || s.Sign == tightness.Negative
	}
	var out []string
	if most > 0 {
		out = append(out, fmt.Sprintf("Blanks are pushed with test pressure x area: up to %s (the weight of %s) on %s blank of %s. Fix blanks mechanically, never with tape alone; nobody stands in front of one under pressure; let the pressure down before touching one.", u.Force(most), u.Weight(most/9.80665), at, where))
	}
	out = append(out,
		"Never go above the duct's pressure class or the test pressure of the section. Start with the fan throttled or at its lowest speed and raise the pressure slowly.")
	if negative {
		out = append(out, "Negative pressure: ceilings are lower than for positive because flat walls buckle inward. Check the sign and the hose before starting.")
	} else {
		out = append(out, "If a section is tested at negative pressure instead, its ceiling is lower than for positive; plan again with --sign negative.")
	}
	return append(out,
		"Supply the rig through a residual-current device (30 mA), or at the reduced voltage the site requires, with certificates in date.",
		"Capping ends is work at height: use the access the site's rules ask for, not the duct or its hangers.",
		"Closed dampers are not blanks. Tell the site before smoke is used to look for leaks.",
		"This plan doesn't replace the specification, local codes or the judgement of licensed practitioners; where they differ, they come first.")
}
