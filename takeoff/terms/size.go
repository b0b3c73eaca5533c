package terms

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

// Size is what people call a piece by: the section of its end, or a box.
type Size struct {
	Section fittings.CrossSection
	Length  float64 // of a box, m
	Box     bool
}

// BoxOf is the size of a plenum whose three sides are known.
func BoxOf(p *fittings.Piece) (z Size, ok bool) {
	w, wide := p.Sizes.Get(fittings.Width)
	h, high := p.Sizes.Get(fittings.Height)
	l, long := p.Sizes.Get(fittings.Length)
	return Size{fittings.CrossSection{Width: w, Height: h}, l, true}, wide && high && long
}

// In writes the size in the units that a reader asked for; an unknown one is "".
func (z Size) In(s Sizes) string {
	if z.Box {
		return s.Box(z.Section.Width, z.Section.Height, z.Length)
	}
	return SizeIn(z.Section, s)
}

// Text is the size in mm.
func (z Size) Text() string { return z.In(inMM{}) }

// inMM writes sizes in mm, to a tenth.
type inMM struct{}

func (inMM) Rectangular(w, h float64) string { return mm(w) + " x " + mm(h) }
func (inMM) Circular(d float64) string       { return "dia " + mm(d) }
func (inMM) FlatOval(w, h float64) string    { return mm(w) + " x " + mm(h) + " oval" }
func (inMM) Box(w, h, l float64) string      { return mm(w) + " x " + mm(h) + " x " + mm(l) }

// mm writes a length in m as mm, to a tenth.
func mm(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/10, 'f', -1, 64) }
