package main

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// inInches writes a schedule in mm as one in inches, 25.4 mm each.
func inInches(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	turned := 0
	for k, head := range rows[0] {
		stem, ok := strings.CutSuffix(head, "_mm")
		if !ok {
			continue
		}
		rows[0][k] = stem + "_in"
		for _, r := range rows[1:] {
			if mm, err := strconv.ParseFloat(r[k], 64); err == nil {
				r[k] = strconv.FormatFloat(mm/25.4, 'f', 15, 64)
				turned++
			}
		}
	}
	if turned < 100 {
		t.Fatalf("%d sizes turned", turned)
	}
	var b bytes.Buffer
	if err := csv.NewWriter(&b).WriteAll(rows); err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(t.TempDir(), "schedule.csv")
	if err := os.WriteFile(out, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return out
}

// TestInchesAndMM: a schedule in inches gives the plan of the same schedule in
// mm, in both systems.
func TestInchesAndMM(t *testing.T) {
	t.Chdir("../../examples/site-lead")
	inches := inInches(t, "schedule.csv")
	// what is about the file: its sum, and its heading that has an inch
	sum := regexp.MustCompile(`sha256 [0-9a-f]+|\n  - column 'radius_in' is read as.*(\n    .*)*`)
	for _, units := range []string{"si", "us"} {
		for _, rig := range []string{"rig.toml", "rig-fine.toml"} {
			a := run2(t, []string{"plan", "schedule.csv", "--rig", rig}, units)["stdout"]
			b := run2(t, []string{"plan", inches, "--rig", rig}, units)["stdout"]
			if a, b = sum.ReplaceAllString(a, ""), sum.ReplaceAllString(b, ""); a != b {
				x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
				for i := range min(len(x), len(y)) {
					if x[i] != y[i] {
						t.Errorf("%s, %s: the plans part at\n%s\n%s", units, rig, x[i], y[i])
						break
					}
				}
			}
		}
	}
}

// TestPlansReadBackAcrossUnits: an earlier plan and its cuts can be read
// whichever units they were told in.
func TestPlansReadBackAcrossUnits(t *testing.T) {
	t.Chdir("../../examples/site-lead")
	dir := t.TempDir()
	for _, units := range []string{"si", "us"} {
		var stdout, stderr bytes.Buffer
		pack := filepath.Join(dir, units)
		if code := run([]string{"plan", "schedule.csv", "--rig", "rig.toml", "--units", units, "-o", pack}, &stdout, &stderr); code != exitPartly {
			t.Fatalf("exit %d, %s", code, stderr.String())
		}
		for _, other := range []string{"si", "us"} {
			kept := run2(t, []string{"plan", "schedule.csv", "--rig", "rig.toml", "--keep", filepath.Join(pack, "plan.json")}, other)["stdout"]
			kept, _, _ = strings.Cut(kept, "\nCuts: ")
			for _, bad := range []string{"VOID", "LIMIT", "Changes in the schedule", "  new  ", "no more"} {
				if strings.Contains(kept, bad) {
					t.Errorf("a plan in %s kept to in %s says %s", units, other, bad)
				}
			}
			if own := run2(t, []string{"plan", "schedule.csv", "--rig", "rig.toml", "--cuts", filepath.Join(pack, "cuts.csv")}, other)["stdout"]; !strings.Contains(own, "Your cuts:") || strings.Contains(own, "Added to complete") {
				t.Errorf("the cuts of a plan in %s aren't a whole plan in %s", units, other)
			}
		}
	}
}

// TestChangesInUS: what changed since an earlier plan, whose sizes are in mm, is
// told in inches and ft2. A straight of 1200 x 700 is made 1270 x 700, 50 in
// wide.
func TestChangesInUS(t *testing.T) {
	t.Chdir("../../examples/site-lead")
	data, err := os.ReadFile("schedule.csv")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(data), "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, "SA-11,") {
			lines[i] = strings.Replace(strings.Replace(line, ",1200,", ",1270,", 1), ",3300,", ",3810,", 1)
		}
	}
	path := filepath.Join(t.TempDir(), "schedule.csv")
	if err := os.WriteFile(path, []byte(strings.Join(lines, "\n")), 0o644); err != nil {
		t.Fatal(err)
	}
	said := strings.Join(strings.Fields(run2(t, []string{"plan", path, "--rig", "rig.toml", "--keep", "plan-pack/plan.json"}, "us")["stdout"]), " ")
	// 2 (1.27 + 0.7) 3.81 - 2 (1.2 + 0.7) 3.3 = 2.4714 m2 = 26.60 ft2
	if want := "changed SA-11: straight 47.24 x 27.56 in to straight 50 x 27.56 in, +26.60 ft2"; !strings.Contains(said, want) {
		t.Errorf("no %q in %s", want, said)
	}
	for _, want := range []string{"SA-11, 47.24 x 27.56 in meets 50 x 27.56 in;", "50 x 27.56 in meets 47.24 x 27.56 in; check the schedule"} {
		if !strings.Contains(said, want) {
			t.Errorf("no mismatch %q in %s", want, said)
		}
	}
}

// TestUnitsFlag: only si and us.
func TestUnitsFlag(t *testing.T) {
	for _, args := range [][]string{
		{"plan", "s.csv", "--rig", "r.toml"}, {"compare", "s.csv", "--rig", "r.toml"}, {"takeoff", "s.csv"}, {"window", "--rig", "r.toml"},
	} {
		var stdout, stderr bytes.Buffer
		if code := run(append(args, "--units", "imperial"), &stdout, &stderr); code != exitMisuse || !strings.Contains(stderr.String(), `--units "imperial": expected si or us`) {
			t.Errorf("%v: exit %d, %s", args, code, stderr.String())
		}
	}
}
