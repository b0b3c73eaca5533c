package schedule

import (
	"fmt"
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// doubtSubheading finds fault with a sub-heading that names another unit than that
// in which the rows below it are read.
func (t *table) doubtSubheading(number int, text string) {
	m := wording.UnitBehind.FindStringSubmatch(text)
	if m == nil {
		return
	}
	u, ok := quantity.UnitOf(m[1] + m[2])
	for i := range t.Specs {
		if s := &t.Specs[i]; ok && s.Used && s.Measure == takeoff.Lengths && s.Column.Unit == u {
			return
		}
	}
	p, said := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: number}, celltext.Shorten(text)
	t.Over.Doubt = otherUnits(said)
	t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "the units of the headings",
		fmt.Sprintf("'%s' names a unit in which no column is read; write the unit in the headings, or behind each size", said)))
}

// unitBelow deals with a line on units among or below the rows: it mustn't say
// something else than how the rows were read.
func (t *table) unitBelow(number int, cells []string, text string) {
	u, _ := wording.StatedUnit(t.Lex, text)
	short := celltext.Shorten(text)
	t.Over.Doubt = items.Doubt{}
	t.line = &unitLine{Line: headrow.Line{Row: number, Text: text}, unit: u, faults: len(t.Found.Faults), handed: t.info.handed}
	against := u.Name != "" && t.UnitAgainst(number, short, u)
	if against {
		t.Over.Doubt = otherUnits(short)
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		if !against && s.Used && s.Measure == takeoff.Lengths && !(s.Fixed && s.Said) && !t.Lex.Read(s.Typed).Said && s.Column.Unit != u {
			t.Found.Faults = append(t.Found.Faults, takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: number}.Fault("", short, "the unit that the columns were read in",
				fmt.Sprintf("'%s' stands among the rows, and '%s' is read in %s; write the unit in each heading, as width_mm", short, s.Typed, s.Column.Unit.Name)))
			t.Over.Doubt = otherUnits(short)
			break
		}
	}
	if t.Over.Doubt.Said != "" {
		t.Look.Kept = append(t.Look.Kept, number)
	}
	t.Told.Add("lines about units among the rows, the first '%s'", short, number)
	t.Look.Class(told.RemarkRow, number, cells)
}

// unitRow takes the units from a row of units right below the headings, or below
// where they stand again. A unit that isn't understood, or is another than its
// heading says, leaves the column unusable.
func (t *table) unitRow(number int, cells []string) bool {
	if !t.fresh && !t.repeated {
		return false
	}
	found, odd := t.UnitsIn(cells, t.Loud)
	if found == nil {
		return false
	}
	for i, u := range found {
		switch s := &t.Specs[i]; {
		case !s.Used || u.Name == "" || s.Fixed && !t.repeated:
		case s.Said && s.Says != columns.ByRow && !s.Fixed && u != s.Column.Unit:
			odd = append(odd, i)
		default:
			s.Column.Unit, s.Column.Stated, s.Said, s.Says = u, true, true, columns.ByRow
		}
	}
	for _, i := range odd {
		s, cell := &t.Specs[i], celltext.Shorten(celltext.At(cells, i))
		s.Used = false
		t.Found.Faults = append(t.Found.Faults, t.Place.Fault(s.Typed, cell, "the unit of the column, as "+s.Column.Unit.Name,
			fmt.Sprintf("'%s' in the row of units isn't %s, in which '%s' would be read, so the column isn't used; write the unit in the heading", cell, s.Column.Unit.Name, s.Typed)))
	}
	t.Look.Kept = append(t.Look.Kept, t.repeatedAt...) // they are read by this row's units
	t.Note("row %d gives the units", number)
	t.Look.Class(told.UnitRow, number, cells)
	if !t.repeated { // the first ones stay
		t.Refresh()
	}
	t.Heads = append(t.Heads[:t.HeadRows:t.HeadRows], slices.Clone(cells))
	t.fresh, t.repeated, t.unitsAt = false, false, number
	t.UnitsElsewhere()
	t.NoteUnits()
	t.BeforeText()
	return true
}

// unitLine is a line on units among the rows.
type unitLine struct {
	headrow.Line
	unit           quantity.Unit
	faults, handed int // of the file before it
}

// takeLine takes a line on units right above headings for one of these, and back
// what was said of it.
func (t *table) takeLine() bool {
	l := t.line
	t.line = nil
	if l == nil || l.handed != t.info.handed || len(t.Found.Faults) < l.faults {
		return false
	}
	t.Found.Faults = t.Found.Faults[:l.faults]
	t.Over.Doubt = items.Doubt{}
	t.Search.Texts = []headrow.Line{l.Line}
	return true
}
