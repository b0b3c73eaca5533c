package items

import (
	"fmt"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/wording"
	"blankoff/takeoff/schedule/workbook"
)

// Doubts is what a reader keeps to find out what may not be what it seems.
type Doubts struct {
	bare          []bareSize // of the row
	shape         shapeTold
	Extra         columns.Spec // of the column behind the last heading
	InNotes       bool         // only notes since the last row of pieces
	rowUnit       bool         // a size of the row states its own unit
	NewUnit       bool         // the first of its column did
	counted       bool         // a column says how many there are
	tallies       quantified   // of its cells
	strays        []string     // cells of the row without headings
	besides       bool         // another table beside this one was told of
	Marked        workbook.Marks
	Commas        bool             // they are parted by commas, and so may decimals be
	uneven        bool             // a row has as many cells as there are headings
	Long, longAt  int              // cells of the first row that has more, and its number
	watched       int              // rows in which columns that aren't used were looked at
	NoKind        bool             // no column says the kind
	KindTold      string           // so this is it
	KindSays      string           // as a title says
	remarks       map[string]uint8 // what remarks say
	areas         map[string]int   // what names of systems and levels are; of rows read one by one
	chunked       bool             // it reads a chunk
	InSummary     bool             // they sum up the pieces
	Moved         bool             // a size of the row is in another column than its cell
	missing       missing          // what no column gives
	several       severalIn        // a cell of the row that names several floors, flats or the like
	lengthFilled  bool             // a length stands in the row, in a column of its own beside units
	metred        bool             // the quantity of the row is its length
	straightSided string           // a shape that isn't circular
}

// Settle completes a row whose cells have been read.
func (t *Reader) Settle(r *takeoff.Row, broken string) {
	if t.InNotes = false; t.InSummary {
		r.Faults = append(r.Faults, t.Place.Fault("", "", "a row of a piece",
			"this row stands below a line that begins a summary, and may sum up pieces above; take it out, or put headings above it if it is a piece of its own"))
	}
	beside := len(t.Pending) > 0 && t.Pending[0].Spec == t.InKind
	if len(t.Pending) > 0 {
		t.takeSizes(r)
	}
	if t.turn.angle != "" {
		t.takeAngle(r)
	}
	if t.OfAll {
		t.shareLength(r)
	}
	if t.NoKind {
		t.nameKind(r)
	}
	t.sizesByShape(r)
	if t.metred {
		t.doubtMetred(r)
	}
	if broken != "" {
		r.Faults = append(r.Faults, t.Place.Fault("", "", "quotes in pairs", broken))
	}
	if len(t.bare) > 0 || len(t.Pending) > 0 || t.rowUnit {
		t.doubtBare(r)
	}
	if t.shape.told || r.Text[takeoff.Note] != "" {
		t.doubtShape(r)
	}
	t.doubtRow(r)
	if t.several.cell != "" {
		t.doubtSeveral(r)
	}
	if t.counted && !t.Loud {
		t.tallies.add(r)
	}
	t.watched++
	r.Assumed = (t.Assumed || beside) && !t.unitInCells(r)
	t.Over.apply(r)
}

// doubtAreas refuses a row whose system or level is a total, or names several.
func (t *Reader) doubtAreas(r *takeoff.Row) {
	for _, c := range SubColumns {
		text := r.Text[c]
		if text == "" {
			continue
		}
		is, met := t.areas[text]
		if !met {
			if is = wording.Name(t.Lex, text); len(t.areas) > mostMet || t.areas == nil {
				t.areas = map[string]int{}
			}
			t.areas[strings.Clone(text)] = is
		}
		switch is {
		case wording.IsSum:
			r.Faults = append(r.Faults, t.Place.Fault(c.Heading(), celltext.Shorten(text), "a row of a piece",
				fmt.Sprintf("'%s' seems to be a total, and the row has the sizes of a piece; take the sizes out, or name the %s", celltext.Shorten(text), c.Heading())))
		case wording.IsSeveral:
			if r.Number[takeoff.Quantity] > 1 || c == takeoff.System && wording.NumberList.MatchString(text) { // they may be all of them
				continue
			}
			r.Faults = append(r.Faults, t.Place.Fault(c.Heading(), celltext.Shorten(text), "one "+c.Heading(),
				fmt.Sprintf("'%s' seems to name several, and the row may count for each; write a row for each, or how many under quantity", celltext.Shorten(text))))
		}
	}
}

// mostMet is how many names are remembered.
const mostMet = 4096

// doubtRow refuses a row that may not be what it seems: one struck out, a total with
// the sizes of a piece, or several pieces under one tag.
func (t *Reader) doubtRow(r *takeoff.Row) {
	if kind := r.Text[takeoff.Kind]; kind != "" && wording.DoubtfulKind(kind) {
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.Kind.Heading(), celltext.Shorten(kind), "a kind of piece",
			fmt.Sprintf("'%s' may be struck out or in doubt; write the kind by itself, or take the row out", celltext.Shorten(kind))))
	}
	t.doubtCells(r)
	if t.Loud {
		return
	}
	note, p := r.Text[takeoff.Note], r.Text[takeoff.PlaceOnSite]
	if note != "" || r.Has(throat) || !t.chunked || wording.MayCount(p) {
		t.doubtWords(r, note, p)
	}
	tag := r.Text[takeoff.Tag]
	if note == "" && wording.PlainTag(tag) {
		return // most rows
	}
	t.doubtName(r, tag, note)
}

// doubtName refuses a row whose tag or remark says that it doesn't count, is a total or
// stands for several.
func (t *Reader) doubtName(r *takeoff.Row, tag, note string) {
	switch {
	case tag != "" && (strings.HasPrefix(tag, "~~") || t.Lex.StruckWithin(tag) || t.Lex.Struck(tag) || t.Lex.StruckEnd(tag)):
		t.strike(r, takeoff.Tag.Heading(), tag)
	case note != "" && t.Lex.Struck(note):
		t.strike(r, takeoff.Note.Heading(), note)
	case tag != "" && (t.Lex.TotalName(tag) || len(tag) <= wording.MaxTitle && !strings.ContainsAny(tag[:1], "@=+-") && t.Lex.Total(tag)), note != "" && tag == "" && t.Lex.Total(note):
		word := tag
		if tag == "" {
			word = note
		}
		r.Faults = append(r.Faults, t.Place.Fault("", celltext.Shorten(word), "a piece, or a total without kind and size",
			fmt.Sprintf("'%s' seems to head a total, and the row has the kind and the size of a piece; leave them empty, or take the row out", celltext.Shorten(word))))
	case note != "" && t.saysOf(note)&wording.OfCounts != 0:
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.Note.Heading(), celltext.Shorten(note), "how many under quantity",
			fmt.Sprintf("'%s' seems to change how many there are; write how many under quantity, or reword it", celltext.Shorten(note))))
	case note != "" && r.Number[takeoff.Quantity] <= 1 && t.saysOf(note)&wording.OfMany != 0:
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.Note.Heading(), celltext.Shorten(note), "how many under quantity",
			fmt.Sprintf("'%s' seems to say how many there are, and the row counts for one; write how many under quantity, or reword it", celltext.Shorten(note))))
	case r.Number[takeoff.Quantity] <= 1 && !wording.PlainTag(tag) && (wording.SeveralTags(tag) || tag != "" && r.Text[takeoff.Quantity] == "" && wording.RangeOfNumbers(tag)):
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.Tag.Heading(), celltext.Shorten(tag), "one piece, or how many under quantity",
			fmt.Sprintf("'%s' seems to name several pieces, and the row counts for one; write how many under quantity, or a row for each", celltext.Shorten(tag))))
	}
}

// doubtWords looks at what else the words of a row say, and at a throat that is no radius.
func (t *Reader) doubtWords(r *takeoff.Row, note, p string) {
	if v := r.Number[throat]; v > 0 && v < leastThroat && r.Has(throat) {
		r.Faults = append(r.Faults, t.Place.Fault(throat.Heading(), r.Text[throat], "a radius in mm",
			fmt.Sprintf("a throat of %.4g mm is hardly made: if '%s' is a part of the width, write the radius in mm, else 0", v*1000, r.Text[throat])))
	}
	if note != "" && t.saysOf(note)&wording.OfSizes != 0 {
		t.Told.Add("remarks with sizes, units or lengths, which aren't read, the first '%s'", celltext.Shorten(note), r.At.Row)
	}
	if !t.chunked { // a chunk looks at each name once
		t.doubtAreas(r)
	}
	if wording.MayCount(p) && r.Number[takeoff.Quantity] <= 1 && wording.ManyAt.MatchString(p) {
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.PlaceOnSite.Heading(), celltext.Shorten(p), "how many under quantity",
			fmt.Sprintf("'%s' seems to say how many there are, and the row counts for one; write how many under quantity, or reword it", celltext.Shorten(p))))
	}
}

// throat is the column of inside radii.
var throat = takeoff.DimColumn(fittings.Throat)

// saysOf finds out what a remark says; most stand on many rows.
func (t *Reader) saysOf(note string) (of uint8) {
	if len(note) > maxRemark {
		return 0
	}
	of, met := t.remarks[note]
	if met {
		return of
	}
	of = wording.Remark(note)
	if t.remarks == nil || len(t.remarks) > mostMet {
		t.remarks = map[string]uint8{}
	}
	t.remarks[strings.Clone(note)] = of
	return of
}

// maxRemark is the length of a remark that is looked at for what it says, bytes.
const maxRemark = 200

// leastThroat is a throat that hardly any bend has but one of 0, m. Common practice, no
// source.
const leastThroat = 0.01

// doubtCells refuses a row with a cell that is struck out, sums up others, or is a
// count or a length merged over rows below it.
func (t *Reader) doubtCells(r *takeoff.Row) {
	used := func(i int) *columns.Spec {
		if i < len(t.Specs) && t.Specs[i].Used {
			return &t.Specs[i]
		}
		return nil
	}
	for _, i := range t.Marked.Struck {
		if s := used(i); s != nil {
			r.Faults = append(r.Faults, t.Place.Fault(s.Typed, "", "a row that counts",
				fmt.Sprintf("the cell of '%s' is struck out; take the row out, write out under scope, or take the line through it off", s.Typed)))
			break
		}
	}
	for _, i := range t.Marked.Sums {
		if s := used(i); s != nil && s.Measure != takeoff.Text {
			r.Faults = append(r.Faults, t.Place.Fault(s.Typed, "", "a figure of one row",
				fmt.Sprintf("the cell of '%s' is a subtotal by its formula, and the row has the kind of a piece; leave kind and size empty, or type the value", s.Typed)))
			break
		}
	}
	for _, i := range t.Marked.Over {
		if s := used(i); s != nil && s.Doubtful() {
			t.doubtMerged(r, s, r.Text[s.To()])
		}
	}
}
