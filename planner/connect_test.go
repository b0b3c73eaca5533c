package planner_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/planner"
)

func madePlan(t testing.TB, csv string, set planner.Settings) *planner.Plan {
	t.Helper()
	p, err := planner.Make(readSchedule(t, csv), set)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A main of 30 m with three open ends on the way, 3 m of round duct each: the
// middle one is nearest to the middle of the area, and the main's two open ends
// are 15 m and 14.99 m from it; the tapping goes to the far one of these.
func TestRigInTheMiddle(t *testing.T) {
	csv := `tag,kind,width_mm,height_mm,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,from,level
M1,straight,500,400,,9000,,,,L1
T1,tee,500,400,,1000,200,100,M1,L1
M2,straight,500,400,,9000,,,T1,L1
T2,tee,500,400,,1000,200,100,M2,L1
M3,straight,500,400,,12000,,,T2,L1
`
	set := classB(t, siteRig, 400)
	set.MaxArea = 0
	p := madePlan(t, csv, set)
	if len(p.Sections) != 1 {
		t.Fatalf("%d sections", len(p.Sections))
	}
	c := p.Connections(0.1)[0]
	if !strings.Contains(c.RigAt, "branch of T2") || c.Level != "L1" {
		t.Errorf("the rig goes to %s on %s", c.RigAt, c.Level)
	}
	if !strings.Contains(c.TapAt, "plant end of M1") || math.Abs(c.Metres-20) > 0.6 {
		t.Errorf("the tapping goes to %s, %g m", c.TapAt, c.Metres)
	}
	// A hose of 300 mm doesn't fit the branches: the main's own ends do.
	if c := p.Connections(0.3)[0]; !strings.Contains(c.RigAt, "M3") && !strings.Contains(c.RigAt, "M1") || strings.Contains(c.RigAt, "adapter") {
		t.Errorf("with a wide hose the rig goes to %s", c.RigAt)
	}
	if c := p.Connections(0.6)[0]; !strings.Contains(c.RigAt, "reducing adapter") {
		t.Errorf("no opening is wide enough, and the rig goes to %s", c.RigAt)
	}
}

// Where there is one opening, the pressure is read through a test hole in the
// piece furthest from it; where there is none, somebody has to agree on a hole.
func TestOneOpening(t *testing.T) {
	csv := "tag,kind,diameter_mm,length_mm,from\nM1,straight,500,9000,\nM2,straight,500,9000,M1\nC1,cap,500,,M2\n"
	p := madePlan(t, csv, classB(t, siteRig, 400))
	c := p.Connections(0)[0]
	if !strings.Contains(c.RigAt, "plant end of M1") || c.Tap >= 0 || !strings.HasPrefix(c.TapAt, "a test hole in C1, 18 m") {
		t.Errorf("%+v", c)
	}
	csv = "tag,kind,width_mm,height_mm,diameter_mm,length_mm,from\nP,plenum,800,800,,800,\nM1,straight,,,500,9000,P\nC1,cap,,,500,,M1\n"
	p = madePlan(t, csv, classB(t, siteRig, 400))
	if c := p.Connections(0)[0]; c.Rig >= 0 || c.Tap >= 0 || !strings.Contains(c.RigAt, "no opening") {
		t.Errorf("%+v", c)
	}
}

// TestConnectionsAgainstAllPairs works the ways out again, from every piece to
// every other, and looks that no opening as easy is nearer to the middle of the
// area and none is further from the rig than the tapping.
func TestConnectionsAgainstAllPairs(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for range 40 {
		var b strings.Builder
		b.WriteString("tag,kind,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,from\n")
		free := []string{""}
		for i := range 12 + r.IntN(20) {
			k := r.IntN(len(free))
			fmt.Fprintf(&b, "P%d,tee,400,%d,400,300,%s\n", i, 1000+r.IntN(8000), free[k])
			free = append(slices.Delete(free, k, k+1), fmt.Sprintf("P%d", i), fmt.Sprintf("P%d/branch", i))
		}
		p := madePlan(t, b.String(), classB(t, siteRig, 400))
		for i, c := range p.Connections(0.1) {
			checkConnection(t, p, &p.Sections[i], c)
		}
	}
}

func checkConnection(t *testing.T, p *planner.Plan, s *planner.Section, c planner.Connection) {
	t.Helper()
	way := allPairs(p, s)
	nodes := p.Network.Nodes
	off := func(b int) (sum float64) {
		for _, k := range s.Nodes {
			sum += nodes[k].Area / s.Area * way[[2]int{s.Blanks[b].Node, k}]
		}
		return sum
	}
	easy := func(b int) bool { return s.Blanks[b].Why != planner.ForCut }
	apart := func(a, b int) float64 {
		x, y := s.Blanks[a].Node, s.Blanks[b].Node
		return way[[2]int{x, y}] + nodes[x].Long/2 + nodes[y].Long/2
	}
	if c.Rig < 0 || c.Tap < 0 || c.Rig == c.Tap {
		t.Fatalf("%+v", c)
	}
	for b := range s.Blanks {
		if easy(b) && !easy(c.Rig) {
			t.Errorf("%s is an open end and %s isn't", s.Blanks[b].At, c.RigAt)
		}
		if easy(b) == easy(c.Rig) && off(b) < off(c.Rig)-0.02 {
			t.Errorf("%s is nearer to the middle than %s: %g and %g m", s.Blanks[b].At, c.RigAt, off(b), off(c.Rig))
		}
		if b != c.Rig && apart(c.Rig, b) > c.Metres+1e-6 {
			t.Errorf("%s is %g m from the rig, the tapping %g", s.Blanks[b].At, apart(c.Rig, b), c.Metres)
		}
	}
	if math.Abs(apart(c.Rig, c.Tap)-c.Metres) > 1e-6 {
		t.Errorf("%g m to the tapping, found %g", c.Metres, apart(c.Rig, c.Tap))
	}
}

// allPairs is the way between the middles of any two pieces of a section, by
// trying every piece as a stop on the way.
func allPairs(p *planner.Plan, s *planner.Section) map[[2]int]float64 {
	way := map[[2]int]float64{}
	get := func(a, b int) float64 {
		if d, ok := way[[2]int{a, b}]; ok {
			return d
		}
		return math.Inf(1)
	}
	in := map[int]bool{}
	for _, k := range s.Nodes {
		in[k], way[[2]int{k, k}] = true, 0
	}
	for _, j := range p.Network.Joints {
		if in[j.A] && in[j.B] {
			d := (p.Network.Nodes[j.A].Long + p.Network.Nodes[j.B].Long) / 2
			way[[2]int{j.A, j.B}], way[[2]int{j.B, j.A}] = d, d
		}
	}
	for _, m := range s.Nodes {
		for _, a := range s.Nodes {
			for _, b := range s.Nodes {
				if d := get(a, m) + get(m, b); d < get(a, b) {
					way[[2]int{a, b}] = d
				}
			}
		}
	}
	return way
}

// TestProgress: every stretch is told once, in order, with its system.
func TestProgress(t *testing.T) {
	csv := "tag,system,kind,diameter_mm,length_mm,from\nA,S1,straight,500,9000,\nB,S1,straight,500,9000,A\nC,S2,straight,500,9000,\nD,S2,straight,500,9000,C\n"
	set := classB(t, siteRig, 400)
	var told []string
	set.Progress = func(system string, stretch, of int) { told = append(told, fmt.Sprint(system, " ", stretch, "/", of)) }
	madePlan(t, csv, set)
	if got := strings.Join(told, ", "); got != "S1 1/2, S2 2/2" {
		t.Errorf("told %s", got)
	}
}

// A 100 mm spigot left open at 400 Pa: air leaves at sqrt(2 x 400 / 1.2) = 25.8
// m/s through 0.00785 m2, of which an orifice passes 0.61: about 124 L/s. Four
// times the pressure doubles it.
func TestOpenEndFlow(t *testing.T) {
	face := fittings.CrossSection{Shape: fittings.Circular, Diameter: 0.1}
	if q := planner.OpenEndFlow(face, 400); math.Abs(q-123.7) > 0.1 {
		t.Errorf("%g L/s", q)
	}
	if q := planner.OpenEndFlow(face, 1600) / planner.OpenEndFlow(face, 400); math.Abs(q-2) > 1e-12 {
		t.Errorf("four times the pressure: %g times the flow", q)
	}
}

// Nobody makes an adapter plate of 2.9 x 1.5 m while there is a joint of 0.75 x
// 0.35 m to be cut anyhow.
func TestRigNotOnAHugeOpening(t *testing.T) {
	csv := `tag,kind,width_mm,height_mm,length_mm,width2_mm,height2_mm,from,blank_minutes
H,straight,2900,1500,1200,,,,
R,reducer,2900,1500,900,750,350,H,
M,straight,750,350,12000,,,R,
N,straight,750,350,12000,,,M,must
`
	p := madePlan(t, csv, classB(t, siteRig, 400))
	if c := p.Connections(0)[0]; !strings.Contains(c.RigAt, "750 x 350") {
		t.Errorf("the rig goes to %s", c.RigAt)
	}
}
