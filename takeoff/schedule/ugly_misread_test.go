package schedule_test

import (
	"math"
	"testing"
)

// uglyMisread are lists that fresh readers found to be read wrong without a word: each
// has to be asked about, or said.
func uglyMisread() []ugly {
	one := rect(.6, .4, 1.5)
	const heads = "Tag,Kind,Size (mm),Length (mm),Qty\n"
	return []ugly{
		csvFile("number-before-size.csv", "Description,Length (mm)\nDuct 1 600x400,1500\nKanal 2 250x300,1500\n1 600x400 duct,1500\nDuct 600x400,1500\n", 1, 0, 3, one, "2:kind 3:kind 4:kind"),
		csvFile("not-single-pieces.csv", "Kind,Size (mm),Length (mm),Unit,Qty\nDuct,600x400,1500,kg,250\nDuct,600x400,1500,pair,5\nDuct,600x400,1500,per floor,2\nDuct,600x400,1500,nr,2\n", 1, 0, 3, 2*one, "2:Unit 3:Unit 4:Unit"),
		csvFile("title-ends-title.csv", "Straight ducts,,\nTag,Size (mm),Length (mm)\nA,600x400,1500\nGrilles,,\nTag,Size (mm),Length (mm)\nG1,600x400,1500\n", 1, 0, 1, one, "6:kind"),
		csvFile("end-caps-title.csv", "Straight ducts,,\nTag,Size (mm),Length (mm)\nA,600x400,1500\nEnd caps,,\nTag,Size (mm),Length (mm)\nC,600x400,\n", 2, 0, 0, one+.24, ""),
		csvFile("metres-that-are-mm.csv", "Kind,Size (mm),Length (m)\nDuct,600x400,950\nDuct,600x400,1.5\n", 1, 0, 1, one, "2:Length (m)"),
		csvFile("inches-that-are-mm.csv", "Kind,W (in),H (in),L (in)\nDuct,24,16,60\nDuct,600,400,1500\n", 1, 0, 1, rect(.6096, .4064, 1.524), "3:W (in) 3:H (in) 3:L (in)"),
		csvFile("tags-of-several.csv", "Tag,Kind,Size (mm),Length (mm)\nD11x2,duct,600x400,1500\nD40 (×3),duct,600x400,1500\nD9 (2 off),duct,600x400,1500\nD10/11,duct,600x400,1500\nD14+D15,duct,600x400,1500\nD16..D18,duct,600x400,1500\nD16a-c,duct,600x400,1500\n40-42,duct,600x400,1500\nS1/2,duct,600x400,1500\nS1-04,duct,600x400,1500\nSA-01/EA-01,duct,600x400,1500\n",
			3, 0, 8, 3*one, "2:tag 3:tag 4:tag 5:tag 6:tag 7:tag 8:tag 9:tag"),
		csvFile("typical-remarks.csv", "Kind,Size (mm),Length (mm),Remarks,Location\nDuct,600x400,1500,typical of 6,\nDuct,600x400,1500,as above x 3,\nDuct,600x400,1500,,typical floor x4\nDuct,600x400,1500,to suit,Room 4\n", 1, 0, 3, one, "2:Remarks 3:Remarks 4:place"),
		csvFile("note-that-multiplies.csv", heads+"A,duct,600x400,1500,1\nNote: galvanised,,,,\nNote: all rows above x 4,,,,\n", 1, 0, 0, one, "4:", "the first 'Note: galvanised', then 'Note: all rows above x 4'"),
		csvFile("titles-quoted.csv", "Ductwork,,\nRev A,,\nFor the pump house,,\nKind,Size (mm),Length (mm)\nDuct,600x400,1500\n", 1, 0, 0, one, "", "'Ductwork', 'Rev A', 'For the pump house'"),
		csvFile("title-for-one-of-six.csv", "Quantities are for one floor only (6 floors),,\nKind,Size (mm),Length (mm)\nDuct,600x400,1500\n", 1, 0, 0, one, "1:"),
		csvFile("title-that-strikes.csv", "SUPERSEDED BY REV D,,\nKind,Size (mm),Length (mm)\nDuct,600x400,1500\n", 1, 0, 0, one, "1:"),
		csvFile("remarks-with-sizes.csv", "Kind,Size (mm),Length (mm),Remarks\nDuct,600x400,1500,800x400 over lagging\n", 1, 0, 0, one, "", "remarks with sizes, units or lengths, which aren't read, the first '800x400 over lagging'"),
		csvFile("remark-round.csv", "Kind,W (mm),H (mm),Length (mm),Remarks\nDuct,315,315,1500,round\nDuct,600,400,1500,round the column\n", 1, 0, 1, one, "2:shape"),
		csvFile("throat-as-ratio.csv", "Kind,Size (mm),Throat (mm),Angle\nBend,600x400,1.5,90\n", 0, 0, 1, 0, "2:throat_mm"),
		csvFile("rows-that-go-on.csv", heads+"A,duct,600x400,1500,1\n,,,1200,2\n,,,900,1\n", 1, 0, 2, one, "3:kind 4:kind"),
		csvFile("omit-above-headings.csv", heads+"A,duct,600x400,1500,1\nOmit,,,,\n"+heads+"B,duct,600x400,1500,1\n", 1, 0, 1, one, "3: 5:"),
		csvFile("pieces-first.csv", "Pièces;Désignation;Dimensions (mm);Longueur (mm)\n4;Gaine droite;600x400;1500\n2;Gaine droite;600x400;1500\n", 2, 0, 0, 6*one, ""),
		csvFile("numbers-of-pieces-last.csv", "Kind,Size (mm),Length (mm),No\nDuct,600x400,1500,101\nDuct,600x400,1500,105\nDuct,600x400,1500,103\n", 3, 0, 0, 3*one, "1:No"),
		csvFile("amount-of-money.csv", "Kind,Size (mm),Length (mm),Rate,Amount\nDuct,600x400,1500,35,85\nDuct,600x400,1500,35,70\n", 2, 0, 0, 2*one, "1:Amount"),
		csvFile("length-carried-in-cm.csv", "Kind,Width (cm),Height (cm),Length (cm)\nDuct,60,40,150\nKind,Width (mm),Height (mm),Length\nDuct,600,400,1500\n", 1, 0, 1, one, "3:Length 4:length_mm"),
		csvFile("diameter-by-length.csv", "Kind,Diameter (mm),Length (mm)\nDuct,315 x 3000,3000\n", 0, 0, 1, 0, "2:Diameter (mm)"),
		csvFile("systems-that-dont-count.csv", heads+"A,duct,600x400,1500,1\nAHU 2 by others,,,,\nB,duct,600x400,1500,1\nLevel 2 to 5,,,,\nC,duct,600x400,1500,1\nSystem S3,,,,\nD,duct,600x400,1500,1\n", 2, 0, 2, 2*one, "3: 4: 5: 6:"),
		csvFile("statuses.csv", "Tag,Kind,Size (mm),Length (mm),Status\nA,duct,600x400,1500,New\nB,duct,600x400,1500,Excluded\nC,duct,600x400,1500,obsolete\nD,duct,600x400,1500,Existing\nE,duct,600x400,1500,to be deleted\n", 1, 0, 4, one, "3:Status 4:Status 5:Status 6:Status"),
		csvFile("totals-by-name.csv", "System,Level,Tag,Kind,Size (mm),Length (mm)\nS1,L1,A,duct,600x400,1500\nS1,L1,600x400 total,duct,600x400,1500\nS1 total,L1,,duct,600x400,1500\nS1,L1 total,,duct,600x400,1500\n", 1, 0, 3, one, "3: 4:system 5:level"),
		csvFile("levels-by-range.csv", "Level,Kind,Size (mm),Length (mm)\n1-5,duct,600x400,1500\n\"2, 3, 4\",duct,600x400,1500\n2,duct,600x400,1500\n", 1, 0, 2, one, "2:level 3:level"),
		csvFile("later-figures.csv", "Tag,Kind,Size (mm),Length (mm),Length rev B (mm),Qty,Qty rev B\nA,duct,600x400,1500,1600,1,2\n", 1, 0, 0, one, "1:Length rev B (mm) 1:Qty rev B"),
		csvFile("x-that-counts.csv", "Tag,Kind,Size (mm),Length (mm),x\nA,duct,600x400,1500,4\nB,duct,600x400,1500,2\n", 2, 0, 0, 2*one, "1:x"),
		csvFile("counts-beside-empty.csv", "Tag,Kind,Size (mm),Length (mm),Qty,AHU1,AHU2\nA,duct,600x400,1500,,2,3\nB,duct,600x400,1500,,4,1\n", 2, 0, 0, 2*one, "1:AHU1 1:AHU2"),
		csvFile("units-of-two-kinds.csv", "\"Lengths in running metres, W and H in mm\"\nTag,Kind,W,H,Length\nA,duct,600,400,120\n", 1, 0, 0, rect(.6, .4, 120), "", "'Length' in m"),
		csvFile("units-of-two-kinds-mixed.csv", "\"Sizes in mm, some in m\"\nTag,Kind,W,H,Length\nA,duct,600,400,120\n", 0, 0, 1, 0, "1: 3:shape 3:length_mm"),
		csvFile("size-over-two-cells.csv", "Kind,Size (mm),,Length (mm)\nDuct,600,400,1500\n", 1, 0, 0, one, "", "column 'Size (mm)' is read over two cells"),
		csvFile("labels-above-headings.csv", "System:,AHU 4 Supply,Class:,B\nComponent,Size (mm),Length (mm),Qty\nDuct,600x400,1500,1\n", 1, 0, 0, one, ""),
		csvFile("level-under-ref.csv", "Ref,Kind,Size (mm),Length (mm)\nLevel 1,,,\nA,Duct,600x400,1500\n", 1, 0, 0, one, "", "the level of 1 row"),
		csvFile("leakage-test-or-not.csv", "Tag,Kind,Size (mm),Length (mm),Leakage test\nA,Duct,600x400,1500,Yes\nB,Duct,600x400,1500,No\n", 1, 1, 0, one, ""),
		csvFile("insulated-as-inches.csv", "Kind,Size (mm),Length (mm)\nDuct,600x400 ins.,1500\n", 0, 0, 1, 0, "2:Size (mm)"),
		csvFile("omissions.csv", heads+"A,duct,600x400,1500,1\nOMISSIONS,,,,\n"+heads+"B,duct,600x400,1500,1\n", 1, 0, 1, one, "3: 5:"),
		csvFile("bill.csv", "Item,Description,Unit,Qty,Rate,Amount\nA,Rectangular straight duct 600 x 400mm,m,24.5,55,1347.5\nB,End cap 600x400,nr,2,10,20\n,Total carried to summary,,,,1367.5\n", 2, 1, 0, rect(.6, .4, 24.5)+.48, ""),
		csvFile("metres-typed-in-mm.csv", "Tag,Kind,Size (mm),Length (mm)\nA,duct,600x400,3000\nB,duct,600x400,1.5\nC,duct,600x400,3000\n", 2, 0, 1, 4*one, "3:length_mm"),
		csvFile("metric-under-inches.csv", "Kind,Size (in),Length (in),Qty\nDuct,24x16,60,1\nDuct,600x400,60,1\nDuct,Ø315,60,1\n", 1, 0, 2, rect(.6096, .4064, 1.524), "3:Size (in) 4:Size (in)"),
		csvFile("remarks-on-counts.csv", heads[:len(heads)-1]+",Remarks\nA,duct,600x400,1500,4,1 deleted\nB,duct,600x400,1500,4,reduced to 3\nC,duct,600x400,1500,4,nur 3 Stück\nD,duct,600x400,1500,4,per floor\nE,duct,600x400,1500,4,doppelt\nF,duct,600x400,1500,1,nicht fertigen\nG,duct,600x400,1500,1,site fit\n",
			1, 0, 6, one, "2:Remarks 3:Remarks 4:Remarks 5:Remarks 6:Remarks 7:Remarks"),
		csvFile("list-that-replaces.csv", heads+"A,duct,600x400,1500,1\nDUCT LIST REV B - replaces list above,,,,\n"+heads+"A,duct,600x400,1500,2\n", 2, 0, 0, 3*one, "3:"),
		csvFile("title-of-floors.csv", "Levels 2-6 (5 floors),,\nKind,Size (mm),Length (mm)\nDuct,600x400,1500\n", 1, 0, 0, one, "1:"),
		csvFile("sub-headings-of-several.csv", heads+"Anlage: RLT 1 (2 Stück),,,,\nA,duct,600x400,1500,1\nLevel: 3 and 4,,,,\nB,duct,600x400,1500,1\nQty is per floor (6 floors),,,,\n", 0, 0, 2, 0, "2: 3: 4: 5: 6:"),
		csvFile("summary-with-pieces.csv", heads+"A,duct,600x400,1500,1\nSummary,,,,\n,duct,600x400,1500,1\n", 1, 0, 1, one, "4:"),
		csvFile("bill-german.csv", "Pos.;Bezeichnung;Menge;Einheit;EP\n1;Luftkanal 600x400;24,50;m;40,00\n2;Enddeckel 600x400;2;Stk;10,00\n", 2, 0, 0, rect(.6, .4, 24.5)+.48, ""),
		csvFile("bill-spanish.csv", "Código;Ud;Resumen;Cantidad;Precio\n08.01;m;Conducto rectangular 600x400;24,00;50,00\n", 1, 0, 0, rect(.6, .4, 24), ""),
		csvFile("bill-linear-feet.csv", "Item,Description,Size (in),Qty,Unit\n1,Rectangular duct,24x16,10,LF\n", 1, 0, 0, rect(.6096, .4064, 3.048), ""),
		csvFile("quantity-heading-in-m.csv", "Bezeichnung;Abmessung (mm);Menge (m)\nLuftkanal;600x400;12,5\n", 1, 0, 0, rect(.6, .4, 12.5), "", "column 'Menge (m)' is read as length_mm, in m"),
		csvFile("french-l-h-l.csv", "Nature;l mm;H mm;L mm\nGaine;600;400;1500\n", 1, 0, 0, one, "", "column 'l mm' is read as width_mm"),
		csvFile("bends-and-sizes.csv", "Kind,Throat (mm)\nBend 90 600x400,0\nSpiral duct 315,\n", 1, 0, 1, 2*.3*math.Pi/2, "3:length_mm"),
	}
}

// uglyMisreadBooks are workbooks of the same sort.
func uglyMisreadBooks(t testing.TB) []ugly {
	head := row("Tag", "Kind", "Size (mm)", "Length (mm)")
	a := func(tag string, l int) []any { return row(tag, "duct", "600x400", l) }
	one, two := rect(.6, .4, 1.5), rect(.6, .4, 2)
	b := newBook(t, "3x Level 2").rows("3x Level 2", 1, head, a("A", 1500))
	out := []ugly{uglyXLSX("sheet-three-times.xlsx", b, 1, 0, 0, one, "3x Level 2!1:")}
	b = newBook(t, "Level 1", "Level 1 (2)", "Variation 1 (omit)", "Demolition").rows("Level 1", 1, head, a("A", 1500)).rows("Level 1 (2)", 1, head, a("B", 2000)).rows("Variation 1 (omit)", 1, head, a("C", 1500)).rows("Demolition", 1, head, a("D", 1500))
	out = append(out, uglyXLSX("sheets-that-dont-count.xlsx", b, 4, 0, 0, 3*one+two, "Level 1 (2)!1: Variation 1 (omit)!1: Demolition!1:"))
	b = newBook(t, "Level 1", "Level 2").rows("Level 1", 1, head, a("A", 1500)).rows("Level 2", 1, row("As Level 1"))
	return append(out, uglyXLSX("sheet-as-another.xlsx", b, 1, 0, 0, one, "Level 2!1:"))
}
