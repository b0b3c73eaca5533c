package csvout

import (
	"io"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

type sampleRow struct {
	What words `csv:"what"`
	Text words `csv:"text"`
}

// Sample writes which sections a sample takes and how it came about: what was
// asked for and reached, the rule and the seed of the draw, the chances of finding
// what is bad. Its heading row stands alone where there is none.
func Sample(w io.Writer, v *report.Plan) error {
	var rows []sampleRow
	if v.Sample != nil {
		rows = append(rows, sampleRow{"sample", words(show.SampleTitle(v))})
		for _, l := range show.SampleLines(v) {
			rows = append(rows, sampleRow{words(l.Word), words(l.Text)})
		}
		for _, n := range v.Sample.Notes {
			rows = append(rows, sampleRow{"note", words(n)})
		}
	}
	return write(w, v.Units, rows, func(r *sampleRow) sampleRow { return *r })
}
