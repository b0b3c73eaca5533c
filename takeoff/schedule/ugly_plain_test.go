package schedule_test

import (
	"strings"
	"testing"
)

// uglyPlain are ordinary lists of small offices: no column of kinds beside harmless ones, plain
// words for headings, lengths under a unit only, empty cells of databases.
func uglyPlain(testing.TB) []ugly {
	one := rect(.6, .4, 1.5)
	const straights = "no column says what kind of piece each row is"
	many := strings.Repeat("D,STOCK,600x400,1500,\n", 45)
	return []ugly{
		csvFile("plain-harmless-columns.csv", "Riser,Size (mm),Length (m),Qty,Total length (m),Insulation (mm),Lagging,Hanger spacing,Radius,Angle\nR1,600x400,1.5,4,6,50,,2400,,\nR1,600x400,1.5,3,4.5,50,yes,2400,,-\n", 2, 0, 0, 7*one, "", straights),
		csvFile("plain-shape-and-size.csv", "Tag,Shape,Size (mm),Length (m)\n1,round,250,3\n2,rect,600x400,1.5\n", 2, 0, 0, one+round(.25, 3), "", straights),
		csvFile("plain-codes-of-fittings.csv", "Nr,Symbol,Size (mm),Length (mm)\n1,STK,600x400,1500\n2,BD90,600x400,700\n3,RED,600x400,500\n", 0, 0, 3, 0, "2:kind 3:kind 4:kind"),
		csvFile("plain-codes-in-remarks.csv", "Nr,Size (mm),Length (mm),Remarks\n1,600x400,1500,\n2,600x400,700,BD45\n", 1, 0, 1, rect(.6, .4, 1.5), "3:kind"),
		csvFile("plain-codes-further-down.csv", "Mark,Symbol,Size (mm),Length (mm),Radius\n"+many+"X,RED,600x400,500,\n", 45, 0, 1, 45*one, "47:kind", straights),
		csvFile("plain-radius-further-down.csv", "Mark,Symbol,Size (mm),Length (mm),Radius\n"+many+"X,STOCK,600x400,500,150\n", 45, 0, 1, 45*one, "1:Radius 47:kind", straights),
		csvFile("plain-red-colour.csv", "Mark,Colour,Size (mm),Length (mm)\n1,RED,600x400,1500\n", 1, 0, 0, one, "", straights),
		csvFile("plain-ducto.csv", "No.,Descripción,Ancho (cm),Alto (cm),Largo (m)\n1,Ducto recto,60,40,1.5\n2,Ducto rectangular,60,40,1.5\n", 2, 0, 0, 2*one, ""),
		csvFile("plain-canal.csv", "Pos;Désignation;Dimension;Longueur [mm];Pcs\n1;Canal droit;600 x 400;1500;5\n2;Tuyau spiralé;Ø 250;3000;2\n", 2, 0, 0, 5*one+2*round(.25, 3), ""),
		csvFile("plain-kanalart.csv", "Lfd. Nr.;Kanalart;Abmessung (mm);Länge (mm)\n1;Rechteckkanal;600x400;1500\n2;Rundrohr;Ø250;3000\n", 2, 0, 0, one+round(.25, 3), ""),
		csvFile("plain-w-d-l.csv", "Item,Description,W x D x L\n1,Straight duct,600x400x1500\n", 1, 0, 0, one, ""),
		csvFile("plain-wide-high.csv", "Mark,Duct,Wide,High,Long\n1,Straight,600,400,1500\n", 1, 0, 0, one, ""),
		csvFile("plain-size-1-2.csv", "Mark,Fitting,Size 1,Size 2,Length,Plane\n1,Straight,600x400,,1500,\n2,Taper,600x400,600x400,500,\n", 2, 0, 0, one+one/3, ""),
		csvFile("plain-inlet-outlet.csv", "Mark,Fitting,Inlet,Outlet,Length\n1,Straight,600x400,,1500\n2,Taper,600x400,600x400,500\n", 2, 0, 0, one+one/3, "", "sizes of both ends"),
		csvFile("plain-inlet-names.csv", "Mark,Fitting,Size,Inlet,Outlet,Length\n1,Straight,600x400,AHU1,B2,1500\n", 1, 0, 0, one, ""),
		csvFile("plain-figures-1-2.csv", "Mark,Fitting,Size 1,Size 2,Length\n1,Straight,600,400,1500\n", 1, 0, 0, one, "", "are read as width and height"),
		csvFile("plain-metres.csv", "Item,Kind,Size,Metres\n1,Straight,600x400,12.5\n", 1, 0, 0, rect(.6, .4, 12.5), "", "'Metres' is read as length_mm"),
		csvFile("plain-ml.csv", "Pos;Désignation;Dimensions;ml\n1;Gaine;600x400;12,5\n", 1, 0, 0, rect(.6, .4, 12.5), "", "'ml' is read as length_mm"),
		csvFile("plain-metres-millimetres.csv", "Item,Kind,Size,Metres,Millimetres\n1,Straight,600x400,1,500\n", 0, 0, 1, 0, "1:Metres 1:Millimetres 2:length_mm"),
		csvFile("plain-elevations.csv", "Mark,Elevation,Size (mm),Length (mm)\n1,EL3200,600x400,1500\n", 1, 0, 0, one, "", straights),
		csvFile("plain-run-m.csv", "Item,Kind,Size,Run (m)\n1,Straight,600x400,12.5\n", 1, 0, 0, rect(.6, .4, 12.5), ""),
		csvFile("plain-metres-and-qty.csv", "Item,Kind,Size,Metres,Qty\n1,Straight,600x400,12.5,2\n", 0, 0, 1, 0, "1:Metres 2:length_mm"),
		csvFile("plain-null.csv", "tag,kind,width_mm,height_mm,diameter_mm,length_mm,qty,note\n1,straight,600,400,NULL,1500,2,NULL\n2,straight,\\N,\\N,250,3000,1,\\N\n3,straight,600,NaN,NA,1500,1,\n", 2, 0, 1, 2*one+round(.25, 3), "4:height_mm"),
		csvFile("plain-fixings.csv", "Ref,Kind,Size,Length,Qty\n1,Straight duct,600x400,1500,2\n2,Drop rod hangers,M10,,12\n3,Cleats,,,40\n4,Turning vanes,,,4\n5,Wall sleeve,,,1\n6,Angle iron,,,6\n7,Gasket tape,,,2\n8,Flange corners,,,80\n9,Paint,,,1\n", 1, 8, 0, 2*one, "", "no ductwork left out"),
		csvFile("plain-title-block.csv", "Item,Kind,Width,Height,Length,Qty\n1,Straight,600,400,1500,2\nProject: Town school,,,Sheet 2 of 3,,\nContract No: 4471,,,Date: 03/02/2026,,\nItem,Kind,Width,Height,Length,Qty\n2,Straight,600,400,1500,1\n", 2, 0, 0, 3*one, "", "title block"),
		csvFile("plain-title-block-cm.csv", "Item,Kind,Width,Height,Length,Qty\n1,Straight,600,400,1500,2\nProject: Town school,,,All sizes in cm,,\nItem,Kind,Width,Height,Length,Qty\n2,Straight,600,400,1500,1\n", 2, 0, 1, 3*one, "3:Height 3:kind"),
		csvFile("plain-numbered-empty.csv", "Item,Kind,Width,Height,Length\n1,Straight,600,400,1500\n2,Straight,600,400,1500\n3,,,,\n4,,,,\n", 2, 0, 0, 2*one, "", "nothing but a number"),
		csvFile("plain-wrapped.csv", "Item,Description,Size,Length\n1,Straight duct,600x400,1500\n,galvanised with flanges,,\n2,Straight duct,600x400,1500\n,pressure class B,,\n", 2, 0, 0, 2*one, "", "go on with the description"),
		csvFile("plain-wrapped-doubts.csv", "Item,Description,Size,Length\n0,Straight duct,600x,1500\n1,Straight duct,600x400,1500\n,internally lined,,\n2,Straight duct,600x400,1500\n,existing above,,\n", 2, 0, 3, 2*one, "2:Size 4:kind 6:kind"),
		csvFile("plain-cell-short.csv", "Item,Kind,Width,Height,Length,Qty\n1,Straight,600,400,1500,2\n2,Straight,500,1500,2\n3,Straight,600,400,1500,1\n4,Straight,600,400,1500\n5,Straight,600,400,long,1\n", 3, 0, 2, 4*one, "3:length_mm 6:Length"),
		csvFile("plain-hex.csv", "Item,Kind,Width,Height,Length\n1,Straight,0x258,400,1500\n", 0, 0, 1, 0, "2:Width"),
	}
}
