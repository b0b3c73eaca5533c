package main

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"blankoff/planner/report"
)

// campaign is a network of tees that goes up over three weeks, floor by floor;
// every piece is hidden some days after it is up.
func campaign(seed uint64) (csv string, tags []string) {
	r := rand.New(rand.NewPCG(seed, 8))
	var b strings.Builder
	b.WriteString("tag,system,level,kind,shape,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,from,class,test_pa,ready,closed\n")
	free := []string{""}
	for i := range 40 {
		floor := i / 8
		k := len(free) - 1 - r.IntN(min(len(free), 3))
		from := free[k]
		free = append(free[:k], free[k+1:]...)
		tag := fmt.Sprintf("P%02d", i)
		free, tags = append(free, tag, tag+"/branch"), append(tags, tag)
		ready := 1 + floor*4 + r.IntN(3)
		fmt.Fprintf(&b, "%s,S1,L%d,tee,circular,400,%d,400,300,%s,B,400,%d,%d\n", tag, floor, 1500+r.IntN(9000), from, ready, ready+4+r.IntN(4))
	}
	return b.String(), tags
}

// TestCampaignDayByDay plans every day, or every few days, of three weeks with the plan
// before it, passes what can be tested on the day, and looks that nothing passed is
// lost or changed, nothing is tested before it is up, and every piece is in the
// end tested, or missed and named.
func TestCampaignDayByDay(t *testing.T) {
	for seed := range uint64(4) {
		every := []int{1, 2, 4, 9}[seed] // days between visits
		schedule, tags := campaign(seed)
		site(t, map[string]string{"site.csv": schedule})
		passed := map[string][]report.Piece{}
		missed := map[string]bool{}
		keep := ""
		for on := 1; on <= 30; on += every {
			v := dayPlan(t, on, keep)
			if v == nil {
				continue
			}
			keep = " --keep old.json"
			for id, was := range passed {
				if !stands(v, id, was) {
					t.Fatalf("seed %d, day %d: passed section %s isn't what it was", seed, on, id)
				}
			}
			passReadable(v, passed)
			for _, id := range v.Visits.Missed {
				missed[id] = true
			}
			writeJSON(t, "old.json", v)
			if math.Abs(v.Balance.Difference) > 1e-6 {
				t.Fatalf("seed %d, day %d: %g m2 went missing", seed, on, v.Balance.Difference)
			}
		}
		tested := map[string]bool{}
		for id, pieces := range passed {
			for _, p := range pieces {
				if tested[p.Tag] {
					t.Fatalf("seed %d: %s is tested twice (%s)", seed, p.Tag, id)
				}
				tested[p.Tag] = true
			}
		}
		t.Logf("seed %d: %d of %d pieces in %d passed sections, %d missed sections", seed, len(tested), len(tags), len(passed), len(missed))
		if len(tested) < len(tags) && len(missed) == 0 {
			t.Fatalf("seed %d: %d of %d pieces tested, and nothing is named as missed", seed, len(tested), len(tags))
		}
	}
}

// passReadable passes the sections that can be tested on the day and that the
// rig can judge.
func passReadable(v *report.Plan, passed map[string][]report.Piece) {
	for i := range v.Sections {
		s := &v.Sections[i]
		if slices.Contains(v.Visits.Now, s.ID) && !s.UnderRange && !s.OverRange && s.Status == "" {
			s.Status, passed[s.ID] = "passed", s.Pieces
		}
	}
}

// TestAgreedSectionsWaitForTheirDay agrees a whole plan before anything is up:
// every day keeps all of it, and each section is later, can be tested now, or is
// missed.
func TestAgreedSectionsWaitForTheirDay(t *testing.T) {
	schedule, _ := campaign(11)
	site(t, map[string]string{"site.csv": schedule})
	_, stdout, _ := typed(t, "plan site.csv --rig rig.toml --format json")
	var whole report.Plan
	if err := json.Unmarshal([]byte(stdout), &whole); err != nil {
		t.Fatal(err)
	}
	for i := range whole.Sections {
		whole.Sections[i].Status = "agreed"
	}
	writeJSON(t, "old.json", whole)
	for on := 1; on <= 30; on += 3 {
		v := dayPlan(t, on, " --keep old.json")
		if len(v.Kept.Stay) != len(whole.Sections) || len(v.Kept.Void)+len(v.Kept.New) > 0 || len(v.Outside) > 0 {
			t.Fatalf("day %d: stay %v, void %v, new %v of %d sections", on, v.Kept.Stay, v.Kept.Void, v.Kept.New, len(whole.Sections))
		}
		if s := v.Visits; len(s.Now)+len(s.Later)+len(s.Missed) != len(whole.Sections) {
			t.Fatalf("day %d: now %v, later %v, missed %v of %d sections", on, s.Now, s.Later, s.Missed, len(whole.Sections))
		}
	}
}

// TestEarlierPlanBesideNow keeps to an agreed plan: unchanged, both come to the
// same; with a class one tighter every section stays and its limit is a third
// (EN 1507:2006 and EN 12237:2003, table of classes: factors 0.027, 0.009, 0.003).
func TestEarlierPlanBesideNow(t *testing.T) {
	schedule, _ := campaign(12)
	schedule = strings.ReplaceAll(schedule, ",B,400,", ",,400,")
	site(t, map[string]string{"site.csv": schedule})
	plan := func(flags string) (v report.Plan, text string) {
		_, stdout, stderr := typed(t, "plan site.csv --rig rig.toml --format json "+flags)
		if err := json.Unmarshal([]byte(stdout), &v); err != nil {
			t.Fatalf("%v\n%s", err, stderr)
		}
		_, text, _ = typed(t, "plan site.csv --rig rig.toml "+flags)
		return v, text
	}
	v, _ := plan("--class A")
	for i := range v.Sections {
		v.Sections[i].Status = "passed"
	}
	writeJSON(t, "old.json", v)
	same, text := plan("--class A --keep old.json")
	if k := same.Kept; k.Before != k.Now || len(k.Limits) > 0 || strings.Contains(text, "LIMIT") {
		t.Errorf("nothing changed: %+v", k)
	}
	tighter, text := plan("--class B --keep old.json")
	k := tighter.Kept
	if len(k.Limits) != len(v.Sections) || k.Now.Tests != k.Before.Tests || math.Abs(k.Now.Limit*3-k.Before.Limit) > 1e-9 {
		t.Errorf("one class tighter: %+v", k)
	}
	for _, x := range k.Limits {
		if math.Abs(x.Is*3-x.Was) > 1e-9 || x.Status != "passed" {
			t.Errorf("%+v", x)
		}
	}
	if !strings.Contains(text, "judge it again") {
		t.Errorf("the text doesn't say that passes have to be judged again\n%s", text)
	}
}

// dayPlan is the plan of a day; nil while nothing is up.
func dayPlan(t *testing.T, on int, keep string) *report.Plan {
	t.Helper()
	code, stdout, stderr := typed(t, fmt.Sprintf("plan site.csv --rig rig.toml --format json --on %d%s", on, keep))
	if code == 1 && strings.Contains(stderr, "not up on") {
		return nil
	}
	if code != 0 && code != 3 {
		t.Fatalf("day %d: exit code %d\n%s", on, code, stderr)
	}
	var v report.Plan
	if err := json.Unmarshal([]byte(stdout), &v); err != nil {
		t.Fatal(err)
	}
	return &v
}

// stands reports whether a section is in the plan as it was.
func stands(v *report.Plan, id string, was []report.Piece) bool {
	for i := range v.Sections {
		if s := &v.Sections[i]; s.ID == id {
			return s.Status == "passed" && reflect.DeepEqual(s.Pieces, was)
		}
	}
	return false
}

func writeJSON(t *testing.T, name string, v any) {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, text, 0o644); err != nil {
		t.Fatal(err)
	}
}
