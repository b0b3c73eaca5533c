package fittings

import (
	"math"
	"testing"
)

// The bases of these tests, in terms of Lengths. They stand here only to hold the
// lengths to published and recomputed figures.
var testBases = map[string]func(Lengths) float64{
	"centre line, mean girth, branch from the wall": func(l Lengths) float64 {
		return counted(l, func(r Run) float64 { return r.MeanGirth() * r.Axis }, func(b BranchRun) float64 { return b.Girth * b.FromWall })
	},
	"intersection, larger girth, branch from the axis": func(l Lengths) float64 {
		return counted(l, func(r Run) float64 { return r.LargerGirth() * r.Intersection }, func(b BranchRun) float64 { return b.Girth * b.FromAxis })
	},
	"larger girth, outer length, branch from the wall": func(l Lengths) float64 {
		return counted(l, func(r Run) float64 { return r.LargerGirth() * r.Outer }, func(b BranchRun) float64 { return b.Girth * b.FromWall })
	},
}

func counted(l Lengths, run func(Run) float64, branch func(BranchRun) float64) float64 {
	sum := l.Faces + l.Given
	for _, r := range l.Runs {
		sum += run(r)
	}
	for _, b := range l.Branch {
		sum += branch(b)
	}
	return sum
}

// TestLengthsByBasis holds the rules side by side, recomputed from their words:
// Chinese and Indian practice (centre line), pipework practice (intersection),
// VOB (largest girth by outer edge).
func TestLengthsByBasis(t *testing.T) {
	for _, c := range []struct {
		row                         string
		centre, intersection, outer float64 // 0: not worked out
	}{
		{"kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=90, legs_mm=30", 1.376637, 1.720000, 2.319115},
		{"kind=bend, style=mitred, width_mm=600, height_mm=400, angle_deg=90, legs_mm=85", 1.540000, 1.540000, 2.740000},
		{"kind=bend, diameter_mm=315, radius_mm=315, angle_deg=90", 0.489656, 0.623449, 0.734484},
		{"kind=bend, diameter_mm=315, radius_mm=315, angle_deg=45", 0.244828, 0.258241, 0.367242},
		{"kind=reducer, width_mm=600, height_mm=400, width2_mm=400, height2_mm=300, length_mm=500", 0.850000, 1.000000, 1.019804},
		{"kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=300", 0.384060, 0.471239, 0.493131},
		{"kind=offset, style=straight, width_mm=600, height_mm=400, length_mm=800, offset_mm=300", 1.708801, 1.708801, 1.708801},
		// tangents meet (L^2+O^2)/4L = 318.75 from each end: 2 x 318.75 and hypot(562.5, 300)
		{"kind=offset, width_mm=600, height_mm=400, length_mm=1200, offset_mm=300", 2.498782, 2.55, 2.498782},
		{"kind=tee, width_mm=600, height_mm=400, length_mm=800, branch_width_mm=300, branch_height_mm=300, branch_length_mm=150", 1.780000, 2.020000, 1.780000},
		{"kind=tee, diameter_mm=315, length_mm=320, branch_diameter_mm=200, branch_length_mm=60", 0.354372, 0.453332, 0},
		{"kind=tee, diameter_mm=315, length_mm=435, branch_diameter_mm=315, branch_length_mm=60", 0.489853, 0.645715, 0},
		{"kind=tee, diameter_mm=500, length_mm=450, branch_diameter_mm=250, branch_length_mm=100", 0.785398, 0.981748, 0},
		// a German practitioner's note of 2011, figures given for EN 14239 (second-hand; throat + leg 150 inferred)
		{"kind=bend, width_mm=300, height_mm=300, throat_mm=100, angle_deg=90, legs_mm=50", 0, 0.72, 0},
		{"kind=bend, width_mm=1000, height_mm=1000, throat_mm=100, angle_deg=90, legs_mm=50", 0, 5.2, 0},
		{"kind=taper, width_mm=300, height_mm=300, width2_mm=150, height2_mm=300, length_mm=300", 0, 0.36, 0},
		// the same note, for OENORM H 6015-2 (legs inferred): 7.48 as printed
		{"kind=bend, style=square throat, width_mm=1000, height_mm=1000, angle_deg=90, legs_mm=150", 0, 0, 7.483185},
		{"kind=cap, width_mm=600, height_mm=400", 0.24, 0.24, 0.24},
		{"kind=plenum, width_mm=1000, height_mm=800, length_mm=500", 3.4, 3.4, 3.4},
		{"kind=plenum, area_m2=5", 5, 5, 5},
	} {
		l, problems := MeasureLengths(row(t, c.row))
		if len(problems) > 0 {
			t.Fatalf("%s: %v", c.row, problems)
		}
		for basis, want := range map[string]float64{
			"centre line, mean girth, branch from the wall":    c.centre,
			"intersection, larger girth, branch from the axis": c.intersection,
			"larger girth, outer length, branch from the wall": c.outer,
		} {
			if got := testBases[basis](l); want != 0 && math.Abs(got-want) > 1e-6 {
				t.Errorf("%s by %s: %.6f, want %.6f", c.row, basis, got, want)
			}
		}
	}
}

// TestWholeNetworksByBasis adds up two networks that were worked out by hand.
func TestWholeNetworksByBasis(t *testing.T) {
	l, problems := MeasureLengths(row(t, "kind=bend, diameter_mm=125, radius_mm=125, angle_deg=90"))
	tee, more := MeasureLengths(row(t, "kind=tee, diameter_mm=125, length_mm=170, branch_diameter_mm=125, branch_length_mm=40"))
	duct, rest := MeasureLengths(row(t, "kind=duct, diameter_mm=125, length_mm=8000"))
	if len(problems)+len(more)+len(rest) > 0 {
		t.Fatal(problems, more, rest)
	}
	// A fitting-dense dwelling: 8 m of d125, ten bends r = d, five equal tees.
	for basis, want := range map[string]float64{
		"centre line, mean girth, branch from the wall":    4.3250,
		"intersection, larger girth, branch from the axis": 4.6584,
	} {
		f := testBases[basis]
		if got := f(duct) + 10*f(l) + 5*f(tee); math.Abs(got-want) > 5e-5 {
			t.Errorf("%s: %.4f, want %.4f", basis, got, want)
		}
	}
}

// TestLengthsAreInOrder: an outer edge is no shorter than the axis, an
// intersection no nearer than the arc.
func TestLengthsAreInOrder(t *testing.T) {
	for _, text := range []string{
		"kind=bend, style=gored, diameter_mm=315, radius_mm=315, angle_deg=90, gores=5",
		"kind=bend, style=square heel, width_mm=600, height_mm=400, throat_mm=100, angle_deg=90, legs_mm=30",
		"kind=bend, width_mm=600, width2_mm=400, height_mm=400, throat_mm=100, angle_deg=90, legs_mm=30",
		"kind=offset, diameter_mm=315, length_mm=1200, offset_mm=300, radius_mm=400",
		"kind=breeches, diameter_mm=400, branch_diameter_mm=315, length_mm=500, offset_mm=250",
		"kind=breeches, width_mm=800, height_mm=400, throat_mm=100, angle_deg=90",
		"kind=transition, width_mm=600, height_mm=300, diameter2_mm=355, length_mm=400, offset_mm=60, offset2_mm=-40",
	} {
		l, problems := MeasureLengths(row(t, text))
		if len(problems) > 0 || len(l.Runs) == 0 {
			t.Fatalf("%s: %v %v", text, l, problems)
		}
		for _, r := range l.Runs {
			if r.Outer < r.Axis-1e-12 || r.Intersection < r.Axis-1e-12 || !(r.MeanGirth() > 0) {
				t.Errorf("%s: %+v", text, r)
			}
		}
	}
	half, _ := MeasureLengths(row(t, "kind=bend, diameter_mm=315, radius_mm=315, angle_deg=180"))
	if half.Runs[0].Intersection != 0 {
		t.Errorf("the centre lines of a half turn meet at %g", half.Runs[0].Intersection)
	}
}
