// Package xlsx renders a plan as a workbook: a summary, the sections, those out
// of range with their cures, the pieces, the cuts and blanks to work from, the takeoff with its working, the
// settings and the notes. Text is never a formula; numbers are real numbers, unrounded, with
// a number format, but for limits, which are cut off and never rounded up.
//
// The workbook is live: a figure that follows others is a formula over their
// cells, with its value beside it, so that a change of a size, a class, a
// pressure or a setting reaches every sheet. A formula is written only where it
// gives the figure of the view; see links.
package xlsx

import (
	"fmt"
	"io"

	"github.com/xuri/excelize/v2"

	"blankoff/planner/units"
)

// kind is how the cells of a column are shown.
type kind uint8

const (
	words        kind = iota // text, wrapped
	whole                    // whole numbers
	hundred                  // two decimals
	full                     // as many digits as there are
	plain                    // a number as it was given
	box                      // empty, to be ticked on paper
	ticked                   // text in bold: what a reader must look at
	label                    // text in bold, of the summary
	value                    // of the summary: text or number at the left
	typed                    // text that a spreadsheet would take for a formula if it were typed in again
	line                     // text on one line, cut off at the cell's edge
	typedLine                // the same of a text like a formula
	free                     // text on one line without a frame, over the cells beside it
	squareM                  // m2
	metres                   // m
	newtons                  // N
	pascals                  // Pa
	minutes                  // min
	flows                    // L/s, a limit cut off, one to four decimals: see permitted
	millimetres              // mm, as it was given
	degrees                  // degrees, as it was given
	squareM2                 // m2, with two decimals without its unit
	squareMFull              // m2, as many digits as there are
	squareMPlain             // m2, as it was given
	metres2                  // m, with two decimals without its unit
	flowsFull                // L/s, as many digits as there are
	perM2                    // L/s per m2, as many digits as there are
	sized                    // a size as people write it
	numKinds
)

var numberFormats = [numKinds]string{
	whole: "0", hundred: "0.00", full: "0.0#########", squareM: `0.00" m2"`, metres: `0.00" m"`, newtons: `0" N"`, pascals: `General" Pa"`,
	minutes: `0" min"`, flows: `[>=1]0.00" L/s";0.000#" L/s"`, millimetres: `General" mm"`, degrees: `General" deg"`,
}

const (
	heading   = int(numKinds)     // style of the heading row
	left0     = int(numKinds) + 1 // styles of every kind at the left
	numStyles = int(numKinds)*2 + 1
	lastRow   = 1048576 // of a sheet
)

// look is how a whole row stands out.
type look uint8

const (
	usual    look = iota
	ruled         // a dark rule above: something begins
	summed        // a total: bold, a dark rule above
	numLooks = int(summed) + 1
)

// book is a workbook being written.
type book struct {
	file   *excelize.File
	styles [numLooks][2][numStyles]int // as it is, and as a cell that may be changed
	follow *links
	units  units.System
	last   int    // row
	foot   string // what every printed page says
	head   string // and above: the job, where there is one
}

// bare is a workbook's properties without a clock and without a program's
// maker: the same plan gives the same bytes.
var bare = map[string]string{
	"docProps/app.xml": `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>blankoff</Application></Properties>`,
	"docProps/core.xml": `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title>Ductwork leakage test plan</dc:title><dc:creator>blankoff</dc:creator></cp:coreProperties>`,
}

func newBook(foot string, u units.System) (*book, error) {
	b := &book{file: excelize.NewFile(), last: lastRow, foot: foot, units: u}
	// The unit of a column's width hangs on the workbook's own font: one with
	// digits of 7 pixels, which is at hand or has a stand-in everywhere.
	if err := b.file.SetDefaultFont("Arial"); err != nil {
		return nil, err
	}
	if fonts := b.file.Styles.Fonts; fonts != nil && len(fonts.Font) > 0 && fonts.Font[0].Sz != nil {
		size := 10.0
		fonts.Font[0].Sz.Val = &size
	}
	for name, text := range bare {
		b.file.Pkg.Store(name, []byte(text))
	}
	b.file.SetZipWriter(func(w io.Writer) excelize.ZipWriter { return &archive{out: w} })
	return b, b.makeStyles()
}

func (b *book) makeStyles() error {
	for l := range b.styles {
		for i := range numStyles {
			if k := i % left0; k < int(numKinds) && quantities[k].like != kind(k) {
				continue // written with that of another
			}
			for k, s := range []*excelize.Style{looking(b.styleOf(i), look(l)), inputOf(looking(b.styleOf(i), look(l)))} {
				style, err := b.file.NewStyle(s)
				if err != nil {
					return fmt.Errorf("style of a cell: %w", err)
				}
				b.styles[l][k][i] = style
			}
		}
	}
	return nil
}

const dark, pale, shade = "404040", "BFBFBF", "EDEDED" // lines, and the ground of a cell that may be changed

// inputOf marks a cell that may be changed: shaded and boxed, which prints in
// grey.
func inputOf(s *excelize.Style) *excelize.Style {
	s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{shade}}
	top := s.Border
	s.Border = frame(dark)
	for i := range s.Border { // a rule above stays
		if len(top) == len(s.Border) && top[i].Style == 2 {
			s.Border[i] = top[i]
		}
	}
	return s
}

// looking gives a style the look of its row.
func looking(s *excelize.Style, l look) *excelize.Style {
	if l == usual {
		return s
	}
	for i := range s.Border {
		if s.Border[i].Type == "top" {
			s.Border[i].Color, s.Border[i].Style = dark, 2
		}
	}
	s.Font.Bold = s.Font.Bold || l == summed
	return s
}

func frame(colour string) []excelize.Border {
	var all []excelize.Border
	for _, side := range []string{"left", "right", "top", "bottom"} {
		all = append(all, excelize.Border{Type: side, Color: colour, Style: 1})
	}
	return all
}

// styleOf describes style i: black on white, to be printed without colour.
func (b *book) styleOf(i int) *excelize.Style {
	if i >= left0 {
		s := b.styleOf(i - left0)
		s.Alignment.Horizontal, s.Alignment.Indent = "left", 1
		return s
	}
	s := &excelize.Style{
		Font:      &excelize.Font{Size: fontSize, Family: "Arial"},
		Alignment: &excelize.Alignment{Vertical: "top", WrapText: true},
		Border:    frame(pale),
	}
	format := ""
	switch {
	case i == heading:
		s.Font.Bold, s.Border = true, frame(dark)
		s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"E7E6E6"}}
	case kind(i) == box:
		s.Border = frame(dark)
	case kind(i) == ticked, kind(i) == label:
		s.Font.Bold = true
	case kind(i) == typed:
		s.NumFmt = 49 // text
	case kind(i) == line:
		s.Alignment.WrapText = false
	case kind(i) == free:
		s.Alignment.WrapText, s.Border = false, nil
	case kind(i) == typedLine:
		s.NumFmt, s.Alignment.WrapText = 49, false
	default:
		format = b.format(kind(i))
	}
	switch {
	case format != "":
		s.CustomNumFmt = &format
		s.Alignment.WrapText, s.Alignment.Horizontal = false, "right"
	case kind(i) == plain:
		s.Alignment.WrapText = false
	default:
		s.Alignment.Horizontal, s.Alignment.Indent = "left", 1
	}
	return s
}

// write writes the workbook.
func (b *book) write(w io.Writer) error {
	if err := b.file.Write(w); err != nil {
		return fmt.Errorf("workbook: %w", err)
	}
	return b.file.Close()
}
