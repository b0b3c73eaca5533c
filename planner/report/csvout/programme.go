package csvout

import (
	"io"

	"blankoff/planner/report"
)

type slotRow struct {
	Visit   int   `csv:"visit"`
	Day     int   `csv:"day"`
	On      words `csv:"on"`
	Section words `csv:"section"`
	Level   words `csv:"rig_level"`
	Move    tenth `csv:"moving_minutes"`
	Cuts    tenth `csv:"cuts_minutes"`
	Ends    tenth `csv:"ends_minutes"`
	SetUp   tenth `csv:"set_up_minutes"`
	Hold    tenth `csv:"hold_minutes"`
	Rest    tenth `csv:"rest_minutes"`
	All     tenth `csv:"minutes"`
	LastDay int   `csv:"last_day"`
	Retest  words `csv:"retest_from"`
}

type kitRow struct {
	Group  words `csv:"group"`
	What   words `csv:"what"`
	Number *int  `csv:"number"`
	Why    words `csv:"why"`
}

// Programme writes the tests in their order, one a row.
func Programme(w io.Writer, v *report.Plan) error {
	var slots []report.Slot
	if v.Programme != nil {
		slots = v.Programme.Slots
	}
	return write(w, slots, func(s *report.Slot) slotRow {
		return slotRow{
			s.Visit, s.Day, words(s.On), words(s.Section), words(s.Level), tenth(s.Move), tenth(s.Cuts), tenth(s.Ends),
			tenth(s.SetUp), tenth(s.Hold), tenth(s.Rest), tenth(s.Minutes), s.LastDay, words(s.Retest),
		}
	})
}

// Kit writes what the tests need, one thing a row; a number is empty where it is
// as many as needed.
func Kit(w io.Writer, v *report.Plan) error {
	return write(w, v.Kit, func(k *report.KitLine) kitRow {
		r := kitRow{Group: words(k.Group), What: words(k.What), Why: words(k.Why)}
		if k.Number > 0 {
			r.Number = &k.Number
		}
		return r
	})
}
