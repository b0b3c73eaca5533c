package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// sheetUnits takes the unit of sizes that a line above the headings gives, for
// columns that give none. A line that gives several, or two lines that differ,
// leave such columns unusable: nothing says which unit is theirs.
func (t *table) sheetUnits() {
	var u quantity.Unit
	said, doubt, row := "", false, 0
	for _, title := range t.search.Texts {
		if across, along, ok := wording.UnitsApart(title.Text); ok {
			t.takeUnits(title.Text, across, along)
			continue
		}
		x, says := wording.StatedUnit(t.lex, title.Text)
		if !says {
			continue
		}
		doubt = doubt || x.Name == "" || said != "" && x != u
		u, said, row = x, celltext.Shorten(title.Text), title.Row
	}
	if said == "" {
		t.doubtTitles()
		return
	}
	if !doubt {
		t.unitAgainst(row, said, u)
	}
	var names []string
	for i := range t.specs {
		s := &t.specs[i]
		if !s.used || s.Said || s.Measure != takeoff.Lengths {
			continue
		}
		names = append(names, "'"+s.Typed+"'")
		if doubt {
			s.used = false
			continue
		}
		s.Column.Unit, s.Column.Stated, s.Said, s.says = u, true, true, "a line above the headings"
	}
	switch {
	case doubt && len(names) > 0:
		p := t.place
		p.Row = row
		t.info.Faults = append(t.info.Faults, p.Fault("", said, "one unit for all sizes, or one in each heading",
			fmt.Sprintf("'%s' above the headings doesn't say one unit for all sizes, so %s can't be used; write the unit in each heading, as width_mm", said, strings.Join(names, ", "))))
	case len(names) > 0:
		t.note("'%s' above the headings gives the unit of %s", said, strings.Join(names, ", "))
	}
}

// doubtSubheading finds fault with a sub-heading that names another unit than that
// in which the rows below it are read.
func (t *table) doubtSubheading(number int, text string) {
	m := wording.UnitBehind.FindStringSubmatch(text)
	if m == nil {
		return
	}
	u, ok := quantity.UnitOf(m[1] + m[2])
	for i := range t.specs {
		if s := &t.specs[i]; ok && s.used && s.Measure == takeoff.Lengths && s.Column.Unit == u {
			return
		}
	}
	p, said := takeoff.Place{File: t.place.File, Sheet: t.place.Sheet, Row: number}, celltext.Shorten(text)
	t.over.doubt = otherUnits(said)
	t.info.Faults = append(t.info.Faults, p.Fault("", said, "the units of the headings",
		fmt.Sprintf("'%s' names a unit in which no column is read; write the unit in the headings, or behind each size", said)))
}

// doubtTitles asks about a line above the headings that names a unit other than
// that in which columns would be read that give none.
func (t *table) doubtTitles() {
	titles := t.search.Texts
	if c := t.info.cover; c != nil {
		titles = append(slices.Clip(titles), *c)
	}
	if t.place.Sheet != "" {
		titles = append(slices.Clip(titles), headrow.Line{Row: t.place.Row, Text: t.place.Sheet})
	}
	for _, title := range titles {
		u, ok := title.Names()
		if !ok {
			continue
		}
		var names []string
		for i := range t.specs {
			if s := &t.specs[i]; s.used && !s.Said && s.Measure == takeoff.Lengths && s.Column.Unit != u {
				names, s.used = append(names, "'"+s.Typed+"'"), false
			}
		}
		if len(names) == 0 {
			continue
		}
		p, said := t.place, celltext.Shorten(title.Text)
		p.Row = title.Row
		if title.Sheet != "" {
			p.Sheet = title.Sheet
		}
		t.info.Faults = append(t.info.Faults, p.Fault("", said, "the unit in each heading",
			fmt.Sprintf("'%s' above the headings names %s, and they name none, so %s can't be used; write the unit in each heading, as width_%s", said, u.Name, strings.Join(names, ", "), u.Name)))
		return
	}
}

// unitAgainst finds fault with a line on units that all headings contradict which
// name one: somebody is wrong by a factor. The headings rule.
func (t *table) unitAgainst(row int, said string, u quantity.Unit) bool {
	var names []string
	in := ""
	for i := range t.specs {
		s := &t.specs[i]
		if !s.used || s.Measure != takeoff.Lengths || s.fixed {
			continue
		}
		if !s.Said || s.Column.Unit == u {
			return false
		}
		names, in = append(names, "'"+s.Typed+"'"), s.Column.Unit.Name
	}
	if len(names) == 0 {
		return false
	}
	p := takeoff.Place{File: t.place.File, Sheet: t.place.Sheet, Row: row}
	t.info.Faults = append(t.info.Faults, p.Fault("", said, "the unit that the headings name, "+in,
		fmt.Sprintf("'%s' says %s, and %s say another unit, in which they are read; correct the line or the headings", said, u.Name, strings.Join(names, ", "))))
	return true
}

// unitBelow deals with a line on units among or below the rows: it mustn't say
// something else than how the rows were read.
func (t *table) unitBelow(number int, cells []string, text string) {
	u, _ := wording.StatedUnit(t.lex, text)
	short := celltext.Shorten(text)
	t.over.doubt = doubt{}
	t.line = &unitLine{Line: headrow.Line{Row: number, Text: text}, unit: u, faults: len(t.info.Faults), handed: t.info.handed}
	against := u.Name != "" && t.unitAgainst(number, short, u)
	if against {
		t.over.doubt = otherUnits(short)
	}
	for i := range t.specs {
		s := &t.specs[i]
		if !against && s.used && s.Measure == takeoff.Lengths && !(s.fixed && s.Said) && !t.lex.Read(s.Typed).Said && s.Column.Unit != u {
			t.info.Faults = append(t.info.Faults, takeoff.Place{File: t.place.File, Sheet: t.place.Sheet, Row: number}.Fault("", short, "the unit that the columns were read in",
				fmt.Sprintf("'%s' stands among the rows, and '%s' is read in %s; write the unit in each heading, as width_mm", short, s.Typed, s.Column.Unit.Name)))
			t.over.doubt = otherUnits(short)
			break
		}
	}
	if t.over.doubt.said != "" {
		t.look.Kept = append(t.look.Kept, number)
	}
	t.told.Add("lines about units among the rows, the first '%s'", short, number)
	t.look.Class(told.RemarkRow, number, cells)
}

// noteUnits says which columns are read in a unit that nobody stated.
func (t *table) noteUnits() {
	t.assumed = slices.ContainsFunc(t.specs, func(s spec) bool { return s.used && !s.Said && s.Measure == takeoff.Lengths && s.sized == own })
	for _, m := range [...]takeoff.Measure{takeoff.Lengths, takeoff.Areas, takeoff.Pressure} {
		var names []string
		for _, s := range t.specs {
			if s.used && !s.Said && s.Measure == m {
				names = append(names, "'"+s.Typed+"'")
			}
		}
		if len(names) > 0 {
			t.note("no unit is given for %s: read as %s", strings.Join(names, ", "), quantity.Default(m).Name)
		}
	}
}
