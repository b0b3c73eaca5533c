package text

import (
	"bufio"
	"fmt"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// levelRoom is the room for the names of a section's levels, columns.
const levelRoom = 24

// sections writes the table of sections; past the most lines only those under
// or over range are kept.
func sections(b *bufio.Writer, v *report.Plan) {
	if len(v.Sections) == 0 {
		return
	}
	title(b, "Sections")
	exact := func(*report.Section) string { return "" }
	if v.Settings.Basis != "exact" {
		exact = func(s *report.Section) string { return area(s.ExactArea) }
	}
	rest := 0
	writeTable(b, []Column{
		{Head: "section", Max: 14}, {Head: "system", Max: 16}, {Head: "level", Max: levelRoom}, {Head: "class", Max: 8}, {Head: "Pa", Align: Right},
		{Head: "m2", Align: Right}, {Head: "exact m2", Align: Right}, {Head: "limit L/s", Align: Point}, {Head: "range", Max: 14}, {Head: "ready"}, {Head: "closed"},
		{Head: "blanks", Align: Right}, {Head: "largest", Max: 18}, {Head: "N", Align: Right}, {Head: "flag"},
	}, func(row func(...string)) {
		rest = 0
		for i := range v.Sections {
			s := &v.Sections[i]
			if i >= most && !s.UnderRange && !s.OverRange {
				rest++
				continue
			}
			class := s.Class
			if s.Scheme != v.Settings.Scheme {
				class = s.Scheme + " " + s.Class
			}
			face, force := "", ""
			if l, ok := show.Largest(s.Blanks); ok {
				face, force = l.Text, whole(l.Force)
			}
			row(s.ID, s.System, show.Names(s.Levels, ", ", 3, levelRoom), class, pressure(s.TestPa, s.Sign), area(s.Area), exact(s), show.Limit(s.Limit), show.Range(v, s), s.Ready, s.Closed,
				show.Blanks(s), face, force, show.Flag(s))
		}
	})
	if rest > 0 {
		more(b, rest, hasAll)
	}
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
			paragraph(b, "  ", fmt.Sprintf("%s: %s m2, limit %s L/s; %s", s.ID, area(s.Area), show.Limit(s.Limit), s.Reason))
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
	at := map[string]int{}
	var notes []string
	var ids [][]string
	for i := range sections {
		for _, n := range sections[i].Notes {
			k, ok := at[n]
			if !ok {
				k = len(notes)
				at[n] = k
				notes, ids = append(notes, n), append(ids, nil)
			}
			ids[k] = append(ids[k], sections[i].ID)
		}
	}
	for k, n := range notes {
		notes[k] = show.Names(ids[k], ", ", 8, 0) + ": " + n
	}
	list(b, "Notes on sections", notes, most, hasAll)
}
