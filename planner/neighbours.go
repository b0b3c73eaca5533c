package planner

// linksInside lists the neighbours of every node within its section; where a
// ring is blanked off inside a section, no air goes through.
func (p *Plan) linksInside() neighbours {
	n := neighbours{start: make([]int32, len(p.Network.Nodes)+2)}
	blanked := map[int]bool{}
	for i := range p.Cuts {
		blanked[p.Cuts[i].Joint] = true
	}
	each := func(f func(a, b int)) {
		for k := range p.Network.Joints {
			j := &p.Network.Joints[k]
			if a := p.sectionOf[j.A]; a >= 0 && a == p.sectionOf[j.B] && !blanked[k] {
				f(j.A, j.B)
				f(j.B, j.A)
			}
		}
	}
	each(func(a, _ int) { n.start[a+2]++ })
	for k := 2; k < len(n.start); k++ {
		n.start[k] += n.start[k-1]
	}
	n.list = make([]int32, n.start[len(n.start)-1])
	each(func(a, b int) {
		n.list[n.start[a+1]] = int32(b)
		n.start[a+1]++
	})
	return n
}

// neighbours lists nodes by node, in one piece of memory: those of node k are
// list[start[k]:start[k+1]].
type neighbours struct{ start, list []int32 }

func (n *neighbours) of(node int) []int32 { return n.list[n.start[node]:n.start[node+1]] }
