// Package headrow finds the row of headings: it reads rows as headings, scores them, joins
// two of them, and keeps what stands above.
package headrow

import (
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/plaintext"
)

const (
	MaxSearch  = 100  // rows in which the heading row is looked for
	MaxColumns = 1000 // columns of a schedule
)

// Read reads a row as headings, without numbers that count them.
func Read(lex *headings.Lexicon, cells []string) []headings.Heading {
	cells = celltext.Unnumbered(cells)
	out := make([]headings.Heading, 0, min(len(cells), MaxColumns))
	for i, cell := range cells {
		if i >= MaxColumns {
			break
		}
		if len(cell) > 100 {
			out = append(out, headings.Heading{Typed: celltext.Shorten(celltext.Trim(cell)), Verdict: headings.Unknown})
			continue
		}
		out = append(out, lex.Read(celltext.Shorten(celltext.Trim(cell))))
	}
	return out
}

// Join reads two rows as one heading row. A cell of the upper row that is
// merged across stands over all blank cells to its right that have one below.
func Join(lex *headings.Lexicon, top, bottom []string) []headings.Heading {
	top, bottom = celltext.Unnumbered(top), celltext.Unnumbered(bottom)
	n := min(max(len(top), len(bottom)), MaxColumns)
	out := make([]headings.Heading, n)
	over := ""
	for i := range n {
		up, low := celltext.At(top, i), celltext.At(bottom, i)
		if len(up) > 100 || len(low) > 100 {
			out[i] = headings.Heading{Typed: celltext.Shorten(up + " " + low), Verdict: headings.Unknown}
			continue
		}
		switch {
		case low == "":
			over = ""
			out[i] = lex.Read(celltext.Shorten(up))
			continue
		case up != "":
			over = up
		}
		if over == "" {
			out[i] = lex.Read(celltext.Shorten(low))
			continue
		}
		out[i] = lex.Under(celltext.Shorten(over), celltext.Shorten(low))
		if up == "" && out[i].Verdict == headings.Near {
			if alone, ok := besideGroup(lex, over, low, out[:i]); ok { // Length over (m), and Qty beside it
				alone.Typed = out[i].Typed
				out[i] = alone
			}
		}
	}
	return out
}

// besideGroup reads a heading in the lower row that stands right of those that the upper one is
// over, and isn't of it: Qty beside Outlet over W and H.
func besideGroup(lex *headings.Lexicon, over, low string, before []headings.Heading) (h headings.Heading, ok bool) {
	if h, ok = lex.Beside(over, low); ok {
		return h, true
	}
	return h, lex.BesideEnd(over, h) && slices.ContainsFunc(before, func(x headings.Heading) bool {
		d, isSize := x.Column.Dim()
		return x.Verdict == headings.Sizes && x.Size != headings.OwnSize || x.Verdict == headings.Known && isSize && (d == fittings.Height2 || d == fittings.Diameter2 || d == fittings.BranchHeight || d == fittings.BranchDiameter)
	})
}

// Pairs reports a row of one or two labels, each with what it says behind it, above
// headings that need no row above them: System | S1.
func Pairs(lex *headings.Lexicon, above []string, hs []headings.Heading) bool {
	filled := celltext.Filled(above)
	if len(filled) != 2 && len(filled) != 4 {
		return false
	}
	for k, i := range filled {
		if i >= len(hs) || hs[i].Verdict == headings.Unknown || hs[i].Verdict == headings.Blank {
			return false
		}
		text := celltext.Trim(above[i])
		switch v := lex.Read(celltext.Shorten(text)).Verdict; {
		case k%2 == 0 && (v == headings.Blank || celltext.HasDigit(text)), k%2 == 1 && v != headings.Unknown && len(text) > 1, k%2 == 1 && len(text) > 1 && !celltext.HasDigit(text):
			return false
		}
	}
	return true
}

// Score reports how many columns are known in a row that can be the heading
// row: at least two, one of them the kind or a size. Else 0.
func Score(hs []headings.Heading) int {
	count, telling, asked := 0, false, 0
	var seen [takeoff.NumColumns]bool
	var sized [5]bool
	for _, h := range hs {
		switch h.Verdict {
		case headings.Asks:
			asked++
			telling = telling || h.Said && h.Ask.Sections()
		case headings.Sizes:
			if !sized[h.Size] {
				count++
			}
			sized[h.Size], telling = true, true
		case headings.Known, headings.Near:
			d, isSize := h.Column.Dim()
			telling = telling || h.Column == takeoff.Kind || isSize && d <= fittings.Length
			if !seen[h.Column] {
				seen[h.Column] = true
				count++
			}
		}
	}
	if !telling || count+asked < 2 {
		return 0
	}
	return count
}

// Sure is the score without what is only suggested.
func Sure(hs []headings.Heading) int {
	return Score(slices.DeleteFunc(slices.Clone(hs), func(h headings.Heading) bool { return h.Verdict == headings.Near }))
}

// AllKnown reports headings of which each has a meaning, three and more: no labels with
// what they stand for, though a colon is behind some.
func AllKnown(hs []headings.Heading) bool {
	n := 0
	for _, h := range hs {
		switch h.Verdict {
		case headings.Known, headings.Sizes, headings.Asks:
			n++
		case headings.Blank:
		default:
			return false
		}
	}
	return n > 2 && Score(hs) > 2
}

// Begins reports a row whose first cell is a heading.
func Begins(lex *headings.Lexicon, cells []string) bool {
	filled := celltext.Filled(cells)
	if len(filled) == 0 {
		return false
	}
	v := lex.Read(celltext.Shorten(celltext.Trim(cells[filled[0]]))).Verdict
	return v == headings.Known || v == headings.Sizes || v == headings.Asks
}

// Bill reports headings as those of a bill: of descriptions, and of how many.
func Bill(hs []headings.Heading) bool { return Counted(hs) && slices.ContainsFunc(hs, Describes) }

// Describes reports a heading of descriptions in a bill.
func Describes(h headings.Heading) bool {
	return h.Verdict == headings.Asks && h.Ask.Describes() || h.Verdict == headings.Unknown && headings.Squash(h.Typed) == "text"
}

// Counted reports headings of which one is of quantities, or of their units.
func Counted(hs []headings.Heading) bool {
	return slices.ContainsFunc(hs, func(h headings.Heading) bool {
		return h.Verdict == headings.Known && h.Column == takeoff.Quantity || h.Verdict == headings.Asks && (h.Ask.Units() || h.Ask.Counts())
	})
}

// Form finds out how a text is written, by its heading row.
func Form(data []byte, lex *headings.Lexicon) plaintext.Form {
	return plaintext.FormOf(data, MaxSearch, func() func(int, []string) int {
		t := &trial{lex: lex}
		return t.score
	})
}

// trial tries rows of a text as the heading row.
type trial struct {
	lex  *headings.Lexicon
	last []string // the cells of the row before
}

// score scores a row as the heading row, by itself or below the row before.
func (t *trial) score(_ int, cells []string) int {
	if len(cells) < 2 {
		return 0
	}
	alone := Read(t.lex, cells)
	best := Score(alone)
	if best == 0 && !celltext.HasFigure(cells) && (Bill(alone) || len(cells) > 2 && Counted(alone)) {
		best = 1
	}
	if last := t.last; last != nil && !celltext.HasFigure(cells) {
		best = max(best, Score(Join(t.lex, last, cells)))
	}
	t.last = append(t.last[:0:0], cells...)
	return best
}
