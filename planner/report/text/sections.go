package text

import (
	"bufio"
	"fmt"
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// mustSee is the word that a section is marked with where a reader must look.
func mustSee(s *report.Section) string {
	switch {
	case s.OverRange, s.UnderRange:
		return strings.ToUpper(show.State(s))
	case s.Grouping:
		return "grouping"
	}
	return ""
}

// sections writes the table of sections; past the most lines only those under
// or over range are kept.
func sections(b *bufio.Writer, v *report.Plan) {
	if len(v.Sections) == 0 {
		return
	}
	title(b, "Sections")
	rest := 0
	writeTable(b, []Column{
		{Head: "section", Max: 14}, {Head: "system", Max: 16}, {Head: "level", Max: 18}, {Head: "class", Max: 8}, {Head: "Pa", Align: Right},
		{Head: "m2", Align: Right}, {Head: "limit L/s", Align: Point}, {Head: "range", Max: 14},
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
				face, force = l.Text, fixed(l.Force, 0)
			}
			row(s.ID, s.System, few(s.Levels, 2), class, pressure(s.TestPa, s.Sign), area(s.Area), show.Limit(s.Limit), s.Range,
				strconv.Itoa(len(s.Blanks)), face, force, mustSee(s))
		}
	})
	if rest > 0 {
		more(b, rest, hasAll)
	}
}

// few joins the first words of a list and says how many more there are.
func few(words []string, n int) string {
	if len(words) <= n {
		return strings.Join(words, ", ")
	}
	return fmt.Sprintf("%s +%d", strings.Join(words[:n-1], ", "), len(words)-n+1)
}

// trouble writes every section that the rig can't judge, why, and what would
// help.
func trouble(b *bufio.Writer, v *report.Plan) {
	for _, kind := range []struct {
		head string
		is   func(*report.Section) bool
	}{
		{"Over range: the rig can't hold or read these", func(s *report.Section) bool { return s.OverRange }},
		{"Under range: the rig can't read these at their limit", func(s *report.Section) bool { return s.UnderRange && !s.OverRange }},
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
		notes[k] = few(ids[k], 8) + ": " + n
	}
	list(b, "Notes on sections", notes, most, hasAll)
}
