// Package partition divides a weighted tree (or a tree with a few rings) into
// connected parts whose weights fall in given windows, at the least price, and
// says whether the answer is proved best. All figures are whole numbers, so
// the proof is exact.
//
// The order of merit is: fewest parts over the greatest upper limit, then
// fewest parts in no window, then either fewest parts and least price of cuts
// (aim Tests) or least price of parts and cuts together (aim Time).
package partition

// Banned as a price says that the joint can't be cut.
const Banned int64 = -1

// Window is a closed range of weights, Low <= High.
type Window struct{ Low, High int64 }

// Link is an extra joint between nodes A and B that closes a ring. Its price
// is in hundredths of a minute, >= 0, or Banned.
type Link struct {
	A, B  int
	Price int64
}

// Aim says what is least once over and under are least.
type Aim uint8

const (
	Tests Aim = iota // fewest parts, then least price of cuts
	Time             // least price of parts and cuts together
)

// Problem is a forest of weighted nodes, extra joints and windows.
type Problem struct {
	Parent    []int    // parent of each node, -1 for a root; any order, several roots allowed
	Weight    []int64  // >= 0; the sum must be under 2^60
	Price     []int64  // of the joint to Parent, hundredths of a minute, >= 0 or Banned; ignored for roots
	Links     []Link   // joints that close rings
	Windows   []Window // at least one; sorted or not, overlapping or with gaps
	Aim       Aim
	TestPrice int64 // of one part, hundredths of a minute, >= 0, for aim Time

	// MaxRingSolves limits the ways of opening rings that are solved in one
	// call; 0 is 20,000. Rings that share no joint are solved apart, so their
	// ways add up; only rings that share joints multiply.
	MaxRingSolves int
	// WorkLimit limits the combinations of weights examined; 0 is
	// DefaultWorkLimit. Past it the lists of weights are thinned: the answer
	// is legal, but no longer proved best.
	WorkLimit int64
}

// Score is what a division costs.
type Score struct {
	Over    int   // parts above the greatest upper limit
	Under   int   // other parts in no window, below the lowest or in a gap
	Tests   int   // parts, Over and Under included
	Minutes int64 // sum of the prices of cut joints, hundredths of a minute
}

// State says where the weight of a part lies.
type State uint8

const (
	In    State = iota // in a window
	Under              // below the lowest window
	Gap                // between two windows
	Over               // above the highest window
)

// PartState is the weight of a part and where it lies.
type PartState struct {
	Weight int64
	State  State
}

// Solution is a division into connected parts.
type Solution struct {
	Part     []int       // part of each node, numbered in order of the smallest node in it
	Cuts     []int       // nodes whose joint to the parent is cut, ascending
	CutLinks []int       // indices of the links that are cut, ascending
	Score    Score       // recounted from Part
	State    []PartState // of each part
	// Exhaustive: the score is proved least over every division. When false,
	// some rings weren't opened in every way or the work limit was met.
	Exhaustive bool
	// Bound is a proved lower bound of Score in the order of merit. It equals
	// Score when Exhaustive.
	Bound Score
	// Work is the number of combinations examined.
	Work int64
	// RingSolves is the number of ways of opening rings that were solved.
	RingSolves int
}

// Solve divides the nodes into connected parts. A joint is cut, and paid for,
// where its ends are in different parts. A node, or a cluster of nodes whose
// joints are banned, that is heavier than the greatest High stands alone and
// counts as over; no other part is heavier than the greatest High. It fails
// only on malformed input.
func Solve(p Problem) (Solution, error) {
	if err := check(p); err != nil {
		return Solution{}, err
	}
	wins := mergeWindows(p.Windows)
	g := newGraph(p, wins[len(wins)-1].High)
	s := newSolver(p, g, hangUp(g), wins)
	s.run()
	return s.solution(p), nil
}
