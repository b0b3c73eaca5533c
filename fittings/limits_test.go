package fittings

import (
	"math"
	"math/rand"
	"strings"
	"testing"
)

// TestLimits holds pairs of rows that must have one area because one is a limit
// of the other.
func TestLimits(t *testing.T) {
	for _, c := range []struct {
		what, a, b string
		tol        float64
	}{
		{"a reducer with equal ends is a straight", "kind=reducer, diameter_mm=315, diameter2_mm=315, length_mm=700", "kind=straight, diameter_mm=315, length_mm=700", 1e-12},
		{"a taper with equal ends is a straight", "kind=reducer, width_mm=600, height_mm=400, width2_mm=600, height2_mm=400, length_mm=700", "kind=straight, width_mm=600, height_mm=400, length_mm=700", 1e-12},
		{"an oval taper with equal ends is a straight", "kind=reducer, shape=oval, width_mm=600, height_mm=200, width2_mm=600, height2_mm=200, length_mm=700", "kind=straight, shape=oval, width_mm=600, height_mm=200, length_mm=700", 1e-12},
		{"an oval with equal axes is a circle", "kind=straight, shape=oval, width_mm=315, height_mm=315, length_mm=700", "kind=straight, diameter_mm=315, length_mm=700", 1e-12},
		{"an oval reducer with equal axes is a round one", "kind=reducer, shape=oval, width_mm=500, height_mm=500, width2_mm=315, height2_mm=315, length_mm=300, offset_mm=92.5", "kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=300, offset_mm=92.5", 1e-12},
		{"an oval branch with equal axes is a round one", "kind=tee, diameter_mm=500, length_mm=600, shape2=oval, branch_width_mm=250, branch_height_mm=250, branch_length_mm=100", "kind=tee, diameter_mm=500, length_mm=600, branch_diameter_mm=250, branch_length_mm=100", 1e-12},
		{"a reducer with equal ends, shifted, is a straight-sided offset", "kind=reducer, diameter_mm=315, diameter2_mm=315, length_mm=500, offset_mm=200", "kind=offset, style=straight, diameter_mm=315, length_mm=500, offset_mm=200", 1e-12},
		{"a reducing bend with equal ends is a radius bend", "kind=bend, width_mm=600, width2_mm=600.0001, height_mm=400, throat_mm=100, angle_deg=90", "kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=90", 1e-6},
		{"many gores make a radius bend", "kind=bend, style=gored, diameter_mm=315, radius_mm=400, angle_deg=90, gores=60", "kind=bend, diameter_mm=315, radius_mm=400, angle_deg=90", 1e-4},
		{"two gores at the throat make a mitred bend", "kind=bend, style=gored, diameter_mm=400, radius_mm=200, angle_deg=60, gores=2", "kind=bend, style=mitred, diameter_mm=400, angle_deg=60", 1e-12},
		{"a square throat is a throat of 0", "kind=bend, style=square throat, width_mm=600, height_mm=400, angle_deg=70", "kind=bend, width_mm=600, height_mm=400, throat_mm=0, angle_deg=70", 1e-12},
		{"a square heel with a throat of 0 is a mitred bend", "kind=bend, style=square heel, width_mm=600, height_mm=400, throat_mm=0, angle_deg=70", "kind=bend, style=mitred, width_mm=600, height_mm=400, angle_deg=70", 1e-12},
		{"a conical branch of one diameter is a straight one", "kind=tee, style=conical, diameter_mm=500, length_mm=600, branch_diameter_mm=250, entry_mm=250, branch_length_mm=100", "kind=tee, diameter_mm=500, length_mm=600, branch_diameter_mm=250, branch_length_mm=100", 1e-10},
		{"a branch barely off centre", "kind=tee, diameter_mm=500, length_mm=600, branch_diameter_mm=250, branch_length_mm=100, branch_shift_mm=0.0001", "kind=tee, diameter_mm=500, length_mm=600, branch_diameter_mm=250, branch_length_mm=100", 1e-9},
		{"an equal branch barely smaller", "kind=tee, diameter_mm=500, length_mm=600, branch_diameter_mm=499.9999, branch_length_mm=100", "kind=tee, diameter_mm=500, length_mm=600, branch_diameter_mm=500, branch_length_mm=100", 1e-5},
		{"both sides of 90 degrees are alike", "kind=tee, diameter_mm=500, length_mm=900, branch_diameter_mm=250, branch_length_mm=400, branch_angle_deg=60, branch_shift_mm=40", "kind=tee, diameter_mm=500, length_mm=900, branch_diameter_mm=250, branch_length_mm=400, branch_angle_deg=120, branch_shift_mm=-40", 1e-12},
		{"a square to round turned about", "kind=transition, width_mm=500, height_mm=300, diameter2_mm=315, length_mm=300, offset_mm=80", "kind=transition, diameter_mm=315, width2_mm=500, height2_mm=300, length_mm=300, offset_mm=-80", 1e-12},
		{"a dished cap that barely rises is flat", "kind=cap, style=dished, diameter_mm=500, rise_mm=1", "kind=cap, diameter_mm=500", 1e-4},
		{"a radius offset at its greatest radius", "kind=offset, diameter_mm=315, length_mm=900, offset_mm=250, radius_mm=872.5", "kind=offset, diameter_mm=315, length_mm=900, offset_mm=250", 1e-9},
		{"breeches of two straight legs side by side", "kind=breeches, diameter_mm=300, branch_diameter_mm=300, length_mm=600, offset_mm=150", "kind=breeches, diameter_mm=300, diameter2_mm=300, length_mm=600, offset_mm=-150", 1e-12},
	} {
		closeTo(t, c.what, measured(t, c.a).Area, measured(t, c.b).Area, c.tol)
	}
}

// TestBranchOnVastMain: the wall of a vast round main is as good as flat.
func TestBranchOnVastMain(t *testing.T) {
	vast := measured(t, "kind=spigot, from=circular 20000, branch_diameter_mm=100, branch_length_mm=500")
	panel := measured(t, "kind=spigot, from=plenum, branch_diameter_mm=100, branch_length_mm=500")
	closeTo(t, "opening", vast.Opening, panel.Opening, 1e-5)
	closeTo(t, "branch", vast.Area, panel.Area, 1e-3)
}

// TestWholeIsSumOfParts: two 45 degree bends make one of 90, two straights one,
// a tee is its main less the opening of a spigot plus the spigot, a cross two of
// them.
func TestWholeIsSumOfParts(t *testing.T) {
	area := func(text string) float64 { return measured(t, text).Area }
	for _, bend := range []string{
		"kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=",
		"kind=bend, diameter_mm=315, radius_mm=315, angle_deg=",
		"kind=bend, shape=oval, width_mm=600, height_mm=200, throat_mm=100, angle_deg=",
	} {
		closeTo(t, bend, 2*area(bend+"45"), area(bend+"90"), 1e-12)
	}
	straight := "kind=straight, width_mm=600, height_mm=400, length_mm="
	closeTo(t, straight, area(straight+"700")+area(straight+"800"), area(straight+"1500"), 1e-12)
	for _, c := range []struct{ section, wall, branch string }{
		{", diameter_mm=500", "circular 500", ", branch_diameter_mm=250, branch_length_mm=400, branch_angle_deg=60, branch_shift_mm=50"},
		{", diameter_mm=500", "circular 500", ", branch_width_mm=250, branch_height_mm=200, branch_length_mm=300"},
		{", width_mm=600, height_mm=400", "rectangular 600x400", ", style=shoe, branch_width_mm=250, branch_height_mm=200, branch_length_mm=300, entry_mm=100"},
		{", shape=oval, width_mm=900, height_mm=200", "oval 900x200", ", style=conical, branch_diameter_mm=250, entry_mm=350, branch_length_mm=300"},
	} {
		main := area("kind=straight, length_mm=1200" + c.section)
		spigot := measured(t, "kind=spigot, from="+c.wall+c.branch)
		tee := area("kind=tee, length_mm=1200" + c.section + c.branch)
		cross := area("kind=cross, length_mm=1200" + c.section + c.branch)
		closeTo(t, "tee"+c.branch, tee, main-spigot.Opening+spigot.Area, 1e-12)
		closeTo(t, "cross"+c.branch, cross, 2*tee-main, 1e-12)
	}
}

// doubled gives a piece twice as big.
func doubled(p *Piece) *Piece {
	q := *p
	for d := range NumDims {
		if v, given := p.Sizes.Get(d); given && d.Unit() == Metre {
			q.Sizes.Set(d, 2*v)
		}
	}
	q.Wall.Width, q.Wall.Height, q.Wall.Diameter = 2*p.Wall.Width, 2*p.Wall.Height, 2*p.Wall.Diameter
	return &q
}

// TestRandomPieces: twice the size has four times the area; a longer piece has
// more; sides that both turn leave the area; ends are whole.
func TestRandomPieces(t *testing.T) {
	r := rand.New(rand.NewSource(8))
	seen := map[Kind]bool{}
	for _, c := range randomRows {
		for range 25 {
			text := c.row(r)
			p := row(t, text)
			seen[p.Kind] = true
			m := measuredPiece(t, p, text)
			if !(m.Area > 0) || math.IsInf(m.Area, 0) {
				t.Fatalf("%s: area %g", text, m.Area)
			}
			twice := measuredPiece(t, doubled(p), text)
			closeTo(t, "doubled "+text, twice.Area, 4*m.Area, 1e-10)
			if m.Opening > 0 {
				closeTo(t, "doubled opening "+text, twice.Opening, 4*m.Opening, 1e-10)
			}
			checkEnds(t, p, m, text)
			if c.grow == "" {
				continue
			}
			longer := *p
			d, _ := ParseDim(c.grow)
			v, _ := p.Sizes.Get(d)
			longer.Sizes.Set(d, v*1.01+1e-3)
			if more, problems := Measure(&longer); len(problems) == 0 && !(more.Area > m.Area) {
				t.Errorf("%s: more %s gives %g, not more than %g", text, c.grow, more.Area, m.Area)
			}
		}
	}
	for _, info := range kinds {
		if !seen[info.Kind] {
			t.Errorf("no random rows for %s", info.Name)
		}
	}
}

// rolesOf is the ends that each kind has.
var rolesOf = map[Kind][]EndRole{
	Straight: {PlantEnd, FarEnd}, Bend: {PlantEnd, FarEnd}, Reducer: {PlantEnd, FarEnd}, Transition: {PlantEnd, FarEnd},
	Offset: {PlantEnd, FarEnd}, Flexible: {PlantEnd, FarEnd}, Inline: {PlantEnd, FarEnd}, Spigot: {PlantEnd, FarEnd},
	Tee: {PlantEnd, FarEnd, BranchEnd}, Cross: {PlantEnd, FarEnd, BranchEnd, BranchEnd2},
	Breeches: {PlantEnd, BranchEnd, BranchEnd2}, Cap: {PlantEnd}, Plenum: {},
}

func checkEnds(t testing.TB, p *Piece, m Measurement, text string) {
	t.Helper()
	roles := rolesOf[p.Kind]
	if len(m.Ends) != len(roles) {
		t.Fatalf("%s: ends %v, want roles %v", text, m.Ends, roles)
	}
	for i, end := range m.Ends {
		if end.Role != roles[i] {
			t.Errorf("%s: end %d is %v, want %v", text, i, end.Role, roles[i])
		}
		if g, f := end.Girth(), end.FaceArea(); !(g > 0) || !(f > 0) || math.IsInf(g, 0) || math.IsInf(f, 0) {
			t.Errorf("%s: %v has girth %g and face %g", text, end, g, f)
		}
	}
}

// TestEnds holds the sections at the ends that differ from one another.
func TestEnds(t *testing.T) {
	rectangle := func(w, h float64) CrossSection { return CrossSection{Shape: Rectangular, Width: w, Height: h} }
	circle := func(d float64) CrossSection { return CrossSection{Shape: Circular, Diameter: d} }
	flat := func(w, h float64) CrossSection { return CrossSection{Shape: FlatOval, Width: w, Height: h} }
	for _, c := range []struct {
		row  string
		want []CrossSection
	}{
		{"kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=300", []CrossSection{circle(.5), circle(.315)}},
		{"kind=transition, width_mm=500, height_mm=300, diameter2_mm=315, length_mm=300", []CrossSection{rectangle(.5, .3), circle(.315)}},
		{"kind=transition, diameter_mm=315, width2_mm=500, height2_mm=300, shape2=oval, length_mm=300", []CrossSection{circle(.315), flat(.5, .3)}},
		{"kind=bend, width_mm=600, width2_mm=400, height_mm=400, throat_mm=100, angle_deg=90", []CrossSection{rectangle(.6, .4), rectangle(.4, .4)}},
		{"kind=tee, width_mm=600, height_mm=400, length_mm=800, branch_diameter_mm=250, branch_length_mm=150", []CrossSection{rectangle(.6, .4), rectangle(.6, .4), circle(.25)}},
		{"kind=spigot, style=shoe, branch_width_mm=300, branch_height_mm=200, branch_length_mm=150, entry_mm=100, from=plenum", []CrossSection{rectangle(.4, .2), rectangle(.3, .2)}},
		{"kind=spigot, style=conical, diameter_mm=200, entry_mm=250, length_mm=150, from=plenum", []CrossSection{circle(.25), circle(.2)}},
		{"kind=breeches, width_mm=800, height_mm=400, throat_mm=100, angle_deg=90", []CrossSection{rectangle(.8, .4), rectangle(.4, .4), rectangle(.4, .4)}},
		{"kind=breeches, diameter_mm=400, branch_diameter_mm=315, length_mm=500, offset_mm=250", []CrossSection{circle(.4), circle(.315), circle(.315)}},
		// a given area still has its ends, as far as sizes are given
		{"kind=tee, diameter_mm=400, area_m2=2.5", []CrossSection{circle(.4), circle(.4), {}}},
		{"kind=straight, area_m2=2.5", []CrossSection{{}, {}}},
	} {
		m := measured(t, c.row)
		if len(m.Ends) != len(c.want) {
			t.Errorf("%s: ends %v", c.row, m.Ends)
			continue
		}
		for i, want := range c.want {
			if m.Ends[i].CrossSection != want {
				t.Errorf("%s: %v is %v, want %v", c.row, m.Ends[i].Role, m.Ends[i].CrossSection, want)
			}
		}
	}
}

func TestGivenArea(t *testing.T) {
	for _, c := range []struct{ row, note string }{
		{"kind=plenum, area_m2=4.25", ""},
		{"kind=bend, diameter_mm=315, area_m2=4.25", ""},
		{"kind=straight, width_mm=600, height_mm=400, length_mm=1500, area_m2=4.25", "the sizes make it 3.000 m2"},
		{"kind=spigot, diameter_mm=200, area_m2=4.25", "the opening of this spigot isn't known"},
		{"kind=breeches, shape=oval, width_mm=600, height_mm=400, area_m2=4.25", ""},
		{"kind=cap, style=dished, width_mm=600, height_mm=400, area_m2=4.25", ""},
	} {
		m := measured(t, c.row)
		if m.Area != 4.25 {
			t.Errorf("%s: area %g", c.row, m.Area)
		}
		if notes := strings.Join(m.Notes, "; "); !strings.Contains(notes, c.note) || c.note == "" && notes != "" {
			t.Errorf("%s: notes %q", c.row, notes)
		}
	}
	if _, problems := Measure(row(t, "kind=straight, width_mm=-600, area_m2=4.25")); len(problems) != 1 || problems[0].Dim != Width {
		t.Errorf("an impossible size beside a given area: %+v", problems)
	}
	m := measured(t, "kind=spigot, diameter_mm=200, length_mm=100, from=plenum, area_m2=0.08")
	closeTo(t, "opening beside a given area", m.Opening, math.Pi/100, 1e-12)
}
