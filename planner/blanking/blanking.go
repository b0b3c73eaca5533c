// Package blanking counts the blanks of a plan as work and as material, and
// finds the order of its tests in which the fewest have to be made and then the
// fewest moved. It knows nothing of ducts: a blank has a size and a place.
//
// A fit is one end closed in one test. A blank is free for another place when
// its test is over. At a joint that is blanked in two tests, first on its one
// side and then on its other, the blank stays where it is if the two tests
// follow each other: it is only turned. The first fit of a blank comes from the
// store and is no move. So
//
//	moves = fits - makes - turned
//
// Where each test is made ready while the one before it runs (Ahead), the blanks
// of both are in use at once, less those that are turned between them; then the
// order decides how many have to be made.
package blanking

// Blank is one end to be closed: its size, a number from 0, and its place. Blanks
// of one place in two tests are the two sides of one parted joint; every other
// end has a place of its own.
type Blank struct {
	Size, Place int
}

// Test is one test. All tests of an earlier visit come before those of a later.
type Test struct {
	Visit  int
	Blanks []Blank
}

// Plan is the order of the tests and what it needs.
type Plan struct {
	Order  []int // the tests, by their numbers in the list
	Fits   int
	Makes  []int // by size: the most in use at once
	Turned int   // blanks that stay at their joint from one test to the next
	Moves  int
	// LeastMakes is a number of blanks below which no order goes; LeastMoves is
	// one of moves, for orders that need no more blanks than this one.
	LeastMakes, LeastMoves int
	Proved                 bool // no order needs fewer blanks, and none of as few has fewer moves
	Moving                 []Track
}

// Made is the number of blanks of all sizes that have to be made.
func (p *Plan) Made() int {
	n := 0
	for _, k := range p.Makes {
		n += k
	}
	return n
}

// exactTo is the number of tests up to which every order is weighed.
const exactTo = 14

// Least finds the order of the tests with the fewest blanks to be made, then the
// fewest moves; of equal orders that which comes first if the tests are taken as
// listed. It is exact for up to 14 tests unless a limit on the work is met, and
// beyond that where it can be shown to be; Proved says so.
func Least(tests []Test, ahead bool) Plan {
	m := newModel(tests, ahead)
	p := Plan{Order: []int{}, Fits: m.fits}
	least, most := m.leastMakes(), -1
	order, found, done := m.exact(least)
	if done {
		most = found.turned
	} else {
		var paths []int
		paths, most = m.paths()
		order = m.near(least, paths)
	}
	p.LeastMakes = sum(least) + found.over
	p.Makes, p.Turned = m.weigh(order)
	p.Moves = p.Fits - p.Made() - p.Turned
	p.LeastMoves = p.Fits - p.Made() - max(most, p.Turned)
	p.Proved = p.Made() == p.LeastMakes && p.Turned >= most
	for _, k := range order {
		p.Order = append(p.Order, m.number[k])
	}
	p.Moving = moving(tests, p.Order, len(p.Makes), ahead)
	return p
}

func sum(list []int) int {
	n := 0
	for _, k := range list {
		n += k
	}
	return n
}
