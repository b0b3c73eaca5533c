package schedule

import (
	"fmt"
	"io"
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

// says tells what a column holds, for the instructions.
var says = [takeoff.NumColumns]string{
	takeoff.Tag:          "name of the piece, used once in the schedule",
	takeoff.System:       "air system that it belongs to",
	takeoff.Level:        "floor on which it hangs",
	takeoff.PlaceOnSite:  "room or zone",
	takeoff.Drawing:      "drawing that shows it",
	takeoff.Kind:         "what it is",
	takeoff.Style:        "how it is made; empty for the kind's default",
	takeoff.Shape:        "rectangular, circular or flat-oval; needed only where the sizes leave a doubt",
	takeoff.Quantity:     "how many alike; empty is 1. Straights stand in series, end pieces side by side",
	takeoff.Note:         "free text",
	takeoff.Plane:        "side that lies in the plane of a bend or offset: width (default) or height",
	takeoff.Shape2:       "shape of the other end of a transition, or of a branch, where the sizes leave a doubt",
	takeoff.SizeIs:       "clear (inside the lining) or metal; needed where lining_mm is given",
	takeoff.StatedArea:   "area that somebody else gave for the whole row, to be checked; never used for the plan",
	takeoff.From:         "tag of the next piece towards the plant, whichever way the air flows; T4/branch for a side end; ^ for the row above",
	takeoff.Joins:        "tag that its far end meets as well, which closes a ring",
	takeoff.Run:          "rows with the same run hang on each other in order",
	takeoff.At:           "centre of a spigot from the plant end of the piece that it sits on",
	takeoff.Joint:        "joint towards the plant: flanged, slip or welded",
	takeoff.BlankMinutes: "time to blank off the joint towards the plant, both sides, both tests: a number, no, must or must 12; empty is an assumption",
	takeoff.EndMinutes:   "time to cap its open end",
	takeoff.Scheme:       "tightness scheme; empty is EN",
	takeoff.Class:        "air-tightness class",
	takeoff.TestPa:       "pressure that its section is held at; the side goes in sign",
	takeoff.DesignPa:     "pressure that it works at; caps the test pressure",
	takeoff.DuctClassPa:  "pressure that the duct is built for; caps the test pressure",
	takeoff.Sign:         "positive or negative",
	takeoff.Scope:        "in (default); out: not tested; through: tested, its area not counted",
	takeoff.Stage:        "stage of the work in which it can be tested",
	takeoff.Ready:        "when it can be tested",
	takeoff.Closed:       "when it is closed up",
	takeoff.Group:        "pieces that are to be tested together",
}

var saysSize = [fittings.NumDims]string{
	fittings.Width:          "width, or the major axis of a flat-oval",
	fittings.Height:         "height, or the minor axis of a flat-oval",
	fittings.Diameter:       "diameter",
	fittings.Length:         "length of each",
	fittings.Angle:          "angle of a bend",
	fittings.Radius:         "radius to the centre line",
	fittings.Throat:         "inside radius, instead of radius_mm",
	fittings.Legs:           "straight leg at each end: along the throat of a bend, along the axis of an offset",
	fittings.Gores:          "number of pieces of a gored bend, ends counted",
	fittings.Width2:         "width of the other end",
	fittings.Height2:        "height of the other end",
	fittings.Diameter2:      "diameter of the other end",
	fittings.OffsetShift:    "shift of the centre lines along the width; of an offset, in its plane",
	fittings.OffsetShift2:   "shift of the centre lines along the height",
	fittings.BranchWidth:    "width of the branch; on a flat wall, along the main",
	fittings.BranchHeight:   "height of the branch",
	fittings.BranchDiameter: "diameter of the branch",
	fittings.BranchLength:   "collar beyond the main's wall",
	fittings.BranchAngle:    "angle between branch and main; empty is 90",
	fittings.BranchShift:    "shift of the branch off the main's axis",
	fittings.Entry:          "conical: diameter at the main's crown; shoe: extra entry on one side",
	fittings.Rise:           "height of a dished cap",
	fittings.Lining:         "thickness of the lining inside",
	fittings.GivenArea:      "area of each, given instead of being worked out",
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
	"One row is one piece, or several alike (quantity). Delete the example rows. Leave empty what a piece doesn't have.",
	"Headings may be moved, left out or renamed (Width (mm), W), and may name another unit (width_in). A cell may carry a unit of its own (24 in).",
	"Every row needs a kind and the sizes of that kind. `blankoff kinds` lists the kinds, and `blankoff kinds bend` shows what a bend needs.",
	"Joining: from names the next piece towards the plant, whichever way the air flows. A row that names nobody, but is named, is at the plant.",
	"^ in from means the row above. A side end is named with a slash: E4/branch. Rows that share a run hang on each other in order.",
	"Rows that are joined to nothing still get areas; the plan can then only group them.",
	"class and test_pa may be left empty and given once for the whole job.",
}

// WriteTemplate writes the starting workbook: a sheet with every heading,
// drop-downs and an example to delete, and a sheet of instructions. The same
// bytes come out every time.
func WriteTemplate(out io.Writer) error {
	f := excelize.NewFile()
	defer f.Close()
	t := &template{file: f, err: f.SetSheetName("Sheet1", scheduleSheet)}
	_, err := f.NewSheet(helpSheet)
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
	file *excelize.File
	err  error
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
	head := t.style(excelize.Style{NumFmt: asText, Font: &excelize.Font{Bold: true},
		Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"D9E2EC"}}})
	words := lists()
	for c := range takeoff.NumColumns {
		heading := c.Heading()
		letter, err := excelize.ColumnNumberToName(int(c) + 1)
		t.do(err)
		t.do(f.SetColWidth(scheduleSheet, letter, letter, float64(max(10, len(heading)+3))))
		if c.Measure() == takeoff.Text {
			t.do(f.SetColStyle(scheduleSheet, letter, text))
		}
		t.do(f.SetCellStr(scheduleSheet, letter+"1", heading))
		if list := words[c]; len(list) > 0 {
			v := excelize.NewDataValidation(true)
			v.SetSqref(fmt.Sprintf("%s2:%s%d", letter, letter, templateRows))
			t.do(v.SetDropList(list))
			v.SetError(excelize.DataValidationErrorStyleWarning, heading, "This isn't in the list. Other words of the trade may be known: see the instructions.")
			t.do(f.AddDataValidation(scheduleSheet, v))
		}
	}
	t.do(f.SetCellStyle(scheduleSheet, "A1", t.cell(int(takeoff.NumColumns), 1), head))
	t.do(f.SetPanes(scheduleSheet, &excelize.Panes{Freeze: true, XSplit: 1, YSplit: 1, TopLeftCell: "B2", ActivePane: "bottomRight"}))
	for i, row := range exampleRows {
		t.fillExample(i+2, row)
	}
}

// fillExample writes an example row, given as heading=value.
func (t *template) fillExample(row int, pairs string) {
	values := map[string]string{}
	for pair := range strings.FieldsSeq(pairs + exampleAll) {
		heading, value, _ := strings.Cut(pair, "=")
		values[heading] = strings.ReplaceAll(value, "_", " ")
	}
	for c := range takeoff.NumColumns {
		value, cell := values[c.Heading()], t.cell(int(c)+1, row)
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
	put := func(row int, cells ...string) {
		for i, s := range cells {
			t.do(f.SetCellStr(helpSheet, t.cell(i+1, row), s))
		}
	}
	for i, line := range helpLines {
		put(i+1, line)
	}
	row := len(helpLines) + 2
	put(row, "column", "what it says", "unit", "needed by", "may be given for")
	t.do(f.SetCellStyle(helpSheet, "A1", "A1", bold))
	t.do(f.SetCellStyle(helpSheet, t.cell(1, row), t.cell(5, row), bold))
	for i, width := range []float64{20, 60, 10, 45, 45} {
		letter, err := excelize.ColumnNumberToName(i + 1)
		t.do(err)
		t.do(f.SetColWidth(helpSheet, letter, letter, width))
	}
	for c := range takeoff.NumColumns {
		row++
		what, unit := says[c], "text"
		if d, ok := c.Dim(); ok {
			what = saysSize[d]
		}
		if m := c.Measure(); m != takeoff.Text {
			unit = defaultUnit(m).name
		}
		needs, takes := kindsWith(c.Heading())
		put(row, c.Heading(), what, unit, needs, takes)
		t.do(f.SetCellStyle(helpSheet, t.cell(1, row), t.cell(5, row), wrap))
	}
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
