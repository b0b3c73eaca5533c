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
	more          []quoted // of those of which the first is told: the next ones
	most          int      // of them
	rows          []int    // the first and the last
	count         int
}

// quoted is a text of the schedule with its row.
type quoted struct {
	text string
	row  int
}

// How many more texts than the first are quoted, and how many where each has to be read.
const (
	MostQuoted = 4
	mostToRead = 11
)

// Add counts once what format says of about, in a row.
func (y *Tally) Add(format, about string, row int) { y.add(format, about, row, MostQuoted) }

// AddToRead is Add for texts that somebody has to read: more of them are quoted.
func (y *Tally) AddToRead(format, about string, row int) { y.add(format, about, row, mostToRead) }

func (y *Tally) add(format, about string, row, most int) *tallied {
	i := y.of(format, about)
	if i < 0 {
		i = len(*y)
		*y = append(*y, &tallied{format: format, about: about, rows: []int{row, row}, most: most})
	}
	x := (*y)[i]
	x.quote(quoted{about, row})
	x.count++
	x.rows[1] = row
	return x
}

// quote keeps a text that isn't quoted yet.
func (x *tallied) quote(q quoted) {
	if q.text != x.about && len(x.more) < x.most && !slices.ContainsFunc(x.more, func(m quoted) bool { return m.text == q.text }) {
		x.more = append(x.more, q)
	}
}

// Merge adds what was counted further down.
func (y *Tally) Merge(below Tally) {
	for _, x := range below {
		z := y.add(x.format, x.about, x.rows[0], x.most)
		z.count += x.count - 1
		for _, q := range x.more {
			z.quote(q)
		}
		z.rows[1] = x.rows[1]
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
	sep := ", then"
	for _, q := range x.more {
		what += fmt.Sprintf("%s '%s' (row %d)", sep, q.text, q.row)
		sep = ","
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
