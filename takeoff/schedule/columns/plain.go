package columns

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
)

// OnlyStraights reports a table without a column of kinds whose rows can be straights:
// nine of ten have a whole cross-section and a length, no heading is of a fitting, and no
// cell names one. Not where a table before it in the file has kinds: it may sum them up.
func (t *Reading) OnlyStraights() bool {
	if t.Units.Kinds || t.Below == nil || !t.Maps(takeoff.DimColumn(fittings.Length)) && !slices.ContainsFunc(t.Specs, func(s Spec) bool { return s.Used && s.Size == headings.LongSize }) {
		return false
	}
	for i := range t.Specs {
		if t.ofFittings(&t.Specs[i]) {
			return false
		}
	}
	b := t.peekAt(1)
	whole, rows := 0, 0
	for _, cells := range b.cells {
		if len(celltext.Filled(cells)) > 1 { // a name and a size
			rows++
		}
		if t.wholeStraight(cells) {
			whole++
		}
		if slices.ContainsFunc(cells, func(c string) bool { return len(c) > 2 && !celltext.IsFigure(c) && t.Kinds().NamesFitting(c) }) {
			return false
		}
	}
	return whole > 0 && 10*whole >= 9*rows
}

// ofFittings reports a column that straights have no need of, or one over which it may
// stand what a piece is.
func (t *Reading) ofFittings(s *Spec) bool {
	switch s.Verdict {
	case headings.Blank:
		return false
	case headings.Asks:
		return s.Ask.Describes() || s.Ask.Runs() || s.Ask.Radii()
	case headings.Sizes:
		return s.Size == headings.SecondSize || s.Size == headings.BranchSize
	case headings.Known, headings.Near, headings.Misfit:
		d, is := s.To().Dim()
		if s.To() == takeoff.DimColumn(fittings.Length) && !strings.EqualFold(s.Typed, s.To().Heading()) && t.Lex.Total(s.Typed) {
			return true // total lengths, as in a list that sums up
		}
		return is && d != fittings.Width && d != fittings.Height && d != fittings.Diameter && d != fittings.Length && d != fittings.Lining || s.To() == takeoff.Style
	}
	return t.Kinds().OfOtherThings(s.Typed)
}

// wholeStraight reports a row with a cross-section and a length, and nothing of another
// end.
func (t *Reading) wholeStraight(cells []string) bool {
	var has [3]bool
	across, long := false, false
	for i := range min(len(cells), len(t.Specs)) {
		s, cell := &t.Specs[i], celltext.At(cells, i)
		if !s.Used || cell == "" || celltext.MeansNothing(cell) {
			continue
		}
		if s.Verdict == headings.Sizes || s.Sized == Own && quantity.Combined(cell) {
			if found, trouble := s.Sizes(cell); s.Size != headings.LongSize && (trouble != "" || len(found) != 1) {
				return false
			}
			across, long = true, long || s.Size == headings.LongSize
			continue
		}
		for k, c := range Own {
			has[k] = has[k] || s.To() == c
		}
		long = long || s.To() == takeoff.DimColumn(fittings.Length)
	}
	return long && (across || has[0] && has[1] || has[2] || t.OrDiameter && has[0])
}

// slashSides finds out whether pieces with one cross-section have sizes as 500/300: those of
// reducers may be a width and a height then. Rows that aren't there may have, in a file of
// refused ones.
func (t *Reading) slashSides() {
	t.SlashSides = t.OfRefused()
	kind := t.KindColumn()
	if kind < 0 || t.SlashSides {
		return
	}
	size := slices.IndexFunc(t.Specs, func(s Spec) bool { return s.Used && s.Verdict == headings.Sizes && s.Size == headings.OwnSize })
	t.SlashSides = slices.ContainsFunc(t.peekAt(2).cells, func(cells []string) bool {
		name := celltext.At(cells, kind)
		if !wording.SlashWithin(name) && (size < 0 || !wording.SlashWithin(celltext.At(cells, size))) {
			return false
		}
		is := t.Kinds().KindIn(name)
		return is != fittings.NoKind && is != fittings.Reducer && !t.Kinds().RoundKind(name)
	})
}
