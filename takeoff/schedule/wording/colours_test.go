package wording

import (
	"slices"
	"testing"
)

// What people call colours; those of the fills and texts that spreadsheets offer.
func TestColourNames(t *testing.T) {
	for _, tt := range []struct {
		rgb  int
		want string // "": none of them
	}{
		{0x808080, "grey"}, {0xbfbfbf, "grey"}, {0xd9d9d9, "grey"}, {0xff0000, "red"}, {0xc00000, "red"}, {0xffff00, "yellow"}, {0xffc000, "orange"}, {0xffc000, "yellow"},
		{0x00b050, "green"}, {0x92d050, "green"}, {0x0070c0, "blue"}, {0x00b0f0, "blue"}, {0x7030a0, "purple"}, {0xff99cc, "pink"}, {0xf2f2f2, ""}, {0xffffff, ""}, {0, ""},
	} {
		got := ColourNames(tt.rgb>>16, tt.rgb>>8&255, tt.rgb&255)
		if tt.want == "" && len(got) > 0 || tt.want != "" && !slices.Contains(got, tt.want) {
			t.Errorf("%06x: %q, want %q", tt.rgb, got, tt.want)
		}
	}
}

func TestColourLegend(t *testing.T) {
	lex := words(t)
	for line, want := range map[string]bool{
		"Texto en gris: existente": true, "Grey = by others": true, "existing": true, "Rot: entfällt": true, "Gråa rader: utgår": true, "Grigio: esistente": true, "Text in gris: vervallen": true,
		"Grey: insulated": false, "Galvanised steel, grey": false, "Sizes are of the metal": false, "All pipes in the existing plant room stay as they are and are not shown": false, "": false,
	} {
		if got := ColourLegend(lex, line, false); got != want {
			t.Errorf("%q: %v", line, got)
		}
	}
}
