package fittings

import "strings"

// Written says in which units a working or a note is written. The zero value is
// m and m2, and mm for sizes in notes.
type Written struct {
	Metres float64                // of one unit of length
	Area   string                 // its square
	Size   func(m float64) string // writes a size, m, with its unit
}

// per is how many units of length there are in a metre.
func (in Written) per() float64 {
	if in.Metres == 0 {
		return 1
	}
	return 1 / in.Metres
}

// scaled is a piece with its sizes in the unit of length.
func (in Written) scaled(p *Piece) Piece {
	o, per := *p, in.per()
	for d := Dim(0); d < NumDims; d++ {
		if v, given := p.Sizes.Get(d); given {
			o.Sizes.Set(d, v*d.scale(per))
		}
	}
	o.Wall = p.Wall.scaled(per)
	return o
}

func (c CrossSection) scaled(per float64) CrossSection {
	c.Width, c.Height, c.Diameter = c.Width*per, c.Height*per, c.Diameter*per
	return c
}

// scale is what a size is multiplied by where a metre is so many units.
func (d Dim) scale(per float64) float64 {
	switch d.Unit() {
	case Metre:
		return per
	case SquareMetre:
		return per * per
	}
	return 1
}

// square names the unit of area in a working that was written with " m2".
func (in Written) square(working string) string {
	if in.Area == "" {
		return working
	}
	return strings.ReplaceAll(working, " m2", " "+in.Area)
}

// area is an area, m2, in a note.
func (in Written) area(m2 float64) string {
	return in.square(sq(m2*in.per()*in.per()) + " m2")
}

// size is a size, m, in a note; mm go without their unit.
func (in Written) size(m float64) string {
	if in.Size == nil {
		return mm(m)
	}
	return in.Size(m)
}
