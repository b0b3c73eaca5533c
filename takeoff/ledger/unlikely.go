package ledger

import (
	"fmt"
	"math"
	"math/bits"
	"strings"

	"blankoff/fittings"
)

// shortStraight is a length under which a straight is hardly made, m; in a
// schedule where most straights are shorter, metres were taken for mm. Common
// practice, no source.
const shortStraight = 0.05

// CheckLengths refuses straights whose lengths look like metres read as mm. One
// sliver among many is left alone: models of real buildings hold them.
func (b *Book) CheckLengths() {
	if 2*b.short <= b.straights {
		b.noteSlivers()
		return
	}
	for i := range b.Lines {
		if l := &b.Lines[i]; !l.Refused && l.Kind == fittings.Straight && l.Length > 0 && l.Length < shortStraight {
			b.Refuse(i, "length_mm", fmt.Sprintf("%g", l.Length*1000), "a length in mm",
				fmt.Sprintf("a straight of %g mm is hardly made, and most here are as short: if lengths are in m, say so in the heading, as length_m", l.Length*1000))
		}
	}
}

// Cross-sections under which hardly any duct is made, m: the series of EN 1505:1997
// begins at sides of 100 mm, that of EN 1506:2007 at diameters of 63 mm (from memory,
// unverified). Most straights are longer than stubby too (common practice, no source).
const (
	leastWide  = 0.1
	leastRound = 0.063
	stubby     = 0.2
	stubbiest  = 0.125
	small      = 0.25 // a section across which a stubby straight is in doubt
)

// isNarrow reports a piece in a unit that nobody stated, of a size that hardly any has.
func (g *Ledger) isNarrow(l *Line) bool {
	if !l.Assumed || l.Given {
		return false
	}
	c, ok := g.First(l)
	return ok && max(c.Width, c.Height) < leastWide && c.Diameter < leastRound ||
		ok && l.Kind == fittings.Straight && l.Length > 0 && (l.Length < stubbiest || l.Length < stubby && max(c.Width, c.Height, c.Diameter) < small)
}

// CheckUnits refuses the pieces of a sheet in a unit that nobody stated, where most
// of them would be narrower or shorter than ducts are: it is another unit.
func (b *Book) CheckUnits() {
	if b.narrow == 0 {
		return
	}
	narrow, all, across := make([]int, len(b.Sheets)), make([]int, len(b.Sheets)), make([]int, len(b.Sheets))
	for i := range b.Lines {
		if l := &b.Lines[i]; l.Assumed && !l.Refused && !l.Given {
			all[l.Sheet]++
			if b.isNarrow(l) {
				narrow[l.Sheet]++
				if c, _ := b.First(l); max(c.Width, c.Height) < leastWide && c.Diameter < leastRound {
					across[l.Sheet]++
				}
			}
		}
	}
	for i := range b.Lines {
		l := &b.Lines[i]
		if !l.Assumed || l.Refused || l.Given || 2*narrow[l.Sheet] <= all[l.Sheet] || across[l.Sheet] == 0 && !b.isNarrow(l) { // it is the lengths
			continue
		}
		c, _ := b.First(l)
		heading, value := "width_mm", c.Width
		switch {
		case c.Width >= leastWide && l.Length > 0 && l.Length < stubby || c.Diameter >= leastRound && l.Length > 0 && l.Length < stubby:
			b.Refuse(i, "length_mm", fmt.Sprintf("%g", l.Length*1000), "a unit in the headings",
				"no unit is stated, and in mm most pieces here would be shorter than ducts are; state it in the headings, as length_m or length_mm")
			continue
		case c.Diameter > 0:
			heading, value = "diameter_mm", c.Diameter
		}
		b.Refuse(i, heading, fmt.Sprintf("%g", value*1000), "a unit in the headings",
			"no unit is stated, and in mm most pieces here would be smaller than ducts are; state it in the headings, as width_in, width_cm or width_mm")
	}
}

// thin is a side or a diameter under which no duct of sheet metal is made, m.
// Common practice, no source.
const thin = 0.045

// Thin finds a size of a piece, m, that no duct has, 0 for none. Collars and hoses may
// be as narrow.
func Thin(p *fittings.Piece) (fittings.Dim, float64) {
	if p.Kind == fittings.Spigot || p.Kind == fittings.Flexible {
		return 0, 0
	}
	const across = 1<<fittings.Width | 1<<fittings.Height | 1<<fittings.Diameter | 1<<fittings.Width2 | 1<<fittings.Height2 | 1<<fittings.Diameter2
	for given := p.Sizes.GivenOf(across); given != 0; given &= given - 1 {
		d := fittings.Dim(bits.TrailingZeros32(given))
		if v, _ := p.Sizes.Get(d); v > 0 && v < thin {
			return d, v
		}
	}
	return 0, 0
}

// CheckSizes refuses pieces of a size that no duct has, whatever unit was stated: among
// sizes in mm one is in inches or cm, or lacks a figure.
func (b *Book) CheckSizes() {
	for i := range b.More {
		m := &b.More[i]
		if l := &b.Lines[m.Line]; m.Thin == 0 || l.Refused || l.Given {
			continue
		}
		mm := fmt.Sprintf("%.4g", m.Thin*1000)
		b.Refuse(int(m.Line), m.ThinDim.Heading(), mm, "a size in mm", "no duct is "+mm+" mm across; correct it, or write it in mm if it is in inches or cm")
	}
}

// sliver is a length under which a straight among longer ones is looked at twice,
// m: 4.5 may be metres.
const sliver = 0.02

// typed is what lengths that somebody typed are multiples of, mm; those out of a model
// aren't. Common practice, no source.
const typed = 5

// looksMetres reports a length in mm that reads as one in m: 1.5, 0.85, 3.
func looksMetres(mm float64) bool {
	hundredths := mm * 100
	return mm >= 0.3 && mm <= 6.5 && math.Abs(hundredths-math.Round(hundredths)) < 1e-6
}

// asTyped reports that all straights that aren't short have a length that somebody typed.
func (b *Book) asTyped() bool {
	for i := range b.Lines {
		l := &b.Lines[i]
		if steps := l.Length * 1000 / typed; l.Kind == fittings.Straight && !l.Refused && l.Length >= shortStraight && math.Abs(steps-math.Round(steps)) > 1e-6 {
			return false
		}
	}
	return true
}

// noteSlivers notes straights so short that their length may be in metres. Where the
// others were typed, or it reads as metres, the row is refused.
func (b *Book) noteSlivers() {
	if b.short == 0 {
		return
	}
	var names []string
	others := b.asTyped() && 2*b.short < b.straights
	for i := range b.Lines {
		l := &b.Lines[i]
		if l.Kind != fittings.Straight || l.Refused || l.Length <= 0 || l.Length >= shortStraight {
			continue
		}
		mm := l.Length * 1000
		switch {
		case others || l.Length < sliver && looksMetres(mm) && 2*b.short <= b.straights:
			b.Refuse(i, "length_mm", fmt.Sprintf("%.4g", mm), "a length in mm", fmt.Sprintf("a straight of %.4g mm is hardly made; if that is %.4g m, write it in mm", mm, mm))
		case l.Length < sliver:
			b.Remark(i, fmt.Sprintf("only %g mm long; if that is %g m, write it in mm", mm, mm))
			names = append(names, b.NameText(l))
		}
	}
	if n := len(names); n > 0 {
		more := ""
		if n > 3 {
			names, more = names[:3], fmt.Sprintf(" and %d more", n-3)
		}
		b.Note(fmt.Sprintf("straights of less than %g mm: %s%s; where a length was typed in m, write it in mm", sliver*1000, strings.Join(names, ", "), more))
	}
}

// leastOrdered is of how many straights the order of figures is looked at. Common practice, no
// source.
const leastOrdered = 6

// CheckOrder refuses a straight whose longer side is the length of a third of them and of none a side, and
// whose length is a side of others and of none the length: its figures stand in another order.
func (b *Book) CheckOrder() {
	if len(b.Lines) > mostBare || b.straights < leastOrdered {
		return
	}
	var odd []int
	for i := range b.Lines {
		if l := &b.Lines[i]; l.Kind == fittings.Straight && !l.Refused {
			if c, ok := b.First(l); ok && l.Length > 0 && 2*l.Length <= max(c.Width, c.Height) {
				odd = append(odd, i)
			}
		}
	}
	if len(odd) == 0 || 2*len(odd) >= b.straights {
		return
	}
	sides, lengths := map[float64]int{}, map[float64]int{}
	mm := func(v float64) float64 { return math.Round(v * 1000) }
	for i := range b.Lines {
		if l := &b.Lines[i]; l.Kind == fittings.Straight && !l.Refused && l.Length > 0 {
			c, _ := b.First(l)
			lengths[mm(l.Length)]++
			if sides[mm(c.Width)]++; c.Width != c.Height {
				sides[mm(c.Height)]++
			}
		}
	}
	for _, i := range odd {
		l := &b.Lines[i]
		c, _ := b.First(l)
		wide := mm(max(c.Width, c.Height))
		if n := mm(l.Length); sides[wide] == 1 && lengths[wide] > 1 && 3*lengths[wide] >= b.straights && lengths[n] == 1 && sides[n] > 0 {
			b.Refuse(i, "tag", string(b.TagOf(l)), "width, height and length under their headings",
				fmt.Sprintf("%g mm is a length of other rows and a side of none, and %g mm a side of others and a length of none, so the figures may stand in another order; put them under their headings", wide, n))
		}
	}
}
