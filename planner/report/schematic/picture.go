// Package schematic lays the ductwork out as a line drawing from the plant
// outward: systems one below the other, levels as bands, every run on a row of
// its own, so that nothing lies on anything else where it can be helped. It
// gives lines and places, no colours and no file format: the page and the cards
// draw the same picture.
package schematic

import (
	"blankoff/planner/report"
)

// Point is a place in the picture: x from the plant outward, y down. The unit
// is that of a screen at full size, about a quarter of a millimetre.
type Point struct{ X, Y float64 }

// Picture is a drawing of ductwork.
type Picture struct {
	Width, Height float64
	Systems       []System
	Bands         []Band
	Pieces        []Piece
	Joints        []Mark // where a blank could be
	Ends          []Mark // openings with nothing on them
	Rings         []Link // joints that close a ring
	Labels        []Label
}

// System is the heading of a system's part of the picture.
type System struct {
	Name        string
	Top, Bottom float64
}

// Band is a level of a system.
type Band struct {
	Level       string
	Top, Bottom float64
	Shaded      bool // every other one
}

// Piece is the line of a node.
type Piece struct {
	Node   int
	Path   []Point
	Weight float64 // of the line, by the girth
}

// Mark is a joint or an open end: where it is, and whether the duct runs up and
// down there. Index is that of the joint, or of the end.
type Mark struct {
	Point
	Upright bool
	Weight  float64
	Index   int
}

// Link is a joint that closes a ring.
type Link struct {
	Joint    int
	From, To Point
}

// Label is a row's tag.
type Label struct {
	Point  // the middle of its foot
	Text   string
	Node   int
	Narrow bool // of a short piece: drawn smaller
}

// The drawing's measures.
const (
	column  = 6.0  // grid along x
	pitch   = 44.0 // from row to row
	stub    = 15.0 // a spigot with nothing on it
	edge    = 12.0
	nameTop = 26.0 // a system's heading
	gutter  = 96.0 // for the names of the levels
	letter  = 4.7  // width of a label's letter
	longTag = 13   // letters of a tag that are shown in full
)

// weight is that of a line by the girth of its duct, m: a duct of 300 mm
// diameter is 4.4 wide, one of 1000 x 600 10.3; never below 2.5 or above 12.
func weight(girth float64) float64 { return min(12, max(2.5, 2+2.6*girth)) }

// Tag shortens a tag too long for a drawing: its ends stay.
func Tag(s string) string {
	r := []rune(s)
	if len(r) <= longTag {
		return s
	}
	return string(r[:5]) + "…" + string(r[len(r)-6:])
}

// Of draws all nodes of a plan, every row with its tag.
func Of(d *report.Ductwork) *Picture {
	nodes := make([]int, len(d.Nodes))
	for k := range nodes {
		nodes[k] = k
	}
	return draw(newLayout(d, nodes))
}

// Small draws one section and what it is joined to, for a card: short lines, and
// tags only beside its blanks, whose joints and open ends are named by where
// they are.
func Small(v *report.Plan, section int) *Picture {
	d := v.Drawing
	l := newLayout(d, d.Near(section, 1))
	at := map[string]bool{}
	for i := range v.Sections[section].Blanks {
		at[v.Sections[section].Blanks[i].At] = true
	}
	l.tagged = map[int]bool{}
	for i := range l.spots {
		for _, k := range d.JointsOf(l.spots[i].node) {
			if j := &d.Joints[k]; at[j.At] {
				l.tagged[d.Nodes[j.A].Item], l.tagged[d.Nodes[j.B].Item] = true, true
			}
		}
		for _, k := range d.EndsOf(l.spots[i].node) {
			if e := &d.Ends[k]; at[e.At] {
				l.tagged[d.Nodes[e.Node].Item] = true
			}
		}
	}
	return draw(l)
}

func draw(l *layout) *Picture {
	l.measure()
	l.stack()
	for i := range l.stretches {
		l.place(&l.stretches[i])
	}
	return l.picture()
}

// Part is one system of a picture, in the same place.
func (p *Picture) Part(system int) *Picture {
	s := p.Systems[system]
	in := func(y float64) bool { return y >= s.Top && y < s.Bottom+edge }
	o := &Picture{Width: p.Width, Height: p.Height, Systems: []System{s}}
	for _, b := range p.Bands {
		if in(b.Top) {
			o.Bands = append(o.Bands, b)
		}
	}
	for _, x := range p.Pieces {
		if in(x.Path[len(x.Path)-1].Y) {
			o.Pieces = append(o.Pieces, x)
		}
	}
	for _, m := range p.Joints {
		if in(m.Y) {
			o.Joints = append(o.Joints, m)
		}
	}
	for _, m := range p.Ends {
		if in(m.Y) {
			o.Ends = append(o.Ends, m)
		}
	}
	for _, r := range p.Rings {
		if in(r.From.Y) {
			o.Rings = append(o.Rings, r)
		}
	}
	for _, l := range p.Labels {
		if in(l.Y) {
			o.Labels = append(o.Labels, l)
		}
	}
	return o
}
