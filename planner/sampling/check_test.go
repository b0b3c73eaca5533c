package sampling_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"blankoff/planner/sampling"
	"blankoff/planner/units"
)

func TestQuotas(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	a := sampling.Ask{Percent: 10, Quotas: []sampling.Quota{
		{Percent: 20, Run: sampling.Mains}, {Percent: 35, Run: sampling.Branches, Shape: "circular"}, {Percent: 50, Class: "c", System: "AHU2"},
	}}
	fits := []func(sampling.Section) bool{
		func(s sampling.Section) bool { return s.Main },
		func(s sampling.Section) bool { return !s.Main && s.Shape == "circular" },
		func(s sampling.Section) bool { return s.Class == "C" && s.System == "AHU2" },
	}
	for trial := range 300 {
		list := random(r, 1+r.IntN(30))
		a.Seed, a.PerClass = r.Uint64(), trial%3 == 0
		p := choose(t, list, a)
		for _, class := range []string{"A", "B", "C"} {
			for i, fit := range fits {
				of := func(s sampling.Section) bool { return fit(s) && (!a.PerClass || s.Class == class) }
				if whole, got := reached(list, p.IDs, sampling.ByArea, of); got < whole*a.Quotas[i].Percent/100-1e-9 {
					t.Fatalf("trial %d: quota %d reaches %g of %g", trial, i+1, got, whole)
				}
			}
		}
		for _, q := range p.Quotas {
			if q.Short > 0 {
				t.Fatalf("trial %d: %+v", trial, q)
			}
		}
		if _, problems := sampling.Check(list, p.IDs, a); hasText(problems, "is asked for") {
			t.Fatalf("trial %d: our own pick is short: %v", trial, problems)
		}
	}
	p := choose(t, library(), sampling.Ask{Quotas: []sampling.Quota{{Percent: 20, Shape: "flat-oval"}}})
	if len(p.IDs) != 0 || !strings.Contains(strings.Join(p.Notes, "\n"), "no section is flat-oval") || !strings.Contains(strings.Join(p.Notes, "\n"), "nothing is asked of 12 sections") {
		t.Errorf("%v %q", p.IDs, p.Notes)
	}
}

func hasText(problems []sampling.Problem, text string) bool {
	return slices.ContainsFunc(problems, func(p sampling.Problem) bool { return strings.Contains(p.Error(), text) })
}

func TestCheckOfSomebodyElsesPick(t *testing.T) {
	list := equal(10)
	for i := range list {
		list[i].Area, list[i].JointLength, list[i].Straights, list[i].Fittings, list[i].Main = 20, 24, 14, 6, i < 5
	}
	for name, c := range map[string]struct {
		ids  []string
		a    sampling.Ask
		want string // "" for no problem
	}{
		"a fifth, mains and branches": {[]string{"1", "6"}, sampling.Ask{Percent: 20}, ""},
		"short":                       {[]string{"1", "6"}, sampling.Ask{Percent: 25}, "20 % by area is picked (40 of 200 m2) where 25 % is asked for; test 10 m2 more"},
		"short of joints":             {[]string{"1"}, sampling.Ask{Percent: 20, By: sampling.ByJointLength}, "24 m of joint length more"},
		"short of all":                {[]string{"1"}, sampling.Ask{Percent: 100}, "test the 9 sections left"},
		"mains only":                  {[]string{"1", "2"}, sampling.Ask{Percent: 20}, "nothing of branches"},
		"unknown":                     {[]string{"1", "6", "T7"}, sampling.Ask{Percent: 20}, `"T7": it isn't among the planned sections`},
		"twice":                       {[]string{"1", "1"}, sampling.Ask{Percent: 20}, "named twice"},
		"none":                        {nil, sampling.Ask{Percent: 20}, "nothing is picked"},
	} {
		p, problems := sampling.Check(list, c.ids, c.a)
		if c.want == "" && len(problems) > 0 || c.want != "" && !hasText(problems, c.want) {
			t.Errorf("%s: %v; want %q", name, problems, c.want)
		}
		if strings.Contains(name, "twice") && p.Share != 10 {
			t.Errorf("%s: counted as %g %%", name, p.Share)
		}
	}
	p, _ := sampling.Check(list, []string{"1", "2", "6"}, sampling.Ask{Percent: 20})
	if !strings.Contains(strings.Join(p.Notes, "\n"), "more is picked") {
		t.Errorf("three for two: %q", p.Notes)
	}
	own := choose(t, list, sampling.Ask{Percent: 30, Seed: 9})
	p, _ = sampling.Check(list, own.IDs, sampling.Ask{Percent: 30, Seed: 9})
	if !strings.Contains(strings.Join(p.Notes, "\n"), "that seed 9 draws") {
		t.Errorf("our own pick isn't known again: %q", p.Notes)
	}
}

func TestRepresentativeness(t *testing.T) {
	list := []sampling.Section{
		{ID: "few joints", Area: 50, JointLength: 40, Straights: 45, Fittings: 5, Main: true, Class: "B", Shape: "rectangular", System: "AHU1"},
		{ID: "many joints", Area: 50, JointLength: 80, Straights: 10, Fittings: 40, Class: "C", Shape: "circular", System: "AHU2"},
	}
	p, _ := sampling.Check(list, []string{"few joints"}, sampling.Ask{Percent: 50})
	r := p.Representative
	if r.JointPerArea != 0.8 || r.WholeJointPerArea != 1.2 || r.Straights != 0.9 || r.WholeStraights != 0.55 || r.Mains != 1 || r.WholeMains != 0.5 {
		t.Errorf("%+v", r)
	}
	flags := strings.Join(r.Flags, "\n")
	for _, want := range []string{"0.80 m of joint per m2 is below", "straights are 90 % of the sample and 55 %", "mains are 100 %", "class C", "system AHU2", "circular duct", "branches"} {
		if !strings.Contains(flags, want) {
			t.Errorf("no flag with %q:\n%s", want, flags)
		}
	}
	p, _ = sampling.Check(list, []string{"many joints"}, sampling.Ask{Percent: 50})
	if !strings.Contains(strings.Join(p.Representative.Flags, "\n"), "1.60 m of joint per m2 is above") {
		t.Errorf("%q", p.Representative.Flags)
	}
	p, _ = sampling.Check(list, []string{"few joints", "many joints"}, sampling.Ask{Percent: 50})
	if len(p.Representative.Flags) > 0 {
		t.Errorf("the whole isn't like itself: %q", p.Representative.Flags)
	}
}

// TestSampleInUS: 0.8 m of joint per m2 is 0.244 ft per ft2, the normal 1.0 to
// 1.5 is 0.305 to 0.457; 20 of 50 and 100 m2 are 215.278 of 538.196 and 1076.39 ft2.
func TestSampleInUS(t *testing.T) {
	list := []sampling.Section{{ID: "a", Area: 50, JointLength: 40}, {ID: "b", Area: 50, JointLength: 80}}
	p, problems := sampling.Check(list, []string{"a"}, sampling.Ask{Percent: 70, Units: units.US})
	if want := "0.244 ft of joint per ft2 is below the normal 0.305 to 0.457: few joints for the area (all planned sections have 0.366)"; !slices.Contains(p.Representative.Flags, want) {
		t.Errorf("%q, want %q", p.Representative.Flags, want)
	}
	if want := "all: 50 % by area is picked (538.196 of 1076.39 ft2) where 70 % is asked for; test 215.278 ft2 more of it"; len(problems) == 0 || problems[0].Error() != want {
		t.Errorf("%v, want %s", problems, want)
	}
}

func TestEscalation(t *testing.T) {
	list := equal(10)
	a := sampling.Ask{Percent: 25, Seed: 4}
	first := choose(t, list, a) // 3 of 10
	second, more, err := sampling.Escalate(list, first.IDs, a)
	if err != nil || !more || len(second.IDs) != 3 || math.Abs(second.Share-60) > 1e-9 {
		t.Fatalf("one more share: %+v %v %v", second, more, err)
	}
	tested := slices.Concat(first.IDs, second.IDs)
	a.Escalated = 1
	third, more, err := sampling.Escalate(list, tested, a)
	tested = append(tested, third.IDs...)
	slices.Sort(tested)
	if err != nil || !more || third.Share != 100 || len(slices.Compact(tested)) != 10 {
		t.Fatalf("all: %+v %v %v", third, more, err)
	}
	if _, more, err = sampling.Escalate(list, tested, a); more || err != nil {
		t.Errorf("something is left after all: %v %v", more, err)
	}
	if _, _, err = sampling.Escalate(list, []string{"11"}, a); err == nil {
		t.Error("a section that isn't planned was tested")
	}
	// A quota on mains widens among mains only.
	for i := range list {
		list[i].Main = i < 4
	}
	a.Percent, a.Quotas = 0, []sampling.Quota{{Percent: 25, Run: sampling.Mains}}
	p, more, err := sampling.Escalate(list, []string{"1"}, a)
	if err != nil || !more || fmt.Sprint(p.IDs) != "[2 3 4]" {
		t.Errorf("all mains: %v %v %v", p.IDs, more, err)
	}
}

// TestEqualPartsExactly asks for k of n equal sections, whose sums aren't exact
// in binary: k are drawn, never one more for a rounding's sake.
func TestEqualPartsExactly(t *testing.T) {
	for n := 1; n <= 40; n++ {
		for k := range n + 1 {
			if p := choose(t, equal(n), sampling.Ask{Percent: 100 * float64(k) / float64(n), Seed: uint64(n)}); len(p.IDs) != k {
				t.Fatalf("%d of %d asked for, %d drawn", k, n, len(p.IDs))
			}
		}
	}
}

func TestEachClassStandsOnce(t *testing.T) {
	p := choose(t, library(), sampling.Ask{Percent: 50, PerClass: true})
	if len(p.Of) != 2 || p.Of[0].Name != "class B" || p.Of[1].Name != "class C" || p.Of[0].Sections+p.Of[1].Sections != 12 {
		t.Fatalf("%+v", p.Of)
	}
	if d := p.Of[0].Whole + p.Of[1].Whole - p.All.Whole; math.Abs(d) > 1e-9 {
		t.Errorf("the classes are %g off the whole", d)
	}
}

// TestAllMeansAll misses a section that has no joints where all is asked for.
func TestAllMeansAll(t *testing.T) {
	list := library()
	list[0].JointLength = 0
	var ids []string
	for _, s := range list[1:] {
		ids = append(ids, s.ID)
	}
	_, problems := sampling.Check(list, ids, sampling.Ask{Percent: 100, By: sampling.ByJointLength})
	if !hasText(problems, "test the 1 section left") {
		t.Errorf("%v", problems)
	}
}
