package takeoff

import (
	"math"
	"strconv"

	"blankoff/fittings"
)

// SizeText writes a cross-section as people do, in mm: "600 x 400", "dia 315",
// "525 x 150 oval". An unknown one is "".
func SizeText(c fittings.CrossSection) string {
	switch c.Shape {
	case fittings.Rectangular:
		return mm(c.Width) + " x " + mm(c.Height)
	case fittings.Circular:
		return "dia " + mm(c.Diameter)
	case fittings.FlatOval:
		return mm(c.Width) + " x " + mm(c.Height) + " oval"
	}
	return ""
}

// mm writes a length in m as mm, to a tenth.
func mm(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/10, 'f', -1, 64) }

// SizeText is the size of the item's end towards the plant, or of its only end.
func (it *Item) SizeText() string {
	if s := &it.Piece.Sizes; it.Piece.Kind == fittings.Plenum && s.Has(fittings.Width) && s.Has(fittings.Height) && s.Has(fittings.Length) {
		w, _ := s.Get(fittings.Width)
		h, _ := s.Get(fittings.Height)
		return SizeText(fittings.CrossSection{Shape: fittings.Rectangular, Width: w, Height: h}) + " x " + mm(it.Length())
	}
	if len(it.Ends) == 0 {
		return ""
	}
	return SizeText(it.Ends[0].CrossSection)
}
