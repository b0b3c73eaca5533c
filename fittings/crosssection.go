package fittings

import "math"

// Shape is the shape of a cross-section.
type Shape uint8

// The three shapes of ductwork. NoShape means not stated.
const (
	NoShape Shape = iota
	Rectangular
	Circular
	FlatOval
)

// String gives the word used in schedules and reports.
func (s Shape) String() string {
	switch s {
	case Rectangular:
		return "rectangular"
	case Circular:
		return "circular"
	case FlatOval:
		return "flat-oval"
	}
	return ""
}

// CrossSection is the cross-section of a duct: a and b of a rectangle, d of a
// circle, or the major and minor axis of a flat oval, all in m.
type CrossSection struct {
	Shape    Shape
	Width    float64 // rectangular a, flat-oval major axis M; m
	Height   float64 // rectangular b, flat-oval minor axis m; m
	Diameter float64 // circular d; m
}

// Girth is the perimeter P in m: 2(a+b), pi d, or pi m + 2(M-m).
//
// Source: mensuration; the flat-oval form is ASHRAE Fundamentals 2021 ch. 21
// eq. 28.
func (c CrossSection) Girth() float64 {
	switch c.Shape {
	case Rectangular:
		return 2 * (c.Width + c.Height)
	case Circular:
		return math.Pi * c.Diameter
	case FlatOval:
		return math.Pi*c.Height + 2*(c.Width-c.Height)
	}
	return 0
}

// FaceArea is the area of the opening in m2, the area that test pressure
// pushes on when the end is blanked: ab, pi d^2/4, or pi m^2/4 + m(M-m).
//
// Source: mensuration; the flat-oval form is ASHRAE Fundamentals 2021 ch. 21
// eq. 27.
func (c CrossSection) FaceArea() float64 {
	switch c.Shape {
	case Rectangular:
		return c.Width * c.Height
	case Circular:
		return math.Pi * c.Diameter * c.Diameter / 4
	case FlatOval:
		return math.Pi*c.Height*c.Height/4 + c.Height*(c.Width-c.Height)
	}
	return 0
}

// Same reports whether two ends fit each other to within half a millimetre.
// A rectangle turned on its side is the same opening.
func (c CrossSection) Same(o CrossSection) bool {
	const slack = 0.0005
	near := func(x, y float64) bool { return math.Abs(x-y) <= slack }
	if c.Shape != o.Shape {
		return false
	}
	if c.Shape == Circular {
		return near(c.Diameter, o.Diameter)
	}
	return near(c.Width, o.Width) && near(c.Height, o.Height) ||
		near(c.Width, o.Height) && near(c.Height, o.Width)
}
