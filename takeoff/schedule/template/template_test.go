package template

import (
	"archive/zip"
	"bytes"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/terms"
)

func templateBytes(t testing.TB) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestTemplateIsTheSameEachTime(t *testing.T) {
	first := templateBytes(t)
	for range 3 {
		if !bytes.Equal(first, templateBytes(t)) {
			t.Fatal("the bytes differ")
		}
	}
}

// The examples read back as a network without a fault, with areas worked out
// by hand.
func TestTemplateReadsBack(t *testing.T) {
	tk := takeoff.New(takeoff.Options{})
	info, err := schedule.ReadFrom("template.xlsx", templateBytes(t), func(r *takeoff.Row) error {
		if !strings.Contains(r.Text[takeoff.Note], "example") {
			t.Errorf("%s isn't marked as an example", r.At)
		}
		tk.Add(r)
		return nil
	})
	if err != nil || len(info.Faults) > 0 || info.RowsRead != len(part("examples")) {
		t.Fatalf("%d rows, %v %v", info.RowsRead, err, info.Faults)
	}
	if want := "sheet 'instructions' has no heading row and was passed over"; len(info.Notes) != 2 || !slices.Contains(info.Notes, want) { // and one that names the remarks of the examples
		t.Errorf("notes %q", info.Notes)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	for _, f := range tk.Faults {
		t.Errorf("fault %+v", f)
	}
	areas := map[string]float64{
		"E1": 6,                                  // 2 x (0.6 + 0.4) x 3
		"E2": math.Pi / 2 * 0.45 * 2,             // quarter turn at 0.15 + 0.6/2, girth 2
		"E5": 3.5,                                // 2 x (0.4 + 0.3) x 2.5
		"E6": 0.12,                               // 0.4 x 0.3
		"E7": 2 * 1.5 * math.Pi * 0.2,            // two of pi x 0.2 x 1.5
		"E4": 0.84 + 0.0628318531 - 0.0314159265, // 1.4 x 0.6, pi x 0.2 x 0.1, less pi x 0.2^2 / 4
	}
	for i := range tk.Items {
		it := &tk.Items[i]
		if want, ok := areas[it.Tag]; ok && math.Abs(it.Area-want) > 1e-9 {
			t.Errorf("%s: %v m2, by hand %v", it.Tag, it.Area, want)
		}
		if it.Tag != "E1" && it.Loose() {
			t.Errorf("%s hangs on nothing", it.Tag)
		}
	}
}

func TestTemplateSheet(t *testing.T) {
	f, err := excelize.OpenReader(bytes.NewReader(templateBytes(t)))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows("schedule")
	if err != nil || len(rows[0]) != int(takeoff.NumColumns) {
		t.Fatalf("%d headings %v", len(rows[0]), err)
	}
	byHeading := map[string]takeoff.Column{}
	for c := range takeoff.NumColumns {
		byHeading[c.Heading()] = c
	}
	const first = "tag system level kind style shape width_mm height_mm diameter_mm length_mm angle_deg radius_mm throat_mm from at_mm quantity scope class test_pa sign duct_class_pa "
	if got := strings.Join(rows[0], " "); !strings.HasPrefix(got, first) {
		t.Errorf("headings %s, want first %s", got, first)
	}
	for i, heading := range rows[0] {
		c, ok := byHeading[heading]
		if !ok {
			t.Errorf("%q isn't a heading, or stands twice", heading)
		}
		delete(byHeading, heading)
		letter, err := excelize.ColumnNumberToName(i + 1)
		if err != nil {
			t.Fatal(err)
		}
		id, err := f.GetColStyle("schedule", letter)
		if err != nil {
			t.Fatal(err)
		}
		if s, err := f.GetStyle(id); err != nil || (s.NumFmt == 49) != (c.Measure() == takeoff.Text) {
			t.Errorf("%s: number format %v %v", c.Heading(), s, err)
		}
	}
	if p, err := f.GetPanes("schedule"); err != nil || !p.Freeze || p.YSplit != 1 {
		t.Errorf("the heading row isn't frozen: %+v %v", p, err)
	}
	checkDropDowns(t, f, rows[0])
	checkPrint(t, f)
	checkInstructions(t, f)
}

// checkDropDowns reads every word of a drop-down as the program will.
func checkDropDowns(t *testing.T, f *excelize.File, headings []string) {
	t.Helper()
	validations, err := f.GetDataValidations("schedule")
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]func(string) bool{
		"kind":   func(s string) bool { _, ok := fittings.ParseKind(s); return ok },
		"style":  func(s string) bool { _, ok := fittings.ParseStyle(s); return ok },
		"shape":  func(s string) bool { _, ok := fittings.ParseShape(s); return ok },
		"shape2": func(s string) bool { _, ok := fittings.ParseShape(s); return ok },
		"plane":  func(s string) bool { _, ok := fittings.ParsePlane(s); return ok },
		"sign":   func(s string) bool { _, ok := terms.ParseSign(s); return ok },
	}
	lengths := map[string]int{}
	for _, v := range validations {
		col, row, err := excelize.CellNameToCoordinates(strings.Split(v.Sqref, ":")[0])
		if err != nil || row != 2 {
			t.Fatalf("%s %v", v.Sqref, err)
		}
		heading := headings[col-1]
		words := strings.Split(strings.Trim(v.Formula1, `"`), ",")
		lengths[heading] = len(words)
		for _, w := range words {
			if know := known[heading]; know != nil && !know(w) {
				t.Errorf("%s offers %q, which isn't known", heading, w)
			}
		}
	}
	for heading, least := range map[string]int{"kind": len(fittings.Kinds()), "style": 10, "shape": 3, "shape2": 3, "class": 4, "sign": 2, "scope": 3, "joint": 3, "plane": 2, "size_is": 2} {
		if lengths[heading] < least {
			t.Errorf("%s offers %d words, want %d", heading, lengths[heading], least)
		}
	}
}

// checkPrint: the headings that nearly every schedule needs are marked without
// colour, and the columns that nearly everybody uses fill a page's width.
func checkPrint(t *testing.T, f *excelize.File) {
	t.Helper()
	for cell, want := range map[string]bool{"A1": true, "B1": false, "D1": true, "G1": true, "N1": true, "L1": false, "AZ1": false} {
		id, err := f.GetCellStyle("schedule", cell)
		if err != nil {
			t.Fatal(err)
		}
		s, err := f.GetStyle(id)
		if err != nil || s.Font.Bold != want {
			t.Errorf("%s is bold: %v, want %v; %v", cell, s.Font.Bold, want, err)
		}
	}
	areas := map[string]string{}
	for _, n := range f.GetDefinedName() {
		areas[n.Scope+" "+n.Name] = n.RefersTo
	}
	if areas["schedule _xlnm.Print_Area"] != "'schedule'!$A:$U" || areas["instructions _xlnm.Print_Area"] != "'instructions'!$A:$F" {
		t.Errorf("print areas %v", areas)
	}
	for _, sheet := range f.GetSheetList() {
		if l, err := f.GetPageLayout(sheet); err != nil || *l.FitToWidth != 1 || *l.FitToHeight != 0 {
			t.Errorf("%s: %+v %v", sheet, l, err)
		}
	}
}

// Every other heading that the instructions name is read as that column.
func TestOtherHeadingsAreRead(t *testing.T) {
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	total := 0
	for c := range takeoff.NumColumns {
		for _, name := range otherHeadings(lex, c) {
			total++
			if h := lex.Read(name); h.Verdict != headings.Known || h.Column != c {
				t.Errorf("%s: %q is read as %+v", c.Heading(), name, h)
			}
		}
	}
	if total < 150 {
		t.Errorf("%d other headings", total)
	}
	for c, want := range map[takeoff.Column]string{takeoff.Tag: "mark", takeoff.TestPa: "test (Pa)", takeoff.DimColumn(fittings.Width): "duct width", takeoff.DimColumn(fittings.Radius): "radius (mm)"} {
		if l := otherHeadings(lex, c); !slices.Contains(l, want) {
			t.Errorf("%s: no %q in %q", c.Heading(), want, l)
		}
	}
}

// checkInstructions looks for each column in the instructions, with the kinds
// that need it.
func checkInstructions(t *testing.T, f *excelize.File) {
	t.Helper()
	help, err := f.GetRows("instructions")
	if err != nil {
		t.Fatal(err)
	}
	lines := map[string][]string{}
	for _, row := range help {
		if len(row) > 2 {
			lines[row[0]] = row
		}
	}
	for c := range takeoff.NumColumns {
		if row := lines[c.Heading()]; row == nil || row[1] == "" || row[2] == "" {
			t.Errorf("%s isn't explained: %q", c.Heading(), row)
		}
	}
	for heading, kind := range map[string]string{"width_mm": "straight", "gores": "bend", "branch_length_mm": "tee", "width2_mm": "transition", "kind": "every row"} {
		if row := lines[heading]; len(row) < 4 || !strings.Contains(row[3], kind) {
			t.Errorf("%s: needed by %q, want %s among them", heading, row[3:], kind)
		}
	}
	for kind, alias := range map[string]string{"reducer": "taper", "bend": "elbow"} {
		if row := lines[kind]; len(row) < 6 || !strings.Contains(row[5], alias) {
			t.Errorf("%s: %q doesn't name %s", kind, row, alias)
		}
	}
	if row := lines["quantity"]; len(row) < 6 || !strings.Contains(row[5], "qty") {
		t.Errorf("quantity: %q doesn't name qty", row)
	}
	if row := lines["at_mm"]; len(row) > 3 && row[3] != "" {
		t.Errorf("at_mm is needed by %q", row[3])
	}
}

// No cell of the template is a formula.
func TestTemplateHasNoFormula(t *testing.T) {
	data := templateBytes(t)
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	sheets := 0
	for _, part := range zr.File {
		if !strings.HasPrefix(part.Name, "xl/worksheets/sheet") {
			continue
		}
		r, err := part.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil || bytes.Contains(text, []byte("<f>")) || bytes.Contains(text, []byte("<f ")) {
			t.Errorf("%s holds a formula %v", part.Name, err)
		}
		sheets++
	}
	if sheets != 2 {
		t.Errorf("%d sheets", sheets)
	}
}
