// Package workbook reads the sheets of an XLSX file (ECMA-376) or an ODS file
// (OpenDocument 1.3) row by row.
//
// A sheet is never in memory as a whole. The types of cells and their number
// formats are seen, so that a date, an error or a formula without a result
// isn't taken for a number; and a damaged sheet is an error, not a short one.
package workbook

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"path"
	"regexp"
	"strings"

	"blankoff/takeoff/schedule/workbook/dress"
)

// What a workbook may unpack to. A sheet packs some ten to thirty times; what
// packs far better is made to fill the memory.
const (
	maxUnpacked = 2 << 30
	maxStrings  = 256 << 20
	maxPart     = 16 << 20 // styles
	maxList     = 4 << 20  // list of sheets
	smallPart   = 16 << 20 // may pack as well as it likes
	maxPacking  = 200
)

// File is a workbook whose sheets can be read.
type File struct {
	Sheets []Sheet // in the order of the workbook

	parts    map[string]*zip.File
	strings  []string
	formats  []dress.Format // of cell styles
	struck   []bool         // cell styles that strike out
	paints   []dress.Paint  // of cell styles; none, if none is coloured
	looks    odsLooks       // of an OpenDocument file
	date1904 bool
	open     bool // an OpenDocument file
	comma    bool // some text is a number with a comma for decimals

	content    *content // of an OpenDocument file, where a sheet was read to its end
	read, most int64    // bytes of sheets read, and that may be
	empty      int64    // bytes of empty rows that weren't read
	pinned     uint64   // bytes read of what lies on sheets
}

// CommaDecimals reports whether the workbook holds numbers as text with a comma
// for decimals, so that 1.500 in a text may be 1500.
func (w *File) CommaDecimals() bool { return w.comma }

var commaNumber = regexp.MustCompile(`^\d+,(?:\d{1,2}|\d{4,})\s*(?:[a-zA-Z²"]+)?$`)

// listen looks for a comma for decimals in a text.
func (w *File) listen(text string) {
	w.comma = w.comma || len(text) < 20 && strings.IndexByte(text, ',') > 0 && commaNumber.MatchString(text)
}

// Sheet is a sheet of cells.
type Sheet struct {
	Name   string
	Hidden bool
	part   string
	index  int // among the sheets of an OpenDocument file
}

// Open reads all but the sheets themselves. It refuses a file that isn't a
// workbook, is damaged, or unpacks to far more than a schedule can hold.
func Open(data []byte) (*File, error) {
	if n := bytes.Count(data, []byte("PK\x01\x02")); n > maxParts {
		return nil, fmt.Errorf("it has %d parts, and a workbook has at most %d; copy the schedule to a new workbook", n, maxParts)
	}
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, fmt.Errorf("the file is damaged (%w); save it again", err)
	}
	w := &File{parts: map[string]*zip.File{}}
	var total uint64
	for _, f := range zr.File {
		total += f.UncompressedSize64
		if f.UncompressedSize64 > smallPart && f.UncompressedSize64/maxPacking > f.CompressedSize64 || total > maxUnpacked {
			return nil, fmt.Errorf("it unpacks to far more than a schedule holds (%s: %d MiB); copy the schedule to a new workbook",
				f.Name, f.UncompressedSize64>>20)
		}
		name := strings.TrimPrefix(f.Name, "/")
		if w.parts[name] != nil {
			return nil, fmt.Errorf("its part %.100q stands in it twice; save it again", name)
		}
		w.parts[name] = f
	}
	if w.parts["content.xml"] != nil {
		return w, w.openDocument()
	}
	main := "xl/workbook.xml"
	links, err := w.links("")
	if err != nil {
		return nil, err
	}
	for _, l := range links {
		if strings.HasSuffix(l.Type, "/officeDocument") {
			main = l.part
		}
	}
	if w.parts[main] == nil {
		return nil, errors.New("it holds no workbook; save it as .xlsx or CSV")
	}
	return w, w.readMain(main)
}

// link is a relationship of a part to another.
type link struct {
	ID     string `xml:"Id,attr"`
	Type   string `xml:"Type,attr"`
	Target string `xml:"Target,attr"`
	part   string
}

// links reads the relationships of a part.
func (w *File) links(part string) ([]link, error) {
	dir, file := path.Split(part)
	var x struct {
		Links []link `xml:"Relationship"`
	}
	err := w.decode(dir+"_rels/"+file+".rels", &x)
	for i, l := range x.Links {
		x.Links[i].part = strings.TrimPrefix(path.Join("/", dir, l.Target), "/")
		if strings.HasPrefix(l.Target, "/") {
			x.Links[i].part = strings.TrimPrefix(path.Clean(l.Target), "/")
		}
	}
	return x.Links, err
}

// decode reads a small part into v; a part that isn't there leaves v as it is.
func (w *File) decode(part string, v any) error {
	f := w.parts[part]
	if f == nil {
		return nil
	}
	if f.UncompressedSize64 > maxPart || path.Base(part) == "workbook.xml" && f.UncompressedSize64 > maxList {
		return fmt.Errorf("its part %s is too large (%d MiB)", part, f.UncompressedSize64>>20)
	}
	r, err := f.Open()
	if err == nil {
		defer r.Close()
		if err = decoder(r).Decode(v); err == nil {
			err = drain(r)
		}
	}
	if err != nil {
		return fmt.Errorf("its part %s is damaged (%w); save it again", part, err)
	}
	return nil
}

// xlsxMain is what is read of the part that lists the sheets.
type xlsxMain struct {
	Properties struct {
		Date1904 string `xml:"date1904,attr"`
	} `xml:"workbookPr"`
	Sheets []struct {
		Name  string `xml:"name,attr"`
		ID    string `xml:"id,attr"`
		State string `xml:"state,attr"`
	} `xml:"sheets>sheet"`
}

// readMain reads the list of sheets, the styles and the shared strings.
func (w *File) readMain(main string) error {
	var x xlsxMain
	if err := w.decode(main, &x); err != nil {
		return err
	}
	w.date1904 = x.Properties.Date1904 == "1" || x.Properties.Date1904 == "true"
	links, err := w.links(main)
	if err != nil {
		return err
	}
	if err := w.listSheets(&x, links); err != nil {
		return err
	}
	return w.readLinked(links)
}

// listSheets finds the part of each sheet by its link.
func (w *File) listSheets(x *xlsxMain, links []link) error {
	if len(x.Sheets) > maxSheet {
		return fmt.Errorf("it has %d sheets, and a schedule has at most %d; copy the schedule to a new workbook", len(x.Sheets), maxSheet)
	}
	taken := map[string]bool{}
	for _, s := range x.Sheets {
		for _, l := range links {
			if l.ID == s.ID && strings.HasSuffix(l.Type, "/worksheet") {
				if taken[l.part] {
					return errors.New("two of its sheets are one; copy the schedule to a new workbook")
				}
				taken[l.part] = true
				w.Sheets = append(w.Sheets, Sheet{Name: s.Name, Hidden: s.State == "hidden" || s.State == "veryHidden", part: l.part})
			}
		}
	}
	return nil
}

// readLinked reads the styles, with the colours of the theme, and the shared strings.
func (w *File) readLinked(links []link) (err error) {
	theme := ""
	for _, l := range links {
		if strings.HasSuffix(l.Type, "/theme") {
			theme = l.part
		}
	}
	for _, l := range links {
		switch {
		case strings.HasSuffix(l.Type, "/styles"):
			err = w.readStyles(l.part, theme)
		case strings.HasSuffix(l.Type, "/sharedStrings"):
			err = w.readStrings(l.part)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (w *File) readStrings(part string) error {
	f := w.parts[part]
	if f == nil {
		return nil
	}
	if f.UncompressedSize64 > maxStrings {
		return fmt.Errorf("its text is too large (%d MiB); split the schedule", f.UncompressedSize64>>20)
	}
	r, err := f.Open()
	if err != nil {
		return fmt.Errorf("its text can't be read (%w); save it again", err)
	}
	defer r.Close()
	if w.strings, err = dress.Texts(decoder(r)); err != nil {
		return fmt.Errorf("its text is damaged (%w); save it again", err)
	}
	if len(w.strings) > dress.MaxText {
		return fmt.Errorf("it holds more than %d texts; split the schedule", dress.MaxText)
	}
	for _, text := range w.strings {
		w.listen(text)
	}
	return nil
}
