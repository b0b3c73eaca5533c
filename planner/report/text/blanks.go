package text

import (
	"bufio"
	"fmt"
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// cuts writes where two sections are parted.
func cuts(b *bufio.Writer, v *report.Plan) {
	cuts, u, sides, minutes := v.Cuts, v.Units, show.Sides(v), v.TestedMinutes()
	if len(cuts) == 0 {
		return
	}
	title(b, show.CutsTitle(v))
	writeTable(b, []Column{
		{Head: "", Align: Right}, {Head: "joint", Max: 44}, {Head: "parts"}, {Head: "level, place", Max: 28}, {Head: "size", Max: sizeRoom(u)}, {Head: "min", Align: Right}, {Head: "why", Max: 20}, {Head: "blank off", Max: 12},
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
			where := strings.Join(nonempty(c.Level, c.Place), ", ")
			row(strconv.Itoa(i+1), c.At, c.Parts[0]+" | "+c.Parts[1], where, c.Text, whole(minutes(c)), why, sides(c))
		}
	})
	if n := len(cuts) - most; n > 0 {
		more(b, n, hasAll)
	}
}

// sizeRoom is the room for a size: two sides in mm, or in inches with decimals.
func sizeRoom(u units.System) int {
	if u == units.SI {
		return 14
	}
	return 18
}

// blanks writes the blanks by size.
func blanks(b *bufio.Writer, v *report.Plan) {
	sizes, u := show.Sizes(v), v.Units
	if len(sizes) == 0 {
		return
	}
	title(b, "Blanks by size: fits, every end in every test, and makes, the most in use at once")
	number := func(n int) string {
		if n == 0 {
			return ""
		}
		return strconv.Itoa(n)
	}
	writeTable(b, []Column{
		{Head: "size", Max: 24}, {Head: "fits", Align: Right}, {Head: "makes", Align: Right}, {Head: "cuts", Align: Right}, {Head: "open ends", Align: Right},
		{Head: "scope", Align: Right}, {Head: "up to " + u.Unit(units.Force), Align: aligned(u)}, {Head: "min", Align: Right},
	}, func(row func(...string)) {
		line := func(name string, s show.Size) {
			row(name, strconv.Itoa(s.Fits()), number(s.Makes), number(s.Cuts), number(s.OpenEnds), number(s.Scope), u.Fixed(units.Force, s.MostForce), whole(s.Minutes))
		}
		for _, s := range sizes[:min(most, len(sizes))] {
			line(s.Text, s)
		}
		line("all", show.AllSizes(sizes))
	})
	if n := len(sizes) - most; n > 0 {
		more(b, n, hasAll)
	}
}

// reasonPart is what is left out for one reason.
type reasonPart struct {
	reason string
	m2     float64
	known  bool // some of its area is known
	names  []string
}

// left writes what is in no section, by reason.
func left(b *bufio.Writer, head string, pieces []report.Piece, counted bool, u units.System) {
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
		parts[k].known = parts[k].known || m2 > 0
		parts[k].names = append(parts[k].names, show.Span(p))
	}
	title(b, fmt.Sprintf("%s (%s)", head, u.Area(sum)))
	for i, p := range parts {
		if i == most {
			more(b, len(parts)-i, hasAll)
			return
		}
		reason := p.reason
		if reason == "" {
			reason = "no reason given"
		}
		size := "area not known"
		if p.known {
			size = u.Area(p.m2)
		}
		paragraph(b, "  - ", fmt.Sprintf("%s, %s: %s", size, reason, some(p.names, 30)))
	}
}

// some joins the first names of a list and says how many more there are.
func some(names []string, n int) string {
	if len(names) <= n {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s (%d more; %s)", strings.Join(names[:n], ", "), len(names)-n, hasAll)
}
