package terms

import (
	"math"
	"strconv"
	"testing"
	"time"
)

// FuzzWords: what a cell says of times, prices and sides is understood whole, or
// not at all; and what is understood reads back.
func FuzzWords(f *testing.F) {
	for _, s := range []string{"", "2026-03-14", "17", "1e5", "-1", "NaN", "must 12", "must", "no", "12.5", "mustard", "negative", "0x10", "1_000", "Inf", "2026-02-30"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if m, ok := ParseMoment(s); ok {
			again, ok := ParseMoment(m.Text)
			if !ok || again != m || m.Given != (s != "") || math.IsNaN(m.Value) || math.IsInf(m.Value, 0) {
				t.Fatalf("%q: %+v, %+v", s, m, again)
			}
			if later, ok := m.Later(1); ok && later.Value != m.Value+1 {
				t.Fatalf("the day after %q: %+v", s, later)
			}
			if d, err := time.Parse("2006-01-02", s); (err == nil) != m.date || err == nil && d.Unix() != int64(m.Value)*86400 {
				t.Fatalf("%q: %+v", s, m)
			}
		} else if m != (Moment{}) {
			t.Fatalf("%q: %+v", s, m)
		}
		number := func(s string) (float64, bool) {
			v, err := strconv.ParseFloat(s, 64)
			return v, err == nil && !math.IsNaN(v)
		}
		if b, ok := ParseBlank(s, number); ok {
			if b.Never && (b.Must || b.Given) || !b.Given && b.Price != 0 || !(b.Price >= 0 && b.Price <= MostMinutes) {
				t.Fatalf("%q: %+v", s, b)
			}
		} else if b != (Blank{}) {
			t.Fatalf("%q: %+v", s, b)
		}
		if sign, ok := ParseSign(s); ok && sign != "" && sign != "positive" && sign != "negative" {
			t.Fatalf("%q: %q", s, sign)
		}
	})
}
