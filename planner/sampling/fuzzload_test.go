package sampling_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"blankoff/planner/sampling"
)

// FuzzLoad: any text is a regime that can be asked, or an error that says what is
// wrong; never both.
func FuzzLoad(f *testing.F) {
	files, err := filepath.Glob("data/*.toml")
	if err != nil || len(files) == 0 {
		f.Fatal(err)
	}
	for _, path := range files {
		data, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(data))
	}
	f.Add("name = \"x\"\npercent = 10\nby = \"length\"\n[[quota]]\npercent = 5\n")
	f.Fuzz(func(t *testing.T, text string) {
		p, err := sampling.Load(strings.NewReader(text), "fuzz.toml")
		if err != nil {
			if strings.TrimSpace(err.Error()) == "" || !strings.Contains(err.Error(), "fuzz.toml") || p.Name != "" {
				t.Fatalf("error %q with %+v", err, p)
			}
			return
		}
		if p.Name == "" || !(p.Ask.Percent >= 0 && p.Ask.Percent <= 100) || p.Ask.Percent == 0 && len(p.Ask.Quotas) == 0 && !strings.Contains(text, "percent") {
			t.Fatalf("%+v", p)
		}
		for _, q := range p.Ask.Quotas {
			if !(q.Percent >= 0 && q.Percent <= 100) {
				t.Fatalf("%+v", q)
			}
		}
	})
}
