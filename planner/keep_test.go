package planner_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"sort"
	"strings"
	"testing"

	"blankoff/planner"
	"blankoff/planner/report"
)

// oldOf turns a view to an earlier plan, with a status for each section.
func oldOf(v *report.Plan, status func(i int) string) planner.Old {
	var old planner.Old
	for i, s := range v.Sections {
		o := planner.OldSection{ID: s.ID, Status: status(i)}
		for _, p := range s.Pieces {
			o.Spans = append(o.Spans, planner.OldSpan{Tag: p.Tag, Kind: p.Kind, Size: p.Size, From: p.From, To: p.To, Of: p.Of, Own: p.Own})
		}
		old.Sections = append(old.Sections, o)
	}
	return old
}

// revised changes the area of a piece of the model, or hangs a new one on it.
func (m model) revised(r *rand.Rand, free map[string]bool) model {
	out := m
	out.pieces = slices.Clone(m.pieces)
	out.joints = slices.Clone(m.joints)
	if r.IntN(2) == 0 {
		out.pieces[r.IntN(len(out.pieces))].area = float64(r.IntN(900)+20) / 100
	} else {
		var ends []string
		for end, is := range free {
			if is {
				ends = append(ends, end)
			}
		}
		sort.Strings(ends)
		end := ends[r.IntN(len(ends))]
		host, _, _ := strings.Cut(end, "/")
		at := slices.IndexFunc(out.pieces, func(p modelPiece) bool { return p.tag == host })
		out.pieces = append(out.pieces, modelPiece{tag: fmt.Sprintf("N%d", len(out.pieces)+1), area: float64(r.IntN(900)+20) / 100, scope: "in", class: "B", test: 400})
		out.joints = append(out.joints, modelJoint{a: at, b: len(out.pieces) - 1, minutes: float64(r.IntN(40) + 1)})
		out.from = append(slices.Clone(m.from), end)
	}
	out.write()
	return out
}

// write writes the model's schedule: tees on free ends, without rings.
func (m *model) write() {
	var b strings.Builder
	b.WriteString("tag,kind,shape,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,area_m2,from,blank_minutes,test_pa,class\n")
	for i, p := range m.pieces {
		from, minutes := "", ""
		if i > 0 {
			from, minutes = m.from[i-1], fmt.Sprint(m.joints[i-1].minutes)
		}
		fmt.Fprintf(&b, "%s,tee,circular,300,600,300,150,%.2f,%s,%s,400,B\n", p.tag, p.area, from, minutes)
	}
	m.csv = b.String()
}

// plainModel is a random tree of tees, with what hangs where.
func plainModel(r *rand.Rand, n int) (m model, free map[string]bool) {
	free = map[string]bool{}
	for i := range n {
		p := modelPiece{tag: fmt.Sprintf("T%d", i+1), area: float64(r.IntN(900)+20) / 100, scope: "in", class: "B", test: 400}
		if i > 0 {
			var ends []string
			for end, is := range free {
				if is {
					ends = append(ends, end)
				}
			}
			sort.Strings(ends)
			end := ends[r.IntN(len(ends))]
			free[end] = false
			host, _, _ := strings.Cut(end, "/")
			at := slices.IndexFunc(m.pieces, func(p modelPiece) bool { return p.tag == host })
			m.joints = append(m.joints, modelJoint{a: at, b: i, minutes: float64(r.IntN(40) + 1)})
			m.from = append(m.from, end)
		}
		free[p.tag+"/far"], free[p.tag+"/branch"] = true, true
		m.pieces = append(m.pieces, p)
	}
	m.write()
	return m, free
}

// sets lists the sections that a choice of cuts leaves, each as its sorted tags.
func (m *model) sets(cut []bool) map[string]bool {
	part := m.parts(cut)
	by := map[int][]string{}
	for i, p := range m.pieces {
		by[part[i]] = append(by[part[i]], p.tag)
	}
	out := map[string]bool{}
	for _, tags := range by {
		sort.Strings(tags)
		out[strings.Join(tags, " ")] = true
	}
	return out
}

func tagsOf(s *planner.OldSection) string {
	var tags []string
	for _, p := range s.Spans {
		tags = append(tags, p.Tag)
	}
	sort.Strings(tags)
	return strings.Join(tags, " ")
}

// Against every choice of cuts: firm sections that haven't changed stay, no more
// sections are out of range than there have to be, and no plan as good moves
// fewer of the others.
func TestKeepMovesFewest(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 11))
	moved := 0
	for range 250 {
		m, free := plainModel(r, 4+r.IntN(5))
		set := settings(t, gapRig)
		before := planned(t, m.csv, set)
		old := oldOf(before, func(int) string { return []string{"", "", "passed"}[r.IntN(3)] })
		next := m.revised(r, free)
		p, err := planner.Keep(readSchedule(t, next.csv), set, old)
		if err != nil {
			t.Fatalf("%v\n%s", err, next.csv)
		}
		same := map[string]bool{} // tags of unchanged sections
		for i := range old.Sections {
			unchanged := true
			for _, s := range old.Sections[i].Spans {
				at := slices.IndexFunc(next.pieces, func(q modelPiece) bool { return q.tag == s.Tag })
				unchanged = unchanged && fmt.Sprintf("%.2f", next.pieces[at].area) == fmt.Sprintf("%.2f", s.Own)
			}
			same[old.Sections[i].ID] = unchanged
		}
		want := next.fewest(old, same, gapWindows("B", set.Headroom))
		got := 0
		for i := range old.Sections {
			s := &old.Sections[i]
			if s.Firm() && same[s.ID] && !slices.Contains(p.Kept.Stay, s.ID) {
				t.Fatalf("%s was passed, hasn't changed and didn't stay\n%s", s.ID, next.csv)
			}
			if !s.Firm() && same[s.ID] && !slices.Contains(p.Kept.Stay, s.ID) {
				got++
			}
		}
		if got != want || !p.Kept.Proved {
			t.Fatalf("%d sections moved, the fewest is %d (proved %v)\n%s\nthen\n%s", got, want, p.Kept.Proved, m.csv, next.csv)
		}
		moved += got
	}
	if moved == 0 {
		t.Error("nothing ever had to move: the test tests nothing")
	}
}

// fewest is the least number of free, unchanged sections that no longer are
// sections, among the choices of cuts that keep the firm ones and have the
// fewest sections out of range.
func (m *model) fewest(old planner.Old, same map[string]bool, windows []span) int {
	type found struct{ over, under, moved int }
	var best *found
	for set := 0; set < 1<<len(m.joints); set++ {
		cut := make([]bool, len(m.joints))
		for k := range cut {
			cut[k] = set>>k&1 == 1
		}
		w, ok := m.value(cut, func(string) []span { return windows })
		if !ok {
			continue
		}
		now := m.sets(cut)
		f := found{w.over, w.under, 0}
		for i := range old.Sections {
			s := &old.Sections[i]
			switch there := now[tagsOf(s)]; {
			case !same[s.ID] || there:
			case s.Firm():
				ok = false
			default:
				f.moved++
			}
		}
		if ok && (best == nil || f.over < best.over || f.over == best.over && (f.under < best.under || f.under == best.under && f.moved < best.moved)) {
			best = &f
		}
	}
	return best.moved
}

// Through 500 revisions of a network of 300 pieces nothing that passed and
// hasn't changed is lost or renamed, ids are never used for other pieces, and
// every plan is right by itself.
func TestRevisions(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 300))
	m, free := plainModel(r, 300)
	set := settings(t, gapRig)
	v := planned(t, m.csv, set)
	meant := map[string]string{} // id: the tags that it has stood for
	status := map[string]string{}
	for revision := range 500 {
		old := oldOf(v, func(i int) string { return status[v.Sections[i].ID] })
		for i := range old.Sections {
			s := &old.Sections[i]
			if was, ok := meant[s.ID]; ok && was != tagsOf(s) {
				t.Fatalf("revision %d: %s stood for %s and stands for %s", revision, s.ID, was, tagsOf(s))
			}
			meant[s.ID] = tagsOf(s)
			if r.IntN(10) == 0 {
				s.Status, status[s.ID] = "passed", "passed"
			}
		}
		next := m.revised(r, free)
		if len(next.from) > len(m.from) {
			free[next.from[len(next.from)-1]] = false
		}
		p, err := planner.Keep(readSchedule(t, next.csv), set, old)
		if err != nil {
			t.Fatal(err)
		}
		void := map[string]bool{}
		for _, x := range p.Kept.Void {
			void[x.ID] = true
			delete(status, x.ID)
		}
		for i := range old.Sections {
			if s := &old.Sections[i]; s.Firm() && !void[s.ID] && !slices.Contains(p.Kept.Stay, s.ID) {
				t.Fatalf("revision %d: %s was passed and is neither kept nor named void", revision, s.ID)
			}
		}
		m, v = next, report.Of(p)
		m.check(t, v, func(class string) []span { return gapWindows(class, set.Headroom) })
	}
}
