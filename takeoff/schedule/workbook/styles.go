package workbook

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"blankoff/takeoff/schedule/workbook/dress"
)

// xlsxStyles is what is read of the part of styles.
type xlsxStyles struct {
	Codes []struct {
		ID   int    `xml:"numFmtId,attr"`
		Code string `xml:"formatCode,attr"`
	} `xml:"numFmts>numFmt"`
	Fonts []struct {
		Strike *dress.Property   `xml:"strike"`
		Colour *dress.XLSXColour `xml:"color"`
	} `xml:"fonts>font"`
	Fills []dress.XLSXFill `xml:"fills>fill"`
	Cells []struct {
		Format int `xml:"numFmtId,attr"`
		Font   int `xml:"fontId,attr"`
		Fill   int `xml:"fillId,attr"`
	} `xml:"cellXfs>xf"`
}

// readStyles reads what the styles of cells say: the format of numbers, whether they strike out,
// and their colours.
func (w *File) readStyles(part, theme string) error {
	var x xlsxStyles
	if err := w.decode(part, &x); err != nil {
		return err
	}
	own := map[int]dress.Format{}
	for _, c := range x.Codes {
		if len(c.Code) > dress.MostFormat {
			return fmt.Errorf("a number format has %d characters, where 255 are allowed", len(c.Code))
		}
		own[c.ID] = dress.ReadFormat(c.Code)
	}
	palette, painted := w.readTheme(theme), false
	for _, c := range x.Cells {
		f, ok := own[c.Format]
		if !ok {
			f = dress.BuiltInFormat(c.Format)
		}
		w.formats = append(w.formats, f)
		struck := false
		var font, fill dress.Colour
		if c.Font >= 0 && c.Font < len(x.Fonts) {
			p := x.Fonts[c.Font].Strike
			struck = p != nil && p.Value != "0" && p.Value != "false"
			font = x.Fonts[c.Font].Colour.Read(palette)
		}
		if c.Fill >= 0 && c.Fill < len(x.Fills) {
			fill = x.Fills[c.Fill].Read(palette)
		}
		w.struck = append(w.struck, struck)
		w.paints = append(w.paints, dress.PaintOf(font, fill))
		painted = painted || w.paints[len(w.paints)-1] != dress.Paint{}
	}
	if !painted {
		w.paints = nil
	}
	return nil
}

// readTheme reads the colours of the theme. One that can't be read leaves the usual ones.
func (w *File) readTheme(part string) []dress.Colour {
	var x struct {
		Scheme struct {
			Colours []struct {
				Own struct {
					Value string `xml:"val,attr"`
				} `xml:"srgbClr"`
				System struct {
					Last string `xml:"lastClr,attr"`
				} `xml:"sysClr"`
			} `xml:",any"`
		} `xml:"themeElements>clrScheme"`
	}
	if part == "" || !w.affords(part, maxLinks) || w.decode(part, &x) != nil || len(x.Scheme.Colours) < len(dress.UsualTheme) {
		return dress.UsualTheme
	}
	out := make([]dress.Colour, len(dress.UsualTheme))
	for i := range out {
		from := i
		if i < 4 { // the file lists text before background
			from = i ^ 1
		}
		out[i] = dress.Hex(x.Scheme.Colours[from].Own.Value + x.Scheme.Colours[from].System.Last)
	}
	return out
}

// put puts the cell's text into the row.
func (sr *Rows) put() error {
	text, unlike, err := sr.text()
	if err != nil {
		return err
	}
	if text == "" {
		if s := sr.cell.style; s > 0 && s < len(sr.book.paints) {
			sr.Paint.Blank(sr.book.paints[s])
		}
		return nil
	}
	c := sr.cell.column
	if c >= mostKept {
		sr.Beyond = max(sr.Beyond, c+1)
		return nil
	}
	for len(sr.Cells) <= c {
		sr.Cells = append(sr.Cells, "")
	}
	sr.Cells[c] = text
	if s := sr.cell.style; s < len(sr.book.struck) && sr.book.struck[s] {
		sr.Struck = append(sr.Struck, c)
	}
	if s := sr.cell.style; s < len(sr.book.paints) {
		sr.Paint.Meet(sr.book.paints[s])
	}
	if unlike {
		sr.Unlike = append(sr.Unlike, c)
	}
	if sr.cell.has {
		f := sr.cell.inline.String()
		sr.Linked = sr.Linked || strings.Contains(f, "!")
		if dress.SumsUp(f, c, sr.Number) {
			sr.Sums = append(sr.Sums, c)
		}
	}
	return nil
}

// text is what the cell says: text, a number with all its digits, TRUE or
// FALSE, an error's name, a date as 2026-03-01, or the formula where its
// result isn't stored. unlike reports one that shows another number than it holds.
func (sr *Rows) text() (text string, unlike bool, err error) {
	c := &sr.cell
	v := c.value.String()
	if c.has && (!c.stored || v == "" && c.kind != "str") {
		return "=" + c.inline.String(), false, nil
	}
	f := &plainFormat
	if c.style >= 0 && c.style < len(sr.book.formats) {
		f = &sr.book.formats[c.style]
	}
	switch c.kind {
	case "inlineStr":
		return f.Dress(c.inline.String()), false, nil
	case "s":
		i, err := strconv.Atoi(strings.TrimSpace(v))
		if err != nil || i < 0 || i >= len(sr.book.strings) {
			return "", false, fmt.Errorf("there is no text number '%.20s'", v)
		}
		return f.Dress(sr.book.strings[i]), false, nil
	case "str":
		return f.Dress(dress.Unescape(v)), false, nil
	case "b":
		if v == "1" || v == "true" {
			return "TRUE", false, nil
		}
		return "FALSE", false, nil
	case "e", "d":
		return v, false, nil
	}
	n, err := strconv.ParseFloat(v, 64)
	if err != nil || math.IsInf(n, 0) || math.IsNaN(n) {
		return v, false, nil
	}
	text, unlike = f.Show(v, n, sr.book.date1904)
	return text, unlike, nil
}

var plainFormat dress.Format
