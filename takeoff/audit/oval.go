package audit

import "blankoff/fittings"

// reshape makes a rectangle or a circle of every flat oval of a piece.
func reshape(p *fittings.Piece, as ovalAs) {
	ends := ovalEnds(p)
	if ends == (ovalIn{}) {
		return
	}
	for _, e := range []struct {
		oval                bool
		width, height, diam fittings.Dim
	}{{ends.near, fittings.Width, fittings.Height, fittings.Diameter}, {ends.far, fittings.Width2, fittings.Height2, fittings.Diameter2},
		{ends.branch, fittings.BranchWidth, fittings.BranchHeight, fittings.BranchDiameter}} {
		if e.oval && as != asRectangle {
			circle(p, as, e.width, e.height, e.diam)
		}
	}
	shape := fittings.Circular
	if as == asRectangle {
		shape = fittings.Rectangular
	}
	if ends.near || p.Kind == fittings.Spigot && ends.branch {
		p.Shape = shape
	}
	if ends.far || ends.branch {
		p.Shape2 = shape
	}
	if p.Kind == fittings.Transition {
		settle(p, ends, shape)
	}
}

// ovalIn says where a piece is a flat oval.
type ovalIn struct{ near, far, branch bool }

func ovalEnds(p *fittings.Piece) (in ovalIn) {
	f, _ := fittings.Measure(p)
	for _, e := range f.Ends {
		if e.Shape != fittings.FlatOval {
			continue
		}
		own := p.Kind == fittings.Spigot && !p.Sizes.Has(fittings.BranchWidth)
		switch {
		case p.Kind == fittings.Spigot && !own, e.Role == fittings.BranchEnd, e.Role == fittings.BranchEnd2:
			in.branch = true
		case e.Role == fittings.PlantEnd || own:
			in.near = true
		default:
			in.far = true
		}
	}
	return in
}

// circle puts a diameter in the place of a width and a height.
func circle(p *fittings.Piece, as ovalAs, width, height, diameter fittings.Dim) {
	w, given := p.Sizes.Get(width)
	h, also := p.Sizes.Get(height)
	if !given || !also {
		return
	}
	d := (w + h) / 2
	switch as {
	case asMajorCircle:
		d = w
	case asMinorCircle:
		d = h
	}
	p.Sizes = without(p.Sizes, width, height)
	p.Sizes.Set(diameter, d)
}

// without is sizes less some of them.
func without(s fittings.Sizes, out ...fittings.Dim) fittings.Sizes {
	var kept fittings.Sizes
next:
	for d := fittings.Dim(0); d < fittings.NumDims; d++ {
		for _, o := range out {
			if d == o {
				continue next
			}
		}
		if v, ok := s.Get(d); ok {
			kept.Set(d, v)
		}
	}
	return kept
}

// settle makes a reducer of a transition whose ends have become alike. An oval
// changes into a circle or rectangle, so the other end tells.
func settle(p *fittings.Piece, was ovalIn, now fittings.Shape) {
	if was.near && was.far || p.Sizes.Has(fittings.Diameter) && p.Sizes.Has(fittings.Diameter2) ||
		now == fittings.Rectangular && !p.Sizes.Has(fittings.Diameter) && !p.Sizes.Has(fittings.Diameter2) {
		p.Kind, p.Shape, p.Shape2 = fittings.Reducer, now, fittings.NoShape
	}
}
