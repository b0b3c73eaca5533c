package xlsx

import (
	"archive/zip"
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/planner/report"
	"blankoff/planner/report/internal/testview"
	"blankoff/planner/units"
)

var update = flag.Bool("update", false, "write the golden file anew")

func written(t *testing.T, v *report.Plan) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Plan(&b, v); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func opened(t *testing.T, data []byte) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

// each calls do for every cell that holds something.
func each(t *testing.T, f *excelize.File, do func(sheet, cell string, kind excelize.CellType, raw string)) {
	t.Helper()
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		for r, row := range rows {
			for c, raw := range row {
				if raw == "" {
					continue
				}
				cell, _ := excelize.CoordinatesToCellName(c+1, r+1)
				kind, err := f.GetCellType(sheet, cell)
				if err != nil {
					t.Fatal(err)
				}
				do(sheet, cell, kind, raw)
			}
		}
	}
}

func TestGolden(t *testing.T) {
	f := opened(t, written(t, testview.Small()))
	var b strings.Builder
	each(t, f, func(sheet, cell string, kind excelize.CellType, raw string) {
		format := ""
		if kind != excelize.CellTypeInlineString {
			id, _ := f.GetCellStyle(sheet, cell)
			style, err := f.GetStyle(id)
			if err != nil {
				t.Fatal(err)
			}
			if style.CustomNumFmt != nil {
				format = " [" + *style.CustomNumFmt + "]"
			}
			fmt.Fprintf(&b, "%s!%s number %s%s\n", sheet, cell, raw, format)
			return
		}
		fmt.Fprintf(&b, "%s!%s text %q\n", sheet, cell, raw)
	})
	path := filepath.Join("testdata", "plan.txt")
	if *update {
		if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if b.String() != string(want) {
		t.Errorf("differs from %s; look at it and run go test -update if it is meant\n%s", path, b.String())
	}
}

// TestSameBytes writes the plan often enough for an order taken from a map to
// show: nine sheets have 362,880 orders.
func TestSameBytes(t *testing.T) {
	first := written(t, testview.Small())
	for range 10 {
		if !bytes.Equal(first, written(t, testview.Small())) {
			t.Fatal("the same plan gave other bytes")
		}
	}
	z, err := zip.NewReader(bytes.NewReader(first), int64(len(first)))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, part := range z.File {
		names = append(names, part.Name)
		if !part.Modified.IsZero() && part.Modified.Year() > 1980 {
			t.Errorf("%s has a time: %v", part.Name, part.Modified)
		}
		r, err := part.Open()
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.Copy(io.Discard, r); err != nil { // checks the sum
			t.Errorf("%s: %v", part.Name, err)
		}
	}
	if !sort.StringsAreSorted(names) || names[0] != "[Content_Types].xml" {
		t.Errorf("parts: %v", names)
	}
}

// TestTextStaysText: text is text, even where it begins as a formula does, and
// stays so when somebody edits the cell.
func TestTextStaysText(t *testing.T) {
	f := opened(t, written(t, testview.Small()))
	found := 0
	each(t, f, func(sheet, cell string, _ excelize.CellType, raw string) {
		if text, _ := f.GetCellFormula(sheet, cell); text != "" {
			if strings.Contains(text, "cmd") || strings.Contains(text, "tag") {
				t.Errorf("%s!%s is the formula %q", sheet, cell, text)
			}
			return
		}
		if strings.ContainsAny(raw, "\n\x1b\u202e") {
			t.Errorf("%s!%s: %q isn't safe to show on one line", sheet, cell, raw)
		}
		if !strings.ContainsAny(raw[:1], "=+-@") {
			return
		}
		if _, err := strconv.ParseFloat(raw, 64); err == nil {
			return
		}
		found++
		id, _ := f.GetCellStyle(sheet, cell)
		if style, err := f.GetStyle(id); err != nil || style.NumFmt != 49 {
			t.Errorf("%s!%s %q isn't formatted as text", sheet, cell, raw)
		}
	})
	if found < 5 {
		t.Errorf("%d cells looked at, want 5 or more", found)
	}
}

// TestLimitsAreNeverMore: what a reader sees, after the number format, isn't
// more than what is permitted.
func TestLimitsAreNeverMore(t *testing.T) {
	v := testview.Big(200)
	f := opened(t, written(t, v))
	for i, s := range v.Sections {
		shown, err := f.GetCellValue("sections", fmt.Sprintf("I%d", i+2))
		if err != nil {
			t.Fatal(err)
		}
		if q, err := strconv.ParseFloat(strings.TrimSuffix(shown, " L/s"), 64); err != nil || q > s.Limit || q < s.Limit*0.99 {
			t.Errorf("%s: shown %s, permitted %v", s.ID, shown, s.Limit)
		}
		all, _ := f.GetCellValue("sections", fmt.Sprintf("O%d", i+2), excelize.Options{RawCellValue: true})
		if q, err := strconv.ParseFloat(all, 64); err != nil || math.Abs(q/s.Limit-1) > 1e-14 {
			t.Errorf("%s: all digits %s, want %v", s.ID, all, s.Limit)
		}
	}
}

// TestAdds: areas in the workbook are the numbers of the view, unrounded.
func TestAdds(t *testing.T) {
	v := testview.Big(300)
	f := opened(t, written(t, v))
	sum := func(sheet, column string, rows int) (total float64) {
		for i := range rows {
			raw, err := f.GetCellValue(sheet, fmt.Sprintf("%s%d", column, i+2), excelize.Options{RawCellValue: true})
			if err != nil {
				t.Fatal(err)
			}
			x, err := strconv.ParseFloat(raw, 64)
			if err != nil {
				t.Fatalf("%s!%s%d: %v", sheet, column, i+2, err)
			}
			total += x
		}
		return total
	}
	want := 0.0
	for _, s := range v.Sections {
		want += s.Area
	}
	for _, tt := range []struct {
		sheet, column string
		rows          int
	}{{"sections", "H", 300}, {"pieces", "K", 3000}, {"takeoff", "K", 3000}} {
		if got := sum(tt.sheet, tt.column, tt.rows); got-want > 1e-6 || want-got > 1e-6 {
			t.Errorf("%s sums to %v m2, want %v", tt.sheet, got, want)
		}
	}
}

// TestLayout: the heading row stays in sight and prints on every page, there is
// a filter, and a page is one sheet wide.
func TestLayout(t *testing.T) {
	f := opened(t, written(t, testview.Small()))
	want := []string{"summary", "sections", "out of range", "readings", "pieces", "cuts", "blanks", "blanks by size", "moves", "untested joints", "takeoff", "settings", "notes"}
	if got := f.GetSheetList(); strings.Join(got, ",") != strings.Join(want, ",") {
		t.Fatalf("sheets %v, want %v", got, want)
	}
	names := map[string]string{}
	for _, n := range f.GetDefinedName() {
		names[n.Scope+"|"+n.Name] = n.RefersTo
	}
	for _, sheet := range want {
		p, err := f.GetPanes(sheet)
		if err != nil || !p.Freeze || p.YSplit != 1 {
			t.Errorf("%s: panes %+v, %v", sheet, p, err)
		}
		l, err := f.GetPageLayout(sheet)
		if err != nil || *l.Orientation != "landscape" || *l.FitToWidth != 1 || *l.FitToHeight != 0 || *l.Size != 9 {
			t.Errorf("%s: page %+v, %v", sheet, l, err)
		}
		props, err := f.GetSheetProps(sheet)
		if err != nil || props.FitToPage == nil || !*props.FitToPage {
			t.Errorf("%s: doesn't fit its page: %v", sheet, err)
		}
		if names[sheet+"|_xlnm.Print_Titles"] != "'"+sheet+"'!$1:$1" {
			t.Errorf("%s: no print titles: %v", sheet, names)
		}
	}
	if names["sections|_xlnm.Print_Area"] != "'sections'!$A:$N" {
		t.Errorf("print area of sections: %q", names["sections|_xlnm.Print_Area"])
	}
	data := written(t, testview.Small())
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"xl/worksheets/sheet2.xml", "xl/worksheets/sheet9.xml"} {
		part, err := z.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		text, _ := io.ReadAll(part)
		if !bytes.Contains(text, []byte("<autoFilter ref=\"$A$1:$")) {
			t.Errorf("%s has no filter", name)
		}
	}
}

// TestTooManyRows: what doesn't fit into a sheet is counted, not lost silently.
func TestTooManyRows(t *testing.T) {
	b, err := newBook("", units.SI)
	if err != nil {
		t.Fatal(err)
	}
	b.last = 5
	err = b.sheet("long", []column{{head: "n", width: 20}}, func(row func(...any) error) error {
		for i := range 10 {
			if err := row(i); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := b.write(&out); err != nil {
		t.Fatal(err)
	}
	rows, err := opened(t, out.Bytes()).GetRows("long")
	if err != nil || len(rows) != 5 || rows[3][0] != "2" || rows[4][0] != "7 more rows don't fit into a sheet; plan.json has all" {
		t.Errorf("rows %v, %v", rows, err)
	}
}

func TestFootText(t *testing.T) {
	for in, want := range map[string]string{
		"a&b.csv": "a&&b.csv", "a\nb": "a b", strings.Repeat("x", 100): strings.Repeat("x", 80) + "...",
	} {
		if got := footText(in); got != want {
			t.Errorf("%q became %q, want %q", in, got, want)
		}
	}
}

type noSpace struct{}

func (noSpace) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestWriteErrors(t *testing.T) {
	if err := Plan(noSpace{}, testview.Small()); err == nil {
		t.Error("the disk was full and nobody was told")
	}
	if err := Plan(io.Discard, &report.Plan{}); err != nil {
		t.Errorf("an empty plan: %v", err)
	}
}

// TestOtherProgramOpensIt has another program read and print the workbook.
func TestOtherProgramOpensIt(t *testing.T) {
	office := office(t)
	dir := t.TempDir()
	path := filepath.Join(dir, "plan.xlsx")
	if err := os.WriteFile(path, written(t, testview.Small()), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(office, "-env:UserInstallation=file://"+filepath.ToSlash(filepath.Join(dir, "profile")),
		"--headless", "--convert-to", "pdf", "--outdir", dir, path).CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	pdf := filepath.Join(dir, "plan.pdf")
	if st, err := os.Stat(pdf); err != nil || st.Size() == 0 {
		t.Fatalf("nothing printed: %v %s", err, out)
	}
	reader := outside(t, "pdftotext", "to read what was printed")
	text, err := exec.Command(reader, "-layout", pdf, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(text, []byte("###")) {
		t.Errorf("a number is wider than its column:\n%s", text)
	}
	for _, want := range []string{"UNDER RANGE", "OVER RANGE", "north & south.csv", "21.73", "0.179", "=cmd|", "Ductwork leakage test plan"} {
		if !bytes.Contains(text, []byte(want)) {
			t.Errorf("%q isn't printed", want)
		}
	}
}

func BenchmarkPlan(b *testing.B) {
	v := testview.Big(1000)
	for b.Loop() {
		if err := Plan(io.Discard, v); err != nil {
			b.Fatal(err)
		}
	}
}
