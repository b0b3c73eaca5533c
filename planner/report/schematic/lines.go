package schematic

import (
	"blankoff/fittings"
)

// picture turns rows into lines.
func (l *layout) picture() *Picture {
	p := &Picture{}
	y := l.bands(p)
	rows := make([]float64, len(l.spots))
	for i := range l.spots {
		s := &l.spots[i]
		switch {
		case s.stubOnly:
			rows[i] = rows[s.parent] + stub
		case s.parent >= 0 && l.spots[s.parent].stretch == s.stretch:
			rows[i] = rows[s.parent] + pitch*float64(s.row)
		default:
			rows[i] = l.blocks[s.system].bands[s.level].top + pitch*(float64(s.row)+0.5)
		}
		p.Width = max(p.Width, gutter+s.x+s.width+edge)
	}
	for i := range l.spots {
		l.line(p, i, rows)
	}
	l.ends(p, rows)
	l.rings(p, rows)
	p.Height = y + edge
	return p
}

// bands gives every system and level its part of the height, and returns where
// they end.
func (l *layout) bands(p *Picture) float64 {
	y := 0.0
	for _, b := range l.blocks {
		top := y
		y += nameTop
		for i, level := range b.levels {
			lane := b.bands[level]
			lane.top = y
			y += pitch * float64(max(1, lane.rows))
			p.Bands = append(p.Bands, Band{Level: level, Top: lane.top, Bottom: y, Shaded: i%2 == 0})
		}
		p.Systems = append(p.Systems, System{Name: b.name, Top: top, Bottom: y})
		y += edge
	}
	return y
}

// line draws a node and the joint to its parent.
func (l *layout) line(p *Picture, i int, rows []float64) {
	s := &l.spots[i]
	n := &l.d.Nodes[s.node]
	x, y, w := gutter+s.x, rows[i], weight(n.Girth)
	piece := Piece{Node: s.node, Weight: w}
	upright := false
	if s.parent >= 0 {
		from := rows[s.parent]
		upright = from != y
		if upright {
			piece.Path = append(piece.Path, Point{x, from})
		}
		p.Joints = append(p.Joints, Mark{Point: Point{x, from}, Upright: upright, Weight: w, Index: n.Up})
	}
	piece.Path = append(piece.Path, Point{x, y})
	if !s.stubOnly {
		piece.Path = append(piece.Path, Point{x + s.width, y})
	}
	p.Pieces = append(p.Pieces, piece)
	if first := i == 0 || l.d.Nodes[l.spots[i-1].node].Item != n.Item; first && !s.stubOnly && (l.tagged == nil || l.tagged[n.Item]) {
		l.label(p, i, y-w/2-3)
	}
}

// label puts a row's tag above the middle of its pieces.
func (l *layout) label(p *Picture, i int, foot float64) {
	s := &l.spots[i]
	n := &l.d.Nodes[s.node]
	end := s.x + s.width
	for k := i + 1; k < len(l.spots) && l.d.Nodes[l.spots[k].node].Item == n.Item; k++ {
		if o := &l.spots[k]; o.parent == k-1 && !o.hangs {
			end = o.x + o.width
		}
	}
	p.Labels = append(p.Labels, Label{Point: Point{gutter + (s.x+end)/2, foot}, Text: Tag(n.Tag), Node: s.node})
}

// ends marks the openings with nothing on them.
func (l *layout) ends(p *Picture, rows []float64) {
	for i := range l.spots {
		for _, k := range l.d.EndsOf(l.spots[i].node) {
			l.end(p, i, k, rows)
		}
	}
}

func (l *layout) end(p *Picture, i, k int, rows []float64) {
	s, e := &l.spots[i], &l.d.Ends[k]
	m := Mark{Index: k, Weight: weight(l.d.Nodes[e.Node].Girth), Point: Point{gutter + s.x + s.width, rows[i]}}
	switch {
	case e.Role == fittings.PlantEnd:
		m.X = gutter + s.x
	case s.stubOnly:
		m.X, m.Upright = gutter+s.x, true
	case e.Role == fittings.BranchEnd, e.Role == fittings.BranchEnd2:
		m.X, m.Y, m.Upright = gutter+s.x+s.width/2, rows[i]+stub, true
		if e.Role == fittings.BranchEnd2 {
			m.Y = rows[i] - stub
		}
		p.Pieces = append(p.Pieces, Piece{Node: e.Node, Weight: 2.5, Path: []Point{{m.X, rows[i]}, {m.X, m.Y}}})
	}
	p.Ends = append(p.Ends, m)
}

// rings links the two ends of every joint that closes a ring.
func (l *layout) rings(p *Picture, rows []float64) {
	for b := range l.spots {
		for _, k := range l.d.JointsOf(l.spots[b].node) {
			j := &l.d.Joints[k]
			a, ok := l.at[j.A]
			if !j.Ring || !ok || j.B != l.spots[b].node {
				continue
			}
			from, to := &l.spots[a], &l.spots[b]
			p.Rings = append(p.Rings, Link{Joint: k, From: Point{gutter + from.x + from.width, rows[a]}, To: Point{gutter + to.x + to.width, rows[b]}})
		}
	}
}
