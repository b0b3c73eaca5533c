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

// Comment is what a comment on a cell says.
type Comment struct {
	Column int // from 0
	Text   string
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

// Pinned is what else lies on the sheet, once its rows were read.
func (sr *Rows) Pinned() Pinned { return sr.pinned }

// LookAround finds out what else lies on a sheet before its rows are read, so that each comes
// with the comments on it. What can't be read of it is left out.
func (sr *Rows) LookAround() {
	w := sr.book
	if sr.ods != nil || !w.affords(sheetLinks(sr.sheet), maxLinks) {
		return
	}
	links, err := w.links(sr.sheet)
	if err != nil {
		return
	}
	for _, l := range links {
		switch {
		case strings.HasSuffix(l.Type, "/drawing") && w.parts[l.part] != nil:
			sr.pinned.Picture = true
		case strings.HasSuffix(l.Type, "/comments") && w.affords(l.part, maxPinned):
			sr.comments(l.part)
		}
	}
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

// comments reads which cells have one, and what it says.
func (sr *Rows) comments(part string) {
	r, err := sr.book.parts[part].Open()
	if err != nil {
		return
	}
	defer r.Close()
	sr.texts = map[int][]Comment{}
	dec := decoder(io.LimitReader(r, maxPinned))
	for {
		tok, err := dec.Token()
		if err != nil {
			return
		}
		e, ok := tok.(xml.StartElement)
		if !ok || e.Name.Local != "comment" {
			continue
		}
		ref := attr(e, "ref")
		column, row, err := excelize.CellNameToCoordinates(ref)
		if err != nil || len(ref) >= 12 {
			continue
		}
		sr.pinned.comment(ref)
		text, err := commentText(dec, "t")
		if err != nil {
			return
		}
		if text != "" {
			sr.texts[row] = append(sr.texts[row], Comment{column - 1, text})
		}
	}
}

// maxComment is how much is kept of a comment, bytes.
const maxComment = 400

// commentText is the text of a comment up to its end, as far as it is kept: that of elements
// of a name, a line for each. Who wrote it, and what a program wrote above it, is left out.
func commentText(dec *xml.Decoder, name string) (string, error) {
	var b strings.Builder
	within := 0 // elements, and from which one on they are of the name
	from := 0
	for {
		tok, err := dec.Token()
		if err != nil {
			return "", err
		}
		switch e := tok.(type) {
		case xml.StartElement:
			if within++; from == 0 && e.Name.Local == name {
				from = within
			}
		case xml.EndElement:
			if from == within {
				from = 0
				if name == "p" {
					b.WriteByte('\n')
				}
			}
			if within--; within < 0 {
				return spoken(b.String()), nil
			}
		case xml.CharData:
			if from > 0 && b.Len() < maxComment {
				b.Write(e[:min(len(e), maxComment)])
			}
		}
	}
}

// spoken leaves what somebody says in a comment: no line that ends in a colon, as the name of
// who says it, nor one above it.
func spoken(text string) string {
	lines := strings.Split(strings.ReplaceAll(text, "\r", ""), "\n")
	for i := len(lines) - 1; i >= 0; i-- {
		if strings.HasSuffix(strings.TrimSpace(lines[i]), ":") {
			lines = lines[i+1:]
			break
		}
	}
	return strings.ToValidUTF8(strings.Join(strings.Fields(strings.Join(lines, " ")), " "), "")
}

// odsPinned takes note of what lies on a cell of an OpenDocument file.
func (sr *Rows) odsPinned(p *odsText, column int) {
	sr.pinned.Picture = sr.pinned.Picture || p.drawn
	if p.remark {
		if ref, err := excelize.CoordinatesToCellName(column+1, sr.Number); err == nil {
			sr.pinned.comment(ref)
		}
		if p.comment != "" {
			sr.Comments = append(sr.Comments, Comment{column, p.comment})
		}
	}
}
