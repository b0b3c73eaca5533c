package sketch

import (
	"math"
	"strings"

	"blankoff/fittings"
)

// pen draws one drawing, view after view.
type pen struct {
	sizes   fittings.Sizes
	scale   float64 // px per m
	drawing *Drawing
	fig     *Figure

	used  uint32 // sizes whose letters were drawn
	notes [fittings.NumDims]string
	also  [fittings.NumDims][]fittings.Dim
}

// Distances in px.
const (
	clear   = 4.0  // between a piece and its extension lines
	beyond  = 5.0  // of an extension line past its dimension line
	away    = 22.0 // of a dimension line from the piece
	further = 46.0 // of a second dimension line
	tight   = 22.0 // a dimension shorter than this has its arrows outside
)

// view starts the next view.
func (p *pen) view(caption string) {
	p.drawing.Views = append(p.drawing.Views, Figure{Caption: caption})
	p.fig = &p.drawing.Views[len(p.drawing.Views)-1]
}

// px is a size in px, 0 where it isn't given.
func (p *pen) px(d fittings.Dim) float64 {
	v, _ := p.sizes.Get(d)
	return v * p.scale
}

// number is a size as it is: an angle or a count.
func (p *pen) number(d fittings.Dim) float64 {
	v, _ := p.sizes.Get(d)
	return v
}

// name is the letters of sizes, any of which may be meant, and puts them in the
// legend.
func (p *pen) name(dims ...fittings.Dim) string {
	words := make([]string, len(dims))
	for i, d := range dims {
		p.used |= 1 << d
		words[i] = letters[d]
	}
	return strings.Join(words, " or ")
}

func (p *pen) line(w Weight, points ...Point) {
	p.fig.Lines = append(p.fig.Lines, Line{Weight: w, Points: points})
}

func (p *pen) closed(w Weight, points ...Point) {
	p.fig.Lines = append(p.fig.Lines, Line{Weight: w, Points: points, Closed: true})
}

func (p *pen) box(w Weight, x, y, wide, high float64) {
	p.closed(w, Point{x, y}, Point{x + wide, y}, Point{x + wide, y + high}, Point{x, y + high})
}

func (p *pen) arc(w Weight, centre Point, r, from, sweep float64) {
	p.fig.Arcs = append(p.fig.Arcs, Arc{w, centre, r, from, sweep})
}

func (p *pen) arrow(tip Point, direction float64) {
	p.fig.Arrows = append(p.fig.Arrows, Arrow{tip, direction})
}

func (p *pen) word(at Point, text string) {
	p.fig.Labels = append(p.fig.Labels, Label{At: at, Text: text})
}

func (p *pen) letter(at Point, text string) {
	p.fig.Labels = append(p.fig.Labels, Label{At: at, Text: text, Dim: true})
}

// dim is a dimension from a to b, drawn off px to the left of that direction
// (to the right where off is negative), with extension lines.
func (p *pen) dim(a, b Point, off float64, text string) {
	side := math.Copysign(1, off)
	n := normal(a, b)
	for _, end := range [...]Point{a, b} {
		if math.Abs(off) > clear {
			p.line(Thin, shift(end, n, side*clear), shift(end, n, off+side*beyond))
		}
	}
	p.span(shift(a, n, off), shift(b, n, off), side, text)
}

// span is a dimension line from a to b with its arrows and its letter, on the
// left (side 1) or right (-1) of it.
func (p *pen) span(a, b Point, side float64, text string) {
	n, to := normal(a, b), direction(a, b)
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	if long < tight {
		p.line(Thin, polar(a, -2*ArrowLength, to), polar(b, 2*ArrowLength, to))
		p.arrow(a, to)
		p.arrow(b, to+180)
	} else {
		p.line(Thin, a, b)
		p.arrow(a, to+180)
		p.arrow(b, to)
	}
	middle := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
	off := room(n, text)
	if TextWidth(text, LetterSize) > long-2*clear {
		off += beyond + 2 // clear of the extension lines
	}
	p.letter(shift(middle, n, side*off), text)
}

// room is how far a letter's middle must stand from a line of this normal.
func room(n Point, text string) float64 {
	return math.Abs(n.Y)*(LetterSize*0.42+4) + math.Abs(n.X)*(TextWidth(text, LetterSize)/2+4)
}

// radius is the dimension of a radius: a line from the centre with an arrow at
// the arc; its letter on the left (side 1) or right of it, at a share of the way.
func (p *pen) radius(centre Point, r, degrees, side, share float64, text string) {
	tip := polar(centre, r, degrees)
	p.line(Thin, centre, tip)
	p.arrow(tip, degrees)
	n := normal(centre, tip)
	p.letter(shift(polar(centre, r*share, degrees), n, side*(room(n, text)+1)), text)
}

// angle is the dimension of an angle: an arc with arrows and the letter outside.
func (p *pen) angle(centre Point, r, from, sweep float64, text string) {
	p.arc(Thin, centre, r, from, sweep)
	lean := math.Copysign(ArrowLength/r*90/math.Pi, sweep) // the head follows the arc
	turn := math.Copysign(90, sweep)
	p.arrow(polar(centre, r, from+sweep), from+sweep+turn-lean)
	p.arrow(polar(centre, r, from), from-turn+lean)
	middle := from + sweep/2
	n := polar(Point{}, 1, middle)
	p.letter(polar(centre, r+room(n, text), middle), text)
}

// cross marks a centre.
func (p *pen) cross(at Point) {
	p.line(Thin, Point{at.X - 5, at.Y}, Point{at.X + 5, at.Y})
	p.line(Thin, Point{at.X, at.Y - 5}, Point{at.X, at.Y + 5})
}

// normal is the unit vector to the left of a to b as seen.
func normal(a, b Point) Point {
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	return Point{(b.Y - a.Y) / l, -(b.X - a.X) / l}
}

func shift(p, n Point, by float64) Point { return Point{p.X + n.X*by, p.Y + n.Y*by} }

func direction(a, b Point) float64 { return math.Atan2(a.Y-b.Y, b.X-a.X) * 180 / math.Pi }

func tan(degrees float64) float64 { return math.Tan(degrees * math.Pi / 180) }

// end is the letters of one end's sizes.
type end struct{ width, height, diameter fittings.Dim }

var (
	near   = end{fittings.Width, fittings.Height, fittings.Diameter}
	far    = end{fittings.Width2, fittings.Height2, fittings.Diameter2}
	branch = end{fittings.BranchWidth, fittings.BranchHeight, fittings.BranchDiameter}
)

// sections draws the cross-sections that an end may have, not to scale.
func (p *pen) sections(caption string, e end, shapes ...fittings.Shape) {
	p.drawing.Sections = append(p.drawing.Sections, Figure{Caption: caption})
	p.fig = &p.drawing.Sections[len(p.drawing.Sections)-1]
	x, high := 0.0, 44.0
	for _, s := range shapes {
		wide := map[fittings.Shape]float64{fittings.Rectangular: 66, fittings.Circular: 44, fittings.FlatOval: 84}[s]
		switch s {
		case fittings.Rectangular:
			p.box(Outline, x, 0, wide, high)
		case fittings.Circular:
			p.arc(Outline, Point{x + high/2, high / 2}, high/2, 0, 360)
		case fittings.FlatOval:
			p.arc(Outline, Point{x + high/2, high / 2}, high/2, 90, 180)
			p.arc(Outline, Point{x + wide - high/2, high / 2}, high/2, -90, 180)
			p.line(Outline, Point{x + high/2, 0}, Point{x + wide - high/2, 0})
			p.line(Outline, Point{x + high/2, high}, Point{x + wide - high/2, high})
		}
		across := e.width
		if s == fittings.Circular {
			across = e.diameter
		} else {
			p.dim(Point{x + wide, 0}, Point{x + wide, high}, 14, p.name(e.height))
		}
		p.dim(Point{x, 0}, Point{x + wide, 0}, 14, p.name(across))
		p.word(Point{x + wide/2, high + 14}, s.String())
		x += wide + 52
	}
}
