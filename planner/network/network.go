// Package network turns the links of a takeoff into pieces, joints and open
// ends: what can be cut from what, at which price.
//
// Trees are kept in slices, numbered from the plant outward, parents before
// children and brothers in the natural order of their tags, so that the order
// of the rows doesn't matter where every row names what it hangs on.
package network

import (
	"math"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// State says what part a node plays in the tests.
type State uint8

// The states.
const (
	Tested  State = iota // in a section, area counted
	Through              // in a section, area not counted
	Outside              // in no section; blanked on every side
)

// Node is a piece, or a run of pieces of one straight that can't be cut apart.
type Node struct {
	Item        int     // index in the takeoff
	First, Last int     // pieces of the row, counted from the plant end from 1
	Of          int     // pieces of the row
	Start, Long float64 // where it begins from the plant end of its row, and its length along the axis, m
	Area        float64 // on the measuring basis, openings taken off, m2
	Exact       float64 // the same exactly, whatever the basis, m2
	JointLength float64 // installation joints inside the node, m
	State       State
	Reason      string // why it is outside
	Up          int    // joint towards the plant, -1 for none
}

// Joint is where two nodes meet.
type Joint struct {
	A, B       int                   // nodes; A is the nearer to the plant
	FaceA      fittings.CrossSection // the opening on A's side
	FaceB      fittings.CrossSection // and on B's
	Barred     string                // why it can't be blanked; empty if it can
	Minutes    float64               // price of a cut here, both sides, both tests
	Wall       bool                  // B sits in the side wall of A
	Inside     bool                  // between two pieces of one straight
	Assumed    bool                  // loose rows next to each other: no joint is known
	Ring       bool                  // closes a ring
	Must       bool                  // has to be blanked
	Estimated  bool                  // the price is the rule's, not the schedule's
	Natural    bool                  // a natural place for a blank
	Mismatched bool                  // the two openings differ
}

// Face is the opening that a blank at the joint has to close: the larger.
func (j *Joint) Face() fittings.CrossSection {
	if j.FaceB.FaceArea() > j.FaceA.FaceArea() {
		return j.FaceB
	}
	return j.FaceA
}

// OpenEnd is an end with nothing on it.
type OpenEnd struct {
	Node      int
	Role      fittings.EndRole
	Face      fittings.CrossSection
	Minutes   float64
	Estimated bool
}

// Network is a takeoff joined up.
type Network struct {
	Takeoff  *takeoff.Takeoff
	Nodes    []Node // parents before children
	Joints   []Joint
	OpenEnds []OpenEnd
	Rings    []Ring
	Notes    []string
	// Lengths writes a length along a straight, m; nil: "6.0 m".
	Lengths func(m float64) string

	rule      Prices
	nodesOf   [][2]int // per item: first node and one past the last
	firstKid  []int32  // per item, and one past the last: where kids holds those that hang on it
	kids      []int32  // items, by what they hang on
	usedEnds  []uint8  // per item: a bit for each end with something on it
	loose     []int    // loose items, in the order of their grouping
	straddled map[int][]span
	byName    map[string][]int // nodes by the name of their row, made when first asked for
}

// children are the items that hang on item i.
func (n *Network) children(i int) []int32 { return n.kids[n.firstKid[i]:n.firstKid[i+1]] }

// use notes that something is on an end of item i.
func (n *Network) use(i int, r fittings.EndRole) { n.usedEnds[i] |= 1 << r }

// span is a stretch of a straight, m from its plant end.
type span struct {
	from, to float64
	name     string
}

// Prices is the rule for minutes that the schedule doesn't give. The defaults
// are an assumption without a source.
type Prices struct {
	CutBase, CutPerMetre float64 // minutes, and minutes per metre of girth, of a cut
	EndBase, EndPerMetre float64 // of capping one open end
	// Natural is the share of a cut's price at a natural place: a damper's or a
	// flexible connector's flange, and where the level changes. 1: no difference.
	Natural float64
	// Access is added to every cut and open end on a level: ladders, towers.
	Access map[string]float64
}

// DefaultPrices is 10 min + 10 min per metre of girth for a cut, both sides and
// both tests, and half of that for capping one end. Assumption, no source.
func DefaultPrices() Prices {
	return Prices{CutBase: 10, CutPerMetre: 10, EndBase: 5, EndPerMetre: 5, Natural: 1}
}

// Cut is the price of a cut at an opening on a level, minutes.
func (p Prices) Cut(c fittings.CrossSection, natural bool, level string) float64 {
	share := 1.0
	if natural {
		share = p.Natural
	}
	return hundredths(share*(p.CutBase+p.CutPerMetre*c.Girth()) + p.Access[level])
}

// End is the price of capping an opening on a level, minutes.
func (p Prices) End(c fittings.CrossSection, level string) float64 {
	return hundredths(p.EndBase + p.EndPerMetre*c.Girth() + p.Access[level])
}

// natural reports whether two rows meet at a natural place for a blank: a
// damper's or a flexible connector's flange, or where the level changes.
func natural(a, b *takeoff.Item) bool {
	kind := func(it *takeoff.Item) bool {
		return it.Piece.Kind == fittings.Inline || it.Piece.Kind == fittings.Flexible
	}
	return kind(a) || kind(b) || a.Level != b.Level
}

// hundredths rounds minutes to a hundredth, the unit in which cuts are weighed.
func hundredths(minutes float64) float64 { return math.Round(minutes*100) / 100 }

// Build joins a takeoff up.
func Build(t *takeoff.Takeoff, rule Prices) *Network {
	n := &Network{
		Takeoff: t, rule: rule,
		nodesOf:   make([][2]int, len(t.Items)),
		usedEnds:  make([]uint8, len(t.Items)),
		straddled: map[int][]span{},
	}
	size := n.expect()
	n.Nodes, n.Joints = make([]Node, 0, size), make([]Joint, 0, size)
	roots := n.family()
	n.walk(roots)
	n.chainLoose()
	n.addRings()
	n.findOpenEnds()
	return n
}

// expect is about how many nodes there will be: room made beforehand saves copying
// a long list again and again.
func (n *Network) expect() int {
	size, most := 0, 4*len(n.Takeoff.Items)+1024
	for i := range n.Takeoff.Items {
		it := &n.Takeoff.Items[i]
		pieces := float64(it.Quantity)
		if it.Piece.Kind == fittings.Straight {
			pieces *= math.Ceil(it.Length() / n.Takeoff.PieceLength(it))
		}
		if size += int(min(max(1, pieces), float64(most))); size > most {
			return most
		}
	}
	return size
}

// Item is the row that a node belongs to.
func (n *Network) Item(node int) *takeoff.Item { return &n.Takeoff.Items[n.Nodes[node].Item] }
