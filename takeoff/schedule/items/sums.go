package items

import (
	"fmt"
	"math"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// lengthsSoFar are the lengths of the rows of a table, to find out whether the last one is
// that of all others together.
type lengthsSoFar struct {
	rows, tagged int
	each, all    float64 // sums of the lengths, and of those of all pieces, m
	last         struct {
		row         int
		length, all float64
		tagged, one bool
	}
}

var length = takeoff.DimColumn(fittings.Length)

// add takes in a row.
func (l *lengthsSoFar) add(r *takeoff.Row) {
	v, many := r.Number[length], 1.0
	if r.Has(takeoff.Quantity) {
		many = r.Number[takeoff.Quantity]
	}
	tagged := r.Text[takeoff.Tag] != ""
	if l.rows++; tagged {
		l.tagged++
	}
	l.each += v
	l.all += v * many
	l.last.row, l.last.length, l.last.all, l.last.tagged, l.last.one = r.At.Row, v, v*many, tagged, many == 1
}

// merge adds what was found further down.
func (l *lengthsSoFar) merge(below *lengthsSoFar) {
	if below.rows > 0 {
		l.last = below.last
	}
	l.rows, l.tagged, l.each, l.all = l.rows+below.rows, l.tagged+below.tagged, l.each+below.each, l.all+below.all
}

// How many rows there have to be above one that sums them up, and how long it is, m: where it
// is the only one without a tag, and where it isn't. Common practice, no source.
const (
	fewSummed, shortSum = 3, 3
	manySummed, longSum = 6, 6
)

// sumsUp reports that the last row is as long as all others together.
func (l *lengthsSoFar) sumsUp() bool {
	x, others := &l.last, l.rows-1
	untagged := !x.tagged && l.tagged == others && others >= fewSummed && x.length >= shortSum
	if !x.one || !untagged && (others < manySummed || x.length < longSum) {
		return false
	}
	return math.Abs(l.all-x.all-x.length) < 5e-4 || math.Abs(l.each-2*x.length) < 5e-4
}

// doubtLast finds fault with a last row that is as long as all others together.
func (t *Reader) doubtLast() {
	l := t.lengths
	t.lengths = lengthsSoFar{}
	if !l.sumsUp() {
		return
	}
	p := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: l.last.row}
	t.Found.Faults = append(t.Found.Faults, p.Fault(length.Heading(), fmt.Sprintf("%.4g m", l.last.length), "each piece once",
		fmt.Sprintf("the last row is as long as the %d rows above it together, so it may be their total; take it out, or write total before it", l.rows-1)))
}
