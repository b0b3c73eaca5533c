package schedule_test

import "math"

// uglyLooks are lists as offices print them: pages, forms, things that hang ducts, titles of
// two words in another order.
func uglyLooks() []ugly {
	one := rect(.6, .4, 1.5)
	const heads = "Item,Kind,Width,Height,Length,Qty\n"
	bend := func(d, radius float64) float64 { return math.Pi * d * math.Pi / 2 * radius } // Pappus and Guldin
	return []ugly{
		csvFile("looks-pages.csv", heads+"1,Straight,600,400,1500,2\nDuct list,,,,,Page 2 of 3\n"+heads+"2,Straight,600,400,1500,1\nDuct list,,,,,Page 3 of 3\n"+heads+"3,Straight,600,400,1500,1\n", 3, 0, 0, 4*one, "", "title block"),
		csvFile("looks-pages-de.csv", "Pos;Bauteil;Breite;Höhe;Länge;Stück\n1;Kanal;600;400;1500;2\nStückliste;;;;;Seite 2 von 2\nPos;Bauteil;Breite;Höhe;Länge;Stück\n2;Kanal;600;400;1500;1\n", 2, 0, 0, 3*one, "", "title block"),
		csvFile("looks-pages-existing.csv", heads+"1,Straight,600,400,1500,2\nExisting ducts,,,,,Page 2 of 2\n"+heads+"2,Straight,600,400,1500,1\n", 2, 0, 1, 3*one, "3:Qty 3:kind"),
		csvFile("looks-rods.csv", "Item,Kind,Width,Height,Length,Qty\n1,Straight,600,400,1500,2\n2,Threaded bar M8,,,,12\n3,Mineral wool 30 mm,,,,4\n4,Studding,,,,4\n5,Mineral plate,,,,4\n", 1, 3, 1, 2*one, "6:kind", "no ductwork left out"),
		csvFile("looks-rods-de.csv", "Pos;Bauteil;Breite;Höhe;Länge;Stück\n1;Kanal;600;400;1500;2\n2;Gewindestange M8;;;;12\n3;Mineralwolle-Dämmung 30 mm;;;;4\n4;Zuluftgitter 400x200;;;;4\n", 1, 3, 0, 2*one, ""),
		csvFile("looks-rods-nl.csv", "Pos;Onderdeel;Breedte;Hoogte;Lengte;Aantal\n1;Kanaal;600;400;1500;2\n2;Draadeind M8;;;;12\n3;Isolatie minerale wol 30 mm;;;;4\n4;Toevoerrooster 400x200;;;;4\n", 1, 3, 0, 2*one, ""),
		csvFile("looks-form.csv", heads+"1,Straight,600,400,1500,2\nChecked by,,____________,,,\nDate,,____________,,,\n", 1, 0, 0, 2*one, "", "remarks among the rows"),
		csvFile("looks-form-it.csv", "N.;Descrizione;Larghezza (mm);Altezza (mm);Lunghezza (mm);Quantità\n1;Canale;600;400;1500;2\nControllato da;;;;________;\nData;;;;________;\n", 1, 0, 0, 2*one, "", "remarks among the rows"),
		csvFile("looks-form-empty-cell.csv", heads+"1,Straight,600,400,1500,2\n2,Straight,600,____,1500,1\n", 1, 0, 1, 2*one, "3:height_mm"),
		csvFile("looks-title-sv.csv", "Rektangulära kanaler raka\nLittera;Bredd (mm);Höjd (mm);Längd (mm);Antal\nR01;600;400;1500;2\nR02;600;400;1500;1\n", 2, 0, 0, 3*one, "", "from 'Rektangulära kanaler raka'"),
		csvFile("looks-title-it.csv", "Canali circolari dritti\nSigla;Diametro (mm);Lunghezza (mm);Quantità\nC01;250;3000;2\n", 1, 0, 0, 2*round(.25, 3), "", "from 'Canali circolari dritti'"),
		csvFile("looks-title-bends.csv", "Canali rettangolari curve\nSigla;Larghezza (mm);Altezza (mm);Lunghezza (mm);Quantità\nR01;600;400;1500;2\n", 0, 0, 1, 0, "3:kind"),
		csvFile("looks-radii-fr.csv", "Repère;Désignation;Largeur (mm);Hauteur (mm);Diamètre (mm);Longueur (mm);Angle (°);Rayon intérieur (mm);Rayon (mm);Quantité\nA;Gaine;600;400;;1500;;;;1\nB;Coude embouti;;;200;;90;;200;2\n", 2, 0, 0, one+2*bend(.2, .2), "", "column 'Rayon (mm)' is read as radius_mm"),
		csvFile("looks-radius-alone-fr.csv", "Repère;Désignation;Diamètre (mm);Longueur (mm);Angle (°);Rayon (mm);Quantité\nA;Gaine ronde;200;1500;;;1\nB;Coude embouti;200;;90;200;2\n", 1, 0, 1, round(.2, 1.5), "1:Rayon (mm) 3:radius_mm"),
	}
}
