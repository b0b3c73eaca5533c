package wording

import (
	"testing"

	"blankoff/takeoff/schedule/headings"
)

func words(t *testing.T) *headings.Lexicon {
	t.Helper()
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	return lex
}

// Tags that name several pieces, and those of one piece that look a little like them. A tag
// is plain, so that nobody looks further, only if it names one.
func TestSeveralTags(t *testing.T) {
	for tag, several := range map[string]bool{
		"": false, "D1": false, "D11": false, "S1/2": false, "N1-N2": false, "SA-01-003": false, "2.1.4": false, "A1": false, "AX1": false, "X1": false, "L2-S1-004": false,
		"D11x2": true, "D40 (x3)": true, "D41 2no": true, "D6/D7": true, "D18+19": true, "D23..25": true, "D16a-c": true,
		"A1-A4": true, "A5 to A7": true, "A20 (x3)": true, "A1 bis A3": true, "D1, D2": true, "SA1 & SA2": true, "B7 typ.": true,
	} {
		if _, got := TagTimes(tag); got != several {
			t.Errorf("%q names several: %v, want %v", tag, got, several)
		}
		if several && PlainTag(tag) {
			t.Errorf("%q is plain, and names several", tag)
		}
	}
	for tag, several := range map[string]bool{"40-42": true, "40-40": false, "42-40": false, "1-99": false, "9-10": false, "A40-42": false, "40": false} {
		if got := RangeOfNumbers(tag); got != several {
			t.Errorf("%q is a range: %v, want %v", tag, got, several)
		}
	}
}

// Names of systems and levels of which one may be a sum or several.
func TestName(t *testing.T) {
	lex := words(t)
	for name, want := range map[string]int{"": IsName, "Supply 1": IsName, "Level 2": IsName, "AHU-03": IsName, "1-5": IsSeveral, "2, 3, 4": IsSeveral, "Levels 1 to 4": IsSeveral,
		"01-02": IsName, "Total": IsSum, "Subtotal": IsSum, "Typical floor": IsSeveral, "S1-S4": IsSeveral} {
		if got, _ := Name(lex, name); got != want {
			t.Errorf("%q: %d, want %d", name, got, want)
		}
	}
}

// Lines on units: the unit of all sizes, none where they say several or are about something
// else.
func TestStatedUnit(t *testing.T) {
	lex := words(t)
	for line, want := range map[string]string{
		"All dimensions in mm": "mm", "Dimensions are in inches": "in", "Alle Maße in cm": "cm", "All dimensions in mm, not inches": "?", "W and H in mm, L in m": "?",
		"Level 2 supply": "-", "Ductwork in the roof": "-",
	} {
		u, says := StatedUnit(lex, line)
		got := u.Name
		switch {
		case !says:
			got = "-"
		case got == "":
			got = "?"
		}
		if got != want {
			t.Errorf("%q: %s, want %s", line, got, want)
		}
	}
	across, along, ok := UnitsApart("sizes in mm, lengths in m")
	if !ok || across.Name != "mm" || along.Name != "m" {
		t.Errorf("%s, %s, %v", across.Name, along.Name, ok)
	}
	if _, _, ok := UnitsApart("sizes in mm, insulation thickness in cm"); ok {
		t.Error("insulation is taken for lengths")
	}
}

// Lines that say that rows are there several times, don't count or take the place of others.
func TestLines(t *testing.T) {
	for _, tt := range []struct {
		line                         string
		many, outside, ditto, places bool
	}{
		{"Supply ductwork", false, false, false, false},
		{"Level 3 (4 off)", true, false, false, false},
		{"Typical floor", true, false, false, false},
		{"Existing ductwork", false, true, false, false},
		{"By others", false, true, false, false},
		{"Ditto level 2", false, false, true, false},
		{"This list supersedes issue P2", false, false, false, true},
		{"Ersetzt Blatt 3", false, false, false, true},
	} {
		if many, outside, ditto, places := Many.MatchString(tt.line), Outside.MatchString(tt.line), Ditto.MatchString(tt.line), Replaces.MatchString(tt.line); many != tt.many || outside != tt.outside || ditto != tt.ditto || places != tt.places {
			t.Errorf("%q: several %v, not counted %v, ditto %v, in place of others %v", tt.line, many, outside, ditto, places)
		}
	}
}
