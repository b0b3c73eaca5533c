package text

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/tightness"
)

// Windows writes the areas that a rig can judge. The smallest area is rounded
// up and the largest down, so that what is printed can be relied on. Shapes
// with the same figures share a line.
func Windows(w io.Writer, v *report.Windows) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "Areas that rig %s can judge\n\n", clean(v.Rig))
	paragraph(b, "scheme    ", strings.Join(nonempty(v.Scheme, v.Title), ": "))
	paragraph(b, "pressure  ", v.Sign)
	paragraph(b, "headroom  ", plain(v.Headroom)+" (a section may leak so many times its limit and still be read)")
	duct := "not stated"
	if v.DuctPa > 0 {
		duct = plain(v.DuctPa) + " Pa"
	}
	paragraph(b, "duct      ", "pressure class "+duct)
	b.WriteString("\n")
	var foot []string
	inches := func(float64) string { return "" }
	if v.Scheme == "US" {
		inches = func(pa float64) string { return upTo(pa/tightness.InchWaterPa, 3) }
	}
	writeTable(b, []Column{
		{Head: "class", Max: 12}, {Head: "Pa", Align: Right}, {Head: "in. w.g.", Align: Point}, {Head: "shape", Max: 22}, {Head: "L/s per m2", Align: Point},
		{Head: "least m2", Align: Right}, {Head: "most m2", Align: Right}, {Head: "range", Max: 18}, {Head: "ceiling"},
	}, func(row func(...string)) {
		foot = windowRows(v.Rows, inches, row)
	})
	if len(v.Rows) == 0 {
		b.WriteString("  none\n")
	}
	if len(foot) > 0 {
		b.WriteString("\n")
	}
	for i, text := range foot {
		paragraph(b, fmt.Sprintf("  (%d) ", i+1), text)
	}
	list(b, "Notes", v.Notes, 0, "")
	return b.Flush()
}

// windowRows writes the rows and gathers what is too long for a cell.
func windowRows(rows []report.WindowRow, inches func(pa float64) string, row func(...string)) (foot []string) {
	note := func(text string) string {
		k := slices.Index(foot, text)
		if k < 0 {
			k = len(foot)
			foot = append(foot, text)
		}
		return fmt.Sprintf("(%d)", k+1)
	}
	for _, g := range byFigures(rows) {
		r, shapes := g.row, g.shapes
		state := r.State
		switch {
		case state == "":
			state = "permitted"
		case r.Permitted:
			state = "see " + note(state)
		}
		shape := strings.Join(shapes, ", ")
		if len(shapes) == allShapes {
			shape = "all"
		}
		cells := []string{r.Class, upTo(r.PressurePa, 1), inches(r.PressurePa), shape, show.Limit(r.LimitPerM2)}
		switch {
		case !r.Permitted:
			row(append(cells, "-", "-", "", state)...)
			continue
		case len(r.Areas) == 0:
			row(append(cells, "none", "none", "", state+"; "+note(r.Reason))...)
			continue
		}
		for k, a := range r.Areas {
			if k > 0 {
				cells, state = make([]string, len(cells)), ""
			}
			row(append(cells, up(a.Low), show.Down(a.High, decimals(a.High)), strings.Join(a.Ranges, ", "), state)...)
		}
	}
	return foot
}

// allShapes is the number of shapes of duct; a line of as many holds for all.
const allShapes = int(fittings.FlatOval)

// group is rows of one class and pressure with the same figures.
type group struct {
	row    *report.WindowRow
	shapes []string
}

// byFigures puts together the shapes of a class and pressure that have the same
// figures, in the order in which they first come.
func byFigures(rows []report.WindowRow) []group {
	var groups []group
	for i := range rows {
		r := &rows[i]
		k := len(groups) - 1
		for k >= 0 && groups[k].row.Class == r.Class && groups[k].row.PressurePa == r.PressurePa && !sameFigures(groups[k].row, r) {
			k--
		}
		if k >= 0 && sameFigures(groups[k].row, r) {
			groups[k].shapes = append(groups[k].shapes, r.Shape)
			continue
		}
		groups = append(groups, group{r, []string{r.Shape}})
	}
	return groups
}

// decimals of an area in a table of windows.
func decimals(m2 float64) int {
	if m2 >= 100 {
		return 0
	}
	return 1
}

// up writes an area rounded up.
func up(m2 float64) string {
	scale := math.Pow10(decimals(m2))
	return fixed(math.Ceil(m2*scale-1e-9)/scale, decimals(m2))
}

// sameFigures reports whether two rows differ only in their shape.
func sameFigures(a, b *report.WindowRow) bool {
	return a.Class == b.Class && a.PressurePa == b.PressurePa && a.LimitPerM2 == b.LimitPerM2 && a.Permitted == b.Permitted &&
		a.State == b.State && a.Reason == b.Reason && slices.EqualFunc(a.Areas, b.Areas, func(x, y report.AreaWindow) bool {
		return x.Low == y.Low && x.High == y.High && slices.Equal(x.Ranges, y.Ranges)
	})
}
