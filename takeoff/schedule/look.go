package schedule

import (
	"slices"
	"strings"

	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
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
}

// Map makes a map that reads a schedule as it was read, to be edited.
func (info *Info) Map() *mapping.Map {
	m := &mapping.Map{}
	for _, s := range info.Sheets {
		x := mapping.Sheet{Name: s.Name, HeadingRows: s.Headings, Skip: len(s.Headings) == 0}
		for _, c := range s.Columns {
			y := mapping.Column{At: c.Letter, Heading: c.Typed, Is: c.Reads, Unit: c.Unit, Assumed: c.Unit != "" && c.Why == assumedUnit}
			if len(s.Headings) == 1 && s.Headings[0] == 0 {
				y.Heading = ""
			}
			x.Columns = append(x.Columns, y)
		}
		m.Sheets = append(m.Sheets, x)
	}
	return m
}

// Sheet says how a sheet of a schedule was understood.
type Sheet struct {
	Name     string
	Hidden   bool
	Headings []int // their rows; none: the sheet was passed over
	Columns  []Column
	Classes  [NumRowClasses]Rows

	// Kept are the rows that the others are read by: what stands above the
	// headings, headings, units and sub-headings.
	Kept []int

	hiddenColumns []bool
	linked        int      // rows of formulas on other sheets
	titles        []string // what stands above the headings
	rows          uint64   // of pieces, by what they are
	mapped        bool     // a map says how it is read
}

// class counts a row.
func (s *Sheet) class(c RowClass, number int, cells []string) {
	x := &s.Classes[c]
	if c == TitleRow || c == HeadingRow || c == UnitRow || c == SubHeadingRow {
		s.Kept = append(s.Kept, number)
	}
	if x.Count++; x.Count == 1 {
		x.First = number
		x.Text = celltext.Shorten(strings.Join(slices.DeleteFunc(strings.Split(strings.Join(cells, "\x00"), "\x00"), func(s string) bool { return celltext.Trim(s) == "" }), " | "))
	}
}

// describe takes over how the columns were read. Where headings start anew
// further down, the first ones stay.
func (t *table) describe(rows []int) {
	s := t.look
	if len(s.Headings) > 0 {
		return
	}
	s.Headings = rows
	t.refresh()
	for i, row := range rows {
		if row > 0 {
			s.class(HeadingRow, row, t.heads[i])
		}
	}
}

// refresh takes over the columns as they are read now.
func (t *table) refresh() {
	s := t.look
	s.Columns = nil
	for i := range t.specs {
		p := &t.specs[i]
		c := Column{Letter: mapping.Letter(i), Typed: p.Typed, Settled: p.settled, Hidden: i < len(s.hiddenColumns) && s.hiddenColumns[i]}
		if p.used {
			c.Reads = reads(p)
			c.Spread, c.Asked = p.Verdict == headings.Known && spreads(p.to()) || p.Verdict == headings.Sizes, p.doubtful()
			if c.Unit, c.Why = unitWhy(p); p.settled && c.Why == "" {
				c.Why = "its cells"
			}
		} else {
			c.Why = whyNot(p)
		}
		s.Columns = append(s.Columns, c)
	}
	for n := len(s.Columns); n > 0 && s.Columns[n-1].Typed == ""; n-- {
		s.Columns = s.Columns[:n-1]
	}
}

func reads(p *spec) string {
	if p.Verdict != headings.Sizes {
		return p.to().Heading()
	}
	return [...]string{headings.OwnSize: "size", headings.LongSize: "size_length", headings.SecondSize: "size2", headings.BranchSize: "branch_size"}[p.Size]
}

// assumedUnit is why a column has a unit that nobody gave.
const assumedUnit = "assumed: nothing says so"

// unitWhy is the unit of a column, and what says so.
func unitWhy(p *spec) (unit, why string) {
	switch {
	case p.Column.Unit.Name == "" || p.Column.Unit.Name == "each":
		return "", ""
	case p.fixed:
		return p.Column.Unit.Name, "the map"
	case p.says != "":
		return p.Column.Unit.Name, p.says
	case p.Said:
		return p.Column.Unit.Name, "the heading"
	}
	return p.Column.Unit.Name, assumedUnit
}

// whyNot says why a column isn't used.
func whyNot(p *spec) string {
	switch p.Verdict {
	case headings.Blank:
		return "no heading"
	case headings.Near:
		if p.Taken {
			return "not known, and another column is " + p.to().Heading()
		}
		return "did you mean " + p.to().Heading() + "?"
	case headings.Misfit:
		return "the unit " + p.Heading.Unit.Name + " doesn't fit " + p.to().Heading()
	case headings.Asks:
		return "more than one meaning: " + p.Ask.Write
	case headings.Known, headings.Sizes:
		return "the faults and notes say why"
	}
	return "not known"
}
