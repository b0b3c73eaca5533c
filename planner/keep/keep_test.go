package keep_test

import (
	"strings"
	"testing"

	"blankoff/planner/keep"
)

const good = `{"sections":[{"id":"S01","status":"passed","pieces":[{"tag":"A","kind":"straight","size":"dia 200","from_piece":1,"to_piece":2,"of":2,"own_area_m2":1.5}]}],
"outside":[{"tag":"B","own_area_m2":1}],"out_of_scope":[{"tag":"A","own_area_m2":1}]}`

func TestRead(t *testing.T) {
	old, err := keep.Read(strings.NewReader(good), "plan.json")
	if err != nil || len(old.Sections) != 1 || !old.Sections[0].Firm() || old.Sections[0].Spans[0].To != 2 {
		t.Fatalf("%+v %v", old, err)
	}
	if len(old.Rest) != 1 || old.Rest[0].Tag != "B" {
		t.Errorf("the rest is %+v", old.Rest)
	}
}

// What isn't an earlier plan is refused with what was expected.
func TestRefused(t *testing.T) {
	for about, text := range map[string]string{
		"isn't a plan": "tag,kind\n", "no sections": "{}",
		"stands twice": `{"sections":[{"id":"S1","pieces":[{"tag":"A"}]},{"id":"S1","pieces":[{"tag":"B"}]}]}`,
		"no pieces":    `{"sections":[{"id":"S1"}]}`,
		"fine":         strings.Replace(good, "passed", "fine", 1),
	} {
		if _, err := keep.Read(strings.NewReader(text), "plan.json"); err == nil || !strings.Contains(err.Error(), about) {
			t.Errorf("%q: %v", text, err)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add(good)
	f.Fuzz(func(t *testing.T, text string) {
		old, err := keep.Read(strings.NewReader(text), "plan.json")
		if err != nil && len(old.Sections) > 0 {
			t.Error("sections and an error")
		}
		for _, s := range old.Sections {
			if s.ID == "" || len(s.Spans) == 0 {
				t.Errorf("%+v", s)
			}
		}
	})
}
