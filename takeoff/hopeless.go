package takeoff

import "fmt"

// Limits of a schedule as a whole; beyond them it isn't one, or is damaged.
const (
	MostRows   = 4_000_000
	mostFaults = 50_000
	firstRows  = 20_000 // of which one at least must be of use
)

// Hopeless says why no more rows should be added: there are too many of them, too
// many faults, or nothing of use in the first rows. It names the first fault, so
// that a mistake which goes through all rows can be mended.
func (t *Takeoff) Hopeless() error {
	n := len(t.Items)
	switch {
	case n > MostRows:
		return fmt.Errorf("there are more than %d rows; split the schedule, by system say", MostRows)
	case len(t.Faults) > mostFaults:
		return fmt.Errorf("there are more than %d faults in the first %d rows, the first in %s; mend these first", mostFaults, n, t.first())
	case n == firstRows && t.used == 0:
		return fmt.Errorf("none of the first %d rows can be used, the first fault is in %s; mend these first", n, t.first())
	}
	return nil
}

// first is the first fault in one line.
func (t *Takeoff) first() string {
	f := t.Faults[0]
	return fmt.Sprintf("%s: %s", Place{File: f.File, Sheet: f.Sheet, Row: f.Row}, f.Message)
}
