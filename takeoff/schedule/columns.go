package schedule

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
)

// setHeadings maps the columns of the heading rows once for all rows below them.
func (t *table) setHeadings(rows []int, heads [][]string, hs []headings.Heading) error {
	for _, cells := range heads {
		if last := celltext.LastFilled(cells); last > headrow.MaxColumns {
			return fmt.Errorf("%s has %d columns; a schedule has at most %d", t.place, last, headrow.MaxColumns)
		}
	}
	if f := &t.search; len(f.Rows) > 0 {
		t.note("%s above the headings passed over: %s", told.RowsWord(f.Rows), f.Quoted())
		f.Rows = nil
	}
	t.place.Row = rows[0]
	if len(rows) > 1 {
		t.note("rows %d and %d are read as one heading row", rows[0], rows[1])
	}
	lined := t.takeLine()
	t.toldCounts()
	t.noteCounts()
	t.inSummary = false
	if t.fresh = true; !t.titled {
		t.over.doubt = doubt{}
	}
	t.heads, t.extra, t.inKind = nil, spec{}, nil
	for _, cells := range heads {
		t.heads = append(t.heads, slices.Clone(cells))
	}
	t.headRows, t.headRow = len(t.heads), rows[len(rows)-1]
	for _, h := range hs {
		t.commaFile = t.commaFile || strings.HasSuffix(h.Typed, CommaMark)
	}
	t.lex.Neighbours(hs)
	before := t.specs
	t.specs = make([]spec, len(hs))
	for i, h := range hs {
		t.specs[i].set(t, h)
		t.specs[i].fixed = t.fixing[i]
	}
	t.settleHeadings()
	t.settleUnits(before, rows[0], lined)
	t.areaBesideSizes()
	t.refuseTwins()
	t.doubtDepth()
	t.report()
	t.watchUnused()
	t.tellAbove()
	t.describe(rows)
	return nil
}

// tellAbove finds out what the lines above the headings say of the rows below.
func (t *table) tellAbove() {
	t.tellKind()
	if t.others == 0 || t.titled {
		t.tellShape()
	}
	if t.others == 0 {
		t.headedBy()
		t.doubtTitle()
		t.pieceAbove()
	}
}

// settleHeadings settles what single headings leave open.
func (t *table) settleHeadings() {
	t.spanishName()
	t.swedishPlan()
	t.frenchSides()
	t.sidesAB()
	t.sizeInCells()
	t.byCells()
	t.describedKinds()
	t.lengthOfRun()
	t.quantityUnits()
	t.seldom = t.unitsAt > 0 || slices.ContainsFunc(t.specs, func(s spec) bool { return s.parted > 0 || s.paired })
	t.orDiameter = slices.ContainsFunc(t.specs, func(s spec) bool {
		return s.used && s.Verdict == headings.Known && s.to() == takeoff.DimColumn(fittings.Width) && slices.ContainsFunc(headings.Tokens(s.Typed), func(w string) bool {
			return w == "d" || w == "dia" || w == "diam" || w == "diameter"
		})
	})
}

// settleUnits finds the units of columns that state none: a line right above headings
// that stand anew comes before what those before them say.
func (t *table) settleUnits(before []spec, row int, lined bool) {
	if lined {
		t.sheetUnits()
	}
	t.carryUnits(before)
	t.unitsAbove(row)
	if !lined {
		t.sheetUnits()
	}
}

// AddedMark begins the headings of columns that were added to a file of refused
// rows.
const AddedMark = "refused: "

// CommaMark at the end of a heading says that decimals are written with a comma,
// in a file whose few rows don't show it.
const CommaMark = "(decimals with a comma)"

// leastSide is a side, a diameter or a length that hardly any piece has, m: with three
// figures behind the point it may be thousands.
const leastSide = 0.02

// set makes the column what its heading says.
func (s *spec) set(t *table, h headings.Heading) {
	*s = spec{Heading: h, used: h.Verdict == headings.Known || h.Verdict == headings.Sizes}
	if !s.used {
		return
	}
	s.Column = quantity.Column{Unit: h.Unit, CommaFile: t.commaFile, Stated: h.Said, Decimal: t.opt.decimal()}
	if h.Verdict == headings.Sizes {
		s.sized, s.Measure = dims(h.Size), takeoff.Lengths
		if !s.Said {
			s.Column.Unit = quantity.Millimetre
		}
		s.Max, s.Least, s.Small, s.Across = quantity.Largest(takeoff.Lengths), leastSide, leastSide, true
		return
	}
	s.Measure = h.Column.Measure()
	switch h.Column {
	case takeoff.DuctClassPa, takeoff.Ready, takeoff.Closed, takeoff.Joint, takeoff.DimColumn(fittings.Lining):
		s.lenient = true
	}
	s.Max = quantity.Largest(s.Measure)
	if s.Measure == takeoff.Text && t.lex.Worded(h.Column) {
		s.words, s.count = map[string]string{}, map[string]int{}
	}
	if s.Measure == takeoff.Count {
		s.Small = 1000 // 1.000
	}
	d, isSize := h.Column.Dim()
	if !isSize {
		return
	}
	if d <= fittings.Length || d == fittings.Width2 || d == fittings.Height2 || d == fittings.Diameter2 || d == fittings.BranchWidth || d == fittings.BranchHeight || d == fittings.BranchDiameter {
		s.Least = leastSide
	}
	s.Across = s.Least > 0 && d != fittings.Length
	if s.Small = s.Least; d == fittings.Angle {
		s.Turn, s.Small = true, 2*math.Pi+0.01
	}
	s.Signed = d == fittings.OffsetShift || d == fittings.OffsetShift2 || d == fittings.BranchShift
	s.Diameter = d == fittings.Diameter || d == fittings.Diameter2 || d == fittings.BranchDiameter
	for _, of := range [...]headings.SizeOf{headings.OwnSize, headings.SecondSize, headings.BranchSize} {
		if to := dims(of); h.Column == to[0] || h.Column == to[2] {
			s.sized, s.Size = to, of
		}
	}
}

// refuse takes a column out of use and says why.
func (t *table) refuse(s *spec, expected, message string) {
	s.used = false
	t.info.Faults = append(t.info.Faults, t.place.Fault(s.Typed, s.Typed, expected, message))
}

// maps reports whether a column of the file is used for c.
func (t *table) maps(c takeoff.Column) bool {
	return slices.ContainsFunc(t.specs, func(s spec) bool { return s.used && s.Verdict == headings.Known && s.to() == c })
}

// report turns what was found in the heading row into faults and notes.
func (t *table) report() {
	for i := range t.specs {
		s := &t.specs[i]
		canonical := s.to().Heading()
		switch s.Verdict {
		case headings.Known:
			t.noteReading(s)
		case headings.Near:
			if s.Taken {
				t.refuse(s, "a heading of its own", fmt.Sprintf("'%s' isn't a known heading, so the column isn't used; another column is %s already, so rename it for what it holds or take it out", s.Typed, canonical))
				continue
			}
			t.refuse(s, canonical, fmt.Sprintf("'%s' isn't a known heading, so the column isn't used; did you mean %s? rename it if so", s.Typed, canonical))
		case headings.Misfit:
			t.refuse(s, canonical, fmt.Sprintf("'%s' says %s, which doesn't fit, so the column isn't used; write %s", s.Typed, s.Heading.Unit.Name, canonical))
		case headings.Asks:
			t.question(s)
		case headings.Unknown:
			if of := t.later(s.Typed); of != "" {
				t.refuse(s, "one column for "+of, fmt.Sprintf("'%s' may take the place of '%s', so it is asked which counts; take the other out", s.Typed, of))
				continue
			}
			t.note("column '%s' isn't used", s.Typed)
		}
	}
}

// laterWords say of a heading that its figures are newer ones, in seven languages (from
// memory, unverified).
var laterWords = []string{"rev", "revised", "revision", "new", "actual", "final", "corrected", "latest", "built", "as", "measured", "site", "neu", "geandert", "aktuell", "revisee", "nouveau", "nouvelle", "nieuw", "gewijzigd", "ny", "nytt", "nuevo", "nueva", "nuovo", "nuova"}

// later gives the column that is used whose figures another heading may put newer ones
// for: Qty rev B, New width.
func (t *table) later(typed string) string {
	words := headings.Tokens(typed)
	if !slices.ContainsFunc(words, func(w string) bool { return slices.Contains(laterWords, w) }) {
		return ""
	}
	rest := slices.DeleteFunc(words, func(w string) bool {
		_, unit := quantity.UnitOf(w)
		return slices.Contains(laterWords, w) || unit || len(words) > 2 && len(w) == 1 // rev B (mm)
	})
	if len(rest) == 0 {
		return ""
	}
	h := t.lex.Read(strings.Join(rest, " "))
	for i := range t.specs {
		s := &t.specs[i]
		if s.used && (h.Verdict == headings.Known && s.Verdict == headings.Known && s.to() == h.Column && s.Measure != takeoff.Text || h.Verdict == headings.Sizes && s.Verdict == headings.Sizes && s.Size == h.Size) {
			return s.Typed
		}
	}
	return ""
}

// noteReading says how a heading with two readings was read, where it names a
// unit and so counts as the canonical one, but isn't written like it.
func (t *table) noteReading(s *spec) {
	if !s.used || s.fixed || strings.EqualFold(s.Typed, s.to().Heading()) {
		return
	}
	words := headings.Tokens(s.Typed)
	switch {
	case words[0] == "radius":
		t.note("column '%s' is read as radius_mm, to the centre line; write throat_mm for the inside radius", s.Typed)
	case words[0] == "area" && s.to() == takeoff.DimColumn(fittings.GivenArea):
		t.note("column '%s' is read as area_m2, areas given instead of sizes; write stated_area_m2 for figures to check", s.Typed)
	}
}

// question asks about a heading with more than one reading.
func (t *table) question(s *spec) {
	for _, columns := range s.Ask.Settled {
		if !slices.ContainsFunc(columns, func(c takeoff.Column) bool { return !t.maps(c) }) {
			t.note("column '%s' isn't used", s.Typed)
			return
		}
	}
	switch {
	case s.Ask.Units(): // its cells are looked at
		t.note("column '%s' isn't used, but for units that aren't of pieces", s.Typed)
		return
	case s.empty: // until a cell is filled
		s.waits = true
		return
	case s.worded && (s.Ask.OnAreas() || s.Ask.Pressures() || s.Ask.Sections() && t.sized()):
		t.note("column '%s' isn't used, as its cells hold words; to use them, write %s", s.Typed, s.Ask.Write)
		return
	case s.Ask.Plans():
		t.note("column '%s' isn't used; to use it, write %s", s.Typed, s.Ask.Write)
		return
	case s.Ask.Seals():
		t.note("column '%s' isn't used, as it doesn't say how much may leak; class is the air-tightness class", s.Typed)
		return
	}
	t.ask(s)
}

// ask asks about a heading with more than one reading.
func (t *table) ask(s *spec) {
	why := s.Ask.Why
	if why == "" {
		why = "has more than one meaning"
	}
	t.refuse(s, s.Ask.Write, fmt.Sprintf("'%s' %s, so the column isn't used; write %s", s.Typed, why, s.Ask.Write))
}
