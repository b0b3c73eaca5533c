package network

import "blankoff/fittings"

// findOpenEnds lists every end with nothing on it. Of loose rows nothing is
// known, so none of their ends is listed.
func (n *Network) findOpenEnds() {
	for k := range n.Nodes {
		i := n.Nodes[k].Item
		it := &n.Takeoff.Items[i]
		if it.Refused || it.Loose() {
			continue
		}
		for _, e := range it.Ends {
			if it.SideBySide() {
				if e.Role == fittings.PlantEnd {
					continue
				}
			} else if n.usedEnds[i]&(1<<e.Role) != 0 || !n.carriesEnd(k, n.nodesOf[i], e.Role) {
				continue
			}
			end := OpenEnd{Node: k, Role: e.Role, Face: e.CrossSection, Minutes: n.rule.End(e.CrossSection, it.Level), Estimated: true}
			if it.HasEnd {
				end.Minutes, end.Estimated = it.EndMinutes, false
			}
			n.OpenEnds = append(n.OpenEnds, end)
		}
	}
}

// carriesEnd reports whether node k, one of a row's, is the one with the end.
func (n *Network) carriesEnd(k int, nodes [2]int, r fittings.EndRole) bool {
	if r == fittings.PlantEnd {
		return k == nodes[0]
	}
	return k == nodes[1]-1
}
