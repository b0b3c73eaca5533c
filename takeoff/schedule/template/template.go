// Package template writes the workbook to start a schedule from.
package template

import (
	_ "embed"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

const (
	scheduleSheet, helpSheet = "schedule", "instructions"
	templateRows             = 5000 // rows with drop-downs
)

// templateText holds the template's words in parts, one thing a line: its columns
// in order, each with its heading, a * where nearly every schedule needs it, the
// words of its drop-down and what it says; more columns, for single kinds of piece
// and rarer orders, which aren't printed; the instructions; and example rows, a small chain to be deleted by the user, _ for a space.
//
//go:embed template.txt
var templateText string

// part gives the lines of one part of the text.
func part(name string) []string {
	_, text, _ := strings.Cut(templateText, "== "+name+"\n")
	text, _, _ = strings.Cut(text, "== ")
	return strings.Split(strings.TrimSpace(text), "\n")
}

// entry is a column of the template.
type entry struct {
	takeoff.Column
	needed bool
	words  []string // of its drop-down; others stay allowed, as the trade has more
	says   string
}

// entries reads the columns.
func entries() []entry {
	words := lists()
	var out []entry
	for _, line := range append(part("columns"), part("more columns")...) {
		head, says, _ := strings.Cut(line, ": ")
		head, list, listed := strings.Cut(strings.TrimSuffix(head, "]"), " [")
		name, needed := strings.CutSuffix(head, "*")
		c, _, _ := headings.Canonical(name)
		if listed {
			words[c] = strings.Split(list, ", ")
		}
		out = append(out, entry{c, needed, words[c], says})
	}
	return out
}

// otherHeadings lists what else a heading may say in English for a column, as
// it may be typed; case, spaces and punctuation are free.
func otherHeadings(lex *headings.Lexicon, c takeoff.Column) []string {
	var out []string
	names, withUnit := lex.Others(c)
	if stem := headings.Stem(c); stem != c.Heading() && stem != "area" && stem != "radius" {
		names = append([]string{stem}, names...)
	}
	out = slices.DeleteFunc(slices.Clone(names), func(name string) bool { return headings.Squash(name) == headings.Squash(c.Heading()) })
	for _, name := range withUnit {
		out = append(out, name+" ("+cellUnit(c)+")")
	}
	return out
}

// lists gives the words of the drop-downs of kinds and styles.
func lists() map[takeoff.Column][]string {
	m := map[takeoff.Column][]string{}
	for _, k := range fittings.Kinds() {
		m[takeoff.Kind] = append(m[takeoff.Kind], k.Name)
		for _, s := range k.Styles {
			if name := s.String(); !slices.Contains(m[takeoff.Style], name) {
				m[takeoff.Style] = append(m[takeoff.Style], name)
			}
		}
	}
	return m
}

// Write writes the starting workbook: a sheet with every heading,
// drop-downs and an example to delete, and a sheet of instructions. The same
// bytes come out every time.
func Write(out io.Writer) error {
	f := excelize.NewFile()
	defer f.Close()
	lex, err := headings.BuiltIn()
	if err != nil {
		return err
	}
	t := &template{file: f, columns: entries(), lex: lex, err: f.SetSheetName("Sheet1", scheduleSheet)}
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
	lex     *headings.Lexicon
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

// widen sets the width of a column, from 1, and gives its letter.
func (t *template) widen(sheet string, column, width int) string {
	letter, err := excelize.ColumnNumberToName(column)
	t.do(err)
	t.do(t.file.SetColWidth(sheet, letter, letter, float64(width)))
	return letter
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
	style := map[bool]int{false: head(false, "F2F2F2"), true: head(true, "BFBFBF")}
	for i, c := range t.columns {
		heading := c.Heading()
		letter := t.widen(scheduleSheet, i+1, max(8, len(heading)+2))
		if c.Measure() == takeoff.Text {
			t.do(f.SetColStyle(scheduleSheet, letter, text))
		}
		t.do(f.SetCellStr(scheduleSheet, letter+"1", heading))
		t.do(f.SetCellStyle(scheduleSheet, letter+"1", letter+"1", style[c.needed]))
		t.offer(letter, heading, c.words)
	}
	t.do(f.SetPanes(scheduleSheet, &excelize.Panes{Freeze: true, XSplit: 1, YSplit: 1, TopLeftCell: "B2", ActivePane: "bottomRight"}))
	for i, row := range part("examples") {
		t.fillExample(i+2, row)
	}
	t.prints(scheduleSheet, len(part("columns")))
}

// offer gives a column a drop-down of words.
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
func (t *template) prints(sheet string, last int) {
	f := t.file
	yes, wide, tall, paper, side, edge, deep := true, 1, 0, 9, "landscape", 0.4, 0.6
	t.do(f.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &yes}))
	t.do(f.SetPageLayout(sheet, &excelize.PageLayoutOptions{Size: &paper, Orientation: &side, FitToWidth: &wide, FitToHeight: &tall}))
	t.do(f.SetPageMargins(sheet, &excelize.PageLayoutMarginsOptions{Left: &edge, Right: &edge, Top: &edge, Bottom: &deep, Header: &edge, Footer: &edge}))
	t.do(f.SetHeaderFooter(sheet, &excelize.HeaderFooterOptions{OddFooter: "&L&F&C&A&Rpage &P of &N"}))
	t.do(f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: "'" + sheet + "'!$1:$1", Scope: sheet}))
	t.do(f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: "'" + sheet + "'!$A:$" + strings.TrimSuffix(t.cell(last, 1), "1"), Scope: sheet}))
}

// fillExample writes an example row, given as heading=value.
func (t *template) fillExample(row int, pairs string) {
	values := map[string]string{}
	for pair := range strings.FieldsSeq(pairs) {
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

// cellUnit is the unit of a column's cells where they don't say one.
func cellUnit(c takeoff.Column) string {
	switch {
	case c == takeoff.BlankMinutes:
		return quantity.Minute.Name
	case c.Measure() == takeoff.Text:
		return "text"
	}
	return quantity.Default(c.Measure()).Name
}

func (t *template) fillHelp() {
	f := t.file
	bold := t.style(excelize.Style{Font: &excelize.Font{Bold: true, Size: 11, Family: "Calibri"}})
	wrap := t.style(excelize.Style{Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}})
	widths := []int{19, 46, 8, 30, 30, 46}
	row := 0
	put := func(style int, cells ...string) {
		row++
		deep := 1
		for i, s := range cells {
			deep = max(deep, len(s)/widths[i]+1)
		}
		if style == wrap { // not every spreadsheet program fits the height of a row to its text
			t.do(f.SetRowHeight(helpSheet, row, float64(15*deep)))
		}
		t.do(f.SetSheetRow(helpSheet, t.cell(1, row), &cells))
		t.do(f.SetCellStyle(helpSheet, t.cell(1, row), t.cell(len(cells), row), style))
	}
	for _, line := range part("instructions") {
		put(0, line)
	}
	t.do(f.SetCellStyle(helpSheet, "A1", "A1", bold))
	row++
	put(bold, "column", "what it says", "unit", "needed by", "may be given for", "may be headed as well")
	for i, width := range widths {
		t.widen(helpSheet, i+1, width)
	}
	for _, c := range t.columns {
		needs, takes := kindsWith(c.Heading())
		put(wrap, c.Heading(), c.says, cellUnit(c.Column), needs, takes, strings.Join(otherHeadings(t.lex, c.Column), ", "))
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
	t.prints(helpSheet, len(widths))
}
