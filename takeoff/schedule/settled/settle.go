// Package settled settles how the columns of a table are read where the headings leave it open:
// by the cells below them, by each other, and by the lines above.
package settled

import (
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
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
	t.sidesAB()
	t.sidesOneTwo()
	t.sizeInCells()
	t.endsByCells()
	t.ductByCells()
	t.byCells()
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
