package untested_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"blankoff/planner"
	"blankoff/planner/duty"
	"blankoff/planner/network"
	"blankoff/planner/rig"
	"blankoff/planner/untested"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

const heads = "tag,kind,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,area_m2,from,blank_minutes,end_minutes,scope,class,test_pa,joins,ready,closed\n"

// planned plans a schedule with a rig that reads 0.44 to 4.4 L/s: 1 to 10 m2 in
// class B at 400 Pa (0.009 x 400^0.65 = 0.442 L/s per m2).
func planned(t *testing.T, csv string) *planner.Plan {
	t.Helper()
	r, _, err := rig.Load(strings.NewReader("name = \"r\"\n[[range]]\nname = \"a\"\nmin_l_s = 0.45\nmax_l_s = 4.4\n"), "rig.toml")
	if err != nil {
		t.Fatal(err)
	}
	tk := takeoff.New(takeoff.Options{})
	info, err := schedule.ReadFrom("test.csv", []byte(csv), func(r *takeoff.Row) error { tk.Add(r); return nil })
	if err != nil {
		t.Fatal(err)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	set := planner.Defaults()
	set.Rigs, set.Class, set.TestPa, set.Headroom = rig.Fleet{r}, "B", 400, 1
	p, err := planner.Make(tk, set)
	if err != nil && len(p.Sections) > 0 {
		t.Fatalf("%v\n%s%v", err, csv, p.Faults)
	}
	return p
}

func asked(p *planner.Plan) untested.Ask {
	ask := untested.Ask{Net: p.Network, Prices: p.Settings.Prices}
	for _, s := range p.Sections {
		ask.Sections = append(ask.Sections, untested.Section{ID: s.ID, Nodes: s.Nodes, Area: s.Area, Exact: s.Exact, Windows: s.Windows, Status: s.Status})
	}
	for _, c := range p.Cuts {
		ask.Cuts = append(ask.Cuts, untested.Cut{Joint: c.Joint, Parts: c.Parts, Why: c.Why})
	}
	return ask
}

// random is a schedule of tees whose areas and prices are given.
func random(r *rand.Rand, n int) string {
	var b strings.Builder
	b.WriteString(heads)
	free := []string{}
	for i := range n {
		from, minutes, class, scope, joins, times := "", "", "B", "in", "", ","
		if i > 0 {
			k := r.IntN(len(free))
			from = free[k]
			free = append(free[:k], free[k+1:]...)
			minutes = fmt.Sprint(2 * (1 + r.IntN(20)))
			switch r.IntN(9) {
			case 0, 1:
				minutes = "no"
			case 2:
				minutes = "must " + minutes
			}
		}
		switch r.IntN(10) {
		case 0:
			class = "C"
		case 1:
			scope = []string{"out", "through"}[r.IntN(2)]
		case 2:
			ready := r.IntN(6)
			times = fmt.Sprintf("%d,%d", ready, ready+r.IntN(3))
		}
		tag := fmt.Sprintf("T%d", i+1)
		if len(free) > 2 && r.IntN(10) == 0 { // closes a ring
			k := r.IntN(len(free))
			if strings.HasSuffix(free[k], "/branch") {
				joins = free[k]
				free = append(free[:k], free[k+1:]...)
			}
		}
		if joins == "" {
			free = append(free, tag)
		}
		free = append(free, tag+"/branch")
		fmt.Fprintf(&b, "%s,tee,%d,600,250,150,%.2f,%s,%s,%d,%s,%s,400,%s,%s\n", tag, 250+50*r.IntN(2), 0.3+3*r.Float64(), from, minutes, 1+r.IntN(9), scope, class, joins, times)
	}
	return b.String()
}

// test is what one test of some nodes needs, counted over the whole network: its
// blanks, their minutes, its area. must are the joints that stay blanked.
func test(p *planner.Plan, in map[int]bool, must map[int]bool, tested map[int]bool) (blanks int, minutes, area float64) {
	for k := range p.Network.Nodes {
		if n := p.Network.Nodes[k]; in[k] && n.State == network.Tested {
			area += n.Area
		}
	}
	for k, j := range p.Network.Joints {
		sides := 0
		for _, v := range []int{j.A, j.B} {
			if in[v] {
				sides++
			}
		}
		switch {
		case sides == 0, sides == 2 && !must[k]:
			continue
		case sides == 1 && !(tested[j.A] && tested[j.B]): // to a piece in no test: as an open end
			blanks++
			face := j.FaceA
			if in[j.B] {
				face = j.FaceB
			}
			minutes += p.Settings.Prices.End(face, "")
			continue
		}
		blanks += sides
		minutes += float64(sides) * j.Minutes / 2
	}
	for _, e := range p.Network.OpenEnds {
		if in[e.Node] {
			blanks++
			minutes += e.Minutes
		}
	}
	return blanks, minutes, area
}

// TestOverlaps holds every overlap against a count of the whole larger test: what
// it needs beyond the section's own, that the joint lies inside it and nothing
// that can't be blanked at its bounds, and that it is in range.
func TestOverlaps(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 8))
	overlaps, joint, refused := 0, 0, 0
	for range 500 {
		csv := random(r, 3+r.IntN(22))
		p := planned(t, csv)
		ask := asked(p)
		list, sum := untested.Joints(ask)
		if len(list) != len(p.Cuts) || sum.Joints != len(p.Cuts) {
			t.Fatalf("%d joints of %d cuts", len(list), len(p.Cuts))
		}
		tested, must := map[int]bool{}, map[int]bool{}
		for _, s := range p.Sections {
			for _, k := range s.Nodes {
				tested[k] = true
			}
		}
		for _, c := range p.Cuts {
			must[c.Joint] = c.Why != ""
		}
		total := untested.Cost{}
		for s := range p.Sections {
			own, larger, said := map[int]bool{}, map[int]bool{}, untested.Cost{}
			for _, k := range p.Sections[s].Nodes {
				own[k], larger[k] = true, true
			}
			for _, j := range list {
				if j.By != s {
					continue
				}
				joint++
				said = untested.Cost{Blanks: said.Blanks + j.Blanks, Minutes: said.Minutes + j.Minutes, Area: said.Area + j.Area}
				for _, k := range j.Takes {
					if larger[k] || !tested[k] {
						t.Fatalf("node %d is taken in twice, or is in no test\n%s", k, csv)
					}
					larger[k] = true
				}
			}
			if len(larger) == len(own) {
				continue
			}
			overlaps++
			blanks, minutes, area := test(p, own, must, tested)
			blanks2, minutes2, area2 := test(p, larger, must, tested)
			if blanks2-blanks != said.Blanks || math.Abs(minutes2-minutes-said.Minutes) > 1e-9 || math.Abs(area2-area-said.Area) > 1e-9 {
				t.Fatalf("%s: said %+v, counted %d %g %g\n%s", p.Sections[s].ID, said, blanks2-blanks, minutes2-minutes, area2-area, csv)
			}
			if area2 < 0.45/0.4423 || area2 > 4.4/0.4421 {
				t.Fatalf("%s with overlaps has %g m2\n%s", p.Sections[s].ID, area2, csv)
			}
			checkBounds(t, p, list, s, larger, csv)
			total = untested.Cost{Blanks: total.Blanks + said.Blanks, Minutes: total.Minutes + said.Minutes, Area: total.Area + said.Area}
		}
		if total.Blanks != sum.Blanks || math.Abs(total.Minutes-sum.Minutes) > 1e-9 || math.Abs(total.Area-sum.Area) > 1e-9 {
			t.Fatalf("sum %+v, counted %+v", sum, total)
		}
		refused += checkRefused(t, p, list, tested, csv)
	}
	if overlaps < 100 || joint < 150 || refused < 100 {
		t.Errorf("only %d sections with %d overlaps, %d joints without", overlaps, joint, refused)
	}
}

// checkBounds: the joints lie inside, and what can't be blanked isn't a bound.
func checkBounds(t *testing.T, p *planner.Plan, list []untested.Joint, s int, larger map[int]bool, csv string) {
	t.Helper()
	for _, j := range list {
		n := p.Network.Joints[p.Cuts[j.Cut].Joint]
		if j.By == s && !(larger[n.A] && larger[n.B]) {
			t.Fatalf("cut %d isn't inside %s\n%s", j.Cut, p.Sections[s].ID, csv)
		}
	}
	when := duty.Always()
	for k := range p.Network.Nodes {
		if larger[k] {
			when = when.With(p.Network.Item(k))
		}
	}
	if when.Empty() {
		t.Fatalf("%s with overlaps is never up together\n%s", p.Sections[s].ID, csv)
	}
	for _, n := range p.Network.Joints {
		if n.Barred != "" && larger[n.A] != larger[n.B] {
			t.Fatalf("%s is bounded by a joint that can't be blanked\n%s", p.Sections[s].ID, csv)
		}
	}
}

// checkRefused: a joint that is refused for its areas alone is too much for both
// of its sections, counted by hand with what they have taken in by the end.
func checkRefused(t *testing.T, p *planner.Plan, list []untested.Joint, tested map[int]bool, csv string) (n int) {
	t.Helper()
	for _, j := range list {
		c := p.Cuts[j.Cut]
		if (j.By >= 0) == (j.Why != "") {
			t.Fatalf("cut %d: by %d, why %q", j.Cut, j.By, j.Why)
		}
		if j.By >= 0 || c.Why != "" || strings.Contains(j.Why, "up together") {
			if c.Why != "" && j.By >= 0 {
				t.Fatalf("cut %d (%s) is overlapped", j.Cut, c.Why)
			}
			continue
		}
		n++
		joint := p.Network.Joints[c.Joint]
		for side, over := range []int{joint.B, joint.A} {
			part := c.Parts[side]
			in := map[int]bool{over: true}
			for _, k := range p.Sections[part].Nodes {
				in[k] = true
			}
			for _, o := range list {
				if o.By == part {
					for _, k := range o.Takes {
						in[k] = true
					}
				}
			}
			for went := true; went; {
				went = false
				for _, b := range p.Network.Joints {
					if b.Barred != "" && in[b.A] != in[b.B] {
						in[b.A], in[b.B], went = true, true, true
					}
				}
			}
			if _, _, area := test(p, in, nil, tested); area > 0.45/0.442 && area < 4.4/0.4424 {
				t.Fatalf("cut %d: %s could take the other side in, %g m2; refused because %s\n%s", j.Cut, p.Sections[part].ID, area, j.Why, csv)
			}
		}
	}
	return n
}

// TestCheaperSide: of two sections with one cut between them the cheaper of the
// sides that stay in range takes in the other's piece.
func TestCheaperSide(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 18))
	seen := 0
	for range 1500 {
		p := planned(t, random(r, 2+r.IntN(5)))
		list, _ := untested.Joints(asked(p))
		if len(p.Cuts) != 1 || list[0].By < 0 {
			continue
		}
		tested, joint := map[int]bool{}, p.Network.Joints[p.Cuts[0].Joint]
		for _, s := range p.Sections {
			for _, k := range s.Nodes {
				tested[k] = true
			}
		}
		best := math.Inf(1)
		for side, over := range []int{joint.B, joint.A} {
			own, larger := map[int]bool{}, map[int]bool{over: true}
			for _, k := range p.Sections[p.Cuts[0].Parts[side]].Nodes {
				own[k], larger[k] = true, true
			}
			for range p.Network.Joints {
				for _, b := range p.Network.Joints {
					if b.Barred != "" && larger[b.A] != larger[b.B] {
						larger[b.A], larger[b.B] = true, true
					}
				}
			}
			when := duty.Always()
			for k := range larger {
				when = when.With(p.Network.Item(k))
			}
			_, was, _ := test(p, own, nil, tested)
			if _, minutes, area := test(p, larger, nil, tested); area > 0.45/0.442 && area < 4.4/0.4424 && !when.Empty() {
				best = min(best, minutes-was)
			}
		}
		if seen++; math.Abs(best-list[0].Minutes) > 1e-9 {
			t.Fatalf("%+v, the cheaper side costs %g min", list[0], best)
		}
	}
	if seen < 20 {
		t.Errorf("only %d plans with one such cut", seen)
	}
}

// TestWhyNot: what makes a joint untestable is said in trade words.
func TestWhyNot(t *testing.T) {
	row := "%s,straight,500,3000,,,,%s,%s,,%s,%s,400,,,\n"
	for want, x := range map[string][2]string{
		"change of class":        {"", "C"},
		"the schedule says must": {"must 10", "B"},
	} {
		p := planned(t, heads+fmt.Sprintf(row, "A", "", "", "in", "B")+fmt.Sprintf(row, "B", "A", x[0], "in", x[1]))
		list, sum := untested.Joints(asked(p))
		if len(list) != 1 || list[0].Why != want || sum.Overlaps != 0 || math.Abs(sum.Metres-0.5*math.Pi) > 1e-12 {
			t.Errorf("%+v, want %q and one joint of pi x 0.5 m", list, want)
		}
	}
}

// TestStatus: a section that is tested already takes nothing in; the other may.
func TestStatus(t *testing.T) {
	var b strings.Builder
	b.WriteString(heads)
	for i := range 6 {
		fmt.Fprintf(&b, "D%d,straight,500,1500,,,,%s,10,,in,B,400,,,\n", i, []string{"", fmt.Sprintf("D%d", i-1)}[min(i, 1)])
	}
	ask := asked(planned(t, b.String()))
	if len(ask.Cuts) != 1 {
		t.Fatalf("%d cuts", len(ask.Cuts))
	}
	list, _ := untested.Joints(ask)
	first := list[0].By
	ask.Sections[first].Status = "passed"
	if list, _ = untested.Joints(ask); list[0].By != 1-first {
		t.Errorf("%s is passed, and %+v", ask.Sections[first].ID, list)
	}
	ask.Sections[1-first].Status = "agreed"
	if list, _ = untested.Joints(ask); list[0].By >= 0 || !strings.Contains(list[0].Why, "is passed") || !strings.Contains(list[0].Why, "is agreed") {
		t.Errorf("%+v", list)
	}
}
