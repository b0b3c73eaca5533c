package schedule_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/takeoff/schedule/headings"
)

// uglyTitles are lines on units above the headings, as commas part them, and what stands
// around tables.
func uglyTitles() []ugly {
	one := rect(.6, .4, 1.5)
	const in, heads, two = .0254, "Tag,Kind,Width,Height,Length,Qty\n", "A,duct,600,400,150,2\nB,duct,500,300,120,1\n"
	area := 2*one + rect(.5, .3, 1.2)
	return []ugly{
		csvFile("units-title-parted.csv", "Lengths in cm, sizes in mm\n"+heads+two, 2, 0, 0, area, "", "'Lengths in cm, sizes in mm' above the headings gives the units of 'Width' in mm, 'Height' in mm, 'Length' in cm"),
		csvFile("units-title-two-cells.csv", "Sizes in mm;Lengths in inches\nTag;Kind;Width;Height;Length;Qty\nA;duct;600;400;60;2\n", 1, 0, 0, 2*rect(.6, .4, 60*in), "", "'Length' in in"),
		csvFile("units-title-brackets.csv", "Rectangular duct (sizes in inches, lengths in feet)\nTag,Item,Size,Length,Qty\n1,Straight duct,24x12,5,8\n", 1, 0, 0, 8*rect(24*in, 12*in, 60*in), "", "'Size' in in, 'Length' in ft"),
		csvFile("units-title-job.csv", "Job 12, lengths in cm, sizes in mm\n"+heads+two, 2, 0, 0, area, "", "'Length' in cm"),
		csvFile("units-title-dash.csv", "Sizes in mm - lengths in m\n"+heads+"A,duct,600,400,25,1\nB,duct,500,300,8.5,1\n", 2, 0, 0, rect(.6, .4, 25)+rect(.5, .3, 8.5), "", "'Length' in m"),
		csvFile("units-title-german.csv", "Längen in cm, Maße in mm\nPos,Formstück,Breite,Höhe,Länge,Stück\n1,Kanal,600,400,150,2\n", 1, 0, 0, 2*one, "", "'Länge' in cm"),
		csvFile("units-title-french.csv", "Longueurs en cm;sections en mm\nRepère;Pièce;Largeur;Hauteur;Longueur;Qté\n1;Gaine droite;600;400;150;2\n", 1, 0, 0, 2*one, "", "'Longueur' in cm"),
		csvFile("units-title-dutch.csv", "Lengten in cm, maten in mm\nMerk,Hulpstuk,Breedte,Hoogte,Lengte,Aantal\n1,Recht kanaal,600,400,150,2\n", 1, 0, 0, 2*one, "", "'Lengte' in cm"),
		csvFile("units-title-swedish.csv", "Längder i cm, mått i mm\nLittera,Detalj,Bredd,Höjd,Längd,Antal\n1,Rak kanal,600,400,150,2\n", 1, 0, 0, 2*one, "", "'Längd' in cm"),
		csvFile("units-title-spanish.csv", "Longitudes en cm, medidas en mm\nMarca,Pieza,Ancho,Alto,Longitud,Cantidad\n1,Tramo recto,600,400,150,2\n", 1, 0, 0, 2*one, "", "'Longitud' in cm"),
		csvFile("units-title-italian.csv", "Lunghezze in cm, misure in mm\nSigla,Tipo pezzo,Larghezza,Altezza,Lunghezza,Q.tà\n1,Canale dritto,600,400,150,2\n", 1, 0, 0, 2*one, "", "'Lunghezza' in cm"),
		csvFile("units-title-lengths.csv", "Lengths in m\n"+heads+"A,duct,600,400,120,1\nB,duct,500,300,24,1\n", 2, 0, 0, rect(.6, .4, 120)+rect(.5, .3, 24), "", "no unit is given for 'Width', 'Height': read as mm"),
		csvFile("units-title-all-in-m.csv", "Lengths in m\n"+heads+"A,duct,0.6,0.4,1.5,1\n", 1, 0, 0, one, ""),
		csvFile("units-title-against.csv", "\"Sizes in mm, lengths in m\"\nTag,Kind,Width (mm),Height (mm),Length (cm)\nA,duct,600,400,150\n", 1, 0, 0, one, "1:"),
		csvFile("units-title-weights.csv", "Lengths in cm, sizes in mm, weights in kg\n"+heads+two, 0, 0, 2, 0, "1:Lengths in cm / Tag 1:weights in kg / Width 1:weights in kg / Height 1:weights in kg / Length 1:weights in kg / Qty 3:shape 3:length_mm 4:shape 4:length_mm"),
		csvFile("units-among-rows.csv", heads+"A,duct,600,400,1500,1\nLengths in cm, sizes in mm,,,,\n"+heads+two, 1, 0, 2, one, "3: 5: 6:"),
		csvFile("units-below-rows.csv", heads+"A,duct,600,400,150,1\nLengths in cm, sizes in mm,,,,\n", 1, 0, 0, rect(.6, .4, .15), "3:"),
		csvFile("heads-in-units.csv", "Size in mm,Length in m\nØ315,1.5\n", 1, 0, 0, round(.315, 1.5), ""),
		csvFile("group-length-unit.csv", ",,Section (mm),,Length,\nRef,Type,W,H,(m),Qty\n1,Straight,600,400,1.5,2\n2,Straight,500,300,1.25,1\n", 2, 0, 0, 2*one+rect(.5, .3, 1.25), "", "rows 1 and 2 are read as one heading row"),
		csvFile("title-of-flats.csv", "\"Wohnung Typ A, 12 Stück\"\n"+heads+"A,duct,600,400,1500,1\n", 1, 0, 0, one, "1:"),
		csvFile("title-of-typical.csv", "Regelgeschoss (1.-5. OG)\n"+heads+"A,duct,600,400,1500,1\n", 1, 0, 0, one, "1:"),
		csvFile("level-as-level.csv", heads+"A,duct,600,400,1500,1\n2. OG wie 1. OG,,,,,\n3. OG,,,,,\nB,duct,600,400,1500,1\n", 2, 0, 0, 2*one, "3:"),
		csvFile("flats-in-column.csv", "Tag,Kind,Size (mm),Length (mm),Qty,Flat\nA,duct,600x400,1500,2,1-12\nB,duct,600x400,1500,24,1-12\nC,duct,600x400,1500,2,7\n", 2, 0, 1, 26*one, "2:Flat"),
		csvFile("mm-that-are-cm.csv", "Tag,Kind,Width (mm),Height (mm),Length (mm)\nA,duct,600,400,150\nB,duct,500,300,125\nC,duct,400,200,150\n", 0, 0, 3, 0, "2:length_mm 3:length_mm 4:length_mm"),
		csvFile("mm-that-are-cm-but-one.csv", "Tag,Kind,Width (mm),Height (mm),Length (mm)\nA,duct,600,400,150\nB,duct,500,300,125\nC,duct,400,200,150\nD,duct,400,200,200\nE,duct,400,200,1500\n", 1, 0, 4, rect(.4, .2, 1.5), "2:length_mm 3:length_mm 4:length_mm 5:length_mm"),
		csvFile("mm-in-their-cells.csv", "Tag,Kind,Width (mm),Height (mm),Length (mm)\nA,closer,600,400,150 mm\nB,closer,500,300,125 mm\nC,closer,400,200,150 mm\n", 3, 0, 0, rect(.6, .4, .15)+rect(.5, .3, .125)+rect(.4, .2, .15), ""),
		csvFile("mm-across-that-are-cm.csv", "Tag,Kind,Width (mm),Height (mm),Length (mm)\nA,duct,80,60,1500\nB,duct,60,50,1250\nC,duct,90,50,1500\n", 0, 0, 3, 0, "2:width_mm 3:width_mm 4:width_mm"),
		csvFile("closers-among-others.csv", "Tag,Kind,Width (mm),Height (mm),Length (mm)\nA,duct,600,400,1500\nB,closer,600,400,150\nC,closer,600,400,120\nD,closer,600,400,200\n", 4, 0, 0, rect(.6, .4, 1.97), ""),
		csvFile("lengths-no-unit-cm.csv", "Tag,Kind,Size,Length\nA,duct,600x400,150\nB,duct,500x300,240\nC,duct,400x300,150\n", 0, 0, 3, 0, "2:length_mm 3:length_mm 4:length_mm"),
		csvFile("one-in-metres-of-two.csv", "Tag,Kind,Size (mm),Length (mm)\nA,duct,600x400,1500\nB,duct,500x300,1.5\n", 1, 0, 1, one, "3:length_mm"),
		csvFile("errors-in-stated.csv", "Tag,Kind,Size (mm),Length (mm),Area m2,Remarks\nA,duct,600x400,1500,#DIV/0!,\nB,duct,600x400,1500,3.00,#N/A\nC,duct,600x400,#REF!,3.00,\n", 2, 0, 1, 2*one, "4:Length (mm)", "errors of the spreadsheet in column 'Area m2', not used: row 2", "errors of the spreadsheet in column 'Remarks', not used: row 3"),
		csvFile("total-in-length.csv", "System,Size (mm),Kind,Length (mm),Area\nEF-1,600x400,Straight,1500,3\nEF-1,600x400,Straight,1500,3\nEF-1,,,Total,6\n", 2, 1, 0, 2*one, "", "'EF-1' is a total and no piece"),
		csvFile("level-with-area.csv", "Ref,Type,Width,Height,Length,Qty,Area\nLevel 1,,,,,,8.4\n1,Straight,600,400,1500,2,6.0\nLevel 2,,,,,3,\n2,Straight,600,400,1500,1,3\n", 2, 0, 1, 3*one, "4:kind", "the level of 3 rows is taken from sub-headings", "areas beside sub-headings, not used, the first '8.4': row 2"),
		csvFile("numbered-notes.csv", heads+"A,duct,600,400,1500,1\n1) All sizes are internal.,,,,,\n2. Lengths measured on site.,,,,,\n", 1, 0, 0, one, "", "remarks among the rows passed over, the first '1) All sizes are internal.'"),
		csvFile("numbered-doubts.csv", heads+"A,duct,600,400,1500,1\n1) All rows are to be doubled,,,,,\n2) Items 3 to 5 deleted,,,,,\n", 1, 0, 0, one, "3: 4:"),
		csvFile("numbered-groups.csv", heads+"1) Supply to hall,,,,,\nA,duct,600,400,1500,1\n", 1, 0, 0, one, ""),
		csvFile("rows-parted-else.csv", heads+"1;Straight;600;400;1500;2\n2;Straight;500;300;1500;1\n", 0, 0, 2, 0, "2: 3:"),
		csvFile("heads-inner-outer.csv", "Ref,Type,Inner W,Inner H,Outer W,Outer H,Length,Qty\n1,Straight,600,400,700,500,1500,2\n", 0, 0, 1, 0, "2:size"),
		csvFile("heads-l1-l2.csv", "Ref,Type,Size,L1,L2\n1,Straight,600x400,1500,1200\n2,Straight,500x300,1500,\n", 0, 0, 2, 0, "2:length 3:length"),
		csvFile("lengths-in-m-under-mm.csv", "Ref,Type,Size,Length (mm),Qty\n1,Straight,600x400,1500,1\n2,Straight,500x400,3,2\n3,Straight,500x400,12,2\n4,Straight,500x400,1.5,2\n", 1, 0, 3, one, "3:length_mm 4:length_mm 5:length_mm"),
		csvFile("group-size-in.csv", ",,Size (in),,,\nRef,Type,W,H,L,Qty\n1,Straight,24,12,60,2\n", 1, 0, 0, 2*rect(24*in, 12*in, 60*in), "", "'Size (in)' above the headings gives the unit of 'W', 'H', 'L'"),
	}
}

// uglyHeads are headings and units that fresh readers typed.
func uglyHeads() []ugly {
	const in = .0254
	one, straight := rect(.6, .4, 1.5), "S,Straight,600,400,1500,,,,1\n"
	taper := 2 * (.5*math.Hypot(.5, .05) + .35*math.Hypot(.5, .1)) // four trapezoids
	var out []ugly
	for i, h := range []string{"Larg. 2,Haut. 2", "To W,To H", "Width out,Height out", "End width,End height", "Ancho final,Alto final", "Breite Ende,Höhe Ende", "Breedte eind,Hoogte eind", "Bredd ut,Höjd ut", "Larghezza finale,Altezza finale"} {
		out = append(out, csvFile(fmt.Sprintf("far-end-%d.csv", i+1), "Tag,Kind,Width (mm),Height (mm),Length (mm),"+h+",Qty\nR,Reducer,600,400,500,400,300,1\n", 1, 0, 0, taper, ""))
	}
	for i, h := range []string{"Radius innen", "R innen", "Ri", "Kehlradius", "Rayon int.", "Raggio int.", "Inner R", "Radio int.", "Straal binnen", "Radie inv."} {
		out = append(out, csvFile(fmt.Sprintf("inner-radius-%d.csv", i+1), "Tag,Kind,Width (mm),Height (mm),Length (mm),Angle,"+h+",Note,Qty\n"+straight+"B,Bend,600,400,,90,100,,1\n", 2, 0, 0,
			one+math.Pi/4*(.7*.7-.1*.1)*2+math.Pi/2*(.7+.1)*.4, "")) // two cheeks, heel and throat
	}
	return append(out,
		csvFile("heads-duct-w.csv", "Duct Ref,Type,Duct W,Duct H,Duct L,QUANTITY REQ.\n1,Straight,600,400,1500,2\n", 1, 0, 0, 2*one, ""),
		csvFile("heads-both-tongues.csv", "Pos / Tag,Bauteil / Component,Breite / Width (mm),Höhe / Height (mm),Länge / Length (m),Stück / Qty\n1,Kanal,600,400,1.5,2\n", 1, 0, 0, 2*one, ""),
		csvFile("heads-tongues-differ.csv", "Pos,Kind,Breite / Height (mm),Höhe (mm),Länge (mm)\n1,Kanal,600,400,1500\n", 0, 0, 1, 0, "2:width_mm"),
		csvFile("heads-colons.csv", "Tag,Kind,Width :,Height :,Length :,Qty :\n1,Straight,600,400,1500,2\n", 1, 0, 0, 2*one, ""),
		csvFile("heads-l-b-h.csv", "Pos,Bezeichnung,L x B x H (mm),Stück\n1,Kanal,1500x600x400,2\n2,Rohr,3000 x Ø315,1\n3,Kanal,600x400,1\n", 2, 0, 1, 2*one+round(.315, 3), "4:L x B x H (mm)", "are read as length x width x height: 2, in rows 2 to 3"),
		csvFile("heads-feet-inches.csv", "Mark,Item,Size (mm),Length ft,Length in,Qty\n1,Straight duct,600x400,5,6,2\n2,Straight duct,600x400,4,,1\n3,Straight duct,600x400,,6,1\n", 3, 0, 0, rect(.6, .4, (2*66+48+6)*in), "", "columns 'Length ft' and 'Length in' are read as one length in feet and inches"),
		csvFile("heads-total-length.csv", "Tag,Kind,Size (mm),Total length m,No of pieces\nA,duct,600x400,15,10\nB,duct,600x400,7.5,5\nC,duct,600x400,1.5,\n", 3, 0, 0, 16*one, "", "column 'Total length m' is read as the length of all pieces of a row together"),
		csvFile("heads-total-of-each.csv", "Tag,Kind,Size (mm),Total length m,No of pieces\nA,duct,600x400,1.5,10\nB,duct,600x400,1.5,5\n", 0, 0, 2, 0, "1:Total length m 2:length_mm 3:length_mm"),
		csvFile("heads-dutch-br.csv", "Pos,Omschrijving,Br,H,L,Aant\n1,Recht kanaal,600,400,1500,2\n", 1, 0, 0, 2*one, ""),
		csvFile("heads-italian-n.csv", "Pos,Descrizione,Base,Altezza,Lunghezza,N.\n1,Canale,600,400,1500,2\n2,Canale,600,400,1500,1\n", 2, 0, 0, 3*one, "", "column 'N.' is read as quantity"),
		csvFile("heads-swedish-bill.csv", "Kod;Text;Mängd;Enhet\nQLB;Rektangulär kanal 600x400;25;m\nQLC;Cirkulär kanal Ø250;18;m\n", 2, 0, 0, rect(.6, .4, 25)+round(.25, 18), ""),
		csvFile("units-running.csv", "Ref,Description,Size (mm),Unit,Qty\n1,Straight duct,600x400,m,1.5\n2,Straight duct,600x400,Rmt,3\n3,Straight duct,600x400,RM,3\n4,Straight duct,600x400,r.m.,3\n5,Straight duct,600x400,lin.m,3\n", 5, 0, 0, 9*one, ""),
		csvFile("units-by-row.csv", "Ref,Description,Size (mm),Unit,Qty,Length (mm)\n1,Straight,600x400,m,12,\n2,Straight,600x400,no,3,1500\n3,Straight,600x400,m,2,1500\n4,Bend,600x400,m,3,\n5,Straight,600x400,m2,3,\n6,Straight,600x400,RM,3,1500\n", 2, 0, 4, 11*one, "4:Unit 5:quantity 6:Unit 7:Unit"),
	)
}

// uglyAgain are workbooks that list pieces again on other sheets, or only seem to.
func uglyAgain(t testing.TB) (out []ugly) {
	heads := row("Kind", "Width (mm)", "Height (mm)", "Length (mm)", "Qty")
	rows := [][]any{row("duct", 600, 400, 1500, 2), row("duct", 500, 300, 1250, 1), row("duct", 400, 200, 1500, 3), row("duct", 400, 200, 900, 1)}
	area := 2*rect(.6, .4, 1.5) + rect(.5, .3, 1.25) + 3*rect(.4, .2, 1.5) + rect(.4, .2, .9)
	list := func(name string, sheets map[string][]int, order []string, times float64, faults string, notes ...string) {
		b, used := newBook(t, order...), 0
		for _, s := range order {
			b.rows(s, 1, heads)
			for i, r := range sheets[s] {
				b.rows(s, 2+i, rows[r])
				used++
			}
		}
		out = append(out, uglyXLSX(name, b, used, 0, 0, times*area, faults, notes...))
	}
	list("list-sorted.xlsx", map[string][]int{"Ducts": {0, 1, 2, 3}, "By size": {3, 2, 1, 0}}, []string{"Ducts", "By size"}, 2, "By size!1:")
	list("list-parted.xlsx", map[string][]int{"Ducts": {0, 1, 2, 3}, "Order 1": {3, 0}, "Order 2": {1, 2}}, []string{"Ducts", "Order 1", "Order 2"}, 2, "Ducts!1:")
	list("list-and-floors.xlsx", map[string][]int{"Level 1": {0, 1}, "Level 2": {2, 3}, "Ducts": {0, 1, 2, 3}}, []string{"Level 1", "Level 2", "Ducts"}, 2, "Ducts!1:")
	list("floors-alike.xlsx", map[string][]int{"Level 1": {0, 1, 2, 3}, "Level 2": {3, 2, 1, 0}, "Level 3": {0, 1, 2, 3}}, []string{"Level 1", "Level 2", "Level 3"}, 3, "", "sheet 'Level 3' holds the same pieces as sheet 'Level 1'")
	list("sheets-of-variants.xlsx", map[string][]int{"Variante 1": {0, 1, 2, 3}, "Variante 2": {0, 1, 2, 3}}, []string{"Variante 1", "Variante 2"}, 2, "Variante 2!1:")
	summary := row("Size", "Total length (m)", "Area (m2)")
	out = append(out,
		uglyXLSX("summary-of-sizes.xlsx", newBook(t, "Ducts", "Summary").rows("Ducts", 1, heads, rows[0], rows[1]).rows("Summary", 1, summary, row("600x400", 3, 6), row("500x300", 1.25, 2)), 2, 0, 0, 2*rect(.6, .4, 1.5)+rect(.5, .3, 1.25), "", "sheet 'Summary': rows of a list that seems to sum up other sheets"),
		uglyXLSX("summary-alone.xlsx", newBook(t, "Summary").rows("Summary", 1, summary, row("600x400", 3, 6)), 0, 0, 1, 0, "Summary!2:kind"),
		uglyXLSX("summary-with-kinds.xlsx", newBook(t, "Ducts", "Summary").rows("Ducts", 1, heads, rows[0]).rows("Summary", 1, heads, rows[1]), 2, 0, 0, 2*rect(.6, .4, 1.5)+rect(.5, .3, 1.25), "Summary!1:"))
	for _, name := range []string{"Etages 1 à 5", "Regelgeschoss 1-5", "1.-5. OG", "Étage courant", "Planta tipo"} {
		b := newBook(t, name).rows(name, 1, heads, rows[0])
		out = append(out, uglyXLSX("sheet-of-"+headings.Squash(name)+".xlsx", b, 1, 0, 0, 2*rect(.6, .4, 1.5), name+"!1:"))
	}
	return out
}

// uglyPinned are workbooks with what isn't in cells.
func uglyPinned(t testing.TB) []ugly {
	one := rect(.6, .4, 1)
	b := newBook(t, "Ducts", "Level 2 (scan)").rows("Ducts", 1, bookHead, row("A", "straight", 600, 400, 1000), row("B", "straight", 600, 400, 1000))
	for _, at := range []string{"E2", "E3"} {
		b.do(b.file.AddComment("Ducts", excelize.Comment{Cell: at, Author: "site", Text: "check on site"}))
	}
	const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
	b.file.Pkg.Store("xl/worksheets/_rels/sheet2.xml.rels", []byte(`<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="`+relations+`/drawing" Target="../drawings/drawing9.xml"/></Relationships>`))
	b.file.Pkg.Store("xl/drawings/drawing9.xml", []byte(`<xdr:wsDr xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing"/>`))
	remark := strings.Replace(odsRow("A", "straight", "=600", "=400", "=1000"), "<text:p>1000", "<office:annotation><text:p>check on site</text:p></office:annotation><text:p>1000", 1)
	says := strings.Replace(odsRow("B", "straight", "=600", "=400", "=1000"), "<text:p>600", "<office:annotation><dc:creator>void</dc:creator><text:p>JS:</text:p><text:p>deleted rev C</text:p></office:annotation><text:p>600", 1)
	c := newBook(t, "Ducts").rows("Ducts", 1, bookHead, row("A", "straight", 600, 400, 1000), row("B", "straight", 600, 400, 1000), row("C", "straight", 600, 400, 1000), row("D", "straight", 600, 400, 1000))
	for _, x := range [][2]string{{"A1", "deleted"}, {"B2", "cut to suit on site"}, {"B3", "JS:\nshould be 5, see RFI 12"}, {"E5", "[Threaded comment]\n\nOpen it in a newer program\n\nComment:\n    void"}} {
		c.do(c.file.AddComment("Ducts", excelize.Comment{Cell: x[0], Author: "site", Text: x[1]}))
	}
	return []ugly{
		uglyXLSX("comments-and-picture.xlsx", b, 2, 0, 0, 2*one, "", "strike or change a row: E2, E3", "sheet 'Level 2 (scan)' holds a picture or a drawing, which isn't read"),
		uglyXLSX("comments-that-say.xlsx", c, 2, 0, 2, 2*one, "Ducts!1:comment on 'Tag' Ducts!3:comment on 'Kind' Ducts!5:comment on 'Length (mm)'", "comments on cells aren't read"),
		{name: "comment-that-says.ods", data: odsFile(t, `<table:table table:name="Ducts">`+odsRow("Tag", "Kind", "Width (mm)", "Height (mm)", "Length (mm)")+remark+says+`</table:table>`), used: 1, refused: 1, area: one, faults: "Ducts!3:comment on 'Width (mm)'"},
		{name: "comment.ods", data: odsFile(t, `<table:table table:name="Ducts">`+odsRow("Tag", "Kind", "Width (mm)", "Height (mm)", "Length (mm)")+remark+`</table:table>`), used: 1, area: one, notes: []string{"strike or change a row: E2"}},
	}
}
