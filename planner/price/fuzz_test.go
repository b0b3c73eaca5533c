package price_test

import (
	"strings"
	"testing"

	"blankoff/planner/price"
)

// Either an error that names the file, or rates that a bill can be made of: an
// amount of every kind is there in whole minor units, within bounds, and reads
// back from the text that is printed of it.
func FuzzLoad(f *testing.F) {
	f.Add(rates)
	f.Add("currency=\"SEK\"\nminor_digits=0\n[rates]\ntest=1\n[[blank]]\nmake=1\n")
	f.Add("currency=\"KWD\"\nminor_digits=3\nmarkup_percent=0.01\n[allowances]\nretests=\"expected\"\nblank_fits=3\nblank_fit=10\n")
	f.Fuzz(func(t *testing.T, text string) {
		r, err := price.Load(strings.NewReader(text), "fuzz.toml")
		if (r != nil) == (err != nil) {
			t.Fatalf("rates %v and error %v", r, err)
		}
		if err != nil {
			if !strings.HasPrefix(err.Error(), "fuzz.toml") {
				t.Fatalf("no file in: %v", err)
			}
			return
		}
		for _, m := range amounts(r) {
			sound(t, r.Currency, m)
		}
		if r.Markup < 0 || r.Markup > 100_000 || r.ValidDays < 0 || len(r.Currency.Code) != 3 {
			t.Fatalf("%+v", r)
		}
		last := map[string]float64{}
		for _, b := range r.Blanks {
			if up, ok := last[b.Shape]; ok && b.UpTo <= up {
				t.Fatalf("blanks up to %g after %g", b.UpTo, up)
			}
			last[b.Shape] = b.UpTo
		}
	})
}

// amounts are all amounts of a rates file.
func amounts(r *price.Rates) []price.Money {
	list := []price.Money{r.Minimum, r.MinimumTrip}
	add := func(m *price.Money) {
		if m != nil {
			list = append(list, *m)
		}
	}
	for _, m := range r.Unit {
		list = append(list, m)
	}
	for _, h := range r.Hire {
		add(h.Day)
		add(h.Delivery)
	}
	for _, b := range r.Blanks {
		add(b.Make)
		add(b.Fit)
	}
	if g := r.Girth; g != nil {
		add(g.MakeBase)
		add(g.MakePerMetre)
		add(g.FitBase)
		add(g.FitPerMetre)
	}
	for _, p := range r.Provisional {
		list = append(list, p.Amount)
	}
	return list
}

// sound holds an amount to its bounds and to its text.
func sound(t *testing.T, c price.Currency, m price.Money) {
	text := c.Text(m)
	digits := strings.TrimLeft(strings.NewReplacer(" ", "", ".", "", "\u00a0", "", "\u202f", "").Replace(text), "0")
	back := int64(0)
	for _, d := range digits {
		if d < '0' || d > '9' {
			t.Fatalf("%d is written as %q", m, text)
		}
		back = 10*back + int64(d-'0')
	}
	if m < 0 || m > 1_000_000_000_000 || back != int64(m) {
		t.Fatalf("%d is written as %q, which reads %d", m, text, back)
	}
}
