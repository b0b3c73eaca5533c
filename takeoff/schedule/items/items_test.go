package items

import (
	"fmt"
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/settled"
	"blankoff/takeoff/schedule/told"
)

// readRow reads a row under headings.
func readRow(t *testing.T, heads, cells string) *takeoff.Row {
	t.Helper()
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	x := &Reader{Reading: settled.Reading{Reading: columns.Reading{Lex: lex, Found: &told.Findings{}, Units: &columns.Units{}, Look: &told.Sheet{}, Place: takeoff.Place{File: "f", Row: 2}}}}
	hs := headrow.Read(lex, strings.Split(heads, "|"))
	x.Specs = make([]columns.Spec, len(hs))
	for i, h := range hs {
		x.Specs[i].Set(&x.Reading.Reading, h)
	}
	x.SettleAll(nil, 1, false)
	x.WatchUnused()
	r := &takeoff.Row{}
	r.Reset(x.Place)
	x.Fill(r, strings.Split(cells, "|"), nil)
	x.Settle(r, "")
	return r
}

// The cells of a row in m, and how many of them are refused. Sizes are in mm unless said.
func TestReadRow(t *testing.T) {
	const heads = "tag|kind|width_mm|height_mm|diameter_mm|length_mm|quantity|note|status"
	for name, tt := range map[string]struct {
		heads, cells                    string
		width, height, diameter, length float64
		faults                          int
	}{
		"sides":                  {heads, "D1|straight|600|400||1500|1||", 0.6, 0.4, 0, 1.5, 0},
		"a unit in a cell":       {heads, "D1|straight|60 cm|400||1.5 m|1||", 0.6, 0.4, 0, 1.5, 0},
		"inches":                 {heads, "D1|straight|24\"|16\"||5 ft|1||", 0.6096, 0.4064, 0, 1.524, 0},
		"a whole size":           {"tag|kind|size|length_mm", "D1|straight|600x400|1500", 0.6, 0.4, 0, 1.5, 0},
		"a diameter":             {"tag|kind|size|length_mm", "D1|straight|Ø315|3000", 0, 0, 0.315, 3, 0},
		"a size beside the kind": {"tag|kind|length_mm", "D1|Straight duct 600x400|1500", 0.6, 0.4, 0, 1.5, 0},
		"circular by its width":  {heads, "D1|round duct|315|||3000|1||", 0, 0, 0.315, 3, 0},
		"a zero beside sides":    {heads, "D1|straight|600|400|0|1500|1||", 0.6, 0.4, 0, 1.5, 0},
		"no number":              {heads, "D1|straight|wide|400||1500|1||", 0, 0.4, 0, 1.5, 1},
		"an error":               {heads, "D1|straight|#REF!|400||1500|1||", 0, 0.4, 0, 1.5, 1},
		"struck out":             {heads, "D1|straight|600|400||1500|1||omitted", 0.6, 0.4, 0, 1.5, 1},
		"several tags":           {heads, "D1-D4|straight|600|400||1500|1||", 0.6, 0.4, 0, 1.5, 1},
		"several and counted":    {heads, "D1-D4|straight|600|400||1500|4||", 0.6, 0.4, 0, 1.5, 0},
		"a remark that counts":   {heads, "D1|straight|600|400||1500|1|4 off|", 0.6, 0.4, 0, 1.5, 1},
		"a kind in doubt":        {heads, "D1|straight?|600|400||1500|1||", 0.6, 0.4, 0, 1.5, 1},
	} {
		r := readRow(t, tt.heads, tt.cells)
		got := ""
		for _, c := range columns.Own {
			got += fmt.Sprintf("%.4f ", r.Number[c])
		}
		got += fmt.Sprintf("%.4f, %d faults", r.Number[takeoff.DimColumn(fittings.Length)], len(r.Faults))
		if want := fmt.Sprintf("%.4f %.4f %.4f %.4f, %d faults", tt.width, tt.height, tt.diameter, tt.length, tt.faults); got != want {
			t.Errorf("%s: %s, want %s: %v", name, got, want, r.Faults)
		}
	}
}
