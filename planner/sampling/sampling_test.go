package sampling_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"blankoff/planner/sampling"
)

// library is twelve sections of an invented supply and extract, two classes.
func library() []sampling.Section {
	var out []sampling.Section
	for i := range 12 {
		s := sampling.Section{
			ID: fmt.Sprintf("S%d", i+1), Class: "C", System: "supply", Shape: "rectangular",
			Area: 20 + float64(i*7%11), Length: 15 + float64(i*5%7), Main: i%3 == 0,
		}
		if i%2 == 1 {
			s.Class, s.System, s.Shape = "B", "extract", "circular"
		}
		s.JointLength = 1.2 * s.Area
		s.Straights, s.Fittings = 0.7*s.Area, 0.3*s.Area
		out = append(out, s)
	}
	return out
}

func choose(t *testing.T, s []sampling.Section, a sampling.Ask) sampling.Pick {
	t.Helper()
	p, err := sampling.Choose(s, a)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// measured is the second opinion on a measure.
func measured(s sampling.Section, by sampling.By) float64 {
	return map[sampling.By]float64{sampling.ByArea: s.Area, sampling.ByLength: s.Length, sampling.ByJointLength: s.JointLength}[by]
}

func random(r *rand.Rand, n int) []sampling.Section {
	out := make([]sampling.Section, n)
	for i := range out {
		out[i] = sampling.Section{
			ID: fmt.Sprintf("S%d", i+1), Class: []string{"A", "B", "C"}[r.IntN(3)], System: []string{"AHU1", "AHU2"}[r.IntN(2)],
			Shape: []string{"rectangular", "circular", "flat-oval"}[r.IntN(3)], Main: r.IntN(2) == 0,
			Area: 5 + 95*r.Float64(), Length: 1 + 50*r.Float64(), JointLength: 1 + 80*r.Float64(), Straights: r.Float64(), Fittings: r.Float64(),
		}
	}
	return out
}

// reached sums a measure, whole and picked, over the sections of which keep is true.
func reached(list []sampling.Section, ids []string, by sampling.By, keep func(sampling.Section) bool) (whole, got float64) {
	for _, s := range list {
		if keep(s) {
			whole += measured(s, by)
			if slices.Contains(ids, s.ID) {
				got += measured(s, by)
			}
		}
	}
	return whole, got
}

// TestSharesAreMetWithinOneSection draws from random sections and holds the
// share to: met, and not met without the section drawn last.
func TestSharesAreMetWithinOneSection(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for trial := range 600 {
		list := random(r, 1+r.IntN(40))
		a := sampling.Ask{Percent: 0.1 + 99.8*r.Float64(), By: sampling.By(r.IntN(3)), PerClass: trial%2 == 0, Seed: r.Uint64()}
		p := choose(t, list, a)
		groups := []string{""}
		if a.PerClass {
			groups = []string{"A", "B", "C"}
		}
		for _, class := range groups {
			of := func(s sampling.Section) bool { return class == "" || s.Class == class }
			whole, got := reached(list, p.IDs, a.By, of)
			want := a.Percent / 100 * whole
			if got < want-1e-9*whole {
				t.Fatalf("trial %d, class %q: %g of %g, %g %% asked", trial, class, got, whole, a.Percent)
			}
			var last float64
			for _, id := range p.Drawn {
				if i := slices.IndexFunc(list, func(s sampling.Section) bool { return s.ID == id }); of(list[i]) {
					last = measured(list[i], a.By)
				}
			}
			if whole > 0 && got-last >= want {
				t.Fatalf("trial %d, class %q: %g is over %g by more than the last section, %g", trial, class, got, want, last)
			}
		}
	}
}

func TestSeedsReproduceAndOrderChangesNothing(t *testing.T) {
	list := library()
	a := sampling.Ask{Percent: 30, Seed: 2024}
	first := choose(t, list, a)
	r := rand.New(rand.NewPCG(3, 3))
	for range 50 {
		r.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
		again := choose(t, list, a)
		if fmt.Sprint(again) != fmt.Sprint(first) {
			t.Fatalf("another row order changed the pick:\n%v\n%v", first, again)
		}
	}
	if first.Seed != 2024 {
		t.Errorf("the seed isn't printed: %d", first.Seed)
	}
	different := false
	for seed := range uint64(20) {
		a.Seed = seed
		different = different || !slices.Equal(choose(t, list, a).IDs, first.IDs)
	}
	if !different {
		t.Error("twenty seeds draw the same sections")
	}
}

// TestEverySectionIsAsLikely draws one of ten equal sections with small seeds,
// as people choose them; chi-square with 9 degrees of freedom stays below 27.9
// in 999 of 1000 cases (tables of the chi-square distribution).
func TestEverySectionIsAsLikely(t *testing.T) {
	list := random(rand.New(rand.NewPCG(5, 5)), 10)
	for i := range list {
		list[i].Area = 20
	}
	hits := map[string]float64{}
	const draws = 20_000
	for seed := range uint64(draws) {
		hits[choose(t, list, sampling.Ask{Percent: 10, Seed: seed}).IDs[0]]++
	}
	var chi float64
	for _, s := range list {
		chi += math.Pow(hits[s.ID]-draws/10, 2) / (draws / 10)
	}
	if chi > 27.9 {
		t.Errorf("chi-square %g: %v", chi, hits)
	}
}

func TestEdges(t *testing.T) {
	one := library()[:1]
	sameClass := library()
	for i := range sameClass {
		sameClass[i].Class = "A"
	}
	for name, c := range map[string]struct {
		list  []sampling.Section
		a     sampling.Ask
		picks int
		share float64
	}{
		"nothing asked":         {library(), sampling.Ask{}, 0, 0},
		"all":                   {library(), sampling.Ask{Percent: 100}, 12, 100},
		"all, class by class":   {library(), sampling.Ask{Percent: 100, PerClass: true}, 12, 100},
		"one section":           {one, sampling.Ask{Percent: 1}, 1, 100},
		"one section, all":      {one, sampling.Ask{Percent: 100}, 1, 100},
		"a trace of a share":    {library(), sampling.Ask{Percent: 1e-12}, 1, -1},
		"next to all":           {library(), sampling.Ask{Percent: 99.999}, 12, 100},
		"one of each class":     {library(), sampling.Ask{Percent: 1, PerClass: true}, 2, -1},
		"all of one class":      {sameClass, sampling.Ask{Percent: 1, PerClass: true}, 1, -1},
		"whole class by quota":  {library(), sampling.Ask{Quotas: []sampling.Quota{{Percent: 100, Class: "b"}}}, 6, -1},
		"an equal part exactly": {equal(10), sampling.Ask{Percent: 30}, 3, 30},
		"just over that part":   {equal(10), sampling.Ask{Percent: 30.01}, 4, 40},
	} {
		p := choose(t, c.list, c.a)
		if len(p.IDs) != c.picks || c.share >= 0 && math.Abs(p.Share-c.share) > 1e-9 {
			t.Errorf("%s: %d sections, %g %%; want %d, %g %%", name, len(p.IDs), p.Share, c.picks, c.share)
		}
		if !strings.Contains(p.Notes[0], "planned section") || !strings.Contains(p.Notes[0], "whole") {
			t.Errorf("%s: the choice doesn't say what it was made among: %q", name, p.Notes)
		}
	}
}

// equal sections of 0.1 m2 each: their sum isn't exact in binary.
func equal(n int) []sampling.Section {
	out := make([]sampling.Section, n)
	for i := range out {
		out[i] = sampling.Section{ID: fmt.Sprint(i + 1), Area: 0.1}
	}
	return out
}

// TestNothingToMeasure leaves sections without joints to a draw of everything.
func TestNothingToMeasure(t *testing.T) {
	list := library()
	for i := range 6 {
		list[i].JointLength = 0
	}
	for seed := range uint64(40) {
		p := choose(t, list, sampling.Ask{Percent: 99, By: sampling.ByJointLength, Seed: seed})
		if len(p.IDs) != 6 || slices.Contains(p.IDs, "S1") {
			t.Fatalf("seed %d: %v", seed, p.IDs)
		}
	}
	if p := choose(t, list, sampling.Ask{Percent: 100, By: sampling.ByJointLength}); len(p.IDs) != 12 {
		t.Errorf("all of it: %v", p.IDs)
	}
}

func TestFaultsHaveAPlaceAndACure(t *testing.T) {
	twice := append(library(), library()[0])
	nameless := library()
	nameless[2].ID = " "
	negative := library()
	negative[4].Area = -1
	unreal := library()
	unreal[4].Length = math.NaN()
	jointless := library()
	for i := range jointless {
		jointless[i].JointLength = 0
	}
	for name, c := range map[string]struct {
		list []sampling.Section
		a    sampling.Ask
		want string
	}{
		"twice":         {twice, sampling.Ask{}, "S1: the name is given twice"},
		"nameless":      {nameless, sampling.Ask{}, "no name"},
		"negative":      {negative, sampling.Ask{}, "S5: area -1"},
		"unreal":        {unreal, sampling.Ask{}, "S5: length NaN"},
		"none":          {nil, sampling.Ask{Percent: 10}, "no planned sections"},
		"jointless":     {jointless, sampling.Ask{Percent: 10, By: sampling.ByJointLength}, "no section has a joint length"},
		"over":          {library(), sampling.Ask{Percent: 101}, "101 %"},
		"not a number":  {library(), sampling.Ask{Percent: math.NaN()}, "NaN %"},
		"measure":       {library(), sampling.Ask{By: 9}, "measure 9"},
		"shape":         {library(), sampling.Ask{Quotas: []sampling.Quota{{Percent: 10, Shape: "round"}}}, `"round"`},
		"run":           {library(), sampling.Ask{Quotas: []sampling.Quota{{Percent: 10, Run: "riser"}}}, `"riser"`},
		"quota of all":  {library(), sampling.Ask{Quotas: []sampling.Quota{{Percent: 10}}}, "names no part"},
		"quota percent": {library(), sampling.Ask{Quotas: []sampling.Quota{{Percent: -1, Run: sampling.Mains}}}, "-1 %"},
	} {
		if _, err := sampling.Choose(c.list, c.a); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v; want %q in it", name, err, c.want)
		}
		if _, problems := sampling.Check(c.list, nil, c.a); len(problems) == 0 {
			t.Errorf("%s: Check finds nothing", name)
		}
		if _, _, err := sampling.Escalate(c.list, nil, c.a); err == nil {
			t.Errorf("%s: Escalate finds nothing", name)
		}
	}
}
