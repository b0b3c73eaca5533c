package schedule_test

import (
	"testing"

	"github.com/xuri/excelize/v2"
)

// uglyBeside are workbooks in which a colour without a text or a comment on a heading says
// something of the rows, and text files whose last lines or one column of sizes are of their own.
func uglyBeside(t testing.TB) (out []ugly) {
	one := rect(.6, .4, 1)
	fill := func(b *book, sheet, from, to, colour string) {
		id, err := b.file.NewStyle(&excelize.Style{Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}})
		b.do(err)
		b.do(b.file.SetCellStyle(sheet, from, to, id))
	}
	for _, x := range []struct{ name, line, swatch, faults string }{
		{"swatch-by-others.xlsx", "supplied and tested by another trade", "FF7F50", "Ducts!3:"},
		{"swatch-existing.xlsx", "Bestand, bleibt", "FF7F50", "Ducts!3:"},
		{"swatch-insulated.xlsx", "insulated 30 mm", "FF7F50", ""},
		{"swatch-of-another-colour.xlsx", "supplied and tested by another trade", "5050FF", ""},
	} {
		b := newBook(t, "Ducts", "Colours").rows("Ducts", 1, bookHead, row("A", "straight", 600, 400, 1000), row("B", "straight", 600, 400, 1000)).rows("Colours", 1, row("Colours"), row(nil, x.line))
		fill(b, "Ducts", "A3", "E3", "FF7F50")
		fill(b, "Colours", "A2", "A2", x.swatch)
		out = append(out, uglyXLSX(x.name, b, 2, 0, 0, 2*one, x.faults))
	}
	for _, x := range []struct{ name, at, text, faults, note string }{
		{"comment-on-heads-inches.xlsx", "E1", "inches throughout", "Ducts!1:comment on 'Length'", ""},
		{"comment-on-heads-mm.xlsx", "C1", "JS:\nin mm", "", ""},
		{"comment-on-head-per-floor.xlsx", "B1", "one of these per floor", "Ducts!1:comment on 'Kind'", ""},
		{"comment-on-head-cm.xlsx", "E1", "Länge in cm", "Ducts!1:comment on 'Length'", ""},
		{"comment-on-head-other.xlsx", "C1", "along the grain", "", "comments on headings with words that no list here knows"},
	} {
		b := newBook(t, "Ducts").rows("Ducts", 1, row("Tag", "Kind", "Width", "Height", "Length"), row("A", "straight", 600, 400, 1000))
		b.do(b.file.AddComment("Ducts", excelize.Comment{Cell: x.at, Paragraph: []excelize.RichTextRun{{Text: x.text}}}))
		u := uglyXLSX(x.name, b, 1, 0, 0, one, x.faults)
		if x.note != "" {
			u.notes = []string{x.note}
		}
		out = append(out, u)
	}
	d := newBook(t, "Ducts").rows("Ducts", 1, bookHead, row("A", "straight", 600, 400, 1000))
	d.do(d.file.AddComment("Ducts", excelize.Comment{Cell: "E2", Paragraph: []excelize.RichTextRun{{Text: "à raccourcir de 20 cm"}}}))
	const heads = "Item,Kind,Size,Length,Qty,Remarks\n"
	return append(out, uglyXLSX("comment-shortens.xlsx", d, 0, 0, 1, 0, "Ducts!2:comment on 'Length (mm)'"),
		csvFile("one-column-of-sizes.csv", "Maß (mm);Länge (cm);Stück;wo\n600x400;100;4;Keller links\nØ200;300;5;Treppe\n", 2, 0, 0, 4*one+5*round(.2, 3), "", "'Maß (mm)' is read as size"),
		csvFile("signed-between-tables.csv", heads+"A1,Straight,600x400,1000,1,\nPrepared: A. Person,,,,Checked: B. Person,\n"+heads+"A2,Straight,600x400,1000,1,\n", 2, 0, 0, 2*one, ""),
		csvFile("remove-the-film.csv", heads+"A1,Straight,600x400,1000,1,remove transit film before fixing\nA2,Straight,600x400,1000,1,remove end caps last\nA3,Straight,600x400,1000,1,remove\nA4,Straight,600x400,1000,1,remove duct\n", 2, 0, 2, 2*one, "4:Remarks 5:Remarks"),
		csvFile("remarks-beside-no-kind.csv", "Tag,Size,Length,Qty,Remarks\nA1,600x400,1000,1,cap ends for transport\nA2,600x400,1000,1,crosses grid C/4\nA3,600x400,1000,1,with couplings\nA4,600x400,1000,1,end cap\nA5,600x400,1000,1,\n", 4, 0, 1, 4*one, "5:kind"),
		csvFile("counts-of-others.csv", "Pos;b mm;h mm;l mm;Stk;kg/Stk;m²/Stk;Hangers (pcs);Required on site;w m/s\n1;600;400;1000;2;14,5;2;4;2026-05-04;4,0\n2;600;400;1000;1;14,5;2;2;2026-05-04;4,0\n3;600;400;1000;1;14,5;2;3;2026-05-05;4,0\nΣ;;;;4;;;;;\n", 3, 1, 0, 4*one, ""),
		csvFile("risers-beside-qty.csv", "Pos;b mm;h mm;l mm;Stk;No of risers\n1;600;400;1000;2;4\n2;600;400;1000;1;4\n", 2, 0, 0, 3*one, "1:No of risers"),
		csvFile("painted-and-agreed.csv", heads+"A1,Straight,600x400,1000,1,client wants this stretch painted white\nA2,Straight,600x400,1000,1,\"zweimal gemessen, stimmt\"\nA3,Straight,600x400,1000,1,Deckenfeld schon offen\nA4,Straight,600x400,1000,1,zweimal gemessen\nA5,Straight,600x400,1000,1,client has it\n", 3, 0, 2, 3*one, "5:Remarks 6:Remarks"),
		csvFile("title-of-a-test.csv", "Kanalnetz Zuluft – zur Dichtheitsprüfung\nTeilstrecke;Breite mm;Höhe mm;Länge mm;Stück\nTS 1;600;400;1000;2\nTS 2;600;400;1000;1\n", 2, 0, 0, 3*one, ""),
		csvFile("title-register-for-test.csv", "Duct register for air leakage test\nItem,Tag,Width (mm),Height (mm),Length (mm),Qty\n1,SA1,600,400,1000,2\n2,SA2,600,400,1000,1\nChecked: ____,,,,,\n", 2, 0, 0, 3*one, ""),
		csvFile("prose-below.csv", heads+"A1,Straight,600x400,1000,1,\n,,,,,\n\"Ponnyer ute i hage, stallbacken lerig\",,,,,\nlockers emptied by janitor,showers shut meanwhile,,,,\n", 1, 0, 0, one, ""),
		csvFile("prose-below-that-bears.csv", heads+"A1,Straight,600x400,1000,1,\n,,,,,\nThe return side is the same as the supply side,,,,,\n", 1, 0, 0, one, "4:"),
		csvFile("codes-for-tags.csv", "Teil;Breite mm;Höhe mm;Länge mm;Stück\nK001;600;400;1000;1\nK002;600;400;1000;1\nK003;600;400;1000;2\n", 3, 0, 0, 4*one, "", "'Teil' is read as tag"),
		csvFile("kinds-that-are-shapes.csv", "Löpnr,Kanaltyp,Bredd cm,Höjd cm,Diam cm,Längd cm,Mängd\n1,Rektangulär,60,40,,100,2\n2,Cirkulär,,,20,300,1\n", 2, 0, 0, 2*one+round(.2, 3), "", "'Kanaltyp' is read as shape"),
		csvFile("side-a-beside-h.csv", "Marca;Forma;A mm;H mm;D mm;L mm;Pzas\n10;rectangular;600;400;-;1000;2\n20;circular;-;-;200;3000;1\n", 2, 0, 0, 2*one+round(.2, 3), "", "'A mm' is read as width_mm"),
		csvFile("run-beside-number-off.csv", "Schedule of ventilation trunking\nLevel,Breadth (mm),Depth (mm),Run (m),Number off\nLoft,600,400,1.00,2\nLoft,600,400,1.00,1\nTotal,,,2.00,3\n", 2, 1, 0, 3*one, ""),
		csvFile("total-area-as-named.csv", "Seite;Maß mm;Länge m;Fläche m²\nWest;600x400;1,0;2,0\nOst;600x400;1,0;2,0\nGesamtfläche;;2,0;4,0\n", 2, 1, 0, 2*one, ""),
		csvFile("developed-m2.csv", "N.,Larghezza mm,Altezza mm,Lunghezza mm,Sviluppo m²\n1,600,400,1000,2.0\n2,600,400,1000,2.0\n", 2, 0, 0, 2*one, ""),
		csvFile("every-length-longer.csv", "\"Lengths are given between flange faces, add 100 mm to every length\"\n"+heads+"A1,Straight,600x400,1000,1,\nA2,Straight,600x400,1000,5,only 3 of these needed\n", 1, 0, 1, one, "1: 4:Remarks"),
		csvFile("wide-and-short.csv", "Pos,Width,Height,Length,Qty\n1,400,150,1200,4\n2,500,200,1150,1\n3,200,200,500,4\n4,500,200,1200,1\n5,500,200,900,2\n6,600,400,1000,1\n7,800,400,1250,4\n8,1200,350,600,1\n", 8, 0, 0, 4*rect(.4, .15, 1.2)+rect(.5, .2, 1.15)+4*rect(.2, .2, .5)+rect(.5, .2, 1.2)+2*rect(.5, .2, .9)+rect(.6, .4, 1)+4*rect(.8, .4, 1.25)+rect(1.2, .35, .6), ""),
		csvFile("brought-forward-pieces.csv", "Tag,Kind,Size,Length,Qty\nBrought forward,,,,12\nA1,Straight,600x400,1000,2\nA2,Straight,600x400,1000,4\nCarried forward,,,,18\n", 2, 2, 0, 6*one, ""),
		csvFile("half-a-metre-shorter.csv", heads+"A1,Straight,600x400,1000,1,wird um einen halben Meter kürzer als hier steht\nA2,Straight,600x400,1000,1,trimmed to 1.1 m on site to clear the beam\nA3,Straight,600x400,1000,1,op elke woonlaag zo een\nA4,Straight,600x400,1000,1,se repite en cada planta\nA5,Straight,600x400,1000,1,trimmed to 1.0 m on site\n", 1, 0, 4, one,
			"2:Remarks 3:Remarks 4:Remarks 5:Remarks"),
	)
}
