package units

import (
	"math"
	"strconv"
	"strings"
)

// size writes a size, m, without its unit: mm to a tenth, inches to a hundredth,
// and to four decimals where that is exact, as a sixteenth is.
func (u System) size(m float64) string {
	if u == SI {
		return strconv.FormatFloat(math.Round(m*1e4)/10, 'f', -1, 64)
	}
	x := u.Of(Size, m)
	if s, ok := round(x); ok {
		return s
	}
	return trim(Plain(x, 2))
}

// Rectangular writes the size of a rectangular opening, sides in m:
// "600 x 400", "24 x 16 in". Sizes in mm go without their unit.
func (u System) Rectangular(width, height float64) string {
	return u.across(u.size(width) + " x " + u.size(height))
}

// Circular writes that of a circular one: "dia 315", "dia 12.4 in".
func (u System) Circular(diameter float64) string { return u.across("dia " + u.size(diameter)) }

// FlatOval writes that of a flat-oval one: "525 x 150 oval".
func (u System) FlatOval(width, height float64) string {
	return u.Rectangular(width, height) + " oval"
}

// Box writes the sides of a box: "2000 x 1000 x 1500".
func (u System) Box(width, height, length float64) string {
	return u.across(u.size(width) + " x " + u.size(height) + " x " + u.size(length))
}

func (u System) across(s string) string {
	if u == SI {
		return s
	}
	return s + " " + u.Unit(Size)
}

// Reread writes a size that an earlier plan holds as a text in mm, such as
// "600 x 400 oval" or "bend 600 x 400", in this system.
func (u System) Reread(text string) string {
	if u == SI || text == "" {
		return text
	}
	words := strings.Fields(text)
	last := -1
	for i, w := range words {
		if mm, err := strconv.ParseFloat(w, 64); err == nil {
			words[i], last = u.size(mm/1000), i
		}
	}
	if last >= 0 {
		words[last] += " " + u.Unit(Size)
	}
	return strings.Join(words, " ")
}
