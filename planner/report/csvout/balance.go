package csvout

import (
	"io"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

type balanceRow struct {
	What   words   `csv:"what"`
	Piece  words   `csv:"piece"`
	Reason words   `csv:"reason"`
	Rows   *int    `csv:"rows"`
	Area   *number `csv:"area_m2"`
}

// Balance writes that nothing was lost: the rows read are those used, excluded and
// refused, and the area of the takeoff is that of the sections and of the pieces in
// none of them, each with its reason. An area that isn't known is empty.
func Balance(w io.Writer, v *report.Plan) error {
	u, s := v.Units, &v.Schedule
	area := func(m2 float64) *number { return figure(u, units.Area, m2) }
	known := func(m2 float64, rows int) *number {
		if m2 == 0 && rows > 0 {
			return nil
		}
		return area(m2)
	}
	rows := []balanceRow{
		{What: "rows read", Rows: &s.RowsRead},
		{What: "rows used", Rows: &s.RowsUsed},
		{What: "rows excluded", Rows: &s.RowsExcluded, Area: known(s.OutM2, s.RowsExcluded)},
		{What: "rows refused", Rows: &s.RowsRefused, Area: known(s.RefusedM2, s.RowsRefused)},
		{What: "takeoff", Area: area(v.Balance.Takeoff)},
		{What: "in sections", Area: area(v.Balance.Sections)},
	}
	if t := v.Tested(); !t.All() {
		rows = append(rows, balanceRow{What: "of these to be tested", Area: area(t.Area)})
		for i := range t.Left {
			rows = append(rows, balanceRow{What: "of these not tested", Reason: words(t.Left[i].Why), Area: area(t.Left[i].Area)})
		}
	}
	rows = append(rows, balanceRow{What: "in no section", Area: area(v.Balance.Outside)})
	for i := range v.Outside {
		p := &v.Outside[i]
		rows = append(rows, balanceRow{What: "piece in no section", Piece: words(show.Span(p)), Reason: words(p.Reason), Area: area(p.Area)})
	}
	rows = append(rows, balanceRow{What: "difference", Area: area(v.Balance.Difference)})
	return write(w, u, rows, func(r *balanceRow) balanceRow { return *r })
}
