package schedule

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
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
	t.Over.Named++
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
