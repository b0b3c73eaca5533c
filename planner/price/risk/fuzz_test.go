package risk

import (
	"strings"
	"testing"
)

// Either an error that names the file, or a prior within its bounds; and what past
// results make of a prior is one again, between the prior and the results.
func FuzzPriorAndResults(f *testing.F) {
	const results = "area_m2,class,leak_over_limit,passed_first_time,job\n40,B,0.62,yes,J1\n55,B,1.31,no,J1\n30,C,,yes,J2\n"
	f.Add("", results)
	f.Add("median = 0.7\nspread = 1.9\njob_share = 0.4\n", results)
	f.Add("median = 0.7\nretest_median = 0.4\nmost_retests = 3\n", "leak_over_limit,job\n0.5,\n")
	f.Fuzz(func(t *testing.T, text, past string) {
		p, err := Load(strings.NewReader(text), "fuzz.toml")
		if (p != nil) == (err != nil) || err != nil && !strings.Contains(err.Error(), "fuzz.toml") {
			t.Fatalf("prior %v and error %v", p, err)
		}
		if err != nil {
			return
		}
		bounded(t, p)
		q, err := Update(p, strings.NewReader(past), "fuzz.csv")
		if (q != nil) == (err != nil) || err != nil && !strings.Contains(err.Error(), "fuzz.csv") {
			t.Fatalf("updated %v and error %v", q, err)
		}
		if err != nil {
			return
		}
		bounded(t, q)
	})
}

// bounded holds the figures of a prior to what a file may say.
func bounded(t *testing.T, p *Prior) {
	t.Helper()
	for _, x := range p.terms() {
		if v := *x.to; !(v >= x.low && v <= x.most) && v != 0 {
			t.Fatalf("%s is %g, of %g to %g", x.key, v, x.low, x.most)
		}
	}
}
