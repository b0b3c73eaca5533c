package fittings

import (
	"math"
	"math/rand"
	"strings"
	"testing"
)

// The bases of the tests, by the words of their switches. The built-in ones are
// files of the takeoff, which holds them to the published figures.
var (
	byCentreLine   = Basis{Name: "centre-line", TaperGirth: MeanGirth, TaperLength: Axial, BranchFrom: FromFace, Openings: Kept}
	byIntersection = Basis{Name: "to-intersection", BendLength: ToIntersection, TaperGirth: LargerGirth, TaperLength: Axial, BranchFrom: FromAxis, Openings: Kept}
	byLargest      = Basis{Name: "largest-girth", BendLength: OuterEdge, TaperGirth: LargerGirth, BranchFrom: FromFace, Openings: Kept}
)

// on is the area of a piece that must have no problems on a basis.
func on(t testing.TB, p *Piece, b Basis, text string) (area, opening float64) {
	t.Helper()
	area, opening, problems := AreaOn(p, &b)
	if len(problems) > 0 {
		t.Fatalf("%s on %s: %+v", text, b.Name, problems)
	}
	return area, opening
}

// randomPieces calls f for a few random pieces of every kind, style and shape.
func randomPieces(t *testing.T, seed int64, f func(p *Piece, text string)) {
	t.Helper()
	r := rand.New(rand.NewSource(seed))
	for _, c := range randomRows {
		for range 8 {
			text := c.row(r)
			f(row(t, text), text)
		}
	}
}

// TestAreasSideBySide holds the exact area and three bases to figures that were
// worked out from the words of the rules, apart from this program.
func TestAreasSideBySide(t *testing.T) {
	for _, c := range []struct {
		row                                  string
		exact, centre, intersection, largest float64 // m2; 0: not worked out
	}{
		{"kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=90, legs_mm=30", 1.376637, 1.376637, 1.720000, 2.319115},
		{"kind=bend, style=mitred, width_mm=600, height_mm=400, angle_deg=90, legs_mm=85", 1.540000, 1.540000, 1.540000, 2.740000},
		{"kind=bend, diameter_mm=315, radius_mm=315, angle_deg=90", 0.489656, 0.489656, 0.623449, 0.734484},
		{"kind=bend, diameter_mm=315, radius_mm=315, angle_deg=45", 0.244828, 0.244828, 0.258241, 0.367242},
		{"kind=reducer, width_mm=600, height_mm=400, width2_mm=400, height2_mm=300, length_mm=500", 0.859425, 0.850000, 1.000000, 1.019804},
		{"kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=300", 0.401901, 0.384060, 0.471239, 0.493131},
		{"kind=reducer, diameter_mm=315, diameter2_mm=500, length_mm=300", 0.401901, 0.384060, 0.471239, 0.493131},
		{"kind=offset, style=straight, width_mm=600, height_mm=400, length_mm=800, offset_mm=300", 1.643520, 1.708801, 1.708801, 1.708801},
		{"kind=tee, width_mm=600, height_mm=400, length_mm=800, branch_width_mm=300, branch_height_mm=300, branch_length_mm=150", 1.690000, 1.780000, 2.020000, 1.780000},
		{"kind=tee, diameter_mm=315, length_mm=320, branch_diameter_mm=200, branch_length_mm=60", 0.331957, 0.354372, 0.453332, 0.354372},
		{"kind=tee, diameter_mm=315, length_mm=435, branch_diameter_mm=315, branch_length_mm=60", 0.447265, 0.489853, 0.645715, 0.489853},
		{"kind=tee, diameter_mm=500, length_mm=450, branch_diameter_mm=250, branch_length_mm=100", 0.747528, 0.785398, 0.981748, 0.785398},
		// twice the branches: 2 pi 0.5 x 0.6 / 2 + 2 x pi 0.25 x (0.1 or 0.35)
		{"kind=cross, diameter_mm=500, length_mm=600, branch_diameter_mm=250, branch_length_mm=100", 1.023816, 1.099557, 1.492257, 1.099557},
		{"kind=cap, width_mm=600, height_mm=400", 0.24, 0.24, 0.24, 0.24},
		{"kind=plenum, width_mm=1000, height_mm=800, length_mm=500", 3.4, 3.4, 3.4, 3.4},
		{"kind=flexible, diameter_mm=200, length_mm=1000", 0.628319, 0.628319, 0.628319, 0.628319},
		// two bends W 400, H 400, throat 100: P 1.6, Rc 0.3, outer edge 0.5
		{"kind=breeches, width_mm=800, height_mm=400, throat_mm=100, angle_deg=90", 1.507964, 1.507964, 1.92, 2.513274},
		// 45 degrees: the main's axis is 0.25 / sin 45 behind its crown
		{"kind=spigot, from=circular 500, branch_diameter_mm=250, branch_angle_deg=45, branch_length_mm=196.446609", 0.172556, 0.154289, 0.431969, 0.154289},
		{"kind=spigot, style=conical, from=plenum, branch_diameter_mm=200, entry_mm=300, branch_length_mm=100", 0.087810, 0.078540, 0.094248, 0.094248},
	} {
		p := row(t, c.row)
		for _, of := range []struct {
			basis Basis
			want  float64
		}{{Basis{}, c.exact}, {byCentreLine, c.centre}, {byIntersection, c.intersection}, {byLargest, c.largest}} {
			if got, _ := on(t, p, of.basis, c.row); of.want != 0 && math.Abs(got-of.want) > 1.01e-6 {
				t.Errorf("%s on %s: %.6f, want %.6f", c.row, of.basis.Name, got, of.want)
			}
		}
	}
}

// TestExactBasisIsMeasure: with every switch that touches a kind at its exact
// choice, whatever the others say, the area is Measure's to the last bit.
func TestExactBasisIsMeasure(t *testing.T) {
	untouched := map[Kind]Basis{
		Tee:      {Inlines: Excluded, Caps: CapsOut, BendLength: OuterEdge, TaperGirth: LargerGirth},
		Bend:     {Inlines: Excluded, Caps: CapsOut, Openings: Kept, BranchFrom: FromAxis},
		Cap:      {Inlines: Excluded, BendLength: OuterEdge, TaperGirth: LargerGirth, Openings: Kept, BranchFrom: FromAxis},
		Inline:   {Caps: CapsOut, BendLength: OuterEdge, TaperGirth: LargerGirth, Openings: Kept, BranchFrom: FromAxis},
		Straight: {Caps: CapsOut, Inlines: Excluded, BendLength: OuterEdge, TaperGirth: LargerGirth, Openings: Kept, BranchFrom: FromAxis},
	}
	for like, kinds := range map[Kind][]Kind{Tee: {Cross, Spigot}, Bend: {Offset, Reducer, Transition, Breeches}, Straight: {Flexible, Plenum}} {
		for _, k := range kinds {
			untouched[k] = untouched[like]
		}
	}
	randomPieces(t, 21, func(p *Piece, text string) {
		m := measuredPiece(t, p, text)
		for _, b := range []Basis{{}, untouched[p.Kind]} {
			opening := m.Opening
			if area, got := on(t, p, b, text); area != m.Area || got != opening {
				t.Errorf("%s on %s: %g and %g, want %g and %g", text, b.String(), area, got, m.Area, opening)
			}
		}
		if area, _, _ := AreaOn(p, nil); area != m.Area {
			t.Errorf("%s on no basis: %g", text, area)
		}
		if got := WorkingOn(p, nil); got != Working(p) {
			t.Errorf("%s: %s", text, got)
		}
	})
}

// TestChoicesAreInOrder: whatever the other switches say, the larger girth gives
// no less than the mean, the outer edge and the intersection no less than the
// centre line, the slant no less than the axis, the main's axis no less than its
// face, kept openings no less than deducted ones, and caps and in-line parts that
// count no less than those that don't.
func TestChoicesAreInOrder(t *testing.T) {
	r := rand.New(rand.NewSource(22))
	for _, c := range []struct {
		less, more func(*Basis)
	}{
		{func(b *Basis) { b.TaperGirth = MeanGirth }, func(b *Basis) { b.TaperGirth = LargerGirth }},
		{func(b *Basis) { b.BendLength = CentreLine }, func(b *Basis) { b.BendLength = OuterEdge }},
		{func(b *Basis) { b.BendLength = CentreLine }, func(b *Basis) { b.BendLength = ToIntersection }},
		{func(b *Basis) { b.TaperLength = Axial }, func(b *Basis) { b.TaperLength = Slant }},
		{func(b *Basis) { b.BranchFrom = FromFace }, func(b *Basis) { b.BranchFrom = FromAxis }},
		{func(b *Basis) { b.Openings = Deducted }, func(b *Basis) { b.Openings = Kept }},
		{func(b *Basis) { b.Caps = CapsOut }, func(b *Basis) { b.Caps = CapsIn }},
		{func(b *Basis) { b.Inlines = Excluded }, func(b *Basis) { b.Inlines = MeasuredThrough }},
	} {
		randomPieces(t, 23, func(p *Piece, text string) {
			low := randomBasis(r)
			high := low
			c.less(&low)
			c.more(&high)
			square := p.Style == SquareHeel || low.TaperGirth == Faces && p.Sizes.Has(Width2)
			if square && low.BendLength != high.BendLength {
				return // its true faces are no girth x length, so the order doesn't hold
			}
			a, _ := on(t, p, low, text)
			b, _ := on(t, p, high, text)
			if !(a <= b*(1+1e-12)) {
				t.Errorf("%s: %g on %s, %g on %s", text, a, low.String(), b, high.String())
			}
		})
	}
}

func randomBasis(r *rand.Rand) Basis {
	var b Basis
	for i, choice := range b.choices() {
		*choice = uint8(r.Intn(len(switches[i].Words)))
	}
	return b
}

// TestBasesScale: twice the size is four times the area on every basis.
func TestBasesScale(t *testing.T) {
	r := rand.New(rand.NewSource(24))
	randomPieces(t, 25, func(p *Piece, text string) {
		b := randomBasis(r)
		area, opening := on(t, p, b, text)
		twice, wider := on(t, doubled(p), b, text)
		if math.Abs(twice-4*area) > 1e-10*area || math.Abs(wider-4*opening) > 1e-10*opening {
			t.Errorf("%s on %s: %g and %g, doubled %g and %g", text, b.String(), area, opening, twice, wider)
		}
	})
}

// TestBasisWorkingsCanBeRedone redoes the workings of random pieces on random
// bases, and finds the area.
func TestBasisWorkingsCanBeRedone(t *testing.T) {
	r := rand.New(rand.NewSource(26))
	randomPieces(t, 27, func(p *Piece, text string) {
		b := randomBasis(r)
		area, _ := on(t, p, b, text)
		working := WorkingOn(p, &b)
		if area == 0 {
			if !strings.HasSuffix(working, "isn't counted = 0.000 m2") {
				t.Errorf("%s on %s: %s", text, b.String(), working)
			}
			return
		}
		last := 0.0
		for line := range strings.SplitSeq(working, "; ") {
			last = redoLine(t, text+" on "+b.String(), line)
		}
		if math.Abs(last-area) > 1e-6 {
			t.Errorf("%s on %s: %.6f, area %.6f: %s", text, b.String(), last, area, working)
		}
	})
}

// TestBasisWorkingsAsPrinted holds a few workings word for word.
func TestBasisWorkingsAsPrinted(t *testing.T) {
	for _, c := range []struct {
		row  string
		on   Basis
		want string
	}{
		{"kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=90, legs_mm=30", byLargest,
			"2 x (0.600 + 0.400) x (0.700 x pi x 90 / 180 + 2 x 0.030) = 2.319115 m2"},
		{"kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=90, legs_mm=30", byIntersection,
			"2 x (0.600 + 0.400) x (2 x 0.400 x tan(90 / 2) + 2 x 0.030) = 1.720 m2"},
		{"kind=reducer, width_mm=600, height_mm=400, width2_mm=400, height2_mm=300, length_mm=500", byCentreLine,
			"(2 x (0.600 + 0.400) + 2 x (0.400 + 0.300)) / 2 x 0.500 = 0.850 m2"},
		{"kind=reducer, width_mm=600, height_mm=400, width2_mm=400, height2_mm=300, length_mm=500", byLargest,
			"2 x (0.600 + 0.400) x sqrt(0.500^2 + 0.100^2) = 1.019804 m2"},
		{"kind=tee, width_mm=600, height_mm=400, length_mm=800, branch_width_mm=300, branch_height_mm=300, branch_length_mm=150", byIntersection,
			"main: 2 x (0.600 + 0.400) x 0.800 = 1.600 m2; branch: 2 x (0.300 + 0.300) x (0.400 / 2 + 0.150) = 0.420 m2; total: 1.600 + 0.420 = 2.020 m2"},
		{"kind=cap, diameter_mm=315", Basis{Caps: CapsOut}, "a cap isn't counted = 0.000 m2"},
		{"kind=bend, area_m2=1.5", byLargest, "given area = 1.500 m2"},
	} {
		if got := WorkingOn(row(t, c.row), &c.on); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.row, got, c.want)
		}
	}
	if got := (CrossSection{Shape: Rectangular, Width: 0.6, Height: 0.4}).FaceWorking(); got != "0.600 x 0.400 = 0.240 m2" {
		t.Error(got)
	}
}

// TestWhatABasisCannotChange: a given area stands on every basis, and a bend whose
// centre lines don't meet is refused only where they are asked for.
func TestWhatABasisCannotChange(t *testing.T) {
	r := rand.New(rand.NewSource(28))
	for _, text := range []string{"kind=bend, area_m2=1.5", "kind=cap, area_m2=1.5", "kind=inline, area_m2=1.5",
		"kind=tee, width_mm=600, height_mm=400, length_mm=800, branch_diameter_mm=250, branch_length_mm=150, area_m2=1.5"} {
		for range 20 {
			if area, _ := on(t, row(t, text), randomBasis(r), text); area != 1.5 {
				t.Errorf("%s: %g", text, area)
			}
		}
	}
	half := row(t, "kind=bend, diameter_mm=315, radius_mm=315, angle_deg=180")
	on(t, half, byLargest, "half turn")
	area, _, problems := AreaOn(half, &byIntersection)
	if area != 0 || len(problems) != 1 || problems[0].Dim != Angle || problems[0].Expected != "up to 170 degrees" || WorkingOn(half, &byIntersection) != "" {
		t.Errorf("a half turn to the intersection: %g, %+v", area, problems)
	}
	hairpin := row(t, "kind=offset, diameter_mm=315, length_mm=100, offset_mm=2000") // two arcs of 174 degrees
	on(t, hairpin, byLargest, "hairpin")
	if area, _, problems := AreaOn(hairpin, &byIntersection); area != 0 || len(problems) != 1 || problems[0].Dim != OffsetShift {
		t.Errorf("a hairpin offset to the intersection: %g, %+v", area, problems)
	}
	if _, _, problems := AreaOn(row(t, "kind=bend, diameter_mm=315, angle_deg=90"), &byLargest); len(problems) != 1 || problems[0].Dim != Radius {
		t.Errorf("a bend without a radius: %+v", problems)
	}
}

// TestSwitches: every choice can be set by its words and read again, and only
// faces with axial means nothing.
func TestSwitches(t *testing.T) {
	for _, s := range Switches() {
		for i, word := range s.Words {
			var b Basis
			if !b.Set(s.Key, strings.ToUpper(strings.ReplaceAll(word, " ", "-"))) || b.Choice(s.Key) != word || b.Exact() != (i == 0) {
				t.Errorf("%s = %s: %s, exact %v", s.Key, word, b.String(), b.Exact())
			}
			if wrong := s.Key == "taper_length" && word == "axial"; (b.Check() != "") != wrong {
				t.Errorf("%s = %s: %q", s.Key, word, b.Check())
			}
		}
		if s.Touches == "" || (&Basis{}).Set(s.Key, "no such word") {
			t.Errorf("%s: %+v", s.Key, s)
		}
	}
	if (&Basis{}).Set("no_such_key", "faces") || (&Basis{}).Choice("no_such_key") != "" || (&Basis{Caps: 9}).Check() == "" {
		t.Error("a switch that isn't there")
	}
}
