package job_test

import (
	"strings"
	"testing"

	"blankoff/planner/job"
)

func TestLoad(t *testing.T) {
	j, err := job.Load(strings.NewReader("project = \"library\"\n[prices]\ncut_base = 12\nnatural = 0.5\n[access]\nRoof = 15\n"), "job.toml")
	if err != nil {
		t.Fatal(err)
	}
	p := j.Prices
	if j.Project != "library" || p.CutBase != 12 || p.CutPerMetre != 10 || p.EndBase != 5 || p.Natural != 0.5 || p.Access["Roof"] != 15 {
		t.Errorf("%+v", j)
	}
}

func TestAhead(t *testing.T) {
	for text, want := range map[string]bool{"": false, "[programme]\nahead = true\n": true, "[programme]\nahead = false\n": false} {
		if j, err := job.Load(strings.NewReader(text), "job.toml"); err != nil || j.Ahead != want {
			t.Errorf("%q: ahead %v, %v", text, j.Ahead, err)
		}
	}
	if _, err := job.Load(strings.NewReader("[programme]\nahead = \"often\"\n"), "job.toml"); err == nil || !strings.Contains(err.Error(), "ahead") {
		t.Errorf("ahead = often: %v", err)
	}
}

// Every fault of a job file is told in one go, with its key.
func TestFaults(t *testing.T) {
	_, err := job.Load(strings.NewReader("projct = \"x\"\n[prices]\ncut_base = -1\nnatural = 2\nspeed = 3\n[access]\nRoof = \"high\"\n"), "job.toml")
	if err == nil {
		t.Fatal("no fault")
	}
	for _, want := range []string{"job.toml", "projct", "cut_base", "natural", "speed", "Roof"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("nothing of %s in %v", want, err)
		}
	}
	if _, err := job.Load(strings.NewReader("= ="), "job.toml"); err == nil {
		t.Error("not TOML, and no fault")
	}
}

func FuzzLoad(f *testing.F) {
	f.Add("[prices]\ncut_base = 1\n[access]\na = 2\n")
	f.Fuzz(func(t *testing.T, text string) {
		j, err := job.Load(strings.NewReader(text), "job.toml")
		if err != nil {
			return
		}
		p := j.Prices
		for _, v := range []float64{p.CutBase, p.CutPerMetre, p.EndBase, p.EndPerMetre} {
			if !(v >= 0 && v <= 10000) {
				t.Errorf("%+v", p)
			}
		}
	})
}
