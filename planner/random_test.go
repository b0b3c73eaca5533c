package planner_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// The networks of these tests are made of tees whose area is given, so that
// every number in them is known without measuring anything.

// model is a small network as the tests see it, built beside its schedule and
// never from it.
type model struct {
	pieces []modelPiece
	joints []modelJoint
	csv    string
	from   []string // what each piece after the first hangs on, where write is used
}

type modelPiece struct {
	tag   string
	area  float64 // m2
	scope string
	class string
	test  float64 // Pa
	// ready and closed are days; closed 0 is never.
	ready, closed int
}

// upWith reports whether two pieces are up at one time.
func (p modelPiece) upWith(o modelPiece) bool {
	last := func(p modelPiece) int {
		if p.closed == 0 {
			return 1000
		}
		return p.closed
	}
	return max(p.ready, o.ready) <= min(last(p), last(o))
}

type modelJoint struct {
	a, b    int
	minutes float64
	never   bool
	must    bool
}

// features are switched on and off by the tests.
type features struct{ bans, musts, classes, scopes, rings, times bool }

// randomModel makes a network of n tees, each hanging on a free end of one
// before it, and its schedule.
func randomModel(r *rand.Rand, n int, f features) model {
	var m model
	type free struct {
		piece int
		end   string
	}
	var ends []free
	var rows []string
	for i := range n {
		p := modelPiece{tag: fmt.Sprintf("T%d", i+1), area: float64(r.IntN(900)+20) / 100, scope: "in", class: "B", test: 400}
		if f.scopes && r.IntN(6) == 0 {
			p.scope = []string{"out", "through"}[r.IntN(2)]
		}
		if f.classes && r.IntN(4) == 0 {
			p.class = "C"
		}
		if f.times && r.IntN(2) == 0 {
			p.ready = r.IntN(8)
			p.closed = p.ready + 1 + r.IntN(6)
		}
		from, minutes := "", ""
		if i > 0 {
			k := r.IntN(len(ends))
			at := ends[k]
			ends = append(ends[:k], ends[k+1:]...)
			j := modelJoint{a: at.piece, b: i, minutes: float64(r.IntN(40) + 1)}
			minutes = fmt.Sprint(j.minutes)
			same := m.pieces[at.piece].class == p.class && m.pieces[at.piece].upWith(p)
			switch {
			case f.bans && same && r.IntN(4) == 0:
				j.never, minutes = true, "no"
			case f.musts && r.IntN(6) == 0:
				j.must, minutes = true, fmt.Sprintf("must %g", j.minutes)
			}
			from = m.pieces[at.piece].tag + at.end
			m.joints = append(m.joints, j)
		}
		ends = append(ends, free{i, ""}, free{i, "/branch"})
		m.pieces = append(m.pieces, p)
		rows = append(rows, fmt.Sprintf("%s,tee,300,600,300,150,%.2f,%s,%s,%s,%g,%s,%s", p.tag, p.area, from, minutes, p.scope, p.test, p.class, p.times()))
	}
	joins := make([]string, n)
	if f.rings {
		m.closeRing(r, func(i int, end string) (int, bool) {
			for k, e := range ends {
				if e.piece == i && e.end == end {
					return k, true
				}
			}
			return 0, false
		}, joins)
	}
	var b strings.Builder
	b.WriteString("tag,kind,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,area_m2,from,blank_minutes,scope,test_pa,class,ready,closed,joins,shape\n")
	for i, row := range rows {
		fmt.Fprintf(&b, "%s,%s,circular\n", row, joins[i])
	}
	m.csv = b.String()
	return m
}

// times is the piece's days as two cells of the schedule.
func (p modelPiece) times() string {
	if p.closed == 0 {
		return ","
	}
	return fmt.Sprintf("%d,%d", p.ready, p.closed)
}

// closeRing joins the free far end of one piece to the free branch of another,
// at the price that the rule gives a 300 mm opening.
func (m *model) closeRing(r *rand.Rand, find func(int, string) (int, bool), joins []string) {
	for range 10 {
		a, b := r.IntN(len(m.pieces)), r.IntN(len(m.pieces))
		_, farFree := find(a, "")
		_, branchFree := find(b, "/branch")
		if a == b || m.meet(a, b) || !farFree || !branchFree || m.pieces[a].class != m.pieces[b].class {
			continue
		}
		joins[a] = m.pieces[b].tag + "/branch"
		price := math.Round((10+10*math.Pi*0.3)*100) / 100
		m.joints = append(m.joints, modelJoint{a: b, b: a, minutes: price})
		return
	}
}

// meet reports whether two pieces are joined already.
func (m *model) meet(a, b int) bool {
	for _, j := range m.joints {
		if j.a == a && j.b == b || j.a == b && j.b == a {
			return true
		}
	}
	return false
}

// span is a closed range of areas.
type span struct{ low, high float64 }

// worth is what a plan costs, in the order in which it is made least.
type worth struct {
	over, under, tests int
	minutes            float64
}

func (w worth) less(o worth, time bool, test float64) bool {
	a := []float64{float64(w.over), float64(w.under), float64(w.tests), w.minutes}
	b := []float64{float64(o.over), float64(o.under), float64(o.tests), o.minutes}
	if time {
		a = []float64{a[0], a[1], a[2]*test + a[3]}
		b = []float64{b[0], b[1], b[2]*test + b[3]}
	}
	for i := range a {
		if math.Abs(a[i]-b[i]) > 1e-7 {
			return a[i] < b[i]
		}
	}
	return false
}

// best tries every set of cuts. windows gives the areas that can be judged in a
// class.
func (m *model) best(windows func(class string) []span, time bool, test float64) (best worth, found bool) {
	var may []int
	out := m.outside()
	base := make([]bool, len(m.joints)) // cut whatever is chosen
	for k, j := range m.joints {
		a, b := m.pieces[j.a], m.pieces[j.b]
		switch {
		case out[j.a] || out[j.b], j.must, a.class != b.class, !a.upWith(b):
			base[k] = true
		case !j.never:
			may = append(may, k)
		}
	}
	for set := 0; set < 1<<len(may); set++ {
		cut := append([]bool(nil), base...)
		for x, k := range may {
			cut[k] = set>>x&1 == 1
		}
		if w, ok := m.value(cut, windows); ok && (!found || w.less(best, time, test)) {
			best, found = w, true
		}
	}
	return best, found
}

// outside tells which pieces are in no section: those that are out, and what
// hangs on them over joints that can't be blanked.
func (m *model) outside() []bool {
	out := make([]bool, len(m.pieces))
	for i, p := range m.pieces {
		out[i] = p.scope == "out"
	}
	for changed := true; changed; {
		changed = false
		for _, j := range m.joints {
			if j.never && out[j.a] != out[j.b] {
				out[j.a], out[j.b], changed = true, true, true
			}
		}
	}
	return out
}

// value is what a choice of cuts costs, and whether it may be chosen: no
// section may be too big unless it is one that can't be cut.
func (m *model) value(cut []bool, windows func(string) []span) (worth, bool) {
	part := m.parts(cut)
	cluster := m.parts(m.blankable())
	out := m.outside()
	var w worth
	area, size, whole, class := map[int]float64{}, map[int]int{}, map[int]map[int]bool{}, map[int]string{}
	for i, p := range m.pieces {
		if out[i] {
			continue
		}
		if p.scope == "in" {
			area[part[i]] += p.area
		}
		size[part[i]]++
		if whole[part[i]] == nil {
			whole[part[i]] = map[int]bool{}
		}
		whole[part[i]][cluster[i]] = true
		class[part[i]] = p.class
	}
	for i, a := range m.pieces {
		for k, b := range m.pieces[:i] {
			if part[i] == part[k] && !out[i] && !out[k] && !a.upWith(b) {
				return w, false
			}
		}
	}
	for id := range size {
		w.tests++
		most, in := 0.0, false
		for _, s := range windows(class[id]) {
			most = math.Max(most, s.high)
			in = in || area[id] >= s.low && area[id] <= s.high
		}
		switch {
		case area[id] > most && len(whole[id]) > 1:
			return w, false
		case area[id] > most:
			w.over++
		case !in:
			w.under++
		}
	}
	for _, j := range m.joints {
		if !out[j.a] && !out[j.b] && (part[j.a] != part[j.b] || j.must) {
			w.minutes += j.minutes
		}
	}
	return w, true
}

// blankable is every joint that can be cut, taken as cut.
func (m *model) blankable() []bool {
	cut := make([]bool, len(m.joints))
	for k, j := range m.joints {
		cut[k] = !j.never
	}
	return cut
}

// parts numbers the pieces by what hangs together when joints are cut.
func (m *model) parts(cut []bool) []int {
	part := make([]int, len(m.pieces))
	for i := range part {
		part[i] = i
	}
	for changed := true; changed; {
		changed = false
		for k, j := range m.joints {
			if !cut[k] && part[j.a] != part[j.b] {
				low := min(part[j.a], part[j.b])
				part[j.a], part[j.b], changed = low, low, true
			}
		}
	}
	return part
}
