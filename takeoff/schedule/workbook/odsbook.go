package workbook

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
)

// openDocument lists the sheets of an OpenDocument file.
func (w *File) openDocument() error {
	w.open = true
	f := w.parts["content.xml"]
	if w.locked() {
		return errors.New("it has a password; save it without one")
	}
	if err := w.readODSStyles(); err != nil {
		return err
	}
	r, err := f.Open()
	if err != nil {
		return err
	}
	defer r.Close()
	if err := w.listTables(decoder(r)); err != nil {
		return err
	}
	if len(w.Sheets) == 0 {
		return errors.New("it holds no sheets; save it as .ods, .xlsx or CSV")
	}
	return nil
}

// listTables lists the tables of the content as sheets, and sees the styles and texts on the way.
func (w *File) listTables(dec *xml.Decoder) error {
	inside := 0 // tables in each other
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return fmt.Errorf("its part content.xml is damaged (%w); save it again", err)
		}
		if end, ok := tok.(xml.EndElement); ok && end.Name.Space == tableNS && end.Name.Local == "table" {
			inside--
		}
		e, ok := tok.(xml.StartElement)
		switch {
		case !ok:
		case e.Name.Space == styleNS:
			w.looks.see(e)
		case e.Name.Space == officeNS && e.Name.Local == "body":
			w.looks.settle()
		case e.Name.Space == tableNS && e.Name.Local == "table":
			if inside++; inside > 1 { // in a cell
				continue
			}
			w.Sheets = append(w.Sheets, Sheet{Name: attr(e, "name"), Hidden: w.looks.tables[attr(e, "style-name")], part: "content.xml", index: len(w.Sheets)})
		case e.Name.Space == tableNS && e.Name.Local == "table-cell" && attr(e, "value-type") == "string":
			if err := w.hear(dec, e); err != nil {
				return err
			}
		}
	}
}

// hear looks for a comma for decimals in a cell with text.
func (w *File) hear(dec *xml.Decoder, e xml.StartElement) error {
	p := odsText{looks: w.looks.texts}
	if err := dec.DecodeElement(&p, &e); err != nil {
		return fmt.Errorf("its part content.xml is damaged (%w); save it again", err)
	}
	w.listen(p.String())
	return nil
}

// locked reports an OpenDocument file with a password.
func (w *File) locked() bool {
	m := w.parts["META-INF/manifest.xml"]
	if m == nil {
		return false
	}
	r, err := m.Open()
	if err != nil {
		return false
	}
	defer r.Close()
	head, _ := io.ReadAll(io.LimitReader(r, maxPart))
	return strings.Contains(string(head), "encryption-data")
}

// odsRows is how far the rows of a sheet of an OpenDocument file were read.
type odsRows struct {
	next    int // number of the next row
	again   int // how often the row last read stands there still
	same    []string
	column  int     // of the columns that the sheet lists
	struck  []bool  // columns whose cells are struck out unless they say otherwise
	style   string  // that the row gives its cells
	spans   []merge // begun in the row being read
	spanned int     // of them so far
	made    int     // cells so far
	width   int     // of the row, to its last filled cell
	after   int     // index of the sheet behind it
}

// content is how far the part was read that holds the sheets of an OpenDocument
// file, so that each needn't be sought from the start.
type content struct {
	part io.ReadCloser
	dec  *xml.Decoder
	next int // index of the next sheet
}

// odsRows opens a sheet of an OpenDocument file.
func (w *File) odsRows(s Sheet) (*Rows, error) {
	c := w.content
	w.content = nil
	if c == nil || c.next > s.index {
		r, err := w.parts[s.part].Open()
		if err != nil {
			return nil, err
		}
		_, dec := w.sheetDecoder(r)
		c = &content{part: r, dec: dec}
	}
	for c.next <= s.index {
		tok, err := c.dec.Token()
		if e, ok := tok.(xml.StartElement); err == nil && ok && e.Name.Space == tableNS && e.Name.Local == "table" {
			if c.next++; c.next <= s.index {
				err = c.dec.Skip()
			}
		}
		if err != nil {
			c.part.Close()
			return nil, err
		}
	}
	return &Rows{book: w, part: c.part, dec: c.dec, ods: &odsRows{next: 1, after: c.next}}, nil
}

// odsEnd ends a sheet, and keeps the place for the next.
func (sr *Rows) odsEnd() error {
	sr.book.content = &content{part: sr.part, dec: sr.dec, next: sr.ods.after}
	sr.part = nil
	return io.EOF
}
