package workbook

import (
	"encoding/xml"
	"io"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Pinned is what lies on a sheet and isn't in its cells.
type Pinned struct {
	Picture  bool     // or a drawing
	Comments []string // cells with comments on them, as F2: the first of them
	More     int      // and so many more
}

// mostPinned is how many cells with comments are named.
const mostPinned = 5

// What is read for it, bytes: of one sheet's list of its parts, and of all sheets together.
const (
	maxLinks  = 1 << 20
	maxPinned = 16 << 20
)

// comment takes note of a comment on a cell.
func (p *Pinned) comment(ref string) {
	switch {
	case slices.Contains(p.Comments, ref):
	case len(p.Comments) < mostPinned:
		p.Comments = append(p.Comments, ref)
	default:
		p.More++
	}
}

// Pinned finds out what else lies on the sheet, once its rows were read. What can't be read
// of it is left out: it says nothing of cells.
func (sr *Rows) Pinned() Pinned {
	w := sr.book
	if sr.ods != nil || !w.affords(sheetLinks(sr.sheet), maxLinks) {
		return sr.pinned
	}
	links, err := w.links(sr.sheet)
	if err != nil {
		return sr.pinned
	}
	for _, l := range links {
		switch {
		case strings.HasSuffix(l.Type, "/drawing") && w.parts[l.part] != nil:
			sr.pinned.Picture = true
		case strings.HasSuffix(l.Type, "/comments") && w.affords(l.part, maxPinned):
			sr.comments(l.part)
		}
	}
	return sr.pinned
}

// affords reports a part that is there and may be read yet.
func (w *File) affords(part string, most uint64) bool {
	f := w.parts[part]
	if f == nil || f.UncompressedSize64 > most || w.pinned+f.UncompressedSize64 > maxPinned {
		return false
	}
	w.pinned += f.UncompressedSize64
	return true
}

// sheetLinks is the part that lists the parts of a sheet.
func sheetLinks(part string) string {
	at := strings.LastIndexByte(part, '/') + 1
	return part[:at] + "_rels/" + part[at:] + ".rels"
}

// comments reads which cells have one.
func (sr *Rows) comments(part string) {
	r, err := sr.book.parts[part].Open()
	if err != nil {
		return
	}
	defer r.Close()
	dec := decoder(io.LimitReader(r, maxPinned))
	for {
		tok, err := dec.Token()
		if err != nil {
			return
		}
		if e, ok := tok.(xml.StartElement); ok && e.Name.Local == "comment" {
			if ref := attr(e, "ref"); ref != "" && len(ref) < 12 {
				sr.pinned.comment(ref)
			}
		}
	}
}

// odsPinned takes note of what lies on a cell of an OpenDocument file.
func (sr *Rows) odsPinned(p *odsText, column int) {
	sr.pinned.Picture = sr.pinned.Picture || p.drawn
	if p.remark {
		if ref, err := excelize.CoordinatesToCellName(column+1, sr.Number); err == nil {
			sr.pinned.comment(ref)
		}
	}
}
