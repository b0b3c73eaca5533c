package terms

import (
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

// Date reports whether it is a date and no number.
func (m Moment) Date() bool { return m.date }

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
