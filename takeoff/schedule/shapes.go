package schedule

import (
	"fmt"
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
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
	for _, x := range t.search.Texts {
		texts = append(texts, x.Text)
	}
	for _, text := range texts {
		oval, round := wording.OvalWord.MatchString(text), wording.RoundWord.MatchString(text)
		switch {
		case wording.RectWord.MatchString(text) || oval && round:
			t.shape.oval, t.shape.round = "", ""
		case oval:
			t.shape.oval, t.shape.round = celltext.Shorten(text), ""
		case round:
			t.shape.oval, t.shape.round = "", celltext.Shorten(text)
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
		t.told.Add("rows of a major and a minor axis, read as flat oval", "", r.At.Row)
		return
	case note != "" && len(note) <= maxRemark && (wording.OvalWord.MatchString(note) || wording.RoundNote.MatchString(note) && r.Number[own[0]] == r.Number[own[1]]):
		said = celltext.Shorten(note)
	}
	if said != "" {
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Shape.Heading(), "", "the shape of the piece",
			fmt.Sprintf("'%s' seems to say that it isn't rectangular, and nothing in the row does; write the shape in a column, or behind the size", said)))
	}
}
