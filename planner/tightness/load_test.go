package tightness

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
)

const hospital = `
name = "hospital trust"
title = "house rules of a trust"
k_unit = "m3/h per m2"
flat_oval_as = "circular"

[exponent]
value = 0.6
source = "trust's specification M12"

[[class]]
name = "theatre"
k = 0.0072
source = "trust's specification M12"
[[class]]
name = "ward"
k = 0.036
[[class]]
name = "plant room"
no_limit = true

[[ceiling]]
classes = ["class Theatre"]
sign = "positive"
pa = 1500
[[ceiling]]
classes = ["ward"]
shapes = ["circular"]
sign = "positive"
pa = 600
[[ceiling]]
classes = ["ward"]
shapes = ["rectangular"]
sign = "positive"
duct_classes_pa = [350, 700]
`

func TestLoadOwnScheme(t *testing.T) {
	s, err := Load(strings.NewReader(hospital), "trust.toml")
	if err != nil {
		t.Fatal(err)
	}
	theatre, err := s.Class("THEATRE")
	if err != nil {
		t.Fatal(err)
	}
	// 0.0072 m3/h is 0.002 L/s; 32^0.6 is 8.
	if got := s.Limit(theatre, 32); math.Abs(got-0.016) > 1e-15 {
		t.Errorf("theatre at 32 Pa: got %g L/s per m2, want 0.016", got)
	}
	if theatre.Source != "trust's specification M12" || theatre.Sureness != NotStated {
		t.Errorf("theatre: source %q, %q", theatre.Source, theatre.Sureness)
	}
	ward, _ := s.Class("ward")
	for _, tt := range []struct {
		c     Class
		shape Shape
		duct  float64
		want  float64 // 0: not known
	}{
		{theatre, Rectangular, 0, 1500}, {ward, Circular, 0, 600}, {ward, FlatOval, 0, 600},
		{ward, Rectangular, 0, 0}, {ward, Rectangular, 350, 350}, {ward, Rectangular, 900, 700},
	} {
		if got := s.Ceiling(tt.c, tt.shape, Positive, tt.duct); got.Pa != tt.want || got.Known != (tt.want > 0) {
			t.Errorf("%s %s, duct %g: got %+v, want %g", tt.c.Name, tt.shape, tt.duct, got, tt.want)
		}
	}
	if _, err := s.Class("plant room"); err == nil || !strings.Contains(err.Error(), "theatre, ward") {
		t.Errorf("plant room sets no limit: %v", err)
	}
	if pa, _, _ := s.UsualPressures(Positive); len(pa) > 0 {
		t.Errorf("usual pressures from nowhere: %v", pa)
	}
}

// The same figures in another unit are the same scheme.
func TestLoadUnits(t *testing.T) {
	base := "name = \"own\"\nk_unit = %u\n[exponent]\nvalue = 0.65\n[[class]]\nname = \"B\"\nk = %k\n"
	for unit, k := range map[string]string{
		"L/s per m2": "0.009", "m3/s per m2": "9e-6", "m3/h per m2": "0.0324",
		"cfm per 100 ft2 at 1 in. w.g.": "6.397483", // 0.009 x 249.08891^0.65 / 0.0508, by a calculator
	} {
		text := strings.NewReplacer("%u", `"`+unit+`"`, "%k", k).Replace(base)
		s, err := Load(strings.NewReader(text), "own.toml")
		if err != nil {
			t.Errorf("%s: %v", unit, err)
			continue
		}
		if c, _ := s.Class("B"); math.Abs(c.K/0.009-1) > 1e-6 {
			t.Errorf("%s: k is %.9f, want 0.009", unit, c.K)
		}
	}
}

func TestLoadNumberedScheme(t *testing.T) {
	text := "name = \"own CL\"\nnumbered = true\nk_unit = \"cfm per 100 ft2 at 1 in. w.g.\"\n[exponent]\nvalue = 0.65\n[[class]]\nname = \"9\"\n[[class]]\nname = \"7.50\"\n"
	s, err := Load(strings.NewReader(text), "own.toml")
	if err != nil {
		t.Fatal(err)
	}
	us, six := class(t, "US", "6")
	own, err := s.Class("6")
	if err != nil || us.Limit(six, 500) != s.Limit(own, 500) {
		t.Errorf("class 6: got %g, %v; want what US gives", s.Limit(own, 500), err)
	}
	// So many digits that k is beyond any number.
	huge := strings.Replace(text, "cfm per 100 ft2 at 1 in. w.g.", "m3/s per m2", 1)
	huge = strings.NewReplacer(`"9"`, `"0.009"`, `"7.50"`, `"0.0075"`).Replace(huge)
	metric, err := Load(strings.NewReader(huge), "own.toml")
	if err != nil {
		t.Fatal(err)
	}
	if c, err := metric.Class("1" + strings.Repeat("0", 307)); err == nil {
		t.Errorf("a class with k = %g", c.K)
	}
	var names []string
	for _, c := range s.Classes() {
		names = append(names, c.Name)
	}
	if !slices.Equal(names, []string{"9", "7.5"}) {
		t.Errorf("usual classes: %v", names)
	}
}

const slipScheme = `
nmae = "slip"
k_unit = "furlongs"
flat_oval_as = "flat-oval"
sureness = "quite"
[exponent]
value = 1.65
power = 2
[min_area]
m2 = -10
[[class]]
name = "A"
k = "0.027"
[[class]]
name = "class a"
k = 0.009
[[class]]
name = "B"
k = nan
no_limit = true
[[class]]
k = 97.2
shape = "square"
[[ceiling]]
classes = ["E"]
sign = "up"
pa = 500
duct_class = true
[[ceiling]]
shapes = ["circular"]
sign = "positive"
pa = 500
[[ceiling]]
classes = ["A"]
sign = "positive"
duct_classes_pa = [1000, 400]
[[usual_pressures]]
pa = []
`

// Every fault is named in one go, with its table and key.
func TestLoadFindsEveryFault(t *testing.T) {
	_, err := Load(strings.NewReader(slipScheme), "slip.toml")
	var faults Faults
	if !errors.As(err, &faults) {
		t.Fatalf("got %v, want Faults", err)
	}
	for _, want := range []string{
		"nmae: unknown key", "name: missing", `k_unit = "furlongs"`, `flat_oval_as = "flat-oval"`, `sureness = "quite"`,
		"exponent: value = 1.65", "exponent: power: unknown key", "min_area: m2 = -10",
		`class "A": k = "0.027"`, `class "class a": name`, `class "B": k = NaN`, `class 4: name: missing`, `class 4: k = 97.2`, `class 4: shape = "square"`,
		"ceiling 1: classes", `ceiling 1: sign = "up"`, "ceiling 1: pa = 500: missing or contradicted",
		"ceiling 3: duct_classes_pa", "ceiling 3: classes", "usual_pressures 1: sign: missing", "usual_pressures 1: pa",
	} {
		if !strings.Contains(flat(err.Error()), want) {
			t.Errorf("not found: %s", want)
		}
	}
	for _, f := range faults {
		if f.File != "slip.toml" || f.Expected == "" {
			t.Errorf("no file or no cure: %+v", f)
		}
	}
	if t.Failed() {
		t.Log("\n" + err.Error())
	}
}

// flat drops the quotes and unknown key's quoted value between key and fault.
func flat(s string) string {
	return strings.NewReplacer(`nmae = "slip": `, "nmae: ", "power = 2: ", "power: ").Replace(s)
}

func TestLoadRefusals(t *testing.T) {
	body := "\n[exponent]\nvalue = 0.65\n[[class]]\nname = \"A\"\nk = 0.027\n"
	tests := []struct{ what, text, says string }{
		{"not TOML", "name = \nx", "line 1"},
		{"a built-in scheme's name", "name = \"en 1507\"" + body, "built-in scheme has this name"},
		{"no classes", "name = \"x\"\n[exponent]\nvalue = 0.65\n", "class: missing"},
		{"a class without limit only", "name = \"x\"\n[exponent]\nvalue = 0.65\n[[class]]\nname = \"A\"\nno_limit = true\n", "at least one class that sets a limit"},
		{"no exponent", "name = \"x\"\n[[class]]\nname = \"A\"\nk = 0.027\n", "exponent: missing"},
		{"class is no table", "name = \"x\"\nclass = 3\n[exponent]\nvalue = 0.65\n", "list of tables [[class]]"},
		{"one class as a single table", "name = \"x\"\n[exponent]\nvalue = 0.65\n[class]\nname = \"A\"\n", "list of tables [[class]]"},
		{"classes listed, but none", "name = \"x\"\nclass = []\n[exponent]\nvalue = 0.65\n", "at least one [[class]]"},
		{"k is nan", "name = \"x\"\n[exponent]\nvalue = 0.65\n[[class]]\nname = \"A\"\nk = nan\n", "k = NaN"},
		{"unknown keys in order of name", "zeta = 1\nbeta = 1\nmu = 1\nalpha = 1\nname = \"x\"" + body, "x.toml: alpha = 1"},
		{"wrong case of a key", "Name = \"x\"" + body, "Name"},
		{"the name isn't a text", "name = 5" + body, "a text in quotes"},
		{"a ceiling twice", "name = \"x\"" + body + "[[ceiling]]\nsign = \"positive\"\npa = 1\n[[ceiling]]\nclasses = [\"A\"]\nsign = \"positive\"\npa = 2\n", "as ceiling 1"},
		{"k of a numbered scheme", "name = \"x\"\nnumbered = true" + body, "the class's number"},
		{"duct_class = false", "name = \"x\"" + body + "[[ceiling]]\nsign = \"positive\"\nduct_class = false\n", "true, or pa"},
	}
	for _, tt := range tests {
		s, err := Load(strings.NewReader(tt.text), "x.toml")
		if err == nil || s != nil || !strings.Contains(err.Error(), tt.says) || !strings.HasPrefix(err.Error(), "x.toml: ") {
			t.Errorf("%s: got %v, %v; want an error that says %s", tt.what, s, err, tt.says)
		}
	}
}

// Either an error, or a scheme all of whose classes can be found again by name
// and give limits and ceilings that are finite and above 0; never both.
func FuzzLoad(f *testing.F) {
	f.Add(hospital)
	for _, name := range Names() {
		raw, err := data.ReadFile("data/" + strings.ToLower(name) + ".toml")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(strings.Replace(string(raw), `name = "`+name+`"`, `name = "own"`, 1))
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := Load(strings.NewReader(text), "fuzz.toml")
		if (err == nil) != (s != nil) {
			t.Fatalf("scheme %v and error %v", s, err)
		}
		if err != nil {
			var faults Faults
			if !errors.As(err, &faults) || len(faults) == 0 {
				t.Fatalf("not faults: %v", err)
			}
			return
		}
		if len(s.Classes()) == 0 {
			t.Fatal("a scheme without classes")
		}
		for _, c := range s.Classes() {
			again, err := s.Class(c.Name)
			if err != nil || again.K != c.K {
				t.Fatalf("class %q isn't found again: %v, %v", c.Name, again, err)
			}
			low, high := s.Limit(c, 100), s.Limit(c, 400)
			if !(low > 0) || !(high > low) || math.IsInf(high, 0) {
				t.Fatalf("class %q: limits %g and %g at 100 and 400 Pa", c.Name, low, high)
			}
			for _, shape := range Shapes() {
				got := s.Ceiling(c, shape, Positive, 0)
				if got.Known != (got.Pa > 0) || math.IsNaN(got.Pa) || got.Reason == "" {
					t.Fatalf("class %q %s: %+v", c.Name, shape, got)
				}
			}
		}
	})
}
