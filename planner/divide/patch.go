package divide

import (
	"math"
	"slices"

	"blankoff/planner/duty"
	"blankoff/planner/network"
	"blankoff/planner/partition"
	"blankoff/planner/rig"
	"blankoff/planner/tightness"
)

// Patch is a stretch of the network inside which any blankable joint may be
// cut: one duty, no must, nothing outside.
type Patch struct {
	Nodes   []int // of the network, breadth first, parents before children
	Duty    duty.Duty
	Scheme  *tightness.Scheme
	Windows []rig.AreaWindow // what can be judged and is wanted, m2
	Most    float64          // no section may be larger unless it can't be cut, m2
	Loose   bool             // of rows that name no neighbours: it hangs together only on paper
	// Solution is the best division, once Divide has found it; its parts are by
	// position in Nodes, its prices in hundredths of a minute.
	Solution partition.Solution
	AtLeast  int // tests that the area alone asks for
	// NotProved says why the division isn't proved best; "" where it is.
	NotProved string

	links     []int            // joints that close rings, of the network
	up        []int            // joint by which each node hangs in the patch, -1
	parent    []int            // position in Nodes, -1
	readable  []rig.AreaWindow // before --min-area and --max-area
	byExact   bool             // weighed exactly and not on the basis
	aim       partition.Aim
	testPrice int64
}

// Patches finds the stretches, in the order of their first node, and the areas
// that the rigs of the settings can judge there.
func Patches(z *duty.Zones, set duty.Settings) []Patch {
	adj := adjacency(z)
	seen, used := make([]bool, len(z.Net.Nodes)), make([]bool, len(z.Net.Joints))
	var out []Patch
	for k := range z.Net.Nodes {
		if !seen[k] && z.Net.Nodes[k].State != network.Outside {
			p := grow(z, k, seen, used, adj)
			p.setWindows(set)
			if len(out) == cap(out) {
				out = slices.Grow(out, 1+len(out)) // twice the room: a patch is large
			}
			out = append(out, p)
		}
	}
	return out
}

// Readable reports whether any area of the patch could be judged by a rig; if
// not, it can't be divided.
func (p *Patch) Readable() bool { return len(p.readable) > 0 }

// adjacency lists, for every node, the joints at which a section needn't end.
func adjacency(z *duty.Zones) [][]int32 {
	count := make([]int32, len(z.Net.Nodes)+1)
	each := func(f func(node, joint int)) {
		for k := range z.Net.Joints {
			if z.Must[k] == "" {
				f(z.Net.Joints[k].A, k)
				f(z.Net.Joints[k].B, k)
			}
		}
	}
	each(func(node, _ int) { count[node+1]++ })
	for i := 1; i < len(count); i++ {
		count[i] += count[i-1]
	}
	flat := make([]int32, count[len(count)-1])
	next := append([]int32(nil), count...)
	each(func(node, joint int) {
		flat[next[node]] = int32(joint)
		next[node]++
	})
	out := make([][]int32, len(z.Net.Nodes))
	for i := range out {
		out[i] = flat[count[i]:count[i+1]]
	}
	return out
}

// grow walks a patch from its first node, breadth first. A node that was seen and
// can be reached is of this patch.
func grow(z *duty.Zones, first int, seen, used []bool, adj [][]int32) Patch {
	p := Patch{
		Nodes: []int{first}, up: []int{-1}, parent: []int{-1},
		Duty: *z.Duty(first), Scheme: z.Rows.SchemeOf(*z.Duty(first)), Loose: z.Net.Loose(first),
	}
	seen[first] = true
	for x := 0; x < len(p.Nodes); x++ {
		v := p.Nodes[x]
		for _, k := range adj[v] {
			if used[k] {
				continue
			}
			used[k] = true
			j := &z.Net.Joints[k]
			w := j.A + j.B - v
			if seen[w] {
				p.links = append(p.links, int(k))
				continue
			}
			seen[w] = true
			p.Nodes = append(p.Nodes, w)
			p.up = append(p.up, int(k))
			p.parent = append(p.parent, x)
		}
	}
	return p
}

// setWindows finds the areas that the rig can judge for the patch.
func (p *Patch) setWindows(set duty.Settings) {
	limit := p.Scheme.Limit(p.Duty.Class, p.Duty.Pa)
	p.readable = set.Rigs.AreaWindows(limit, p.Duty.Pa, set.Headroom)
	p.aim, p.testPrice = set.Aim, int64(math.Round(set.TestMinutes*Hundredths))
	p.Windows, p.Most = clip(p.readable, set.MinArea, set.MaxArea)
}

// clip narrows windows to areas of at least low and at most high (0: no bound),
// and gives the greatest area that a section may have: it may lie in a hole
// between windows, where a section is under range and not over it.
func clip(all []rig.AreaWindow, low, high float64) (out []rig.AreaWindow, most float64) {
	for _, w := range all {
		most = math.Max(most, w.High)
	}
	if high > 0 {
		most = math.Min(most, high)
	}
	for _, w := range all {
		w.Low, w.High = math.Max(w.Low, low), math.Min(w.High, most)
		if w.Low <= w.High {
			out = append(out, w)
		}
	}
	return out, most
}
