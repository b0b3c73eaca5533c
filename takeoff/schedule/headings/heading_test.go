package headings

import (
	"strings"
	"testing"

	"blankoff/takeoff"
)

// column finds a column by its canonical heading.
func column(t testing.TB, canonical string) takeoff.Column {
	t.Helper()
	for c := range takeoff.NumColumns {
		if c.Heading() == canonical {
			return c
		}
	}
	t.Fatalf("no column %s", canonical)
	return 0
}

func lexicon(t testing.TB) *Lexicon {
	t.Helper()
	l, err := BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func read(t testing.TB, typed string) Heading {
	t.Helper()
	return lexicon(t).Read(strings.TrimSpace(typed))
}

func TestHeadingsKnown(t *testing.T) {
	tests := []struct{ typed, column, unit string }{
		{"Width (mm)", "width_mm", "mm"}, {"width_mm", "width_mm", "mm"}, {"WIDTH", "width_mm", ""}, {"W", "width_mm", ""},
		{"Width [in]", "width_mm", "in"}, {"length m", "length_mm", "m"}, {"  Width, mm ", "width_mm", "mm"},
		{"Width in mm", "width_mm", "mm"}, {"Width in inches", "width_mm", "in"}, {"Width (in)", "width_mm", "in"},
		{`Width (")`, "width_mm", "in"}, {`W "`, "width_mm", "in"}, {"W (ft.)", "width_mm", "ft"}, {"Length (feet)", "length_mm", "ft"},
		{"WidthMM", "width_mm", "mm"}, {"branch width", "branch_width_mm", ""}, {"BranchWidth_cm", "branch_width_mm", "cm"},
		{"Width\n(mm)", "width_mm", "mm"}, {"Depth mm", "height_mm", "mm"}, {"H", "height_mm", ""},
		{"Ø", "diameter_mm", ""}, {"Ø (mm)", "diameter_mm", "mm"}, {"Dia.", "diameter_mm", ""}, {"D2", "diameter2_mm", ""},
		{"Width 2 (mm)", "width2_mm", "mm"}, {"W2", "width2_mm", ""}, {"2nd width", "", ""},
		{"Qty", "quantity", ""}, {"Q'ty", "quantity", ""}, {"No. off", "quantity", ""}, {"Nr off", "quantity", ""},
		{"Floor", "level", ""}, {"Storey", "level", ""}, {"Fitting type", "kind", ""}, {"Piece No.", "tag", ""},
		{"Angle (°)", "angle_deg", "deg"}, {"Bend angle [deg]", "angle_deg", "deg"},
		{"radius_mm", "radius_mm", "mm"}, {"Radius (in)", "radius_mm", "in"}, {"Centre-line radius", "radius_mm", ""},
		{"Throat radius", "throat_mm", ""}, {"Inside radius mm", "throat_mm", "mm"},
		{"Test pressure (Pa)", "test_pa", "Pa"}, {"test_pa", "test_pa", "Pa"}, {"Test pressure", "test_pa", ""},
		{"Test pressure in. w.g.", "test_pa", "in w.g."}, {"Design pressure (in wg)", "design_pa", "in w.g."},
		{"Pressure class", "duct_class_pa", ""}, {"duct class (Pa)", "duct_class_pa", "Pa"}, {"Class", "class", ""},
		{"Leakage class", "class", ""}, {"Test (kPa)", "test_pa", "kPa"},
		{"Stated area (m²)", "stated_area_m2", "m2"}, {"Stated area sq ft", "stated_area_m2", "ft2"}, {"area_m2", "area_m2", "m2"},
		{"blank_minutes", "blank_minutes", ""}, {"Blanking (min)", "blank_minutes", "min"}, {"end minutes", "end_minutes", "min"},
		{"at (mm)", "at_mm", "mm"}, {"From", "from", ""}, {"offset 2 (mm)", "offset2_mm", "mm"},
	}
	for _, tt := range tests {
		h := read(t, tt.typed)
		if tt.column == "" {
			if h.Verdict == Known {
				t.Errorf("%q is taken for %s", tt.typed, h.Column.Heading())
			}
			continue
		}
		if h.Verdict != Known || h.Column != column(t, tt.column) {
			t.Errorf("%q: verdict %d, column %s; want %s", tt.typed, h.Verdict, h.Column.Heading(), tt.column)
			continue
		}
		if h.Said != (tt.unit != "") && h.Column.Measure() != takeoff.Text && h.Column.Measure() != takeoff.Count {
			t.Errorf("%q: says a unit: %v; want %q", tt.typed, h.Said, tt.unit)
		}
		if tt.unit != "" && h.Unit.Name != tt.unit {
			t.Errorf("%q: unit %s, want %s", tt.typed, h.Unit.Name, tt.unit)
		}
	}
}

// Every canonical heading is known, in any case and punctuation, and no alias
// means another column's canonical name.
func TestCanonicalHeadings(t *testing.T) {
	for c := range takeoff.NumColumns {
		for _, typed := range []string{c.Heading(), strings.ToUpper(c.Heading()), strings.ReplaceAll(c.Heading(), "_", " "), strings.ReplaceAll(c.Heading(), "_", "-") + "."} {
			if h := read(t, typed); h.Verdict != Known || h.Column != c {
				t.Errorf("%q: verdict %d, column %s", typed, h.Verdict, h.Column.Heading())
			}
		}
	}
}

func TestHeadingsNotAssumed(t *testing.T) {
	tests := []struct {
		typed   string
		verdict Verdict
		near    string
	}{
		{"widht", Near, "width_mm"}, {"lenght mm", Near, "length_mm"}, {"Hieght (mm)", Near, "height_mm"}, {"Diamter", Near, "diameter_mm"},
		{"Quanity", Near, "quantity"}, {"knid", Near, "kind"}, {"branch widht (mm)", Near, "branch_width_mm"}, {"Test presure", Near, "test_pa"},
		{"Pressure", Asks, ""}, {"Pressure (Pa)", Asks, ""}, {"Static pressure", Asks, ""}, {"Size", Sizes, ""}, {"Size (mm)", Sizes, ""}, {"Section", Asks, ""}, {"Plan", Asks, ""},
		{"Radius", Asks, ""}, {"R (mm)", Asks, ""}, {"Area", Asks, ""}, {"Surface area (m2)", Asks, ""}, {"Type", Asks, ""},
		{"Seal class", Asks, ""}, {"Upstream", Asks, ""}, {"Units", Asks, ""}, {"Total length (m)", Asks, ""}, {"No.", Asks, ""},
		{"Width (Pa)", Misfit, ""}, {"Length (m2)", Misfit, ""}, {"Quantity (m)", Misfit, ""}, {"Test pressure (mm)", Misfit, ""},
		{"Weight", Unknown, ""}, {"Weight (kg)", Unknown, ""}, {"Supplier", Unknown, ""}, {"Gauge", Unknown, ""}, {"Velocity m/s", Unknown, ""},
		{"", Blank, ""}, {"   ", Blank, ""}, {"***", Unknown, ""}, {"600", Unknown, ""}, {"mm", Unknown, ""},
	}
	for _, tt := range tests {
		h := read(t, tt.typed)
		if h.Verdict != tt.verdict {
			t.Errorf("%q: verdict %d (%s), want %d", tt.typed, h.Verdict, h.Column.Heading(), tt.verdict)
		} else if tt.near != "" && h.Column.Heading() != tt.near {
			t.Errorf("%q: nearest is %s, want %s", tt.typed, h.Column.Heading(), tt.near)
		}
	}
}

func TestDistance(t *testing.T) {
	tests := []struct {
		a, b string
		want int
	}{
		{"width", "width", 0}, {"widht", "width", 1}, {"with", "width", 1}, {"widthh", "width", 1}, {"wodth", "width", 1},
		{"lenght", "length", 1}, {"hieght", "height", 1}, {"abc", "cab", 2}, {"abcdef", "xyz", 3},
	}
	for _, tt := range tests {
		if d := distance(tt.a, tt.b, 3); d != tt.want {
			t.Errorf("distance(%s, %s) = %d, want %d", tt.a, tt.b, d, tt.want)
		}
		if a, b := distance(tt.a, tt.b, 3), distance(tt.b, tt.a, 3); a != b {
			t.Errorf("distance(%s, %s) isn't the same both ways", tt.a, tt.b)
		}
	}
}
