package headings

import (
	"path"
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// Every word of the files is read as its line says: none is hidden by another
// of another language.
func TestEveryWordIsRead(t *testing.T) {
	l := lexicon(t)
	for _, language := range languages {
		f, err := wordFiles.Open(path.Join("words", language+".csv"))
		if err != nil {
			t.Fatal(err)
		}
		lines, err := readLines(language, f)
		if err != nil {
			t.Fatal(err)
		}
		for _, line := range lines {
			for _, w := range line.words {
				if got := readAs(l, line.list, w); got != "" && got != line.means {
					t.Errorf("%s, line %d: %s '%s' is read as %q, not %q", language, line.number, line.list, w, got, line.means)
				}
			}
		}
	}
}

// readAs says what a word of a list is read as, empty where it may be several.
func readAs(l *Lexicon, list, w string) string {
	h := l.Read(w)
	switch {
	case list == "heading" && h.Verdict == Known:
		return h.Column.Heading()
	case list == "size" && h.Verdict == Sizes:
		return [...]string{OwnSize: "size", SecondSize: "size2", BranchSize: "branch_size"}[h.Size]
	case list == "heading" || list == "size":
		return "nothing"
	case list == "over":
		return l.Over(w)
	case list == "kind":
		got, _ := l.Word(takeoff.Kind, w)
		return got
	case list == "place" && l.places[Squash(w)] != "either":
		return l.places[Squash(w)]
	}
	return ""
}

// Headings of a whole cross-section that say which figure comes first: those
// with the width first are read, the others asked about. From memory, unverified.
func TestCrossSections(t *testing.T) {
	for of, names := range map[SizeOf]string{
		OwnSize: "W x H;WxH;w x h (mm);W × H;W*H;B x H;bxh (mm);BxH in mm;Width x Height;Breite x Höhe;Breite×Höhe [mm];Largeur x Hauteur;Breedte x Hoogte;Bredd x Höjd (mm);" +
			"Ancho x Alto;Larghezza x Altezza;Base x Altezza;W x D;A x B;Width x Depth;Size (W x H);Size WxH/Ø;Size W x H or Ø (mm);Abmessung BxH bzw. Ø;Size (mm x mm);W (mm) x H (mm);" +
			"Section (W x H);Duct W x H;Kanal B x H;Querschnitt BxH;Abm.;Dimensie;Formaat;Duct dimensions;Nominal size;Internal size (mm);Kanalmaße;Kanaalafmeting;Kanalstorlek;Medidas conducto;Dimensioni canale",
		LongSize:   "W x H x L;BxHxL (mm);Size (W x H x L);Dimensions (W x H x L) mm;Width x height x length;Larghezza x Altezza x Lunghezza",
		SecondSize: "Outlet W x H;Size 2;W2 x H2;Ausgang B x H", BranchSize: "Branch W x H;Branch size (W x H);Abzweig BxH;Branch width x branch height",
	} {
		for name := range strings.SplitSeq(names, ";") {
			h := read(t, name)
			if h.Verdict != Sizes || h.Size != of {
				t.Errorf("%q: verdict %d, size %d; want size %d", name, h.Verdict, h.Size, of)
			}
			if said := strings.Contains(name, "mm"); h.Said != said || said && h.Unit.Name != "mm" {
				t.Errorf("%q says a unit: %v %s", name, h.Said, h.Unit.Name)
			}
		}
	}
	for question, names := range map[string]string{
		heightFirst: "H x W;HxW (mm);H x B;Höhe x Breite;Height x Width;Hauteur x Largeur;Size (H x W);Section (HxW);Depth x Width;Alto x Ancho;Branch H x W",
		lengthFirst: "L x H;LxH (mm);L x W;Ø x L;Dia x Length", threeSizes: "H x W x L"} {
		for name := range strings.SplitSeq(names, ";") {
			if h := read(t, name); h.Verdict != Asks || !strings.HasPrefix(h.Ask.names, question) {
				t.Errorf("%q: verdict %d, want the question about %s", name, h.Verdict, question)
			}
		}
	}
	for name, want := range map[string]Verdict{"W x H (Pa)": Misfit, "Size (W x H) kg": Unknown, "Size Ø": Unknown, "W x": Unknown, "x H": Unknown, "Overall height": Asks, "Largeur extérieure": Asks, "Larghezza esterna": Asks, "Uitwendige breedte": Asks, "Utvändig bredd": Asks,
		"Box": Unknown, "Exhaust": Unknown, "mm x mm": Unknown, "Weight x Height": Unknown, "External size": Asks, "External width": Asks} {
		if h := read(t, name); h.Verdict != want {
			t.Errorf("%q: verdict %d, want %d", name, h.Verdict, want)
		}
	}
}

// Words of headings in the seven languages. From memory, unverified.
func TestTradeWords(t *testing.T) {
	for heading, names := range map[string]string{
		"length_mm":        "Largo (mm);largo;Largo m;Longitud por pieza;Stücklänge;Länge/Stk (m);Länge je Stück;Long.;Stuklengte;Längd/st;Lunghezza pezzo;Length per piece",
		"width_mm":         "Ancho;Ancho nominal;Breite B (mm);Breedte b;Bredd b;Largeur gaine;Larghezza canale;Internal width (mm);Inside width;Lichte Breite;Inwendige breedte;Invändig bredd;Larghezza interna",
		"height_mm":        "Alto (mm);Höhe H;Hoogte h;Höjd h;Hauteur gaine;Altezza canale;Internal height;Lichte Höhe;Alto interior",
		"diameter_mm":      "NW;Durchmesser D;Rohr-Ø;Ø nominal;Kanaaldiameter;Innerdiameter;Diámetro conducto;Diametro interno;Nominal dia;Internal diameter (mm)",
		"quantity":         "Stck.;St.;Anz.;Qty (pcs);Anzahl (Stk);Antal st;Cantidad (uds);Quantità (pz);Pz.;Ud.;Nb pièces;Aantal (stuks);Nº piezas",
		"tag":              "Posición;Posizione;Duct no.;Kanal-Nr.;Merknummer;N° repère;Detaljbeteckning",
		"system":           "AHU;UTA;LBK;Anlagenname;Climatizador;Systemnummer;Aggregat",
		"kind":             "Formstücktyp;Type d'accessoire;Type hulpstuk;Tipo de elemento;Tipo elemento;Kanaldel;Type of fitting",
		"angle_deg":        "Angle of bend;Umlenkwinkel;Angle du coude;Bochthoek;Böjvinkel;Ángulo codo;Angolo curva",
		"branch_length_mm": "Largo derivación",
	} {
		for name := range strings.SplitSeq(names, ";") {
			if h := read(t, name); h.Verdict != Known || h.Column.Heading() != heading {
				t.Errorf("%q: verdict %d, %s; want %s", name, h.Verdict, h.Column.Heading(), heading)
			}
		}
	}
	for name := range strings.SplitSeq("Largo total (m);Mantelfläche (m2);Sort;Referenz;Codice;Référence;Surface développée;Piezas", ";") {
		if h := read(t, name); h.Verdict != Asks {
			t.Errorf("%q: verdict %d, %s; want a question", name, h.Verdict, h.Column.Heading())
		}
	}
	for _, name := range []string{"Quantity (m)", "Anzahl (mm)"} {
		if h := read(t, name); h.Verdict != Misfit {
			t.Errorf("%q: verdict %d", name, h.Verdict)
		}
	}
}

// Headings in two rows, the upper of them about sizes in general. From memory,
// unverified.
func TestGroups(t *testing.T) {
	l := lexicon(t)
	for over := range strings.SplitSeq("Cross section;Cross-section;Misure;Medidas;Geometry;Geometrie;Duct dimensions;Nominal size;Internal size;Internal size (mm);Dimensie;Kanalmaße;Tvärsnitt;Inwendige maten;Géométrie;Eintritt", ";") {
		for low, want := range map[string]string{"Width": "width_mm", "Height": "height_mm", "Diameter": "diameter_mm", "Höhe": "height_mm", "Ø": "diameter_mm"} {
			h := l.Under(over, low)
			if h.Verdict != Known || h.Column.Heading() != want || h.Said != strings.Contains(over, "mm") {
				t.Errorf("%s / %s: verdict %d, %s, says a unit: %v", over, low, h.Verdict, h.Column.Heading(), h.Said)
			}
		}
	}
	for over, want := range map[string]string{"Outlet size": "width2_mm", "Austritt": "width2_mm", "Branch dimensions": "branch_width_mm", "Abzweigung": "branch_width_mm"} {
		if h := l.Under(over, "Width"); h.Verdict != Known || h.Column.Heading() != want {
			t.Errorf("%s: verdict %d, %s", over, h.Verdict, h.Column.Heading())
		}
	}
	for _, over := range []string{"Insulation", "Opening"} {
		if h := l.Under(over, "Width"); h.Verdict != Near {
			t.Errorf("%s: verdict %d", over, h.Verdict)
		}
	}
	if h := l.Under("Outlet", "W x H"); h.Verdict != Sizes || h.Size != SecondSize {
		t.Errorf("Outlet W x H: %+v", h)
	}
	if h := l.Under("Size", "H x W"); h.Verdict != Asks {
		t.Errorf("Size H x W: %+v", h)
	}
}

// What a heading may have meant isn't suggested where it is there already.
func TestNeighbours(t *testing.T) {
	l := lexicon(t)
	for _, tt := range []struct{ row, at, want string }{
		{"Width (mm);Widht (mm);Length (mm)", "Widht (mm)", ""}, {"Widht (mm);Height (mm)", "Widht (mm)", "width_mm"}, {"Width;Heigth;Lenght", "Lenght", "length_mm"},
		{"Ancho;Alto;Larg0", "Larg0", "length_mm"}, {"Width;Insulation / Width", "Insulation / Width", ""},
	} {
		var hs []Heading
		for name := range strings.SplitSeq(tt.row, ";") {
			if over, low, two := strings.Cut(name, " / "); two {
				hs = append(hs, l.Under(over, low))
			} else {
				hs = append(hs, l.Read(name))
			}
		}
		l.Neighbours(hs)
		for _, h := range hs {
			got := ""
			if h.Verdict == Near && !h.Taken {
				got = h.Column.Heading()
			}
			if h.Typed == tt.at && (got != tt.want || h.Verdict == Known) {
				t.Errorf("%s: '%s' suggests %q, want %q", tt.row, tt.at, got, tt.want)
			}
		}
	}
}

// Kinds of piece as schedules write them. What may be two kinds stays unknown.
// From memory, unverified.
func TestKindsInWords(t *testing.T) {
	l := lexicon(t)
	want := func(kind fittings.Kind, shape fittings.Shape, cells string) {
		t.Helper()
		for cell := range strings.SplitSeq(cells, ";") {
			w, ok := l.Word(takeoff.Kind, cell)
			k, _, s, _ := fittings.ParseDescription(w)
			if !ok {
				k, s = fittings.NoKind, fittings.NoShape
			}
			if k != kind || s != shape {
				t.Errorf("%q is read as %q: %s %s, want %s %s", cell, w, k, s, kind, shape)
			}
		}
	}
	const none, rect, round = fittings.NoShape, fittings.Rectangular, fittings.Circular
	want(fittings.Straight, none, "Luftkanal gerade;Kanal gerade;gerader Luftkanal;Kanal, gerade;Recht kanaalstuk;Rak kanal;Kanal rak;Tramo recto;Canale dritto;Tronçon droit;Duct piece;Straight piece;Lüftungsleitung;straight")
	want(fittings.Straight, round, "Spiral duct;Spiral;Spiral ducts;SPIRAL DUCT;Cirkulär kanal;Kanal cirkulär;Kanal, rund;Rohr rund;Gaine ronde;Conduit rond;Conducto redondo;Canale circolare;Rond kanaal;Spiralrohr rund;"+
		"Wickelfalzrohr;Conducto helicoidal;Cirkulärt rör;round straight duct;straight round;Wickelrohr;Rundkanal")
	want(fittings.Straight, rect, "Kanal rektangulär;Kanal rechteckig;Luftkanal rechteckig gerade;Gaine rectangulaire;Gaine droite rectangulaire;Conducto rectangular;Rechthoekig kanaal;Kanaal rechthoekig;rectangular straight;straight rectangular duct")
	want(fittings.Bend, none, "Bogenstück;Buisbocht;Rörböj;Kanalkrümmer;bends;Coudes;Codos")
	want(fittings.Reducer, none, "Reduzierkonus;Reductie;Reducerstycke;Réducteur;Reductor;Riduzione concentrica;Change of size")
	want(fittings.Transition, none, "Übergang eckig/rund;Carré-rond;Vierkant-rond;Verloop vierkant/rond;Quadro-tondo;Cuadrado redondo;Övergång rektangulär/cirkulär;Rectangular to circular;Sq. to round")
	want(fittings.Offset, none, "S-Stück;S-stuk;S-stycke;Pièce en S;Pieza en S;Pezzo a S;Etagenstück")
	want(fittings.Tee, none, "T-Formstück;Té égal;Te igual;Raccordo a T;T-stuk;T-stycke;Branch tee")
	want(fittings.Cross, none, "X-Stück;X-stuk;Pièce en croix;Pieza en cruz;Raccordo a croce;Kors")
	want(fittings.Spigot, none, "Rohrstutzen;Sattel;Zadel;Sadel;Selle;Sella;Saddle piece;Abzweigstutzen;Tuit")
	want(fittings.Breeches, none, "Hosenbogen;Pièce culotte;Pantalones;Raccordo a braga;Trouser")
	want(fittings.Cap, none, "Abschlussdeckel;Bouchon d'extrémité;Afsluitdeksel;Ändplåt;Tapa ciega;Tappo terminale;End cover")
	want(fittings.Plenum, none, "Plenumkasten;Plénum de soufflage;Plenumkast;Caja de distribución;Plenum di mandata")
	want(fittings.Flexible, none, "Flex;Flexkanal;Manchette souple;Flexibel kanaal;Conexión flexible;Giunto flessibile;Flexi duct;Segeltuchstutzen")
	want(fittings.Inline, none, "BSK;Registre de réglage;Terugslagklep;Brandgasspjäll;Compuerta de regulación;Serranda di taratura;Motorised damper;Heizregister")
	want(fittings.NoKind, none, "Branch;Abzweig mit Klappe;Y-Stück;Y-stuk;Dérivation;Stacco;Winkel;Kanal Stutzen;Kanal Etage;Rohr und Bogen;Formstück;duct bend tee;codo recto;etwas gerade")
}

// Rows that are no pieces. From memory, unverified.
func TestPlacesInWords(t *testing.T) {
	l := lexicon(t)
	for text, want := range map[string]string{"Installatie: LB01": "system", "Anlage ZU-01": "system", "Instalación 2": "system", "Étage : R+1": "level", "Geschoss 2": "level", "Stockwerk EG": "level", "Planta 2": "level",
		"Piano terra": "level", "Våning 3": "level", "Verdieping 1": "level", "Zone A": "system level", "Section 3": "system level", "Riser 1": "system level", "Strang 4": "system level", "Steigstrang 1": "system level",
		"Zone: A": "system level", "Zone 1 supply": "system", "Section level 2": "level", "Zona 3": "system level", "Stam 2": "system level", "North wing": "", "Cross bracing": ""} {
		if got, _ := l.Place(text); strings.Join(got, " ") != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	for text, want := range map[string]bool{"Subtotal": true, "Sub-total": true, "Tussentotaal": true, "Net total": true, "Total net": true, "S1 total": true, "AHU-1 Total": true, "Supply total": true, "Level 2 total": true,
		"Zuluft gesamt": true, "Zwischensumme": true, "Übertrag": true, "Summe": true, "Sous-total": true, "Subtotaal": true, "Delsumma": true, "Subtotale": true, "Totale": true, "Suma": true, "Suma parcial": true, "Totaal netto": true, "Slutsumma": true,
		"Anlagensumme": true, "duct total": false, "Totally new": false, "T1": false, "total-free": true, "Duct 600": false, "10% wastage": false, "S1": false} {
		if got := l.Total(text); got != want {
			t.Errorf("%q is a total: %v", text, got)
		}
	}
}
