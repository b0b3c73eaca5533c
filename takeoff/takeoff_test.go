package takeoff_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
	"blankoff/takeoff/totals"
)

// measured reads a schedule given as text.
func measured(t *testing.T, csv string) *takeoff.Takeoff {
	t.Helper()
	tk := takeoff.New(takeoff.Options{})
	info, err := schedule.ReadFrom("test.csv", []byte(csv), func(r *takeoff.Row) error {
		tk.Add(r)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	return tk
}

// clean is measured without a fault.
func clean(t *testing.T, csv string) *takeoff.Takeoff {
	t.Helper()
	tk := measured(t, csv)
	for _, f := range tk.Faults {
		t.Errorf("fault: row %d %s %q: %s", f.Row, f.Heading, f.Value, f.Message)
	}
	return tk
}

func item(t *testing.T, tk *takeoff.Takeoff, tag string) *takeoff.Item {
	t.Helper()
	for i := range tk.Items {
		if tk.Items[i].Tag == tag {
			return &tk.Items[i]
		}
	}
	t.Fatalf("no item %q", tag)
	return nil
}

func near(t *testing.T, what string, got, want, slack float64) {
	t.Helper()
	if !(math.Abs(got-want) <= slack) {
		t.Errorf("%s: got %.9f, want %.9f", what, got, want)
	}
}

// A plenum 1000 x 800 x 500 less an open 1000 x 500 face and two d250 holes,
// plus their collars of 100 mm: 2.958905 m2, worked out by closed form and by a
// triangulated mesh.
func TestOpeningsComeOffThePlenum(t *testing.T) {
	tk := clean(t, `tag,kind,shape,width_mm,height_mm,length_mm,diameter_mm,branch_length_mm,from
P1,plenum,rectangular,1000,800,500,,,
D1,straight,rectangular,1000,500,1200,,,P1
S1,spigot,circular,,,,250,100,P1
S2,spigot,circular,,,,250,100,P1
`)
	near(t, "plenum and collars", item(t, tk, "P1").Area+item(t, tk, "S1").Area+item(t, tk, "S2").Area, 2.958905, 1e-6)
}

// A round main D500 of 600 mm with a d250 spigot is the tee of the same sizes:
// 0.983147 m2 net, worked out by closed form and by a triangulated mesh. The
// branch axis is 350 mm long, so the collar stands 100 mm beyond the crown.
func TestSpigotOnRoundMainIsTheTee(t *testing.T) {
	tk := clean(t, `tag,kind,shape,diameter_mm,length_mm,branch_length_mm,at_mm,from
M1,straight,circular,500,600,,,
S1,spigot,circular,250,,100,300,M1
`)
	near(t, "main and spigot", tk.Totals.Area, 0.983147, 1e-6)
}

func TestJoining(t *testing.T) {
	const heads = "tag,kind,diameter_mm,length_mm,from,run,joins,quantity\n"
	for _, c := range []struct {
		name, rows string
		want       map[string]string // tag: what it hangs on
	}{
		{"from names the next piece towards the plant", "A,straight,200,1000,,,,\nB,straight,200,1000,A,,,\n", map[string]string{"A": "", "B": "A"}},
		{"order of rows doesn't matter", "B,straight,200,1000,A,,,\nA,straight,200,1000,,,,\n", map[string]string{"A": "", "B": "A"}},
		{"the row above", "A,straight,200,1000,,,,\nB,straight,200,1000,^,,,\nC,straight,200,1000,^,,,\n", map[string]string{"B": "A", "C": "B"}},
		{"a run chains rows of its name", "A,straight,200,1000,,r1,,\nX,straight,200,1000,,r2,,\nB,straight,200,1000,,r1,,\nY,straight,200,1000,,r2,,\n", map[string]string{"A": "", "B": "A", "X": "", "Y": "X"}},
		{"a tag may hold a slash", "A/branch,straight,200,1000,,,,\nB,straight,200,1000,A/branch,,,\n", map[string]string{"B": "A/branch"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			tk := clean(t, heads+c.rows)
			for tag, want := range c.want {
				got := ""
				if p := item(t, tk, tag).Parent; p >= 0 {
					got = tk.Items[p].Tag
				}
				if got != want {
					t.Errorf("%s hangs on %q, want %q", tag, got, want)
				}
			}
		})
	}
}

// Every slip that a new user makes is found in one run, at its place.
func TestFaults(t *testing.T) {
	const heads = "tag,kind,diameter_mm,length_mm,from,at_mm,quantity,scope,class,branch_length_mm,blank_minutes,joins\n"
	for _, c := range []struct {
		name, rows     string
		row            int
		heading, about string
	}{
		{"duplicate tag", "A,straight,200,1000,,,,,,,,\nA,straight,200,1000,,,,,,,,\n", 3, "tag", "already stands on row 2"},
		{"from names nobody", "A,straight,200,1000,Z,,,,,,,\n", 2, "from", "no row has the tag 'Z'"},
		{"its own from", "A,straight,200,1000,A,,,,,,,\n", 2, "from", "names itself"},
		{"a circle", "A,straight,200,1000,B,,,,,,,\nB,straight,200,1000,A,,,,,,,\n", 2, "from", "lead in a circle"},
		{"nothing above", "A,straight,200,1000,^,,,,,,,\n", 2, "from", "no row above"},
		{"no kind", "A,,200,1000,,,,,,,,\n", 2, "kind", "no kind"},
		{"unknown kind", "A,widget,200,1000,,,,,,,,\n", 2, "kind", "widget"},
		{"no length", "A,straight,200,,,,,,,,,\n", 2, "length_mm", ""},
		{"an end taken twice", "A,straight,200,1000,,,,,,,,\nB,straight,200,1000,A,,,,,,,\nC,straight,200,1000,A,,,,,,,\n", 4, "from", "already carries B"},
		{"no such end", "A,straight,200,1000,,,,,,,,\nB,straight,200,1000,A/branch,,,,,,,\n", 3, "from", "no branch"},
		{"nothing hangs on a cap", "A,cap,200,,,,,,,,,\nB,straight,200,1000,A,,,,,,,\n", 3, "from", "no far end"},
		{"a spigot beyond its wall", "A,straight,500,1000,,,,,,,,\nS,spigot,200,,A,1500,,,,100,,\n", 3, "at_mm", "beyond the end"},
		{"a spigot over the end of its wall", "A,straight,500,1000,,,,,,,,\nS,spigot,200,,A,50,,,,100,,\n", 3, "at_mm", "beyond the end"},
		{"metres read as mm", "A,straight,200,3,,,,,,,,\nB,straight,200,4.5,A,,,,,,,\n", 2, "length_mm", "length_m"},
		{"a spigot on nothing", "S,spigot,200,,,,,,,100,,\n", 2, "from", ""},
		{"hanging on pieces side by side", "A,straight,500,1000,,,,,,,,\nS,spigot,200,,A,500,3,,,100,,\nB,straight,200,1000,S,,,,,,,\n", 4, "from", "side by side"},
		{"two bends in one row of a network", "A,straight,200,1000,,,,,,,,\nB,flexible,200,1000,A,,2,,,,,\n", 3, "quantity", "side by side"},
		{"half a piece", "A,straight,200,1000,,,1.5,,,,,\n", 2, "quantity", ""},
		{"unknown scope", "A,straight,200,1000,,,,maybe,,,,\n", 2, "scope", "maybe"},
		{"blank minutes in words", "A,straight,200,1000,,,,,,,soon,\n", 2, "blank_minutes", "soon"},
		{"an unclear branch", "A,tee,200,1000,,,,,,,,\n", 2, "", "branch"},
		{"a branch wider than the main", "A,straight,200,1000,,,,,,,,\nS,spigot,300,,A,500,,,,100,,\n", 3, "", ""},
		{"a ring to an end that is taken", "A,straight,200,1000,,,,,,,,\nB,straight,200,1000,A,,,,,,,A\n", 3, "joins", "already carries"},
	} {
		t.Run(c.name, func(t *testing.T) {
			tk := measured(t, heads+c.rows)
			if s := tk.Schedule; s.RowsRead != s.RowsUsed+s.RowsExcluded+s.RowsRefused || s.RowsRefused == 0 {
				t.Errorf("rows: %+v", s)
			}
			for _, f := range tk.Faults {
				if f.Row == c.row && (c.heading == "" || f.Heading == c.heading) && strings.Contains(f.Message, c.about) {
					if f.Expected == "" {
						t.Errorf("the fault says nothing of what was expected: %+v", f)
					}
					return
				}
			}
			t.Errorf("no such fault among %+v", tk.Faults)
		})
	}
}

// All faults of a schedule come in one run and every other row is still used.
func TestAllFaultsAtOnce(t *testing.T) {
	tk := measured(t, `tag,kind,diameter_mm,length_mm,from
A,straight,200,1000,
B,straight,,1000,A
C,straight,200,-1000,B
D,straight,200,NaN,C
E,straight,200,"1,50,0",D
F,straight,200,1500,E
`)
	if n := len(tk.Faults); n != 4 {
		t.Errorf("%d faults, want 4: %+v", n, tk.Faults)
	}
	if s := tk.Schedule; s.RowsRead != 6 || s.RowsUsed != 2 || s.RowsRefused != 4 {
		t.Errorf("rows: %+v", s)
	}
}

// One sliver among lengths out of a model is left alone.
func TestSliver(t *testing.T) {
	clean(t, "tag,kind,diameter_mm,length_mm,from\nA,straight,200,1501,\nB,straight,200,9,A\nC,straight,200,1500,B\n")
}

// Quantity multiplies an area; it isn't looked at twice.
func TestQuantity(t *testing.T) {
	one := clean(t, "tag,kind,width_mm,height_mm,length_mm,quantity\nA,straight,600,400,1200,1\n")
	six := clean(t, "tag,kind,width_mm,height_mm,length_mm,quantity\nA,straight,600,400,1200,6\n")
	near(t, "six of them", six.Totals.Area, 6*one.Totals.Area, 1e-12)
	near(t, "one", one.Totals.Area, 2.4, 1e-12) // 2 x (0.6 + 0.4) x 1.2
	near(t, "joints", six.Totals.JointLength, 6*2.0, 1e-12)
}

// 25 mm of lining inside 600 x 400 clear makes the metal 650 x 450: 10 % more.
func TestLining(t *testing.T) {
	const heads = "tag,kind,width_mm,height_mm,length_mm,lining_mm,size_is\n"
	near(t, "clear", clean(t, heads+"A,straight,600,400,1000,25,clear\n").Totals.Area, 2.2, 1e-12)
	near(t, "metal", clean(t, heads+"A,straight,600,400,1000,25,metal\n").Totals.Area, 2.0, 1e-12)
	if tk := measured(t, heads+"A,straight,600,400,1000,25,\n"); len(tk.Faults) != 1 || tk.Faults[0].Heading != "size_is" {
		t.Errorf("lining without size_is: %+v", tk.Faults)
	}
}

// What is in, through and out is told apart.
func TestScope(t *testing.T) {
	tk := clean(t, `tag,kind,diameter_mm,length_mm,from,scope
A,straight,200,1000,,in
B,inline,200,1000,A,through
C,straight,200,1000,B,
D,flexible,200,1000,C,out
`)
	each := math.Pi * 0.2
	near(t, "in", tk.Totals.Area, 2*each, 1e-12)
	near(t, "through", tk.Totals.Through, each, 1e-12)
	near(t, "out", tk.Totals.Out, each, 1e-12)
	if s := tk.Schedule; s.RowsUsed != 3 || s.RowsExcluded != 1 {
		t.Errorf("rows: %+v", s)
	}
}

// The totals by system, level, shape and size add up to the whole.
func TestPartsAddUp(t *testing.T) {
	var b strings.Builder
	b.WriteString("tag,system,level,kind,shape,width_mm,height_mm,diameter_mm,length_mm\n")
	for i := range 60 {
		switch i % 3 {
		case 0:
			fmt.Fprintf(&b, "A%d,S%d,L%d,straight,rectangular,%d,300,,%d\n", i, i%2, i%4, 300+10*i, 1000+i)
		case 1:
			fmt.Fprintf(&b, "A%d,S%d,L%d,straight,circular,,,%d,%d\n", i, i%2, i%4, 100+10*i, 1000+i)
		default:
			fmt.Fprintf(&b, "A%d,S%d,L%d,straight,flat-oval,%d,200,,%d\n", i, i%2, i%4, 300+10*i, 1000+i)
		}
	}
	tk := clean(t, b.String())
	for name, parts := range map[string][]totals.Part{
		"system": tk.Totals.BySystem, "level": tk.Totals.ByLevel, "shape": tk.Totals.ByShape, "size": tk.Totals.BySize,
	} {
		sum, joints := 0.0, 0.0
		for _, p := range parts {
			sum += p.Area
			joints += p.JointLength
		}
		near(t, "area by "+name, sum, tk.Totals.Area, 1e-9)
		near(t, "joints by "+name, joints, tk.Totals.JointLength, 1e-9)
	}
}
