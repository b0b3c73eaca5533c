package text

import (
	"bytes"
	"strings"
	"testing"

	"blankoff/planner/report"
	"blankoff/planner/report/internal/testview"
	"blankoff/planner/units"
)

func usPlan() *report.Plan {
	v := testview.Small()
	v.Units, v.Takeoff.Units = units.US, units.US
	v.Settings.MinArea, v.Settings.MaxArea, v.Settings.PieceLength, v.Settings.TestPa = 10, 200, 1.5, 500
	v.Alone = []report.RigAlone{{Rig: "small", Tests: 4, Left: 40}}
	v.Kept = &report.Kept{
		Before: report.Sums{Tests: 3, Area: 300, Limit: 100}, Now: report.Sums{Tests: 3, Area: 310, Limit: 101},
		Limits:  []report.Limit{{ID: "S02", Was: 10, Is: 12.29}},
		Changes: []report.Change{{What: "changed", Tag: "D4", Was: "straight 23.62 x 15.75 in", Is: "straight 24 x 16 in", Area: -0.25}},
	}
	return v
}

// TestUSTables: rows of every table that holds figures, worked out by hand: 1 ft2
// = 0.09290304 m2, 1 cfm = 0.47194745 L/s, 1 in. w.g. = 249.089 Pa, 1 lbf =
// 4.44822 N. 344.899 L/s is 730.7996 cfm: limits are cut off.
func TestUSTables(t *testing.T) {
	v := usPlan()
	w := windows()
	w.Units, w.DuctPa = units.US, 1000
	c := &report.Compare{Units: units.US, Variants: []report.Variant{{Name: "as asked", UntestedJoints: 12.5, Outside: 40, Proof: "optimal"}}}
	for name, tt := range map[string]struct {
		write func(*bytes.Buffer) error
		want  []string
	}{
		"plan": {func(b *bytes.Buffer) error { return Plan(b, v) }, []string{
			"2 cuts, 5 h 22 min and 40 min of capping, 4425.0 ft2 tested", "class C, 2.007 in. w.g., positive where",
			"a section at least 107.6 ft2; at most 2152.8 ft2; sections end at every change of level; straights made in 4.9 ft",
			"takeoff 4438.5 ft2 = sections 4425.0 + outside 13.45, difference 0",
			"section system level class w.g. ft2 cfm range", "C 1.606 1587.7 46.06 : high 3+? 1000 x 600 54.0 grouping", "US 6 -2.007 38.70 0.381 1",
			"A 1.606 2798.6 730.7 0", "over range cuts cuts min blanks ft2 in tests limits cfm before 3 0 0 0 0 0 3229.2 211.8 now 3 0 0 0 0 0 3336.8 214.0",
			"S02: its limit was 21.18 cfm and is 26.04", "changed D4: straight 23.62 x 15.75 in to straight 24 x 16 in, -2.69 ft2",
			"cuts min not tested ft2 all of them (this plan) 3 1 1 52 13.45 small 4 0 0 0 430.6", "S03: 2798.6 ft2, limit 730.7 cfm;",
			"scope up to lbf min 1000 x 600 1 1 54.0 21 dia 400 2 1 1 11.3 23", "but in no section (13.45 ft2)", "- 13.45 ft2, nothing at", "Out of scope (5.41 ft2)",
		}},
		"takeoff": {func(b *bytes.Buffer) error { return Takeoff(b, v.Takeoff) }, []string{
			"309.5 ft2 in scope, 63.0 ft of joints", "qty ft2 ft scope working 2 D1 straight 800 x 400 1 309.5 62.99", "13288.8 1.09 through",
			"size stated ft2 ft2 difference % D1 800 x 400 306.8 309.5 -2.69 -0.9", "rows pieces ft2 joint ft (not given) 1 2 13.45 6.56 Supply 2 3 296.0 56.43",
			"scope ft2 in 309.5 in the test through 13288.8",
		}},
		"windows": {func(b *bytes.Buffer) error { return Windows(b, w) }, []string{
			"pressure class 4.015 in. w.g.", "cfm per 100 least most class in. w.g. shape ft2 ft2 ft2 range",
			"A 1.606 rectangular, flat-oval 26.11 97.4 955 high", "C 1.606 circular 2.90 60.5 645 low permitted 877 8611 high, higher", "C 10.037 circular 9.54 - -",
		}},
		"compare": {func(b *bytes.Buffer) error { return Compare(b, c) }, []string{"min joint ft ft2 refused proof as asked 0 0 0 0 0 0 0 41.0 430.6 0 optimal"}},
	} {
		var b bytes.Buffer
		if err := tt.write(&b); err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(b.String()), " ")
		for _, want := range tt.want {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in\n%s", name, want, b.String())
			}
		}
	}
}
