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
// that a mistake which goes through all rows can be mended. It is about the rows
// that were taken in; see Gather.
func (t *Takeoff) Hopeless() error { return t.hopeless }

// despair finds out, once n rows were taken, whether it is hopeless.
func (t *Takeoff) despair(n int) {
	switch {
	case t.hopeless != nil:
	case n > MostRows:
		t.hopeless = fmt.Errorf("there are more than %d rows; split the schedule, by system say", MostRows)
	case len(t.Faults) > mostFaults:
		t.hopeless = fmt.Errorf("there are more than %d faults in the first %d rows, the first in %s; mend these first", mostFaults, n, t.firstFault())
	case n == firstRows && t.used == 0:
		t.hopeless = fmt.Errorf("none of the first %d rows can be used, the first fault is in %s; mend these first", n, t.firstFault())
	}
}

// firstFault is the first fault in one line.
func (t *Takeoff) firstFault() string {
	f := t.Faults[0]
	return fmt.Sprintf("%s: %s", Place{File: f.File, Sheet: f.Sheet, Row: f.Row}, f.Message)
}
