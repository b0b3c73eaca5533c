package report

import (
	"blankoff/planner"
	"blankoff/planner/units"
	"blankoff/planner/untested"
)

// Untested is the joints of the cuts: they are closed after the tests of both
// sides and so are in neither; and what overlapping the sections would cost.
type Untested struct {
	Joints   int     `json:"joints"`
	Metres   float64 `json:"joint_length_m"`
	Overlaps int     `json:"could_be_tested"` // by letting one section take in a piece of the other
	Tested   float64 `json:"could_be_tested_m"`
	OverlapCost
	List  []UntestedJoint `json:"list"`
	Units units.System    `json:"-"`
}

// OverlapCost is what overlaps cost beyond the plan, less what falls away.
type OverlapCost struct {
	Blanks  int     `json:"extra_blanks"`
	Minutes float64 `json:"extra_minutes"`
	Area    float64 `json:"tested_twice_m2"`
}

// UntestedJoint is the joint of one cut.
type UntestedJoint struct {
	Cut     int      `json:"cut"` // its number, from 1
	At      string   `json:"at"`
	Size    string   `json:"size"` // in mm
	Shown   string   `json:"-"`    // in the units of the plan
	Metres  float64  `json:"joint_length_m"`
	Section string   `json:"section"` // that would take in the other side; empty: none can
	Takes   []string `json:"takes"`   // the pieces that it takes in for this joint
	OverlapCost
	Why string `json:"why"` // why none can
}

// untestedOf lists the joints that stay untested; nil where there are no cuts.
// Those between two sections that a sample doesn't take are left out.
func untestedOf(p *planner.Plan, plan *Plan) *Untested {
	if len(p.Cuts) == 0 {
		return nil
	}
	ask := untested.Ask{Net: p.Network, Prices: p.Settings.Prices, HoldBoth: p.Settings.HoldBoth}
	for i := range p.Sections {
		s := &p.Sections[i]
		status := s.Status
		switch plan.Sections[i].NotTested {
		case notInSample:
			status = notInSample // it takes nothing in
		case widenedSince:
			status = "tested"
		}
		ask.Sections = append(ask.Sections, untested.Section{ID: s.ID, Nodes: s.Nodes, Area: s.Area, Exact: s.Exact, Windows: s.Windows, Status: status})
	}
	for _, c := range p.Cuts {
		ask.Cuts = append(ask.Cuts, untested.Cut{Joint: c.Joint, Parts: c.Parts, Why: c.Why})
	}
	list, sum := untested.Joints(ask)
	v := &Untested{sum.Joints, sum.Metres, sum.Overlaps, sum.Tested, OverlapCost{sum.Blanks, sum.Minutes, sum.Area}, []UntestedJoint{}, p.Settings.Units}
	for _, j := range list {
		c := &p.Cuts[j.Cut]
		if plan.Sections[c.Parts[0]].NotTested == notInSample && plan.Sections[c.Parts[1]].NotTested == notInSample {
			v.Joints, v.Metres = v.Joints-1, v.Metres-j.Metres
			continue
		}
		one := UntestedJoint{
			Cut: j.Cut + 1, At: p.Network.JointText(c.Joint), Size: faceOf(c.Face, units.SI).Text, Shown: faceOf(c.Face, p.Settings.Units).Text, Metres: j.Metres,
			Takes: []string{}, OverlapCost: OverlapCost{j.Blanks, j.Minutes, j.Area}, Why: j.Why,
		}
		if j.By >= 0 {
			one.Section = p.Sections[j.By].ID
		}
		for _, k := range j.Takes {
			one.Takes = append(one.Takes, p.Network.NodeText(k))
		}
		v.List = append(v.List, one)
	}
	if v.Joints == 0 {
		return nil
	}
	return v
}
