package report

import (
	"math"
	"sort"

	"blankoff/planner"
	"blankoff/planner/price"
	"blankoff/planner/programme"
	"blankoff/planner/sampling"
	"blankoff/takeoff/terms"
)

// Work is the tests of a plan as they are priced, in the order of its programme,
// which has to be there.
func (v *Plan) Work(ahead bool, set programme.Settings) *price.Work {
	set.TestMinutes = v.Settings.TestMinutes
	w := &price.Work{Set: set, Ahead: ahead, Sizes: v.blankSizes()}
	at := map[string]*Section{}
	for i := range v.Sections {
		at[v.Sections[i].ID] = &v.Sections[i]
	}
	only := ""
	if names := rigNames(v); len(names) == 1 {
		only = names[0]
	}
	visits := 0
	for _, slot := range v.Programme.Slots {
		t := testOf(at[slot.Section], w.Sizes)
		if t.Rig == "" {
			t.Rig = only // it is brought all the same
		}
		t.Visit = slot.Visit - 1
		visits = max(visits, slot.Visit)
		w.Tests = append(w.Tests, t)
	}
	w.Visits = make([]programme.Visit, visits)
	w.Rigs = rigNames(v)
	return w
}

// rigNames are the rigs that judge a section, or the only one that there is.
func rigNames(v *Plan) []string {
	var out []string
	for i := range v.Sections {
		out = once(out, v.Sections[i].Rig)
	}
	if len(out) == 0 && len(v.Alone) == 0 {
		out = once(out, v.Settings.Rig)
	}
	return out
}

// testOf is a section as a test to be priced.
func testOf(s *Section, sizes []price.Size) price.Test {
	t := price.Test{Test: programme.Test{ID: s.ID, Level: s.RigLevel}, Area: s.Area, Rig: s.Rig, Grouping: s.Grouping, Fits: make([]int, len(sizes))}
	for k := range s.Blanks {
		b := &s.Blanks[k]
		if b.Why == "cut" {
			t.Cuts += b.Minutes
		} else {
			t.Ends += b.Minutes
		}
		text := b.Text
		for i := range sizes {
			if sizes[i].Text == text {
				t.Fits[i]++
			}
		}
	}
	return t
}

// blankSizes lists the sizes of blanks of all sections, in their natural order.
func (v *Plan) blankSizes() []price.Size {
	makes, most := makesOf(v.Blanking), makesOf(v.Blanking)
	if v.whole != nil {
		most = makesOf(v.whole)
	}
	seen := map[string]bool{}
	var out []price.Size
	for i := range v.Sections {
		for _, b := range v.Sections[i].Blanks {
			f := Upright(b.Face)
			if seen[f.Text] {
				continue
			}
			seen[f.Text] = true
			out = append(out, price.Size{Text: f.Text, Shape: f.Shape, Longest: max(f.Width, f.Height, f.Diameter), Girth: girthOf(f), Makes: makes[f.Text], Most: most[f.Text]})
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return terms.NaturalLess(out[i].Text, out[j].Text) })
	return out
}

// makesOf is what has to be made by size; nothing where there are groupings, whose
// blanks aren't known.
func makesOf(b *Blanking) map[string]int {
	makes := map[string]int{}
	if b != nil && len(b.Groupings) == 0 {
		for i := range b.Sizes {
			makes[b.Sizes[i].Text] = b.Sizes[i].Makes
		}
	}
	return makes
}

// girthOf is the girth of an opening, m.
func girthOf(f Face) float64 {
	small, large := min(f.Width, f.Height), max(f.Width, f.Height)
	switch f.Shape {
	case "rectangular":
		return 2 * (small + large) / 1000
	case "circular":
		return math.Pi * f.Diameter / 1000
	case "flat-oval":
		return (math.Pi*small + 2*(large-small)) / 1000
	}
	return 0
}

// widened are the tests that come on top where a sample fails, stage by stage:
// one more share, then everything.
func (v *Plan) widened(p *planner.Plan, a SampleAsk, sizes []price.Size) ([][]price.Test, error) {
	if v.Sample == nil {
		return nil, nil
	}
	sections, tested := sampled(p), append(append([]string{}, v.Sample.Earlier...), v.Sample.IDs...)
	var stages [][]price.Test
	for k := range 2 {
		ask := a.Ask
		ask.Escalated = k
		pick, some, err := sampling.Escalate(sections, tested, ask)
		if err != nil {
			return nil, err
		}
		if !some {
			break
		}
		var tests []price.Test
		for i := range v.Sections {
			for _, id := range pick.IDs {
				if v.Sections[i].ID == id {
					tests = append(tests, testOf(&v.Sections[i], sizes))
				}
			}
		}
		stages, tested = append(stages, tests), append(tested, pick.IDs...)
	}
	return stages, nil
}
