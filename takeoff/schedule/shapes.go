package schedule

import (
	"fmt"
	"regexp"
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// Words for shapes in lines above the headings, in names of sheets and in remarks, in
// seven languages (from memory, unverified).
var (
	ovalWord  = regexp.MustCompile(`(?i)\b(?:flat[\s-]*)?oval(?:e|i|es|er|rohre?|kan[aä]le?|e kanaler)?\b|\bflachoval`)
	roundWord = regexp.MustCompile(`(?i)\b(?:round|circular|circulaires?|circolari?|circulares?|spiral(?:ly)?|spiro\w*|rund\w*|ronde?|wickelfalz\w*)\b`)
	roundNote = regexp.MustCompile(`(?i)^\s*(?:round|circular|spiral|circulaire|rund|rond|redondo|tondo|cirkulär|[øØ⌀]\s*\d+)(?:\s*(?:duct|kanal|gaine|kanaal|rohr|conducto|canale))?\s*$`)
	rectWord  = regexp.MustCompile(`(?i)\b(?:rect\w*|rechteck\w*|rechthoekig\w*|rektangul\w*|rettangol\w*|square)\b`)
)

// shapeTold is the shape that something else than a cell of the row gives its pieces.
type shapeTold struct {
	told        bool   // anything
	axes        bool   // the headings are of major and minor axes
	oval, round string // what says so
}

// tellShape finds out what is said of the shape of all pieces where no column is.
func (t *table) tellShape() {
	t.shape = shapeTold{}
	if t.maps(takeoff.Shape) {
		return
	}
	named := func(word string, d fittings.Dim) bool {
		return slices.ContainsFunc(t.specs, func(s spec) bool {
			return s.used && s.Verdict == headings.Known && s.to() == takeoff.DimColumn(d) && slices.Contains(headings.Tokens(s.Typed), word)
		})
	}
	t.shape.axes = named("major", fittings.Width) && named("minor", fittings.Height)
	texts := []string{t.place.Sheet}
	for _, x := range t.search.texts {
		texts = append(texts, x.text)
	}
	for _, text := range texts {
		oval, round := ovalWord.MatchString(text), roundWord.MatchString(text)
		switch {
		case rectWord.MatchString(text) || oval && round:
			t.shape.oval, t.shape.round = "", ""
		case oval:
			t.shape.oval, t.shape.round = shorten(text), ""
		case round:
			t.shape.oval, t.shape.round = "", shorten(text)
		}
	}
	t.shape.told = t.shape.axes || t.shape.oval+t.shape.round != ""
}

// doubtShape gives a row the shape that its headings say, or refuses it where
// something says another than it would be taken for.
func (t *table) doubtShape(r *takeoff.Row) {
	if r.Text[takeoff.Shape] != "" || r.Text[own[0]] == "" || r.Text[own[1]] == "" || r.Text[own[2]] != "" {
		return
	}
	if _, _, shape, ok := fittings.ParseDescription(r.Text[takeoff.Kind]); !ok || shape != fittings.NoShape {
		return
	}
	said := t.shape.oval + t.shape.round
	switch note := r.Text[takeoff.Note]; {
	case t.shape.axes:
		r.Text[takeoff.Shape] = fittings.FlatOval.String()
		t.told.add("rows of a major and a minor axis, read as flat oval", "", r.At.Row)
		return
	case note != "" && len(note) <= maxRemark && (ovalWord.MatchString(note) || roundNote.MatchString(note) && r.Number[own[0]] == r.Number[own[1]]):
		said = shorten(note)
	}
	if said != "" {
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Shape.Heading(), "", "the shape of the piece",
			fmt.Sprintf("'%s' seems to say that it isn't rectangular, and nothing in the row does; write the shape in a column, or behind the size", said)))
	}
}
