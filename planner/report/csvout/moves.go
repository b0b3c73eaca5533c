package csvout

import (
	"io"

	"blankoff/planner/report"
)

// moveRow is one fit of one blank: fit (from the store), turn (it stays at its
// joint) or move.
type moveRow struct {
	Size    words `csv:"size"`
	No      int   `csv:"no"`
	Step    int   `csv:"step"`
	Section words `csv:"section"`
	At      words `csv:"at"`
	How     words `csv:"how"`
}

// Moves writes the way of every blank through the tests, one fit a row.
func Moves(w io.Writer, v *report.Plan) error {
	var rows []moveRow
	if v.Blanking != nil {
		for i := range v.Blanking.Moving {
			m := &v.Blanking.Moving[i]
			for k, s := range m.Steps {
				rows = append(rows, moveRow{words(m.Text), m.No, k + 1, words(s.Section), words(s.At), words(s.How)})
			}
		}
	}
	return write(w, rows, func(r *moveRow) moveRow { return *r })
}
