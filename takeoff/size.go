package takeoff

import (
	"math"
	"strconv"

	"blankoff/fittings"
)

// Sizes writes sizes, m, in the units that a reader asked for.
type Sizes interface {
	Rectangular(width, height float64) string
	Circular(diameter float64) string
	FlatOval(width, height float64) string
	Box(width, height, length float64) string
}

// SizeIn writes a cross-section as people do: "600 x 400", "dia 315", "525 x 150
// oval" where it is in mm. An unknown one is "".
func SizeIn(c fittings.CrossSection, s Sizes) string {
	switch c.Shape {
	case fittings.Rectangular:
		return s.Rectangular(c.Width, c.Height)
	case fittings.Circular:
		return s.Circular(c.Diameter)
	case fittings.FlatOval:
		return s.FlatOval(c.Width, c.Height)
	}
	return ""
}

// SizeText is SizeIn in mm.
func SizeText(c fittings.CrossSection) string { return SizeIn(c, inMM{}) }

// inMM writes sizes in mm, to a tenth.
type inMM struct{}

func (inMM) Rectangular(w, h float64) string { return mm(w) + " x " + mm(h) }
func (inMM) Circular(d float64) string       { return "dia " + mm(d) }
func (inMM) FlatOval(w, h float64) string    { return mm(w) + " x " + mm(h) + " oval" }
func (inMM) Box(w, h, l float64) string      { return mm(w) + " x " + mm(h) + " x " + mm(l) }

// mm writes a length in m as mm, to a tenth.
func mm(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/10, 'f', -1, 64) }

// SizeText is the size of the item's end towards the plant, or of its only end,
// in mm.
func (it *Item) SizeText() string { return it.SizeIn(inMM{}) }

// SizeIn is the same in other units.
func (it *Item) SizeIn(in Sizes) string {
	if s := &it.Piece.Sizes; it.Piece.Kind == fittings.Plenum && s.Has(fittings.Width) && s.Has(fittings.Height) && s.Has(fittings.Length) {
		w, _ := s.Get(fittings.Width)
		h, _ := s.Get(fittings.Height)
		return in.Box(w, h, it.Length())
	}
	if len(it.Ends) == 0 {
		return ""
	}
	return SizeIn(it.Ends[0].CrossSection, in)
}
