package schedule

import (
	"bytes"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/takeoff/schedule/celltext"
)

// officeWorkbook is a workbook as an office keeps it: a cover, two schedules,
// formats, a formula without a result, hidden rows and a hidden sheet.
func officeWorkbook(t *testing.T) []byte {
	f := excelize.NewFile()
	defer f.Close()
	do := func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	}
	row := func(sheet, cell string, values ...any) { do(f.SetSheetRow(sheet, cell, &values)) }
	style := func(sheet, cell, format string) {
		id, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format})
		do(err)
		do(f.SetCellStyle(sheet, cell, cell, id))
	}
	do(f.SetSheetName("Sheet1", "Cover"))
	for _, name := range []string{"Supply", "Extract", "Empty"} {
		_, err := f.NewSheet(name)
		do(err)
	}
	row("Cover", "A1", "Ductwork of the north wing")
	row("Supply", "B2", "Supply air")
	row("Supply", "B4", "Tag", "Kind", "Width", "Height (mm)", "Length (m)", "Ready", "Qty")
	row("Supply", "B5", 7, "straight", 1500, 400.5, 1.2, 46082, 2)
	row("Supply", "B7", "S8", "bend", "1,500", true, 1.2)
	row("Supply", "B8", "S9", "straight", 600, 400)
	row("Supply", "J8", "beside the table")
	style("Supply", "B5", `"S-"000`)
	style("Supply", "D5", "#,##0")
	style("Supply", "G5", "dd.mm.yyyy")
	do(f.SetCellFormula("Supply", "F8", "F5*2"))
	do(f.SetRowVisible("Supply", 7, false))
	row("Extract", "A1", "Kind", "Dia (in)", "Length (ft)", "Stated area (sq ft)")
	row("Extract", "A2", "straight", 12, "2'-6\"", 7.854)
	style("Extract", "B2", `0" mm"`)
	do(f.SetSheetVisible("Extract", false))
	var b bytes.Buffer
	do(f.Write(&b))
	return b.Bytes()
}

func TestOfficeWorkbook(t *testing.T) {
	want := `w.xlsx, sheet Supply, row 5: tag="S-007"; system="Supply"; kind="straight"; quantity="2" -> 2; width_mm="1500" -> 1.5; height_mm="400.5" -> 0.4005; length_mm="1.2" -> 1.2; ready="2026-03-01";
w.xlsx, sheet Supply, row 7: tag="S8"; system="Supply"; kind="bend"; width_mm="1,500"; height_mm="TRUE"; length_mm="1.2" -> 1.2;
    fault: w.xlsx, sheet Supply, row 7 | heading "Width" | value "1,500" | expected a length in mm, not negative | '1,500' could be 1500 or 1.5; write the one that is meant
    fault: w.xlsx, sheet Supply, row 7 | heading "Height (mm)" | value "TRUE" | expected a length in mm, not negative | 'TRUE' isn't a number; write digits only, with a point for decimals
w.xlsx, sheet Supply, row 8: tag="S9"; system="Supply"; kind="straight"; width_mm="600" -> 0.6; height_mm="400" -> 0.4;
    fault: w.xlsx, sheet Supply, row 8 | heading "Length (m)" | value "=F5*2" | expected a length in m, not negative | '=F5*2' is a formula without a result; open the file in a spreadsheet program and save it, or type the value
w.xlsx, sheet Extract, row 2: system="Extract"; kind="straight"; diameter_mm="12 mm" -> 0.012; length_mm="2'-6\"" -> 0.762; stated_area_m2="7.854" -> 0.72966047616;
fault: w.xlsx, sheet Extract, row 1 | heading "" | value "Extract" | expected sheets of one job, each piece once | sheet 'Extract', pieces in row 2, is hidden while others are shown, so its pieces may not count; it was read all the same: leave it out by --skip-hidden or by skip in a map (inspect -o), or show it
note: sheet 'Cover' has no heading row and was passed over
note: sheet 'Supply': row 2 above the headings passed over: 'Supply air'
note: sheet 'Supply': no unit is given for 'Width': read as mm
note: where a number has two readings, decimal = 'comma' or 'point' in a map settles it for the whole file: inspect -o MAP.toml writes one, --map MAP.toml reads by it
note: sheet 'Supply': column 10 has no heading and isn't used
note: sheet 'Supply': 2 rows have no figure under quantity, and each counts as one piece: in rows 7 to 8
note: sheet 'Supply': the system of 3 rows is taken from the name of the sheet
note: sheet 'Supply': hidden and read all the same: row 7
note: sheet 'Extract': the system of 1 row is taken from the name of the sheet
note: sheet 'Extract': the sheet is hidden and was read all the same
4 rows read
`
	if got := show("w.xlsx", officeWorkbook(t)); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

// Headings may change further down; a row of numbers that are words isn't a
// row of headings.
func TestHeadingsFurtherDown(t *testing.T) {
	got := show("h.csv", []byte("tag,kind,width_mm,height_mm,length_mm\nA,straight,600,400,1000\n"+
		"tag,kind,diameter (in),length (m),note\nB,straight,12,1,round\nC,straight,broad,long,note\n"))
	for _, want := range []string{
		`h.csv, row 2: tag="A"; kind="straight"; width_mm="600" -> 0.6; height_mm="400" -> 0.4; length_mm="1000" -> 1;`,
		`h.csv, row 4: tag="B"; kind="straight"; note="round"; diameter_mm="12" -> 0.3048; length_mm="1" -> 1;`,
		`row 5 | heading "diameter (in)" | value "broad"`, "other headings start at row 3", "3 rows read",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in\n%s", want, got)
		}
	}
}

// A unit in a row of units that contradicts its heading leaves the column
// unusable; the others are taken.
func TestUnitsBelowThatContradict(t *testing.T) {
	got := show("u.csv", []byte("tag,kind,width (mm),length\n,,in,m\nA,straight,600,1000\n"))
	for _, want := range []string{`row 2 | heading "width (mm)" | value "in"`, "1 rows read", "row 2 gives the units", `length_mm="1000" -> 1000;`} {
		if !strings.Contains(got, want) || strings.Contains(got, "width_mm=") {
			t.Errorf("%s: %s", want, got)
		}
	}
}

// Words under columns that hold no lengths, and none that are known, make no
// difference; below headings that stand again, other units may stand.
func TestRowsOfUnits(t *testing.T) {
	for text, want := range map[string]string{
		"Pos.;Bezeichnung;Breite;Höhe;Länge\n;;in cm;in cm;in cm\nA;Kanal;60;40;150\n":                                                    `length_mm="150" -> 1.5;`,
		"Tag;Kind;Width;Height;Length;Qty\n;;cm;cm;cm;[-]\nA;straight;60;40;150;2\n":                                                      `length_mm="150" -> 1.5;`,
		"Tag;Kind;Width;Height;Length;Qty\n;text;cm;cm;lfm;St.\nA;straight;60;40;1,5;2\n":                                                 `length_mm="1,5" -> 1.5;`,
		"Tag;Kind;Width;Height;Length\n;;mm;mm;m\nA;straight;600;400;1\nTag;Kind;Width;Height;Length\n;;cm;cm;cm\nB;straight;60;40;150\n": `length_mm="150" -> 1.5;`,
		"Tag;Kind;Width;Height;Length\nA;straight;600;400;1000\nTag;Kind;Width;Height;Length\n;;cm;cm;cm\nB;straight;60;40;150\n":         `length_mm="150" -> 1.5;`,
		"Tag;Kind;Width;Height;Length\n;;cm;cm;ells\nA;straight;60;40;150\n":                                                              `heading "Length" | value "ells"`,
	} {
		if got := show("u.csv", []byte(text)); !strings.Contains(got, want) || strings.Contains(got, "no kind") {
			t.Errorf("%q: want %s\n%s", text, want, got)
		}
	}
}

func TestUTF16WithoutMark(t *testing.T) {
	for _, order := range []func(byte) []byte{func(c byte) []byte { return []byte{c, 0} }, func(c byte) []byte { return []byte{0, c} }} {
		var data []byte
		for _, c := range []byte("tag,kind,width_mm\nA,bend,600\n") {
			data = append(data, order(c)...)
		}
		if got := show("u.csv", data); !strings.Contains(got, `width_mm="600" -> 0.6`) || !strings.Contains(got, "UTF-16 without") {
			t.Error(got)
		}
	}
}

func TestCellTooLong(t *testing.T) {
	got := show("l.csv", []byte("tag,kind,width_mm,note\nA,bend,600,"+strings.Repeat("x", celltext.MaxCell+1)+"\nB,bend,600,"+strings.Repeat("x", celltext.MaxCell)+"\n"))
	if strings.Count(got, "fault:") != 1 || !strings.Contains(got, "row 2") || !strings.Contains(got, "is too long for a cell") {
		t.Errorf("%.500s", got)
	}
}
