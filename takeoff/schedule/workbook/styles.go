package workbook

import "fmt"

// xlsxStyles is what is read of the part of styles.
type xlsxStyles struct {
	Codes []struct {
		ID   int    `xml:"numFmtId,attr"`
		Code string `xml:"formatCode,attr"`
	} `xml:"numFmts>numFmt"`
	Fonts []struct {
		Strike *property   `xml:"strike"`
		Colour *xlsxColour `xml:"color"`
	} `xml:"fonts>font"`
	Fills []xlsxFill `xml:"fills>fill"`
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
	own := map[int]format{}
	for _, c := range x.Codes {
		if len(c.Code) > mostFormat {
			return fmt.Errorf("a number format has %d characters, where 255 are allowed", len(c.Code))
		}
		own[c.ID] = readFormat(c.Code)
	}
	palette, painted := w.readTheme(theme), false
	for _, c := range x.Cells {
		f, ok := own[c.Format]
		if !ok {
			f = builtInFormat(c.Format)
		}
		w.formats = append(w.formats, f)
		struck := false
		var font, fill Colour
		if c.Font >= 0 && c.Font < len(x.Fonts) {
			p := x.Fonts[c.Font].Strike
			struck = p != nil && p.Value != "0" && p.Value != "false"
			font = x.Fonts[c.Font].Colour.read(palette)
		}
		if c.Fill >= 0 && c.Fill < len(x.Fills) {
			fill = x.Fills[c.Fill].read(palette)
		}
		w.struck = append(w.struck, struck)
		w.paints = append(w.paints, paintOf(font, fill))
		painted = painted || w.paints[len(w.paints)-1] != paint{}
	}
	if !painted {
		w.paints = nil
	}
	return nil
}
