package dress

import (
	"strconv"
	"strings"
)

// Colour is a colour as red, green and blue; 0 is none, or the usual one: black text, no
// filling.
type Colour uint32

// coloured marks a colour that is one.
const coloured Colour = 1 << 24

// rgb makes a colour of its parts.
func rgb(r, g, b uint8) Colour { return coloured | Colour(r)<<16 | Colour(g)<<8 | Colour(b) }

// Parts gives red, green and blue.
func (c Colour) Parts() (r, g, b int) { return int(c >> 16 & 255), int(c >> 8 & 255), int(c & 255) }

// least and most are bounds of the parts of a colour that is all but white, or black.
const (
	leastWhite = 0xfa
	mostBlack  = 0x20
)

// White reports a colour that is all but white.
func (c Colour) White() bool {
	r, g, b := c.Parts()
	return c != 0 && min(r, g, b) >= leastWhite
}

// black reports one that is all but black.
func (c Colour) black() bool {
	r, g, b := c.Parts()
	return c != 0 && max(r, g, b) <= mostBlack
}

// Paint is how the cells of a style are coloured: black text and white filling are none.
type Paint struct{ font, fill Colour }

// PaintOf leaves out what is as usual.
func PaintOf(font, fill Colour) Paint {
	if font.black() {
		font = 0
	}
	if fill.White() {
		fill = 0
	}
	return Paint{font, fill}
}

// unseen reports text in the colour of its filling.
func (p Paint) unseen() bool {
	return p.font != 0 && (p.font == p.fill || p.fill == 0 && p.font.White())
}

// Painted is how the filled cells of a row are coloured, where all are alike.
type Painted struct {
	Font, Fill Colour
	Swatch     Colour // the filling of the first cell without a text that has one
	Unseen     bool   // each is written in the colour of its filling
	Met        bool   // a cell was met
}

// Blank takes in the colours of a cell without a text.
func (p *Painted) Blank(x Paint) {
	if p.Swatch == 0 {
		p.Swatch = x.fill
	}
}

// Meet takes in the colours of a filled cell.
func (p *Painted) Meet(x Paint) {
	if !p.Met {
		*p = Painted{x.font, x.fill, p.Swatch, x.unseen(), true}
		return
	}
	if p.Font != x.font {
		p.Font = 0
	}
	if p.Fill != x.fill {
		p.Fill = 0
	}
	p.Unseen = p.Unseen && x.unseen()
}

// XLSXColour is a colour in the styles of an XLSX file (ECMA-376 part 1, 18.8.19).
type XLSXColour struct {
	RGB     string  `xml:"rgb,attr"`
	Theme   *int    `xml:"theme,attr"`
	Tint    float64 `xml:"tint,attr"`
	Indexed *int    `xml:"indexed,attr"`
}

// UsualTheme are the colours of a theme where the file has none: background and text twice,
// then six accents (those that the application comes with; from memory, unverified).
var UsualTheme = []Colour{0x1ffffff, 0x1000000, 0x1e7e6e6, 0x144546a, 0x14472c4, 0x1ed7d31, 0x1a5a5a5, 0x1ffc000, 0x15b9bd5, 0x170ad47}

// indexedColours are those of the old numbered ones that people use for text and shading
// (ECMA-376 part 1, 18.8.27).
var indexedColours = map[int]Colour{9: 0x1ffffff, 10: 0x1ff0000, 11: 0x100ff00, 12: 0x10000ff, 13: 0x1ffff00, 22: 0x1c0c0c0, 23: 0x1808080, 40: 0x100ccff, 43: 0x1ffff99, 51: 0x1ffcc00, 52: 0x1ff9900, 53: 0x1ff6600, 55: 0x1969696, 63: 0x1333333}

// Read gives the colour.
func (x *XLSXColour) Read(theme []Colour) Colour {
	switch {
	case x == nil:
		return 0
	case len(x.RGB) == 8 || len(x.RGB) == 6:
		return Hex(x.RGB[len(x.RGB)-6:])
	case x.Theme != nil && *x.Theme >= 0 && *x.Theme < len(theme):
		return theme[*x.Theme].tinted(x.Tint)
	case x.Indexed != nil:
		return indexedColours[*x.Indexed]
	}
	return 0
}

// Hex reads a colour of six figures to the base of 16.
func Hex(text string) Colour {
	n, err := strconv.ParseUint(text, 16, 32)
	if err != nil || len(text) != 6 {
		return 0
	}
	return coloured | Colour(n)
}

// tinted makes a colour darker, or lighter, by a share.
func (c Colour) tinted(share float64) Colour {
	if c == 0 || share == 0 || share < -1 || share > 1 {
		return c
	}
	part := func(v int) uint8 {
		if share < 0 {
			return uint8(float64(v) * (1 + share))
		}
		return uint8(float64(v)*(1-share) + 255*share)
	}
	r, g, b := c.Parts()
	return rgb(part(r), part(g), part(b))
}

// ODSColour reads a colour of an OpenDocument file, as #808080. none reports one that takes
// back what a parent says.
func ODSColour(text string) (c Colour, none bool) {
	if figures, ok := strings.CutPrefix(text, "#"); ok {
		return Hex(figures), false
	}
	return 0, text != ""
}

// XLSXFill is a filling: a pattern over the whole cell counts.
type XLSXFill struct {
	Pattern *struct {
		Type string      `xml:"patternType,attr"`
		Over *XLSXColour `xml:"fgColor"`
	} `xml:"patternFill"`
}

// Read gives the colour of a filling.
func (x *XLSXFill) Read(theme []Colour) Colour {
	if x.Pattern == nil || x.Pattern.Type != "solid" {
		return 0
	}
	return x.Pattern.Over.Read(theme)
}
