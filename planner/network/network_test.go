package network_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/planner/network"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

func built(t *testing.T, csv string) *network.Network {
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
	return network.Build(tk, network.DefaultPrices())
}

// node finds the piece of a row.
func node(t *testing.T, n *network.Network, tag string, piece int) int {
	t.Helper()
	for k := range n.Nodes {
		if n.Item(k).Tag == tag && n.Nodes[k].First <= piece && piece <= n.Nodes[k].Last {
			return k
		}
	}
	t.Fatalf("no piece %d of %s", piece, tag)
	return -1
}

// A rectangular main of 7 m is made of 1.5 m pieces from the plant end and a
// remainder of 1 m; the openings come off the pieces on which they lie: a quarter
// of that of S3, from 2.95 to 3.15 m, lies on the second piece.
func TestPiecesOfAStraight(t *testing.T) {
	n := built(t, `tag,kind,width_mm,height_mm,diameter_mm,length_mm,branch_length_mm,from,at_mm
M,straight,600,400,,7000,,,
S1,spigot,,,200,,100,M,700
S2,spigot,,,200,,100,M,6500
S3,spigot,,,200,,100,M,3050
`)
	girth, hole := 2.0, math.Pi*0.04/4
	for piece, want := range []float64{1: 1.5*girth - hole, 2: 1.5*girth - hole/4, 3: 1.5*girth - hole*3/4, 4: 1.5 * girth, 5: 1*girth - hole} {
		if piece == 0 {
			continue
		}
		k := node(t, n, "M", piece)
		if got := n.Nodes[k].Area; math.Abs(got-want) > 1e-12 || n.Nodes[k].Of != 5 {
			t.Errorf("piece %d of %d: %.6f m2, want %.6f", piece, n.Nodes[k].Of, got, want)
		}
	}
	// S3 reaches from 2.95 to 3.15 m, so the joint at 3.0 m can't be blanked.
	for piece, barred := range map[int]bool{2: false, 3: true, 4: false, 5: false} {
		j := n.Joints[n.Nodes[node(t, n, "M", piece)].Up]
		if (j.Barred != "") != barred {
			t.Errorf("joint before piece %d: %q", piece, j.Barred)
		}
	}
	if j := n.Joints[n.Nodes[node(t, n, "S3", 1)].Up]; j.A != node(t, n, "M", 3) || !j.Wall || j.Barred == "" {
		t.Errorf("joint of S3: %+v", j)
	}
}

// Two straights of 2 m in one row are four pieces: 1.5, 0.5, 1.5, 0.5 m.
func TestQuantityOfStraights(t *testing.T) {
	n := built(t, "tag,kind,width_mm,height_mm,length_mm,quantity,from\nM,straight,600,400,2000,2,\nC,cap,600,400,,,M\n")
	var long []string
	for k := range n.Nodes {
		if n.Item(k).Tag == "M" {
			long = append(long, fmt.Sprintf("%.1f", n.Nodes[k].Long))
		}
	}
	if got := strings.Join(long, " "); got != "1.5 0.5 1.5 0.5" {
		t.Errorf("pieces of %s m", got)
	}
}

// Three spigots in one row stand side by side, each with its own free end.
func TestSideBySide(t *testing.T) {
	n := built(t, `tag,kind,width_mm,height_mm,diameter_mm,length_mm,branch_length_mm,from,at_mm,quantity
M,straight,600,400,,1500,,,,
S,spigot,,,200,,100,M,700,3
`)
	free := 0
	for _, e := range n.OpenEnds {
		if n.Item(e.Node).Tag == "S" {
			free++
		}
	}
	if free != 3 {
		t.Errorf("%d free ends, want 3", free)
	}
	if got, want := n.Nodes[node(t, n, "M", 1)].Area, 3-3*math.Pi*0.04/4; math.Abs(got-want) > 1e-12 {
		t.Errorf("the wall is %.6f m2, want %.6f", got, want)
	}
}

// Open ends are all the ends with nothing on them, each once.
func TestOpenEnds(t *testing.T) {
	n := built(t, `tag,kind,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,from,end_minutes
T,tee,300,600,200,150,,
A,straight,300,4000,,,T,7
C,cap,200,,,,T/branch,
`)
	want := map[string]float64{ // 5 + 5 x pi x 0.3 = 9.712, priced in hundredths
		"plant end of T": 9.71, "far end of A": 7}
	for i := range n.OpenEnds {
		e := &n.OpenEnds[i]
		text := n.EndText(e)
		minutes, ok := want[text]
		if !ok || math.Abs(minutes-e.Minutes) > 1e-9 {
			t.Errorf("open end %q of %.2f min", text, e.Minutes)
		}
		delete(want, text)
	}
	if len(want) > 0 {
		t.Errorf("not found: %v", want)
	}
}

// A refused row that others join to stays, blanked on every side; a row that is
// out stays too.
func TestOutsidePieces(t *testing.T) {
	n := built(t, `tag,kind,diameter_mm,length_mm,from,scope
A,straight,300,3000,,
B,straight,300,-5,A,
C,straight,300,3000,B,
D,flexible,300,500,C,out
`)
	for tag, state := range map[string]network.State{"A": network.Tested, "B": network.Outside, "C": network.Tested, "D": network.Outside} {
		if k := node(t, n, tag, 1); n.Nodes[k].State != state {
			t.Errorf("%s is %v, want %v", tag, n.Nodes[k].State, state)
		}
	}
	// The size of a blank against the refused piece is that of its neighbour.
	if j := n.Joints[n.Nodes[node(t, n, "C", 1)].Up]; j.FaceA.Shape != fittings.Circular || j.FaceA.Diameter != 0.3 {
		t.Errorf("joint of C: %+v", j)
	}
}

// Prices: the rule is 10 + 10 min per metre of girth; the schedule's own figure
// comes first; no and welded bar a joint; a number frees a wall.
func TestPrices(t *testing.T) {
	n := built(t, `tag,kind,width_mm,height_mm,diameter_mm,length_mm,branch_length_mm,from,at_mm,blank_minutes,joint
A,straight,600,400,,1500,,,,,
B,straight,600,400,,1500,,A,,,
C,straight,600,400,,1500,,B,,12.5,
D,straight,600,400,,1500,,C,,no,
E,straight,600,400,,3000,,D,,,welded
F,straight,600,400,,1500,,E,,must 8,
S,spigot,,,200,,100,F,700,6,
`)
	for _, c := range []struct {
		tag     string
		piece   int
		minutes float64
		barred  bool
		must    bool
	}{
		{"B", 1, 30, false, false}, {"C", 1, 12.5, false, false}, {"D", 1, 30, true, false},
		{"E", 1, 30, true, false}, {"E", 2, 30, true, false}, {"F", 1, 8, false, true}, {"S", 1, 6, false, false},
	} {
		j := n.Joints[n.Nodes[node(t, n, c.tag, c.piece)].Up]
		if math.Abs(j.Minutes-c.minutes) > 1e-9 || (j.Barred != "") != c.barred || j.Must != c.must {
			t.Errorf("joint of %s piece %d: %+v", c.tag, c.piece, j)
		}
	}
}

// Rings are named the same every time.
func TestRingsAreStable(t *testing.T) {
	csv := `tag,kind,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,from,joins
T1,tee,400,1000,400,200,,
T2,tee,400,1000,400,200,T1,
A,straight,400,3000,,,T1/branch,T2/branch
B,straight,400,3000,,,T2,
`
	first := fmt.Sprint(built(t, csv).Rings)
	if !strings.Contains(first, "[") {
		t.Fatal("no ring")
	}
	for range 20 {
		if again := fmt.Sprint(built(t, csv).Rings); again != first {
			t.Fatalf("%s, then %s", first, again)
		}
	}
}

// The pieces of a straight add up to it wherever its spigots sit: in one piece,
// over a joint, or at an unknown place.
func TestPiecesAddUp(t *testing.T) {
	for _, at := range []string{"", "700", "1500", "1450", "2900"} {
		for _, long := range []string{"1000", "1500", "3000", "4700"} {
			n := built(t, "tag,kind,width_mm,height_mm,diameter_mm,length_mm,branch_length_mm,from,at_mm\nM,straight,600,400,,"+long+",,,\nS,spigot,,,150,,100,M,"+at+"\n")
			sum := 0.0
			for k := range n.Nodes {
				if n.Item(k).Tag == "M" {
					sum += n.Nodes[k].Area
				}
			}
			if it := &n.Takeoff.Items[0]; !n.Takeoff.Items[1].Refused && math.Abs(sum-it.Area) > 1e-12 {
				t.Errorf("%s mm with a spigot at %q: pieces %.6f, row %.6f m2", long, at, sum, it.Area)
			}
		}
	}
}

// TestRingsOfALadder: two mains with rungs between them share ways, so that there
// are many sets of rings to choose from; the same one has to come out every time.
// A ladder of n closed rungs has n rings (links less nodes plus one).
func TestRingsOfALadder(t *testing.T) {
	csv := "tag,system,kind,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,from,joins\n"
	const rungs = 9
	csv += "A0,S,tee,315,1000,200,100,,\nG0,S,straight,200,500,,,A0/branch,\nB0,S,tee,200,1000,200,100,G0,\n"
	for k := 1; k <= rungs; k++ {
		csv += fmt.Sprintf("A%d,S,tee,315,1000,200,100,A%d,\n", k, k-1)
		csv += fmt.Sprintf("B%d,S,tee,200,1000,200,100,B%d,\n", k, k-1)
		csv += fmt.Sprintf("G%d,S,straight,200,500,,,A%d/branch,B%d/branch\n", k, k, k)
	}
	n := built(t, csv)
	first := fmt.Sprint(n.Rings)
	if len(n.Rings) != rungs {
		t.Errorf("%d rings, want %d: %s", len(n.Rings), rungs, first)
	}
	joined := map[[2]int]bool{}
	for _, j := range n.Joints {
		joined[[2]int{j.A, j.B}], joined[[2]int{j.B, j.A}] = true, true
	}
	for _, r := range n.Rings {
		for i, v := range r.Nodes {
			if w := r.Nodes[(i+1)%len(r.Nodes)]; !joined[[2]int{v, w}] {
				t.Errorf("ring %v: no joint between %d and %d", r.Nodes, v, w)
			}
		}
	}
	for range 20 {
		if again := fmt.Sprint(built(t, csv).Rings); again != first {
			t.Fatalf("rings differ:\n%s\n%s", first, again)
		}
	}
}
