package schedule

import (
	_ "embed"
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/xuri/excelize/v2"

	"blankoff/fittings"
	"blankoff/takeoff"
)

const (
	scheduleSheet, helpSheet = "schedule", "instructions"
	templateRows             = 5000 // rows with drop-downs
)

// columnsText holds a line for every column, in the order of the template's
// sheet: its heading, marked with * where nearly every schedule needs it, and what
// it says.
//
//go:embed template.txt
var columnsText string

// lastCommon is the last of the columns that are printed: those after it are for
// single kinds of piece and rarer orders.
const lastCommon = takeoff.DuctClassPa

// entry is a column of the template.
type entry struct {
	takeoff.Column
	needed bool
	says   string
}

// entries reads columnsText.
func entries() ([]entry, error) {
	byHeading := map[string]takeoff.Column{}
	for c := range takeoff.NumColumns {
		byHeading[c.Heading()] = c
	}
	var out []entry
	for line := range strings.Lines(columnsText) {
		head, says, _ := strings.Cut(strings.TrimSpace(line), ": ")
		name, needed := strings.CutSuffix(head, "*")
		c, ok := byHeading[name]
		if !ok {
			return nil, fmt.Errorf("%q isn't a heading, or stands twice", name)
		}
		delete(byHeading, name)
		out = append(out, entry{c, needed, says})
	}
	if n := len(byHeading); n > 0 {
		return nil, fmt.Errorf("%d headings are missing", n)
	}
	return out, nil
}

// otherHeadings lists what else a heading may say for a column, as it may be
// typed; case, spaces and punctuation are free.
func otherHeadings(c takeoff.Column) []string {
	stem := c.Heading()
	for _, unit := range []string{"_mm", "_m2", "_deg"} {
		stem = strings.TrimSuffix(stem, unit)
	}
	seen := map[string]bool{squash(c.Heading()): true}
	var out []string
	for name := range strings.SplitSeq(stem+","+sizeAliases[stem]+","+aliases[c], ",") {
		name, key := strings.TrimSpace(name), squash(name)
		if m, ok := meanings[key]; ok && m.column == c && !m.unitNeeded && !seen[key] {
			seen[key] = true
			out = append(out, name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(unitNeeded)) {
		if unitNeeded[name] == c && !seen[squash(name)] {
			out = append(out, name+" ("+defaultUnit(c.Measure()).name+")")
		}
	}
	return out
}

// lists gives the words of a drop-down; others stay allowed, as the trade has
// more of them.
func lists() map[takeoff.Column][]string {
	m := map[takeoff.Column][]string{
		takeoff.Plane:  {"width", "height"},
		takeoff.SizeIs: {"clear", "metal"},
		takeoff.Joint:  {"flanged", "slip", "welded"},
		takeoff.Class:  {"A", "B", "C", "D"},
		takeoff.Sign:   {"positive", "negative"},
		takeoff.Scope:  {"in", "out", "through"},
	}
	for s := fittings.Rectangular; s <= fittings.FlatOval; s++ {
		m[takeoff.Shape] = append(m[takeoff.Shape], s.String())
	}
	m[takeoff.Shape2] = m[takeoff.Shape]
	seen := map[fittings.Style]bool{}
	for _, k := range fittings.Kinds() {
		m[takeoff.Kind] = append(m[takeoff.Kind], k.Name)
		for _, s := range k.Styles {
			if !seen[s] {
				seen[s] = true
				m[takeoff.Style] = append(m[takeoff.Style], s.String())
			}
		}
	}
	return m
}

// exampleRows is a small chain, to be deleted by the user.
var exampleRows = []string{
	"tag=E1 kind=straight width_mm=600 height_mm=400 length_mm=3000 joint=flanged",
	"tag=E2 kind=bend style=radius width_mm=600 height_mm=400 angle_deg=90 throat_mm=150 from=^ joint=flanged",
	"tag=E3 kind=reducer width_mm=600 height_mm=400 width2_mm=400 height2_mm=300 length_mm=400 from=^ joint=flanged",
	"tag=E4 kind=tee width_mm=400 height_mm=300 length_mm=600 branch_diameter_mm=200 branch_length_mm=100 from=^ joint=flanged",
	"tag=E5 kind=straight width_mm=400 height_mm=300 length_mm=2500 from=^ joint=flanged",
	"tag=E6 kind=cap width_mm=400 height_mm=300 from=^ joint=flanged",
	"tag=E7 kind=straight diameter_mm=200 length_mm=1500 quantity=2 from=E4/branch joint=slip",
}

const exampleAll = " system=Example level=Level_1 class=B test_pa=400 sign=positive note=example:_delete_this_row"

var helpLines = []string{
	"How to fill in the schedule",
	"Headings in bold on dark grey are those that nearly every schedule needs; the others are for single kinds of piece, joints and orders.",
	"One row is one piece, or several alike (quantity). Delete the example rows. Leave empty what a piece doesn't have.",
	"Headings may be moved, left out or renamed (Width (mm), W), and may name another unit (width_in). A cell may carry a unit of its own (24 in).",
	"Every row needs a kind and the sizes of that kind. `blankoff kinds` lists the kinds, and `blankoff kinds bend` shows what a bend needs.",
	"Joining: from names the next piece towards the plant, whichever way the air flows. A row that names nobody, but is named, is at the plant.",
	"^ in from means the row above. A side end is named with a slash: E4/branch. Rows that share a run hang on each other in order.",
	"Rows that are joined to nothing still get areas; the plan can then only group them.",
	"class and test_pa may be left empty and given once for the whole job.",
	"Only the columns up to duct_class_pa are printed; change the print area for more. Other headings and the kinds with their other names stand below.",
}

// WriteTemplate writes the starting workbook: a sheet with every heading,
// drop-downs and an example to delete, and a sheet of instructions. The same
// bytes come out every time.
func WriteTemplate(out io.Writer) error {
	columns, err := entries()
	if err != nil {
		return fmt.Errorf("can't write the template: %w", err)
	}
	f := excelize.NewFile()
	defer f.Close()
	t := &template{file: f, columns: columns, err: f.SetSheetName("Sheet1", scheduleSheet)}
	_, err = f.NewSheet(helpSheet)
	t.do(err)
	const made = "2026-01-01T00:00:00Z" // fixed, so that the bytes are
	t.do(f.SetDocProps(&excelize.DocProperties{Creator: "blankoff", Created: made, Modified: made}))
	t.fillSchedule()
	t.fillHelp()
	if t.err == nil {
		t.err = f.Write(out)
	}
	if t.err != nil {
		return fmt.Errorf("can't write the template: %w", t.err)
	}
	return nil
}

// template keeps the first error of a workbook that is being written.
type template struct {
	file    *excelize.File
	columns []entry
	err     error
}

func (t *template) do(err error) {
	if t.err == nil {
		t.err = err
	}
}

func (t *template) style(s excelize.Style) int {
	id, err := t.file.NewStyle(&s)
	t.do(err)
	return id
}

// cell names a cell by its column and row from 1.
func (t *template) cell(column, row int) string {
	name, err := excelize.CoordinatesToCellName(column, row)
	t.do(err)
	return name
}

func (t *template) fillSchedule() {
	f := t.file
	const asText = 49 // the number format @: what is typed stays text, never a formula
	text := t.style(excelize.Style{NumFmt: asText})
	head := func(bold bool, grey string) int {
		line := excelize.Border{Type: "right", Color: "808080", Style: 1}
		return t.style(excelize.Style{NumFmt: asText, Font: &excelize.Font{Bold: bold, Size: 11, Family: "Calibri"}, Border: []excelize.Border{line},
			Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{grey}}})
	}
	common, needed := head(false, "F2F2F2"), head(true, "BFBFBF")
	words, printed := lists(), ""
	for i, c := range t.columns {
		heading := c.Heading()
		letter, err := excelize.ColumnNumberToName(i + 1)
		t.do(err)
		t.do(f.SetColWidth(scheduleSheet, letter, letter, float64(max(8, len(heading)+2))))
		if c.Measure() == takeoff.Text {
			t.do(f.SetColStyle(scheduleSheet, letter, text))
		}
		t.do(f.SetCellStr(scheduleSheet, letter+"1", heading))
		style := common
		if c.needed {
			style = needed
		}
		t.do(f.SetCellStyle(scheduleSheet, letter+"1", letter+"1", style))
		if c.Column == lastCommon {
			printed = letter
		}
		t.offer(letter, heading, words[c.Column])
	}
	t.do(f.SetPanes(scheduleSheet, &excelize.Panes{Freeze: true, XSplit: 1, YSplit: 1, TopLeftCell: "B2", ActivePane: "bottomRight"}))
	for i, row := range exampleRows {
		t.fillExample(i+2, row)
	}
	t.prints(scheduleSheet, printed)
}

// offer gives a column a drop-down of words; others stay allowed.
func (t *template) offer(letter, heading string, list []string) {
	if len(list) == 0 {
		return
	}
	v := excelize.NewDataValidation(true)
	v.SetSqref(fmt.Sprintf("%s2:%s%d", letter, letter, templateRows))
	t.do(v.SetDropList(list))
	v.SetError(excelize.DataValidationErrorStyleWarning, heading, "This isn't in the list. Other words of the trade may be known: see the instructions.")
	t.do(t.file.AddDataValidation(scheduleSheet, v))
}

// prints says how a sheet prints: A4 on its side, one page wide up to a column,
// the first row on every page.
func (t *template) prints(sheet, last string) {
	f := t.file
	yes, wide, tall, paper, side, edge := true, 1, 0, 9, "landscape", 0.4
	t.do(f.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &yes}))
	t.do(f.SetPageLayout(sheet, &excelize.PageLayoutOptions{Size: &paper, Orientation: &side, FitToWidth: &wide, FitToHeight: &tall}))
	t.do(f.SetPageMargins(sheet, &excelize.PageLayoutMarginsOptions{Left: &edge, Right: &edge}))
	t.do(f.SetHeaderFooter(sheet, &excelize.HeaderFooterOptions{OddFooter: "&L&F&C&A&Rpage &P of &N"}))
	t.do(f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: "'" + sheet + "'!$1:$1", Scope: sheet}))
	t.do(f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: "'" + sheet + "'!$A:$" + last, Scope: sheet}))
}

// fillExample writes an example row, given as heading=value.
func (t *template) fillExample(row int, pairs string) {
	values := map[string]string{}
	for pair := range strings.FieldsSeq(pairs + exampleAll) {
		heading, value, _ := strings.Cut(pair, "=")
		values[heading] = strings.ReplaceAll(value, "_", " ")
	}
	for i, c := range t.columns {
		value, cell := values[c.Heading()], t.cell(i+1, row)
		if v, err := strconv.Atoi(value); err == nil {
			t.do(t.file.SetCellInt(scheduleSheet, cell, int64(v)))
		} else if value != "" {
			t.do(t.file.SetCellStr(scheduleSheet, cell, value))
		}
	}
}

func (t *template) fillHelp() {
	f := t.file
	bold := t.style(excelize.Style{Font: &excelize.Font{Bold: true}})
	wrap := t.style(excelize.Style{Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}})
	row := 0
	put := func(style int, cells ...string) {
		row++
		for i, s := range cells {
			t.do(f.SetCellStr(helpSheet, t.cell(i+1, row), s))
		}
		if style > 0 {
			t.do(f.SetCellStyle(helpSheet, t.cell(1, row), t.cell(len(cells), row), style))
		}
	}
	for i, line := range helpLines {
		put(map[bool]int{true: bold}[i == 0], line)
	}
	row++
	put(bold, "column", "what it says", "unit", "needed by", "may be given for", "may be headed as well")
	for i, width := range []float64{19, 46, 8, 30, 30, 46} {
		letter, err := excelize.ColumnNumberToName(i + 1)
		t.do(err)
		t.do(f.SetColWidth(helpSheet, letter, letter, width))
	}
	for _, c := range t.columns {
		unit := "text"
		if m := c.Measure(); m != takeoff.Text {
			unit = defaultUnit(m).name
		}
		needs, takes := kindsWith(c.Heading())
		put(wrap, c.Heading(), c.says, unit, needs, takes, strings.Join(otherHeadings(c.Column), ", "))
	}
	row++
	put(bold, "kind of piece", "what it is", "", "made in the styles", "", "may be called as well")
	for _, k := range fittings.Kinds() {
		var made []string
		for _, s := range k.Styles {
			made = append(made, s.String())
		}
		put(wrap, k.Name, k.Doc, "", strings.Join(made, ", "), "", strings.Join(k.Aliases, ", "))
	}
	t.prints(helpSheet, "F")
}

// kindsWith lists the kinds that need a column, in some shape or style, and
// those that may take it.
func kindsWith(column string) (needs, takes string) {
	if column == takeoff.Kind.Heading() {
		return "every row", ""
	}
	var need, take []string
	for _, k := range fittings.Kinds() {
		switch {
		case mentions(k.Needs, column):
			need = append(need, k.Name)
		case mentions(k.Takes, column):
			take = append(take, k.Name)
		}
	}
	return strings.Join(need, ", "), strings.Join(take, ", ")
}

// mentions reports whether a heading stands as a whole word in the lines.
func mentions(lines []string, heading string) bool {
	for _, line := range lines {
		words := strings.FieldsFunc(line, func(r rune) bool { return r != '_' && !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		if slices.Contains(words, heading) {
			return true
		}
	}
	return false
}
