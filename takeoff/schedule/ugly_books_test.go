package schedule_test

import (
	"archive/zip"
	"bytes"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// book builds a workbook cell by cell.
type book struct {
	t    testing.TB
	file *excelize.File
}

func newBook(t testing.TB, sheets ...string) *book {
	b := &book{t, excelize.NewFile()}
	b.do(b.file.SetSheetName("Sheet1", sheets[0]))
	for _, s := range sheets[1:] {
		_, err := b.file.NewSheet(s)
		b.do(err)
	}
	made := "2026-01-01T00:00:00Z"
	b.do(b.file.SetDocProps(&excelize.DocProperties{Creator: "blankoff", Created: made, Modified: made}))
	return b
}

func (b *book) do(err error) {
	b.t.Helper()
	if err != nil {
		b.t.Fatal(err)
	}
}

// rows writes rows from a cell down.
func (b *book) rows(sheet string, from int, rows ...[]any) *book {
	for i, row := range rows {
		at, err := excelize.CoordinatesToCellName(1, from+i)
		b.do(err)
		b.do(b.file.SetSheetRow(sheet, at, &row))
	}
	return b
}

func (b *book) bytes() []byte {
	var out bytes.Buffer
	b.do(b.file.Write(&out))
	b.do(b.file.Close())
	return out.Bytes()
}

func row(cells ...any) []any { return cells }

// odsFile packs a sheet or more of OpenDocument XML.
func odsFile(t testing.TB, tables string) []byte {
	var out bytes.Buffer
	zw := zip.NewWriter(&out)
	for _, p := range [][2]string{{"mimetype", "application/vnd.oasis.opendocument.spreadsheet"}, {"content.xml", `<?xml version="1.0" encoding="UTF-8"?>
<office:document-content xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" office:version="1.3"><office:automatic-styles><style:style style:name="ta2" style:family="table"><style:table-properties table:display="false"/></style:style></office:automatic-styles><office:body><office:spreadsheet>` +
		tables + `</office:spreadsheet></office:body></office:document-content>`}} {
		w, err := zw.Create(p[0])
		if err == nil {
			_, err = w.Write([]byte(p[1]))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := zw.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// odsRow writes a row of text cells, and of numbers where a cell begins with =.
func odsRow(cells ...string) string {
	var b strings.Builder
	b.WriteString("<table:table-row>")
	for _, c := range cells {
		if n, ok := strings.CutPrefix(c, "="); ok {
			b.WriteString(`<table:table-cell office:value-type="float" office:value="` + n + `"><text:p>` + n + `</text:p></table:table-cell>`)
		} else {
			b.WriteString(`<table:table-cell office:value-type="string"><text:p>` + c + `</text:p></table:table-cell>`)
		}
	}
	b.WriteString("</table:table-row>")
	return b.String()
}

var bookHead = row("Tag", "Kind", "Width (mm)", "Height (mm)", "Length (mm)")

func uglyXLSX(name string, b *book, used, excluded, refused int, area float64, faults string, notes ...string) ugly {
	return ugly{name: name, data: b.bytes(), used: used, excluded: excluded, refused: refused, area: area, faults: faults, notes: notes}
}

// uglyBooks are the workbooks.
func uglyBooks(t testing.TB) []ugly {
	return append(uglySheets(t), uglyODS(t)...)
}

func uglySheets(t testing.TB) []ugly {
	one := rect(.6, .4, 1)
	a := func(tag string) []any { return row(tag, "straight", 600, 400, 1000) }
	var out []ugly

	b := newBook(t, "Ducts").rows("Ducts", 1, bookHead, a("A"), a("B"), a("C"))
	b.do(b.file.SetRowVisible("Ducts", 3, false))
	out = append(out, uglyXLSX("hidden-row.xlsx", b, 3, 0, 0, 3*one, "", "hidden and read all the same: row 3"))

	b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, a("A"))
	b.do(b.file.SetColVisible("Ducts", "D", false))
	out = append(out, uglyXLSX("hidden-column.xlsx", b, 1, 0, 0, one, "", "hidden columns, read as the others: 'Height (mm)' (D)"))

	b = newBook(t, "Cover", "Supply", "Old").rows("Cover", 1, row("Ductwork of the long barn")).rows("Supply", 3, bookHead, a("A")).rows("Old", 1, bookHead, a("B"))
	b.do(b.file.SetSheetVisible("Old", false))
	out = append(out, uglyXLSX("sheets.xlsx", b, 2, 0, 0, 2*one, "Old!1:", "sheet 'Cover' has no heading row", "sheet 'Old': the sheet is hidden and was read all the same"))

	bare, cm := row("Tag", "Kind", "Width", "Height", "Length"), row("D", "straight", 60, 40, 100)
	b = newBook(t, "One", "Two").rows("One", 1, row("All dimensions in cm"), bare, cm).rows("Two", 1, bare, row("B", "straight", 60, 40, 100))
	out = append(out, uglyXLSX("sheets-unit-on-first.xlsx", b, 1, 0, 1, one, "Two!1:Width Two!1:Height Two!1:Length Two!2:shape Two!2:length_mm"))
	b = newBook(t, "One", "Two").rows("One", 1, bare, a("A")).rows("Two", 1, row("Tag", "Kind", "Width (cm)", "Height", "Length (cm)"), cm)
	out = append(out, uglyXLSX("sheets-unit-on-second.xlsx", b, 1, 0, 1, one, "One!1:Width Two!2:Height"))
	b = newBook(t, "One", "Two").rows("One", 1, bare, row(nil, nil, "cm", "cm", "cm"), cm).rows("Two", 1, bare, row(nil, nil, "cm", "cm", "cm"), row("B", "straight", 60, 40, 100))
	out = append(out, uglyXLSX("sheets-units-row-on-each.xlsx", b, 2, 0, 0, 2*one, "", "row 2 gives the units"))
	b = newBook(t, "Cover", "Two").rows("Cover", 1, row("All dimensions in metres")).rows("Two", 1, bare, row("B", "straight", 0.6, 0.4, 1))
	out = append(out, uglyXLSX("cover-in-metres.xlsx", b, 0, 0, 1, 0, "Cover!1: Two!2:shape Two!2:length_mm"))
	b = newBook(t, "Ducts").rows("Ducts", 1, row("Insulation thickness in cm"), bare, a("A"))
	out = append(out, uglyXLSX("title-on-insulation.xlsx", b, 1, 0, 0, one, ""))
	b = newBook(t, "Ducts").rows("Ducts", 1, row("Project: hall at the weir"), row("Angle", "Note", "Section size", "Qty", "Tag", nil, "Size"), row(nil, nil, nil, nil, nil, "Kind", "Length"),
		row(nil, nil, "600x400", 1, "A", "straight", 1000))
	out = append(out, uglyXLSX("title-above-two-rows.xlsx", b, 1, 0, 0, one, "", "rows 2 and 3 are read as one heading row"))

	b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, a("A"), row("B", "straight", 600, 400))
	b.do(b.file.SetCellFormula("Ducts", "E3", "E2*2"))
	out = append(out, uglyXLSX("formula-without-value.xlsx", b, 1, 0, 1, one, "Ducts!3:Length (mm)"))

	b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, row("A", "straight", "#REF!", 400, 1000), row("B", "#N/A", 600, 400, 1000), a("C"))
	out = append(out, uglyXLSX("error-cells.xlsx", b, 1, 0, 2, one, "Ducts!2:Width (mm) Ducts!3:Kind"))

	b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, row("A", "straight", "600", "400", "1,5 m"), row("B", "straight", "600", "400", "1.500"), row(7, "straight", "600 mm", 400.0, 1000))
	out = append(out, uglyXLSX("text-numbers.xlsx", b, 3, 0, 0, 2*rect(.6, .4, 1.5)+one, ""))

	b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, row("A", "straight", 46082, 400, 1000), row("B", "straight", true, 400, 1000), a("C"))
	format := "dd/mm/yyyy"
	id, err := b.file.NewStyle(&excelize.Style{CustomNumFmt: &format})
	b.do(err)
	b.do(b.file.SetCellStyle("Ducts", "C2", "C2", id))
	out = append(out, uglyXLSX("date-for-size.xlsx", b, 1, 0, 2, one, "Ducts!2:Width (mm) Ducts!3:Width (mm)"))

	b = newBook(t, "Ducts").rows("Ducts", 1, row("Duct schedule, block C"), row("Tag", "Kind", "Size (mm)", nil, "Length", "Remarks"), row(nil, nil, "Width", "Height", "(m)"), row("A", "straight", 600, 400, 1.5, "x"))
	for _, m := range [][2]string{{"A1", "F1"}, {"C2", "D2"}, {"A2", "A3"}, {"B2", "B3"}, {"F2", "F3"}} {
		b.do(b.file.MergeCell("Ducts", m[0], m[1]))
	}
	out = append(out, uglyXLSX("merged-headings.xlsx", b, 1, 0, 0, rect(.6, .4, 1.5), "", "rows 2 and 3 are read as one heading row"))

	b = newBook(t, "Ducts").rows("Ducts", 1, row("System", "Tag", "Kind", "Width", "Height", "Length"), row("Kitchen", "A", "straight", 600, 400, 1000), row(nil, "B", "straight", 600, 400, 1000), row("Hall", "C", "straight", 600, nil, 1000), row(nil, "D", "straight", nil, 400, 1000))
	b.do(b.file.MergeCell("Ducts", "A2", "A3"))
	b.do(b.file.MergeCell("Ducts", "A4", "A5"))
	b.do(b.file.MergeCell("Ducts", "D4", "D5"))
	out = append(out, uglyXLSX("merged-down.xlsx", b, 3, 0, 1, 3*one, "Ducts!4:height_mm", "column 'Width' that are merged down, taken for all their rows: row 5"))

	b = newBook(t, "Ducts", "Next").rows("Ducts", 1, bookHead, a("A")).rows("Next", 1, a("B"))
	out = append(out, uglyXLSX("sheet-without-headings.xlsx", b, 1, 0, 0, one, "Next!1:"))

	b = newBook(t, "Ducts").rows("Ducts", 1, row("Tag", "Kind", "Width", "Height", "Length", "Qty"), row("A", "straight", 600, 400, 1000, 2), row("B", "straight", 600, 400, 1000))
	b.do(b.file.MergeCell("Ducts", "F2", "F3"))
	out = append(out, uglyXLSX("merged-count.xlsx", b, 0, 0, 2, 0, "Ducts!2:Qty Ducts!3:Qty"))

	b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, a("A"), row("Total"), bookHead, a("B"), row("Level 2"), a("C"))
	out = append(out, uglyXLSX("printed-list.xlsx", b, 3, 1, 0, 3*one, "", "sub-headings that give the level of the rows below", "rows that repeat the headings"))

	b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, row("A", "straight", 0.1+0.2, 400, 1000), row("B", "straight", 600, 400, 1000))
	suffix := `0.0" m"`
	id, err = b.file.NewStyle(&excelize.Style{CustomNumFmt: &suffix})
	b.do(err)
	b.do(b.file.SetCellStyle("Ducts", "C2", "C2", id))
	out = append(out, uglyXLSX("unit-in-format.xlsx", b, 2, 0, 0, rect(.3, .4, 1)+one, ""))
	return out
}

func uglyODS(t testing.TB) []ugly {
	one := rect(.6, .4, 1)
	head := odsRow("Tag", "Kind", "Width (mm)", "Height (mm)", "Length (mm)")
	a := func(tag string) string { return odsRow(tag, "straight", "=600", "=400", "=1000") }
	table := func(rest string) string { return `<table:table table:name="Ducts">` + rest + `</table:table>` }
	ods := func(name, tables string, used, excluded, refused int, area float64, faults string, notes ...string) ugly {
		return ugly{name: name, data: odsFile(t, tables), used: used, excluded: excluded, refused: refused, area: area, faults: faults, notes: notes}
	}
	again := func(row, n string) string {
		return strings.Replace(row, "<table:table-row>", `<table:table-row table:number-rows-repeated="`+n+`">`, 1)
	}
	blank := `<table:table-row table:number-rows-repeated="1048000"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>`
	return []ugly{
		ods("plain.ods", table(`<table:table-column table:number-columns-repeated="5"/>`+head+a("A")+again(`<table:table-row><table:table-cell/></table:table-row>`, "3")+odsRow("B", "straight", "=600", "=400", "1.5 m")+blank), 2, 0, 0, one+rect(.6, .4, 1.5), ""),
		ods("repeated.ods", table(head+again(odsRow("", "straight", "=600", "=400", "=1000"), "3")+
			`<table:table-row><table:table-cell office:value-type="string"><text:p>D</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>straight</text:p></table:table-cell><table:table-cell table:number-columns-repeated="3" office:value-type="float" office:value="500"><text:p>500</text:p></table:table-cell></table:table-row>`), 4, 0, 0, 3*one+rect(.5, .5, .5), ""),
		ods("hidden.ods", table(`<table:table-column/><table:table-column table:visibility="collapse"/>`+head+a("A")+strings.Replace(a("B"), "<table:table-row>", `<table:table-row table:visibility="collapse">`, 1))+
			`<table:table table:name="Old" table:style-name="ta2">`+head+a("C")+`</table:table>`, 3, 0, 0, 3*one, "Old!1:", "hidden and read all the same: row 3", "'Kind' (B)", "sheet 'Old': the sheet is hidden"),
		ods("errors.ods", table(head+
			`<table:table-row><table:table-cell office:value-type="string"><text:p>A</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>straight</text:p></table:table-cell><table:table-cell table:formula="of:=NA()" office:value-type="float" office:value="0"><text:p>#N/A</text:p></table:table-cell><table:table-cell table:formula="of:=[.C1]"/><table:table-cell table:formula="of:=500*2" office:value-type="float" office:value="1000"><text:p>1.000</text:p></table:table-cell></table:table-row>`+a("B")), 1, 0, 1, one, "Ducts!2:Width (mm) Ducts!2:Height (mm)"),
		ods("merged.ods", table(odsRow("System", "Tag", "Kind", "Size", "Length (m)")+
			strings.Replace(odsRow("Attic", "A", "straight", "600x400", "=1"), `<table:table-cell office`, `<table:table-cell table:number-rows-spanned="2" office`, 1)+
			`<table:table-row><table:covered-table-cell/>`+strings.TrimPrefix(odsRow("B", "straight", "Ø315", "=1"), "<table:table-row>")), 2, 0, 0, one+round(.315, 1), ""),
		ods("dates.ods", table(odsRow("Tag", "Kind", "Width (mm)", "Height (mm)", "Length (mm)", "Ready")+
			`<table:table-row><table:table-cell office:value-type="string"><text:p>A</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>straight</text:p></table:table-cell><table:table-cell office:value-type="date" office:date-value="2026-04-06"><text:p>06.04.</text:p></table:table-cell><table:table-cell office:value-type="float" office:value="400"><text:p>400 mm</text:p></table:table-cell><table:table-cell office:value-type="float" office:value="1.2"><text:p>1,20 m</text:p></table:table-cell><table:table-cell office:value-type="date" office:date-value="2026-04-06"><text:p>06.04.</text:p></table:table-cell></table:table-row>`+a("B")), 1, 0, 1, one, "Ducts!2:Width (mm)"),
		{name: "bomb-rows.ods", data: odsFile(t, table(head+again(a("A"), "1048576"))), fails: "row"},
		{name: "bomb-cells.ods", data: odsFile(t, table(head+strings.Repeat(again(`<table:table-row><table:table-cell table:number-columns-repeated="16384" office:value-type="string"><text:p>x</text:p></table:table-cell></table:table-row>`, "9000"), 3))), fails: "far more cells"},
		{name: "cut.ods", data: odsFile(t, `<table:table table:name="Ducts">`+head+a("A")+"<table:table-row>"), fails: "damaged"},
	}
}
