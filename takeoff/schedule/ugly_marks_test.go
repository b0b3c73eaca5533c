package schedule_test

import (
	"fmt"
	"testing"

	"github.com/xuri/excelize/v2"
)

// uglyMarks are the workbooks whose cells are more than their text: struck out, raised,
// scaled by their format, summed by a formula, in a table beside another.
func uglyMarks(t testing.TB) []ugly {
	one := rect(.6, .4, 1)
	a := func(tag any) []any { return row(tag, "straight", 600, 400, 1000) }
	var out []ugly
	style := func(b *book, s *excelize.Style, sheet, from, to string) {
		id, err := b.file.NewStyle(s)
		b.do(err)
		b.do(b.file.SetCellStyle(sheet, from, to, id))
	}

	b := newBook(t, "Ducts").rows("Ducts", 1, bookHead, a("A"), a("B"))
	style(b, &excelize.Style{Font: &excelize.Font{Strike: true}}, "Ducts", "A3", "E3")
	out = append(out, uglyXLSX("struck-row.xlsx", b, 1, 0, 1, one, "Ducts!3:Tag"))

	b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, a("A"), a("B"))
	b.do(b.file.SetCellRichText("Ducts", "C2", []excelize.RichTextRun{{Text: "5", Font: &excelize.Font{Strike: true}}, {Text: "600"}}))
	b.do(b.file.SetCellRichText("Ducts", "C3", []excelize.RichTextRun{{Text: "600"}, {Text: "1", Font: &excelize.Font{VertAlign: "superscript"}}}))
	out = append(out, uglyXLSX("struck-and-raised.xlsx", b, 1, 0, 1, one, "Ducts!3:Width (mm)"))

	for _, f := range []struct{ name, format string }{{"scaled-format.xlsx", `0.0," m"`}, {"format-by-size.xlsx", `[>=1000]0.0," m";0" mm"`}} {
		b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, a("A"), row("B", "straight", 600, 400, 500))
		format := f.format
		style(b, &excelize.Style{CustomNumFmt: &format}, "Ducts", "E2", "E3")
		out = append(out, uglyXLSX(f.name, b, 2, 0, 0, rect(.6, .4, 1.5), ""))
	}

	// 510 is shown as 5'-10", 1.778 m; 300 as 3000 by a figure in the format.
	b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, row("A", "straight", 600, 400, 510), row("B", "straight", 600, 400, 300), row("C", "straight", 600, 400, 350))
	for i, format := range []string{`0'-00\"`, `0"0"`, `0"m"00`} {
		at := fmt.Sprintf("E%d", 2+i)
		style(b, &excelize.Style{CustomNumFmt: &format}, "Ducts", at, at)
	}
	out = append(out, uglyXLSX("formats-that-part-figures.xlsx", b, 1, 0, 2, rect(.6, .4, 1.778), "Ducts!3:Length (mm) Ducts!4:Length (mm)"))

	b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, row("A", "straight", 60, 40, 100))
	format := "0[$cm]"
	style(b, &excelize.Style{CustomNumFmt: &format}, "Ducts", "C2", "E2")
	out = append(out, uglyXLSX("format-in-cm.xlsx", b, 1, 0, 0, one, ""))

	b = newBook(t, "Ducts").rows("Ducts", 1, bookHead, a("A"), a("B"), a("C"))
	b.do(b.file.SetCellFormula("Ducts", "E4", "SUBTOTAL(9,E2:E3)"))
	b.do(b.file.UpdateLinkedValue())
	b.do(b.file.SetCellValue("Ducts", "E4", 2000))
	b.do(b.file.SetCellFormula("Ducts", "E4", "SUBTOTAL(9,E2:E3)"))
	out = append(out, uglyXLSX("subtotal-of-lengths.xlsx", b, 2, 0, 1, 2*one, "Ducts!4:Length (mm)"))

	beside := append(append(append([]any{}, bookHead...), nil), nil, nil, nil, nil, nil)
	b = newBook(t, "Ducts").rows("Ducts", 1, beside, append(a("A"), nil, "Tag", "Kind", "Width (mm)", "Height (mm)", "Length (mm)"), append(a("B"), nil, "C", "straight", 600, 400, 1000))
	out = append(out, uglyXLSX("table-beside-table.xlsx", b, 2, 0, 0, 2*one, "Ducts!3:"))

	b = newBook(t, "Summary", "Level 1").rows("Summary", 1, bookHead, row(nil, "straight", 600, 400, 1000)).rows("Level 1", 1, bookHead, a("A"))
	out = append(out, uglyXLSX("summary-sheet.xlsx", b, 2, 0, 0, 2*one, "Summary!1:"))
	b = newBook(t, "Roof rev A", "Roof rev B").rows("Roof rev A", 1, bookHead, row(nil, "straight", 600, 400, 1000)).rows("Roof rev B", 1, bookHead, row(nil, "straight", 600, 400, 1000))
	out = append(out, uglyXLSX("two-revisions.xlsx", b, 2, 0, 0, 2*one, "Roof rev B!1:"))
	return out
}
