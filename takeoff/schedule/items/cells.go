package items

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// unfit says why the cell at a place of a row can't be used whatever it is read as.
func (t *Reader) unfit(at int, cell string, s *columns.Spec) string {
	c := s.To()
	switch {
	case s.Measure != takeoff.Text && slices.Contains(t.Marked.Unlike, at):
		return "is what its number format shows, and another number than the cell holds; type what is meant, and give the cell a plain format"
	case len(cell) > celltext.MaxCell, len(cell) > celltext.MaxWord && c != takeoff.Note:
		return "is too long for a cell; shorten it"
	case cell[0] == '=':
		return "is a formula without a result; open the file in a spreadsheet program and save it, or type the value"
	case isError(cell):
		return "is an error of the spreadsheet; mend the formula or type the value"
	case t.Suspect && strings.ContainsFunc(cell, celltext.Unreadable):
		return "holds a character that can't be read; type the cell anew"
	}
	return ""
}

// SizeCell is a cell that holds a whole cross-section.
type SizeCell struct {
	*columns.Spec
	Cell string
}

// takeSizes puts the cross-sections of a row's cells where they belong. What
// columns of their own say has to agree.
func (t *Reader) takeSizes(r *takeoff.Row) {
	for _, p := range t.Pending {
		cell, trouble := p.Cell, ""
		if p.Size == headings.LongSize {
			cell, trouble = t.takeLength(r, p)
		}
		var found []quantity.Size
		if trouble == "" {
			found, trouble = p.Sizes(t.roundSize(r, t.slashed(r, p.Spec, cell)))
		}
		if trouble == "" && len(found) == 2 && p.Size != headings.OwnSize {
			trouble = "holds two sizes, where one is expected"
		}
		if trouble != "" {
			t.fault(r, p.Spec, p.Cell, trouble)
			continue
		}
		if c := takeoff.DimColumn(fittings.Length); trouble == "" && p.Diameter && len(found) == 1 && found[0].Shape != fittings.Circular && r.Has(c) && quantity.Same(found[0].Height, r.Number[c]) {
			t.fault(r, p.Spec, p.Cell, "may be a diameter and the length, which stands beside it; write the diameter alone")
			continue
		}
		if z := largest(found); trouble == "" && z >= mostAcross && (p.Column.Unit != quantity.Millimetre || !strings.HasSuffix(p.Cell, "mm") && (z >= mostWide || quantity.SaysUnit(p.Cell))) {
			t.tooLarge(r, p.Spec, p.Cell, z)
			continue
		}
		for i, z := range found {
			to := p.Sized
			if i == 1 {
				to = columns.Dims(headings.SecondSize)
			}
			if trouble := setSize(r, to, z, i == 1 || p.Sized != columns.Dims(headings.OwnSize)); trouble != "" {
				t.fault(r, p.Spec, p.Cell, trouble)
				break
			}
		}
		if p.Verdict != headings.Sizes {
			t.Told.Add("cells of column '%s' that hold a whole size are read as width x height or diameter", p.Typed, r.At.Row)
		} else if p.Size == headings.LongSize {
			t.Told.Add(longOrder(p.Spec), p.Typed, r.At.Row)
		} else if found[0].Shape != fittings.Circular {
			t.Told.Add("cells of column '%s' are read as width x height", p.Typed, r.At.Row)
		}
	}
}

// largest is the largest side or diameter, m.
func largest(found []quantity.Size) (v float64) {
	for _, z := range found {
		v = max(v, z.Width, z.Height, z.Diameter)
	}
	return v
}

// setSize sets the sizes z in the columns to.
func setSize(r *takeoff.Row, to [3]takeoff.Column, z quantity.Size, second bool) string {
	values := [3]float64{z.Width, z.Height, z.Diameter}
	texts := [3]string{z.WidthText, z.HeightText, z.DiameterText}
	for i, c := range to {
		given := texts[i] != ""
		switch {
		case r.Text[c] != "" && (!given || r.Has(c) && !quantity.Same(r.Number[c], values[i])):
			return fmt.Sprintf("and %s '%s' say two things; correct one", c.Heading(), r.Text[c])
		case given && !r.Has(c):
			r.Text[c] = texts[i]
			r.SetNumber(c, values[i])
		}
	}
	if z.Shape != fittings.FlatOval {
		return ""
	}
	shape := takeoff.Shape
	if second {
		shape = takeoff.Shape2
	}
	if s, ok := fittings.ParseShape(r.Text[shape]); ok && s != fittings.FlatOval {
		return fmt.Sprintf("and %s '%s' say two things; correct one", shape.Heading(), r.Text[shape])
	}
	if r.Text[shape] == "" {
		r.Text[shape] = fittings.FlatOval.String()
	}
	return ""
}

// word gives the word of ours for a cell, and notes whether the row has a kind
// that is known.
func (t *Reader) word(s *columns.Spec, cell string) string {
	c := s.To()
	switch cell {
	case s.Last.From:
	case s.Before.From: // most rows have one of few words
		s.Last, s.Before = s.Before, s.Last
	default:
		w, met := s.Words[cell]
		if !met {
			if w = t.Kinds().Translate(c, cell); wording.Overstruck(cell) {
				w = ""
			}
			s.Words[cell] = w
		}
		s.Last, s.Before = columns.Word{From: cell, To: w}, s.Last
	}
	w := s.Last.To
	if c == takeoff.Kind {
		t.Loud, t.kindNow = w == "", cell
	}
	if w == "" || w == cell {
		if c != takeoff.Kind { // of which more is noted
			s.Same = cell
		}
		return cell
	}
	w, more, _ := strings.Cut(w, described.BesideMark)
	for said := range strings.SplitSeq(more, described.BesideMark) {
		if said != "" {
			t.besideKind(s, cell, said)
		}
	}
	if angle, kind, ok := strings.Cut(w, "|"); ok {
		t.turn.Spec, t.turn.cell, t.turn.angle = s, cell, angle
		return kind
	}
	if more == "" {
		s.Count[cell]++
	}
	return w
}

// takeAngle sets the angle that the row's kind gives.
func (t *Reader) takeAngle(r *takeoff.Row) {
	c, p := takeoff.DimColumn(fittings.Angle), t.turn
	v, _ := strconv.ParseFloat(p.angle, 64)
	switch {
	case r.Has(c) && r.Number[c] != v || !r.Has(c) && r.Text[c] != "":
		t.fault(r, p.Spec, p.cell, fmt.Sprintf("and %s '%s' say two things; correct one", c.Heading(), r.Text[c]))
	case !r.Has(c):
		r.Text[c] = p.angle
		r.SetNumber(c, v)
		t.Told.Add("angles are taken from column '%s'", p.Typed, r.At.Row)
	}
}

// noteWords says which words were read as others, with their counts.
func (t *Reader) noteWords() {
	for i := range t.Specs {
		s := &t.Specs[i]
		var said []string
		for _, w := range slices.Sorted(maps.Keys(s.Count)) {
			said = append(said, fmt.Sprintf("'%s' as %s (%s)", celltext.Shorten(w), s.Words[w], told.Times(s.Count[w])))
		}
		if len(said) > 0 {
			t.Note("words of column '%s' read: %s", s.Typed, strings.Join(said, ", "))
		}
	}
}

// reducerStyle passes over the style of a reducer that says no more than its sizes do:
// concentric. One that is eccentric has to be given an offset.
func (t *Reader) reducerStyle(r *takeoff.Row) {
	kind, _, _, _ := fittings.ParseDescription(r.Text[takeoff.Kind])
	if kind != fittings.Reducer && kind != fittings.Transition {
		return
	}
	style := r.Text[takeoff.Style]
	known, shifted := t.Kinds().ReducerStyle(style)
	if !known {
		return
	}
	r.Text[takeoff.Style], t.Moved = "", true
	t.Told.Add("styles of reducers and transitions that give no size passed over, the first '%s'", celltext.Shorten(style), r.At.Row)
	if x := &t.InKind.row; shifted {
		if x.Spec == nil {
			at := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.To() == takeoff.Style })
			x.Spec, x.cell = &t.Specs[max(at, 0)], style
		}
		x.eccentric = true
	}
}

// mostEven is how many rows below the headings are looked at whether they have a cell for each.
const mostEven = 20
