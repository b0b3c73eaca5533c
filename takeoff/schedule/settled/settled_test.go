package settled

import (
	"strings"
	"testing"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/told"
)

// settled reads headings with the rows below them. It gives what each column is read as, with
// its unit, "-" for one that isn't used, and how many faults there were.
func settled(t *testing.T, above string, rows ...string) (string, int) {
	t.Helper()
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	var cells [][]string
	for _, row := range rows {
		cells = append(cells, strings.Split(row, "|"))
	}
	x := &Reading{Reading: columns.Reading{Lex: lex, Found: &told.Findings{}, Units: &columns.Units{}, Look: &told.Sheet{}, Place: takeoff.Place{File: "f", Row: 2}, Heads: cells[:1],
		Below: func(n int) [][]string { return cells[1:][:min(n, len(cells)-1)] }}}
	if above != "" {
		x.Search.Texts = []headrow.Line{{Row: 1, Text: above}}
	}
	hs := headrow.Read(lex, cells[0])
	x.Specs = make([]columns.Spec, len(hs))
	for i, h := range hs {
		x.Specs[i].Set(&x.Reading, h)
	}
	x.SettleAll(nil, 2, false)
	x.Refresh()
	var out []string
	for _, c := range x.Look.Columns {
		switch {
		case c.Reads == "":
			out = append(out, "-")
		case c.Unit == "":
			out = append(out, c.Reads)
		default:
			out = append(out, c.Reads+" "+c.Unit)
		}
	}
	return strings.Join(out, " | "), len(x.Found.Faults)
}

// What headings leave open is settled by the cells below, by each other, or by a line above;
// what nothing settles is asked about.
func TestSettled(t *testing.T) {
	for name, tt := range map[string]struct {
		above string
		rows  []string
		want  string
		asked int
	}{
		"plain":                  {"", []string{"Tag|Kind|Width|Height|Length", "D1|straight|600|400|1500"}, "tag | kind | width_mm mm | height_mm mm | length_mm mm", 0},
		"a line above":           {"All dimensions in cm", []string{"Tag|Kind|Width|Height|Length", "D1|straight|60|40|150"}, "tag | kind | width_mm cm | height_mm cm | length_mm cm", 0},
		"a description of kinds": {"", []string{"Tag|Description|Size|Length (m)", "D1|straight|600x400|3", "D2|bend|600x400|"}, "tag | kind | size mm | length_mm m", 0},
		"sides by letters":       {"", []string{"Tag|Kind|A|B|Length", "D1|straight|600|400|1500"}, "tag | kind | width_mm mm | height_mm mm | length_mm mm", 0},
		"both ends by letters":   {"", []string{"Tag|Kind|A|B|Length", "D1|reducer|600x400|400x300|600"}, "tag | kind | size mm | size2 mm | length_mm mm", 0},
		"twins":                  {"", []string{"Tag|Kind|Width|Breadth|Height", "D1|straight|600|600|400"}, "tag | kind | - | - | height_mm mm", 1},
		"areas beside sizes":     {"", []string{"Tag|Kind|Width|Height|Length|Area (m2)", "D1|straight|600|400|1500|3"}, "tag | kind | width_mm mm | height_mm mm | length_mm mm | stated_area_m2 m2", 0},
		"how many":               {"", []string{"Tag|Kind|Width|Height|Length|Units", "D1|straight|600|400|1500|2", "D2|straight|600|400|1500|1", "D3|straight|600|400|1500|1"}, "tag | kind | width_mm mm | height_mm mm | length_mm mm | quantity", 0},
	} {
		got, asked := settled(t, tt.above, tt.rows...)
		if got != tt.want || asked != tt.asked {
			t.Errorf("%s: %s, %d asked; want %s, %d", name, got, asked, tt.want, tt.asked)
		}
	}
}

// The order of columns settles nothing, but where letters and numbers count them.
func TestOrderOfColumns(t *testing.T) {
	rows := []string{"Tag|Description|Size|Length (m)", "D1|straight|600x400|3", "D2|bend|600x400|"}
	var back []string
	for _, row := range rows {
		c := strings.Split(row, "|")
		back = append(back, strings.Join([]string{c[3], c[2], c[1], c[0]}, "|"))
	}
	got, _ := settled(t, "", back...)
	if want := "length_mm m | size mm | kind | tag"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}
