package xlsx

import (
	"strconv"
	"strings"

	"blankoff/planner/report/live"
	"blankoff/planner/units"
)

// The workbook is laid out in SI, and its headings are known by their names
// there. What is written is turned to the units of the view: a figure by the kind
// of its cell, a heading by that of its column. Formulas are over cells that hold
// figures in those units.

// quantities are what the cells of a kind hold. Sizes are in mm here, as the
// columns of a schedule have them.
var quantities = func() (all [numKinds]struct {
	q    units.Quantity
	like kind // whose look it has
	has  bool
}) {
	for k := range all {
		all[k].like = kind(k)
	}
	for _, x := range []struct {
		k, like kind
		q       units.Quantity
	}{
		{squareM, squareM, units.Area}, {squareM2, hundred, units.Area}, {squareMFull, full, units.Area}, {squareMPlain, plain, units.Area},
		{metres, metres, units.Length}, {metres2, hundred, units.Length}, {newtons, newtons, units.Force}, {pascals, pascals, units.Pressure},
		{flows, flows, units.Flow}, {flowsFull, full, units.Flow}, {perM2, full, units.PerArea}, {millimetres, millimetres, units.Size},
	} {
		all[x.k].q, all[x.k].like, all[x.k].has = x.q, x.like, true
	}
	all[sized].like = words
	return all
}()

// numberFormatsUS are those of figures in US units, with the decimals that
// [units.System.Decimals] says.
var numberFormatsUS = map[kind]string{
	squareM: `[>=100]0.0" ft2";0.00" ft2"`, metres: `0.00" ft"`, newtons: `[<100]0.0" lbf";0" lbf"`,
	pascals: `[>=0.1]0.000" in. w.g.";[>0]0.0000" in. w.g.";0" in. w.g."`, flows: `[>=1]0.00" cfm";0.000#" cfm"`, millimetres: `0.00##" in"`,
}

// least is how wide a column has to be for figures of its kind in US units.
var least = map[kind]float64{pascals: 11, sized: 15, millimetres: 11}

// width is that of a column.
func (b *book) width(c column) float64 {
	if b.units == units.US {
		return max(c.width, least[c.kind])
	}
	return c.width
}

// format is the number format of a kind.
func (b *book) format(k kind) string {
	if text, ok := numberFormatsUS[k]; ok && b.units == units.US {
		return text
	}
	return numberFormats[k]
}

// turned turns a figure of SI in a cell of a style to the units of the book, and
// gives the style that it is written with.
func (b *book) turned(v any, style int) (any, int) {
	k, at := style, 0
	if style >= left0 {
		k, at = style-left0, left0
	}
	if k >= int(numKinds) {
		return v, style
	}
	is := &quantities[k]
	if x, ok := v.(float64); ok && is.has {
		v = turn(b.units, is.q, x)
	}
	return v, at + int(is.like)
}

// turn turns a figure of SI, a size in mm, and cuts the noise of turning it.
func turn(u units.System, q units.Quantity, v float64) float64 {
	switch {
	case u == units.SI:
		return v
	case q == units.Size:
		v /= 1000
	}
	return u.Turn(q, v)
}

// cutOff is a limit cut off at its decimals, as a number.
func cutOff(u units.System, ls float64) float64 {
	if v, err := strconv.ParseFloat(u.Cut(units.Flow, ls), 64); err == nil {
		return v
	}
	return ls
}

// headIn is the heading of a column in these units.
func (c column) headIn(u units.System) string {
	if is := &quantities[c.kind]; is.has {
		return headIn(u, is.q, c.head)
	}
	return c.head
}

// headIn turns the unit in a heading of SI: a word of it, or its ending, as in
// width_mm.
func headIn(u units.System, q units.Quantity, head string) string {
	if u == units.SI {
		return head
	}
	for _, after := range []string{" ", ","} {
		if before, rest, ok := strings.Cut(" "+head+" ", " "+units.SI.Unit(q)+after); ok {
			text := before + " " + u.Unit(q) + after + rest
			return text[1 : len(text)-1]
		}
	}
	return u.Rename(head)
}

// figure writes a figure of SI for a formula.
func (l *links) figure(q units.Quantity, v float64) string {
	return number(turn(l.v.Units, q, v))
}

// name is that of a setting, which ends in its unit.
func (l *links) name(si string) string { return l.v.Units.Rename(si) }

// inLength is how many of the unit of sizes make one of lengths.
func (l *links) inLength() int {
	if l.v.Units == units.US {
		return 12
	}
	return live.MM
}

// slack is what a length may be over a whole number of pieces, a thousandth of a
// mm.
func (l *links) slack() string {
	if l.v.Units == units.US {
		return "0.00004"
	}
	return "0.001"
}

// perArea is what a limit per area is per: 1 m2, or 100 ft2.
func perArea(u units.System) string {
	if u == units.US {
		return "/100"
	}
	return ""
}

// roundedSize writes a size for a text as [units.System.Rectangular] does: to a tenth
// of a mm; to a hundredth of an inch, and to four decimals where that is exact.
func (l *links) roundedSize(text string) string {
	if l.v.Units == units.US {
		return "ROUND(" + text + ",IF(ABS(" + text + "-ROUND(" + text + ",4))<1E-8,4,2))"
	}
	return "ROUND(" + text + ",1)"
}

// across ends the text of a size with its unit, where it is written.
func (l *links) across() string {
	if l.v.Units == units.US {
		return `&" in"`
	}
	return ""
}
