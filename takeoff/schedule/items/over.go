package items

import (
	"maps"
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/told"
)

// SubHeadings are the sub-headings that hold for the rows below them.
type SubHeadings struct {
	Text  [2]string // system, level
	Outer int       // which of the two was met first; 0 none, else its place + 1
	rows  [2]int
	Sheet [2]string // what the name of the sheet gives, where no sub-heading does
	named [2]int    // rows that take it
	Met   bool
	Doubt Doubt // of the rows below
	Named uint8 // lines so far that name the rows below them, or end those above
}

// apply gives a row what the sub-headings above it say, where it says nothing
// itself.
func (o *SubHeadings) apply(r *takeoff.Row) {
	r.Named = o.Named
	if d := o.Doubt; d.Said != "" {
		r.Faults = append(r.Faults, r.At.Fault("", d.Said, d.Expected, d.Message))
	}
	if !o.Met {
		return
	}
	for i, c := range SubColumns {
		switch {
		case r.Text[c] != "":
		case o.Text[i] != "":
			r.Text[c] = o.Text[i]
			o.rows[i]++
		case o.Sheet[i] != "":
			r.Text[c] = o.Sheet[i]
			o.named[i]++
		}
	}
}

// Doubt is why rows can't be used because of a line above them: what it says, what is expected
// and a message.
type Doubt struct{ Said, Expected, Message string }

// SubColumns are the columns that sub-headings give.
var SubColumns = [2]takeoff.Column{takeoff.System, takeoff.Level}

// Separate makes a reader that was copied one of its own: it shares nothing with the other
// that either writes to.
func (t *Reader) Separate() {
	t.Specs = slices.Clone(t.Specs)
	for i := range t.Specs {
		t.Specs[i].Words, t.Specs[i].Count = maps.Clone(t.Specs[i].Words), map[string]int{}
	}
	t.named = slices.Clone(t.named)
	for i := range t.named {
		t.named[i].met = nil
	}
	t.Pending, t.strays, t.bare, t.remarks, t.others, t.fits = nil, nil, nil, nil, nil, nil
	t.InKind.Anew()
}

// Again makes a reader ready for a chunk of rows, with what s knows above them. What it finds
// goes to found.
func (t *Reader) Again(s *Reader, found *told.Findings) {
	for i := range t.Specs {
		clear(t.Specs[i].Count)
		t.Specs[i].Own = s.Specs[i].Own
		w := &t.Specs[i].Watch
		w.Counts, w.Filled, w.Most, w.Least, w.Gaps, w.Others, w.Struck = s.Specs[i].Watch.Counts, 0, 0, 1000, false, 0, 0
	}
	t.lengths = lengthsSoFar{}
	t.moved, t.both = moved{at: s.moved.at}, both{may: s.both.may}
	t.watched, t.Long, t.uneven, t.NewUnit, t.tallies = 0, 0, false, false, quantified{}
	t.Found, t.Look, t.Told, t.stray = found, &told.Sheet{}, nil, append(t.stray[:0:0], s.stray...)
	t.InSummary, t.chunked = s.InSummary, true
	t.rowBefore, t.noteAt, t.Unsure = 0, 0, false
	t.Legend, t.Signed = s.Legend, 0
	t.InNotes, t.shape, t.KindTold, t.KindSays, t.Straights = s.InNotes, s.shape, s.KindTold, s.KindSays, s.Straights
	t.KindAbove, t.Once = "", s.Once
	t.Over = s.Over
	t.Over.rows = [2]int{}
}

// Merge adds what was found in a chunk of so many rows below.
func (t *Reader) Merge(below *Reader, rows int) {
	if t.watched += below.watched; rows > 0 {
		t.InNotes, t.InSummary, t.KindAbove = below.InNotes, below.InSummary, below.KindAbove
		t.rowBefore, t.noteAt, t.onceSum = below.rowBefore, below.noteAt, below.onceSum
	}
	t.tallies.merge(below.tallies)
	t.lengths.merge(&below.lengths)
	t.moved.merge(&below.moved)
	t.both.merge(&below.both)
	if t.Signed == 0 {
		t.Signed = below.Signed
	}
	if below.uneven && !t.uneven {
		t.evened()
	}
	t.Told.Merge(below.Told)
	for i := range t.Over.rows {
		t.Over.rows[i] += below.Over.rows[i]
	}
	for i := range below.Specs {
		from, to := &below.Specs[i], &t.Specs[i]
		to.Watch.Merge(&from.Watch)
		for w, count := range from.Count {
			to.Count[w] += count
			to.Words[w] = from.Words[w]
		}
	}
}

// NoteCounts tells what was counted so far.
func (t *Reader) NoteCounts() {
	t.noteWords()
	for _, x := range t.Told {
		t.Note("%s", x)
	}
	t.Told = nil
	for i, c := range SubColumns {
		if n := t.Over.rows[i]; n > 0 {
			t.Note("the %s of %s is taken from sub-headings", c.Heading(), told.Plural(n, "row"))
		}
	}
	for i, c := range SubColumns {
		if n := t.Over.named[i]; n > 0 {
			t.Note("the %s of %s is taken from the name of the sheet", c.Heading(), told.Plural(n, "row"))
		}
	}
	t.Over.rows, t.Over.named = [2]int{}, [2]int{}
}

// ofLevels reports a heading with a word for a level behind another: from level, till plan.
func (t *Reader) ofLevels(typed string) bool {
	words := headings.Tokens(typed)
	if len(words) < 2 {
		return false
	}
	places, _ := t.Lex.Place(words[len(words)-1] + " 1")
	return len(places) == 1 && places[0] == "level" && !t.Lex.Counts(words[0])
}
