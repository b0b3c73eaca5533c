package columns

import (
	"fmt"
	"maps"
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// Reading is how the columns of a table are read: what its heading rows, the lines above
// them and the cells below them say, and a map.
type Reading struct {
	Lex       *headings.Lexicon
	ByMap     *mapping.Map  // nil: none
	Decimal   byte          // the sign for decimals that the map gives, or 0
	CommaFile bool          // decimals are written with a comma
	Place     takeoff.Place // file and sheet; the row that is read
	Found     *told.Findings
	Units     *Units // of the sheets before
	Look      *told.Sheet

	Search   headrow.Above
	Specs    []Spec       // empty until the heading row is found
	Heads    [][]string   // the cells of the heading rows
	HeadRows int          // of them, without a row of units
	HeadRow  int          // the last of the heading rows
	Fixing   map[int]bool // columns that a map fixes

	Below  func(n int) [][]string // up to n rows that come next
	Next   []string               // the row before these, where the headings are settled at it
	looked int                    // cells that were looked at whether they are headings

	Assumed    bool     // nobody stated the unit of cross-sections
	Beside     []int    // columns in metres before text
	Seldom     bool     // there are quantities in metres, or sizes over several cells
	UnitsAt    int      // column of the units of quantities; 0: none
	LengthAt   int      // column of lengths beside it; 0: none
	Feet       int      // column of feet whose inches stand in another, from 1; 0: none
	OfAll      bool     // a column holds the length of all pieces of a row together
	OrDiameter bool     // a column holds widths or diameters
	Numbered   bool     // tags are item numbers
	BareTags   bool     // most tags aren't set apart, as by brackets
	LengthLast bool     // the third of three figures beside a kind is the length
	SlashSides bool     // sizes as 500/300 are those of pieces that have one only
	SlashOdd   bool     // others are as 600x400, so one may be two diameters
	TwoTables  bool     // two stand side by side
	Twice      string   // a heading of both
	Crossed    []string // the figures of those, as 600/400
	NoneEmpty  bool     // an empty quantity isn't how one is written
}

// Note adds a note that names the sheet.
func (t *Reading) Note(format string, args ...any) {
	if t.Place.Sheet == "" {
		t.Found.Note(format, args...)
		return
	}
	t.Found.NoteOf(t.Place.Sheet, fmt.Sprintf(format, args...))
}

// Refuse takes a column out of use and says why.
func (t *Reading) Refuse(s *Spec, expected, message string) {
	s.Used = false
	t.Found.Faults = append(t.Found.Faults, t.Place.Fault(s.Typed, s.Typed, expected, message))
}

// Maps reports whether a column of the file is used for c.
func (t *Reading) Maps(c takeoff.Column) bool {
	return slices.ContainsFunc(t.Specs, func(s Spec) bool { return s.Used && s.Verdict == headings.Known && s.To() == c })
}

// Kinds are the words for kinds in this table.
func (t *Reading) Kinds() described.Kinds {
	return described.Kinds{Lex: t.Lex, Millimetres: t.millimetres, LengthLast: t.LengthLast}
}

// millimetres reports that nothing says that sizes are in another unit.
func (t *Reading) millimetres() bool {
	for i := range t.Specs {
		if s := &t.Specs[i]; s.Used && s.Measure == takeoff.Lengths && s.Column.Unit != quantity.Millimetre && s.Column.Unit.Name != "m" {
			return false
		}
	}
	for _, x := range t.Search.OnAll() {
		if u, says := wording.StatedUnit(t.Lex, x.Text); says && u != quantity.Millimetre {
			return false
		}
	}
	return true
}

// KindColumn is the column of kinds, or -1.
func (t *Reading) KindColumn() int {
	return slices.IndexFunc(t.Specs, func(s Spec) bool { return s.Used && s.Verdict == headings.Known && s.To() == takeoff.Kind })
}

// Touched are the columns that reading a row may fill.
func (t *Reading) Touched() []takeoff.Column {
	seen := map[takeoff.Column]bool{takeoff.Kind: true, takeoff.System: true, takeoff.Level: true, takeoff.Shape: true, takeoff.Shape2: true, takeoff.DimColumn(fittings.Angle): true}
	for i := range t.Specs {
		s := &t.Specs[i]
		seen[s.To()] = true
		for _, c := range s.Sized {
			seen[c] = true
		}
		if s.Verdict == headings.Sizes {
			for _, c := range Dims(headings.SecondSize) {
				seen[c] = true
			}
		}
	}
	return slices.Sorted(maps.Keys(seen))
}

// Metres reports a column of lengths in metres.
func (t *Reading) Metres(i int) bool {
	s := &t.Specs[i]
	return s.Used && s.Measure == takeoff.Lengths && s.Column.Unit.Name == "m"
}

// BeforeText finds the columns in metres behind which no number is expected.
func (t *Reading) BeforeText() {
	t.Beside = nil
	for i := range t.Specs {
		if t.Metres(i) && (i+1 == len(t.Specs) || !t.Specs[i+1].Used || t.Specs[i+1].Measure == takeoff.Text) {
			t.Beside = append(t.Beside, i)
		}
	}
}

// Describe takes over how the columns were read. Where headings start anew
// further down, the first ones stay.
func (t *Reading) Describe(rows []int) {
	s := t.Look
	if len(s.Headings) > 0 {
		return
	}
	s.Headings = rows
	t.Refresh()
	for i, row := range rows {
		if row > 0 {
			s.Class(told.HeadingRow, row, t.Heads[i])
		}
	}
}

// Refresh takes over the columns as they are read now.
func (t *Reading) Refresh() {
	s := t.Look
	s.Columns = nil
	for i := range t.Specs {
		p := &t.Specs[i]
		c := told.Column{Letter: mapping.Letter(i), Typed: p.Typed, Settled: p.Settled, Hidden: i < len(s.HiddenColumns) && s.HiddenColumns[i]}
		if p.Used {
			c.Reads, c.LengthFirst, c.OfAll = reads(p), p.Foremost, p.Heading.OfAll
			c.Spread, c.Asked = p.Verdict == headings.Known && Spreads(p.To()) || p.Verdict == headings.Sizes, p.Doubtful()
			if c.Unit, c.Why = unitWhy(p); p.Settled && c.Why == "" {
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

func reads(p *Spec) string {
	if p.Verdict != headings.Sizes {
		return p.To().Heading()
	}
	return [...]string{headings.OwnSize: "size", headings.LongSize: "size_length", headings.SecondSize: "size2", headings.BranchSize: "branch_size"}[p.Size]
}

// unitWhy is the unit of a column, and what says so.
func unitWhy(p *Spec) (unit, why string) {
	switch {
	case p.Column.Unit.Name == "" || p.Column.Unit.Name == "each":
		return "", ""
	case p.Fixed:
		return p.Column.Unit.Name, "the map"
	case p.Says != "":
		return p.Column.Unit.Name, p.Says
	case p.Said:
		return p.Column.Unit.Name, "the heading"
	}
	return p.Column.Unit.Name, told.AssumedUnit
}

// whyNot says why a column isn't used.
func whyNot(p *Spec) string {
	switch p.Verdict {
	case headings.Blank:
		return "no heading"
	case headings.Near:
		if p.Taken {
			return "not known, and another column is " + p.To().Heading()
		}
		return "did you mean " + p.To().Heading() + "?"
	case headings.Misfit:
		return "the unit " + p.Heading.Unit.Name + " doesn't fit " + p.To().Heading()
	case headings.Asks:
		return "more than one meaning: " + p.Ask.Write
	case headings.Known, headings.Sizes:
		return "the faults and notes say why"
	}
	return "not known"
}
