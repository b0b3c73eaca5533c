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
	f.Add(whole)
	f.Fuzz(func(t *testing.T, text string) {
		j, err := job.Load(strings.NewReader(text), "job.toml")
		if err != nil {
			return
		}
		if o := j.Programme; !(o.Hold >= 1 && o.DayMinutes >= 60 && o.DayMinutes <= 1440 && o.SetUp >= 0 && o.Move >= 0 && o.MoveLevel >= 0 && o.CureHours >= 0) || o.Crew < 1 || o.NoticeDays < 0 {
			t.Errorf("%+v", o)
		}
		p := j.Prices
		for _, v := range []float64{p.CutBase, p.CutPerMetre, p.EndBase, p.EndPerMetre} {
			if !(v >= 0 && v <= 10000) {
				t.Errorf("%+v", p)
			}
		}
	})
}

const whole = `project = "library"
client = "the town"
reference = "L-24"
revision = "C"
clause = "4.3"
decision = "the reading as it is"
hold = 30
witness = "the engineer"
notice_days = 5
[register]
D-10 = "ground floor, C"
D-9 = "cellar"
[programme]
day_minutes = 390
crew = 3
move = 0
ahead = true
`

func TestWholeFile(t *testing.T) {
	j, err := job.Load(strings.NewReader(whole), "job.toml")
	if err != nil {
		t.Fatal(err)
	}
	p := j.Programme
	if j.Client != "the town" || j.Reference != "L-24" || j.Revision != "C" || j.Clause != "4.3" || j.Decision == "" || j.Witness != "the engineer" {
		t.Errorf("%+v", j)
	}
	if p.Hold != 30 || p.NoticeDays != 5 || p.DayMinutes != 390 || p.Crew != 3 || p.Move != 0 || p.SetUp != 30 || p.CureHours != 48 {
		t.Errorf("%+v", p)
	}
	if len(j.Register) != 2 || j.Register[0] != (job.Drawing{Number: "D-9", Title: "cellar"}) {
		t.Errorf("%+v: not in the natural order of drawings", j.Register)
	}
	for key, want := range map[string]bool{"hold": true, "crew": true, "move": true, "set_up": false, "cut_base": false} {
		if j.Own(key) != want {
			t.Errorf("%s given: %v", key, !want)
		}
	}
}

// Every wrong value is named with what was expected.
func TestProgrammeFaults(t *testing.T) {
	for text, want := range map[string]string{
		"hold = 0":                         "1 to 1000",
		"hold = \"long\"":                  "1 to 1000",
		"notice_days = 2.5":                "whole number",
		"notice_days = -1":                 "whole number",
		"project = 3":                      "text in quotes",
		"client = \"\"":                    "text in quotes",
		"register = \"D-1\"":               "a table [register]",
		"[register]\nD-1 = 3":              "text in quotes",
		"programme = 7":                    "a table [programme]",
		"prices = 7":                       "a table [prices]",
		"access = 7":                       "a table [access]",
		"[programme]\nday_minutes = 30":    "60 to 1440",
		"[programme]\ncrew = 1.5":          "whole number",
		"[programme]\ncrew = 0":            "1 to 100",
		"[programme]\nset_up = -1":         "minutes",
		"[programme]\ncure_hours = \"2d\"": "hours",
		"[programme]\nspeed = 1":           "day_minutes",
	} {
		if _, err := job.Load(strings.NewReader(text), "job.toml"); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want something of %q", text, err, want)
		}
	}
}
