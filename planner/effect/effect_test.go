package effect_test

import (
	"math"
	"testing"

	"blankoff/planner/effect"
	"blankoff/planner/tightness"
	"blankoff/takeoff"
)

func en(t *testing.T, class string) effect.Duty {
	t.Helper()
	s, err := tightness.Lookup("EN")
	if err != nil {
		t.Fatal(err)
	}
	c, err := s.Class(class)
	if err != nil {
		t.Fatal(err)
	}
	return effect.Duty{Scheme: s, Class: c, Pa: 400, Sign: "positive"}
}

// The classes of the EN family lie a factor of three apart: A 0.027, B 0.009,
// C 0.003, D 0.001 L/s per m2 at 1 Pa.
func TestProves(t *testing.T) {
	for _, tt := range []struct {
		class        string
		stated, true float64
		want         string
	}{
		{"B", 100, 100, "B"}, {"B", 101, 100, "A"}, {"B", 299, 100, "A"}, {"B", 301, 100, ""}, {"B", 1000, 100, ""},
		{"B", 99, 100, "B"}, {"B", 33.4, 100, "B"}, {"B", 33.3, 100, "C"}, {"B", 11.1, 100, "D"}, {"D", 50, 100, "D"},
		{"C", 900, 100, "A"}, {"C", 901, 100, ""},
	} {
		if e := effect.Of(en(t, tt.class), tt.stated, tt.true, 0); e.Proves != tt.want {
			t.Errorf("class %s at %g of %g m2 proves %q, want %q", tt.class, tt.stated, tt.true, e.Proves, tt.want)
		}
	}
}

// Class B at 400 Pa permits 0.009 x 400^0.65 = 0.4421 L/s per m2.
func TestLimits(t *testing.T) {
	e := effect.Of(en(t, "B"), 48.04, 58.39, 23.4)
	for _, x := range [][2]float64{{e.PerM2, 0.4421}, {e.LimitStated, 21.24}, {e.LimitTrue, 25.82}, {e.BreakEven, 52.92}} {
		if math.Abs(x[0]/x[1]-1) > 3e-4 {
			t.Errorf("%g, want %g", x[0], x[1])
		}
	}
	if e.Passes(e.Stated) || !e.Passes(e.True) || !e.Passes(e.BreakEven+1e-9) || e.Passes(e.BreakEven-1e-6) {
		t.Error("23.4 L/s fails on 48.04 m2, passes on 58.39 m2, and passes down to the break-even area")
	}
	if e.Favours(0.01) != "against whoever has to pass" {
		t.Error(e.Favours(0.01))
	}
}

// The two forms of the French rule are the same number: 0.05 m2 per m3/h.
func TestFrenchRule(t *testing.T) {
	if got := effect.FrenchRule(3600 / 3.6); math.Abs(got-0.05*3600) > 1e-9 {
		t.Errorf("3600 m3/h: %g m2", got)
	}
}

func TestDutyOf(t *testing.T) {
	s, _ := tightness.Lookup("EN")
	items := func(list ...takeoff.Item) *takeoff.Takeoff {
		for i := range list {
			list[i].Rare = &takeoff.Rare{}
		}
		return &takeoff.Takeoff{Items: list}
	}
	for name, tt := range map[string]struct {
		t     *takeoff.Takeoff
		f     effect.Flags
		class string
		fails bool
	}{
		"rows":            {items(takeoff.Item{Class: "C", TestPa: 400}, takeoff.Item{Class: "C", TestPa: 400}), effect.Flags{Scheme: s, Class: "B", Pa: 200}, "C", false},
		"flags":           {items(takeoff.Item{}), effect.Flags{Scheme: s, Class: "B", Pa: 200}, "B", false},
		"no class":        {items(takeoff.Item{}), effect.Flags{Scheme: s, Pa: 200}, "", true},
		"no pressure":     {items(takeoff.Item{Class: "B"}), effect.Flags{Scheme: s}, "", true},
		"two classes":     {items(takeoff.Item{Class: "C"}, takeoff.Item{Class: "B"}), effect.Flags{Scheme: s, Pa: 400}, "", true},
		"two pressures":   {items(takeoff.Item{TestPa: 200}, takeoff.Item{TestPa: 400}), effect.Flags{Scheme: s, Class: "B"}, "", true},
		"a strange class": {items(takeoff.Item{Class: "Q"}), effect.Flags{Scheme: s, Pa: 400}, "", true},
	} {
		rows := make([]int, len(tt.t.Items))
		for i := range rows {
			rows[i] = i
		}
		d, err := effect.DutyOf(tt.t, rows, tt.f)
		if (err != nil) != tt.fails || d.Class.Name != tt.class && !tt.fails {
			t.Errorf("%s: %+v %v", name, d, err)
		}
	}
}
