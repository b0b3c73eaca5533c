package xlsx

import (
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/xuri/excelize/v2"

	"blankoff/planner/price"
	"blankoff/planner/report"
)

// face is how a cell of a bill looks: black on white, shaded where it may be
// changed.
type face uint8

const (
	faceText face = iota // wrapped
	faceFree             // runs over its neighbours, no lines
	faceTitle
	faceHead
	faceHeadRight
	faceWhole
	faceHundred
	faceMoney
	faceInWhole // to be changed
	faceInHundred
	faceInMoney
	faceSum
	faceSumMoney
	faceTotal
	faceTotalMoney
	faceRight
	faceOver // runs over its neighbours in a table
	numFaces
)

// cellOf is a value with its own face; counted, a formula with its value beside it.
type (
	cellOf struct {
		v    any
		face face
	}
	counted struct {
		text string
		v    float64
		face face
	}
)

// billBook is a bill's workbook being written.
type billBook struct {
	v      *report.Bill
	file   *excelize.File
	styles [numFaces]int
}

func newBillBook(v *report.Bill) (*billBook, error) {
	b := &billBook{v: v, file: excelize.NewFile()}
	if err := b.file.SetDefaultFont("Arial"); err != nil {
		return nil, err
	}
	for name, text := range bare {
		b.file.Pkg.Store(name, []byte(strings.Replace(text, "Ductwork leakage test plan", "Ductwork leakage tests: bill", 1)))
	}
	b.file.SetZipWriter(func(w io.Writer) excelize.ZipWriter { return &archive{out: w} })
	for f := range numFaces {
		id, err := b.file.NewStyle(b.styleOf(f))
		if err != nil {
			return nil, fmt.Errorf("style of a cell: %w", err)
		}
		b.styles[f] = id
	}
	return b, nil
}

// styleOf describes a face.
func (b *billBook) styleOf(f face) *excelize.Style {
	s := &excelize.Style{Font: &excelize.Font{Size: fontSize, Family: "Arial"}, Alignment: &excelize.Alignment{Vertical: "top", Horizontal: "left", WrapText: true, Indent: 1}, Border: frame(pale)}
	number := func(format string) {
		s.CustomNumFmt = &format
		s.Alignment.WrapText, s.Alignment.Horizontal, s.Alignment.Indent = false, "right", 0
	}
	money := "#,##0"
	if d := b.v.Currency.Digits; d > 0 {
		money += "." + strings.Repeat("0", d)
	}
	switch f {
	case faceFree:
		s.Border, s.Alignment.WrapText, s.Alignment.Indent = nil, false, 0
	case faceTitle:
		s.Border, s.Alignment.WrapText, s.Alignment.Indent, s.Font.Bold, s.Font.Size = nil, false, 0, true, 13
	case faceHead, faceHeadRight:
		s.Font.Bold, s.Border, s.Fill = true, frame(dark), excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"E7E6E6"}}
		if f == faceHeadRight {
			s.Alignment.Horizontal, s.Alignment.Indent = "right", 0
		}
	case faceWhole, faceInWhole:
		number("#,##0")
	case faceHundred, faceInHundred:
		number("#,##0.00")
	case faceMoney, faceSumMoney, faceTotalMoney:
		number(money)
	case faceInMoney:
		number(money + ";-" + money + ";\"included\"")
	case faceOver:
		s.Border, s.Alignment.WrapText = nil, false
	case faceRight:
		s.Alignment.Horizontal, s.Alignment.Indent = "right", 0
	}
	switch f {
	case faceInWhole, faceInHundred, faceInMoney:
		s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"F2F2F2"}}
	case faceSum, faceSumMoney:
		s.Font.Bold = true
	case faceTotal, faceTotalMoney:
		s.Font.Bold, s.Font.Size, s.Border = true, fontSize+2, frame(dark)
	}
	return s
}

// major is an amount in major units. It is exact to a minor unit as far as a
// spreadsheet is: 15 digits.
func (b *billBook) major(m price.Money) float64 { return float64(m) / math.Pow10(b.v.Currency.Digits) }

// quantity is a quantity with the face that it needs.
func (b *billBook) quantity(q price.Quantity, whole, hundred face) cellOf {
	if q%100 == 0 {
		return cellOf{q.Value(), whole}
	}
	return cellOf{q.Value(), hundred}
}

// billPage is a sheet being written. The first fault stays.
type billPage struct {
	b      *billBook
	sheet  string
	out    *excelize.StreamWriter
	widths []float64
	at     int
	err    error
}

// sheet begins a sheet: A4, one page wide.
func (b *billBook) sheet(name string, upright bool, widths ...float64) (*billPage, error) {
	f := b.file
	if f.GetSheetName(0) == "Sheet1" {
		if err := f.SetSheetName("Sheet1", name); err != nil {
			return nil, err
		}
	} else if _, err := f.NewSheet(name); err != nil {
		return nil, err
	}
	yes, wide, tall, paper, side := true, 1, 0, 9, "landscape"
	if upright {
		side = "portrait"
	}
	if err := f.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &yes}); err != nil {
		return nil, err
	}
	if err := f.SetPageLayout(name, &excelize.PageLayoutOptions{Size: &paper, Orientation: &side, FitToWidth: &wide, FitToHeight: &tall}); err != nil {
		return nil, err
	}
	foot := fmt.Sprintf("&L%s, fingerprint %s&R&A, page &P of &N", footText(b.v.Schedule.File), b.v.Fingerprint.Short())
	if err := f.SetHeaderFooter(name, &excelize.HeaderFooterOptions{OddHeader: "&L" + footText(headOf(b.v)), OddFooter: foot}); err != nil {
		return nil, err
	}
	narrow, deep, edge := 0.5, 0.7, 0.3
	if err := f.SetPageMargins(name, &excelize.PageLayoutMarginsOptions{Left: &narrow, Right: &narrow, Top: &deep, Bottom: &deep, Header: &edge, Footer: &edge}); err != nil {
		return nil, err
	}
	w, err := f.NewStreamWriter(name)
	if err != nil {
		return nil, err
	}
	s := &billPage{b: b, sheet: name, out: w, widths: widths}
	for i, wide := range widths {
		if err := w.SetColWidth(i+1, i+1, wide); err != nil {
			return nil, err
		}
	}
	return s, nil
}

// headOf is what heads every printed page.
func headOf(v *report.Bill) string {
	if v.Job == nil {
		return ""
	}
	return strings.Trim(v.Job.Project+", "+v.Job.Reference, ", ")
}

func (s *billPage) gap() { s.at++ }

// head writes a heading row; texts that begin with ">" stand at the right, over
// numbers.
func (s *billPage) head(heads ...string) {
	cells, deep := make([]any, len(heads)), 1
	for i, text := range heads {
		f := faceHead
		if strings.HasPrefix(text, ">") {
			f, text = faceHeadRight, text[1:]
		}
		deep = max(deep, linesOf(text, room(s.widths[i])/boldFace))
		cells[i] = excelize.Cell{StyleID: s.b.styles[f], Value: text}
	}
	s.put(cells, height(deep))
}

// free writes a text that runs over its neighbours.
func (s *billPage) free(f face, text string) {
	s.put([]any{excelize.Cell{StyleID: s.b.styles[f], Value: oneLine(text)}}, map[face]float64{faceTitle: 20}[f])
}

// note writes a text over the whole width, on as many lines as it needs.
func (s *billPage) note(text string) {
	all := 0.0
	for _, w := range s.widths {
		all += w
	}
	text = oneLine(text)
	from, to := fmt.Sprintf("A%d", s.at+1), fmt.Sprintf("%c%d", 'A'+len(s.widths)-1, s.at+1)
	cells := make([]any, len(s.widths))
	for i := range cells {
		cells[i] = excelize.Cell{StyleID: s.b.styles[faceText]}
	}
	cells[0] = excelize.Cell{StyleID: s.b.styles[faceText], Value: text}
	s.put(cells, height(linesOf(text, room(all))))
	if s.err == nil {
		s.err = s.out.MergeCell(from, to)
	}
}

// row writes a row of cells; a text has the row's face.
func (s *billPage) row(f face, cells ...any) {
	out, deep := make([]any, len(cells)), 1
	for i, c := range cells {
		switch c := c.(type) {
		case cellOf:
			out[i] = excelize.Cell{StyleID: s.b.styles[c.face], Value: c.v}
		case counted:
			out[i] = excelize.Cell{StyleID: s.b.styles[c.face], Value: c.v, Formula: c.text}
		case string:
			c = oneLine(c)
			deep = max(deep, linesOf(c, room(s.widths[i])))
			cell := excelize.Cell{StyleID: s.b.styles[f]}
			if c != "" {
				cell.Value = c
			}
			out[i] = cell
		}
	}
	tall := height(deep)
	if f == faceTotal {
		tall += 6
	}
	s.put(out, tall)
}

func (s *billPage) put(cells []any, tall float64) {
	s.at++
	if s.err != nil {
		return
	}
	s.err = s.out.SetRow(fmt.Sprintf("A%d", s.at), cells, excelize.RowOpts{Height: tall})
}

// end finishes a sheet.
func (s *billPage) end() error {
	if s.err == nil {
		s.err = s.out.Flush()
	}
	return named(s.sheet, s.err)
}
