package takeoff

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// Moment is a date or a number (of a day or a stage), for ready and closed.
type Moment struct {
	Given bool
	Value float64 // days since 1970-01-01, or the number
	Text  string  // as typed
	date  bool
}

// ParseMoment reads 2026-03-14 or a number; "" is not given. Other ways of
// writing dates have more than one reading.
func ParseMoment(s string) (Moment, bool) {
	if s == "" {
		return Moment{}, true
	}
	if d, err := time.Parse("2006-01-02", s); err == nil {
		return Moment{true, float64(d.Unix()) / 86400, s, true}, true
	}
	if v, err := strconv.ParseFloat(s, 64); err == nil && v >= 0 && v < 1e6 {
		return Moment{true, v, s, false}, true
	}
	return Moment{}, false
}

// Later is so many calendar days later, or earlier for a negative number; ok is
// false unless the moment is a date, because a number may be that of a stage.
func (m Moment) Later(days int) (later Moment, ok bool) {
	if !m.Given || !m.date {
		return Moment{}, false
	}
	v := m.Value + float64(days)
	return Moment{true, v, time.Unix(int64(v)*86400, 0).UTC().Format("2006-01-02"), true}, true
}

// Tells reports whether a day is of the kind that the schedule tells times by,
// dates or numbers; timed is false where it tells none.
func (t *Takeoff) Tells(m Moment) (same, timed bool) { return m.date == t.dates, t.timed }

// times is what a row of a batch says of when it can be tested.
type times struct {
	line          int32
	ready, closed string // as typed
}

// readTimes keeps from when and until when the row can be tested: whether it
// can be understood depends on the rows before.
func (b *Batch) readTimes(r *Row) {
	if r.Text[Ready] != "" || r.Text[Closed] != "" {
		b.times = append(b.times, times{int32(len(b.lines) - 1), strings.Clone(r.Text[Ready]), strings.Clone(r.Text[Closed])})
	}
}

// takeTimes takes from when and until when row i can be tested.
func (t *Takeoff) takeTimes(i int, when *times) {
	at := t.at(&t.lines[i])
	var ready, closed Moment
	for _, w := range []struct {
		c     Column
		typed string
		to    *Moment
	}{{Ready, when.ready, &ready}, {Closed, when.closed, &closed}} {
		m, ok := ParseMoment(w.typed)
		switch {
		case !ok:
			t.fault(i, at.Fault(w.c.Heading(), w.typed, "a date as 2026-03-14, or the number of a day or stage",
				fmt.Sprintf("%s '%s' isn't understood", w.c.Heading(), w.typed)))
		case m.Given && t.timed && m.date != t.dates:
			t.fault(i, at.Fault(w.c.Heading(), w.typed, "dates throughout, or numbers throughout",
				fmt.Sprintf("%s '%s' is of another kind than in the rows before; write dates or numbers, not both", w.c.Heading(), w.typed)))
		case m.Given:
			t.timed, t.dates, *w.to = true, m.date, m
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
