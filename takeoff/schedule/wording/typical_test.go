package wording

import (
	"strings"
	"testing"
)

// Names and lines of several floors or flats, and others that only look so. From memory,
// unverified.
func TestSeveral(t *testing.T) {
	for _, text := range strings.Split("Regelgeschoss;Regelgeschoss 1-5;Regelgeschoss (1.-5. OG);Normalgeschoss;1.-5. OG;1. bis 5. Obergeschoss;2./3. OG;Etages 1 à 5;Étages 1 à 5;Étage courant;Etages courants;R+1 à R+5;R+1-R+4;du 1er au 5e étage;Niveau type;"+
		"Verdieping 1 t/m 5;1e t/m 5e verdieping;Standaardverdieping;Typeverdieping;Våning 2-5;Våningar 2 till 5;Plan 2 till 5;Typvåning;Normalplan;Planta tipo;Plantas 1 a 5;Planta 1ª a 5ª;1ª a 5ª planta;Piano tipo;Piani 1-5;dal 1° al 5° piano;Standard floor;"+
		"Wohnung Typ A, 12 Stück;Appartement type B (4 pièces);Vivienda tipo 2, 8 uds;Woning type A - 6 stuks;Flat type 2, 14 no;2. OG wie 1. OG;3. OG wie EG;R+2 comme R+1;Niveau 3 identique au niveau 2;2e verdieping als 1e verdieping;Planta 3 igual que planta 2;Piano 2 come piano 1;Plan 3 som plan 2", ";") {
		if !Several(text) {
			t.Errorf("%q stands for several", text)
		}
	}
	for _, text := range strings.Split("1. OG;EG;Étage 3;Niveau 2;Obergeschoss 1;R+1;Verdieping 2;Plan 12-345;Plan 3;Planta 2;Piano 1;Level 2;Kanal 600-400;Stückliste, 45 Stück;Lüftung Typ B;Zeichnung 1-5;Wohnanlage, 12 Wohnungen;Luftkanäle 2024-03;Ausführung wie Plan 3;Haus 2;"+
		"Rev 1-2;Type de gaine;Standardkanäle;Normalkanal;Bauteil A, 1. OG;Lager 1;Conduit R100 à 200;Phase 1 et 2;Gaines de soufflage;Typ;Kanal Typ 3, DN 200", ";") {
		if Several(text) {
			t.Errorf("%q stands for one", text)
		}
	}
	for text, want := range map[string]int{"1-12": 12, "3 to 7": 5, "2 bis 4": 3, "12": 0, "4-3": 0, "1-5a": 0, "101-104": 4, "A1-A4": 0} {
		if got := RangeCount(text); got != want {
			t.Errorf("%q: %d, want %d", text, got, want)
		}
	}
}
