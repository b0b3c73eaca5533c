// Package untested lists the joints that a plan's cuts leave untested and what
// overlapping the sections would cost.
//
// A cut is blanked on both sides and closed after both tests, so its joint is in
// no test. It would be if one of the two sections took in the piece on the other
// side, with everything that hangs on that piece over joints that can't be
// blanked: the joint then lies inside that test, and the piece is tested twice.
package untested

import (
	"blankoff/planner/duty"
	"blankoff/planner/network"
	"blankoff/planner/rig"
)

// Section is a section of the plan.
type Section struct {
	ID          string
	Nodes       []int
	Area, Exact float64          // m2, on the basis and exactly
	Windows     []rig.AreaWindow // the areas that the rig can judge
	Status      string           // agreed, tested, passed or not in the sample: it takes nothing in
}

// Cut is a joint that is blanked between two sections, or inside one.
type Cut struct {
	Joint int
	Parts [2]int // the sections on its two sides, nearer the plant first
	Why   string // why it has to be cut; "" or duty.YourCut: it needn't
}

// Ask is a plan.
type Ask struct {
	Net      *network.Network
	Prices   network.Prices
	Sections []Section
	Cuts     []Cut
	HoldBoth bool // the exact area is held as well as that on the basis
}

// Joint is an untested joint.
type Joint struct {
	Cut    int     // its number in the list
	Metres float64 // girth of the larger of its two openings, m
	By     int     // the section that would take in the other side; -1: none can
	Takes  []int   // the nodes that it takes in here, none where another joint's are enough
	Cost
	Why string // why none can
}

// Cost is what an overlap costs beyond the plan: blanks and minutes less those
// that fall away, and the area that is tested once more, m2. Each is over what
// the overlaps before it cost already, so that they add up.
type Cost struct {
	Blanks  int
	Minutes float64
	Area    float64
}

// Sum is the untested joints together, and those that overlapping would test.
type Sum struct {
	Joints   int
	Metres   float64
	Overlaps int
	Tested   float64 // m of joint that the overlaps would test
	Cost
}

// Joints lists the joint of every cut and how it could be tested. The overlaps
// are chosen one by one, the cheapest first, each by the side that is cheaper
// and stays in range with all that the same section has taken in before.
func Joints(ask Ask) ([]Joint, Sum) {
	x := newWork(ask)
	list := make([]Joint, len(ask.Cuts))
	for k, c := range ask.Cuts {
		list[k] = Joint{Cut: k, Metres: ask.Net.Joints[c.Joint].Face().Girth(), By: -1, Why: x.never(c)}
	}
	for _, k := range x.cheapestFirst(list) {
		x.choose(&list[k])
	}
	var sum Sum
	for _, j := range list {
		sum.Joints++
		sum.Metres += j.Metres
		if j.By >= 0 {
			sum.Overlaps++
			sum.Tested += j.Metres
			sum.Blanks += j.Blanks
			sum.Minutes += j.Minutes
			sum.Area += j.Area
		}
	}
	return list, sum
}

// never says why the joint of a cut can be tested from neither side whatever the
// areas, or "".
func (x *work) never(c Cut) string {
	switch {
	case c.Parts[0] == c.Parts[1]:
		return "both sides are in " + x.ask.Sections[c.Parts[0]].ID + ", cut there: " + said(c.Why)
	case c.Why != "" && c.Why != duty.YourCut && !duty.BoundOfKept(c.Why):
		return said(c.Why)
	}
	return ""
}

func said(why string) string {
	if why == "must" {
		return "the schedule says must"
	}
	return why
}
