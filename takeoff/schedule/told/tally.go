// Package told keeps what is told of the reading of a schedule: faults and notes, what was
// counted row by row, how each sheet was understood, and sheets that may count pieces twice.
package told

import (
	"fmt"
	"slices"
	"strings"
)

// RowsWord writes a list of row numbers in words: "row 4", "rows 1 to 3".
func RowsWord(rows []int) string {
	n := len(rows)
	switch {
	case n == 1:
		return fmt.Sprintf("row %d", rows[0])
	case rows[n-1]-rows[0] == n-1:
		return fmt.Sprintf("rows %d to %d", rows[0], rows[n-1])
	}
	return fmt.Sprintf("%d rows from %d to %d", n, rows[0], rows[n-1])
}

// Times writes how often: "once", "12 times".
func Times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// Tally counts what happens row by row, to be told once at the end.
type Tally []*tallied

type tallied struct {
	format, about string
	more          []string // of those of which the first is told: the next ones
	rows          []int    // the first and the last
	count         int
}

// Add counts once what format says of about, in a row.
func (y *Tally) Add(format, about string, row int) {
	i := y.of(format, about)
	if i < 0 {
		i = len(*y)
		*y = append(*y, &tallied{format: format, about: about, rows: []int{row, row}})
	}
	x := (*y)[i]
	if x.count > 0 && about != x.about && len(x.more) < MostQuoted && !slices.Contains(x.more, about) {
		x.more = append(x.more, about)
	}
	x.count++
	x.rows[1] = row
}

// MostQuoted is how many more texts than the first are quoted.
const MostQuoted = 4

// Merge adds what was counted further down.
func (y *Tally) Merge(below Tally) {
	for _, x := range below {
		y.Add(x.format, x.about, x.rows[0])
		i := y.of(x.format, x.about)
		(*y)[i].count += x.count - 1
		for _, text := range x.more {
			if z := (*y)[i]; text != z.about && len(z.more) < MostQuoted && !slices.Contains(z.more, text) {
				z.more = append(z.more, text)
			}
		}
		(*y)[i].rows[1] = x.rows[1]
	}
}

// of is where something is counted, or -1.
func (y *Tally) of(format, about string) int {
	return slices.IndexFunc(*y, func(x *tallied) bool {
		return x.format == format && (x.about == about || strings.Contains(format, "the first"))
	})
}

// String says what was counted, how often and in which rows.
func (x *tallied) String() string {
	what := x.format
	if x.about != "" {
		what = fmt.Sprintf(x.format, x.about)
	}
	if len(x.more) > 0 {
		what += ", then '" + strings.Join(x.more, "', '") + "'"
	}
	where := fmt.Sprintf("row %d", x.rows[0])
	if x.count > 1 {
		where = fmt.Sprintf("%d, in rows %d to %d", x.count, x.rows[0], x.rows[1])
	}
	return fmt.Sprintf("%s: %s", what, where)
}

// Plural writes a number with what it counts: "1 row", "3 rows".
func Plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
