package told

import (
	"slices"
	"strings"

	"blankoff/takeoff/schedule/celltext"
)

// RowClass is what a row of a sheet was taken for.
type RowClass int

// The classes of rows. Rows of pieces and of totals, and those that are
// left out, count as rows read.
const (
	TitleRow RowClass = iota
	HeadingRow
	UnitRow
	PieceRow
	SubHeadingRow
	TotalRow
	RepeatedRow
	RemarkRow
	SkippedRow // by a map
	HiddenRow  // left out
	ApartRow   // of what is no ductwork, left out
	NumRowClasses
)

var classWords = [...]string{"above the headings", "headings", "units", "pieces", "sub-headings", "totals", "repeated headings", "remarks", "skipped by the map", "hidden, left out", "no ductwork, left out"}

// String names the class.
func (c RowClass) String() string { return classWords[c] }

// Rows counts the rows of a class, with the first of them.
type Rows struct {
	Count int
	First int    // its number
	Text  string // its cells
}

// Column says how a column of a sheet was understood.
type Column struct {
	Letter string
	Typed  string // the heading
	Reads  string // heading of ours, size, size_length, size2 or branch_size; empty: not used
	Unit   string // of cells that give none
	Why    string // where the unit is from, what says what it is, or why the column isn't used
	Hidden bool
	Spread bool // a cell merged down counts for all its rows
	Asked  bool // it may be of each of them or of all together

	Settled bool // what it is was settled by its cells

	LengthFirst bool // of whole sizes: the length stands before the cross-section
	OfAll       bool // of a length: of all pieces of a row together
}

// Sheet says how a sheet of a schedule was understood.
type Sheet struct {
	Name     string
	Hidden   bool
	Sums     bool  // it seems to sum up others, and its rows were passed over
	Headings []int // their rows; none: the sheet was passed over
	Columns  []Column
	Classes  [NumRowClasses]Rows

	// Kept are the rows that the others are read by: what stands above the
	// headings, headings, units and sub-headings.
	Kept []int

	HiddenColumns []bool
	Linked        int      // rows of formulas on other sheets
	Titles        []string // what stands above the headings
	Lines         []string // remarks among the rows
	rows          uint64   // of pieces, by what they are
	last          int      // the number of the last of these
	Among         bool     // there are others in the file
	marks         pieces   // of their rows then
	Mapped        bool     // a map says how it is read
}

// Class counts a row.
func (s *Sheet) Class(c RowClass, number int, cells []string) {
	x := &s.Classes[c]
	if c == TitleRow || c == HeadingRow || c == UnitRow || c == SubHeadingRow {
		s.Kept = append(s.Kept, number)
	}
	if x.Count++; x.Count == 1 {
		x.First = number
		x.Text = celltext.Shorten(strings.Join(slices.DeleteFunc(strings.Split(strings.Join(cells, "\x00"), "\x00"), func(s string) bool { return celltext.Trim(s) == "" }), " | "))
	}
}

// AssumedUnit is why a column has a unit that nobody gave.
const AssumedUnit = "assumed: nothing says so"

// PrintedUnit is why a column has a unit that no row of the sheet gives.
const PrintedUnit = "printed on each page"
