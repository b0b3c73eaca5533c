package items

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
)

// inMetres takes the quantity of a row for its length, where the column of units says so.
func (t *Reader) inMetres(r *takeoff.Row, s *columns.Spec, cell string, cells []string) bool {
	u, ok := wording.UnitWord(celltext.At(cells, t.UnitsAt))
	if t.LengthAt > 0 && celltext.At(cells, t.LengthAt) != "" { // it says how long
		return false
	}
	if !ok || u.Measure != takeoff.Lengths || u.Name != "m" && u != quantity.Foot || s.To() != takeoff.Quantity {
		return false
	}
	length := quantity.Column{Unit: u, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths), Least: columns.LeastSide, CommaFile: t.CommaFile, Decimal: t.Decimal}
	v, trouble := length.Number(cell)
	if trouble != "" {
		t.fault(r, s, cell, trouble)
		return true
	}
	c := takeoff.DimColumn(fittings.Length)
	r.Text[c] = cell
	r.SetNumber(c, v)
	r.Text[takeoff.Quantity] = "1"
	r.SetNumber(takeoff.Quantity, 1)
	t.metred, t.Moved = true, true
	t.Told.Add("quantities in "+u.Name+" in column '%s', taken for the length of a straight", s.Typed, t.Place.Row)
	return true
}

// inchesAlone takes a length whose feet are empty from the column of its inches. It reports
// whether there is one.
func (t *Reader) inchesAlone(r *takeoff.Row, cells []string) bool {
	at := t.Feet - 1
	if celltext.At(cells, at) != "" {
		return false
	}
	s := &t.Specs[at]
	cell := s.GoesOn("", cells, at)
	if cell != "" {
		t.take(r, s, cell)
	}
	return cell != ""
}

// doubtMetred refuses a row that is measured in metres and isn't a straight.
func (t *Reader) doubtMetred(r *takeoff.Row) {
	k, _, _, ok := fittings.ParseDescription(r.Text[takeoff.Kind])
	if ok && k != fittings.Straight && k != fittings.Flexible {
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.Quantity.Heading(), r.Text[takeoff.DimColumn(fittings.Length)], "how many pieces there are",
			fmt.Sprintf("a %s is counted in pieces, and the row counts it in metres; write how many there are, and its sizes", k)))
	}
}

// sizesByShape puts sizes where the shape or the kind of the row says that they belong.
func (t *Reader) sizesByShape(r *takeoff.Row) {
	wide, round := r.Has(columns.Own[0]), r.Has(columns.Own[2])
	switch {
	case wide && round || r.Has(columns.Own[1]) && round:
		t.dropZeros(r)
		if r.Has(columns.Own[0]) && r.Has(columns.Own[1]) && r.Has(columns.Own[2]) {
			t.otherEnd(r)
		}
	case wide && (!r.Has(columns.Own[1]) || r.Number[columns.Own[0]] == r.Number[columns.Own[1]]) && r.Text[columns.Own[2]] == "":
		t.roundByWidth(r)
	}
	if (wide || round) && (r.Has(columns.Second[0]) || r.Has(columns.Second[2])) {
		t.changeOfSize(r)
	}
}

// dropZeros takes a diameter of 0 beside sides, and sides of 0 beside a diameter, for
// nothing.
func (t *Reader) dropZeros(r *takeoff.Row) {
	zero := func(c takeoff.Column) bool { return r.Has(c) && r.Number[c] == 0 }
	sides, round := r.Number[columns.Own[0]] > 0 && r.Number[columns.Own[1]] > 0, r.Number[columns.Own[2]] > 0
	for i, c := range columns.Own {
		if zero(c) && (i == 2 && sides || i < 2 && round) {
			r.Unset(c)
			t.Told.Add("zeros beside the other sizes of a piece, taken for empty", "", r.At.Row)
		}
	}
}

// roundByWidth takes the width of a piece that is said to be circular for its diameter,
// where the height is empty or the same; and so one in a column of widths or diameters.
func (t *Reader) roundByWidth(r *takeoff.Row) {
	high := r.Text[columns.Own[1]] != ""
	if high && (!r.Has(columns.Own[1]) || !quantity.Same(r.Number[columns.Own[0]], r.Number[columns.Own[1]])) {
		return
	}
	round := t.OrDiameter && !high
	said := r.Text[takeoff.Shape]
	if said != "" && said == t.straightSided {
		return
	}
	if s, ok := fittings.ParseShape(said); ok {
		if round = s == fittings.Circular; !round {
			t.straightSided = said
		}
	} else if _, _, s, ok := fittings.ParseDescription(r.Text[takeoff.Kind]); ok && s == fittings.Circular {
		round = true
	}
	if !round {
		return
	}
	t.Moved = true
	text, v := r.Text[columns.Own[0]], r.Number[columns.Own[0]]
	r.Unset(columns.Own[0])
	r.Unset(columns.Own[1])
	r.Text[columns.Own[2]] = text
	r.SetNumber(columns.Own[2], v)
	t.Told.Add("widths of circular pieces, taken for their diameters", "", r.At.Row)
}

// otherEnd puts the diameter beside the sides of a transition, or the sides beside its
// diameter, to its other end: Square to round.
func (t *Reader) otherEnd(r *takeoff.Row) {
	k, _, _, ok := fittings.ParseDescription(r.Text[takeoff.Kind])
	if !ok || k != fittings.Transition || r.Text[columns.Second[0]]+r.Text[columns.Second[1]]+r.Text[columns.Second[2]] != "" {
		return
	}
	at := t.KindColumn()
	if at < 0 || !described.RoundWord.MatchString(t.Specs[at].Last.From) { // it says nothing of its ends
		return
	}
	move := []int{2}
	if described.RoundWord.MatchString(celltext.FirstWord(t.Specs[at].Last.From)) {
		move = []int{0, 1}
	}
	t.Moved = true
	for _, i := range move {
		text, v := r.Text[columns.Own[i]], r.Number[columns.Own[i]]
		r.Unset(columns.Own[i])
		r.Text[columns.Second[i]] = text
		r.SetNumber(columns.Second[i], v)
	}
	t.Told.Add("transitions with sides and a diameter, read as those of their two ends", "", r.At.Row)
}

// changeOfSize takes a transition between two ends of one shape for a reducer, as many
// call it so.
func (t *Reader) changeOfSize(r *takeoff.Row) {
	if at := t.KindColumn(); at >= 0 && described.RoundWord.MatchString(t.Specs[at].Last.From) { // to round
		return
	}
	k, style, _, ok := fittings.ParseDescription(r.Text[takeoff.Kind])
	if !ok || k != fittings.Transition || style != fittings.NoStyle || r.Text[takeoff.Shape]+r.Text[takeoff.Shape2] != "" {
		return
	}
	sides := func(c [3]takeoff.Column) bool { return r.Has(c[0]) && r.Has(c[1]) && r.Text[c[2]] == "" }
	dia := func(c [3]takeoff.Column) bool { return r.Has(c[2]) && r.Text[c[0]]+r.Text[c[1]] == "" }
	if !(sides(columns.Own) && sides(columns.Second)) && !(dia(columns.Own) && dia(columns.Second)) {
		return
	}
	r.Text[takeoff.Kind] = fittings.Reducer.String()
	t.Told.Add("transitions between two ends of one shape, read as reducers", "", r.At.Row)
}

// roundSize writes a size of one figure as a diameter, where the row says that the piece
// is circular.
func (t *Reader) roundSize(r *takeoff.Row, cell string) string {
	if cell == "" || !celltext.Digit(cell[0]) || quantity.Combined(cell) || strings.Contains(cell, "/") && described.Slashed(cell) {
		return cell
	}
	s, ok := fittings.ParseShape(r.Text[takeoff.Shape])
	if !ok {
		kind := r.Text[takeoff.Kind]
		if kind == "" && t.NoKind { // a title says it
			kind = t.KindTold
		}
		_, _, s, ok = fittings.ParseDescription(kind)
	}
	if ok && s == fittings.Circular {
		return "Ø" + cell
	}
	return cell
}

// lengthLast puts the length that stands before a cross-section behind it: 1500x600x400 is
// 600x400x1500.
func lengthLast(cell string) (turned, trouble string) {
	at := strings.IndexFunc(cell, func(r rune) bool { return strings.ContainsRune("xX×*", r) })
	if at < 0 || !quantity.Combined(cell[at+1:]) && !strings.ContainsAny(cell[at+1:], "øØ⌀") {
		return "", "doesn't hold a length and a cross-section; write it as 1500x600x400 or 3000xØ315"
	}
	_, sign := utf8.DecodeRuneInString(cell[at:])
	return celltext.Trim(cell[at+sign:]) + "x" + celltext.Trim(cell[:at]), ""
}

// shareLength gives a row the length of each of its pieces, of that of all together.
func (t *Reader) shareLength(r *takeoff.Row) {
	c := takeoff.DimColumn(fittings.Length)
	if n := r.Number[takeoff.Quantity]; r.Has(c) && r.Has(takeoff.Quantity) && n > 1 {
		r.SetNumber(c, r.Number[c]/n)
	}
}

// longOrder says in which order a column gives sizes with a length.
func longOrder(s *columns.Spec) string {
	if s.Foremost {
		return "cells of column '%s' are read as length x width x height"
	}
	return "cells of column '%s' are read as width x height x length"
}
