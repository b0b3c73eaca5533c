package takeoff_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"blankoff/takeoff"
)

const walls = `tag,kind,shape,width_mm,height_mm,length_mm,diameter_mm,branch_length_mm,from,quantity,scope
P1,plenum,rectangular,1000,800,500,,,,1,
D1,straight,rectangular,1000,500,1200,,,P1,1,
SP1,spigot,circular,,,,250,100,P1,1,
SP2,spigot,circular,,,,250,100,P1,2,
SP3,spigot,circular,,,,200,100,D1,1,
I1,inline,rectangular,1000,500,300,,,D1,1,through
C1,cap,rectangular,1000,500,,,,I1,1,out
`

// TestOpeningsOnABasis: a basis that keeps openings takes none off, and the exact
// area beside it does. The plenum: 3.4 - 0.5 - 3 x pi 0.25^2 / 4.
func TestOpeningsOnABasis(t *testing.T) {
	kept := with(t, takeoff.Options{Basis: basis(t, "largest-girth")}, walls)
	exact := with(t, takeoff.Options{}, walls)
	p := item(t, kept, "P1")
	near(t, "kept", p.Area, 3.4, 1e-12)
	near(t, "exact", p.Exact, 3.4-0.5-3*math.Pi*0.0625/4, 1e-12)
	near(t, "cut", p.CutExact, 0.5+3*math.Pi*0.0625/4, 1e-12)
	if s := item(t, kept, "SP1"); p.Cut != 0 || s.Opening != 0 || s.OpeningExact == 0 {
		t.Errorf("kept: %g cut, opening %g, exact %g", p.Cut, s.Opening, s.OpeningExact)
	}
	for i := range exact.Items {
		a, b := &exact.Items[i], &kept.Items[i]
		if a.Area != a.Exact || a.Each != a.EachExact || a.Cut != a.CutExact || a.Opening != a.OpeningExact {
			t.Errorf("%s: on the exact basis the two differ: %+v", a.Tag, a)
		}
		if a.Exact != b.Exact || a.EachExact != b.EachExact || a.CutExact != b.CutExact || a.JointLength != b.JointLength {
			t.Errorf("%s: exact figures change with the basis", a.Tag)
		}
	}
	if a, b := exact.Totals, kept.Totals; a.Area != a.Exact || a.Exact != b.Exact || a.ThroughExact != b.ThroughExact || b.OutExact != a.Out {
		t.Errorf("totals: %+v and %+v", a, b)
	}
	near(t, "larger", kept.Totals.Area-exact.Totals.Area, 0.5+3*math.Pi*0.0625/4+math.Pi*0.04/4, 1e-12)
}

// TestOpeningsOfEndsAndGivenAreas: a plenum on the end of a duct is open there, and
// a given area is taken as it stands on every basis.
func TestOpeningsOfEndsAndGivenAreas(t *testing.T) {
	const rows = `tag,kind,width_mm,height_mm,length_mm,diameter_mm,branch_length_mm,from,area_m2
D,straight,600,400,1000,,,,
P,plenum,1000,800,500,,,D,
G,plenum,,,,,,,5
S,spigot,,,,200,100,G,
`
	for _, name := range []string{"exact", "largest-girth"} {
		tk := with(t, takeoff.Options{Basis: basis(t, name)}, rows)
		p, g := item(t, tk, "P"), item(t, tk, "G")
		near(t, "plenum on a duct", p.Exact, 3.4-0.24, 1e-12)
		if w := tk.Working(p); !strings.Contains(w, "less opening of D: 0.600 x 0.400 = 0.240 m2; leaves 3.160 m2") {
			t.Error(w)
		}
		if g.Area != 5 || g.Exact != 5 || g.Cut != 0 || g.CutExact != 0 || len(g.Notes) != 1 {
			t.Errorf("given area on %s: %+v", name, g)
		}
		if w := tk.Working(g); w != "given area = 5.000 m2" {
			t.Error(w)
		}
	}
}

func TestWorkingShowsEachOpening(t *testing.T) {
	exact := with(t, takeoff.Options{}, walls)
	for tag, want := range map[string]string{
		"P1": "2 x (1.000 x 0.800 + 1.000 x 0.500 + 0.800 x 0.500) = 3.400 m2; less opening of D1: 1.000 x 0.500 = 0.500 m2" +
			"; less 3 openings of SP1, SP2: each pi x 0.250^2 / 4 = 0.049087 m2; x 3 = 0.147262 m2; leaves 2.752738 m2",
		"D1":  "2 x (1.000 + 0.500) x 1.200 = 3.600 m2; less opening of SP3: pi x 0.200^2 / 4 = 0.031416 m2; leaves 3.568584 m2",
		"SP2": "pi x 0.250 x 0.100 = 0.078540 m2; x 2 = 0.157080 m2",
	} {
		if got := exact.Working(item(t, exact, tag)); got != want {
			t.Errorf("%s:\n got %s\nwant %s", tag, got, want)
		}
	}
	kept := with(t, takeoff.Options{Basis: basis(t, "largest-girth")}, walls)
	for tag, want := range map[string]string{
		"D1": "largest-girth: 2 x (1.000 + 0.500) x 1.200 = 3.600 m2; exact: 2 x (1.000 + 0.500) x 1.200 = 3.600 m2" +
			"; less opening of SP3: pi x 0.200^2 / 4 = 0.031416 m2; leaves 3.568584 m2",
		"I1": "2 x (1.000 + 0.500) x 0.300 = 0.900 m2",
	} {
		if got := kept.Working(item(t, kept, tag)); got != want {
			t.Errorf("%s:\n got %s\nwant %s", tag, got, want)
		}
	}
}

// TestManyOpeningsStayReadable: a wall full of spigots has a working that fits a
// cell of a workbook.
func TestManyOpeningsStayReadable(t *testing.T) {
	var b strings.Builder
	b.WriteString("tag,kind,width_mm,height_mm,length_mm,diameter_mm,branch_length_mm,from\nP1,plenum,3000,3000,9000,,,\n")
	for i := range 400 {
		b.WriteString("S" + strconv.Itoa(i) + ",spigot,,,," + strconv.Itoa(80+i%20) + ",100,P1\n")
	}
	tk := with(t, takeoff.Options{}, b.String())
	working := tk.Working(item(t, tk, "P1"))
	if len(working) > 1500 || !strings.Contains(working, "less 240 further openings") || !strings.Contains(working, "of S0, S20, S40, 17 more") {
		t.Errorf("%d bytes: %s", len(working), working)
	}
}

// TestSheet: 0.8 mm of sheet makes 600 x 400 by 1.5 m 2 x (0.6016 + 0.4016) x 1.5;
// what people read stays nominal.
func TestSheet(t *testing.T) {
	o := takeoff.Options{Sheet: 0.0008}
	tk := with(t, o, `tag,kind,width_mm,height_mm,diameter_mm,length_mm,throat_mm,angle_deg,branch_length_mm,from
A,straight,600,400,,1500,,,,
S,spigot,,,250,,,,100,A
B,bend,600,400,,,100,90,,
C,bend,600,400,,,0,90,,
G,plenum,1000,800,,500,,,,
H,straight,600,400,,1000,,,,G
`)
	a := item(t, tk, "A")
	near(t, "straight", a.Each, 2*(0.6016+0.4016)*1.5, 1e-12)
	near(t, "spigot", item(t, tk, "S").Area, math.Pi*0.2516*0.1, 1e-12)
	near(t, "opening", a.Cut, math.Pi*0.2516*0.2516/4, 1e-12)
	near(t, "bend keeps its centre line", item(t, tk, "B").Area, 2*(0.6016+0.4016)*0.4*math.Pi/2, 1e-12)
	near(t, "sharp throat", item(t, tk, "C").Area, 2*(0.6016+0.4016)*0.3008*math.Pi/2, 1e-12)
	near(t, "plenum's opening", item(t, tk, "G").Cut, 0.6016*0.4016, 1e-12)
	if a.SizeText() != "600 x 400" || a.Ends[0].Width != 0.6 {
		t.Errorf("size %s", a.SizeText())
	}
	near(t, "joint", a.JointLength, 2, 1e-12)
	if w := tk.Working(a); !strings.Contains(w, "(0.6016 + 0.4016)") || !strings.Contains(w, "0.2516^2") {
		t.Error(w)
	}
	// a branch on a round main is that of the same sizes, 1.6 mm wider
	const conical = "tag,kind,style,diameter_mm,length_mm,branch_diameter_mm,entry_mm,branch_length_mm,lining_mm,size_is\nT,tee,conical,"
	grown := with(t, takeoff.Options{}, conical+"501.6,900,201.6,301.6,200,,\n").Totals.Area
	near(t, "cone", with(t, o, conical+"500,900,200,300,200,,\n").Totals.Area, grown, 1e-12)
	near(t, "lined cone", with(t, takeoff.Options{}, conical+"500,900,200,300,200,0.8,clear\n").Totals.Area, grown, 1e-12)
	const saddle = "tag,kind,diameter_mm,length_mm,branch_length_mm,from\n"
	near(t, "saddle", with(t, o, saddle+"M,straight,500,900,,\nS,spigot,200,,100,M\n").Totals.Area,
		with(t, takeoff.Options{}, saddle+"M,straight,501.6,900,,\nS,spigot,201.6,,100,M\n").Totals.Area, 1e-12)
	// a branch as wide as the flat is still measured, at its nominal sizes
	tk = with(t, o, "tag,kind,shape,width_mm,height_mm,length_mm,branch_diameter_mm,branch_length_mm\nT,tee,oval,500,200,900,300,100\n")
	if it := item(t, tk, "T"); len(it.Notes) != 1 || !strings.Contains(it.Notes[0], "isn't added") {
		t.Errorf("%v", it.Notes)
	}
	if (takeoff.Options{Sheet: 0.8}).Check() == "" || (takeoff.Options{PieceLength: -1}).Check() == "" || o.Check() != "" {
		t.Error("settings aren't checked")
	}
}

// TestSizeNotes: a size outside its series is noted once an item and never
// refused; sizes in inches and lined ones aren't looked at.
func TestSizeNotes(t *testing.T) {
	tk := with(t, takeoff.Options{}, `tag,kind,diameter_mm,diameter2_mm,width_mm,height_mm,length_mm,lining_mm,size_is
A,straight,330,,,,1000,,
B,reducer,330,315,,,300,,
C,straight,,,304.8,203.2,1000,,
D,straight,,,600,400,1000,25,clear
E,straight,,,600,400,1000,,
`)
	const want = "dia 330 isn't in the EN 1506 series, nearest 315 and 355"
	for tag, notes := range map[string]int{"A": 1, "B": 1, "C": 0, "D": 1, "E": 0} {
		it := item(t, tk, tag)
		if len(it.Notes) != notes || notes == 1 && tag != "D" && it.Notes[0] != want {
			t.Errorf("%s: %q", tag, it.Notes)
		}
	}
}

func TestJointRatio(t *testing.T) {
	// 1.5 m of 600 x 400 is 3 m2 and has 2 m of joint: few; four of 400 mm are many.
	few := with(t, takeoff.Options{}, "tag,kind,width_mm,height_mm,length_mm\nA,straight,600,400,1500\n")
	near(t, "few", few.Totals.JointRatio(), 2.0/3, 1e-12)
	many := with(t, takeoff.Options{}, "tag,kind,width_mm,height_mm,length_mm,quantity\nA,straight,600,400,400,4\n")
	near(t, "many", many.Totals.JointRatio(), 2.5, 1e-12)
	usual := with(t, takeoff.Options{}, "tag,kind,width_mm,height_mm,length_mm\nA,straight,600,400,800\n")
	for _, c := range []struct {
		tk   *takeoff.Takeoff
		want string
	}{{few, "few joints for the area: 0.67 m"}, {many, "many joints for the area: 2.50 m"}, {usual, ""}} {
		if got := c.tk.Totals.JointFlag(); !strings.HasPrefix(got, c.want) || c.want == "" && got != "" {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
