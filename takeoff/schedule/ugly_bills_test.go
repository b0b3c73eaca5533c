package schedule_test

import "math"

// flatOval is the outside surface of a flat-oval straight, m2: two half circles and two flat sides.
func flatOval(a, b, l float64) float64 { return (math.Pi*b + 2*(a-b)) * l }

// uglyBills are bills, orders, delivery notes and site sheets as offices write them.
func uglyBills() []ugly {
	one, two := rect(.6, .4, 1.5), rect(.5, .3, 1.2)
	const left = "what is no ductwork left out"
	return []ugly{
		csvFile("bills-eh.csv", "Pos.;Kurztext;Menge;EH;EP;GP\n1;Kanal verz. 600x400;3,00;m;;\n2;Wickelfalzrohr Ø250;17,50;m;;\n", 2, 0, 0, 2*one+round(.25, 17.5), ""),
		csvFile("bills-art-u.csv", "Art.;Désignation;U;Quantité;PU;Montant\n4.1;Gaine galvanisée rectangulaire 600x400;m;3,00;;\n4.2;Conduit spiralé Ø200;m;41,50;;\nTVA 20 %;;;;;\n", 2, 0, 0, 2*one+round(.2, 41.5), ""),
		csvFile("bills-long-in-text.csv", "Line,Description,Pcs,kg\n1,\"GI duct 600x400, 1500 long\",2,73.2\n2,\"GI duct 500x300, 1200 long\",1,12\n", 2, 0, 0, 2*one+two, ""),
		csvFile("bills-gauge-in-text.csv", "Código,Descripción,Medidas,Long. (m),Cant.\nC1,Conducto rectangular chapa 0.8,600 x 400,1.5,2\nC2,Conducto rectangular chapa de 0.7 mm,500 x 300,1.2,1\n", 2, 0, 0, 2*one+two, ""),
		csvFile("bills-tenths.csv", "Rep.;Désignation;Section;Long. mm;Nb\n1;Gaine rectangulaire ép. 0,8 mm;600x400;1500;2\n2;Gaine rectangulaire ép 8/10;500x300;1200;1\n", 2, 0, 0, 2*one+two, ""),
		csvFile("bills-reducer-tenths.csv", "Tag;Kind;Length (mm)\n1;Reducer 12/10;300\n", 0, 0, 1, 0, "2:diameter_mm"),
		csvFile("bills-galvanised-behind.csv", "Item,Product,Length mm,Qty\n1,Spiral duct Ø315 galvanised Z275,3000,4\n2,Rect. duct 600x400 galv.,1500,2\n", 2, 0, 0, 4*round(.315, 3)+2*one, ""),
		csvFile("bills-supply-and-install.csv", "Item,Description,Qty,Unit,Rate\n1,Supply and install rectangular duct 600x400,3,m,40\n2,Supply and fix spiral duct Ø315,12,m,25\n", 2, 0, 0, 2*one+round(.315, 12), ""),
		csvFile("bills-supply-only-grilles.csv", "Item,Description,Size,Length,Qty\n1,Supply and install duct,600x400,1500,2\n2,Supply and install widget,600x400,1500,1\n", 1, 0, 1, 2*one, "3:kind"),
		csvFile("bills-pick-list.csv", "Bin,Item,Size,Length,Pick qty,Picked\nR1,Duct,600x400,1500,2,\nR2,Duct,500x300,1200,1,\n", 2, 0, 0, 2*one+two, ""),
		csvFile("bills-size-like-steel.csv", "Tag,Kind,Length\nT1,Straight 316 x 304,1500\nT2,Straight inox 304 600x400,1500\n", 2, 0, 0, rect(.316, .304, 1.5)+one, ""),
		csvFile("bills-ends-in-text.csv", "Description;Size;Length (mm);Qty\nRectangular duct, galv., flanged both ends;600x400;1500;2\nSpiral duct, plain ends;Ø315;3000;4\nRectangular duct, one end closed;500x300;1200;1\n", 2, 0, 1, 2*one+4*round(.315, 3), "4:kind"),
		csvFile("bills-kinds-once-systems.csv", "System,Kind,Width,Height,Length,Qty\nS1,straight,600,400,1500,2\n,,500,300,1200,1\nS2,straight,600,400,1500,1\n,,500,300,1200,1\nS3,straight,500,300,1200,1\n,,600,400,1500,1\n", 6, 0, 0, 4*one+3*two, ""),
		csvFile("bills-kinds-missing.csv", "System,Kind,Width,Height,Length,Qty\nS1,straight,600,400,1500,2\nS1,,500,300,1200,1\nS2,straight,600,400,1500,1\nS2,,500,300,1200,1\n", 2, 0, 2, 3*one, "3:kind 5:kind"),
		csvFile("bills-number-stueck.csv", "Mark / Pos;Width / Breite mm;Height / Höhe mm;Length / Länge mm;Number / Stück\nR1;600;400;1500;2\nR2;500;300;1200;3\n", 2, 0, 0, 2*one+3*two, ""),
		csvFile("bills-consumables.csv", "Artikel;Maat;Lengte mm;Aantal\nSpirobuis;Ø315;3000;1\nSpirobuis;Ø315;3000;2\nSpirobuis;Ø315;3000;1\nOphangbeugel Ø250;;;12\nDoos parkers 4,2x13;;;2\nSealant cartridge 310 ml;;;6\nRolle Aluklebeband;;;2\nBoîte de vis autoforeuses;;;2\nLåda borrskruv;;;1\nCaja de tornillos;;;1\nScatola di viti autoforanti;;;1\n", 3, 8, 0, 4*round(.315, 3), "", left),
		csvFile("bills-box-of-ducts.csv", "Article,Size,Length,Qty\nSpiral duct,Ø315,3000,1\nSpiral duct,Ø315,3000,2\nSpiral duct,Ø315,3000,2\nBox of spiral ducts,Ø315,3000,1\n", 3, 0, 1, 5*round(.315, 3), "5:kind"),
		csvFile("bills-mass-1-2.csv", "Raum;Form;Maß 1;Maß 2;Länge;Anzahl\n;;mm;mm;mm;Stk\n0.01;eckig;600;400;1500;2\n0.02;rund;315;;3000;1\n0.03;eckig;500;300;1200;1\n", 3, 0, 0, 2*one+round(.315, 3)+two, ""),
		csvFile("bills-mass-1-2-both.csv", "Raum;Form;Maß 1;Maß 2;Länge;Anzahl\n0.01;eckig;600;400;1500;2\n0.02;rund;315;3000;900;1\n", 0, 0, 2, 0, "2:kind 3:kind"),
		csvFile("bills-oval-title.csv", "Ovalrohre Kongresszentrum\nPos;BxH;Länge mm;Stück\nO1;400x200;1000;2\n", 1, 0, 0, 2*flatOval(.4, .2, 1), "", "read as flat oval"),
		csvFile("bills-oblong-title.csv", "Gaines oblongues bâtiment B\nRep;LxH;Longueur mm;Nb\nO1;400x200;1000;2\n", 1, 0, 0, 2*flatOval(.4, .2, 1), "", "read as flat oval"),
		csvFile("bills-oval-and-more.csv", "Ovalrohre und Kanäle\nPos;BxH;Länge mm;Stück\nO1;400x200;1000;2\n", 0, 0, 1, 0, "3:shape"),
		csvFile("bills-per-storey.csv", "Riser 1 - straight lengths per storey\nStorey,Size mm,Length mm,Qty\nGF,600x400,1500,2\nL1,500x300,1200,1\n", 2, 0, 0, 2*one+two, ""),
		csvFile("bills-per-storey-of-one.csv", "Riser 1 - straight lengths per storey\nStorey,Size mm,Length mm,Qty\nL1,600x400,1500,2\nL1,500x300,1200,1\n", 2, 0, 0, 2*one+two, "1:"),
		csvFile("bills-sign.csv", "Tag,Size,Length,Qty,Sign\nE1,600x400,1500,2,AB\nE2,500x300,1200,1,J.K.\n", 2, 0, 0, 2*one+two, ""),
		csvFile("bills-sign-negative.csv", "Tag,Kind,Size,Length,Qty,Sign\nE1,Straight,600x400,1500,2,negative\nE2,Straight,500x300,1200,1,AB\n", 1, 0, 1, 2*one, "3:sign"),
		csvFile("bills-signed-below.csv", "SITE MEASURE SHEET,,,No. 14,\nNo,Location,Size (mm),Length (m),Checked\n1,Grid A3,600x400,1.5,ok\n2,Grid B4,500x300,1.2,ok\n,,,,\nMeasured by:,,J. Foreman,,\nDate:,,2026-07-03,,\n", 2, 0, 0, one+two, ""),
		csvFile("bills-ordered.csv", "Art.nr;Artikel;Afm.;Lengte;Besteld;Levering\n1;Kanaal;600x400;1500;2;wk 22\n2;Kanaal;500x300;1200;1;wk 22\n", 2, 0, 0, 2*one+two, "", "is read as quantity"),
		csvFile("bills-ordered-delivered.csv", "Line,Qty ordered,Qty delivered,Size,Length\n1,2,1,600x400,1500\n2,1,1,500x300,1200\n", 2, 0, 0, one+two, "1:Qty ordered 1:Qty delivered"),
	}
}
