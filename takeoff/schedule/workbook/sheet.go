package workbook

import (
	"bufio"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"blankoff/takeoff/schedule/workbook/dress"

	"github.com/xuri/excelize/v2"
)

// cell is a cell of a sheet as the file holds it.
type cell struct {
	column int // from 0
	style  int
	kind   string // t: s, str, inlineStr, b, e, d, n or none
	value  strings.Builder
	inline strings.Builder
	has    bool // has a formula
	stored bool // has a place for its result
}

// Rows reads the rows of a sheet.
type Rows struct {
	Number int  // of the row last read, from 1, as the sheet counts
	Hidden bool // the row is hidden
	Level  int  // how deep it is grouped below others
	Paint  dress.Painted
	Cells  []string // used again for the next row; blank cells at the end are left out
	Down   []int    // columns of Cells, from 0, that hold what a cell merged down from above says
	Over   []int    // those whose cell is merged down over the rows below
	Struck []int    // those whose cell is struck out
	Sums   []int    // those whose cell is a subtotal by its formula
	Unlike []int    // those whose cell shows another number than it holds; Cells have what it shows

	Comments []Comment // pinned to cells of the row
	Linked   bool      // some cell is a formula on another sheet

	Printed       []string // above and below each page, of an XLSX file
	HiddenColumns []bool   // of the sheet, known with the first row
	Beyond        int      // number of the last filled column that is too far right to be kept; 0: none

	pinned Pinned
	texts  map[int][]Comment // by the number of the row
	sheet  string            // its part
	merged []merge           // those that begin further down
	below  below
	book   *File
	part   io.ReadCloser
	raw    *bufio.Reader // of the part, from where the decoder reads
	dec    *xml.Decoder
	cell   cell
	ods    *odsRows // of an OpenDocument file
}

// Rows opens a sheet. Close the rows when done.
func (w *File) Rows(s Sheet) (*Rows, error) {
	if w.open {
		return w.odsRows(s)
	}
	f := w.parts[s.part]
	if f == nil {
		return nil, errors.New("the sheet is missing from the file")
	}
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	b, err := lookBehind(f)
	if err != nil {
		r.Close()
		return nil, err
	}
	raw, dec := w.sheetDecoder(r)
	return &Rows{book: w, sheet: s.part, part: r, raw: raw, dec: dec, merged: b.merged, Printed: b.printed}, nil
}

// Close ends the reading of the sheet.
func (sr *Rows) Close() error {
	if sr.part == nil { // the next sheet goes on with it
		return nil
	}
	return sr.part.Close()
}

// Next reads the next row that has a filled cell. io.EOF ends the sheet; any
// other error says that it is damaged.
func (sr *Rows) Next() error {
	if sr.ods != nil {
		return sr.nextODS()
	}
	for {
		tok, err := sr.dec.Token()
		if err == io.EOF {
			return io.ErrUnexpectedEOF // the end of sheetData comes before
		}
		if err != nil {
			return err
		}
		switch e := tok.(type) {
		case xml.StartElement:
			if err := sr.start(e); err != nil {
				return err
			}
		case xml.EndElement:
			switch e.Name.Local {
			case "row":
				if len(sr.Cells) > 0 {
					sr.book.most += perRow
					return sr.fillDown()
				}
				if sr.book.read > sr.book.most-maxRun {
					return sr.onlyEmpty()
				}
			case "sheetData":
				return sr.rest()
			}
		}
	}
}

// start deals with the start of an element inside the sheet.
func (sr *Rows) start(e xml.StartElement) error {
	switch e.Name.Local {
	case "row":
		return sr.startRow(e)
	case "col":
		sr.hideColumns(e)
	case "c":
		if err := sr.readCell(e); err != nil {
			return err
		}
		return sr.put()
	}
	return nil
}

func (sr *Rows) startRow(e xml.StartElement) error {
	sr.blank()
	sr.Hidden, sr.Level = false, 0
	sr.cell.column = -1
	last := sr.Number
	sr.Number++
	for _, a := range e.Attr {
		switch a.Name.Local {
		case "r":
			n, err := strconv.Atoi(a.Value)
			if err != nil || n <= last || n > excelize.TotalRows {
				return fmt.Errorf("row '%.20s' comes after row %d", a.Value, last)
			}
			sr.Number = n
		case "hidden":
			sr.Hidden = sr.Hidden || a.Value == "1" || a.Value == "true"
		case "outlineLevel":
			sr.Level, _ = strconv.Atoi(a.Value)
		case "ht":
			sr.Hidden = sr.Hidden || thin(a.Value, 2)
		}
	}
	if sr.Number > excelize.TotalRows {
		return fmt.Errorf("there are more than %d rows", excelize.TotalRows)
	}
	return nil
}

// readCell reads a cell with what is in it.
func (sr *Rows) readCell(e xml.StartElement) error {
	c := &sr.cell
	last := c.column
	*c = cell{column: last + 1}
	for _, a := range e.Attr {
		switch a.Name.Local {
		case "r":
			col, _, err := excelize.CellNameToCoordinates(a.Value)
			if err != nil {
				return err
			}
			if c.column = col - 1; c.column <= last {
				return fmt.Errorf("cell '%.20s' stands twice or comes too late in row %d", a.Value, sr.Number)
			}
		case "s":
			n, err := strconv.Atoi(a.Value)
			if err != nil || n < 0 || n > 0 && n >= len(sr.book.formats) {
				return fmt.Errorf("there is no style number '%.20s'", a.Value) // it may say what the number means
			}
			c.style = n
		case "t":
			c.kind = a.Value
		}
	}
	if c.column >= excelize.MaxColumns {
		return fmt.Errorf("there are more than %d columns", excelize.MaxColumns)
	}
	for {
		tok, err := sr.dec.Token()
		if err != nil {
			return err
		}
		switch e := tok.(type) {
		case xml.StartElement:
			if err := sr.readPart(e); err != nil {
				return err
			}
		case xml.EndElement:
			return nil
		}
	}
}

// readPart reads an element inside a cell.
func (sr *Rows) readPart(e xml.StartElement) error {
	c := &sr.cell
	switch e.Name.Local {
	case "v", "f":
		text := &c.value
		if e.Name.Local == "f" {
			c.has, text = true, &c.inline
		} else {
			c.stored = true
		}
		for {
			tok, err := sr.dec.Token()
			if err != nil {
				return err
			}
			switch x := tok.(type) {
			case xml.CharData:
				text.Write(x)
			case xml.EndElement:
				return nil
			}
		}
	case "is":
		var x dress.Rich
		err := sr.dec.DecodeElement(&x, &e)
		c.inline.WriteString(x.String())
		return err
	}
	return sr.dec.Skip()
}

// Marks are what the cells of a row of a workbook are besides their text: columns.
type Marks struct {
	Down   []int // the lower part of one that is merged down
	Over   []int // merged down over the rows below
	Struck []int // struck out
	Sums   []int // subtotals by their formulas
	Unlike []int // that show another number than they hold
	Paint  dress.Painted

	Comments []Comment
}

// Clone gives marks of their own.
func (m Marks) Clone() Marks {
	return Marks{slices.Clone(m.Down), slices.Clone(m.Over), slices.Clone(m.Struck), slices.Clone(m.Sums), slices.Clone(m.Unlike), m.Paint, slices.Clone(m.Comments)}
}

// Marks gives the marks of the row last read, which the next row uses again.
func (r *Rows) Marks() Marks {
	if r.texts != nil {
		r.Comments = r.texts[r.Number]
	}
	return Marks{r.Down, r.Over, r.Struck, r.Sums, r.Unlike, r.Paint, r.Comments}
}
