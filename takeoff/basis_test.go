package takeoff_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/bases"
	"blankoff/takeoff/schedule"
)

// with reads a schedule with the given settings; no row may be at fault.
func with(t *testing.T, o takeoff.Options, csv string) *takeoff.Takeoff {
	t.Helper()
	tk := takeoff.New(o)
	info, err := schedule.ReadFrom("test.csv", []byte(csv), func(r *takeoff.Row) error {
		tk.Add(r)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	for _, f := range tk.Faults {
		t.Errorf("fault: row %d %s %q: %s", f.Row, f.Heading, f.Value, f.Message)
	}
	return tk
}

func basis(t *testing.T, name string) *fittings.Basis {
	t.Helper()
	b, err := bases.Lookup(name)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// scheduleOf turns heading=value pairs into a schedule of one row.
func scheduleOf(row string) string {
	var heads, cells []string
	for pair := range strings.SplitSeq(row, ",") {
		head, cell, _ := strings.Cut(strings.TrimSpace(pair), "=")
		heads, cells = append(heads, head), append(cells, cell)
	}
	return strings.Join(heads, ",") + "\n" + strings.Join(cells, ",") + "\n"
}

// TestPublishedFigures holds the built-in bases to the figures in print.
func TestPublishedFigures(t *testing.T) {
	file, err := os.Open("../testdata/areas-bases.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 5 {
		t.Fatal(err, len(rows))
	}
	for _, row := range rows[1:] {
		want, _ := strconv.ParseFloat(row[2], 64)
		rounded, _ := strconv.ParseFloat(row[3], 64)
		tk := with(t, takeoff.Options{Basis: basis(t, row[1])}, scheduleOf(row[0]))
		near(t, row[0]+" on "+row[1], tk.Totals.Area, want, rounded)
		if math.Abs(tk.Totals.Exact-want) < 0.01 {
			t.Errorf("%s: the exact area %.6f gives the figure too, so it shows nothing", row[0], tk.Totals.Exact)
		}
	}
}

// TestFittingsOnEveryBasis holds the built-in bases to figures worked out by hand
// from the words of their sources.
func TestFittingsOnEveryBasis(t *testing.T) {
	columns := []string{"exact", "centre-line", "to-intersection", "largest-girth", "large-end", "outer-periphery"}
	for _, c := range []struct {
		row  string
		want [6]float64
	}{
		{"kind=bend, diameter_mm=315, radius_mm=315, angle_deg=90", [6]float64{0.489656, 0.489656, 0.623449, 0.734484, 0.489656, 0.734484}},
		{"kind=bend, width_mm=600, height_mm=400, throat_mm=100, legs_mm=30, angle_deg=90", [6]float64{1.376637, 1.376637, 1.72, 2.319115, 1.376637, 2.319115}},
		// (0.6 + 0.4 + 0.4 + 0.3) x 0.5 = 0.85; 2 x 1.0 x 0.5 = 1
		{"kind=reducer, width_mm=600, height_mm=400, width2_mm=400, height2_mm=300, length_mm=500", [6]float64{0.859425, 0.85, 1, 1.019804, 1, 0.85}},
		{"kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=300", [6]float64{0.401901, 0.384060, 0.471239, 0.493131, 0.471239, 0.384060}},
		{"kind=tee, diameter_mm=315, length_mm=320, branch_diameter_mm=200, branch_length_mm=60", [6]float64{0.331957, 0.354372, 0.453332, 0.354372, 0.453332, 0.354372}},
		// 2 x (0.5 + 0.3) x 0.2
		{"kind=inline, width_mm=500, height_mm=300, length_mm=200", [6]float64{0.32, 0.32, 0.32, 0.32, 0, 0}},
		{"kind=cap, width_mm=600, height_mm=400", [6]float64{0.24, 0.24, 0.24, 0.24, 0.24, 0.24}},
		{"kind=straight, width_mm=600, height_mm=400, length_mm=1500", [6]float64{3, 3, 3, 3, 3, 3}},
	} {
		for i, name := range columns {
			tk := with(t, takeoff.Options{Basis: basis(t, name)}, scheduleOf(c.row))
			near(t, c.row+" on "+name, tk.Totals.Area, c.want[i], 1.01e-6)
			near(t, c.row+" exact beside "+name, tk.Totals.Exact, c.want[0], 1.01e-6)
		}
	}
}

// TestDwelling adds up a network that was worked out by hand: 8 m of d125, ten
// bends r = d, five equal tees.
func TestDwelling(t *testing.T) {
	for name, want := range map[string]float64{"exact": 4.2915, "centre-line": 4.3250, "to-intersection": 4.6584, "largest-girth": 4.7105} {
		tk := with(t, takeoff.Options{Basis: basis(t, name)}, `tag,kind,diameter_mm,length_mm,radius_mm,angle_deg,branch_diameter_mm,branch_length_mm,quantity
D,straight,125,8000,,,,,1
B,bend,125,,125,90,,,10
T,tee,125,170,,,125,40,5
`)
		near(t, name, tk.Totals.Area, want, 5e-5)
		near(t, "exact beside "+name, tk.Totals.Exact, 4.2915, 5e-5)
		shapes := 0.0
		for _, p := range tk.Totals.ByShape {
			shapes += p.Exact
		}
		near(t, "by shape", shapes, tk.Totals.Exact, 1e-12)
	}
}

// TestMixedNetwork adds up a network of straights, bends, tapers, spigots, reducers
// and tees. Its sums were worked out by another program from the words of the
// rules.
func TestMixedNetwork(t *testing.T) {
	const rows = `tag,kind,width_mm,height_mm,width2_mm,height2_mm,diameter_mm,diameter2_mm,length_mm,throat_mm,radius_mm,angle_deg,branch_diameter_mm,branch_length_mm,from,quantity
A,straight,800,400,,,,,12000,,,,,,,1
B,bend,800,400,,,,,,100,,90,,,,2
C,reducer,800,400,600,400,,,500,,,,,,,2
D,straight,600,400,,,,,10000,,,,,,,1
E,spigot,,,,,,,,,,,250,100,D,3
F,straight,,,,,250,,18000,,,,,,,1
G,bend,,,,,250,,,,250,90,,,,6
H,reducer,,,,,250,160,150,,,,,,,3
I,tee,,,,,250,,350,,,,160,60,,3
J,straight,,,,,160,,12000,,,,,,,1
`
	for name, want := range map[string]float64{"exact": 78.068502, "centre-line": 78.230064, "to-intersection": 80.689148, "largest-girth": 82.497977} {
		tk := with(t, takeoff.Options{Basis: basis(t, name)}, rows)
		near(t, name, tk.Totals.Area, want, 1e-6)
	}
}

// TestNoMeetingIsAFault: a half turn can't be measured to the intersection.
func TestNoMeetingIsAFault(t *testing.T) {
	tk := takeoff.New(takeoff.Options{Basis: basis(t, "to-intersection")})
	info, err := schedule.ReadFrom("test.csv", []byte("tag,kind,diameter_mm,radius_mm,angle_deg\nU,bend,315,315,180\n"), func(r *takeoff.Row) error {
		tk.Add(r)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	if len(tk.Faults) != 1 || tk.Faults[0].Heading != "angle_deg" || tk.Faults[0].Value != "180" || tk.Totals.Area != 0 {
		t.Errorf("%+v", tk.Faults)
	}
}
