package planner_test

import (
	"math/bits"
	"math/rand/v2"
	"testing"

	"blankoff/planner"
	"blankoff/planner/report"
)

// The smallest change of a person's cuts is held against every choice of them.
func TestSmallestChange(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 12))
	changed := 0
	for range 400 {
		m := randomModel(r, 9, features{scopes: true})
		if m.allOut() {
			continue
		}
		set := settings(t, gapRig)
		set.OwnCuts = nil
		for k := range m.joints {
			a, b := m.pieces[m.joints[k].a], m.pieces[m.joints[k].b]
			if r.IntN(2) == 0 && len(set.OwnCuts) < 6 {
				set.OwnCuts = append(set.OwnCuts, planner.OwnCut{Tag: a.tag, Next: b.tag})
			}
		}
		p, err := planner.JudgeCuts(readSchedule(t, m.csv), set)
		if err != nil {
			t.Fatal(err)
		}
		if len(p.Faults) > 0 { // a joint that is in no test, say
			continue
		}
		want := fewestWithout(t, m.csv, set)
		got := 0
		if c := p.Judged.Change; c != nil {
			got = len(c.Without)
			if !c.Smallest || c.Score.Over != p.Judged.Best.Over || c.Score.Under != p.Judged.Best.Under {
				t.Fatalf("change %+v, best %+v\n%s", c, p.Judged.Best, m.csv)
			}
			changed++
		}
		if got != want {
			t.Fatalf("does without %d cuts, the fewest is %d\n%v\n%s", got, want, set.OwnCuts, m.csv)
		}
	}
	if changed < 60 {
		t.Errorf("only %d changes", changed)
	}
}

// fewestWithout plans with every choice of the cuts.
func fewestWithout(t *testing.T, csv string, set planner.Settings) int {
	t.Helper()
	cuts := set.OwnCuts
	set.OwnCuts = nil
	best := planned(t, csv, set).Proof.Score
	fewest := len(cuts)
	for mask := range 1 << len(cuts) {
		n := bits.OnesCount(uint(mask))
		if n >= fewest {
			continue
		}
		set.OwnCuts = nil
		for i, c := range cuts {
			if mask>>i&1 == 0 {
				set.OwnCuts = append(set.OwnCuts, c)
			}
		}
		if s := planned(t, csv, set).Proof.Score; sameRange(s, best) {
			fewest = n
		}
	}
	return fewest
}

func sameRange(a, b report.Score) bool {
	return a.OverRange == b.OverRange && a.UnderRange == b.UnderRange
}
