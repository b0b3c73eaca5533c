package sampling_test

import (
	"strings"
	"testing"

	"blankoff/planner/sampling"
)

func TestPresets(t *testing.T) {
	list := sampling.Presets()
	if len(list) != 12 {
		t.Fatalf("%d regimes", len(list))
	}
	for _, p := range list {
		if p.Title == "" || p.Source == "" || p.Sureness == "" || p.Sureness == "not stated" || p.OnFailure == "" {
			t.Errorf("%s: without title, source, sureness or what a failure leads to", p.Name)
		}
		if _, err := sampling.Choose(library(), p.Ask); err != nil {
			t.Errorf("%s: %v", p.Name, err)
		}
		if again, err := sampling.Lookup(strings.ToUpper(strings.ReplaceAll(p.Name, " ", "-"))); err != nil || again.Name != p.Name {
			t.Errorf("%s isn't found: %v", p.Name, err)
		}
	}
	if _, err := sampling.Lookup("Atlantis"); err == nil || !strings.Contains(err.Error(), "Sweden") {
		t.Errorf("Atlantis: %v", err)
	}
	sweden, _ := sampling.Lookup("Sweden")
	p := choose(t, library(), sweden.Ask)
	for _, q := range p.Quotas { // 10 % of circular, 20 % of rectangular
		if want := map[string]float64{"circular": 10, "rectangular": 20}[q.Name]; q.Asked != want || q.Share < want {
			t.Errorf("Sweden: %+v", q)
		}
	}
	sweden.Ask.Quotas[0].Percent = 99
	if again, _ := sampling.Lookup("Sweden"); again.Ask.Quotas[0].Percent == 99 {
		t.Error("a caller can change a built-in regime")
	}
}

func TestRegimeFilesFaults(t *testing.T) {
	bad := "title = 3\npercent = 120\nby = \"weight\"\nsureness = \"certain\"\nspeed = 1\n[[quota]]\nrun = \"riser\"\n[[quota]]\npercent = 5\n"
	_, err := sampling.Load(strings.NewReader(bad), "own.toml")
	if err == nil {
		t.Fatal("no fault")
	}
	for _, want := range []string{"own.toml", "name: missing", "title = 3", "percent = 120", `by = "weight"`, `sureness = "certain"`, "speed", `run = "riser"`, "quota 1: percent: missing", "quota 2: percent = 5: of no part"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("no %q in\n%v", want, err)
		}
	}
	if _, err := sampling.Load(strings.NewReader("name = \"empty\"\n"), "own.toml"); err == nil {
		t.Error("a regime that asks for nothing")
	}
	p, err := sampling.Load(strings.NewReader("name = \"ours\"\npercent = 15\nby = \"Joint_Length\"\nper_class = true\n"), "own.toml")
	if err != nil || p.Ask.Percent != 15 || p.Ask.By != sampling.ByJointLength || !p.Ask.PerClass || p.Sureness != "not stated" {
		t.Errorf("%+v %v", p, err)
	}
}
