// Package settled settles how the columns of a table are read where the headings leave it open:
// by the cells below them, by each other, and by the lines above.
package settled

import (
	"slices"
	"strings"
	"unicode"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// Reading is how the columns of a table are read, and what settles it.
type Reading struct{ columns.Reading }

// SettleAll settles what each column is, and tells what isn't used: before are the columns
// that stood above these headings, at a row; lined: a line on units stands right above them.
func (t *Reading) SettleAll(before []columns.Spec, row int, lined bool) {
	if t.twoTables(); t.TwoTables {
		return
	}
	t.settleHeadings()
	t.settleUnits(before, row, lined)
	t.areaBesideSizes()
	t.refuseTwins()
	t.doubtDepth()
	t.countsByCells()
	t.seeAnswers()
	t.seeTags()
	t.Report()
}

// settleHeadings settles what single headings leave open.
func (t *Reading) settleHeadings() {
	t.spanishName()
	t.swedishPlan()
	t.frenchSides()
	t.loneSideA()
	t.sidesAB()
	t.sidesOneTwo()
	t.sizeInCells()
	t.endsByCells()
	t.ductByCells()
	t.byCells()
	t.orderedCounts()
	t.idForTag()
	t.nearByCells()
	t.describedKinds()
	t.radiusBesideThroat()
	t.outletByCells()
	t.lengthOfRun()
	t.lengthOfAll()
	t.feetAndInches()
	t.quantityUnits()
	t.slashSides()
	t.lengthsLast()
	t.Numbered = t.numbersItems()
	t.Seldom = t.UnitsAt > 0 || slices.ContainsFunc(t.Specs, func(s columns.Spec) bool { return s.Parted > 0 || s.Paired || s.Inches > 0 })
	t.OrDiameter = slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return s.Used && s.Verdict == headings.Known && s.To() == takeoff.DimColumn(fittings.Width) && slices.ContainsFunc(headings.Tokens(s.Typed), func(w string) bool {
			return w == "d" || w == "dia" || w == "diam" || w == "diameter"
		})
	})
}

// settleUnits finds the units of columns that state none: a line right above headings
// that stand anew comes before what those before them say.
func (t *Reading) settleUnits(before []columns.Spec, row int, lined bool) {
	if lined {
		t.SheetUnits()
	}
	t.CarryUnits(before)
	t.UnitsAbove(row)
	if !lined {
		t.SheetUnits()
	}
}

// nearByCells settles headings that are nearly known ones, or that ask, by what can't be so of
// their cells. Near remarks are remarks. Others bear on no area, hold no figures where figures are
// meant, or number the rows: they aren't used, and no doubt stays.
func (t *Reading) nearByCells() {
	if !slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return !s.Fixed && (s.Verdict == headings.Near || s.Verdict == headings.Asks && s.Ask.Radii())
	}) {
		return
	}
	b := t.Peek()
	for i := range t.Specs {
		s := &t.Specs[i]
		numbers := t.NumbersAll(b, i)
		_, sized := s.To().Dim()
		switch {
		case s.Fixed:
			continue
		case s.Verdict == headings.Asks && s.Ask.Radii() && numbers:
		case s.Verdict != headings.Near || strings.Contains(s.Typed, " / "): // a title over headings
			continue
		case s.To() == takeoff.Note && !t.Maps(takeoff.Note):
			t.TakeFor(s, takeoff.Note)
			t.Note("column '%s' is read as note, as it is nearly headed so", s.Typed)
			continue
		case s.To() == takeoff.Plane && b.Share(i, namesPlane) == 0:
		case s.To() != takeoff.Note && b.Share(i, wording.NamesAll) > 0:
			continue
		case s.To() == takeoff.Note, onNoArea(s.To()) && !(s.To() == takeoff.Tag && t.Maps(takeoff.From)):
		case sized && numbers, s.To().Measure() != takeoff.Text && len(b.Columns[i]) > 0 && b.Share(i, ofWord) == 1:
		default:
			continue
		}
		if s.Verdict == headings.Near && !s.Taken {
			s.Meant = s.To().Heading()
		}
		s.Used, s.Verdict, s.Settled = false, headings.Unknown, true
	}
}

// NumbersAll reports a column whose cells number all rows, three and more.
func (t *Reading) NumbersAll(b columns.Beneath, i int) bool {
	return len(b.Columns[i]) > 2 && len(b.Columns[i]) == b.Rows && celltext.NumbersRows(b.Columns[i])
}

// ofWord reports a cell that begins with a word, which is no figure with a sign before it.
func ofWord(cell string) bool {
	n := strings.IndexFunc(cell, func(r rune) bool { return !unicode.IsLetter(r) })
	return n < 0 || n > 2
}

func namesPlane(cell string) bool { _, ok := fittings.ParsePlane(cell); return ok }

// onNoArea reports a column that bears on no area: what a piece is called, and where it is.
func onNoArea(c takeoff.Column) bool {
	switch c {
	case takeoff.Tag, takeoff.System, takeoff.Level, takeoff.PlaceOnSite, takeoff.Drawing, takeoff.Stage, takeoff.Group, takeoff.Ready, takeoff.Closed, takeoff.StatedArea:
		return true
	}
	return false
}
