package risk

import (
	"fmt"
	"io"
	"math"
	"strings"
	"testing"
)

func stringsReader(s string) io.Reader { return strings.NewReader(s) }

func TestPresets(t *testing.T) {
	// Medians and spreads with the chance that a section fails, worked out by hand
	// from tables of the normal distribution: ln(0.6) / ln 2 = -0.737 -> 23 %.
	want := map[string]float64{"pre-tested": 0.23, "witnessed-first": 0.39, "good": 0.09, "gasketed": 0.01, "half-fail": 0.5, "no-habit": 0.88}
	for _, name := range Presets() {
		p, err := Preset(name)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(p.Fail()-want[name]) > 0.006 || p.Title == "" || len(p.Figures) < 8 {
			t.Errorf("%s: fails with %.3f, want %.2f", name, p.Fail(), want[name])
		}
		for _, f := range p.Figures {
			published := (name == "half-fail" || name == "no-habit") && f.Key == "median"
			if published == (f.Basis == Assumption) {
				t.Errorf("%s, %s: basis %q", name, f.Key, f.Basis)
			}
		}
	}
	if _, err := Preset("optimistic"); err == nil || !strings.Contains(err.Error(), "pre-tested") {
		t.Errorf("%v", err)
	}
}

func TestPriorFaults(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"median = 0\n", "median = 0: expected a ratio"}, {"spread = 1\n", "spread = 1: expected a factor"}, {"job_share = 1.5\n", "expected a share, 0 to 1"},
		{"retest_pass = 0.5\nretest_median = 0.5\n", "two words on the same thing"}, {"retests_most = 2.5\n", "retests_most = 2.5: has a point"}, {"mean = 1\n", "unknown key"},
	} {
		if _, err := Load(strings.NewReader(tt.text), "prior.toml"); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%q: %v, want %s", tt.text, err, tt.want)
		}
	}
}

const results = "area_m2,class,leak_over_limit,passed_first_time,job\n"

// By hand: prior median 1 (m = 0), spread e (s = 1), weight 4; four results of
// e^0.5 and e^-0.5, two each, from four jobs, so n = 4, x = 0, SS = 4 x 0.25 = 1:
// mean 0, variance (4 x 1 + 1) / 8 = 0.625, spread e^0.790569 = 2.2047. Then with
// all four from one job and job_share 0.5: n = 4 / (1 + 3 x 0.5) = 1.6, SS
// counts for 0.4: variance (4 + 0.4) / 5.6 = 0.785714, spread 2.4264.
func TestUpdateByHand(t *testing.T) {
	p := priorOf(t, fmt.Sprintf("median = 1\nspread = %.12f\nweight = 4\njob_share = 0.5\n", math.E))
	for _, tt := range []struct {
		jobs         [4]string
		counts, want float64
	}{{[4]string{"a", "b", "c", "d"}, 4, 2.2047}, {[4]string{"a", "a", "a", "a"}, 1.6, 2.4264}} {
		text := results
		for i, leak := range []float64{0.5, 0.5, -0.5, -0.5} {
			text += fmt.Sprintf("50,B,%.9f,%s,%s\n", math.Exp(leak), map[bool]string{true: "no", false: "yes"}[leak > 0], tt.jobs[i])
		}
		o, err := Update(p, strings.NewReader(text), "results.csv")
		if err != nil {
			t.Fatal(err)
		}
		past := o.Past()
		if math.Abs(o.Median-1) > 1e-6 || math.Abs(o.Spread-tt.want) > 1e-4 || past.Counts != tt.counts || past.Passed != 2 || past.Before.Spread != p.Spread || past.After.Spread != o.Spread {
			t.Errorf("%v: median %g, spread %g, %+v", tt.jobs, o.Median, o.Spread, past)
		}
		if p.Past() != nil || p.Median != 1 || !strings.Contains(o.Figures[0].Basis, "updated by 4 results") || o.Figures[0].Basis == p.Figures[0].Basis {
			t.Errorf("the prior itself was changed, or the new one doesn't say so: %+v", o.Figures[0])
		}
	}
}

// With many results the prior's own figures no longer matter.
func TestResultsWin(t *testing.T) {
	var b strings.Builder
	b.WriteString(results)
	for i := range 5000 {
		z := normal.Quantile((float64(i) + 0.5) / 5000)
		r := 0.3 * math.Exp(z*math.Log(1.7))
		passed := "yes"
		if r > 1 {
			passed = "no"
		}
		fmt.Fprintf(&b, "40,C,%.9f,%s,job %d\n", r, passed, i)
	}
	p, _ := Default()
	o, err := Update(p, strings.NewReader(b.String()), "results.csv")
	if err != nil || math.Abs(o.Median-0.3) > 0.002 || math.Abs(o.Spread-1.7) > 0.01 || math.Abs(o.Past().Spread-1.7) > 0.001 {
		t.Errorf("median %g, spread %g (%v)", o.Median, o.Spread, err)
	}
}

func TestResultFaults(t *testing.T) {
	p, _ := Default()
	for _, tt := range []struct{ text, want string }{
		{"area_m2,class\n", "no heading leak_over_limit"}, {"area_m2,class,leak_over_limit,passed_first_time,gauge\n", `heading "gauge" isn't known`},
		{results, "has no results"}, {results + "50,B,0.5,perhaps,\n", `row 2: passed_first_time = "perhaps": expected yes or no`},
		{results + "50,B,0.5,yes,\n50,B,1.5,yes,\n", `row 3: leak_over_limit = "1.5": expected at most 1 where passed_first_time says yes`},
		{results + "50,B,-1,no,\n", "row 2: leak_over_limit"}, {results + "much,B,0.5,yes,\n", "row 2: area_m2"},
	} {
		if _, err := Update(p, strings.NewReader(tt.text), "results.csv"); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%q\n got %v\nwant %s", tt.text, err, tt.want)
		}
	}
	// Passes without a leak are counted and move nothing.
	o, err := Update(p, strings.NewReader(results+"50,B,,yes,\n50,B,,no,\n"), "results.csv")
	if err != nil || o.Median != p.Median || o.Past().Passed != 1 || len(o.Past().Notes) != 1 {
		t.Errorf("%+v (%v)", o.Past(), err)
	}
}
