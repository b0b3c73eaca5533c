package schedule_test

// uglyFooters are lists with lines that are no pieces: below the last piece, of prices, over the
// items of a bill; and such lines as bear on what counts.
func uglyFooters() []ugly {
	const heads, de = "Tag,Description,Width (mm),Height (mm),Length (mm),Qty\n", "Pos;Bezeichnung;Breite (mm);Höhe (mm);Länge (mm);Anzahl\n"
	const row, zeile = "A1,Straight duct,600,400,1500,2\n", "1;Kanal;600;400;1500;2\n"
	two := 2 * rect(.6, .4, 1.5)
	lone := func(name, line string) ugly {
		return csvFile(name, heads+row+"\n"+line+"\n", 1, 0, 0, two, "", "remarks among the rows passed over")
	}
	asked := func(name, line, faults string) ugly {
		return csvFile(name, heads+row+line+"\n", 1, 0, 1, two, faults)
	}
	return []ugly{
		lone("line-galvanised.csv", "All parts galvanised,,,,,"), lone("line-not-for-resale.csv", "NOT FOR RESALE"),
		lone("line-measured-on-site.csv", "Measured on site 3rd & 4th June"), lone("line-cells.csv", "dims per cell"),
		lone("line-valid.csv", "Prices are valid for 30 days."), lone("line-page.csv", "- 2 -"), lone("line-to-check.csv", "All sizes to be checked on site before manufacture"),
		csvFile("line-signed.csv", de+zeile+"\naufgestellt: 14.03.2025;;;i.A. Brenner\n", 1, 0, 0, two, "", "remarks among the rows passed over"),
		csvFile("line-before-total.csv", de+zeile+"Alle Teile verzinkt, Rahmen 30 mm\n* Dichtheitsklasse C nach Leistungsverzeichnis\nGesamt: 2 Stück\n", 1, 1, 0, two, "", "remarks among the rows passed over"),
		csvFile("line-between-tables.csv", heads+row+"Joints sealed with mastic\n\n"+heads+"B1,Straight duct,600,400,1500,1\n", 2, 0, 0, 1.5*two, "", "the first 'Joints sealed with mastic'"),
		csvFile("line-tongues.csv", de+zeile+"Relevé le 04/02/2025 par équipe 2\nUppmätt på plats 12/3 av Lindgren\nOpgemeten door Jansen op 12-3\nMedido en obra el 12/03/2025\nRilevato in cantiere il 12/03/2025\nKanäle nach DIN EN 1507, Dichtheitsklasse C\nTutti i canali in lamiera zincata\n", 1, 0, 0, two, ""),
		csvFile("line-prices.csv", "Tag,Kind,Width (mm),Height (mm),Length (mm),Qty,Price\nA1,Straight,600,400,1500,2,120.00\n,Net,,,,,120.00\n,VAT 20%,,,,,24.00\n,Packing and carriage,,,,1,15.00\n,Discount 5 %,,,,,-6.00\n,,,,,Gross,153.00\n", 1, 0, 0, two, "", "lines of prices or weights passed over"),
		csvFile("line-preise.csv", "Pos;Bezeichnung;Breite (mm);Höhe (mm);Länge (mm);Anzahl;Preis\n1;Kanal;600;400;1500;2;120,00\nNetto;;;;;;120,00\nzzgl. 19% MwSt.;;;;;;22,80\nFracht;;;;;;15,00\nabzgl. 2 % Skonto;;;;;;-3,00\nGesamtgewicht;;;;;412 kg;\n", 1, 0, 0, two, "", "lines of prices or weights passed over"),
		csvFile("line-bill.csv", "Item,Description,Unit,Qty\n1,DUCTWORK,,\n1.1,\"Rectangular galvanised straight duct, sizes in mm\",,\n1.1.1,Straight duct 600 x 400,m,3\n1.1.2,Straight duct 600 x 400,m,1.5\n", 2, 0, 0, 1.5*two, ""),
		csvFile("line-lv-title.csv", "Pos;Bezeichnung;Breite (mm);Höhe (mm);Länge (mm);Anzahl\n01.02;Lüftungskanäle;;;;\n01.02.0010;Kanal;600;400;1500;2\n", 1, 0, 0, two, "", "names of groups of rows passed over"),
		csvFile("line-number-of-a-piece.csv", heads+"7,Straight duct,,,,\n8,Straight duct,600,400,1500,2\n", 1, 0, 1, two, "2:shape 2:length_mm"),
		asked("line-forget-it.csv", "la 2 lasciatela perdere", "3:"), asked("line-wider-now.csv", "PS number 3 wants to be 550 across now", "3:"),
		asked("line-last-one.csv", "client took the last one off us", "3:"), asked("line-half.csv", "Quantities for half the building", "3:"),
		asked("line-thrice.csv", "das Ganze dreimal", "3:"), csvFile("line-allowance.csv", heads+row+"Add 10% to all lengths\n", 1, 0, 0, two, "3:"), asked("line-homes.csv", "par logement", "3:"),
		asked("line-bend.csv", "Bend 600x400", "3:"), asked("line-size.csv", "500 x 300", "3:"), asked("line-outside.csv", "Dimensions extérieures", "3:"), asked("line-lining.csv", "Sizes include 25 mm lining", "3:"),
		asked("line-spiral.csv", "\"Spiral 160, 12 m\"", "3:"), csvFile("line-middle.csv", heads+row+"Joints sealed\nA3,Straight duct,600,400,1500,1\n", 2, 0, 1, 1.5*two, "3:"),
		csvFile("line-as-supply.csv", heads+row+"Return as supply\n", 1, 0, 0, two, "3:"), csvFile("line-plus-fittings.csv", heads+row+"plus fittings\n", 1, 0, 0, two, "3:"),
		csvFile("line-doubled-above.csv", "Alle Stückzahlen doppelt\n"+de+zeile, 1, 0, 0, two, "1:"),
		csvFile("line-law-above.csv", "Rundungsdifferenzen möglich\nIrrtum vorbehalten\nErrors and omissions excepted\n"+de+zeile, 1, 0, 0, two, ""),
	}
}
