package schedule_test

import "strings"

// uglyPages are lists with units in odd places, areas twice, lines from several
// programs, and quotes that never end.
func uglyPages() []ugly {
	const semis = "Tag;Kind;Width;Height;Length;Qty\n"
	one := rect(.6, .4, 1.5)
	return []ugly{
		csvFile("two-area-columns.csv", "Tag;Kind;Width (mm);Height (mm);Length (mm);Qty;Area (m2);Area (sq ft)\nA1;Duct;600;400;1500;2;6,0;64,6\n", 1, 0, 0, 2*one, "1:Area (m2)"),
		csvFile("area-beside-stated.csv", "Tag;Kind;Width (mm);Height (mm);Length (mm);Qty;Stated area m2;Area (m2)\nA1;Duct;600;400;1500;2;6,0;3,0\n", 1, 0, 0, 2*one, "1:Area (m2)"),
		csvFile("unit-row-in.csv", "Pos.;Bezeichnung;Breite;Höhe;Länge\n;;in cm;in cm;in cm\nA;Kanal;60;40;150\n", 1, 0, 0, one, "", "row 2 gives the units"),
		csvFile("unit-row-pieces.csv", semis+";text;cm;cm;lfm;St.\nA;straight;60;40;1,5;2\n", 1, 0, 0, 2*one, ""),
		csvFile("unit-row-unknown.csv", semis+";;cm;cm;ells;\nA;straight;60;40;1,5;2\nB;cap;60;40;;1\n", 1, 0, 1, .24, "2:Length 3:length_mm"), // the cap is its face
		csvFile("unit-row-against.csv", "Tag;Kind;Width (mm);Height (mm);Length\n;;cm;mm;m\nA;straight;60;400;1,5\n", 0, 0, 1, 0, "2:Width (mm) 3:width_mm"),
		csvFile("unit-row-each-page.csv", semis+";;mm;mm;m;\nA;straight;600;400;1,5;1\n"+semis+";;cm;cm;cm;\nB;straight;60;40;150;1\n"+semis+";;mm;mm;m;\nC;straight;600;400;1,5;1\n",
			3, 0, 0, 3*one, "", "row 5 gives the units", "row 8 gives the units"),
		csvFile("unit-row-second-page.csv", semis+"A;straight;600;400;1500;1\n"+semis+";;cm;cm;cm;\nB;straight;60;40;150;1\n", 2, 0, 0, 2*one, ""),
		csvFile("title-all-in-cm.csv", "Alle Angaben in cm;;;;\nPos.;Bezeichnung;Breite;Höhe;Länge\nA;Kanal;60;40;150\n", 1, 0, 0, one, "", "gives the unit of"),
		csvFile("title-in-brackets.csv", "Duct schedule (cm);;;;;\n"+semis+"A;straight;60;40;150;1\n", 0, 0, 1, 0, "1: 3:shape 3:length_mm"),
		csvFile("title-against-headings.csv", "All dimensions in cm;;;;\nTag;Kind;Width (mm);Height (mm);Length (mm)\nA;straight;600;400;1500\n", 1, 0, 0, one, "1:"),
		csvFile("line-against-headings.csv", "Tag;Kind;Width (mm);Height (mm);Length (m)\nA;straight;600;400;1,5\nAlle Maße in cm;;;;\nB;straight;600;400;1,5\n", 1, 0, 1, one, "3: 4:"), // B may be in either
		csvFile("title-in-mm.csv", "All dimensions in mm;;;;\nTag;Kind;Width (mm);Height (mm);Length (m)\nA;straight;600;400;1,5\n", 1, 0, 0, one, ""),
		csvFile("quote-closed-by-inches.csv", "Tag;Kind;Width;Height;Length;Note\n1;duct;600;400;1500;\"open\n2;duct;600;400;1500;\n3;duct;600;400;1500;collar 24\"\n4;duct;600;400;1500;\n", 1, 0, 1, one, "2:"),
		csvFile("quote-in-tag.csv", "Tag;Kind;Width;Height;Length;Note\n\"1;duct;600;400;1500;\n2\";duct;600;400;1500;\n3;duct;600;400;1500;\n", 1, 0, 1, one, "2:"),
		csvFile("note-of-lines.csv", "Tag,Kind,Width,Height,Length,Note\n1,duct,600,400,1500,\"clean, seal, test, label, sign, \nand ask 2 people\"\n2,duct,600,400,1500,\n", 2, 0, 0, 2*one, ""),
		csvFile("lines-of-three-programs.csv", semis[:len(semis)-1]+"\rA;duct;600;400;1500;1\r\nB;duct;600;400;1500;1\nC;duct;600;400;1500;1\rD;duct;600;400;1500;1\r\r\nE;duct;600;400;1500;1\r", 5, 0, 0, 5*one, ""),
		csvFile("thousand-points.csv", "Tag,Kind,Width (mm),Height (mm),Length (mm)\nA,straight,1.200,600,1500\nB,straight,600.000,400.000,1500.000\nC,straight,600,400,1.500\n", 3, 0, 0, rect(1.2, .6, 1.5)+2*one, ""),
		csvFile("thousand-points-m.csv", "Tag,Kind,Width (m),Height (m),Length (m)\nA,straight,0.600,0.400,1.500\n", 1, 0, 0, one, ""),
		csvFile("total-below-footnote.csv", "Tag;Kind;W mm;H mm;L m;Qty\nA;duct;600;400;1,5;3\nFootnote only;;;;;\nTotal;;;;;3\n", 1, 1, 1, 3*one, "3:", "it gives 3 pieces, the rows above come to 3: they agree"),
		csvFile("size-heading-inches.csv", "tag,kind,Size (in),length_m\nA,duct,35 x 18,1\n", 1, 0, 0, rect(.889, .4572, 1), ""),
		csvFile("dia-heading-metres.csv", "tag,kind,Dia (m),length_m\nA,duct,1.25,2\n", 1, 0, 0, round(1.25, 2), ""),
		csvFile("thousand-point-unit.csv", "tag,kind,width_mm,height_mm,length_mm\nA,duct,1.450 mm,400 mm,1500\nB,duct,1450 mm,400 mm,1500\n", 1, 0, 1, rect(1.45, .4, 1.5), "2:width_mm"),
		csvFile("unit-row-above.csv", ",,cm,cm,m,\n"+strings.ReplaceAll(semis, ";", ",")+"A,straight,60,40,1.5,1\n", 1, 0, 0, one, "", "row 1 gives the units"),
		csvFile("page-without-unit.csv", "Tag,Kind,Width (cm),Height (cm),Length (m)\nA,duct,60,40,1.5\nTag,Kind,Width,Height,Length\nB,duct,60,40,1.5\n", 2, 0, 0, 2*one, "", "read as those before"),
		csvFile("lower-heads-again.csv", "Dimensions,,,,Qty\nKind,W,H,L,\nduct,600,400,1500,2\nDimensions,,,,Qty\nKind,W,H,L (m),\nduct,600,400,1.5,4\n", 2, 0, 0, 6*one, ""),
		csvFile("title-en-cm.csv", "Longueurs en cm,,,,\nTag,Kind,Width,Height,Length\nA,duct,60,40,150\n", 1, 0, 0, one, "", "gives the unit of"),
		csvFile("title-in-inches.csv", "Dimensions in in unless noted,,,,\nTag,Kind,Width,Height,Length\nA,duct,24,16,60\n", 1, 0, 0, rect(24*.0254, 16*.0254, 60*.0254), ""),
		csvFile("sub-heading-unit.csv", "Tag,Kind,Width,Height,Length\nA,duct,600,400,1500\nLevel 2 - cm,,,,\nB,duct,600,400,1500\nLevel 3,,,,\nC,duct,600,400,1500\n", 2, 0, 1, 2*one, "3: 4:"),
		csvFile("unit-nowhere-cm.csv", "Tag,Kind,Width,Height,Length\nA,duct,60,40,125\nB,duct,80,40,125\nC,duct,120,60,150\n", 0, 0, 3, 0, "2:width_mm 3:width_mm 4:length_mm"),
		csvFile("unit-nowhere-inches.csv", "Tag,Kind,Size,Length\nA,duct,24x16,60\nB,duct,Ø12,60\n", 0, 0, 2, 0, "2:width_mm 3:diameter_mm"),
		csvFile("unit-nowhere-metres.csv", "Tag,Kind,Diameter,Length\nA,duct,0.4,1500\nB,duct,0.315,1500\n", 0, 0, 2, 0, "2:Diameter 3:Diameter"),
		csvFile("unit-in-small-cells.csv", "Tag,Kind,Size,Length\nA,duct,80x60 mm,1500\nB,duct,80x50 mm,1500\n", 2, 0, 0, rect(.08, .06, 1.5)+rect(.08, .05, 1.5), ""),
		csvFile("columns-numbered.csv", "Tag,Kind,Width,Height,Length\n(1),(2),(3),(4),(5)\nA,duct,600,400,1500\n", 1, 0, 0, one, "", "rows that number the columns passed over: row 2"),
		csvFile("metres-comma.csv", "Tag;Kind;Width (m);Height (m);Length (m);Surface area (m²)\nA;duct;1,250;0,400;1,250;4,13\n", 1, 0, 0, rect(1.25, .4, 1.25), "", "read as stated_area_m2"),
		csvFile("times-behind.csv", "Tag,Kind,Width,Height,Length,Qty\nA,duct,600,400,1500,x2\nB,duct,600,400,1500,2 n.\n", 2, 0, 0, 4*one, ""),
		csvFile("title-and-group.csv", "Cotas en cm,,,,\n,Cantidad,Dimensiones,,\nPieza,,Ancho,Alto,Longitud\nconducto recto,2 pces,60,40,150\n", 1, 0, 0, 2*one, ""),
		csvFile("title-block-m.csv", "Block C (m),,,,\nTag,Kind,Width,Height,Length\nA,duct,600,400,1500\n", 1, 0, 0, one, ""),
		csvFile("system-without-name.csv", "Tag;Kind;W mm;H mm;L m;Qty\nSystem:;;;;;\nA;duct;600;400;1,5;1\n", 1, 0, 0, one, ""),
	}
}
