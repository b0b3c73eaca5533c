package text

import (
	"bufio"
	"fmt"
	"io"

	"blankoff/planner/report/show"
	"blankoff/takeoff"
)

// Faults writes every fault: where it is, what stands there, what is wrong and
// what was expected. Like faults on several rows are told once. Nothing is
// written where there is none.
func Faults(w io.Writer, faults []takeoff.Fault) error {
	if len(faults) == 0 {
		return nil
	}
	b := bufio.NewWriter(w)
	kinds, together := show.Gather(faults), ""
	if len(kinds) < len(faults) {
		together = " (like ones together)"
	}
	fmt.Fprintf(b, "%s%s:\n", show.Count(len(faults), "fault"), together)
	for _, f := range kinds {
		paragraph(b, "  ", f.Place())
		if text := f.Text(); text != "" {
			paragraph(b, "    ", text)
		}
	}
	return b.Flush()
}
