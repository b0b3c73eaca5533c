package text

import (
	"bufio"
	"fmt"
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// few is the greatest number of lines of the moving list and of the untested
// joints.
const few = 12

// order writes the order of the tests and where the blanks go in it.
func order(b *bufio.Writer, plan *report.Plan) {
	v := plan.Blanking
	switch {
	case v == nil && show.Groupings(plan) != "":
		title(b, "Makes, moves and the order of the tests: not known for groupings")
		return
	case v == nil:
		return
	}
	title(b, "Order of the tests: fewest makes, then fewest moves")
	paragraph(b, "  order     ", some(v.Order, 40))
	paragraph(b, "  blanks    ", show.Needs(v)+"; "+show.Ways(v))
	paragraph(b, "  how good  ", show.OrderWorth(v))
	if len(v.Groupings) > 0 {
		paragraph(b, "  without   ", some(v.Groupings, 30)+": not known for groupings")
	}
	once, shown := 0, 0
	for i := range v.Moving {
		m := &v.Moving[i]
		if len(m.Steps) == 1 {
			once++
		} else if shown++; shown <= few {
			paragraph(b, "  - ", fmt.Sprintf("%s no. %d: %s", m.Text, m.No, show.Way(m, few)))
		}
	}
	if n := shown - few; n > 0 {
		more(b, n, hasAll)
	}
	if once > 0 && shown > 0 {
		fmt.Fprintf(b, "  (%s fitted once)\n", areMore(once))
	}
}

func areMore(n int) string {
	if n == 1 {
		return "1 more is"
	}
	return fmt.Sprintf("%d more are", n)
}

// untested writes the joints that no test covers.
func untested(b *bufio.Writer, u *report.Untested) {
	if u == nil {
		return
	}
	title(b, "Joints of the cuts: closed after the tests of both sides, so in neither")
	paragraph(b, "  ", show.UntestedSum(u))
	writeTable(b, []Column{
		{Head: "cut", Align: Right}, {Head: u.Units.Unit(units.Length), Align: Right}, {Head: "tested in"}, {Head: "with", Max: 40}, {Head: "blanks", Align: Right}, {Head: "min", Align: Right}, {Head: u.Units.Unit(units.Area), Align: Right}, {Head: "or why not", Max: 50},
	}, func(row func(...string)) {
		for i := range u.List[:min(few, len(u.List))] {
			j := &u.List[i]
			if j.Section == "" {
				row(strconv.Itoa(j.Cut), fixed(u.Units.Of(units.Length, j.Metres), 1), "", "", "", "", "", j.Why)
				continue
			}
			row(strconv.Itoa(j.Cut), fixed(u.Units.Of(units.Length, j.Metres), 1), j.Section, strings.Join(j.Takes, ", "), fmt.Sprintf("%+d", j.Blanks), whole(j.Minutes), u.Units.Fixed(units.Area, j.Area), "")
		}
	})
	if n := len(u.List) - few; n > 0 {
		more(b, n, hasAll)
	}
}
