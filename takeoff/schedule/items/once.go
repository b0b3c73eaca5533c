package items

import (
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/quantity"
)

// onceSum is what the rows come to that stand below a kind, itself included.
type onceSum struct {
	rows, pieces  int
	length, total float64 // of one of each row, and of all, m
	size          [3]float64
}

// add adds a row.
func (o *onceSum) add(r *takeoff.Row) {
	n, length := pieces(r), r.Number[takeoff.DimColumn(fittings.Length)]
	o.rows, o.pieces, o.length, o.total = o.rows+1, o.pieces+n, o.length+length, o.total+float64(n)*length
	for i, c := range columns.Own {
		o.size[i] = r.Number[c]
	}
}

// sums reports a row of the size above it that may sum up those above: it has as many pieces
// as they have, and their length.
func (o *onceSum) sums(r *takeoff.Row) bool {
	for i, c := range columns.Own {
		if r.Number[c] != o.size[i] {
			return false
		}
	}
	length := r.Number[takeoff.DimColumn(fittings.Length)]
	return o.rows > 1 && pieces(r) == o.pieces && (quantity.Same(length, o.length) || quantity.Same(length, o.total))
}

// kindOnce reads a row of a table whose kinds stand once above their rows.
func (t *Reader) kindOnce(r *takeoff.Row) {
	if r.Text[takeoff.Kind] == "" {
		t.kindBelow(r)
		return
	}
	t.onceSum = onceSum{}
	t.onceSum.add(r)
}

// kindBelow gives a whole row without a kind that of the straight above it, where kinds stand
// once above their rows.
func (t *Reader) kindBelow(r *takeoff.Row) {
	at := t.KindColumn()
	if t.kindLast == "" || at < 0 {
		t.Unsure = t.Unsure || t.chunked
		return
	}
	s := &t.Specs[at]
	w, _, more := strings.Cut(t.Kinds().Translate(takeoff.Kind, t.kindLast), described.BesideMark)
	kind, _, _, _ := fittings.ParseDescription(w)
	if more || kind != fittings.Straight || !t.whole(r) || t.fitted != "" || t.onceSum.sums(r) {
		return
	}
	t.onceSum.add(r)
	r.Text[takeoff.Kind] = t.word(s, t.kindLast)
	t.KindAbove = t.kindNow
	t.Told.Add("kinds that stand once above their rows, taken for the straights below, the first '%s'", celltext.Shorten(t.kindLast), r.At.Row)
}
