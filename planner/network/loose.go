package network

import (
	"sort"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/terms"
)

// chainLoose lines up the rows that name nobody and that nobody names: by
// system, level and what decides the test, then in the order of the file. The
// links between them are assumed; pieces of one straight are truly joined.
func (n *Network) chainLoose() {
	items := n.Takeoff.Items
	sort.SliceStable(n.loose, func(x, y int) bool {
		a, b := &items[n.loose[x]], &items[n.loose[y]]
		if a.System != b.System {
			return terms.NaturalLess(a.System, b.System)
		}
		if a.Level != b.Level {
			return terms.NaturalLess(a.Level, b.Level)
		}
		return testWords(a) < testWords(b)
	})
	for x, i := range n.loose {
		it := &items[i]
		first := len(n.Nodes)
		n.addLoose(i)
		for k := first; k < len(n.Nodes); k++ {
			if k > first && n.Nodes[k].Up < 0 {
				n.assume(k-1, k)
			}
		}
		if x == 0 {
			continue
		}
		before := &items[n.loose[x-1]]
		if before.System == it.System && before.Level == it.Level && testWords(before) == testWords(it) {
			n.assume(first-1, first)
		}
	}
}

// testWords is what a row says of its test, for putting like rows together.
func testWords(it *takeoff.Item) string {
	return it.Scheme + "\x00" + it.Class + "\x00" + it.Sign
}

// addLoose makes the nodes of a loose item.
func (n *Network) addLoose(i int) {
	it := &n.Takeoff.Items[i]
	first := len(n.Nodes)
	if it.Piece.Kind == fittings.Straight {
		n.addStraight(i)
	} else {
		for k := 1; k <= it.Quantity; k++ {
			n.Nodes = append(n.Nodes, Node{Item: i, First: k, Last: k, Of: it.Quantity, Long: it.Length(), Area: it.Area / float64(it.Quantity), Exact: it.Exact / float64(it.Quantity), Up: -1})
		}
	}
	n.nodesOf[i] = [2]int{first, len(n.Nodes)}
	for k := first; k < len(n.Nodes); k++ {
		n.setState(&n.Nodes[k], it)
	}
}

// assume links two loose neighbours; nothing is known of a joint there.
func (n *Network) assume(a, b int) {
	n.Nodes[b].Up = len(n.Joints)
	n.Joints = append(n.Joints, Joint{A: a, B: b, Assumed: true})
}

// Has reports whether item i has a place in the network; refused rows that are
// joined to nothing have none.
func (n *Network) Has(i int) bool { return n.nodesOf[i][1] > n.nodesOf[i][0] }

// Find lists the nodes of the rows with a tag (or the name of a row without one)
// that hold a piece, or all of them where piece is 0.
func (n *Network) Find(tag string, piece int) []int {
	if n.byName == nil {
		n.byName = map[string][]int{}
		for k := range n.Nodes {
			name := n.Item(k).Name()
			n.byName[name] = append(n.byName[name], k)
		}
	}
	var out []int
	for _, k := range n.byName[tag] {
		if d := &n.Nodes[k]; piece == 0 || d.First <= piece && piece <= d.Last {
			out = append(out, k)
		}
	}
	return out
}

// PieceAt is the piece of straight i, counted from its plant end from 1, in which
// a spigot's centre lies; 0 where its place isn't known.
func (n *Network) PieceAt(i int, spigot *takeoff.Item) int {
	it := &n.Takeoff.Items[i]
	if !spigot.HasAt || it.Piece.Kind != fittings.Straight {
		return 0
	}
	lengths := fittings.PieceLengths(it.Piece.Shape, it.Length(), n.Takeoff.PieceLength(it))
	end := 0.0
	for k := 0; k < len(lengths)*it.Quantity; k++ {
		if end += lengths[k%len(lengths)]; spigot.AtM < end-1e-9 {
			return k + 1
		}
	}
	return len(lengths) * it.Quantity
}

// Loose reports whether a node belongs to a row that isn't joined to any other.
func (n *Network) Loose(node int) bool { return n.Item(node).Loose() }
