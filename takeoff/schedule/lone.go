package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/answered"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// isRemark reports a row among notes, or one that begins them, as who signed: none of its
// cells is a number of a piece.
func (t *table) isRemark(cells []string, filled []int, r *takeoff.Row) bool {
	if !t.Loud {
		return false
	}
	if t.InSummary && len(filled) <= 3 && len(t.Specs) > 3 {
		return true
	}
	if t.InNotes && !celltext.HasFigure(cells) {
		return true
	}
	if len(t.Pending) > 0 {
		return false
	}
	for i := range t.Specs {
		if s := &t.Specs[i]; s.Used && s.Measure != takeoff.Text && r.Has(s.To()) {
			return false
		}
	}
	first := celltext.Trim(cells[filled[0]])
	if t.InNotes || len(first) > 60 {
		return t.InNotes
	}
	places, _ := t.Lex.Place(first)
	return len(places) > 0 && places[0] == "note"
}

// remark passes over a row of notes; so are the rows below it, until one of a piece.
func (t *table) remark(number int, cells []string, text string) {
	if wording.StrikesItems.MatchString(text) {
		p := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: number}
		t.Found.Faults = append(t.Found.Faults, p.Fault("", celltext.Shorten(text), "rows that count",
			fmt.Sprintf("'%s' seems to say that some rows don't count; take them out, or reword the line", celltext.Shorten(text))))
	}
	if wording.Replaces.MatchString(text) {
		p := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: number}
		t.Found.Faults = append(t.Found.Faults, p.Fault("", celltext.Shorten(text), "rows that count",
			fmt.Sprintf("'%s' seems to say that the rows above it don't count any more; take them out, or reword the line", celltext.Shorten(text))))
	}
	if wording.Many.MatchString(text) || wording.Multiplies.MatchString(text) || wording.Doubled.MatchString(text) || wording.PerFloor.MatchString(text) {
		p := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: number}
		t.Found.Faults = append(t.Found.Faults, p.Fault("", celltext.Shorten(text), "how many under quantity",
			fmt.Sprintf("'%s' seems to say how many times rows count; write how many under quantity, and take it out of the line", celltext.Shorten(text))))
	}
	if sign := answered.Legend(text); sign != "" && t.Signed > 0 {
		p, said := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: number}, celltext.Shorten(text)
		t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "rows that count",
			fmt.Sprintf("'%s' says something of rows with a sign, and row %d is the first that has one; take out those that don't count, or write out under scope, and take the line out", said, t.Signed)))
	}
	if n := len(t.Found.Faults); (n == 0 || t.Found.Faults[n-1].Row != number) && wording.Changes(t.Lex, text) {
		t.doubtLine(number, text)
	}
	if t.InNotes = true; wording.Summary.MatchString(text) {
		t.InSummary = true
		t.Look.Kept = append(t.Look.Kept, number)
	}
	if t.Over.Doubt.Said == "" && wording.Ends.MatchString(text) {
		said := celltext.Shorten(text)
		t.Over.Doubt = items.Doubt{Said: said, Expected: "a row above the end of the list", Message: fmt.Sprintf("this row stands below '%s', and may not belong to the list; take it out, or the line above it", said)}
		t.Look.Kept = append(t.Look.Kept, number)
	}
	t.Look.Say(text)
	if !wording.PageLine.MatchString(text) {
		t.Over.Named++
	}
	t.Told.Add("remarks among the rows passed over, the first '%s'", celltext.Shorten(text), number)
	t.Look.Class(told.RemarkRow, number, cells)
}

// doubtLine finds fault with a line that may change what counts of the rows.
func (t *table) doubtLine(number int, text string) {
	p, said := t.Place, celltext.Shorten(text)
	p.Row = number
	t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "a line that changes no row",
		fmt.Sprintf("'%s' seems to change what counts of the rows; write it in their cells, or reword it", said)))
}

// isApart reports a row of something that is no ductwork, as a grille, where no row is
// joined to another.
func (t *table) isApart(r *takeoff.Row) bool {
	return t.Loud && t.Lex.Apart(r.Text[takeoff.Kind]) && !t.Maps(takeoff.From) && !t.Maps(takeoff.Run)
}

// mostLone is how many rows of one cell are looked at, where there are more of them than
// of pieces.
const mostLone = 10_000

// areaOf is what the only cell of a row gives to the rows below, where its column or a map
// says so: the system or the level.
func (t *table) areaOf(at int) (takeoff.Column, bool) {
	if at < len(t.Specs) && t.Specs[at].Used && t.Specs[at].Verdict == headings.Known {
		if c := t.Specs[at].To(); c == takeoff.System || c == takeoff.Level {
			return c, true
		}
	}
	return t.ByMap.SubHeading(t.Place.Sheet)
}

// lone deals with the only cell of a row.
func (t *table) lone(number int, cells []string, at int, text string) bool {
	if t.lones++; t.lones > mostLone && 2*t.lones > t.info.handed { // no schedule
		t.alone(at, text)
		return false
	}
	if c, ok := t.areaOf(at); ok {
		t.subheading(number, cells, c, text)
		return true
	}
	if t.saysOfRows(number, cells, text) {
		return true
	}
	places, rest := t.placeOf(text)
	switch {
	case len(places) == 1 && places[0] == "system":
		t.subheading(number, cells, takeoff.System, rest)
	case len(places) == 1 && places[0] == "level":
		t.subheading(number, cells, takeoff.Level, rest)
	case len(places) > 0 && places[0] == "note" || t.InNotes || wording.PageLine.MatchString(text) || t.isNumbered(text):
		t.remark(number, cells, text)
	case t.systemAndLevel(number, cells, text), t.besideLevel(number, cells, text):
	case len(places) == 0 && !t.Lex.StruckAnywhere(text) && t.HeadsBelow():
		t.titleBelow(number, cells, text)
	case t.wraps(at, text):
		t.wrapped(number, cells, text)
	case t.groupHead(text, at), wording.ShapeName(t.Lex, text):
		t.group(number, cells, text)
	case t.partLine(number, cells, text), t.kindLine(number, cells, at, text):
	case t.footer(number, cells, text):
	case len(places) == 2 && !strings.Contains(strings.Join(places, " "), "total") && !strings.Contains(strings.Join(places, " "), "dimension"):
		t.eitherArea(text)
		return false
	case t.struckLine(number, cells, text), t.closed(number, cells, text):
	case (strings.Contains(text, ":") || text[0] == '*' || wording.ExplainsColour(text)) && !t.PiecesBelow(): // Signed: A. Person
		t.remark(number, cells, text)
	case (wording.Many.MatchString(text) || wording.Several(text)) && !celltext.IsSize(text): // 500 x 300
		t.Over.Doubt = items.Doubt{}
		t.doubtMany(number, text)
		t.Look.Kept = append(t.Look.Kept, number)
		t.Look.Class(told.RemarkRow, number, cells)
	default:
		t.alone(at, text)
		return false
	}
	return true
}

// saysOfRows deals with a line that says of rows that they don't count, stand for several or
// are in another unit.
func (t *table) saysOfRows(number int, cells []string, text string) bool {
	_, unit := wording.StatedUnit(t.Lex, text)
	switch {
	case t.struckHead(text):
		t.struckBelow(number, cells, text)
	case wording.PerFloor.MatchString(text) || wording.Replaces.MatchString(text):
		t.remark(number, cells, text)
	case wording.MoreRows.MatchString(text):
		t.moreRows(text)
		t.remark(number, cells, text)
	case wording.Changes(t.Lex, text):
		t.remark(number, cells, text)
	case unit:
		t.unitBelow(number, cells, text)
	default:
		return false
	}
	return true
}

// moreRows finds fault with a line that says that there is more than the rows say.
func (t *table) moreRows(text string) {
	t.Found.Faults = append(t.Found.Faults, t.Place.Fault("", celltext.Shorten(text), "a row for each piece",
		fmt.Sprintf("'%s' seems to say that there are more pieces than the rows say; write rows for them, or how many under quantity", celltext.Shorten(text))))
}

// placeOf is what a line is by its words, and what stands behind a colon.
func (t *table) placeOf(text string) (places []string, rest string) {
	places, rest = t.Lex.Place(text)
	if label, ok := strings.CutSuffix(text, ":"); ok {
		if p, after := t.Lex.Place(label + ": x"); after == "x" { // nothing stands behind it
			return p, ""
		}
	}
	return places, rest
}

// eitherArea refuses a row of one cell that may be a system or a level.
func (t *table) eitherArea(text string) {
	short := celltext.Shorten(text)
	t.row.Refuse(takeoff.Kind, t.Place.Fault("", short, "a piece, or a sub-heading",
		fmt.Sprintf("'%s' stands alone and may be a system or a level for the rows below; write System: or Level: before it", short)))
}

// group takes the name of a group of rows.
func (t *table) group(number int, cells []string, text string) {
	if t.uncounted(number, cells, text) {
		return
	}
	t.entitle(number, text)
	t.Told.Add("names of groups of rows passed over, the first '%s'", celltext.Shorten(text), number)
	t.Look.Kept = append(t.Look.Kept, number)
	t.Look.Class(told.RemarkRow, number, cells)
}

// alone refuses a row of one cell that nobody knows, but for one of a kind, of which is
// said that it isn't one or has no sizes.
func (t *table) alone(at int, text string) {
	if at < len(t.Specs) && t.Specs[at].Used && t.Specs[at].To() == takeoff.Kind {
		return
	}
	short := celltext.Shorten(text)
	if sign, ok := t.partedBy(text); ok {
		t.row.Refuse(takeoff.Kind, t.Place.Fault("", short, "cells parted as the headings are",
			fmt.Sprintf("'%s' stands in one cell: it is parted by '%s', and the headings aren't; use one sign in the whole file", short, sign)))
		return
	}
	t.row.Refuse(takeoff.Kind, t.Place.Fault("", short, "a piece, or a sub-heading",
		fmt.Sprintf("'%s' stands alone in its row; write System: or Level: before it if it is of the rows below, Note: if it is a remark, or fill in the piece", short)))
}

// systemAndLevel takes a line of a system and a level with a stroke between them for both:
// Level 3 - Supply air.
func (t *table) systemAndLevel(number int, cells []string, text string) bool {
	for _, sign := range [...]string{" - ", " – ", " / ", ", "} {
		a, b, ok := strings.Cut(text, sign)
		if !ok {
			continue
		}
		first, name := t.Lex.Place(celltext.Trim(a))
		second, other := t.Lex.Place(celltext.Trim(b))
		if len(first) != 1 || len(second) != 1 || first[0] == second[0] || !strings.Contains("system level", first[0]) || !strings.Contains("system level", second[0]) {
			continue
		}
		if first[0] == "level" {
			name, other = other, name
		}
		t.bothAreas(number, cells, name, other)
		return true
	}
	return false
}

// groupHead reports a lone name of a group of pieces, as Straights or Fittings, over a
// column of kinds.
func (t *table) groupHead(text string, at int) bool {
	if !t.Maps(takeoff.Kind) || len(text) > 40 {
		return false
	}
	words := headings.Tokens(text)
	if len(words) == 0 || len(words) > 3 || strings.ContainsAny(text, "0123456789") {
		return false
	}
	if slices.Contains(described.GroupNames, words[len(words)-1]) {
		return true
	}
	return strings.HasSuffix(words[len(words)-1], "s") && t.Kinds().NamesKind(text)
}
