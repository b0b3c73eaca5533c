package described

import (
	"testing"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// Words in a column of kinds: with an angle before a bar and a size behind a mark; sizes
// without a unit are left alone where they may be in another unit than mm.
func TestTranslate(t *testing.T) {
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		cell, want string
		inches     bool
	}{
		{"straight", "straight", false}, {"90° bend", "90|bend", false}, {"Bend 45", "45|Bend", false}, {"frobnicator", "", false}, {"~~bend~~", "", false},
		{"Straight duct 600x400", "Straight duct" + BesideMark + string(OfSize) + "600x400", false}, {"Straight duct 600x400", "", true}, {"Straight duct 600x400 mm", "Straight duct" + BesideMark + string(OfSize) + "600x400 mm", true},
		{"Straight 1 600x400", "", false},
	} {
		k := Kinds{Lex: lex, Millimetres: func() bool { return !tt.inches }}
		if got := k.Translate(takeoff.Kind, tt.cell); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.cell, got, tt.want)
		}
	}
}

// A length is the third of three figures only where it is the largest and no thickness.
func TestLengthLast(t *testing.T) {
	for cell, want := range map[string][2]bool{"Duct 600x400x1500": {true, true}, "Duct 1500x600x400": {false, true}, "Duct 600x400x1.5 m": {true, true}, "Duct 60x40x150": {false, true}, "Duct 600x400": {false, false}, "Duct": {false, false}} {
		if last, three := LengthLast(cell); last != want[0] || three != want[1] {
			t.Errorf("%s: %v, %v", cell, last, three)
		}
	}
}
