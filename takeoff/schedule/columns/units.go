package columns

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

// CarryUnits goes on with the units of the headings before, where they stand anew
// and name none. Headings of other columns begin another table, of which nobody
// knows the units: there, a column that isn't in mm before is asked about.
func (t *Reading) CarryUnits(before []Spec) {
	same := slices.Equal(readsOf(before), readsOf(t.Specs))
	var names []string
	other := func(u quantity.Unit) bool {
		return slices.ContainsFunc(t.Specs, func(s Spec) bool {
			return s.Used && s.Said && s.Measure == takeoff.Lengths && s.Across && s.Column.Unit != u
		})
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		b := alikeIn(before, s)
		if b == nil || b.Column.Unit == s.Column.Unit {
			continue
		}
		if !same || other(b.Column.Unit) && b.Column.Unit.Name != "m" {
			t.Refuse(s, "a unit in the heading", fmt.Sprintf("'%s' states no unit, and in the headings before it is in %s; those are of other columns, so this one isn't used; write the unit in the heading", s.Typed, b.Column.Unit.Name))
			continue
		}
		s.Column.Unit, s.Said, s.Says, s.Carried = b.Column.Unit, true, ByRow, true
		names = append(names, "'"+s.Typed+"' in "+s.Column.Unit.Name)
	}
	if len(names) > 0 {
		t.Note("the headings at row %d give no unit and are read as those before: %s", t.Place.Row, strings.Join(names, ", "))
	}
}

// MostCarried is a length that no piece has, m: its unit isn't that of the headings
// before.
const MostCarried = 50

// alikeIn is the column of the headings before that is the same and states a unit, for
// one of lengths that states none.
func alikeIn(before []Spec, s *Spec) *Spec {
	if !s.Used || s.Said || s.Measure != takeoff.Lengths {
		return nil
	}
	for k := range before {
		if b := &before[k]; b.Used && b.Said && b.Measure == takeoff.Lengths && reads(b) == reads(s) {
			return b
		}
	}
	return nil
}

// readsOf are the columns that are read, in the order of their names.
func readsOf(specs []Spec) (names []string) {
	for i := range specs {
		if specs[i].Used {
			names = append(names, reads(&specs[i]))
		}
	}
	slices.Sort(names)
	return names
}

// ByRow is what a unit is from that a row of units gives.
const ByRow = "a row below the headings"

// UnitsAbove takes the units from a row of units right above the headings, for
// columns that say none.
func (t *Reading) UnitsAbove(row int) {
	f := &t.Search
	if f.Last == nil || f.LastAt != row-1 {
		return
	}
	found, odd := t.UnitsIn(f.Last, true)
	if found == nil || len(odd) > 0 {
		return
	}
	took := false
	for i, u := range found {
		if s := &t.Specs[i]; s.Used && !s.Said && u.Name != "" {
			s.Column.Unit, s.Column.Stated, s.Said, s.Says, took = u, true, true, "a row above the headings", true
		}
	}
	if took {
		t.Note("row %d gives the units", f.LastAt)
	}
}

// UnitsIn reads a row of units, by column; found is nil for a row that isn't one:
// with an amount, a kind of piece, or more words under numbers than units. odd are
// the columns of numbers under which some other word stands. loud: no kind of a piece is known
// in the row.
func (t *Reading) UnitsIn(cells []string, loud bool) (found []quantity.Unit, odd []int) {
	found = make([]quantity.Unit, len(t.Specs))
	units := 0
	for i, cell := range cells {
		if cell = celltext.Trim(cell); cell == "" || celltext.MeansNothing(cell) || slices.ContainsFunc(t.Heads, func(head []string) bool { return celltext.At(head, i) == cell }) {
			continue // or a heading that is merged down
		}
		u, isUnit := wording.UnitWord(cell)
		if !isUnit && strings.ContainsAny(cell, "0123456789") {
			return nil, nil
		}
		if i >= len(t.Specs) || !t.Specs[i].Used {
			continue
		}
		switch s := &t.Specs[i]; {
		case s.To() == takeoff.Kind && !loud:
			return nil, nil
		case s.Measure == takeoff.Text, s.Measure == takeoff.Count: // text, pieces
		case isUnit && u.Measure == s.Measure:
			found[i] = u
			units++
		default:
			odd = append(odd, i)
		}
	}
	if units == 0 || len(odd) > units {
		return nil, nil
	}
	return found, odd
}

// SheetUnits takes the unit of sizes that a line above the headings gives, for
// columns that give none. A line that gives several, or two lines that differ,
// leave such columns unusable: nothing says which unit is theirs.
func (t *Reading) SheetUnits() {
	u, said, row, doubt := t.unitAbove()
	if said == "" {
		t.doubtTitles()
		return
	}
	if !doubt && row > 0 {
		t.UnitAgainst(row, said, u)
	}
	switch names := t.unitForAll(u, row, doubt); {
	case doubt && len(names) > 0:
		p := t.Place
		p.Row = row
		t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "one unit for all sizes, or one in each heading",
			fmt.Sprintf("'%s' above the headings doesn't say one unit for all sizes, so %s can't be used; write the unit in each heading, as width_mm", said, strings.Join(names, ", "))))
	case len(names) > 0:
		t.Note("'%s' %s gives the unit of %s", said, whereSaid(row), strings.Join(names, ", "))
	}
}

// unitAbove is the unit that the lines above the headings give, with the last of these lines
// and its row; doubt: they don't give one alone. said is "" where none gives any.
func (t *Reading) unitAbove() (u quantity.Unit, said string, row int, doubt bool) {
	for _, title := range t.Search.OnAll() {
		if across, along, ok := wording.UnitsApart(title.Whole()); ok {
			if title.Row > 0 {
				t.apartAgainst(title.Row, title.Whole(), across, along)
			}
			t.takeUnits(title, across, along)
			continue
		}
		if t.lengthsOnly(title) {
			continue
		}
		x, says := wording.StatedUnit(t.Lex, title.Whole())
		if !says {
			continue
		}
		doubt = doubt || x.Name == "" || said != "" && x != u
		u, said, row = x, celltext.Shorten(title.Text), title.Row
	}
	return u, said, row, doubt
}

// unitForAll gives the columns of lengths that state no unit that of the line in a row, or
// leaves them unused where it is in doubt, and names them.
func (t *Reading) unitForAll(u quantity.Unit, row int, doubt bool) (names []string) {
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Said || s.Measure != takeoff.Lengths {
			continue
		}
		names = append(names, "'"+s.Typed+"'")
		if doubt {
			s.Used = false
			continue
		}
		s.Column.Unit, s.Column.Stated, s.Said, s.Says = u, true, true, saidBy(row)
	}
	return names
}

// saidBy is what a unit is from that a line says; one of no row is printed on each page.
func saidBy(row int) string {
	if row == 0 {
		return told.PrintedUnit
	}
	return "a line above the headings"
}

// whereSaid is where such a line stands.
func whereSaid(row int) string {
	if row == 0 {
		return told.PrintedUnit
	}
	return "above the headings"
}

// doubtTitles asks about a line above the headings that names a unit other than
// that in which columns would be read that give none.
func (t *Reading) doubtTitles() {
	titles := t.Search.Texts
	if c := t.Units.Cover; c != nil {
		titles = append(slices.Clip(titles), *c)
	}
	if t.Place.Sheet != "" {
		titles = append(slices.Clip(titles), headrow.Line{Row: t.Place.Row, Text: t.Place.Sheet})
	}
	for _, title := range titles {
		u, ok := title.Names()
		if !ok {
			continue
		}
		var names []string
		for i := range t.Specs {
			if s := &t.Specs[i]; s.Used && !s.Said && s.Measure == takeoff.Lengths && s.Column.Unit != u {
				names, s.Used = append(names, "'"+s.Typed+"'"), false
			}
		}
		if len(names) == 0 {
			continue
		}
		p, said := t.Place, celltext.Shorten(title.Text)
		p.Row = title.Row
		if title.Sheet != "" {
			p.Sheet = title.Sheet
		}
		t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "the unit in each heading",
			fmt.Sprintf("'%s' above the headings names %s, and they name none, so %s can't be used; write the unit in each heading, as width_%s", said, u.Name, strings.Join(names, ", "), u.Name)))
		return
	}
}

// UnitAgainst finds fault with a line on units that all headings contradict which
// name one: somebody is wrong by a factor. The headings rule.
func (t *Reading) UnitAgainst(row int, said string, u quantity.Unit) bool {
	var names []string
	in := ""
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Measure != takeoff.Lengths || s.Fixed {
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
	p := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: row}
	t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "the unit that the headings name, "+in,
		fmt.Sprintf("'%s' says %s, and %s say another unit, in which they are read; correct the line or the headings", said, u.Name, strings.Join(names, ", "))))
	return true
}

// NoteUnits says which columns are read in a unit that nobody stated.
func (t *Reading) NoteUnits() {
	t.Assumed = slices.ContainsFunc(t.Specs, func(s Spec) bool { return s.Used && !s.Said && s.Measure == takeoff.Lengths && s.Sized == Own })
	for _, m := range [...]takeoff.Measure{takeoff.Lengths, takeoff.Areas, takeoff.Pressure} {
		var names []string
		for _, s := range t.Specs {
			if s.Used && !s.Said && s.Measure == m {
				names = append(names, "'"+s.Typed+"'")
			}
		}
		if len(names) > 0 {
			t.Note("no unit is given for %s: read as %s", strings.Join(names, ", "), quantity.Default(m).Name)
		}
	}
}

// UnitOnly is the unit of a heading that names nothing else: in, (ft), [mm].
func UnitOnly(typed string) (quantity.Unit, bool) {
	return quantity.UnitOf(strings.Trim(typed, "()[] "))
}
