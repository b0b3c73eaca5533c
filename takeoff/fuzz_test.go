package takeoff

import (
	"math"
	"strconv"
	"strings"
	"testing"
	"time"
)

// FuzzLoadBasis: any text is a basis that can be measured on, or an error; and a
// basis written out again is the same.
func FuzzLoadBasis(f *testing.F) {
	for _, name := range basisNames {
		data, err := basisFiles.ReadFile("bases/" + name + ".toml")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(strings.Replace(string(data), `name = "`, `name = "own `, 1))
	}
	f.Fuzz(func(t *testing.T, text string) {
		b, err := LoadBasis(strings.NewReader(text), "fuzz.toml")
		if (b == nil) != (err != nil) || err != nil && !strings.Contains(err.Error(), "fuzz.toml") {
			t.Fatalf("basis %v and error %v", b, err)
		}
		if err != nil {
			return
		}
		if wrong := b.Check(); wrong != "" || b.Name == "" || b.Source == "" || findBasis(b.Name) != nil {
			t.Fatalf("%+v: %s", b, wrong)
		}
	})
}

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
		if b, ok := parseBlank(s, number); ok {
			if b.Never && (b.Must || b.Given) || !b.Given && b.Price != 0 || !(b.Price >= 0 && b.Price <= maxMinutes) {
				t.Fatalf("%q: %+v", s, b)
			}
		} else if b != (BlankRule{}) {
			t.Fatalf("%q: %+v", s, b)
		}
		if sign, ok := ParseSign(s); ok && sign != "" && sign != "positive" && sign != "negative" {
			t.Fatalf("%q: %q", s, sign)
		}
	})
}
