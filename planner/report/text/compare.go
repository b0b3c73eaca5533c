package text

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// Compare writes variants of one plan, one a line.
func Compare(w io.Writer, v *report.Compare) error {
	b, u := bufio.NewWriter(w), v.Units
	fmt.Fprintf(b, "%s of one plan, side by side\n\n", show.Count(len(v.Variants), "variant"))
	paragraph(b, "schedule  ", v.Schedule.File)
	paragraph(b, "as asked  ", strings.Join(nonempty(v.Settings.Rig, "headroom "+plain(v.Settings.Headroom), "scheme "+v.Settings.Scheme, mark("class ", v.Settings.Class), testPressure(&v.Settings, u)), ", ")+" where the schedule doesn't say, "+aimWords(v.Settings.Aim))
	b.WriteString("\n")
	writeTable(b, []Column{
		{Head: "variant", Max: 30}, {Head: "tests", Align: Right}, {Head: "under range", Align: Right}, {Head: "over range", Align: Right},
		{Head: "cuts", Align: Right}, {Head: "blanks", Align: Right}, {Head: "cuts min", Align: Right}, {Head: "all min", Align: Right},
		{Head: "untested joint " + u.Unit(units.Length), Align: Right}, {Head: "not tested " + u.Unit(units.Area), Align: aligned(u)}, {Head: "rows refused", Align: Right}, {Head: "proof", Max: 12},
	}, func(row func(...string)) {
		for i := range v.Variants {
			x := &v.Variants[i]
			if x.Why != "" {
				row(x.Name, "no plan")
				continue
			}
			row(x.Name, strconv.Itoa(x.Tests), strconv.Itoa(x.UnderRange), strconv.Itoa(x.OverRange), strconv.Itoa(x.Cuts), strconv.Itoa(x.Blanks),
				fixed(x.BlankMinutes, 0), fixed(x.TotalMinutes, 0), u.Fixed(units.Length, x.UntestedJoints), area(u, x.Outside), strconv.Itoa(x.Refused), x.Proof)
		}
	})
	for i := range v.Variants {
		if x := &v.Variants[i]; x.Why != "" {
			paragraph(b, "  - ", x.Name+": "+x.Why)
		}
	}
	b.WriteString("\n")
	paragraph(b, "", "Untested joints are those of the cuts: they are closed after the tests. All minutes are tests and cuts; capping open ends comes on top and is the same for all.")
	return b.Flush()
}
