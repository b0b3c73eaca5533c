package schedule

import (
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// sizesByShape puts sizes where the shape or the kind of the row says that they belong.
func (t *table) sizesByShape(r *takeoff.Row) {
	own := dims(headings.OwnSize)
	t.dropZeros(r)
	if r.Has(own[0]) && !r.Has(own[2]) && r.Text[own[2]] == "" {
		t.roundByWidth(r, own)
	}
	if r.Has(own[0]) && r.Has(own[1]) && r.Has(own[2]) {
		t.otherEnd(r, own)
	}
}

// dropZeros takes a diameter of 0 beside sides, and sides of 0 beside a diameter, for
// nothing.
func (t *table) dropZeros(r *takeoff.Row) {
	own := dims(headings.OwnSize)
	zero := func(c takeoff.Column) bool { return r.Has(c) && r.Number[c] == 0 }
	sides, round := r.Number[own[0]] > 0 && r.Number[own[1]] > 0, r.Number[own[2]] > 0
	for i, c := range own {
		if zero(c) && (i == 2 && sides || i < 2 && round) {
			r.Unset(c)
			t.told.add("zeros beside the other sizes of a piece, taken for empty", "", r.At.Row)
		}
	}
}

// roundByWidth takes the width of a piece that is said to be circular for its diameter,
// where the height is empty or the same; and so one in a column of widths or diameters.
func (t *table) roundByWidth(r *takeoff.Row, own [3]takeoff.Column) {
	high := r.Text[own[1]] != ""
	if high && (!r.Has(own[1]) || !quantity.Same(r.Number[own[0]], r.Number[own[1]])) {
		return
	}
	round := t.orDiameter && !high
	if s, ok := fittings.ParseShape(r.Text[takeoff.Shape]); ok {
		round = s == fittings.Circular
	} else if _, _, s, ok := fittings.ParseDescription(r.Text[takeoff.Kind]); ok && s == fittings.Circular {
		round = true
	}
	if !round {
		return
	}
	text, v := r.Text[own[0]], r.Number[own[0]]
	r.Unset(own[0])
	r.Unset(own[1])
	r.Text[own[2]] = text
	r.SetNumber(own[2], v)
	t.told.add("widths of circular pieces, taken for their diameters", "", r.At.Row)
}

// otherEnd puts the diameter beside the sides of a transition, or the sides beside its
// diameter, to its other end: Square to round.
func (t *table) otherEnd(r *takeoff.Row, own [3]takeoff.Column) {
	k, _, _, ok := fittings.ParseDescription(r.Text[takeoff.Kind])
	second := dims(headings.SecondSize)
	if !ok || k != fittings.Transition || r.Text[second[0]]+r.Text[second[1]]+r.Text[second[2]] != "" {
		return
	}
	move := []int{2}
	for i := range t.specs {
		if s := &t.specs[i]; s.used && s.to() == takeoff.Kind && roundWord.MatchString(firstWord(s.last.from)) {
			move = []int{0, 1}
		}
	}
	for _, i := range move {
		text, v := r.Text[own[i]], r.Number[own[i]]
		r.Unset(own[i])
		r.Text[second[i]] = text
		r.SetNumber(second[i], v)
	}
	t.told.add("transitions with sides and a diameter, read as those of their two ends", "", r.At.Row)
}

func firstWord(s string) string {
	word, _, _ := strings.Cut(s, " ")
	return word
}

// roundSize writes a size of one figure as a diameter, where the row says that the piece
// is circular.
func roundSize(r *takeoff.Row, cell string) string {
	if cell == "" || !digit(cell[0]) || quantity.Combined(cell) {
		return cell
	}
	s, ok := fittings.ParseShape(r.Text[takeoff.Shape])
	if !ok {
		_, _, s, ok = fittings.ParseDescription(r.Text[takeoff.Kind])
	}
	if ok && s == fittings.Circular {
		return "Ø" + cell
	}
	return cell
}
