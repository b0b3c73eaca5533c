package network

// Lists lists neighbours by node, in one piece of memory.
type Lists struct{ start, list []int32 }

// ListsOf makes the lists of so many nodes. each hands on all pairs of a node and what
// it is near, the same ones each time that it is called.
func ListsOf(nodes int, each func(pair func(node, near int))) Lists {
	n := Lists{start: make([]int32, nodes+2)}
	each(func(node, _ int) { n.start[node+2]++ })
	for k := 2; k < len(n.start); k++ {
		n.start[k] += n.start[k-1]
	}
	n.list = make([]int32, n.start[len(n.start)-1])
	each(func(node, near int) {
		n.list[n.start[node+1]] = int32(near)
		n.start[node+1]++
	})
	return n
}

// Of is what is near a node, in the order of the pairs; read, never written.
func (n Lists) Of(node int) []int32 { return n.list[n.start[node]:n.start[node+1]] }
