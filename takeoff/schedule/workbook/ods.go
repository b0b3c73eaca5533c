package workbook

import (
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

// The namespaces of an OpenDocument file (OASIS OpenDocument 1.3 part 3).
const (
	tableNS  = "urn:oasis:names:tc:opendocument:xmlns:table:1.0"
	officeNS = "urn:oasis:names:tc:opendocument:xmlns:office:1.0"
	textNS   = "urn:oasis:names:tc:opendocument:xmlns:text:1.0"
	styleNS  = "urn:oasis:names:tc:opendocument:xmlns:style:1.0"
)

// attr is an attribute of an element in a namespace of the standard: programs
// add some of their own by the same names.
func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name && (a.Name.Space == "" || strings.HasPrefix(a.Name.Space, "urn:oasis:names:tc:opendocument:")) {
			return a.Value
		}
	}
	return ""
}

// repeats is how often a cell, row or column stands there, at most limit.
func repeats(e xml.StartElement, name string, limit int) (int, error) {
	v := attr(e, name)
	if v == "" {
		return 1, nil
	}
	n, err := strconv.Atoi(v)
	if err != nil || n < 1 {
		return 0, fmt.Errorf("%s is '%.20s'", name, v)
	}
	return min(n, limit+1), nil
}

// mostCells is how many cells the counts of rows and columns may make of a sheet.
const mostCells = 50 << 20

// mostAgain is how many times a filled row may stand there by a count: more is
// made to fill the memory, as no schedule says one piece so often.
const mostAgain = 10_000

// nextODS is Next for an OpenDocument file.
func (sr *Rows) nextODS() error {
	o := sr.ods
	if o.again > 0 {
		o.again--
		sr.Number++
		sr.Cells = append(sr.Cells[:0], o.same...)
		return nil
	}
	for {
		tok, err := sr.dec.Token()
		if err == io.EOF {
			return io.ErrUnexpectedEOF
		}
		if err != nil {
			return err
		}
		switch e := tok.(type) {
		case xml.EndElement:
			if e.Name.Space == tableNS && e.Name.Local == "table" {
				return sr.odsEnd()
			}
		case xml.StartElement:
			filled, err := sr.odsStart(e)
			if err != nil || filled {
				return err
			}
		}
	}
}

// odsStart deals with an element of a sheet. filled reports a row with a filled
// cell.
func (sr *Rows) odsStart(e xml.StartElement) (filled bool, err error) {
	if e.Name.Space != tableNS {
		return false, sr.dec.Skip() // drawings, forms, names
	}
	switch e.Name.Local {
	case "table-column":
		n, err := repeats(e, "number-columns-repeated", excelize.MaxColumns)
		if err != nil {
			return false, err
		}
		sr.column(e, n)
	case "table-row":
		return sr.odsRowTimes(e)
	case "table-columns", "table-header-columns", "table-column-group", "table-rows", "table-header-rows", "table-row-group":
	case "table":
		return false, errInner
	default:
		sr.pinned.Picture = sr.pinned.Picture || e.Name.Local == "shapes"
		return false, sr.dec.Skip() // a note
	}
	return false, nil
}

// odsRowTimes reads a row that may stand there several times. filled reports a filled cell.
func (sr *Rows) odsRowTimes(e xml.StartElement) (filled bool, err error) {
	o := sr.ods
	n, err := repeats(e, "number-rows-repeated", excelize.TotalRows)
	if err != nil {
		return false, err
	}
	v := attr(e, "visibility")
	sr.Number, sr.Hidden = o.next, v == "collapse" || v == "filter" || sr.book.looks.rows[attr(e, "style-name")]
	o.style = attr(e, "default-cell-style-name")
	if err := sr.odsRow(); err != nil {
		return false, err
	}
	o.next += n
	switch {
	case len(sr.Cells) == 0:
		return false, nil
	case o.next > excelize.TotalRows+1:
		return false, fmt.Errorf("there are more than %d rows", excelize.TotalRows)
	case n > mostAgain:
		return false, fmt.Errorf("row %d stands there %d times", sr.Number, n)
	}
	sr.book.most += perRow
	if err := sr.odsSpans(); err != nil {
		return false, err
	}
	if o.made += n * max(len(sr.Cells), o.width); o.made > mostCells {
		return false, errors.New("it unpacks to far more cells than a schedule holds")
	}
	o.again, o.same = n-1, slices.Clone(sr.Cells)
	return true, nil
}

// odsRow reads the cells of a row up to its end.
func (sr *Rows) odsRow() error {
	sr.blank()
	sr.ods.width = 0
	column := 0
	for {
		tok, err := sr.dec.Token()
		if err != nil {
			return err
		}
		switch e := tok.(type) {
		case xml.EndElement:
			return nil
		case xml.StartElement:
			if e.Name.Space != tableNS || e.Name.Local != "table-cell" && e.Name.Local != "covered-table-cell" {
				if err := sr.dec.Skip(); err != nil {
					return err
				}
				continue
			}
			if column, err = sr.odsCell(e, column); err != nil {
				return err
			}
		}
	}
}

// odsCell reads a cell at a column and gives the column of the next.
func (sr *Rows) odsCell(e xml.StartElement, column int) (int, error) {
	n, err := repeats(e, "number-columns-repeated", excelize.MaxColumns)
	if err != nil {
		return 0, err
	}
	p := odsText{looks: sr.book.looks.texts}
	if err := sr.dec.DecodeElement(&p, &e); err != nil {
		return 0, err
	}
	if p.inner {
		return 0, errInner
	}
	if p.drawn || p.remark {
		sr.odsPinned(&p, column)
	}
	text, unlike := p.String(), false
	if attr(e, "value-type") == "float" {
		text, unlike = odsNumber(attr(e, "value"), text)
	} else {
		text = odsValue(e, text)
	}
	if text == "" || e.Name.Local == "covered-table-cell" {
		sr.Paint.Blank(sr.book.looks.paints[sr.odsStyle(e)])
		return column + n, nil
	}
	if column+n > excelize.MaxColumns {
		return 0, fmt.Errorf("there are more than %d columns", excelize.MaxColumns)
	}
	after := column + n
	sr.ods.width = after
	if after > mostKept {
		sr.Beyond = max(sr.Beyond, after)
		n = max(0, mostKept-column)
	}
	if n == 0 {
		return after, nil
	}
	for len(sr.Cells) < column {
		sr.Cells = append(sr.Cells, "")
	}
	for range n {
		sr.odsPut(e, text, unlike)
	}
	if down, err := repeats(e, "number-rows-spanned", excelize.TotalRows); err == nil && down > 1 {
		sr.Over = append(sr.Over, column)
		sr.ods.spans = append(sr.ods.spans, merge{column: column, from: sr.ods.next, to: sr.ods.next + down - 1, text: text})
	}
	return after, nil
}

// odsStyle is the style of a cell, or that of its row.
func (sr *Rows) odsStyle(e xml.StartElement) string {
	if style := attr(e, "style-name"); style != "" {
		return style
	}
	return sr.ods.style
}

// odsPut puts a cell behind those of the row.
func (sr *Rows) odsPut(e xml.StartElement, text string, unlike bool) {
	at, formula := len(sr.Cells), attr(e, "formula")
	sr.Linked = sr.Linked || strings.Contains(formula, "[$")
	if sr.strikes(attr(e, "style-name"), at) {
		sr.Struck = append(sr.Struck, at)
	}
	if len(sr.book.looks.paints) > 0 {
		sr.Paint.Meet(sr.book.looks.paints[sr.odsStyle(e)])
	}
	if unlike {
		sr.Unlike = append(sr.Unlike, at)
	}
	if dress.SumsUp(formula, at, sr.Number) {
		sr.Sums = append(sr.Sums, at)
	}
	sr.Cells = append(sr.Cells, text)
}

// odsSpans fills in a row of an OpenDocument file, and begins with the cells that are
// merged down from it.
func (sr *Rows) odsSpans() error {
	o := sr.ods
	if err := sr.fill(&sr.below); err != nil {
		return err
	}
	if o.spanned += len(o.spans); o.spanned > mostMerges {
		return errMerges
	}
	for _, m := range o.spans {
		sr.below.add(m)
	}
	o.spans = o.spans[:0]
	return nil
}
