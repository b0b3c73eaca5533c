package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// subheads are the sub-headings that hold for the rows below them.
type subheads struct {
	text  [2]string // system, level
	outer int       // which of the two was met first; 0 none, else its place + 1
	rows  [2]int
	sheet [2]string // what the name of the sheet gives, where no sub-heading does
	named [2]int    // rows that take it
	met   bool
	doubt doubt // of the rows below
}

// doubt is why rows can't be used because of a line above them.
type doubt struct{ said, expected, message string }

var subColumns = [2]takeoff.Column{takeoff.System, takeoff.Level}

// apply gives a row what the sub-headings above it say, where it says nothing
// itself.
func (o *subheads) apply(r *takeoff.Row) {
	if d := o.doubt; d.said != "" {
		r.Faults = append(r.Faults, r.At.Fault("", d.said, d.expected, d.message))
	}
	if !o.met {
		return
	}
	for i, c := range subColumns {
		switch {
		case r.Text[c] != "":
		case o.text[i] != "":
			r.Text[c] = o.text[i]
			o.rows[i]++
		case o.sheet[i] != "":
			r.Text[c] = o.sheet[i]
			o.named[i]++
		}
	}
}

// subheading sets the system or level of the rows below. Where both are used,
// the one that was met first is the outer one: a new one ends the inner.
func (t *table) subheading(number int, cells []string, c takeoff.Column, text string) {
	o := &t.over
	o.doubt, t.inSummary = doubt{}, false
	t.doubtSubheading(number, text)
	t.doubtMany(number, text)
	if whole := strings.Join(celltext.Texts(cells), " "); t.over.doubt.said == "" && (wording.SeveralLevels.MatchString(whole) || wording.Outside.MatchString(whole) || wording.Ditto.MatchString(whole)) {
		t.doubtRows(number, whole, "rows that count once", "may say that the rows below stand for several, or don't count; write how many under quantity, and take it out of the line")
	}
	if t.noKind && t.kindTold != "" && t.Kinds().NamesGroup(text) { // Supply bends
		t.kindTold, t.kindSays = "", ""
	}
	i := 0
	if c == takeoff.Level {
		i = 1
	}
	if o.outer == 0 {
		o.outer = i + 1
	}
	if o.outer == i+1 {
		o.text[1-i] = ""
	}
	o.met, o.text[i] = true, text
	t.told.Add("sub-headings that give the "+c.Heading()+" of the rows below", "", number)
	t.Look.Class(told.SubHeadingRow, number, cells)
	t.since[1] = t.info.handed
}

// otherUnits doubts rows below a line that names another unit than the headings.
func otherUnits(said string) doubt {
	return doubt{said, "a row in the units of the headings",
		fmt.Sprintf("'%s' above it names another unit than the headings, so the row isn't used; write the unit in the headings, or behind each size", said)}
}

// doubtMany finds fault with a sub-heading that says how many times its rows are there.
func (t *table) doubtMany(number int, text string) {
	if !wording.Many.MatchString(text) || celltext.IsSize(text) { // 600 x 400
		return
	}
	said := celltext.Shorten(text)
	message := fmt.Sprintf("'%s' seems to say that the rows below stand for several; write how many under quantity, and take it out of the line", said)
	p := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: number}
	t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "how many under quantity", message))
	t.over.doubt = doubt{said, "how many under quantity", message}
}

// doubtTitle finds fault with a line above the headings that multiplies what stands
// below it.
func (t *table) doubtTitle() {
	texts := t.Search.Texts
	if t.Place.Sheet != "" {
		texts = append(slices.Clip(texts), headrow.Line{Row: t.Place.Row, Text: t.Place.Sheet})
	}
	for _, x := range texts {
		if sheet := x.Text == t.Place.Sheet; !sheet && (t.Lex.StruckAnywhere(x.Text) || t.Lex.Struck(x.Text) || wording.OutsideTitle.MatchString(x.Text) || wording.OnSizes.MatchString(x.Text)) {
			p, said := t.Place, celltext.Shorten(x.Text)
			p.Row = x.Row
			t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "a title that says nothing of what counts",
				fmt.Sprintf("'%s' above the headings may say that the rows don't count, or what the sizes are of; say it in columns, or reword it", said)))
		}
		if wording.Multiplies.MatchString(x.Text) || (wording.Many.MatchString(x.Text) || wording.SeveralLevels.MatchString(x.Text) || wording.TitleCounts.MatchString(x.Text)) && !celltext.IsSize(x.Text) {
			p, said := t.Place, celltext.Shorten(x.Text)
			p.Row = x.Row
			t.Found.Faults = append(t.Found.Faults, p.Fault("", said, "how many under quantity",
				fmt.Sprintf("'%s' seems to say that the rows below stand for several; write how many under quantity, and take it out of the line", said)))
		}
	}
}

// uncounted deals with a name of rows that says that they may not count, or how many times
// they do. It reports whether it is one.
func (t *table) uncounted(number int, cells []string, text string) bool {
	if wording.Many.MatchString(text) || wording.Multiplies.MatchString(text) {
		t.over.doubt = doubt{}
		t.doubtMany(number, text)
		if t.over.doubt.said == "" {
			t.doubtRows(number, text, "how many under quantity", "seems to say that the rows below stand for several; write how many under quantity, and take it out of the line")
		}
		t.Look.Kept = append(t.Look.Kept, number)
		t.Look.Class(told.RemarkRow, number, cells)
		return true
	}
	if t.Lex.Struck(text) || t.Lex.StruckEnd(text) || wording.Outside.MatchString(text) {
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
	t.over.doubt = doubt{said, expected, message}
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
