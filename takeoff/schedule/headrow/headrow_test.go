package headrow

import (
	"strings"
	"testing"

	"blankoff/takeoff/schedule/headings"
)

// A row of headings names a kind or a size and one thing more; titles, rows of pieces and
// labels don't. Two rows joined say more than one where the upper is merged over the lower.
func TestScore(t *testing.T) {
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	row := func(s string) []string { return strings.Split(s, "|") }
	for text, want := range map[string]int{
		"Tag|Kind|Width|Height|Length": 5,
		"tag|width_mm":                 2,
		"Tag|Level|System":             0, // neither a kind nor a size
		"Kind":                         0, // nothing beside it
		"Duct schedule|Level 2":        0,
		"D1|straight|600|400|1500":     0,
		"Width|Width|Width":            0, // one thing three times
		"Pos|Bauteil|Breite|Höhe":      3, // a position may be the tag: asked about
	} {
		if got := Score(Read(lex, row(text))); got != want {
			t.Errorf("%s: %d, want %d", text, got, want)
		}
	}
	top, bottom := row("Tag|Kind|Main||Branch|"), row("||Width|Height|Width|Height")
	both := Join(lex, top, bottom)
	if n := Score(both); n != 6 {
		t.Errorf("joined: %d of 6", n)
	}
	if got := both[5].Column.Heading(); got != "branch_height_mm" {
		t.Errorf("the last is %s", got)
	}
}

// What stands above the headings is quoted, the first rows of it, and a row that turns out to
// be the upper heading row is taken out again.
func TestAbove(t *testing.T) {
	f := Above{Rows: []int{1, 2}, First: "Level 2", Texts: []Line{{Row: 1, Text: "Level 2"}, {Row: 2, Text: "Main"}}}
	if got := f.Quoted(); got != "'Level 2', 'Main'" {
		t.Error(got)
	}
	f.Drop()
	if got := f.Quoted(); got != "'Level 2'" || len(f.Rows) != 1 {
		t.Error(got, f.Rows)
	}
	if f.Drop(); f.First != "" {
		t.Error(f.First)
	}
	for text, want := range map[string]string{"Sizes (inches)": "in", "All in cm": "cm", "cm": "cm", "Insulation thickness (inches)": "", "Level 2": ""} {
		if u, _ := (&Line{Text: text}).Names(); u.Name != want {
			t.Errorf("%q names %q, want %q", text, u.Name, want)
		}
	}
}
