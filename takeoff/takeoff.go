package takeoff

import (
	"sort"

	"blankoff/fittings"
)

// Options are the settings of a takeoff.
type Options struct {
	// PieceLength is the length into which straights are made, m. Zero means
	// 1.5 for rectangular and 3 for circular and flat-oval (common practice; a
	// setting).
	PieceLength float64
}

// Takeoff is a schedule measured.
type Takeoff struct {
	Schedule Schedule
	Items    []Item // every row, in the file's order; refused ones are marked
	Faults   []Fault
	Notes    []string // of the file as a whole
	Totals   Totals

	options Options
	byTag   map[string]int
	double  map[string]bool
}

// New begins a takeoff.
func New(o Options) *Takeoff {
	return &Takeoff{options: o, byTag: map[string]int{}, double: map[string]bool{}}
}

// fault refuses item i for the reason f.
func (t *Takeoff) fault(i int, f Fault) {
	t.Items[i].Refused = true
	t.Faults = append(t.Faults, f)
}

// Finish resolves the joining, measures what had to wait for it, takes the
// openings off their walls and sums. The arguments are what the door found out
// about the file.
func (t *Takeoff) Finish(s Schedule, faults []Fault, notes []string) {
	t.Schedule = s
	t.Notes = append(t.Notes, notes...)
	t.Faults = append(t.Faults, faults...)
	t.join()
	t.measureSpigots()
	t.takeOffOpenings()
	t.sum()
	t.sortFaults()
	t.byTag, t.double = nil, nil
}

// PieceLength is the length into which straights of shape s are made, m.
func (o Options) pieceLength(s fittings.Shape) float64 {
	if o.PieceLength > 0 {
		return o.PieceLength
	}
	return DefaultPieceLength(s)
}

// DefaultPieceLength is the usual length of a straight piece, m: 1.5
// rectangular, 3 circular and flat-oval. Common practice; makers' lists give
// 1500 mm for rectangular and 3000 mm for spiral-seamed duct.
func DefaultPieceLength(s fittings.Shape) float64 {
	if s == fittings.Rectangular {
		return 1.5
	}
	return 3
}

// PieceLength is the length into which the item's straights are made, m.
func (t *Takeoff) PieceLength(it *Item) float64 { return t.options.pieceLength(it.Piece.Shape) }

// sortFaults puts the faults in the order of the file.
func (t *Takeoff) sortFaults() {
	rank := map[string]int{}
	for i := range t.Items {
		if _, ok := rank[t.Items[i].At.Sheet]; !ok {
			rank[t.Items[i].At.Sheet] = len(rank)
		}
	}
	sort.SliceStable(t.Faults, func(a, b int) bool {
		x, y := t.Faults[a], t.Faults[b]
		if rank[x.Sheet] != rank[y.Sheet] {
			return rank[x.Sheet] < rank[y.Sheet]
		}
		return x.Row < y.Row
	})
}
