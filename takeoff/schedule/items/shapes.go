package items

import (
	"fmt"
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// shapeTold is the shape that something else than a cell of the row gives its pieces.
type shapeTold struct {
	told        bool   // anything
	axes        bool   // the headings are of major and minor axes
	oval, round string // what says so
}

// TellShape finds out what is said of the shape of all pieces where no column is.
func (t *Reader) TellShape() {
	t.shape = shapeTold{}
	if t.Maps(takeoff.Shape) {
		return
	}
	named := func(word string, d fittings.Dim) bool {
		return slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
			return s.Used && s.Verdict == headings.Known && s.To() == takeoff.DimColumn(d) && slices.Contains(headings.Tokens(s.Typed), word)
		})
	}
	t.shape.axes = named("major", fittings.Width) && named("minor", fittings.Height)
	texts := []string{t.Place.Sheet}
	for _, x := range t.Search.Texts {
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
func (t *Reader) doubtShape(r *takeoff.Row) {
	if r.Text[takeoff.Shape] != "" || r.Text[columns.Own[0]] == "" || r.Text[columns.Own[1]] == "" || r.Text[columns.Own[2]] != "" {
		return
	}
	if _, _, shape, ok := fittings.ParseDescription(r.Text[takeoff.Kind]); !ok || shape != fittings.NoShape {
		return
	}
	said := t.shape.oval + t.shape.round
	switch note := r.Text[takeoff.Note]; {
	case t.shape.axes:
		r.Text[takeoff.Shape] = fittings.FlatOval.String()
		t.Told.Add("rows of a major and a minor axis, read as flat oval", "", r.At.Row)
		return
	case note != "" && len(note) <= maxRemark && (wording.OvalWord.MatchString(note) || saysRound(r, note)):
		said = celltext.Shorten(note)
	}
	if said != "" {
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.Shape.Heading(), "", "the shape of the piece",
			fmt.Sprintf("'%s' seems to say that it isn't rectangular, and nothing in the row does; write the shape in a column, or behind the size", said)))
	}
}

// saysRound reports a remark that calls a piece of sides round. A diameter may be that of
// something in it, where the sides aren't alike.
func saysRound(r *takeoff.Row, note string) bool {
	if !wording.RoundNote.MatchString(note) {
		return false
	}
	k, _, _, _ := fittings.ParseDescription(r.Text[takeoff.Kind])
	return r.Number[columns.Own[0]] == r.Number[columns.Own[1]] || k != fittings.Transition && !celltext.Digit(note[len(note)-1])
}
