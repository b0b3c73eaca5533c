// Package sketch draws every kind of piece in every style with the letters of
// the schedule's size columns: our own plain line drawings, worked out from true
// sizes, so that proportions are right. It makes lines, arcs, arrows and labels;
// a writer turns them into a file. The letters and what they stand for are kept
// here once, for the drawings in plain text too.
//
// Lengths of a drawing are in px (1/96 inch), x to the right and y down; angles
// are in degrees, anticlockwise from the right as seen.
package sketch

import (
	"math"

	"blankoff/fittings"
)

// Point is a place in a figure, px.
type Point struct{ X, Y float64 }

// Weight is what a line is for.
type Weight uint8

// The weights of lines.
const (
	Outline Weight = iota // an edge of the piece
	Thin                  // dimension and extension lines, joints, edges seen through
	Axis                  // centre line, dash and dot
	Hidden                // what lies behind, or isn't part of the piece: dashes
)

// Line is a line through points.
type Line struct {
	Weight Weight
	Points []Point
	Closed bool
}

// Arc is part of a circle, Sweep degrees from From, or all of it (360).
type Arc struct {
	Weight      Weight
	Centre      Point
	R           float64
	From, Sweep float64
}

// Arrow is an arrow head: its tip and where it points.
type Arrow struct {
	Tip       Point
	Direction float64
}

// Label is a text about its middle.
type Label struct {
	At   Point
	Text string
	Dim  bool // dimension letters, else words
}

// Figure is one view of a piece.
type Figure struct {
	Caption string
	Lines   []Line
	Arcs    []Arc
	Arrows  []Arrow
	Labels  []Label
}

// Drawing is all the views of one kind in one style.
type Drawing struct {
	Kind     fittings.Kind
	Style    fittings.Style // NoStyle where the kind has no styles
	Views    []Figure
	Sections []Figure // the cross-sections its ends may have, not to scale
	Legend   []Mark   // every letter of the drawing, in the order of fittings.Dim
	// Row is what the first view was drawn from, as heading=value pairs in
	// schedule units. It can be measured.
	Row string
}

// Name is the kind and style in words.
func (d *Drawing) Name() string {
	if d.Style == fittings.NoStyle {
		return d.Kind.String()
	}
	return d.Kind.String() + ", " + d.Style.String()
}

// Of draws a kind in a style; NoStyle is the kind's default. It reports false
// for what isn't a kind, and for a style that the kind doesn't have.
func Of(kind fittings.Kind, style fittings.Style) (Drawing, bool) {
	if info, ok := kind.Info(); ok && style == fittings.NoStyle && len(info.Styles) > 0 {
		style = info.Styles[0]
	}
	for i := range models {
		if m := &models[i]; m.kind == kind && m.style == style {
			return m.drawing(), true
		}
	}
	return Drawing{}, false
}

func (m *model) drawing() Drawing {
	piece, _ := ParseRow(m.row) // a test reads every row
	p := &pen{sizes: piece.Sizes, scale: m.scale, drawing: &Drawing{Kind: m.kind, Style: m.style, Row: m.row}}
	m.draw(p)
	p.drawing.Legend = p.legend()
	return *p.drawing
}

// Points gives the arc as points at most 3 degrees apart.
func (a Arc) Points() []Point {
	n := int(math.Ceil(math.Abs(a.Sweep) / 3))
	points := make([]Point, 0, n+1)
	for i := range n + 1 {
		points = append(points, polar(a.Centre, a.R, a.From+a.Sweep*float64(i)/float64(max(n, 1))))
	}
	return points
}

// Sizes of text and arrows, px.
const (
	LetterSize  = 15.0
	WordSize    = 11.0
	ArrowLength = 8.0
	ArrowWidth  = 5.0
)

// Size is the height of a label's text.
func (l Label) Size() float64 {
	if l.Dim {
		return LetterSize
	}
	return WordSize
}

// Box is about what a label takes up: the corners with the least and greatest
// x and y.
func (l Label) Box() (least, most Point) {
	w, h := TextWidth(l.Text, l.Size())/2, l.Size()*0.42
	return Point{l.At.X - w, l.At.Y - h}, Point{l.At.X + w, l.At.Y + h}
}

// TextWidth is about the width of a text in a plain sans-serif letter.
func TextWidth(s string, size float64) float64 { return 0.6 * size * float64(len(s)) }

// Bounds is the box round a figure.
func (f *Figure) Bounds() (least, most Point) {
	least, most = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	take := func(points ...Point) {
		for _, p := range points {
			least = Point{math.Min(least.X, p.X), math.Min(least.Y, p.Y)}
			most = Point{math.Max(most.X, p.X), math.Max(most.Y, p.Y)}
		}
	}
	for _, l := range f.Lines {
		take(l.Points...)
	}
	for _, a := range f.Arcs {
		take(a.Points()...)
	}
	for _, a := range f.Arrows {
		take(a.Corners()...)
	}
	for _, l := range f.Labels {
		a, b := l.Box()
		take(a, b)
	}
	return least, most
}

// Corners is the triangle of an arrow head.
func (a Arrow) Corners() []Point {
	back := polar(a.Tip, -ArrowLength, a.Direction)
	return []Point{a.Tip, polar(back, ArrowWidth/2, a.Direction+90), polar(back, -ArrowWidth/2, a.Direction+90)}
}

// polar is the point at a distance and direction from another.
func polar(from Point, r, degrees float64) Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Point{from.X + r*cos, from.Y - r*sin}
}
