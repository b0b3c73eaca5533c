package text

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"blankoff/takeoff"
)

// likeFaults is a fault on one or more rows.
type likeFaults struct {
	takeoff.Fault
	rows []int
}

// gather puts faults that differ only in their row together, in the order in
// which they first come.
func gather(faults []takeoff.Fault) []likeFaults {
	at := map[takeoff.Fault]int{}
	var out []likeFaults
	for _, f := range faults {
		key := f
		key.Row = 0
		k, ok := at[key]
		if !ok {
			k = len(out)
			at[key] = k
			out = append(out, likeFaults{Fault: key})
		}
		if f.Row > 0 {
			out[k].rows = append(out[k].rows, f.Row)
		}
	}
	return out
}

// Faults writes every fault: where it is, what stands there, what is wrong and
// what was expected. Like faults on several rows are told once. Nothing is
// written where there is none.
func Faults(w io.Writer, faults []takeoff.Fault) error {
	if len(faults) == 0 {
		return nil
	}
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "%s:\n", count(len(faults), "fault"))
	for _, f := range gather(faults) {
		paragraph(b, "  ", f.place())
		text := f.Message
		if f.Expected != "" && !strings.Contains(f.Message, f.Expected) {
			text = strings.TrimSuffix(text, ".") + "; expected " + f.Expected
		}
		if text = strings.TrimPrefix(text, "; "); text != "" {
			paragraph(b, "    ", text)
		}
	}
	return b.Flush()
}

// place is where the fault is and what stands there: "tower.csv, rows 12 to 40
// and 55, width_mm: '6OO'".
func (f *likeFaults) place() string {
	var parts []string
	if f.File != "" {
		parts = append(parts, f.File)
	}
	if f.Sheet != "" {
		parts = append(parts, "sheet "+f.Sheet)
	}
	if text := rowsText(f.rows); text != "" {
		parts = append(parts, text)
	}
	if f.Heading != "" {
		parts = append(parts, f.Heading)
	}
	s := strings.Join(parts, ", ")
	switch {
	case f.Value != "":
		return s + ": '" + f.Value + "'"
	case f.Heading != "" && len(f.rows) > 0:
		return s + ": empty"
	}
	return s
}

// rowsText writes rows as people do: "row 7", "rows 12 to 40 and 55".
func rowsText(rows []int) string {
	var runs []string
	n := 0
	for i := 0; i < len(rows); {
		k := i
		for k+1 < len(rows) && rows[k+1] <= rows[k]+1 && rows[k+1] >= rows[k] {
			k++
		}
		switch from, to := rows[i], rows[k]; {
		case to == from:
			runs = append(runs, fmt.Sprint(from))
		case to == from+1:
			runs = append(runs, fmt.Sprint(from), fmt.Sprint(to))
		default:
			runs = append(runs, fmt.Sprintf("%d to %d", from, to))
		}
		n += rows[k] - rows[i] + 1
		i = k + 1
	}
	switch {
	case n == 0:
		return ""
	case n == 1:
		return "row " + runs[0]
	case len(runs) == 1:
		return "rows " + runs[0]
	}
	last := len(runs) - 1
	return "rows " + strings.Join(runs[:last], ", ") + " and " + runs[last]
}
