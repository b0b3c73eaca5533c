package schedule

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// FuzzNumber: a cell of a column of numbers is a number within its bounds, or
// trouble that says so; and a number that a person would type plainly is that
// number.
func FuzzNumber(f *testing.F) {
	for i, cell := range []string{"600", "1,500", "1.500,5", "600 mm", `24"`, `2'-6 1/2"`, "-300", "NaN", "1e9", "Ø300", "0x10", "1_000", "٣", "½", "1e-400", "--1", "+ 5", "0.1m", "9" + strings.Repeat("0", 400)} {
		f.Add(cell, uint8(i), i%2 == 0)
	}
	lex, err := headings.BuiltIn()
	if err != nil {
		f.Fatal(err)
	}
	names := []string{"width_mm", "Length (in)", "length m", "Stated area (sq ft)", "angle_deg", "test_pa", "Test pressure (in wg)", "quantity", "offset_mm", "blank minutes", "diameter_mm", "end_minutes", "lining_mm"}
	f.Fuzz(func(t *testing.T, cell string, column uint8, commaFile bool) {
		heading := names[int(column)%len(names)]
		h := lex.Read(heading)
		m := h.Column.Measure()
		if h.Verdict != headings.Known || m == takeoff.Text {
			return
		}
		s := quantity.Column{Unit: h.Unit, Measure: m, Max: quantity.Largest(m), Signed: heading == "offset_mm", CommaFile: commaFile}
		if !h.Said {
			s.Unit = quantity.Default(m)
		}
		if cell = celltext.Trim(cell); cell == "" {
			return
		}
		v, trouble := s.Number(cell)
		switch {
		case trouble != "":
			if v != 0 && !math.IsNaN(v) && strings.TrimSpace(trouble) == "" {
				t.Fatalf("%s %q: %v, %q", heading, cell, v, trouble)
			}
		case math.IsNaN(v), math.Abs(v) > s.Max, v < 0 && !s.Signed, s.Measure == takeoff.Count && v != math.Trunc(v):
			t.Fatalf("%s %q: %v", heading, cell, v)
		case v != 0 && !strings.ContainsAny(cell, "123456789½⅓⅔¼¾⅛⅜⅝⅞١٢٣") && strings.IndexFunc(cell, func(r rune) bool { return r > 0x7f }) < 0:
			t.Fatalf("%s %q: %v out of nothing", heading, cell, v)
		}
		if plain, err := strconv.ParseUint(cell, 10, 16); err == nil && trouble == "" && heading == "width_mm" && v != float64(plain)/1000 {
			t.Fatalf("%q mm is %v m", cell, v)
		}
	})
}

// FuzzHeading: any heading is a column with a unit that fits it, or a verdict that
// it isn't; read again as it was understood it is the same column.
func FuzzHeading(f *testing.F) {
	lex, err := headings.BuiltIn()
	if err != nil {
		f.Fatal(err)
	}
	for c := range takeoff.NumColumns {
		f.Add(c.Heading())
	}
	for _, s := range []string{"Width (mm)", "W", "Length [in]", "Ø", "D", "pressure", "lenght", "mm", "()", "width mm mm in", "\u202ewidth"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, typed string) {
		h := lex.Read(typed)
		if h.Verdict != headings.Known {
			return
		}
		if h.Column >= takeoff.NumColumns || h.Said && h.Unit.Measure != h.Column.Measure() && h.Column.Measure() != takeoff.Text {
			t.Fatalf("%q: %+v", typed, h)
		}
		again := lex.Read(h.Column.Heading())
		if again.Verdict != headings.Known || again.Column != h.Column {
			t.Fatalf("%q is %s, which reads as %+v", typed, h.Column.Heading(), again)
		}
	})
}
