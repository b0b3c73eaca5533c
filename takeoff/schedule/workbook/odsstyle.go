package workbook

import (
	"encoding/xml"
	"fmt"
	"io"
	"strconv"
	"strings"

	"blankoff/takeoff/schedule/workbook/dress"
)

// mostLooks is how many styles of an OpenDocument file are told apart.
const mostLooks = 10_000

// said is what a style says of something: nothing, no, or yes.
type said uint8

const (
	saysNo said = 1 + iota
	saysYes
)

func says(yes bool) said {
	if yes {
		return saysYes
	}
	return saysNo
}

// styleName is the name of a style, of which each family has its own.
type styleName struct{ family, name string }

// odsStyle is what is kept of a style of an OpenDocument file. What it says nothing of
// is as its parent says.
type odsStyle struct {
	parent         string
	struck, raised said
	font, fill     odsPaint
}

// odsPaint is a colour that a style says something of.
type odsPaint struct {
	colour dress.Colour
	said   bool
}

// sayColour is a colour as a style gives it.
func sayColour(text string) odsPaint {
	c, none := dress.ODSColour(text)
	return odsPaint{c, none || c != 0}
}

// odsLooks are the styles of an OpenDocument file, as far as they bear on what a cell
// says or whether it can be seen.
type odsLooks struct {
	styles map[styleName]odsStyle
	at     styleName // the style being read

	texts, cells  map[string]dress.RunLook // by the name of the style, where they matter
	rows, columns map[string]bool          // those of no height or width
	tables        map[string]bool          // hidden
	paints        map[string]dress.Paint   // of cells, where they are coloured
}

// see takes in an element of a style.
func (l *odsLooks) see(e xml.StartElement) {
	if e.Name.Space != styleNS || len(l.styles) >= mostLooks {
		return
	}
	x := l.styles[l.at]
	switch e.Name.Local {
	case "style":
		l.at = styleName{attr(e, "family"), attr(e, "name")}
		x = odsStyle{parent: attr(e, "parent-style-name")}
	case "text-properties":
		through, kind := attr(e, "text-line-through-style"), attr(e, "text-line-through-type")
		if through != "" || kind != "" {
			x.struck = says(through != "none" && kind != "none")
		}
		if c := attr(e, "color"); c != "" {
			x.font = sayColour(c)
		}
		if at := attr(e, "text-position"); at != "" {
			x.raised = says(strings.HasPrefix(at, "super"))
		}
	case "table-cell-properties":
		if c := attr(e, "background-color"); c != "" {
			x.fill = sayColour(c)
		}
	case "table-properties":
		l.tables[l.at.name] = attr(e, "display") == "false"
		return
	case "table-row-properties":
		l.rows[l.at.name] = nought(attr(e, "row-height")) && attr(e, "use-optimal-row-height") != "true"
		return
	case "table-column-properties":
		l.columns[l.at.name] = nought(attr(e, "column-width")) && attr(e, "use-optimal-column-width") != "true"
		return
	default:
		return
	}
	l.styles[l.at] = x
}

// nought reports a length of nothing: 0in.
func nought(length string) bool {
	v, err := strconv.ParseFloat(strings.TrimRight(length, "abcdefghijklmnopqrstuvwxyz%"), 64)
	return err == nil && v == 0
}

// settle works out how each style looks, with what it has from its parents.
func (l *odsLooks) settle() {
	for name, x := range l.styles {
		for range 20 { // of which a ring would have no end
			if x.parent == "" {
				break
			}
			p := l.styles[styleName{name.family, x.parent}]
			if x.struck == 0 {
				x.struck = p.struck
			}
			if x.raised == 0 {
				x.raised = p.raised
			}
			if !x.font.said {
				x.font = p.font
			}
			if !x.fill.said {
				x.fill = p.fill
			}
			x.parent = p.parent
		}
		if y := dress.PaintOf(x.font.colour, x.fill.colour); name.family == "table-cell" && y != (dress.Paint{}) {
			l.paints[name.name] = y
		}
		look := dress.RunLook{Struck: x.struck == saysYes, Raised: x.raised == saysYes}
		switch {
		case look == dress.RunLook{}:
		case name.family == "table-cell":
			l.cells[name.name] = look
		default:
			l.texts[name.name] = look
		}
	}
}

// readODSStyles reads the styles that have names, which those of the cells go back to.
func (w *File) readODSStyles() error {
	w.looks = odsLooks{styles: map[styleName]odsStyle{}, texts: map[string]dress.RunLook{}, cells: map[string]dress.RunLook{}, rows: map[string]bool{}, columns: map[string]bool{}, tables: map[string]bool{}, paints: map[string]dress.Paint{}}
	f := w.parts["styles.xml"]
	if f == nil {
		return nil
	}
	if f.UncompressedSize64 > maxPart {
		return fmt.Errorf("its part styles.xml is too large (%d MiB)", f.UncompressedSize64>>20)
	}
	r, err := f.Open()
	if err != nil {
		return fmt.Errorf("its part styles.xml is damaged (%w); save it again", err)
	}
	defer r.Close()
	dec := decoder(r)
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return fmt.Errorf("its part styles.xml is damaged (%w); save it again", err)
		}
		if e, ok := tok.(xml.StartElement); ok {
			w.looks.see(e)
		}
	}
}

// column takes in a column, or several, that a sheet of an OpenDocument file lists.
func (sr *Rows) column(e xml.StartElement, n int) {
	o, looks := sr.ods, &sr.book.looks
	if v := attr(e, "visibility"); v == "collapse" || v == "filter" || looks.columns[attr(e, "style-name")] {
		sr.hide(o.column, n)
	}
	if looks.cells[attr(e, "default-cell-style-name")].Struck {
		for len(o.struck) < min(o.column+n, mostKept) {
			o.struck = append(o.struck, len(o.struck) >= o.column)
		}
	}
	o.column += n
}

// strikes reports a cell that is struck out by its own style, or without one by that of
// its row or its column.
func (sr *Rows) strikes(style string, column int) bool {
	if style == "" {
		style = sr.ods.style
	}
	if style == "" {
		return column < len(sr.ods.struck) && sr.ods.struck[column]
	}
	return sr.book.looks.cells[style].Struck
}

// inner reads a table inside a cell to its end, and reports whether it says anything.
func inner(d *xml.Decoder) (filled bool, err error) {
	for depth := 1; depth > 0; {
		tok, err := d.Token()
		if err != nil {
			return false, err
		}
		switch e := tok.(type) {
		case xml.StartElement:
			depth++
		case xml.EndElement:
			depth--
		case xml.CharData:
			filled = filled || strings.TrimSpace(string(e)) != ""
		}
	}
	return filled, nil
}

const errInner = limit("has a table inside a cell; copy its rows into the sheet")
