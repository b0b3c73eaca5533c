package columns

import (
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// SettleAll settles what each column is, and tells what isn't used: before are the columns
// that stood above these headings, at a row; lined: a line on units stands right above them.
func (t *Reading) SettleAll(before []Spec, row int, lined bool) {
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
	t.report()
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
	t.Seldom = t.UnitsAt > 0 || slices.ContainsFunc(t.Specs, func(s Spec) bool { return s.parted > 0 || s.paired || s.inches > 0 })
	t.OrDiameter = slices.ContainsFunc(t.Specs, func(s Spec) bool {
		return s.Used && s.Verdict == headings.Known && s.To() == takeoff.DimColumn(fittings.Width) && slices.ContainsFunc(headings.Tokens(s.Typed), func(w string) bool {
			return w == "d" || w == "dia" || w == "diam" || w == "diameter"
		})
	})
}

// settleUnits finds the units of columns that state none: a line right above headings
// that stand anew comes before what those before them say.
func (t *Reading) settleUnits(before []Spec, row int, lined bool) {
	if lined {
		t.sheetUnits()
	}
	t.carryUnits(before)
	t.unitsAbove(row)
	if !lined {
		t.sheetUnits()
	}
}
