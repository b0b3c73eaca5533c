package text

import (
	"bufio"
	"fmt"
	"sort"
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/takeoff"
)

// cuts writes where two sections are parted.
func cuts(b *bufio.Writer, cuts []report.Cut) {
	if len(cuts) == 0 {
		return
	}
	title(b, "Cuts: blank off both sides of these joints")
	writeTable(b, []Column{
		{Head: "", Align: Right}, {Head: "between", Max: 60}, {Head: "size", Max: 18}, {Head: "min", Align: Right}, {Head: "why"},
	}, func(row func(...string)) {
		for i := range cuts {
			if i == most {
				return
			}
			c := &cuts[i]
			why := c.Why
			if why == "" {
				why = "planned"
			}
			row(strconv.Itoa(i+1), c.At, c.Text, fixed(c.Minutes, 0), why)
		}
	})
	if n := len(cuts) - most; n > 0 {
		more(b, n, hasAll)
	}
}

// size is how many blanks of one size a plan needs.
type size struct {
	report.Face
	cut, end, scope int
	together        int // the most of them in one test
	minutes, force  float64
}

// bySize counts the blanks of every size, and the most of each in one test.
func bySize(sections []report.Section) []size {
	at := map[report.Face]int{}
	var sizes []size
	for i := range sections {
		now := map[int]int{}
		for _, bl := range sections[i].Blanks {
			k, ok := at[bl.Face]
			if !ok {
				k = len(sizes)
				at[bl.Face] = k
				sizes = append(sizes, size{Face: bl.Face})
			}
			s := &sizes[k]
			switch bl.Why {
			case "cut":
				s.cut++
			case "open end":
				s.end++
			default:
				s.scope++
			}
			now[k]++
			s.together = max(s.together, now[k])
			s.minutes += bl.Minutes
			s.force = max(s.force, bl.Force)
		}
	}
	sort.SliceStable(sizes, func(i, j int) bool { return takeoff.NaturalLess(sizes[i].Text, sizes[j].Text) })
	return sizes
}

// blanks writes the blanks by size.
func blanks(b *bufio.Writer, sections []report.Section) {
	sizes := bySize(sections)
	if len(sizes) == 0 {
		return
	}
	title(b, "Blanks by size: fits in all tests, and the most in one test")
	number := func(n int) string {
		if n == 0 {
			return ""
		}
		return strconv.Itoa(n)
	}
	writeTable(b, []Column{
		{Head: "size", Max: 24}, {Head: "fits", Align: Right}, {Head: "cuts", Align: Right}, {Head: "open ends", Align: Right},
		{Head: "scope", Align: Right}, {Head: "in one test", Align: Right}, {Head: "up to N", Align: Right}, {Head: "min", Align: Right},
	}, func(row func(...string)) {
		for i, s := range sizes {
			if i == most {
				return
			}
			row(s.Text, strconv.Itoa(s.cut+s.end+s.scope), number(s.cut), number(s.end), number(s.scope), strconv.Itoa(s.together), fixed(s.force, 0), fixed(s.minutes, 0))
		}
		var all size
		for _, s := range sizes {
			all.cut, all.end, all.scope, all.minutes = all.cut+s.cut, all.end+s.end, all.scope+s.scope, all.minutes+s.minutes
		}
		row("all", strconv.Itoa(all.cut+all.end+all.scope), number(all.cut), number(all.end), number(all.scope), "", "", fixed(all.minutes, 0))
	})
	if n := len(sizes) - most; n > 0 {
		more(b, n, hasAll)
	}
}

// reasonPart is what is left out for one reason.
type reasonPart struct {
	reason string
	m2     float64
	names  []string
}

// left writes what is in no section, by reason.
func left(b *bufio.Writer, head string, pieces []report.Piece, counted bool) {
	if len(pieces) == 0 {
		return
	}
	at := map[string]int{}
	var parts []reasonPart
	sum := 0.0
	for i := range pieces {
		p := &pieces[i]
		m2 := p.Own
		if counted {
			m2 = p.Area
		}
		sum += m2
		k, ok := at[p.Reason]
		if !ok {
			k = len(parts)
			at[p.Reason] = k
			parts = append(parts, reasonPart{reason: p.Reason})
		}
		parts[k].m2 += m2
		parts[k].names = append(parts[k].names, span(p))
	}
	title(b, fmt.Sprintf("%s (%s m2)", head, area(sum)))
	for i, p := range parts {
		if i == most {
			more(b, len(parts)-i, hasAll)
			return
		}
		reason := p.reason
		if reason == "" {
			reason = "no reason given"
		}
		paragraph(b, "  - ", fmt.Sprintf("%s m2, %s: %s", area(p.m2), reason, some(p.names, 30)))
	}
}

// span names a row, or the stretch of its pieces that is meant.
func span(p *report.Piece) string {
	switch {
	case p.Of <= 1 || p.From <= 1 && p.To >= p.Of:
		return p.Tag
	case p.From == p.To:
		return fmt.Sprintf("%s piece %d of %d", p.Tag, p.From, p.Of)
	}
	return fmt.Sprintf("%s pieces %d to %d of %d", p.Tag, p.From, p.To, p.Of)
}

// some joins the first names of a list and says how many more there are.
func some(names []string, n int) string {
	if len(names) <= n {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s (%d more; %s)", strings.Join(names[:n], ", "), len(names)-n, hasAll)
}
