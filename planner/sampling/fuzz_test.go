package sampling_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"blankoff/planner/sampling"
)

// FuzzChoose holds any pick to what it claims, whatever is asked.
func FuzzChoose(f *testing.F) {
	f.Add(uint64(1), 10.0, uint8(0), false, 20.0, uint8(12))
	f.Add(uint64(2), 100.0, uint8(2), true, 0.0, uint8(1))
	f.Add(uint64(3), 0.0, uint8(1), true, 100.0, uint8(40))
	f.Fuzz(func(t *testing.T, seed uint64, percent float64, by uint8, perClass bool, mains float64, n uint8) {
		list := random(rand.New(rand.NewPCG(seed, 9)), int(n%60))
		a := sampling.Ask{Percent: percent, By: sampling.By(by), PerClass: perClass, Seed: seed, Quotas: []sampling.Quota{{Percent: mains, Run: sampling.Mains}}}
		p, err := sampling.Choose(list, a)
		if err != nil {
			return
		}
		slices.Reverse(list)
		again, err := sampling.Choose(list, a)
		if err != nil || fmt.Sprint(again) != fmt.Sprint(p) {
			t.Fatalf("row order changed the pick: %v", err)
		}
		if p.Share < percent-1e-6 || p.Share > 100+1e-9 {
			t.Fatalf("%g %% where %g is asked for", p.Share, percent)
		}
		if _, problems := sampling.Check(list, p.IDs, a); hasText(problems, "is asked for") {
			t.Fatalf("our own pick is short: %v", problems)
		}
		wider, more, err := sampling.Escalate(list, p.IDs, a)
		if err != nil || more != (len(wider.IDs) > 0) || slices.ContainsFunc(wider.IDs, func(id string) bool { return slices.Contains(p.IDs, id) }) {
			t.Fatalf("widened by %v after %v: %v", wider.IDs, p.IDs, err)
		}
	})
}
