package quantity

import (
	"strings"
	"testing"

	"blankoff/takeoff"
)

// Sizes as schedules write them, with the word for a side, a circle, a square or
// an oval. A 600 x 400 duct stays 600 wide whichever side is written first. From
// memory, unverified.
func TestSizesInWords(t *testing.T) {
	for cell, want := range map[string]string{
		"W600 x H400": "600x400", "w600xh400": "600x400", "600w x 400h": "600x400", "600 W x 400 H": "600x400", "B600xH400": "600x400", "B 600 x H 400": "600x400",
		"W=600 x H=400": "600x400", "W: 600 x H: 400 mm": "600x400", "H400 x W600": "600x400", "400h x 600w": "600x400", "H 400 × B 600": "600x400",
		"600w x 400d": "600x400", "W600 x D400": "600x400", "400 deep x 600 wide": "600x400", "B600 x T400": "600x400",
		"Breite 600 x Höhe 400": "600x400", "HÖHE 400 X BREITE 600": "600x400", "600 wide x 400 high": "600x400", "ancho 600 x alto 400": "600x400",
		"altezza 400 x base 600": "600x400", `24"w x 16"h`: "609.6x406.4", "H16 x W24 in": "609.6x406.4", `W24 x H16"`: "609.6x406.4", "600 mm w x 400 mm h": "600x400",
		"W600xH400/W400xH300": "600x400 to 400x300", "H400 x W600/300h x 500w": "600x400 to 500x300",
		"round 315": "dia 315", "rund 315": "dia 315", "Rond 315 mm": "dia 315", "Durchm. 315": "dia 315", "NW 200": "dia 200", "NW200": "dia 200", "315 rund": "dia 315",
		"redondo 315": "dia 315", "tondo 315": "dia 315", `round 12"`: "dia 304.8", "NW 200/NW 160": "dia 200 to dia 160",
		"600 sq.": "600x600", "600 mm sq": "600x600", "600 square": "600x600", `24" sq.`: "609.6x609.6",
		"oval 525/150": "525x150 oval", "oval 525x150": "525x150 oval", "Flat oval 525 x 150": "525x150 oval", "525/150 oval": "525x150 oval", "oval 525/150 mm": "525x150 oval",
		"FO 525x150": "525x150 oval", "oval 525x150/oval 400x150": "525x150 oval to 400x150 oval",
	} {
		found, trouble := asColumn(t, "width_mm").Sizes(cell)
		if got := describe(found); trouble != "" || got != want {
			t.Errorf("%q = %s %q, want %s", cell, got, trouble, want)
		}
		if !Combined(cell) {
			t.Errorf("%q isn't taken for a whole size in a column of widths", cell)
		}
	}
	for cell, says := range map[string]string{
		"W600 x 400": "plainly which side", "600 x 400h": "plainly which side", "W600 x W400": "same side twice", "H400 x 600h": "same side twice", "D400 x W600": "one cross-section", "600d x 400d": "plainly which side", "600 x 400d": "plainly which side", "L600 x H400": "plainly which side",
		"600 x 400 (internal)": "holds '(internal)' beside the size", "600x400 [500x300]": "holds '[500x300]' beside the size", "24 inch x 16 inch (net)": "holds '(net)'",
		"600 sq m": "isn't a size", "600 sqm": "isn't a size", "oval 525": "could be a diameter", "oval Ø315": "isn't one cross-section", "oval 525x150/400x150": "of one size only",
		"round 600x400": "isn't one cross-section", "sq 600 sq": "isn't a size", "oval 525/150/100": "isn't a size", "dito": "means the row above", `"`: "means the row above",
		"s.o.": "see above or not applicable", "ca. 600x400": "isn't a number", "600 x 400 sq": "isn't a number", "rund": "isn't a size", "600/400": "or two diameters",
	} {
		if found, trouble := asColumn(t, "width_mm").Sizes(cell); !strings.Contains(trouble, says) {
			t.Errorf("%q = %s %q, want %q", cell, describe(found), trouble, says)
		}
	}
}

// Counts with the word for a piece. From memory, unverified.
func TestCountsInWords(t *testing.T) {
	for _, cell := range []string{"2x", "2 x", "2X", "2×", "2 Nos.", "2 nos", "2 St.", "2 st", "2 Stk", "2 Stück", "2 no.", "2 uds", "2 ud.", "2 pz", "2 pz.", "2 pcs", "2 off", "2 stuks", "2 pièces", "2 piezas"} {
		if v, trouble := asColumn(t, "quantity").Number(cell); v != 2 || trouble != "" {
			t.Errorf("%q = %v %s, want 2", cell, v, trouble)
		}
	}
	for heading, cell := range map[string]string{"width_mm": "2x", "quantity": "2xx", "gores": "2 m", "length_mm": "2 St."} {
		if v, trouble := asColumn(t, heading).Number(cell); trouble == "" {
			t.Errorf("%s %q = %v", heading, cell, v)
		}
	}
}

// A cell that says that it is empty, by the measure of its column. From memory,
// unverified.
func TestNothing(t *testing.T) {
	const everywhere, notCounts, sizes = "-;–;—;n/a;N/A;NULL;null;\\N;NaN", "n.v.t.;N.V.T.;nvt;./.;k.A.;k. A.;n.a.;--;sans objet;no aplica", "none;None;entfällt;ENTFÄLLT;keine;geen;aucun;n.d."
	const never = ";0;no;nein;nee;600;s.o.;dito;\";so;N;K;x;must;by others;K.A.1;nothing here"
	for _, m := range []takeoff.Measure{takeoff.Text, takeoff.Count, takeoff.Lengths, takeoff.Areas, takeoff.Degrees, takeoff.Pressure, takeoff.Minutes} {
		check := func(cells string, want bool) {
			for cell := range strings.SplitSeq(cells, ";") {
				if got := Nothing(cell, m); got != want {
					t.Errorf("measure %d: %q says nothing: %v", m, cell, got)
				}
			}
		}
		check(everywhere, true)
		check(notCounts, m != takeoff.Count)
		check(sizes, m == takeoff.Lengths || m == takeoff.Degrees)
		check(never, false)
	}
}

// A cell that means the one above is no number and no nothing. From memory,
// unverified.
func TestAbove(t *testing.T) {
	for _, cell := range []string{`"`, "''", "”", "〃", "dito", "Ditto", "DITO.", "siehe oben", "s. oben", "wie vor", "as above", "zie boven", "ci-dessus", "come sopra", "idem", "se ovan", "d:o"} {
		for _, m := range []takeoff.Measure{takeoff.Text, takeoff.Count, takeoff.Lengths} {
			if Above(cell, m) == "" || Nothing(cell, m) {
				t.Errorf("measure %d: %q isn't met as the row above", m, cell)
			}
		}
		if _, trouble := asColumn(t, "length_mm").Number(cell); !strings.Contains(trouble, "row above") {
			t.Errorf("%q: %s", cell, trouble)
		}
	}
	for cell, names := range map[string]bool{"do.": true, "id": true, "c.s.": true, "w.o.": true, "s.o.": false} {
		if (Above(cell, takeoff.Text) == "") != names || Above(cell, takeoff.Lengths) == "" {
			t.Errorf("%q: %q", cell, Above(cell, takeoff.Text))
		}
	}
	for _, cell := range []string{"", "600", `24"`, "2'", "-", "above", "Idemitsu", "dito 2"} {
		if trouble := Above(cell, takeoff.Lengths); trouble != "" {
			t.Errorf("%q: %s", cell, trouble)
		}
	}
}

// Units as a row below the headings gives them. From memory, unverified.
func TestUnitsInWords(t *testing.T) {
	for typed, want := range map[string]string{"in mm": "mm", "in cm": "cm", "en mm": "mm", "i mm": "mm", "lfm": "m", "lfm.": "m", "ml": "m", "lin. m": "m", "St.": "each", "st": "each", "u": "each", "u.": "each",
		"n°": "each", "uds.": "each", "Nos.": "each", "in wg": "in w.g.", "in": "in"} {
		if u, ok := UnitOf(typed); !ok || u.Name != want {
			t.Errorf("%q is the unit %q, want %s", typed, u.Name, want)
		}
	}
	for _, typed := range []string{"x", "in x", "text", "-", "i"} {
		if u, ok := UnitOf(typed); ok {
			t.Errorf("%q is the unit %s", typed, u.Name)
		}
	}
}

// BenchmarkNothing: the cells of a column of tags.
func BenchmarkNothing(b *testing.B) {
	for b.Loop() {
		for _, cell := range [...]string{"T-1001", "S2", "Level 3", "none such"} {
			if Nothing(cell, takeoff.Text) {
				b.Fatal(cell)
			}
		}
	}
}

// NA is nothing where a figure is expected; under a heading of text it may be a name.
func TestNothingFromDatabases(t *testing.T) {
	for m, want := range map[takeoff.Measure]bool{takeoff.Lengths: true, takeoff.Count: true, takeoff.Degrees: true, takeoff.Text: false} {
		if got := Nothing("NA", m); got != want {
			t.Errorf("measure %d: NA says nothing: %v", m, got)
		}
	}
}
