package schematic

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"blankoff/planner/report"
)

// random is ductwork of n nodes in some systems and levels, with branches,
// spigots and long mains.
func random(seed uint64, n int) *report.Plan {
	r := rand.New(rand.NewPCG(seed, 4))
	d := &report.Ductwork{}
	sections := 1 + n/12
	v := &report.Plan{Drawing: d}
	for i := range sections {
		v.Sections = append(v.Sections, report.Section{ID: fmt.Sprintf("S%02d", i+1)})
	}
	for k := range n {
		node := report.Node{
			Tag: fmt.Sprintf("D%d", k), Item: k, First: true, System: "SA1", Level: fmt.Sprintf("Level %d", r.IntN(3)),
			Girth: 0.3 + 3*r.Float64(), Long: 6 * r.Float64(), Section: k * sections / n, Up: -1,
		}
		if k > 0 && r.IntN(25) > 0 {
			up := max(0, k-1-r.IntN(1+r.IntN(12)))
			node.Up, node.System = len(d.Joints), d.Nodes[up].System
			if r.IntN(5) > 0 {
				node.Level = d.Nodes[up].Level
			}
			node.Side = r.IntN(3)
			node.Spigot = node.Side > 0 && r.IntN(2) == 0
			cut := 0
			if d.Nodes[up].Section != node.Section {
				v.Cuts = append(v.Cuts, report.Cut{Parts: [2]string{v.Sections[d.Nodes[up].Section].ID, v.Sections[node.Section].ID}})
				cut = len(v.Cuts)
			}
			d.Joints = append(d.Joints, report.Joint{A: up, B: k, At: fmt.Sprintf("joint %d", k), Cut: cut})
		} else if k > 0 && r.IntN(3) == 0 {
			node.System = "EA1"
		}
		d.Nodes = append(d.Nodes, node)
	}
	v.Connect()
	return v
}

// run is a stretch of a line along x.
type run struct{ x0, x1, y float64 }

// TestNothingLiesOnAnything looks that every node is drawn once, every joint
// once, inside the picture, and that no two runs share a stretch of a row.
func TestNothingLiesOnAnything(t *testing.T) {
	for seed := range uint64(300) {
		v := random(seed, 2+int(seed))
		p := Of(v.Drawing)
		drawn := map[int]int{}
		rows := map[float64][]run{}
		for _, piece := range p.Pieces {
			drawn[piece.Node]++
			for _, q := range piece.Path {
				if q.X < gutter || q.X > p.Width || q.Y < 0 || q.Y > p.Height {
					t.Fatalf("seed %d: node %d at %v is outside %g x %g", seed, piece.Node, q, p.Width, p.Height)
				}
			}
			a, b := piece.Path[len(piece.Path)-2], piece.Path[len(piece.Path)-1]
			if a.Y == b.Y {
				rows[a.Y] = append(rows[a.Y], run{a.X, b.X, a.Y})
			}
		}
		if len(drawn) != len(v.Drawing.Nodes) || len(p.Pieces) != len(v.Drawing.Nodes) || len(p.Joints) != len(v.Drawing.Joints) {
			t.Fatalf("seed %d: %d of %d nodes drawn, %d of %d joints", seed, len(drawn), len(v.Drawing.Nodes), len(p.Joints), len(v.Drawing.Joints))
		}
		for _, list := range rows {
			slices.SortFunc(list, func(a, b run) int { return int(a.x0 - b.x0) })
			for i := 1; i < len(list); i++ {
				if list[i].x0 < list[i-1].x1-1e-9 {
					t.Fatalf("seed %d: %v lies on %v", seed, list[i], list[i-1])
				}
			}
		}
		if !reflect.DeepEqual(p, Of(v.Drawing)) {
			t.Fatalf("seed %d: drawn again, it isn't the same", seed)
		}
	}
}

// TestSmall looks that a card's picture has every node of its section, and no
// node further away than one joint.
func TestSmall(t *testing.T) {
	for seed := range uint64(40) {
		v := random(seed, 60)
		for s := range v.Sections {
			p := Small(v, s)
			mine := map[int]bool{}
			for _, piece := range p.Pieces {
				mine[piece.Node] = true
			}
			for k := range v.Drawing.Nodes {
				near := v.Drawing.Nodes[k].Section == s
				for _, j := range v.Drawing.Joints {
					near = near || j.A == k && v.Drawing.Nodes[j.B].Section == s || j.B == k && v.Drawing.Nodes[j.A].Section == s
				}
				if mine[k] != near {
					t.Fatalf("seed %d, section %d: node %d drawn %v, near %v", seed, s, k, mine[k], near)
				}
			}
		}
	}
}

func TestLevels(t *testing.T) {
	want := []string{"Roof", "Plant room", "Level 12", "L3", "Second", "1", "Mezzanine", "Ground", "Lower ground", "Basement", "B2"}
	got := slices.Clone(want)
	slices.Reverse(got)
	slices.SortStableFunc(got, func(a, b string) int {
		if d := height(b) - height(a); d > 0 {
			return 1
		} else if d < 0 {
			return -1
		}
		return 0
	})
	if !slices.Equal(got, want) {
		t.Errorf("from the top down: %v, want %v", got, want)
	}
}

// TestLooks looks that sections cut from each other differ in colour and pattern.
func TestLooks(t *testing.T) {
	for seed := range uint64(50) {
		v := random(seed, 200)
		looks := Looks(v)
		at := map[string]int{}
		for i := range v.Sections {
			at[v.Sections[i].ID] = i
		}
		for _, c := range v.Cuts {
			a, b := looks[at[c.Parts[0]]], looks[at[c.Parts[1]]]
			if c.Parts[0] != c.Parts[1] && (a.Colour == b.Colour || a.Pattern == b.Pattern) {
				t.Fatalf("seed %d: %s and %s look alike: %v %v", seed, c.Parts[0], c.Parts[1], a, b)
			}
		}
	}
}

func TestTag(t *testing.T) {
	for in, want := range map[string]string{"SA-101": "SA-101", "1234567890123": "1234567890123", "0123456789abcdefghij": "01234…efghij"} {
		if got := Tag(in); got != want {
			t.Errorf("%q became %q, want %q", in, got, want)
		}
	}
}

// BenchmarkOf draws ductwork of two sizes; the ratio of the times has to stay
// near that of the sizes.
func BenchmarkOf(b *testing.B) {
	for _, n := range []int{10_000, 100_000} {
		v := random(1, n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				Of(v.Drawing)
			}
		})
	}
}
