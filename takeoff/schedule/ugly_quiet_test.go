package schedule_test

import (
	"fmt"
	"testing"

	"github.com/xuri/excelize/v2"
)

// uglyQuiet are lists that were read wrongly without a word, and ordinary ones like them.
func uglyQuiet() []ugly {
	one, two, three := rect(.6, .4, 1.5), rect(.5, .3, 1.2), rect(.4, .2, 1)
	const heads = "Tag,Kind,Width,Height,Length,Qty"
	// with puts a cell more behind each of four rows.
	with := func(head string, cells ...string) string {
		text := heads + "," + head + "\n"
		for i, row := range []string{"1,Straight,600,400,1500,1", "2,Straight,500,300,1200,1", "3,Straight,600,400,1500,1", "4,Straight,400,200,1000,1"} {
			text += row + "," + cells[i] + "\n"
		}
		return text
	}
	all := 2*one + two + three
	const tables = "Duct list - %s,,,,\nMark,W mm,H mm,L mm,Qty\nM1,600,400,1500,1\nM2,500,300,1200,1\n\nDuct list - %s,,,,\nMark,W mm,H mm,L mm,Qty\n%s1,600,400,1500,1\n%s2,400,200,1000,1\n"
	return []ugly{
		csvFile("quiet-supply-tenant.csv", with("Supply", "us", "by tenant", "us", "us"), 3, 0, 1, all-two, "3:Supply"),
		csvFile("quiet-supply-client.csv", with("Furnished by", "contractor", "contractor", "client", "contractor"), 3, 0, 1, all-one, "4:Furnished by"),
		csvFile("quiet-supply-mieter.csv", with("Lieferung", "wir", "wir", "wir", "Mieter"), 3, 0, 1, all-three, "5:Lieferung"),
		csvFile("quiet-supply-shops.csv", with("Supplier", "Shop 1", "Shop 2", "Shop 1", "Shop 1"), 4, 0, 0, all, ""),
		csvFile("quiet-supply-units.csv", with("Supply", "AHU 1", "AHU 1", "AHU 2", "AHU 2"), 4, 0, 0, all, ""),
		csvFile("quiet-trade.csv", with("Discipline", "Mechanical", "Mechanical", "Electrical", "Mechanical"), 3, 0, 1, all-one, "4:Discipline"),
		csvFile("quiet-trade-disziplin.csv", with("Disziplin", "Lüftung", "Sanitär", "Lüftung", "Lüftung"), 3, 0, 1, all-two, "3:Disziplin"),
		csvFile("quiet-trade-one.csv", with("Discipline", "Mechanical", "Mechanical", "Mechanical", "Mechanical"), 4, 0, 0, all, ""),
		csvFile("quiet-clashes.csv", with("Clash with", "duct", "cable tray", "pipe", "duct"), 4, 0, 0, all, ""),
		csvFile("quiet-deferred.csv", with("Status", "Erected", "Deferred", "Erected", "Erected"), 3, 0, 1, all-two, "3:Status"),
		csvFile("quiet-deferred-uitgesteld.csv", with("Status", "gereed", "gereed", "uitgesteld", "gereed"), 3, 0, 1, all-one, "4:Status"),
		csvFile("quiet-timesing.csv", with("Timesing", "", "2/", "", "2/3/"), 2, 0, 2, 2*one, "3:Timesing 5:Timesing"),
		csvFile("quiet-grid.csv", with("Grid", "A/1", "A/2", "B/1", "B/2"), 4, 0, 0, all, ""),
		csvFile("quiet-objects.csv", "Id,Object,Width mm,Height mm,Diameter mm,Length mm\n1,Duct,600,400,,1500\n2,Cable tray,300,60,,3000\n3,Duct,,,250,1200\n4,Duct,500,300,,1200\n5,Chilled water pipe,,,100,4200\n", 3, 0, 2, one+two+round(.25, 1.2), "3:kind 6:kind"),
		csvFile("quiet-french-large-first.csv", "Gaines rectangulaires cotes en mm\nRep.;L;l;h;Nb\nR1;1500;600;400;1\nR2;1000;400;200;2\n", 2, 0, 0, one+2*three, "", "column 'l' is read as width_mm"),
		csvFile("quiet-french-small-first.csv", "Gaines rectangulaires cotes en mm\nRep.;l;h;L;Nb\nR1;600;400;1500;1\nR2;400;200;1000;2\n", 2, 0, 0, one+2*three, ""),
		csvFile("quiet-copy.csv", fmt.Sprintf(tables, "original", "copy for workshop", "M", "M"), 2, 0, 2, one+two, "6: 8: 9:"),
		csvFile("quiet-copy-room.csv", fmt.Sprintf(tables, "corridor", "copy room", "N", "N"), 4, 0, 0, 2*one+two+three, ""),
		csvFile("quiet-element-id.csv", "Element ID,Kind,Room,Width,Height,Length\n101,Straight,A,600,400,1500\n102,Straight,A,500,300,1200\n102,Straight,B,500,300,1200\n103,Straight,B,400,200,1000\n104,Straight,B,600,400,1500\n", 4, 0, 1, all, "4:tag", "column 'Element ID' is read as tag"),
		csvFile("quiet-type-id.csv", "Type ID,Kind,Width,Height,Length\n7,Straight,600,400,1500\n7,Straight,600,400,1500\n8,Straight,500,300,1200\n8,Straight,500,300,1200\n", 4, 0, 0, 2*one+2*two, ""),
		csvFile("quiet-nr-products.csv", "Ref,Kind,Width mm,Height mm,Length mm,Nr\n1,Straight,600,400,1500,2\n2,Straight,500,300,1200,2x3\n3,Straight,400,200,1000,5\n4,Straight,600,400,1500,4+2\n5,Straight,400,200,1000,1\n", 3, 0, 2, 2*one+6*three, "3:Nr 5:Nr"),
		csvFile("quiet-metres-of-pieces.csv", "Pos;Artikel;Maß;Lieferlänge mm;Menge;ME\n1;Luftkanal;600x400;1500;12,0;m\n2;Luftkanal;500x300;1200;7,5;m\n", 0, 0, 2, 0, "2:ME 3:Menge 3:ME"),
		csvFile("quiet-pieces-lieferlaenge.csv", "Pos;Artikel;Maß;Lieferlänge mm;Menge;ME\n1;Luftkanal;600x400;1500;12;Stk\n2;Luftkanal;500x300;1200;7;Stk\n", 2, 0, 0, 12*one+7*two, ""),
	}
}

// uglyQuietBooks are books of that sort.
func uglyQuietBooks(t testing.TB) (out []ugly) {
	one := rect(.6, .4, 1)
	a := func(tag string) []any { return row(tag, "straight", 600, 400, 1000) }
	b := newBook(t, "Measure", "Calc").rows("Measure", 1, bookHead, a("A"), a("B")).rows("Calc", 1, bookHead, a("Z"))
	b.do(b.file.SetSheetVisible("Calc", false))
	out = append(out, uglyXLSX("quiet-sheet-hidden.xlsx", b, 3, 0, 0, 3*one, "Calc!1:", "sheet 'Calc': the sheet is hidden"))
	b = newBook(t, "Measure", "Lists").rows("Measure", 1, bookHead, a("A"), a("B")).rows("Lists", 1, row("Kinds"), row("straight"), row("bend"))
	b.do(b.file.SetSheetVisible("Lists", false))
	return append(out, uglyXLSX("quiet-sheet-hidden-list.xlsx", b, 2, 0, 0, 2*one, ""))
}

// uglyQuietLooks are books of which something is beside the cells, or on another sheet.
func uglyQuietLooks(t testing.TB) (out []ugly) {
	heads := row("Tag", "Kind", "Width (mm)", "Height (mm)", "Length (mm)", "Qty")
	sides := [][2]int{{600, 400}, {500, 300}, {400, 200}, {600, 300}, {300, 200}}
	// ducts are five rows as long as said, and their area.
	ducts := func(long int) (rows [][]any, area float64) {
		rows = append(rows, heads)
		for i, s := range sides {
			rows = append(rows, row(fmt.Sprintf("D%d", i+1), "straight", s[0], s[1], long, 1))
			area += rect(float64(s[0])/1000, float64(s[1])/1000, float64(long)/1000)
		}
		return rows, area
	}
	rows, all := ducts(1000)
	longer, more := ducts(1200)
	for _, x := range []struct{ name, first, second, faults string }{
		{"quiet-months.xlsx", "2026-03", "2026-04", "2026-04!1:"}, {"quiet-stages.xlsx", "Tender", "Construction", "Construction!1:"},
		{"quiet-levels.xlsx", "Level 1", "Level 2", ""}, {"quiet-lobby.xlsx", "Kitchen", "Lobby", ""}} {
		b := newBook(t, x.first, x.second).rows(x.first, 1, rows...).rows(x.second, 1, longer...)
		out = append(out, uglyXLSX(x.name, b, 10, 0, 0, all+more, x.faults))
	}
	for _, x := range []struct{ name, text, faults string }{
		{"quiet-printed-times.xlsx", "Typical floor, 4 off", "Ducts!1:"}, {"quiet-printed-void.xlsx", "SUPERSEDED", "Ducts!1:"},
		{"quiet-printed-page.xlsx", "Page 1 of 4", ""}} {
		b := newBook(t, "Ducts").rows("Ducts", 1, rows...)
		b.do(b.file.SetHeaderFooter("Ducts", &excelize.HeaderFooterOptions{OddHeader: "&C" + x.text}))
		out = append(out, uglyXLSX(x.name, b, 5, 0, 0, all, x.faults))
	}
	b := newBook(t, "Ducts").rows("Ducts", 1, rows...).rows("Ducts", 400, row("D9", "straight", 600, 400, 1000, 1))
	out = append(out, uglyXLSX("quiet-far-row.xlsx", b, 6, 0, 0, all+rect(.6, .4, 1), "Ducts!400:"))
	b = newBook(t, "Ducts").rows("Ducts", 1, rows...).rows("Ducts", 60, row("D9", "straight", 600, 400, 1000, 1))
	out = append(out, uglyXLSX("quiet-next-page.xlsx", b, 6, 0, 0, all+rect(.6, .4, 1), ""))
	b = newBook(t, "Ducts").rows("Ducts", 1, rows...)
	b.do(b.file.SetCellValue("Ducts", "I3", "No. of flats"))
	b.do(b.file.SetCellValue("Ducts", "J3", 12))
	out = append(out, uglyXLSX("quiet-flats-beside.xlsx", b, 5, 0, 0, all, "Ducts!3:", "column 9 has no heading"))
	b = newBook(t, "Ducts").rows("Ducts", 1, rows...)
	b.do(b.file.SetRowHeight("Ducts", 3, .5))
	return append(out, uglyXLSX("quiet-thin-row.xlsx", b, 5, 0, 0, all, "", "hidden and read all the same: row 3"))
}

// uglyQuietColumns are columns that aren't used and say something of their rows.
func uglyQuietColumns() []ugly {
	one, two, three := rect(.6, .4, 1.5), rect(.5, .3, 1.2), rect(.4, .2, 1)
	of := func(head string, cells ...any) string {
		return fmt.Sprintf("Tag,Kind,Width (mm),Height (mm),Length (mm),Qty,"+head+"\n1,Straight,600,400,1500,1,%v\n2,Straight,500,300,1200,1,%v\n3,Straight,400,200,1000,1,%v\n", cells...)
	}
	return []ugly{
		csvFile("quiet-in-out.csv", of("In/Out", "In", "Out", "In"), 2, 0, 1, one+three, "3:In/Out"),
		csvFile("quiet-credit.csv", of("Cr/Dr", "Dr", "Dr", "Cr"), 2, 0, 1, one+two, "4:Cr/Dr"),
		csvFile("quiet-add-mm.csv", of("Add (mm)", "0", "50", ""), 2, 0, 1, one+three, "3:Add (mm)"),
		csvFile("quiet-added-by.csv", of("Added by", "AB", "AB", "CD"), 3, 0, 0, one+two+three, ""),
		csvFile("quiet-level-each.csv", of("Level", "1", "each", "2"), 2, 0, 1, one+three, "3:level"),
		csvFile("quiet-occurrences.csv", of("Occurrences", 1, 4, 1), 3, 0, 0, one+two+three, "1:Occurrences"),
	}
}
