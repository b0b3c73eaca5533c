package planner

import "blankoff/planner/network"

// linksInside lists the neighbours of every node within its section; where a
// ring is blanked off inside a section, no air goes through.
func (p *Plan) linksInside() network.Lists {
	blanked := map[int]bool{}
	for i := range p.Cuts {
		blanked[p.Cuts[i].Joint] = true
	}
	return network.ListsOf(len(p.Network.Nodes), func(pair func(a, b int)) {
		for k := range p.Network.Joints {
			j := &p.Network.Joints[k]
			if a := p.sectionOf[j.A]; a >= 0 && a == p.sectionOf[j.B] && !blanked[k] {
				pair(j.A, j.B)
				pair(j.B, j.A)
			}
		}
	})
}
