package joining

import (
	"fmt"
	"strings"
)

// breakLoops refuses rows that lead back to themselves.
func (n *joined) breakLoops() {
	if !n.forward {
		return
	}
	const (
		unseen = iota
		onPath
		done
	)
	state := make([]uint8, len(n.Lines))
	var path []int
	for i := range n.Lines {
		path = path[:0]
		j := i
		for j >= 0 && state[j] == unseen {
			state[j] = onPath
			path = append(path, j)
			j = int(n.Lines[j].Parent)
		}
		if j >= 0 && state[j] == onPath {
			n.refuseLoop(path, j)
		}
		for _, k := range path {
			state[k] = done
		}
	}
}

// refuseLoop refuses the rows of path from the one where it closes.
func (n *joined) refuseLoop(path []int, first int) {
	at := 0
	for path[at] != first {
		at++
	}
	var names []string
	for _, k := range path[at:] {
		names = append(names, n.NameText(&n.Lines[k]))
	}
	const most = 6
	if len(names) > most {
		names = append(names[:most:most], fmt.Sprintf("(%d more)", len(names)-most))
	}
	chain := strings.Join(append(names, names[0]), " > ")
	for _, k := range path[at:] {
		l := &n.Lines[k]
		n.Refuse(k, "from", string(n.FromOf(l)), "the next piece towards the plant",
			"these rows lead in a circle and never reach the plant: "+chain+"; for a ring main use joins")
	}
	for _, k := range path[at:] {
		l := &n.Lines[k]
		n.Lines[l.Parent].Children--
		l.Parent = -1
	}
}
