package takeoff

import (
	"fmt"

	"blankoff/fittings"
)

// measure works out the areas of item i; r is its row, or nil once it is gone.
func (t *Takeoff) measure(i int, r *Row) {
	it := &t.Items[i]
	m, problems := fittings.MeasureIn(&it.Piece, t.options.Written)
	for _, p := range problems {
		t.fault(i, it.problemFault(p, r))
	}
	if len(problems) > 0 {
		return
	}
	if !t.measureOutside(i, r, m) {
		return
	}
	it.Ends = append([]fittings.End(nil), m.Ends...)
	it.Notes = append(it.Notes, m.Notes...)
	t.noteSeries(it)
	if it.Piece.Shape == fittings.NoShape && len(it.Ends) > 0 {
		it.Piece.Shape = it.Ends[0].Shape
	}
	n := float64(it.Quantity)
	it.Area, it.Exact = it.Each*n, it.EachExact*n
	it.JointLength = t.jointLength(it)
}

// measureOutside works out the areas of item i by its outside surface, exactly
// and on the basis; m is its measurement at the sizes that the row gives.
func (t *Takeoff) measureOutside(i int, r *Row, m fittings.Measurement) bool {
	it := &t.Items[i]
	it.EachExact, it.OpeningExact = m.Area, m.Opening
	if t.options.Sheet > 0 {
		p := t.outsidePiece(&it.Piece)
		if grown, problems := fittings.Measure(&p); len(problems) == 0 {
			it.EachExact, it.OpeningExact = grown.Area, grown.Opening
		} else {
			it.noSheet = true
			it.Notes = append(it.Notes, "the thickness of the sheet isn't added: a piece of these outside sizes can't be measured")
		}
	}
	it.Each, it.Opening = it.EachExact, it.OpeningExact
	if t.options.Basis.Exact() {
		return true
	}
	var problems []fittings.Problem
	p := t.measuredPiece(it)
	it.Each, it.Opening, problems = fittings.AreaOn(&p, t.options.Basis)
	for _, p := range problems {
		t.fault(i, it.problemFault(p, r))
	}
	return len(problems) == 0
}

// problemFault places a problem of the piece in the schedule.
func (it *Item) problemFault(p fittings.Problem, r *Row) Fault {
	heading, value := p.Word, ""
	if p.Dim < fittings.NumDims {
		c := DimColumn(p.Dim)
		heading = c.Heading()
		switch v, given := it.Piece.Sizes.Get(p.Dim); {
		case r != nil:
			value = r.Text[c]
		case given:
			value = fmt.Sprintf("%g", v*1000)
		}
	} else if r != nil {
		for c := Column(0); c < NumColumns; c++ {
			if c.Heading() == heading {
				value = r.Text[c]
			}
		}
	}
	return it.At.Fault(heading, value, p.Expected, p.Message)
}

// jointLength is the length of the installation joints that are charged to a
// row, in m: each piece is charged with the joint at its plant end, so that
// the rows of a schedule add up to every joint once. A straight made of
// several pieces has one for each.
func (t *Takeoff) jointLength(it *Item) float64 {
	if len(it.Ends) == 0 {
		return 0
	}
	pieces := it.Quantity
	if it.Piece.Kind == fittings.Straight {
		pieces *= fittings.NumberOfPieces(it.Piece.Shape, it.Length(), t.PieceLength(it))
	}
	return float64(pieces) * it.Ends[0].Girth()
}

// measureSpigots measures the spigots, whose area depends on the wall that
// they sit in.
func (t *Takeoff) measureSpigots() {
	for i := range t.Items {
		it := &t.Items[i]
		if it.Piece.Kind != fittings.Spigot || it.Refused {
			continue
		}
		if it.Parent >= 0 {
			host := &t.Items[it.Parent]
			if host.Refused && len(host.Ends) == 0 {
				t.fault(i, it.At.Fault("from", it.From, "a wall of known size",
					fmt.Sprintf("the wall of %s isn't known because its row was refused; mend that row first", host.Name())))
				continue
			}
			if host.Piece.Kind == fittings.Plenum {
				it.Piece.WallFlat = true
			} else if len(host.Ends) > 0 {
				it.Piece.Wall = host.Ends[0].CrossSection
			}
		}
		t.measure(i, nil)
	}
}
