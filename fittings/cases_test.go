package fittings

import (
	"math"
	"testing"
)

// areaCase is a row and its area in m2 to six decimals, unless it says more.
type areaCase struct {
	row  string
	area float64
}

func holdAreas(t *testing.T, cases []areaCase) {
	t.Helper()
	for _, c := range cases {
		if got := measured(t, c.row).Area; math.Abs(got-c.area) > 1e-6 {
			t.Errorf("%s: got %.7f, want %.6f", c.row, got, c.area)
		}
	}
}

// The cases below were each worked out twice by independent routes: closed form
// or quadrature, and a triangulated mesh.

func TestStraightCases(t *testing.T) {
	holdAreas(t, []areaCase{
		{"kind=duct, width_mm=600, height_mm=400, length_mm=1500", 3},
		{"kind=duct, width_mm=1200, height_mm=500, length_mm=3000", 10.2},
		{"kind=duct, width_mm=300, height_mm=200, length_mm=2400", 2.4},
		{"kind=duct, diameter_mm=315, length_mm=3000", 2.968805},
		{"kind=duct, diameter_mm=500, length_mm=6000", 9.424778},
		{"kind=duct, diameter_mm=125, length_mm=1000", 0.392699},
		{"kind=duct, shape=oval, width_mm=525, height_mm=150, length_mm=3000", 3.663717},
		{"kind=duct, shape=oval, width_mm=1275, height_mm=200, length_mm=2000", 5.556637},
		{"kind=duct, shape=oval, width_mm=845, height_mm=275, length_mm=1500", 3.005907},
		{"kind=flexible, diameter_mm=125, length_mm=1000", 0.392699},
		{"kind=damper, width_mm=600, height_mm=400, length_mm=1500", 3},
	})
}

func TestBendCases(t *testing.T) {
	holdAreas(t, []areaCase{
		{"kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=90, legs_mm=30", 1.376637},
		{"kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=90", 1.256637},
		{"kind=bend, width_mm=600, height_mm=400, radius_mm=400, angle_deg=90", 1.256637},
		{"kind=bend, plane=height, width_mm=400, height_mm=600, throat_mm=100, angle_deg=90", 1.256637},
		{"kind=bend, width_mm=400, height_mm=600, throat_mm=200, angle_deg=45", 0.628319},
		{"kind=bend, width_mm=1000, height_mm=500, throat_mm=500, angle_deg=90, legs_mm=50", 5.012389},
		{"kind=bend, style=mitred, width_mm=600, height_mm=400, angle_deg=90", 1.2},
		{"kind=bend, style=mitred, width_mm=600, height_mm=400, angle_deg=90, legs_mm=85", 1.54},
		{"kind=bend, style=mitred, width_mm=600, height_mm=400, angle_deg=90, legs_mm=100", 1.6},
		{"kind=bend, style=mitred, width_mm=500, height_mm=300, angle_deg=45, legs_mm=50", 0.491371},
		{"kind=bend, style=square throat, width_mm=600, height_mm=400, angle_deg=90", 0.942478},
		{"kind=bend, style=square throat, width_mm=300, height_mm=500, angle_deg=90", 0.376991},
		{"kind=bend, style=square heel, width_mm=600, height_mm=400, throat_mm=100, angle_deg=90", 1.587124},
		{"kind=bend, style=square heel, width_mm=300, height_mm=500, throat_mm=150, angle_deg=90", 0.937467},
		{"kind=bend, width_mm=600, width2_mm=400, height_mm=400, throat_mm=100, angle_deg=90", 1.003307},
		{"kind=bend, width_mm=800, width2_mm=500, height_mm=300, throat_mm=200, angle_deg=90", 1.588736},
		{"kind=bend, plane=height, height_mm=800, height2_mm=500, width_mm=300, throat_mm=200, angle_deg=90", 1.588736},
		{"kind=elbow, diameter_mm=315, radius_mm=315, angle_deg=90", 0.489656},
		{"kind=elbow, diameter_mm=315, radius_mm=315, angle_deg=45", 0.244828},
		{"kind=elbow, diameter_mm=500, radius_mm=750, angle_deg=45", 0.925275},
		{"kind=elbow, diameter_mm=200, radius_mm=200, angle_deg=30", 0.065797},
		{"kind=bend, style=gored, diameter_mm=315, radius_mm=315, angle_deg=90, gores=5", 0.496047},
		{"kind=bend, style=gored, diameter_mm=500, radius_mm=750, angle_deg=90, gores=5", 1.874705},
		{"kind=bend, style=gored, diameter_mm=400, radius_mm=400, angle_deg=45, gores=3", 0.399937},
		{"kind=bend, style=gored, diameter_mm=630, radius_mm=630, angle_deg=90, gores=3", 2.065928},
		{"kind=bend, shape=oval, width_mm=525, height_mm=150, radius_mm=525, angle_deg=90", 1.007117},
		{"kind=bend, shape=oval, plane=height, width_mm=525, height_mm=150, radius_mm=225, angle_deg=90", 0.431621},
		{"kind=bend, shape=oval, width_mm=845, height_mm=275, radius_mm=845, angle_deg=45", 1.329936},
	})
}

func TestReducerCases(t *testing.T) {
	holdAreas(t, []areaCase{
		{"kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=300", 0.401901},
		{"kind=reducer, diameter_mm=315, diameter2_mm=200, length_mm=160", 0.137538},
		{"kind=reducer, diameter_mm=800, diameter2_mm=400, length_mm=500", 1.015080},
		{"kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=300, offset_mm=92.5", 0.409794},
		{"kind=reducer, diameter_mm=315, diameter2_mm=200, length_mm=160, offset2_mm=-57.5", 0.140988},
		{"kind=reducer, diameter_mm=800, diameter2_mm=400, length_mm=500, offset_mm=120, offset2_mm=160", 1.044992},
		{"kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=300, offset_mm=200", 0.437557},
		{"kind=taper, width_mm=600, height_mm=400, width2_mm=400, height2_mm=300, length_mm=500", 0.859425},
		{"kind=taper, width_mm=600, height_mm=400, width2_mm=400, height2_mm=300, length_mm=500, offset_mm=100, offset2_mm=50", 0.868432},
		{"kind=taper, width_mm=1000, height_mm=500, width2_mm=600, height2_mm=500, length_mm=600, offset_mm=200", 1.620555},
		{"kind=taper, width_mm=500, height_mm=500, width2_mm=800, height2_mm=300, length_mm=600, offset2_mm=150", 1.308624},
		{"kind=taper, shape=oval, width_mm=845, height_mm=275, width2_mm=525, height2_mm=200, length_mm=400", 0.671398},
		{"kind=taper, shape=oval, width_mm=1275, height_mm=200, width2_mm=760, height2_mm=200, length_mm=500", 1.151554},
	})
}

func TestTransitionCases(t *testing.T) {
	holdAreas(t, []areaCase{
		{"kind=transition, width_mm=600, height_mm=400, diameter2_mm=400, length_mm=500", 0.827899},
		{"kind=transition, width_mm=800, height_mm=600, diameter2_mm=500, length_mm=1200", 2.642244},
		{"kind=square to round, width_mm=500, height_mm=500, diameter2_mm=315, length_mm=300", 0.482919},
		{"kind=square to round, diameter_mm=315, width2_mm=500, height2_mm=500, length_mm=300", 0.482919},
		{"kind=transition, width_mm=600, height_mm=400, diameter2_mm=400, length_mm=500, offset_mm=100", 0.834432},
		{"kind=transition, width_mm=300, height_mm=300, diameter2_mm=400, length_mm=250, offset2_mm=50", 0.313535},
		{"kind=transition, shape=oval, width_mm=525, height_mm=150, diameter2_mm=315, length_mm=300", 0.341393},
		{"kind=transition, shape=oval, width_mm=845, height_mm=275, diameter2_mm=500, length_mm=500", 0.915653},
		{"kind=transition, shape=oval, width_mm=635, height_mm=150, diameter2_mm=315, length_mm=250", 0.324966},
		{"kind=transition, shape2=oval, width_mm=600, height_mm=300, width2_mm=525, height2_mm=150, length_mm=400", 0.614145},
		{"kind=transition, shape2=oval, width_mm=800, height_mm=400, width2_mm=845, height2_mm=275, length_mm=500", 1.108669},
	})
}

func TestOffsetCases(t *testing.T) {
	holdAreas(t, []areaCase{
		{"kind=offset, style=straight, width_mm=600, height_mm=400, length_mm=800, offset_mm=300", 1.643520},
		{"kind=offset, style=straight, width_mm=400, height_mm=600, length_mm=1000, offset_mm=250", 2.036932},
		{"kind=offset, style=straight, diameter_mm=315, length_mm=500, offset_mm=200", 0.514036},
		{"kind=offset, style=straight, diameter_mm=500, length_mm=1000, offset_mm=400", 1.631859},
		{"kind=offset, width_mm=600, height_mm=400, length_mm=1200, offset_mm=300", 2.498782},
		{"kind=offset, width_mm=400, height_mm=600, length_mm=1000, offset_mm=250", 2.082319},
		{"kind=offset, diameter_mm=315, length_mm=900, offset_mm=250", 0.935772},
		{"kind=offset, diameter_mm=500, length_mm=1400, offset_mm=400", 2.316906},
		{"kind=offset, style=mitred, width_mm=600, height_mm=400, length_mm=800, offset_mm=300, legs_mm=50", 1.723155},
		{"kind=offset, style=mitred, diameter_mm=315, length_mm=600, offset_mm=200, legs_mm=100", 0.640484},
	})
}

func TestBranchCases(t *testing.T) {
	holdAreas(t, []areaCase{
		{"kind=tee, diameter_mm=500, length_mm=600, branch_diameter_mm=250, branch_length_mm=100", 0.983147},
		{"kind=tee, diameter_mm=400, length_mm=600, branch_diameter_mm=315, branch_length_mm=100", 0.802513},
		{"kind=tee, diameter_mm=315, length_mm=500, branch_diameter_mm=315, branch_length_mm=100", 0.551173},
		{"kind=tee, diameter_mm=630, length_mm=400, branch_diameter_mm=160, branch_length_mm=60", 0.804153},
		{"kind=tee, diameter_mm=315, length_mm=320, branch_diameter_mm=200, branch_length_mm=60", 0.331957},
		{"kind=tee, diameter_mm=315, length_mm=435, branch_diameter_mm=315, branch_length_mm=60", 0.447265},
		{"kind=tee, diameter_mm=500, length_mm=450, branch_diameter_mm=250, branch_length_mm=100", 0.747528},
		{"kind=cross, diameter_mm=500, length_mm=600, branch_diameter_mm=250, branch_length_mm=100", 1.023816},
		{"kind=tee, style=conical, diameter_mm=500, length_mm=700, branch_diameter_mm=250, entry_mm=350, branch_length_mm=150", 1.178614},
		{"kind=tee, style=conical, diameter_mm=400, length_mm=700, branch_diameter_mm=160, entry_mm=200, branch_length_mm=100", 0.912189},
		{"kind=tee, width_mm=600, height_mm=400, length_mm=800, branch_width_mm=300, branch_height_mm=300, branch_length_mm=150", 1.69},
		{"kind=tee, width_mm=1000, height_mm=500, length_mm=900, branch_width_mm=500, branch_height_mm=300, branch_length_mm=100", 2.71},
		{"kind=tee, width_mm=600, height_mm=400, length_mm=500, branch_diameter_mm=250, branch_length_mm=100", 1.029452},
		{"kind=tee, width_mm=500, height_mm=300, length_mm=450, branch_diameter_mm=200, branch_length_mm=80", 0.738850},
		{"kind=tee, style=shoe, width_mm=600, height_mm=400, length_mm=800, branch_width_mm=300, branch_height_mm=300, branch_length_mm=150, entry_mm=100", 1.682426},
		{"kind=tee, style=shoe, width_mm=1000, height_mm=500, length_mm=1000, branch_width_mm=400, branch_height_mm=300, branch_length_mm=150, entry_mm=100", 3.082426},
		{"kind=breeches, diameter_mm=400, branch_diameter_mm=315, length_mm=500, offset_mm=250", 0.897954},
		{"kind=breeches, diameter_mm=500, branch_diameter_mm=315, length_mm=600, offset_mm=300", 1.226809},
		{"kind=bullhead, width_mm=800, height_mm=400, throat_mm=100, angle_deg=90", 1.507964},
	})
}

// TestSpigotCases holds the opening and the branch apart. A collar beyond the
// wall is S less the wall's own distance from the main's axis.
func TestSpigotCases(t *testing.T) {
	for _, c := range []struct {
		row           string
		opening, area float64
	}{
		{"branch_diameter_mm=250, from=circular 500, branch_length_mm=100", 0.050787, 0.091457},
		{"branch_diameter_mm=315, from=circular 400, branch_length_mm=100", 0.086138, 0.134668},
		{"branch_diameter_mm=315, from=circular 315, branch_length_mm=100", 0.099225, 0.155597},
		{"branch_diameter_mm=160, from=circular 630, branch_length_mm=60", 0.020272, 0.032744},
		// S 550 at 45 degrees: 550 - 250/sin 45
		{"branch_diameter_mm=250, from=circular 500, branch_angle_deg=45, branch_length_mm=196.44660940672624", 0.071824, 0.172556},
		// axis 150 off centre, end 400 from the main's axis: 400 - sqrt(250^2-150^2)
		{"branch_diameter_mm=200, from=circular 500, branch_shift_mm=150, branch_length_mm=200", 0.046289, 0.143352},
		// 300 - sqrt(200^2-100^2)
		{"branch_diameter_mm=160, from=circular 400, branch_shift_mm=-100, branch_length_mm=126.79491924311228", 0.024891, 0.070870},
		{"style=conical, branch_diameter_mm=250, entry_mm=350, from=circular 500, branch_length_mm=150", 0.131072, 0.210128},
		{"style=conical, branch_diameter_mm=160, entry_mm=200, from=circular 400, branch_length_mm=100", 0.034584, 0.067127},
		// the same size in the spigot's own columns
		{"diameter_mm=250, length_mm=100, from=circular 500", 0.050787, 0.091457},
		// flat walls: pi d^2/4 and pi d l; a panel, a rectangular duct, the flat of an oval
		{"diameter_mm=250, length_mm=100, from=plenum", 0.049087, 0.078540},
		{"diameter_mm=250, length_mm=100, from=rectangular 600x400", 0.049087, 0.078540},
		{"diameter_mm=250, length_mm=100, from=oval 800x300", 0.049087, 0.078540},
	} {
		m := measured(t, "kind=spigot, "+c.row)
		if math.Abs(m.Area-c.area) > 1e-6 || math.Abs(m.Opening-c.opening) > 1e-6 {
			t.Errorf("%s: opening %.6f area %.6f, want %.6f and %.6f", c.row, m.Opening, m.Area, c.opening, c.area)
		}
	}
}

func TestEndCases(t *testing.T) {
	holdAreas(t, []areaCase{
		{"kind=cap, width_mm=600, height_mm=400", 0.24},
		{"kind=cap, diameter_mm=315", 0.077931},
		{"kind=cap, shape=oval, width_mm=525, height_mm=150", 0.073921},
		{"kind=cap, style=dished, diameter_mm=315, rise_mm=50", 0.085785},
		{"kind=cap, style=dished, diameter_mm=500, rise_mm=100", 0.227765},
		{"kind=plenum, width_mm=1000, height_mm=800, length_mm=500", 3.4},
	})
}

// TestPlenumWithOpenings takes off what joins a plenum, as a caller does: an open
// 1000 x 500 face and two d250 spigots with collars of 100.
func TestPlenumWithOpenings(t *testing.T) {
	box := measured(t, "kind=plenum, width_mm=1000, height_mm=800, length_mm=500").Area
	spigot := measured(t, "kind=spigot, diameter_mm=250, length_mm=100, from=plenum")
	duct := measured(t, "kind=straight, width_mm=1000, height_mm=500, length_mm=1000")
	got := box - duct.Ends[0].FaceArea() - 2*spigot.Opening + 2*spigot.Area
	if math.Abs(got-2.958905) > 1e-6 {
		t.Errorf("got %.6f, want 2.958905", got)
	}
}

// TestKernelAreas holds 16 lateral areas from a geometry kernel (Open CASCADE,
// tolerance 1e-9), in mm2. The kernel's 17th, a square 500 to D400 ruled from side
// to arc (497945.3650), is another surface, 1.9 % apart, and isn't matched.
func TestKernelAreas(t *testing.T) {
	for _, c := range []areaCase{
		{"kind=straight, diameter_mm=400, length_mm=1250", 1570796.3268},
		{"kind=bend, diameter_mm=400, radius_mm=400, angle_deg=90", 789568.3521},
		{"kind=bend, diameter_mm=250, radius_mm=250, angle_deg=45", 154212.5688},
		{"kind=bend, style=gored, diameter_mm=400, radius_mm=400, angle_deg=90, gores=5", 799874.0890},
		{"kind=bend, width_mm=600, height_mm=400, throat_mm=300, angle_deg=90", 1884955.5922},
		{"kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=400", 525593.4158},
		{"kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=400, offset_mm=92.5", 531880.3473},
		{"kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=400, offset_mm=150", 541940.1273},
		{"kind=transition, width_mm=500, height_mm=500, diameter2_mm=400, length_mm=300", 507593.5355},
		{"kind=transition, width_mm=600, height_mm=300, diameter2_mm=355, length_mm=400, offset_mm=60, offset2_mm=-40", 602994.6769},
		{"kind=tee, diameter_mm=400, length_mm=800, branch_diameter_mm=250, branch_length_mm=200", 1127157.6211},
		{"kind=tee, diameter_mm=400, length_mm=800, branch_diameter_mm=400, branch_length_mm=200", 1187964.4737},
		{"kind=straight, shape=oval, width_mm=800, height_mm=300, length_mm=1000", 1942477.7961},
		{"kind=bend, shape=oval, width_mm=800, height_mm=300, throat_mm=300, angle_deg=90", 2135865.8909},
		{"kind=bend, shape=oval, plane=height, width_mm=800, height_mm=300, throat_mm=300, angle_deg=90", 1373056.6441},
		{"kind=reducer, width_mm=600, height_mm=400, width2_mm=400, height2_mm=250, length_mm=500, offset_mm=50", 838559.1700},
	} {
		closeTo(t, c.row, measured(t, c.row).Area*1e6, c.area, 5e-10)
	}
}

// TestPublishedAreas holds areas that were printed by others, to the figures they
// printed. Not matched, because they are wrong: a question-and-answer page that
// gives 1657.9 m2 for a 1.65 m bend of d 320 (a slip of unit and of arithmetic;
// 1.658761 m2), and a homework site that takes the bore, 0.589 ft2, for the
// surface of a 6 in duct 3 ft long (4.712 ft2).
func TestPublishedAreas(t *testing.T) {
	const in, ft = 25.4, 304.8
	for _, c := range []struct {
		source, row    string
		printed, slack float64 // m2
	}{
		{"consulting engineer's duct sheet, 1998", "kind=duct, width_mm=100, height_mm=100, length_mm=6000", 2.4, 1e-9},
		{"same", "kind=duct, width_mm=500, height_mm=100, length_mm=5000", 6, 1e-9},
		{"same", "kind=duct, width_mm=600, height_mm=600, length_mm=4000", 9.6, 1e-9},
		{"same", "kind=duct, width_mm=500, height_mm=500, length_mm=3000", 6, 1e-9},
		{"same", "kind=duct, width_mm=700, height_mm=200, length_mm=5000", 9, 1e-9},
		{"same", "kind=duct, width_mm=1000, height_mm=1500, length_mm=6000", 30, 1e-9},
		{"spiral-duct data sheet, m2 per m", "kind=duct, diameter_mm=63, length_mm=1000", 0.198, 5e-4},
		{"same", "kind=duct, diameter_mm=315, length_mm=1000", 0.990, 5e-4},
		{"same", "kind=duct, diameter_mm=1600, length_mm=1000", 5.027, 5e-4},
		{"Longfield, Sheet Metal Drafting, 1921, sec. 18: girth of a 7 in circle, 1 in long",
			"kind=duct, diameter_mm=177.8, length_mm=25.4", 21.9912 * in * in / 1e6, 1e-7},
		{"heat-transfer textbook duct", "kind=duct, width_mm=150, height_mm=150, length_mm=10000", 6, 1e-9},
		{"printed question: 16 x 16 in duct 30 ft long is 160 ft2", "kind=duct, width_mm=406.4, height_mm=406.4, length_mm=9144", 160 * ft * ft / 1e6, 1e-9},
		{"fabricators' article, 2011: 800 x 600 to d500 (own value)", "kind=square-to-round, width_mm=800, height_mm=600, diameter2_mm=500, length_mm=1200", 2.642244, 1e-6},
		{"ceemrr.com net of a frustum d8 to d5, 4 in apart: 87.18 in2 from the net, 87.24 by formula",
			"kind=reducer, diameter_mm=203.2, diameter2_mm=127, length_mm=101.6", 87.24 * in * in / 1e6, 4e-6},
		{"Longfield's funnel 8 to 4 in, altitude 4 (own value, in2)", "kind=reducer, diameter_mm=203.2, diameter2_mm=101.6, length_mm=101.6", 84.298 * in * in / 1e6, 4e-7},
		{"Longfield's sample 6 to 3 in, altitude 3 (own value, in2)", "kind=reducer, diameter_mm=152.4, diameter2_mm=76.2, length_mm=76.2", 47.417 * in * in / 1e6, 4e-7},
		{"Chinese quota text: pi D x 1.5 D x 2 pi / 4 for a 90 degree bend, D 0.4", "kind=bend, diameter_mm=400, radius_mm=600, angle_deg=90", 1.184353, 1e-6},
		{"school item: a vent of four equal trapezoids, edges 8 and 5 in, slant 14 in: 364 in2 (axial height sqrt(14^2-1.5^2))",
			"kind=taper, width_mm=203.2, height_mm=203.2, width2_mm=127, height2_mm=127, length_mm=353.5530228", 364 * in * in / 1e6, 1e-7},
	} {
		if got := measured(t, c.row).Area; math.Abs(got-c.printed) > c.slack {
			t.Errorf("%s: %s: got %.7f, want %.7f", c.source, c.row, got, c.printed)
		}
	}
}

// TestFlatOvalEquivalents confirms the girth of flat ovals against ASHRAE
// Fundamentals 2021 ch. 21 Table 4: the round diameter of equal friction,
// 1.55 A^0.625 / P^0.25, of each listed oval, to the millimetre printed.
func TestFlatOvalEquivalents(t *testing.T) {
	for _, c := range []struct{ d, minor, major float64 }{
		{125, 70, 205}, {160, 100, 235}, {250, 150, 385}, {315, 150, 635}, {400, 200, 760},
		{500, 200, 1275}, {630, 275, 1425}, {800, 450, 1315}, {1000, 500, 1895}, {1250, 600, 2495},
	} {
		s := CrossSection{Shape: FlatOval, Width: c.major, Height: c.minor}
		got := 1.55 * math.Pow(s.FaceArea(), 0.625) / math.Pow(s.Girth(), 0.25)
		if math.Abs(got-c.d) > 0.75 {
			t.Errorf("%g x %g: got d %.1f, printed %g", c.major, c.minor, got, c.d)
		}
	}
}

// TestGirthAgainstCircle confirms the extra girth of a rectangle against a circle
// of equal free area, as a duct booklet by Scandiaconsult prints it.
func TestGirthAgainstCircle(t *testing.T) {
	for ratio, printed := range map[float64]float64{1: 13, 2: 20, 3: 30, 4: 41, 5: 51} {
		rect := CrossSection{Shape: Rectangular, Width: ratio, Height: 1}
		circle := CrossSection{Shape: Circular, Diameter: math.Sqrt(4 * rect.FaceArea() / math.Pi)}
		if got := 100 * (rect.Girth()/circle.Girth() - 1); math.Abs(got-printed) > 0.5 {
			t.Errorf("1:%g: %.1f %%, printed %g %%", ratio, got, printed)
		}
	}
}
