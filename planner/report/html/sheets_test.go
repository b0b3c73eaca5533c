package html

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"blankoff/planner/report"
	"blankoff/planner/report/schematic"
)

// tree is ductwork with long mains and side runs, drawn over several sheets.
func tree(seed uint64, n int) *report.Plan {
	r := rand.New(rand.NewPCG(seed, 5))
	d := &report.Ductwork{}
	for k := range n {
		node := report.Node{Tag: fmt.Sprintf("D%d", k), Item: k, First: true, System: "SA1", Level: "Level 0", Girth: 1, Long: 6 * r.Float64(), Section: -1, Up: -1}
		if k > 0 {
			up := max(0, k-1-r.IntN(1+r.IntN(20)))
			node.Level = d.Nodes[up].Level
			if r.IntN(30) == 0 {
				node.Level = fmt.Sprintf("Level %d", r.IntN(4))
			}
			node.Up, node.Side = len(d.Joints), r.IntN(2)
			d.Joints = append(d.Joints, report.Joint{A: up, B: k})
		}
		d.Nodes = append(d.Nodes, node)
	}
	v := &report.Plan{Drawing: d}
	v.Connect()
	return v
}

var (
	caption = regexp.MustCompile(`<figcaption>SA1: sheet (\d+) of (\d+), column \d+, row \d+(.*?)</figcaption>`)
	further = regexp.MustCompile(`(right|left|above|below) on sheet (\d+)`)
	frame   = regexp.MustCompile(`<svg x="[^"]*" y="0" width="[^"]*" height="[^"]*" viewBox="([-\d.]+) ([-\d.]+) ([-\d.]+) ([-\d.]+)">`)
)

// Every line of the drawing is on a printed sheet, no sheet could be left out,
// each says which number it is and where it goes on, from both sides, and names
// the levels that it shows; the map shows all sheets.
func TestSheets(t *testing.T) {
	fewer := 0
	for seed := range uint64(30) {
		v := tree(seed, 40+8*int(seed))
		c := canvas{v: v, pic: schematic.Of(v.Drawing)}
		list, whole := c.sheets()
		if len(list) == 1 {
			if whole != "" {
				t.Errorf("seed %d: a map of one sheet", seed)
			}
			continue
		}
		points := inked(c.pic, 0)
		var frames []leaf
		on := map[string]bool{}
		for i, s := range list {
			m := caption.FindStringSubmatch(string(s))
			if m == nil || m[1] != fmt.Sprint(i+1) || m[2] != fmt.Sprint(len(list)) {
				t.Fatalf("seed %d: sheet %d of %d is called %q", seed, i+1, len(list), string(s)[:120])
			}
			for _, f := range further.FindAllStringSubmatch(m[3], -1) {
				on[m[1]+" "+f[1]+" "+f[2]] = true
			}
			var l leaf
			fmt.Sscan(strings.Join(frame.FindStringSubmatch(string(s))[1:], " "), &l.x, &l.y, &l.w, &l.h)
			frames = append(frames, l)
			for _, b := range c.pic.Bands {
				own := l.x == 0 && b.Top >= l.y // named by the drawing itself
				if b.Bottom > l.y+20 && b.Top < l.y+l.h-20 && !own && !strings.Contains(string(s), ">"+b.Level+"</text>") {
					t.Errorf("seed %d, sheet %d: doesn't name %s", seed, i+1, b.Level)
				}
			}
			if !strings.Contains(string(whole), ">"+m[1]+"</text>") {
				t.Errorf("seed %d: the map lacks sheet %s", seed, m[1])
			}
		}
		alone := make([]int, len(frames))
		for _, p := range points {
			var by []int
			for i := range frames {
				l := frames[i]
				l.x, l.y, l.w, l.h = l.x-0.1, l.y-0.1, l.w+0.2, l.h+0.2 // rounded to tenths
				if l.holds(p) {
					by = append(by, i)
				}
			}
			if len(by) == 0 {
				t.Fatalf("seed %d: %v is on no sheet", seed, p)
			}
			if len(by) == 1 {
				alone[by[0]]++
			}
		}
		back := map[string]string{"right": "left", "left": "right", "above": "below", "below": "above"}
		for way := range on {
			f := strings.Fields(way)
			if !on[f[2]+" "+back[f[1]]+" "+f[0]] {
				t.Errorf("seed %d: %s isn't said the other way round", seed, way)
			}
		}
		for i, n := range alone {
			if n == 0 {
				t.Errorf("seed %d: sheet %d adds nothing", seed, i+1)
			}
		}
		if all := cutUp(c.pic, 0); len(all) > len(list) {
			fewer++
		}
	}
	if fewer == 0 {
		t.Error("no sheet was ever left out")
	}
}
