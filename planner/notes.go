package planner

import (
	"fmt"
	"maps"
	"runtime"
	"slices"
	"sort"
	"sync"

	"blankoff/planner/duty"
	"blankoff/planner/tightness"
	"blankoff/planner/units"
	"blankoff/takeoff/terms"
)

// writeNotes gathers what a reader of the plan has to know.
func (p *Plan) writeNotes(z *duty.Zones) {
	p.noteDuties(z)
	p.Notes = append(p.Notes, p.Network.Notes...)
	p.noteMismatches()
	p.rigNotes()
	for _, scheme := range schemesIn(p.Sections) {
		for _, text := range scheme.Unverified {
			p.Notes = append(p.Notes, "from memory, unverified: "+text)
		}
	}
	p.noteCapping()
	estimated := 0
	for _, c := range p.Cuts {
		if p.Network.Joints[c.Joint].Estimated {
			estimated++
		}
	}
	if estimated > 0 {
		r := p.Settings.Prices
		p.Notes = append(p.Notes, fmt.Sprintf("blanking minutes of %s estimated at %g + %s of girth, an assumption; blank_minutes in the schedule replaces it%s", plural(estimated, "cut"), r.CutBase, p.Settings.Units.PerGirth(r.CutPerMetre), p.priceWords()))
	}
}

// noteDuties says how the rows came to be tested as they are, and what was left
// outside.
func (p *Plan) noteDuties(z *duty.Zones) {
	d := z.Rows
	add := func(format string, args ...any) { p.Notes = append(p.Notes, fmt.Sprintf(format, args...)) }
	for _, flag := range []struct{ name, value string }{
		{"--scheme", p.Settings.Scheme}, {"--class", p.Settings.Class},
		{"--test-pressure", fmt.Sprintf("%g", p.Settings.TestPa)}, {"--sign", p.Settings.Sign},
	} {
		if n := d.Kept[flag.name]; n > 0 {
			add("%s %s was given; %s with another value of their own kept it", flag.name, flag.value, plural(n, "row"))
		}
	}
	if d.DefaultSign > 0 {
		add("sign: %s pressure for %s say, the program's default; --sign changes it", p.Settings.Sign, plural2(d.DefaultSign, "row that doesn't", "rows that don't"))
	}
	p.noteSlivers()
	for _, note := range sorted(d.ClassNotes) {
		add("%s (%s)", note, plural(d.ClassNotes[note], "row"))
	}
	for _, reason := range sorted(d.Ceilings) {
		add("%s (%s)", reason, plural(d.Ceilings[reason], "row"))
	}
	if z.Adopted > 0 {
		add("%s without a system counted with the system of the piece that they hang on", plural(z.Adopted, "row"))
	}
	if z.Slips > 0 {
		add("%s taken as still open; --slip-joints made-up bars them, bladder says that bladders are allowed", plural(z.Slips, "slip joint"))
	}
	p.Notes = append(p.Notes, z.Notes...)
}

// noteMismatches names the joints whose two openings differ.
func (p *Plan) noteMismatches() {
	joints := p.Network.Joints
	var of []int
	for k := range joints {
		if joints[k].Mismatched {
			of = append(of, k)
		}
	}
	if len(of) == 0 {
		return
	}
	const mismatch = "mismatch "
	notes := make([]string, len(of))
	onAllCores(len(of), func(from, to int) {
		for x, k := range of[from:to] {
			j := &joints[k]
			notes[from+x] = mismatch + p.Network.JointText(k) + ", " + terms.SizeIn(j.FaceA, p.Settings.Units) + " meets " + terms.SizeIn(j.FaceB, p.Settings.Units) + "; check the schedule"
		}
	})
	p.Mismatches = make([]string, len(of))
	for x, k := range of {
		p.Mismatches[x] = notes[x][len(mismatch):] // one text for both
		a, b := p.sectionOf[joints[k].A], p.sectionOf[joints[k].B]
		if a >= 0 {
			p.Sections[a].Notes = append(p.Sections[a].Notes, notes[x])
		}
		if b >= 0 && b != a {
			p.Sections[b].Notes = append(p.Sections[b].Notes, notes[x])
		}
	}
}

// onAllCores does work on a list of n in stretches, one a core.
func onAllCores(n int, work func(from, to int)) {
	cores := runtime.GOMAXPROCS(0)
	var done sync.WaitGroup
	for c := range cores {
		done.Go(func() { work(n*c/cores, n*(c+1)/cores) })
	}
	done.Wait()
}

// priceWords tells of the job's prices that go beyond the rule, and of access on
// levels that no row has: a slip of the pen would cost its minutes.
func (p *Plan) priceWords() string {
	r := p.Settings.Prices
	text := ""
	if r.Natural != 1 {
		text += fmt.Sprintf("; x %g at natural places", r.Natural)
	}
	levels := map[string]bool{}
	for i := range p.Takeoff.Items {
		levels[p.Takeoff.Items[i].Level] = true
	}
	for _, level := range slices.Sorted(maps.Keys(r.Access)) {
		text += fmt.Sprintf("; + %g on level %s", r.Access[level], level)
		if !levels[level] {
			text += " (no row has that level)"
		}
	}
	return text
}

// noteCapping says where the minutes of capping come from.
func (p *Plan) noteCapping() {
	estimated := 0
	for i := range p.Network.OpenEnds {
		if e := &p.Network.OpenEnds[i]; e.Estimated && p.sectionOf[e.Node] >= 0 {
			estimated++
		}
	}
	if r := p.Settings.Prices; estimated > 0 {
		p.Notes = append(p.Notes, fmt.Sprintf("capping minutes of %s estimated at %g + %s of girth, an assumption; end_minutes in the schedule replaces it", plural(estimated, "open end"), r.EndBase, p.Settings.Units.PerGirth(r.EndPerMetre)))
	}
}

// leastRoom is the length of a piece below which a blank may not fit between
// its ends, m. Common practice, no source.
const leastRoom = 0.1

// noteSlivers warns of cuts beside pieces that are hardly longer than a blank.
func (p *Plan) noteSlivers() {
	for _, c := range p.Cuts {
		j := &p.Network.Joints[c.Joint]
		for _, k := range []int{j.A, j.B} {
			if long := p.Network.Nodes[k].Long; long > 0 && long < leastRoom {
				p.Notes = append(p.Notes, fmt.Sprintf("cut %s: %s is only %s long; see whether a blank fits, or write no in blank_minutes",
					p.Network.JointText(c.Joint), p.Network.NodeText(k), short(p.Settings.Units, long)))
			}
		}
	}
}

// short writes the length of a short piece, m: whole mm, or inches.
func short(u units.System, long float64) string {
	if u == units.SI {
		return fmt.Sprintf("%.0f mm", long*1000)
	}
	return u.Text(units.Size, long, -1)
}

// rigNotes adds what the rig has to say at each pressure and sign in use.
func (p *Plan) rigNotes() {
	type use struct {
		pa   float64
		sign tightness.Sign
	}
	seen := map[use]bool{}
	said := map[string]bool{}
	for i := range p.Sections {
		u := use{p.Sections[i].TestPa, p.Sections[i].Sign}
		if seen[u] {
			continue
		}
		seen[u] = true
		for _, n := range p.Settings.Rigs.NotesAt(u.pa, u.sign, p.Settings.Units) {
			text := n.Text
			if n.Range != "" {
				text = "range " + n.Range + ": " + text
			}
			if !said[text] {
				said[text] = true
				p.Notes = append(p.Notes, text)
			}
		}
	}
}

func sorted(m map[string]int) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}

// schemesIn lists the schemes of the sections by name, each once.
func schemesIn(sections []Section) []*tightness.Scheme {
	byName := map[string]*tightness.Scheme{}
	for i := range sections {
		byName[sections[i].Scheme.Name] = sections[i].Scheme
	}
	var list []*tightness.Scheme
	for _, name := range slices.Sorted(maps.Keys(byName)) {
		list = append(list, byName[name])
	}
	return list
}

// once lists the sections of a joint's two sides, each once.
func once(a, b int) []int {
	var out []int
	if a >= 0 {
		out = append(out, a)
	}
	if b >= 0 && b != a {
		out = append(out, b)
	}
	return out
}
