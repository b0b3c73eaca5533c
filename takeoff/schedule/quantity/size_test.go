package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"blankoff/fittings"
)

func describe(found []Size) string {
	var out []string
	for _, z := range found {
		mm := func(v float64) string { return strconv.FormatFloat(math.Round(v*1e6)/1e3, 'f', -1, 64) }
		switch z.Shape {
		case fittings.Circular:
			out = append(out, "dia "+mm(z.Diameter))
		case fittings.FlatOval:
			out = append(out, mm(z.Width)+"x"+mm(z.Height)+" oval")
		default:
			out = append(out, mm(z.Width)+"x"+mm(z.Height))
		}
	}
	return strings.Join(out, " to ")
}

// 1 in = 25.4 mm exactly.
func TestSizes(t *testing.T) {
	for _, tt := range []struct{ heading, cell, want string }{
		{"width_mm", "600x400", "600x400"}, {"width_mm", "600 x 400", "600x400"}, {"width_mm", "600 x 400 mm", "600x400"},
		{"width_mm", "600X400MM", "600x400"}, {"width_mm", "600×400", "600x400"}, {"width_mm", "600*400", "600x400"}, {"width_mm", "600 by 400", "600x400"},
		{"width_mm", `24"x16"`, "609.6x406.4"}, {"width_mm", `24" x 16"`, "609.6x406.4"}, {"width_mm", "24 x 16 in", "609.6x406.4"},
		{"width_mm", "24” × 16”", "609.6x406.4"}, {"Width (in)", "24x16", "609.6x406.4"}, {"Width (in)", "24 1/2 x 16", "622.3x406.4"},
		{"width_mm", `2'-6"x1'-0"`, "762x304.8"}, {"Width (cm)", "60x40", "600x400"}, {"width_mm", "0.6 m x 0.4 m", "600x400"},
		{"width_mm", "60 cm x 400 mm", "600x400"}, {"width_mm", "62,5x40", "62.5x40"}, {"width_mm", "1 200x400", "1200x400"},
		{"width_mm", "Ø315", "dia 315"}, {"width_mm", "ø 315 mm", "dia 315"}, {"width_mm", "dia 315", "dia 315"}, {"width_mm", "Dia.315", "dia 315"},
		{"width_mm", "D315", "dia 315"}, {"width_mm", "d = 315", "dia 315"}, {"width_mm", "DN 315", "dia 315"}, {"width_mm", "315 dia", "dia 315"},
		{"width_mm", "315Ø", "dia 315"}, {"width_mm", `12" dia`, "dia 304.8"}, {"width_mm", `12"Ø`, "dia 304.8"}, {"width_mm", `Ø12"`, "dia 304.8"},
		{"width_mm", "525x150 oval", "525x150 oval"}, {"width_mm", "525 x 150 FO", "525x150 oval"}, {"width_mm", "525x150 flat-oval", "525x150 oval"},
		{"width_mm", "600x400/400x300", "600x400 to 400x300"}, {"width_mm", "600x400 - 400x300", "600x400 to 400x300"}, {"width_mm", "Ø315/Ø250", "dia 315 to dia 250"},
		{"width_mm", "600x400 to Ø315", "600x400 to dia 315"}, {"width_mm", `24x16 → 16x12"`, "609.6x406.4 to 406.4x304.8"},
	} {
		found, trouble := asColumn(t, tt.heading).Sizes(tt.cell)
		if got := describe(found); trouble != "" || got != tt.want {
			t.Errorf("%s %q = %s %q, want %s", tt.heading, tt.cell, got, trouble, tt.want)
		}
	}
}

func TestSizesRefused(t *testing.T) {
	for _, tt := range []struct{ cell, says string }{
		{"600/400", "could be 600 wide and 400 high, or two diameters"}, {"315", "could be a diameter or the side of a square"},
		{"600x400x1200", "three figures"}, {"600x", "isn't a"}, {"x400", "isn't a size"}, {"-600x400", "negative"}, {"600x400 kg", "isn't a number"},
		{"24\"x16", "gives the first figure a unit"}, {"1,500x400", "could be 1500 or 1.5"}, {"Ø315x200", "isn't one cross-section"}, {"Ø", "isn't a size"},
		{"600x400 Pa", "doesn't fit"}, {"as drawing", "isn't a size"}, {"Ø315 oval", "isn't one cross-section"}, {"600 400", "isn't a size"},
		{"600x400/400x300/300x200", "three figures"}, {"99999999x1", "too large"},
	} {
		if found, trouble := asColumn(t, "width_mm").Sizes(tt.cell); !strings.Contains(trouble, tt.says) {
			t.Errorf("%q = %s %q, want %q", tt.cell, describe(found), trouble, tt.says)
		}
	}
}

// FuzzSizes: a size that is written out reads back as it was, in either unit;
// other text is a size with sound figures or a fault.
func FuzzSizes(f *testing.F) {
	f.Add("600 x 400 mm", uint16(600), uint16(400), uint8(0))
	f.Add("Ø315/Ø250", uint16(1), uint16(65535), uint8(5))
	f.Fuzz(func(t *testing.T, text string, w, h uint16, form uint8) {
		c := asColumn(t, "width_mm")
		found, trouble := c.Sizes(text)
		if trouble == "" && (len(found) == 0 || len(found) > 2) || trouble != "" && len(found) > 1 && found[0].Shape == fittings.Circular && math.IsNaN(found[0].Diameter) {
			t.Fatalf("%q: %v %q", text, found, trouble)
		}
		for _, z := range found {
			for _, v := range []float64{z.Width, z.Height, z.Diameter} {
				if trouble == "" && !(v >= 0 && v <= c.Max) {
					t.Fatalf("%q: %+v", text, z)
				}
			}
		}
		written := fmt.Sprintf([]string{"%dx%d", "%d x %d mm", "%d X %dmm", "%d mm × %d mm"}[form%4], w, h)
		found, trouble = c.Sizes(written)
		if want := fmt.Sprintf("%dx%d", w, h); trouble != "" || describe(found) != want {
			t.Fatalf("%q = %s %s", written, describe(found), trouble)
		}
		written = fmt.Sprintf([]string{"W%[1]d x H%[2]d", "H%[2]d x W%[1]d mm", "%[2]dh × %[1]dw", "B %[1]d X H %[2]d"}[form/16%4], w, h)
		found, trouble = c.Sizes(written)
		if want := fmt.Sprintf("%dx%d", w, h); trouble != "" || describe(found) != want {
			t.Fatalf("%q = %s %s", written, describe(found), trouble)
		}
		written = fmt.Sprintf([]string{"Ø%d", "dia %d mm", "%d dia", "D%d"}[form/4%4], w)
		found, trouble = c.Sizes(written)
		if want := fmt.Sprintf("dia %d", w); trouble != "" || describe(found) != want {
			t.Fatalf("%q = %s %s", written, describe(found), trouble)
		}
	})
}
