package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/answered"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// subheading sets the system or level of the rows below. Where both are used,
// the one that was met first is the outer one: a new one ends the inner.
func (t *table) subheading(number int, cells []string, c takeoff.Column, text string) {
	o := &t.Over
	o.Doubt, t.InSummary = items.Doubt{}, false
	t.doubtSubheading(number, text)
	t.doubtMany(number, text)
	if whole := strings.Join(celltext.Texts(cells), " "); t.Over.Doubt.Said == "" && (wording.SeveralLevels.MatchString(whole) || wording.Outside.MatchString(whole) || wording.Ditto.MatchString(whole) || wording.AlsoHere(whole)) {
		t.doubtRows(number, whole, "rows that count once", "may say that the rows below stand for several, or don't count; write how many under quantity, and take it out of the line")
	}
	if t.Over.Doubt.Said == "" && wording.ShapeName(t.Lex, text) {
		t.doubtRows(number, text, "the name of a "+c.Heading(), fmt.Sprintf("is a shape and no name of a %s; write it in a column headed shape", c.Heading()))
	}
	if t.NoKind && t.KindTold != "" && t.Kinds().NamesGroup(text) { // Supply bends
		t.KindTold, t.KindSays = "", ""
	}
	i := 0
	if c == takeoff.Level {
		i = 1
	}
	if o.Outer == 0 {
		o.Outer = i + 1
	}
	if o.Outer == i+1 {
		o.Text[1-i] = ""
	}
	o.Met, o.Text[i] = true, text
	t.Told.Add("sub-headings that give the "+c.Heading()+" of the rows below", "", number)
	t.Look.Class(told.SubHeadingRow, number, cells)
	t.since[1] = t.info.handed
}

// otherUnits doubts rows below a line that names another unit than the headings.
func otherUnits(said string) items.Doubt {
	return items.Doubt{Said: said, Expected: "a row in the units of the headings", Message: fmt.Sprintf("'%s' above it names another unit than the headings, so the row isn't used; write the unit in the headings, or behind each size", said)}
}

// doubtMany finds fault with a sub-heading that says how many times its rows are there.
func (t *table) doubtMany(number int, text string) {
	if !wording.Many.MatchString(text) && !wording.Several(text) || celltext.IsSize(text) { // 600 x 400
		return
	}
	said := celltext.Shorten(text)
	message := fmt.Sprintf("'%s' seems to say that the rows below stand for several; write how many under quantity, and take it out of the line", said)
	p := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: number}
	t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "how many under quantity", message))
	t.Over.Doubt = items.Doubt{Said: said, Expected: "how many under quantity", Message: message}
}

// doubtTitle finds fault with a line above the headings that multiplies what stands
// below it.
func (t *table) doubtTitle() {
	texts := t.Search.Texts
	if t.Place.Sheet != "" {
		texts = append(slices.Clip(texts), headrow.Line{Row: t.Place.Row, Text: t.Place.Sheet})
	}
	t.Legend, t.Signed = items.Legend{}, 0
	for _, x := range texts {
		x.Text = t.withoutPer(wording.WithoutLegal(x.Text))
		faults, sheet := len(t.Found.Faults), x.Text == t.Place.Sheet
		if sign := answered.Legend(x.Text); sign != "" {
			t.Legend = items.Legend{Sign: sign, Said: x.Text}
		}
		if !sheet && (t.Lex.StruckAnywhere(x.Text) || t.Lex.Struck(x.Text) || t.labelledOut(x.Text) || wording.OutsideTitle.MatchString(x.Text) || wording.OnSizes.MatchString(x.Text)) {
			p, said := t.Place, celltext.Shorten(x.Text)
			p.Row = x.Row
			t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "a title that says nothing of what counts",
				fmt.Sprintf("'%s' above the headings may say that the rows don't count, or what the sizes are of; say it in columns, or reword it", said)))
		}
		if wording.Running.MatchString(x.Text) && t.LengthsRise() {
			p, said := t.Place, celltext.Shorten(x.Text)
			p.Row = x.Row
			t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "the length of each piece",
				fmt.Sprintf("'%s' seems to say that lengths are counted on from row to row, and each is larger than the one above it; write the length of each piece, or take the line out", said)))
		}
		if wording.Multiplies.MatchString(x.Text) || wording.TimesAll(x.Text) || (wording.Many.MatchString(x.Text) || wording.SeveralLevels.MatchString(x.Text) || wording.Several(x.Text) || wording.TitleCounts.MatchString(x.Text)) && !celltext.IsSize(x.Text) {
			p, said := t.Place, celltext.Shorten(x.Text)
			p.Row = x.Row
			message := fmt.Sprintf("'%s' seems to say that the rows below stand for several; write how many under quantity, and take it out of the line", said)
			if sheet {
				message = fmt.Sprintf("the name of the sheet, '%s', seems to say that its rows, from row %d on, stand for several; write how many under quantity, and rename the sheet", said, t.HeadRow+1)
			}
			t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "how many under quantity", message))
		}
		if len(t.Found.Faults) == faults && !sheet && wording.Changes(t.Lex, x.Text) {
			t.doubtLine(x.Row, x.Text)
		}
	}
}

// withoutPer takes out of a line that its rows are per storey, where a column gives the storey of
// each, and not one of all.
func (t *table) withoutPer(line string) string {
	if wording.PerStorey(line) && t.EachLevel() {
		return wording.WithoutPer(line)
	}
	return line
}

// labelledOut reports a label with a word that says that rows don't count: Scope out, Status void.
func (t *table) labelledOut(text string) bool {
	label, said, ok := strings.Cut(text, " ")
	if !ok || len(text) > 60 {
		return false
	}
	said = celltext.Trim(said)
	h := t.Lex.Read(strings.TrimSuffix(label, ":"))
	scope, known := t.Lex.Exact(takeoff.Scope, said)
	if !known {
		scope = strings.ToLower(said)
	}
	return h.Verdict == headings.Known && h.Column == takeoff.Scope && (scope == "out" || scope == "through") || t.Lex.Keeps(label) == "status" && t.Lex.Struck(said)
}

// uncounted deals with a name of rows that says that they may not count, or how many times
// they do. It reports whether it is one.
func (t *table) uncounted(number int, cells []string, text string) bool {
	if wording.Many.MatchString(text) || wording.Several(text) || wording.Multiplies.MatchString(text) {
		t.Over.Doubt = items.Doubt{}
		t.doubtMany(number, text)
		if t.Over.Doubt.Said == "" {
			t.doubtRows(number, text, "how many under quantity", "seems to say that the rows below stand for several; write how many under quantity, and take it out of the line")
		}
		t.Look.Kept = append(t.Look.Kept, number)
		t.Look.Class(told.RemarkRow, number, cells)
		return true
	}
	if wording.Lacks(text) {
		t.doubtRows(number, text, "rows for all pieces", "seems to say that pieces are missing; write a row for each, or take the line out")
		t.Look.Class(told.RemarkRow, number, cells)
		return true
	}
	if (t.Lex.Struck(text) || t.Lex.StruckEnd(text) || wording.Outside.MatchString(text)) && !t.Lex.Part(text) {
		t.struckBelow(number, cells, text)
		return true
	}
	return false
}

// doubtRows finds fault with a line, and with the rows below it for its sake.
func (t *table) doubtRows(number int, text, expected, trouble string) {
	said := celltext.Shorten(text)
	message := fmt.Sprintf("'%s' %s", said, trouble)
	p := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: number}
	t.Found.Faults = append(t.Found.Faults, p.Fault("", said, expected, message))
	t.Over.Doubt = items.Doubt{Said: said, Expected: expected, Message: message}
}

// struckLine deals with a line that says the rows below it don't count. It reports
// whether it is one.
func (t *table) struckLine(number int, cells []string, text string) bool {
	if !t.Lex.StruckAnywhere(text) && !t.Lex.Struck(text) {
		return false
	}
	t.struckBelow(number, cells, text)
	return true
}

// struckHead reports a short line of nothing but a word as deleted or old, above rows of
// pieces, wherever it stands: among remarks too.
func (t *table) struckHead(text string) bool {
	words := headings.Tokens(text)
	if len(words) == 0 || len(words) > 3 {
		return false
	}
	return (wording.Earlier.MatchString(text) || t.InNotes && t.Lex.Struck(text)) && t.PiecesBelow()
}

// struckBelow doubts the rows below a line.
func (t *table) struckBelow(number int, cells []string, text string) {
	t.doubtRows(number, text, "rows that count", "seems to say that the rows below it don't count; take them out, write out under scope, or reword the line")
	t.Look.Kept = append(t.Look.Kept, number)
	t.Look.Class(told.RemarkRow, number, cells)
}

// pieceAbove finds fault with a row above the headings that looks like a piece.
func (t *table) pieceAbove() {
	if t.Search.Piece == 0 {
		return
	}
	p := t.Place
	p.Row = t.Search.Piece
	t.Search.Piece = 0
	t.Found.Faults = append(t.Found.Faults, p.Fault("", "", "headings above the rows",
		"this row looks like a piece, but stands above the headings, so it isn't read; put the headings above all rows"))
}

// titleBelow takes the only cell of a row for the title of the table whose headings
// stand below it.
func (t *table) titleBelow(number int, cells []string, text string) {
	t.entitle(number, text)
	if t.titled = true; t.uncounted(number, cells, text) {
		return
	}
	if (t.info.handed > 0 || t.OfRefused()) && wording.CopyTitle.MatchString(text) && !t.Lex.Part(text) {
		t.doubtRows(number, text, "each piece once", "seems to head a copy of rows that stand above already; take the copy out, or reword the title")
	}
	t.Told.Add("titles of tables among the rows passed over, the first '%s'", celltext.Shorten(text), number)
	t.Look.Kept = append(t.Look.Kept, number)
	t.Look.Class(told.RemarkRow, number, cells)
}

// entitle takes a line for the name of the rows below it, up to the next such line: what
// it says of their shape, their kind, their unit and how many times they are there.
func (t *table) entitle(number int, text string) {
	f := &t.Search
	f.Texts = append(slices.DeleteFunc(f.Texts, func(x headrow.Line) bool { return x.Among }), headrow.Line{Row: number, Text: text, Among: true})
	t.Over.Doubt = items.Doubt{}
	t.Over.Named += takeoff.Entitled
	t.doubtSubheading(number, text)
	t.doubtMany(number, text)
	t.TellShape()
	t.TellKind()
}

// mostHeading is how many lines right above the headings may give the system and the level.
const mostHeading = 6

// headedBy takes the system and the level from lines right above the headings that give
// them as sub-headings do: System: S1, Level 2.
func (t *table) headedBy() {
	t.sheetNamed()
	texts := t.Search.Texts
	for _, x := range texts[max(0, len(texts)-mostHeading):] {
		words := headings.Tokens(x.Text)
		before, after, colon := strings.Cut(x.Text, ":")
		if len(words) > 6 || strings.Contains(after, ":") || !colon && (len(words) > 3 || !strings.ContainsAny(x.Text, "0123456789")) {
			continue
		}
		if p, rest := t.Lex.Place(x.Text); len(p) == 1 && (!colon || rest != x.Text && len(headings.Tokens(before)) < 3) {
			switch p[0] {
			case "system":
				t.Over.Met, t.Over.Text[0], t.Over.Outer = true, rest, max(t.Over.Outer, 1)
			case "level":
				t.Over.Met, t.Over.Text[1] = true, rest
				if t.Over.Outer == 0 {
					t.Over.Outer = 2
				}
			}
		}
	}
}

// sheetNamed takes the system or the level from the name of the sheet, where no column
// gives it: Level 2, Supply.
func (t *table) sheetNamed() {
	words := headings.Tokens(t.Place.Sheet)
	if len(words) == 0 || len(words) > 3 {
		return
	}
	p, _ := t.Lex.Place(t.Place.Sheet)
	if len(p) != 1 {
		return
	}
	for i, c := range items.SubColumns {
		if p[0] == c.Heading() && !t.Maps(c) {
			t.Over.Met, t.Over.Sheet[i] = true, t.Place.Sheet
		}
	}
}
