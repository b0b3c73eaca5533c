package schedule_test

import (
	"math"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// uglyTongues are the text files in other languages and encodings.
func uglyTongues() []ugly {
	encode := func(u ugly, how interface{ Bytes([]byte) ([]byte, error) }) ugly {
		u.data, _ = how.Bytes(u.data)
		return u
	}
	return []ugly{
		csvFile("german.csv", "Lüftung Werkhalle;;;;;\nAlle Maße in mm;;;;;\nPos.;Formstück;Breite;Höhe;Länge;Menge\n1;Kanal;600;400;1.500,0;2\n2;Kanal;600;400;1250,5;1\n3;Wickelfalzrohr;;;1.500;1\nSumme;;;;;3\n",
			2, 1, 1, 2*rect(.6, .4, 1.5)+rect(.6, .4, 1.2505), "6:diameter_mm", "it gives 3 pieces, but the rows above come to 4", "'Alle Maße in mm' above the headings", "'Kanal' as straight (2 times)"),
		encode(csvFile("german-16.csv", "Pos\tBauteilart\tDurchmesser [mm]\tLänge [m]\tBemerkung\n1\tSpiralrohr\t315\t1,25\tDach\n", 1, 0, 0, round(.315, 1.25), ""),
			unicode.UTF16(unicode.LittleEndian, unicode.ExpectBOM).NewEncoder()),
		csvFile("german-size.csv", "Pos;Formstück;Abmessung;Länge\n1;Kanal;600x400;1000\n2;Rohr;Ø 315 mm;1000\n3;Bogen 90°;Ø315;\n", 2, 0, 1, rect(.6, .4, 1)+round(.315, 1), "4:radius_mm"),
		csvFile("german-spellings.csv", "Pos;Formstueck;Breite (cm);Hoehe (cm);Laenge (m);Stueck\n1;gerader Kanal;60;40;1,5;1\n", 1, 0, 0, rect(.6, .4, 1.5), ""),
		encode(csvFile("french-1252.csv", "Repère;Accessoire;Largeur (mm);Hauteur (mm);Longueur (m);Quantité;Étage\nG1;Gaine droite;600;400;1,5;2;RDC\nG2;Gaine rectangulaire;600;400;1;1;RDC\nTotal général;;;;;3;\n",
			2, 1, 0, rect(.6, .4, 4), "", "the file isn't UTF-8 and is read as Windows-1252", "it gives 3 pieces, the rows above come to 3: they agree"), charmap.Windows1252.NewEncoder()),
		csvFile("french-size.csv", "Repère;Accessoire;Dimensions;Longueur (mm)\n1;Conduit;600x400;1000\n2;Conduit spiralé;Ø315;1000\n3;Manchon;Ø315;100\n", 2, 0, 1, rect(.6, .4, 1)+round(.315, 1), "4:kind"),
		csvFile("french-no-accents.csv", "repere;accessoire;largeur en mm;hauteur en mm;longueur en m;qte\nA;gaine;600;400;1,5;1\n", 1, 0, 0, rect(.6, .4, 1.5), ""),
		csvFile("dutch.csv", "Merk;Hulpstuk;Breedte;Hoogte;Lengte;Aantal;Opmerking\nLevel 2;;;;;;\nK1;Recht kanaal;600;400;1500;1;\nK2;Spirobuis;;;1000;1;maat volgt\nTotaal;;;;;2;\n",
			1, 1, 1, rect(.6, .4, 1.5), "4:diameter_mm", "sub-headings that give the level"),
		csvFile("swedish.csv", "Littera;Detalj;Bredd (mm);Höjd (mm);Längd (m);Diameter (mm);Antal\nT1;Rak kanal;600;400;1,5;;1\nT2;Spirorör;;;3,0;315;2\nSumma;;;;;;3\n", 2, 1, 0, rect(.6, .4, 1.5)+2*round(.315, 3), ""),
		csvFile("spanish.csv", "Marca;Pieza;Ancho (mm);Alto (mm);Longitud (m);Cantidad\nPlanta baja;;;;;\nC1;Conducto recto;600;400;1,5;1\nC2;Tubo helicoidal;Ø315;;1,0;1\n", 2, 0, 0, rect(.6, .4, 1.5)+round(.315, 1), "", "the level of 2 rows"),
		csvFile("italian.csv", "Sigla;Tipo pezzo;Larghezza [mm];Altezza [mm];Lunghezza [m];Quantità\nMandata:  M1;;;;;\nA;Canale rettangolare;600;400;1,5;1\nB;Canale circolare;;;1,5;1\nTotale;;;;;2\n", 1, 1, 1, rect(.6, .4, 1.5), "4:diameter_mm", "the system of 2 rows"),
		csvFile("mixed-tongues.csv", "Tag;Coude;Breite;Height;Lengte\nA;x;600;400;1000\n", 0, 0, 1, 0, "2:kind"),
		csvFile("german-bend.csv", "Pos;Formstück;Breite (mm);Höhe (mm);Innenradius (mm);Winkel (°)\n1;Kanalbogen;600;400;100;90\n2;Bogen rund;600;400;100;90\n", 1, 0, 1, 2*(.6+.4)*(.1+.3)*math.Pi/2, "3:diameter_mm"),
	}
}
