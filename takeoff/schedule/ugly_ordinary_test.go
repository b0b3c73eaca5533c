package schedule_test

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// The ordinary rows of these files: a straight twice, one more and a cap.
const (
	ordinaryHeads = "Tag,Kind,Width,Height,Length,Qty\n"
	ordinaryRows  = "T1,Straight,600,400,1500,2\nT2,Straight,500,300,1200,1\nT3,Cap,500,300,,1\n"
)

// ordinaryArea is theirs.
func ordinaryArea() float64 { return 2*rect(.6, .4, 1.5) + rect(.5, .3, 1.2) + .5*.3 }

// uglyOrdinary are schedules that any reader of the trade would read without asking, each with
// those beside it that are asked about all the same.
func uglyOrdinary() []ugly {
	return slices.Concat(uglyNumbered(), uglyLabelled(), uglySides(), uglyOutlets(), uglyFeet(), uglyThreeRows(), uglyRoomLines(), uglyDucts(), uglyOneShort(), uglyCounts(), uglyBends(), uglyTotalsOnTop())
}

// uglyNumbered are headings with numbers or letters before them, above them or below them.
func uglyNumbered() []ugly {
	one, all := rect(.6, .4, 1.5), ordinaryArea()
	return []ugly{
		csvFile("ordinary-numbered-heads.csv", "1. Tag,2. Kind,3. Width (mm),4. Height (mm),5. Length (mm),6. Qty\n"+ordinaryRows, 3, 0, 0, all, ""),
		csvFile("ordinary-lettered-heads.csv", "(a) Tag,(b) Kind,(c) Width,(d) Height,(e) Length,(f) Qty\n"+ordinaryRows, 3, 0, 0, all, ""),
		csvFile("ordinary-numbered-some.csv", "Tag,Kind,1) Width (mm),2) Height (mm),3) Length (mm),Qty\n"+ordinaryRows, 3, 0, 0, all, ""),
		csvFile("ordinary-numbered-groups.csv", "1. Tag,2. Kind,3. Main,,4. Branch,,5. Length,6. Qty\n,,Width,Height,Width,Height,,\nT1,Straight,600,400,,,1500,2\n", 1, 0, 0, 2*one, ""),
		csvFile("ordinary-letters-above.csv", "A,B,C,D,E,F\n"+ordinaryHeads+ordinaryRows, 3, 0, 0, all, ""),
		csvFile("ordinary-letters-below.csv", ordinaryHeads+"A,B,C,D,E,F\n"+ordinaryRows+ordinaryHeads+"A,B,C,D,E,F\nT4,Straight,600,400,1500,1\n", 4, 0, 0, all+one, "", "number the columns"),
		csvFile("ordinary-numbers-below-units.csv", ordinaryHeads+",,mm,mm,mm,\n(1),(2),(3),(4),(5),(6)\n"+ordinaryRows, 3, 0, 0, all, "", "number the columns"),
		csvFile("ordinary-numbered-twins.csv", "1. Tag,2. Kind,3. Width,4. Width,5. Length\nT1,Straight,600,400,1500\n", 0, 0, 1, 0, "1:Width 2:shape"),
		csvFile("ordinary-numbered-ends.csv", "Tag,Kind,1. Width,1. Height,2. Width,2. Height,Length\nT1,Reducer,600,400,500,300,400\n", 0, 0, 1, 0, "2:size"),
		csvFile("ordinary-letters-short.csv", ordinaryHeads+"A,B,C,D,,\n"+ordinaryRows, 3, 0, 1, all, "2:Width 2:Height 2:kind"),
	}
}

// uglyLabelled are labels with what they say, each in a cell, right above the headings.
func uglyLabelled() []ugly {
	one, all := rect(.6, .4, 1.5), ordinaryArea()
	return []ugly{
		csvFile("ordinary-class-above.csv", "Class,B\n"+ordinaryHeads+ordinaryRows, 3, 0, 0, all, "", "'Class B'"),
		csvFile("ordinary-labels-above.csv", "System,S1\nLevel,02\nClass,B\nMaterial,GI\n"+ordinaryHeads+ordinaryRows, 3, 0, 0, all, "", "the system of 3 rows", "the level of 3 rows"),
		csvFile("ordinary-labels-in-line.csv", "Class,B,System,S1,Material,GI\n"+ordinaryHeads+ordinaryRows, 3, 0, 0, all, "", "the system of 3 rows"),
		csvFile("ordinary-labels-project.csv", "Project,School\nDrawing,M-101\nRev,C\nClass,B\n"+ordinaryHeads+ordinaryRows, 3, 0, 0, all, ""),
		csvFile("ordinary-klasse.csv", "Klasse;B\nAnlage;Z1\nPos;Art;Breite;Höhe;Länge;Anzahl\n1;Kanal;600;400;1500;2\n", 1, 0, 0, 2*one, "", "the system of 1 row"),
		csvFile("ordinary-labels-units.csv", "Units,cm,Class,B\n"+ordinaryHeads+"T1,Straight,60,40,150,2\n", 1, 0, 0, 2*one, "", "'Units cm'"),
		csvFile("ordinary-labels-scope.csv", "Scope,Out,Class,B\n"+ordinaryHeads+ordinaryRows, 3, 0, 0, all, "1:"),
		csvFile("ordinary-labels-status.csv", "Revision,B,Status,Void\n"+ordinaryHeads+ordinaryRows, 3, 0, 0, all, "1:"),
		csvFile("ordinary-labels-sets.csv", "Class,B,Sheet,1 of 2,Sets,2\n"+ordinaryHeads+"T1,Straight,600,400,1500,2\n", 0, 0, 1, 0, "1:Class / Tag 1:Sheet / Width 1:1 of 2 / Height 1:Sets / Length 1:2 / Qty 3:shape 3:length_mm"),
		csvFile("ordinary-labels-struck.csv", "Status,Superseded 2\n"+ordinaryHeads+ordinaryRows, 3, 0, 0, all, "1:"),
		csvFile("ordinary-labels-twice.csv", "Level,02 to 05\n"+ordinaryHeads+ordinaryRows, 3, 0, 0, all, "1:"),
		csvFile("ordinary-labels-group.csv", "Tag,Kind,Main,,Branch,,\n,,W,H,W,H,L\nT1,Straight,600,400,,,1500\n", 0, 0, 1, 0, "3:length_mm"),
	}
}

// uglySides are the two sides of a cross-section under the names that offices have for them.
func uglySides() []ugly {
	one, all := rect(.6, .4, 1.5), ordinaryArea()
	heads := func(a, b string) string { return "Tag,Kind," + a + "," + b + ",Length,Qty\n" }
	const both = "are read as width and height"
	return []ugly{
		csvFile("ordinary-dimension-1-2.csv", heads("Dimension 1 (mm)", "Dimension 2 (mm)")+ordinaryRows, 3, 0, 0, all, "", both),
		csvFile("ordinary-dim1-dim2.csv", heads("Dim1", "Dim2")+ordinaryRows, 3, 0, 0, all, "", both),
		csvFile("ordinary-size-1-2.csv", heads("Size 1", "Size 2")+ordinaryRows, 3, 0, 0, all, "", both),
		csvFile("ordinary-seite-1-2.csv", heads("Seite 1", "Seite 2")+ordinaryRows, 3, 0, 0, all, "", both),
		csvFile("ordinary-kantenlaenge.csv", heads("Kantenlänge a (mm)", "Kantenlänge b (mm)")+ordinaryRows, 3, 0, 0, all, "", both),
		csvFile("ordinary-zijde.csv", heads("Zijde a", "Zijde b")+ordinaryRows, 3, 0, 0, all, "", both),
		csvFile("ordinary-dim-round-by-shape.csv", "Tag,Kind,Shape,Dim 1,Dim 2,Length\nT1,Straight,round,315,,1500\nT2,Straight,rect,600,400,1500\n", 2, 0, 0, one+round(.315, 1.5), ""),
		csvFile("ordinary-dim-reducer.csv", heads("Dim 1", "Dim 2")+"T1,Straight,600,400,1500,1\nT2,Straight,315,,1500,1\nT3,Reducer,600,400,500,1\n", 1, 0, 2, one, "3:height_mm 4:width2_mm 4:height2_mm"),
		csvFile("ordinary-size-two-diameters.csv", heads("Size 1", "Size 2")+"T1,Straight,315,315,1500,1\nT2,Reducer,315,250,300,1\n", 0, 0, 2, 0, "2:Size 1 2:Size 2 3:Size 1 3:Size 2"),
		csvFile("ordinary-size-spiral.csv", heads("Size 1", "Size 2")+"T1,Spiral duct,315,,1500,1\nT2,Reducer,315,250,300,1\n", 1, 0, 1, round(.315, 1.5), "3:Size 1 3:Size 2"),
		csvFile("ordinary-size-length-twice.csv", heads("Size 1", "Size 2")+"T1,Straight,315,1500,1500,1\nT2,Straight,250,900,900,1\n", 0, 0, 2, 0, "2:Size 1 2:Size 2 3:Size 1 3:Size 2"),
		csvFile("ordinary-dim-1-2-3.csv", "Tag,Kind,Dim 1,Dim 2,Dim 3,Qty\nT1,Straight,600,400,1500,2\n", 0, 0, 1, 0, "1:Dim 1 1:Dim 2 2:shape 2:length_mm"),
	}
}

// taper is the outside surface of a concentric reducer between two rectangles, m2: four flat
// sides, each a trapezium as high as its slant.
func taper(a, b, c, d, l float64) float64 {
	return (a+c)*math.Hypot(l, (b-d)/2) + (b+d)*math.Hypot(l, (a-c)/2)
}

// cone is that of one between two circles, m2.
func cone(d1, d2, l float64) float64 { return math.Pi * (d1 + d2) / 2 * math.Hypot(l, (d1-d2)/2) }

// uglyOutlets are the small ends of tapers under a heading for the outlet.
func uglyOutlets() []ugly {
	one := rect(.6, .4, 1.5)
	const end = "is read as the size of the other end"
	return []ugly{
		csvFile("ordinary-outlet.csv", "Tag,Kind,Section,Outlet (mm),Length\nT1,Straight,600x400,,1500\nT2,Taper,600x400,500x300,400\n", 2, 0, 0, one+taper(.6, .4, .5, .3, .4), "", end),
		csvFile("ordinary-outlet-sides.csv", "Tag,Kind,W,H,Outlet W,Outlet H,Length\nT1,Straight,600,400,600,400,1500\nT2,Taper,600,400,500,300,400\n", 2, 0, 0, one+taper(.6, .4, .5, .3, .4), "", end),
		csvFile("ordinary-sortie.csv", "Repère,Pièce,Ø,Ø sortie,Longueur,Quantité\nT1,Conduit droit,315,,1500,2\nT2,Réduction,315,250,400,1\n", 2, 0, 0, 2*round(.315, 1.5)+cone(.315, .25, .4), "", end),
		csvFile("ordinary-uitlaat.csv", "Nr,Onderdeel,Ø,Ø uitlaat,Lengte,Aantal\nT1,Kanaal,315,-,1500,2\nT2,Verloop,315,250,400,1\n", 2, 0, 0, 2*round(.315, 1.5)+cone(.315, .25, .4), "", end),
		csvFile("ordinary-austritt.csv", "Pos,Bauteil,Ø,Austritt (mm),Länge\nT1,Rohr,315,,1500\nT2,Reduzierung,315,250,400\n", 2, 0, 0, round(.315, 1.5)+cone(.315, .25, .4), "", end),
		csvFile("ordinary-outlet-plenum.csv", "Tag,Kind,W,H,L,Outlet Ø\nT1,Plenum,600,600,300,250\nT2,Straight,600,400,1500,\n", 2, 0, 0, one+2*.6*.6+4*.6*.3, ""),
		csvFile("ordinary-outlet-names.csv", "Tag,Kind,Size,Outlet,Length\nT1,Straight,600x400,roof,1500\nT2,Taper,600x400,,400\n", 1, 0, 1, one, "3:width2_mm 3:height2_mm"),
		csvFile("ordinary-outlet-mixed.csv", "Tag,Kind,Size,Outlet,Length\nT1,Straight,600x400,300x300,1500\nT2,Taper,600x400,500x300,400\n", 1, 0, 1, one, "3:width2_mm 3:height2_mm"),
		csvFile("ordinary-outlet-later.csv", "Tag,Kind,Size,Outlet,Length\nT1,Taper,600x400,500x300,400\n"+strings.Repeat("D,Straight,600x400,,1500\n", 45)+"D,Straight,600x400,300x300,1500\n", 46, 0, 1, 45*one+taper(.6, .4, .5, .3, .4), "48:width2_mm 48:height2_mm", end),
		csvFile("ordinary-outlet-figures.csv", "Tag,Kind,Inlet,Outlet,Length\nT1,Straight,315,,1500\nT2,Reducer,315,250,400\n", 0, 0, 2, 0, "2:size 3:size"),
	}
}

// uglyFeet are lengths in feet and in inches in two columns, wherever they stand.
func uglyFeet() []ugly {
	const in, both = .0254, "are read as one length in feet and inches"
	run := func(inches float64) float64 { return rect(24*in, 12*in, inches*in) }
	heads := func(rest string) string { return "Tag,Kind,W (in),H (in)," + rest + "\n" }
	return []ugly{
		csvFile("ordinary-feet-apart.csv", heads("Length ft,Qty,Length in")+"T1,Straight,24,12,4,2,6\nT2,Straight,24,12,5,1,0\n", 2, 0, 0, 2*run(54)+run(60), "", both),
		csvFile("ordinary-feet-behind.csv", heads("Length in,Length ft,Qty")+"T1,Straight,24,12,6,4,2\n", 1, 0, 0, 2*run(54), "", both),
		csvFile("ordinary-inches-alone.csv", heads("Length ft,Length in")+"T1,Straight,24,12,4,6\nT2,Straight,24,12,,18\nT3,Straight,24,12,0,7 1/2\nT4,Straight,24,12,5,\n", 4, 0, 0, run(54)+run(18)+run(7.5)+run(60), "", both),
		csvFile("ordinary-ft-in.csv", heads("Ft,In,Qty")+"T1,Straight,24,12,4,6,2\nT2,Straight,24,12,,18,1\n", 2, 0, 0, 2*run(54)+run(18), "", both),
		csvFile("ordinary-feet-in-brackets.csv", heads("Length (ft),Qty,(in)")+"T1,Straight,24,12,4,2,6\n", 1, 0, 0, 2*run(54), "", both),
		csvFile("ordinary-feet-and-all-inches.csv", heads("Length ft,Qty,Length in")+"T1,Straight,24,12,4,2,48\nT2,Straight,24,12,4,2,6\n", 1, 0, 1, 2*run(54), "2:Length ft"),
		csvFile("ordinary-feet-and-in.csv", heads("Length ft,Qty,(in)")+"T1,Straight,24,12,4,2,14\n", 1, 0, 0, 2*run(48), "1:(in)"),
		csvFile("ordinary-feet-and-insulation.csv", heads("Length ft,Insulation,in")+"T1,Straight,24,12,4,yes,1\n", 1, 0, 0, run(48), "1:in"),
		csvFile("ordinary-feet-twice.csv", heads("Length ft,Length in,Length in")+"T1,Straight,24,12,4,6,7\n", 0, 0, 1, 0, "1:Length ft 2:length_mm"),
	}
}

// uglyThreeRows are headings in three rows: group, name, unit.
func uglyThreeRows() []ugly {
	one := rect(.6, .4, 1.5)
	const rows = "T1,Straight,600,400,,,1500,2\nT2,Reducer,600,400,500,300,400,1\n"
	return []ugly{
		csvFile("ordinary-three-rows.csv", "Piece,,Inlet,,Outlet,,,\nTag,Kind,Width,Height,Width,Height,Length,Qty\n,,mm,mm,mm,mm,mm,pcs\n"+rows, 2, 0, 0, 2*one+taper(.6, .4, .5, .3, .4), ""),
		csvFile("ordinary-three-rows-ends.csv", "Tag,Kind,Large end,,Small end,,Length,Qty\n,,W,H,W,H,,\n,,(mm),(mm),(mm),(mm),(mm),\n"+rows, 2, 0, 0, 2*one+taper(.6, .4, .5, .3, .4), ""),
		csvFile("ordinary-three-rows-quantity.csv", "Tag,Kind,Main,,Branch,,\n,,W,H,W,H,Qty\n,,mm,mm,mm,mm,No\nT1,Cap,600,400,,,2\n", 1, 0, 0, 2*.6*.4, ""),
		csvFile("ordinary-three-rows-branch.csv", "Tag,Kind,Main,,Branch,,,Qty\n,,Width,Height,Width,Height,Length,\n,,mm,mm,mm,mm,mm,\nT1,Straight,600,400,,,1500,2\n", 0, 0, 1, 0, "4:length_mm"),
		csvFile("ordinary-three-rows-insulation.csv", "Tag,Kind,Insulation,,Size,,\n,,Width,Height,Width,Height,Length\n,,mm,mm,mm,mm,mm\nT1,Straight,700,500,600,400,1500\n", 1, 0, 0, one, "1:Insulation / Width 1:Insulation / Height"),
		csvFile("ordinary-three-rows-outlet.csv", "Tag,Kind,Size,,Outlet\n,,W,H,Length\n,,mm,mm,mm\nT1,Straight,600,400,1500\n", 0, 0, 1, 0, "1:Outlet / Length 4:length_mm"),
	}
}

// uglyRoomLines are lines that name rooms among the rows.
func uglyRoomLines() []ugly {
	const head, more = ordinaryHeads + "T1,Straight,600,400,1500,2\n", "T2,Straight,600,400,1500,1\n"
	one := rect(.6, .4, 1.5)
	return []ugly{
		csvFile("ordinary-ceiling-void.csv", head+"Ceiling void,,,,,\n"+more+"Copy room,,,,,\n"+ordinaryHeads+"T3,Straight,600,400,1500,1\n", 3, 0, 0, 4*one, "", "name a place or a part"),
		csvFile("ordinary-void-line.csv", head+"void,,,,,\n"+more, 1, 0, 1, 2*one, "3: 4:"),
	}
}

// uglyRooms are sheets named as rooms, beside those that are struck.
func uglyRooms(t testing.TB) []ugly {
	one := rect(.6, .4, 1.5)
	b := func(sheets ...string) *book {
		b := newBook(t, sheets...)
		for i, s := range sheets {
			b.rows(s, 1, row("Tag", "Kind", "Width", "Height", "Length"), row(2*i+1, "Straight", 600, 400, 1500), row(2*i+2, "Straight", 600, 400, 1500+100*i))
		}
		return b
	}
	area := func(n int) float64 {
		a := 0.
		for i := range n {
			a += one + rect(.6, .4, 1.5+.1*float64(i))
		}
		return a
	}
	return []ugly{
		uglyXLSX("ordinary-rooms.xlsx", b("Main hall", "Ceiling void", "Old kitchen", "Copy room", "Spare parts store"), 10, 0, 0, area(5), ""),
		uglyXLSX("ordinary-struck-sheets.xlsx", b("Ducts", "Old", "Copy", "void", "Sheet1 (old)"), 10, 0, 0, area(5), "Old!1: Copy!1: void!1: Sheet1 (old)!1:"),
		uglyXLSX("ordinary-old-of-a-hall.xlsx", b("Hall", "Old hall", "Old Level 1", "Spare parts"), 8, 0, 0, area(4), "Old hall!1: Old Level 1!1: Spare parts!1:"),
	}
}

// uglyDucts are columns headed by a word for ducts, over sizes or over kinds.
func uglyDucts() []ugly {
	one := rect(.6, .4, 1.5)
	const size = "is read as size, as its cells hold sizes"
	heads := func(kind string) string { return "Tag," + kind + ",Width,Height,Length\n" }
	return []ugly{
		csvFile("ordinary-duct-size.csv", "Tag,Duct,Length,Qty\nT1,600x400,1500,2\nT2,Ø315,1200,1\n", 2, 0, 0, 2*one+round(.315, 1.2), "", size),
		csvFile("ordinary-kanal-size.csv", "Pos;Kanal (mm);Länge;Anzahl\nT1;600x400;1500;2\n", 1, 0, 0, 2*one, "", size),
		csvFile("ordinary-gaine-size.csv", "Repère;Gaine (cm);Longueur (m)\nT1;60x40;1,5\n", 1, 0, 0, one, "", size),
		csvFile("ordinary-conducto-size.csv", "Pos,Tipo,Conducto (mm),Longitud\nT1,Recto,600x400,1500\n", 1, 0, 0, one, "", size),
		csvFile("ordinary-duct-figures.csv", "Tag,Duct (mm),Length (m)\nT1,315,1.5\n", 0, 0, 1, 0, "2:kind"),
		csvFile("ordinary-duct-size-later.csv", "Mark,Duct,Length\n"+strings.Repeat("D,600x400,1500\n", 45)+"D,Bend 600x400,500\n", 45, 0, 1, 45*one, "47:Duct 47:kind", size),
		csvFile("ordinary-opening-size.csv", "Tag,Opening,Length\nT1,600x400,1500\n", 0, 0, 1, 0, "2:kind"),
		csvFile("ordinary-duct-kinds.csv", heads("Duct")+"T1,Straight,600,400,1500\nT2,Wibble,600,400,1500\nT3,Straight,600,400,1500\nT4,Cap,600,400,\n", 3, 0, 1, 2*one+.6*.4, "3:kind", "is read as kind"),
		csvFile("ordinary-element-kinds.csv", heads("Element")+"T1,Straight,600,400,1500\nT2,Wibble,600,400,1500\nT3,Straight,600,400,1500\n", 2, 0, 1, 2*one, "3:kind"),
		csvFile("ordinary-duct-names.csv", heads("Duct")+"T1,Straight,600,400,1500\nT2,Main,600,400,1500\nT3,Supply,600,400,1500\nT4,Cap,600,400,900\n", 0, 0, 4, 0, "2:kind 3:kind 4:kind 5:kind"),
	}
}

// uglyOneShort are lists without kinds in which one row has no length.
func uglyOneShort() []ugly {
	one := rect(.6, .4, 1.5)
	return []ugly{
		csvFile("ordinary-one-no-length.csv", "Tag,Width,Height,Length,Qty\nT1,600,400,1500,2\nT2,600,400,,1\nT3,600,400,1500,1\nT4,600,400,1500,1\n", 3, 0, 1, 4*one, "3:kind"),
		csvFile("ordinary-one-dash-length.csv", "Tag,Size,Length\nT1,600x400,1500\nT2,600x400,1500\nT3,600x400,-\nT4,600x400,1500\n", 3, 0, 1, 3*one, "4:kind"),
		csvFile("ordinary-two-no-length.csv", "Tag,Size,Length\nT1,600x400,1500\nT2,600x400,\nT3,600x400,\nT4,600x400,1500\nT5,600x400,1500\n", 0, 0, 5, 0, "2:kind 3:kind 4:kind 5:kind 6:kind"),
		csvFile("ordinary-one-no-length-angle.csv", "Tag,Size,Length,Angle\nT1,600x400,1500,\nT2,600x400,,90\nT3,600x400,1500,\nT4,600x400,1500,\n", 0, 0, 4, 0, "2:kind 3:kind 4:kind 5:kind"),
		csvFile("ordinary-one-no-length-bend.csv", "Tag,Size,Length,Remark\nT1,600x400,1500,\nT2,600x400,,bend\nT3,600x400,1500,\nT4,600x400,1500,\n", 3, 0, 1, 3*rect(.6, .4, 1.5), "3:kind"),
	}
}

// uglyCounts are quantities over again and quantities in words.
func uglyCounts() []ugly {
	one := rect(.6, .4, 1.5)
	again := func(heading, cells string) string {
		out := "Tag,Kind,Size,Length,Qty," + heading + "\n"
		for i, c := range strings.Fields(cells) {
			out += string(rune('A'+i)) + ",Straight,600x400,1500," + strings.ReplaceAll(c, ":", ",") + "\n"
		}
		return out
	}
	return []ugly{
		csvFile("ordinary-delivered.csv", again("Qty delivered", "2:2 1:1 3: 4:-"), 4, 0, 0, 10*one, ""),
		csvFile("ordinary-ordered.csv", again("Qty ordered", "2:2 1:1.0"), 2, 0, 0, 3*one, ""),
		csvFile("ordinary-on-site.csv", again("Qty on site", "2: 1:"), 2, 0, 0, 3*one, ""),
		csvFile("ordinary-delivered-less.csv", again("Qty delivered", "2:2 3:1"), 2, 0, 0, 5*one, "1:Qty delivered"),
		csvFile("ordinary-on-site-less.csv", again("Qty on site", "2:2 3:0"), 2, 0, 0, 5*one, "1:Qty on site"),
		csvFile("ordinary-revised-on-site.csv", again("Revised qty on site", "2:2 2:3"), 2, 0, 0, 4*one, "1:Revised qty on site"),
		csvFile("ordinary-delivered-later.csv", "Mark,Kind,Size,Length,Qty,Qty delivered\n"+strings.Repeat("D,Straight,600x400,1500,2,2\n", 45)+"D,Straight,600x400,1500,2,1\n", 45, 0, 1, 90*one, "47:Qty delivered"),
		csvFile("ordinary-ordered-delivered.csv", strings.Replace(again("Qty delivered", "2:2"), "Qty,", "Qty ordered,", 1), 1, 0, 0, one, "1:Qty ordered 1:Qty delivered"),
		csvFile("ordinary-sets.csv", again("Sets", "2:2 1:1"), 2, 0, 0, 3*one, "1:Sets"),
		csvFile("ordinary-words.csv", again("", "two: one: twelve:"), 3, 0, 0, 15*one, "", "quantities in words"),
		csvFile("ordinary-worte.csv", "Pos;Art;Breite;Höhe;Länge;Anzahl\n1;Kanal;600;400;1500;zwei\n2;Kanal;600;400;1500;fünf Stück\n3;Kanal;600;400;1500;2 (zwei)\n", 3, 0, 0, 9*one, "", "quantities in words"),
		csvFile("ordinary-mots.csv", "Repère;Pièce;Largeur;Hauteur;Longueur;Quantité\n1;Conduit droit;600;400;1500;deux\n2;Conduit droit;600;400;1500;une\n", 2, 0, 0, 3*one, "", "quantities in words"),
		csvFile("ordinary-words-doubtful.csv", "Tag,Kind,Size,Length,Qty\n1,Straight,600x400,1500,two?\n2,Straight,600x400,1500,two or three\n3,Straight,600x400,1500,two dozen\n4,Straight,600x400,1500,two (3)\n5,Straight,600x400,1500,-two\n6,Straight,two,1500,1\n7,Straight,600x400,1500,pair\n", 0, 0, 7, 0, "2:Qty 3:Qty 4:Qty 5:Qty 6:Qty 7:Size 8:Qty"),
	}
}

// uglyBends are bends of which their plane, their hand or their vanes are said. A radius bend is
// its girth along its centre line, whichever side lies in its plane; one with an inside radius
// isn't, and a mitre is two straights that end at half of that side.
func uglyBends() []ugly {
	bend, mitred := 2*(.6+.4)*.5*math.Pi/2, 2*(.6+.4)*.6
	rows := func(radius string, kinds ...string) string {
		out := "Tag,Kind,Width,Height,Angle," + radius + "\n"
		for i, k := range kinds {
			out += string(rune('A'+i)) + "," + k + "\n"
		}
		return out
	}
	return []ugly{
		csvFile("ordinary-bends.csv", rows("Radius mm", "vertical bend,600,400,90,500", "Bend 90° horizontal,600,400,,500", "bend left,600,400,90,500", "90° bend RH with turning vanes,600,400,,500", "Bogen senkrecht,600,400,90,500"), 5, 0, 0, 5*bend, ""),
		csvFile("ordinary-bends-mitred.csv", rows("Radius mm", "Mitred bend 90 degree with vanes,600,400,,", "mitre bend LH,600,400,90,"), 2, 0, 0, 2*mitred, ""),
		csvFile("ordinary-bends-square.csv", rows("Throat", "vertical bend,500,500,90,250"), 1, 0, 0, 2*(.5+.5)*.5*math.Pi/2, ""),
		csvFile("ordinary-bends-throat.csv", rows("Throat", "vertical bend,600,400,90,200", "horizontal bend,600,400,90,200"), 1, 0, 1, bend, "2:plane"),
		csvFile("ordinary-bends-upright-mitre.csv", rows("Radius mm", "vertical mitre bend,600,400,90,"), 0, 0, 1, 0, "2:plane"),
		csvFile("ordinary-bends-both-hands.csv", rows("Radius mm", "Bend LH/RH,600,400,90,500", "left and right bend,600,400,90,500", "vertical duct,600,400,,", "LH duct,600,400,,", "bend 90° R300,600,400,,"), 0, 0, 5, 0, "2:kind 3:kind 4:kind 5:kind 6:radius_mm"),
	}
}

// uglyTotalsOnTop are totals above the rows that they sum up.
func uglyTotalsOnTop() []ugly {
	const heads, one, two = "Tag,Kind,Size,Length,Qty,Stated area m2\n", "1,Straight,600x400,1500,2,6\n", "2,Straight,500x300,1200,1,1.92\n"
	a, b := 2*rect(.6, .4, 1.5), rect(.5, .3, 1.2)
	return []ugly{
		csvFile("ordinary-total-above-heads.csv", "Total 234.5 m2\n"+heads+one+two, 2, 0, 0, a+b, "", "'Total 234.5 m2'"),
		csvFile("ordinary-total-first.csv", heads+"Total,,,,3,7.92\n"+one+two, 2, 1, 0, a+b, "", "it gives 7.92 m2, the rows below come to 7.92 m2: they agree"),
		csvFile("ordinary-total-first-differs.csv", heads+"Total,,,,3,9.92\n"+one+two+"Total,,,,3,7.92\n", 2, 2, 0, a+b, "", "it gives 9.92 m2, but the rows below come to 7.92 m2: they differ", "it gives 7.92 m2, the rows above come to 7.92 m2: they agree"),
		csvFile("ordinary-total-first-of-each.csv", heads+"Level 1,,,,,\nTotal,,,,2,6\n"+one+"Level 2,,,,,\nTotal,,,,1,1.92\n"+two+"All,,,,,7.92\n", 2, 2, 1, a+b, "8:kind", "the rows below come to 6.00 m2: they agree", "the rows below come to 1.92 m2: they agree"),
		csvFile("ordinary-total-of-none.csv", heads+"Level 1,,,,,\n"+one+"Total,,,,2,6\nLevel 2,,,,,\nTotal,,,,,0\n", 1, 2, 0, a, "", "it gives 0.00 m2, the rows above come to 0.00 m2: they agree"),
	}
}
