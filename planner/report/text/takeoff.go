package text

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// Takeoff writes a measured schedule: the sum, every item with its working, the
// totals by system, level, shape and size, and what a reader has to know. No
// item is left out, however many there are.
func Takeoff(w io.Writer, v *report.Takeoff) error {
	b, u := bufio.NewWriter(w), v.Units
	paragraph(b, "", strings.Join(nonempty(u.Area(v.Totals.Area)+" in scope", u.Length(v.Totals.JointLength)+" of joints", refused(&v.Schedule)), ", "))
	b.WriteString("\n")
	paragraph(b, "schedule  ", v.Schedule.File)
	paragraph(b, "rows      ", show.RowsIn(v.Units, &v.Schedule))
	paragraph(b, "basis     ", v.Basis+". "+v.Measured)
	if n := len(v.Faults); n > 0 {
		paragraph(b, "faults    ", fmt.Sprintf("%d; each is named apart with its place", n))
	}
	items(b, v.Items, v.Basis == "exact", u)
	statedItems(b, v.Items, u)
	totals(b, &v.Totals, v.Basis == "exact", u)
	itemNotes(b, v.Items)
	list(b, "Notes", v.Notes, 0, "")
	return b.Flush()
}

func items(b *bufio.Writer, items []report.Item, exact bool, u units.System) {
	if len(items) == 0 {
		return
	}
	exactly, over := beside(exact, u)
	title(b, "Items")
	writeTable(b, []Column{
		{Head: "row", Align: Right, Max: 16}, {Head: "tag", Max: 18}, {Head: "kind, style", Max: 16}, {Head: "size", Max: 16},
		{Head: "qty", Align: Right}, {Head: u.Unit(units.Area), Align: aligned(u)}, {Head: "exact " + u.Unit(units.Area), Align: aligned(u)}, {Head: "%", Align: Right},
		{Head: "joint " + u.Unit(units.Length), Align: Right}, {Head: "scope"}, {Head: "working", Whole: true},
	}, func(row func(...string)) {
		for i := range items {
			it := &items[i]
			kind, scope := it.Kind, it.Scope
			if it.Style != "" {
				kind += ", " + it.Style
			}
			if scope == "in" {
				scope = ""
			}
			at := strconv.Itoa(it.Row)
			if it.Sheet != "" {
				at = it.Sheet + " " + at
			}
			row(at, it.Tag, kind, show.ItemSize(it), strconv.Itoa(it.Quantity), area(u, it.Area), exactly(it.Area, it.ExactArea), over(it.Area, it.ExactArea), long(u, it.JointLength), scope, it.Working)
		}
	})
}

// over writes by how much an area, m2, is over another.
func over(u units.System, m2 float64) string {
	x := u.Of(units.Area, m2)
	return fmt.Sprintf("%+.*f", u.Decimals(units.Area, x), x)
}

// statedItems sets the areas that the schedule states beside those worked out.
func statedItems(b *bufio.Writer, items []report.Item, u units.System) {
	has := func(it *report.Item) bool { return it.Stated != nil }
	if !slices.ContainsFunc(items, func(it report.Item) bool { return has(&it) }) {
		return
	}
	title(b, "Stated areas beside those worked out")
	writeTable(b, []Column{
		{Head: "tag", Max: 24}, {Head: "size", Max: 18}, {Head: "stated " + u.Unit(units.Area), Align: aligned(u)}, {Head: u.Unit(units.Area), Align: aligned(u)}, {Head: "difference", Align: aligned(u)}, {Head: "%", Align: Right},
	}, func(row func(...string)) {
		line := func(name, size string, stated, ours float64) {
			share := ""
			if ours > 0 {
				share = fmt.Sprintf("%+.1f", 100*(stated-ours)/ours)
			}
			row(name, size, area(u, stated), area(u, ours), over(u, stated-ours), share)
		}
		stated, ours := 0.0, 0.0
		for i := range items {
			if it := &items[i]; has(it) {
				stated, ours = stated+*it.Stated, ours+it.Area
				line(it.Tag, show.ItemSize(it), *it.Stated, it.Area)
			}
		}
		line("all stated", "", stated, ours)
	})
}

// beside gives the exact area and the percentage by which the basis is over it,
// or nothing where the basis is the exact one.
func beside(exact bool, u units.System) (exactly, over func(on, exact float64) string) {
	if exact {
		none := func(float64, float64) string { return "" }
		return none, none
	}
	return func(_, exact float64) string { return area(u, exact) }, func(on, exact float64) string {
		if exact == 0 {
			return ""
		}
		return fmt.Sprintf("%+.1f", 100*(on-exact)/exact)
	}
}

func totals(b *bufio.Writer, t *report.Totals, exact bool, u units.System) {
	exactly, over := beside(exact, u)
	for _, of := range []string{"system", "level", "shape", "size"} {
		if !anyPart(t.Parts, of) {
			continue
		}
		title(b, "By "+of)
		writeTable(b, []Column{
			{Head: of, Max: 40}, {Head: "rows", Align: Right}, {Head: "pieces", Align: Right}, {Head: u.Unit(units.Area), Align: aligned(u)}, {Head: "exact " + u.Unit(units.Area), Align: aligned(u)}, {Head: "%", Align: Right}, {Head: "joint " + u.Unit(units.Length), Align: Right},
		}, func(row func(...string)) {
			for _, p := range t.Parts {
				if p.Of != of {
					continue
				}
				name := p.Name
				if name == "" {
					name = "(not given)"
				}
				row(name, strconv.Itoa(p.Rows), strconv.Itoa(p.Pieces), area(u, p.Area), exactly(p.Area, p.Exact), over(p.Area, p.Exact), long(u, p.JointLength))
			}
		})
	}
	title(b, "Total")
	writeTable(b, []Column{{Head: "scope"}, {Head: u.Unit(units.Area), Align: aligned(u)}, {Head: "exact " + u.Unit(units.Area), Align: aligned(u)}, {Head: "%", Align: Right}, {Head: ""}}, func(row func(...string)) {
		row("in", area(u, t.Area), exactly(t.Area, t.ExactArea), over(t.Area, t.ExactArea), "in the test")
		row("through", area(u, t.Through), "", "", "stays in the test, area not counted")
		row("out", area(u, t.Out), "", "", "not in the test")
		if t.Refused > 0 {
			row("refused", area(u, t.Refused), "", "", "known area of refused rows, counted nowhere")
		}
	})
	if t.JointFlag != "" {
		paragraph(b, "  ", t.JointFlag)
	}
}

// anyPart reports whether a breakdown says anything: one part without a name
// doesn't.
func anyPart(parts []report.Part, of string) bool {
	for _, p := range parts {
		if p.Of == of && p.Name != "" {
			return true
		}
	}
	return false
}

// itemNotes lists what is said of single items; a like note on several rows is
// told once.
func itemNotes(b *bufio.Writer, items []report.Item) {
	const mostRows = 12 // or stretches of rows
	type note struct{ sheet, text string }
	at := map[note]int{}
	var notes []note
	var rows [][]int
	var tags []string
	for i := range items {
		it := &items[i]
		for _, text := range it.Notes {
			n := note{it.Sheet, text}
			k, ok := at[n]
			if !ok {
				k = len(notes)
				at[n] = k
				notes, rows, tags = append(notes, n), append(rows, nil), append(tags, it.Tag)
			}
			rows[k] = append(rows[k], it.Row)
		}
	}
	var lines []string
	for k, n := range notes {
		parts := nonempty(mark("sheet ", n.sheet), show.RowsShort(rows[k], mostRows))
		if len(rows[k]) == 1 {
			parts = nonempty(append(parts, tags[k])...)
		}
		lines = append(lines, strings.Join(parts, ", ")+": "+n.text)
	}
	list(b, "Notes on items", lines, 0, "")
}
