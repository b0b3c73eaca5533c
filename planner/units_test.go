package planner_test

import (
	"regexp"
	"strings"
	"testing"

	"blankoff/planner/report"
	"blankoff/planner/units"
)

var siUnit = regexp.MustCompile(`L/s|\bPa\b|\bm2\b|\bmm2?\b|[0-9] (m|N|kg)\b|metre`)

// TestSentencesInUS: every sentence of a plan has its figures in US units, worked
// out by hand with 1 ft = 0.3048 m, 1 ft2 = 0.09290304 m2, 1 cfm = 0.4719474 L/s,
// 1 in. w.g. = 249.0889 Pa.
func TestSentencesInUS(t *testing.T) {
	set := classB(t, gapRig, 400)
	set.Units = units.US
	// 20 m of 1000 mm: 62.8 m2 in pieces of 3 m; the high range judges up to
	// 13.48 / 1.5 / 0.4422 = 20.3 m2.
	long := planned(t, "tag,kind,diameter_mm,length_mm,from\nA,straight,1000,20000,\nB,straight,800,50,A\n", set)
	set.MaxArea = 5
	big := planned(t, "tag,kind,diameter_mm,length_mm,from,blank_minutes\nA,straight,1000,3000,,\nB,straight,1000,3000,A,no\n", set)
	set.MaxArea, set.MinArea = 0, 30
	small := planned(t, "tag,kind,diameter_mm,length_mm\nA,straight,1000,1000\n", set)
	set.MinArea = 0
	gap := planned(t, "tag,kind,diameter_mm,length_mm,from,blank_minutes\nA,straight,800,1600,,\nB,straight,800,1600,A,no\n", set)
	over := planned(t, "tag,kind,diameter_mm,length_mm,from,blank_minutes\nA,straight,2000,3000,,\nB,straight,2000,3000,A,no\n", set)
	under := planned(t, "tag,kind,diameter_mm,length_mm\nA,straight,300,1000\n", set)
	for name, tt := range map[string]struct {
		v    *report.Plan
		want []string
	}{
		// 3 m is 9.84 ft, and 6 m 19.69 ft; 400 Pa on 1 m: 314.16 N is 70.6 lbf
		"long": {long, []string{"ft from its plant end", "of A after piece", "estimated at 10 + 3.05 per foot of girth", "up to 70.6 lbf (the weight of 70.6 lb) on the dia 39.37 in blank",
			"dia 39.37 in meets dia 31.5 in", "Areas were rounded to about 0.00001 ft2"}},
		"big":   {big, []string{"larger than the 53.82 ft2 asked for at most, and it can't be cut", "a greatest area (--max-area 18.9) of 202.9 ft2 or more"}},
		"small": {small, []string{"area: less than the 322.9 ft2 asked for at least", "a least area (--min-area 3.14) of 33.8 ft2 or less"}},
		// limits up to 2.92 / 1.5 = 1.947 L/s and from 5.15 L/s
		"gap":   {gap, []string{"in the gap between what the ranges can judge at 1.606 in. w.g. with a headroom of 1.5: limits up to 4.125 and from 10.91 cfm", "a measuring range that closes the gap: from 7.53 to 11.4 cfm", "can't be read: it lies between the ranges", "less than the 107.6 ft2 that scheme EN asks"}},
		"over":  {over, []string{"above 19.04 cfm, the greatest limit that this rig can judge at 1.606 in. w.g.", "a bigger rig, or two side by side, that reads up to 53.0 cfm at 1.606 in. w.g."}},
		"under": {under, []string{"below 1.801 cfm, the least limit that this rig can judge at 1.606 in. w.g.", "one that reads from 0.882 cfm or less", "below 1.8 cfm: proves nothing"}},
	} {
		text := strings.Join(sentencesOf(tt.v), "\n")
		for _, want := range tt.want {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in\n%s", name, want, text)
			}
		}
		text = strings.ReplaceAll(text, "at least 10 m2 in one test", "") // the source's own words
		if found := siUnit.FindString(text); found != "" {
			t.Errorf("%s: %q in\n%s", name, found, text)
		}
	}
}

// sentencesOf are the sentences of a plan.
func sentencesOf(v *report.Plan) []string {
	out := append(append(append(append([]string{}, v.Notes...), v.Mismatches...), v.Cautions...), v.Proof.Sentences...)
	for i := range v.Sections {
		s := &v.Sections[i]
		out = append(append(append(append(out, s.Reason), s.Cures...), s.Readings...), s.Notes...)
	}
	for i := range v.Cuts {
		out = append(out, "cut of "+v.Cuts[i].At)
	}
	return out
}
