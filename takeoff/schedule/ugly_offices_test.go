package schedule_test

import "math"

// uglyOffices are ordinary lists as offices head and word them: kinds under any heading, remarks
// beside straights that name what is at them, near misses of headings that bear on no area, sizes
// under titles and shapes; and those that look like them and are asked about.
func uglyOffices() []ugly {
	one, pipe := rect(.6, .4, 1.5), round(.315, 3)
	const none = "no column says what kind of piece each row is"
	const bare = "Pos,Size (mm),Length (mm),Qty,Remarks\n1,600x400,1500,1,\n2,Ø315,3000,2,"
	return []ugly{
		csvFile("office-kanal.csv", "Pos;Kanal;Breite (mm);Höhe (mm);Ø (mm);Länge (mm);Stk\n1;Rechteckkanal;600;400;;1500;2\n2;Wickelfalzrohr;;;315;3000;1\n", 2, 0, 0, 2*one+pipe, "", "column 'Kanal' is read as kind"),
		csvFile("office-artikel.csv", "Pos;Artikel;Größe (mm);Länge (mm);Stk\n1;Rechteckkanal;600x400;1500;2\n2;Wickelfalzrohr;Ø315;3000;1\nA;Tellerventil;Ø125;;6\n", 2, 1, 0, 2*one+pipe, "", "column 'Artikel' is read as kind"),
		csvFile("office-kanaaltype.csv", "Pos;Kanaaltype;Afmeting (mm);Lengte (mm);Aantal\n1;Rechthoekig kanaal;600x400;1500;2\n2;Spirobuis;Ø315;3000;1\n", 2, 0, 0, 2*one+pipe, "", "column 'Kanaaltype' is read as kind"),
		csvFile("office-clase.csv", "Pos;Clase;Medidas (mm);Longitud (mm);Cantidad\n1;Conducto rectangular;600x400;1500;2\n2;Conducto circular;Ø315;3000;1\n", 2, 0, 0, 2*one+pipe, "", "column 'Clase' is read as kind"),
		csvFile("office-two-kinds.csv", "Pos;Bezeichnung;Typ;Maß (mm);Länge (mm);Winkel;Radius Mitte (mm)\n1;Kanal;Rechteckkanal;600x400;1500;;\n2;Enddeckel;Rechteckkanal;600x400;;;\n", 2, 0, 0, one+.24, ""),
		csvFile("office-no-kind-damper.csv", bare+"fire damper by others\n", 2, 0, 0, one+2*pipe, "", none),
		csvFile("office-no-kind-flex.csv", bare+"flex at diffuser\n", 2, 0, 0, one+2*pipe, "", none),
		csvFile("office-no-kind-lid.csv", bare+"Deckel rot markiert\n", 2, 0, 0, one+2*pipe, "", none),
		csvFile("office-no-kind-after.csv", bare+"nach Bogen B3\n", 2, 0, 0, one+2*pipe, "", none),
		csvFile("office-no-kind-is-damper.csv", bare+"fire damper\n", 1, 0, 1, rect(.6, .4, 1.5), "3:kind"),
		csvFile("office-no-kind-is-bend.csv", bare+"bend with vanes\n", 1, 0, 1, rect(.6, .4, 1.5), "3:kind"),
		csvFile("office-no-kind-is-cap.csv", bare+"end cap blank off\n", 1, 0, 1, rect(.6, .4, 1.5), "3:kind"),
		csvFile("office-take-off.csv", "Duct take-off,,,\nRef,Size (mm),Length (mm),Qty\n1,600x400,1500,1\n2,Ø315,3000,2\n", 2, 0, 0, one+2*pipe, "", none),
		csvFile("office-take-offs.csv", "Take-offs,,,\nRef,Size (mm),Length (mm),Qty\n1,600x400,1500,1\n2,Ø315,300,2\n", 0, 0, 2, 0, "3:kind 4:kind"),
		csvFile("office-joints.csv", "Spiral pipe straight joints,,,\nNo.,Dia. (mm),Length (mm),Qty\n1,315,3000,1\n2,315,3000,2\n", 2, 0, 0, 3*pipe, "", "Spiral pipe straight joints"),
		csvFile("office-rad.csv", "Rad;Dim (mm);Längd (mm);Antal\n1;600x400;1500;1\n2;Ø315;3000;1\n3;Ø315;3000;1\n", 3, 0, 0, one+2*pipe, "", "column 'Rad' isn't used"),
		csvFile("office-rad-bend.csv", "Tag;Kind;Size (mm);Angle;Rad\n1;Bend;600x400;90;1\n2;Bend;600x400;90;600\n", 0, 0, 2, 0, "1:Rad 2:radius_mm 3:radius_mm"),
		csvFile("office-round-title.csv", "Spirorör, raka längder;;;\nNr;Dim (mm);Längd (mm);Antal\n1;315;3000;1\n2;315;3000;2\n", 2, 0, 0, 3*pipe, ""),
		csvFile("office-two-shapes-title.csv", "Spirorör och rektangulära kanaler;;;\nNr;Dim (mm);Längd (mm);Antal\n1;315;3000;1\n2;315;3000;2\n", 0, 0, 2, 0, "3:Dim (mm) 3:kind 4:Dim (mm) 4:kind"),
	}
}

// uglyHeadings are such headings, shapes and sizes.
func uglyHeadings() []ugly {
	one, pipe := rect(.6, .4, 1.5), round(.315, 3)
	const ducts = "1;Duct;600x400;1500;2;"
	return []ugly{
		csvFile("office-forme.csv", "Tronçon;Forme;Dimension (mm);Longueur (mm);Qté;Classe\nT1;Gaine rectangulaire;600/400;1500;1;B\nT2;Conduit spiralé;Ø315;3000;1;C\n", 2, 0, 0, one+pipe, ""),
		csvFile("office-spiral-round.csv", "Tag;Kind;Shape;Dia (mm);Length (mm)\n1;Duct;Spiral round;315;3000\n", 1, 0, 0, pipe, ""),
		csvFile("office-rect-to-round.csv", "Tag;Kind;Shape;Dia (mm);Length (mm)\n1;Duct;Rect to round;315;3000\n", 0, 0, 1, 0, "2:shape"),
		csvFile("office-ovals.csv", "Tag;Kind;Size (mm);Length (mm)\n1;Duct;ovale 500x200;1000\n2;Duct;oblong 300;1000\n", 1, 0, 1, math.Pi*.2+2*.3, "3:Size (mm)"),
		csvFile("office-rohr-dn.csv", "Pos;Bauteil;Rohr DN;Länge je Stk;Anzahl Stück\n1;Wickelfalzrohr;315;3000;2\n", 1, 0, 0, 2*pipe, ""),
		csvFile("office-cote.csv", "Repère;Élément;Cote;Long. unit. (mm);Qtés;Remarques\n1;Gaine rectangulaire;600x400;1500;2;\n2;Conduit spiralé;Ø315;3000;1;\n", 2, 0, 0, 2*one+pipe, "", "column 'Cote' is read as size"),
		csvFile("office-l-x-h.csv", "Repère;Élément;L x H;Longueur (mm);Qté\n1;Gaine rectangulaire;600x400;1500;2\n", 1, 0, 0, 2*one, "", "column 'L x H' is read as size"),
		csvFile("office-werk.csv", "Pos;Kind;Size (mm);Length (mm);Qty;Werk\n"+ducts+"1000\n", 1, 0, 0, 2*one, "", "column 'Werk' isn't used"),
		csvFile("office-depot.csv", "Tag;Kind;Size (mm);Length (mm);Qty;Dépôt\n"+ducts+"Lyon\n", 1, 0, 0, 2*one, "", "column 'Dépôt' isn't used; rename it offset_mm"),
		csvFile("office-depot-figures.csv", "Tag;Kind;Size (mm);Length (mm);Qty;Dépôt\n"+ducts+"150\n", 1, 0, 0, 2*one, "1:Dépôt"),
		csvFile("office-sytem.csv", "Tag;Kind;Size (mm);Length (mm);Qty;Sytem\n"+ducts+"AHU1\n", 1, 0, 0, 2*one, "", "column 'Sytem' isn't used; rename it system"),
		csvFile("office-sytem-deleted.csv", "Tag;Kind;Size (mm);Length (mm);Qty;Sytem\n"+ducts+"deleted\n", 0, 0, 1, 0, "2:Sytem"),
		csvFile("office-systems-both.csv", "Tag;Kind;Size (mm);Length (mm);Qty;Systems\n"+ducts+"both\n", 1, 0, 0, 2*one, "1:Systems"),
		csvFile("office-bldg.csv", "Tag;Kind;Size (mm);Length (mm);Qty;Bldg\n"+ducts+"North\n", 1, 0, 0, 2*one, ""),
		csvFile("office-bldg-two.csv", "Tag;Kind;Size (mm);Length (mm);Qty;Bldg\n"+ducts+"A and B\n", 1, 0, 0, 2*one, "1:Bldg"),
		csvFile("office-notiz.csv", "Tag;Kind;Size (mm);Length (mm);Qty;Notiz\n"+ducts+"wurde nie gebaut\n", 0, 0, 1, 0, "2:Notiz"),
		csvFile("office-qc-remark.csv", "Tag;Kind;Size (mm);Length (mm);Qty;QC remark\n"+ducts+"near door\n2;Duct;600x400;1500;1;not installed\n", 1, 0, 1, 2*one, "3:QC remark"),
		csvFile("office-modules.csv", "Tag;Kind;Size (mm);Module (mm);Modules;Length (mm);Qty\n1;Duct;600x400;500;3;1500;1\n2;Duct;600x400;750;2;1500;1\n", 2, 0, 0, 2*one, ""),
		csvFile("office-modules-not.csv", "Tag;Kind;Size (mm);Module (mm);Modules;Length (mm);Qty\n1;Duct;600x400;500;3;1500;1\n2;Duct;600x400;1500;2;1500;1\n", 2, 0, 0, 2*one, "1:Modules"),
		csvFile("office-egg-crate.csv", "Tag;Kind;Size (mm);Length (mm);Qty\n1;Duct;600x400;1500;2\n2;\"Grille, egg crate\";600x600;;1\n", 1, 1, 0, 2*one, ""),
		csvFile("office-locale-n.csv", "Pos;Elemento;Dimensioni (mm);Lunghezza (mm);Qtà;Locale n.\n1;Canale rettangolare;600x400;1500;2;101\n", 1, 0, 0, 2*one, ""),
	}
}
