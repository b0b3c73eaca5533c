package schedule_test

import "math"

// uglyDescribed are lists whose descriptions say more of a piece than its kind: figures whose
// meaning is plain are read, others asked about.
func uglyDescribed() []ugly {
	one, other := rect(.6, .4, 1.5), rect(.5, .3, 1.25)
	cone := math.Pi * (.2 + .1575) * math.Hypot(.18, .2-.1575) // 400 to 315 over 180
	const sizes = "Tag,Description,W (mm),H (mm),L (mm)\n"
	return []ugly{
		csvFile("said-gauge-and-class.csv", sizes+"1,GI Duct 24G,600,400,1500\n2,GI duct 0.8mm,600,400,1500\n3,\"Straight duct, 0.8 mm, class C\",600,400,1500\n4,Duct 22 SWG,600,400,1500\n5,Straight duct c/w access door,600,400,1500\n6,Gaine galva droite,600,400,1500\n7,Raklängd,600,400,1500\n8,Kanal gerade mit Revisionsdeckel,600,400,1500\n", 8, 0, 0, 8*one, ""),
		csvFile("said-more-than-a-duct.csv", sizes+"1,Duct A,600,400,1500\n2,Duct with end cap,600,400,1500\n3,Straight duct with 200 dia spigot,600,400,1500\n4,Duct c/w spigot,600,400,1500\n", 0, 0, 4, 0, "2:kind 3:kind 4:kind 5:kind"),
		csvFile("said-lined.csv", "Tag,Description,W (mm),H (mm),L (mm),lining_mm,size_is\n1,\"Straight duct, lined\",600,400,1500,,\n2,Lined duct,600,400,1500,25,metal\n", 1, 0, 1, one, "2:lining_mm"),
		csvFile("said-whole-piece.csv", "Item,Description,Qty\n1,Straight duct 600x400x1500,4\n2,Kanal 600x400 L=1500,1\n3,\"Rohr DN 250, 3000 mm\",2\n4,\"Straight duct 600x400, 1500 long\",1\n5,Kanal 600/400 L=1500,1\n6,Ø315 spiral duct 3000 lg,1\n7,Duct 600x400x1.5 m,1\n",
			7, 0, 0, 8*one+2*round(.25, 3)+round(.315, 3), ""),
		csvFile("said-three-figures.csv", "Item,Description,Length (mm),Qty\n1,Straight 1500x600x400,,1\n2,Straight 600x400x25,,1\n3,Reducer 600x400x300,,1\n4,3 no. straight duct 600x400x1500,,1\n5,Rohr 250/3000,,1\n6,Duct 600x400x1500 (4 off),,1\n7,\"Duct 600x400, 25 mm\",,1\n", 0, 0, 7, 0, "2:kind 3:kind 4:kind 5:kind 6:kind 7:kind 8:kind"),
		csvFile("said-length-twice.csv", "Pos,Kind,Length (mm)\n1,Straight 500x300x1250,1250\n2,Straight 500x300x1250,1500\n3,\"Straight 500x300, 1250 long\",1250\n", 2, 0, 1, 2*other, "3:Kind"),
		csvFile("said-angle-and-radius.csv", "Pos,Description,W (mm),H (mm),Throat (mm)\n1,Codo 90º,600,400,150\n2,coude à 90°,600,400,150\n3,90° radius bend R150,600,400,\n4,90° radius bend R300,600,400,\n5,Mitred bend with vanes 90°,600,400,\n",
			4, 0, 1, 3*2*.45*math.Pi/2+2*.6, "5:radius_mm"), // the mitre: both legs are half the width long on the centre line
		csvFile("said-eccentric.csv", "Pos,Kind,D1 (mm),D2 (mm),L (mm),Offset (mm)\n1,Eccentric reducer,400,315,180,\n2,Ecc. reducer,400,315,180,0\n3,Exzentrische Reduzierung,400,315,180,\n4,Concentric reducer,400,315,180,\n", 2, 0, 2, 2*cone, "2:offset_mm 4:offset_mm"),
		csvFile("slash-by-kind.csv", "No,Type,Size (mm),Length (mm)\n1,Spiral duct,400,3000\n2,Concentric reducer,400/315,180\n3,Reducer,400-315,180\n4,Spiral duct,400/315,3000\n", 3, 0, 1, round(.4, 3)+2*cone, "5:Size (mm)", "sizes of reducers with a stroke"),
		csvFile("slash-of-straights.csv", "Pos;Bezeichnung;Abmessung (mm);Länge (mm)\n1;Kanal;500/300;1250\n2;Reduzierung;500/300;180\n3;Rohr;Ø 315;3000\n", 2, 0, 1, other+round(.315, 3), "3:Abmessung (mm)", "sizes of straights with a stroke"),
		csvFile("slash-said.csv", "Pos,Description,Length (mm)\n1,Verloop 400-315,180\n2,Concentric reducer 400/315,180\n3,\"Spiral duct, 400\",3000\n", 3, 0, 0, 2*cone+round(.4, 3), "", "sizes of reducers with a stroke"),
		csvFile("slash-said-of-both.csv", "Pos,Description,Length (mm)\n1,Kanal 500/300,1250\n2,Reduzierung 500/300,180\n", 1, 0, 1, other, "3:Description"),
		csvFile("slash-of-diameters.csv", "Pos;Teil;DN;Länge (mm)\n1;Rohr;315;3000\n2;T-Stück;315/200;400\n3;Reduzierung;400/315;180\n", 2, 0, 1, round(.315, 3)+cone, "3:DN"),
		csvFile("kind-as-above.csv", "Drawing,Item,Size (mm),Length (mm)\n1,Straight,600x400,1500\n2,do,600x400,1500\n3,dto.,600x400,1500\n,Level 2,,\n4,do.,600x400,1500\n", 3, 0, 1, 3*one, "6:Item", "kinds as that of the row above"),
	}
}

// uglyLines are lines that are no pieces: names of places and parts, of kinds and shapes,
// things that are no ductwork, numbers that stand for nothing.
func uglyLines() []ugly {
	one := rect(.6, .4, 1.5)
	const head, piece = "Drawing,Type,W (mm),H (mm),L (mm)\n", "S,Straight,600,400,1500\n"
	return []ugly{
		csvFile("line-of-places.csv", head+"Plant room,,,,\n"+piece+"Riser 1,,,,\n"+piece+"Zone A,,,,\n"+piece+"External,,,,\n"+piece+"Batch 3,,,,\n"+piece, 5, 0, 0, 5*one, "", "lines that name a place or a part passed over"),
		csvFile("line-of-doubt.csv", head+"Low pressure,,,,\n"+piece+"Riser 1-4,,,,\n"+piece+"Insulated,,,,\n"+piece+"Zones A and B,,,,\n"+piece+"Batch of 4,,,,\n"+piece, 5, 0, 5, 5*one, "2: 4: 6: 8: 10:"),
		csvFile("line-existing-holds-on.csv", head+"Existing,,,,\n"+piece+"Zone A,,,,\n"+piece, 0, 0, 2, 0, "2: 3: 5:"),
		csvFile("line-of-system-and-level.csv", head+"Zuluft EG,,,,\n"+piece+"Abluft 2. OG,,,,\n"+piece+"AHU 2 roof,,,,\n"+piece, 3, 0, 1, 3*one, "6:", "the level of 4 rows is taken", "the system of 4 rows is taken"),
		csvFile("line-of-kinds.csv", head+"Straight duct,,,,\n"+piece+"End cap,,,,\nE,End cap,600,400,\nBend,,,,\n"+piece, 3, 0, 1, 2*one+.24, "6:", "names of groups of rows passed over"),
		csvFile("line-of-kinds-alone.csv", "Ref,Size (mm),Length (mm)\nStraight duct,,\nA,600x400,1500\nBends,,\nB,600x400,900\nFittings,,\nC,600x400,900\n", 1, 0, 2, one, "5:angle_deg 5:radius_mm 7:kind"),
		csvFile("line-of-shapes.csv", head+"RECTANGULAR,,,,\n"+piece+"CIRCULAR,,,,\n"+piece, 1, 0, 1, one, "5:shape"),
		csvFile("no-ductwork-of-ducts.csv", "Item,Description,Unit,Qty\n1,Rectangular duct 600x400,m,1.5\n2,Testing of ductwork,item,1\n3,Duct insulation 25mm,m2,40\n4,Duct hangers,no,16\n5,Painting of ductwork,m2,3\n6,Insulation to duct 600x400,m2,3\n7,Linear grille,no,2\n",
			1, 6, 0, one, "", "rows of what is no ductwork left out, the first 'Testing of ductwork'"),
		csvFile("no-ductwork-or-duct.csv", head+"1,Duct with hangers,600,400,1500\n2,\"Duct, insulation 25\",600,400,1500\n3,Installation of duct,600,400,1500\n4,Supply duct AHU 1,600,400,1500\n5,Fan duct,600,400,1500\n6,Insulated duct,600,400,1500\n", 1, 0, 5, one, "2:kind 3:kind 4:kind 5:kind 6:kind"),
		csvFile("numbers-not-used.csv", head+piece+"2,NOT USED,,,\n3,Spare,,,\n4,Reserved,,,\n5,-,-,-,-\n6,NOT USED,600,400,1500\n", 1, 0, 1, one, "7:kind", "rows without figures that stand for nothing passed over, the first 'NOT USED'"),
	}
}
