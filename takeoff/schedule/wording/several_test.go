package wording

import (
	"fmt"
	"testing"

	"blankoff/takeoff/schedule/headings"
)

func builtIn(t testing.TB) *headings.Lexicon {
	t.Helper()
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	return lex
}

// TestHowMany counts what tags, levels and systems name, by hand; -1 is a single one.
func TestHowMany(t *testing.T) {
	lex := builtIn(t)
	for tag, want := range map[string]int{"A1-A4": 4, "A5 to A7": 3, "A20 (x3)": 3, "D11x2": 2, "D9 (2 off)": 2, "D10/11": 2, "D14+D15": 2, "D16..D18": 3, "D16a-c": 3,
		"B1 & B2": 2, "D9 LH/RH": 2, "D9 pair": 2, "D4 typ.": 0, "D12": -1, "S1-04": -1, "N1-N2": -1, "SA-01/EA-01": -1} {
		times, several := TagTimes(tag)
		if !several {
			times = -1
		}
		if times != want {
			t.Errorf("tag %s: %d, want %d", tag, times, want)
		}
	}
	for name, want := range map[string]int{"L2-L5": 4, "AHU1 & AHU2": 2, "1-5": 5, "2, 3, 4": 3, "Levels 3 and 4": 2, "Level 2 to Level 6": 5, "2nd to 4th floor": 3, "1. bis 3. OG": 3,
		"AHU 1 (2 off)": 2, "Level 3 x 4": 4, "typical": 0, "all floors": 0, "L1": -1, "Level 12": -1, "2.01": -1, "Roof": -1} {
		is, times := Name(lex, name)
		if is != IsSeveral {
			times = -1
		}
		if times != want {
			t.Errorf("level %s: %d, want %d", name, times, want)
		}
	}
}

// TestRemarks: what remarks say; most say nothing that bears on their row.
func TestRemarks(t *testing.T) {
	lex := builtIn(t)
	for note, want := range map[string]Said{
		"typical of 12": {Of: OfMany, Times: 12}, "x5 floors": {Of: OfMany, Times: 5}, "two of these": {Of: OfMany, Times: 2}, "2 off typical of 4": {Of: OfMany},
		"L1 to L5": {Of: OfMany, Times: 5}, "both floors": {Of: OfMany, Times: 2}, "per floor": {Of: OfCounts}, "reduced to 3": {Of: OfCounts}, "half only": {Of: OfPart},
		"now 700x400": {Of: OfNew | OfSizes, New: [2]float64{700, 400}}, "changed from 600x400 to 700x500": {Of: OfNew | OfSizes, New: [2]float64{700, 500}}, "cut to 1350": {Of: OfNew, New: [2]float64{1350}}, "now 50 insulation": {Of: OfElse},
		"length tbc": {Of: OfUnsized}, "TBC": {Of: OfOpen}, "??": {Of: OfOpen}, "total of 1+2": {Of: OfSum}, "total 1.5 m": {Of: OfElse}, "Summe Pos 1-2": {Of: OfSum}, "S1 total": {Of: OfSum},
		"600 x 400": {Of: OfSizes}, "see typical detail 3": {Of: OfElse}, "50 mm each side": {Of: OfElse}, "also roof cowl": {Of: OfElse}, "Ø200 spigot": {Of: OfSizes}, "insulation 5 cm": {}, "": {},
	} {
		if got := Remark(lex, note); got != want {
			t.Errorf("%q: %+v, want %+v", note, got, want)
		}
	}
}

// BenchmarkRemark looks at remarks that all differ.
func BenchmarkRemark(b *testing.B) {
	lex := builtIn(b)
	notes := make([]string, 1000)
	for i := range notes {
		notes[i] = fmt.Sprintf("see detail %d on drawing M", i)
	}
	for i := range b.N {
		Remark(lex, notes[i%len(notes)])
	}
}
