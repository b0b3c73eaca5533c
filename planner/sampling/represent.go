package sampling

import (
	"fmt"
	"math"

	"blankoff/planner/units"
)

// The band of joint length over area that is normal for a tested part, per
// metre, as reported by the German association of duct makers in its answer on
// how an air-tightness test runs (the standard behind it wasn't read).
const (
	LeastJointPerArea = 1.0
	MostJointPerArea  = 1.5
)

// StrayShare is how far a share of area in a sample may lie from that of the
// whole before it is flagged. A setting of this program, without a source.
const StrayShare = 0.10

// Representative sets a sample beside the whole. Shares are of area, 0 to 1;
// NaN where there is nothing to divide by.
type Representative struct {
	JointPerArea, WholeJointPerArea float64 // L/A, m of joint per m2
	Straights, WholeStraights       float64 // of straights and fittings
	Mains, WholeMains               float64
	Flags                           []string // in words; none: nothing speaks against it
}

// sums are areas and joint lengths of a set of sections.
type sums struct{ area, joints, straights, fittings, mains float64 }

func (t *sums) add(s Section) {
	t.area += s.Area
	t.joints += s.JointLength
	t.straights += s.Straights
	t.fittings += s.Fittings
	if s.Main {
		t.mains += s.Area
	}
}

func represent(sorted []Section, picked map[string]bool, u units.System) Representative {
	var whole, part sums
	var of []Section
	for _, s := range sorted {
		whole.add(s)
		if picked[s.ID] {
			part.add(s)
			of = append(of, s)
		}
	}
	r := Representative{
		JointPerArea: part.joints / part.area, WholeJointPerArea: whole.joints / whole.area,
		Straights: part.straights / (part.straights + part.fittings), WholeStraights: whole.straights / (whole.straights + whole.fittings),
		Mains: part.mains / part.area, WholeMains: whole.mains / whole.area,
	}
	if len(of) == 0 {
		r.Flags = []string{"nothing is picked"}
		return r
	}
	r.flagJoints(u)
	r.flagShare("straights", r.Straights, r.WholeStraights)
	r.flagShare("mains", r.Mains, r.WholeMains)
	r.flagAbsent(sorted, of)
	return r
}

func (r *Representative) flag(format string, args ...any) {
	r.Flags = append(r.Flags, fmt.Sprintf(format, args...))
}

func (r *Representative) flagJoints(u units.System) {
	least, most, unit := u.Ratio(LeastJointPerArea, 1), u.Ratio(MostJointPerArea, 1), u.Unit(units.JointRatio)
	whole := "all planned sections have " + u.Ratio(r.WholeJointPerArea, 2)
	switch v := r.JointPerArea; {
	case math.IsNaN(v) || r.WholeJointPerArea == 0:
		r.flag("joint length over area can't be judged: there is no area, or no joint length")
	case v < LeastJointPerArea:
		r.flag("%s %s is below the normal %s to %s: few joints for the area (%s)", u.Ratio(v, 2), unit, least, most, whole)
	case v > MostJointPerArea:
		r.flag("%s %s is above the normal %s to %s: many joints for the area (%s)", u.Ratio(v, 2), unit, least, most, whole)
	}
}

func (r *Representative) flagShare(what string, part, whole float64) {
	switch {
	case math.IsNaN(part) || math.IsNaN(whole):
		r.flag("the share of %s can't be judged: no areas are given", what)
	case math.Abs(part-whole) > StrayShare:
		r.flag("%s are %.0f %% of the sample and %.0f %% of the whole", what, 100*part, 100*whole)
	}
}

// flagAbsent names what the whole has and the sample hasn't.
func (r *Representative) flagAbsent(sorted, of []Section) {
	for _, kind := range []struct {
		name func(Section) string
		what func(string) string
	}{
		{func(s Section) string { return s.Class }, className},
		{func(s Section) string { return s.System }, func(v string) string { return "system " + v }},
		{func(s Section) string { return s.Shape }, func(v string) string { return v + " duct" }},
		{func(s Section) string { return map[bool]string{true: "mains", false: "branches"}[s.Main] }, func(v string) string { return v }},
	} {
		there := set(distinct(of, kind.name))
		for _, v := range distinct(sorted, kind.name) {
			if v != "" && !there[v] {
				r.flag("nothing of %s is in the sample", kind.what(v))
			}
		}
	}
}
