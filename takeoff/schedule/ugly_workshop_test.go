package schedule_test

import "math"

// uglyWorkshop are lists in the words of a workshop, and in forms of its own.
func uglyWorkshop() []ugly {
	one, spiral, cap := rect(.6, .4, 1.5), round(.315, 3), .6*.4
	bend := 2 * (.6 + .4) * math.Pi / 2 * .5 // girth times a quarter of a circle of the centre line
	const apart = "rows of what is no ductwork left out"
	return []ugly{
		csvFile("workshop-en.csv", "Tag,Kind,Size (mm),Length (mm),radius_mm,Qty\n1,Rigid ducting,600x400,1500,,2\n2,Spirally-wound circular duct,Ø315,3000,,1\n3,Pressed bend 90°,600x400,,500,1\n4,Blanking flange,600x400,,,1\n5,Trapeze hanger,,,,9\n",
			4, 1, 0, 2*one+spiral+bend+cap, "", apart),
		csvFile("workshop-de.csv", "Pos;Formteil;Abmessung mm;Länge mm;Mittelradius mm;Stück\n1;Luftkanal rechteckig, gerade;600x400;1500;;2\n2;Wickelfalzr. verzinkt;Ø315;3000;;1\n3;Bog. 90°;600x400;;500;1\n4;Blindflansch;600x400;;;1\n5;Gewindestange M8;;;;9\n",
			4, 1, 0, 2*one+spiral+bend+cap, "", apart),
		csvFile("workshop-fr.csv", "Rep;Désignation;Section mm;Longueur mm;Angle;Rayon axe mm;Qté\n1;Gaine rectangulaire rigide;600x400;1500;;;2\n2;Gaine circulaire spiralée;Ø315;3000;;;1\n3;Coude lisse;600x400;;90;500;1\n4;Bride pleine;600x400;;;;1\n5;Tige filetée M8;;;;;9\n",
			4, 1, 0, 2*one+spiral+bend+cap, "", apart),
		csvFile("workshop-nl.csv", "Pos;Hulpstuk;Afmeting mm;Lengte mm;Aantal\n1;Rechthoekige luchtkanalen;600x400;1500;2\n2;Spiraalgefelsde buis;Ø315;3000;1\n3;Blindflens;600x400;;1\n4;Draadeind M8;;;9\n",
			3, 1, 0, 2*one+spiral+cap, "", apart),
		csvFile("workshop-sv.csv", "Pos;Detalj;Dimension mm;Längd mm;Antal\n1;Rakkanal rekt.;600x400;1500;2\n2;Cirkulära kanaler;Ø315;3000;1\n3;Blindfläns;600x400;;1\n4;Gängstång M8;;;9\n",
			3, 1, 0, 2*one+spiral+cap, "", apart),
		csvFile("workshop-es.csv", "Pos;Elemento;Dimensiones mm;Longitud mm;Cantidad\n1;Conductos rectangulares;600x400;1500;2\n2;Conducto circular helicoidal;Ø315;3000;1\n3;Brida ciega;600x400;;1\n4;Varilla roscada M8;;;9\n",
			3, 1, 0, 2*one+spiral+cap, "", apart),
		csvFile("workshop-it.csv", "Pos;Descrizione;Dimensioni mm;Lunghezza mm;Quantità\n1;Canali rettilinei;600x400;1500;2\n2;Canale circolare spiroidale;Ø315;3000;1\n3;Flangia cieca;600x400;;1\n4;Barra filettata M8;;;9\n",
			3, 1, 0, 2*one+spiral+cap, "", apart),
		csvFile("workshop-styles.csv", "tag,kind,style,diameter_mm,diameter2_mm,length_mm,offset_mm\n1,duct,spiral,400,,3000,\n2,taper,concentric,400,400,300,\n3,taper,conical,400,400,300,\n4,taper,eccentric,400,400,300,0\n5,taper,eccentric,400,315,300,\n6,taper,floor level,400,400,300,\n7,bend,concentric,400,,,\n",
			4, 0, 3, round(.4, 3)+3*round(.4, .3), "6:offset_mm 7:style 8:style", "styles of reducers and transitions"),
		csvFile("workshop-mail.txt", "Hi Sam,\nhere is the list.\n\nTag\tSize\tLength mm\tQty\n21\t600x400\t1500\t2\n\nKind regards,\n\nJo Miller\n", 1, 0, 0, 2*one, "", "'Jo Miller'"),
		csvFile("workshop-mail-fr.txt", "Bonjour,\nvoici la liste.\n\nRepère;Dimensions;Longueur mm;Qté\n1;600x400;1500;2\n\nCordialement\n", 1, 0, 0, 2*one, "", "'Cordialement'"),
		csvFile("workshop-mail-more.txt", "Tag\tKind\tSize\tLength mm\tQty\n21\tduct\t600x400\t1500\t2\n\nThanks\nJo\nforget the first one\nOmit Number One\nDuct\n", 1, 0, 3, 2*one, "6: 7: 8:"),
		csvFile("workshop-mail-between.txt", "Tag\tKind\tSize\tLength mm\tQty\n21\tduct\t600x400\t1500\t2\nThanks\nJo\n22\tduct\t600x400\t1500\t2\n", 2, 0, 2, 4*one, "3: 4:"),
		csvFile("workshop-spaces.txt", "Duct list, level 1\n\nTag    Kind             Width    Height    Length    Qty\nA1     straight duct    600      400       1500      2\nA2     straight duct    600      400       1,500     1\n\nEnd of list\n", 1, 0, 1, 2*one, "5:Length", "the columns are parted by spaces"),
		{name: "workshop-spaces-missing.txt", data: []byte("Tag    Kind        Width    Height    Length    Qty\nA1     straight    600      400       1500      2\nA2     straight    600                1500      1\n"), fails: "has no heading row"},
		csvFile("workshop-one-column.txt", "Description\nStraight duct 600x400x1500\nStraight duct 600x400x1500\nSpiral duct Ø315 x 3000\n", 3, 0, 0, 2*one+spiral, "", "column 'Description' is read as kind"),
		csvFile("workshop-one-column-doubts.txt", "Description\nStraight duct 600x400x1500\nStraight duct 600x400x1500\nStraight duct 500x300x1500 no wait not that one\nStraight duct 600x400x1500\nStraight duct 600x400x1500\nBend 600x400\nStraight duct 600x400x1500 twice\n", 4, 0, 3, 4*one, "4:kind 7:angle_deg 7:radius_mm 8:kind"),
		{name: "workshop-one-column-words.txt", data: []byte("Description\nStraight duct\nBend\n"), fails: "has no heading row"},
		csvFile("workshop-once.csv", "Bauteil;Breite mm;Höhe mm;Länge mm;Anzahl\nKanal gerade;600;400;1500;2\n;600;400;3000;1\n;600;400;1500;1\nDeckel;600;400;;1\n;600;400;;1\nKanal;600;400;1500;1\n;600;400;1500;1\n", 6, 0, 1, 7*one+cap, "6:kind", "kinds that stand once above their rows"),
		csvFile("workshop-once-slip.csv", "Tag,Kind,Width mm,Height mm,Length mm\n1,duct,600,400,1500\n2,duct,600,400,1500\n3,,600,400,1500\n4,,600,400,1500\n5,,600,400,1500\n", 2, 0, 3, 2*one, "4:kind 5:kind 6:kind"),
		csvFile("workshop-once-again.csv", "Kind,Width (mm),Height (mm),Length (mm),Qty\nstraight,600,400,1500,2\n,600,400,1200,1\n,600,400,2700,3\nstraight,300,300,1500,2\n", 2, 0, 2, 2*one+2*rect(.3, .3, 1.5), "3:kind 4:kind"),
		csvFile("workshop-once-sum.csv", "Kind,Width (mm),Height (mm),Length (mm),Qty\nstraight,600,400,1500,2\n,600,400,1200,1\n,600,400,2700,3\n", 2, 0, 1, 2*one+rect(.6, .4, 1.2), "4:kind"),
		csvFile("workshop-once-few.csv", "Tag,Kind,Width mm,Height mm,Length mm\n1,duct,600,400,1500\n2,,600,400,1500\n3,cap,600,400,\n", 2, 0, 1, one+cap, "3:kind"),
		csvFile("workshop-once-fitting.csv", "Tag,Kind,Width mm,Height mm,Length mm,Remark\n1,duct,600,400,1500,\n2,,600,400,1500,elbow\n3,,600,400,1500,\n4,,600,400,1500,\nLevel 2,,,,,\n5,,600,400,1500,\n", 1, 0, 4, one, "3:kind 4:kind 5:kind 7:kind"),
		csvFile("workshop-doubtful.csv", "Tag,Kind,Size (mm),Length (mm)\n1,Duct,600x400,1500\n2,Y-Stück,600x400,500\n3,Double offset,600x400,500\n4,Reducing bend,600x400,\n5,Transition round to round,600x400,500\n", 1, 0, 4, one, "3:kind 4:kind 5:kind 6:kind"),
		csvFile("workshop-colours.csv", "Mark,Size (mm),Length (mm),Colour\n1,600x400,1500,Red\n2,600x400,1500,Red\n", 2, 0, 0, 2*one, "", "rows with a size and a length are read as straights"),
		csvFile("workshop-delivery.csv", "Delivery note 4471,,,,\nMark,Size (mm),Length (mm),Qty,Comment\nA1,Ø315,3000,4,spiral\nA2,Ø315,3000,1,on pallet 3\nReceived by: ..............,,,,\nSignature:,,,,\n", 2, 0, 0, 5*spiral, "", "rows with a size and a length are read as straights"),
	}
}
