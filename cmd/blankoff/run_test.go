package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// site is a folder with a rig and whatever files a test writes. The test is moved
// into it.
func site(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	files["rig.toml"] = `name = "made-up rig"
[[range]]
name = "high"
min_l_s = 12
max_l_s = 180
accuracy_percent = 3
accuracy_l_s = 0.2
own_leak_l_s = 0.2
[[range]]
name = "low"
min_l_s = 0.8
max_l_s = 14
accuracy_percent = 3
accuracy_l_s = 0.03
own_leak_l_s = 0.02
`
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	t.Chdir(dir)
	return dir
}

// typed runs a command line as somebody would type it.
func typed(t *testing.T, line string) (code int, stdout, stderr string) {
	t.Helper()
	var out, talk bytes.Buffer
	code = run(strings.Fields(line), &out, &talk)
	return code, out.String(), talk.String()
}

const goodSchedule = `tag,system,level,kind,width_mm,height_mm,diameter_mm,length_mm,from,class,test_pa
A,S1,L1,straight,600,400,,12000,,B,400
B,S1,L1,straight,600,400,,9000,A,B,400
`

func TestExitCodes(t *testing.T) {
	site(t, map[string]string{
		"good.csv":    goodSchedule,
		"some.csv":    goodSchedule + "C,S1,L1,straight,600,,,9000,B,B,400\n",
		"none.csv":    "tag,kind,width_mm,height_mm,length_mm\nA,straight,,400,1000\n",
		"empty.csv":   "",
		"noclass.csv": "tag,kind,width_mm,height_mm,length_mm\nA,straight,600,400,1000\n",
		"broken.toml": "name = 3\n[[range]]\nmin_l_s = 5\nmax_l_s = 2\n",
	})
	for _, c := range []struct {
		line  string
		code  int
		about string // in what is said
	}{
		{"takeoff good.csv", 0, ""},
		{"takeoff some.csv", 3, "height_mm"},
		{"takeoff none.csv", 1, "width_mm"},
		{"takeoff empty.csv", 1, "empty.csv"},
		{"takeoff absent.csv", 1, "absent.csv"},
		{"takeoff", 2, "one schedule file"},
		{"takeoff good.csv --format word", 2, "format"},
		{"takeoff good.csv --basis furlongs", 2, "basis"},
		{"takeoff good.csv --nonsense", 2, "nonsense"},
		{"plan good.csv --rig rig.toml", 0, ""},
		{"plan some.csv --rig rig.toml", 3, "height_mm"},
		{"plan noclass.csv --rig rig.toml --test-pressure 400", 1, "--class"},
		{"plan noclass.csv --rig rig.toml --class B", 1, "--test-pressure"},
		{"plan noclass.csv --rig rig.toml --class B --test-pressure 400", 3, ""}, // one loose row
		{"plan good.csv", 2, "--rig"},
		{"plan good.csv --rig absent.toml", 1, "absent.toml"},
		{"plan good.csv --rig broken.toml", 1, "max_l_s"},
		{"plan good.csv --rig rig.toml --class Z", 2, "Z"},
		{"plan good.csv --rig rig.toml --scheme Mars", 2, "Mars"},
		{"plan good.csv --rig rig.toml --headroom 0.5", 2, "headroom"},
		{"plan good.csv --rig rig.toml --headroom NaN", 2, "headroom"},
		{"plan good.csv --rig rig.toml --test-pressure -300", 2, "--sign"},
		{"plan good.csv --rig rig.toml --sign sideways", 2, "sideways"},
		{"plan good.csv --rig rig.toml --aim luck", 2, "luck"},
		{"plan good.csv --rig rig.toml --min-area 50 --max-area 20", 2, "area"},
		{"plan good.csv --rig rig.toml --piece-length 0.001", 2, "piece-length"},
		{"window --rig rig.toml", 0, ""},
		{"window --rig rig.toml --scheme US --class 6 --test-pressure 500", 0, ""},
		{"window --rig rig.toml --class Q", 2, "Q"},
		{"window", 2, "rig"},
		{"plan good.csv --rig rig.toml --sample 10 --sample-by area --seed 7", 0, ""},
		{"plan good.csv --rig rig.toml --sample 200", 2, "--sample"},
		{"plan good.csv --rig rig.toml --regime Sweden", 0, ""},
		{"plan good.csv --rig rig.toml --regime Mars", 2, "Mars"},
		{"plan good.csv --rig rig.toml --sample 50 --picked S01", 0, ""},
		{"plan good.csv --rig rig.toml --sample 50 --after-failure S77", 2, "S77"},
		{"plan good.csv --rig rig.toml --after-failure S01", 2, "--sample"},
		{"plan good.csv --rig rig.toml --sample 10 --sample-by luck", 2, "luck"},
		{"compare good.csv --rig rig.toml", 0, ""},
		{"compare some.csv --rig rig.toml --pressures 300", 3, "height_mm"},
		{"compare good.csv --rig rig.toml --headrooms 0.5", 2, "headrooms"},
		{"compare good.csv --rig rig.toml --pressures -5", 2, "pressures"},
		{"compare good.csv --rig rig.toml -o pack", 2, "-o"},
		{"compare good.csv", 2, "--rig"},
		{"plan good.csv --rig rig.toml --cuts absent.csv", 1, "absent.csv"},
		{"plan good.csv --rig rig.toml --job absent.toml", 1, "absent.toml"},
		{"kinds", 0, ""},
		{"kinds elbow", 0, ""},
		{"kinds widget", 2, "widget"},
		{"template", 2, "-o"},
		{"nonsense", 2, "nonsense"},
	} {
		code, _, talk := typed(t, c.line)
		if code != c.code || !strings.Contains(talk, c.about) {
			t.Errorf("blankoff %s: exit %d, want %d; said %q, want something of %q", c.line, code, c.code, talk, c.about)
		}
	}
}

// Every slip of a new user is told in one run, with its place, and the rest is
// still used.
func TestNewUsersSlips(t *testing.T) {
	site(t, map[string]string{"slips.csv": `tag,kind,widht_mm,height_mm,diameter_mm,length_mm,from,Pressure
A,straight,,,200,1500,,400
B,straight,,,200,"12,500",A,400
C,straight,,,-300,1500,B,400
D,straight,,,200,Inf,C,400
E,straight,,,200,,D,400
A,straight,,,200,1500,E,400
F,straight,,,200,1500,nobody,400
G,straight,,,200,1500,G,400
`})
	code, _, talk := typed(t, "takeoff slips.csv")
	if code != exitPartly {
		t.Errorf("exit %d", code)
	}
	for _, want := range []string{"widht_mm", "width_mm", "12,500", "-300", "Inf", "length_mm", "nobody", "names itself", "Pressure", "test_pa", "already stands on row 2"} {
		if !strings.Contains(talk, want) {
			t.Errorf("nothing said of %q:\n%s", want, talk)
		}
	}
}

// A failed run leaves nothing behind, and an old pack stays as it was.
func TestFailureLeavesNothingBehind(t *testing.T) {
	dir := site(t, map[string]string{"none.csv": "tag,kind,length_mm\nA,straight,x\n", "good.csv": goodSchedule})
	before := names(t, dir)
	for _, line := range []string{
		"plan none.csv --rig rig.toml -o pack",
		"takeoff none.csv -o out.txt",
		"plan good.csv --rig rig.toml --class Z -o pack",
	} {
		if code, _, _ := typed(t, line); code == exitDone {
			t.Errorf("blankoff %s didn't fail", line)
		}
		if after := names(t, dir); after != before {
			t.Errorf("blankoff %s left %s, was %s", line, after, before)
		}
	}
	if code, _, talk := typed(t, "takeoff good.csv -o good.csv"); code != exitMisuse || !strings.Contains(talk, "input") {
		t.Errorf("writing over the input: exit %d, %q", code, talk)
	}
}

func names(t *testing.T, dir string) string {
	t.Helper()
	list, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, e := range list {
		all = append(all, e.Name())
	}
	return strings.Join(all, " ")
}

// The pack holds what it should, and its JSON is what stdout gives.
func TestPlanPack(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule})
	code, out, talk := typed(t, "plan good.csv --rig rig.toml --format json -o pack")
	if code != exitDone {
		t.Fatalf("exit %d: %s", code, talk)
	}
	if got := names(t, "pack"); got != "balance.csv blanks.csv cards.pdf cuts.csv kit.csv moves.csv pack.json plan.html plan.json plan.xlsx programme.csv sections.csv" {
		t.Errorf("the pack holds %s", got)
	}
	data, err := os.ReadFile(filepath.Join("pack", "plan.json"))
	if err != nil || string(data) != out {
		t.Errorf("plan.json differs from stdout (%v)", err)
	}
}

// The keys that scripts rely on.
func TestContract(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule + "C,S1,L1,straight,600,,,9000,B,B,400\n"})
	_, out, _ := typed(t, "plan good.csv --rig rig.toml --format json --max-area 30")
	holds(t, out, "schedule.sha256", "schedule.rows_read", "settings", "takeoff_m2",
		"sections.0.id", "sections.0.system", "sections.0.levels", "sections.0.scheme", "sections.0.class", "sections.0.test_pa",
		"sections.0.sign", "sections.0.area_m2", "sections.0.joint_length_m", "sections.0.limit_l_s", "sections.0.range",
		"sections.0.under_range", "sections.0.over_range", "sections.0.pieces.0.tag", "sections.0.pieces.0.from_piece",
		"sections.0.pieces.0.to_piece", "sections.0.pieces.0.of", "sections.0.pieces.0.area_m2", "sections.0.blanks.0.at",
		"sections.0.blanks.0.why", "sections.0.blanks.0.shape", "sections.0.blanks.0.width_mm", "sections.0.blanks.0.height_mm",
		"sections.0.blanks.0.diameter_mm", "sections.0.blanks.0.force_n", "sections.0.blanks.0.minutes", "sections.0.notes",
		"cuts.0.between.0.tag", "cuts.0.between.1.piece", "cuts.0.minutes", "cuts.0.shape", "cuts.0.width_mm",
		"outside", "proof.aim", "proof.kind", "proof.over_range", "proof.under_range", "proof.tests", "proof.blank_minutes",
		"proof.total_minutes", "proof.lower_bound", "balance.takeoff_m2", "balance.sections_m2", "balance.outside_m2", "balance.difference_m2")
	_, out, _ = typed(t, "takeoff good.csv --format json")
	holds(t, out, "schedule.file", "schedule.rows_used", "schedule.rows_excluded", "schedule.rows_refused", "basis",
		"items.0.tag", "items.0.row", "items.0.system", "items.0.level", "items.0.kind", "items.0.shape", "items.0.quantity",
		"items.0.area_m2", "items.0.exact_area_m2", "items.0.joint_length_m", "items.0.working", "items.0.source", "items.0.notes",
		"totals.area_m2", "totals.by_system.S1", "totals.by_level.L1", "totals.by_shape.rectangular",
		"faults.0.file", "faults.0.sheet", "faults.0.row", "faults.0.heading", "faults.0.value", "faults.0.expected", "faults.0.message")
}

// holds checks that a JSON text has a value at each path.
func holds(t *testing.T, text string, paths ...string) {
	t.Helper()
	var all any
	if err := json.Unmarshal([]byte(text), &all); err != nil {
		t.Fatalf("%v in %.200s", err, text)
	}
	for _, path := range paths {
		at := all
		for _, step := range strings.Split(path, ".") {
			switch v := at.(type) {
			case map[string]any:
				at = v[step]
			case []any:
				at = nil
				if len(v) > int(step[0]-'0') {
					at = v[step[0]-'0']
				}
			default:
				at = nil
			}
		}
		if at == nil {
			t.Errorf("no %s", path)
		}
	}
}

// The same schedule gives the same answer from CSV and from a workbook.
func TestWorkbookGivesTheSame(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule})
	f := excelize.NewFile()
	for r, line := range strings.Split(strings.TrimSpace(goodSchedule), "\n") {
		for c, cell := range strings.Split(line, ",") {
			at, _ := excelize.CoordinatesToCellName(c+1, r+1)
			if err := f.SetCellValue("Sheet1", at, cell); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := f.SaveAs("good.xlsx"); err != nil {
		t.Fatal(err)
	}
	var area [2]any
	for i, name := range []string{"good.csv", "good.xlsx"} {
		_, out, _ := typed(t, "takeoff --format json "+name)
		var v map[string]any
		if err := json.Unmarshal([]byte(out), &v); err != nil {
			t.Fatal(err)
		}
		area[i] = v["totals"]
	}
	a, _ := json.Marshal(area[0])
	b, _ := json.Marshal(area[1])
	if string(a) != string(b) {
		t.Errorf("csv %s, workbook %s", a, b)
	}
}

// The template is a schedule that can be read, and is never written over.
func TestTemplate(t *testing.T) {
	site(t, map[string]string{})
	if code, _, talk := typed(t, "template -o start.xlsx"); code != exitDone {
		t.Fatalf("exit %d: %s", code, talk)
	}
	if code, _, talk := typed(t, "takeoff start.xlsx"); code != exitDone {
		t.Errorf("the template's example rows: exit %d: %s", code, talk)
	}
	if code, _, talk := typed(t, "template -o start.xlsx"); code != exitFailed || !strings.Contains(talk, "left as it is") {
		t.Errorf("writing over it: exit %d: %s", code, talk)
	}
}

// The same input gives the same bytes.
func TestSameBytes(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule})
	for _, pack := range []string{"one", "two"} {
		if code, _, talk := typed(t, "plan good.csv --rig rig.toml --max-area 30 -o "+pack); code != exitDone {
			t.Fatalf("exit %d: %s", code, talk)
		}
	}
	for _, name := range []string{"plan.json", "plan.xlsx", "sections.csv", "blanks.csv", "cuts.csv", "moves.csv"} {
		a, _ := os.ReadFile(filepath.Join("one", name))
		b, _ := os.ReadFile(filepath.Join("two", name))
		if len(a) == 0 || !bytes.Equal(a, b) {
			t.Errorf("%s differs from run to run", name)
		}
	}
}

// A sample is drawn by its seed, says its chances, and a pick that isn't enough
// is told.
func TestSample(t *testing.T) {
	site(t, map[string]string{"good.csv": strings.Replace(goodSchedule, "12000", "60000", 1)})
	line := "plan good.csv --rig rig.toml --max-area 20 --sample 25 --seed 3"
	_, first, _ := typed(t, line)
	_, again, _ := typed(t, line)
	if first != again || !strings.Contains(first, "seed 3") || !strings.Contains(first, "to find a bad section") {
		t.Errorf("%s", first)
	}
	if _, out, _ := typed(t, "plan good.csv --rig rig.toml --max-area 20 --sample 90 --picked S01"); !strings.Contains(out, "problem") {
		t.Errorf("a pick of one section for 90 %% has no problem:\n%s", out)
	}
	if _, out, _ := typed(t, line+" --format json"); !strings.Contains(out, `"sample": {`) {
		t.Error("no sample in the JSON")
	}
}

// An earlier plan keeps its names through a revision, and a pass that the
// revision made void is told.
func TestKeep(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule, "rev.csv": strings.Replace(goodSchedule, "9000", "10500", 1)})
	if code, _, talk := typed(t, "plan good.csv --rig rig.toml --max-area 20 -o pack"); code != exitDone {
		t.Fatalf("exit %d: %s", code, talk)
	}
	old, err := os.ReadFile(filepath.Join("pack", "plan.json"))
	if err != nil {
		t.Fatal(err)
	}
	passed := strings.ReplaceAll(string(old), `"status": ""`, `"status": "passed"`)
	if err := os.WriteFile("old.json", []byte(passed), 0o644); err != nil {
		t.Fatal(err)
	}
	_, same, _ := typed(t, "plan good.csv --rig rig.toml --max-area 20 --keep old.json")
	if !strings.Contains(same, "stay      S01, S02") || strings.Contains(same, "VOID") {
		t.Errorf("the same schedule:\n%s", same)
	}
	code, rev, _ := typed(t, "plan rev.csv --rig rig.toml --max-area 20 --keep old.json -o voided")
	if code != exitPartly {
		t.Errorf("exit %d with a pass that is void", code)
	}
	for _, file := range []string{"plan.html", "sections.csv", "plan.json"} {
		if page, err := os.ReadFile(filepath.Join("voided", file)); err != nil || !strings.Contains(string(page), "which is VOID (passed before)") {
			t.Errorf("%s says nothing of the pass that is void: %v", file, err)
		}
	}
	for _, want := range []string{"2 of the earlier plan VOID", "stay      S01", "changed B", "+3.00 m2"} {
		if !strings.Contains(rev, want) {
			t.Errorf("nothing of %q:\n%s", want, rev)
		}
	}
	if code, _, talk := typed(t, "plan good.csv --rig rig.toml --keep good.csv"); code != exitFailed || !strings.Contains(talk, "isn't a plan") {
		t.Errorf("exit %d: %s", code, talk)
	}
}
