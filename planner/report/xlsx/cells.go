package xlsx

import (
	"math"
	"strings"

	"blankoff/planner/report/show"
)

// permitted is a limit: its cell holds the value cut off, with as many decimals.
type permitted float64

// rounded is a number shown in another way than its column's.
type rounded struct {
	v    float64
	kind kind
}

// bold is a text that a reader must look at. A row whose first cell is a start
// has a rule above it; one whose first cell is a total is bold and stands outside
// the filter.
type (
	bold  string
	start string
	total string
)

// freely is a text over the cells beside it, headed a heading inside a sheet, and
// as a value of another kind than its column's.
type (
	freely string
	headed string
	as     struct {
		v    any
		kind kind
	}
)

// given is a number shown with the digits that it has.
type given float64

// formula is a cell that follows others: how, and its value now. An empty one
// only holds its value.
type formula struct {
	text string
	now  any
}

// input is a cell that may be changed.
type input struct{ v any }

// byHand is a cell to be filled in by hand on paper.
type byHand struct{}

// cell is what goes into one cell.
type cell struct {
	v       any
	style   int
	formula string
	open    int // 1: it may be changed
}

// read unwraps what a row was given for a cell, and turns it to the units of the
// book.
func (b *book) read(v any, style int) cell {
	switch v := v.(type) {
	case input:
		c := b.read(v.v, style)
		c.open = 1
		return c
	case formula:
		c := b.read(v.now, style)
		c.formula = v.text
		return c
	case permitted:
		return cell{v: cutOff(b.units, float64(v)), style: int(flows)}
	}
	c := cell{}
	c.v, c.style = b.turned(valueOf(v, style))
	return c
}

// valueOf is what a cell holds, and its style where the value asks for another.
func valueOf(v any, style int) (any, int) {
	switch v := v.(type) {
	case rounded:
		return v.v, left0 + int(v.kind)
	case freely:
		w, _ := valueOf(string(v), int(free))
		return w, int(free)
	case headed:
		return oneLine(string(v)), heading
	case as:
		w, _ := valueOf(v.v, int(v.kind))
		return w, int(v.kind)
	case given:
		return float64(v), int(plain)
	case bold:
		return valueOf(string(v), int(ticked))
	case start:
		return valueOf(string(v), int(ticked))
	case total:
		return valueOf(string(v), int(ticked))
	case float64:
		if math.IsInf(v, 0) || math.IsNaN(v) {
			return nil, style
		}
	case string:
		switch v = oneLine(v); {
		case v == "":
			return nil, style
		case !strings.ContainsRune("=+-@", rune(v[0])):
		case style == int(line), style == int(free):
			return v, int(typedLine)
		case style != heading:
			return v, int(typed)
		}
		return v, style
	}
	return v, style
}

// oneLine makes a text of a schedule safe for a cell.
func oneLine(s string) string { return strings.Join(strings.Fields(show.Safe(s)), " ") }
