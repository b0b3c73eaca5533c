package text

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
	"blankoff/takeoff"
)

// most is the greatest number of lines of a list that may be long.
const most = 40

const hasAll = "--format json or -o has all"

// Plan writes a test plan: what it comes to, the sections, those that the rig
// can't judge with the cures, where to blank off, what is left out and
// why, how good the plan is, and what to look out for. Long lists are cut and
// say so; sections under or over range never are.
func Plan(w io.Writer, v *report.Plan) error {
	b := bufio.NewWriter(w)
	jobHead(b, v.Job)
	t := v.Tested()
	paragraph(b, "", headline(v, &t))
	b.WriteString("\n")
	settings(b, v, &t)
	sections(b, v)
	kept(b, v, &t)
	sample(b, v)
	visits(b, v)
	ownCuts(b, v.OwnCuts)
	alone(b, v)
	trouble(b, v)
	cuts(b, v)
	blanks(b, v)
	order(b, v)
	untested(b, v.Untested)
	programme(b, v)
	list(b, "Mismatches: joints where the sizes differ", v.Mismatches, most, hasAll)
	left(b, "Outside: in scope, but in no section", v.Outside, true, v.Units)
	left(b, "Out of scope", v.OutOfScope, false, v.Units)
	list(b, show.ProofTitle(v, &t), v.Proof.Sentences, 0, "")
	sectionNotes(b, v.Sections)
	list(b, "Notes", v.Notes, most, hasAll)
	list(b, "Take care", v.Cautions, 0, "")
	return b.Flush()
}

// headline is what is tested in one line.
func headline(v *report.Plan, t *report.Tested) string {
	parts := []string{show.Tests(v, t)}
	if text := v.Nothing(); text != "" {
		parts = []string{"0 tests: " + text, show.Count(len(v.Sections), "section") + " planned"}
	}
	if t.OverRange > 0 {
		parts = append(parts, fmt.Sprintf("%d OVER RANGE", t.OverRange))
	}
	if t.UnderRange > 0 {
		parts = append(parts, fmt.Sprintf("%d UNDER RANGE", t.UnderRange))
	}
	if t.OverRange+t.UnderRange == 0 && t.Tests > 0 {
		parts = append(parts, "all in the rig's range")
	}
	if n := len(v.Voids()); n > 0 {
		parts = append(parts, fmt.Sprintf("%d of the earlier plan VOID", n))
	}
	parts = append(parts, nonempty(show.Groupings(v), refused(&v.Schedule))...)
	if n := len(v.Mismatches); n > 0 {
		parts = append(parts, show.Count(n, "mismatch"))
	}
	if s := v.Sample; s != nil && len(s.Problems) > 0 {
		parts = append(parts, show.Count(len(s.Problems), "problem")+" with the pick")
	}
	if t.Tests == 0 && !t.All() {
		return strings.Join(parts, ", ")
	}
	time := hours(t.Total)
	if t.EndMinutes > 0 {
		time += " and " + hours(t.EndMinutes) + " of capping"
	}
	parts = append(parts, show.Count(t.Cuts, "cut"), time, v.Units.Area(t.Area)+" tested")
	return strings.Join(parts, ", ")
}

// refused says how many rows count nowhere, or nothing.
func refused(s *takeoff.Schedule) string {
	if s.RowsRefused == 0 {
		return ""
	}
	return fmt.Sprintf("%d of %s REFUSED", s.RowsRefused, show.Count(s.RowsRead, "row"))
}

// capping is the time of capping open ends; that of a grouping isn't known.
func capping(v *report.Plan, t *report.Tested) string {
	known := hours(t.EndMinutes) + " more"
	switch {
	case show.Groupings(v) == "":
		return known
	case t.EndMinutes == 0:
		return "not known for groupings"
	}
	return known + ", not known for groupings"
}

func settings(b *bufio.Writer, v *report.Plan, t *report.Tested) {
	s, u := &v.Settings, v.Units
	file := v.Schedule.File
	if len(v.Schedule.SHA256) >= 16 {
		file += " (sha256 " + v.Schedule.SHA256[:16] + "...)"
	}
	paragraph(b, "schedule  ", file)
	paragraph(b, "rig       ", s.Rig+", headroom "+plain(s.Headroom))
	paragraph(b, "test      ", strings.Join(nonempty("scheme "+s.Scheme, mark("class ", s.Class), testPressure(s, u)), ", ")+" where the schedule doesn't say")
	paragraph(b, "aim       ", strings.Join(nonempty(aimWords(s.Aim), number("a section at least ", u, units.Area, s.MinArea),
		number("at most ", u, units.Area, s.MaxArea), mark("sections end at every change of ", s.By), number("straights made in ", u, units.Length, s.PieceLength)), "; "))
	if s.Basis != "exact" {
		both := ""
		if s.HoldBoth {
			both = "; held to both: the larger at the rig's upper end, the smaller at its lower end and for the limit"
		}
		paragraph(b, "basis     ", fmt.Sprintf("%s: %s, exactly %s%s", s.Basis, u.Area(v.TakeoffM2), u.Area(v.ExactM2), both))
	}
	if s.PressureRule != "" {
		paragraph(b, "pressure  ", "rows without a test pressure: "+show.PressureRule(s.PressureRule))
	}
	if v.Nothing() == "" {
		paragraph(b, "time      ", fmt.Sprintf("%s = %s of %s min + cuts %s; capping ends %s",
			hours(t.Total), show.Count(t.Tests, "test"), plain(s.TestMinutes), hours(t.Minutes), capping(v, t)))
	}
	if text := show.Beyond(v, t); text != "" {
		paragraph(b, "whole     ", text)
	}
	paragraph(b, "rows      ", show.RowsIn(v.Units, &v.Schedule))
	a := &v.Balance
	paragraph(b, "balance   ", fmt.Sprintf("takeoff %s = sections %s + outside %s, difference %v",
		u.Area(a.Takeoff), area(u, a.Sections), area(u, a.Outside), show.DifferenceIn(u, a.Difference)))
	if n := len(v.Faults); n > 0 {
		paragraph(b, "faults    ", fmt.Sprintf("%d; each is named apart with its place", n))
	}
}

func aimWords(aim string) string {
	if aim == "time" {
		return "least time"
	}
	return "fewest tests"
}

func testPressure(s *report.Settings, u units.System) string {
	if s.TestPa > 0 {
		return asked(u, units.Pressure, s.TestPa) + ", " + s.Sign
	}
	return s.Sign
}

// mark puts a word before a text, if there is any.
func mark(word, text string) string {
	if text == "" {
		return ""
	}
	return word + text
}

// number puts a word before a figure that was asked for, if there is any.
func number(word string, u units.System, q units.Quantity, v float64) string {
	if v == 0 {
		return ""
	}
	return word + asked(u, q, v)
}

func nonempty(words ...string) []string {
	var out []string
	for _, w := range words {
		if w != "" {
			out = append(out, w)
		}
	}
	return out
}

func title(b *bufio.Writer, text string) { b.WriteString("\n" + text + "\n") }

// list writes a titled list of texts, at most so many (0: all), and says how
// many more there are and where.
func list(b *bufio.Writer, head string, texts []string, atMost int, where string) {
	if len(texts) == 0 {
		return
	}
	title(b, head)
	for i, t := range texts {
		if atMost > 0 && i == atMost {
			more(b, len(texts)-i, where)
			return
		}
		paragraph(b, "  - ", t)
	}
}

func more(b *bufio.Writer, n int, where string) {
	fmt.Fprintf(b, "  (%d more; %s)\n", n, where)
}
