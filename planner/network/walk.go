package network

import (
	"fmt"
	"slices"
	"sort"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/terms"
)

// family lists the children of every item and returns the plant ends of the
// networks, all in natural order of their tags.
func (n *Network) family() []int32 {
	items := n.Takeoff.Items
	var roots []int32
	n.firstKid = make([]int32, len(items)+1)
	for i := range items {
		switch it := &items[i]; {
		case it.Loose():
			if !it.Refused {
				n.loose = append(n.loose, i)
			}
		case it.Parent < 0:
			roots = append(roots, int32(i))
		default:
			n.firstKid[it.Parent+1]++
		}
	}
	for i := range items {
		n.firstKid[i+1] += n.firstKid[i]
	}
	n.kids = make([]int32, n.firstKid[len(items)])
	next := slices.Clone(n.firstKid)
	for i := range items {
		if it := &items[i]; !it.Loose() && it.Parent >= 0 {
			n.kids[next[it.Parent]] = int32(i)
			next[it.Parent]++
		}
	}
	for i := range items {
		sortItems(n, n.children(i))
	}
	sortItems(n, roots)
	return roots
}

// sortItems puts items in the order of system, then place along the wall, then
// tag; rows without a tag come last, in the order of the file.
func sortItems[I int | int32](n *Network, list []I) {
	if len(list) < 2 {
		return
	}
	items := n.Takeoff.Items
	sort.SliceStable(list, func(x, y int) bool {
		a, b := &items[list[x]], &items[list[y]]
		if a.System != b.System {
			return terms.NaturalLess(a.System, b.System)
		}
		if a.AtM != b.AtM {
			return a.AtM < b.AtM
		}
		if (a.Tag == "") != (b.Tag == "") {
			return a.Tag != ""
		}
		if a.Tag != b.Tag {
			return terms.NaturalLess(a.Tag, b.Tag)
		}
		return list[x] < list[y]
	})
}

// walk makes the nodes from the plant outward: an item, then what hangs on it,
// without recursion because a main can be very long.
func (n *Network) walk(roots []int32) {
	stack := slices.Clone(roots)
	slices.Reverse(stack)
	for len(stack) > 0 {
		i := int(stack[len(stack)-1])
		stack = stack[:len(stack)-1]
		n.addItem(i)
		for _, c := range slices.Backward(n.children(i)) {
			stack = append(stack, c)
		}
	}
}

// addItem makes the nodes of item i and hangs them on its parent's.
func (n *Network) addItem(i int) {
	it := &n.Takeoff.Items[i]
	first := len(n.Nodes)
	if it.SideBySide() {
		for k := 1; k <= it.Quantity; k++ {
			n.Nodes = append(n.Nodes, Node{Item: i, First: k, Last: k, Of: it.Quantity, Long: it.Length(), Area: it.Each, Exact: it.EachExact, Up: -1})
			n.attach(len(n.Nodes)-1, i)
		}
	} else if it.Piece.Kind == fittings.Straight && !it.Refused {
		n.addStraight(i)
		n.attach(first, i)
	} else {
		n.Nodes = append(n.Nodes, Node{Item: i, First: 1, Last: 1, Of: 1, Long: it.Length(), Area: it.Area, Exact: it.Exact, Up: -1})
		n.attach(first, i)
	}
	n.nodesOf[i] = [2]int{first, len(n.Nodes)}
	for k := first; k < len(n.Nodes); k++ {
		n.setState(&n.Nodes[k], it)
	}
}

func (n *Network) setState(d *Node, it *takeoff.Item) {
	switch {
	case it.Refused:
		d.State, d.Reason, d.Area, d.Exact = Outside, "row refused", 0, 0
	case it.Scope == terms.Out:
		d.State, d.Reason = Outside, "scope out"
	case it.Scope == terms.Through:
		d.State = Through
	}
}

// addStraight makes a straight's pieces: whole ones from the plant end and a
// remainder, the openings taken off the piece in which the spigot's centre
// lies. One that carries spigots of unknown place is a single node, because
// nobody can say which joints inside it are free.
func (n *Network) addStraight(i int) {
	t := n.Takeoff
	it := &t.Items[i]
	lengths := fittings.PieceLengths(it.Piece.Shape, it.Length(), t.PieceLength(it))
	of := len(lengths) * it.Quantity
	girth := 0.0
	if len(it.Ends) > 0 {
		girth = it.Ends[0].Girth()
	}
	if n.unplaced(i) || of == 1 {
		if note := "carries spigots without at_mm, so it isn't cut inside; give at_mm to allow cuts there"; of > 1 && !slices.Contains(it.Notes, note) {
			it.Notes = append(it.Notes, note)
		}
		n.Nodes = append(n.Nodes, Node{Item: i, First: 1, Last: of, Of: of, Long: it.Length() * float64(it.Quantity), Area: it.Area, Exact: it.Exact, JointLength: float64(of-1) * girth, Up: -1})
		return
	}
	first, start := len(n.Nodes), 0.0
	for k := 0; k < of; k++ {
		long := lengths[k%len(lengths)]
		share := long / it.Length()
		n.Nodes = append(n.Nodes, Node{Item: i, First: k + 1, Last: k + 1, Of: of, Start: start, Long: long, Area: it.Each * share, Exact: it.EachExact * share, Up: -1})
		start += long
	}
	n.placeOpenings(i, first)
	for k := first + 1; k < len(n.Nodes); k++ {
		n.addInside(k-1, k, it)
	}
}

// unplaced reports whether a spigot of item i has no place along it.
func (n *Network) unplaced(i int) bool {
	for _, c := range n.children(i) {
		if s := &n.Takeoff.Items[c]; s.Piece.Kind == fittings.Spigot && !s.HasAt {
			return true
		}
	}
	return false
}

// placeOpenings takes each spigot's opening off the pieces on which it lies, by
// the length of it that lies on each, and notes which joints it straddles. The
// joints that it straddles can't be cut, so how it is shared changes no section.
func (n *Network) placeOpenings(i, first int) {
	it := &n.Takeoff.Items[i]
	if it.CutExact == 0 {
		return
	}
	kept := it.Cut == 0 // the basis leaves openings in
	for _, c := range n.children(i) {
		s := &n.Takeoff.Items[c]
		if s.Piece.Kind != fittings.Spigot || s.Refused {
			continue
		}
		half := openingLength(s) / 2
		from, to := s.AtM-half, s.AtM+half
		n.straddled[i] = append(n.straddled[i], span{from, to, s.Name()})
		opening := s.OpeningExact * float64(s.Quantity)
		for k := first; k < len(n.Nodes); k++ {
			d := &n.Nodes[k]
			share := (min(to, d.Start+d.Long) - max(from, d.Start)) / (to - from)
			if !(share > 0) {
				continue
			}
			d.Exact -= opening * share
			if !kept {
				d.Area -= opening * share
			}
		}
	}
}

// openingLength is how far along the wall a spigot's opening reaches, m.
func openingLength(s *takeoff.Item) float64 {
	if len(s.Ends) == 0 {
		return 0
	}
	e := s.Ends[0]
	if e.Shape == fittings.Circular {
		return e.Diameter
	}
	return e.Width
}

// carrier is the node of [first, last) in which a place along the row lies.
func (n *Network) carrier(first, last int, at float64) int {
	for k := first; k < last; k++ {
		if at < n.Nodes[k].Start+n.Nodes[k].Long-1e-9 {
			return k
		}
	}
	return last - 1
}

// addInside joins two pieces of one straight.
func (n *Network) addInside(a, b int, it *takeoff.Item) {
	face := it.Ends[0].CrossSection
	j := Joint{A: a, B: b, FaceA: face, FaceB: face, Inside: true, Minutes: n.rule.Cut(face, false, it.Level), Estimated: true}
	if it.Joint == terms.Welded {
		j.Barred = "welded"
	}
	at := n.Nodes[b].Start
	for _, s := range n.straddled[n.Nodes[a].Item] {
		if s.from < at-1e-9 && at < s.to-1e-9 {
			j.Barred = fmt.Sprintf("the opening of %s lies across it", s.name)
		}
	}
	n.Nodes[b].Up = len(n.Joints)
	n.Joints = append(n.Joints, j)
}

// attach joins node k, the first of item i, to its parent's node.
func (n *Network) attach(k, i int) {
	it := &n.Takeoff.Items[i]
	if it.Parent < 0 {
		return
	}
	host := &n.Takeoff.Items[it.Parent]
	nodes := n.nodesOf[it.Parent]
	j := Joint{A: nodes[1] - 1, B: k}
	if it.Piece.Kind == fittings.Spigot {
		j.Wall = true
		if it.HasAt {
			j.A = n.carrier(nodes[0], nodes[1], it.AtM)
		}
	} else if e, ok := host.End(it.ParentEnd); ok && it.ParentEnd != fittings.PlantEnd {
		j.FaceA = e.CrossSection
		n.use(it.Parent, it.ParentEnd)
	}
	if len(it.Ends) > 0 {
		j.FaceB = it.Ends[0].CrossSection
	}
	n.use(i, fittings.PlantEnd)
	n.finishJoint(&j, it)
	n.Nodes[k].Up = len(n.Joints)
	n.Joints = append(n.Joints, j)
}

// finishJoint fills in what is known from the row whose joint to from it is:
// the openings, the price, and whether it may be blanked.
func (n *Network) finishJoint(j *Joint, it *takeoff.Item) {
	switch known := fittings.NoShape; {
	case j.FaceA.Shape == known:
		j.FaceA = j.FaceB
	case j.FaceB.Shape == known:
		j.FaceB = j.FaceA
	case !j.Wall:
		j.Mismatched = !j.FaceA.Same(j.FaceB)
	}
	j.Must = it.Blank.Must
	j.Natural = natural(n.Item(j.A), it)
	j.Minutes, j.Estimated = n.rule.Cut(j.Face(), j.Natural, it.Level), true
	if it.Blank.Given {
		j.Minutes, j.Estimated = it.Blank.Price, false
	}
	switch {
	case it.Blank.Never:
		j.Barred = "the schedule says no"
	case it.Joint == terms.Welded:
		j.Barred = "welded"
	case j.Wall && !it.Blank.Given && !it.Blank.Must:
		j.Barred = "a joint in a side wall"
	}
	j.Minutes = hundredths(j.Minutes)
}
