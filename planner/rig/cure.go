package rig

import "blankoff/planner/tightness"

// pressureStep is how finely another test pressure is proposed, Pa: nobody
// sets a rig closer.
const pressureStep = 10

// OtherPressure proposes a cure for a section that can't be judged: the test
// pressure nearest to pa at which it could be, a multiple of 10 Pa and at most
// ceilingPa (100000 Pa or less); of two equally near, the lower. areaM2 is the section's surface,
// m2. ok is false if there is none. Whether the specifier agrees to another
// pressure is another matter.
func (r *Rig) OtherPressure(s *tightness.Scheme, c tightness.Class, areaM2, pa, ceilingPa, headroom float64) (other float64, ok bool) {
	judged := func(try float64) bool {
		return try > 0 && try <= ceilingPa && within(r.FlowWindows(try, headroom), areaM2*s.Limit(c, try))
	}
	if !(pa > 0) || !(ceilingPa <= maxPressure) {
		return 0, false
	}
	down := float64(int(pa/pressureStep)) * pressureStep
	if down >= pa {
		down -= pressureStep
	}
	up := down + pressureStep
	if up <= pa {
		up += pressureStep
	}
	for down > 0 || up <= ceilingPa {
		if down > 0 && pa-down <= up-pa {
			if judged(down) {
				return down, true
			}
			down -= pressureStep
			continue
		}
		if judged(up) {
			return up, true
		}
		up += pressureStep
	}
	return 0, false
}
