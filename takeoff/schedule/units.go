package schedule

import (
	"fmt"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headrow"
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
	t.over.doubt = otherUnits(said)
	t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "the units of the headings",
		fmt.Sprintf("'%s' names a unit in which no column is read; write the unit in the headings, or behind each size", said)))
}

// unitBelow deals with a line on units among or below the rows: it mustn't say
// something else than how the rows were read.
func (t *table) unitBelow(number int, cells []string, text string) {
	u, _ := wording.StatedUnit(t.Lex, text)
	short := celltext.Shorten(text)
	t.over.doubt = doubt{}
	t.line = &unitLine{Line: headrow.Line{Row: number, Text: text}, unit: u, faults: len(t.Found.Faults), handed: t.info.handed}
	against := u.Name != "" && t.UnitAgainst(number, short, u)
	if against {
		t.over.doubt = otherUnits(short)
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		if !against && s.Used && s.Measure == takeoff.Lengths && !(s.Fixed && s.Said) && !t.Lex.Read(s.Typed).Said && s.Column.Unit != u {
			t.Found.Faults = append(t.Found.Faults, takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: number}.Fault("", short, "the unit that the columns were read in",
				fmt.Sprintf("'%s' stands among the rows, and '%s' is read in %s; write the unit in each heading, as width_mm", short, s.Typed, s.Column.Unit.Name)))
			t.over.doubt = otherUnits(short)
			break
		}
	}
	if t.over.doubt.said != "" {
		t.Look.Kept = append(t.Look.Kept, number)
	}
	t.told.Add("lines about units among the rows, the first '%s'", short, number)
	t.Look.Class(told.RemarkRow, number, cells)
}
