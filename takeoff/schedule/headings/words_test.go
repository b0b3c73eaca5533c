package headings

import (
	"maps"
	"strings"
	"testing"

	"blankoff/takeoff"
)

// Headings of each language, with and without accents and units. Common
// practice, no source.
func TestTongues(t *testing.T) {
	for heading, names := range map[string]string{
		"width_mm":         "Breite [mm];Largeur (mm);Breedte mm;Bredd (mm);Ancho (mm);Larghezza [mm];breite in mm;largeur en mm;bredd i mm",
		"height_mm":        "Höhe;Hoehe (cm);hohe;Hauteur;Hoogte;Höjd;Altura;Altezza",
		"length_mm":        "Länge (m);Laenge;Longueur;Lengte;Längd (m);Longitud;Lunghezza",
		"diameter_mm":      "Durchmesser;Diamètre;diametre;Diameter;Diámetro;Diametro;Ø (mm);DN",
		"quantity":         "Menge;Stück;Qté;Aantal;Antal;Cantidad;Q.tà",
		"level":            "Geschoss;Étage;Verdieping;Våning;Planta;Piano",
		"kind":             "Formstück;Accessoire;Hulpstuk;Detalj;Pieza;Tipo pezzo",
		"tag":              "Pos.;Repère;Merk;Littera;Marca;Sigla",
		"class":            "Dichtheitsklasse;Classe d'étanchéité;Luchtdichtheidsklasse;Täthetsklass;Clase de estanqueidad;Classe di tenuta",
		"test_pa":          "Prüfdruck (Pa);Pression d'essai;Testdruk;Provtryck;Presión de prueba;Pressione di prova",
		"branch_width_mm":  "Abzweig Breite;Largeur piquage;Breedte aftakking;Bredd avgrening;Ancho derivación;Larghezza stacco",
		"angle_deg":        "Winkel (°);Angle;Hoek;Vinkel;Ángulo;Angolo",
		"throat_mm":        "Innenradius;Rayon intérieur;Binnenstraal;Innerradie;Radio interior;Raggio interno",
		"operating_pa":     "Betriebsdruck;Pression de service;Bedrijfsdruk;Drifttryck;Presión de servicio;Pressione di esercizio",
		"branch_length_mm": "Stutzenlänge;Piquage longueur;Aftakking lengte;Avgrening längd;Derivación longitud;Stacco lunghezza",
	} {
		for name := range strings.SplitSeq(names, ";") {
			if h := read(t, name); h.Verdict != Known || h.Column.Heading() != heading {
				t.Errorf("%q: verdict %d, %s; want %s", name, h.Verdict, h.Column.Heading(), heading)
			}
		}
	}
	for name, want := range map[string]Verdict{"Abmessung": Sizes, "Dimensions (mm)": Sizes, "Maat": Sizes, "Mått": Sizes, "Medidas": Sizes, "Misure": Sizes,
		"Fläche": Asks, "Surface": Asks, "Druck": Asks, "Pression": Asks, "Typ": Asks, "Einheit": Asks, "Gewicht": Unknown, "Poids": Unknown, "Peso": Unknown} {
		if h := read(t, name); h.Verdict != want {
			t.Errorf("%q: verdict %d, want %d", name, h.Verdict, want)
		}
	}
}

func TestWordsOfCells(t *testing.T) {
	l := lexicon(t)
	for _, tt := range []struct {
		column     takeoff.Column
		cell, want string
	}{
		{takeoff.Kind, "Wickelfalzrohr", "circular duct"}, {takeoff.Kind, "T-Stück", "tee"}, {takeoff.Kind, "Coude", "bend"}, {takeoff.Kind, "coude rond", "bend circular"},
		{takeoff.Kind, "codo rectangular", "bend rectangular"}, {takeoff.Kind, "Verloopstuk", "reducer"}, {takeoff.Kind, "Påstick", "spigot"}, {takeoff.Kind, "pastick", "spigot"},
		{takeoff.Kind, "Serranda tagliafuoco", "inline"}, {takeoff.Kind, "Bogen, rund", "bend circular"}, {takeoff.Kind, "etwas anderes", ""}, {takeoff.Kind, "Bogen mit Klappe", ""},
		{takeoff.Shape, "rechteckig", "rectangular"}, {takeoff.Shape2, "rond", "circular"}, {takeoff.Sign, "Unterdruck", "negative"}, {takeoff.Joint, "geflanscht", "flanged"},
		{takeoff.Scope, "nein", "out"}, {takeoff.Tag, "Kanal", ""},
	} {
		if got, ok := l.Word(tt.column, tt.cell); ok != (tt.want != "") || ok && got != tt.want {
			t.Errorf("%s %q: %q %v, want %q", tt.column.Heading(), tt.cell, got, ok, tt.want)
		}
	}
	for text, want := range map[string]string{"Zuluft Halle": "system", "1. OG": "level", "Obergeschoss 2": "level", "Etage 3": "level", "Soufflage": "system", "Supply level 2": "system level",
		"System: Roof garden": "system", "Level: Supply deck": "level", "Total général": "total", "Nota: galvanizado": "note", "North wing": ""} {
		if got, _ := l.Place(text); strings.Join(got, " ") != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	for text, want := range map[string]bool{"Summe": true, "Sous-total": true, "sub total level 2": true, "Totalt": true, "Totem": false, "duct total": false, "": false} {
		if got := l.Total(text); got != want {
			t.Errorf("%q is a total: %v", text, got)
		}
	}
}

// FuzzWords: any file of words is an error that names its line, or every heading
// in it is read as it says.
func FuzzWords(f *testing.F) {
	f.Add("heading,width_mm,Panel,Brett\nkind,bend,knick\nunused,,Zaun\n")
	f.Add("heading with unit,test_pa,Probe\nplace,total,Ende\nsize,size,Mass X\n")
	f.Fuzz(func(t *testing.T, text string) {
		l, err := lexicon(t).With("w.csv", strings.NewReader(text))
		if err != nil {
			if !strings.Contains(err.Error(), "w.csv") {
				t.Fatal(err)
			}
			return
		}
		lines, _ := readLines("w.csv", strings.NewReader(text))
		for _, line := range lines {
			for _, w := range line.words {
				if h := l.Read(w); line.list == headingList && Squash(w) != "" && (h.Verdict != Known || h.Column.Heading() != line.means) && h.Verdict != Misfit {
					t.Fatalf("%q is read as %+v", w, h)
				}
			}
		}
	})
}

// No word of remarks both bears on no area and doubts its row, in whichever languages.
func TestWordsOfRemarksAreOfOneSort(t *testing.T) {
	l := lexicon(t)
	all := maps.Clone(ordinary())
	maps.Copy(all, l.harmless)
	if len(all) < 14_000 {
		t.Errorf("%d words", len(all))
	}
	for word := range all {
		if l.one(word, Doubt) || l.one(word, vague) || l.one(word, comparing) {
			t.Errorf("'%s' is a plain word of remarks, and one that says something of the row", word)
		}
	}
}

// Ordinary words are written as words of remarks are looked up, each line of one sort.
func TestOrdinaryWordsCanBeFound(t *testing.T) {
	for _, language := range languages {
		data, err := ordinaryFiles.ReadFile("ordinary/" + language + ".txt")
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(data)) {
			sort, words, ok := strings.Cut(line, ": ")
			if !ok || sort != "thing" && sort != "plain" {
				t.Errorf("%s: %q is of no sort", language, line)
			}
			for w := range strings.FieldsSeq(words) {
				if parts := Tokens(w); len(parts) != 1 || parts[0] != w {
					t.Errorf("%s: %q is looked up as %q", language, w, parts)
				}
			}
		}
	}
}
