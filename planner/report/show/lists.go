package show

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"blankoff/planner/report"
)

// Names joins the first names of a list, at most so many of them, and says how
// many more there are: "Ground, First (+2)". Where room is over 0, fewer are shown
// if need be to keep within that many letters, but always one.
func Names(names []string, by string, most, room int) string {
	if len(names) == 0 {
		return ""
	}
	for n := min(max(1, most), len(names)); ; n-- {
		text := strings.Join(names[:n], by)
		if rest := len(names) - n; rest > 0 {
			text += fmt.Sprintf(" (+%d)", rest)
		}
		if n == 1 || room <= 0 || utf8.RuneCountInString(text) <= room {
			return text
		}
	}
}

// RowsShort is RowsText for a long list: after so many rows or stretches of rows
// the rest is counted, "rows 2, 5 to 9 and 14 more".
func RowsShort(rows []int, most int) string {
	runs, n := runsOf(rows)
	if len(runs) <= most {
		return rowsText(runs, n)
	}
	var shown []string
	for _, r := range runs[:most] {
		shown = append(shown, r.text...)
		n -= r.rows
	}
	return fmt.Sprintf("rows %s and %d more", strings.Join(shown, ", "), n)
}

// Groupings says how much of a plan is only a grouping: nothing, "part is a
// GROUPING" or "a GROUPING".
func Groupings(v *report.Plan) string {
	n := 0
	for i := range v.Sections {
		if v.Sections[i].Grouping {
			n++
		}
	}
	switch n {
	case 0:
		return ""
	case len(v.Sections):
		return "a GROUPING"
	}
	return "part is a GROUPING"
}

// Blanks is the number of blanks of a section; in a grouping those between its
// rows aren't known: "?", or "3+?" beside the known ones.
func Blanks(s *report.Section) string {
	n := len(s.Blanks)
	switch {
	case !s.Grouping:
		return strconv.Itoa(n)
	case n == 0:
		return "?"
	}
	return strconv.Itoa(n) + "+?"
}

// Flag is what a reader must look at in a section: "UNDER RANGE, grouping".
func Flag(s *report.Section) string {
	var words []string
	if s.UnderRange || s.OverRange {
		words = append(words, strings.ToUpper(State(s)))
	}
	if s.Grouping {
		words = append(words, "grouping")
	}
	return strings.Join(words, ", ")
}

// Whole rounds to a whole number as a spreadsheet does, halves away from zero:
// minutes and N are shown so.
func Whole(v float64) float64 { return math.Round(v) }
