package schedule

import (
	"fmt"
	"slices"
	"strings"
)

// rowsWord writes a list of row numbers in words: "row 4", "rows 1 to 3".
func rowsWord(rows []int) string {
	n := len(rows)
	switch {
	case n == 1:
		return fmt.Sprintf("row %d", rows[0])
	case rows[n-1]-rows[0] == n-1:
		return fmt.Sprintf("rows %d to %d", rows[0], rows[n-1])
	}
	return fmt.Sprintf("%d rows from %d to %d", n, rows[0], rows[n-1])
}

// times writes how often: "once", "12 times".
func times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// tally counts what happens row by row, to be told once at the end.
type tally []*tallied

type tallied struct {
	format, about string
	more          []string // of those of which the first is told: the next ones
	rows          []int    // the first and the last
	count         int
}

// add counts once what format says of about, in a row.
func (y *tally) add(format, about string, row int) {
	i := y.of(format, about)
	if i < 0 {
		i = len(*y)
		*y = append(*y, &tallied{format: format, about: about, rows: []int{row, row}})
	}
	x := (*y)[i]
	if x.count > 0 && about != x.about && len(x.more) < mostQuoted && !slices.Contains(x.more, about) {
		x.more = append(x.more, about)
	}
	x.count++
	x.rows[1] = row
}

// mostQuoted is how many more texts than the first are quoted.
const mostQuoted = 4

// merge adds what was counted further down.
func (y *tally) merge(below tally) {
	for _, x := range below {
		y.add(x.format, x.about, x.rows[0])
		i := y.of(x.format, x.about)
		(*y)[i].count += x.count - 1
		for _, text := range x.more {
			if z := (*y)[i]; len(z.more) < mostQuoted && !slices.Contains(z.more, text) {
				z.more = append(z.more, text)
			}
		}
		(*y)[i].rows[1] = x.rows[1]
	}
}

// of is where something is counted, or -1.
func (y *tally) of(format, about string) int {
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

// noteCounts tells what was counted so far.
func (t *table) noteCounts() {
	t.noteWords()
	for _, x := range t.told {
		t.note("%s", x)
	}
	t.told = nil
	for i, c := range subColumns {
		if n := t.over.rows[i]; n > 0 {
			t.note("the %s of %s is taken from sub-headings", c.Heading(), plural(n, "row"))
		}
	}
	for i, c := range subColumns {
		if n := t.over.named[i]; n > 0 {
			t.note("the %s of %s is taken from the name of the sheet", c.Heading(), plural(n, "row"))
		}
	}
	t.over.rows, t.over.named = [2]int{}, [2]int{}
}

func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
