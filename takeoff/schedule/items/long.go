package items

import (
	"strings"
	"unicode/utf8"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/quantity"
)

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
