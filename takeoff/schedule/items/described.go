package items

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/settled"
)

// InKind is how figures in the column of kinds are read, and what the cell of the row says
// of its piece besides.
type InKind struct {
	size, whole *columns.Spec // a cross-section; one with the length behind it
	row         struct {
		*columns.Spec
		cell, length, radius string
		eccentric, lined     bool
		upright              bool
	}
}

// Anew forgets how figures are read, where other headings begin.
func (k *InKind) Anew() { *k = InKind{} }

// has reports a spec of figures in the column of kinds.
func (k *InKind) has(s *columns.Spec) bool { return s == k.size || s == k.whole }

// besideKind takes what a cell says of the piece beside its kind.
func (t *Reader) besideKind(s *columns.Spec, cell, said string) {
	of, text := said[0], said[1:]
	k := &t.InKind
	k.row.Spec, k.row.cell = s, cell
	switch of {
	case described.OfSize:
		t.figuresInKind(&k.size, headings.OwnSize, text)
	case described.OfWhole:
		t.figuresInKind(&k.whole, headings.LongSize, text)
	case described.OfLength:
		k.row.length = text
	case described.OfRadius:
		k.row.radius = text
	case described.Eccentric:
		k.row.eccentric = true
	case described.Lined:
		k.row.lined = true
	case described.Upright:
		k.row.upright = true
	}
}

// figuresInKind puts the size that stands beside the kind to those of the row.
func (t *Reader) figuresInKind(as **columns.Spec, of headings.SizeOf, size string) {
	if *as == nil {
		*as = &columns.Spec{Heading: headings.Heading{Typed: t.InKind.row.Typed, Verdict: headings.Sizes, Size: of}}
		(*as).Set(&t.Reading.Reading, (*as).Heading)
	}
	t.Moved = true
	t.Pending = append(t.Pending, SizeCell{*as, size})
	t.rowUnit = t.rowUnit || quantity.SaysUnit(size)
}

// takeBeside settles what the kind of the row says besides: each has to agree with the
// cells of its own, or stands in for them, or is asked about.
func (t *Reader) takeBeside(r *takeoff.Row) {
	x := &t.InKind.row
	if x.length != "" {
		millimetres := quantity.Column{Unit: quantity.Millimetre, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths), CommaFile: t.CommaFile, Decimal: t.Decimal}
		if trouble := t.setLength(r, millimetres, x.length); trouble != "" {
			t.fault(r, x.Spec, x.cell, trouble)
		} else {
			t.Told.Add("lengths are taken from column '%s'", x.Typed, r.At.Row)
		}
	}
	if x.radius != "" {
		t.radiusInKind(r)
	}
	if x.upright {
		t.doubtUpright(r)
	}
	offset := takeoff.DimColumn(fittings.OffsetShift)
	if x.eccentric && r.Text[offset]+r.Text[takeoff.DimColumn(fittings.OffsetShift2)] == "" {
		r.Faults = append(r.Faults, t.Place.Fault(offset.Heading(), "", "how far the far end is shifted, in mm",
			fmt.Sprintf("'%s' says that it's eccentric; give offset_mm, which is half the difference of the sizes where it's flush on one side", celltext.Shorten(x.cell))))
	}
	lining := takeoff.DimColumn(fittings.Lining)
	if x.lined && r.Text[lining] == "" {
		r.Faults = append(r.Faults, t.Place.Fault(lining.Heading(), "", "how thick the lining is, in mm",
			fmt.Sprintf("'%s' says that it's lined; give lining_mm, how thick the lining is, and size_is, clear (of the lining) or metal; where the sizes are of the metal, take the word out", celltext.Shorten(x.cell))))
	}
}

// radiusInKind takes a radius beside the kind of a bend, of which nothing says whether it is
// to the centre line: one shorter than half of either side can only be the inside one.
func (t *Reader) radiusInKind(r *takeoff.Row) {
	x := &t.InKind.row
	centre, inside := takeoff.DimColumn(fittings.Radius), takeoff.DimColumn(fittings.Throat)
	column := quantity.Column{Unit: quantity.Millimetre, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths)}
	v, _ := column.Number(x.radius)
	half := r.Number[columns.Own[2]] / 2
	if r.Has(columns.Own[0]) && r.Has(columns.Own[1]) {
		half = min(r.Number[columns.Own[0]], r.Number[columns.Own[1]]) / 2
	}
	switch given := r.Has(centre) || r.Has(inside); {
	case given && (r.Has(centre) && quantity.Same(r.Number[centre], v) || r.Has(inside) && quantity.Same(r.Number[inside], v)):
	case given || r.Text[centre]+r.Text[inside] != "":
		t.fault(r, x.Spec, x.cell, fmt.Sprintf("and the radius '%s%s' say two things; correct one", r.Text[centre], r.Text[inside]))
	case half > 0 && v < half:
		r.Text[inside] = x.radius
		r.SetNumber(inside, v)
		t.Moved = true
		t.Told.Add("radii in column '%s' shorter than half of a side, read as throat_mm", x.Typed, r.At.Row)
	default:
		r.Faults = append(r.Faults, t.Place.Fault(centre.Heading(), celltext.Shorten(x.cell), "a radius of which is said what it is to",
			fmt.Sprintf("'%s' gives a radius of %s that may be to the centre line or to the inside; write it under radius_mm (centre line) or throat_mm (inside)", celltext.Shorten(x.cell), x.radius)))
	}
}

// doubtUpright asks in which plane a vertical bend turns, where that changes its area: not where
// its radius is that of the centre line and nothing else counts, nor where its sides are the same.
func (t *Reader) doubtUpright(r *takeoff.Row) {
	_, style, _, _ := fittings.ParseDescription(r.Text[takeoff.Kind])
	a, b := columns.Own[0], columns.Own[1]
	alike := !r.Has(a) || !r.Has(b) || quantity.Same(r.Number[a], r.Number[b])
	centred := r.Has(takeoff.DimColumn(fittings.Radius)) && r.Text[takeoff.DimColumn(fittings.Legs)]+r.Text[columns.Second[0]]+r.Text[columns.Second[1]]+r.Text[takeoff.Style] == "" && (style == fittings.NoStyle || style == fittings.RadiusStyle)
	if r.Text[takeoff.Plane] != "" || alike || centred {
		return
	}
	x := &t.InKind.row
	r.Faults = append(r.Faults, t.Place.Fault(takeoff.Plane.Heading(), celltext.Shorten(x.cell), "width or height",
		fmt.Sprintf("'%s' doesn't say which side lies in its plane; write width or height under plane", celltext.Shorten(x.cell))))
}

// setLength sets the length that stands in another cell, and says what is wrong with it.
func (t *Reader) setLength(r *takeoff.Row, as quantity.Column, text string) (trouble string) {
	c := takeoff.DimColumn(fittings.Length)
	t.Moved = true
	as.Across, as.Diameter = false, false
	v, trouble := as.Number(text)
	switch {
	case trouble != "":
		return trouble
	case r.Text[c] != "" && (!r.Has(c) || !quantity.Same(r.Number[c], v)):
		return fmt.Sprintf("and %s '%s' say two things; correct one", c.Heading(), r.Text[c])
	case r.Text[c] == "":
		r.Text[c] = text
		r.SetNumber(c, v)
	}
	return ""
}

// takeLength takes the length off the end of a cell that holds it behind the
// cross-section: 600x400x1500. It gives what stands before it.
func (t *Reader) takeLength(r *takeoff.Row, p SizeCell) (before, trouble string) {
	if p.Foremost {
		if p.Cell, trouble = lengthLast(p.Cell); trouble != "" {
			return "", trouble
		}
	}
	at := strings.LastIndexFunc(p.Cell, func(r rune) bool { return strings.ContainsRune("xX×*", r) })
	if at < 0 || !quantity.Combined(p.Cell[:at]) {
		return "", "doesn't hold a cross-section and a length; write it as 600x400x1500 or Ø315x3000"
	}
	_, sign := utf8.DecodeRuneInString(p.Cell[at:])
	text := celltext.Trim(p.Cell[at+sign:])
	if trouble := t.setLength(r, p.Column, text); trouble != "" {
		return "", trouble
	}
	before = celltext.Trim(p.Cell[:at])
	if unit := strings.TrimLeft(text, "0123456789., "); unit != "" && !quantity.SaysUnit(before) { // 600x400x1500 mm
		before += " " + unit
	}
	return before, ""
}

// slashed writes a size as 500/300 as what it is in a piece of the kind of the row: width and
// height of a straight, the diameters of a reducer where other pieces aren't written so.
func (t *Reader) slashed(r *takeoff.Row, s *columns.Spec, cell string) string {
	if len(cell) > 20 || !strings.ContainsAny(cell, "/-–") || s.Size != headings.OwnSize || s.Column.Unit != quantity.Millimetre || !described.Slashed(cell) {
		return cell
	}
	kind, _, shape, ok := fittings.ParseDescription(r.Text[takeoff.Kind])
	if x, said := fittings.ParseShape(r.Text[takeoff.Shape]); said {
		if shape = x; !ok && t.Straights && x == fittings.Rectangular && r.Text[takeoff.Kind] == "" {
			kind, ok = fittings.Straight, true
		}
	}
	out := cell
	switch {
	case !ok:
	case kind == fittings.Straight && !s.Diameter && strings.Contains(cell, "/"):
		if t.SlashOdd && !slices.Contains(t.Crossed, settled.Figures(cell)) {
			break
		}
		if out = t.Kinds().Sides(t.typedKind(), shape, cell); out != cell {
			t.Told.Add("sizes of straights with a stroke in column '%s', read as width and height", s.Typed, r.At.Row)
		}
	case kind == fittings.Reducer && (s.Diameter || !t.SlashSides) && (shape == fittings.NoShape || shape == fittings.Circular) && r.Text[columns.Second[0]]+r.Text[columns.Second[2]] == "":
		out = described.Diameters(cell)
		t.Told.Add("sizes of reducers with a stroke in column '%s', read as two diameters", s.Typed, r.At.Row)
	}
	return out
}

// typedKind is the cell of the kind of the row as typed.
func (t *Reader) typedKind() string {
	if at := t.KindColumn(); at >= 0 {
		return t.Specs[at].Last.From
	}
	return ""
}

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
