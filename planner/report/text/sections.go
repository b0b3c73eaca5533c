package text

import (
	"bufio"
	"fmt"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// levelRoom is the room for the names of a section's levels, columns.
const levelRoom = 24

// sections writes the table of sections; past the most lines only those under
// or over range are kept.
func sections(b *bufio.Writer, v *report.Plan) {
	if len(v.Sections) == 0 {
		return
	}
	u := v.Units
	title(b, "Sections (limits are cut off, never rounded up)")
	exact := func(*report.Section) string { return "" }
	if v.Settings.Basis != "exact" {
		exact = func(s *report.Section) string { return area(u, s.ExactArea) }
	}
	largest, rest, test := "largest", 0, tested(v)
	if u == units.US {
		largest += " in" // once for all, or every row takes two lines
	}
	writeTable(b, []Column{
		{Head: "section", Max: 14}, {Head: "system", Max: 16}, {Head: "level", Max: levelRoom}, {Head: "class", Max: 8}, {Head: u.Unit(units.Pressure), Align: aligned(u)},
		{Head: u.Unit(units.Area), Align: aligned(u)}, {Head: "exact " + u.Unit(units.Area), Align: aligned(u)}, {Head: "limit " + u.Unit(units.Flow), Align: Point}, {Head: "range", Max: 14}, {Head: "ready"}, {Head: "closed"},
		{Head: "blanks", Align: Right}, {Head: largest}, {Head: u.Unit(units.Force), Align: aligned(u)}, {Head: "flag"}, {Head: "test"},
	}, func(row func(...string)) {
		rest = 0
		for i := range v.Sections {
			s := &v.Sections[i]
			if i >= most && !s.UnderRange && !s.OverRange && (v.Sample == nil || s.NotTested != "") {
				rest++
				continue
			}
			class := s.Class
			if s.Scheme != v.Settings.Scheme {
				class = s.Scheme + " " + s.Class
			}
			face, force := "", ""
			if l, ok := show.Largest(s.Blanks); ok {
				face, force = strings.TrimSuffix(l.Text, " in"), u.Fixed(units.Force, l.Force)
			}
			row(s.ID, s.System, show.Names(s.Levels, ", ", 3, levelRoom), class, pressure(u, s.TestPa, s.Sign), area(u, s.Area), exact(s), u.Cut(units.Flow, s.Limit), show.Range(v, s), s.Ready, s.Closed,
				show.Blanks(s), face, force, show.Flag(s), test(s))
		}
	})
	if rest > 0 {
		more(b, rest, hasAll)
	}
}

// tested says whether a section is tested, and why not; nothing where all are.
func tested(v *report.Plan) func(s *report.Section) string {
	if t := v.Tested(); t.All() {
		return func(*report.Section) string { return "" }
	}
	return func(s *report.Section) string {
		if s.NotTested != "" {
			return brief(s)
		}
		return "yes"
	}
}

// brief is why a section isn't tested, in few letters.
func brief(s *report.Section) string {
	word, _, _ := strings.Cut(s.NotTested, ",") // "passed, as the earlier plan says"
	return strings.Replace(strings.TrimSuffix(word, " for it"), "in the", "in", 1)
}

// trouble writes every section that the rig can't judge, why, and the
// cures.
func trouble(b *bufio.Writer, v *report.Plan) {
	for _, kind := range []struct {
		head string
		is   func(*report.Section) bool
	}{
		{"Over range: too big", func(s *report.Section) bool { return s.OverRange }},
		{"Under range: the rig can't read these at their limit", func(s *report.Section) bool { return s.UnderRange && !s.OverRange && s.Range == "" }},
		{"Under range: smaller than asked for", func(s *report.Section) bool { return s.UnderRange && !s.OverRange && s.Range != "" }},
	} {
		first := true
		for i := range v.Sections {
			s := &v.Sections[i]
			if !kind.is(s) {
				continue
			}
			if first {
				title(b, kind.head)
				first = false
			}
			paragraph(b, "  ", fmt.Sprintf("%s: %s, limit %s; %s", s.ID, v.Units.Area(s.Area), v.Units.Limit(s.Limit), show.Why(s)))
			for k, c := range s.Cures {
				mark := "      or: "
				if k == 0 {
					mark = "    cure: "
				}
				paragraph(b, mark, c)
			}
		}
	}
}

// sectionNotes lists what is said of single sections; a like note on several is
// told once.
func sectionNotes(b *bufio.Writer, sections []report.Section) {
	many := 0
	for i := range sections {
		many += len(sections[i].Notes)
	}
	at := make(map[string]int, min(many, most)) // of the notes that there is room for
	var notes []string
	var ids [][]string
	var rest map[string]struct{}
	for i := range sections {
		for _, n := range sections[i].Notes {
			k, ok := at[n]
			switch {
			case ok:
				ids[k] = append(ids[k], sections[i].ID)
			case len(notes) < most:
				at[n] = len(notes)
				notes, ids = append(notes, n), append(ids, []string{sections[i].ID})
			default:
				if rest == nil {
					rest = make(map[string]struct{}, many)
				}
				rest[n] = struct{}{}
			}
		}
	}
	for k, of := range ids {
		notes[k] = show.Names(of, ", ", 8, 0) + ": " + notes[k]
	}
	list(b, "Notes on sections", notes, 0, "")
	if len(rest) > 0 {
		more(b, len(rest), hasAll)
	}
}
