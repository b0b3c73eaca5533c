package takeoff

import (
	"fmt"
	"strconv"
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

// readTimes reads from when and until when the row can be tested.
func (t *Takeoff) readTimes(i int, r *Row) {
	it := &t.Items[i]
	for _, w := range []struct {
		c  Column
		to *Moment
	}{{Ready, &it.Ready}, {Closed, &it.Closed}} {
		m, ok := ParseMoment(r.Text[w.c])
		switch {
		case !ok:
			t.fault(i, it.At.Fault(w.c.Heading(), r.Text[w.c], "a date as 2026-03-14, or the number of a day or stage",
				fmt.Sprintf("%s '%s' isn't understood", w.c.Heading(), r.Text[w.c])))
		case m.Given && t.timed && m.date != t.dates:
			t.fault(i, it.At.Fault(w.c.Heading(), r.Text[w.c], "dates throughout, or numbers throughout",
				fmt.Sprintf("%s '%s' is of another kind than in the rows before; write dates or numbers, not both", w.c.Heading(), r.Text[w.c])))
		case m.Given:
			t.timed, t.dates, *w.to = true, m.date, m
		}
	}
	if it.Ready.Given && it.Closed.Given && it.Closed.Value < it.Ready.Value {
		t.fault(i, it.At.Fault("closed", it.Closed.Text, "not before ready ("+it.Ready.Text+")",
			fmt.Sprintf("closed on %s before it is ready on %s: it could never be tested", it.Closed.Text, it.Ready.Text)))
	}
}
