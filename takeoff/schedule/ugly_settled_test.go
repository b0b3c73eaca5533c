package schedule_test

import (
	"math"
	"testing"
)

// uglySettled are ordinary lists whose headings have more than one meaning, and whose
// cells say which; and those where they don't.
func uglySettled() []ugly {
	one := rect(.6, .4, 1.5)
	return []ugly{
		csvFile("type-beside-description.csv", "Tag,Description,Width (mm),Height (mm),Length (mm),Qty,Type,Air\nS1,Straight duct,600,400,1500,4,Flanged,Supply\nS2,Straight duct,600,400,1500,2,Flanged,Extract\n",
			2, 0, 0, 6*one, "", "column 'Description' is read as kind"),
		csvFile("item-beside-type-of-shape.csv", "Item,Type,Size,Length,Qty\nDuct,Rect,600x400,1500,2\nDuct,Circ,Ø315,3000,1\n",
			2, 0, 0, 2*one+round(.315, 3), "", "column 'Item' is read as kind", "column 'Type' is read as shape"),
		csvFile("two-columns-of-kinds.csv", "Name,Type,Size,Length,Qty\nStraight,Supply duct,600x400,1500,4\nPlenum box,Supply duct,600x400,800,1\n",
			0, 0, 2, 0, "1:Name 2:kind 3:kind"),
		csvFile("mark-beside-piece.csv", "Mark,Piece,Size,Length,Qty\nA,Straight,600x400,1500,4\n", 1, 0, 0, 4*one, "", "column 'Piece' is read as kind"),
		csvFile("ref-and-no.csv", "Ref,Type,W (mm),H (mm),L (mm),No\n1,Straight,600,400,1500,4\n2,Straight,600,400,1500,2\n3,Straight,600,400,1500,4\n",
			3, 0, 0, 10*one, "", "column 'No' is read as quantity", "column 'Ref' is read as tag"),
		csvFile("no-that-numbers.csv", "No,Type,W (mm),H (mm),L (mm)\n1,Straight,600,400,1500\n2,Straight,600,400,1500\n", 2, 0, 0, 2*one, "", "column 'No' is read as tag"),
		csvFile("no-behind-that-numbers.csv", "Type,W (mm),H (mm),L (mm),No\nStraight,600,400,1500,1\nStraight,600,400,1500,2\n", 2, 0, 0, 2*one, "1:No"),
		csvFile("section-of-sizes.csv", "Type,Section (mm),Length (mm)\nDuct,600 x 400,1500\nDuct,Ø315,3000\n", 2, 0, 0, one+round(.315, 3), "", "column 'Section (mm)' is read as size"),
		csvFile("area-in-words.csv", "Tag,Kind,W (mm),H (mm),L (mm),Area\nA,duct,600,400,1500,North wing\n", 1, 0, 0, one, "", "column 'Area' isn't used, as its cells hold words"),
		csvFile("area-in-figures.csv", "Tag,Kind,W (mm),H (mm),L (mm),Area\nA,duct,600,400,1500,3\nB,duct,600,400,1500,3.2\n", 2, 0, 0, 2*one, "", "column 'Area' is read as stated_area_m2"),
		csvFile("area-of-each-and-all.csv", "Tag,Kind,W (mm),H (mm),L (mm),Qty,Area (m2),Total area (m2)\nA,duct,600,400,1500,4,3,12\n", 1, 0, 0, 4*one, "", "column 'Total area (m2)' is read as stated_area_m2", "column 'Area (m2)' isn't used"),
		csvFile("radius-filled-late.csv", "Tag,Kind,W (mm),H (mm),L (mm),Radius\nA,duct,600,400,1500,\nB,duct,600,400,1500,300\n", 2, 0, 0, 2*one, "1:Radius"),
		csvFile("radius-never-filled.csv", "Tag,Kind,W (mm),H (mm),L (mm),Radius\nA,duct,600,400,1500,\nB,duct,600,400,1500,\n", 2, 0, 0, 2*one, ""),
		csvFile("scope-of-supply.csv", "Kind,Size (mm),Length (mm),Scope\nduct,600x400,1500,Supply and install\n", 1, 0, 0, one, "", "column 'Scope' isn't used"),
		csvFile("width-height-length.csv", "Ref,Kind,W x H x L (mm)\nA,duct,600x400x1500\nB,duct,Ø315x3000\nC,duct,60 cm x 40 cm x 1.5 m\nD,duct,600x400\n",
			3, 0, 1, 2*one+round(.315, 3), "5:W x H x L (mm)", "are read as width x height x length: 3"),
		csvFile("sides-a-and-b.csv", "Pos.;Benennung;a [mm];b [mm];l [mm];Menge\n1;Kanal;600;400;1500;4\n", 1, 0, 0, 4*one, "", "columns 'a [mm]' and 'b [mm]' are read as width and height"),
		csvFile("sides-a-to-d.csv", "Bauteil;a [mm];b [mm];c [mm];d [mm];l [mm]\nKanal;600;400;;;1500\nÜbergang;600;400;600;400;1000\n", 2, 0, 0, one+rect(.6, .4, 1), "", "columns 'c [mm]' and 'd [mm]' are read as width and height of the other end"),
		csvFile("transition-with-both.csv", "Kind,W (mm),H (mm),Dia (mm),L (mm)\nTransition,400,400,315,400\n", 0, 0, 1, 0, "2:shape 2:shape2"),
		csvFile("sizes-a-and-b.csv", "Type,Size A,Size B,Length\nStraight,600x400,,1500\n", 1, 0, 0, one, "", "are read as the sizes of both ends"),
		csvFile("size-over-three-cells.csv", "Type,Size,,,Length,Qty\nStraight,600,x,400,1500,4\n", 1, 0, 0, 4*one, "", "column 'Size' is read over three cells"),
		csvFile("running-metres.csv", "Type,Size (mm),Lin. m\nStraight,600x400,24.5\n", 1, 0, 0, rect(.6, .4, 24.5), "", "column 'Lin. m' is read as length_mm"),
		csvFile("quantity-in-metres.csv", "Description,Size (mm),Unit,Qty\nRectangular duct,600x400,m,24.5\nEnd cap,600x400,nr,2\nReducer,600x400/400x300,m,3\n",
			2, 0, 1, rect(.6, .4, 24.5)+2*.6*.4, "4:quantity", "quantities in m in column 'Qty', taken for the length of a straight: 2"),
		csvFile("thousands-in-mm.csv", "Tag,Kind,W (mm),H (mm),L (mm)\nA,duct,600,400,\"1,500\"\n", 1, 0, 0, one, ""),
		csvFile("zeros-beside-sizes.csv", "Tag,Kind,W (mm),H (mm),Dia (mm),L (mm)\nA,duct,600,400,0,1500\nB,duct,0,0,315,3000\n", 2, 0, 0, one+round(.315, 3), "", "zeros beside the other sizes of a piece"),
		csvFile("round-by-width.csv", "Kind,Shape,W (mm),H (mm),L (mm)\nduct,Circ,315,315,3000\nduct,Round,315,,3000\nduct,Circ,315,300,3000\n", 2, 0, 1, 2*round(.315, 3), "4:diameter_mm", "widths of circular pieces"),
		csvFile("width-or-diameter.csv", "Kind,Width/Dia (mm),Height (mm),L (mm)\nduct,600,400,1500\nduct,315,,3000\n", 2, 0, 0, one+round(.315, 3), ""),
		csvFile("square-to-round.csv", "Kind,W (mm),H (mm),Dia (mm),L (mm)\nSquare to round,400,400,315,\nduct,600,400,,1500\n", 1, 0, 1, one, "2:length_mm"),
		csvFile("kind-and-size.csv", "Ref,Description,Length (mm),Qty\n1,Straight duct 600x400,1500,4\n2,Ø315 spiral duct,3000,1\n3,\"Duct, 24\"\" x 16\"\"\",1500,1\n4,End cap 600x400,,1\n5,Tee 600x400/300x200,900,1\n",
			4, 0, 1, 4*one+round(.315, 3)+rect(.6096, .4064, 1.5)+.24, "6:kind"),
		csvFile("kind-and-size-disagree.csv", "Tag,Kind,W (mm),H (mm),L (mm)\nA,Duct 600x400,600,400,1500\nB,Duct 600x300,600,400,1500\n", 1, 0, 1, one, "3:Kind"),
		csvFile("kind-and-size-in-inches.csv", "Kind,Length (in)\nDuct 24x16,60\n", 0, 0, 1, 0, "2:kind"),
		csvFile("bend-90.csv", "Kind,Size (mm),Throat (mm)\nBend 90,600x400,150\nElbow (90°),600x400,150\n", 2, 0, 0, 2*2*.45*math.Pi/2, "", "angles are taken from column 'Kind'"),
		csvFile("kinds-with-more-words.csv", "Kind,Size (mm),Length (mm)\nGI rectangular duct,600x400,1500\nMain duct,600x400,1500\nRect. straight duct,600x400,1500\nGalv. straight duct,600x400,1500\nConduit acier galvanisé,600x400,1500\n", 5, 0, 0, 5*one, ""),
		csvFile("title-gives-kind.csv", "Rectangular straight ducts,,\nRef,Size (mm),Length (mm)\nR1,600x400,1500\n", 1, 0, 0, one, "", "kinds that no column gives, from 'Rectangular straight ducts'"),
		csvFile("nothing-gives-kind.csv", "Ductwork level 1,,\nTag,Size (mm),Length (mm)\nR1,600x400,1500\n", 1, 0, 0, one, "", "no column says what kind of piece each row is"),
		csvFile("titles-of-two-tables.csv", "RECTANGULAR DUCTS,,,\nTag,Description,Size (mm),Length (mm)\nS1,Duct,600x400,1500\n,,,\nCIRCULAR DUCTS,,,\nTag,Description,Dia (mm),Length (mm)\nC1,Duct,315,3000\n",
			2, 0, 0, one+round(.315, 3), "", "titles of tables among the rows passed over, the first 'CIRCULAR DUCTS'"),
		csvFile("title-struck.csv", "Tag,Kind,Size (mm),Length (mm)\nS1,Duct,600x400,1500\nDELETED ITEMS,,,\nTag,Kind,Size (mm),Length (mm)\nS2,Duct,600x400,1500\n", 1, 0, 1, one, "3: 5:"),
		csvFile("level-above-headings.csv", "Level 1,,\nKind,Size (mm),Length (mm)\nDuct,600x400,1500\n", 1, 0, 0, one, "", "the level of 1 row is taken from sub-headings"),
		csvFile("level-and-system.csv", "Kind,Size (mm),Length (mm)\nLevel 3 - Supply air,,\nDuct,600x400,1500\n", 1, 0, 0, one, "", "the level of 1 row is taken", "the system of 1 row is taken"),
		csvFile("groups-of-pieces.csv", "Ref,Kind,Size (mm),Length (mm)\nSTRAIGHTS,,,\nS1,Duct,600x400,1500\nFITTINGS,,,\nF1,End cap,600x400,\n", 2, 0, 0, one+.24, "", "names of groups of rows passed over, the first 'STRAIGHTS'"),
		csvFile("group-of-ovals.csv", "Kind,W (mm),H (mm),Length (mm)\nDuct,600,400,1500\nFLAT OVAL DUCTS,,,\nDuct,600,400,1500\n", 1, 0, 1, one, "4:shape"),
		csvFile("group-typical.csv", "Ref,Kind,Size (mm),Length (mm)\nMAIN DUCTS x4,,,\nA,Duct,600x400,1500\n", 0, 0, 1, 0, "2: 3:"),
		csvFile("signatures.csv", "Tag,Kind,W (mm),H (mm),L (mm),Qty\nS1,Duct,600,400,1500,4\n,,,,,\nPrepared by:,A. Person,,Date:,2026-03-01,\nRev,Description,Date,By,,\nA,First issue,2026-01-01,AP,,\n", 1, 0, 0, 4*one, "", "remarks among the rows passed over, the first 'Prepared by:'"),
		csvFile("summary-below.csv", "Kind,Size (mm),Length (mm),Qty\nDuct,600x400,1500,4\n,,,\nSummary,,,\nSize,Total m2,,\n600x400,12.0,,\n", 1, 0, 0, 4*one, "", "remarks among the rows passed over, the first 'Summary'"),
		csvFile("no-ductwork.csv", "Tag,Kind,Size (mm),Length (mm)\nS1,Duct,600x400,1500\nG1,Supply grille,300x150,\nH1,Hangers,,\n", 1, 2, 0, one, "", "rows of what is no ductwork left out, the first 'Supply grille'"),
		csvFile("no-ductwork-joined.csv", "tag,kind,size,length_mm,from\nS1,duct,600x400,1500,G1\nG1,grille,600x400,,\n", 1, 0, 1, one, "3:kind"),
		csvFile("tags-of-runs.csv", "Tag,Kind,Size (mm),Length (mm)\nRD1,Duct,600x400,1500\nRD1,Duct,600x400,1000\nRD2,Duct,600x400,1500\n", 3, 0, 0, 2*one+rect(.6, .4, 1), "", "tags that stand on earlier rows too: 1, as 'RD1' on row 2 and row 3"),
		csvFile("tags-of-runs-joined.csv", "tag,kind,size,length_mm,from\nRD1,duct,600x400,1500,\nRD1,duct,600x400,1000,RD1\n", 1, 0, 1, one, "3:tag 3:from"),
		csvFile("tag-twice-among-many.csv", "Tag,Kind,Size (mm),Length (mm)\n1,Duct,600x400,1500\n2,Duct,600x400,1500\n3,Duct,600x400,1500\n4,Duct,600x400,1500\n5,Duct,600x400,1500\n6,Duct,600x400,1500\n7,Duct,600x400,1500\n8,Duct,600x400,1500\n9,Duct,600x400,1500\n10,Duct,600x400,1500\n10,Duct,600x400,1000\n", 10, 0, 1, 10*one, "12:tag"),
		csvFile("style-of-straights.csv", "Kind,Size (mm),Length (mm),Style\nDuct,600x400,1500,Rolled frame\n", 1, 0, 0, one, ""),
		csvFile("total-without-a-word.csv", "Tag,Kind,Size (mm),Length (mm),Qty\nS1,Duct,600x400,1500,4\n,,,,4\n", 1, 1, 0, 4*one, "", "it gives 4 pieces, the rows above come to 4: they agree"),
		csvFile("places-as-from.csv", "Tag,Kind,Size (mm),Length (mm),From,To\nS1,Duct,600x400,1500,AHU-1,Room 3\nS2,Duct,600x400,1500,Room 3,Outside\n", 2, 0, 0, 2*one, "", "not one of 2 rows names the tag of another"),
		csvFile("tables-side-by-side.csv", "Tag,Kind,Size (mm),Length (mm),,Tag,Kind,Size (mm),Length (mm)\nA,Duct,600x400,1500,,B,Duct,600x400,1500\n", 0, 0, 1, 0, "2:"),
	}
}

// uglySettledBooks are workbooks of the same sort: rows are looked at ahead there too.
func uglySettledBooks(t testing.TB) []ugly {
	one := rect(.6, .4, 1.5)
	head := row("No", "Description", "Size (mm)", "Length (mm)", "Qty")
	item := func(n int) []any { return row(n, "Straight duct", "600x400", 1500, 2) }

	b := newBook(t, "L1", "L2").rows("L1", 1, head, item(1), item(2)).rows("L2", 1, head, item(1), row(2, "Straight duct", "600x400", 1000, 2))
	out := []ugly{uglyXLSX("numbers-anew-on-each-sheet.xlsx", b, 4, 0, 0, 6*one+2*rect(.6, .4, 1), "", "tags that stand on earlier rows too: 2")}

	b = newBook(t, "Straight duct", "End caps", "Ductwork").rows("Straight duct", 1, row("Ref", "Size (mm)", "Length (mm)"), row("S1", "600x400", 1500)).
		rows("End caps", 1, row("Ref", "Size (mm)", "Length (mm)"), row("E1", "600x400")).rows("Ductwork", 1, row("Ref", "Size (mm)", "Length (mm)"), row("X1", "600x400", 1500))
	out = append(out, uglyXLSX("sheet-names-give-kinds.xlsx", b, 2, 0, 1, one+.24, "Ductwork!2:kind", "kinds that no column gives, from 'Straight duct': row 2", "kinds that no column gives, from 'End caps': row 2"))

	b = newBook(t, "Ducts", "Grilles").rows("Ducts", 1, head, item(1)).rows("Grilles", 1, row("Tag", "Type", "Width (mm)", "Height (mm)", "Qty"), row("G1", "Grille", 300, 150, 4), row("G2", "Diffuser", 600, 600, 3))
	out = append(out, uglyXLSX("sheet-of-grilles.xlsx", b, 1, 2, 0, 2*one, ""))

	b = newBook(t, "Ducts").rows("Ducts", 1, row("RECTANGULAR"), head, item(1), row("Carried forward", nil, nil, nil, 2), nil, row("Duct list page 2 of 2"), head, row("Brought forward", nil, nil, nil, 2), item(2), row(nil, nil, nil, nil, 4))
	out = append(out, uglyXLSX("pages-with-titles.xlsx", b, 2, 3, 0, 4*one, ""))

	cells := odsRow("Ref", "Type", "W x H x L (mm)", "No") + odsRow("A", "Duct", "600x400x1500", "=4") + odsRow("B", "Duct", "600x400x1500", "=2") + odsRow("C", "Duct", "600x400x1500", "=4")
	return append(out, ugly{name: "settled.ods", data: odsFile(t, `<table:table table:name="Ducts">`+cells+`</table:table>`), used: 3, area: 10 * one, notes: []string{"column 'No' is read as quantity"}})
}
