package xlsx

import (
	"fmt"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/planner"
)

// hostile texts: formulas, names and sheets of the workbook, and what would end a
// text inside a formula.
var hostile = []string{
	`=cmd|' /C calc'!A0`, `+1+1`, `-2`, `@SUM(1)`, `headroom`, `settings!B7`, `'sections'!A1`, `x"&HYPERLINK("a")&"`, `"),1,("`, `{=1}`, `R1C1`, `A1`, `sheet_mm`, `*`, `~?`, `=1`, "\t=1",
}

// plainNames is a schedule in which every text is a word and a number: a main of
// straights, each with a spigot.
func plainNames() string {
	var b strings.Builder
	b.WriteString("tag,from,system,level,place,drawing,kind,width_mm,height_mm,length_mm,branch_diameter_mm,branch_length_mm,at_mm,note\n")
	last := ""
	for i := range 2 * len(hostile) {
		text := fmt.Sprintf("word %d", i)
		fmt.Fprintf(&b, "%s,%s,word 0,%s,%s,%s,straight,600,400,9000,,,,%s\n", text, last, text, text, text, text)
		fmt.Fprintf(&b, "%s spigot,%s,,%s,%s,%s,spigot,,,,200,100,4000,%s\n", text, text, text, text, text, text)
		last = text
	}
	return b.String()
}

// called gives a word a hostile name of its own.
func called(text string) string {
	n := 0
	if _, err := fmt.Sscanf(text, "word %d", &n); err != nil {
		return text
	}
	name := hostile[n%len(hostile)]
	if n >= len(hostile) {
		name += " 2"
	}
	if strings.HasSuffix(text, "spigot") {
		name += ")"
	}
	return name
}

// formulasOf are all formulas of a workbook, by cell.
func formulasOf(t *testing.T, f *excelize.File) map[string]string {
	t.Helper()
	m := map[string]string{}
	eachFormula(t, f, func(sheet, cell, text, _ string) { m[sheet+"!"+cell] = text })
	return m
}

// TestHostileTexts: whatever a schedule and a rig are called by, the workbook has
// the same formulas as with harmless names, in the same cells.
func TestHostileTexts(t *testing.T) {
	rigText := func(rig, name string) string {
		quote := func(s string) string {
			return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\t", `\t`).Replace(s) + `"`
		}
		return strings.NewReplacer(`"other"`, quote(rig), `"low"`, quote(name)).Replace(otherRig)
	}
	set := func(s *planner.Settings) { s.Class, s.TestPa = "C", 400 }
	bad := planned(t, job{csv: plainNames(), call: called, set: set, rigs: []string{rigText(hostile[0], hostile[7])}})
	good := planned(t, job{csv: plainNames(), set: set, rigs: []string{rigText("rig", "range")}})
	for _, f := range bad.Faults {
		t.Fatalf("row %d, %s: %s", f.Row, f.Heading, f.Message)
	}
	data := written(t, bad)
	f := opened(t, data)
	got, want := formulasOf(t, f), formulasOf(t, opened(t, written(t, good)))
	if len(got) != len(want) || len(got) < 500 {
		t.Errorf("%d formulas, want %d", len(got), len(want))
	}
	for cell, text := range want {
		if got[cell] != text {
			t.Errorf("%s is =%s, want =%s", cell, got[cell], text)
		}
	}
	each(t, f, func(sheet, cell string, kind excelize.CellType, raw string) {
		if text, _ := f.GetCellFormula(sheet, cell); text != "" || !strings.ContainsAny(raw[:1], "=+@") || kind != excelize.CellTypeInlineString {
			return
		}
		id, _ := f.GetCellStyle(sheet, cell)
		if s, err := f.GetStyle(id); err != nil || s.NumFmt != 49 {
			t.Errorf("%s!%s %q isn't formatted as text", sheet, cell, raw)
		}
	})
	if _, err := f.CalcCellValue("sections", "H2"); err != nil {
		t.Error(err)
	}
}
