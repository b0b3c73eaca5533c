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
	"blankoff/planner/tightness"
	"blankoff/planner/units"
)

// Windows writes the areas that a rig can judge. The smallest area is rounded
// up and the largest down, so that what is printed can be relied on. Shapes
// with the same figures share a line.
func Windows(w io.Writer, v *report.Windows) error {
	b, u := bufio.NewWriter(w), v.Units
	fmt.Fprintf(b, "Areas that rig %s can judge\n\n", clean(v.Rig))
	paragraph(b, "scheme    ", strings.Join(nonempty(v.Scheme, v.Title), ": "))
	paragraph(b, "pressure  ", v.Sign)
	paragraph(b, "headroom  ", plain(v.Headroom)+" (a section may leak so many times its limit and still be read)")
	duct := "not stated"
	if v.DuctPa > 0 {
		duct = asked(u, units.Pressure, v.DuctPa)
	}
	paragraph(b, "duct      ", "pressure class "+duct)
	b.WriteString("\n")
	var foot []string
	inches := func(float64) string { return "" }
	if v.Scheme == "US" && u == units.SI {
		inches = func(pa float64) string { return upTo(pa/tightness.InchWaterPa, 3) }
	}
	writeTable(b, []Column{
		{Head: "class", Max: 12}, {Head: u.Unit(units.Pressure), Align: aligned(u)}, {Head: "in. w.g.", Align: Point}, {Head: "shape", Max: 22}, {Head: u.Unit(units.PerArea), Align: Point},
		{Head: "least " + u.Unit(units.Area), Align: Right}, {Head: "most " + u.Unit(units.Area), Align: Right}, {Head: "range", Max: 18}, {Head: "ceiling"},
	}, func(row func(...string)) {
		foot = windowRows(v.Rows, u, inches, row)
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
func windowRows(rows []report.WindowRow, u units.System, inches func(pa float64) string, row func(...string)) (foot []string) {
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
		cells := []string{r.Class, tabled(u, r.PressurePa), inches(r.PressurePa), shape, u.Cut(units.PerArea, r.LimitPerM2)}
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
			row(append(cells, up(u.Of(units.Area, a.Low)), u.CutAt(units.Area, a.High, decimals(u.Of(units.Area, a.High))), strings.Join(a.Ranges, ", "), state)...)
		}
	}
	return foot
}

// tabled writes a pressure of the table: Pa to a tenth.
func tabled(u units.System, pa float64) string {
	if u == units.SI {
		return upTo(pa, 1)
	}
	return u.Fixed(units.Pressure, pa)
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
