package described

import (
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// Names of pieces, and of what is no ductwork, as workshops write them in seven languages;
// what may be two things stays unknown. From memory, unverified.
func TestWorkshopWords(t *testing.T) {
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	k := Kinds{Lex: lex, Millimetres: func() bool { return true }}
	for _, tt := range []struct{ want, cells string }{
		{"straight", "Straight rectangular duct;Rect. duct;Straight spiral duct;Spirally-wound circular duct;Spiral flat oval duct;Str. duct;Rigid duct;Ducting;" +
			"Luftkanal rechteckig;Wickelfalzrohr verzinkt;Lüftungskanal, gerade;Kanal, rechteckig, gerade;Ovales Rohr;Passrohr;Gaine circulaire spiralée;" +
			"Gaine rectangulaire;Gaine rect. droite;Conduit spiralé galvanisé;Gaine rigide;Gaine droite;Conduit oblong;Spirobuis;Spiraalgefelsde buis;" +
			"Rechthoekig kanaal;Rechte kanalen;Rechthoekige luchtkanalen;Ovale buis;Spirokanal;Spirorör;Rektangulär kanal;Rekt. kanal;Rakkanal rekt;Cirkulär kanal;" +
			"Oval kanal;Conducto rectangular;Conducto rect.;Tubo helicoidal;Conducto circular helicoidal;Tubo spiro;Tramos rectos;Conducto ovalado;" +
			"Canale rettangolare;Canale rett.;Tubo spiroidale;Canale circolare spiroidale;Canali rettilinei;Canale ovale"},
		{"bend", "Pressed bend 90°;Segmented bend;Lobster back bend;Mitre bend;90° bend;Bend 45;90 degree radius elbow;Pressed elbow;Segmental bend;Bog. 90°;Bogen 45°;" +
			"Kanalbogen 90;Bogen gepresst;Pressbögen;Segmentbogen 90°;Rundbogen;90°-Bogen;Coude 90;Coude à 90°;Coude embouti;Coude embouti 90°;Coude segmenté;" +
			"Coude à segments;Coude rayonné;Coude arrondi 45°;Bocht 90;Bocht 90 graden;90°-bocht;Geperste bocht;Gesegmenteerde bocht;Segmentbocht 45°;Ronde bocht;" +
			"Bochtstuk;Böj 90;Böj 90°;90° böj;90-gradersböj;Pressad böj;Segmentböj;Segmenterad böj;Rektangulär böj;Codo 90;Codo de 90°;Codo 90º;Codo a 45°;" +
			"Codo estampado;Codo segmentado;Codo por gajos;Codo radio;Curva 90;Curva 90;Curva a 90°;Curva stampata;Curva a settori 90°;Curva segmentata;" +
			"Curva raggiata;Gomito 45°;Curva ad angolo vivo;90-degree bend;Bocht 90 gr.;Coude de 45 degrés"},
		{"reducer", "Red.;Eccentric reducer;Round reducer;Rect taper;Reducing piece;Reduzierung zentrisch;Red.;Reduzierung exzentrisch;Reduzierung symmetrisch;Red.-Stück;" +
			"Réduction excentrée;Réduction conique;Réduc.;Réduction conc.;Réduction tronconique;Verloop symmetrisch;Verloop excentrisch;Verl.;Verloopstuk rond;" +
			"Reducering centrisk;Reducering excentrisk;Red.;Koncentrisk reducering;Red. concéntrica;Reducción excéntrica;Reducción cónica;Reduc.;Cono reductor;" +
			"Riduzione eccentrica;Riduz.;Riduzione conica;Riduzione simmetrica;Tronco conico;Conical reducer"},
		{"transition", "Sq. to round;Rect/round transition;Übg.;Übergang rechteckig/rund;Übergangsstück eckig auf rund;Transfo carré/rond;Transformation rect/circ;" +
			"Pièce de transfo;Overgang;Overgangsstuk rond/vierkant;Overgang rond-rechthoekig;Övergång rekt/cirk;Övergång rund-rektangulär;Övergång;" +
			"Transformación rect/circ;Transición rectangular a circular;Adaptador cuadrado-redondo;Trasf. quadro/tondo;Raccordo rettangolare/circolare;" +
			"Trasformazione;Raccordo quadro-tondo;Trasformazione da quadro a tondo;Reducer square to round;Taper rect/round"},
		{"offset", "Radius offset;Etage;S-Bogen;Dévoiement;Esse;Sprongstuk;Etage;S-bocht;S-böj;Etagestycke;Sidoförskjutning;Pieza en S;Cuello de cisne;Spostamento a S;" +
			"Collo d'oca"},
		{"tee", "Reducing tee;90° tee;T-St.;T-Stück 90°;Abzweigstück 45°;Té 90°;Té réduit;Te;T-stuk 90°;T-st.;Aftakstuk;T-stycke;T-rör 90°;T-st.;Te 90°;Tee;" +
			"Derivación en T;T 90°;Derivazione a T;Tee ridotto;T-Stück 90"},
		{"cross", "4-way cross;Kreuzstück;Croix;Kruisstuk;Korsrör;Kryss;Cruz;Cruceta;Croce"},
		{"spigot", "Pressed saddle;Saddle take-off;Sattelstück 90°;Anschlußstutzen;Piquage à 90°;Piquage-selle;Zadelstuk;Aftakzadel;Påstick 90°;Injerto 90°;Innesto a sella;" +
			"Stacco a scarpa"},
		{"breeches", "Y-piece;Hosenstück;Culotte;Broekstuk;Byxrör;Braga a Y"},
		{"cap", "Stop-end;Male end cap;Enddeckel;Bouchon mâle;Fond de conduit;Einddeksel;Ändlock;Tapa final;Tappo maschio"},
		{"flexible", "Flex duct;Flexschlauch;Gaine souple calorifugée;Flexibele slang;Flexslang;Conducto flexible;Flessibile"},
		{"inline", "Sound attenuator;Telefonie-Schalldämpfer;Clapet CF;Brandklep;Ljuddämpare rund;Compuerta cortafuego;Serranda tagliafuoco"},
		{"apart", "Drop rods;Trapeze hanger;Extract hood;Gewindestange M8;Dunstabzugshaube;Tige filetée M8;Hotte de cuisine;Draadeind M8;Afzuigkap;Gängstång M8;Kåpa;" +
			"Varilla roscada M8;Campana extractora;Barra filettata M8;Cappa cucina"},
		{"", "Double offset;Wye;RE-Kanal;Kniebogen;Y-Stück;Endstück;Coude vif;Pièce en Y;Kanaal recht 1500;Haakse bocht;Y-stuk;Eindstuk;Skarp böj;Nippelstos;Y-rör;" +
			"Codo recto;Derivación en Y;Pieza en Y;Tronchetto;Curva a gomito;Pezzo a Y;Reducing bend;Bend to duct;Bogen + Rohr;round duct to plenum;Rigid;" +
			"Transition round to round"},
	} {
		for cell := range strings.SplitSeq(tt.cells, ";") {
			got := kindOf(k.Translate(takeoff.Kind, cell)).String()
			if got == "" && lex.Apart(cell) {
				got = "apart"
			}
			if got != tt.want {
				t.Errorf("%q: %q, want %q", cell, got, tt.want)
			}
		}
	}
}

// Styles that go with names of pieces, in seven languages. From memory, unverified.
func TestWorkshopStyles(t *testing.T) {
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	k := Kinds{Lex: lex, Millimetres: func() bool { return true }}
	for want, cells := range map[fittings.Style]string{
		fittings.RadiusStyle: "Pressed bend;Bogen gepresst;Coude embouti;Geperste bocht;Pressad böj;Codo estampado;Curva stampata;Coude lisse 45°",
		fittings.Gored:       "Segmental bend;Bogen segmentiert;Coude segmenté 90°;Gesegmenteerde bocht;Segmenterad böj;Codo por gajos;Curva a spicchi",
		fittings.Mitred:      "Coude à angle vif;Codo de arista viva;Curva a spigolo vivo;Kniestuk;Gerad böj",
		fittings.Shoe:        "Stacco a scarpa",
		fittings.NoStyle:     "Pressed saddle;Conical reducer;Réduction conique",
	} {
		for cell := range strings.SplitSeq(cells, ";") {
			w := k.Translate(takeoff.Kind, cell)
			if _, style, _, ok := fittings.ParseDescription(w[strings.LastIndexByte(w, '|')+1:]); !ok || style != want && !(want == fittings.RadiusStyle && style == fittings.NoStyle) {
				t.Errorf("%q: %q", cell, w)
			}
		}
	}
}
