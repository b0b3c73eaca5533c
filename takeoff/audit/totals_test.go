package audit

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"blankoff/takeoff"
)

// made40 is a schedule of three systems, and what each comes to.
func made40(t *testing.T, seed uint64) (*takeoff.Takeoff, map[string]float64) {
	t.Helper()
	for ; ; seed += 1000 {
		g := &generator{Rand: rand.New(rand.NewPCG(seed, 11))}
		tk := measured(t, g.schedule(40, false), nil)
		sums := map[string]float64{}
		for i := range tk.Items {
			sums[tk.Items[i].System] += tk.Items[i].Area
		}
		if len(sums) == 3 {
			return tk, sums
		}
	}
}

func total(by, name string, v float64) takeoff.StatedTotal {
	text := fmt.Sprintf("%.2f", v)
	fmt.Sscan(text, &v)
	return takeoff.StatedTotal{By: by, Name: name, Area: v, Text: text}
}

// TestSumsOfSums: two systems added, a whole system given for a section, all
// systems given for one, everything twice.
func TestSumsOfSums(t *testing.T) {
	for seed := range uint64(6) {
		tk, sums := made40(t, seed)
		all := sums["S1"] + sums["S2"] + sums["S3"]
		half := Section{ID: "T1"}
		for i := range tk.Items {
			if it := &tk.Items[i]; it.System == "S2" {
				half.Spans = append(half.Spans, Span{it.Name(), 1})
			}
		}
		half.Spans = half.Spans[:len(half.Spans)/2]
		for _, tt := range []struct {
			total takeoff.StatedTotal
			key   string
		}{
			{total("system", "S1", sums["S1"]), ""},
			{total("system", "S1", sums["S1"]+sums["S3"]), "systems-added"},
			{total("system", "S3", 2*sums["S3"]), "counted-twice"},
			{total("system", "S2", all), "whole-schedule"},
			{total("section", "T1", sums["S2"]), "whole-for-section"},
			{total("system", "total", all), ""},
		} {
			r := Check(tk, Options{Tolerance: DefaultTolerance, Totals: []takeoff.StatedTotal{tt.total}, Sections: []Section{half}})
			if len(r.Groups) != 1 {
				t.Fatalf("%v: %v", tt.total, r.Faults)
			}
			g := r.Groups[0]
			if tt.key == "" {
				if g.Verdict != Agrees || r.Sums.Sure != NothingDiffers {
					t.Errorf("seed %d, %v: %s", seed, tt.total, g.Verdict)
				}
				continue
			}
			if !slices.ContainsFunc(g.Slips, func(s Slip) bool { return s.Key == tt.key }) {
				t.Errorf("seed %d, %v: %+v, %+v", seed, tt.total, g.Slips, r.Sums)
			}
			if r.Sums.Sure == Certain {
				t.Errorf("seed %d: one figure can't make anything certain", seed)
			}
		}
	}
}

// TestListWideCauseOfSums: three sums that all have one mistake name it; one alone
// is never certain.
func TestListWideCauseOfSums(t *testing.T) {
	named := 0
	for seed := range uint64(15) {
		g := &generator{Rand: rand.New(rand.NewPCG(seed, 13))}
		lines := g.schedule(45, false)
		tk := measured(t, lines, nil)
		wrong := map[string]float64{}
		for i, v := range plant(t, lines, "half-girth") {
			wrong[tk.Items[i].System] += v
		}
		var totals []takeoff.StatedTotal
		for _, s := range systemsOf(tk) {
			totals = append(totals, total("system", s, wrong[s]))
		}
		f := Check(tk, Options{Tolerance: DefaultTolerance, Totals: totals}).Sums
		if f.Sure == Certain && len(totals) < 3 {
			t.Errorf("seed %d: certain by %d figures", seed, len(totals))
		}
		if slices.ContainsFunc(f.Causes, func(c Cause) bool { return len(c.Parts) == 1 && c.Parts[0].Key == "half-girth" }) {
			named++
		} else {
			t.Logf("seed %d: %s %+v", seed, f.Sure, f.Causes)
		}
	}
	if t.Logf("named in %d of 15", named); named < 14 {
		t.Errorf("half the girth is named in %d of 15 lists of sums", named)
	}
}

// TestReconciliationCloses: the steps from the stated total to ours add up,
// whatever was planted.
func TestReconciliationCloses(t *testing.T) {
	keys := plantable(false)
	for seed := range uint64(60) {
		tr, _ := planted(t, seed, []string{keys[int(seed)%len(keys)]}, false)
		for k, l := range tr.lines {
			if k%7 == 3 {
				delete(l, "stated_area_m2")
			}
			if k%11 == 5 {
				l["length_mm"] = ""
			}
		}
		tk := measured(t, tr.lines, nil)
		r := Check(tk, Options{Tolerance: DefaultTolerance})
		running := r.Theirs
		for _, l := range r.Lines {
			if running += l.Change; math.Abs(running-l.Running) > 1e-9 {
				t.Errorf("seed %d: %q stands at %g, the steps at %g", seed, l.Words, l.Running, running)
			}
		}
		if math.Abs(running-tk.Totals.Area) > 1e-9 {
			t.Errorf("seed %d: the steps end at %g, not at %g", seed, running, tk.Totals.Area)
		}
	}
}

func TestHalfUnit(t *testing.T) {
	for _, tt := range []struct {
		typed string
		value float64
		want  float64
	}{
		{"2.40", 2.4, 0.005}, {"2.4", 2.4, 0.05}, {"24", 24, 0.5}, {"2,40", 2.4, 0.005}, {"1 234.5", 1234.5, 0.05}, {"1.234,50", 1234.5, 0.005},
		{"12,345,678", 12345678, 0.5}, {"0.00", 0, 0.005}, {"24.0 m2", 24, 0.05}, {"", 0, 0}, {"100", 9.290304, 0.5 * 0.09290304},
	} {
		if got := HalfUnit(tt.typed, tt.value); math.Abs(got-tt.want) > 1e-12 {
			t.Errorf("%q: %g, want %g", tt.typed, got, tt.want)
		}
	}
}

// TestRowSlips: what one row has by itself is named on it, and the cause of the
// list isn't laid on it.
func TestRowSlips(t *testing.T) {
	var lines []line
	for i := range 12 {
		lines = append(lines, line{"tag": fmt.Sprintf("R%d", i+1), "kind": "straight", "shape": "rectangular", "width_mm": "600", "height_mm": "400", "length_mm": fmt.Sprint(1000 + 317*i)})
	}
	for i, v := range plant(t, lines, "half-girth") {
		lines[i]["stated_area_m2"] = fmt.Sprintf("%.2f", v)
	}
	lines[2]["stated_area_m2"] = "0.24" // the cross-section, 0.6 x 0.4
	lines[5]["stated_area_m2"] = "5.17" // right: 2 x (0.6 + 0.4) x 2.585
	lines[8]["stated_area_m2"] = "7.07" // 2 x half of 2 x 3.536 m2
	lines[9]["stated_area_m2"] = "3.58" // 3.85 with its digits swapped
	r := Check(measured(t, lines, nil), Options{Tolerance: DefaultTolerance})
	if b := r.Rows.Best(); b == nil || b.Parts[0].Key != "half-girth" {
		t.Fatalf("%+v", r.Rows)
	}
	for i, key := range map[int]string{2: "cross-section", 5: "right", 8: "right", 9: "digits-swapped"} {
		if s := r.Figures[i].Slips; len(s) == 0 || s[0].Key != key {
			t.Errorf("row %d: %+v, want %s", i+1, s, key)
		}
	}
}
