package items

import (
	"fmt"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/answered"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/schedule/wording"
)

// Doubts is what a reader keeps to find out what may not be what it seems.
type Doubts struct {
	Extra        columns.Spec            // of the column behind the last heading
	InNotes      bool                    // only notes since the last row of pieces
	counted      bool                    // a column says how many there are
	Commas       bool                    // they are parted by commas, and so may decimals be
	Legend       Legend                  // of signs in rows
	Signed       int                     // the first row with a sign in its tag; 0: none
	remarks      map[string]wording.Said // what remarks say
	areas        map[string]areaName     // what names of systems and levels are; of rows read one by one
	named        []named                 // columns of other names
	rowBefore    int                     // that was read; 0: not known
	noteAt       int                     // the last row whose remark was found fault with
	InSummary    bool                    // they sum up the pieces
	lengthFilled bool                    // a length stands in the row, in a column of its own beside units
	even         bool                    // rows of the file have a cell for each heading
	cells        int                     // so many the row has
	numbered     string                  // a plain tag
}

// Settle completes a row whose cells have been read.
func (t *Reader) Settle(r *takeoff.Row, broken string) {
	t.kindLast = t.KindAbove
	if t.KindAbove = t.kindNow; t.Loud {
		t.KindAbove = ""
	}
	if t.InNotes = false; t.InSummary {
		r.Faults = append(r.Faults, t.Place.Fault("", "", "a row of a piece",
			"this row stands below a line that begins a summary, and may sum up pieces above; take it out, or put headings above it if it is a piece of its own"))
	}
	beside := len(t.Pending) > 0 && t.InKind.has(t.Pending[0].Spec)
	t.complete(r)
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
		t.doubtNone(r)
		t.tallies.add(r)
	}
	if !t.Loud {
		t.seeAll(r)
	}
	if t.watched++; broken == "" && t.even && t.cells < len(t.Specs) && t.cells > 1 {
		t.tellShort(r)
	}
	r.Assumed = (t.Assumed || beside) && !t.unitInCells(r)
	t.Over.apply(r)
	t.rowBefore = r.At.Row
	if len(r.Faults) > 0 {
		t.nameRemarks(r)
	}
}

// complete fills in what cells of the row say besides, and what no cell says.
func (t *Reader) complete(r *takeoff.Row) {
	if len(t.Pending) > 0 {
		t.takeSizes(r)
	}
	if t.turn.angle != "" {
		t.takeAngle(r)
	}
	if r.Text[takeoff.Style] != "" {
		t.reducerStyle(r)
	}
	if t.InKind.row.Spec != nil {
		t.takeBeside(r)
	}
	if t.OfAll {
		t.shareLength(r)
	}
	if t.NoKind {
		t.nameKind(r)
	} else if t.Once {
		t.kindOnce(r)
	}
	t.sizesByShape(r)
}

// nameRemarks names the column of remarks in faults as it is typed.
func (t *Reader) nameRemarks(r *takeoff.Row) {
	for i := range r.Faults {
		for k := range t.Specs {
			if s := &t.Specs[k]; r.Faults[i].Heading == takeoff.Note.Heading() && s.Used && s.Verdict == headings.Known && s.To() == takeoff.Note {
				r.Faults[i].Heading = s.Typed
			}
		}
	}
}

// doubtRow refuses a row that may not be what it seems: one struck out, a total with
// the sizes of a piece, or several pieces under one tag.
func (t *Reader) doubtRow(r *takeoff.Row) {
	if kind := r.Text[takeoff.Kind]; kind != "" && wording.DoubtfulKind(kind) {
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.Kind.Heading(), celltext.Shorten(kind), "a kind of piece",
			fmt.Sprintf("'%s' may be struck out or in doubt; write the kind by itself, or take the row out", celltext.Shorten(kind))))
	}
	if m := &t.Marked; m.Paint.Unseen || len(m.Struck)+len(m.Sums)+len(m.Over) > 0 {
		t.doubtCells(r)
	}
	if len(t.Marked.Comments) > 0 {
		t.doubtComments(r)
	}
	if t.Loud {
		return
	}
	note, p := r.Text[takeoff.Note], r.Text[takeoff.PlaceOnSite]
	if note != "" || r.Has(throat) || !t.chunked || wording.MayCount(p) {
		t.doubtWords(r, note, p)
	}
	tag := r.Text[takeoff.Tag]
	if t.Legend.Sign != "" {
		t.doubtSigned(r)
	}
	if len(t.named) > 0 {
		t.doubtNamed(r)
	}
	if t.total.cell != "" {
		t.doubtTotal(r)
	}
	if t.again.cell != "" {
		t.doubtAgain(r)
	}
	if len(t.others) > 0 {
		t.doubtOthers(r)
	}
	if note == "" && t.plainTag(tag) {
		return // most rows
	}
	if !t.doubtTag(r, tag) && note != "" {
		t.doubtNote(r, note)
	}
}

// doubtWords looks at what else the words of a row say, and at a throat that is no radius.
func (t *Reader) doubtWords(r *takeoff.Row, note, p string) {
	if v := r.Number[throat]; v > 0 && v < leastThroat && r.Has(throat) {
		r.Faults = append(r.Faults, t.Place.Fault(throat.Heading(), r.Text[throat], "a radius in mm",
			fmt.Sprintf("a throat of %.4g mm is hardly made: if '%s' is a part of the width, write the radius in mm, else 0", v*1000, r.Text[throat])))
	}
	if note != "" {
		t.tellRemark(r, note)
	}
	if !t.chunked { // a chunk looks at each name once
		t.doubtAreas(r)
	}
	if wording.MayCount(p) {
		if times, many := wording.TimesAt(p); many && !counted(r, times) {
			t.doubtCount(r, takeoff.PlaceOnSite.Heading(), p, "how many under quantity", "seems to say how many there are, and the row counts for %s; write how many under quantity, or reword it")
		}
	}
}

// throat is the column of inside radii.
var throat = takeoff.DimColumn(fittings.Throat)

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
	if t.Marked.Paint.Unseen && r.Text[takeoff.Kind] != "" {
		r.Faults = append(r.Faults, t.Place.Fault("", "", "a row that can be seen",
			"the row is written in the colour of its background, so nobody sees it; take it out, or give it a colour"))
	}
	for _, i := range t.Marked.Sums {
		if s := used(i); s != nil && s.Measure != takeoff.Text && !t.Loud {
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

// Legend is a line above the headings that says something of rows with a sign.
type Legend struct{ Sign, Said string }

// doubtSigned refuses a row with a sign of which a line above says something.
func (t *Reader) doubtSigned(r *takeoff.Row) {
	for _, x := range [...]struct {
		takeoff.Column
		cell string
	}{{takeoff.Tag, r.Text[takeoff.Tag]}, {takeoff.Kind, t.kindNow}, {takeoff.Note, r.Text[takeoff.Note]}} {
		if !answered.HasSign(x.cell, t.Legend.Sign) {
			continue
		}
		short, said := celltext.Shorten(x.cell), celltext.Shorten(t.Legend.Said)
		r.Faults = append(r.Faults, t.Place.Fault(x.Heading(), short, "a row that counts",
			fmt.Sprintf("'%s' has a %s, of which '%s' says something; if the row doesn't count take it out, or write out under scope, else take the %s off", short, t.Legend.Sign, said, t.Legend.Sign)))
		return
	}
}

// says refuses a row for what a cell says of it in a column that isn't used.
func (t *Reader) says(r *takeoff.Row, s *columns.Spec, at int, cell string) {
	name, short := nameAt(s, at), celltext.Shorten(cell)
	expected, trouble := "a row that counts", ""
	switch s.Watch.Keeps {
	case "answered":
		trouble = "may say that the row doesn't count; take the row out, or write out under scope; take the column out if it says something else"
	case "altered":
		expected, trouble = "how many under quantity", "may change how many there are; write how many in all under quantity, and take the column out"
	case "added":
		expected, trouble = "each size as it is", "may come on top of a size or a count, or go off it; write what comes out, and take the column out"
	case "times":
		expected, trouble = "how many under quantity", "may say that there are more or less than the row counts; write how many under quantity, and take the column out"
	case "replaces":
		expected, trouble = "rows that count", "may say that the row takes the place of another; take out what doesn't count any more, and the column"
	default:
		t.strike(r, s.Typed, cell)
		return
	}
	r.Faults = append(r.Faults, t.Place.Fault(name, short, expected, fmt.Sprintf("'%s' in '%s' %s", short, name, trouble)))
}

// nameAt is the heading of a column, or its letter.
func nameAt(s *columns.Spec, at int) string {
	if s.Typed == "" {
		return "column " + mapping.Letter(at)
	}
	return s.Typed
}
