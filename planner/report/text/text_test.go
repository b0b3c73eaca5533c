package text

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"blankoff/fittings"
	"blankoff/planner/report"
	"blankoff/planner/report/internal/testview"
)

var update = flag.Bool("update", false, "write the golden files anew")

// windows is a table with shapes to merge, two windows in one row, one row that
// isn't permitted and one without a window.
func windows() *report.Windows {
	area := func(low, high float64, ranges ...string) report.AreaWindow {
		return report.AreaWindow{Low: low, High: high, Ranges: ranges}
	}
	const ask = "the ceiling is the duct's pressure class, which isn't stated"
	return &report.Windows{
		Rig: "Site rig", Scheme: "EN", Title: "European classes", Sign: "positive", Headroom: 1.5,
		Rows: []report.WindowRow{
			{Class: "A", PressurePa: 400, Shape: "rectangular", LimitPerM2: 1.32659, Areas: []report.AreaWindow{area(9.0461, 88.799, "high")}, Permitted: true, State: ask},
			{Class: "A", PressurePa: 400, Shape: "circular", LimitPerM2: 1.32659, Areas: []report.AreaWindow{area(9.0461, 88.799, "high")}, Permitted: true},
			{Class: "A", PressurePa: 400, Shape: "flat-oval", LimitPerM2: 1.32659, Areas: []report.AreaWindow{area(9.0461, 88.799, "high")}, Permitted: true, State: ask},
			{Class: "C", PressurePa: 400, Shape: "circular", LimitPerM2: 0.147399, Areas: []report.AreaWindow{area(5.62, 60, "low"), area(81.4, 799.99, "high", "higher")}, Permitted: true},
			{Class: "C", PressurePa: 2500, Shape: "circular", LimitPerM2: 0.485, State: "not permitted: at most 2000 Pa", Reason: "no range can be used at 2500 Pa"},
		},
		Notes: []string{"fan not checked"},
	}
}

var outputs = map[string]func(io.Writer) error{
	"plan":       func(w io.Writer) error { return Plan(w, testview.Small()) },
	"plan-big":   func(w io.Writer) error { return Plan(w, testview.Big(64)) },
	"plan-empty": func(w io.Writer) error { return Plan(w, &report.Plan{}) },
	"takeoff":    func(w io.Writer) error { return Takeoff(w, testview.SmallTakeoff()) },
	"totals": func(w io.Writer) error {
		v := testview.SmallTakeoff()
		v.Items = nil
		return Takeoff(w, v)
	},
	"faults":  func(w io.Writer) error { return Faults(w, testview.Faults()) },
	"windows": func(w io.Writer) error { return Windows(w, windows()) },
	"kinds":   func(w io.Writer) error { return Kinds(w, someKinds) },
	"kind":    func(w io.Writer) error { return Kind(w, someKinds[0]) },
	"kinds-all": func(w io.Writer) error {
		for _, k := range fittings.Kinds() {
			if err := Kind(w, k); err != nil {
				return err
			}
		}
		return Kinds(w, fittings.Kinds())
	},
}

// someKinds are made up, so that the golden file doesn't hang on another room.
var someKinds = []fittings.KindInfo{
	{Name: "bend", Aliases: []string{"elbow"}, Styles: []fittings.Style{fittings.RadiusStyle, fittings.Mitred}, Shapes: []fittings.Shape{fittings.Circular},
		Needs: []string{"diameter_mm", "angle_deg"}, Takes: []string{"legs_mm"}, Formula: "girth x centre-line length", Source: "Pappus",
		Example: "kind=bend, diameter_mm=315", ExampleArea: 0.4889, Doc: "A change of direction."},
	{Name: "plenum", Needs: []string{"width_mm, height_mm, length_mm"}, Doc: "A box."},
}

func TestGolden(t *testing.T) {
	for name, write := range outputs {
		if name == "kinds-all" {
			continue
		}
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			if err := write(&b); err != nil {
				t.Fatal(err)
			}
			path := filepath.Join("testdata", name+".txt")
			if *update {
				if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(b.Bytes(), want) {
				t.Errorf("differs from %s; look at it and run go test -update if it is meant\n%s", path, b.String())
			}
		})
	}
}

// TestLines holds for every output: no line is wider than it may be, none ends
// in a space, and nothing in a schedule can steer the screen.
func TestLines(t *testing.T) {
	for name, write := range outputs {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		for i, line := range strings.Split(b.String(), "\n") {
			if columnsOf(line) > width {
				t.Errorf("%s, line %d is %d columns wide: %s", name, i+1, columnsOf(line), line)
			}
			if strings.TrimRight(line, " ") != line {
				t.Errorf("%s, line %d ends in a space", name, i+1)
			}
			if strings.ContainsFunc(line, func(r rune) bool { return unicode.IsControl(r) || r == 0x202e }) {
				t.Errorf("%s, line %d: %q holds a control character", name, i+1, line)
			}
		}
	}
}

func TestFlaggedSectionsAreNeverCut(t *testing.T) {
	v := testview.Big(300)
	var b bytes.Buffer
	if err := Plan(&b, v); err != nil {
		t.Fatal(err)
	}
	for _, s := range v.Sections {
		if n := strings.Count(b.String(), s.ID+" "); s.UnderRange && n < 1 || s.UnderRange && !strings.Contains(b.String(), s.ID+": ") {
			t.Errorf("%s is under range and isn't told", s.ID)
		}
	}
	// 300 sections, 40 shown, 26 more of them under range: 234 left.
	for _, want := range []string{"(234 more; --format json or -o has all)", "(259 more; --format json or -o has all)"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("doesn't say %q", want)
		}
	}
}

func TestFaultsAreNeverCut(t *testing.T) {
	all := testview.Faults()
	for i := range 500 {
		f := all[5]
		f.Row, f.Value = 100+2*i, fmt.Sprintf("v%d", i)
		all = append(all, f)
	}
	var b bytes.Buffer
	if err := Faults(&b, all); err != nil {
		t.Fatal(err)
	}
	for i := range 500 {
		if !strings.Contains(b.String(), fmt.Sprintf("row %d, length_mm: 'v%d'\n", 100+2*i, i)) {
			t.Fatalf("fault %d is missing", i)
		}
	}
	b.Reset()
	if err := Faults(&b, nil); err != nil || b.Len() > 0 {
		t.Errorf("no faults: wrote %q, %v", b.String(), err)
	}
}

// TestWindowsStayInside: what is printed lies inside the window.
func TestWindowsStayInside(t *testing.T) {
	for _, v := range []float64{9.0461, 9, 0.04, 99.96, 100.4, 799.99, 81.4} {
		var shown float64
		if fmt.Sscan(up(v), &shown); shown < v {
			t.Errorf("up(%v) = %v", v, shown)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestWriteErrors(t *testing.T) {
	for name, write := range outputs {
		if err := write(full{}); err == nil {
			t.Errorf("%s: the disk was full and nobody was told", name)
		}
	}
}

func BenchmarkTakeoff(b *testing.B) {
	v := testview.Big(1000).Takeoff
	for b.Loop() {
		if err := Takeoff(io.Discard, v); err != nil {
			b.Fatal(err)
		}
	}
}
