package xlsx

import (
	"bytes"
	"errors"
	"maps"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/planner"
	"blankoff/planner/report"
	"blankoff/planner/report/internal/testview"
	"blankoff/planner/rig"
	"blankoff/planner/sampling"
	"blankoff/planner/units"
	"blankoff/takeoff"
	"blankoff/takeoff/bases"
	"blankoff/takeoff/schedule"
)

// job is a plan to be made: a schedule, rigs and what is asked.
type job struct {
	csv  string
	rigs []string
	set  func(*planner.Settings)
	opts takeoff.Options
	us   bool                // in US units
	part float64             // of the sections, percent, drawn as a sample; 0: all are tested
	call func(string) string // what a text of the schedule is called instead; nil: as it is
}

// planned makes the plan of a job.
func planned(t testing.TB, j job) *report.Plan {
	t.Helper()
	set := planner.Defaults()
	if j.us {
		set.Units = units.US
		j.opts.Written = report.Written(units.US)
	}
	tk := takeoff.New(j.opts)
	info, err := schedule.ReadFrom("test.csv", []byte(j.csv), func(r *takeoff.Row) error {
		for _, c := range []takeoff.Column{takeoff.Tag, takeoff.From, takeoff.System, takeoff.Level, takeoff.PlaceOnSite, takeoff.Drawing, takeoff.Note} {
			if j.call != nil {
				r.Text[c] = j.call(r.Text[c])
			}
		}
		tk.Add(r)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	for _, text := range j.rigs {
		r, _, err := rig.Load(strings.NewReader(text), "rig.toml")
		if err != nil {
			t.Fatal(err)
		}
		set.Rigs = append(set.Rigs, r)
	}
	if j.set != nil {
		j.set(&set)
	}
	p, err := planner.Make(tk, set)
	if err != nil {
		t.Fatal(err)
	}
	v := report.Of(p)
	if j.part > 0 {
		if err := v.AddSample(p, report.SampleAsk{Ask: sampling.Ask{Percent: j.part, Seed: 1}}); err != nil {
			t.Fatal(err)
		}
		if len(v.ToTest()) == len(v.Sections) || len(v.ToTest()) == 0 {
			t.Fatalf("%d of %d sections in the sample", len(v.ToTest()), len(v.Sections))
		}
	}
	return v
}

func file(t testing.TB, path ...string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(append([]string{"..", "..", ".."}, path...)...))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// Made-up rigs: three ranges with a hole between them, one with a fan, one with a
// fan and a hose.
const holedRig = `name = "holed"
[[range]]
name = "low"
min_l_s = 0.4
max_l_s = 2
accuracy_percent = 2
accuracy_l_s = 0.05
own_leak_l_s = 0.02
[[range]]
name = "middle"
min_l_s = 1.5
max_l_s = 6
accuracy_percent = 3
accuracy_l_s = 0.05
own_leak_l_s = 0.02
fan = [{ pressure_pa = 100, flow_l_s = 40 }, { pressure_pa = 900, flow_l_s = 3 }]
[[range]]
name = "high"
min_l_s = 9
max_l_s = 60
accuracy_percent = 3
accuracy_l_s = 0.1
own_leak_l_s = 0.1
fan = [{ pressure_pa = 0, flow_l_s = 80 }, { pressure_pa = 500, flow_l_s = 40 }, { pressure_pa = 1200, flow_l_s = 10 }]
hose = { length_m = 5, diameter_mm = 80, friction = 0.02 }
`

const otherRig = `name = "other"
[[range]]
name = "low"
min_l_s = 0.6
max_l_s = 8
accuracy_percent = 1
accuracy_l_s = 0.02
own_leak_l_s = 0.01
`

// jobs are plans of every sort.
func jobs(t testing.TB) map[string]job {
	class := func(c string, pa float64) func(*planner.Settings) {
		return func(s *planner.Settings) { s.Class, s.TestPa = c, pa }
	}
	lead := file(t, "examples", "site-lead", "schedule.csv")
	basis, err := bases.Lookup("largest-girth")
	if err != nil {
		t.Fatal(err)
	}
	axis, err := bases.Lookup("to-intersection")
	if err != nil {
		t.Fatal(err)
	}
	return map[string]job{
		"site lead":            {csv: lead, rigs: []string{file(t, "examples", "site-lead", "rig.toml")}},
		"site lead, fine":      {csv: lead, rigs: []string{file(t, "examples", "site-lead", "rig-fine.toml")}},
		"every kind":           {csv: testview.EveryKind, rigs: []string{holedRig}, set: class("B", 400)},
		"a sample":             {csv: testview.EveryKind, rigs: []string{holedRig}, set: class("B", 400), part: 40},
		"every kind, sheet":    {csv: testview.EveryKind, rigs: []string{holedRig}, set: class("C", 600), opts: takeoff.Options{Sheet: 0.0008}},
		"every kind, two rigs": {csv: testview.EveryKind, rigs: []string{holedRig, otherRig}, set: class("C", 500)},
		"basis, both": {csv: testview.EveryKind, rigs: []string{holedRig}, opts: takeoff.Options{Basis: basis}, set: func(s *planner.Settings) {
			s.Class, s.TestPa, s.HoldBoth = "B", 400, true
		}},
		"basis": {csv: testview.EveryKind, rigs: []string{otherRig}, opts: takeoff.Options{Basis: axis, PieceLength: 1.25}, set: class("C", 500)},
		"numbered classes, areas": {csv: testview.EveryKind, rigs: []string{otherRig}, set: func(s *planner.Settings) {
			s.Scheme, s.Class, s.TestPa, s.MinArea, s.MaxArea = "US", "6", 500, 8, 30
		}},
	}
}

// inUS are some of the jobs in US units.
func inUS(all map[string]job, names ...string) map[string]job {
	out := map[string]job{}
	for _, name := range names {
		j := all[name]
		j.us = true
		out[name+", US units"] = j
	}
	return out
}

// together puts maps of jobs together.
func together(all ...map[string]job) map[string]job {
	out := map[string]job{}
	for _, m := range all {
		maps.Copy(out, m)
	}
	return out
}

// figures are the cells that a reader recalculates: sheet, cell, value as held.
func eachFormula(t *testing.T, f *excelize.File, do func(sheet, cell, formula, held string)) {
	t.Helper()
	each(t, f, func(sheet, cell string, _ excelize.CellType, raw string) {
		if text, _ := f.GetCellFormula(sheet, cell); text != "" {
			do(sheet, cell, text, raw)
		}
	})
}

// same compares what two cells hold: numbers to 1e-6, texts as such.
func same(a, b string) bool {
	x, err := strconv.ParseFloat(a, 64)
	y, other := strconv.ParseFloat(b, 64)
	if err == nil && other == nil {
		return math.Abs(x-y) <= 1e-6*math.Max(1, math.Abs(x)/1e6)
	}
	return a == b
}

// beyond are functions that the library can't work out over ranges, or with
// functions inside; the office program does.
func beyond(text string) bool {
	return strings.Contains(text, "SUMPRODUCT(") || strings.Contains(text, "ASINH(")
}

// TestFormulasHoldTheirFigures has every formula worked out by the library, on
// plans of every sort, and held against the figure beside it. Cells that are
// beyond the library are taken at their figures, and so are US units, whose
// texts of sizes need a ROUND that is a spreadsheet's.
func TestFormulasHoldTheirFigures(t *testing.T) {
	for name, j := range jobs(t) {
		if strings.HasPrefix(name, "site lead") {
			continue // the library takes long; the office program has them
		}
		t.Run(name, func(t *testing.T) {
			f := opened(t, written(t, planned(t, j)))
			g := opened(t, written(t, planned(t, j)))
			eachFormula(t, g, func(sheet, cell, text, held string) {
				if !beyond(text) {
					return
				}
				var v any = held
				if x, err := strconv.ParseFloat(held, 64); err == nil {
					v = x
				}
				if err := errors.Join(f.SetCellFormula(sheet, cell, ""), f.SetCellValue(sheet, cell, v)); err != nil {
					t.Fatal(err)
				}
			})
			n := 0
			eachFormula(t, f, func(sheet, cell, text, held string) {
				got, err := f.CalcCellValue(sheet, cell, excelize.Options{RawCellValue: true})
				if err != nil || !same(held, got) {
					t.Errorf("%s!%s holds %s, =%s gives %s, %v", sheet, cell, held, text, got, err)
				}
				n++
			})
			if n < 500 {
				t.Errorf("%d formulas", n)
			}
		})
	}
}

// outside is a program that a check needs, or a reason to skip. CI installs them
// all and sets BLANKOFF_CHECK_ALL, which makes a missing one a failure.
func outside(t testing.TB, name, why string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil && os.Getenv("BLANKOFF_CHECK_ALL") != "" {
		t.Fatalf("no %s on the PATH %s, and every check was asked for", name, why)
	}
	if err != nil {
		t.Skipf("no %s on the PATH %s", name, why)
	}
	return path
}

// office is the office program.
func office(t testing.TB) string { return outside(t, "soffice", "to recalculate the workbook with") }

// recalculated has the office program work a workbook out anew: the figures that
// it holds are thrown away first.
func recalculated(t testing.TB, f *excelize.File) *excelize.File {
	t.Helper()
	program, dir := office(t), t.TempDir()
	if err := f.UpdateLinkedValue(); err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "plan.xlsx")
	if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(program, "-env:UserInstallation=file://"+filepath.ToSlash(filepath.Join(dir, "profile")),
		"--headless", "--convert-to", "xlsx", "--outdir", filepath.Join(dir, "new"), path).CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	g, err := excelize.OpenFile(filepath.Join(dir, "new", "plan.xlsx"))
	if err != nil {
		t.Fatal(errors.Join(err, errors.New(string(out))))
	}
	t.Cleanup(func() { g.Close() })
	return g
}

// TestOfficeProgramAgrees: recalculated by another program, every cell is what it
// was and what the view has to 1e-6, and none is in error.
func TestOfficeProgramAgrees(t *testing.T) {
	office(t)
	all := jobs(t)
	for name, j := range together(all, inUS(all, "site lead", "every kind, sheet", "every kind, two rigs", "basis, both", "numbered classes, areas")) {
		t.Run(name, func(t *testing.T) {
			v := planned(t, j)
			data := written(t, v)
			f, g := opened(t, data), recalculated(t, opened(t, data))
			n := 0
			eachFormula(t, f, func(sheet, cell, text, held string) {
				got, err := g.GetCellValue(sheet, cell, excelize.Options{RawCellValue: true})
				if err != nil || !same(held, got) {
					t.Errorf("%s!%s holds %s, =%s gives %s, %v", sheet, cell, held, text, got, err)
				}
				n++
			})
			each(t, g, func(sheet, cell string, _ excelize.CellType, raw string) {
				if strings.HasPrefix(raw, "#") || strings.HasPrefix(raw, "Err:") {
					t.Errorf("%s!%s is %s", sheet, cell, raw)
				}
			})
			if n < 500 {
				t.Errorf("%d formulas", n)
			}
			compareTakeoff(t, g, v)
			compareSummary(t, g, v)
			if n := compareSections(t, g, v, v); n != len(v.Sections) {
				t.Errorf("%d sections compared of %d", n, len(v.Sections))
			}
		})
	}
}
