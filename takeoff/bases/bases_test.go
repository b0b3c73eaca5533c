package bases_test

import (
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/takeoff/bases"
)

func TestBuiltIn(t *testing.T) {
	all := bases.BuiltIn()
	if len(all) != 6 || all[0].Name != "exact" || !all[0].Exact() {
		t.Fatalf("%+v", all)
	}
	seen := map[string]bool{}
	for i, b := range all {
		if b.About == "" || b.Source == "" || b.Sureness == "not stated" || b.Check() != "" || seen[b.String()] || b.Exact() != (i == 0) {
			t.Errorf("%+v", b)
		}
		seen[b.String()] = true
		for _, body := range []string{"EN", "DIN", "ISO", "VOB", "SMACNA", "14239", "Luka", "ASHRAE"} {
			if strings.Contains(strings.ToUpper(b.Name), strings.ToUpper(body)) && body != "EN" || b.Name == body {
				t.Errorf("%s is named after a standard", b.Name)
			}
		}
		if got, err := bases.Lookup(strings.ToUpper(strings.ReplaceAll(b.Name, "-", " "))); err != nil || *got != b {
			t.Errorf("%s: %+v, %v", b.Name, got, err)
		}
	}
	if b, err := bases.Lookup(""); err != nil || b.Name != "exact" {
		t.Errorf("%+v, %v", b, err)
	}
	if _, err := bases.Lookup("middle-line"); err == nil || !strings.Contains(err.Error(), `"middle-line"`) || !strings.Contains(err.Error(), "centre-line") {
		t.Error(err)
	}
	all[0].Name = "mine"
	if bases.BuiltIn()[0].Name != "exact" {
		t.Error("a caller changes the built-in bases")
	}
}

const ownBasis = `name = "ours"
bend_length = "outer edge"
taper_girth = "larger"
taper_length = "axial"
branch_from = "axis"
opening = "kept"
caps = "out"
inline = "excluded"
`

func TestLoad(t *testing.T) {
	b, err := bases.Load(strings.NewReader(ownBasis), "ours.toml")
	if err != nil {
		t.Fatal(err)
	}
	if b.BendLength != fittings.OuterEdge || b.Caps != fittings.CapsOut || b.Inlines != fittings.Excluded || b.Sureness != "not stated" || !strings.Contains(b.Source, "ours") {
		t.Errorf("%+v", b)
	}
	for _, c := range []struct{ old, new, want string }{
		{`"larger"`, `"average"`, `ours.toml: taper_girth = "average": expected faces, mean, larger`},
		{`"larger"`, `"faces"`, "a true face has no axial length"},
		{`"larger"`, `3`, `taper_girth = "3": expected faces, mean, larger`},
		{`caps = "out"`, ``, "caps: missing; expected in, out"},
		{`caps = "out"`, "caps = \"out\"\nwaste = 10", `waste = "10": unknown key; expected one of name,`},
		{`name = "ours"`, `name = "Exact"`, "a built-in basis has this name"},
		{`name = "ours"`, ``, "name: missing"},
		{`name = "ours"`, `name = "--"`, "a letter or digit"},
		{`name = "ours"`, "name = \"ours\"\nsureness = \"sure\"", `sureness = "sure": expected read, second-hand`},
		{`name = "ours"`, "name = \"ours\"\nabout = 7", `about = "7": expected a text in quotes`},
		{`caps = "out"`, `caps out`, "ours.toml: line 7: "},
	} {
		text := strings.Replace(ownBasis, c.old, c.new, 1)
		if _, err := bases.Load(strings.NewReader(text), "ours.toml"); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s for %s: %v", c.new, c.old, err)
		}
	}
	_, err = bases.Load(strings.NewReader("name = \"x\"\n"), "ours.toml")
	if faults, ok := err.(bases.Faults); !ok || len(faults) != 7 {
		t.Errorf("not every fault at once: %v", err)
	}
}
