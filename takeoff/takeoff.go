// Package takeoff turns the rows of a schedule into items: what each is, its
// exact outside area and its area on a measuring basis, what it hangs on, and
// what is wrong with it.
//
// The steps, in the order in which they run:
//
//  1. Add reads a row: words, numbers, sizes; a piece that hangs on nobody's
//     wall is measured at once.
//  2. Finish resolves who hangs on whom (from, ^, run, joins), measures the
//     spigots now that their walls are known, takes every opening off the wall
//     it is cut in, and sums.
//
// What the steps stand on, none of which knows of rows or items: terms (the words of
// cells), bases (the measuring bases), measuring (pieces), ledger (lines), joining and
// totals (rules on lines). The exact area stands beside that of the basis everywhere. A
// basis moves no joint and no end.
//
// A row with a fault is refused: it counts in RowsRefused, its area counts
// nowhere, and it stays among the items only because others may hang on it.
package takeoff

import (
	"fmt"
	"sort"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff/joining"
	"blankoff/takeoff/ledger"
	"blankoff/takeoff/measuring"
	"blankoff/takeoff/terms"
	"blankoff/takeoff/totals"
)

// Options are the settings of a takeoff.
type Options struct {
	// PieceLength is the length into which straights are made, m. Zero means
	// 1.5 for rectangular and 3 for circular and flat-oval (common practice; a
	// setting).
	PieceLength float64
	// Basis is the measuring basis of Item.Area; nil means exact.
	Basis *fittings.Basis
	// Sheet is the thickness of the sheet, m. Over 0, the sizes are those of the
	// inside, and twice the sheet is added to every size of a cross-section,
	// because the area is that of the outside; a length is taken as it stands.
	// 0, the default, adds nothing: the girth of 600 x 400 in 0.8 mm sheet grows by
	// 0.3 %.
	Sheet float64
	// Written is the units of workings and notes; the zero value is m, m2 and mm.
	Written fittings.Written
	// TotalsOnly keeps no Items: faults, notes of the file and totals are the same
	// as with them, in a quarter of the memory.
	TotalsOnly bool
}

// mostSheet is the thickest sheet that is taken, m; more is a slip of the unit.
const mostSheet = 0.02

// Check says what is wrong with the settings, or "".
func (o Options) Check() string {
	switch {
	case o.PieceLength != 0 && !(o.PieceLength > 0):
		return "the piece length is a length in m, more than 0"
	case !(o.Sheet >= 0 && o.Sheet <= mostSheet):
		return fmt.Sprintf("the thickness of the sheet is 0 to %g mm", mostSheet*1000)
	case o.Basis != nil:
		return o.Basis.Check()
	}
	return ""
}

// Takeoff is a schedule measured.
type Takeoff struct {
	Schedule Schedule
	Items    []Item // every row, in the file's order; refused ones are marked; none where only totals are asked for
	Faults   []Fault
	Notes    []string // of the file as a whole
	Totals   totals.Totals
	Refused  []Place // of the rows that were refused, in the file's order

	options  Options
	rule     measuring.Rule // of the options
	book     ledger.Book    // empty once finished
	own      *Batch
	joined   bool    // some row is joined to another by tags
	tagged   int     // rows with a tag
	alike    int     // rows of these that give the same piece
	twice    []twice // tags that stand on earlier rows too
	used     int     // rows so far that weren't refused
	hopeless error   // why no more rows should be added
	timed    bool    // some row says when it can be tested
	dates    bool    // and it says so by dates
	cuts     []joining.Opening
}

// Options are the settings that the takeoff was made with.
func (t *Takeoff) Options() Options { return t.options }

// New begins a takeoff.
func New(o Options) *Takeoff {
	return &Takeoff{options: o, rule: measuring.Rule{PieceLength: o.PieceLength, Basis: o.Basis, Sheet: o.Sheet, Written: o.Written}, book: ledger.NewBook()}
}

// fault refuses row i for the reason f.
func (t *Takeoff) fault(i int, f Fault) {
	t.book.Lines[i].Refused = true
	t.Faults = append(t.Faults, f)
}

// at is where a row stands.
func (t *Takeoff) at(l *ledger.Line) Place { return placeOf(&t.book.Ledger, l) }

// tell takes over what was found out about the rows.
func (t *Takeoff) tell() {
	faults, remarks, notes := t.book.Found()
	for _, f := range faults {
		t.Faults = append(t.Faults, t.at(&t.book.Lines[f.Line]).Fault(f.Heading, f.Value, f.Expected, f.Message))
	}
	if !t.options.TotalsOnly {
		for _, r := range remarks {
			t.Items[r.Line].Notes = append(t.Items[r.Line].Notes, r.Text)
		}
	}
	t.Notes = append(t.Notes, notes...)
}

// full is row i as an Item: its own, or one made of the ledger.
func (t *Takeoff) full(i int) *Item {
	if t.options.TotalsOnly {
		return itemOf(&t.book.Ledger, &t.book.Lines[i])
	}
	return &t.Items[i]
}

// Finish resolves the joining, measures what had to wait for it, takes the
// openings off their walls and sums. The arguments are what the door found out
// about the file.
func (t *Takeoff) Finish(s Schedule, faults []Fault, notes []string) {
	t.Gather()
	t.Schedule = s
	t.Notes = append(t.Notes, notes...)
	t.Faults = append(t.Faults, faults...)
	t.settleTwice()
	t.book.CheckUnits()
	t.book.CheckSizes()
	t.book.CheckLengths()
	t.book.CheckSlight()
	t.book.CheckParts()
	t.book.CheckOrder()
	t.book.CheckSums()
	t.book.CheckAgain()
	t.book.CheckPasted()
	joining.Join(&t.book)
	t.tell()
	t.measureSpigots()
	joining.NoteOverlaps(&t.book)
	o := &t.options
	t.cuts = joining.TakeOff(&t.book, joining.Deduction{Outside: t.rule.Outside, Kept: o.Basis != nil && o.Basis.Openings != fittings.Deducted, List: !o.TotalsOnly})
	t.tell()
	t.sum()
	t.reconcile()
	t.sortFaults()
	t.settle()
	t.book, t.own = ledger.Book{}, nil
}

// sum adds the rows up and counts what became of them.
func (t *Takeoff) sum() {
	var n totals.Tally
	t.Totals, n = totals.Of(&t.book.Ledger)
	s := &t.Schedule
	s.RowsUsed, s.RowsExcluded, s.RowsRefused = n.Used, n.Out+len(s.TotalRows)+s.RowsLeft, len(n.Refused)
	for _, i := range n.Refused {
		t.Refused = append(t.Refused, t.at(&t.book.Lines[i]))
	}
	s.OutM2, s.RefusedM2 = t.Totals.Out, t.Totals.Refused
}

// mostTotals is how many rows of totals are told one by one.
const mostTotals = 200

// reconcile holds every row of totals against the rows above it: those since the
// total before, since the last sub-heading, and all of its sheet. The nearest
// is told with both figures.
func (t *Takeoff) reconcile() {
	if len(t.Schedule.TotalRows) == 0 {
		return
	}
	sums := totals.RunningOf(&t.book.Ledger, t.hidden())
	for i, x := range t.Schedule.TotalRows {
		if i == mostTotals {
			t.Notes = append(t.Notes, fmt.Sprintf("%d more rows of totals are no pieces either; they aren't held against the rows above them", len(t.Schedule.TotalRows)-i))
			return
		}
		name := "a row of totals"
		if x.Label != "" {
			name = "'" + x.Label + "'"
		}
		name = fmt.Sprintf("%s: %s is a total and no piece", strings.TrimPrefix(x.At.String(), x.At.File+", "), name)
		given := totals.Given{Before: x.Before, Since: x.Since, Below: x.Below, Area: x.Area, AreaText: x.AreaText, Quantity: x.Quantity, Whole: x.Whole}
		if said := sums.Against(given); said != "" {
			name += "; " + said
		}
		if x.Label == "" && sums.Strange(given) {
			t.Faults = append(t.Faults, x.At.Fault("", x.AreaText, "a total with its name, or a piece",
				fmt.Sprintf("'%s' stands by itself, and the rows above don't come to it; write Total before it, or fill in the piece", x.AreaText)))
		}
		if why := sums.Doubt(given); why != "" && (x.AreaText != "" || x.Quantity != 0) {
			t.Faults = append(t.Faults, x.At.Fault("", x.Label, "a total that its rows come to", why))
		}
		t.Notes = append(t.Notes, name)
	}
}

// hidden reports the lines of rows that are hidden; nil: none are.
func (t *Takeoff) hidden() func(*ledger.Line) bool {
	if len(t.Schedule.Hidden) == 0 {
		return nil
	}
	of := map[Place]bool{}
	for _, p := range t.Schedule.Hidden {
		of[p] = true
	}
	return func(l *ledger.Line) bool { return of[t.at(l)] }
}

// settle writes into the items what was found out about their lines.
func (t *Takeoff) settle() {
	for i := range t.Items {
		it, l := &t.Items[i], &t.book.Lines[i]
		m := t.book.Seldom(l)
		it.Area, it.Exact, it.JointLength = l.Area, l.Exact, l.Joint
		if m.Cut != 0 || m.CutExact != 0 {
			o := it.own()
			o.Cut, o.CutExact = m.Cut, m.CutExact
		}
		it.Parent, it.ParentEnd, it.RingWith, it.RingEnd = int(l.Parent), l.ParentEnd, int(l.RingWith), l.RingEnd
		it.childCount, it.Refused = l.Children, l.Refused
	}
}

// Measured is the item's piece by the sizes that were measured, those of the
// outside where the thickness of the sheet is added.
func (t *Takeoff) Measured(it *Item) fittings.Piece { return t.rule.Measured(&it.Piece, it.noSheet) }

// Basis is the measuring basis of the areas; nil means exact.
func (t *Takeoff) Basis() *fittings.Basis { return t.options.Basis }

// Sheet is the thickness of the sheet that was added to the sizes, m.
func (t *Takeoff) Sheet() float64 { return t.options.Sheet }

// PieceLength is the length into which the item's straights are made, m.
func (t *Takeoff) PieceLength(it *Item) float64 { return t.rule.Length(it.Piece.Shape) }

// Tells reports whether a day is of the kind that the schedule tells times by,
// dates or numbers; timed is false where it tells none.
func (t *Takeoff) Tells(m terms.Moment) (same, timed bool) { return m.Date() == t.dates, t.timed }

// sortFaults puts the faults in the order of the file.
func (t *Takeoff) sortFaults() {
	rank := map[string]int{}
	for _, p := range t.book.Sheets {
		if _, ok := rank[p.Name]; !ok {
			rank[p.Name] = len(rank)
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
