package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"blankoff/planner/report"
)

const siteLead = "../../examples/site-lead/"

// partly are plans of which a part is tested: a sample, what an earlier plan
// hasn't passed, and a sample of that.
func partly(t *testing.T) map[string]string {
	t.Helper()
	plain := fmt.Sprintf("plan %sschedule.csv --rig %srig.toml --job %sjob.toml", siteLead, siteLead, siteLead)
	v := planOf(t, plain)
	v.Sections[1].Status, v.Sections[4].Status = "passed", "tested"
	old := filepath.Join(t.TempDir(), "old.json")
	writeJSON(t, old, v)
	return map[string]string{"a sample": plain + " --sample 30", "passed": plain + " --keep " + old, "a sample of the rest": plain + " --sample 60 --keep " + old, "a pick": plain + " --picked S01,S03"}
}

// TestPartIsTested: where not all is tested every document has the figures of what
// is, worked out here from the sections alone, and says which sections aren't.
func TestPartIsTested(t *testing.T) {
	reader := need(t, "pdftotext")
	for name, line := range partly(t) {
		dir := packOf(t, line)
		at := func(name string) string { return filepath.Join(dir, name) }
		v := planIn(t, at("plan.json"))
		want := testedSum(v)
		if got := *v.ToBeTested; got.Tests != want.Tests || got.Tests == len(v.Sections) || math.Abs(got.Area-want.Area) > 1e-9 || got.Blanks != want.Blanks || math.Abs(got.Minutes-want.Minutes) > 1e-9 || math.Abs(got.EndMinutes-want.EndMinutes) > 1e-9 || math.Abs(got.Total-want.Total) > 1e-9 {
			t.Errorf("%s: to test %+v, want %+v", name, got, want)
		}
		headline := fmt.Sprintf("%d tests of %d planned sections", want.Tests, len(v.Sections))
		_, stdout, _ := typed(t, line)
		page := pageOf(t, at("plan.html"))
		needs(t, name+", text", strings.Join(strings.Fields(stdout), " "), headline, fmt.Sprintf(" %.2f m2 tested", want.Area), " if all were tested; no test here of ")
		needs(t, name+", page", strings.Join(strings.Fields(visible(page)), " "), fmt.Sprintf(" tests of %d sections %d ", len(v.Sections), want.Tests), fmt.Sprintf("m2 tested %.2f ", want.Area), fmt.Sprintf(" to fit %d", want.Blanks))
		if n := strings.Count(page, `<article class="card`); n != want.Tests {
			t.Errorf("%s: %d cards on the page, %d tests", name, n, want.Tests)
		}
		text, err := exec.Command(reader, "-layout", at("cards.pdf"), "-").Output()
		if n := bytes.Count(text, []byte(fmt.Sprintf("of %d\n", want.Tests))); err != nil || n != want.Tests || bytes.Count(text, []byte("\f")) != want.Tests {
			t.Errorf("%s: %d cards on paper, %d tests, %v", name, n, want.Tests, err)
		}
		if b := v.Blanking; b.Fits != want.Blanks || len(b.Order) != want.Tests || v.Programme.Cuts != want.Minutes || len(v.Programme.Slots) != want.Tests {
			t.Errorf("%s: %d fits, order of %d, programme of %d tests", name, b.Fits, len(b.Order), len(v.Programme.Slots))
		}
		tablesAgree(t, name, at, v, want)
	}
}

// testedSum adds up the sections that have no reason not to be tested.
func testedSum(v *report.Plan) (t report.Tested) {
	in := map[string]bool{}
	for i := range v.Sections {
		s := &v.Sections[i]
		in[s.ID] = s.Status != "passed" && s.Status != "tested"
	}
	if v.Sample != nil {
		drawn := " " + strings.Join(v.Sample.IDs, " ") + " "
		for id := range in {
			in[id] = in[id] && strings.Contains(drawn, " "+id+" ")
		}
	}
	for i := range v.Sections {
		s := &v.Sections[i]
		if !in[s.ID] {
			continue
		}
		t.Tests, t.Area, t.Blanks = t.Tests+1, t.Area+s.Area, t.Blanks+len(s.Blanks)
		for _, b := range s.Blanks {
			if b.Why == "cut" {
				t.Minutes += b.Minutes
			} else {
				t.EndMinutes += b.Minutes
			}
		}
	}
	t.Total = float64(t.Tests)*v.Settings.TestMinutes + t.Minutes
	return t
}

// tablesAgree holds CSV and workbook against what is tested.
func tablesAgree(t *testing.T, name string, at func(string) string, v *report.Plan, want report.Tested) {
	t.Helper()
	tested := 0
	for i, row := range table(t, at("sections.csv")) {
		s := &v.Sections[i]
		if row["to_test"] == "true" {
			tested++
		}
		if (row["to_test"] == "true") != (s.NotTested == "") || row["not_tested"] != s.NotTested {
			t.Errorf("%s: sections.csv says %q, %q of %s, plan.json %q", name, row["to_test"], row["not_tested"], s.ID, s.NotTested)
		}
	}
	blanks, inBook := table(t, at("blanks.csv")), sheetOf(t, at("plan.xlsx"), "blanks")
	if tested != want.Tests || len(blanks) != want.Blanks || len(inBook) != want.Blanks {
		t.Errorf("%s: %d sections to test, %d blanks, %d in the workbook; want %d, %d", name, tested, len(blanks), len(inBook), want.Tests, want.Blanks)
	}
	summary := map[string]string{}
	for _, row := range sheetOf(t, at("plan.xlsx"), "summary") {
		summary[row["Ductwork leakage test plan"]] = row["schedule.csv"]
	}
	for what, v := range map[string]float64{"tests": float64(want.Tests), "blanks to fit, in all tests": float64(want.Blanks), "tested": want.Area, "tests and cuts": want.Total, "of which cuts": want.Minutes, "capping open ends, apart": want.EndMinutes} {
		if got, err := strconv.ParseFloat(summary[what], 64); err != nil || math.Abs(got-v) > 1e-6 {
			t.Errorf("%s: %s is %q in the workbook, want %v", name, what, summary[what], v)
		}
	}
	drawn, err := os.ReadFile(at("sample.csv"))
	if (v.Sample != nil) != (err == nil) || v.Sample != nil && !strings.Contains(string(drawn), "% by area") {
		t.Errorf("%s: sample.csv: %v\n%s", name, err, drawn)
	}
	if v.Sample != nil && !strings.Contains(summary["sample: share"], "% by area") {
		t.Errorf("%s: the workbook doesn't tell the share: %q", name, summary["sample: share"])
	}
	inUse(t, name, at, blanks, v)
}

// inUse holds what the kit makes of each size against the blanks of the tests: one
// test after the other, the most that one of them has.
func inUse(t *testing.T, name string, at func(string) string, blanks []map[string]string, v *report.Plan) {
	t.Helper()
	fits, each, makes := map[string]int{}, map[string]int{}, map[string]int{}
	for _, b := range blanks {
		size := b["size"]
		if w, h, ok := strings.Cut(size, " x "); ok && number(w) < number(h) {
			size = h + " x " + w
		}
		key := b["section"] + " " + size
		fits[size]++
		each[key]++
		makes[size] = max(makes[size], each[key])
	}
	seen := 0
	for _, k := range table(t, at("kit.csv")) {
		size, ok := strings.CutPrefix(k["what"], "blank ")
		if m := regexp.MustCompile(`^(\d+) fits? in all`).FindStringSubmatch(k["why"]); ok && m != nil {
			seen++
			if m[1] != fmt.Sprint(fits[size]) || !v.Blanking.Ahead && k["number"] != fmt.Sprint(makes[size]) {
				t.Errorf("%s: kit: %s: number %s, %s; want %d fits, %d makes", name, size, k["number"], k["why"], fits[size], makes[size])
			}
		}
		if strings.HasPrefix(k["what"], "cards of") && k["number"] != fmt.Sprint(len(v.ToTest())) {
			t.Errorf("%s: kit has %s cards", name, k["number"])
		}
	}
	if seen != len(fits) {
		t.Errorf("%s: %d sizes in the kit, %d in blanks.csv", name, seen, len(fits))
	}
}

func number(text string) float64 {
	v, _ := strconv.ParseFloat(text, 64)
	return v
}

func planIn(t *testing.T, path string) *report.Plan {
	t.Helper()
	var v report.Plan
	if err := json.Unmarshal([]byte(pageOf(t, path)), &v); err != nil {
		t.Fatal(err)
	}
	return &v
}

func pageOf(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// TestSamplePricedAsPlanned: of each size the bill of a sample makes and fits what
// the plan of the same sample does, also where tests are made ready ahead.
func TestSamplePricedAsPlanned(t *testing.T) {
	ahead := filepath.Join(t.TempDir(), "ahead.toml")
	if err := os.WriteFile(ahead, []byte("[programme]\nahead = true\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, job := range []string{"", " --job " + ahead} {
		for _, percent := range []int{20, 40, 70} {
			flags := fmt.Sprintf("%sschedule.csv --rig %srig.toml --sample %d%s", siteLead, siteLead, percent, job)
			p := planOf(t, "plan "+flags)
			code, stdout, stderr := typed(t, "price "+flags+" --rates ../../examples/estimator/rates.toml --runs 100 --compare=false --format json")
			var b billOf
			if err := json.Unmarshal([]byte(stdout), &b); err != nil {
				t.Fatalf("exit %d, %v, %s", code, err, stderr)
			}
			if q := b.Quantities; q.Tests != p.ToBeTested.Tests || q.Fits != p.Blanking.Fits || q.Makes != p.Blanking.Makes || math.Abs(q.Area-p.ToBeTested.Area) > 1e-9 {
				t.Errorf("%s: bill %+v, plan %+v, %d fits, %d makes", flags, q, p.ToBeTested, p.Blanking.Fits, p.Blanking.Makes)
			}
			for _, s := range p.Blanking.Sizes {
				if s.Makes > s.Fits || s.Makes == 0 {
					t.Errorf("%s: %d makes for %d fits of %s", flags, s.Makes, s.Fits, s.Text)
				}
			}
		}
	}
}

// TestNothingToPrice: a regime that asks for no test of what is there has no bill,
// and no waiting on no visit.
func TestNothingToPrice(t *testing.T) {
	for _, regime := range []string{"UK", "China", "Finland"} {
		b := bill(t, "linked.csv", "--compare=false --regime "+regime)
		if b.Total != 0 || len(b.Lines) != 0 || b.Quantities.Tests != 0 || !strings.Contains(b.Nothing, regime) {
			t.Errorf("%s: total %d, %d lines, %d tests, %q", regime, b.Total, len(b.Lines), b.Quantities.Tests, b.Nothing)
		}
		code, stdout, _ := typed(t, fmt.Sprintf("price %slinked.csv --rig %srig.toml --rates %srates.toml --class B --test-pressure 400 --compare=false --regime %s", estimator, estimator, estimator, regime))
		if code != exitDone || !strings.HasPrefix(stdout, "nothing to price, EUR 0.00 for 0 tests: regime \""+regime+"\" asks for no test here\n") || strings.Contains(stdout, "waiting") || strings.Contains(stdout, "P80") {
			t.Errorf("%s: exit %d\n%s", regime, code, stdout)
		}
		code, stdout, _ = typed(t, fmt.Sprintf("plan %slinked.csv --rig %srig.toml --class B --test-pressure 400 --regime %s", estimator, estimator, regime))
		if code != exitDone || !strings.HasPrefix(stdout, "0 tests: regime \""+regime+"\" asks for no test here, ") || strings.Count(stdout, "  of        class B") != 1 || strings.Contains(stdout, "was asked for") || strings.Contains(stdout, "were asked for") {
			t.Errorf("%s: exit %d\n%s", regime, code, stdout)
		}
	}
}

// TestPickedAlone: somebody else's pick without a share is judged by no share; a
// section that isn't there is told with those that are.
func TestPickedAlone(t *testing.T) {
	line := fmt.Sprintf("plan %sschedule.csv --rig %srig.toml", siteLead, siteLead)
	for _, flags := range []string{" --picked S01,S99", " --sample 20 --after-failure S02,S99"} {
		code, stdout, stderr := typed(t, line+flags)
		if code != exitMisuse || stdout != "" || !strings.Contains(stderr, "\"S99\"") || !strings.Contains(stderr, "S01, S02, S03, ") {
			t.Errorf("%s: exit %d: %s", flags, code, stderr)
		}
	}
	_, stdout, _ := typed(t, line+" --picked S01,S03")
	needs(t, "a pick alone", stdout, "; no share was asked for", " with the pick, ")
	for _, not := range []string{"were asked for", "nothing is asked", "every share", "asked for it"} {
		if strings.Contains(stdout, not) {
			t.Errorf("a pick alone is said to be %q:\n%s", not, stdout)
		}
	}
	needs(t, "a pick that is short", strings.Join(strings.Fields(second(typed(t, line+" --picked S03 --sample 50"))), " "), "is picked (", "where 50 % is asked for", "50 % was asked for")
}

func second(_ int, stdout, _ string) string { return stdout }

// TestRegimesAreQuoted: names with commas in them are told apart.
func TestRegimesAreQuoted(t *testing.T) {
	code, _, stderr := typed(t, fmt.Sprintf("plan %sschedule.csv --rig %srig.toml --regime public", siteLead, siteLead))
	if code != exitMisuse {
		t.Errorf("exit %d", code)
	}
	_, help, _ := typed(t, "plan --help")
	for what, text := range map[string]string{"error": stderr, "help": help} {
		needs(t, what, text, `"Sweden public, approved parts", "Sweden public, other parts"`)
	}
}

// TestVisitsOfASample: visits are made for what the sample takes only, so never
// more than for all, and each has a test.
func TestVisitsOfASample(t *testing.T) {
	fewer := false
	for seed := range uint64(6) {
		days, _ := campaign(seed)
		site(t, map[string]string{"days.csv": days})
		all := planOf(t, "plan days.csv --rig rig.toml")
		v := planOf(t, fmt.Sprintf("plan days.csv --rig rig.toml --sample 15 --seed %d", seed+1))
		tests := len(v.Visits.Missed)
		for _, x := range v.Visits.List {
			tests += len(x.Sections)
			if len(x.Sections) == 0 {
				t.Errorf("seed %d: a visit without a test", seed)
			}
		}
		if len(v.Visits.List) > len(all.Visits.List) || tests != len(v.Sample.IDs) {
			t.Errorf("seed %d: %d visits for %d tests of a sample of %d, %d for all", seed, len(v.Visits.List), tests, len(v.Sample.IDs), len(all.Visits.List))
		}
		fewer = fewer || len(v.Visits.List) < len(all.Visits.List)
	}
	if !fewer {
		t.Error("no sample needs fewer visits than all")
	}
}

// A pass that is void by some pieces of a straight says which: the area that has
// changed is theirs, not the row's.
func TestVoidNamesThePieces(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule, "rev.csv": strings.Replace(goodSchedule, "9000", "8900", 1)})
	if code, _, talk := typed(t, "plan good.csv --rig rig.toml --max-area 12 -o pack"); code != exitDone {
		t.Fatalf("exit %d: %s", code, talk)
	}
	old, err := os.ReadFile(filepath.Join("pack", "plan.json"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("old.json", []byte(strings.ReplaceAll(string(old), `"status": ""`, `"status": "passed"`)), 0o644); err != nil {
		t.Fatal(err)
	}
	_, out, _ := typed(t, "plan rev.csv --rig rig.toml --max-area 12 --keep old.json")
	if told := strings.Join(strings.Fields(out), " "); !strings.Contains(told, "the area of its piece") || strings.Contains(told, "its area was") {
		t.Errorf("%s", out)
	}
}
