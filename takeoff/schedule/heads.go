package schedule

import (
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
)

// score reports how many columns are known in a row that can be the heading
// row: at least two, one of them the kind or a size. Else 0.
func score(hs []headings.Heading) int {
	count, telling, asked := 0, false, 0
	var seen [takeoff.NumColumns]bool
	var sized [5]bool
	for _, h := range hs {
		switch h.Verdict {
		case headings.Asks:
			asked++
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

// sure is the score without what is only suggested.
func sure(hs []headings.Heading) int {
	return score(slices.DeleteFunc(slices.Clone(hs), func(h headings.Heading) bool { return h.Verdict == headings.Near }))
}

// joinRows reads two rows as one heading row. A cell of the upper row that is
// merged across stands over all blank cells to its right that have one below.
func (t *table) joinRows(top, bottom []string) []headings.Heading {
	n := min(max(len(top), len(bottom)), maxColumns)
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
			out[i] = t.lex.Read(celltext.Shorten(up))
			continue
		case up != "":
			over = up
		}
		if over == "" {
			out[i] = t.lex.Read(celltext.Shorten(low))
			continue
		}
		out[i] = t.lex.Under(celltext.Shorten(over), celltext.Shorten(low))
	}
	return out
}
