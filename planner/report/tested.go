package report

import (
	"fmt"
	"slices"

	"blankoff/planner"
)

// Tested is what there is to be tested of a plan: its sections less those that
// were tested before, that a sample doesn't take, or for which no day is left.
// Where that is all of them it is the plan's own sum.
type Tested struct {
	Tests      int       `json:"tests"`
	OverRange  int       `json:"over_range"`
	UnderRange int       `json:"under_range"`
	Area       float64   `json:"area_m2"`
	Cuts       int       `json:"cuts"`          // that are blanked, on one side or both
	Blanks     int       `json:"blanks"`        // fits, in all these tests
	Minutes    float64   `json:"blank_minutes"` // of the cuts' sides
	EndMinutes float64   `json:"end_minutes"`   // capping open ends and bounds of the scope, apart
	Total      float64   `json:"total_minutes"` // tests and cuts' sides
	Left       []LeftOut `json:"left_out"`      // by reason
}

// LeftOut is the sections that aren't tested for one reason.
type LeftOut struct {
	Why      string   `json:"why"`
	Sections []string `json:"sections"`
	Area     float64  `json:"area_m2"`
}

// All reports whether every section of the plan is to be tested.
func (t Tested) All() bool { return len(t.Left) == 0 }

// Why a section isn't tested.
const (
	notInSample  = "not in the sample"
	widenedSince = "tested before, and the sample is widened"
	noDay        = "no day is left for it"
)

// noTest says why each section isn't tested; "" if it is.
func (v *Plan) noTest() func(s *Section) string {
	missed, drawn, earlier := map[string]bool{}, map[string]bool{}, map[string]bool{}
	if v.Visits != nil {
		see(missed, v.Visits.Missed)
	}
	if v.Sample != nil {
		see(drawn, v.Sample.IDs)
		see(earlier, v.Sample.Earlier)
	}
	return func(s *Section) string {
		switch {
		case s.Status == "passed" || s.Status == "tested":
			return s.Status + ", as the earlier plan says"
		case v.Sample != nil && earlier[s.ID]:
			return widenedSince
		case v.Sample != nil && !drawn[s.ID]:
			return notInSample
		case missed[s.ID]:
			return noDay
		}
		return ""
	}
}

// see marks names.
func see(m map[string]bool, ids []string) {
	for _, id := range ids {
		m[id] = true
	}
}

// follow works out what hangs on which sections are tested: the visits, the order
// of the tests and their blanks, the joints that stay untested, the cautions.
func (v *Plan) follow(p *planner.Plan) {
	v.Visits = visitsOf(p, v.Sample)
	why := v.noTest()
	for i := range v.Sections {
		v.Sections[i].NotTested = why(&v.Sections[i])
	}
	untested := make(chan *Untested, 1)
	go func() { untested <- untestedOf(p, v) }() // it takes as long as the rest
	v.Blanking = blankingOf(p, v)
	v.Untested = <-untested
	v.Cautions = cautions(p, v)
	t := v.Tested()
	v.ToBeTested = &t
}

// ToTest are the sections that are tested, to read: where all are, they are the plan's
// own list.
func (v *Plan) ToTest() []Section {
	if !slices.ContainsFunc(v.Sections, func(s Section) bool { return s.NotTested != "" }) {
		return v.Sections
	}
	out := make([]Section, 0, len(v.Sections))
	for i := range v.Sections {
		if v.Sections[i].NotTested == "" {
			out = append(out, v.Sections[i])
		}
	}
	return out
}

// Tested adds up what is to be tested.
func (v *Plan) Tested() Tested {
	t := Tested{Left: []LeftOut{}}
	left := map[string]bool{}
	for i := range v.Sections {
		s := &v.Sections[i]
		if s.NotTested != "" {
			left[s.ID] = true
			t.leave(s)
			continue
		}
		t.add(s)
	}
	if t.All() { // with the time of cuts of which no blank is known
		p := &v.Proof
		t.Tests, t.OverRange, t.UnderRange, t.Area, t.Cuts = p.Tests, p.OverRange, p.UnderRange, v.Balance.Sections, len(v.Cuts)
		t.Minutes, t.EndMinutes, t.Total = p.BlankMinutes, p.EndMinutes, p.TotalMinutes
		return t
	}
	for i := range v.Cuts {
		if c := &v.Cuts[i]; !left[c.Parts[0]] || !left[c.Parts[1]] {
			t.Cuts++
		}
	}
	t.Total = float64(t.Tests)*v.Settings.TestMinutes + t.Minutes
	return t
}

// add counts a section that is tested.
func (t *Tested) add(s *Section) {
	t.Tests++
	t.Area += s.Area
	switch {
	case s.OverRange:
		t.OverRange++
	case s.UnderRange:
		t.UnderRange++
	}
	t.Blanks += len(s.Blanks)
	for k := range s.Blanks {
		if b := &s.Blanks[k]; b.Why == "cut" {
			t.Minutes += b.Minutes
		} else {
			t.EndMinutes += b.Minutes
		}
	}
}

// leave notes a section that isn't.
func (t *Tested) leave(s *Section) {
	k := slices.IndexFunc(t.Left, func(l LeftOut) bool { return l.Why == s.NotTested })
	if k < 0 {
		k = len(t.Left)
		t.Left = append(t.Left, LeftOut{Why: s.NotTested, Sections: []string{}})
	}
	t.Left[k].Sections, t.Left[k].Area = append(t.Left[k].Sections, s.ID), t.Left[k].Area+s.Area
}

// Nothing says why there is nothing to test; "" where there is something.
func (v *Plan) Nothing() string {
	for i := range v.Sections {
		if v.Sections[i].NotTested == "" {
			return ""
		}
	}
	switch s := v.Sample; {
	case len(v.Sections) == 0:
		return ""
	case s != nil && s.Regime != nil && len(s.IDs)+len(s.Earlier) == 0:
		return fmt.Sprintf("regime %q asks for no test here", s.Regime.Name)
	}
	return "nothing is left to be tested"
}

// TestedSides are the sections on the two sides of a cut in whose tests it is
// blanked, one or both; none where neither is tested.
func (v *Plan) TestedSides() func(c *Cut) []string {
	left := map[string]bool{}
	for i := range v.Sections {
		left[v.Sections[i].ID] = v.Sections[i].NotTested != ""
	}
	return func(c *Cut) []string {
		var out []string
		for _, id := range c.Parts {
			if !left[id] {
				out = once(out, id)
			}
		}
		return out
	}
}

// TestedMinutes is the part of a cut's minutes that is spent on the sides that are
// tested: all, half or none.
func (v *Plan) TestedMinutes() func(c *Cut) float64 {
	sides := v.TestedSides()
	return func(c *Cut) float64 {
		switch n := len(sides(c)); {
		case n == 0 && c.Parts[0] != "":
			return 0
		case n == 1 && c.Parts[0] != c.Parts[1]:
			return c.Minutes / 2
		}
		return c.Minutes
	}
}
