package settled

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// OnlyStraights reports a table without a column of kinds whose rows can be straights:
// nine of ten, or all but one that lacks the length, have a whole cross-section and a length, no heading is of a fitting, and no
// cell names one. Not where a table before it in the file has kinds: it may sum them up.
func (t *Reading) OnlyStraights() bool {
	if t.Units.Kinds || t.Below == nil || !t.Maps(takeoff.DimColumn(fittings.Length)) && !slices.ContainsFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.Size == headings.LongSize }) {
		return false
	}
	b := t.PeekAt(1)
	for i := range t.Specs {
		if t.ofFittings(&t.Specs[i], b.Columns[i]) || t.namesCodes(&t.Specs[i], b.Columns[i]) {
			return false
		}
	}
	whole, rows, short := 0, 0, 0
	for _, cells := range b.Cells {
		if len(celltext.Filled(cells)) > 1 && t.measures(cells) { // a name and a size
			rows++
		}
		switch {
		case t.wholeStraight(cells):
			whole++
		case t.lengthMissing(cells):
			short++
		}
		for i, c := range cells { // a remark bears on its row alone
			if len(c) > 2 && !celltext.IsFigure(c) && !(i < len(t.Specs) && t.remarksUnder(&t.Specs[i])) && t.Kinds().NamesFitting(c) && !t.Kinds().FittingBeside(c) {
				return false
			}
		}
	}
	return whole > 0 && 10*whole >= 9*rows || whole > 2 && short == 1 && whole+short == rows
}

// measures reports a row with something under a heading of sizes or lengths, and no label before it:
// one that says who measured, and when, hasn't.
func (t *Reading) measures(cells []string) bool {
	return !celltext.Labels(cells) && slices.ContainsFunc(celltext.Filled(cells), func(i int) bool {
		return i < len(t.Specs) && t.Specs[i].Used && t.Specs[i].Measure == takeoff.Lengths && celltext.HasDigit(cells[i])
	})
}

// OnceNamed reports a column of kinds of which each stands once, above rows without: as in
// cells merged down. At least half of the rows have none, and those below a straight are whole.
func (t *Reading) OnceNamed() bool {
	at := t.KindColumn()
	if at < 0 || t.Below == nil || t.OfRefused() {
		return false
	}
	named, above := 0, ""
	rows := t.PeekAt(2).Cells
	beside := t.filledWith(rows, at)
	for _, cells := range rows {
		kind := celltext.At(cells, at)
		switch {
		case kind == "" && (above == "" || t.Kinds().KindIn(above) == fittings.Straight && !t.wholeStraight(cells)), kind != "" && kind == above && !beside:
			return false
		case kind != "":
			named, above = named+1, kind
		}
	}
	return named > 0 && 2*named <= len(rows)
}

// EachLevel reports a column of levels in which each row has its own, several in all.
func (t *Reading) EachLevel() bool {
	at := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.Verdict == headings.Known && s.To() == takeoff.Level })
	if at < 0 || t.Below == nil {
		return false
	}
	levels := t.PeekAt(2).Columns[at]
	return len(levels) > 1 && len(levels) == t.PeekAt(2).Rows && slices.ContainsFunc(levels, func(c string) bool { return c != levels[0] })
}

// filledWith reports that names in another column, as of systems or drawings, stand on the same rows
// as the kinds, and none of them twice running: what is blank is as above in both.
func (t *Reading) filledWith(rows [][]string, at int) bool {
	for i := range t.Specs {
		s := &t.Specs[i]
		if i == at || s.Measure != takeoff.Text || s.Used && s.To() == takeoff.Note || s.Typed == "" {
			continue
		}
		above := ""
		if !slices.ContainsFunc(rows, func(cells []string) bool {
			name := celltext.At(cells, i)
			same := name != "" && name == above
			if name != "" {
				above = name
			}
			return same || (name == "") != (celltext.At(cells, at) == "")
		}) {
			return true
		}
	}
	return false
}

// ofFittings reports a column that straights have no need of, if something stands in it, or
// one over which it may stand what a piece is.
func (t *Reading) ofFittings(s *columns.Spec, cells []string) bool {
	empty := !slices.ContainsFunc(cells, func(c string) bool { return !quantity.Nothing(c, takeoff.Lengths) })
	switch s.Verdict {
	case headings.Blank:
		return false
	case headings.Asks:
		words := slices.DeleteFunc(slices.Clone(cells), celltext.IsFigure)
		numbers := len(cells) > 1 && 10*len(words) <= len(cells) // but for a line below
		return s.Ask.Describes() && !numbers || s.Ask.Runs() && !t.Maps(takeoff.DimColumn(fittings.Length)) || s.Ask.Radii() && !empty
	case headings.Sizes:
		return !empty && (s.Size == headings.SecondSize || s.Size == headings.BranchSize)
	case headings.Known, headings.Near, headings.Misfit:
		d, is := s.To().Dim()
		if s.To() == takeoff.DimColumn(fittings.Length) && !strings.EqualFold(s.Typed, s.To().Heading()) && t.Lex.Total(s.Typed) {
			return true // total lengths, as in a list that sums up
		}
		return is && !empty && d != fittings.Width && d != fittings.Height && d != fittings.Diameter && d != fittings.Length && d != fittings.Lining || s.To() == takeoff.Style
	}
	return t.Kinds().OfOtherThings(s.Typed) || !described.OfColours(s.Typed) && t.someKinds(cells)
}

// someKinds reports cells of which several name kinds, and not straights only, though too few
// to take them for a column of kinds.
func (t *Reading) someKinds(cells []string) bool {
	named, fitting := 0, false
	for _, c := range cells {
		if k := t.Kinds().KindIn(c); k != fittings.NoKind && t.Kinds().NamesKind(c) {
			named, fitting = named+1, fitting || k != fittings.Straight
		}
	}
	return named > 1 && fitting
}

// namesCodes reports a column that isn't used, or of remarks, with a cell that is short for
// a fitting.
func (t *Reading) namesCodes(s *columns.Spec, cells []string) bool {
	return !s.Used && !t.remarksUnder(s) && !described.OfColours(s.Typed) && slices.ContainsFunc(cells, described.FittingCode)
}

// remarksUnder reports a column of remarks, which are looked at row by row.
func (t *Reading) remarksUnder(s *columns.Spec) bool {
	if s.Verdict == headings.Known && s.To() == takeoff.Note {
		return true
	}
	h := t.Lex.Read(s.Typed)
	return h.Verdict == headings.Known && h.Column == takeoff.Note
}

// wholeStraight reports a row with a cross-section and a length, and nothing of another
// end.
func (t *Reading) wholeStraight(cells []string) bool {
	var has [3]bool
	across, long := false, false
	shape := t.rowShape(cells)
	round, slashed := shape == fittings.Circular, shape == fittings.Rectangular
	for i := range min(len(cells), len(t.Specs)) {
		s, cell := &t.Specs[i], celltext.At(cells, i)
		if !s.Used || cell == "" || celltext.MeansNothing(cell) {
			continue
		}
		if s.Verdict == headings.Sizes || s.Sized == columns.Own && quantity.Combined(cell) {
			if slashed && described.Slashed(cell) {
				cell = strings.Replace(cell, "/", "x", 1)
			}
			if found, trouble := s.Sizes(cell); !(round && celltext.IsFigure(cell)) && s.Size != headings.LongSize && (trouble != "" || len(found) != 1) {
				return false
			}
			across, long = true, long || s.Size == headings.LongSize
			continue
		}
		for k, c := range columns.Own {
			has[k] = has[k] || s.To() == c
		}
		long = long || s.To() == takeoff.DimColumn(fittings.Length)
	}
	return long && (across || has[0] && has[1] || has[2] || (t.OrDiameter || round) && has[0])
}

// lengthMissing reports a row that is a whole straight but for its length.
func (t *Reading) lengthMissing(cells []string) bool {
	at := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.IsLength() })
	if at < 0 || celltext.At(cells, at) != "" && !celltext.MeansNothing(celltext.At(cells, at)) {
		return false
	}
	long := append(slices.Clone(cells), make([]string, max(0, at+1-len(cells)))...)
	long[at] = "1"
	return t.wholeStraight(long)
}

// roundRow reports a row whose shape is said to be circular: one figure is its diameter.
func (t *Reading) roundRow(cells []string) bool { return t.rowShape(cells) == fittings.Circular }

// rowShape is the shape that a row says it is of.
func (t *Reading) rowShape(cells []string) fittings.Shape {
	at := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.Verdict == headings.Known && s.To() == takeoff.Shape })
	if at < 0 {
		return fittings.NoShape
	}
	return t.Kinds().ShapeOf(celltext.At(cells, at))
}

// slashSides finds out whether pieces with one cross-section have sizes as 500/300: those of
// reducers may be a width and a height then. Rows that aren't there may have, in a file of
// refused ones.
func (t *Reading) slashSides() {
	t.SlashSides, t.SlashOdd, t.Crossed = t.OfRefused(), false, nil
	kind := t.KindColumn()
	if kind < 0 || t.SlashSides {
		return
	}
	size := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.Verdict == headings.Sizes && s.Size == headings.OwnSize })
	strokes, crosses := 0, 0
	for _, cells := range t.PeekAt(2).Cells {
		name, own := celltext.At(cells, kind), ""
		if size >= 0 {
			own = celltext.At(cells, size)
		}
		if !described.SlashWithin(name) && !described.SlashWithin(own) {
			if strings.ContainsAny(own, "xX×*") && celltext.HasDigit(own) {
				crosses++
				t.Crossed = append(t.Crossed, Figures(own))
			}
			continue
		}
		if is := t.Kinds().KindIn(name); is != fittings.NoKind && is != fittings.Reducer && !t.Kinds().RoundKind(name) {
			strokes++
		}
	}
	t.SlashSides, t.SlashOdd = strokes > 0, crosses > strokes
}

// Figures are those of a size, with a stroke between them.
func Figures(size string) string {
	return strings.Join(strings.FieldsFunc(size, func(r rune) bool { return r < '0' || r > '9' }), "/")
}

// Where so many cells have the length last, and so many times as many as don't, it is last in
// all of them. Common practice, no source.
const (
	leastLast = 3
	timesLast = 3
)

// lengthsLast finds out whether the third of three figures beside a kind is the length, where
// it isn't always the largest.
func (t *Reading) lengthsLast() {
	t.LengthLast = false
	kind := t.KindColumn()
	if kind < 0 {
		return
	}
	last, others := 0, 0
	for _, cells := range t.PeekAt(2).Cells {
		switch is, three := described.LengthLast(celltext.At(cells, kind)); {
		case is && three:
			last++
		case three:
			others++
		}
	}
	if t.LengthLast = others > 0 && last >= leastLast && last >= timesLast*others; t.LengthLast {
		t.Note("column '%s': the third of three figures is read as the length, as in most rows, where it is the largest", t.Specs[kind].Typed)
	}
}
