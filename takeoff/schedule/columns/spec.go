// Package columns settles what each column of a table is read as, and in which unit: by its
// heading, by a map, by the lines above and the cells below, and by the sheets before. What
// stays open becomes a question; rows are read elsewhere.
package columns

import (
	"math"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// Spec is how a column of the file is read.
type Spec struct {
	headings.Heading
	quantity.Column

	// What every cell of the column is held against.
	Used    bool
	Same    string // a cell that needs no second look: a word as it stands, or the number in Value
	Value   float64
	Lenient bool              // what it doesn't understand bears on no area
	Carried bool              // its unit is that of headings before
	Own     bool              // a cell of it states its own unit
	Beside  bool              // it states none, and sizes beside it are in inches, feet or cm
	Words   map[string]string // what its words stand for, as far as met
	Last    Word              // that was met
	Before  Word              // another one, met before it
	AsIs    string            // a cell that means what it says
	Heard   string            // a joint that is known
	Count   map[string]int    // of words that stand for others
	Sized   [3]takeoff.Column // width, height, diameter that a whole cross-section in the cell sets
	Paired  bool              // a size goes on in the next cell
	Parted  int               // a size goes on in the next two cells: the first of these
	Inches  int               // a length goes on in this column, from 1, in inches

	// What was found out about its heading.
	Fixed    bool   // by a map
	Settled  bool   // by the cells below it
	OfUnits  bool   // it says in what quantities are
	Answers  bool   // its cells answer yes or no, and no may say that a row doesn't count
	Ticked   bool   // with ticks, so that a cross is no
	Parties  string // "supplied": they say who supplies the row; "trade": which trade's it is
	Empty    bool   // of one with more than one reading: its first cells are
	Worded   bool   // or they hold words only
	Figures  bool   // or figures only
	Kindless bool   // none of them names a kind
	Waits    bool   // so it is asked about once one is filled
	Meant    string // what it nearly says, if it is no fault
	Says     string // what gives the unit, where the heading doesn't

	Watch Watch // of one that isn't used
}

// Word is a word of a cell, and what it stands for.
type Word struct{ From, To string }

// To is the column of ours.
func (s *Spec) To() takeoff.Column { return s.Heading.Column }

// Set makes the column what its heading says.
func (s *Spec) Set(t *Reading, h headings.Heading) {
	*s = Spec{Heading: h, Used: h.Verdict == headings.Known || h.Verdict == headings.Sizes}
	if !s.Used {
		return
	}
	s.Column = quantity.Column{Unit: h.Unit, CommaFile: t.CommaFile, Stated: h.Said, Decimal: t.Decimal, InchesToo: h.InchesToo}
	if h.Verdict == headings.Sizes {
		s.Sized, s.Measure = Dims(h.Size), takeoff.Lengths
		if !s.Said {
			s.Column.Unit = quantity.Millimetre
		}
		s.Max, s.Least, s.Small, s.Across = quantity.Largest(takeoff.Lengths), LeastSide, LeastSide, true
		return
	}
	s.Measure = h.Column.Measure()
	switch h.Column {
	case takeoff.DuctClassPa, takeoff.Ready, takeoff.Closed, takeoff.Joint, takeoff.DimColumn(fittings.Lining):
		s.Lenient = true
	}
	s.Max = quantity.Largest(s.Measure)
	if s.Measure == takeoff.Text && t.Lex.Worded(h.Column) {
		s.Words, s.Count = map[string]string{}, map[string]int{}
	}
	if s.Measure == takeoff.Count {
		s.Small = 1000 // 1.000
	}
	d, isSize := h.Column.Dim()
	if !isSize {
		return
	}
	if d <= fittings.Length || d == fittings.Width2 || d == fittings.Height2 || d == fittings.Diameter2 || d == fittings.BranchWidth || d == fittings.BranchHeight || d == fittings.BranchDiameter {
		s.Least = LeastSide
	}
	s.Across = s.Least > 0 && d != fittings.Length
	if s.Small = s.Least; d == fittings.Angle {
		s.Turn, s.Small = true, 2*math.Pi+0.01
	}
	s.Signed = d == fittings.OffsetShift || d == fittings.OffsetShift2 || d == fittings.BranchShift
	s.Diameter = d == fittings.Diameter || d == fittings.Diameter2 || d == fittings.BranchDiameter
	for _, of := range [...]headings.SizeOf{headings.OwnSize, headings.SecondSize, headings.BranchSize} {
		if to := Dims(of); h.Column == to[0] || h.Column == to[2] {
			s.Sized, s.Size = to, of
		}
	}
}

// Dims gives the columns of a whole cross-section.
func Dims(of headings.SizeOf) [3]takeoff.Column {
	d := [...][3]fittings.Dim{
		headings.OwnSize:    {fittings.Width, fittings.Height, fittings.Diameter},
		headings.LongSize:   {fittings.Width, fittings.Height, fittings.Diameter},
		headings.SecondSize: {fittings.Width2, fittings.Height2, fittings.Diameter2},
		headings.BranchSize: {fittings.BranchWidth, fittings.BranchHeight, fittings.BranchDiameter},
	}[of]
	return [3]takeoff.Column{takeoff.DimColumn(d[0]), takeoff.DimColumn(d[1]), takeoff.DimColumn(d[2])}
}

// LeastSide is a side, a diameter or a length that hardly any piece has, m: with three
// figures behind the point it may be thousands.
const LeastSide = 0.02

// The columns of the cross-sections of both ends.
var (
	Own    = Dims(headings.OwnSize)
	Second = Dims(headings.SecondSize)
)

// GoesOn is the cell of a column with those over which its size goes on.
func (s *Spec) GoesOn(cell string, cells []string, at int) string {
	switch {
	case s.Inches > 0:
		return withInches(cell, celltext.At(cells, s.Inches-1))
	case s.Paired && celltext.At(cells, at+1) != "":
		return cell + "x" + celltext.At(cells, at+1)
	case s.Parted > 0 && at+2 < len(cells):
		return cell + celltext.At(cells, at+1) + celltext.At(cells, at+2)
	}
	return cell
}

// Plain reports a cell that is known to mean what it says.
func (s *Spec) Plain(cell string) bool {
	if cell == s.AsIs || cell == s.Last.From || cell == s.Before.From {
		return true
	}
	_, met := s.Words[cell]
	return met
}

// Doubtful reports a column whose cells merged down may be of each row or of all.
func (s *Spec) Doubtful() bool {
	return s.Verdict == headings.Known && (s.To() == takeoff.Quantity || s.To() == takeoff.DimColumn(fittings.Length))
}

// Spreads reports columns whose cell counts for all rows that it is merged over:
// what a piece is, where it belongs and how large it is across, not how many there
// are or how long.
func Spreads(c takeoff.Column) bool {
	switch c {
	case takeoff.Kind, takeoff.Style, takeoff.DimColumn(fittings.Width), takeoff.DimColumn(fittings.Height), takeoff.DimColumn(fittings.Diameter), takeoff.System, takeoff.Level, takeoff.PlaceOnSite, takeoff.Drawing, takeoff.Shape, takeoff.Scheme, takeoff.Class, takeoff.TestPa,
		takeoff.DesignPa, takeoff.OperatingPa, takeoff.DuctClassPa, takeoff.Sign, takeoff.Scope, takeoff.Stage, takeoff.Ready, takeoff.Closed, takeoff.Group:
		return true
	}
	return false
}

// Watch is what is looked for in a column that isn't used: it may say that a row
// doesn't count, how many there are, or in which unit the sizes are.
type Watch struct {
	Keeps        string        // see Lexicon.Keeps
	Remarks      bool          // it holds remarks
	Turns        bool          // it holds radii, which only fittings have
	Counts       bool          // it may hold counts, as far as was seen
	Units        bool          // it may hold units
	Several      bool          // it may name several flats, houses or floors
	Revises      bool          // it holds revisions of rows
	Again        bool          // it says how many there are over again
	TotalIn      quantity.Unit // of lengths of all pieces of a row together; no name: it holds none
	Filled, Most int
	Least, First int
	Last         int
	Others       int  // cells of something else
	Struck       int  // the last row that a cell struck out
	Gaps         bool // its figures don't just follow each other
}

// Merge adds what was seen further down.
func (w *Watch) Merge(below *Watch) {
	w.Counts, w.Others, w.Struck = w.Counts && below.Counts, w.Others+below.Others, max(w.Struck, below.Struck)
	if below.Filled == 0 {
		return
	}
	if w.Filled == 0 {
		w.First = below.First
	}
	w.Gaps = w.Gaps || below.Gaps || w.Filled > 0 && below.First != w.Last+1
	w.Filled, w.Last, w.Most, w.Least = w.Filled+below.Filled, below.Last, max(w.Most, below.Most), min(w.Least, below.Least)
}

// See takes note of a cell of a column that may say how many.
func (w *Watch) See(cell string) {
	n, ok := celltext.Count(cell)
	if !ok {
		w.Others++
		return
	}
	w.Gaps = w.Gaps || w.Filled > 0 && n != w.Last+1
	if w.Filled == 0 {
		w.First = n
	}
	w.Filled, w.Last, w.Most, w.Least = w.Filled+1, n, max(w.Most, n), min(w.Least, n)
}

// withInches is a length in feet with its inches behind it; without feet, the inches alone.
func withInches(feet, inches string) string {
	inches = strings.TrimRight(inches, `"″” `)
	switch {
	case inches == "" || celltext.MeansNothing(inches):
		return feet
	case feet == "" || feet == "0" || celltext.MeansNothing(feet):
		return inches + `"`
	}
	return strings.TrimRight(feet, "'′’ ") + "'" + inches + `"`
}
