package takeoff

import (
	"fmt"
	"strings"

	"blankoff/takeoff/terms"
)

// Tells reports whether a day is of the kind that the schedule tells times by,
// dates or numbers; timed is false where it tells none.
func (t *Takeoff) Tells(m terms.Moment) (same, timed bool) { return m.Date() == t.dates, t.timed }

// times is what a row of a batch says of when it can be tested.
type times struct {
	line          int32
	ready, closed string // as typed
}

// readTimes keeps from when and until when the row can be tested: whether it
// can be understood depends on the rows before.
func (b *Batch) readTimes(r *Row) {
	if r.Text[Ready] != "" || r.Text[Closed] != "" {
		b.times = append(b.times, times{int32(len(b.book.Lines) - 1), strings.Clone(r.Text[Ready]), strings.Clone(r.Text[Closed])})
	}
}

// takeTimes takes from when and until when row i can be tested.
func (t *Takeoff) takeTimes(i int, when *times) {
	at := t.at(&t.book.Lines[i])
	var ready, closed terms.Moment
	for _, w := range []struct {
		c     Column
		typed string
		to    *terms.Moment
	}{{Ready, when.ready, &ready}, {Closed, when.closed, &closed}} {
		m, ok := terms.ParseMoment(w.typed)
		switch {
		case !ok:
			t.fault(i, at.Fault(w.c.Heading(), w.typed, "a date as 2026-03-14, or the number of a day or stage",
				fmt.Sprintf("%s '%s' isn't understood", w.c.Heading(), w.typed)))
		case m.Given && t.timed && m.Date() != t.dates:
			t.fault(i, at.Fault(w.c.Heading(), w.typed, "dates throughout, or numbers throughout",
				fmt.Sprintf("%s '%s' is of another kind than in the rows before; write dates or numbers, not both", w.c.Heading(), w.typed)))
		case m.Given:
			t.timed, t.dates, *w.to = true, m.Date(), m
		}
	}
	if ready.Given && closed.Given && closed.Value < ready.Value {
		t.fault(i, at.Fault("closed", closed.Text, "not before ready ("+ready.Text+")",
			fmt.Sprintf("closed on %s before it is ready on %s: it could never be tested", closed.Text, ready.Text)))
	}
	if !t.options.TotalsOnly {
		t.Items[i].Ready, t.Items[i].Closed = ready, closed
	}
}
