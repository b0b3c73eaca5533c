package fittings

import (
	"math"
	"strconv"
	"strings"
)

// fig prints a length for a working: three decimals, or up to six where
// they are needed.
func fig(v float64) string {
	s := strconv.FormatFloat(v, 'f', 6, 64)
	point := strings.IndexByte(s, '.')
	for len(s) > point+4 && s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if strings.Trim(s, "-0.") == "" {
		return "0.000"
	}
	return s
}

// sq prints an area: three decimals where they say it all, else six.
func sq(v float64) string {
	if short := strconv.FormatFloat(v, 'f', 3, 64); fig(v) == short {
		return short
	}
	return strconv.FormatFloat(v, 'f', 6, 64)
}

// deg prints an angle or a count without needless figures.
func deg(v float64) string { return strconv.FormatFloat(math.Round(v*1e6)/1e6, 'f', -1, 64) }

// less prints a difference a - b, with a negative b added.
func less(a, b float64) string {
	if b < 0 {
		return fig(a) + " + " + fig(-b)
	}
	return fig(a) + " - " + fig(b)
}

// girthFigures is the girth in figures: 2 x (a + b), pi x d,
// (pi x m + 2 x (M - m)).
func (c CrossSection) girthFigures() string {
	switch c.Shape {
	case Rectangular:
		return "2 x (" + fig(c.Width) + " + " + fig(c.Height) + ")"
	case Circular:
		return "pi x " + fig(c.Diameter)
	case FlatOval:
		return "(pi x " + fig(c.Height) + " + 2 x (" + less(c.Width, c.Height) + "))"
	}
	return ""
}

// faceFigures is the face area in figures.
func (c CrossSection) faceFigures() string {
	switch c.Shape {
	case Rectangular:
		return fig(c.Width) + " x " + fig(c.Height)
	case Circular:
		return "pi x " + fig(c.Diameter) + "^2 / 4"
	case FlatOval:
		return "(pi x " + fig(c.Height) + "^2 / 4 + " + fig(c.Height) + " x (" + less(c.Width, c.Height) + "))"
	}
	return ""
}

// signed prints a number in brackets where it is negative.
func signed(v float64) string {
	if s := fig(v); s[0] != '-' {
		return s
	}
	return "(" + fig(v) + ")"
}

// strips is how many strips the second opinion of an integral has.
const strips = 256

func byStrips(area float64) string { return "by 256 strips: " + sq(area) + " m2" }
