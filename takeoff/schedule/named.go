package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// besideLevel takes a line of a system and a level with nothing between them for both:
// Zuluft EG.
func (t *table) besideLevel(number int, cells []string, text string) bool {
	system, level, ok := t.Lex.SystemLevel(text)
	if ok {
		t.bothAreas(number, cells, system, level)
	}
	return ok
}

// bothAreas takes a line for the system and the level of the rows below it.
func (t *table) bothAreas(number int, cells []string, system, level string) {
	t.subheading(number, cells, takeoff.System, system)
	t.subheading(number, cells, takeoff.Level, level)
	if t.Over.Outer == 2 { // the level, as the outer one, ended the system
		t.Over.Text[0] = system
	}
}

// partLine passes over a line that names a place or a part of the ductwork: it sets nothing,
// and what lines above it say holds on.
func (t *table) partLine(number int, cells []string, text string) bool {
	if !t.Lex.Part(text) || t.Lex.StruckAnywhere(text) || wording.Outside.MatchString(text) || wording.Multiplies.MatchString(text) || wording.SeveralLevels.MatchString(text) {
		return false
	}
	t.Over.Named += takeoff.Entitled
	t.Told.Add("lines that name a place or a part passed over, which set nothing, the first '%s'", celltext.Shorten(text), number)
	t.Look.Class(told.RemarkRow, number, cells)
	return true
}

// kindLine takes a line that names a kind or a shape for the name of the rows below it: where
// they say the same anyway, or where no column says the kind.
func (t *table) kindLine(number int, cells []string, at int, text string) bool {
	if len(text) > 40 || strings.ContainsAny(text, "0123456789") {
		return false
	}
	kinds := t.Kinds()
	kind, column := kinds.KindIn(text), t.KindColumn()
	shape, shaped := shapeNamed(kinds, text)
	switch {
	case column == at && column >= 0:
		return false
	case column < 0:
		if kind == fittings.NoKind && !kinds.NamesFitting(text) && !kinds.NamesGroup(text) {
			return false
		}
	case kind != fittings.NoKind:
		if !t.kindBelow(column, kind) {
			return false
		}
	case !shaped || shape == fittings.FlatOval:
		return false
	}
	t.group(number, cells, text)
	return true
}

// shapeNamed is the shape that a line of one word or two names.
func shapeNamed(kinds described.Kinds, text string) (fittings.Shape, bool) {
	word, known := kinds.Lex.Exact(takeoff.Shape, text)
	if !known {
		word = text
	}
	return fittings.ParseShape(word)
}

// kindBelow reports that the rows up to the next line of one cell, as far as they are looked
// at, are all of a kind.
func (t *table) kindBelow(column int, kind fittings.Kind) bool {
	if t.Below == nil {
		return false
	}
	rows := 0
	for _, cells := range t.Below(40) {
		filled := celltext.Filled(cells)
		if celltext.IsLone(cells, filled) {
			break
		}
		cell := celltext.At(cells, column)
		if len(filled) < 3 || cell == "" || quantity.Ditto(cell) || t.Lex.Total(celltext.Trim(cells[filled[0]])) {
			continue
		}
		if t.Kinds().KindIn(cell) != kind {
			return false
		}
		rows++
	}
	return rows > 0 || t.OfRefused()
}

// isSpare reports a row that keeps a number and stands for nothing: not used, reserved, or
// nothing but strokes. It has no figures.
func (t *table) isSpare(cells []string, filled []int, r *takeoff.Row) bool {
	if !t.Loud || len(filled) < 2 || len(t.Pending) > 0 {
		return false
	}
	kind := t.KindColumn()
	for i := range t.Specs {
		if s := &t.Specs[i]; s.Used && s.Verdict == headings.Known && s.Measure != takeoff.Text && r.Text[s.To()] != "" {
			return false
		}
	}
	word := r.Text[takeoff.Kind]
	if word != "" {
		return slices.Contains(wording.Reserved, strings.ToLower(strings.Trim(word, " ().-*"))) || t.Lex.Struck(word)
	}
	names := func(i int) bool { // tags, systems
		return i < len(t.Specs) && (t.Specs[i].Used && t.Specs[i].Verdict == headings.Known && t.Specs[i].Measure == takeoff.Text || t.Specs[i].Verdict == headings.Asks)
	}
	return kind >= 0 && celltext.MeansNothing(celltext.At(cells, kind)) && !slices.ContainsFunc(filled, func(i int) bool {
		return !celltext.MeansNothing(celltext.Trim(cells[i])) && !names(i)
	})
}

// spare passes over a row that stands for nothing.
func (t *table) spare(number int, cells []string, r *takeoff.Row) {
	word := r.Text[takeoff.Kind]
	if word == "" {
		word = "-"
	}
	t.Told.Add("rows without figures that stand for nothing passed over, the first '%s'", celltext.Shorten(word), number)
	t.Look.Class(told.RemarkRow, number, cells)
}

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
