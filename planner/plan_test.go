package planner_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"blankoff/planner"
	"blankoff/planner/partition"
	"blankoff/planner/report"
	"blankoff/planner/rig"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

// A rig of made-up figures with a hole between its ranges.
const gapRig = `name = "two ranges"
[[range]]
name = "low"
min_l_s = 0.8
max_l_s = 3
accuracy_percent = 2
accuracy_l_s = 0.05
own_leak_l_s = 0.02
[[range]]
name = "high"
min_l_s = 5
max_l_s = 14
accuracy_percent = 3
accuracy_l_s = 0.1
own_leak_l_s = 0.1
`

// gapWindows are the areas that gapRig can judge at 400 Pa, worked out here
// from the figures above: a range reads from min + err(min) to max - err(max) -
// own leak; the limit times the headroom must be readable too.
func gapWindows(class string, headroom float64) []span {
	k := map[string]float64{"B": 0.009, "C": 0.003}[class]
	limit := k * math.Pow(400, 0.65)
	lowFrom, lowTo := 0.8+0.05, 3-0.06-0.02 // 2 % of 0.8 is under 0.05; 2 % of 3 is 0.06
	highFrom, highTo := 5+0.15, 14-0.42-0.1 // 3 % of 5 and of 14
	return []span{{lowFrom / limit, lowTo / headroom / limit}, {highFrom / limit, highTo / headroom / limit}}
}

func readRig(t testing.TB, text string) *rig.Rig {
	t.Helper()
	r, _, err := rig.Load(strings.NewReader(text), "rig.toml")
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func readSchedule(t testing.TB, csv string) *takeoff.Takeoff {
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

func settings(t testing.TB, rigText string) planner.Settings {
	set := planner.Defaults()
	set.Rigs = rig.Fleet{readRig(t, rigText)}
	return set
}

// planned is the view of the plan of a schedule without faults.
func planned(t testing.TB, csv string, set planner.Settings) *report.Plan {
	t.Helper()
	tk := readSchedule(t, csv)
	p, err := planner.Make(tk, set)
	if err != nil {
		t.Fatalf("%v\n%s\n%+v", err, csv, tk.Faults)
	}
	if len(p.Faults) > 0 {
		t.Fatalf("faults: %+v\n%s", p.Faults, csv)
	}
	return report.Of(p)
}

// Small random networks, every feature on and off, against every choice of
// cuts: the plan costs what the best of them costs.
func TestPlanIsTheBestOfAllChoices(t *testing.T) {
	const seed, each = 20261125, 60
	r := rand.New(rand.NewPCG(seed, 1))
	for bits := range 64 {
		f := features{bans: bits&1 > 0, musts: bits&2 > 0, classes: bits&4 > 0, scopes: bits&8 > 0, rings: bits&16 > 0}
		time := bits&32 > 0
		for range each {
			m := randomModel(r, 2+r.IntN(7), f)
			set := settings(t, gapRig)
			set.TestMinutes = 25
			if time {
				set.Aim = partition.Time
			}
			if m.allOut() {
				continue
			}
			v := planned(t, m.csv, set)
			windows := func(class string) []span { return gapWindows(class, set.Headroom) }
			want, ok := m.best(windows, time, set.TestMinutes)
			if !ok {
				t.Fatalf("seed %d: no choice is allowed\n%s", seed, m.csv)
			}
			got := worth{v.Proof.OverRange, v.Proof.UnderRange, v.Proof.Tests, v.Proof.BlankMinutes}
			if got.less(want, time, 25) || want.less(got, time, 25) {
				t.Fatalf("seed %d, %+v, time %v: plan costs %+v, the best of all choices %+v\n%s", seed, f, time, got, want, m.csv)
			}
			m.check(t, v, windows)
		}
	}
}

// Pieces that aren't up together are never in one section, and the plan is the
// best that there is without.
func TestTimesAgainstAllChoices(t *testing.T) {
	const seed = 4711
	r := rand.New(rand.NewPCG(seed, 2))
	tried := 0
	for bits := range 16 {
		f := features{bans: bits&1 > 0, musts: bits&2 > 0, scopes: bits&4 > 0, times: true}
		for range 60 {
			m := randomModel(r, 3+r.IntN(6), f)
			set := settings(t, gapRig)
			set.TestMinutes = 25
			if bits&8 > 0 {
				set.Aim = partition.Time
			}
			windows := func(class string) []span { return gapWindows(class, set.Headroom) }
			want, ok := m.best(windows, bits&8 > 0, set.TestMinutes)
			if m.allOut() || !ok { // what can't be cut apart is never up together
				continue
			}
			v := planned(t, m.csv, set)
			got := worth{v.Proof.OverRange, v.Proof.UnderRange, v.Proof.Tests, v.Proof.BlankMinutes}
			if got.less(want, bits&8 > 0, 25) || want.less(got, bits&8 > 0, 25) {
				t.Fatalf("seed %d, %+v: plan costs %+v, the best of all choices %+v\n%s", seed, f, got, want, m.csv)
			}
			if v.Proof.Kind != planner.Optimal {
				t.Fatalf("proof %s\n%s", v.Proof.Kind, m.csv)
			}
			m.check(t, v, windows)
			tried++
		}
	}
	if tried < 500 {
		t.Errorf("only %d cases", tried)
	}
}

func (m *model) allOut() bool {
	for _, out := range m.outside() {
		if !out {
			return false
		}
	}
	return true
}

// check holds a plan against the model: every piece once, sections that hang
// together, cuts only where allowed, and every figure worked out again.
func (m *model) check(t *testing.T, v *report.Plan, windows func(string) []span) {
	t.Helper()
	fail := func(format string, args ...any) { t.Fatalf(format+"\n%s", append(args, m.csv)...) }
	at := map[string]int{}
	for i, p := range m.pieces {
		at[p.tag] = i
	}
	of := make([]int, len(m.pieces))
	for i := range of {
		of[i] = -1
	}
	sum := 0.0
	for s, section := range v.Sections {
		area := 0.0
		for _, p := range section.Pieces {
			i := at[p.Tag]
			if of[i] >= 0 {
				fail("%s is in two sections", p.Tag)
			}
			of[i] = s
			if m.pieces[i].scope == "in" {
				area += m.pieces[i].area
			}
			if m.pieces[i].class != section.Class {
				fail("%s of class %s is in %s of class %s", p.Tag, m.pieces[i].class, section.ID, section.Class)
			}
		}
		sum += area
		if math.Abs(area-section.Area) > 1e-9 {
			fail("%s: area %g, pieces add up to %g", section.ID, section.Area, area)
		}
		k := map[string]float64{"B": 0.009, "C": 0.003}[section.Class]
		if limit := k * math.Pow(400, 0.65) * area; math.Abs(limit-section.Limit) > 1e-9 {
			fail("%s: limit %g, want %g", section.ID, section.Limit, limit)
		}
		most, in := 0.0, false
		for _, w := range windows(section.Class) {
			most = math.Max(most, w.high)
			in = in || area >= w.low-1e-9 && area <= w.high+1e-9
		}
		if section.OverRange != (area > most+1e-9) || section.UnderRange != (!in && area <= most) {
			fail("%s of %g m2: under %v, over %v, windows %v", section.ID, area, section.UnderRange, section.OverRange, windows(section.Class))
		}
	}
	out := m.outside()
	for i, p := range m.pieces {
		if (of[i] < 0) != out[i] {
			fail("%s with scope %s is in section %d", p.tag, p.scope, of[i])
		}
		if out[i] && p.scope == "in" {
			sum += p.area
		}
	}
	if math.Abs(sum-v.TakeoffM2) > 1e-9 || math.Abs(v.Balance.Difference) > 1e-9 {
		fail("sections %g, takeoff %g, balance %+v", sum, v.TakeoffM2, v.Balance)
	}
	m.checkCuts(t, v, of)
}

func (m *model) checkCuts(t *testing.T, v *report.Plan, of []int) {
	t.Helper()
	listed := map[string]float64{}
	for _, c := range v.Cuts {
		listed[c.Between[0].Tag+" "+c.Between[1].Tag] = c.Minutes
	}
	cut := make([]bool, len(m.joints))
	cuts := 0
	for k, j := range m.joints {
		if of[j.a] < 0 || of[j.b] < 0 {
			cut[k] = true
			continue
		}
		minutes, is := listed[m.pieces[j.a].tag+" "+m.pieces[j.b].tag]
		apart := of[j.a] != of[j.b]
		switch {
		case apart && j.never:
			t.Fatalf("cut at a joint that can't be blanked\n%s", m.csv)
		case (apart || j.must) != is:
			t.Fatalf("joint of %s and %s: cut %v, listed %v\n%s", m.pieces[j.a].tag, m.pieces[j.b].tag, apart, is, m.csv)
		case is && math.Abs(minutes-j.minutes) > 1e-9:
			t.Fatalf("joint of %s and %s costs %g, want %g", m.pieces[j.a].tag, m.pieces[j.b].tag, minutes, j.minutes)
		}
		cut[k] = apart
		if is {
			cuts++
		}
	}
	if cuts != len(v.Cuts) {
		t.Fatalf("%d cuts listed, %d found\n%s", len(v.Cuts), cuts, m.csv)
	}
	// With exactly these joints open, the pieces of a section hang together.
	part := m.parts(cut)
	for i := range m.pieces {
		for k := range m.pieces {
			if of[i] >= 0 && of[i] == of[k] && part[i] != part[k] {
				t.Fatalf("%s and %s are in one section and don't hang together\n%s", m.pieces[i].tag, m.pieces[k].tag, m.csv)
			}
		}
	}
}

// With explicit from, the order of the rows changes nothing in the plan.
func TestRowOrderDoesNotMatter(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for range 40 {
		m := randomModel(r, 12, features{bans: true, classes: true, rings: true})
		lines := strings.Split(strings.TrimSpace(m.csv), "\n")
		set := settings(t, gapRig)
		first := planned(t, m.csv, set)
		rows := lines[1:]
		r.Shuffle(len(rows), func(i, j int) { rows[i], rows[j] = rows[j], rows[i] })
		second := planned(t, strings.Join(append(lines[:1:1], rows...), "\n")+"\n", set)
		if a, b := shape(first), shape(second); a != b {
			t.Fatalf("another order, another plan:\n%s\n%s\n%s", m.csv, a, b)
		}
	}
}

// shape is a plan without row numbers and fingerprints.
func shape(v *report.Plan) string {
	var b strings.Builder
	for _, s := range v.Sections {
		fmt.Fprintf(&b, "%s %s %.9f %.9f:", s.ID, s.Class, s.Area, s.Limit)
		for _, p := range s.Pieces {
			fmt.Fprintf(&b, " %s/%d-%d", p.Tag, p.From, p.To)
		}
		b.WriteString("\n")
	}
	for _, c := range v.Cuts {
		fmt.Fprintf(&b, "cut %v %.2f\n", c.Between, c.Minutes)
	}
	return b.String()
}
